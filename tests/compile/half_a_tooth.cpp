// SPDX-License-Identifier: MIT
// A number with a fraction, which a count would lose.
// PROMISE: a count is whole: round the number first
#include <layshaft/core/counts.hpp>

using namespace layshaft;

#if defined(LAYSHAFT_BAD)
auto asked = Teeth(14.5);
#else
auto asked = Teeth(14);
#endif
