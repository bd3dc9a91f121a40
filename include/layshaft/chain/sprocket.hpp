// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/chain/series.hpp>
#include <layshaft/core/band.hpp>
#include <layshaft/core/counts.hpp>
#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>

/// @file
/// The diameters of a sprocket, from the chain it carries and its teeth.
namespace layshaft {

/// The diameter of the circle on which the pins lie: the corners of a polygon with one pitch a side.
LAYSHAFT_FORMULA(inline, Length, pitch_diameter, (Length pitch, Teeth teeth), positive(pitch), sources::iso_606,
                 pitch / sin(half_turn / teeth))

/// The diameter at the bottom of the tooth gaps, in which the rollers lie.
LAYSHAFT_FORMULA(constexpr, Length, root_diameter, (Length pitch_diameter, Length roller_diameter),
                 positive(roller_diameter) && is_finite(pitch_diameter) && roller_diameter < pitch_diameter,
                 sources::iso_606, pitch_diameter - roller_diameter)

/// The least diameter over the tips of the teeth.
LAYSHAFT_FORMULA(constexpr, Length, tip_diameter_least,
                 (Length pitch_diameter, Length pitch, Teeth teeth, Length roller_diameter),
                 positive(pitch_diameter) && positive(pitch) && positive(roller_diameter), sources::iso_606,
                 pitch_diameter + pitch * (1.0 - 1.6 / teeth) - roller_diameter)

/// The greatest diameter over the tips of the teeth.
LAYSHAFT_FORMULA(constexpr, Length, tip_diameter_greatest,
                 (Length pitch_diameter, Length pitch, Length roller_diameter),
                 positive(pitch_diameter) && positive(pitch) && positive(roller_diameter), sources::iso_606,
                 pitch_diameter + 1.25 * pitch - roller_diameter)

/// A sprocket for a chain series. Every series goes with every number of teeth, so there is nothing to refuse; the
/// standard speaks of 9 to 150 teeth.
class Sprocket {
 public:
  [[nodiscard]] static Result<Sprocket> make(ChainSeries series, Teeth teeth) { return Sprocket(series, teeth); }
  constexpr Sprocket(ChainSeries series, Teeth teeth) noexcept : series_(series), teeth_(teeth) {}

  [[nodiscard]] constexpr ChainSeries series() const noexcept { return series_; }
  [[nodiscard]] constexpr Teeth teeth() const noexcept { return teeth_; }

  [[nodiscard]] Length pitch_diameter() const noexcept { return ::layshaft::pitch_diameter(series_.pitch(), teeth_); }
  [[nodiscard]] Length root_diameter() const noexcept {
    return ::layshaft::root_diameter(pitch_diameter(), series_.roller_diameter());
  }
  /// What the standard allows, from the least to the greatest; nominal is the mean of the two.
  [[nodiscard]] Band<Length> tip_diameter() const noexcept {
    const Length diameter = pitch_diameter();
    const Length least = tip_diameter_least(diameter, series_.pitch(), teeth_, series_.roller_diameter());
    const Length greatest = tip_diameter_greatest(diameter, series_.pitch(), series_.roller_diameter());
    return {least, 0.5 * (least + greatest), greatest};
  }

  friend constexpr bool operator==(Sprocket, Sprocket) noexcept = default;

 private:
  ChainSeries series_;
  Teeth teeth_;
};

}  // namespace layshaft
