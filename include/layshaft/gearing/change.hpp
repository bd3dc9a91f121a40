// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>

/// @file
/// What another ratio and another tyre change, as `trial / base - 1`.
namespace layshaft {

/// How often a shaft ahead of the wheel turns over a distance, trial over base: the front sprocket for final ratios,
/// the engine for overall ones (both of the same kind). All above zero.
LAYSHAFT_FORMULA(constexpr, double, turns_ratio,
                 (double base_ratio, Length base_circumference, double trial_ratio, Length trial_circumference),
                 positive(base_ratio) && positive(base_circumference) && positive(trial_ratio) &&
                     positive(trial_circumference),
                 sources::definition, trial_ratio / base_ratio * (base_circumference / trial_circumference))

/// The change of thrust at the contact patch in the same gear, at equal engine torque and equal drive efficiency: work
/// is torque times turns.
LAYSHAFT_FORMULA(constexpr, double, thrust_change,
                 (double base_ratio, Length base_circumference, double trial_ratio, Length trial_circumference),
                 positive(base_ratio) && positive(base_circumference) && positive(trial_ratio) &&
                     positive(trial_circumference),
                 sources::definition,
                 turns_ratio(base_ratio, base_circumference, trial_ratio, trial_circumference) - 1.0)

/// The same where the drive's efficiency changes as well; both efficiencies above zero.
LAYSHAFT_FORMULA(constexpr, double, thrust_change_with_loss,
                 (double base_ratio, Length base_circumference, double trial_ratio, Length trial_circumference,
                  double base_efficiency, double trial_efficiency),
                 positive(base_ratio) && positive(base_circumference) && positive(trial_ratio) &&
                     positive(trial_circumference) && positive(base_efficiency) && positive(trial_efficiency),
                 sources::definition,
                 turns_ratio(base_ratio, base_circumference, trial_ratio, trial_circumference) *
                         (trial_efficiency / base_efficiency) -
                     1.0)

/// The change of road speed in the same gear at equal engine speed.
LAYSHAFT_FORMULA(constexpr, double, speed_change,
                 (double base_ratio, Length base_circumference, double trial_ratio, Length trial_circumference),
                 positive(base_ratio) && positive(base_circumference) && positive(trial_ratio) &&
                     positive(trial_circumference),
                 sources::definition,
                 1.0 / turns_ratio(base_ratio, base_circumference, trial_ratio, trial_circumference) - 1.0)

/// The change of engine speed in the same gear at equal road speed, from the change of road speed at equal engine
/// speed, which is above -1.
LAYSHAFT_FORMULA(constexpr, double, engine_speed_change, (double speed_change),
                 is_finite(speed_change) && speed_change > -1.0, sources::definition, 1.0 / (1.0 + speed_change) - 1.0)

}  // namespace layshaft
