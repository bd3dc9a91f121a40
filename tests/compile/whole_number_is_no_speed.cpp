// SPDX-License-Identifier: MIT
// A speed limit as a plain number: km/h, mph or m/s?
// PROMISE: int.* to .*layshaft::Speed
#include <layshaft/core/units.hpp>

using namespace layshaft;

#if defined(LAYSHAFT_BAD)
Speed asked = 50;
#else
Speed asked = 50_kmh;
#endif
