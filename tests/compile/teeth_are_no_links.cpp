// SPDX-License-Identifier: MIT
// Teeth where the links of the chain are wanted.
// PROMISE: layshaft::TeethKind.* to .*layshaft::LinksKind
#include <layshaft/wear/hunting.hpp>

using namespace layshaft;

#if defined(LAYSHAFT_BAD)
auto asked = hunting(15_teeth, 96_teeth);
#else
auto asked = hunting(15_teeth, 96_links);
#endif
