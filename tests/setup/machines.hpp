// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/setup/setup.hpp>

#include <vector>

/// @file
/// Three invented machines for the tests, each with numbers of its own.
namespace layshaft_test {

using namespace layshaft;

inline GearRatio pair(int driving, int driven) { return GearPair{Teeth(driving), Teeth(driven)}; }

/// A trail bike: its speedometer senses the layshaft, and nobody measured its error.
inline MachineParts trail_bike_parts() {
  return {
      .name = "Fernbrake 280 trail bike",
      .gearbox = Gearbox({.primary = pair(21, 66),
                          .gears = {pair(12, 33), pair(16, 30), pair(19, 28), pair(22, 27), pair(24, 25)},
                          .idle = 1500_rpm,
                          .rev_limit = 9100_rpm,
                          .lowest_pull = 2800_rpm}),
      .adjuster = Adjuster(602_mm, 640_mm, 40_mm),
      .chain = ChainSeries("520"),
      .speedometer = Speedometer(SpeedometerSensor::layshaft),
      .stock = Setup(
          {.front = 12_teeth, .rear = 47_teeth, .tyre = "110/100-18 64M"_tyre, .front_tyre = "80/100-21 51M"_tyre})};
}
inline Machine trail_bike() { return Machine(trail_bike_parts()); }

/// A small farm bike on a narrow chain: its speedometer senses the front wheel and is known to be 2 to 6 % fast.
inline MachineParts farm_bike_parts() {
  return {.name = "Stile 95 farm bike",
          .gearbox = Gearbox({.primary = pair(19, 69),
                              .gears = {pair(11, 34), pair(16, 29), pair(21, 27), 1.04},
                              .idle = 1350_rpm,
                              .rev_limit = 8400_rpm}),
          .adjuster = Adjuster(505_mm, 533_mm, 22_mm),
          .chain = ChainSeries("420"),
          .speedometer = Speedometer(SpeedometerSensor::front_wheel, Band<double>{0.02, 0.04, 0.06}),
          .stock = Setup(
              {.front = 16_teeth, .rear = 44_teeth, .tyre = "2.75-17 41P"_tyre, .front_tyre = "2.50-17 38P"_tyre})};
}
inline Machine farm_bike() { return Machine(farm_bike_parts()); }

/// A chain-driven cargo cycle with a hub gear, whose rear wheel's rollout was measured.
inline MachineParts cargo_cycle_parts() {
  return {
      .name = "Weir cargo cycle",
      .gearbox = Gearbox(
          {.gears = {1.85, 1.5, 1.24, 1.0, 0.81, 0.67}, .idle = 28_rpm, .rev_limit = 115_rpm, .lowest_pull = 48_rpm}),
      .adjuster = Adjuster(441_mm, 466_mm, 12_mm),
      .chain = ChainSeries("cycle"),
      .speedometer = Speedometer(SpeedometerSensor::rear_wheel, Band<double>::exactly(0.0)),
      .stock = Setup({.front = 36_teeth, .rear = 18_teeth, .circumference = Band<Length>{1490_mm, 1500_mm, 1510_mm}}),
      .kind = MachineKind::cycle};
}
inline Machine cargo_cycle() { return Machine(cargo_cycle_parts()); }

inline std::vector<Machine> machines() { return {trail_bike(), farm_bike(), cargo_cycle()}; }

/// The set-up with some parts changed: `with(stock, [](SetupParts& parts) { parts.rear = 49_teeth; })`.
template <class Change>
Setup with(const Setup& setup, Change change) {
  SetupParts parts = setup.parts();
  change(parts);
  return Setup(parts);
}

/// The trail bike with so long an adjuster that many pairs close in it.
inline Machine roomy_trail_bike() {
  MachineParts parts = trail_bike_parts();
  parts.adjuster = Adjuster(560_mm, 660_mm);
  return Machine(parts);
}
/// The machine's stock set-up on other sprockets and so many links.
inline Setup on_sprockets(const Machine& machine, int front, int rear, int links) {
  return with(machine.stock(), [&](SetupParts& parts) {
    parts.front = Teeth(front);
    parts.rear = Teeth(rear);
    parts.links = Links(links);
  });
}

}  // namespace layshaft_test
