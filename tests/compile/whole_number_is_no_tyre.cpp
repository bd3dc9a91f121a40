// SPDX-License-Identifier: MIT
// A rim diameter as a plain number, where a tyre's marking is wanted.
// PROMISE: from [^ ]*int[^ ]* to [^ ]*const layshaft::TyreSize
// LIMIT: 20 lines, 24 in all
#include <layshaft/tyre/rolling.hpp>

using namespace layshaft;

#if defined(LAYSHAFT_BAD)
auto asked = rolling_circumference(18);
#else
auto asked = rolling_circumference("110/90-18"_tyre);
#endif
