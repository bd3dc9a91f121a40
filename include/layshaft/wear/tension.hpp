// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/chain/tension.hpp>
#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>

/// @file
/// How hard the chain pulls, against another set-up.
namespace layshaft {

/// The change of the chain's pull at equal thrust. Two ways to one ratio meet the chain equally often; it is this that
/// tells them apart: 13/40 pulls 7.5 % harder than 14/43.
LAYSHAFT_FORMULA(constexpr, double, chain_tension_change,
                 (Length base_circumference, Length base_rear_pitch_diameter, Length trial_circumference,
                  Length trial_rear_pitch_diameter),
                 positive(base_circumference) && positive(base_rear_pitch_diameter) && positive(trial_circumference) &&
                     positive(trial_rear_pitch_diameter),
                 sources::definition,
                 trial_circumference / base_circumference * (base_rear_pitch_diameter / trial_rear_pitch_diameter) -
                     1.0)

}  // namespace layshaft
