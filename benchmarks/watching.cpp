// SPDX-License-Identifier: MIT
// What it costs to watch: a number alone, the same with its working recorded, and with the working written out as text.
#include <layshaft/explain.hpp>
#include <layshaft/layshaft.hpp>
#include <layshaft/show/working_text.hpp>

#include "ratios.hpp"

namespace {

using namespace layshaft;

/// The machine, and a set-up with a taller tyre, partly worn, and more teeth behind.
const Machine& machine() {
  static const Machine made({.name = "trail bike",
                             .gearbox = Gearbox({.primary = GearPair{20_teeth, 61_teeth},
                                                 .gears = {2.75, 1.9, 1.4, 1.1, 0.9},
                                                 .idle = 1500_rpm,
                                                 .rev_limit = 9500_rpm}),
                             .adjuster = Adjuster(590_mm, 625_mm, 30_mm),
                             .chain = ChainSeries("520"),
                             .speedometer = Speedometer(SpeedometerSensor::layshaft),
                             .stock = Setup({.front = 13_teeth, .rear = 48_teeth, .tyre = "120/80-18"_tyre})});
  return made;
}
const Setup& trial() {
  static const Setup made({.front = 13_teeth, .rear = 50_teeth, .tyre = TyreSize("120/90-18"), .tread_worn = 3_mm});
  return made;
}
ChainLoop loop() { return ChainLoop(machine().chain(), trial().front(), trial().rear()); }
const Comparison& comparison() {
  static const Comparison made = compare(machine(), machine().stock(), trial());
  return made;
}

/// Adds a number that is asked for alone, `plain()`, and with its working, `explain()`.
template <class Plain, class Explain>
void add(const char* number, Plain plain, Explain explain) {
  ratios::must_agree(number, plain(), explain().result().result().value, 0.0);
  ratios::add(number, "the number", plain);
  ratios::add(number, "its working, recorded", explain);
  ratios::add(number, "its working, as text", [explain] { return to_text(explain()).size(); });
}

}  // namespace

int main(int count, char** arguments) {
  add(
      "road speed in third gear, a band",
      [] {
        const Band<Length> circumference = Rollout(trial()).circumference();
        const RoadSpeeds speeds(machine().gearbox(), trial().front(), trial().rear(), circumference);
        return speeds.try_speed_at(5000_rpm, 3)->nominal.value();
      },
      [] { return explain(machine(), trial(), "road speed", {.gear = 3, .engine_speed = 5000_rpm}); });
  add(
      "links for a centre distance", [] { return loop().links(612_mm); },
      [] { return loop().explain("links", {.centre = 612_mm}); });
  add(
      "axle position, a band",
      [] {
        const Links links = shortest_links(loop(), machine().adjuster());
        return fit_links(loop(), links, machine().adjuster()).centre.nominal.value();
      },
      [] { return explain(machine(), trial(), "centre"); });
  add(
      "change of thrust with its causes, a band",
      [] {
        benchmark::DoNotOptimize(contributions(Change::thrust, machine().stock(), trial()));
        return thrust_change(machine().stock(), trial()).nominal;
      },
      [] { return comparison().explain("thrust"); });
  return ratios::run(count, arguments);
}
