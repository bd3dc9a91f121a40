// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/gearing/change.hpp>
#include <layshaft/gearing/ratio.hpp>
#include <layshaft/instrument/reading.hpp>
#include <layshaft/setup/over_causes.hpp>

/// @file
/// What changes from one set-up to another on the same machine, each as a band over the causes they do not share.
namespace layshaft {

/// Where all causes of a change of thrust stand in one run: those of the wheels, and the drives' efficiency.
struct ThrustCorners : WheelCorners {
  Corner base_drive = Corner::nominal;
  Corner trial_drive = Corner::nominal;
};

/// Whether a change of the drive's efficiency counts: only where both set-ups state it.
[[nodiscard]] constexpr bool loss_counts(const Setup& base, const Setup& trial) noexcept {
  return base.drive_efficiency() && trial.drive_efficiency();
}

namespace detail {
/// How a change of the drive's efficiency counts: not at all, each side's own, or one on both sides.
enum class LossCause { none, own, shared };

/// The runs of a change over the corners of the wheels and of the drives' efficiency.
[[nodiscard]] consteval FixedList<ThrustCorners, 65> corners_of_thrust(const FixedList<WheelCorners, 17>& wheels,
                                                                       LossCause loss) {
  FixedList<ThrustCorners, 65> runs;
  constexpr Corner ends[] = {Corner::low, Corner::high};
  for (const WheelCorners& at : wheels) {
    if (loss == LossCause::none || runs.empty()) {
      runs.push_back({at});
      continue;
    }
    for (const Corner base_drive : ends)
      for (const Corner trial_drive : ends)
        if (loss == LossCause::own || trial_drive == base_drive) runs.push_back({at, base_drive, trial_drive});
  }
  return runs;
}
struct ThrustRuns {
  FixedList<ThrustCorners, 65> none, own, shared;
};
[[nodiscard]] consteval ThrustRuns thrust_runs(const FixedList<WheelCorners, 17>& wheels) {
  return {corners_of_thrust(wheels, LossCause::none), corners_of_thrust(wheels, LossCause::own),
          corners_of_thrust(wheels, LossCause::shared)};
}
inline constexpr ThrustRuns all_thrust_corners[2][2] = {
    {thrust_runs(two_tyre_corners(false, false)), thrust_runs(two_tyre_corners(true, false))},
    {thrust_runs(two_tyre_corners(false, true)), thrust_runs(two_tyre_corners(true, true))}};
[[nodiscard]] constexpr const ThrustRuns& thrust_corners_of_wheels(const Setup& base, const Setup& trial) noexcept {
  const Rollout base_wheel(base), trial_wheel(trial);
  return all_thrust_corners[share_rolling(base_wheel, trial_wheel)][share_size(base_wheel, trial_wheel)];
}
}  // namespace detail

/// The runs of a change of thrust. Equal efficiencies stand at the same corner on both sides.
[[nodiscard]] constexpr const FixedList<ThrustCorners, 65>& thrust_corners(const Setup& base,
                                                                           const Setup& trial) noexcept {
  const detail::ThrustRuns& runs = detail::thrust_corners_of_wheels(base, trial);
  if (!loss_counts(base, trial)) return runs.none;
  return *base.drive_efficiency() == *trial.drive_efficiency() ? runs.shared : runs.own;
}

namespace detail {

/// The calculations, one run each, for whoever watches.

template <class Watch>
[[nodiscard]] constexpr auto final_ratio_of(Watch watch, const Setup& setup) {
  const auto front = watch.given("front", setup.front());
  const auto rear = watch.given("rear", setup.rear());
  return watch.step(formula::final_ratio{}, front, rear);
}
template <class Watch>
[[nodiscard]] constexpr auto base_wheel(Watch watch, const Setup& base, const WheelCorners& at) {
  return rollout_at(watch.on(Scope::base), base, at.base_size, at.base_rolling);
}
template <class Watch>
[[nodiscard]] constexpr auto trial_wheel(Watch watch, const Setup& trial, const WheelCorners& at) {
  return rollout_at(watch.on(Scope::trial), trial, at.trial_size, at.trial_rolling);
}
/// Calls `calculation` with what decides a change: ratio and circumference, before and after.
template <class Watch, class Calculation>
[[nodiscard]] constexpr auto with_gearing(Watch watch, const Setup& base, const Setup& trial, const WheelCorners& at,
                                          const Calculation& calculation) {
  const auto base_ratio = final_ratio_of(watch.on(Scope::base), base);
  const auto base_circumference = base_wheel(watch, base, at);
  const auto trial_ratio = final_ratio_of(watch.on(Scope::trial), trial);
  const auto trial_circumference = trial_wheel(watch, trial, at);
  return calculation(base_ratio, base_circumference, trial_ratio, trial_circumference);
}

template <class Watch>
[[nodiscard]] constexpr auto base_efficiency(Watch watch, const Setup& base, const ThrustCorners& at) {
  return watch.on(Scope::base).given("drive_efficiency", base.drive_efficiency()->at(at.base_drive));
}
template <class Watch>
[[nodiscard]] constexpr auto trial_efficiency(Watch watch, const Setup& trial, const ThrustCorners& at) {
  return watch.on(Scope::trial).given("drive_efficiency", trial.drive_efficiency()->at(at.trial_drive));
}

template <class Watch>
[[nodiscard]] constexpr auto thrust_change(Watch watch, const Setup& base, const Setup& trial,
                                           const ThrustCorners& at) {
  return with_gearing(watch, base, trial, at, [&](const auto&... gearing) {
    if (!loss_counts(base, trial)) return watch.step(formula::thrust_change{}, gearing...);
    const auto before = base_efficiency(watch, base, at), after = trial_efficiency(watch, trial, at);
    return watch.step("thrust_change", formula::thrust_change_with_loss{}, gearing..., before, after);
  });
}
template <class Watch>
[[nodiscard]] constexpr auto speed_change(Watch watch, const Setup& base, const Setup& trial, const WheelCorners& at) {
  return with_gearing(watch, base, trial, at,
                      [&](const auto&... gearing) { return watch.step(formula::speed_change{}, gearing...); });
}
template <class Watch>
[[nodiscard]] constexpr auto engine_speed_change(Watch watch, const Setup& base, const Setup& trial,
                                                 const WheelCorners& at) {
  return watch.step(formula::engine_speed_change{}, speed_change(watch, base, trial, at));
}
/// The reading of an instrument that counts the layshaft's turns.
template <class Watch>
[[nodiscard]] constexpr auto layshaft_reading(Watch watch, const Setup& base, const Setup& trial,
                                              const WheelCorners& at) {
  return with_gearing(watch, base, trial, at, [&](const auto&... gearing) {
    return watch.step("indicated_ratio", formula::turns_ratio{}, gearing...);
  });
}
/// The reading of one that counts a wheel's turns.
template <class Watch>
[[nodiscard]] constexpr auto wheel_reading(Watch watch, const Rollout& base, const Rollout& trial,
                                           const WheelCorners& at) {
  const auto base_circumference = base.at(watch.on(Scope::base), at.base_size, at.base_rolling);
  const auto trial_circumference = trial.at(watch.on(Scope::trial), at.trial_size, at.trial_rolling);
  return watch.step("indicated_ratio", formula::wheel_indicated_ratio{}, base_circumference, trial_circumference);
}

/// The wheels that an instrument's reading depends on; none where nothing that it senses is stated on both sides.
struct SensedWheels {
  Rollout base, trial;
};
[[nodiscard]] constexpr std::optional<SensedWheels> sensed_wheels(SpeedometerSensor sensor, const Setup& base,
                                                                  const Setup& trial) noexcept {
  if (sensor != SpeedometerSensor::front_wheel) return SensedWheels{Rollout(base), Rollout(trial)};
  if (!base.front_tyre() || !trial.front_tyre()) return std::nullopt;
  return SensedWheels{Rollout(*base.front_tyre()), Rollout(*trial.front_tyre())};
}
/// The runs of a reading; one where there is nothing that could change it.
[[nodiscard]] constexpr FixedList<WheelCorners, 17> reading_corners(SpeedometerSensor sensor, const Setup& base,
                                                                    const Setup& trial) noexcept {
  const auto wheels = sensed_wheels(sensor, base, trial);
  return wheels ? wheel_corners(wheels->base, wheels->trial) : FixedList<WheelCorners, 17>{{WheelCorners()}};
}
template <class Watch>
[[nodiscard]] constexpr auto indicated_ratio(Watch watch, SpeedometerSensor sensor, const Setup& base,
                                             const Setup& trial, const WheelCorners& at) {
  if (sensor == SpeedometerSensor::layshaft) return layshaft_reading(watch, base, trial, at);
  if (const auto wheels = sensed_wheels(sensor, base, trial))
    return wheel_reading(watch, wheels->base, wheels->trial, at);
  return watch.given("indicated_ratio", 1.0, Source{"no change of front tyre stated", Certainty::stated});
}

}  // namespace detail

/// The change of thrust in every gear, at equal engine torque; and at equal drive efficiency, but where both set-ups
/// state theirs.
[[nodiscard]] constexpr Band<double> thrust_change(const Setup& base, const Setup& trial) noexcept {
  return over_runs(thrust_corners(base, trial),
                   [&](const ThrustCorners& at) { return detail::thrust_change(Unwatched(), base, trial, at); });
}

/// The change of road speed in every gear, at equal engine speed.
[[nodiscard]] constexpr Band<double> speed_change(const Setup& base, const Setup& trial) noexcept {
  return over_runs(wheel_corners(Rollout(base), Rollout(trial)),
                   [&](const WheelCorners& at) { return detail::speed_change(Unwatched(), base, trial, at); });
}

/// The change of engine speed in every gear, at equal road speed.
[[nodiscard]] constexpr Band<double> engine_speed_change(const Setup& base, const Setup& trial) noexcept {
  return over_runs(wheel_corners(Rollout(base), Rollout(trial)),
                   [&](const WheelCorners& at) { return detail::engine_speed_change(Unwatched(), base, trial, at); });
}

/// The speedometer's reading after over before, at the same true speed. A front wheel changes it only where both
/// set-ups state their front tyre.
[[nodiscard]] constexpr Band<double> indicated_ratio(SpeedometerSensor sensor, const Setup& base,
                                                     const Setup& trial) noexcept {
  return over_runs(detail::reading_corners(sensor, base, trial), [&](const WheelCorners& at) {
    return detail::indicated_ratio(Unwatched(), sensor, base, trial, at);
  });
}

}  // namespace layshaft
