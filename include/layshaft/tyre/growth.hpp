// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/band.hpp>
#include <layshaft/core/checks.hpp>
#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>
#include <layshaft/core/source.hpp>
#include <layshaft/core/units.hpp>
#include <layshaft/core/watch.hpp>
#include <layshaft/tyre/code_designated.hpp>
#include <layshaft/tyre/dimensions.hpp>
#include <layshaft/tyre/size.hpp>
#include <layshaft/tyre/speed_symbol.hpp>

#include <algorithm>  // max
#include <optional>

/// @file
/// How far a tyre may stand beyond what the machine was built round: the room that must be there.
///
/// The bounds are the limits of the marking: no new tyre of it may be taller or wider, inflated and at rest. Speed
/// makes a tyre grow further: `speed_growth` bounds that, widely and from memory. UN Regulation No. 75 has limits for
/// it (Annex 9), but its figures are in none of the sources at hand. So no caution is decided by that bound: a
/// clearance held against the marking's limits must be what is left once room for growth with speed is taken off.
namespace layshaft {

/// How much more radius a tyre has than another.
LAYSHAFT_FORMULA(constexpr, Length, radius_growth, (Length base_overall_diameter, Length trial_overall_diameter),
                 positive(base_overall_diameter) && positive(trial_overall_diameter), sources::geometry,
                 (trial_overall_diameter - base_overall_diameter) / 2.0)

/// How much wider a tyre is than another, over both sides.
LAYSHAFT_FORMULA(constexpr, Length, width_growth, (Length base_section_width, Length trial_section_width),
                 positive(base_section_width) && positive(trial_section_width), sources::definition,
                 trial_section_width - base_section_width)

/// How much of its radius a tyre gains at the speed it is rated for: nothing to the most that is to be expected.
inline constexpr Source speed_growth_source{"growth of a tyre at its rated speed, a wide bound",
                                            Certainty::from_memory};
[[nodiscard]] constexpr Band<double> growth_at_rated_speed(TyreConstruction construction) noexcept {
  switch (construction) {
    case TyreConstruction::diagonal: return {0.0, 0.015, 0.04};
    case TyreConstruction::bias_belted: return {0.0, 0.008, 0.02};
    case TyreConstruction::radial: break;
  }
  return {0.0, 0.005, 0.015};
}

/// How much a tyre's radius grows at a speed: the force that stretches it rises with the square of the speed.
LAYSHAFT_FORMULA(constexpr, Length, radius_growth_at_speed,
                 (Length overall_diameter, double growth_at_rated_speed, Speed road_speed, Speed rated_speed),
                 positive(overall_diameter) && is_finite(growth_at_rated_speed) && growth_at_rated_speed >= 0.0 &&
                     is_finite(road_speed) && road_speed >= 0.0_kmh && positive(rated_speed) &&
                     road_speed <= rated_speed,
                 speed_growth_source,
                 overall_diameter / 2.0 * growth_at_rated_speed * (road_speed / rated_speed) *
                     (road_speed / rated_speed))

namespace detail {

/// The greatest width of a listed section. Sections of one width on rims of one kind have one limit.
[[nodiscard]] constexpr Length listed_greatest_width(const TyreSize& tyre) noexcept {
  Length greatest{};
  const std::optional<double> rim_code = tyre.rim_code();
  for (const CodeDesignatedTyre& row : code_designated_tyres) {
    if ((row.family == TyreFamily::lettered) != (tyre.notation() == TyreNotation::lettered)) continue;
    if (row.section_width != tyre.section_width() || !serves(row.family, *rim_code)) continue;
    greatest = std::max(greatest, row.greatest_section_width);
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
    return watch.looked_up(name, listed_greatest_width(tyre), to_string(tyre.notation()), code_designated_source);
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

/// How much the radius grows at a speed the tyre is rated for, for whoever watches.
template <class Watch>
[[nodiscard]] constexpr auto speed_growth_at(Watch watch, const TyreSize& tyre, const SpeedSymbol& symbol, Speed speed,
                                             Corner size, Corner growth) {
  const auto diameter = tyre.overall_diameter(watch, size);
  const TyreConstruction construction = tyre.construction();
  const auto share = watch.looked_up("growth_at_rated_speed", growth_at_rated_speed(construction).at(growth),
                                     to_string(construction), speed_growth_source);
  const auto at_speed = watch.given("road_speed", speed);
  const auto rated = watch.looked_up("rated_speed", symbol.speed, symbol.name, symbol.source());
  return watch.step(formula::radius_growth_at_speed{}, diameter, share, at_speed, rated);
}

}  // namespace detail

/// How much a tyre's radius grows at a speed, from nothing to the bound, which is from memory; or an Error where the
/// tyre has no speed symbol, or a RangeError for a speed above its symbol's, for which nothing is known.
[[nodiscard]] inline Result<Band<Length>> try_speed_growth(const TyreSize& tyre, Speed road_speed) {
  const std::optional<SpeedSymbol> symbol = tyre.speed_symbol();
  if (!symbol) return Error::value("growth with speed needs the tyre's speed symbol, as in 110/90-18 61R");
  if (auto error = detail::outside("road_speed", road_speed, Speed(), symbol->speed)) return *std::move(error);
  return over_runs(one_cause,
                   [&](Corner at) { return detail::speed_growth_at(Unwatched(), tyre, *symbol, road_speed, at, at); });
}
#if LAYSHAFT_EXCEPTIONS
/// @throws Error or RangeError as `try_speed_growth` says.
[[nodiscard]] inline Band<Length> speed_growth(const TyreSize& tyre, Speed road_speed) {
  return try_speed_growth(tyre, road_speed).value();
}
#endif

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
