// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>

/// @file
/// A slope as a tangent and as an angle.
namespace layshaft {

/// The angle whose tangent a slope is, what it rises over what it runs on the level: 0.10, a sign of 10 %, is 5.7
/// degrees.
LAYSHAFT_FORMULA(inline, Angle, angle_of_slope, (double slope), is_finite(slope), sources::geometry, arctan(slope))

}  // namespace layshaft
