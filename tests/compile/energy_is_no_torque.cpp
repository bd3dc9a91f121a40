// SPDX-License-Identifier: MIT
// Joules where a torque is wanted: both are newtons times metres, but a torque is an energy per angle.
// PROMISE: plane_angle_base_dimension
#include <layshaft/chain/tension.hpp>

using namespace layshaft;

#if defined(LAYSHAFT_BAD)
auto asked = chain_pull(300_J, 0.2_m);
#else
auto asked = chain_pull(300_Nm, 0.2_m);
#endif
