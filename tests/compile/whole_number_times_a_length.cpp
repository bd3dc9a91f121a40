// SPDX-License-Identifier: MIT
// A whole number times a length: quantities are multiplied by doubles.
// PROMISE: quantities take doubles: write `2.0 . length`
// LIMIT: 12 lines, 48 in all
#include <layshaft/core/units.hpp>

using namespace layshaft;

#if defined(LAYSHAFT_BAD)
auto asked = 2 * 0.5_m;
#else
auto asked = 2.0 * 0.5_m;
#endif
