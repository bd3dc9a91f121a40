// SPDX-License-Identifier: MIT
// Links stated before the tyre: C++ wants named parts in the order they are declared in.
// PROMISE: designators? .*declaration order
#include <layshaft/setup/setup_parts.hpp>

using namespace layshaft;

#if defined(LAYSHAFT_BAD)
auto asked = SetupParts{.front = 15_teeth, .rear = 45_teeth, .links = 110_links, .tyre = "110/90-18"_tyre};
#else
auto asked = SetupParts{.front = 15_teeth, .rear = 45_teeth, .tyre = "110/90-18"_tyre, .links = 110_links};
#endif
