// SPDX-License-Identifier: MIT
// A cycle's name that stands for two rims, 590 and 565.
// PROMISE: this_is_not_a_tyre_designation
#include <layshaft/tyre/size.hpp>

using namespace layshaft;

#if defined(LAYSHAFT_BAD)
auto asked = "26x1 3/8"_tyre;
#else
auto asked = "24x1 3/8"_tyre;
#endif
