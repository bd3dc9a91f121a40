// SPDX-License-Identifier: MIT
#pragma once

/// @file
/// Text for people: units to read in, cautions as sentences, formulas in their symbols, workings step by step. Opt-in.

#include <layshaft/show/caution_text.hpp>
#include <layshaft/show/display.hpp>
#include <layshaft/show/escape.hpp>
#include <layshaft/show/evaluation.hpp>
#include <layshaft/show/expression.hpp>
#include <layshaft/show/formula_text.hpp>
#include <layshaft/show/step_text.hpp>
#include <layshaft/show/working_text.hpp>
