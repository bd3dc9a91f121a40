// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/chain/series.hpp>
#include <layshaft/core/checks.hpp>
#include <layshaft/core/counts.hpp>
#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>

#include <algorithm>  // min
#include <string>
#include <string_view>

/// @file
/// The power that industry rates a chain for, one strand, on a drive that runs 15,000 hours, lubricated, without shock.
/// Context, never a verdict: motorcycle chains carry far more for far shorter.
namespace layshaft {

namespace sources {
inline constexpr Source ansi_b29_1_power{"ANSI B29.1, horsepower ratings of single-strand roller chain",
                                         Certainty::published};
}

/// Rated power as the link plates' fatigue limits it: at low speed.
LAYSHAFT_FORMULA(inline, Power, plate_rating,
                 (double plate_constant, Length pitch, Teeth teeth, AngularSpeed shaft_speed),
                 positive(plate_constant) && positive(pitch) && positive(shaft_speed), sources::ansi_b29_1_power,
                 plate_constant* to_the(teeth / 1.0, 1.08) * to_the(shaft_speed / 1.0_rpm, 0.9) *
                     to_the(pitch / 1.0_inch, 3.0 - 0.07 * (pitch / 1.0_inch)) * 1.0_hp)

/// Rated power as the rollers' and bushes' impacts limit it: at high speed.
LAYSHAFT_FORMULA(inline, Power, roller_rating,
                 (double roller_constant, Length pitch, Teeth teeth, AngularSpeed shaft_speed),
                 positive(roller_constant) && positive(pitch) && positive(shaft_speed), sources::ansi_b29_1_power,
                 1000.0 * roller_constant * to_the(teeth / 1.0, 1.5) * to_the(pitch / 1.0_inch, 0.8) /
                     to_the(shaft_speed / 1.0_rpm, 1.5) * 1.0_hp)

/// The constants of both ratings: plates, then rollers and bushes.
struct RatingConstants {
  double plate;
  double roller;
};

/// The constants for a chain by its ANSI number or ISO name; every other chain is rated like the standard's own of its
/// pitch.
[[nodiscard]] constexpr RatingConstants rating_constants(const ChainSeries& series) noexcept {
  const std::string_view name = series.name();
  if (name == "085") return {0.0022, 3.4};                   // 41, the light one
  if (name == "04C" || name == "06C") return {0.004, 29.0};  // 25 and 35, rollerless
  return {0.004, 17.0};
}

/// The rating, both branches and the one that governs.
struct PowerRating {
  Power plate;      ///< as the plates limit it
  Power roller;     ///< as rollers and bushes limit it
  Power governing;  ///< the lower

  [[nodiscard]] constexpr std::string_view governed_by() const noexcept {
    return plate <= roller ? "plates" : "rollers and bushes";
  }
  friend constexpr bool operator==(const PowerRating&, const PowerRating&) noexcept = default;
};

/// Both branches of the rating for the smaller sprocket's teeth and speed; or a RangeError for a shaft speed that is
/// not 1 to 30,000 rpm. Motorcycle and B series are not in the standard: theirs is what a chain of their pitch would
/// have.
[[nodiscard]] inline Result<PowerRating> try_power_ratings(const ChainSeries& series, Teeth teeth,
                                                           AngularSpeed shaft_speed) {
  if (auto error = detail::outside("shaft_speed", shaft_speed, 1.0_rpm, 30000.0_rpm)) return *std::move(error);
  const RatingConstants constants = rating_constants(series);
  const Power plate = plate_rating(constants.plate, series.pitch(), teeth, shaft_speed);
  const Power roller = roller_rating(constants.roller, series.pitch(), teeth, shaft_speed);
  return PowerRating{plate, roller, std::min(plate, roller)};
}
/// The rated power; errors as above.
[[nodiscard]] inline Result<Power> try_power_rating(const ChainSeries& series, Teeth teeth, AngularSpeed shaft_speed) {
  const auto ratings = try_power_ratings(series, teeth, shaft_speed);
  if (!ratings) return ratings.error();
  return ratings->governing;
}
#if LAYSHAFT_EXCEPTIONS
/// @throws RangeError as `try_power_ratings` says.
[[nodiscard]] inline PowerRating power_ratings(const ChainSeries& series, Teeth teeth, AngularSpeed shaft_speed) {
  return try_power_ratings(series, teeth, shaft_speed).value();
}
[[nodiscard]] inline Power power_rating(const ChainSeries& series, Teeth teeth, AngularSpeed shaft_speed) {
  return try_power_rating(series, teeth, shaft_speed).value();
}
#endif

/// The rating over plain numbers, for arrays: as the standard's own chain of a pitch, in inches, has it.
[[nodiscard]] inline Power power_rating_of_pitch(Length pitch, Teeth teeth, AngularSpeed shaft_speed) noexcept {
  return std::min(plate_rating(0.004, pitch, teeth, shaft_speed), roller_rating(17.0, pitch, teeth, shaft_speed));
}

}  // namespace layshaft
