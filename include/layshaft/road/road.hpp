// SPDX-License-Identifier: MIT
#pragma once

/// @file
/// The road and the engine: torque over speed, what resists, coasting, limits of thrust, acceleration, gears by
/// speed; and a powertrain of them: thrust in each gear, top speed, hills, starts, runs from speed to speed.
/// Opt-in beside it: smooth_curve.hpp, thrust_diagram.hpp, ride_log.hpp with log_use.hpp and log_machine.hpp, and
/// explain.hpp.

#include <layshaft/road/acceleration.hpp>
#include <layshaft/road/air.hpp>
#include <layshaft/road/body.hpp>
#include <layshaft/road/climb.hpp>
#include <layshaft/road/coast_down.hpp>
#include <layshaft/road/coast_down_fit.hpp>
#include <layshaft/road/drag_area.hpp>
#include <layshaft/road/engine.hpp>
#include <layshaft/road/engine_curve.hpp>
#include <layshaft/road/engine_estimate.hpp>
#include <layshaft/road/gravity.hpp>
#include <layshaft/road/limits.hpp>
#include <layshaft/road/mass_table.hpp>
#include <layshaft/road/powertrain.hpp>
#include <layshaft/road/ride_load.hpp>
#include <layshaft/road/ride_profile.hpp>
#include <layshaft/road/ride_use.hpp>
#include <layshaft/road/road_load.hpp>
#include <layshaft/road/shift_points.hpp>
#include <layshaft/road/shift_rule.hpp>
#include <layshaft/road/slope.hpp>
#include <layshaft/road/speed_run.hpp>
#include <layshaft/road/standing_start.hpp>
#include <layshaft/road/surface.hpp>
#include <layshaft/road/top_speed.hpp>
