// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/counts.hpp>
#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>

/// @file
/// What a sprocket measures over two pins laid into its gaps, and over its tips as ANSI has it.
namespace layshaft {

namespace sources {
inline constexpr Source ansi_outside_diameter{"ANSI B29.1, outside diameter of a turned sprocket",
                                              Certainty::from_memory};
}  // namespace sources

/// Over two pins in opposite gaps, of an even number of teeth.
LAYSHAFT_FORMULA(constexpr, Length, over_pins_even, (Length pitch_diameter, Length measuring_pin),
                 positive(pitch_diameter) && positive(measuring_pin), sources::geometry, pitch_diameter + measuring_pin)

/// Over two pins in the gaps that are nearest to opposite, of an odd number of teeth: they stand half a gap aside.
LAYSHAFT_FORMULA(inline, Length, over_pins_odd, (Length pitch_diameter, Teeth teeth, Length measuring_pin),
                 positive(pitch_diameter) && positive(measuring_pin), sources::geometry,
                 cos(half_turn / (2.0 * teeth)) * pitch_diameter + measuring_pin)

/// The diameter over the tips of an ANSI sprocket that is turned before its teeth are cut: three tenths of a pitch
/// outside the polygon of its chain.
LAYSHAFT_FORMULA(inline, Length, ansi_outside_diameter, (Length pitch, Teeth teeth), positive(pitch),
                 sources::ansi_outside_diameter, pitch*(0.6 + cos(half_turn / teeth) / sin(half_turn / teeth)))

}  // namespace layshaft
