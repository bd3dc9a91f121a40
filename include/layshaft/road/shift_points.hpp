// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/fixed_list.hpp>
#include <layshaft/road/powertrain.hpp>

#include <boost/math/tools/toms748_solve.hpp>

#include <algorithm>
#include <cstdint>
#include <utility>

/// @file
/// Where to shift up so that the thrust stays as high as it can be.
namespace layshaft {

/// One shift up.
struct ShiftPoint {
  int gear;                          ///< from this to the next
  Speed speed;                       ///< on the road
  AngularSpeed engine_speed_before;  ///< in the lower gear
  AngularSpeed engine_speed_after;   ///< in the upper one, once the clutch is home
  bool at_limit;                     ///< the lower gear pulls harder up to the limit

  friend constexpr bool operator==(const ShiftPoint&, const ShiftPoint&) noexcept = default;
};
using ShiftPoints = FixedList<ShiftPoint, most_gears - 1>;

namespace detail {
/// The shift up out of a gear: the lowest speed from which on the next gear pulls no less, or where the engine may turn
/// no faster.
[[nodiscard]] inline ShiftPoint shift_point(const Powertrain& train, int gear, const RoadCorners& at) {
  const Speed last = train.speed(train.fastest(), gear, at.wheel);
  const Speed first = std::max(train.speed(train.slowest_pull(), gear + 1, at.wheel),
                               train.speed(train.slowest_pull(), gear, at.wheel));
  const auto ahead = [&](double speed) {  // by how much the lower gear pulls harder
    const auto thrust = [&](int in) {
      return train.thrust(in, train.held_engine_speed(Speed::from_value(speed), in, at.wheel), at).value();
    };
    return thrust(gear) - thrust(gear + 1);
  };
  const auto point = [&](Speed speed, bool at_limit) {
    return ShiftPoint{gear, speed, train.held_engine_speed(speed, gear, at.wheel),
                      train.held_engine_speed(speed, gear + 1, at.wheel), at_limit};
  };
  if (!(first < last)) return point(last, true);
  constexpr int parts = 64;  // from the top down, so that a dip of the curve lower down does not count
  double high = last.value(), ahead_high = ahead(high);
  if (ahead_high >= 0.0) return point(last, true);
  for (int part = parts - 1; part >= 0; --part) {
    const double low = first.value() + (last - first).value() * part / parts;
    const double ahead_low = ahead(low);
    if (ahead_low > 0.0) {
      std::uintmax_t most = 100;
      const auto [below, above] = boost::math::tools::toms748_solve(
          ahead, low, high, ahead_low, ahead_high, boost::math::tools::eps_tolerance<double>(50), most);
      static_cast<void>(below);
      return point(Speed::from_value(above), false);
    }
    high = low;
    ahead_high = ahead_low;
  }
  return point(first, false);
}
}  // namespace detail

/// The shifts up that keep the thrust highest, one from each gear but the last, at nominal causes.
[[nodiscard]] inline ShiftPoints shift_points(const Powertrain& train) {
  ShiftPoints points;
  for (int gear = 1; gear < train.gears(); ++gear) points.push_back(detail::shift_point(train, gear, RoadCorners()));
  return points;
}

}  // namespace layshaft
