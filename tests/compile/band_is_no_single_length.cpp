// SPDX-License-Identifier: MIT
// A band where one value is wanted: the corner must be chosen.
// PROMISE: layshaft::Band
#include <layshaft/gearing/road_speeds.hpp>

using namespace layshaft;

#if defined(LAYSHAFT_BAD)
auto asked = road_speed(6000_rpm, 20.0, Band<Length>::exactly(2.0_m));
#else
auto asked = road_speed(6000_rpm, 20.0, Band<Length>::exactly(2.0_m).nominal);
#endif
