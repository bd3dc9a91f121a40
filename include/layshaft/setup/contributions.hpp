// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/fixed_list.hpp>
#include <layshaft/gearing/contribution.hpp>
#include <layshaft/setup/changes.hpp>

#include <array>
#include <string_view>

/// @file
/// Who takes and who gives how much of a change, in points that add up to the whole.
namespace layshaft {

/// A change from one set-up to another that can be shared out among its causes.
enum class Change {
  thrust,        ///< in every gear, at equal engine torque
  speed,         ///< road speed in every gear, at equal engine speed
  engine_speed,  ///< in every gear, at equal road speed
};

[[nodiscard]] constexpr std::string_view to_string(Change change) noexcept {
  switch (change) {
    case Change::thrust: return "thrust";
    case Change::speed: return "speed";
    case Change::engine_speed: return "engine speed";
  }
  return {};
}

/// What contributes to a change.
enum class ContributionCause {
  tyre,  ///< another tyre, both with all their tread
  front_sprocket,
  rear_sprocket,
  wear,        ///< tread worn off, where it was stated
  drive_loss,  ///< another efficiency of the chain drive, where both state theirs; for thrust alone
};

[[nodiscard]] constexpr std::string_view to_string(ContributionCause cause) noexcept {
  switch (cause) {
    case ContributionCause::tyre: return "tyre";
    case ContributionCause::front_sprocket: return "front sprocket";
    case ContributionCause::rear_sprocket: return "rear sprocket";
    case ContributionCause::wear: return "wear";
    case ContributionCause::drive_loss: return "drive loss";
  }
  return {};
}

/// The points one cause contributes to a change; at their nominal values, and at each corner, they add up to the whole.
struct Contribution {
  ContributionCause cause{};
  Band<double> points;

  friend constexpr bool operator==(const Contribution&, const Contribution&) = default;
};

/// The causes of a change, always the tyre and both sprockets, and the others where they count.
using Contributions = FixedList<Contribution, 5>;

/// What another tyre multiplies engine turns over a distance by.
LAYSHAFT_FORMULA(constexpr, double, tyre_factor, (Length base_circumference, Length trial_circumference),
                 positive(base_circumference) && positive(trial_circumference), sources::definition,
                 base_circumference / trial_circumference)

/// What another front sprocket does.
LAYSHAFT_FORMULA(constexpr, double, front_factor, (Teeth base_front, Teeth trial_front), true, sources::definition,
                 base_front / trial_front)

/// What another rear sprocket does.
LAYSHAFT_FORMULA(constexpr, double, rear_factor, (Teeth base_rear, Teeth trial_rear), true, sources::definition,
                 trial_rear / base_rear)

/// What the wear of both tyres does, each against itself with all its tread.
LAYSHAFT_FORMULA(constexpr, double, wear_factor,
                 (Length base_circumference, Length base_new_circumference, Length trial_circumference,
                  Length trial_new_circumference),
                 positive(base_circumference) && positive(base_new_circumference) && positive(trial_circumference) &&
                     positive(trial_new_circumference),
                 sources::definition,
                 base_circumference / trial_circumference * (trial_new_circumference / base_new_circumference))

/// What another efficiency of the chain drive multiplies thrust by.
LAYSHAFT_FORMULA(constexpr, double, loss_factor, (double base_efficiency, double trial_efficiency),
                 positive(base_efficiency) && positive(trial_efficiency), sources::definition,
                 trial_efficiency / base_efficiency)

/// Thrust after over before, where the drive's efficiency changes as well.
// clang-format off
LAYSHAFT_FORMULA(constexpr, double, thrust_ratio, (double turns_ratio, double loss_factor),
                 positive(turns_ratio) && positive(loss_factor), sources::definition, turns_ratio * loss_factor)
// clang-format on

/// What a factor of turns multiplies road speed by, at equal engine speed.
LAYSHAFT_FORMULA(constexpr, double, speed_factor, (double factor), positive(factor), sources::definition, 1.0 / factor)

namespace detail {

/// One cause's points in one run, as whoever watches knows them.
template <class Value>
struct WatchedContribution {
  ContributionCause cause{};
  Value points{};
};

/// Whether tread was worn off, which is stated of marked tyres alone.
[[nodiscard]] constexpr bool worn(const Setup& setup) noexcept { return setup.tread_worn() != Length(); }

/// The contributions in one run, for whoever watches. The circumferences are those of the change itself, which is
/// recorded before; a worn tyre is worked out once more with all its tread.
template <class Watch>
[[nodiscard]] auto contributions_at(Watch watch, Change change, const Setup& base, const Setup& trial,
                                    const ThrustCorners& at) {
  const auto before = watch.on(Scope::base), after = watch.on(Scope::trial);
  const auto base_circumference = base_wheel(watch, base, at);
  const auto trial_circumference = trial_wheel(watch, trial, at);
  const auto base_ratio = final_ratio_of(before, base);
  const auto trial_ratio = final_ratio_of(after, trial);
  const auto turns =
      watch.step(formula::turns_ratio{}, base_ratio, base_circumference, trial_ratio, trial_circumference);

  using Value = std::remove_const_t<decltype(turns)>;
  Value whole = turns;
  if (change == Change::speed) whole = watch.step("speed_ratio", formula::speed_factor{}, turns);
  const bool lossy = change == Change::thrust && loss_counts(base, trial);
  Value loss = turns;  // not used but where it is one
  if (lossy) {
    const auto base_drive = base_efficiency(watch, base, at), trial_drive = trial_efficiency(watch, trial, at);
    loss = watch.step(formula::loss_factor{}, base_drive, trial_drive);
    whole = watch.step(formula::thrust_ratio{}, turns, loss);
  }

  FixedList<WatchedContribution<Value>, Contributions::capacity> contributions;
  const auto add = [&](ContributionCause cause, ValueName points, ValueName speed_factor, const Value& factor) {
    const Value part = change == Change::speed ? watch.step(speed_factor, formula::speed_factor{}, factor) : factor;
    contributions.push_back({cause, watch.step(points, formula::contribution{}, whole, part)});
  };
  const auto unworn = [&](auto side, const Setup& setup, const auto& circumference, Corner size, Corner rolling) {
    if (!worn(setup)) return circumference;
    return circumference_at(side, "new_circumference", *setup.tyre(), Length(), size, rolling);
  };
  const auto base_new = unworn(before, base, base_circumference, at.base_size, at.base_rolling);
  const auto trial_new = unworn(after, trial, trial_circumference, at.trial_size, at.trial_rolling);
  add(ContributionCause::tyre, "tyre_contribution", "tyre_speed_factor",
      watch.step(formula::tyre_factor{}, base_new, trial_new));
  const auto base_front = before.given("front", base.front()), trial_front = after.given("front", trial.front());
  add(ContributionCause::front_sprocket, "front_contribution", "front_speed_factor",
      watch.step(formula::front_factor{}, base_front, trial_front));
  const auto base_rear = before.given("rear", base.rear()), trial_rear = after.given("rear", trial.rear());
  add(ContributionCause::rear_sprocket, "rear_contribution", "rear_speed_factor",
      watch.step(formula::rear_factor{}, base_rear, trial_rear));
  if (worn(base) || worn(trial))
    add(ContributionCause::wear, "wear_contribution", "wear_speed_factor",
        watch.step(formula::wear_factor{}, base_circumference, base_new, trial_circumference, trial_new));
  if (lossy) add(ContributionCause::drive_loss, "loss_contribution", "", loss);
  return contributions;
}

/// The runs of a change.
[[nodiscard]] constexpr const FixedList<ThrustCorners, 65>& change_corners(Change change, const Setup& base,
                                                                           const Setup& trial) noexcept {
  return change == Change::thrust ? thrust_corners(base, trial) : thrust_corners_of_wheels(base, trial).none;
}

}  // namespace detail

/// Who takes and gives how much of a change, each as a band over the causes.
[[nodiscard]] inline Contributions contributions(Change change, const Setup& base, const Setup& trial) {
  std::array<Contribution, Contributions::capacity> bands{};
  std::size_t causes = 0;
  for (const ThrustCorners& at : detail::change_corners(change, base, trial)) {
    const bool nominal = causes == 0;
    const auto run = detail::contributions_at(Unwatched(), change, base, trial, at);
    for (std::size_t i = 0; i < run.size(); ++i) {
      if (nominal)
        bands[i] = {run[i].cause, Band<double>::exactly(run[i].points)};
      else
        bands[i].points.include(run[i].points);
    }
    causes = run.size();
  }
  Contributions result;
  for (std::size_t i = 0; i < causes; ++i) result.push_back(bands[i]);
  return result;
}

}  // namespace layshaft
