// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>

/// @file
/// Engine speed and road speed, one from the other, without slip.
namespace layshaft {

/// The road speed at an engine speed (rpm or rad/s), for an overall ratio and a rolling circumference above zero.
LAYSHAFT_FORMULA(constexpr, Speed, road_speed, (AngularSpeed engine_speed, double overall_ratio, Length circumference),
                 is_finite(engine_speed) && positive(overall_ratio) && positive(circumference), sources::definition,
                 engine_speed / turn * circumference / overall_ratio)

/// The engine speed at a road speed, for an overall ratio and a rolling circumference above zero.
LAYSHAFT_FORMULA(constexpr, AngularSpeed, engine_speed, (Speed road_speed, double overall_ratio, Length circumference),
                 is_finite(road_speed) && positive(overall_ratio) && positive(circumference), sources::definition,
                 road_speed / circumference * overall_ratio * turn)

}  // namespace layshaft
