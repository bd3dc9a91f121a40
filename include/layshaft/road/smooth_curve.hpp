// SPDX-License-Identifier: MIT
#pragma once

#include <math.h>  // which Boost 1.74's pchip leaves to others

#include <layshaft/road/engine_curve.hpp>

#include <boost/math/interpolators/pchip.hpp>

#include <algorithm>  // min
#include <cmath>
#include <memory>
#include <string>
#include <vector>

/// @file
/// A smooth curve through an engine's points, which never rises or falls beyond them. Opt-in: it allocates, and Boost's
/// interpolator needs exceptions.
namespace layshaft {

/// Monotone cubic interpolation (Fritsch and Butland) of an engine's torque between its points, at least four. At the
/// ends the slope is that of the parabola through three points, kept from pointing the wrong way or overshooting.
class SmoothCurve {
 public:
  /// The smooth curve; or a RangeError for fewer than four points, or an Error where the curve has a piece of constant
  /// power, which is smooth already.
  [[nodiscard]] static Result<SmoothCurve> make(const EngineCurve& curve) {
    const EnginePoints& points = curve.points();
    if (points.size() < 4) return Error::range("number of points", std::to_string(points.size()), "at least 4");
    std::vector<double> speeds, torques;
    for (const EnginePoint& point : points) {
      if (point.constant_power)
        return Error::value("an engine curve with a piece of constant power is not to be smoothed");
      speeds.push_back(point.speed.value());
      torques.push_back(point.torque.value());
    }
    const std::size_t last = speeds.size() - 1;
    const double first_slope =
        end_slope(speeds[1] - speeds[0], speeds[2] - speeds[1], (torques[1] - torques[0]) / (speeds[1] - speeds[0]),
                  (torques[2] - torques[1]) / (speeds[2] - speeds[1]));
    const double last_slope =
        end_slope(speeds[last] - speeds[last - 1], speeds[last - 1] - speeds[last - 2],
                  (torques[last] - torques[last - 1]) / (speeds[last] - speeds[last - 1]),
                  (torques[last - 1] - torques[last - 2]) / (speeds[last - 1] - speeds[last - 2]));
    return SmoothCurve(curve,
                       std::make_shared<const Spline>(std::move(speeds), std::move(torques), first_slope, last_slope));
  }
  /// @throws RangeError or Error as `make` says.
  explicit SmoothCurve(const EngineCurve& curve) : SmoothCurve(make(curve).value()) {}

  [[nodiscard]] const EngineCurve& points() const noexcept { return curve_; }
  /// The torque at an engine speed, the curve's torque factor taken in; or a RangeError beyond the ends.
  [[nodiscard]] Result<Torque> try_torque(AngularSpeed engine_speed) const {
    if (auto error = detail::outside("engine_speed", engine_speed, curve_.lowest_speed(), curve_.highest_speed()))
      return *std::move(error);
    return curve_.torque_factor() * full_torque(engine_speed);
  }
  /// @throws RangeError beyond the ends.
  [[nodiscard]] Torque torque(AngularSpeed engine_speed) const { return try_torque(engine_speed).value(); }

  /// A curve with points of the smooth one between those there are, so many in all as a curve holds: what everything
  /// else that asks for an EngineCurve takes. Its greatest torque is the same to the bit.
  [[nodiscard]] EngineCurve dense() const {
    const EnginePoints& known = curve_.points();
    const std::size_t pieces = known.size() - 1;
    const std::size_t each = (most_engine_points - 1) / pieces;
    EnginePoints points;
    for (std::size_t i = 0; i < pieces; ++i) {
      points.push_back(known[i]);
      for (std::size_t j = 1; j < each; ++j) {
        const double share = static_cast<double>(j) / static_cast<double>(each);
        const AngularSpeed speed = known[i].speed + share * (known[i + 1].speed - known[i].speed);
        points.push_back({speed, full_torque(speed)});
      }
    }
    points.push_back(known[pieces]);
    return EngineCurve(points, curve_.origin()).scaled(curve_.torque_factor());
  }

  friend bool operator==(const SmoothCurve& a, const SmoothCurve& b) noexcept { return a.curve_ == b.curve_; }

 private:
  using Spline = boost::math::interpolators::pchip<std::vector<double>>;

  SmoothCurve(const EngineCurve& curve, std::shared_ptr<const Spline> spline)
      : curve_(curve), spline_(std::move(spline)) {}

  /// The slope at an end: that of the parabola through three points, none where it points another way than the first
  /// secant, and at most three times that where the next one turns.
  [[nodiscard]] static double end_slope(double step, double next_step, double secant, double next_secant) noexcept {
    const double slope = ((2.0 * step + next_step) * secant - step * next_secant) / (step + next_step);
    if (!(slope * secant > 0.0)) return 0.0;
    if (secant * next_secant <= 0.0 && std::fabs(slope) > 3.0 * std::fabs(secant)) return 3.0 * secant;
    return slope;
  }
  [[nodiscard]] Torque full_torque(AngularSpeed engine_speed) const {
    for (const EnginePoint& point : curve_.points())
      if (point.speed == engine_speed) return point.torque;
    return Torque::from_value((*spline_)(engine_speed.value()));
  }

  EngineCurve curve_;
  std::shared_ptr<const Spline> spline_;
};

}  // namespace layshaft
