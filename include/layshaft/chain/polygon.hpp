// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/chain/loop.hpp>

#include <algorithm>  // min, max
#include <array>
#include <cmath>
#include <cstddef>
#include <limits>

/// @file
/// What the corners of the sprockets do: within each tooth the chain's speed, the rear wheel's and the slack swing.
///
/// The pins of a chain lie on the corners of two polygons, one pitch apart. The tight run goes straight from the last
/// pin on one sprocket to the last on the other, a whole number of pitches; so, as the front sprocket turns, the rear
/// one follows as a crank behind a rod, and what is left for the slack run swings as well. All of it repeats with each
/// tooth.
namespace layshaft {

/// How much slower than at its fastest the chain runs where a sprocket's flat, not its corner, carries it: of a steady
/// sprocket. It falls with every tooth more; what really reaches the other shaft need not.
LAYSHAFT_FORMULA(inline, double, speed_variation, (Teeth teeth), teeth.count() > 3, sources::geometry,
                 1.0 - cos(half_turn / teeth))

/// Within one tooth of the front sprocket.
struct PolygonRipple {
  Length loop_length;           ///< how much the taut loop's length varies: the slack run takes it up
  double least_ratio;           ///< of the rear shaft's speed to the front one's, over its mean: least
  double greatest_ratio;        ///< and greatest
  double least_chain_speed;     ///< of the tight run along itself, over the mean: least
  double greatest_chain_speed;  ///< and greatest

  friend constexpr bool operator==(const PolygonRipple&, const PolygonRipple&) noexcept = default;
};

namespace detail {

/// Two pin polygons, in pitches: the rear one's shaft at the origin, the front one's ahead of it at the centre
/// distance.
class PinPolygons {
 public:
  PinPolygons(Teeth front, Teeth rear, double centre) noexcept
      : front_step_(2.0 * pi / front.count()),
        rear_step_(2.0 * pi / rear.count()),
        front_radius_(0.5 / std::sin(pi / front.count())),
        rear_radius_(0.5 / std::sin(pi / rear.count())),
        centre_(centre),
        run_(std::asin((rear_radius_ - front_radius_) / centre)) {}

  struct State {
    double loop;         ///< length of the taut loop
    double front_lever;  ///< of the tight run about the front shaft
    double rear_lever;   ///< about the rear shaft
  };

  /// With one pin of the front sprocket at an angle. The rear sprocket stands where the tight, upper run is whole
  /// links.
  [[nodiscard]] State at(double front_phase) const noexcept {
    const double rear_phase = phase_behind_tight_run(front_phase);
    const Run upper = bridge(front_phase, rear_phase, +1.0), lower = bridge(front_phase, rear_phase, -1.0);
    // Edges on each sprocket between the pins where the runs leave it; the wrap lies ahead of the front one, behind the
    // rear one.
    const double front_edges = std::round((upper.front_angle - lower.front_angle) / front_step_);
    const double rear_edges = std::round((2.0 * pi - upper.rear_angle + lower.rear_angle) / rear_step_);
    return {upper.length + lower.length + front_edges + rear_edges, lever(upper, centre_), lever(upper, 0.0)};
  }
  [[nodiscard]] double front_step() const noexcept { return front_step_; }

 private:
  struct Point {
    double x, y;
  };
  /// A straight run between the pins at these angles.
  struct Run {
    double front_angle, rear_angle, length;
    Point front, rear;
  };
  [[nodiscard]] Point front_pin(double angle) const noexcept {
    return {centre_ + front_radius_ * std::cos(angle), front_radius_ * std::sin(angle)};
  }
  [[nodiscard]] Point rear_pin(double angle) const noexcept {
    return {rear_radius_ * std::cos(angle), rear_radius_ * std::sin(angle)};
  }
  [[nodiscard]] static double cross(Point a, Point b, Point c) noexcept {
    return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
  }
  /// The pin nearest to an angle.
  [[nodiscard]] static double nearest(double phase, double step, double angle) noexcept {
    return phase + step * std::round((angle - phase) / step);
  }
  /// How far the run's line passes from a shaft.
  [[nodiscard]] static double lever(const Run& run, double shaft) noexcept {
    return std::fabs(cross(run.rear, run.front, {shaft, 0.0})) / run.length;
  }

  /// The straight run above (side +1) or below (-1): the line from pin to pin that has every other pin on its one side.
  /// The pins that can be are those next to where a run would touch the pitch circles.
  [[nodiscard]] Run bridge(double front_phase, double rear_phase, double side) const noexcept {
    const double touching = side * (pi / 2.0 - run_);
    const double front_near = nearest(front_phase, front_step_, touching);
    const double rear_near = nearest(rear_phase, rear_step_, touching);
    Run best{};
    double least_outside = std::numeric_limits<double>::infinity();
    for (int i = -1; i <= 1; ++i)
      for (int j = -1; j <= 1; ++j) {
        Run run{front_near + i * front_step_, rear_near + j * rear_step_, 0.0, {}, {}};
        run.front = front_pin(run.front_angle);
        run.rear = rear_pin(run.rear_angle);
        run.length = std::hypot(run.front.x - run.rear.x, run.front.y - run.rear.y);
        double outside = 0.0;
        for (const double step : {-1.0, 1.0})
          outside =
              std::max({outside, side * cross(run.rear, run.front, front_pin(run.front_angle + step * front_step_)),
                        side * cross(run.rear, run.front, rear_pin(run.rear_angle + step * rear_step_))});
        if (outside < least_outside) {
          least_outside = outside;
          best = run;
        }
      }
    return best;
  }

  /// The angle of a pin of the rear sprocket, when the upper run is a whole number of pitches long.
  [[nodiscard]] double phase_behind_tight_run(double front_phase) const noexcept {
    const double touching = pi / 2.0 - run_;
    const double front_near = nearest(front_phase, front_step_, touching);
    const double straight = centre_ * std::cos(run_);
    double best = 0.0, least_outside = std::numeric_limits<double>::infinity();
    for (int i = -1; i <= 1; ++i) {
      const double front_angle = front_near + i * front_step_;
      const Point front = front_pin(front_angle);
      for (int more = -1; more <= 2; ++more) {
        // The pin of the rear circle that many pitches from the front one: two circles cut.
        const double links = std::floor(straight) + more;
        const double reach = std::hypot(front.x, front.y);
        const double cosine =
            (reach * reach + rear_radius_ * rear_radius_ - links * links) / (2.0 * reach * rear_radius_);
        if (!(std::fabs(cosine) <= 1.0)) continue;
        const double rear_angle = std::atan2(front.y, front.x) + std::acos(cosine);
        const Point rear = rear_pin(rear_angle);
        double outside = 0.0;
        for (const double way : {-1.0, 1.0})
          outside = std::max({outside, cross(rear, front, front_pin(front_angle + way * front_step_)),
                              cross(rear, front, rear_pin(rear_angle + way * rear_step_))});
        if (outside < least_outside) {
          least_outside = outside;
          best = rear_angle;
        }
      }
    }
    return best;
  }

  double front_step_, rear_step_, front_radius_, rear_radius_, centre_, run_;
};

}  // namespace detail

/// How a drive swings within one tooth of its front sprocket, at a centre distance; or the RangeError of
/// `ChainLoop::try_links`. Looked at in 512 places, which leaves a part in 10^4 of the swing.
[[nodiscard]] inline Result<PolygonRipple> try_polygon_ripple(const ChainLoop& loop, Length centre) {
  if (const auto links = loop.try_links(centre); !links) return links.error();
  const detail::PinPolygons pins(loop.front(), loop.rear(), centre / loop.series().pitch());
  const double mean_ratio = loop.front() / loop.rear();
  const double mean_speed = loop.front().count() / (2.0 * pi);  // pitches a radian
  constexpr double far = std::numeric_limits<double>::infinity();
  double shortest = far, longest = -far;
  PolygonRipple ripple{Length(), far, -far, far, -far};
  constexpr int places = 512;
  for (int i = 0; i < places; ++i) {
    const auto state = pins.at(pins.front_step() * i / places);
    shortest = std::min(shortest, state.loop);
    longest = std::max(longest, state.loop);
    const double ratio = state.front_lever / state.rear_lever / mean_ratio;
    ripple.least_ratio = std::min(ripple.least_ratio, ratio);
    ripple.greatest_ratio = std::max(ripple.greatest_ratio, ratio);
    const double speed = state.front_lever / mean_speed;
    ripple.least_chain_speed = std::min(ripple.least_chain_speed, speed);
    ripple.greatest_chain_speed = std::max(ripple.greatest_chain_speed, speed);
  }
  ripple.loop_length = (longest - shortest) * loop.series().pitch();
  return ripple;
}
#if LAYSHAFT_EXCEPTIONS
/// @throws RangeError as `ChainLoop::links` does.
[[nodiscard]] inline PolygonRipple polygon_ripple(const ChainLoop& loop, Length centre) {
  return try_polygon_ripple(loop, centre).value();
}
#endif

}  // namespace layshaft
