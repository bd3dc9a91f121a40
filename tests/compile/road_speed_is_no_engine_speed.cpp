// SPDX-License-Identifier: MIT
// The power at a road speed, where the engine's speed is wanted.
// PROMISE: length_base_dimension
#include <layshaft/road/engine_curve.hpp>

using namespace layshaft;

#if defined(LAYSHAFT_BAD)
auto asked = engine_power(60_Nm, 100_kmh);
#else
auto asked = engine_power(60_Nm, 6000_rpm);
#endif
