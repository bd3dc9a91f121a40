// SPDX-License-Identifier: MIT
// A result taken for its value, though there may be an error in its place.
// PROMISE: Result<.*TyreSize>.* to .*layshaft::TyreSize
#include <layshaft/tyre/size.hpp>

using namespace layshaft;

#if defined(LAYSHAFT_BAD)
TyreSize asked = TyreSize::make("110/90-18");
#else
TyreSize asked = TyreSize::make("110/90-18").value();
#endif
