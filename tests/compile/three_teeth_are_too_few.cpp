// SPDX-License-Identifier: MIT
// A literal below the least count.
// PROMISE: count_is_out_of_range
#include <layshaft/core/counts.hpp>

using namespace layshaft;

#if defined(LAYSHAFT_BAD)
auto asked = 3_teeth;
#else
auto asked = 4_teeth;
#endif
