// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/chain/sprocket.hpp>
#include <layshaft/gearing/rule_of_thumb.hpp>
#include <layshaft/setup/appraisal.hpp>
#include <layshaft/setup/contributions.hpp>
#include <layshaft/wear/chain_stretch.hpp>
#include <layshaft/wear/tension.hpp>
#include <layshaft/wear/tooth_weight.hpp>

#include <string_view>

/// @file
/// Two set-ups of one machine side by side.
namespace layshaft {

/// What wears otherwise than before: fractions, trial / base - 1.
struct WearChange {
  Band<double> chain_tension_change;   ///< the chain's pull at equal thrust
  Band<double> front_contacts_change;  ///< meetings of each front tooth per kilometre
  Band<double> rear_contacts_change;   ///< meetings of each rear tooth per kilometre
  Band<double> chain_stretch_change;   ///< how fast the chain grows at equal thrust, its centrifugal pull left out
  Band<double> front_tooth_change;     ///< how fast each front tooth wears, of its material where both state it
  Band<double> rear_tooth_change;      ///< how fast each rear tooth wears
  Band<double> loss_change;            ///< share of power that the joints lose, at equal thrust

  friend constexpr bool operator==(const WearChange&, const WearChange&) = default;
};

class Working;

/// What the changes of a comparison depend on.
struct ComparedSetups {
  Setup base;
  Setup trial;
  ChainSeries chain;  ///< the machine's, where a set-up names no other
  SpeedometerSensor sensor;
  Links base_links;
  Links trial_links;

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
/// How fast a set-up's chain grows under a thrust of 100 N. The wheel's circumference cancels: a larger wheel pulls
/// harder and turns less.
template <class Watch>
[[nodiscard]] auto stretch_of(Watch watch, const Setup& setup, ChainSeries machines, Links links) {
  const ChainLoop loop(setup.chain().value_or(machines), setup.front(), setup.rear());
  const auto thrust = watch.given("thrust", reference_thrust, reference_source);
  const auto circumference = watch.given("circumference", reference_circumference, reference_source);
  return stretch_over(watch, loop, links, thrust, circumference, 1000.0_km, Force(), road_wear_resistance.nominal,
                      road_wear_source);
}
template <class Watch>
[[nodiscard]] auto chain_stretch_change(Watch watch, const ComparedSetups& setups) {
  const auto base = stretch_of(watch.on(Scope::base), setups.base, setups.chain, setups.base_links);
  const auto trial = stretch_of(watch.on(Scope::trial), setups.trial, setups.chain, setups.trial_links);
  return watch.step("chain_stretch_change", formula::wear_rate_change{}, base, trial);
}
template <class Watch>
[[nodiscard]] auto front_tooth_change(Watch watch, const ComparedSetups& setups, const ToothWearCorners& at) {
  const bool materials = setups.base.front_material() && setups.trial.front_material();
  const auto weight = [&](auto of, const Setup& setup, Corner hardness) {
    return front_tooth_weight(of, setup.chain().value_or(setups.chain), setup.front(), setup.rear(),
                              materials ? setup.front_material() : std::nullopt, at.pressure, hardness);
  };
  const auto base = weight(watch.on(Scope::base), setups.base, at.base_hardness);
  const auto trial = weight(watch.on(Scope::trial), setups.trial, at.trial_hardness);
  return watch.step("front_tooth_change", formula::wear_rate_change{}, base, trial);
}
template <class Watch>
[[nodiscard]] auto rear_tooth_change(Watch watch, const ComparedSetups& setups, const ToothWearCorners& at) {
  const bool materials = setups.base.rear_material() && setups.trial.rear_material();
  const auto weight = [&](auto of, const Setup& setup, Corner hardness) {
    return rear_tooth_weight(of, setup.chain().value_or(setups.chain), setup.rear(),
                             materials ? setup.rear_material() : std::nullopt, at.pressure, hardness);
  };
  const auto base = weight(watch.on(Scope::base), setups.base, at.base_hardness);
  const auto trial = weight(watch.on(Scope::trial), setups.trial, at.trial_hardness);
  return watch.step("rear_tooth_change", formula::wear_rate_change{}, base, trial);
}
/// The loss in the joints at equal thrust goes with their bends: pull and speed cancel against the power.
template <class Watch>
[[nodiscard]] auto loss_change(Watch watch, const ComparedSetups& setups) {
  const auto bends_of = [](auto of, const Setup& setup) {
    const auto front = of.given("front", setup.front());
    const auto rear = of.given("rear", setup.rear());
    return of.step(formula::bends{}, front, rear);
  };
  const auto base = bends_of(watch.on(Scope::base), setups.base);
  const auto trial = bends_of(watch.on(Scope::trial), setups.trial);
  return watch.step("loss_change", formula::wear_rate_change{}, base, trial);
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

/// The change of the chain's pull, of contacts, of wear and loss, over the causes the set-ups do not share. Both rear
/// sprockets' pitch diameters are those of their own chain series.
[[nodiscard]] inline WearChange wear_change(const ComparedSetups& setups) {
  const auto runs = wheel_corners(Rollout(setups.base), Rollout(setups.trial));
  using detail::chain_tension_change, detail::front_contacts_change, detail::rear_contacts_change;
  return {over_runs(runs, [&](const auto& at) { return chain_tension_change(Unwatched(), setups, at); }),
          over_runs(runs, [&](const auto& at) { return front_contacts_change(Unwatched(), setups, at); }),
          over_runs(runs, [&](const auto& at) { return rear_contacts_change(Unwatched(), setups, at); }),
          Band<double>::exactly(detail::chain_stretch_change(Unwatched(), setups)),
          over_runs(tooth_wear_runs(setups.base.front_material(), setups.trial.front_material(),
                                    setups.base.front() == setups.trial.front()),
                    [&](const auto& at) { return detail::front_tooth_change(Unwatched(), setups, at); }),
          over_runs(tooth_wear_runs(setups.base.rear_material(), setups.trial.rear_material(),
                                    setups.base.rear() == setups.trial.rear()),
                    [&](const auto& at) { return detail::rear_tooth_change(Unwatched(), setups, at); }),
          Band<double>::exactly(detail::loss_change(Unwatched(), setups))};
}

/// Compares two set-ups of one machine.
/// @return the comparison; or the error of the set-up that cannot be appraised, which it names.
[[nodiscard]] inline Result<Comparison> try_compare(const Machine& machine, const Setup& base, const Setup& trial) {
  const auto before = detail::appraise_against(machine, base, base);
  if (!before) return before.error().in("base");
  const auto after = detail::appraise_against(machine, base, trial);
  if (!after) return after.error().in("trial");
  const ComparedSetups setups{
      base, trial, machine.chain(), machine.speedometer().sensor(), before->chain().links, after->chain().links};
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
