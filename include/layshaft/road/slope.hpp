// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/angle_of_slope.hpp>
#include <layshaft/core/checks.hpp>
#include <layshaft/core/math.hpp>
#include <layshaft/core/result.hpp>
#include <layshaft/core/watch.hpp>

#include <optional>

/// @file
/// How steep the road is.
namespace layshaft {

/// A slope, uphill above zero: as a grade, rise over run, or as an angle short of the vertical.
class Slope {
 public:
  /// The steepest grade there is a Slope of, 89.9 degrees.
  static constexpr double steepest_grade = 1000.0;

  /// Level.
  constexpr Slope() noexcept = default;
  /// A slope of a grade, -1000 to 1000; or a RangeError.
  [[nodiscard]] static Result<Slope> make(double grade) {
    if (auto error = detail::outside("slope", grade, -steepest_grade, steepest_grade)) return *std::move(error);
    return Slope(angle_of_slope(grade), grade);
  }
  /// A slope of an angle short of the vertical; or a RangeError.
  [[nodiscard]] static Result<Slope> make(Angle angle) {
    if (!is_finite(angle) || angle.value() <= -0.5 * pi || angle.value() >= 0.5 * pi)
      return Error::range("slope", detail::in_words(angle), "an angle short of the vertical, -90 deg to 90 deg");
    return Slope(angle, std::nullopt);
  }
#if LAYSHAFT_EXCEPTIONS
  /// @throws RangeError as `make` says.
  explicit Slope(double grade) : Slope(make(grade).value()) {}
  /// @throws RangeError as `make` says.
  explicit Slope(Angle angle) : Slope(make(angle).value()) {}
#endif

  [[nodiscard]] constexpr Angle angle() const noexcept { return angle_; }
  /// Rise over run.
  [[nodiscard]] double grade() const noexcept { return grade_ ? *grade_ : std::tan(angle_.value()); }
  /// The grade as it was stated; none where the angle was.
  [[nodiscard]] constexpr std::optional<double> stated_grade() const noexcept { return grade_; }
  [[nodiscard]] constexpr bool level() const noexcept { return angle_ == Angle(); }

  /// The angle for whoever watches.
  template <class Watch>
  [[nodiscard]] auto angle(Watch watch) const {
    return watch.known(angle_, [&] {
      if (!grade_) return watch.given("slope_angle", angle_);
      return watch.step("slope_angle", formula::angle_of_slope{}, watch.given("grade", *grade_));
    });
  }

  friend constexpr bool operator==(const Slope&, const Slope&) noexcept = default;

 private:
  constexpr Slope(Angle angle, std::optional<double> grade) noexcept : angle_(angle), grade_(grade) {}

  Angle angle_{};
  std::optional<double> grade_ = 0.0;
};

}  // namespace layshaft
