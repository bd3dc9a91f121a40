// SPDX-License-Identifier: MIT
// A unit spelled in capitals.
// PROMISE: operator""_RPM
#include <layshaft/core/units.hpp>

using namespace layshaft;

#if defined(LAYSHAFT_BAD)
auto asked = 6000_RPM;
#else
auto asked = 6000_rpm;
#endif
