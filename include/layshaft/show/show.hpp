// SPDX-License-Identifier: MIT
#pragma once

/// @file
/// Text for people: units to read in, cautions as sentences. Opt-in.

#include <layshaft/show/caution_text.hpp>
#include <layshaft/show/display.hpp>
