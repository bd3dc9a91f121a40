// SPDX-License-Identifier: MIT
// The numbers of lesson 2 in C++: what pushes, what resists, and which of them wins.
#include "machines.hpp"

#include <layshaft/layshaft.hpp>
#include <layshaft/show/display.hpp>

#include <iostream>

int main() {
  using namespace layshaft;
  const Machine farm_bike = machine_called("farm_bike");
  const TyreSize fatter("3.00-17 M/C 45P TT");
  const auto people = UnitSystem::metric;
  const Speed pace = 25.0 * units::kmh;

  for (const int rear : {45, 47, 50}) {
    const Setup setup({.front = 15_teeth, .rear = Teeth(rear), .tyre = fatter});
    const OnRoad there = on_road(farm_bike, setup);
    std::cout << "15/" << rear << " on 3.00-17\n"
              << "  thrust in second at 25 km/h " << show(thrust(farm_bike, setup, 2, pace), people) << '\n'
              << "  steepest hill in second " << show(there.gears[1].climb.slope, people) << " at "
              << show(there.gears[1].climb.speed, people) << '\n'
              << "  top speed " << show(there.top_speed.speed, people) << ", held by "
              << to_string(there.top_speed.limit) << '\n';
  }
  std::cout << "22 % takes " << show(farm_bike.road_load()->resistance(pace, Slope(0.22)), people) << " at 25 km/h\n";
}
