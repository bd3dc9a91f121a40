// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/checks.hpp>
#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>
#include <layshaft/core/result.hpp>
#include <layshaft/core/watch.hpp>

#include <optional>
#include <utility>

/// @file
/// From torque at the engine to thrust at the ground and to acceleration, with everything that turns.
///
/// While the engine drives, the loss is taken from what arrives at the gears, which is the torque less what the
/// engine's own inertia eats: so the efficiency multiplies that inertia too. On overrun the wheel drives the engine,
/// and it divides.
namespace layshaft {

/// Thrust at the contact patch of a torque at the engine.
LAYSHAFT_FORMULA(constexpr, Force, drive_thrust,
                 (Torque engine_torque, double overall_ratio, double drive_efficiency, Length circumference),
                 is_finite(engine_torque) && positive(overall_ratio) && is_finite(drive_efficiency) &&
                     positive(circumference),
                 sources::definition, turn / circumference * engine_torque * overall_ratio * drive_efficiency)

/// What a torque that drags at the engine holds back at the contact patch, throttle closed.
LAYSHAFT_FORMULA(constexpr, Force, overrun_thrust,
                 (Torque drag_torque, double overall_ratio, double drive_efficiency, Length circumference),
                 is_finite(drag_torque) && positive(overall_ratio) && positive(drive_efficiency) &&
                     positive(circumference),
                 sources::definition, turn / circumference * drag_torque * overall_ratio / drive_efficiency)

/// The mass that the wheels' turning counts as, of the sum of their inertias.
LAYSHAFT_FORMULA(constexpr, Mass, wheel_mass, (MomentOfInertia wheel_inertia, Length circumference),
                 is_finite(wheel_inertia) && positive(circumference), sources::definition,
                 turn / circumference * (turn / circumference) * wheel_inertia)

/// The mass that the engine's turning counts as in a gear, while the engine drives.
LAYSHAFT_FORMULA(constexpr, Mass, engine_mass,
                 (MomentOfInertia engine_inertia, double overall_ratio, double drive_efficiency, Length circumference),
                 is_finite(engine_inertia) && positive(overall_ratio) && is_finite(drive_efficiency) &&
                     positive(circumference),
                 sources::definition,
                 turn / circumference * (turn / circumference) * engine_inertia * overall_ratio * overall_ratio *
                     drive_efficiency)

/// The same while the wheel drives the engine.
LAYSHAFT_FORMULA(constexpr, Mass, overrun_engine_mass,
                 (MomentOfInertia engine_inertia, double overall_ratio, double drive_efficiency, Length circumference),
                 is_finite(engine_inertia) && positive(overall_ratio) && positive(drive_efficiency) &&
                     positive(circumference),
                 sources::definition,
                 turn / circumference * (turn / circumference) * engine_inertia * overall_ratio * overall_ratio /
                     drive_efficiency)

/// All that is sped up: the mass that moves, and what turns with it.
LAYSHAFT_FORMULA(constexpr, Mass, equivalent_mass, (Mass mass, Mass wheel_mass, Mass engine_mass),
                 is_finite(mass) && is_finite(wheel_mass) && is_finite(engine_mass), sources::definition,
                 mass + wheel_mass + engine_mass)

/// What thrust over resistance does to it.
LAYSHAFT_FORMULA(constexpr, Acceleration, acceleration, (Force thrust, Force resistance, Mass equivalent_mass),
                 is_finite(thrust) && is_finite(resistance) && positive(equivalent_mass), sources::definition,
                 (thrust - resistance) / equivalent_mass)

/// The overall ratio at which a torque just holds a resistance.
LAYSHAFT_FORMULA(constexpr, double, holding_ratio,
                 (Force resistance, Torque engine_torque, double drive_efficiency, Length circumference),
                 is_finite(resistance) && positive(engine_torque) && positive(drive_efficiency) &&
                     positive(circumference),
                 sources::definition, resistance / engine_torque * (circumference / turn) / drive_efficiency)

/// The overall ratio that speeds up most: beyond it the engine spends more on its own turning than the ratio gains.
/// `moved_mass` is the mass with its wheels, `engine_mass_of_one` what the engine counts as at an overall ratio of one.
LAYSHAFT_FORMULA(inline, double, best_ratio, (double holding_ratio, Mass moved_mass, Mass engine_mass_of_one),
                 is_finite(holding_ratio) && holding_ratio >= 0.0 && positive(moved_mass) &&
                     positive(engine_mass_of_one),
                 sources::arithmetic,
                 holding_ratio + square_root(holding_ratio * holding_ratio + moved_mass / engine_mass_of_one))

/// Mass with its wheels.
LAYSHAFT_FORMULA(constexpr, Mass, moved_mass, (Mass mass, Mass wheel_mass), is_finite(mass) && is_finite(wheel_mass),
                 sources::definition, mass + wheel_mass)

/// What a drive is made of at one moment: torque at the engine, and what it must move.
struct DriveParts {
  Mass mass;                         ///< 0.1 kg to 100 t
  MomentOfInertia wheel_inertia{};   ///< both wheels together, 0 to 10,000 kg m2
  MomentOfInertia engine_inertia{};  ///< all that turns with the crank, 0 to 1000 kg m2
  double drive_efficiency = 1.0;     ///< 0.1 to 1
  Length circumference;              ///< of the driven wheel, 1 mm to 100 m; the other is taken as large
  Torque torque;                     ///< at the engine, above 0
  Force resistance{};                ///< -1 to 1 MN; below zero downhill

  friend constexpr bool operator==(const DriveParts&, const DriveParts&) noexcept = default;
};

namespace detail {

[[nodiscard]] inline std::optional<Error> refused(const DriveParts& parts) {
  if (auto error = outside("mass", parts.mass, 0.1_kg, 100000.0_kg)) return error;
  if (auto error = outside("wheel_inertia", parts.wheel_inertia, MomentOfInertia(), 1e4_kg_m2)) return error;
  if (auto error = outside("engine_inertia", parts.engine_inertia, MomentOfInertia(), 1e3_kg_m2)) return error;
  if (auto error = outside("drive_efficiency", parts.drive_efficiency, 0.1, 1.0)) return error;
  if (auto error = outside("circumference", parts.circumference, 1.0_mm, 100.0_m)) return error;
  if (auto error = outside("torque", parts.torque, 1e-6_Nm, 1e6_Nm)) return error;
  return outside("resistance", parts.resistance, -1000.0_kN, 1000.0_kN);
}

/// The acceleration in a gear for whoever watches, the engine driving.
template <class Watch>
[[nodiscard]] constexpr auto acceleration_of(Watch watch, const DriveParts& parts, double overall_ratio) {
  const auto torque = watch.given("engine_torque", parts.torque);
  const auto ratio = watch.given("overall_ratio", overall_ratio);
  const auto efficiency = watch.given("drive_efficiency", parts.drive_efficiency);
  const auto rolled = watch.given("circumference", parts.circumference);
  const auto thrust = watch.step("thrust", formula::drive_thrust{}, torque, ratio, efficiency, rolled);
  const auto wheels = watch.step(formula::wheel_mass{}, watch.given("wheel_inertia", parts.wheel_inertia), rolled);
  const auto turning = watch.given("engine_inertia", parts.engine_inertia);
  const auto engine = watch.step(formula::engine_mass{}, turning, ratio, efficiency, rolled);
  const auto mass = watch.given("mass", parts.mass);
  const auto all = watch.step(formula::equivalent_mass{}, mass, wheels, engine);
  const auto held = watch.given("resistance", parts.resistance);
  return watch.step(formula::acceleration{}, thrust, held, all);
}

/// The ratio that speeds up most, for whoever watches; only with an engine that has inertia and no downhill force.
template <class Watch>
[[nodiscard]] auto best_ratio_of(Watch watch, const DriveParts& parts) {
  const auto held = watch.given("resistance", parts.resistance);
  const auto torque = watch.given("engine_torque", parts.torque);
  const auto efficiency = watch.given("drive_efficiency", parts.drive_efficiency);
  const auto rolled = watch.given("circumference", parts.circumference);
  const auto holding = watch.step(formula::holding_ratio{}, held, torque, efficiency, rolled);
  const auto wheels = watch.step(formula::wheel_mass{}, watch.given("wheel_inertia", parts.wheel_inertia), rolled);
  const auto mass = watch.given("mass", parts.mass);
  const auto moved = watch.step(formula::moved_mass{}, mass, wheels);
  const auto turning = watch.given("engine_inertia", parts.engine_inertia);
  const auto one = watch.given({"overall_ratio", 1}, 1.0, sources::definition);
  const auto engine = watch.step("engine_mass_of_one", formula::engine_mass{}, turning, one, efficiency, rolled);
  return watch.step(formula::best_ratio{}, holding, moved, engine);
}

}  // namespace detail

/// The acceleration at an overall ratio, 1e-3 to 10,000, while the engine drives, with all that turns; below zero where
/// the resistance is more than the thrust. Or a RangeError.
[[nodiscard]] inline Result<Acceleration> try_acceleration_in(const DriveParts& parts, double overall_ratio) {
  if (auto error = detail::refused(parts)) return *std::move(error);
  if (auto error = detail::outside("overall_ratio", overall_ratio, 1e-3, 1e4)) return *std::move(error);
  return detail::acceleration_of(Unwatched(), parts, overall_ratio);
}
/// The overall ratio that gives the greatest acceleration at a constant torque. Or a RangeError: the engine's inertia
/// must be above 0, or there is no such ratio, and the resistance 0 or more.
[[nodiscard]] inline Result<double> try_best_ratio_for(const DriveParts& parts) {
  if (auto error = detail::refused(parts)) return *std::move(error);
  if (auto error = detail::outside("engine_inertia", parts.engine_inertia, 1e-9_kg_m2, 1e3_kg_m2))
    return *std::move(error);
  if (auto error = detail::outside("resistance", parts.resistance, Force(), 1000.0_kN)) return *std::move(error);
  return detail::best_ratio_of(Unwatched(), parts);
}
#if LAYSHAFT_EXCEPTIONS
/// @throws RangeError as `try_acceleration_in` says.
[[nodiscard]] inline Acceleration acceleration_in(const DriveParts& parts, double overall_ratio) {
  return try_acceleration_in(parts, overall_ratio).value();
}
/// @throws RangeError as `try_best_ratio_for` says.
[[nodiscard]] inline double best_ratio_for(const DriveParts& parts) { return try_best_ratio_for(parts).value(); }
#endif

}  // namespace layshaft
