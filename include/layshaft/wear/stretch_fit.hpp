// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/band.hpp>
#include <layshaft/core/checks.hpp>
#include <layshaft/core/counts.hpp>
#include <layshaft/core/result.hpp>
#include <layshaft/wear/replace_by.hpp>

#include <boost/math/distributions/students_t.hpp>

#include <cmath>
#include <optional>
#include <span>
#include <string>
#include <utility>

/// @file
/// How fast a chain really grows, from the rider's own measurements. Opt-in: Boost.Math's distributions.
///
/// The estimator: a straight line of growth over distance, by least squares. Two measurements and the stated error of
/// each give its ends by the worst of both; from three on, their own scatter does, with 95 % certainty by Student's
/// distribution, but never less than the stated error allows.
namespace layshaft {

/// One measurement: so many links under tension, measured over their pins.
struct StretchMeasurement {
  Length odometer;  ///< 0 to 10,000,000 km
  Length length;    ///< of the links, 1 mm to 100 m
  int links;        ///< measured, 1 to 1000

  friend constexpr bool operator==(const StretchMeasurement&, const StretchMeasurement&) noexcept = default;
};

/// Half a millimetre: a caliper over a greasy chain, from memory.
inline constexpr Length usual_measuring_error = Length::from_value(0.0005);

/// What the measurements say.
struct StretchFit {
  Band<double> per_1000_km;  ///< growth as a share of the chain's length
  Band<double> now;          ///< growth at the last measurement, over the nominal pitch
  Length last;               ///< odometer then
  int measurements;

  /// How much further the chain goes until it has grown so far. The high end is absent where the measurements leave
  /// open whether it grows at all.
  /// @return it; or an Error where the measurements show no growth, or a RangeError for a limit outside 0 to 0.2.
  [[nodiscard]] Result<DistanceLeft> try_distance_left(double limit) const {
    if (auto error = detail::outside("limit", limit, 0.0, 0.2)) return *std::move(error);
    if (!(per_1000_km.nominal > 0.0))
      return Error::value("the measurements show no growth; measure again after more distance");
    const auto left = [&](double grown, double rate) {
      const double rest = limit > grown ? (limit - grown) / rate : 0.0;
      return rest * 1000.0 * units::km;
    };
    DistanceLeft told{left(now.high, per_1000_km.high), left(now.nominal, per_1000_km.nominal), std::nullopt};
    if (per_1000_km.low > 0.0) told.high = left(now.low, per_1000_km.low);
    return told;
  }
#if LAYSHAFT_EXCEPTIONS
  /// @throws Error as `try_distance_left` says.
  [[nodiscard]] DistanceLeft distance_left(double limit) const { return try_distance_left(limit).value(); }
#endif

  friend constexpr bool operator==(const StretchFit&, const StretchFit&) noexcept = default;
};

/// Fits the growth of a chain of a pitch. Or a RangeError that names the measurement: at least two, odometers that
/// rise, each within its range, lengths within 10 % of the nominal one; the error 0.01 to 20 mm.
[[nodiscard]] inline Result<StretchFit> try_fit_stretch(Length pitch, std::span<const StretchMeasurement> measurements,
                                                        Length error = usual_measuring_error) {
  if (auto wrong = detail::outside("pitch", pitch, 1.0_mm, 200.0_mm)) return *std::move(wrong);
  if (auto wrong = detail::outside("error", error, 0.01_mm, 20.0_mm)) return *std::move(wrong);
  const std::size_t count = measurements.size();
  if (count < 2) return Error::range("number of measurements", std::to_string(count), "at least 2");
  const auto growth = [&](const StretchMeasurement& one) { return one.length / (double(one.links) * pitch) - 1.0; };
  double worst = 0.0;  // the greatest error of a growth
  for (std::size_t i = 0; i < count; ++i) {
    const StretchMeasurement& one = measurements[i];
    const std::string number = " " + std::to_string(i + 1);
    if (auto wrong = detail::outside_km("odometer" + number, one.odometer, 0.0_km, 1e7_km)) return *std::move(wrong);
    if (one.links < 1 || one.links > 1000)
      return Error::range("links" + number, std::to_string(one.links), "1 to 1000");
    const Length nominal = double(one.links) * pitch;
    if (auto wrong = detail::outside("length" + number, one.length, 0.9 * nominal, 1.1 * nominal))
      return *std::move(wrong);
    if (i > 0 && !(measurements[i - 1].odometer < one.odometer))
      return Error::range("odometer" + number, to_text(in(one.odometer, units::km), 9) + " km",
                          "more than the " + to_text(in(measurements[i - 1].odometer, units::km), 9) + " km before it");
    worst = std::max(worst, double(error / nominal));
  }
  double mean_way = 0.0, mean_growth = 0.0;
  for (const StretchMeasurement& one : measurements) {
    mean_way += in(one.odometer, units::km) / static_cast<double>(count);
    mean_growth += growth(one) / static_cast<double>(count);
  }
  double spread = 0.0, joint = 0.0;
  for (const StretchMeasurement& one : measurements) {
    const double way = in(one.odometer, units::km) - mean_way;
    spread += way * way;
    joint += way * (growth(one) - mean_growth);
  }
  const double slope = joint / spread;  // growth a kilometre
  const StretchMeasurement& last = measurements[count - 1];
  const double last_way = in(last.odometer, units::km) - mean_way;
  const double now = mean_growth + slope * last_way;
  // Of two measurements the worst: one too short, the other too long by the error.
  double slope_error = 2.0 * worst / (in(last.odometer, units::km) - in(measurements[0].odometer, units::km));
  double now_error = worst;
  if (count > 2) {
    double rest = 0.0;
    for (const StretchMeasurement& one : measurements) {
      const double off = growth(one) - mean_growth - slope * (in(one.odometer, units::km) - mean_way);
      rest += off * off;
    }
    const double freedom = static_cast<double>(count - 2);
    // Worked out in double, not in long double as a matter of course: that is half the code, and digits enough.
    using InDouble = boost::math::policies::policy<boost::math::policies::promote_double<false>>;
    const boost::math::students_t_distribution<double, InDouble> students_t(freedom);
    const double sureness = boost::math::quantile(students_t, 0.975);
    // Half the stated error is taken for its standard deviation, which no lucky scatter undercuts.
    const double scatter = std::max(std::sqrt(rest / freedom), 0.5 * worst);
    slope_error = sureness * scatter / std::sqrt(spread);
    now_error = sureness * scatter * std::sqrt(1.0 / static_cast<double>(count) + last_way * last_way / spread);
  }
  const double thousand = 1000.0;
  return StretchFit{{thousand * (slope - slope_error), thousand * slope, thousand * (slope + slope_error)},
                    {now - now_error, now, now + now_error},
                    last.odometer,
                    static_cast<int>(count)};
}
#if LAYSHAFT_EXCEPTIONS
/// @throws RangeError as `try_fit_stretch` says.
[[nodiscard]] inline StretchFit fit_stretch(Length pitch, std::span<const StretchMeasurement> measurements,
                                            Length error = usual_measuring_error) {
  return try_fit_stretch(pitch, measurements, error).value();
}
#endif

}  // namespace layshaft
