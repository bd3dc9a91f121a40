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

namespace sources {
inline constexpr Source ansi_b29_1_sprocket{"ANSI B29.1, outside diameter of a sprocket with topping hob cut teeth",
                                            Certainty::from_memory};
}

/// Measured over two pins as thick as the rollers, laid in opposite gaps: an even number of teeth.
LAYSHAFT_FORMULA(constexpr, Length, over_pins_even, (Length pitch_diameter, Length roller_diameter),
                 positive(pitch_diameter) && positive(roller_diameter), sources::geometry,
                 pitch_diameter + roller_diameter)

/// The same of an odd number of teeth, where the second pin lies next to the gap that is not opposite.
LAYSHAFT_FORMULA(inline, Length, over_pins_odd, (Length pitch_diameter, Teeth teeth, Length roller_diameter),
                 positive(pitch_diameter) && positive(roller_diameter), sources::geometry,
                 cos(half_turn / (2.0 * teeth)) * pitch_diameter + roller_diameter)

/// Width of a tooth of a single-strand sprocket, from the share of the chain's inner width that the standard gives it.
// clang-format off
LAYSHAFT_FORMULA(constexpr, Length, tooth_width, (Length inner_width, double tooth_width_share),
                 positive(inner_width) && positive(tooth_width_share), sources::iso_606,
                 tooth_width_share * inner_width)
// clang-format on

/// The share of the chain's inner width that a single-strand tooth fills: 0.93 up to a pitch of 12.7 mm, 0.95 above.
[[nodiscard]] constexpr double tooth_width_share(Length pitch) noexcept { return pitch <= 12.7001_mm ? 0.93 : 0.95; }

/// The American standard's outside diameter, beside the limits of ISO 606.
LAYSHAFT_FORMULA(inline, Length, ansi_outside_diameter, (Length pitch, Teeth teeth), positive(pitch),
                 sources::ansi_b29_1_sprocket, pitch*(0.6 + cos(half_turn / teeth) / sin(half_turn / teeth)))

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

  /// Measured over pins as thick as the rollers, with a calliper: what tells a worn sprocket from a new one.
  [[nodiscard]] Length over_pins() const noexcept;
  /// By the American standard, beside `tip_diameter`.
  [[nodiscard]] Length ansi_outside_diameter() const noexcept;
  /// Width of a tooth, single strand.
  [[nodiscard]] Length tooth_width() const noexcept;

  /// The same for whoever watches.
  template <class Watch>
  [[nodiscard]] auto over_pins(Watch watch) const {
    const auto diameter = pitch_diameter(watch);
    const auto rollers = roller(watch);
    if (teeth_.count() % 2 == 0) return watch.step("over_pins", formula::over_pins_even{}, diameter, rollers);
    const auto teeth = watch.given("teeth", teeth_);
    return watch.step("over_pins", formula::over_pins_odd{}, diameter, teeth, rollers);
  }
  template <class Watch>
  [[nodiscard]] auto ansi_outside_diameter(Watch watch) const {
    const auto of_chain = pitch(watch);
    return watch.step(formula::ansi_outside_diameter{}, of_chain, watch.given("teeth", teeth_));
  }
  template <class Watch>
  [[nodiscard]] auto tooth_width(Watch watch) const {
    const auto inner = watch.looked_up("inner_width", series_.inner_width(), series_.name(),
                                       series_.source(ChainProperty::inner_width));
    const auto share = watch.looked_up("tooth_width_share", tooth_width_share(series_.pitch()),
                                       series_.pitch() <= 12.7001_mm ? "pitch up to 12.7 mm" : "pitch above 12.7 mm",
                                       sources::iso_606);
    return watch.step(formula::tooth_width{}, inner, share);
  }
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
inline Length Sprocket::over_pins() const noexcept { return over_pins(Unwatched()); }
inline Length Sprocket::ansi_outside_diameter() const noexcept { return ansi_outside_diameter(Unwatched()); }
inline Length Sprocket::tooth_width() const noexcept { return tooth_width(Unwatched()); }
inline Band<Length> Sprocket::tip_diameter() const noexcept {
  return over_runs(one_cause, [&](Corner at) { return tip_diameter(Unwatched(), at); });
}

}  // namespace layshaft
