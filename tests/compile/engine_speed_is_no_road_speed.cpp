// SPDX-License-Identifier: MIT
// The engine speed at a road speed, asked with an engine speed.
// PROMISE: plane_angle_base_dimension
#include <layshaft/gearing/speed.hpp>

using namespace layshaft;

#if defined(LAYSHAFT_BAD)
auto asked = engine_speed(6000_rpm, 20.0, 2.0_m);
#else
auto asked = engine_speed(60_kmh, 20.0, 2.0_m);
#endif
