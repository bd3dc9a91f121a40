// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/counts.hpp>
#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>
#include <layshaft/wear/joint_wear.hpp>

/// @file
/// How fast a tooth wears, against another: load times sliding over hardness, as often as it meets the chain.
///
/// The joint bends while its roller lies on the tooth that takes most of the pull; if the roller does not turn on its
/// bush, it slides on the flank through that bend (an assumption, which cancels where both sides share it).
namespace layshaft {

/// How far a roller slides on the flank while its joint bends.
// clang-format off
LAYSHAFT_FORMULA(constexpr, Length, flank_sliding, (Length roller_diameter, Teeth teeth), positive(roller_diameter),
                 sources::common_practice, 0.5 * roller_diameter * (2.0 * pi / teeth))
// clang-format on

/// Force on the tooth that takes most.
// clang-format off
LAYSHAFT_FORMULA(constexpr, Force, tooth_force, (Force tight_tension, double tooth_force_share),
                 is_finite(tight_tension) && is_finite(tooth_force_share), sources::definition,
                 tight_tension * tooth_force_share)
// clang-format on

/// What a tooth loses over a distance, as a volume that its material would lose per load and sliding of its hardness.
LAYSHAFT_FORMULA(constexpr, double, tooth_wear_weight,
                 (double contacts, Force tooth_force, Length flank_sliding, Pressure hardness, Length pitch),
                 is_finite(contacts) && is_finite(tooth_force) && positive(flank_sliding) && positive(hardness) &&
                     positive(pitch),
                 sources::archard, contacts*(tooth_force / (hardness * pitch * pitch)) * (flank_sliding / pitch))

}  // namespace layshaft
