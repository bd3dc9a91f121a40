// SPDX-License-Identifier: MIT
// A result that nobody looks at, and its error with it.
// PROMISE: nodiscard
#include <layshaft/core/counts.hpp>

using namespace layshaft;

#if defined(LAYSHAFT_BAD)
void asked() { Teeth::make(14); }
#else
bool asked() { return Teeth::make(14).has_value(); }
#endif
