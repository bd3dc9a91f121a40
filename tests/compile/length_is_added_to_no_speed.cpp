// SPDX-License-Identifier: MIT
// A length and a speed in one sum.
// PROMISE: (operator|binary expression).*layshaft::Length.*layshaft::Speed
#include <layshaft/core/units.hpp>

using namespace layshaft;

#if defined(LAYSHAFT_BAD)
auto asked = 2.0_m + 3.0_mps;
#else
auto asked = 2.0_m + 3.0_mps * 1.0_s;
#endif
