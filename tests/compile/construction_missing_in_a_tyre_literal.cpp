// SPDX-License-Identifier: MIT
// A flotation size without its construction.
// PROMISE: this_is_not_a_tyre_designation
#include <layshaft/tyre/size.hpp>

using namespace layshaft;

#if defined(LAYSHAFT_BAD)
auto asked = "31x10.50 15LT"_tyre;
#else
auto asked = "31x10.50R15LT"_tyre;
#endif
