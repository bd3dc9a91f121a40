// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/checks.hpp>
#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>
#include <layshaft/core/watch.hpp>

#include <algorithm>  // max
#include <optional>
#include <string_view>

/// @file
/// A swingarm, and how the centre distance of the sprockets changes as the wheel moves up and down.
///
/// Lengths are measured on the machine standing level, from the swingarm's pivot; the angle of the arm is that of the
/// line from pivot to axle below the horizontal, so that it falls as the wheel comes up.
namespace layshaft {

/// The centre distance when the arm stands at an angle below the horizontal.
LAYSHAFT_FORMULA(inline, Length, suspension_centre,
                 (Length layshaft_ahead, Length layshaft_above, Length arm, Angle arm_angle),
                 is_finite(layshaft_ahead) && is_finite(layshaft_above) && positive(arm) && is_finite(arm_angle),
                 sources::geometry,
                 sqrt((layshaft_ahead + arm * cos(arm_angle)) * (layshaft_ahead + arm * cos(arm_angle)) +
                      (layshaft_above + arm * sin(arm_angle)) * (layshaft_above + arm * sin(arm_angle))))

/// The length from pivot to axle that stands the sprockets this far apart when the arm is at an angle.
LAYSHAFT_FORMULA(inline, Length, arm_of_centre,
                 (Length layshaft_ahead, Length layshaft_above, Length centre, Angle arm_angle),
                 is_finite(layshaft_ahead) && is_finite(layshaft_above) && positive(centre) && is_finite(arm_angle) &&
                     centre * centre > layshaft_ahead * layshaft_ahead + layshaft_above * layshaft_above,
                 sources::geometry,
                 sqrt(centre* centre - (layshaft_ahead * sin(arm_angle) - layshaft_above * cos(arm_angle)) *
                                           (layshaft_ahead * sin(arm_angle) - layshaft_above * cos(arm_angle))) -
                     (layshaft_ahead * cos(arm_angle) + layshaft_above * sin(arm_angle)))

/// The angle at which layshaft, pivot and axle stand in line, the pivot between them: there the sprockets are farthest
/// apart. For a layshaft ahead of the pivot.
LAYSHAFT_FORMULA(inline, Angle, tight_angle, (Length layshaft_ahead, Length layshaft_above),
                 positive(layshaft_ahead) && is_finite(layshaft_above), sources::geometry,
                 arctan(layshaft_above / layshaft_ahead))

/// What a Suspension is made of.
struct SuspensionParts {
  Length layshaft_ahead;                ///< ahead of the pivot; behind it where negative: -1 to 1 m
  Length layshaft_above;                ///< above the pivot; below it where negative: -1 to 1 m
  Length arm;                           ///< pivot to axle, with the axle foremost where there are two: 0.05 to 10 m
  std::optional<Length> arm_rear = {};  ///< the same with the axle rearmost
  Angle droop;                          ///< with the wheel hanging, the largest angle: -80 to 80 degrees
  Angle rest;                           ///< where the slack is set, on the stand
  Angle bump;                           ///< with the wheel right up, the smallest angle

  friend constexpr bool operator==(const SuspensionParts&, const SuspensionParts&) noexcept = default;
};

/// Where the sprockets stand farthest apart within the travel.
struct TightPoint {
  Angle angle;
  Length centre;

  friend constexpr bool operator==(const TightPoint&, const TightPoint&) noexcept = default;
};

class Working;  // to explain, include <layshaft/explain.hpp>

/// A swingarm and its travel.
class Suspension {
 public:
  using Parts = SuspensionParts;
  static constexpr Angle steepest = 80.0_deg;

  /// The suspension; or a RangeError that names the part and its range: angles with bump <= rest <= droop and bump
  /// below droop, an arm longer than the layshaft stands from the pivot.
  [[nodiscard]] static Result<Suspension> make(const Parts& parts) {
    if (auto error = fault(parts)) return *std::move(error);
    return Suspension(parts, Unchecked{});
  }
#if LAYSHAFT_EXCEPTIONS
  /// @throws RangeError as `make` says.
  explicit Suspension(const Parts& parts) : Suspension(make(parts).value()) {}
#endif

  [[nodiscard]] constexpr const Parts& parts() const noexcept { return parts_; }
  [[nodiscard]] constexpr Angle droop() const noexcept { return parts_.droop; }
  [[nodiscard]] constexpr Angle rest() const noexcept { return parts_.rest; }
  [[nodiscard]] constexpr Angle bump() const noexcept { return parts_.bump; }
  /// The arm, or the middle of the two for the ends of the adjuster; where it really stands follows from links and
  /// slack.
  [[nodiscard]] constexpr Length arm() const noexcept {
    return parts_.arm_rear ? 0.5 * (parts_.arm + *parts_.arm_rear) : parts_.arm;
  }

  /// The centre distance with the arm of this length at an angle, for whoever watches.
  template <class Watch, class WatchedLength>
  [[nodiscard]] auto centre(Watch watch, const WatchedLength& arm, Angle angle) const {
    const auto ahead = watch.given("layshaft_ahead", parts_.layshaft_ahead);
    const auto above = watch.given("layshaft_above", parts_.layshaft_above);
    const auto at = watch.given("arm_angle", angle);
    return watch.step("centre", formula::suspension_centre{}, ahead, above, arm, at);
  }
  /// The arm that gives a centre distance at an angle, for whoever watches.
  template <class Watch, class WatchedLength>
  [[nodiscard]] auto arm_of(Watch watch, const WatchedLength& centre, Angle angle) const {
    const auto ahead = watch.given("layshaft_ahead", parts_.layshaft_ahead);
    const auto above = watch.given("layshaft_above", parts_.layshaft_above);
    const auto at = watch.given("arm_angle", angle);
    return watch.step("arm", formula::arm_of_centre{}, ahead, above, centre, at);
  }

  /// The angle within the travel at which the sprockets stand farthest apart; it depends on no arm's length.
  [[nodiscard]] Angle tightest() const noexcept {
    if (positive(parts_.layshaft_ahead)) {
      const Angle in_line = tight_angle(parts_.layshaft_ahead, parts_.layshaft_above);
      if (parts_.bump <= in_line && in_line <= parts_.droop) return in_line;
    }
    return suspension_centre(parts_.layshaft_ahead, parts_.layshaft_above, arm(), parts_.bump) >=
                   suspension_centre(parts_.layshaft_ahead, parts_.layshaft_above, arm(), parts_.droop)
               ? parts_.bump
               : parts_.droop;
  }
  /// Where the sprockets stand farthest apart, with the arm as stated.
  [[nodiscard]] TightPoint tight_point() const noexcept { return tight_point_of(arm()); }

  /// The centre distance at an angle within the travel, with the arm as stated or of another length; or a RangeError.
  [[nodiscard]] Result<Length> try_centre(Angle angle, std::optional<Length> arm = {}) const {
    if (auto error = detail::outside("angle", angle, parts_.bump, parts_.droop)) return *std::move(error);
    if (auto error = outside_arm(arm)) return *std::move(error);
    return centre(Unwatched(), arm.value_or(this->arm()), angle);
  }
  /// The tight point with an arm of another length; or a RangeError.
  [[nodiscard]] Result<TightPoint> try_tight_point(Length arm) const {
    if (auto error = outside_arm(arm)) return *std::move(error);
    return tight_point_of(arm);
  }
#if LAYSHAFT_EXCEPTIONS
  /// @throws RangeError for an angle outside the travel.
  [[nodiscard]] Length centre(Angle angle, std::optional<Length> arm = {}) const {
    return try_centre(angle, arm).value();
  }
  /// @throws RangeError for an arm that reaches no farther than the layshaft stands from the pivot.
  [[nodiscard]] TightPoint tight_point(Length arm) const { return try_tight_point(arm).value(); }
#endif

  friend constexpr bool operator==(const Suspension&, const Suspension&) noexcept = default;

 private:
  struct Unchecked {};
  constexpr Suspension(const Parts& parts, Unchecked) noexcept : parts_(parts) {}

  [[nodiscard]] TightPoint tight_point_of(Length arm) const noexcept {
    const Angle angle = tightest();
    return {angle, centre(Unwatched(), arm, angle)};
  }
  /// How far the layshaft stands from the pivot.
  [[nodiscard]] static Length offset(const Parts& parts) noexcept {
    return sqrt(parts.layshaft_ahead * parts.layshaft_ahead + parts.layshaft_above * parts.layshaft_above);
  }
  [[nodiscard]] std::optional<Error> outside_arm(std::optional<Length> arm) const {
    if (!arm) return std::nullopt;
    return detail::outside("arm", *arm, 1.001 * offset(parts_) + 1.0_mm, 10.0_m);
  }
  [[nodiscard]] static std::optional<Error> fault(const Parts& parts) {
    if (auto error = detail::outside("layshaft_ahead", parts.layshaft_ahead, -1.0_m, 1.0_m)) return error;
    if (auto error = detail::outside("layshaft_above", parts.layshaft_above, -1.0_m, 1.0_m)) return error;
    const Length shortest = std::max<Length>(50.0_mm, 1.001 * offset(parts) + 1.0_mm);
    if (auto error = detail::outside("arm", parts.arm, shortest, 10.0_m)) return error;
    if (parts.arm_rear)
      if (auto error = detail::outside("arm_rear", *parts.arm_rear, parts.arm, 10.0_m)) return error;
    if (auto error = detail::outside("droop", parts.droop, -steepest, steepest)) return error;
    if (auto error = detail::outside("bump", parts.bump, -steepest, parts.droop)) return error;
    if (parts.bump == parts.droop)
      return Error::range("bump", detail::in_words(parts.bump), "less than droop, so that there is some travel");
    return detail::outside("rest", parts.rest, parts.bump, parts.droop);
  }

  Parts parts_;
};

}  // namespace layshaft
