// SPDX-License-Identifier: MIT
#include <layshaft/choose/choose.hpp>
#include <layshaft/layshaft.hpp>

#if LAYSHAFT_EXCEPTIONS
#error "this unit is meant to be built without exceptions"
#endif

namespace {
using namespace layshaft;

bool errors_are_values() {
  const auto good = Teeth::make(14);
  const auto bad = Teeth::make(0);
  return good && !bad && bad.error().kind() == ErrorKind::range;
}
/// Of 42 to 52 teeth behind, the nearest to 47 wins, in one thread and in several.
bool threads_choose() {
  const auto gearbox = Gearbox::make({.gears = {2.5, 1.5, 1.0}, .idle = 1500_rpm, .rev_limit = 9000_rpm});
  const auto adjuster = Adjuster::make(560_mm, 660_mm);
  const auto chain = ChainSeries::make("520");
  const auto tyre = TyreSize::make("110/100-18 64M");
  const auto speedometer = Speedometer::make(SpeedometerSensor::layshaft);
  if (!gearbox || !adjuster || !chain || !tyre || !speedometer) return false;
  const auto stock = Setup::make({.front = 12_teeth, .rear = 47_teeth, .tyre = *tyre});
  if (!stock) return false;
  const auto machine = Machine::make({.name = "a machine",
                                      .gearbox = *gearbox,
                                      .adjuster = *adjuster,
                                      .chain = *chain,
                                      .speedometer = *speedometer,
                                      .stock = *stock});
  if (!machine) return false;
  Space space{.fronts = {{12_teeth}}, .rears = {}};
  for (int teeth = 42; teeth <= 52; ++teeth) space.rears.push_back({*Teeth::make(teeth)});
  const Goals goals{{}, {{{Measure::thrust_change}, Want::target, Amount::fraction(0.0)}}};
  for (const int threads : {1, 3}) {
    const auto choice = try_choose(*machine, space, goals, {.threads = threads});
    if (!choice || choice->examined != 11 || choice->front.size() != 1) return false;
    if (choice->front[0].setup.rear() != 47_teeth) return false;
  }
  return true;
}
}  // namespace

int main() { return errors_are_values() && threads_choose() ? 0 : 1; }
