// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/chain/adjuster.hpp>
#include <layshaft/chain/fit.hpp>
#include <layshaft/chain/loop.hpp>
#include <layshaft/chain/rounding.hpp>
#include <layshaft/chain/series.hpp>
#include <layshaft/chain/series_table.hpp>
#include <layshaft/chain/slack.hpp>
#include <layshaft/chain/sprocket.hpp>

/// @file
/// Chain series, sprockets, the closed loop, and whole links in an adjuster.
