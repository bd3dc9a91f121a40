// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/chain/sprocket.hpp>
#include <layshaft/core/counts.hpp>
#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>

/// @file
/// The form of a tooth to ANSI: half a gap is an arc on which the roller is seated, a working arc, a short straight
/// piece and the arc of the tip. The standard gives this one form, where ISO 606 gives two limits.
namespace layshaft {

namespace sources {
inline constexpr Source ansi_tooth_form{"ANSI tooth form, as in a worksheet of it", Certainty::published};
}

/// The diameter of the curve that a roller is seated on; 0.003 inch more than in proportion.
LAYSHAFT_FORMULA(constexpr, Length, ansi_seating_diameter, (Length roller_diameter), positive(roller_diameter),
                 sources::ansi_tooth_form, 1.005 * roller_diameter + 0.0762_mm)

/// How far the seating curve reaches to either side of the line that the tooth gap is symmetrical to.
LAYSHAFT_FORMULA(constexpr, Angle, ansi_seating_angle, (Teeth teeth), true, sources::ansi_tooth_form,
                 half_turn / 180.0 * (35.0 + 60.0 / teeth))

/// The angle of the working curve, which follows the seating curve.
LAYSHAFT_FORMULA(constexpr, Angle, ansi_working_angle, (Teeth teeth), true, sources::ansi_tooth_form,
                 half_turn / 180.0 * (18.0 - 56.0 / teeth))

/// How far the centre of the working curve stands from that of the roller.
LAYSHAFT_FORMULA(constexpr, Length, ansi_working_distance, (Length roller_diameter), positive(roller_diameter),
                 sources::ansi_tooth_form, 0.8 * roller_diameter)

/// The same along the gap's line.
LAYSHAFT_FORMULA(inline, Length, ansi_working_along, (Length ansi_working_distance, Angle ansi_seating_angle),
                 is_finite(ansi_working_distance) && is_finite(ansi_seating_angle), sources::ansi_tooth_form,
                 cos(ansi_seating_angle) * ansi_working_distance)

/// The same across it.
LAYSHAFT_FORMULA(inline, Length, ansi_working_across, (Length ansi_working_distance, Angle ansi_seating_angle),
                 is_finite(ansi_working_distance) && is_finite(ansi_seating_angle), sources::ansi_tooth_form,
                 sin(ansi_seating_angle) * ansi_working_distance)

/// The radius of the working curve; 0.0015 inch more than in proportion.
LAYSHAFT_FORMULA(constexpr, Length, ansi_working_radius, (Length roller_diameter), positive(roller_diameter),
                 sources::ansi_tooth_form, 1.3025 * roller_diameter + 0.0381_mm)

/// The chord of the working curve.
LAYSHAFT_FORMULA(inline, Length, ansi_working_chord, (Length roller_diameter, Teeth teeth), positive(roller_diameter),
                 sources::ansi_tooth_form,
                 (2.605 * roller_diameter + 0.0762_mm) * sin(half_turn / 180.0 * (9.0 - 28.0 / teeth)))

/// The length of the straight piece between the working curve and the tip's; below zero for very few teeth.
LAYSHAFT_FORMULA(inline, Length, ansi_flat, (Length roller_diameter, Teeth teeth), positive(roller_diameter),
                 sources::ansi_tooth_form,
                 (1.4 * sin(half_turn / 180.0 * (17.0 - 64.0 / teeth)) -
                  0.8 * sin(half_turn / 180.0 * (18.0 - 56.0 / teeth))) *
                     roller_diameter)

/// How far the centre of the tip's curve stands from that of the roller.
LAYSHAFT_FORMULA(constexpr, Length, ansi_topping_distance, (Length roller_diameter), positive(roller_diameter),
                 sources::ansi_tooth_form, 1.4 * roller_diameter)

/// The same across the gap's line.
LAYSHAFT_FORMULA(inline, Length, ansi_topping_across, (Length ansi_topping_distance, Teeth teeth),
                 is_finite(ansi_topping_distance), sources::ansi_tooth_form,
                 cos(half_turn / teeth) * ansi_topping_distance)

/// The same along it.
LAYSHAFT_FORMULA(inline, Length, ansi_topping_along, (Length ansi_topping_distance, Teeth teeth),
                 is_finite(ansi_topping_distance), sources::ansi_tooth_form,
                 sin(half_turn / teeth) * ansi_topping_distance)

/// The radius of the tip's curve; 0.0015 inch less than in proportion.
LAYSHAFT_FORMULA(inline, Length, ansi_topping_radius, (Length roller_diameter, Teeth teeth), positive(roller_diameter),
                 sources::ansi_tooth_form,
                 (0.8 * cos(half_turn / 180.0 * (18.0 - 56.0 / teeth)) +
                  1.4 * cos(half_turn / 180.0 * (17.0 - 64.0 / teeth)) - 1.3025) *
                         roller_diameter -
                     0.0381_mm)

/// How far the centre of the tip's curve stands beyond the middle of the pitch.
LAYSHAFT_FORMULA(constexpr, Length, ansi_topping_offset, (Length ansi_topping_distance, Length pitch),
                 is_finite(ansi_topping_distance) && positive(pitch), sources::ansi_tooth_form,
                 ansi_topping_distance - pitch / 2.0)

/// How high above the side of the chain's polygon a tooth would be pointed.
LAYSHAFT_FORMULA(inline, Length, ansi_topping_height, (Length ansi_topping_radius, Length ansi_topping_offset),
                 is_finite(ansi_topping_radius) && is_finite(ansi_topping_offset) &&
                     ansi_topping_radius >= ansi_topping_offset && ansi_topping_radius >= -ansi_topping_offset,
                 sources::ansi_tooth_form,
                 sqrt((ansi_topping_radius - ansi_topping_offset) * (ansi_topping_radius + ansi_topping_offset)))

/// How far that point stands from the gap's line.
LAYSHAFT_FORMULA(inline, Length, ansi_tip_distance, (Length pitch, Length ansi_topping_height, Teeth teeth),
                 positive(pitch) && is_finite(ansi_topping_height), sources::ansi_tooth_form,
                 pitch / 2.0 * cos(half_turn / teeth) + ansi_topping_height * sin(half_turn / teeth))

/// The tooth form of a sprocket to ANSI. Every sprocket has one, so there is nothing to refuse; it is meant for chains
/// of ANSI proportions and for the teeth that sprockets have, from 9 up.
class AnsiToothForm {
 public:
  constexpr explicit AnsiToothForm(Sprocket sprocket) noexcept : sprocket_(sprocket) {}
  [[nodiscard]] constexpr Sprocket sprocket() const noexcept { return sprocket_; }

  /// The diameter of the curve that a roller is seated on; 0.003 inch more than in proportion.
  [[nodiscard]] Length seating_diameter() const noexcept;
  /// How far the seating curve reaches to either side of the line that the tooth gap is symmetrical to.
  [[nodiscard]] Angle seating_angle() const noexcept;
  /// The angle of the working curve, which follows the seating curve.
  [[nodiscard]] Angle working_angle() const noexcept;
  /// How far the centre of the working curve stands from that of the roller.
  [[nodiscard]] Length working_distance() const noexcept;
  /// The same along the gap's line.
  [[nodiscard]] Length working_along() const noexcept;
  /// The same across it.
  [[nodiscard]] Length working_across() const noexcept;
  /// The radius of the working curve; 0.0015 inch more than in proportion.
  [[nodiscard]] Length working_radius() const noexcept;
  /// The chord of the working curve.
  [[nodiscard]] Length working_chord() const noexcept;
  /// The length of the straight piece between the working curve and the tip's; below zero for very few teeth.
  [[nodiscard]] Length flat() const noexcept;
  /// How far the centre of the tip's curve stands from that of the roller.
  [[nodiscard]] Length topping_distance() const noexcept;
  /// The same across the gap's line.
  [[nodiscard]] Length topping_across() const noexcept;
  /// The same along it.
  [[nodiscard]] Length topping_along() const noexcept;
  /// The radius of the tip's curve; 0.0015 inch less than in proportion.
  [[nodiscard]] Length topping_radius() const noexcept;
  /// How far the centre of the tip's curve stands beyond the middle of the pitch.
  [[nodiscard]] Length topping_offset() const noexcept;
  /// How high above the side of the chain's polygon a tooth would be pointed.
  [[nodiscard]] Length topping_height() const noexcept;
  /// How far that point stands from the gap's line.
  [[nodiscard]] Length tip_distance() const noexcept;

  /// The same for whoever watches.
  template <class Watch>
  [[nodiscard]] auto seating_diameter(Watch watch) const {
    const auto rollers = roller(watch);
    return watch.step(formula::ansi_seating_diameter{}, rollers);
  }
  template <class Watch>
  [[nodiscard]] auto seating_angle(Watch watch) const {
    const auto teeth = watch.given("teeth", sprocket_.teeth());
    return watch.step(formula::ansi_seating_angle{}, teeth);
  }
  template <class Watch>
  [[nodiscard]] auto working_angle(Watch watch) const {
    const auto teeth = watch.given("teeth", sprocket_.teeth());
    return watch.step(formula::ansi_working_angle{}, teeth);
  }
  template <class Watch>
  [[nodiscard]] auto working_distance(Watch watch) const {
    const auto rollers = roller(watch);
    return watch.step(formula::ansi_working_distance{}, rollers);
  }
  template <class Watch>
  [[nodiscard]] auto working_along(Watch watch) const {
    const auto the_working_distance = working_distance(watch);
    const auto the_seating_angle = seating_angle(watch);
    return watch.step(formula::ansi_working_along{}, the_working_distance, the_seating_angle);
  }
  template <class Watch>
  [[nodiscard]] auto working_across(Watch watch) const {
    const auto the_working_distance = working_distance(watch);
    const auto the_seating_angle = seating_angle(watch);
    return watch.step(formula::ansi_working_across{}, the_working_distance, the_seating_angle);
  }
  template <class Watch>
  [[nodiscard]] auto working_radius(Watch watch) const {
    const auto rollers = roller(watch);
    return watch.step(formula::ansi_working_radius{}, rollers);
  }
  template <class Watch>
  [[nodiscard]] auto working_chord(Watch watch) const {
    const auto rollers = roller(watch);
    const auto teeth = watch.given("teeth", sprocket_.teeth());
    return watch.step(formula::ansi_working_chord{}, rollers, teeth);
  }
  template <class Watch>
  [[nodiscard]] auto flat(Watch watch) const {
    const auto rollers = roller(watch);
    const auto teeth = watch.given("teeth", sprocket_.teeth());
    return watch.step(formula::ansi_flat{}, rollers, teeth);
  }
  template <class Watch>
  [[nodiscard]] auto topping_distance(Watch watch) const {
    const auto rollers = roller(watch);
    return watch.step(formula::ansi_topping_distance{}, rollers);
  }
  template <class Watch>
  [[nodiscard]] auto topping_across(Watch watch) const {
    const auto the_topping_distance = topping_distance(watch);
    const auto teeth = watch.given("teeth", sprocket_.teeth());
    return watch.step(formula::ansi_topping_across{}, the_topping_distance, teeth);
  }
  template <class Watch>
  [[nodiscard]] auto topping_along(Watch watch) const {
    const auto the_topping_distance = topping_distance(watch);
    const auto teeth = watch.given("teeth", sprocket_.teeth());
    return watch.step(formula::ansi_topping_along{}, the_topping_distance, teeth);
  }
  template <class Watch>
  [[nodiscard]] auto topping_radius(Watch watch) const {
    const auto rollers = roller(watch);
    const auto teeth = watch.given("teeth", sprocket_.teeth());
    return watch.step(formula::ansi_topping_radius{}, rollers, teeth);
  }
  template <class Watch>
  [[nodiscard]] auto topping_offset(Watch watch) const {
    const auto the_topping_distance = topping_distance(watch);
    const auto of_chain = pitch(watch);
    return watch.step(formula::ansi_topping_offset{}, the_topping_distance, of_chain);
  }
  template <class Watch>
  [[nodiscard]] auto topping_height(Watch watch) const {
    const auto the_topping_radius = topping_radius(watch);
    const auto the_topping_offset = topping_offset(watch);
    return watch.step(formula::ansi_topping_height{}, the_topping_radius, the_topping_offset);
  }
  template <class Watch>
  [[nodiscard]] auto tip_distance(Watch watch) const {
    const auto of_chain = pitch(watch);
    const auto the_topping_height = topping_height(watch);
    const auto teeth = watch.given("teeth", sprocket_.teeth());
    return watch.step(formula::ansi_tip_distance{}, of_chain, the_topping_height, teeth);
  }

  /// How a number came about: `explain("topping radius")`. Defined in chain/explain.hpp, which is opt-in.
  [[nodiscard]] Result<Working> try_explain(std::string_view what) const;
#if LAYSHAFT_EXCEPTIONS
  /// @throws ParseError that lists the names there are.
  [[nodiscard]] Working explain(std::string_view what) const;
#endif

  friend constexpr bool operator==(AnsiToothForm, AnsiToothForm) noexcept = default;

 private:
  [[nodiscard]] constexpr ChainSeries series() const noexcept { return sprocket_.series(); }
  template <class Watch>
  [[nodiscard]] auto pitch(Watch watch) const {
    return watch.looked_up("pitch", series().pitch(), series().name(), series().source(ChainProperty::pitch));
  }
  template <class Watch>
  [[nodiscard]] auto roller(Watch watch) const {
    return watch.looked_up("roller_diameter", series().roller_diameter(), series().name(),
                           series().source(ChainProperty::roller_diameter));
  }

  Sprocket sprocket_;
};

inline Length AnsiToothForm::seating_diameter() const noexcept { return seating_diameter(Unwatched()); }
inline Angle AnsiToothForm::seating_angle() const noexcept { return seating_angle(Unwatched()); }
inline Angle AnsiToothForm::working_angle() const noexcept { return working_angle(Unwatched()); }
inline Length AnsiToothForm::working_distance() const noexcept { return working_distance(Unwatched()); }
inline Length AnsiToothForm::working_along() const noexcept { return working_along(Unwatched()); }
inline Length AnsiToothForm::working_across() const noexcept { return working_across(Unwatched()); }
inline Length AnsiToothForm::working_radius() const noexcept { return working_radius(Unwatched()); }
inline Length AnsiToothForm::working_chord() const noexcept { return working_chord(Unwatched()); }
inline Length AnsiToothForm::flat() const noexcept { return flat(Unwatched()); }
inline Length AnsiToothForm::topping_distance() const noexcept { return topping_distance(Unwatched()); }
inline Length AnsiToothForm::topping_across() const noexcept { return topping_across(Unwatched()); }
inline Length AnsiToothForm::topping_along() const noexcept { return topping_along(Unwatched()); }
inline Length AnsiToothForm::topping_radius() const noexcept { return topping_radius(Unwatched()); }
inline Length AnsiToothForm::topping_offset() const noexcept { return topping_offset(Unwatched()); }
inline Length AnsiToothForm::topping_height() const noexcept { return topping_height(Unwatched()); }
inline Length AnsiToothForm::tip_distance() const noexcept { return tip_distance(Unwatched()); }

}  // namespace layshaft
