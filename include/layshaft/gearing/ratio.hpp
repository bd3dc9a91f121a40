// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/counts.hpp>
#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>

/// @file
/// Ratios: input turns per output turn, so that a larger ratio is a shorter, slower and stronger one.
namespace layshaft {

/// The ratio of a pair of gears, driven teeth over driving teeth.
LAYSHAFT_FORMULA(constexpr, double, gear_ratio, (Teeth driving, Teeth driven), true, sources::definition,
                 driven / driving)

/// The ratio of the chain drive, rear over front sprocket.
LAYSHAFT_FORMULA(constexpr, double, final_ratio, (Teeth front, Teeth rear), true, sources::definition, rear / front)

/// Engine turns per turn of the wheel, for primary and gear ratios above zero.
LAYSHAFT_FORMULA(constexpr, double, overall_ratio, (double primary, double gear, Teeth front, Teeth rear),
                 positive(primary) && positive(gear), sources::definition, final_ratio(front, rear) * gear * primary)

/// How many teeth the rear sprocket would need, as a real number, for another front sprocket to keep the final ratio:
/// 14/40 with 13 in front asks for 37.14, since fewer teeth in front already shorten it.
LAYSHAFT_FORMULA(constexpr, double, equivalent_rear, (Teeth front, Teeth rear, Teeth trial_front), true,
                 sources::definition, rear / front * trial_front)

}  // namespace layshaft
