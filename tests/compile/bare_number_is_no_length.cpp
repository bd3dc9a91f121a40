// SPDX-License-Identifier: MIT
// A circumference without its unit.
// PROMISE: from [^ ]*double[^ ]* to [^ ]*layshaft::Length
#include <layshaft/gearing/speed.hpp>

using namespace layshaft;

#if defined(LAYSHAFT_BAD)
auto asked = road_speed(6000_rpm, 20.0, 2.0);
#else
auto asked = road_speed(6000_rpm, 20.0, 2.0_m);
#endif
