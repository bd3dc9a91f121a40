// SPDX-License-Identifier: MIT
// An angle as a plain number: degrees, or radians?
// PROMISE: from [^ ]*double[^ ]* to [^ ]*layshaft::Angle
// LIMIT: 12 lines, 28 in all
#include <layshaft/core/math.hpp>

using namespace layshaft;

#if defined(LAYSHAFT_BAD)
auto asked = layshaft::sin(10.0);
#else
auto asked = layshaft::sin(10.0_deg);
#endif
