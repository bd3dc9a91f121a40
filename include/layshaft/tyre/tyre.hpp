// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/tyre/code_designated.hpp>
#include <layshaft/tyre/designation.hpp>
#include <layshaft/tyre/dimensions.hpp>
#include <layshaft/tyre/glyph.hpp>
#include <layshaft/tyre/kinds.hpp>
#include <layshaft/tyre/load_index.hpp>
#include <layshaft/tyre/rim_code.hpp>
#include <layshaft/tyre/rolling.hpp>
#include <layshaft/tyre/size.hpp>
#include <layshaft/tyre/speed_symbol.hpp>

/// @file
/// Everything about tyres.
