// SPDX-License-Identifier: MIT
#pragma once

/// @file
/// Set-ups: machine, set-up, appraisal, comparison.

#include <layshaft/setup/appraisal.hpp>
#include <layshaft/setup/cautions.hpp>
#include <layshaft/setup/changes.hpp>
#include <layshaft/setup/comparison.hpp>
#include <layshaft/setup/contributions.hpp>
#include <layshaft/setup/costs_after.hpp>
#include <layshaft/setup/machine.hpp>
#include <layshaft/setup/on_road.hpp>
#include <layshaft/setup/over_causes.hpp>
#include <layshaft/setup/rollout.hpp>
#include <layshaft/setup/setup_parts.hpp>
#include <layshaft/setup/time_to_speed.hpp>
#include <layshaft/setup/wear_change.hpp>
#include <layshaft/setup/wear_outlook.hpp>
