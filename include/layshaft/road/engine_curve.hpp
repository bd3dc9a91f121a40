// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/checks.hpp>
#include <layshaft/core/fixed_list.hpp>
#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>
#include <layshaft/core/result.hpp>
#include <layshaft/core/source.hpp>
#include <layshaft/core/watch.hpp>

#include <cstddef>
#include <initializer_list>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>

/// @file
/// The torque of an engine or a motor over its speed.
namespace layshaft {

/// Torque at an engine speed between two measured points, on a straight line.
LAYSHAFT_FORMULA(constexpr, Torque, torque_between,
                 (AngularSpeed engine_speed, AngularSpeed lower_speed, Torque lower_torque, AngularSpeed upper_speed,
                  Torque upper_torque),
                 is_finite(engine_speed) && is_finite(lower_speed) && is_finite(lower_torque) &&
                     is_finite(upper_speed) && is_finite(upper_torque) && lower_speed <= engine_speed &&
                     engine_speed <= upper_speed && lower_speed < upper_speed,
                 sources::common_practice,
                 (engine_speed - lower_speed) / (upper_speed - lower_speed) * (upper_torque - lower_torque) +
                     lower_torque)

/// Torque that makes a power at an engine speed.
LAYSHAFT_FORMULA(constexpr, Torque, torque_of_power, (Power power, AngularSpeed engine_speed),
                 is_finite(power) && positive(engine_speed), sources::definition, power / engine_speed)

/// Power of a torque at an engine speed.
// clang-format off
LAYSHAFT_FORMULA(constexpr, Power, engine_power, (Torque engine_torque, AngularSpeed engine_speed),
                 is_finite(engine_torque) && is_finite(engine_speed), sources::definition, engine_torque * engine_speed)
// clang-format on

/// Torque that is left of what the curve says, as at altitude.
// clang-format off
LAYSHAFT_FORMULA(constexpr, Torque, scaled_torque, (Torque engine_torque, double torque_factor),
                 is_finite(engine_torque) && is_finite(torque_factor) && torque_factor >= 0.0, sources::definition,
                 torque_factor * engine_torque)
// clang-format on

/// Where a torque was measured: what lies before that place has taken its loss already, and none is to be taken twice.
/// The speed is that of the engine in any case, and the torque is the power at that place over the engine's speed, so
/// that no ratio stands in it.
enum class MeasuredAt { crank, gearbox_output, rear_wheel };
inline constexpr MeasuredAt places_of_measurement[] = {MeasuredAt::crank, MeasuredAt::gearbox_output,
                                                       MeasuredAt::rear_wheel};

[[nodiscard]] constexpr std::string_view to_string(MeasuredAt place) noexcept {
  switch (place) {
    case MeasuredAt::crank: return "crank";
    case MeasuredAt::gearbox_output: return "gearbox output";
    case MeasuredAt::rear_wheel: return "rear wheel";
  }
  return {};
}

/// The most points of a curve.
inline constexpr std::size_t most_engine_points = 64;

/// One point of a curve, and what the curve does from there to the next.
struct EnginePoint {
  AngularSpeed speed;
  Torque torque;
  bool constant_power = false;  ///< from here to the next point the power stays; else the torque changes evenly

  friend constexpr bool operator==(const EnginePoint&, const EnginePoint&) noexcept = default;
};
using EnginePoints = FixedList<EnginePoint, most_engine_points>;

/// Where a curve is highest.
struct EnginePeak {
  AngularSpeed speed;
  Torque torque;
  Power power;

  friend constexpr bool operator==(const EnginePeak&, const EnginePeak&) noexcept = default;
};

/// What one must know of a curve beside its points.
struct EngineOrigin {
  MeasuredAt measured_at = MeasuredAt::crank;
  Source source = sources::stated;

  friend constexpr bool operator==(const EngineOrigin&, const EngineOrigin&) noexcept = default;
};

/// The torque of an engine at full throttle over its speed: straight between points. It is never asked beyond its ends.
///
/// Nothing is allocated; up to 64 points live in place.
class EngineCurve {
 private:
  /// The torque without the factor.
  template <class Watch, class WatchedSpeed>
  [[nodiscard]] constexpr auto full_torque(Watch watch, const WatchedSpeed& engine_speed) const {
    const AngularSpeed speed = watch.plain(engine_speed);
    std::size_t upper = 0;
    while (upper + 1 < points_.size() && points_[upper].speed < speed) ++upper;
    const auto point = [&](ValueName name, auto value) {
      return watch.looked_up(name, value, to_string(origin_.measured_at), origin_.source);
    };
    if (points_[upper].speed == speed) return point("point_torque", points_[upper].torque);
    const EnginePoint& low = points_[upper - 1];
    const EnginePoint& high = points_[upper];
    if (low.constant_power)
      return watch.step("engine_torque", formula::torque_of_power{}, point("power", low.torque * low.speed),
                        engine_speed);
    const auto lower_speed = point("lower_speed", low.speed);
    const auto lower_torque = point("lower_torque", low.torque);
    const auto upper_speed = point("upper_speed", high.speed);
    const auto upper_torque = point("upper_torque", high.torque);
    return watch.step("engine_torque", formula::torque_between{}, engine_speed, lower_speed, lower_torque, upper_speed,
                      upper_torque);
  }

 public:
  /// The curve through points of engine speed and torque. Or a RangeError that names what is wrong: fewer than 2 points
  /// or more than 64, as many torques as speeds, speeds 0 to 200,000 rpm that rise, torques 0 to 100,000 N m, one of
  /// them above zero.
  [[nodiscard]] static Result<EngineCurve> make(std::span<const AngularSpeed> speeds, std::span<const Torque> torques,
                                                const EngineOrigin& origin = EngineOrigin()) {
    if (auto error = not_as_many("torques", speeds.size(), torques.size())) return *std::move(error);
    EnginePoints points;
    for (std::size_t i = 0; i < speeds.size(); ++i) points.push_back({speeds[i], torques[i]});
    return make(points, origin);
  }
  /// The curve through points of engine speed and power, which become torques; between them the torque changes evenly.
  /// Errors as above; the lowest speed must be above zero.
  [[nodiscard]] static Result<EngineCurve> try_from_power(std::span<const AngularSpeed> speeds,
                                                          std::span<const Power> powers,
                                                          const EngineOrigin& origin = EngineOrigin()) {
    if (auto error = not_as_many("powers", speeds.size(), powers.size())) return *std::move(error);
    EnginePoints points;
    for (std::size_t i = 0; i < speeds.size(); ++i) {
      if (auto error = detail::outside(numbered("speed", i), speeds[i], 1e-3_rpm, fastest)) return *std::move(error);
      if (auto error = detail::outside(numbered("power", i), powers[i], Power(), 1e9_W)) return *std::move(error);
      points.push_back({speeds[i], torque_of_power(powers[i], speeds[i])});
    }
    return make(points, origin);
  }
  /// An electric motor: constant torque up to the speed at which it makes its power, then constant power up to its
  /// limit. Or a RangeError: torque and power above zero, the limit above zero and up to 200,000 rpm.
  [[nodiscard]] static Result<EngineCurve> try_electric(Torque torque, Power power, AngularSpeed limit,
                                                        const EngineOrigin& origin = EngineOrigin()) {
    if (auto error = detail::outside("torque", torque, 1e-3_Nm, highest_torque)) return *std::move(error);
    if (auto error = detail::outside("power", power, 1e-3_W, 1e9_W)) return *std::move(error);
    if (auto error = detail::outside("limit", limit, 1e-3_rpm, fastest)) return *std::move(error);
    const AngularSpeed corner = power / torque;
    EnginePoints points;
    points.push_back({AngularSpeed(), torque});
    if (corner < limit) points.push_back({corner, torque, true});
    points.push_back({limit, corner < limit ? torque_of_power(power, limit) : torque});
    return make(points, origin);
  }
  /// The curve through points that know how it goes on from each. Errors as above.
  [[nodiscard]] static Result<EngineCurve> make(const EnginePoints& points,
                                                const EngineOrigin& origin = EngineOrigin()) {
    const std::string limits = "2 to " + std::to_string(most_engine_points);
    if (points.overfull())
      return Error::range("number of points", "more than " + std::to_string(most_engine_points), limits);
    if (points.size() < 2) return Error::range("number of points", std::to_string(points.size()), limits);
    bool any = false;
    for (std::size_t i = 0; i < points.size(); ++i) {
      const EnginePoint& point = points[i];
      if (auto error = detail::outside(numbered("speed", i), point.speed, AngularSpeed(), fastest))
        return *std::move(error);
      if (auto error = detail::outside(numbered("torque", i), point.torque, Torque(), highest_torque))
        return *std::move(error);
      if (i > 0 && !(points[i - 1].speed < point.speed))
        return Error::range(numbered("speed", i), detail::in_words(point.speed),
                            "more than the " + detail::in_words(points[i - 1].speed) + " before it");
      any = any || point.torque > Torque();
      if (i > 0 && points[i - 1].constant_power && points[i - 1].speed == AngularSpeed())
        return Error::range(numbered("speed", i - 1), "0 rpm", "a speed above 0 where constant power begins");
    }
    if (!any) return Error::value("an engine curve needs a torque above 0 somewhere");
    return EngineCurve(points, origin, 1.0);
  }
#if LAYSHAFT_EXCEPTIONS
  /// @throws RangeError as `make` says.
  EngineCurve(std::span<const AngularSpeed> speeds, std::span<const Torque> torques,
              const EngineOrigin& origin = EngineOrigin())
      : EngineCurve(make(speeds, torques, origin).value()) {}
  /// @throws RangeError as `make` says.
  EngineCurve(std::initializer_list<AngularSpeed> speeds, std::initializer_list<Torque> torques,
              const EngineOrigin& origin = EngineOrigin())
      : EngineCurve(std::span<const AngularSpeed>(speeds.begin(), speeds.size()),
                    std::span<const Torque>(torques.begin(), torques.size()), origin) {}
  /// @throws RangeError as `try_from_power` says.
  [[nodiscard]] static EngineCurve from_power(std::span<const AngularSpeed> speeds, std::span<const Power> powers,
                                              const EngineOrigin& origin = EngineOrigin()) {
    return try_from_power(speeds, powers, origin).value();
  }
  /// @throws RangeError as `try_from_power` says.
  [[nodiscard]] static EngineCurve from_power(std::initializer_list<AngularSpeed> speeds,
                                              std::initializer_list<Power> powers,
                                              const EngineOrigin& origin = EngineOrigin()) {
    return from_power(std::span<const AngularSpeed>(speeds.begin(), speeds.size()),
                      std::span<const Power>(powers.begin(), powers.size()), origin);
  }
  /// @throws RangeError as `try_electric` says.
  [[nodiscard]] static EngineCurve electric(Torque torque, Power power, AngularSpeed limit,
                                            const EngineOrigin& origin = EngineOrigin()) {
    return try_electric(torque, power, limit, origin).value();
  }
  /// @throws RangeError as `make` says.
  explicit EngineCurve(const EnginePoints& points, const EngineOrigin& origin = EngineOrigin())
      : EngineCurve(make(points, origin).value()) {}
#endif

  /// The points, without the torque factor.
  [[nodiscard]] constexpr const EnginePoints& points() const noexcept { return points_; }
  [[nodiscard]] constexpr MeasuredAt measured_at() const noexcept { return origin_.measured_at; }
  [[nodiscard]] constexpr const Source& source() const noexcept { return origin_.source; }
  [[nodiscard]] constexpr const EngineOrigin& origin() const noexcept { return origin_; }
  /// What every torque is multiplied by; 1 where nothing was said.
  [[nodiscard]] constexpr double torque_factor() const noexcept { return factor_; }
  [[nodiscard]] constexpr AngularSpeed lowest_speed() const noexcept { return points_[0].speed; }
  [[nodiscard]] constexpr AngularSpeed highest_speed() const noexcept { return points_[points_.size() - 1].speed; }
  /// Whether a speed lies within the curve.
  [[nodiscard]] constexpr bool covers(AngularSpeed speed) const noexcept {
    return is_finite(speed) && lowest_speed() <= speed && speed <= highest_speed();
  }

  /// The same curve with every torque multiplied by a factor, instead of that it had: what altitude leaves of it
  /// (density_ratio of air.hpp). Or a RangeError, unless it is 0 to 10.
  [[nodiscard]] Result<EngineCurve> try_scaled(double torque_factor) const {
    if (auto error = detail::outside("torque_factor", torque_factor, 0.0, 10.0)) return *std::move(error);
    return EngineCurve(points_, origin_, torque_factor);
  }

  /// The torque at a speed that the curve covers, for whoever watches; `engine_speed` is a value of the watch.
  template <class Watch, class WatchedSpeed>
  [[nodiscard]] constexpr auto torque(Watch watch, const WatchedSpeed& engine_speed) const {
    const auto full = full_torque(watch, engine_speed);
    if (factor_ == 1.0) return full;
    return watch.step(formula::scaled_torque{}, full, watch.given("torque_factor", factor_));
  }
  /// The power at a speed that the curve covers, for whoever watches.
  template <class Watch, class WatchedSpeed>
  [[nodiscard]] constexpr auto power(Watch watch, const WatchedSpeed& engine_speed) const {
    const auto moment = torque(watch, engine_speed);
    return watch.step(formula::engine_power{}, moment, engine_speed);
  }

  /// The torque at an engine speed; or a RangeError beyond the ends of the curve.
  [[nodiscard]] Result<Torque> try_torque(AngularSpeed engine_speed) const {
    if (auto error = detail::outside("engine_speed", engine_speed, lowest_speed(), highest_speed()))
      return *std::move(error);
    return torque(Unwatched(), engine_speed);
  }
  /// The power at an engine speed; or a RangeError beyond the ends of the curve.
  [[nodiscard]] Result<Power> try_power(AngularSpeed engine_speed) const {
    if (auto error = detail::outside("engine_speed", engine_speed, lowest_speed(), highest_speed()))
      return *std::move(error);
    return power(Unwatched(), engine_speed);
  }
#if LAYSHAFT_EXCEPTIONS
  /// @throws RangeError beyond the ends of the curve.
  [[nodiscard]] Torque torque(AngularSpeed engine_speed) const { return try_torque(engine_speed).value(); }
  /// @throws RangeError beyond the ends of the curve.
  [[nodiscard]] Power power(AngularSpeed engine_speed) const { return try_power(engine_speed).value(); }
  /// @throws RangeError as `try_scaled` says.
  [[nodiscard]] EngineCurve scaled(double torque_factor) const { return try_scaled(torque_factor).value(); }
#endif

  /// Where the torque is greatest, exactly: a curve that is straight, or falls by constant power, between points is
  /// highest at one of them. Of several the lowest speed.
  [[nodiscard]] constexpr EnginePeak peak_torque() const noexcept {
    std::size_t best = 0;
    for (std::size_t i = 1; i < points_.size(); ++i)
      if (points_[i].torque > points_[best].torque) best = i;
    return peak_at(points_[best].speed);
  }
  /// Where the power is greatest, exactly: on a straight piece T0 + k (n - n0) the power is a quadratic in n, which is
  /// highest at (n0 - T0/k)/2 where that lies within the piece. Of several the lowest speed.
  [[nodiscard]] constexpr EnginePeak peak_power() const noexcept {
    EnginePeak best = peak_at(points_[0].speed);
    const auto consider = [&](AngularSpeed speed) {
      const EnginePeak here = peak_at(speed);
      if (here.power > best.power) best = here;
    };
    for (std::size_t i = 1; i < points_.size(); ++i) {
      const EnginePoint& lower = points_[i - 1];
      const EnginePoint& upper = points_[i];
      if (!lower.constant_power && upper.torque < lower.torque) {
        const AngularSpeed crest =
            0.5 * (lower.speed + (upper.speed - lower.speed) * (lower.torque / (lower.torque - upper.torque)));
        if (lower.speed < crest && crest < upper.speed) consider(crest);
      }
      consider(upper.speed);
    }
    return best;
  }

  friend constexpr bool operator==(const EngineCurve&, const EngineCurve&) noexcept = default;

 private:
  static constexpr AngularSpeed fastest = 200000.0_rpm;
  static constexpr Torque highest_torque = 1e5_Nm;

  constexpr EngineCurve(const EnginePoints& points, const EngineOrigin& origin, double factor) noexcept
      : points_(points), origin_(origin), factor_(factor) {}

  [[nodiscard]] static std::string numbered(const char* what, std::size_t place) {
    return std::string(what).append(" ").append(std::to_string(place + 1));
  }
  [[nodiscard]] static std::optional<Error> not_as_many(const char* what, std::size_t speeds, std::size_t others) {
    if (speeds == others) return std::nullopt;
    return Error::range(std::string("number of ").append(what), std::to_string(others),
                        std::to_string(speeds).append(", one a speed"));
  }
  [[nodiscard]] constexpr EnginePeak peak_at(AngularSpeed speed) const noexcept {
    const Torque moment = torque(Unwatched(), speed);
    return {speed, moment, moment * speed};
  }

  EnginePoints points_;
  EngineOrigin origin_;
  double factor_;
};

}  // namespace layshaft
