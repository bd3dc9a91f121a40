// SPDX-License-Identifier: MIT
#pragma once

/// @file
/// The instrument: what the speedometer and the odometer show, and whether the law allows it.

#include <layshaft/instrument/legal_limits.hpp>
#include <layshaft/instrument/reading.hpp>
#include <layshaft/instrument/speedometer.hpp>
#include <layshaft/instrument/speedometer_reading.hpp>
