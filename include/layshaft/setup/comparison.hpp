// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/chain/sprocket.hpp>
#include <layshaft/gearing/rule_of_thumb.hpp>
#include <layshaft/setup/appraisal.hpp>
#include <layshaft/setup/contributions.hpp>
#include <layshaft/wear/tension.hpp>

#include <string_view>

/// @file
/// Two set-ups of one machine side by side.
namespace layshaft {

/// What wears otherwise than before: fractions, trial / base - 1.
struct WearChange {
  Band<double> chain_tension_change;   ///< the chain's pull at equal thrust
  Band<double> front_contacts_change;  ///< meetings of each front tooth per kilometre
  Band<double> rear_contacts_change;   ///< meetings of each rear tooth per kilometre

  friend constexpr bool operator==(const WearChange&, const WearChange&) = default;
};

class Working;

/// What the changes of a comparison depend on.
struct ComparedSetups {
  Setup base;
  Setup trial;
  ChainSeries chain;  ///< the machine's, where a set-up names no other
  SpeedometerSensor sensor;

  friend bool operator==(const ComparedSetups&, const ComparedSetups&) = default;
};

/// Base and trial appraised, and what changes between them. Changes are `trial / base - 1`.
struct Comparison {
  Appraisal base;
  Appraisal trial;                   ///< its cautions are told against the base
  Band<double> thrust_change;        ///< in every gear, at equal engine torque and drive efficiency
  Band<double> speed_change;         ///< in every gear, at equal engine speed
  Band<double> engine_speed_change;  ///< in every gear, at equal road speed
  Band<double> indicated_ratio;      ///< what the speedometer shows after over before, at the same true speed
  int links_change;
  WearChange wear;
  RuleOfThumb rule_of_thumb;  ///< the trade's answer for thrust, beside the exact one
  ComparedSetups setups;      ///< what was compared

  /// Who takes and gives how much of the change of thrust, speed or engine speed, in points that add up to it.
  [[nodiscard]] Contributions contributions(Change change) const {
    return layshaft::contributions(change, setups.base, setups.trial);
  }
  /// How a change came about, `explain("thrust")`; an unknown name is an error that lists those there are. Defined in
  /// setup/explain.hpp, which is opt-in.
  [[nodiscard]] Result<Working> try_explain(std::string_view what) const;
#if LAYSHAFT_EXCEPTIONS
  /// @throws ParseError that lists the names there are.
  [[nodiscard]] Working explain(std::string_view what) const;
#endif

  /// What the rider must be told before riding on the trial set-up.
  [[nodiscard]] const Cautions& cautions() const& noexcept { return trial.cautions(); }
  /// Of a comparison that is about to end, a copy.
  [[nodiscard]] Cautions cautions() && noexcept { return trial.cautions(); }

  friend bool operator==(const Comparison&, const Comparison&) = default;
};

namespace detail {

/// The changes of wear, one run each, for whoever watches.

template <class Watch>
[[nodiscard]] auto rear_pitch_diameter_of(Watch watch, const Setup& setup, ChainSeries machines) {
  const ChainSeries series = setup.chain().value_or(machines);
  const auto pitch = watch.looked_up("pitch", series.pitch(), series.name(), series.source(ChainProperty::pitch));
  return watch.step("rear_pitch_diameter", formula::pitch_diameter{}, pitch, watch.given("rear", setup.rear()));
}
template <class Watch>
[[nodiscard]] auto chain_tension_change(Watch watch, const ComparedSetups& setups, const WheelCorners& at) {
  const auto base_circumference = base_wheel(watch, setups.base, at);
  const auto base_diameter = rear_pitch_diameter_of(watch.on(Scope::base), setups.base, setups.chain);
  const auto trial_circumference = trial_wheel(watch, setups.trial, at);
  const auto trial_diameter = rear_pitch_diameter_of(watch.on(Scope::trial), setups.trial, setups.chain);
  return watch.step(formula::chain_tension_change{}, base_circumference, base_diameter, trial_circumference,
                    trial_diameter);
}
template <class Watch>
[[nodiscard]] auto front_contacts_change(Watch watch, const ComparedSetups& setups, const WheelCorners& at) {
  return with_gearing(watch, setups.base, setups.trial, at, [&](const auto&... gearing) {
    return watch.step("front_contacts_change", formula::contacts_change{},
                      watch.step(formula::turns_ratio{}, gearing...));
  });
}
template <class Watch>
[[nodiscard]] auto rear_contacts_change(Watch watch, const ComparedSetups& setups, const WheelCorners& at) {
  const auto base_circumference = base_wheel(watch, setups.base, at);
  const auto trial_circumference = trial_wheel(watch, setups.trial, at);
  return watch.step("rear_contacts_change", formula::contacts_change{},
                    watch.step("wheel_turns_ratio", formula::tyre_factor{}, base_circumference, trial_circumference));
}
/// The trade's rule for the change of thrust, for whoever watches.
template <class Watch>
[[nodiscard]] auto thrust_change_by_thumb(Watch watch, const Setup& base, const Setup& trial, const WheelCorners& at) {
  const auto before = watch.on(Scope::base), after = watch.on(Scope::trial);
  const auto base_front = before.given("front", base.front()), base_rear = before.given("rear", base.rear());
  const auto trial_front = after.given("front", trial.front()), trial_rear = after.given("rear", trial.rear());
  const auto base_circumference = base_wheel(watch, base, at);
  const auto trial_circumference = trial_wheel(watch, trial, at);
  const auto rear_added = watch.step(formula::rear_added{}, base_rear, trial_rear);
  const auto front_removed = watch.step(formula::front_removed{}, base_front, trial_front);
  const auto growth =
      watch.step("tyre_growth", formula::circumference_change{}, base_circumference, trial_circumference);
  return watch.step(formula::thrust_change_by_thumb{}, rear_added, front_removed, growth);
}

}  // namespace detail

/// The change of the chain's pull, of contacts, over the causes the set-ups do not share. Both rear sprockets' pitch
/// diameters are those of their own chain series.
[[nodiscard]] inline WearChange wear_change(const ComparedSetups& setups) {
  const auto runs = wheel_corners(Rollout(setups.base), Rollout(setups.trial));
  using detail::chain_tension_change, detail::front_contacts_change, detail::rear_contacts_change;
  return {over_runs(runs, [&](const auto& at) { return chain_tension_change(Unwatched(), setups, at); }),
          over_runs(runs, [&](const auto& at) { return front_contacts_change(Unwatched(), setups, at); }),
          over_runs(runs, [&](const auto& at) { return rear_contacts_change(Unwatched(), setups, at); })};
}

/// Compares two set-ups of one machine.
/// @return the comparison; or the error of the set-up that cannot be appraised, which it names.
[[nodiscard]] inline Result<Comparison> try_compare(const Machine& machine, const Setup& base, const Setup& trial) {
  const auto before = detail::appraise_against(machine, base, base);
  if (!before) return before.error().in("base");
  const auto after = detail::appraise_against(machine, base, trial);
  if (!after) return after.error().in("trial");
  const ComparedSetups setups{base, trial, machine.chain(), machine.speedometer().sensor()};
  const Band<double> thrust = thrust_change(base, trial);
  const double by_thumb = detail::thrust_change_by_thumb(Unwatched(), base, trial, WheelCorners());
  return Comparison{.base = *before,
                    .trial = *after,
                    .thrust_change = thrust,
                    .speed_change = speed_change(base, trial),
                    .engine_speed_change = engine_speed_change(base, trial),
                    .indicated_ratio = indicated_ratio(setups.sensor, base, trial),
                    .links_change = after->chain().links.count() - before->chain().links.count(),
                    .wear = wear_change(setups),
                    .rule_of_thumb = {by_thumb, by_thumb - thrust.nominal},
                    .setups = setups};
}

#if LAYSHAFT_EXCEPTIONS
/// Compares two set-ups of one machine.
/// @throws RangeError or Error that names the set-up which cannot be appraised.
[[nodiscard]] inline Comparison compare(const Machine& machine, const Setup& base, const Setup& trial) {
  return try_compare(machine, base, trial).value();
}
#endif

}  // namespace layshaft
