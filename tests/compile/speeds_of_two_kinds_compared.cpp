// SPDX-License-Identifier: MIT
// A road speed held against an engine speed.
// PROMISE: (operator|binary expression).*layshaft::Speed.*layshaft::AngularSpeed
#include <layshaft/core/units.hpp>

using namespace layshaft;

#if defined(LAYSHAFT_BAD)
bool asked = 60_kmh < 6000_rpm;
#else
bool asked = 60_kmh < 40_mph;
#endif
