// SPDX-License-Identifier: MIT
// A length asked for in a unit of speed.
// PROMISE: ask in a unit of its own kind
#include <layshaft/core/units.hpp>

using namespace layshaft;

#if defined(LAYSHAFT_BAD)
auto asked = in(0.6_m, units::kmh);
#else
auto asked = in(0.6_m, units::inch);
#endif
