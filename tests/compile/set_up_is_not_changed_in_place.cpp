// SPDX-License-Identifier: MIT
// Another sprocket put into a set-up, which would go into a copy of its sprocket.
// PROMISE: of a count that stays
#include <layshaft/setup/setup_parts.hpp>

using namespace layshaft;

#if defined(LAYSHAFT_BAD)
void asked(Setup& setup) { setup.front() = 14_teeth; }
#else
void asked(Setup& setup) {
  SetupParts parts = setup.parts();
  parts.front = 14_teeth;
  setup = Setup(parts);
}
#endif
