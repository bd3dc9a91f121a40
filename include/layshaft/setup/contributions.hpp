// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/fixed_list.hpp>
#include <layshaft/gearing/contribution.hpp>
#include <layshaft/setup/changes.hpp>

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
                 base_circumference / base_new_circumference * (trial_new_circumference / trial_circumference))

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

/// The contributions in one run, for whoever watches. The circumferences are those of the change itself, which is
/// recorded before; a worn tyre is worked out once more with all its tread.
template <class Watch>
[[nodiscard]] auto contributions_at(Watch watch, Change change, const Setup& base, const Setup& trial,
                                    const ThrustCorners& at) {
  const auto before = watch.on(Scope::base), after = watch.on(Scope::trial);
  const Rollout base_wheel(base), trial_wheel(trial);
  const auto base_circumference = base_wheel.at(before, at.base_size, at.base_rolling);
  const auto trial_circumference = trial_wheel.at(after, at.trial_size, at.trial_rolling);
  const auto base_ratio = final_ratio_of(before, base);
  const auto trial_ratio = final_ratio_of(after, trial);
  const auto turns =
      watch.step(formula::turns_ratio{}, base_ratio, base_circumference, trial_ratio, trial_circumference);

  using Value = std::remove_const_t<decltype(turns)>;
  FixedList<WatchedContribution<Value>, Contributions::capacity> factors;
  const auto add = [&](ContributionCause cause, Value factor) { factors.push_back({cause, factor}); };
  const bool worn = base_wheel.worn() || trial_wheel.worn();
  const auto whole = [&](auto side, const Rollout& wheel, auto circumference, Corner size, Corner rolling) {
    return wheel.worn() ? wheel.unworn().at(side, size, rolling, "new_circumference") : circumference;
  };
  const auto base_new = whole(before, base_wheel, base_circumference, at.base_size, at.base_rolling);
  const auto trial_new = whole(after, trial_wheel, trial_circumference, at.trial_size, at.trial_rolling);
  add(ContributionCause::tyre, watch.step(formula::tyre_factor{}, base_new, trial_new));
  const auto base_front = before.given("front", base.front()), trial_front = after.given("front", trial.front());
  const auto base_rear = before.given("rear", base.rear()), trial_rear = after.given("rear", trial.rear());
  add(ContributionCause::front_sprocket, watch.step(formula::front_factor{}, base_front, trial_front));
  add(ContributionCause::rear_sprocket, watch.step(formula::rear_factor{}, base_rear, trial_rear));
  if (worn)
    add(ContributionCause::wear,
        watch.step(formula::wear_factor{}, base_circumference, base_new, trial_circumference, trial_new));

  Value whole_ratio = turns;
  if (change == Change::thrust && loss_counts(base, trial)) {
    const auto base_drive = base_efficiency(watch, base, at), trial_drive = trial_efficiency(watch, trial, at);
    const auto loss = watch.step(formula::loss_factor{}, base_drive, trial_drive);
    add(ContributionCause::drive_loss, loss);
    whole_ratio = watch.step(formula::thrust_ratio{}, turns, loss);
  }
  constexpr ValueName speed_factors[] = {"tyre_speed_factor", "front_speed_factor", "rear_speed_factor",
                                         "wear_speed_factor"};
  constexpr ValueName points[] = {"tyre_contribution", "front_contribution", "rear_contribution", "wear_contribution",
                                  "loss_contribution"};
  if (change == Change::speed) whole_ratio = watch.step("speed_ratio", formula::speed_factor{}, turns);
  FixedList<WatchedContribution<Value>, Contributions::capacity> contributions;
  for (const auto& [cause, factor] : factors) {
    const auto place = static_cast<std::size_t>(cause);
    const Value here =
        change == Change::speed ? watch.step(speed_factors[place], formula::speed_factor{}, factor) : factor;
    contributions.push_back({cause, watch.step(points[place], formula::contribution{}, whole_ratio, here)});
  }
  return contributions;
}

/// The runs of a change.
[[nodiscard]] constexpr FixedList<ThrustCorners, 65> change_corners(Change change, const Setup& base,
                                                                    const Setup& trial) noexcept {
  if (change == Change::thrust) return thrust_corners(base, trial);
  FixedList<ThrustCorners, 65> runs;
  for (const WheelCorners& wheels : wheel_corners(Rollout(base), Rollout(trial))) runs.push_back({wheels});
  return runs;
}

}  // namespace detail

/// Who takes and gives how much of a change, each as a band over the causes.
[[nodiscard]] inline Contributions contributions(Change change, const Setup& base, const Setup& trial) {
  FixedList<Contribution, 5> result;
  const auto runs = detail::change_corners(change, base, trial);
  const auto nominal = detail::contributions_at(Unwatched(), change, base, trial, runs[0]);
  for (std::size_t i = 0; i < nominal.size(); ++i)
    result.push_back({nominal[i].cause, over_runs(runs, [&](const ThrustCorners& at) {
                        return detail::contributions_at(Unwatched(), change, base, trial, at)[i].points;
                      })});
  return result;
}

}  // namespace layshaft
