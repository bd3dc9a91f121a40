// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/band.hpp>
#include <layshaft/road/engine_curve.hpp>

#include <algorithm>  // min, max

/// @file
/// What a maker's four numbers tell of an engine: greatest torque and greatest power, each with its speed.
namespace layshaft {

/// How the curve between a maker's four numbers is guessed.
inline constexpr Source engine_estimate_source{
    "estimate from greatest torque and power: straight lines between them, half the torque towards standstill",
    Certainty::common_practice};

/// A maker's four numbers, and how far the curve is to reach.
struct EngineRating {
  Torque torque;              ///< greatest
  AngularSpeed torque_speed;  ///< at which it is
  Power power;                ///< greatest
  AngularSpeed power_speed;   ///< at which it is; above torque_speed
  AngularSpeed lowest;        ///< where the curve begins: above 0, to torque_speed
  AngularSpeed highest;       ///< where it ends: from power_speed on, below twice that

  friend constexpr bool operator==(const EngineRating&, const EngineRating&) noexcept = default;
};

/// A curve guessed from four numbers, as wide as they leave it. All three pass through both of them.
///
/// * High is what no curve with these two peaks can exceed, by what a peak is: the greatest torque, and from where that
///   makes the greatest power on, this power. Certain, for as far as the maker's numbers are.
/// * Nominal (common practice) is straight: from half the greatest torque at standstill to the greatest at its speed,
///   to the torque of the greatest power at its own, but nowhere above that power; and beyond it a torque that falls so
///   that the power is a parabola with its crest there.
/// * Low (common practice) is proportional to speed up to the greatest torque, lies between the peaks as far below
///   nominal as high can lie above (or under the tangent of the greatest power), and falls four times as steeply as
///   nominal beyond them.
///
/// Where both peaks make the same power, all three keep it from the one to the other.
struct EngineEstimate {
  EngineCurve low, nominal, high;

  [[nodiscard]] const EngineCurve& at(Corner corner) const noexcept {
    return corner == Corner::low ? low : corner == Corner::high ? high : nominal;
  }
  friend bool operator==(const EngineEstimate&, const EngineEstimate&) noexcept = default;
};

/// The curve that a maker's four numbers mean; or an Error where they contradict one another: the power is less than
/// the greatest torque makes at its speed, or asks for more torque than the greatest.
[[nodiscard]] inline Result<EngineEstimate> try_estimate_engine(const EngineRating& rating,
                                                                MeasuredAt measured_at = MeasuredAt::crank) {
  const Torque torque = rating.torque;
  const Power power = rating.power;
  const AngularSpeed torque_speed = rating.torque_speed, power_speed = rating.power_speed;
  const AngularSpeed lowest = rating.lowest, highest = rating.highest;
  if (auto error = detail::outside("torque", torque, 1e-3_Nm, 1e5_Nm)) return *std::move(error);
  if (auto error = detail::outside("power", power, 1e-3_W, 1e9_W)) return *std::move(error);
  if (auto error = detail::outside("power_speed", power_speed, 1.0_rpm, 50000.0_rpm)) return *std::move(error);
  if (auto error = detail::outside("torque_speed", torque_speed, 1.0_rpm, power_speed)) return *std::move(error);
  if (auto error = detail::outside("lowest", lowest, 1.0_rpm, torque_speed)) return *std::move(error);
  if (auto error = detail::outside("highest", highest, power_speed, 2.0 * power_speed)) return *std::move(error);
  if (torque_speed == power_speed)
    return Error::value("greatest torque and greatest power stand at one speed; from that no curve can be guessed");
  constexpr double rounding = 1.0 + 1e-12;  // two of the four numbers may say the same
  const Torque needed = torque_of_power(power, power_speed);
  if (rounding * power < engine_power(torque, torque_speed))
    return Error::range("power", detail::in_words(power),
                        "at least " + detail::in_words(engine_power(torque, torque_speed)) +
                            ", which the greatest torque makes at its speed");
  if (needed > rounding * torque)
    return Error::range("torque", detail::in_words(torque),
                        "at least " + detail::in_words(needed) + ", which the greatest power takes at its speed");
  const Torque at_power = std::min(needed, torque);

  const EngineOrigin origin{measured_at, engine_estimate_source};
  // Where the greatest torque would make the greatest power; its own speed, where only rounding lies between them.
  const AngularSpeed meeting = power / torque;
  const AngularSpeed corner = meeting > torque_speed * (1.0 + 1e-15) ? meeting : torque_speed;
  const auto straight = [&](AngularSpeed speed) {
    return torque_between(speed, torque_speed, torque, power_speed, at_power);
  };
  // The straight line makes the greatest power at power_speed, and once more at this speed, or nowhere on it.
  const AngularSpeed crossing =
      at_power < torque ? std::max((power_speed - torque_speed) * (at_power / (torque - at_power)), torque_speed)
                        : power_speed;
  const bool capped = crossing < power_speed;

  EnginePoints high, nominal, low;
  const auto put = [](EnginePoints& points, AngularSpeed speed, Torque moment, bool constant_power = false) {
    if (points.empty() || points[points.size() - 1].speed < speed) points.push_back({speed, moment, constant_power});
  };
  put(high, lowest, torque, !(lowest < corner));
  put(high, corner, torque, true);
  put(high, power_speed, at_power, true);
  put(high, highest, torque_of_power(power, highest));

  const auto shallow = [&](AngularSpeed speed, double steepness) {
    return std::max(Torque(), at_power * (1.0 - steepness * (speed / power_speed - 1.0)));
  };
  if (lowest < torque_speed) put(nominal, lowest, torque * (0.5 + 0.5 * (lowest / torque_speed)));
  put(nominal, torque_speed, torque, capped && !(torque_speed < crossing));
  if (capped) put(nominal, crossing, straight(crossing), true);
  put(nominal, power_speed, at_power);
  put(nominal, highest, shallow(highest, 1.0));

  if (lowest < torque_speed) put(low, lowest, torque * (lowest / torque_speed));
  put(low, torque_speed, torque, !(torque_speed < corner));
  if (torque_speed < corner && corner < power_speed)  // under the tangent of the greatest power, where that is lower
    put(low, corner, std::max(Torque(), std::min(2.0 * straight(corner) - torque, shallow(corner, 1.0))));
  put(low, power_speed, at_power);
  const AngularSpeed spent = 1.25 * power_speed;  // where four times the fall has taken all
  if (spent < highest) put(low, spent, Torque());
  put(low, highest, shallow(highest, 4.0));

  // Of numbers within these ranges each is a curve: its speeds rise, and no torque is above the greatest.
  return EngineEstimate{*EngineCurve::make(low, origin), *EngineCurve::make(nominal, origin),
                        *EngineCurve::make(high, origin)};
}
#if LAYSHAFT_EXCEPTIONS
/// @throws Error as `try_estimate_engine` says.
[[nodiscard]] inline EngineEstimate estimate_engine(const EngineRating& rating,
                                                    MeasuredAt measured_at = MeasuredAt::crank) {
  return try_estimate_engine(rating, measured_at).value();
}
#endif

}  // namespace layshaft
