// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/band.hpp>
#include <layshaft/core/checks.hpp>
#include <layshaft/core/fixed_list.hpp>
#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>
#include <layshaft/core/result.hpp>
#include <layshaft/core/source.hpp>
#include <layshaft/core/units.hpp>
#include <layshaft/core/watch.hpp>
#include <layshaft/tyre/tread.hpp>
#include <layshaft/wear/road_distance.hpp>

#include <optional>
#include <utility>

/// @file
/// How fast a tyre wears, from two measurements of its tread; and until when it will last. How much is worn off and how
/// far the rest lasts are the tread's own formulas (tyre/tread.hpp), asked at the ends of what was measured.
namespace layshaft {

/// How far a depth may be out that is read off a gauge held by hand, either way, where nothing else is stated.
inline constexpr Length usual_depth_error = 0.25_mm;
/// Where that comes from: recalled, not seen.
inline constexpr Source depth_error_source{"assumption: a depth gauge held by hand reads to 0.25 mm either way",
                                           Certainty::from_memory};

/// Distance ridden, from what an odometer counted.
LAYSHAFT_FORMULA(constexpr, Length, true_distance, (Length odometer_distance, double odometer_factor),
                 positive(odometer_distance) && positive(odometer_factor), sources::definition,
                 odometer_distance / odometer_factor)

/// Height that the tread loses over a distance, if it goes on wearing as it did.
LAYSHAFT_FORMULA(constexpr, Length, tread_worn_over, (Length tread_worn, Length true_distance, Length distance),
                 is_finite(tread_worn) && tread_worn >= 0.0_mm && positive(true_distance) && positive(distance),
                 even_wear_source, tread_worn / true_distance * distance)

/// Days for which a distance lasts; below zero: how many days ago.
LAYSHAFT_FORMULA(constexpr, double, days_left, (Length distance_left, Length daily_distance),
                 is_finite(distance_left) && positive(daily_distance), sources::definition,
                 distance_left / daily_distance)

/// The tread's depth, and what the odometer showed then.
struct DepthReading {
  Length depth = {};     ///< at the same place of the pattern each time
  Length odometer = {};  ///< as read

  friend constexpr bool operator==(const DepthReading&, const DepthReading&) noexcept = default;
};

/// What a rate of wear is told from.
struct TreadReadings {
  DepthReading first = {};   ///< depth to 100 mm, odometer 0 to 10,000,000 km
  DepthReading second = {};  ///< later: no deeper than the first, and at least 1 km on
  /// How far each depth may be out, either way: 0 to 5 mm; where none is stated, `usual_depth_error` holds.
  std::optional<Length> depth_error = {};
  /// What the odometer counts over what is ridden: 0.5 to 2; 1.03 for one that counts 3 % too much.
  Band<double> odometer_factor = Band<double>::exactly(1.0);
  std::optional<Length> least = {};    ///< depth down to which the tread may be used: 0 to less than the first depth
  std::optional<Length> per_day = {};  ///< ridden in a day, in true distance: 1 m to 5,000 km

  friend constexpr bool operator==(const TreadReadings&, const TreadReadings&) noexcept = default;
};

/// How fast a tyre wears. A band's ends are those of both depths' errors and of the odometer's factor.
struct TreadRate {
  Band<Length> worn = {};         ///< between the two readings; never below nothing
  Band<Length> distance = {};     ///< truly ridden between them
  Band<Length> per_1000_km = {};  ///< height that the tread loses
  /// True distance from the second reading until the least depth; below zero: how far ago. None where no least depth is
  /// stated, or the errors are as large as the wear, so that it may last for ever.
  std::optional<Band<Length>> distance_left = {};
  /// The same in days; none where no distance a day is stated.
  std::optional<Band<double>> days_left = {};
  /// By when to measure again: how far it lasts if all errors were on the bad side, or nothing where it may be there
  /// already. None where no least depth is stated or nothing can have worn off.
  std::optional<Length> measure_again = {};
  /// From memory where no error of the depths is stated, else common practice, as even wear is.
  Certainty certainty = Certainty::from_memory;

  friend constexpr bool operator==(const TreadRate&, const TreadRate&) noexcept = default;
};

namespace detail {

/// Less than this cannot be told from nothing, and no distance follows from it.
inline constexpr Length least_tread_worn = 0.01_mm;

/// Which way each depth was read wrong, and where the odometer's factor stands.
struct TreadRateCorners {
  Corner first = Corner::nominal;
  Corner second = Corner::nominal;
  Corner odometer = Corner::nominal;
};
inline constexpr auto tread_rate_corners = [] {
  FixedList<TreadRateCorners, 9> all;
  all.push_back({});
  for (const Corner first : {Corner::low, Corner::high})
    for (const Corner second : {Corner::low, Corner::high})
      for (const Corner odometer : {Corner::low, Corner::high}) all.push_back({first, second, odometer});
  return all;
}();

/// The two depths as they may have been: neither below nothing, nor the second above the first.
struct DepthsAt {
  Length first;
  Length second;
};
[[nodiscard]] constexpr DepthsAt depths_at(const TreadReadings& readings, const TreadRateCorners& at) noexcept {
  const Length error = readings.depth_error.value_or(usual_depth_error);
  const auto depth = [&](Length read, Corner corner) {
    const Length depth = corner == Corner::low ? read - error : corner == Corner::high ? read + error : read;
    return depth < Length() ? Length() : depth;
  };
  const Length first = depth(readings.first.depth, at.first), second = depth(readings.second.depth, at.second);
  return {first, second < first ? second : first};
}

/// Distance ridden between the readings, for whoever watches.
template <class Watch>
[[nodiscard]] constexpr auto ridden_between(Watch watch, const TreadReadings& readings, const TreadRateCorners& at) {
  const auto counted = watch.given("odometer_distance", readings.second.odometer - readings.first.odometer);
  const auto factor = watch.given("odometer_factor", readings.odometer_factor.at(at.odometer));
  return watch.step(formula::true_distance{}, counted, factor);
}
/// Height worn off between them.
template <class Watch>
[[nodiscard]] constexpr auto worn_between(Watch watch, const TreadReadings& readings, const TreadRateCorners& at) {
  const DepthsAt depths = depths_at(readings, at);
  const auto first = watch.given("new_tread_depth", depths.first);
  const auto second = watch.given("tread_depth", depths.second);
  return watch.step(formula::tread_worn{}, first, second);
}
/// Height lost in 1,000 km.
template <class Watch>
[[nodiscard]] constexpr auto worn_per_1000_km(Watch watch, const TreadReadings& readings, const TreadRateCorners& at) {
  const auto worn = worn_between(watch, readings, at);
  const auto ridden = ridden_between(watch, readings, at);
  const auto distance = watch.given("distance", 1000_km);
  return watch.step(formula::tread_worn_over{}, worn, ridden, distance);
}
/// Distance until the least depth, where one is stated and some of the tread has worn off.
template <class Watch>
[[nodiscard]] constexpr auto distance_left_between(Watch watch, const TreadReadings& readings,
                                                   const TreadRateCorners& at) {
  const auto ridden = ridden_between(watch, readings, at);
  const DepthsAt depths = depths_at(readings, at);
  const auto first = watch.given("new_tread_depth", depths.first);
  const auto second = watch.given("tread_depth", depths.second);
  const auto least = watch.given("least_tread_depth", *readings.least);
  return watch.step(formula::distance_left{}, ridden, first, second, least);
}

[[nodiscard]] inline std::optional<Error> outside(const TreadReadings& readings) {
  const auto &first = readings.first, &second = readings.second;
  constexpr Length longest = 1e7 * units::km;
  if (auto error = outside("first.depth", first.depth, Length(), 100_mm)) return error;
  if (auto error = outside_km("first.odometer", first.odometer, Length(), longest)) return error;
  if (auto error = outside("second.depth", second.depth, Length(), first.depth)) return error;
  if (auto error = outside_km("second.odometer", second.odometer, first.odometer, longest)) return error;
  if (second.odometer - first.odometer < 1_km)
    return Error::range("second.odometer", in_km(second.odometer), "at least 1 km more than the first");
  if (readings.depth_error)
    if (auto error = outside("depth_error", *readings.depth_error, Length(), 5_mm)) return error;
  if (auto error = outside("odometer_factor", readings.odometer_factor, 0.5, 2.0)) return error;
  if (readings.least) {
    if (auto error = outside("least", *readings.least, Length(), first.depth)) return error;
    if (*readings.least == first.depth)
      return Error::range("least", in_words(*readings.least), "less than the first depth");
  }
  if (readings.per_day)
    if (auto error = outside_km("per_day", *readings.per_day, 1_m, 5000_km)) return error;
  return std::nullopt;
}

}  // namespace detail

/// How fast the tread wears, and until when it lasts. Or a RangeError, where a reading lies outside its range.
[[nodiscard]] inline Result<TreadRate> try_tread_rate(const TreadReadings& readings) {
  if (auto error = detail::outside(readings)) return *std::move(error);
  using detail::TreadRateCorners, detail::tread_rate_corners;
  const auto over_corners = [&](auto calculation) {
    return over_runs(tread_rate_corners,
                     [&](const TreadRateCorners& at) { return calculation(Unwatched(), readings, at); });
  };
  TreadRate rate;
  rate.worn = over_corners([](auto... all) { return detail::worn_between(all...); });
  rate.distance = over_corners([](auto... all) { return detail::ridden_between(all...); });
  rate.per_1000_km = over_corners([](auto... all) { return detail::worn_per_1000_km(all...); });
  rate.certainty = weaker(even_wear_source.certainty,
                          readings.depth_error ? sources::stated.certainty : depth_error_source.certainty);
  if (!readings.least || rate.worn.high < detail::least_tread_worn) return rate;

  // All errors on the bad side: the tread was deeper, is shallower, and went less far than it seems.
  const Length soonest =
      detail::distance_left_between(Unwatched(), readings, {Corner::high, Corner::low, Corner::high});
  rate.measure_again = soonest > Length() ? soonest : Length();
  if (rate.worn.low < detail::least_tread_worn) return rate;

  rate.distance_left = over_corners([](auto... all) { return detail::distance_left_between(all...); });
  if (readings.per_day) {
    const Length daily = *readings.per_day;
    rate.days_left = over(*rate.distance_left, [&](Length left) { return days_left(left, daily); });
  }
  return rate;
}
#if LAYSHAFT_EXCEPTIONS
/// @throws RangeError as `try_tread_rate` says.
[[nodiscard]] inline TreadRate tread_rate(const TreadReadings& readings) { return try_tread_rate(readings).value(); }
#endif

}  // namespace layshaft
