// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/chain/loop.hpp>
#include <layshaft/chain/suspension.hpp>

#include <boost/math/tools/minima.hpp>

#include <algorithm>  // min, max
#include <cmath>
#include <cstdint>
#include <utility>

/// @file
/// Where the chain runs, and what it comes near: case, guard, ground, and obstacles beside its runs over the whole
/// travel. In one plane, seen from the side.
namespace layshaft {

/// The radius of the circle outside which no plate of the chain stands on a sprocket.
LAYSHAFT_FORMULA(constexpr, Length, chain_outside_radius, (Length pitch_diameter, Length plate_height),
                 positive(pitch_diameter) && positive(plate_height), sources::geometry,
                 (pitch_diameter + plate_height) / 2.0)

/// Room between the chain on a sprocket and a wall at a distance from its shaft: case, guard, or the ground under the
/// axle.
LAYSHAFT_FORMULA(constexpr, Length, wall_clearance, (Length wall_distance, Length chain_outside_radius),
                 positive(wall_distance) && positive(chain_outside_radius), sources::definition,
                 wall_distance - chain_outside_radius)

/// Something round that the chain must not touch: a frame tube, the swingarm's pivot, a guide.
struct Obstacle {
  Length ahead;         ///< of its middle ahead of the pivot; behind where negative
  Length above;         ///< above the pivot
  Length radius;        ///< zero or more
  bool on_arm = false;  ///< fixed to the swingarm: stated where it stands with the arm at rest

  friend constexpr bool operator==(const Obstacle&, const Obstacle&) noexcept = default;
};

/// The least room within the travel, and where.
struct Clearance {
  Length least;  ///< below zero: they touch
  Angle angle;   ///< of the arm

  friend constexpr bool operator==(const Clearance&, const Clearance&) noexcept = default;
};

namespace detail {

/// A point in the plane, in metres from the pivot, ahead and above.
struct PlanePoint {
  double x, y;
};
[[nodiscard]] inline double distance(PlanePoint a, PlanePoint b) noexcept { return std::hypot(a.x - b.x, a.y - b.y); }
[[nodiscard]] inline double distance_to_segment(PlanePoint p, PlanePoint a, PlanePoint b) noexcept {
  const double dx = b.x - a.x, dy = b.y - a.y;
  const double t = std::clamp(((p.x - a.x) * dx + (p.y - a.y) * dy) / (dx * dx + dy * dy), 0.0, 1.0);
  return distance(p, {a.x + t * dx, a.y + t * dy});
}

/// The middle line of the chain: two pitch circles and the two runs that touch both.
struct ChainLine {
  PlanePoint front, rear;
  double front_radius, rear_radius;
  PlanePoint upper[2], lower[2];  ///< from the rear circle to the front one

  ChainLine(const Suspension& suspension, const ChainLoop& loop, Length arm, Angle angle) noexcept {
    const SuspensionParts& parts = suspension.parts();
    const auto drive = loop.drive(Unwatched());
    front = {parts.layshaft_ahead.value(), parts.layshaft_above.value()};
    rear = {-arm.value() * cos(angle), -arm.value() * sin(angle)};
    front_radius = 0.5 * drive.front_diameter.value();
    rear_radius = 0.5 * drive.rear_diameter.value();
    const double run = std::asin((rear_radius - front_radius) / distance(front, rear));
    const double line = std::atan2(front.y - rear.y, front.x - rear.x);
    const auto touch = [](PlanePoint middle, double radius, double direction) {
      return PlanePoint{middle.x + radius * std::cos(direction), middle.y + radius * std::sin(direction)};
    };
    const double up = line - run + pi / 2.0, down = line + run - pi / 2.0;
    upper[0] = touch(rear, rear_radius, up);
    upper[1] = touch(front, front_radius, up);
    lower[0] = touch(rear, rear_radius, down);
    lower[1] = touch(front, front_radius, down);
  }
  /// How far a point is from the chain's middle line and from both sprockets; below zero inside a sprocket.
  [[nodiscard]] double to(PlanePoint p) const noexcept {
    return std::min({distance_to_segment(p, upper[0], upper[1]), distance_to_segment(p, lower[0], lower[1]),
                     distance(p, front) - front_radius, distance(p, rear) - rear_radius});
  }
};

}  // namespace detail

/// The least room between the chain, so high its plates, and an obstacle over the whole travel, the arm of this length;
/// or a RangeError that names the value and its range.
[[nodiscard]] inline Result<Clearance> try_chain_clearance(const Suspension& suspension, const ChainLoop& loop,
                                                           Length arm, const Obstacle& obstacle, Length plate_height) {
  if (auto error = detail::outside("ahead", obstacle.ahead, -10.0_m, 10.0_m)) return *std::move(error);
  if (auto error = detail::outside("above", obstacle.above, -10.0_m, 10.0_m)) return *std::move(error);
  if (auto error = detail::outside("radius", obstacle.radius, Length(), 1.0_m)) return *std::move(error);
  if (auto error = detail::outside("plate_height", plate_height, 1.0_mm, 1.0_m)) return *std::move(error);
  if (const auto tight = suspension.try_tight_point(arm); !tight) return tight.error();
  for (const Angle& end : {suspension.droop(), suspension.bump()})
    if (const auto links = loop.try_links(suspension.centre(Unwatched(), arm, end)); !links) return links.error();

  const auto room = [&](double angle) {
    const Angle at = Angle::from_value(angle);
    detail::PlanePoint middle{obstacle.ahead.value(), obstacle.above.value()};
    if (obstacle.on_arm) {  // an arm that hangs by more has turned about the pivot by so much
      const double turned = (at - suspension.rest()).value();
      middle = {middle.x * std::cos(turned) - middle.y * std::sin(turned),
                middle.x * std::sin(turned) + middle.y * std::cos(turned)};
    }
    return detail::ChainLine(suspension, loop, arm, at).to(middle) - obstacle.radius.value() -
           0.5 * plate_height.value();
  };
  const double low = suspension.bump().value(), high = suspension.droop().value();
  constexpr int parts = 64;  // the room has a corner wherever another part of the chain becomes the nearest
  const auto place = [&](int i) { return low + (high - low) * i / parts; };
  int best = 0;
  for (int i = 1; i <= parts; ++i)
    if (room(place(i)) < room(place(best))) best = i;
  std::uintmax_t rounds = 100;
  const auto [angle, least] = boost::math::tools::brent_find_minima(room, place(std::max(best - 1, 0)),
                                                                    place(std::min(best + 1, parts)), 26, rounds);
  if (room(place(best)) <= least)
    return Clearance{Length::from_value(room(place(best))), Angle::from_value(place(best))};
  return Clearance{Length::from_value(least), Angle::from_value(angle)};
}
#if LAYSHAFT_EXCEPTIONS
/// @throws RangeError as `try_chain_clearance` says.
[[nodiscard]] inline Clearance chain_clearance(const Suspension& suspension, const ChainLoop& loop, Length arm,
                                               const Obstacle& obstacle, Length plate_height) {
  return try_chain_clearance(suspension, loop, arm, obstacle, plate_height).value();
}
#endif

}  // namespace layshaft
