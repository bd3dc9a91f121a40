// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/fixed_list.hpp>
#include <layshaft/road/road_load.hpp>

#include <string>
#include <utility>

/// @file
/// How long a machine rolls, clutch pulled, from one speed down to another: the integral of m dv / F(v) in closed form.
///
/// With F = a + b v + c v^2 between the speeds v1 and v2, and Q = a + b (v1 + v2)/2 + c v1 v2, the time is
///
///     m (v1 - v2) / Q * arctan_ratio((a c - b^2/4) ((v1 - v2)/Q)^2)
///
/// whatever the sign of the discriminant: the two arcs whose difference it is are put together by the sum formula, so
/// that nothing cancels.
namespace layshaft {

/// The force Q that stands for all those between two speeds.
LAYSHAFT_FORMULA(constexpr, Force, coasting_force,
                 (Force constant_resistance, ForcePerSpeed linear_resistance, LinearDensity quadratic_resistance,
                  Speed start_speed, Speed end_speed),
                 is_finite(constant_resistance) && is_finite(linear_resistance) && is_finite(quadratic_resistance) &&
                     is_finite(start_speed) && is_finite(end_speed),
                 sources::arithmetic,
                 constant_resistance + 0.5 * linear_resistance * (start_speed + end_speed) +
                     quadratic_resistance * start_speed * end_speed)

/// How much the resistance bends between two speeds: 0 where it does not, or where it goes with the square of speed
/// alone.
LAYSHAFT_FORMULA(constexpr, double, coasting_bend,
                 (Force constant_resistance, ForcePerSpeed linear_resistance, LinearDensity quadratic_resistance,
                  Speed start_speed, Speed end_speed, Force coasting_force),
                 is_finite(constant_resistance) && is_finite(linear_resistance) && is_finite(quadratic_resistance) &&
                     is_finite(start_speed) && is_finite(end_speed) && positive(coasting_force),
                 sources::arithmetic,
                 (constant_resistance * quadratic_resistance - 0.25 * linear_resistance * linear_resistance) *
                     ((start_speed - end_speed) / coasting_force) * ((start_speed - end_speed) / coasting_force))

/// The time between two speeds under a resistance of constant, linear and quadratic parts.
LAYSHAFT_FORMULA(inline, Duration, coasting_time,
                 (Mass equivalent_mass, Speed start_speed, Speed end_speed, Force coasting_force, double coasting_bend),
                 is_finite(equivalent_mass) && is_finite(start_speed) && is_finite(end_speed) &&
                     positive(coasting_force) && is_finite(coasting_bend) && coasting_bend > -1.0,
                 sources::arithmetic,
                 (start_speed - end_speed) / coasting_force * equivalent_mass * arctan_ratio(coasting_bend))

/// Constant part of the resistance over ground, of what a head wind makes of the drag.
LAYSHAFT_FORMULA(constexpr, Force, constant_in_wind,
                 (Force constant_resistance, LinearDensity quadratic_resistance, Speed head_wind),
                 is_finite(constant_resistance) && is_finite(quadratic_resistance) && is_finite(head_wind),
                 sources::arithmetic, constant_resistance + quadratic_resistance * head_wind * head_wind)

/// Linear part of the resistance over ground, of what a head wind makes of the drag.
LAYSHAFT_FORMULA(constexpr, ForcePerSpeed, linear_in_wind,
                 (ForcePerSpeed linear_resistance, LinearDensity quadratic_resistance, Speed head_wind),
                 is_finite(linear_resistance) && is_finite(quadratic_resistance) && is_finite(head_wind),
                 sources::arithmetic, linear_resistance + 2.0 * quadratic_resistance * head_wind)

/// The quadratic part where a tail wind overtakes the machine: then it drives.
LAYSHAFT_FORMULA(constexpr, LinearDensity, overtaken, (LinearDensity quadratic_resistance),
                 is_finite(quadratic_resistance), sources::definition,
                 quadratic_resistance - 2.0 * quadratic_resistance)

/// The weight's part along the slope counts as constant resistance.
LAYSHAFT_FORMULA(constexpr, Force, constant_on_slope, (Force rolling_on_slope, Force climb_resistance),
                 is_finite(rolling_on_slope) && is_finite(climb_resistance), sources::definition,
                 rolling_on_slope + climb_resistance)

/// Two times one after the other.
LAYSHAFT_FORMULA(constexpr, Duration, summed_time, (Duration coasting_time, Duration coasting_time_after),
                 is_finite(coasting_time) && is_finite(coasting_time_after), sources::definition,
                 coasting_time + coasting_time_after)

namespace detail {

/// A stretch of a coast-down over which one polynomial holds.
struct CoastingStretch {
  Speed start, end;
  bool overtaken;  ///< by a tail wind
};
/// At most cut by the wind's speed, and on each side where the resistance is least.
using CoastingStretches = FixedList<CoastingStretch, 4>;

/// The coefficients over ground in one stretch, for whoever watches.
template <class Watch>
[[nodiscard]] auto with_coasting_coefficients(Watch watch, const RoadLoad& road, const Slope& slope, Corner at,
                                              bool overtaken, auto calculation) {
  const auto rolling = road.rolling(watch, slope, at);
  const auto standing = [&] {
    if (slope.level()) return rolling;
    return watch.step(formula::constant_on_slope{}, rolling, road.climb(watch, slope));
  }();
  const auto moving = road.linear(watch);
  const auto along = road.quadratic(watch, at);
  const auto square = [&] {
    if (!overtaken) return along;
    return watch.step(formula::overtaken{}, along);
  }();
  if (road.head_wind() == Speed()) return calculation(standing, moving, square);
  const auto wind = watch.given("head_wind", road.head_wind());
  const ValueName constant_name("constant_in_wind", overtaken ? 2 : 0),
      linear_name("linear_in_wind", overtaken ? 2 : 0);
  const auto constant = watch.step(constant_name, formula::constant_in_wind{}, standing, square, wind);
  const auto linear = watch.step(linear_name, formula::linear_in_wind{}, moving, square, wind);
  return calculation(constant, linear, square);
}

/// The time of one stretch, for whoever watches.
template <class Watch>
[[nodiscard]] auto coasting_time_of(Watch watch, const RoadLoad& road, Mass mass, const Slope& slope, Corner at,
                                    const CoastingStretch& stretch, int index) {
  return with_coasting_coefficients(
      watch, road, slope, at, stretch.overtaken, [&](const auto& constant, const auto& linear, const auto& quadratic) {
        const auto slowed = watch.given("equivalent_mass", mass);
        const auto start = watch.given({"start_speed", index}, stretch.start);
        const auto end = watch.given({"end_speed", index}, stretch.end);
        const auto force =
            watch.step({"coasting_force", index}, formula::coasting_force{}, constant, linear, quadratic, start, end);
        const auto bend = watch.step({"coasting_bend", index}, formula::coasting_bend{}, constant, linear, quadratic,
                                     start, end, force);
        return watch.step({"coasting_time", index}, formula::coasting_time{}, slowed, start, end, force, bend);
      });
}

/// How a coast-down is to be cut so that each stretch has one polynomial, whose least value lies at one of its ends.
[[nodiscard]] inline CoastingStretches coasting_stretches(const RoadLoad& road, Speed start, Speed end,
                                                          const Slope& slope, Corner at) {
  CoastingStretches stretches;
  const Speed calm = Speed() - road.head_wind();  // at that speed the air stands still around the machine
  const auto put = [&](Speed from, Speed to, bool overtaken) {
    if (!(to < from)) return;
    const Speed crest = with_coasting_coefficients(
        Unwatched(), road, slope, at, overtaken, [](Force, ForcePerSpeed linear, LinearDensity quadratic) {
          return quadratic == LinearDensity() ? Speed() : -0.5 * (linear / quadratic);
        });
    if (to < crest && crest < from) {
      stretches.push_back({from, crest, overtaken});
      stretches.push_back({crest, to, overtaken});
    } else {
      stretches.push_back({from, to, overtaken});
    }
  };
  put(start, std::max(end, calm), false);
  put(std::min(start, calm), end, true);
  return stretches;
}

/// The whole time, for whoever watches.
template <class Watch>
[[nodiscard]] auto coast_down_time_of(Watch watch, const RoadLoad& road, Mass mass, Speed start, Speed end,
                                      const Slope& slope, Corner at) {
  const CoastingStretches stretches = coasting_stretches(road, start, end, slope, at);
  const bool several = stretches.size() > 1;
  auto time = coasting_time_of(watch, road, mass, slope, at, stretches[0], several ? 1 : 0);
  for (std::size_t i = 1; i < stretches.size(); ++i) {
    const int index = static_cast<int>(i) + 1;
    const auto after = coasting_time_of(watch, road, mass, slope, at, stretches[i], index);
    time = watch.step({"summed_time", index}, formula::summed_time{}, time, after);
  }
  return time;
}

/// Where nothing slows the machine any more, if that is anywhere from start down to end.
[[nodiscard]] inline std::optional<Speed> unresisted(const RoadLoad& road, Speed start, Speed end, const Slope& slope,
                                                     Corner at) {
  const CoastingStretches stretches = coasting_stretches(road, start, end, slope, at);
  for (const CoastingStretch& stretch : stretches)
    for (const Speed& speed : {stretch.start, stretch.end})
      if (!(road.resistance(Unwatched(), speed, slope, at) > Force())) return speed;
  return std::nullopt;
}

}  // namespace detail

/// How long a mass takes to roll from one speed down to another, 0 to 1000 km/h, clutch pulled: `mass` is what is
/// slowed, with what the wheels' inertia adds to it (equivalent mass). Or a RangeError, or an Error on a slope where
/// the road load states no mass, or where hill or wind drive it on before it is down to `end`. Error: within 4.9 ulp.
[[nodiscard]] inline Result<Duration> try_coast_down_time(const RoadLoad& road, Mass mass, Speed start, Speed end,
                                                          const Slope& slope = Slope(), Corner at = Corner::nominal) {
  if (auto error = detail::outside("mass", mass, 0.1_kg, 100000.0_kg)) return *std::move(error);
  if (auto error = detail::outside("start", start, Speed(), 1000.0_kmh)) return *std::move(error);
  if (auto error = detail::outside("end", end, Speed(), start)) return *std::move(error);
  if (auto error = road.unsloped(slope)) return *std::move(error);
  if (start == end) return Duration();
  if (const auto stuck = detail::unresisted(road, start, end, slope, at))
    return Error::value("it does not slow down to " + detail::in_words(end) + ": at " + detail::in_words(*stuck) +
                        " nothing resists any more");
  return detail::coast_down_time_of(Unwatched(), road, mass, start, end, slope, at);
}
#if LAYSHAFT_EXCEPTIONS
/// @throws RangeError or Error as `try_coast_down_time` says.
[[nodiscard]] inline Duration coast_down_time(const RoadLoad& road, Mass mass, Speed start, Speed end,
                                              const Slope& slope = Slope(), Corner at = Corner::nominal) {
  return try_coast_down_time(road, mass, start, end, slope, at).value();
}
#endif

}  // namespace layshaft
