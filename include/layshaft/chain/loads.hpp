// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/chain/efficiency.hpp>
#include <layshaft/chain/loop.hpp>
#include <layshaft/chain/tension.hpp>
#include <layshaft/core/checks.hpp>

#include <optional>
#include <type_traits>

/// @file
/// What a chain carries under a torque: its pulls, how far from breaking it is, and what it loses.
namespace layshaft {

/// What is known of a chain beyond its series: from its maker, or measured. It overrides the series' own figures.
struct ChainMade {
  ChainSeal seal = ChainSeal::none;
  std::optional<Length> pin_diameter = {};            ///< 0.5 to 100 mm
  std::optional<Force> tensile_strength = {};         ///< 100 N to 10 MN
  std::optional<LinearDensity> mass_per_length = {};  ///< 0.01 to 200 kg/m
  std::optional<Length> plate_height = {};            ///< 1 to 500 mm
  std::optional<Band<double>> joint_friction = {};    ///< coefficient of pin in bush, 0 to 1
  std::optional<Band<Torque>> seal_drag = {};         ///< of one joint, 0 to 10 N m

  friend constexpr bool operator==(const ChainMade&, const ChainMade&) noexcept = default;
};

/// What acts on the chain.
struct ChainDuty {
  Torque torque;             ///< on the front sprocket: above 0, to 100,000 N m
  AngularSpeed shaft_speed;  ///< of the front sprocket: 0 to 30,000 rpm
  double spike = 1.0;        ///< greatest torque over this one, when gears or ground strike: 1 to 20
  Force slack_tension = {};  ///< in the slack run besides the centrifugal: 0 to 100 kN

  friend constexpr bool operator==(const ChainDuty&, const ChainDuty&) noexcept = default;
};

/// The chain under its duty. What a series has no figure for, and nobody stated, is absent.
struct ChainLoads {
  Speed chain_speed;
  Force pull;                                ///< of the tight run over the slack one
  std::optional<Force> centrifugal_tension;  ///< in both runs; absent without the chain's mass
  Force tight_tension;                       ///< all told; without the chain's mass, without the centrifugal part
  Force greatest_tension;                    ///< the same when the torque strikes
  std::optional<double> safety;              ///< strength over the greatest pull; absent without the strength
  std::optional<Band<double>> efficiency;    ///< power out over power in; absent without the pin's diameter
  std::optional<Band<Power>> loss;           ///< the rest of the power

  friend constexpr bool operator==(const ChainLoads&, const ChainLoads&) noexcept = default;
};

namespace detail {

inline constexpr Source chain_maker{"stated for this chain", Certainty::stated};

/// A figure of the chain, as stated or of its series.
template <class Watch, class Value>
[[nodiscard]] Value figure(Watch watch, ValueName name, const std::optional<Value>& stated,
                           const std::optional<Value>& of_series, const ChainSeries& series, ChainProperty property) {
  if (stated) return watch.given(name, *stated, chain_maker);
  return watch.looked_up(name, *of_series, series.name(), series.source(property));
}

[[nodiscard]] inline std::optional<Length> pin_of(const ChainSeries& series, const ChainMade& made) noexcept {
  return made.pin_diameter ? made.pin_diameter : series.pin_diameter();
}
[[nodiscard]] inline std::optional<Force> strength_of(const ChainSeries& series, const ChainMade& made) noexcept {
  return made.tensile_strength ? made.tensile_strength : series.tensile_strength();
}
[[nodiscard]] inline std::optional<LinearDensity> mass_of(const ChainSeries& series, const ChainMade& made) noexcept {
  return made.mass_per_length ? made.mass_per_length : series.mass_per_length();
}
[[nodiscard]] constexpr JointResistance resistance_of(const ChainMade& made) noexcept {
  JointResistance resistance = joint_resistance(made.seal);
  if (made.joint_friction) resistance.friction = *made.joint_friction;
  if (made.seal_drag) resistance.seal_drag = *made.seal_drag;
  return resistance;
}

/// Out of range where a stated figure is.
[[nodiscard]] inline std::optional<Error> outside(const ChainMade& made) {
  std::optional<Error> error;
  if (made.pin_diameter) error = outside("pin_diameter", *made.pin_diameter, 0.5_mm, 100.0_mm);
  if (!error && made.tensile_strength) error = outside("tensile_strength", *made.tensile_strength, 100.0_N, 1e7_N);
  if (!error && made.mass_per_length)
    error = outside("mass_per_length", *made.mass_per_length, 0.01_kg_per_m, 200.0_kg_per_m);
  if (!error && made.plate_height) error = outside("plate_height", *made.plate_height, 1.0_mm, 500.0_mm);
  if (!error && made.joint_friction) error = outside("joint_friction", *made.joint_friction, 0.0, 1.0);
  if (!error && made.seal_drag) error = outside("seal_drag", *made.seal_drag, Torque(), 10.0_Nm);
  return error;
}
[[nodiscard]] inline std::optional<Error> outside(const ChainDuty& duty) {
  if (auto error = outside("torque", duty.torque, 1e-6 * units::Nm, 1e5_Nm)) return error;
  if (auto error = outside("shaft_speed", duty.shaft_speed, AngularSpeed(), 30000.0_rpm)) return error;
  if (auto error = outside("spike", duty.spike, 1.0, 20.0)) return error;
  return outside("slack_tension", duty.slack_tension, Force(), 1e5_N);
}

/// The pulls of a chain under its duty, as whoever watches knows them.
template <class WatchedForce, class WatchedSpeed>
struct WatchedPulls {
  WatchedSpeed chain_speed;
  WatchedForce pull, slack, tight;
};
template <class Watch>
[[nodiscard]] auto pulls_at(Watch watch, const ChainLoop& loop, const ChainMade& made, const ChainDuty& duty) {
  const auto drive = loop.drive(watch);
  const auto torque = watch.given("torque", duty.torque);
  const auto shaft = watch.given("shaft_speed", duty.shaft_speed);
  const auto speed = watch.step(formula::chain_speed{}, drive.pitch, drive.front, shaft);
  const auto pull = watch.step(formula::chain_pull{}, torque, drive.front_diameter);
  const auto stated = watch.given("stated_slack_tension", duty.slack_tension);
  using Pulls = WatchedPulls<std::remove_cvref_t<decltype(pull)>, std::remove_cvref_t<decltype(speed)>>;
  if (!mass_of(loop.series(), made)) {
    const auto tight = watch.step(formula::tight_tension{}, pull, stated);
    return Pulls{speed, pull, stated, tight};
  }
  const auto mass = made.mass_per_length
                        ? watch.given("mass_per_length", *made.mass_per_length, chain_maker)
                        : watch.looked_up("mass_per_length", *loop.series().mass_per_length(), loop.series().name(),
                                          loop.series().source(ChainProperty::mass_per_length));
  const auto centrifugal = watch.step(formula::centrifugal_tension{}, mass, speed);
  const auto slack = watch.step(formula::slack_tension{}, stated, centrifugal);
  const auto tight = watch.step(formula::tight_tension{}, pull, slack);
  return Pulls{speed, pull, slack, tight};
}
/// The chain's efficiency at a corner of its joints' resistance: low where they resist most.
template <class Watch>
[[nodiscard]] auto efficiency_at(Watch watch, const ChainLoop& loop, const ChainMade& made, const ChainDuty& duty,
                                 Corner resisting) {
  const auto pulls = pulls_at(watch, loop, made, duty);
  const JointResistance resistance = resistance_of(made);
  const auto friction = watch.given("joint_friction", resistance.friction.at(resisting),
                                    made.joint_friction ? chain_maker : joint_friction_source);
  const auto drag =
      watch.given("seal_drag", resistance.seal_drag.at(resisting), made.seal_drag ? chain_maker : seal_drag_source);
  const auto pin = made.pin_diameter
                       ? watch.given("pin_diameter", *made.pin_diameter, chain_maker)
                       : watch.looked_up("pin_diameter", *loop.series().pin_diameter(), loop.series().name(),
                                         loop.series().source(ChainProperty::pin_diameter));
  return loop.with_parts(watch, [&](const auto& pitch, const auto& front, const auto& rear) {
    const auto rubbing =
        watch.step(formula::joint_friction_pull{}, friction, pin, pitch, front, rear, pulls.tight, pulls.slack);
    const auto sealing = watch.step(formula::seal_drag_pull{}, drag, pitch, front, rear);
    return watch.step(formula::chain_efficiency{}, pulls.pull, rubbing, sealing);
  });
}
/// Strength over the greatest pull, for whoever watches; asked where the strength is known.
template <class Watch>
[[nodiscard]] auto safety_at(Watch watch, const ChainLoop& loop, const ChainMade& made, const ChainDuty& duty) {
  ChainDuty struck = duty;
  struck.torque = duty.torque * duty.spike;
  const auto pulls = pulls_at(watch, loop, made, struck);
  const auto strength = made.tensile_strength ? watch.given("tensile_strength", *made.tensile_strength, chain_maker)
                                              : watch.looked_up("tensile_strength", *loop.series().tensile_strength(),
                                                                loop.series().name(),
                                                                loop.series().source(ChainProperty::tensile_strength));
  return watch.step(formula::chain_safety{}, strength, pulls.tight);
}

}  // namespace detail

/// The chain under its duty; or a RangeError that names the value and its range.
[[nodiscard]] inline Result<ChainLoads> try_chain_loads(const ChainLoop& loop, const ChainDuty& duty,
                                                        const ChainMade& made = {}) {
  if (auto error = detail::outside(duty)) return *std::move(error);
  if (auto error = detail::outside(made)) return *std::move(error);
  const auto pulls = detail::pulls_at(Unwatched(), loop, made, duty);
  ChainDuty struck = duty;
  struck.torque = duty.torque * duty.spike;
  ChainLoads loads{.chain_speed = pulls.chain_speed,
                   .pull = pulls.pull,
                   .centrifugal_tension = {},
                   .tight_tension = pulls.tight,
                   .greatest_tension = detail::pulls_at(Unwatched(), loop, made, struck).tight,
                   .safety = {},
                   .efficiency = {},
                   .loss = {}};
  if (const auto mass = detail::mass_of(loop.series(), made))
    loads.centrifugal_tension = centrifugal_tension(*mass, pulls.chain_speed);
  if (detail::strength_of(loop.series(), made)) loads.safety = detail::safety_at(Unwatched(), loop, made, duty);
  if (detail::pin_of(loop.series(), made)) {
    loads.efficiency =
        over_runs(one_cause, [&](Corner at) { return detail::efficiency_at(Unwatched(), loop, made, duty, at); });
    const Power in = chain_power(pulls.pull, pulls.chain_speed);
    loads.loss = over(*loads.efficiency, [&](double efficiency) { return (1.0 - efficiency) * in; });
  }
  return loads;
}
#if LAYSHAFT_EXCEPTIONS
/// @throws RangeError as `try_chain_loads` says.
[[nodiscard]] inline ChainLoads chain_loads(const ChainLoop& loop, const ChainDuty& duty, const ChainMade& made = {}) {
  return try_chain_loads(loop, duty, made).value();
}
#endif

}  // namespace layshaft
