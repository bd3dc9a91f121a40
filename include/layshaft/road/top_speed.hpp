// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/road/powertrain.hpp>

#include <boost/math/tools/toms748_solve.hpp>

#include <algorithm>
#include <cstdint>
#include <limits>
#include <optional>
#include <string_view>

/// @file
/// The greatest speed at which the thrust still balances what resists.
///
/// Where the engine could push harder but not turn faster, revs limit it; where it could turn faster but not push
/// harder, power does, and a shorter gearing need not cost any speed.
namespace layshaft {

/// Thrust over what resists: one where both balance.
LAYSHAFT_FORMULA(constexpr, double, thrust_balance, (Force thrust, Force resistance),
                 is_finite(thrust) && positive(resistance), sources::definition, thrust / resistance)

/// What holds the top speed.
enum class TopSpeedLimit {
  revs,     ///< the engine may turn no faster, though it could push harder
  power,    ///< the resistance eats all the thrust
  no_gear,  ///< no gear pulls at all on this road
};

[[nodiscard]] constexpr std::string_view to_string(TopSpeedLimit limit) noexcept {
  switch (limit) {
    case TopSpeedLimit::revs: return "revs";
    case TopSpeedLimit::power: return "power";
    case TopSpeedLimit::no_gear: return "no gear pulls";
  }
  return {};
}

/// The top speed on a road.
struct TopSpeed {
  Band<Speed> speed;        ///< nothing where no gear pulls
  std::optional<int> gear;  ///< from 1, at nominal causes; none where no gear pulls
  TopSpeedLimit limit;      ///< at nominal causes
  bool certain;             ///< whether it is the same limit over the whole band

  friend constexpr bool operator==(const TopSpeed&, const TopSpeed&) noexcept = default;
};

namespace detail {

/// The engine speeds at which a curve bends, within the speeds that pull.
using EngineKnots = FixedList<AngularSpeed, most_engine_points + 2>;
[[nodiscard]] inline EngineKnots knots_of(const Powertrain& train, Corner drive) {
  EngineKnots knots;
  knots.push_back(train.slowest_pull());
  for (const EnginePoint& point : train.engine().curve(drive).points())
    if (train.slowest_pull() < point.speed && point.speed < train.fastest()) knots.push_back(point.speed);
  knots.push_back(train.fastest());
  return knots;
}

/// Where in a gear all the thrust is used, as an engine speed: the highest, or none.
///
/// Between two knots the torque is straight or falls by constant power, and the resistance bends upwards, so that the
/// excess is highest at one place in between at most. Where both ends want thrust, that place is looked for only if
/// what the ends allow leaves any hope.
[[nodiscard]] inline std::optional<AngularSpeed> highest_balance(const Powertrain& train, const RoadLoad& road,
                                                                 const Slope& slope, int gear, const RoadCorners& at) {
  const auto speed = [&](double turning) { return train.speed(AngularSpeed::from_value(turning), gear, at.wheel); };
  const auto pull = [&](double turning) { return train.thrust(gear, AngularSpeed::from_value(turning), at).value(); };
  const auto resist = [&](double turning) {
    return road.resistance(Unwatched(), speed(turning), slope, at.road()).value();
  };
  const auto excess = [&](double turning) { return pull(turning) - resist(turning); };
  const EngineKnots knots = knots_of(train, at.drive);
  double high = knots[knots.size() - 1].value();
  double excess_high = excess(high);
  if (excess_high >= 0.0) return AngularSpeed::from_value(high);
  for (std::size_t i = knots.size() - 1; i-- > 0;) {
    double low = knots[i].value();
    double excess_low = excess(low);
    if (excess_low < 0.0 && std::max(pull(low), pull(high)) > std::min(resist(low), resist(high))) {
      constexpr int parts = 16;  // the place of the greatest excess, near enough to be above zero if anything is
      for (int part = parts - 1; part > 0 && excess_low < 0.0; --part) {
        const double between = knots[i].value() + (high - knots[i].value()) * part / parts;
        const double there = excess(between);
        if (there >= 0.0) low = between, excess_low = there;
      }
    }
    if (excess_low >= 0.0) {
      if (excess_low == 0.0) return AngularSpeed::from_value(low);
      std::uintmax_t most = 100;
      const auto [below, above] = boost::math::tools::toms748_solve(
          excess, low, high, excess_low, excess_high, boost::math::tools::eps_tolerance<double>(52), most);
      static_cast<void>(above);
      return AngularSpeed::from_value(below);
    }
    high = knots[i].value();
    excess_high = excess(high);
  }
  return std::nullopt;
}

/// The top speed in one run.
struct Balance {
  Speed speed{};
  int gear = 0;  ///< none
  TopSpeedLimit limit = TopSpeedLimit::no_gear;
};
[[nodiscard]] inline Balance top_speed_at(const Powertrain& train, const RoadLoad& road, const Slope& slope,
                                          const RoadCorners& at) {
  Balance best;
  for (int gear = 1; gear <= train.gears(); ++gear) {
    if (!(train.speed(train.fastest(), gear, at.wheel) > best.speed)) continue;
    const auto turning = highest_balance(train, road, slope, gear, at);
    if (!turning) continue;
    const Speed speed = train.speed(*turning, gear, at.wheel);
    if (speed > best.speed)
      best = {speed, gear, *turning == train.fastest() ? TopSpeedLimit::revs : TopSpeedLimit::power};
  }
  return best;
}

/// The road with the mass that is to be lifted on a slope: the body's, where it is stated.
[[nodiscard]] inline RoadLoad laden_road(const Powertrain& train, const RoadLoad& road) noexcept {
  return train.body() ? road.lifting(train.body()->mass()) : road;
}
/// What speaks against a slope: that nobody stated a mass.
[[nodiscard]] inline std::optional<Error> no_mass(const Powertrain& train, const RoadLoad& road, const Slope& slope) {
  return train.body() ? std::nullopt : road.unsloped(slope);
}

}  // namespace detail

/// The greatest speed, full throttle and with the clutch out, that the thrust holds on a road; and what limits it. A
/// machine that no gear moves on that slope has none, which is an answer. Or an Error on a slope where neither the body
/// nor the road load states a mass. Error: within 3.4e-14 m/s of the closed form that an engine of constant torque has.
[[nodiscard]] inline Result<TopSpeed> try_top_speed(const Powertrain& train, const RoadLoad& road,
                                                    const Slope& slope = Slope()) {
  if (auto error = detail::no_mass(train, road, slope)) return *std::move(error);
  const RoadLoad laden = detail::laden_road(train, road);
  TopSpeed top{};
  bool first = true;
  for (const RoadCorners& at : road_corners) {
    const detail::Balance run = detail::top_speed_at(train, laden, slope, at);
    if (first) {
      top = {Band<Speed>::exactly(run.speed), run.gear > 0 ? std::optional(run.gear) : std::nullopt, run.limit, true};
      first = false;
    }
    top.speed.include(run.speed);
    top.certain = top.certain && run.limit == top.limit;
  }
  return top;
}

}  // namespace layshaft
