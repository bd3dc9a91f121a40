// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/road/climb.hpp>

#include <algorithm>
#include <optional>
#include <string_view>
#include <utility>

/// @file
/// Getting away from standstill: the clutch slips, the engine turns on at one speed, until the wheel has caught up.
namespace layshaft {

/// Time for which the clutch slips, until the road speed is that of the engine.
LAYSHAFT_FORMULA(constexpr, Duration, slip_time, (Speed road_speed, Acceleration acceleration),
                 is_finite(road_speed) && positive(acceleration), sources::definition, road_speed / acceleration)

/// Way covered meanwhile.
// clang-format off
LAYSHAFT_FORMULA(constexpr, Length, slip_distance, (Speed road_speed, Duration slip_time),
                 is_finite(road_speed) && is_finite(slip_time), sources::definition, 0.5 * road_speed * slip_time)
// clang-format on

/// Heat in a clutch that carries a torque while one side turns steadily and the other catches up evenly: on the mean
/// they differ by half the engine's speed.
LAYSHAFT_FORMULA(constexpr, Energy, clutch_heat, (Torque engine_torque, AngularSpeed engine_speed, Duration slip_time),
                 is_finite(engine_torque) && is_finite(engine_speed) && is_finite(slip_time), sources::definition,
                 0.5 * (engine_torque * engine_speed * slip_time))

/// What holds the torque at a start.
enum class StartLimit { engine, clutch };

[[nodiscard]] constexpr std::string_view to_string(StartLimit limit) noexcept {
  return limit == StartLimit::engine ? "engine" : "clutch";
}

/// How a machine gets away.
struct StandingStart {
  Band<Force> thrust;
  StartLimit limit;                         ///< what holds the torque, at nominal causes
  bool moves;                               ///< whatever the causes
  bool may_move;                            ///< at the best of them
  Band<Speed> caught_speed;                 ///< at which the clutch slips no more
  std::optional<Band<Duration>> slip_time;  ///< as below: none unless it moves whatever the causes
  std::optional<Band<Length>> slip_distance;
  std::optional<Band<Energy>> clutch_heat;
  Band<Angle> steepest;  ///< slope on which it just gets away in this gear

  friend constexpr bool operator==(const StandingStart&, const StandingStart&) noexcept = default;
};

namespace detail {

/// The torque at a start: what the engine makes at its start speed, or the clutch carries.
[[nodiscard]] inline Torque start_torque(const Powertrain& train, Corner drive) {
  const Torque made = train.engine().curve(drive).torque(Unwatched(), train.start_speed());
  return std::min(made, train.engine().clutch_torque().value_or(made));
}
[[nodiscard]] inline Force start_thrust(const Powertrain& train, int gear, const RoadCorners& at) {
  const Torque torque = start_torque(train, at.drive);
  const double efficiency = train.drive_efficiency(Unwatched(), gear, torque, train.start_speed(), at.drive);
  return drive_thrust(torque, train.overall_ratio(gear), efficiency, train.circumference().at(at.wheel));
}
/// The mass that a start speeds up: the engine turns on as it did.
[[nodiscard]] inline Mass start_mass(const Powertrain& train, Mass mass, Corner wheel) {
  const MomentOfInertia wheels = train.body() ? train.body()->wheel_inertia() : MomentOfInertia();
  return moved_mass(mass, wheel_mass(wheels, train.circumference().at(wheel)));
}
[[nodiscard]] inline std::optional<Acceleration> start_acceleration(const Powertrain& train, const RoadLoad& road,
                                                                    const Slope& slope, int gear,
                                                                    const RoadCorners& at) {
  const Force thrust = start_thrust(train, gear, at);
  const Force resistance = road.resistance(Unwatched(), Speed(), slope, at.road());
  if (!(thrust > resistance)) return std::nullopt;
  return acceleration(thrust, resistance, start_mass(train, *road.mass(), at.wheel));
}

}  // namespace detail

/// A start from standstill on a slope, the clutch slipping at the engine's start speed and full throttle; resistance as
/// at standstill. A machine that does not move is an answer. Or a RangeError for a gear there is not, or an Error
/// without any mass.
[[nodiscard]] inline Result<StandingStart> try_standing_start(const Powertrain& train, const RoadLoad& road,
                                                              const Slope& slope = Slope(), int gear = 1) {
  if (auto error = train.gear_outside(gear)) return *std::move(error);
  if (auto error = detail::no_mass(train, road)) return *std::move(error);
  const RoadLoad laden = detail::laden_road(train, road);
  const AngularSpeed turning = train.start_speed();
  StandingStart start{};
  start.thrust = over_runs(road_corners, [&](const auto& at) { return detail::start_thrust(train, gear, at); });
  const auto& clutch = train.engine().clutch_torque();
  start.limit =
      clutch && *clutch < train.engine().curve().torque(Unwatched(), turning) ? StartLimit::clutch : StartLimit::engine;
  start.caught_speed = over_runs(one_cause, [&](Corner wheel) { return train.speed(turning, gear, wheel); });
  start.steepest = over_runs(road_corners, [&](const RoadCorners& at) {
    return detail::slope_of(Unwatched(), formula::slope_held{}, detail::start_thrust(train, gear, at), laden, at);
  });
  start.moves = true;
  for (const RoadCorners& at : road_corners) {
    const bool here = detail::start_acceleration(train, laden, slope, gear, at).has_value();
    start.moves = start.moves && here;
    start.may_move = start.may_move || here;
  }
  if (!start.moves) return start;
  const auto time = [&](const RoadCorners& at) {
    return slip_time(train.speed(turning, gear, at.wheel), *detail::start_acceleration(train, laden, slope, gear, at));
  };
  start.slip_time = over_runs(road_corners, time);
  start.slip_distance = over_runs(road_corners, [&](const RoadCorners& at) {
    return slip_distance(train.speed(turning, gear, at.wheel), time(at));
  });
  start.clutch_heat = over_runs(road_corners, [&](const RoadCorners& at) {
    return clutch_heat(detail::start_torque(train, at.drive), turning, time(at));
  });
  return start;
}

}  // namespace layshaft
