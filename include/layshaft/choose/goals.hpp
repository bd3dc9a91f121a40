// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/choose/measure.hpp>
#include <layshaft/core/checks.hpp>

#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <vector>

/// @file
/// What a rider wants of a set-up: limits, which it must keep, and wishes, which it should come near.
namespace layshaft {

/// What a set-up must keep: at the least, at the most, or both, in the measure's own kind.
struct Limit {
  Measured measured;
  std::optional<Amount> least = {};
  std::optional<Amount> most = {};

  friend constexpr bool operator==(const Limit&, const Limit&) noexcept = default;
};

/// Which way a wish goes.
enum class Want : unsigned char { less, more, target };

[[nodiscard]] constexpr std::string_view to_string(Want want) noexcept {
  switch (want) {
    case Want::less: return "less";
    case Want::more: return "more";
    case Want::target: return "target";
  }
  return {};
}

/// What a set-up should come near.
struct Wish {
  Measured measured;
  Want want = Want::more;
  std::optional<Amount> target = {};  ///< where the wish is for one, in the measure's own kind
  double weight = 1.0;                ///< how much it matters against the others: above 0, to 1e6

  friend constexpr bool operator==(const Wish&, const Wish&) noexcept = default;
};

/// All that a rider wants. Robust: everything is judged by the worse end of its band, not by what is likely.
struct Goals {
  std::vector<Limit> limits = {};  ///< up to 32
  std::vector<Wish> wishes;        ///< 1 to 16
  bool robust = false;

  friend bool operator==(const Goals&, const Goals&) = default;
};

inline constexpr std::size_t most_limits = 32;
inline constexpr std::size_t most_wishes = 16;

namespace detail {

[[nodiscard]] inline std::string_view name_of(Dimension dimension) noexcept {
  switch (dimension) {
    case Dimension::length: return "a length";
    case Dimension::mass: return "a mass";
    case Dimension::speed: return "a speed";
    case Dimension::angular_speed: return "an angular speed";
    case Dimension::angle: return "an angle";
    default: return "a number";
  }
}
/// Numbers and fractions are both plain numbers.
[[nodiscard]] constexpr bool same_kind(Dimension measured, Dimension given) noexcept {
  const auto plain = [](Dimension d) { return d == Dimension::fraction || d == Dimension::number; };
  return measured == given || (plain(measured) && plain(given));
}
[[nodiscard]] inline std::optional<Error> wrong_amount(std::string_view name, Measure measure, const Amount& amount) {
  const MeasureRow& row = measure_row(measure);
  if (!same_kind(row.dimension, amount.dimension))
    return Error::value(
        std::string(name).append(" of \"").append(row.name).append("\" is ").append(name_of(amount.dimension)) +
        "; expected " + std::string(name_of(row.dimension)));
  if (!is_finite(amount.value) || amount.value < -1e12 || amount.value > 1e12)
    return Error::range(name, in_words(amount.value), "-1e12 to 1e12 in SI units");
  return std::nullopt;
}
[[nodiscard]] inline std::optional<Error> outside(const Measured& measured, int gears) {
  const MeasureRow& row = measure_row(measured.what);
  const std::string name = std::string("\"").append(row.name).append("\"");
  if (row.needs != MeasureNeeds::nothing) {
    if (measured.gear && (*measured.gear < 1 || *measured.gear > gears))
      return Error::range("gear of " + name, std::to_string(*measured.gear), "1 to " + std::to_string(gears));
  } else if (measured.gear) {
    return Error::value(name + " depends on no gear; leave gear out");
  }
  if (row.needs == MeasureNeeds::gear_and_speed) {
    if (!measured.speed) return Error::value(name + " needs the road speed that it is asked at");
    return outside("speed", *measured.speed, 0.001_kmh, 10000_kmh);
  }
  if (measured.speed) return Error::value(name + " depends on no speed; leave speed out");
  return std::nullopt;
}
[[nodiscard]] inline std::optional<Error> outside(const Limit& limit, int gears) {
  if (auto error = outside(limit.measured, gears)) return error;
  if (!limit.least && !limit.most) return Error::value("a limit needs least, most, or both; neither was given");
  if (limit.least)
    if (auto error = wrong_amount("least", limit.measured.what, *limit.least)) return error;
  if (limit.most)
    if (auto error = wrong_amount("most", limit.measured.what, *limit.most)) return error;
  if (limit.least && limit.most && limit.most->value < limit.least->value)
    return Error::value("a limit's most lies below its least, so that nothing can keep it");
  return std::nullopt;
}
[[nodiscard]] inline std::optional<Error> outside(const Wish& wish, int gears) {
  if (auto error = outside(wish.measured, gears)) return error;
  if ((wish.want == Want::target) != wish.target.has_value())
    return Error::value(wish.target ? "a wish for less or more has no target" : "a wish for a target needs the target");
  if (wish.target)
    if (auto error = wrong_amount("target", wish.measured.what, *wish.target)) return error;
  if (!(wish.weight > 0.0 && wish.weight <= 1e6))
    return Error::range("weight", in_words(wish.weight), "above 0, to 1000000");
  return std::nullopt;
}
/// The error of the goals on a machine with so many gears.
[[nodiscard]] inline std::optional<Error> outside(const Goals& goals, int gears) {
  if (goals.limits.size() > most_limits)
    return Error::range("number of limits", std::to_string(goals.limits.size()), "at most 32");
  if (goals.wishes.empty() || goals.wishes.size() > most_wishes)
    return Error::range("number of wishes", std::to_string(goals.wishes.size()), "1 to 16");
  for (std::size_t i = 0; i < goals.limits.size(); ++i)
    if (auto error = outside(goals.limits[i], gears)) return error->in("limits[" + std::to_string(i) + "]");
  for (std::size_t i = 0; i < goals.wishes.size(); ++i)
    if (auto error = outside(goals.wishes[i], gears)) return error->in("wishes[" + std::to_string(i) + "]");
  return std::nullopt;
}

}  // namespace detail

}  // namespace layshaft
