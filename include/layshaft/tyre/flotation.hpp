// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>
#include <layshaft/core/source.hpp>
#include <layshaft/core/units.hpp>

/// @file
/// The overall diameter of flotation tyres, which their marking tells: `31x10.50R15LT` is called 31 inches high.
namespace layshaft {

/// Where the limits come from. The marking is a round number; the design diameter that the standards list stands about
/// half an inch under it. Least and greatest diameter are those of the metric sizes' section heights, which stand in
/// for limits that no source at hand gives. So the band errs on the wide side.
inline constexpr Source flotation_source{
    "flotation marking; limits: half an inch under it, and those of metric section heights", Certainty::from_memory};

/// How far the design diameter may stand under the marking.
inline constexpr Length flotation_undersize = 0.5 * units::inch;

/// Overall diameter of a flotation tyre that stands so far under its marking.
LAYSHAFT_FORMULA(constexpr, Length, flotation_diameter, (Length marked_diameter, Length undersize),
                 positive(marked_diameter) && is_finite(undersize) && undersize >= 0.0_mm &&
                     marked_diameter > undersize,
                 flotation_source, marked_diameter - undersize)

}  // namespace layshaft
