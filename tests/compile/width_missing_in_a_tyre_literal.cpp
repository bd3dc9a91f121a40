// SPDX-License-Identifier: MIT
// A French size without its width, which has no diameter.
// PROMISE: this_is_not_a_tyre_designation
#include <layshaft/tyre/size.hpp>

using namespace layshaft;

#if defined(LAYSHAFT_BAD)
auto asked = "650B"_tyre;
#else
auto asked = "650x38B"_tyre;
#endif
