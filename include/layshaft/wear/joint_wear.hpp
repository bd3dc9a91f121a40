// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/counts.hpp>
#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>

/// @file
/// How the pull wears the chain's joints, and how the chain grows by it.
///
/// On each pass of the loop a joint bends four times, through a full turn over the teeth: onto and off the front
/// sprocket, onto and off the rear one; at each of them once under the tight run's pull and once under the slack one's.
/// What that wears off goes with load and sliding (Archard) and with the bench's measure of how well the joint resists:
/// load times sliding over the volume lost, a pressure. The pin's diameter cancels: a thicker pin slides further on
/// more area.
namespace layshaft {

namespace sources {
inline constexpr Source archard{"wear volume as load times sliding over what resists it, after Archard",
                                Certainty::published};
}

/// Passes of the whole chain over a distance.
LAYSHAFT_FORMULA(constexpr, double, chain_passes, (Length distance, Length circumference, Teeth rear, Links links),
                 is_finite(distance) && positive(circumference), sources::definition,
                 distance / circumference * rear / links)

/// How much deeper a joint is worn by one pass: pin and bush together.
LAYSHAFT_FORMULA(constexpr, Length, joint_wear,
                 (Force tight_tension, Force slack_tension, Teeth front, Teeth rear, Length bush_length,
                  Pressure wear_resistance),
                 is_finite(tight_tension) && is_finite(slack_tension) && positive(bush_length) &&
                     positive(wear_resistance),
                 sources::archard,
                 (tight_tension + slack_tension) / (bush_length * wear_resistance) * pi * (1.0 / front + 1.0 / rear))

/// How much longer the chain is by it, over its length.
LAYSHAFT_FORMULA(constexpr, double, stretch_of_wear, (double chain_passes, Length joint_wear, Length pitch),
                 is_finite(chain_passes) && is_finite(joint_wear) && positive(pitch), sources::definition,
                 chain_passes*(joint_wear / pitch))

/// A change of what wears, trial over base less one.
LAYSHAFT_FORMULA(constexpr, double, wear_rate_change, (double base_wear, double trial_wear),
                 positive(base_wear) && is_finite(trial_wear), sources::definition, trial_wear / base_wear - 1.0)

/// The pressure in a joint.
LAYSHAFT_FORMULA(constexpr, Pressure, bearing_pressure, (Force tight_tension, Length pin_diameter, Length bush_length),
                 is_finite(tight_tension) && positive(pin_diameter) && positive(bush_length), sources::definition,
                 tight_tension / (pin_diameter * bush_length))

/// How far a chain of worn pitch climbs on the teeth.
// clang-format off
LAYSHAFT_FORMULA(constexpr, Length, pitch_climb, (Length pitch_diameter, double elongation),
                 positive(pitch_diameter) && is_finite(elongation), sources::geometry,
                 0.5 * pitch_diameter * elongation)
// clang-format on

/// The share of power that the joints lose, but for their friction and pin, against another pair: their bends a pass.
LAYSHAFT_FORMULA(constexpr, double, bends, (Teeth front, Teeth rear), true, sources::geometry, 1.0 / front + 1.0 / rear)

}  // namespace layshaft
