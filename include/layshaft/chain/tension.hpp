// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/counts.hpp>
#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>

/// @file
/// How hard the chain pulls, and how fast it runs.
namespace layshaft {

/// The pull of the chain's tight run that makes a thrust at the contact patch: the wheel's lever over the rear
/// sprocket's. Centrifugal and joint forces are left out.
// clang-format off
LAYSHAFT_FORMULA(constexpr, Force, chain_tension, (Force thrust, Length circumference, Length rear_pitch_diameter),
                 is_finite(thrust) && positive(circumference) && positive(rear_pitch_diameter), sources::definition,
                 thrust * (circumference / pi) / rear_pitch_diameter)
// clang-format on

/// The pull of the tight run over the slack one that a torque on a sprocket makes: the torque's work in a turn over the
/// length of chain that passes. For the pitch circle; the pitch polygon makes it swing by a per cent or two.
LAYSHAFT_FORMULA(constexpr, Force, chain_pull, (Torque torque, Length pitch_diameter),
                 is_finite(torque) && positive(pitch_diameter), sources::definition,
                 torque* turn / (pi * pitch_diameter))

/// How fast the chain runs, on average over a tooth.
LAYSHAFT_FORMULA(constexpr, Speed, chain_speed, (Length pitch, Teeth teeth, AngularSpeed shaft_speed),
                 positive(pitch) && is_finite(shaft_speed), sources::definition, shaft_speed / turn * pitch * teeth)

/// The pull in both runs that bends the chain's own mass round the sprockets.
LAYSHAFT_FORMULA(constexpr, Force, centrifugal_tension, (LinearDensity mass_per_length, Speed chain_speed),
                 positive(mass_per_length) && is_finite(chain_speed), sources::definition,
                 mass_per_length* chain_speed* chain_speed)

/// The pull in the slack run, all told.
LAYSHAFT_FORMULA(constexpr, Force, slack_tension, (Force stated_slack_tension, Force centrifugal_tension),
                 is_finite(stated_slack_tension) && is_finite(centrifugal_tension), sources::definition,
                 stated_slack_tension + centrifugal_tension)

/// The pull in the tight run, all told.
LAYSHAFT_FORMULA(constexpr, Force, tight_tension, (Force chain_pull, Force slack_tension),
                 is_finite(chain_pull) && is_finite(slack_tension), sources::definition, slack_tension + chain_pull)

/// The power that a chain carries.
LAYSHAFT_FORMULA(constexpr, Power, chain_power, (Force chain_pull, Speed chain_speed),
                 is_finite(chain_pull) && is_finite(chain_speed), sources::definition, chain_pull* chain_speed)

/// Minimum strength over the greatest pull.
LAYSHAFT_FORMULA(constexpr, double, chain_safety, (Force tensile_strength, Force greatest_tension),
                 positive(tensile_strength) && positive(greatest_tension), sources::definition,
                 tensile_strength / greatest_tension)

}  // namespace layshaft
