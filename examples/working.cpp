// SPDX-License-Identifier: MIT
// How a tyre's circumference came about, step by step.
#include <layshaft/explain.hpp>
#include <layshaft/show/working_text.hpp>

#include <iostream>

int main() {
  using namespace layshaft;
  std::cout << to_text(TyreSize("120/90-18", TyreUse::special).explain("circumference"));
}
