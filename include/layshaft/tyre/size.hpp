// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/band.hpp>
#include <layshaft/core/result.hpp>
#include <layshaft/core/source.hpp>
#include <layshaft/core/units.hpp>
#include <layshaft/core/watch.hpp>
#include <layshaft/tyre/canonical.hpp>
#include <layshaft/tyre/code_designated.hpp>
#include <layshaft/tyre/cycle_rim.hpp>
#include <layshaft/tyre/designation.hpp>
#include <layshaft/tyre/dimensions.hpp>
#include <layshaft/tyre/flotation.hpp>
#include <layshaft/tyre/kinds.hpp>
#include <layshaft/tyre/load_index.hpp>
#include <layshaft/tyre/nearest_markings.hpp>
#include <layshaft/tyre/rim_code.hpp>
#include <layshaft/tyre/speed_symbol.hpp>

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>  // std::in_place

/// @file
/// A tyre's size, made of the marking on its side wall.
namespace layshaft {

class TyreSize;
class Working;  // to explain, include <layshaft/explain.hpp>
inline namespace literals {
consteval TyreSize operator""_tyre(const char* text, std::size_t length);
}

/// What a tyre's marking says, and the dimensions that follow from it. Always valid: it is only made from a text that
/// could be read, `110/90-18 M/C 61R TL`; designation.hpp has the grammar. It allocates nothing.
///
/// Two are equal when they print the same and are for the same use; so the week of manufacture counts, and `undated()`
/// compares without it. The use is no part of the marking, and only lifts the upper limit of the overall diameter.
class TyreSize {
 public:
  /// Reads a designation, or tells in a ParseError at which byte it cannot be one.
  [[nodiscard]] static Result<TyreSize> make(std::string_view text, TyreUse use = TyreUse::road) {
    detail::DesignationReader reader(text);
    if (reader.read()) return TyreSize(reader.designation(), use);
    const detail::DesignationFault& fault = reader.fault();
    return Error::parse(text, fault.position, fault.problem, detail::expected_in_words(fault, text));
  }
#if LAYSHAFT_EXCEPTIONS
  /// Reads a designation.
  /// @throws ParseError where the text is none.
  explicit constexpr TyreSize(std::string_view text, TyreUse use = TyreUse::road) : use_(use) {
    detail::DesignationReader reader(text);
    if (!reader.read()) raise(make(text).error());
    designation_ = reader.designation();
  }
#endif

  /// The size as it is marked, in canonical order and spacing; `make(designation(), use())` gives the same size back.
  [[nodiscard]] std::string designation() const { return detail::canonical(designation_); }

  [[nodiscard]] constexpr TyreNotation notation() const noexcept { return designation_.notation; }
  /// How the carcass is built; cycle tyres are diagonal, though their marking does not say so.
  [[nodiscard]] constexpr TyreConstruction construction() const noexcept { return designation_.construction; }
  [[nodiscard]] constexpr TyreUse use() const noexcept { return use_; }
  /// Marked ZR, the radial for speeds above 240 km/h.
  [[nodiscard]] constexpr bool zr() const noexcept { return designation_.zr; }
  /// Marked M/C, for motorcycles.
  [[nodiscard]] constexpr bool motorcycle() const noexcept { return designation_.motorcycle; }
  [[nodiscard]] constexpr TyreTube tube() const noexcept { return designation_.tube; }
  /// Marked REINF, reinforced.
  [[nodiscard]] constexpr bool reinforced() const noexcept { return designation_.reinforced; }
  /// Marked M+S, mud and snow.
  [[nodiscard]] constexpr bool winter() const noexcept { return designation_.winter; }
  /// Marked MST, for several kinds of service.
  [[nodiscard]] constexpr bool multi_service() const noexcept { return designation_.multi_service; }
  /// Marked NHS, not for highway service.
  [[nodiscard]] constexpr bool not_for_highway() const noexcept { return designation_.not_for_highway; }
  /// What the letters P, LT, C or AT in the size say.
  [[nodiscard]] constexpr TyreVehicle vehicle() const noexcept { return designation_.vehicle; }
  /// The ply rating, 6 of 6PR: a grade of strength, no longer a count of plies. None where the marking has none.
  [[nodiscard]] constexpr std::optional<int> ply_rating() const noexcept { return marked(designation_.ply_rating); }
  /// The week of manufacture, where the marking has a DOT code.
  [[nodiscard]] constexpr std::optional<TyreWeek> made() const noexcept {
    if (designation_.week < 0) return std::nullopt;
    return TyreWeek{designation_.week, designation_.year};
  }
  /// The same tyre without its week of manufacture.
  [[nodiscard]] constexpr TyreSize undated() const noexcept {
    TyreSize size = *this;
    size.designation_.week = size.designation_.year = -1;
    return size;
  }

  /// The nominal section width: as marked, or from the table where the notation is code or lettered.
  [[nodiscard]] constexpr Length section_width() const noexcept {
    switch (notation()) {
      case TyreNotation::metric: break;
      case TyreNotation::code:
      case TyreNotation::lettered: return listed().section_width;
      case TyreNotation::flotation: return designation_.width / 100.0 * units::inch;
      case TyreNotation::cycle: return cycle_width();
    }
    return designation_.width * 1.0 * units::mm;
  }
  /// The aspect ratio in percent, as marked; none where the notation has none.
  [[nodiscard]] constexpr std::optional<double> aspect_ratio() const noexcept {
    return designation_.aspect >= 0 ? std::optional<double>(designation_.aspect) : std::nullopt;
  }
  /// The rim code, as marked; none where the notation has none, which is a cycle's.
  [[nodiscard]] constexpr std::optional<double> rim_code() const noexcept {
    return cycle() ? std::nullopt : std::optional<double>(rim().code);
  }
  /// The rim's nominal diameter; of a cycle, the diameter its bead sits on.
  [[nodiscard]] constexpr Length rim_diameter() const noexcept {
    return cycle() ? bead_seat().millimetres * 1.0 * units::mm : rim().diameter;
  }

  /// The overall diameter of a new tyre, free of load: what the marking means, and the least and the most that a tyre
  /// with this marking may have. A special use tyre whose table states no limit of its own has that of the metric
  /// sizes: 1.12 of the section height; so has a flotation size. A snow tyre may be 1 % taller than a road tyre. A
  /// cycle size means a section as high as wide, within a tenth, whatever its use.
  [[nodiscard]] constexpr Band<Length> overall_diameter() const noexcept;
  /// The same at one corner of the marking's tolerance, for whoever watches.
  template <class Watch>
  [[nodiscard]] constexpr auto overall_diameter(Watch watch, Corner size) const {
    if (use_ != TyreUse::snow || size != Corner::high || cycle())
      return diameter_by_notation(watch, "overall_diameter", size);
    const auto on_the_road = diameter_by_notation(watch, "overall_diameter_limit", size);
    const auto allowance = watch.looked_up("snow_allowance", snow_allowance, to_string(use_), snow_allowance_source);
    return watch.step("overall_diameter", formula::snow_diameter_limit{}, on_the_road, allowance);
  }

  /// How a dimension came about: `explain("overall diameter")`, "circumference" or one of the radii. Defined in
  /// tyre/explain.hpp, which is opt-in.
  [[nodiscard]] Result<Working> try_explain(std::string_view what) const;
#if LAYSHAFT_EXCEPTIONS
  /// @throws ParseError that lists the names there are.
  [[nodiscard]] Working explain(std::string_view what) const;
#endif

  /// The load index, where the marking has a service description; load_capacity gives its mass.
  [[nodiscard]] constexpr std::optional<int> load_index() const noexcept { return marked(designation_.load_index); }
  /// The load index behind the stroke, for each tyre of twin wheels, where the marking has two.
  [[nodiscard]] constexpr std::optional<int> second_load_index() const noexcept {
    return marked(designation_.second_load_index);
  }
  /// The speed symbol, where the marking has a service description.
  [[nodiscard]] constexpr std::optional<SpeedSymbol> speed_symbol() const noexcept {
    if (designation_.speed_symbol < 0) return std::nullopt;
    return std::optional<SpeedSymbol>(std::in_place, speed_symbols[designation_.speed_symbol]);
  }
  /// The service description stands in brackets: the tyre is made for speeds above its symbol's, and its maker says
  /// which.
  [[nodiscard]] constexpr bool beyond_symbol() const noexcept { return designation_.beyond_symbol; }

  /// Where the dimensions come from, and how sure they are: the nominal rim diameter and the limits of the overall
  /// diameter are from memory, and so is every table of them.
  [[nodiscard]] constexpr Source source() const noexcept {
    switch (notation()) {
      case TyreNotation::metric: break;
      case TyreNotation::code:
      case TyreNotation::lettered: return code_designated_source;
      case TyreNotation::flotation: return flotation_source;
      case TyreNotation::cycle: return cycle_height_source;
    }
    return sources::iso_5751;
  }

  friend constexpr bool operator==(const TyreSize&, const TyreSize&) noexcept = default;

 private:
  friend consteval TyreSize literals::operator""_tyre(const char* text, std::size_t length);

  constexpr TyreSize(const detail::Designation& designation, TyreUse use) noexcept
      : designation_(designation), use_(use) {}

  [[nodiscard]] static constexpr std::optional<int> marked(int number) noexcept {
    return number >= 0 ? std::optional<int>(number) : std::nullopt;
  }

  template <class Watch>
  [[nodiscard]] constexpr auto diameter_by_notation(Watch watch, ValueName name, Corner size) const {
    switch (notation()) {
      case TyreNotation::metric: break;
      case TyreNotation::code:
      case TyreNotation::lettered: return listed_diameter(watch, name, size);
      case TyreNotation::flotation: return flotation_diameter(watch, name, size);
      case TyreNotation::cycle: return cycle_diameter(watch, name, size);
    }
    return marked_diameter(watch, name, size);
  }
  template <class Watch>
  [[nodiscard]] constexpr auto watched_rim(Watch watch) const {
    return watch.looked_up("rim_diameter", rim_diameter(), rim().name, rim_diameter_source);
  }
  /// The section height over its nominal value, at a corner of the metric sizes' limits.
  [[nodiscard]] constexpr double limit_factor(Corner size) const noexcept {
    return size == Corner::low ? least_height_factor : size == Corner::high ? greatest_height_factor(use_) : 1.0;
  }
  template <class Watch>
  [[nodiscard]] constexpr auto marked_diameter(Watch watch, ValueName name, Corner size) const {
    const auto rim = watched_rim(watch);
    const auto width = watch.given("section_width", section_width(), sources::marking);
    const auto aspect = watch.given("aspect_ratio", double(designation_.aspect), sources::marking);
    const auto height = watch.step(formula::section_height{}, width, aspect);
    const auto of_nominal =
        watch.looked_up("height_factor", limit_factor(size), to_string(use_), diameter_limit_source);
    return watch.step(name, formula::overall_diameter_limit{}, rim, height, of_nominal);
  }
  template <class Watch>
  [[nodiscard]] constexpr auto flotation_diameter(Watch watch, ValueName name, Corner size) const {
    const Length below = size == Corner::low ? flotation_undersize : Length();
    const auto rim = watched_rim(watch);
    const auto diameter = watch.given("marked_diameter", designation_.diameter / 100.0 * units::inch, sources::marking);
    const auto undersize = watch.looked_up("undersize", below, "flotation", flotation_source);
    const auto real = watch.step(formula::flotation_diameter{}, diameter, undersize);
    const auto height = watch.step("section_height", formula::section_height_of_diameter{}, real, rim);
    const auto of_nominal =
        watch.looked_up("height_factor", limit_factor(size), to_string(use_), diameter_limit_source);
    return watch.step(name, formula::overall_diameter_limit{}, rim, height, of_nominal);
  }
  template <class Watch>
  [[nodiscard]] constexpr auto cycle_diameter(Watch watch, ValueName name, Corner size) const {
    const CycleBeadSeat& seat = bead_seat();
    const auto rim =
        watch.looked_up("rim_diameter", rim_diameter(), seat.name, Source{cycle_rim_document, cycle_rim_certainty()});
    const auto width = watch.given("section_width", section_width(), sources::marking);
    const auto of_width = watch.looked_up("height_factor", cycle_height_factor.at(size), "cycle", cycle_height_source);
    return watch.step(name, formula::cycle_diameter{}, rim, width, of_width);
  }
  template <class Watch>
  [[nodiscard]] constexpr auto listed_diameter(Watch watch, ValueName name, Corner size) const {
    const CodeDesignatedTyre& row = listed();
    const bool special = use_ == TyreUse::special && size == Corner::high;
    if (special && !row.greatest_diameter_special) {  // the limit of metric sizes stands in
      const auto design = listed_diameter_here(watch, "design_diameter", row.diameter);
      const auto rim = watched_rim(watch);
      const auto height = watch.step("section_height", formula::section_height_of_diameter{}, design, rim);
      const auto of_nominal =
          watch.looked_up("height_factor", greatest_height_factor(use_), to_string(use_), diameter_limit_source);
      return watch.step(name, formula::overall_diameter_limit{}, rim, height, of_nominal);
    }
    return listed_diameter_here(watch, name,
                                special                ? *row.greatest_diameter_special
                                : size == Corner::low  ? row.least_diameter
                                : size == Corner::high ? row.greatest_diameter
                                                       : row.diameter);
  }
  template <class Watch>
  [[nodiscard]] constexpr auto listed_diameter_here(Watch watch, ValueName name, Length listed_diameter) const {
    const CodeDesignatedTyre& row = listed();
    const RimCode& listed_rim = rim_codes[detail::section_keys.rims[designation_.listed]];
    const auto diameter = watch.looked_up("listed_diameter", listed_diameter, row.section, code_designated_source);
    const auto its_rim =
        watch.looked_up("listed_rim_diameter", listed_rim.diameter, listed_rim.name, rim_diameter_source);
    return watch.step(name, formula::overall_diameter_on_another_rim{}, diameter, its_rim, watched_rim(watch));
  }

  [[nodiscard]] constexpr bool cycle() const noexcept { return notation() == TyreNotation::cycle; }
  [[nodiscard]] constexpr const RimCode& rim() const noexcept { return rim_codes[designation_.rim]; }
  [[nodiscard]] constexpr const CycleBeadSeat& bead_seat() const noexcept { return cycle_bead_seats[designation_.rim]; }
  /// How sure it is that the marking means this bead seat.
  [[nodiscard]] constexpr Certainty cycle_rim_certainty() const noexcept {
    const Certainty of_seat = bead_seat().certainty;
    return designation_.listed < 0 ? of_seat : weaker(of_seat, cycle_rim_names[designation_.listed].certainty);
  }
  [[nodiscard]] constexpr Length cycle_width() const noexcept {
    switch (designation_.naming) {
      case CycleNaming::iso:
      case CycleNaming::french: break;
      case CycleNaming::decimal: return designation_.width / 1000.0 * units::inch;
      case CycleNaming::fractional:
      case CycleNaming::three_part: return designation_.width / 8.0 * units::inch;
    }
    return designation_.width * 1.0 * units::mm;
  }
  [[nodiscard]] constexpr const CodeDesignatedTyre& listed() const noexcept {
    return code_designated_tyres[designation_.listed];
  }

  detail::Designation designation_;
  TyreUse use_;
};

constexpr Band<Length> TyreSize::overall_diameter() const noexcept {
  return over_runs(one_cause, [&](Corner size) { return overall_diameter(Unwatched(), size); });
}

namespace detail {
inline void this_is_not_a_tyre_designation() {}  // not constexpr: its name is what the compiler's error shows
}  // namespace detail

inline namespace literals {
/// A road tyre's size, read by the compiler: `"110/90-18"_tyre`. A text that is no designation does not compile.
[[nodiscard]] consteval TyreSize operator""_tyre(const char* text, std::size_t length) {
  detail::DesignationReader reader({text, length});
  if (!reader.read()) detail::this_is_not_a_tyre_designation();
  return TyreSize(reader.designation(), TyreUse::road);
}
}  // namespace literals

}  // namespace layshaft
