// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/gearing/rule_of_thumb.hpp>
#include <layshaft/setup/appraisal.hpp>
#include <layshaft/setup/contributions.hpp>
#include <layshaft/setup/wear_change.hpp>

#include <string_view>

/// @file
/// Two set-ups of one machine side by side.
namespace layshaft {

class Working;  // to explain, include <layshaft/explain.hpp>

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
