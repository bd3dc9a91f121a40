// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/band.hpp>
#include <layshaft/setup/comparison.hpp>
#include <layshaft/wear/break_even.hpp>
#include <layshaft/wear/chain_stretch.hpp>
#include <layshaft/wear/replacement_plan.hpp>
#include <layshaft/wear/running_cost.hpp>

#include <array>
#include <optional>
#include <string_view>
#include <utility>

/// @file
/// What chain and sprockets cost on a trial set-up, from what they are known to cost and how long they are known to
/// last on the base one. Nobody knows a part's life out of a table; how it changes is known much better.
namespace layshaft {

/// How far a chain lasts, trial over base less one: each grows to the least of the maker's limit, that of its largest
/// sprocket, and the room its adjuster leaves. Or an Error where a chain does not fit or has no room to grow.
[[nodiscard]] inline Result<Band<double>> try_chain_life_change(const Comparison& comparison,
                                                                double makers_limit = usual_stretch_limit) {
  const auto limit_of = [&](const Setup& setup, const Appraisal& appraisal) -> Result<double> {
    const Teeth largest = setup.front() < setup.rear() ? setup.rear() : setup.front();
    const auto limit = try_stretch_limit(largest, appraisal.chain().wear_room.nominal, makers_limit);
    if (!limit) return limit.error();
    if (!(limit->elongation > 0.0)) return Error::value("the adjuster leaves the chain no room to grow");
    return limit->elongation;
  };
  const auto base = limit_of(comparison.setups.base, comparison.base);
  if (!base) return base.error().in("base");
  const auto trial = limit_of(comparison.setups.trial, comparison.trial);
  if (!trial) return trial.error().in("trial");
  return over(comparison.wear.chain_stretch_change, [&](double grows) { return *trial / *base / (1.0 + grows) - 1.0; });
}

/// What the trial's parts are priced at, where that is not what the base's are: 0 to 1e12.
struct TrialPrices {
  std::optional<Band<double>> chain = {};
  std::optional<Band<double>> front = {};
  std::optional<Band<double>> rear = {};

  friend constexpr bool operator==(const TrialPrices&, const TrialPrices&) noexcept = default;
};

/// What a drive costs on both set-ups, in the reader's currency.
struct CostChange {
  Band<double> chain_life_change;  ///< trial over base less one, as `front_life_change` of WearChange is
  DriveCosts trial;                ///< what the base's parts become: lives as they wear, prices as stated
  Band<double> base_per_1000_km;   ///< each part replaced by itself when it is worn
  Band<double> trial_per_1000_km;
  Band<double> difference;  ///< trial less base, of money and lives that both share

  friend constexpr bool operator==(const CostChange&, const CostChange&) noexcept = default;
};

namespace detail {
/// Where the causes of two drives' costs stand: money and the base's lives, and how much the lives change.
struct CostCorners {
  Corner cost = Corner::nominal;
  Corner change = Corner::nominal;
};
inline constexpr std::array cost_corners = {
    CostCorners{}, CostCorners{Corner::low, Corner::low}, CostCorners{Corner::low, Corner::high},
    CostCorners{Corner::high, Corner::low}, CostCorners{Corner::high, Corner::high}};

/// The part at one end of what it costs and of how much its life changes.
[[nodiscard]] constexpr CostPart part_at(const CostPart& part, Corner cost, double life_changes) noexcept {
  using Money = Band<double>;
  return {part.kind, Money::exactly(part.price.at(cost)), Money::exactly(part.labour.at(cost)),
          Band<Length>::exactly(part.life.at(life_at(cost)) * (1.0 + life_changes))};
}
[[nodiscard]] constexpr Band<Length> life_after(const Band<Length>& life, const Band<double>& change) noexcept {
  return {life.low * (1.0 + change.low), life.nominal * (1.0 + change.nominal), life.high * (1.0 + change.high)};
}
}  // namespace detail

/// What chain and sprockets cost on the trial set-up. Lives change as the comparison's wear says, and the chain's by
/// how far it may grow. Or an Error where a chain has no room to grow, or a RangeError, where a price, labour or life
/// lies outside its range before or after.
[[nodiscard]] inline Result<CostChange> try_costs_after(const Comparison& comparison, const DriveCosts& base,
                                                        const TrialPrices& prices = {},
                                                        double makers_limit = usual_stretch_limit) {
  const auto chain = try_chain_life_change(comparison, makers_limit);
  if (!chain) return chain.error();
  const WearChange& wear = comparison.wear;
  struct Place {
    std::string_view name;
    CostPart DriveCosts::*part;
    const Band<double>& change;
    const std::optional<Band<double>>& price;
  };
  const Place places[] = {{"chain", &DriveCosts::chain, *chain, prices.chain},
                          {"front", &DriveCosts::front, wear.front_life_change, prices.front},
                          {"rear", &DriveCosts::rear, wear.rear_life_change, prices.rear}};
  CostChange told{*chain, base, {}, {}, {}};
  for (const Place& place : places) {
    if (auto error = detail::outside(place.name, base.*place.part)) return error->in("base");
    CostPart& after = told.trial.*place.part;
    after.life = detail::life_after(after.life, place.change);
    if (place.price) after.price = *place.price;
    if (auto error = detail::outside(place.name, after)) return error->in("trial");
  }
  const auto costs = [&](const DriveCosts& drive, Corner cost) {
    double sum = 0.0;
    for (const Place& place : places) sum += detail::cost_per_1000_km(drive.*place.part, cost);
    return sum;
  };
  // The trial's cost at the same money and lives before as the base's.
  const auto trial_costs = [&](const detail::CostCorners& at) {
    double sum = 0.0;
    for (const Place& place : places) {
      CostPart part = base.*place.part;
      part.price = (told.trial.*place.part).price;
      sum += detail::cost_per_1000_km(detail::part_at(part, at.cost, place.change.at(detail::life_at(at.change))),
                                      Corner::nominal);
    }
    return sum;
  };
  told.base_per_1000_km = over_runs(one_cause, [&](Corner cost) { return costs(base, cost); });
  told.trial_per_1000_km = over_runs(detail::cost_corners, trial_costs);
  told.difference = over_runs(detail::cost_corners, [&](const detail::CostCorners& at) {
    return cost_difference(costs(base, at.cost), trial_costs(at));
  });
  return told;
}
#if LAYSHAFT_EXCEPTIONS
/// @throws Error or RangeError as `try_costs_after` says.
[[nodiscard]] inline CostChange costs_after(const Comparison& comparison, const DriveCosts& base,
                                            const TrialPrices& prices = {}, double makers_limit = usual_stretch_limit) {
  return try_costs_after(comparison, base, prices, makers_limit).value();
}
#endif

}  // namespace layshaft
