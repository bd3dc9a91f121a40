// SPDX-License-Identifier: MIT
// A year of manufacture with a 54th week.
// PROMISE: this_is_not_a_tyre_designation
#include <layshaft/tyre/size.hpp>

using namespace layshaft;

#if defined(LAYSHAFT_BAD)
auto asked = "110/90-18 DOT 5419"_tyre;
#else
auto asked = "110/90-18 DOT 5319"_tyre;
#endif
