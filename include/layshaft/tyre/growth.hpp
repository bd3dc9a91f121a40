// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>
#include <layshaft/core/source.hpp>
#include <layshaft/core/units.hpp>
#include <layshaft/core/watch.hpp>
#include <layshaft/tyre/code_designated.hpp>
#include <layshaft/tyre/dimensions.hpp>
#include <layshaft/tyre/size.hpp>

#include <optional>

/// @file
/// How far a tyre may stand beyond what the machine was built round: the room that must be there.
///
/// The bounds are the limits of the marking: no new tyre of it may be taller or wider, inflated and at rest. Speed
/// makes a tyre grow further. UN Regulation No. 75 limits that growth as well (Annex 9), but its figures are in none of
/// the sources at hand, so none is computed: a clearance held against these bounds must be what is left once room for
/// growth with speed is taken off.
namespace layshaft {

/// How much more radius a tyre has than another.
LAYSHAFT_FORMULA(constexpr, Length, radius_growth, (Length base_overall_diameter, Length trial_overall_diameter),
                 positive(base_overall_diameter) && positive(trial_overall_diameter), sources::geometry,
                 (trial_overall_diameter - base_overall_diameter) / 2.0)

/// How much wider a tyre is than another, over both sides.
LAYSHAFT_FORMULA(constexpr, Length, width_growth, (Length base_section_width, Length trial_section_width),
                 positive(base_section_width) && positive(trial_section_width), sources::definition,
                 trial_section_width - base_section_width)

namespace detail {

/// The greatest width of a listed section. Sections of one width on rims of one kind have one limit.
[[nodiscard]] constexpr std::optional<Length> listed_greatest_width(const TyreSize& tyre) noexcept {
  std::optional<Length> greatest;
  const std::optional<double> rim_code = tyre.rim_code();
  for (const CodeDesignatedTyre& row : code_designated_tyres) {
    if ((row.family == TyreFamily::lettered) != (tyre.notation() == TyreNotation::lettered)) continue;
    if (row.section_width != tyre.section_width() || !serves(row.family, *rim_code)) continue;
    if (!greatest || row.greatest_section_width > *greatest) greatest = row.greatest_section_width;
  }
  return greatest;
}

/// Whether the greatest section width of a tyre's marking is known.
[[nodiscard]] constexpr bool width_is_limited(const TyreSize& tyre) noexcept {
  return tyre.notation() == TyreNotation::metric || tyre.notation() == TyreNotation::code ||
         tyre.notation() == TyreNotation::lettered;
}
/// The greatest section width, for whoever watches; asked only where it is known.
template <class Watch>
[[nodiscard]] constexpr auto greatest_section_width_at(Watch watch, const TyreSize& tyre, ValueName name) {
  if (tyre.notation() != TyreNotation::metric)
    return watch.looked_up(name, *listed_greatest_width(tyre), to_string(tyre.notation()), code_designated_source);
  const auto width = watch.given("section_width", tyre.section_width(), sources::marking);
  const std::optional<double> rim_code = tyre.rim_code();
  const auto factor =
      watch.looked_up("width_factor", greatest_width_factor(*rim_code),
                      *rim_code > 12.5 ? "rim code 13 and above" : "rim code 12 and below", width_limit_source);
  return watch.step(name, formula::section_width_limit{}, width, factor);
}

/// How much more radius the tallest tyre of a marking has than the stock tyre as marked, for whoever watches.
template <class Watch>
[[nodiscard]] constexpr auto radius_growth_at(Watch watch, const TyreSize& tyre, const TyreSize& stock) {
  const auto before = stock.overall_diameter(watch.on(Scope::base), Corner::nominal);
  const auto after = tyre.overall_diameter(watch.on(Scope::trial), Corner::high);
  return watch.step(formula::radius_growth{}, before, after);
}
/// How much wider the widest tyre of a marking is than the stock tyre as marked, for whoever watches.
template <class Watch>
[[nodiscard]] constexpr auto width_growth_at(Watch watch, const TyreSize& tyre, const TyreSize& stock) {
  const auto before = watch.on(Scope::base).given("section_width", stock.section_width(), stock.source());
  const auto after = greatest_section_width_at(watch.on(Scope::trial), tyre, "section_width_limit");
  return watch.step(formula::width_growth{}, before, after);
}

}  // namespace detail

/// The greatest section width that a tyre with this marking may have on its measuring rim: of metric sizes by rule, of
/// listed sections by table, all from memory; none for other notations.
[[nodiscard]] constexpr std::optional<Length> greatest_section_width(const TyreSize& tyre) noexcept {
  if (!detail::width_is_limited(tyre)) return std::nullopt;
  return detail::greatest_section_width_at(Unwatched(), tyre, "section_width_limit");
}

/// How much more radius the tallest tyre of this marking has than the stock tyre as marked; below zero where even that
/// one is smaller. Of one marking against itself it is what the marking's tolerance allows.
[[nodiscard]] constexpr Length greatest_radius_growth(const TyreSize& tyre, const TyreSize& stock) noexcept {
  return detail::radius_growth_at(Unwatched(), tyre, stock);
}
/// How much wider, over both sides, the widest tyre of this marking is than the stock tyre as marked; none where the
/// marking's notation has no known limit.
[[nodiscard]] constexpr std::optional<Length> greatest_width_growth(const TyreSize& tyre,
                                                                    const TyreSize& stock) noexcept {
  if (!detail::width_is_limited(tyre)) return std::nullopt;
  return detail::width_growth_at(Unwatched(), tyre, stock);
}

}  // namespace layshaft
