// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/chain/adjuster.hpp>
#include <layshaft/chain/ansi_tooth_form.hpp>
#include <layshaft/chain/drive.hpp>
#include <layshaft/chain/efficiency.hpp>
#include <layshaft/chain/envelope.hpp>
#include <layshaft/chain/f4.hpp>
#include <layshaft/chain/fit.hpp>
#include <layshaft/chain/fit_chain.hpp>
#include <layshaft/chain/interchange.hpp>
#include <layshaft/chain/listings.hpp>
#include <layshaft/chain/loads.hpp>
#include <layshaft/chain/loop.hpp>
#include <layshaft/chain/mesh.hpp>
#include <layshaft/chain/polygon.hpp>
#include <layshaft/chain/power_rating.hpp>
#include <layshaft/chain/rounding.hpp>
#include <layshaft/chain/series.hpp>
#include <layshaft/chain/series_table.hpp>
#include <layshaft/chain/slack.hpp>
#include <layshaft/chain/slack_through_travel.hpp>
#include <layshaft/chain/sprocket.hpp>
#include <layshaft/chain/sprocket_measure.hpp>
#include <layshaft/chain/squat.hpp>
#include <layshaft/chain/suspension.hpp>
#include <layshaft/chain/tension.hpp>
#include <layshaft/chain/tooth_form.hpp>
#include <layshaft/chain/tooth_shares.hpp>
#include <layshaft/chain/tooth_tolerance.hpp>
#include <layshaft/chain/tooth_width.hpp>

/// @file
/// Chain series, sprockets, the closed loop, whole links in an adjuster; slack through the travel, room, squat; pulls,
/// strength, losses.
