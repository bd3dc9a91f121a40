// SPDX-License-Identifier: MIT
// The working of a number, without the header that has it.
// PROMISE: to explain, include <layshaft/explain.hpp>
#include <layshaft/tyre/size.hpp>

using namespace layshaft;

#if defined(LAYSHAFT_BAD)
void asked(const TyreSize& tyre) { static_cast<void>(tyre.explain("circumference")); }
#else
void asked(const TyreSize& tyre) { static_cast<void>(tyre.rim_diameter()); }
#endif
