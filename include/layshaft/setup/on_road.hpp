// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/gearing/downshift.hpp>
#include <layshaft/road/climb.hpp>
#include <layshaft/road/shift_points.hpp>
#include <layshaft/road/standing_start.hpp>
#include <layshaft/road/top_speed.hpp>
#include <layshaft/setup/machine.hpp>
#include <layshaft/setup/rollout.hpp>

#include <optional>
#include <utility>

/// @file
/// What a machine and a set-up do on a road: each question of the road layer, asked of both.
///
/// Every function needs the machine's engine, and says so where it is not stated; those of hills and of gaining speed
/// also need a mass, of the machine's body or of the road load.
namespace layshaft {

namespace detail {
/// The loop of a set-up's chain.
[[nodiscard]] inline ChainLoop loop_of(const Machine& machine, const Setup& setup) {
  return ChainLoop(setup.chain().value_or(machine.chain()), setup.front(), setup.rear());
}
}  // namespace detail

/// The powertrain of a machine with a set-up on it. Or an Error where the machine states no engine.
[[nodiscard]] inline Result<Powertrain> try_powertrain(const Machine& machine, const Setup& setup) {
  if (!machine.engine())
    return Error::value("the machine states no engine; expected engine=EngineCurve(speeds, torques), or an Engine");
  return Powertrain::make({.engine = *machine.engine(),
                           .gearbox = machine.gearbox(),
                           .loop = detail::loop_of(machine, setup),
                           .circumference = Rollout(setup).circumference(),
                           .chain_made = setup.chain_made(),
                           .drive_efficiency = machine.drive_efficiency(),
                           .chain_efficiency = setup.drive_efficiency(),
                           .body = machine.body()});
}

namespace detail {
/// Asks a question of the powertrain, if there is one.
template <class Question>
[[nodiscard]] auto ask_powertrain(const Machine& machine, const Setup& setup, Question question)
    -> decltype(question(std::declval<const Powertrain&>())) {
  const auto train = try_powertrain(machine, setup);
  if (!train) return train.error();
  return question(*train);
}
}  // namespace detail

/// The thrust in a gear at a speed, full throttle; road/powertrain.hpp.
[[nodiscard]] inline Result<Band<Force>> try_thrust(const Machine& machine, const Setup& setup, int gear, Speed speed) {
  return detail::ask_powertrain(machine, setup, [&](const Powertrain& t) { return try_thrust(t, gear, speed); });
}
/// The top speed and what limits it; road/top_speed.hpp.
[[nodiscard]] inline Result<TopSpeed> try_top_speed(const Machine& machine, const Setup& setup, const RoadLoad& road,
                                                    const Slope& slope = Slope()) {
  return detail::ask_powertrain(machine, setup, [&](const Powertrain& t) { return try_top_speed(t, road, slope); });
}
/// The steepest slope that a gear holds at a speed; road/climb.hpp.
[[nodiscard]] inline Result<Band<Angle>> try_steepest_slope(const Machine& machine, const Setup& setup,
                                                            const RoadLoad& road, int gear, Speed speed) {
  return detail::ask_powertrain(machine, setup,
                                [&](const Powertrain& t) { return try_steepest_slope(t, road, gear, speed); });
}
/// The steepest slope that a gear climbs at the speed that suits it; road/climb.hpp.
[[nodiscard]] inline Result<BestClimb> try_best_climb(const Machine& machine, const Setup& setup, const RoadLoad& road,
                                                      int gear) {
  return detail::ask_powertrain(machine, setup, [&](const Powertrain& t) { return try_best_climb(t, road, gear); });
}
/// The steepest slope down which the closed throttle holds; road/climb.hpp.
[[nodiscard]] inline Result<Band<Angle>> try_steepest_descent(const Machine& machine, const Setup& setup,
                                                              const RoadLoad& road, int gear, Speed speed) {
  return detail::ask_powertrain(machine, setup,
                                [&](const Powertrain& t) { return try_steepest_descent(t, road, gear, speed); });
}
/// A start from standstill; road/standing_start.hpp.
[[nodiscard]] inline Result<StandingStart> try_standing_start(const Machine& machine, const Setup& setup,
                                                              const RoadLoad& road, const Slope& slope = Slope(),
                                                              int gear = 1) {
  return detail::ask_powertrain(machine, setup,
                                [&](const Powertrain& t) { return try_standing_start(t, road, slope, gear); });
}
/// The shifts up that keep the thrust highest; road/shift_points.hpp.
[[nodiscard]] inline Result<ShiftPoints> try_shift_points(const Machine& machine, const Setup& setup) {
  return detail::ask_powertrain(machine, setup,
                                [](const Powertrain& t) { return Result<ShiftPoints>(shift_points(t)); });
}

namespace detail {
/// The lowest engine speed that pulls cleanly, as far as the engine's curve reaches down to it.
[[nodiscard]] inline AngularSpeed slowest_pull(const Machine& machine) {
  const AngularSpeed lowest = machine.gearbox().lowest_pull();
  return machine.engine() ? std::max(lowest, machine.engine()->curve().lowest_speed()) : lowest;
}
/// The road speed at an engine speed, over the tyre's size and how far it slips on that ground while it drives.
[[nodiscard]] inline Band<Speed> slipping_speed_at(AngularSpeed engine_speed, double overall_ratio,
                                                   const Band<Length>& circumference, const Surface& ground) {
  const auto wheel = [&](Length rolls) { return speed_at(Unwatched(), engine_speed, overall_ratio, rolls); };
  const Band<double>& slip = ground.driving_slip;
  return {slipping_speed(wheel(circumference.low), slip.high),
          slipping_speed(wheel(circumference.nominal), slip.nominal),
          slipping_speed(wheel(circumference.high), slip.low)};
}
}  // namespace detail

/// The lowest speed with the clutch out, in first gear at the lowest engine speed that pulls cleanly, over the tyre's
/// size and how far it slips on that ground while it drives.
[[nodiscard]] inline Band<Speed> walking_pace(const Machine& machine, const Setup& setup,
                                              SurfaceKind ground = SurfaceKind::asphalt) {
  const double ratio = detail::overall_ratio_in(Unwatched(), machine.gearbox(), 1, setup.front(), setup.rear());
  return detail::slipping_speed_at(detail::slowest_pull(machine), ratio, Rollout(setup).circumference(),
                                   surface(ground));
}

/// The same machine in other air: less of it feeds an engine that nothing blows into (common practice), and less of it
/// resists. An electric motor, whose curve begins at standstill, keeps its torque. Or a RangeError for air of no
/// density, or of more than 10 kg/m3.
[[nodiscard]] inline Result<Machine> try_in_air(const Machine& machine, const Air& air) {
  if (auto error = detail::outside("density", air.density, 1e-3_kg_per_m3, 10.0_kg_per_m3)) return *std::move(error);
  Machine::Parts parts = machine.parts();
  if (parts.road_load) parts.road_load = *parts.road_load->try_in_air(air.density);
  if (parts.engine && parts.engine->curve().lowest_speed() > AngularSpeed())
    parts.engine = *parts.engine->try_scaled(density_ratio(air.density, standard_atmosphere::density));
  return Machine::make(std::move(parts));
}

/// What one gear is good for.
struct GearOnRoad {
  BestClimb climb;            ///< the steepest slope it climbs
  Band<Angle> held_back;      ///< the steepest one it holds back on, throttle closed, at the lowest speed it pulls
  Band<double> engine_turns;  ///< over a kilometre

  friend constexpr bool operator==(const GearOnRoad&, const GearOnRoad&) = default;
};

/// What a machine and a set-up do on the machine's road.
struct OnRoad {
  TopSpeed top_speed;
  FixedList<GearOnRoad, most_gears> gears;  ///< from first gear up
  StandingStart start;                      ///< on the level, in first gear
  Band<Speed> walking_pace;                 ///< on asphalt
  ShiftPoints shifts;                       ///< that keep the thrust highest
  std::optional<ThrustLimit> limit;         ///< of front wheel and asphalt, on the level, as far as the body tells
  RoadLoadKind road_load;                   ///< where what resists comes from, and so where it holds

  friend constexpr bool operator==(const OnRoad&, const OnRoad&) = default;
};

/// All that follows from the machine's engine, body and road load. Or an Error where engine, road load or a mass is not
/// stated.
[[nodiscard]] inline Result<OnRoad> try_on_road(const Machine& machine, const Setup& setup) {
  if (!machine.road_load())
    return Error::value("the machine states no road load; expected road_load=RoadLoad.by_mass(...), or another");
  const RoadLoad& road = *machine.road_load();
  const auto train = try_powertrain(machine, setup);
  if (!train) return train.error();
  const TopSpeed top = *try_top_speed(*train, road);  // on the level, where no mass is asked for
  const auto start = try_standing_start(*train, road);
  if (!start) return start.error();
  OnRoad all{top, {}, *start, walking_pace(machine, setup), shift_points(*train), {}, road.kind()};
  for (int gear = 1; gear <= train->gears(); ++gear) {
    const Speed slowest = train->speed(train->slowest_pull(), gear, Corner::nominal);
    all.gears.push_back({*try_best_climb(*train, road, gear), *try_steepest_descent(*train, road, gear, slowest),
                         over(train->circumference(), [&](Length circumference) {
                           return engine_turns(train->overall_ratio(gear), circumference);
                         })});
  }
  if (machine.body() && detail::states_limit(*machine.body()))  // asked first: an error would be made, and dropped
    all.limit = *try_thrust_limit(*machine.body(), surface(SurfaceKind::asphalt));
  return all;
}

#if LAYSHAFT_EXCEPTIONS
/// @throws Error as `try_powertrain` says.
[[nodiscard]] inline Powertrain powertrain(const Machine& machine, const Setup& setup) {
  return try_powertrain(machine, setup).value();
}
/// @throws Error as `try_thrust` says.
[[nodiscard]] inline Band<Force> thrust(const Machine& machine, const Setup& setup, int gear, Speed speed) {
  return try_thrust(machine, setup, gear, speed).value();
}
/// @throws Error as `try_top_speed` says.
[[nodiscard]] inline TopSpeed top_speed(const Machine& machine, const Setup& setup, const RoadLoad& road,
                                        const Slope& slope = Slope()) {
  return try_top_speed(machine, setup, road, slope).value();
}
/// @throws Error as `try_steepest_slope` says.
[[nodiscard]] inline Band<Angle> steepest_slope(const Machine& machine, const Setup& setup, const RoadLoad& road,
                                                int gear, Speed speed) {
  return try_steepest_slope(machine, setup, road, gear, speed).value();
}
/// @throws Error as `try_best_climb` says.
[[nodiscard]] inline BestClimb best_climb(const Machine& machine, const Setup& setup, const RoadLoad& road, int gear) {
  return try_best_climb(machine, setup, road, gear).value();
}
/// @throws Error as `try_steepest_descent` says.
[[nodiscard]] inline Band<Angle> steepest_descent(const Machine& machine, const Setup& setup, const RoadLoad& road,
                                                  int gear, Speed speed) {
  return try_steepest_descent(machine, setup, road, gear, speed).value();
}
/// @throws Error as `try_standing_start` says.
[[nodiscard]] inline StandingStart standing_start(const Machine& machine, const Setup& setup, const RoadLoad& road,
                                                  const Slope& slope = Slope(), int gear = 1) {
  return try_standing_start(machine, setup, road, slope, gear).value();
}
/// @throws Error as `try_shift_points` says.
[[nodiscard]] inline ShiftPoints shift_points(const Machine& machine, const Setup& setup) {
  return try_shift_points(machine, setup).value();
}
/// @throws RangeError as `try_in_air` says.
[[nodiscard]] inline Machine in_air(const Machine& machine, const Air& air) { return try_in_air(machine, air).value(); }
/// @throws Error as `try_on_road` says.
[[nodiscard]] inline OnRoad on_road(const Machine& machine, const Setup& setup) {
  return try_on_road(machine, setup).value();
}
#endif

}  // namespace layshaft
