// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/counts.hpp>
#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>

/// @file
/// The form of a tooth gap to ISO 606: the arc the roller is seated on, the flanks beside it, and the relief at the
/// sides of the tooth. The standard sets a least and a greatest gap, and any form between the two is a sprocket.
namespace layshaft {

namespace sources {
inline constexpr Source tooth_form{"ISO 606 as worked in Bhandari, Design of Machine Elements, ch. 14, Ex. 14.5",
                                   Certainty::published};
inline constexpr Source seating_angle{"ISO 606, roller seating angle, as recalled", Certainty::from_memory};
}  // namespace sources

/// The radius of the arc on which a roller is seated, in the least gap.
LAYSHAFT_FORMULA(constexpr, Length, seating_radius_least, (Length roller_diameter), positive(roller_diameter),
                 sources::tooth_form, 0.505 * roller_diameter)

/// The same in the greatest gap.
LAYSHAFT_FORMULA(inline, Length, seating_radius_greatest, (Length roller_diameter), positive(roller_diameter),
                 sources::tooth_form, 0.505 * roller_diameter + 0.069_mm * cube_root(roller_diameter / 1.0_mm))

/// The middle of what is allowed.
LAYSHAFT_FORMULA(constexpr, Length, seating_radius, (Length seating_radius_least, Length seating_radius_greatest),
                 is_finite(seating_radius_least) && is_finite(seating_radius_greatest), sources::tooth_form,
                 (seating_radius_least + seating_radius_greatest) / 2.0)

/// The radius of the flank beside the seat, in the greatest gap: the flank that curves most.
LAYSHAFT_FORMULA(constexpr, Length, flank_radius_least, (Length roller_diameter, Teeth teeth),
                 positive(roller_diameter), sources::tooth_form, 0.12 * roller_diameter * (teeth + 2.0))

/// The same in the least gap.
LAYSHAFT_FORMULA(constexpr, Length, flank_radius_greatest, (Length roller_diameter, Teeth teeth),
                 positive(roller_diameter), sources::tooth_form,
                 0.008 * roller_diameter * (1.0 * teeth * teeth + 180.0))

/// The middle of what is allowed.
LAYSHAFT_FORMULA(constexpr, Length, flank_radius, (Length flank_radius_least, Length flank_radius_greatest),
                 is_finite(flank_radius_least) && is_finite(flank_radius_greatest), sources::tooth_form,
                 (flank_radius_least + flank_radius_greatest) / 2.0)

/// The angle over which a roller is seated, in the greatest gap.
LAYSHAFT_FORMULA(constexpr, Angle, seating_angle_least, (Teeth teeth), true, sources::seating_angle,
                 half_turn / 180.0 * (120.0 - 90.0 / teeth))

/// The same in the least gap.
LAYSHAFT_FORMULA(constexpr, Angle, seating_angle_greatest, (Teeth teeth), true, sources::seating_angle,
                 half_turn / 180.0 * (140.0 - 90.0 / teeth))

/// The middle of what is allowed.
LAYSHAFT_FORMULA(constexpr, Angle, seating_angle, (Angle seating_angle_least, Angle seating_angle_greatest),
                 is_finite(seating_angle_least) && is_finite(seating_angle_greatest), sources::seating_angle,
                 (seating_angle_least + seating_angle_greatest) / 2.0)

/// How far in from the side of the tooth its rounded edge begins.
LAYSHAFT_FORMULA(constexpr, Length, tooth_side_relief, (Length pitch), positive(pitch), sources::tooth_form,
                 pitch / 8.0)

}  // namespace layshaft
