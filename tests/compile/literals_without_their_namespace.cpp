// SPDX-License-Identifier: MIT
// Literals where neither layshaft nor layshaft::literals is used.
// PROMISE: operator""_rpm
#include <layshaft/gearing/speed.hpp>

#if defined(LAYSHAFT_BAD)
auto asked = layshaft::road_speed(6000_rpm, 20.0, 2.0 * layshaft::units::m);
#else
using namespace layshaft::literals;
auto asked = layshaft::road_speed(6000_rpm, 20.0, 2.0 * layshaft::units::m);
#endif
