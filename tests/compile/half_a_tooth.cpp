// SPDX-License-Identifier: MIT
// A number with a fraction, which a count would lose.
// PROMISE: auto:[0-9]+ = double
#include <layshaft/core/counts.hpp>

using namespace layshaft;

#if defined(LAYSHAFT_BAD)
auto asked = Teeth(14.5);
#else
auto asked = Teeth(14);
#endif
