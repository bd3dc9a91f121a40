// SPDX-License-Identifier: MIT
// An engine speed as a plain number: rpm, or rad/s?
// PROMISE: from [^ ]*double[^ ]* to [^ ]*layshaft::AngularSpeed
#include <layshaft/gearing/speed.hpp>

using namespace layshaft;

#if defined(LAYSHAFT_BAD)
auto asked = road_speed(6000.0, 20.0, 2.0_m);
#else
auto asked = road_speed(6000.0_rpm, 20.0, 2.0_m);
#endif
