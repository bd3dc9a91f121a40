// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/counts.hpp>
#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>

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

/// How much oftener a tooth meets the chain, from the turns of its sprocket over a distance, trial over base.
LAYSHAFT_FORMULA(constexpr, double, contacts_change, (double turns_ratio), positive(turns_ratio), sources::definition,
                 turns_ratio - 1.0)

}  // namespace layshaft
