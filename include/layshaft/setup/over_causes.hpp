// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/fixed_list.hpp>
#include <layshaft/setup/rollout.hpp>
#include <layshaft/tyre/two_tyres.hpp>

/// @file
/// A comparison of two wheels at the corners of what makes them uncertain.
namespace layshaft {

/// Where the causes of two wheels stand in one run of a comparison.
using WheelCorners = TwoTyreCorners;

/// The runs of a comparison: nominal, then every corner of the causes; shared ones stand at the same on both sides.
[[nodiscard]] constexpr const FixedList<WheelCorners, 17>& wheel_corners(const Rollout& base,
                                                                         const Rollout& trial) noexcept {
  return two_tyre_corners(share_size(base, trial), share_rolling(base, trial));
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
