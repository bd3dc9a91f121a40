// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/fixed_list.hpp>
#include <layshaft/setup/rollout.hpp>

/// @file
/// A comparison of two wheels at the corners of what makes them uncertain.
namespace layshaft {

/// Where the causes of two wheels stand in one run of a comparison.
struct WheelCorners {
  Corner base_size = Corner::nominal;
  Corner base_rolling = Corner::nominal;
  Corner trial_size = Corner::nominal;
  Corner trial_rolling = Corner::nominal;
};

namespace detail {
/// Nominal, then every corner of the causes; shared ones stand at the same on both sides.
[[nodiscard]] consteval FixedList<WheelCorners, 17> corners_of_wheels(bool one_size, bool one_rolling) {
  constexpr Corner ends[] = {Corner::low, Corner::high};
  FixedList<WheelCorners, 17> runs{{WheelCorners()}};
  for (const Corner base_size : ends)
    for (const Corner base_rolling : ends)
      for (const Corner trial_size : ends)
        for (const Corner trial_rolling : ends) {
          if (one_size && trial_size != base_size) continue;
          if (one_rolling && trial_rolling != base_rolling) continue;
          runs.push_back({base_size, base_rolling, trial_size, trial_rolling});
        }
  return runs;
}
/// By whether the rolling factor is shared, then whether the size is.
inline constexpr FixedList<WheelCorners, 17> all_wheel_corners[2][2] = {
    {corners_of_wheels(false, false), corners_of_wheels(true, false)},
    {corners_of_wheels(false, true), corners_of_wheels(true, true)}};
}  // namespace detail

/// The runs of a comparison: nominal, then every corner of the causes; shared ones stand at the same on both sides.
[[nodiscard]] constexpr const FixedList<WheelCorners, 17>& wheel_corners(const Rollout& base,
                                                                         const Rollout& trial) noexcept {
  return detail::all_wheel_corners[share_rolling(base, trial)][share_size(base, trial)];
}

/// The results of a calculation from a base and a trial circumference, which rises or falls in each of them throughout,
/// over the corners of all causes.
template <class Calculation>
[[nodiscard]] constexpr auto over_causes(const Rollout& base, const Rollout& trial, Calculation calculation) {
  return over_runs(wheel_corners(base, trial), [&](const WheelCorners& at) {
    return calculation(base.at(at.base_size, at.base_rolling), trial.at(at.trial_size, at.trial_rolling));
  });
}

}  // namespace layshaft
