// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/checks.hpp>

#include <optional>

/// @file
/// The adjuster at the rear axle, by the centre distances it reaches.
namespace layshaft {

/// Where the axle can stand, on the stand, and the slack asked for there.
class Adjuster {
 public:
  /// The adjuster; or a RangeError that names the part and its range: centre distances of 1 mm to 100 m, the greatest
  /// not below the least, a slack of zero to a quarter of the least centre distance.
  [[nodiscard]] static Result<Adjuster> make(Length centre_min, Length centre_max, Length slack = Length()) {
    if (auto error = fault(centre_min, centre_max, slack)) return *error;
    return Adjuster(centre_min, centre_max, slack, Unchecked{});
  }
#if LAYSHAFT_EXCEPTIONS
  /// @throws RangeError that names the part and its range.
  Adjuster(Length centre_min, Length centre_max, Length slack = Length())
      : Adjuster(centre_min, centre_max, slack, Unchecked{}) {
    if (auto error = fault(centre_min, centre_max, slack)) raise(*error);
  }
#endif

  /// The centre distance with the axle as far forward as it goes.
  [[nodiscard]] constexpr Length centre_min() const noexcept { return centre_min_; }
  /// The centre distance with the axle as far back as it goes.
  [[nodiscard]] constexpr Length centre_max() const noexcept { return centre_max_; }
  /// How far a hand shall move the middle of the lower run, up plus down, in neutral, on the stand.
  [[nodiscard]] constexpr Length slack() const noexcept { return slack_; }

  friend constexpr bool operator==(const Adjuster& a, const Adjuster& b) noexcept {
    return a.centre_min_ == b.centre_min_ && a.centre_max_ == b.centre_max_ && a.slack_ == b.slack_;
  }

 private:
  struct Unchecked {};
  constexpr Adjuster(Length centre_min, Length centre_max, Length slack, Unchecked) noexcept
      : centre_min_(centre_min), centre_max_(centre_max), slack_(slack) {}
  [[nodiscard]] static std::optional<Error> fault(Length centre_min, Length centre_max, Length slack) {
    if (auto error = detail::outside("centre_min", centre_min, units::mm, 100.0 * units::m)) return error;
    if (auto error = detail::outside("centre_max", centre_max, centre_min, 100.0 * units::m)) return error;
    return detail::outside("slack", slack, Length(), 0.25 * centre_min);
  }

  Length centre_min_;
  Length centre_max_;
  Length slack_;
};

}  // namespace layshaft
