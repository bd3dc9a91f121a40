// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/gearing/downshift.hpp>
#include <layshaft/gearing/road_speeds.hpp>
#include <layshaft/instrument/speedometer_reading.hpp>
#include <layshaft/setup/cautions.hpp>
#include <layshaft/setup/changes.hpp>
#include <layshaft/setup/machine.hpp>
#include <layshaft/setup/on_road.hpp>
#include <layshaft/wear/tooth_wear.hpp>

/// @file
/// Every number that follows from a machine and a set-up.
namespace layshaft {

/// An appraisal, made of parts; each is made by its own layer. Nothing in it refers to the machine or the set-up, and
/// making one allocates nothing.
class Appraisal {
 public:
  Appraisal(const RoadSpeeds& speeds, const ChainFit& chain, const ChainDrive& drive, const ToothWear& wear,
            const SpeedometerReading& speedometer, const std::optional<OnRoad>& road, const Cautions& cautions)
      : speeds_(speeds),
        chain_(chain),
        drive_(drive),
        wear_(wear),
        speedometer_(speedometer),
        road_(road),
        cautions_(cautions) {}

  /// Engine turns per turn of the wheel, from first gear up.
  [[nodiscard]] const FixedList<double, most_gears>& overall_ratios() const& noexcept {
    return speeds_.overall_ratios();
  }
  /// Of an appraisal that is about to end, a copy, so that `for (double ratio : appraise(...).overall_ratios())` is
  /// safe.
  [[nodiscard]] FixedList<double, most_gears> overall_ratios() && noexcept { return speeds_.overall_ratios(); }
  /// The rear tyre's rolling circumference.
  [[nodiscard]] const Band<Length>& circumference() const noexcept { return speeds_.circumference(); }
  /// Links, axle position, and the room the adjuster leaves.
  [[nodiscard]] const ChainFit& chain() const noexcept { return chain_; }
  /// Teeth in mesh, slack through the travel, pulls, safety and losses, as far as the machine states what they take.
  [[nodiscard]] const ChainDrive& drive() const noexcept { return drive_; }
  /// How often each tooth meets the chain, and which links.
  [[nodiscard]] const ToothWear& wear() const noexcept { return wear_; }
  /// What the speedometer and odometer show, against the stock set-up.
  [[nodiscard]] const SpeedometerReading& speedometer() const noexcept { return speedometer_; }
  /// Top speed, hills, start and shifts, where the machine states an engine, a road load and a mass.
  [[nodiscard]] const std::optional<OnRoad>& road() const noexcept { return road_; }
  /// What the rider must be told, against the stock set-up.
  [[nodiscard]] const Cautions& cautions() const& noexcept { return cautions_; }
  [[nodiscard]] Cautions cautions() && noexcept { return cautions_; }

  /// The road speed at an engine speed in a gear, counted from 1; a RangeError where either is out of range.
  [[nodiscard]] Result<Band<Speed>> try_speed_at(AngularSpeed engine_speed, int gear) const {
    return speeds_.try_speed_at(engine_speed, gear);
  }
  /// The engine speed at a road speed in a gear.
  [[nodiscard]] Result<Band<AngularSpeed>> try_engine_speed_at(Speed road_speed, int gear) const {
    return speeds_.try_engine_speed_at(road_speed, gear);
  }
  /// The speeds a gear covers, from the lowest engine speed that pulls cleanly to the limit.
  [[nodiscard]] Result<SpeedRange> try_speed_range(int gear) const { return speeds_.try_speed_range(gear); }
  /// What a shift down into a gear makes the engine turn at a road speed.
  [[nodiscard]] Result<Downshift> try_downshift(int into_gear, Speed road_speed) const {
    return layshaft::try_downshift(speeds_, speeds_.rev_limit(), into_gear, road_speed);
  }
#if LAYSHAFT_EXCEPTIONS
  /// @throws RangeError
  [[nodiscard]] Downshift downshift(int into_gear, Speed road_speed) const {
    return try_downshift(into_gear, road_speed).value();
  }
  /// @throws RangeError
  [[nodiscard]] Band<Speed> speed_at(AngularSpeed engine_speed, int gear) const {
    return try_speed_at(engine_speed, gear).value();
  }
  /// @throws RangeError
  [[nodiscard]] Band<AngularSpeed> engine_speed_at(Speed road_speed, int gear) const {
    return try_engine_speed_at(road_speed, gear).value();
  }
  /// @throws RangeError
  [[nodiscard]] SpeedRange speed_range(int gear) const { return try_speed_range(gear).value(); }
#endif

  friend bool operator==(const Appraisal&, const Appraisal&) = default;

 private:
  RoadSpeeds speeds_;
  ChainFit chain_;
  ChainDrive drive_;
  ToothWear wear_;
  SpeedometerReading speedometer_;
  std::optional<OnRoad> road_;
  Cautions cautions_;
};

namespace detail {

/// The chain of a set-up: its own links, or the shortest even count that closes in the machine's adjuster.
[[nodiscard]] inline Result<ChainFit> fit_chain_of(const Machine& machine, const Setup& setup) {
  const ChainLoop loop = loop_of(machine, setup);
  if (setup.links()) return try_fit_links(loop, *setup.links(), machine.adjuster());
  const auto links = try_shortest_links(loop, machine.adjuster());
  if (!links) return links.error();
  return try_fit_links(loop, *links, machine.adjuster());
}

/// What the engine's greatest torque does to the chain in first gear.
[[nodiscard]] inline ChainDuty duty_in_first_gear(const Machine& machine) {
  const double ratio = machine.gearbox().primary().ratio() * machine.gearbox().gears()[0].ratio();
  return {.torque = machine.peak_torque()->torque * ratio, .shaft_speed = machine.peak_torque()->engine_speed / ratio};
}

/// The chain drive of a set-up, beside that of the stock one.
[[nodiscard]] inline Result<ChainDrive> drive_of(const Machine& machine, const Setup& setup, const ChainFit& chain) {
  const ChainLoop loop = loop_of(machine, setup);
  const Setup& stock = machine.stock();
  const ChainLoop stock_loop = loop_of(machine, stock);
  const Length centre = chain.centre.nominal;
  const Engagement mesh =
      *try_engagement(loop, std::max(centre, loop.smallest_centre()));  // its own chain closes there
  const auto stock_mesh = try_engagement(stock_loop, std::max(centre, stock_loop.smallest_centre()));
  if (!stock_mesh) return stock_mesh.error();
  ChainDrive drive{mesh, stock_mesh->front, {}, {}, {}};
  if (machine.suspension() && machine.adjuster().slack() > Length() && chain.fits) {
    const auto stock_chain = fit_chain_of(machine, stock);
    if (!stock_chain) return stock_chain.error();
    const auto left = try_slack_left(*machine.suspension(), machine.adjuster().slack(), loop, chain.links, stock_loop,
                                     stock_chain->links);
    if (!left) return left.error();
    drive.slack = *left;
  }
  if (machine.peak_torque()) {
    const ChainDuty duty = duty_in_first_gear(machine);
    const auto loads = try_chain_loads(loop, duty, setup.chain_made());
    if (!loads) return loads.error();
    drive.loads = *loads;
    // The same duty, and a chain that was checked with the set-up.
    drive.stock_safety = try_chain_loads(stock_loop, duty, stock.chain_made())->safety;
  }
  return drive;
}

/// The appraisal, with its cautions told against a base set-up.
[[nodiscard]] inline Result<Appraisal> appraise_against(const Machine& machine, const Setup& base, const Setup& setup) {
  const auto chain = fit_chain_of(machine, setup);
  if (!chain) return chain.error();
  const auto drive = drive_of(machine, setup, *chain);
  if (!drive) return drive.error();
  const RoadSpeeds speeds(machine.gearbox(), setup.front(), setup.rear(), Rollout(setup).circumference());
  const SpeedometerReading speedometer(machine.speedometer().reading_error(),
                                       indicated_ratio(machine.speedometer().sensor(), machine.stock(), setup));
  const ToothWear wear = tooth_wear(setup.front(), setup.rear(), chain->links, speeds.circumference());
  std::optional<OnRoad> road;
  if (machine.engine() && machine.road_load() && (machine.body() || machine.road_load()->mass()))
    road = *try_on_road(machine, setup);  // all that it asks for is there
  return Appraisal(speeds, *chain, *drive, wear, speedometer, road,
                   find_cautions(machine, base, setup, *chain, *drive, speeds, speedometer, road));
}

}  // namespace detail

/// Appraises a set-up on a machine. `links` absent from the set-up: the shortest even chain that reaches the machine's
/// stated slack with room to come forward.
/// @return the appraisal; or an error where the sprockets cannot carry the chain, or no even chain fits the adjuster.
/// Stated links that miss the adjuster are no error: `chain().fits` is false, and a caution says by how much.
[[nodiscard]] inline Result<Appraisal> try_appraise(const Machine& machine, const Setup& setup) {
  return detail::appraise_against(machine, machine.stock(), setup);
}

#if LAYSHAFT_EXCEPTIONS
/// Appraises a set-up on a machine.
/// @throws RangeError or Error as `try_appraise` says.
[[nodiscard]] inline Appraisal appraise(const Machine& machine, const Setup& setup) {
  return try_appraise(machine, setup).value();
}
#endif

}  // namespace layshaft
