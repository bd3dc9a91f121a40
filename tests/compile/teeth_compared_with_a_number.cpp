// SPDX-License-Identifier: MIT
// Teeth held against a plain number.
// PROMISE: compare with 14_teeth, or count.. with a number
#include <layshaft/core/counts.hpp>

using namespace layshaft;

#if defined(LAYSHAFT_BAD)
bool asked(Teeth front) { return front == 14; }
#else
bool asked(Teeth front) { return front == 14_teeth || front.count() == 15; }
#endif
