// SPDX-License-Identifier: MIT
// Millimetres as a plain number, added to a length.
// PROMISE: (operator|binary expression).*layshaft::Length.*(double|15)
// LIMIT: 12 lines, 48 in all
#include <layshaft/core/units.hpp>

using namespace layshaft;

#if defined(LAYSHAFT_BAD)
auto asked = 0.6_m + 15.0;
#else
auto asked = 0.6_m + 15.0_mm;
#endif
