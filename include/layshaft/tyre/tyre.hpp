// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/tyre/closeness.hpp>
#include <layshaft/tyre/code_designated.hpp>
#include <layshaft/tyre/designation.hpp>
#include <layshaft/tyre/dimensions.hpp>
#include <layshaft/tyre/fitness.hpp>
#include <layshaft/tyre/growth.hpp>
#include <layshaft/tyre/kinds.hpp>
#include <layshaft/tyre/legal_tread.hpp>
#include <layshaft/tyre/load_index.hpp>
#include <layshaft/tyre/measured_rollout.hpp>
#include <layshaft/tyre/rim_code.hpp>
#include <layshaft/tyre/rolling.hpp>
#include <layshaft/tyre/rolling_radius.hpp>
#include <layshaft/tyre/size.hpp>
#include <layshaft/tyre/speed_symbol.hpp>
#include <layshaft/tyre/tread.hpp>
#include <layshaft/tyre/two_tyres.hpp>

/// @file
/// Everything about tyres.
