// SPDX-License-Identifier: MIT
// A pair of gears of which nobody stated the driven one.
// PROMISE: state every count: there is no default
#include <layshaft/gearing/gearbox.hpp>

using namespace layshaft;

#if defined(LAYSHAFT_BAD)
auto asked = GearPair{.driving = 12_teeth};
#else
auto asked = GearPair{.driving = 12_teeth, .driven = 33_teeth};
#endif
