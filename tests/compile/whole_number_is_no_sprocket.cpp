// SPDX-License-Identifier: MIT
// A sprocket as a plain whole number.
// PROMISE: from [^ ]*int[^ ]* to [^ ]*layshaft::Teeth
#include <layshaft/setup/setup_parts.hpp>

using namespace layshaft;

#if defined(LAYSHAFT_BAD)
auto asked = SetupParts{.front = 15, .rear = 45_teeth};
#else
auto asked = SetupParts{.front = 15_teeth, .rear = 45_teeth};
#endif
