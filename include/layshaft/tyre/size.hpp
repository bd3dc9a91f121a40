// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/band.hpp>
#include <layshaft/core/result.hpp>
#include <layshaft/core/source.hpp>
#include <layshaft/core/units.hpp>
#include <layshaft/core/watch.hpp>
#include <layshaft/tyre/code_designated.hpp>
#include <layshaft/tyre/designation.hpp>
#include <layshaft/tyre/dimensions.hpp>
#include <layshaft/tyre/kinds.hpp>
#include <layshaft/tyre/load_index.hpp>
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
class Working;
inline namespace literals {
consteval TyreSize operator""_tyre(const char* text, std::size_t length);
}

/// What a tyre's marking says, and the dimensions that follow from it. Always valid: it is only made from a text that
/// could be read, `110/90-18 M/C 61R TL`; designation.hpp has the grammar. It allocates nothing.
///
/// Two are equal when they print the same and are for the same use; the use is no part of the marking, and only lifts
/// the upper limit of the overall diameter.
class TyreSize {
 public:
  /// Reads a designation, or tells in a ParseError at which byte it cannot be one.
  [[nodiscard]] static Result<TyreSize> make(std::string_view text, TyreUse use = TyreUse::road) {
    detail::DesignationReader reader(text);
    if (reader.read()) return TyreSize(reader.designation(), use);
    const detail::DesignationFault& fault = reader.fault();
    return Error::parse(text, fault.position, fault.problem, fault.nearest.behind(fault.expected));
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
  [[nodiscard]] std::string designation() const {
    std::string text;
    if (notation() == TyreNotation::metric) {
      text.append(std::to_string(designation_.width)).append("/").append(std::to_string(designation_.aspect));
    } else {
      text.append(listed().section);
    }
    switch (construction()) {
      case TyreConstruction::diagonal: text.append("-"); break;
      case TyreConstruction::bias_belted: text.append("B"); break;
      case TyreConstruction::radial: text.append(zr() ? "ZR" : "R"); break;
    }
    text.append(rim().name);
    if (motorcycle()) text.append(" M/C");
    if (designation_.load_index >= 0)
      text.append(" ").append(std::to_string(designation_.load_index)).append(speed_symbol_row().name);
    if (tube() == TyreTube::tubeless) text.append(" TL");
    if (tube() == TyreTube::tube) text.append(" TT");
    if (reinforced()) text.append(" REINF");
    return text;
  }

  [[nodiscard]] constexpr TyreNotation notation() const noexcept { return designation_.notation; }
  [[nodiscard]] constexpr TyreConstruction construction() const noexcept { return designation_.construction; }
  [[nodiscard]] constexpr TyreUse use() const noexcept { return use_; }
  /// Marked ZR, the radial for speeds above 240 km/h.
  [[nodiscard]] constexpr bool zr() const noexcept { return designation_.zr; }
  /// Marked M/C, for motorcycles.
  [[nodiscard]] constexpr bool motorcycle() const noexcept { return designation_.motorcycle; }
  [[nodiscard]] constexpr TyreTube tube() const noexcept { return designation_.tube; }
  /// Marked REINF, reinforced.
  [[nodiscard]] constexpr bool reinforced() const noexcept { return designation_.reinforced; }

  /// The nominal section width: as marked where the notation is metric, otherwise from the table.
  [[nodiscard]] constexpr Length section_width() const noexcept {
    return notation() == TyreNotation::metric ? designation_.width * 1.0 * units::mm : listed().section_width;
  }
  /// The aspect ratio in percent, as marked; none where the notation has none.
  [[nodiscard]] constexpr std::optional<double> aspect_ratio() const noexcept {
    return designation_.aspect >= 0 ? std::optional<double>(designation_.aspect) : std::nullopt;
  }
  [[nodiscard]] constexpr double rim_code() const noexcept { return rim().code; }
  /// The rim's nominal diameter.
  [[nodiscard]] constexpr Length rim_diameter() const noexcept { return rim().diameter; }

  /// The overall diameter of a new tyre, free of load: what the marking means, and the least and the most that a tyre
  /// with this marking may have. A special use tyre whose table states no limit of its own has that of the metric
  /// sizes: 1.12 of the section height.
  [[nodiscard]] constexpr Band<Length> overall_diameter() const noexcept;
  /// The same at one corner of the marking's tolerance, for whoever watches.
  template <class Watch>
  [[nodiscard]] constexpr auto overall_diameter(Watch watch, Corner size) const {
    return notation() == TyreNotation::metric ? marked_diameter(watch, size) : listed_diameter(watch, size);
  }

  /// How a dimension came about: `explain("overall diameter")` or "circumference". Defined in tyre/explain.hpp, which
  /// is opt-in.
  [[nodiscard]] Result<Working> try_explain(std::string_view what) const;
#if LAYSHAFT_EXCEPTIONS
  /// @throws ParseError that lists the names there are.
  [[nodiscard]] Working explain(std::string_view what) const;
#endif

  /// The load index, where the marking has a service description; load_capacity gives its mass.
  [[nodiscard]] constexpr std::optional<int> load_index() const noexcept {
    return designation_.load_index >= 0 ? std::optional<int>(designation_.load_index) : std::nullopt;
  }
  /// The speed symbol, where the marking has a service description.
  [[nodiscard]] constexpr std::optional<SpeedSymbol> speed_symbol() const noexcept {
    if (designation_.speed_symbol < 0) return std::nullopt;
    return std::optional<SpeedSymbol>(std::in_place, speed_symbol_row());
  }

  /// Where the dimensions come from, and how sure they are: the nominal rim diameter and the limits of the overall
  /// diameter are from memory, and so is every table.
  [[nodiscard]] constexpr Source source() const noexcept {
    return notation() == TyreNotation::metric ? sources::iso_5751 : code_designated_source;
  }

  friend constexpr bool operator==(const TyreSize&, const TyreSize&) noexcept = default;

 private:
  friend consteval TyreSize literals::operator""_tyre(const char* text, std::size_t length);

  constexpr TyreSize(const detail::Designation& designation, TyreUse use) noexcept
      : designation_(designation), use_(use) {}

  template <class Watch>
  [[nodiscard]] constexpr auto watched_rim(Watch watch) const {
    return watch.looked_up("rim_diameter", rim_diameter(), rim().name, rim_diameter_source);
  }
  template <class Watch>
  [[nodiscard]] constexpr auto marked_diameter(Watch watch, Corner size) const {
    const double factor = size == Corner::low    ? least_height_factor
                          : size == Corner::high ? greatest_height_factor(use_)
                                                 : 1.0;
    const auto rim = watched_rim(watch);
    const auto width = watch.given("section_width", section_width(), sources::marking);
    const auto aspect = watch.given("aspect_ratio", double(designation_.aspect), sources::marking);
    const auto height = watch.step(formula::section_height{}, width, aspect);
    const auto of_nominal = watch.looked_up("height_factor", factor, to_string(use_), diameter_limit_source);
    return watch.step("overall_diameter", formula::overall_diameter_limit{}, rim, height, of_nominal);
  }
  template <class Watch>
  [[nodiscard]] constexpr auto listed_diameter(Watch watch, Corner size) const {
    const CodeDesignatedTyre& row = listed();
    const bool special = use_ == TyreUse::special && size == Corner::high;
    if (special && !row.greatest_diameter_special) {  // the limit of metric sizes stands in
      const auto design = listed_diameter_here(watch, "design_diameter", row.diameter);
      const auto rim = watched_rim(watch);
      const auto height = watch.step("section_height", formula::section_height_of_diameter{}, design, rim);
      const auto of_nominal =
          watch.looked_up("height_factor", greatest_height_factor(use_), to_string(use_), diameter_limit_source);
      return watch.step("overall_diameter", formula::overall_diameter_limit{}, rim, height, of_nominal);
    }
    return listed_diameter_here(watch, "overall_diameter",
                                special                ? *row.greatest_diameter_special
                                : size == Corner::low  ? row.least_diameter
                                : size == Corner::high ? row.greatest_diameter
                                                       : row.diameter);
  }
  template <class Watch>
  [[nodiscard]] constexpr auto listed_diameter_here(Watch watch, ValueName name, Length listed_diameter) const {
    const CodeDesignatedTyre& row = listed();
    const RimCode& listed_rim = rim_codes[detail::row_of_rim_code(row.rim_code)];
    const auto diameter = watch.looked_up("listed_diameter", listed_diameter, row.section, code_designated_source);
    const auto its_rim =
        watch.looked_up("listed_rim_diameter", listed_rim.diameter, listed_rim.name, rim_diameter_source);
    return watch.step(name, formula::overall_diameter_on_another_rim{}, diameter, its_rim, watched_rim(watch));
  }

  [[nodiscard]] constexpr const RimCode& rim() const noexcept { return rim_codes[designation_.rim]; }
  [[nodiscard]] constexpr const CodeDesignatedTyre& listed() const noexcept {
    return code_designated_tyres[designation_.listed];
  }
  [[nodiscard]] constexpr const SpeedSymbol& speed_symbol_row() const noexcept {
    return speed_symbols[designation_.speed_symbol];
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
