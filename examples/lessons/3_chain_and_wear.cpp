// SPDX-License-Identifier: MIT
// The numbers of lesson 3 in C++: a chain that must close, and what two ways to one ratio wear.
#include "machines.hpp"

#include <layshaft/layshaft.hpp>
#include <layshaft/show/display.hpp>

#include <iostream>

int main() {
  using namespace layshaft;
  const Machine trail_bike = machine_called("trail_bike");
  const TyreSize tyre("120/90-18 M/C 65R TT", TyreUse::special);
  const auto people = UnitSystem::metric;

  std::cout << "13/48 takes " << show_number(ChainLoop(trail_bike.chain(), 13_teeth, 48_teeth).links(616_mm), 3)
            << " links at 616 mm\n";
  const Setup one({.front = 13_teeth, .rear = 52_teeth, .tyre = tyre});
  const Setup other({.front = 12_teeth, .rear = 48_teeth, .tyre = tyre});
  for (const Setup& setup : {one, other}) {
    const ChainFit chain = appraise(trail_bike, setup).chain();
    std::cout << setup.front().count() << '/' << setup.rear().count() << ": " << chain.links.count()
              << " links, axle at " << show(chain.centre, people) << '\n';
  }
  const WearChange wear = compare(trail_bike, one, other).wear;
  std::cout << "12/48 against 13/52: the chain grows " << show_percent(wear.chain_stretch_change)
            << ", the rear sprocket lasts " << show_percent(wear.rear_life_change) << '\n';
  for (const Teeth teeth : {12_teeth, 13_teeth})
    std::cout << "each of " << teeth.count() << " teeth meets " << hunting(teeth, 110_links).distinct_links
              << " of 110 links\n";
}
