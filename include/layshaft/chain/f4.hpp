// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/chain/loop.hpp>

#include <cmath>
#include <limits>

/// @file
/// The centre distance as the standard works it out, by a factor f4, and every way to it side by side.
///
/// f4 takes the pitch circles for circles as long as their teeth, z p: exact for a belt, and off by about 1e-5 of a
/// pitch for a chain, which lies on a polygon.
namespace layshaft {

namespace sources {
inline constexpr Source iso_606_f4{"ISO 606 and ISO 10823, centre distance by the factor f4", Certainty::secondary};
}

/// The factor, from the angle of the runs.
LAYSHAFT_FORMULA(inline, double, f4_of_angle, (Angle run_angle), is_finite(run_angle), sources::iso_606_f4,
                 1.0 / (4.0 * (cos(run_angle) + pi * run_angle / half_turn * sin(run_angle))))

/// The centre distance by the factor.
LAYSHAFT_FORMULA(constexpr, Length, centre_f4, (double f4, Length pitch, double links, Teeth front, Teeth rear),
                 positive(f4) && positive(pitch) && is_finite(links) && 2.0 * links > front + rear, sources::iso_606_f4,
                 f4* pitch*(2.0 * links - (front + rear)))

/// The factor f4 for (links - smaller)/(larger - smaller) teeth: above 1, infinite for equal sprockets. NaN outside.
/// The angle solves cot a + a = (2 m - 1) π/2, whose left side falls and is convex, so that Newton's steps from the
/// left come up on the root without passing it.
[[nodiscard]] inline double f4(double ratio) noexcept {
  if (!(ratio > 1.0)) return std::numeric_limits<double>::quiet_NaN();
  const double target = (2.0 * ratio - 1.0) * pi / 2.0;
  double angle = 1.0 / target;
  constexpr int enough = 60;
  for (int i = 0; i < enough; ++i) {
    const double cotangent = 1.0 / std::tan(angle);
    const double step = (cotangent + angle - target) / (cotangent * cotangent);
    angle += step;
    if (!(std::fabs(step) > 1e-15 * angle)) break;
  }
  return f4_of_angle(Angle::from_value(angle));
}

/// The centre distance for a number of links, by every way there is.
struct CentreMethods {
  Length exact;           ///< of the loop over the pitch polygons
  Length handbook;        ///< by the handbook's formula
  Length f4;              ///< by the standard's factor
  Length handbook_error;  ///< handbook less exact
  Length f4_error;        ///< standard less exact

  friend constexpr bool operator==(const CentreMethods&, const CentreMethods&) noexcept = default;
};

/// Every way to the centre distance of so many links; or the RangeError of `ChainLoop::try_centre`.
[[nodiscard]] inline Result<CentreMethods> try_centre_methods(const ChainLoop& loop, double links) {
  const auto exact = loop.try_centre(links);
  if (!exact) return exact.error();
  const Length pitch = loop.series().pitch();
  const Teeth small = std::min(loop.front(), loop.rear()), large = std::max(loop.front(), loop.rear());
  const Length handbook = centre_approximate(pitch, loop.front(), loop.rear(), links);
  const double factor = small == large ? 0.25 : f4((links - small.count()) / (large.count() - small.count()));
  const Length by_factor = centre_f4(factor, pitch, links, loop.front(), loop.rear());
  return CentreMethods{*exact, handbook, by_factor, handbook - *exact, by_factor - *exact};
}
#if LAYSHAFT_EXCEPTIONS
/// @throws RangeError as `ChainLoop::centre` does.
[[nodiscard]] inline CentreMethods centre_methods(const ChainLoop& loop, double links) {
  return try_centre_methods(loop, links).value();
}
#endif

}  // namespace layshaft
