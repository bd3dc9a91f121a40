// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/chain/loop.hpp>
#include <layshaft/chain/suspension.hpp>
#include <layshaft/core/angle_of_slope.hpp>

/// @file
/// Squat: how the chain's pull and the swingarm share out the load that moves to the rear under power.
///
/// Two slopes start at the rear tyre's contact with the ground. The load transfer's rises to the height of the centre
/// of mass over one wheelbase; the other to where the line of the chain's tight run meets the line of the swingarm.
/// Where the two are one, the suspension neither sinks nor rises under power: ratio 1. Below 1 the chain lifts the
/// machine more than the load presses it down, above 1 it squats.
namespace layshaft {

/// The slope of the line of centres: how far the layshaft stands above the axle, seen from there.
LAYSHAFT_FORMULA(inline, Angle, line_angle, (Length layshaft_ahead, Length layshaft_above, Length arm, Angle arm_angle),
                 is_finite(layshaft_ahead) && is_finite(layshaft_above) && positive(arm) && is_finite(arm_angle) &&
                     layshaft_ahead + arm * cos(arm_angle) > 0.0_mm,
                 sources::geometry,
                 arctan((layshaft_above + arm * sin(arm_angle)) / (layshaft_ahead + arm * cos(arm_angle))))

/// The slope of the tight, upper run, rising towards the front.
LAYSHAFT_FORMULA(constexpr, Angle, tight_run_angle, (Angle line_angle, Angle run_angle),
                 is_finite(line_angle) && is_finite(run_angle), sources::geometry, line_angle - run_angle)

/// The slope, as a tangent, from the rear tyre's contact to where the tight run's line meets the swingarm's.
LAYSHAFT_FORMULA(inline, double, squat_slope,
                 (Angle arm_angle, Angle tight_run_angle, Length wheel_radius, Length rear_pitch_diameter),
                 is_finite(arm_angle) && is_finite(tight_run_angle) && positive(wheel_radius) &&
                     positive(rear_pitch_diameter) && cos(arm_angle) > 0.0,
                 sources::geometry,
                 sin(arm_angle) / cos(arm_angle) +
                     2.0 * wheel_radius * sin(arm_angle - tight_run_angle) / (rear_pitch_diameter * cos(arm_angle)))

/// The slope, as a tangent, of the load transfer: centre of mass over wheelbase.
LAYSHAFT_FORMULA(constexpr, double, transfer_slope, (Length mass_centre_height, Length wheelbase),
                 positive(mass_centre_height) && positive(wheelbase), sources::definition,
                 mass_centre_height / wheelbase)

/// The squat ratio.
LAYSHAFT_FORMULA(constexpr, double, ratio_of_slopes, (double transfer_slope, double squat_slope),
                 is_finite(transfer_slope) && is_finite(squat_slope) && squat_slope != 0.0, sources::definition,
                 transfer_slope / squat_slope)

/// What squat needs to know of a machine besides its swingarm.
struct SquatGeometry {
  Length wheel_radius;        ///< axle to ground, at rest: the static radius; 0.1 to 1 m
  Length mass_centre_height;  ///< of machine and rider above the ground; 0.1 to 3 m
  Length wheelbase;           ///< 0.5 to 5 m

  friend constexpr bool operator==(const SquatGeometry&, const SquatGeometry&) noexcept = default;
};

/// The two slopes as angles, and their ratio.
struct Squat {
  Angle transfer_angle;
  Angle squat_angle;
  double ratio;

  friend constexpr bool operator==(const Squat&, const Squat&) noexcept = default;
};

namespace detail {
template <class Watch, class Drive>
[[nodiscard]] auto squat_slope_at(Watch watch, const Suspension& suspension, const Drive& drive, Length arm,
                                  Angle angle, const SquatGeometry& geometry) {
  const auto length = watch.given("arm", arm);
  const auto centre = suspension.centre(watch, length, angle);
  const auto ahead = watch.given("layshaft_ahead", suspension.parts().layshaft_ahead);
  const auto above = watch.given("layshaft_above", suspension.parts().layshaft_above);
  const auto at = watch.given("arm_angle", angle);
  const auto line = watch.step(formula::line_angle{}, ahead, above, length, at);
  const auto run = run_angle_of(watch, drive, centre);
  const auto tight_run = watch.step(formula::tight_run_angle{}, line, run);
  const auto radius = watch.given("wheel_radius", geometry.wheel_radius);
  return watch.step(formula::squat_slope{}, at, tight_run, radius, drive.rear_diameter);
}
}  // namespace detail

/// Squat with the arm, of this length, at an angle within the travel; or a RangeError that names the value and its
/// range.
[[nodiscard]] inline Result<Squat> try_squat(const Suspension& suspension, const ChainLoop& loop, Length arm,
                                             Angle angle, const SquatGeometry& geometry) {
  if (auto error = detail::outside("wheel_radius", geometry.wheel_radius, 0.1_m, 1.0_m)) return *std::move(error);
  if (auto error = detail::outside("mass_centre_height", geometry.mass_centre_height, 0.1_m, 3.0_m))
    return *std::move(error);
  if (auto error = detail::outside("wheelbase", geometry.wheelbase, 0.5_m, 5.0_m)) return *std::move(error);
  const auto centre = suspension.try_centre(angle, arm);
  if (!centre) return centre.error();
  if (const auto links = loop.try_links(*centre); !links) return links.error();
  const double squat = detail::squat_slope_at(Unwatched(), suspension, loop.drive(Unwatched()), arm, angle, geometry);
  const double transfer = transfer_slope(geometry.mass_centre_height, geometry.wheelbase);
  if (squat == 0.0) return Error::value("tight run and swingarm meet on the ground: the squat ratio is infinite there");
  return Squat{angle_of_slope(transfer), angle_of_slope(squat), ratio_of_slopes(transfer, squat)};
}
/// The ratio alone; errors as above.
[[nodiscard]] inline Result<double> try_squat_ratio(const Suspension& suspension, const ChainLoop& loop, Length arm,
                                                    Angle angle, const SquatGeometry& geometry) {
  const auto both = try_squat(suspension, loop, arm, angle, geometry);
  if (!both) return both.error();
  return both->ratio;
}
#if LAYSHAFT_EXCEPTIONS
/// @throws RangeError or Error as `try_squat` says.
[[nodiscard]] inline double squat_ratio(const Suspension& suspension, const ChainLoop& loop, Length arm, Angle angle,
                                        const SquatGeometry& geometry) {
  return try_squat_ratio(suspension, loop, arm, angle, geometry).value();
}
/// @throws RangeError or Error as `try_squat` says.
[[nodiscard]] inline Squat squat(const Suspension& suspension, const ChainLoop& loop, Length arm, Angle angle,
                                 const SquatGeometry& geometry) {
  return try_squat(suspension, loop, arm, angle, geometry).value();
}
#endif

}  // namespace layshaft
