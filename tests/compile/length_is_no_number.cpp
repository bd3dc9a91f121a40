// SPDX-License-Identifier: MIT
// A length as a plain number: of metres, or millimetres?
// PROMISE: layshaft::Length.* to [^ ]*double
#include <layshaft/core/units.hpp>

using namespace layshaft;

#if defined(LAYSHAFT_BAD)
double asked = 0.6_m;
#else
double asked = in(0.6_m, units::mm);
#endif
