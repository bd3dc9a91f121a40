// SPDX-License-Identifier: MIT
#pragma once

/// @file
/// How numbers came about: of a set-up, a comparison, a loop, a sprocket, a tyre, a road load. Opt-in.

#include <layshaft/chain/explain.hpp>
#include <layshaft/road/explain.hpp>
#include <layshaft/setup/explain.hpp>
#include <layshaft/tyre/explain.hpp>
