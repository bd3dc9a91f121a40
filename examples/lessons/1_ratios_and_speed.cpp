// SPDX-License-Identifier: MIT
// The numbers of lesson 1 in C++: ratios in a row, what a tyre rolls, and the speed that both make.
#include "machines.hpp"

#include <layshaft/layshaft.hpp>
#include <layshaft/show/display.hpp>

#include <iostream>

int main() {
  using namespace layshaft;
  const Machine cycle = machine_called("cargo_cycle"), trail_bike = machine_called("trail_bike");
  const auto people = UnitSystem::metric;

  // A chain hands on teeth: a wheel with half the teeth turns twice as often.
  std::cout << "cycle: " << show_number(final_ratio(38_teeth, 19_teeth), 3)
            << " turns of the crank a turn of the wheel\n";
  const Appraisal of_cycle = appraise(cycle, cycle.stock());
  std::cout << "cycle, first gear at 50 rpm: " << show(of_cycle.speed_at(50.0 * units::rpm, 1), people) << '\n';

  // Ratios in a row multiply, and the tyre is the last of them.
  const TyreSize knobbly("120/90-18 M/C 65R TT", TyreUse::special);
  const Comparison change =
      compare(trail_bike, trail_bike.stock(), Setup({.front = 13_teeth, .rear = 50_teeth, .tyre = knobbly}));
  const AngularSpeed engine_speed = 5000.0 * units::rpm;
  std::cout << "trail bike, third gear: " << show_number(change.base.overall_ratios()[2], 3)
            << " turns of the engine a turn of the wheel\n"
            << "as made, one turn rolls " << show(change.base.circumference(), people) << ", at 5000 rpm in third "
            << show(change.base.speed_at(engine_speed, 3), people) << '\n'
            << "on 120/90-18 with knobs and 50 teeth behind " << show(change.trial.speed_at(engine_speed, 3), people)
            << '\n'
            << "change of thrust " << show_percent(change.thrust_change) << '\n';
}
