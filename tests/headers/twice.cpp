// SPDX-License-Identifier: MIT
#include <every_header.hpp>

layshaft::Length length_of_the_other_unit();

// Inline functions and constants that several units hold must be one: the linker says so, or the numbers do.
int main() { return length_of_the_other_unit() == layshaft::units::inch * 2.0 ? 0 : 1; }
