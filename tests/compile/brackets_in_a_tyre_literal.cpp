// SPDX-License-Identifier: MIT
// Brackets, which say faster than the symbol, round a symbol that does not allow it.
// PROMISE: this_is_not_a_tyre_designation
#include <layshaft/tyre/size.hpp>

using namespace layshaft;

#if defined(LAYSHAFT_BAD)
auto asked = "190/50ZR17 M/C (73R)"_tyre;
#else
auto asked = "190/50ZR17 M/C (73W)"_tyre;
#endif
