// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>
#include <layshaft/gearing/road_speeds.hpp>

/// @file
/// What the engine turns in a lower gear, and over a way.
namespace layshaft {

/// Turns of the engine over a kilometre.
LAYSHAFT_FORMULA(constexpr, double, engine_turns, (double overall_ratio, Length circumference),
                 positive(overall_ratio) && positive(circumference), sources::definition,
                 1000.0_m / circumference * overall_ratio)

/// A shift down at a road speed.
struct Downshift {
  Band<AngularSpeed> engine_speed;  ///< once the clutch is home
  AngularSpeed rev_limit;
  bool over_revs;          ///< whatever the tyre
  bool may_over_rev;       ///< with the smallest tyre that its marking allows
  Band<Speed> safe_below;  ///< road speed at which the lower gear reaches the limit

  friend constexpr bool operator==(const Downshift&, const Downshift&) = default;
};

/// What a shift down into a gear, from 1, makes the engine turn at a road speed. Or a RangeError.
[[nodiscard]] inline Result<Downshift> try_downshift(const RoadSpeeds& speeds, AngularSpeed rev_limit, int into_gear,
                                                     Speed road_speed) {
  const auto turning = speeds.try_engine_speed_at(road_speed, into_gear);
  if (!turning) return turning.error();
  return Downshift{*turning, rev_limit, turning->low > rev_limit, turning->high > rev_limit,
                   speeds.try_speed_range(into_gear)->highest};
}

}  // namespace layshaft
