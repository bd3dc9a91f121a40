// SPDX-License-Identifier: MIT
#pragma once

/// @file
/// Wear: how often, how hard and in what order the teeth meet the chain.

#include <layshaft/wear/contacts.hpp>
#include <layshaft/wear/hunting.hpp>
#include <layshaft/wear/tension.hpp>
#include <layshaft/wear/tooth_wear.hpp>
