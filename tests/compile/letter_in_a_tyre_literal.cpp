// SPDX-License-Identifier: MIT
// The letter O for the digit 0 in a tyre's marking.
// PROMISE: this_is_not_a_tyre_designation
#include <layshaft/tyre/size.hpp>

using namespace layshaft;

#if defined(LAYSHAFT_BAD)
auto asked = "110/9O-18"_tyre;
#else
auto asked = "110/90-18"_tyre;
#endif
