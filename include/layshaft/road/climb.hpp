// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/road/limits.hpp>
#include <layshaft/road/top_speed.hpp>

#include <algorithm>
#include <array>
#include <optional>
#include <utility>

/// @file
/// How steep a road the thrust climbs, and how steep a one the closed throttle holds back on.
namespace layshaft {

/// Thrust beyond what comes with speed: what is left for the hill and the tyres on it.
LAYSHAFT_FORMULA(constexpr, Force, spare_thrust, (Force thrust, Force speed_resistance),
                 is_finite(thrust) && is_finite(speed_resistance), sources::definition, thrust - speed_resistance)

/// A force along the road, over the weight.
LAYSHAFT_FORMULA(constexpr, double, share_of_weight, (Force road_force, Mass mass, Acceleration gravity),
                 is_finite(road_force) && positive(mass) && positive(gravity), sources::definition,
                 road_force / (mass * gravity))

/// The slope on which a thrust holds a mass whose tyres resist, both as shares of the weight on the level; below zero
/// downhill.
LAYSHAFT_FORMULA(inline, Angle, slope_held, (double climb_share, double rolling_share),
                 is_finite(climb_share) && is_finite(rolling_share) &&
                     climb_share * climb_share <= 1.0 + rolling_share * rolling_share,
                 sources::geometry,
                 arcsin(climb_share / square_root(1.0 + rolling_share * rolling_share)) - arctan(rolling_share))

/// The slope down which a force that holds back keeps a mass whose tyres resist.
LAYSHAFT_FORMULA(inline, Angle, slope_held_back, (double climb_share, double rolling_share),
                 is_finite(climb_share) && is_finite(rolling_share) &&
                     climb_share * climb_share <= 1.0 + rolling_share * rolling_share,
                 sources::geometry,
                 arcsin(climb_share / square_root(1.0 + rolling_share * rolling_share)) + arctan(rolling_share))

/// What the engine and the air hold back together.
LAYSHAFT_FORMULA(constexpr, Force, holding_force, (Force overrun_thrust, Force speed_resistance),
                 is_finite(overrun_thrust) && is_finite(speed_resistance), sources::definition,
                 overrun_thrust + speed_resistance)

namespace detail {

/// Slopes end at the vertical: more force than the weight climbs anything, and holds back on anything.
inline constexpr Angle vertical = Angle::from_value(0.5 * pi);

/// The slope that a force along it holds, for whoever watches.
template <class Formula, class Watch, class WatchedForce>
[[nodiscard]] auto slope_of(Watch watch, Formula formula, const WatchedForce& force, const RoadLoad& road,
                            const RoadCorners& at) {
  const auto constant = road.constant(watch, at.road());
  const auto mass = road.lifted(watch);
  const auto gravity = detail::gravity(watch);
  const auto climb_share = watch.step("climb_share", formula::share_of_weight{}, force, mass, gravity);
  const auto rolling_share = watch.step("rolling_share", formula::share_of_weight{}, constant, mass, gravity);
  const double climbed = watch.plain(climb_share);
  constexpr const char* rule = "the slope held, or the vertical where the force is more than the weight";
  const auto no_other = [] { return std::array<Angle, 0>{}; };
  if (!Formula::in_range(climbed, watch.plain(rolling_share)))
    return watch.chosen("steepest", climbed > 0.0 ? vertical : -vertical, rule, no_other, climb_share);
  const auto held = watch.step(formula, climb_share, rolling_share);
  return watch.chosen("steepest", watch.plain(held), rule, no_other, held);
}

/// The steepest slope at an engine speed and the road speed that goes with it, for whoever watches.
template <class Watch, class WatchedTurning, class WatchedSpeed, class WatchedRatio, class WatchedLength>
[[nodiscard]] auto steepest_at(Watch watch, const Powertrain& train, const RoadLoad& road, int gear,
                               const WatchedTurning& engine_speed, const WatchedSpeed& road_speed,
                               const WatchedRatio& overall_ratio, const WatchedLength& circumference,
                               const RoadCorners& at) {
  const auto thrust = train.thrust(watch, gear, engine_speed, overall_ratio, circumference, at.drive);
  const auto met = road.speed_part(watch, road_speed, at.road());
  const auto spare = watch.step(formula::spare_thrust{}, thrust, met);
  return slope_of(watch, formula::slope_held{}, spare, road, at);
}
[[nodiscard]] inline Angle steepest_at(const Powertrain& train, const RoadLoad& road, int gear,
                                       AngularSpeed engine_speed, Speed road_speed, const RoadCorners& at) {
  return steepest_at(Unwatched(), train, road, gear, engine_speed, road_speed, train.overall_ratio(gear),
                     train.circumference().at(at.wheel), at);
}

/// What speaks against asking for slopes at all.
[[nodiscard]] inline std::optional<Error> no_mass(const Powertrain& train, const RoadLoad& road) {
  return no_mass(train, road, *Slope::make(0.1));
}

}  // namespace detail

/// The steepest slope on which a gear, from 1, holds a speed, full throttle; below zero where it only does so downhill,
/// 90 degrees where the thrust is more than the weight. What front wheel and ground take is not asked here; see
/// `steepest_on_ground`. Or a RangeError where the gear does not reach that speed, or an Error without any mass.
[[nodiscard]] inline Result<Band<Angle>> try_steepest_slope(const Powertrain& train, const RoadLoad& road, int gear,
                                                            Speed speed) {
  if (auto error = train.not_in_gear(gear, speed)) return *std::move(error);
  if (auto error = detail::no_mass(train, road)) return *std::move(error);
  const RoadLoad laden = detail::laden_road(train, road);
  return over_runs(road_corners, [&](const RoadCorners& at) {
    return detail::steepest_at(train, laden, gear, train.held_engine_speed(speed, gear, at.wheel), speed, at);
  });
}

/// The steepest slope that a gear climbs, and where.
struct BestClimb {
  Band<Angle> slope;
  Speed speed;                ///< at which it does so, at nominal causes
  AngularSpeed engine_speed;  ///< there
  Force thrust;               ///< there

  friend constexpr bool operator==(const BestClimb&, const BestClimb&) noexcept = default;
};

namespace detail {
/// The engine speed at which a gear has most to spare: the best knot of the curve, and what a parabola through it and
/// its neighbours, which the excess is between knots, promises beside it.
[[nodiscard]] inline AngularSpeed best_climb_at(const Powertrain& train, const RoadLoad& road, int gear,
                                                const RoadCorners& at) {
  const EngineKnots knots = knots_of(train, at.drive);
  const auto spare = [&](AngularSpeed turning) {
    return train.thrust(gear, turning, at) -
           road.speed_part(Unwatched(), train.speed(turning, gear, at.wheel), at.road());
  };
  AngularSpeed best = knots[0];
  Force most = spare(best);
  const auto consider = [&](AngularSpeed turning) {
    const Force there = spare(turning);
    if (there > most) best = turning, most = there;
  };
  for (std::size_t i = 1; i < knots.size(); ++i) {
    const AngularSpeed low = knots[i - 1], high = knots[i], middle = 0.5 * (low + high);
    const double left = spare(low).value(), centre = spare(middle).value(), right = spare(high).value();
    const double bend = left - 2.0 * centre + right;
    const double crest = bend < 0.0 ? 0.25 * (left - right) / bend : 2.0;  // of the half width, from the middle
    if (-0.5 < crest && crest < 0.5) consider(middle + crest * (high - low));
    consider(high);
  }
  return best;
}
}  // namespace detail

/// The steepest slope that a gear, from 1, climbs at the speed that suits it best. Or a RangeError for a gear there is
/// not, or an Error without any mass.
[[nodiscard]] inline Result<BestClimb> try_best_climb(const Powertrain& train, const RoadLoad& road, int gear) {
  if (auto error = train.gear_outside(gear)) return *std::move(error);
  if (auto error = detail::no_mass(train, road)) return *std::move(error);
  const RoadLoad laden = detail::laden_road(train, road);
  const auto slope = over_runs(road_corners, [&](const RoadCorners& at) {
    const AngularSpeed turning = detail::best_climb_at(train, laden, gear, at);
    return detail::steepest_at(train, laden, gear, turning, train.speed(turning, gear, at.wheel), at);
  });
  const AngularSpeed turning = detail::best_climb_at(train, laden, gear, RoadCorners());
  return BestClimb{slope, train.speed(turning, gear, Corner::nominal), turning,
                   train.thrust(gear, turning, RoadCorners())};
}

/// The steepest slope down which the closed throttle keeps a gear at a speed, as far as its drag is known: a band that
/// is wide where nobody measured it. Errors as `try_steepest_slope`.
[[nodiscard]] inline Result<Band<Angle>> try_steepest_descent(const Powertrain& train, const RoadLoad& road, int gear,
                                                              Speed speed) {
  if (auto error = train.not_in_gear(gear, speed)) return *std::move(error);
  if (auto error = detail::no_mass(train, road)) return *std::move(error);
  const RoadLoad laden = detail::laden_road(train, road);
  return over_runs(road_corners, [&](const RoadCorners& at) {
    // what holds back is low where the engine drags little and the road resists little, and no loss helps
    const AngularSpeed turning = train.held_engine_speed(speed, gear, at.wheel);
    const RoadCorners back{at.wheel, RoadCorners::opposite(at.drive)};
    const Force dragged = train.overrun(Unwatched(), gear, turning, train.overall_ratio(gear),
                                        train.circumference().at(at.wheel), at.drive, back.drive);
    const Force met = laden.speed_part(Unwatched(), speed, back.road());
    return detail::slope_of(Unwatched(), formula::slope_held_back{}, holding_force(dragged, met), laden, back);
  });
}

/// The steepest slope that front wheel and ground let anything climb, however hard it pushes: where the thrust that
/// holds it there is the limit of the thrust. `kind` is which of both it is, at nominal grip.
struct GroundClimb {
  Band<Angle> slope;
  ThrustLimitKind kind;

  friend constexpr bool operator==(const GroundClimb&, const GroundClimb&) noexcept = default;
};
/// Both the limit and what a slope asks for go with the weight and the cosine, so that only the grip, the centre of
/// mass and the tyres' rolling resistance decide. Errors as `try_thrust_limit`.
[[nodiscard]] inline Result<GroundClimb> try_steepest_on_ground(const Body& body, const Surface& ground) {
  const auto limit = try_thrust_limit(body, ground);
  if (!limit) return limit.error();
  const Force weight = body.mass() * standard_gravity;
  const Band<double>& rolling = ground.rolling_coefficient;
  const auto slope = [&](Force most, double coefficient) { return arctan(most / weight - coefficient); };
  return GroundClimb{{slope(limit->thrust.low, rolling.high), slope(limit->thrust.nominal, rolling.nominal),
                      slope(limit->thrust.high, rolling.low)},
                     limit->kind};
}
#if LAYSHAFT_EXCEPTIONS
/// @throws Error as `try_steepest_on_ground` says.
[[nodiscard]] inline GroundClimb steepest_on_ground(const Body& body, const Surface& ground) {
  return try_steepest_on_ground(body, ground).value();
}
#endif

}  // namespace layshaft
