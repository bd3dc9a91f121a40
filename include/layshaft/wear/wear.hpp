// SPDX-License-Identifier: MIT
#pragma once

/// @file
/// Wear: how often, how hard and in what order the teeth meet the chain, and how the chain grows. Opt-in beside it:
/// better_hunting.hpp, stretch_fit.hpp.

#include <layshaft/wear/chain_stretch.hpp>
#include <layshaft/wear/contacts.hpp>
#include <layshaft/wear/hunting.hpp>
#include <layshaft/wear/joint_wear.hpp>
#include <layshaft/wear/material.hpp>
#include <layshaft/wear/tension.hpp>
#include <layshaft/wear/tooth_rate.hpp>
#include <layshaft/wear/tooth_wear.hpp>
#include <layshaft/wear/tooth_weight.hpp>
