// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/counts.hpp>
#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>
#include <layshaft/gearing/change.hpp>

/// @file
/// How often each tooth meets the chain on the road.
namespace layshaft {

/// How often each tooth of the rear sprocket meets the chain over a distance: once a turn of the wheel.
LAYSHAFT_FORMULA(constexpr, double, rear_contacts, (Length distance, Length circumference),
                 positive(distance) && positive(circumference), sources::definition, distance / circumference)

/// How often each tooth of the front sprocket meets the chain over a distance: once a turn of the sprocket, which turns
/// rear / front times as often as the wheel.
LAYSHAFT_FORMULA(constexpr, double, front_contacts, (Length distance, Length circumference, Teeth front, Teeth rear),
                 positive(distance) && positive(circumference), sources::definition,
                 distance / circumference * (rear / front))

/// How much oftener each front tooth meets the chain, from final ratios.
LAYSHAFT_FORMULA(constexpr, double, front_contacts_change,
                 (double base_ratio, Length base_circumference, double trial_ratio, Length trial_circumference),
                 positive(base_ratio) && positive(base_circumference) && positive(trial_ratio) &&
                     positive(trial_circumference),
                 sources::definition,
                 turns_ratio(base_ratio, base_circumference, trial_ratio, trial_circumference) - 1.0)

/// How much oftener each rear tooth does.
LAYSHAFT_FORMULA(constexpr, double, rear_contacts_change, (Length base_circumference, Length trial_circumference),
                 positive(base_circumference) && positive(trial_circumference), sources::definition,
                 base_circumference / trial_circumference - 1.0)

}  // namespace layshaft
