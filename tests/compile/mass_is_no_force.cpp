// SPDX-License-Identifier: MIT
// Kilograms where a force in newtons is wanted.
// PROMISE: mass_base_dimension|layshaft::Mass
#include <layshaft/core/units.hpp>

using namespace layshaft;

#if defined(LAYSHAFT_BAD)
Force asked = 90.0_kg;
#else
Force asked = 90.0_kg * 9.81_mps2;
#endif
