// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/chain/sprocket.hpp>
#include <layshaft/gearing/contribution.hpp>
#include <layshaft/gearing/rule_of_thumb.hpp>
#include <layshaft/setup/appraisal.hpp>
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

/// What contributes to a change.
enum class ContributionCause { tyre, front_sprocket, rear_sprocket };

[[nodiscard]] constexpr std::string_view to_string(ContributionCause cause) noexcept {
  switch (cause) {
    case ContributionCause::tyre: return "tyre";
    case ContributionCause::front_sprocket: return "front sprocket";
    case ContributionCause::rear_sprocket: return "rear sprocket";
  }
  return {};
}

/// The points one cause contributes to a change; at their nominal values, and at each corner, they add up to the whole.
struct Contribution {
  ContributionCause cause;
  Band<double> points;

  friend constexpr bool operator==(const Contribution&, const Contribution&) = default;
};

/// What the tyre took or gave, and each sprocket: in that order.
using Contributions = std::array<Contribution, 3>;

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
  RuleOfThumb rule_of_thumb;           ///< the trade's answer for thrust, beside the exact one
  Contributions thrust_contributions;  ///< who takes and gives how much of the change of thrust

  /// What the rider must be told before riding on the trial set-up.
  [[nodiscard]] const Cautions& cautions() const& noexcept { return trial.cautions(); }
  /// Of a comparison that is about to end, a copy.
  [[nodiscard]] Cautions cautions() && noexcept { return trial.cautions(); }

  friend bool operator==(const Comparison&, const Comparison&) = default;
};

/// The change of the chain's pull, of contacts, over the causes the set-ups do not share. Both rear sprockets' pitch
/// diameters are those of their own chain series.
[[nodiscard]] inline WearChange wear_change(const Machine& machine, const Setup& base, const Setup& trial) {
  const Length base_diameter = pitch_diameter(base.chain().value_or(machine.chain()).pitch(), base.rear());
  const Length trial_diameter = pitch_diameter(trial.chain().value_or(machine.chain()).pitch(), trial.rear());
  const double base_ratio = final_ratio(base.front(), base.rear());
  const double trial_ratio = final_ratio(trial.front(), trial.rear());
  const auto over_both = [&](auto calculation) { return over_causes(Rollout(base), Rollout(trial), calculation); };
  return {
      over_both([&](Length from, Length to) { return chain_tension_change(from, base_diameter, to, trial_diameter); }),
      over_both([&](Length from, Length to) {
        return turns_ratio(base_ratio, from, trial_ratio, to) - 1.0;  // a contact a turn of the front sprocket
      }),
      over_both([](Length from, Length to) { return rear_contacts(1.0_km, to) / rear_contacts(1.0_km, from) - 1.0; })};
}

/// Who takes and gives how much of the change of thrust.
[[nodiscard]] inline Contributions thrust_contributions(const Setup& base, const Setup& trial) {
  const double front = base.front() / trial.front();
  const double rear = trial.rear() / base.rear();
  const auto points = [&](auto factor) {
    return over_causes(Rollout(base), Rollout(trial), [&](Length from, Length to) {
      const double tyre = from / to;
      return contribution(tyre * front * rear, factor(tyre));
    });
  };
  return {{{ContributionCause::tyre, points([](double tyre) { return tyre; })},
           {ContributionCause::front_sprocket, points([&](double) { return front; })},
           {ContributionCause::rear_sprocket, points([&](double) { return rear; })}}};
}

/// Compares two set-ups of one machine.
/// @return the comparison; or the error of the set-up that cannot be appraised, which it names.
[[nodiscard]] inline Result<Comparison> try_compare(const Machine& machine, const Setup& base, const Setup& trial) {
  const auto before = detail::appraise_against(machine, base, base);
  if (!before) return before.error().in("base");
  const auto after = detail::appraise_against(machine, base, trial);
  if (!after) return after.error().in("trial");
  const Band<double> thrust = thrust_change(base, trial);
  const double tyre_growth = after->circumference().nominal / before->circumference().nominal - 1.0;
  const double by_thumb = thrust_change_by_thumb(trial.rear() - base.rear(), base.front() - trial.front(), tyre_growth);
  return Comparison{.base = *before,
                    .trial = *after,
                    .thrust_change = thrust,
                    .speed_change = speed_change(base, trial),
                    .engine_speed_change = engine_speed_change(base, trial),
                    .indicated_ratio = indicated_ratio(machine.speedometer().sensor(), base, trial),
                    .links_change = after->chain().links.count() - before->chain().links.count(),
                    .wear = wear_change(machine, base, trial),
                    .rule_of_thumb = {by_thumb, by_thumb - thrust.nominal},
                    .thrust_contributions = thrust_contributions(base, trial)};
}

#if LAYSHAFT_EXCEPTIONS
/// Compares two set-ups of one machine.
/// @throws RangeError or Error that names the set-up which cannot be appraised.
[[nodiscard]] inline Comparison compare(const Machine& machine, const Setup& base, const Setup& trial) {
  return try_compare(machine, base, trial).value();
}
#endif

}  // namespace layshaft
