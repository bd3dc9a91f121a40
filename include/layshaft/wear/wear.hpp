// SPDX-License-Identifier: MIT
#pragma once

/// @file
/// Wear: how often, how hard and in what order the teeth meet the chain, how the chain grows, how tread is lost, and
/// what all that costs. Opt-in beside it:
/// better_hunting.hpp, stretch_fit.hpp.

#include <layshaft/wear/break_even.hpp>
#include <layshaft/wear/chain_stretch.hpp>
#include <layshaft/wear/contacts.hpp>
#include <layshaft/wear/hunting.hpp>
#include <layshaft/wear/joint_wear.hpp>
#include <layshaft/wear/material.hpp>
#include <layshaft/wear/replace_by.hpp>
#include <layshaft/wear/replacement_plan.hpp>
#include <layshaft/wear/road_distance.hpp>
#include <layshaft/wear/running_cost.hpp>
#include <layshaft/wear/tension.hpp>
#include <layshaft/wear/tooth_rate.hpp>
#include <layshaft/wear/tooth_wear.hpp>
#include <layshaft/wear/tooth_weight.hpp>
#include <layshaft/wear/tread_rate.hpp>
