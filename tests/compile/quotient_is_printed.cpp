// SPDX-License-Identifier: MIT
// A quotient of two lengths for printf, which becomes a double only where one is asked for.
// PROMISE: format .%f. expects argument of type .double.|cannot pass non-trivial object
#include <layshaft/core/units.hpp>

#include <cstdio>

using namespace layshaft;

#if defined(LAYSHAFT_BAD)
int asked(Length length) { return std::printf("%f", length / units::inch); }
#else
int asked(Length length) { return std::printf("%f", in(length, units::inch)); }
#endif
