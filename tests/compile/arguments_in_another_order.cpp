// SPDX-License-Identifier: MIT
// Ratio and circumference changed places.
// PROMISE: layshaft::Length.* to [^ ]*double
#include <layshaft/gearing/speed.hpp>

using namespace layshaft;

#if defined(LAYSHAFT_BAD)
auto asked = road_speed(6000_rpm, 2.0_m, 20.0);
#else
auto asked = road_speed(6000_rpm, 20.0, 2.0_m);
#endif
