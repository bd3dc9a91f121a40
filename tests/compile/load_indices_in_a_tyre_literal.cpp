// SPDX-License-Identifier: MIT
// A second load index that does not exist.
// PROMISE: this_is_not_a_tyre_designation
#include <layshaft/tyre/size.hpp>

using namespace layshaft;

#if defined(LAYSHAFT_BAD)
auto asked = "LT245/75R16 120/166Q"_tyre;
#else
auto asked = "LT245/75R16 120/116Q"_tyre;
#endif
