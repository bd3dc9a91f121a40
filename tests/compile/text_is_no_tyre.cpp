// SPDX-License-Identifier: MIT
// A marking as plain text, which nobody has read yet.
// PROMISE: from .const char ?.10.. to .const layshaft::TyreSize
// LIMIT: 20 lines, 24 in all
#include <layshaft/tyre/rolling.hpp>

using namespace layshaft;

#if defined(LAYSHAFT_BAD)
auto asked = rolling_circumference("110/90-18");
#else
auto asked = rolling_circumference(TyreSize("110/90-18"));
#endif
