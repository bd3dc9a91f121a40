// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/chain/loop.hpp>

/// @file
/// How many teeth hold the chain at a time.
namespace layshaft {

/// Teeth in mesh, from the angle over which the chain wraps the sprocket.
LAYSHAFT_FORMULA(constexpr, double, teeth_in_mesh, (Teeth teeth, Angle wrap), is_finite(wrap), sources::definition,
                 wrap / turn * teeth)

/// What handbooks ask for on the smaller sprocket. Context: healthy motorcycles ride with a little less than six teeth.
inline constexpr Angle usual_least_wrap = 120.0_deg;
inline constexpr double usual_least_teeth_in_mesh = 6.0;
inline constexpr Source usual_mesh_source{"handbook minima for the smaller sprocket", Certainty::common_practice};
/// Below this the library warns.
inline constexpr double fewest_teeth_in_mesh = 5.0;

/// Wrap and teeth in mesh on both sprockets.
struct Engagement {
  Angle wrap_front, wrap_rear;
  double front, rear;  ///< teeth in mesh

  friend constexpr bool operator==(const Engagement&, const Engagement&) noexcept = default;
};

namespace detail {
/// Teeth in mesh on one sprocket, for whoever watches.
template <class Watch, class Drive, class Centre>
[[nodiscard]] auto front_in_mesh(Watch watch, const Drive& drive, const Centre& centre) {
  const auto wrap = watch.step(formula::wrap_front{}, run_angle_of(watch, drive, centre));
  return watch.step("teeth_in_mesh", formula::teeth_in_mesh{}, drive.front, wrap);
}
template <class Watch, class Drive, class Centre>
[[nodiscard]] auto rear_in_mesh(Watch watch, const Drive& drive, const Centre& centre) {
  const auto wrap = watch.step(formula::wrap_rear{}, run_angle_of(watch, drive, centre));
  return watch.step("teeth_in_mesh", formula::teeth_in_mesh{}, drive.rear, wrap);
}
}  // namespace detail

/// Wrap and teeth in mesh at a centre distance; or the RangeError of `ChainLoop::try_links`.
[[nodiscard]] inline Result<Engagement> try_engagement(const ChainLoop& loop, Length centre) {
  const auto front = loop.try_wrap_front(centre);
  if (!front) return front.error();
  const auto drive = loop.drive(Unwatched());
  return Engagement{*front, *loop.try_wrap_rear(centre), detail::front_in_mesh(Unwatched(), drive, centre),
                    detail::rear_in_mesh(Unwatched(), drive, centre)};
}
#if LAYSHAFT_EXCEPTIONS
/// @throws RangeError as `ChainLoop::links` does.
[[nodiscard]] inline Engagement engagement(const ChainLoop& loop, Length centre) {
  return try_engagement(loop, centre).value();
}
#endif

}  // namespace layshaft
