// SPDX-License-Identifier: MIT
#pragma once

/// @file
/// Gearing: ratios, gearboxes, road speed and engine speed.

#include <layshaft/gearing/change.hpp>
#include <layshaft/gearing/contribution.hpp>
#include <layshaft/gearing/downshift.hpp>
#include <layshaft/gearing/gear_steps.hpp>
#include <layshaft/gearing/gearbox.hpp>
#include <layshaft/gearing/ratio.hpp>
#include <layshaft/gearing/road_speeds.hpp>
#include <layshaft/gearing/rule_of_thumb.hpp>
#include <layshaft/gearing/speed.hpp>
