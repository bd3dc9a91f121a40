// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/band.hpp>
#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>
#include <layshaft/core/result.hpp>
#include <layshaft/core/source.hpp>
#include <layshaft/core/units.hpp>
#include <layshaft/core/watch.hpp>
#include <layshaft/wear/running_cost.hpp>

#include <array>
#include <optional>
#include <string_view>
#include <utility>

/// @file
/// Two parts for the same place, such as a steel and an aluminium rear sprocket: which of them costs less on the road,
/// and what would have to change for the other to.
namespace layshaft {

/// How much more the trial part costs than the base part.
LAYSHAFT_FORMULA(constexpr, double, cost_difference, (double base_cost, double trial_cost),
                 is_finite(base_cost) && is_finite(trial_cost), sources::definition, trial_cost - base_cost)

/// Life of the trial part over that of the base part at which both cost alike.
LAYSHAFT_FORMULA(constexpr, double, break_even_life_ratio,
                 (double base_price, double base_labour, double trial_price, double trial_labour),
                 is_finite(base_price) && is_finite(base_labour) && is_finite(trial_price) && is_finite(trial_labour) &&
                     base_price >= 0.0 && base_labour >= 0.0 && trial_price >= 0.0 && trial_labour >= 0.0 &&
                     base_price + base_labour > 0.0,
                 even_life_source, (trial_price + trial_labour) / (base_price + base_labour))

/// Price of the trial part at which both cost alike; below zero where even a gift would cost more.
LAYSHAFT_FORMULA(constexpr, double, break_even_price,
                 (double base_price, double base_labour, Length base_life, double trial_labour, Length trial_life),
                 is_finite(base_price) && is_finite(base_labour) && is_finite(trial_labour) && base_price >= 0.0 &&
                     base_labour >= 0.0 && trial_labour >= 0.0 && positive(base_life) && positive(trial_life),
                 even_life_source, (base_price + base_labour) * (trial_life / base_life) - trial_labour)

/// Which of two parts costs less on the road.
enum class CheaperPart : unsigned char { base, trial, alike };

/// All of them, in order.
inline constexpr CheaperPart cheaper_parts[] = {CheaperPart::base, CheaperPart::trial, CheaperPart::alike};

/// The word for it.
[[nodiscard]] constexpr std::string_view to_string(CheaperPart cheaper) noexcept {
  switch (cheaper) {
    case CheaperPart::base: return "base";
    case CheaperPart::trial: return "trial";
    case CheaperPart::alike: return "alike";
  }
  return {};
}

/// Two parts for one place, held against each other.
struct BreakEven {
  Band<double> base_per_1000_km = {};        ///< what the base part costs
  Band<double> trial_per_1000_km = {};       ///< what the trial part costs
  Band<double> difference = {};              ///< trial less base, per 1,000 km; below zero: the trial part costs less
  CheaperPart cheaper = CheaperPart::alike;  ///< at nominal prices and lives
  /// Whether that holds whatever the prices and lives within their bands; never of two that cost alike.
  bool certain = false;
  /// Life of the trial part over that of the base part from which the trial part costs less; none where the base part
  /// may cost nothing, or next to nothing.
  std::optional<Band<double>> life_ratio = {};
  /// Price of the trial part up to which it costs less; below zero where even a gift would cost more.
  Band<double> price = {};

  friend constexpr bool operator==(const BreakEven&, const BreakEven&) noexcept = default;
};

namespace detail {

/// Less than this is no money in any currency, and a ratio to it tells nothing.
inline constexpr double least_money = 1e-6;

/// The ends of two costs; nothing is shared between the parts.
struct TwoCosts {
  Corner base = Corner::nominal;
  Corner trial = Corner::nominal;
};
/// A difference is widest where one part is cheap and the other dear.
inline constexpr std::array two_costs = {TwoCosts{Corner::nominal, Corner::nominal},
                                         TwoCosts{Corner::high, Corner::low}, TwoCosts{Corner::low, Corner::high}};

/// How much more the trial part costs over a distance, for whoever watches.
template <class Watch>
[[nodiscard]] constexpr auto cost_difference(Watch watch, const CostPart& base, const CostPart& trial,
                                             const TwoCosts& at) {
  const auto distance = watch.given("distance", 1000_km);
  const auto first = cost_of(watch.on(Scope::base), base, distance, at.base);
  const auto second = cost_of(watch.on(Scope::trial), trial, distance, at.trial);
  return watch.step(formula::cost_difference{}, first, second);
}
/// The life ratio at which both cost alike, for whoever watches.
template <class Watch>
[[nodiscard]] constexpr auto break_even_life_ratio(Watch watch, const CostPart& base, const CostPart& trial,
                                                   const TwoCosts& at) {
  const auto base_price = watch.given("base_price", base.price.at(at.base));
  const auto base_labour = watch.given("base_labour", base.labour.at(at.base));
  const auto trial_price = watch.given("trial_price", trial.price.at(at.trial));
  const auto trial_labour = watch.given("trial_labour", trial.labour.at(at.trial));
  return watch.step(formula::break_even_life_ratio{}, base_price, base_labour, trial_price, trial_labour);
}
/// The trial part's price at which both cost alike, for whoever watches.
template <class Watch>
[[nodiscard]] constexpr auto break_even_price(Watch watch, const CostPart& base, const CostPart& trial,
                                              const TwoCosts& at) {
  const auto base_price = watch.given("base_price", base.price.at(at.base));
  const auto base_labour = watch.given("base_labour", base.labour.at(at.base));
  const auto base_life = watch.given("base_life", base.life.at(life_at(at.base)));
  const auto trial_labour = watch.given("trial_labour", trial.labour.at(at.trial));
  const auto trial_life = watch.given("trial_life", trial.life.at(life_at(at.trial)));
  return watch.step(formula::break_even_price{}, base_price, base_labour, base_life, trial_labour, trial_life);
}

}  // namespace detail

/// Holds two parts for one place against each other; their kinds are not looked at. Or a RangeError, where a price,
/// labour or life lies outside its range or is no rising band.
[[nodiscard]] inline Result<BreakEven> try_break_even(const CostPart& base, const CostPart& trial) {
  if (auto error = detail::outside("base", base)) return *std::move(error);
  if (auto error = detail::outside("trial", trial)) return *std::move(error);
  using detail::TwoCosts;
  BreakEven told;
  told.base_per_1000_km = over_runs(one_cause, [&](Corner at) { return detail::cost_per_1000_km(base, at); });
  told.trial_per_1000_km = over_runs(one_cause, [&](Corner at) { return detail::cost_per_1000_km(trial, at); });
  told.difference = over_runs(
      detail::two_costs, [&](const TwoCosts& at) { return detail::cost_difference(Unwatched(), base, trial, at); });
  told.cheaper = told.difference.nominal > 0.0   ? CheaperPart::base
                 : told.difference.nominal < 0.0 ? CheaperPart::trial
                                                 : CheaperPart::alike;
  told.certain = told.difference.low > 0.0 || told.difference.high < 0.0;
  if (base.price.low + base.labour.low >= detail::least_money)
    told.life_ratio = over_runs(detail::two_costs, [&](const TwoCosts& at) {
      return detail::break_even_life_ratio(Unwatched(), base, trial, at);
    });
  told.price = over_runs(detail::two_costs,
                         [&](const TwoCosts& at) { return detail::break_even_price(Unwatched(), base, trial, at); });
  return told;
}
#if LAYSHAFT_EXCEPTIONS
/// @throws RangeError as `try_break_even` says.
[[nodiscard]] inline BreakEven break_even(const CostPart& base, const CostPart& trial) {
  return try_break_even(base, trial).value();
}
#endif

}  // namespace layshaft
