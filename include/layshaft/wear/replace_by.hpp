// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/band.hpp>
#include <layshaft/core/checks.hpp>
#include <layshaft/core/result.hpp>
#include <layshaft/core/units.hpp>
#include <layshaft/wear/road_distance.hpp>
#include <layshaft/wear/tread_rate.hpp>

#include <chrono>
#include <cmath>
#include <optional>
#include <utility>

/// @file
/// The day by which a part that wears is to be replaced, from how far it still goes and how much is ridden.
namespace layshaft {

/// How much further a part goes; nothing left is 0. The high end is absent where it may last for ever, as far as
/// measurements tell.
struct DistanceLeft {
  Length low, nominal;
  std::optional<Length> high;

  constexpr DistanceLeft(Length at_least, Length likely, std::optional<Length> at_most = {}) noexcept
      : low(at_least), nominal(likely), high(at_most) {}
  /// What a band tells; what is past counts as nothing left.
  constexpr explicit DistanceLeft(const Band<Length>& left) noexcept
      : low(left.low < Length() ? Length() : left.low),
        nominal(left.nominal < Length() ? Length() : left.nominal),
        high(left.high < Length() ? Length() : left.high) {}

  friend constexpr bool operator==(const DistanceLeft&, const DistanceLeft&) noexcept = default;
};

/// When to replace a part, in days of the civil calendar. A day more than a hundred years ahead is absent.
struct ReplaceBy {
  std::optional<std::chrono::sys_days> earliest;  ///< if all errors are on the bad side: measure again before it
  std::optional<std::chrono::sys_days> expected;
  std::optional<std::chrono::sys_days> latest;

  friend constexpr bool operator==(const ReplaceBy&, const ReplaceBy&) noexcept = default;
};

/// The days on which a distance that was left on one day is ridden, each rounded to the day before. So much is ridden a
/// day: 1 m to 5,000 km. Or a RangeError.
[[nodiscard]] inline Result<ReplaceBy> try_replace_by(const DistanceLeft& left, std::chrono::sys_days measured,
                                                      Length per_day) {
  for (const auto& [name, distance] : {std::pair{"left.low", left.low}, std::pair{"left.nominal", left.nominal},
                                       std::pair{"left.high", left.high.value_or(left.nominal)}})
    if (auto error = detail::outside_km(name, distance, Length(), 1e7 * units::km)) return *std::move(error);
  if (auto error = detail::outside("per_day", per_day, 1.0_m, 5000.0_km)) return *std::move(error);
  constexpr double century = 36525.0;
  const auto day = [&](Length distance) -> std::optional<std::chrono::sys_days> {
    const double days = std::floor(days_left(distance, per_day));
    if (days > century) return std::nullopt;
    return measured + std::chrono::days(static_cast<int>(days));
  };
  ReplaceBy told{day(left.low), day(left.nominal), {}};
  if (left.high) told.latest = day(*left.high);
  return told;
}
#if LAYSHAFT_EXCEPTIONS
/// @throws RangeError as `try_replace_by` says.
[[nodiscard]] inline ReplaceBy replace_by(const DistanceLeft& left, std::chrono::sys_days measured, Length per_day) {
  return try_replace_by(left, measured, per_day).value();
}
#endif

}  // namespace layshaft
