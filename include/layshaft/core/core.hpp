// SPDX-License-Identifier: MIT
#pragma once

/// @file
/// The core: quantities, counts, bands, errors, sources, and the form of a formula.

#include <layshaft/core/band.hpp>
#include <layshaft/core/checks.hpp>
#include <layshaft/core/counts.hpp>
#include <layshaft/core/error.hpp>
#include <layshaft/core/fixed_list.hpp>
#include <layshaft/core/formula.hpp>
#include <layshaft/core/glyph.hpp>
#include <layshaft/core/math.hpp>
#include <layshaft/core/quantity_text.hpp>
#include <layshaft/core/result.hpp>
#include <layshaft/core/source.hpp>
#include <layshaft/core/unit_names.hpp>
#include <layshaft/core/units.hpp>
#include <layshaft/core/utf8.hpp>
#include <layshaft/core/watch.hpp>
