// SPDX-License-Identifier: MIT
// A machine with a set-up on it.
#include <layshaft/setup/setup.hpp>

using namespace layshaft;

int main() {
  const Machine machine(
      {.name = "Thornless 200 trail bike",
       .gearbox = Gearbox({.primary = 3.1, .gears = {2.8, 1.9, 1.4}, .idle = 1400_rpm, .rev_limit = 9000_rpm}),
       .adjuster = Adjuster(602_mm, 640_mm, 30_mm),
       .chain = ChainSeries("520"),
       .speedometer = Speedometer(SpeedometerSensor::layshaft),
       .stock = Setup({.front = 13_teeth, .rear = 48_teeth, .tyre = "120/80-18"_tyre})});
  const auto appraisal = try_appraise(machine, machine.stock());
  const auto comparison = try_compare(machine, machine.stock(), machine.stock());
  return appraisal && comparison ? 0 : 1;
}
