// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/gearing/change.hpp>
#include <layshaft/gearing/ratio.hpp>
#include <layshaft/instrument/reading.hpp>
#include <layshaft/setup/over_causes.hpp>

/// @file
/// What changes from one set-up to another on the same machine, each as a band over the causes they do not share.
namespace layshaft {

/// The change of thrust in every gear, at equal engine torque and drive efficiency.
[[nodiscard]] constexpr Band<double> thrust_change(const Setup& base, const Setup& trial) noexcept {
  const double base_ratio = final_ratio(base.front(), base.rear());
  const double trial_ratio = final_ratio(trial.front(), trial.rear());
  return over_causes(Rollout(base), Rollout(trial), [&](Length base_circumference, Length trial_circumference) {
    return thrust_change(base_ratio, base_circumference, trial_ratio, trial_circumference);
  });
}

/// The change of road speed in every gear, at equal engine speed.
[[nodiscard]] constexpr Band<double> speed_change(const Setup& base, const Setup& trial) noexcept {
  const double base_ratio = final_ratio(base.front(), base.rear());
  const double trial_ratio = final_ratio(trial.front(), trial.rear());
  return over_causes(Rollout(base), Rollout(trial), [&](Length base_circumference, Length trial_circumference) {
    return speed_change(base_ratio, base_circumference, trial_ratio, trial_circumference);
  });
}

/// The change of engine speed in every gear, at equal road speed.
[[nodiscard]] constexpr Band<double> engine_speed_change(const Setup& base, const Setup& trial) noexcept {
  return over(speed_change(base, trial), [](double change) { return engine_speed_change(change); });
}

/// The speedometer's reading after over before, at the same true speed. A front wheel changes it only where both
/// set-ups state their front tyre.
[[nodiscard]] constexpr Band<double> indicated_ratio(SpeedometerSensor sensor, const Setup& base,
                                                     const Setup& trial) noexcept {
  switch (sensor) {
    case SpeedometerSensor::layshaft: {
      const double base_ratio = final_ratio(base.front(), base.rear());
      const double trial_ratio = final_ratio(trial.front(), trial.rear());
      return over_causes(Rollout(base), Rollout(trial), [&](Length base_circumference, Length trial_circumference) {
        return turns_ratio(base_ratio, base_circumference, trial_ratio, trial_circumference);
      });
    }
    case SpeedometerSensor::rear_wheel:
      return over_causes(Rollout(base), Rollout(trial), [](Length base_circumference, Length trial_circumference) {
        return wheel_indicated_ratio(base_circumference, trial_circumference);
      });
    case SpeedometerSensor::front_wheel: break;
  }
  if (!base.front_tyre() || !trial.front_tyre()) return Band<double>::exactly(1.0);
  return over_causes(Rollout(*base.front_tyre()), Rollout(*trial.front_tyre()),
                     [](Length base_circumference, Length trial_circumference) {
                       return wheel_indicated_ratio(base_circumference, trial_circumference);
                     });
}

}  // namespace layshaft
