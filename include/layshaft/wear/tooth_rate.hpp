// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/band.hpp>
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

/// A sprocket is worn out when its flanks have lost this share of the tooth's thickness at the pitch circle: an
/// assumption, no published figure was found. It cancels between two sprockets.
inline constexpr Band<double> worn_out_share{0.15, 0.25, 0.35};
inline constexpr Source worn_out_source{
    "assumption: worn out when the flank has lost 15 to 35 % of the tooth's thickness", Certainty::from_memory};
/// Where rollers rub a flank: as wide as the tooth, as high as they are thick. It cancels on one chain.
inline constexpr Source flank_source{"assumption: rollers rub the tooth's width, as high as they are thick",
                                     Certainty::common_practice};

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

/// How thick a tooth is at the pitch circle, between the rollers beside it.
LAYSHAFT_FORMULA(inline, Length, tooth_thickness, (Length pitch_diameter, Length roller_diameter, Teeth teeth),
                 positive(roller_diameter) && is_finite(pitch_diameter) && roller_diameter < pitch_diameter,
                 sources::geometry,
                 sin(half_turn / teeth - 2.0 * arcsin(0.5 * roller_diameter / pitch_diameter)) * pitch_diameter)

/// How deep its flank may be worn.
// clang-format off
LAYSHAFT_FORMULA(constexpr, Length, worn_out_depth, (Length tooth_thickness, double worn_out_share),
                 positive(tooth_thickness) && worn_out_share > 0.0 && worn_out_share < 1.0, worn_out_source,
                 tooth_thickness * worn_out_share)
// clang-format on

/// How deep a flank is worn by what its tooth loses: over the tooth's width and as high as the roller is thick.
LAYSHAFT_FORMULA(constexpr, Length, flank_depth_worn,
                 (double tooth_wear_weight, Length pitch, Length tooth_width, Length roller_diameter),
                 is_finite(tooth_wear_weight) && positive(pitch) && positive(tooth_width) && positive(roller_diameter),
                 flank_source, (pitch / tooth_width) * (pitch / roller_diameter) * pitch * tooth_wear_weight)

/// How far a sprocket lasts, against another: the depth its flanks may lose over what they lose.
LAYSHAFT_FORMULA(constexpr, double, sprocket_life_weight, (Length worn_out_depth, Length flank_depth_worn),
                 positive(worn_out_depth) && positive(flank_depth_worn), sources::definition,
                 worn_out_depth / flank_depth_worn)

/// A change of how far a part lasts, trial over base less one.
LAYSHAFT_FORMULA(constexpr, double, life_change, (double base_life_weight, double trial_life_weight),
                 positive(base_life_weight) && is_finite(trial_life_weight), sources::definition,
                 trial_life_weight / base_life_weight - 1.0)

}  // namespace layshaft
