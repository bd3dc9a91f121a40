// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/counts.hpp>
#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>

/// @file
/// What riders reckon in their heads, to stand beside the exact figure.
namespace layshaft {

/// Teeth more behind.
LAYSHAFT_FORMULA(constexpr, double, rear_added, (Teeth base_rear, Teeth trial_rear), true, sources::definition,
                 trial_rear - base_rear)

/// Teeth fewer in front.
LAYSHAFT_FORMULA(constexpr, double, front_removed, (Teeth base_front, Teeth trial_front), true, sources::definition,
                 base_front - trial_front)

/// The change of thrust by the trade's rule: a tooth more behind gives 2 %, a tooth fewer in front counts as three of
/// them, and a taller tyre takes as many per cent as it is taller. Common practice, no source.
/// @param rear_added teeth more behind; @param front_removed teeth fewer in front; @param tyre_growth a fraction
LAYSHAFT_FORMULA(constexpr, double, thrust_change_by_thumb,
                 (double rear_added, double front_removed, double tyre_growth),
                 is_finite(rear_added) && is_finite(front_removed) && is_finite(tyre_growth), sources::common_practice,
                 0.02 * (rear_added + 3.0 * front_removed) - tyre_growth)

/// The rule's answer, and how far it is off: rule less exact.
struct RuleOfThumb {
  double thrust_change;
  double error;

  friend constexpr bool operator==(const RuleOfThumb&, const RuleOfThumb&) = default;
};

}  // namespace layshaft
