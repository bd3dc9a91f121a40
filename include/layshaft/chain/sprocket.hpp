// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/chain/series.hpp>
#include <layshaft/chain/sprocket_measure.hpp>
#include <layshaft/chain/tooth_form.hpp>
#include <layshaft/chain/tooth_width.hpp>
#include <layshaft/core/band.hpp>
#include <layshaft/core/counts.hpp>
#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>
#include <layshaft/core/watch.hpp>

/// @file
/// A sprocket, from the chain it carries and its teeth: its diameters, what it measures, and the form of its teeth.
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

class Working;  // to explain, include <layshaft/explain.hpp>

/// A sprocket for a chain series. Every series goes with every number of teeth, so there is nothing to refuse; the
/// standard speaks of 9 to 150 teeth. Error of its pitch, root and tip diameters: within 3.7 ulp.
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
  /// The diameter over the tips to ANSI, beside the band above.
  [[nodiscard]] Length ansi_outside_diameter() const noexcept;

  /// The diameter of the pins to measure over: that of the chain's rollers.
  [[nodiscard]] constexpr Length measuring_pin() const noexcept { return series_.roller_diameter(); }
  /// What a new sprocket measures over two such pins, laid into the gaps that are opposite or nearest to it; less of
  /// it has worn off, or been cut away by the tolerance of the root.
  [[nodiscard]] Length over_pins() const noexcept;

  /// The width of a tooth, single strand; nominal is the greatest.
  [[nodiscard]] Band<Length> tooth_width() const noexcept;
  /// The radius of the arc on which a roller is seated; nominal is the mean of the two limits, here and below.
  [[nodiscard]] Band<Length> seating_radius() const noexcept;
  /// The angle over which it is seated.
  [[nodiscard]] Band<Angle> seating_angle() const noexcept;
  /// The radius of the flanks beside the seat; the least goes with the greatest seat.
  [[nodiscard]] Band<Length> flank_radius() const noexcept;
  /// How far in from the side of a tooth its rounded edge begins.
  [[nodiscard]] Length tooth_side_relief() const noexcept;

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
    return between(
        watch, at, formula::tip_diameter{}, "tip_diameter_least",
        [&](ValueName name) {
          return watch.step(name, formula::tip_diameter_least{}, diameter, of_chain, teeth, rollers);
        },
        "tip_diameter_greatest",
        [&](ValueName name) {
          return watch.step(name, formula::tip_diameter_greatest{}, diameter, of_chain, rollers);
        });
  }
  template <class Watch>
  [[nodiscard]] auto ansi_outside_diameter(Watch watch) const {
    const auto of_chain = pitch(watch);
    return watch.step(formula::ansi_outside_diameter{}, of_chain, watch.given("teeth", teeth_));
  }
  template <class Watch>
  [[nodiscard]] auto over_pins(Watch watch) const {
    const auto diameter = pitch_diameter(watch);
    const auto teeth = watch.given("teeth", teeth_);
    const auto pin = watch.looked_up("measuring_pin", series_.roller_diameter(), series_.name(),
                                     series_.source(ChainProperty::roller_diameter));
    if (teeth_.count() % 2 == 0) return watch.step("over_pins", formula::over_pins_even{}, diameter, pin);
    return watch.step("over_pins", formula::over_pins_odd{}, diameter, teeth, pin);
  }
  template <class Watch>
  [[nodiscard]] auto tooth_width(Watch watch, Corner at) const {
    return detail::tooth_width_for(watch, series_, at);
  }
  template <class Watch>
  [[nodiscard]] auto seating_radius(Watch watch, Corner at) const {
    const auto rollers = roller(watch);
    return between(
        watch, at, formula::seating_radius{}, "seating_radius_least",
        [&](ValueName name) { return watch.step(name, formula::seating_radius_least{}, rollers); },
        "seating_radius_greatest",
        [&](ValueName name) { return watch.step(name, formula::seating_radius_greatest{}, rollers); });
  }
  template <class Watch>
  [[nodiscard]] auto seating_angle(Watch watch, Corner at) const {
    const auto teeth = watch.given("teeth", teeth_);
    return between(
        watch, at, formula::seating_angle{}, "seating_angle_least",
        [&](ValueName name) { return watch.step(name, formula::seating_angle_least{}, teeth); },
        "seating_angle_greatest",
        [&](ValueName name) { return watch.step(name, formula::seating_angle_greatest{}, teeth); });
  }
  template <class Watch>
  [[nodiscard]] auto flank_radius(Watch watch, Corner at) const {
    const auto rollers = roller(watch);
    const auto teeth = watch.given("teeth", teeth_);
    return between(
        watch, at, formula::flank_radius{}, "flank_radius_least",
        [&](ValueName name) { return watch.step(name, formula::flank_radius_least{}, rollers, teeth); },
        "flank_radius_greatest",
        [&](ValueName name) { return watch.step(name, formula::flank_radius_greatest{}, rollers, teeth); });
  }
  template <class Watch>
  [[nodiscard]] auto tooth_side_relief(Watch watch) const {
    const auto of_chain = pitch(watch);
    return watch.step(formula::tooth_side_relief{}, of_chain);
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

  /// A dimension between the standard's limits: each limit by itself at the ends, where it has the name of the result,
  /// and in the middle their mean.
  template <class Watch, class Mean, class Least, class Greatest>
  [[nodiscard]] static auto between(Watch watch, Corner at, Mean mean, const char* least_name, const Least& least,
                                    const char* greatest_name, const Greatest& greatest) {
    if (at == Corner::low) return least(Mean::about.name);
    if (at == Corner::high) return greatest(Mean::about.name);
    const auto lowest = least(least_name);
    return watch.step(mean, lowest, greatest(greatest_name));
  }

  ChainSeries series_;
  Teeth teeth_;
};

inline Length Sprocket::pitch_diameter() const noexcept { return pitch_diameter(Unwatched()); }
inline Length Sprocket::root_diameter() const noexcept { return root_diameter(Unwatched()); }
inline Band<Length> Sprocket::tip_diameter() const noexcept {
  return over_runs(one_cause, [&](Corner at) { return tip_diameter(Unwatched(), at); });
}
inline Length Sprocket::ansi_outside_diameter() const noexcept { return ansi_outside_diameter(Unwatched()); }
inline Length Sprocket::over_pins() const noexcept { return over_pins(Unwatched()); }
inline Band<Length> Sprocket::tooth_width() const noexcept { return layshaft::tooth_width(series_); }
inline Band<Length> Sprocket::seating_radius() const noexcept {
  return over_runs(one_cause, [&](Corner at) { return seating_radius(Unwatched(), at); });
}
inline Band<Angle> Sprocket::seating_angle() const noexcept {
  return over_runs(one_cause, [&](Corner at) { return seating_angle(Unwatched(), at); });
}
inline Band<Length> Sprocket::flank_radius() const noexcept {
  return over_runs(one_cause, [&](Corner at) { return flank_radius(Unwatched(), at); });
}
inline Length Sprocket::tooth_side_relief() const noexcept { return tooth_side_relief(Unwatched()); }

}  // namespace layshaft
