// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/road/speed_run.hpp>
#include <layshaft/setup/on_road.hpp>

/// @file
/// A machine and a set-up from one speed to another. Apart from on_road.hpp, since quadrature takes long to compile.
namespace layshaft {

/// Time and way from speed to speed; road/speed_run.hpp.
[[nodiscard]] inline Result<SpeedRun> try_time_to_speed(const Machine& machine, const Setup& setup,
                                                        const RoadLoad& road, Speed start, Speed end,
                                                        const SpeedRunParts& how = {}) {
  return detail::ask_powertrain(machine, setup,
                                [&](const Powertrain& t) { return try_time_to_speed(t, road, start, end, how); });
}
#if LAYSHAFT_EXCEPTIONS
/// @throws Error as `try_time_to_speed` says.
[[nodiscard]] inline SpeedRun time_to_speed(const Machine& machine, const Setup& setup, const RoadLoad& road,
                                            Speed start, Speed end, const SpeedRunParts& how = {}) {
  return try_time_to_speed(machine, setup, road, start, end, how).value();
}
#endif

}  // namespace layshaft
