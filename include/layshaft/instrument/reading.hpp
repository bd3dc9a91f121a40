// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>

#include <string_view>

/// @file
/// What a speedometer shows after a change of sprockets or tyre, by what it senses.
namespace layshaft {

/// What the speedometer's sender counts the turns of.
enum class SpeedometerSensor {
  layshaft,     ///< the gearbox's output shaft: sprockets and rear tyre both tell
  rear_wheel,   ///< only the rear tyre tells
  front_wheel,  ///< only the front tyre tells
};

[[nodiscard]] constexpr std::string_view to_string(SpeedometerSensor sensor) noexcept {
  switch (sensor) {
    case SpeedometerSensor::layshaft: return "layshaft";
    case SpeedometerSensor::rear_wheel: return "rear wheel";
    case SpeedometerSensor::front_wheel: return "front wheel";
  }
  return {};
}

/// The reading after over the reading before, at the same true speed, where a wheel is sensed: a taller tyre turns
/// less and makes it read low. Where the layshaft is sensed the ratio is its turns_ratio (gearing/change.hpp).
LAYSHAFT_FORMULA(constexpr, double, wheel_indicated_ratio, (Length base_circumference, Length trial_circumference),
                 positive(base_circumference) && positive(trial_circumference), sources::definition,
                 base_circumference / trial_circumference)

/// The factor by which a correction unit must multiply the sender's turns so that the instrument reads as before.
LAYSHAFT_FORMULA(constexpr, double, correction_factor, (double indicated_ratio), positive(indicated_ratio),
                 sources::definition, 1.0 / indicated_ratio)

/// How far the odometer drifts from its stock count.
LAYSHAFT_FORMULA(constexpr, double, odometer_drift, (double indicated_ratio), positive(indicated_ratio),
                 sources::definition, indicated_ratio - 1.0)

/// What the stock instrument shows at a true speed; its error is a fraction of that speed, 0.04 for 4 % fast.
// clang-format off
LAYSHAFT_FORMULA(constexpr, Speed, stock_reading, (Speed true_speed, double reading_error),
                 is_finite(true_speed) && is_finite(reading_error), sources::definition,
                 true_speed * (1.0 + reading_error))
// clang-format on

/// What it shows at the same true speed once parts are changed.
// clang-format off
LAYSHAFT_FORMULA(constexpr, Speed, indicated_speed, (Speed stock_reading, double indicated_ratio),
                 is_finite(stock_reading) && positive(indicated_ratio), sources::definition,
                 stock_reading * indicated_ratio)
// clang-format on

}  // namespace layshaft
