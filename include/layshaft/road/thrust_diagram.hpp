// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/road/top_speed.hpp>

#include <string>
#include <utility>
#include <vector>

/// @file
/// Thrust over speed, gear by gear, and what is left of it: the points of a picture. Opt-in: it allocates.
namespace layshaft {

/// One point of a gear's line, full throttle, at nominal causes but for the thrust.
struct ThrustPoint {
  Speed speed;
  AngularSpeed engine_speed;
  Band<Force> thrust;
  Force resistance;
  Force excess;  ///< thrust beyond what resists; below zero where the gear does not hold the speed

  friend bool operator==(const ThrustPoint&, const ThrustPoint&) noexcept = default;
};
/// The points of each gear from first up, from the lowest speed it pulls at to its highest.
using ThrustDiagram = std::vector<std::vector<ThrustPoint>>;

/// The thrust of every gear over speed on a road, so many points a gear, evenly over the engine's speed: 2 to 10,000.
/// Or a RangeError, or an Error on a slope where no mass is stated.
[[nodiscard]] inline Result<ThrustDiagram> try_thrust_diagram(const Powertrain& train, const RoadLoad& road,
                                                              const Slope& slope = Slope(), int points = 61) {
  constexpr int most = 10000;
  if (points < 2 || points > most)
    return Error::range("points", std::to_string(points), "2 to " + std::to_string(most));
  if (auto error = detail::no_mass(train, road, slope)) return *std::move(error);
  const RoadLoad laden = detail::laden_road(train, road);
  ThrustDiagram diagram;
  for (int gear = 1; gear <= train.gears(); ++gear) {
    std::vector<ThrustPoint> line;
    for (int i = 0; i < points; ++i) {
      const AngularSpeed turning =
          train.slowest_pull() + double(i) / double(points - 1) * (train.fastest() - train.slowest_pull());
      const Speed speed = train.speed(turning, gear, Corner::nominal);
      const Band<Force> thrust = *try_thrust(train, gear, speed);
      const Force resistance = laden.resistance(Unwatched(), speed, slope, Corner::nominal);
      line.push_back({speed, turning, thrust, resistance, thrust.nominal - resistance});
    }
    diagram.push_back(std::move(line));
  }
  return diagram;
}
#if LAYSHAFT_EXCEPTIONS
/// @throws RangeError or Error as `try_thrust_diagram` says.
[[nodiscard]] inline ThrustDiagram thrust_diagram(const Powertrain& train, const RoadLoad& road,
                                                  const Slope& slope = Slope(), int points = 61) {
  return try_thrust_diagram(train, road, slope, points).value();
}
#endif

}  // namespace layshaft
