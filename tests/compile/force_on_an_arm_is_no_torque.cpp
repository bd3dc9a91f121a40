// SPDX-License-Identifier: MIT
// A force times its arm is an energy until the angle it turns by is put in.
// PROMISE: plane_angle_base_dimension
#include <layshaft/core/units.hpp>

using namespace layshaft;

#if defined(LAYSHAFT_BAD)
Torque asked = 50.0_N * 0.2_m;
#else
Torque asked = 50.0_N * 0.2_m / units::rad;
#endif
