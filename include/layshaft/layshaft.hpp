// SPDX-License-Identifier: MIT
#pragma once

/// @file
/// Everything but the opt-in headers: choose/ (threads), io/ (Boost.JSON) and show/ (sentences).

#include <layshaft/chain/chain.hpp>
#include <layshaft/core/core.hpp>
#include <layshaft/gearing/gearing.hpp>
#include <layshaft/instrument/instrument.hpp>
#include <layshaft/road/road.hpp>
#include <layshaft/setup/setup.hpp>
#include <layshaft/tyre/tyre.hpp>
#include <layshaft/version.hpp>
#include <layshaft/wear/wear.hpp>
