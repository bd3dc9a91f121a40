// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/source.hpp>
#include <layshaft/core/units.hpp>

/// @file
/// The acceleration that everything on the road is weighed with.
namespace layshaft {

/// Standard gravity; over the earth and up to 5 km it varies by 0.4 %.
inline constexpr Acceleration standard_gravity = Acceleration::from_value(9.80665);
inline constexpr Source standard_gravity_source{
    "standard gravity, 3rd General Conference on Weights and Measures, 1901", Certainty::published};

namespace detail {
/// Gravity for whoever watches.
template <class Watch>
[[nodiscard]] constexpr auto gravity(Watch watch) {
  return watch.looked_up("gravity", standard_gravity, "standard gravity", standard_gravity_source);
}
}  // namespace detail

}  // namespace layshaft
