// SPDX-License-Identifier: MIT
// Links with a fraction in a literal.
// PROMISE: a count is whole: 106_links
#include <layshaft/core/counts.hpp>

using namespace layshaft;

#if defined(LAYSHAFT_BAD)
auto asked = 106.5_links;
#else
auto asked = 106_links;
#endif
