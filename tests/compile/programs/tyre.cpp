// SPDX-License-Identifier: MIT
// A marking, and what it rolls.
#include <layshaft/tyre/tyre.hpp>

using namespace layshaft;

int main(int count, char** texts) {
  const auto tyre = TyreSize::make(count > 1 ? texts[1] : "120/90-18");
  return tyre && rolling_circumference(*tyre).nominal > 2.0_m ? 0 : 1;
}
