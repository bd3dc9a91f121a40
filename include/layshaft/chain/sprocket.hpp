// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/chain/series.hpp>
#include <layshaft/core/band.hpp>
#include <layshaft/core/counts.hpp>
#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>
#include <layshaft/core/watch.hpp>

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

/// The middle of what is allowed.
LAYSHAFT_FORMULA(constexpr, Length, tip_diameter, (Length tip_diameter_least, Length tip_diameter_greatest),
                 is_finite(tip_diameter_least) && is_finite(tip_diameter_greatest), sources::iso_606,
                 (tip_diameter_least + tip_diameter_greatest) / 2.0)

namespace detail {
/// The greatest tip diameter for whoever watches.
template <class Watch, class Diameter, class Pitch>
[[nodiscard]] constexpr auto greatest_tip(Watch watch, ValueName name, const Diameter& pitch_diameter,
                                          const Pitch& pitch, ChainSeries series) {
  return watch.step(name, formula::tip_diameter_greatest{}, pitch_diameter, pitch,
                    watch.looked_up("roller_diameter", series.roller_diameter(), series.name(),
                                    series.source(ChainProperty::roller_diameter)));
}
}  // namespace detail

class Working;

/// A sprocket for a chain series. Every series goes with every number of teeth, so there is nothing to refuse; the
/// standard speaks of 9 to 150 teeth.
class Sprocket {
 public:
  [[nodiscard]] static Result<Sprocket> make(ChainSeries series, Teeth teeth) { return Sprocket(series, teeth); }
  constexpr Sprocket(ChainSeries series, Teeth teeth) noexcept : series_(series), teeth_(teeth) {}

  [[nodiscard]] constexpr ChainSeries series() const noexcept { return series_; }
  [[nodiscard]] constexpr Teeth teeth() const noexcept { return teeth_; }

  [[nodiscard]] Length pitch_diameter() const noexcept;
  [[nodiscard]] Length root_diameter() const noexcept;
  /// What the standard allows, from the least to the greatest; nominal is the mean of the two.
  [[nodiscard]] Band<Length> tip_diameter() const noexcept;

  /// The same for whoever watches.
  template <class Watch>
  [[nodiscard]] auto pitch_diameter(Watch watch) const {
    const auto of_chain = pitch(watch);
    return watch.step(formula::pitch_diameter{}, of_chain, watch.given("teeth", teeth_));
  }
  template <class Watch>
  [[nodiscard]] auto root_diameter(Watch watch) const {
    const auto diameter = pitch_diameter(watch);
    return watch.step(formula::root_diameter{}, diameter, roller(watch));
  }
  template <class Watch>
  [[nodiscard]] auto tip_diameter(Watch watch, Corner at) const {
    const auto of_chain = pitch(watch);
    const auto teeth = watch.given("teeth", teeth_);
    const auto diameter = pitch_diameter(watch);
    const auto rollers = roller(watch);
    const auto least = [&](ValueName name) {
      return watch.step(name, formula::tip_diameter_least{}, diameter, of_chain, teeth, rollers);
    };
    const auto greatest = [&](ValueName name) {
      return watch.step(name, formula::tip_diameter_greatest{}, diameter, of_chain, rollers);
    };
    if (at == Corner::low) return least("tip_diameter");
    if (at == Corner::high) return greatest("tip_diameter");
    const auto lowest = least("tip_diameter_least");
    return watch.step(formula::tip_diameter{}, lowest, greatest("tip_diameter_greatest"));
  }

  /// How a diameter came about: `explain("tip diameter")`. Defined in chain/explain.hpp, which is opt-in.
  [[nodiscard]] Result<Working> try_explain(std::string_view what) const;
#if LAYSHAFT_EXCEPTIONS
  /// @throws ParseError that lists the names there are.
  [[nodiscard]] Working explain(std::string_view what) const;
#endif

  friend constexpr bool operator==(Sprocket, Sprocket) noexcept = default;

 private:
  template <class Watch>
  [[nodiscard]] auto pitch(Watch watch) const {
    return watch.looked_up("pitch", series_.pitch(), series_.name(), series_.source(ChainProperty::pitch));
  }
  template <class Watch>
  [[nodiscard]] auto roller(Watch watch) const {
    return watch.looked_up("roller_diameter", series_.roller_diameter(), series_.name(),
                           series_.source(ChainProperty::roller_diameter));
  }

  ChainSeries series_;
  Teeth teeth_;
};

inline Length Sprocket::pitch_diameter() const noexcept { return pitch_diameter(Unwatched()); }
inline Length Sprocket::root_diameter() const noexcept { return root_diameter(Unwatched()); }
inline Band<Length> Sprocket::tip_diameter() const noexcept {
  return over_runs(one_cause, [&](Corner at) { return tip_diameter(Unwatched(), at); });
}

}  // namespace layshaft
