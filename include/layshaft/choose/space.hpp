// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/chain/loads.hpp>
#include <layshaft/core/band.hpp>
#include <layshaft/core/checks.hpp>
#include <layshaft/setup/setup_parts.hpp>
#include <layshaft/wear/running_cost.hpp>

#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <vector>

/// @file
/// What there is to choose from: the parts that a shop can supply, each with its price and labour where they are known.
namespace layshaft {

/// What a part costs to buy and to fit, in any one currency.
struct Offer {
  std::optional<Band<double>> price = {};  ///< 0 to 1e12; without it a set-up that needs the part has no cost
  Band<double> labour = {};                ///< of fitting it, 0 to 1e12

  friend constexpr bool operator==(const Offer&, const Offer&) noexcept = default;
};

/// A sprocket to choose.
struct SprocketOffer {
  Teeth teeth;
  std::optional<SprocketMaterial> material = {};
  Offer offer = {};

  friend constexpr bool operator==(const SprocketOffer&, const SprocketOffer&) noexcept = default;
};

/// A rear tyre to choose.
struct TyreOffer {
  std::optional<TyreSize> tyre = {};               ///< may be absent where `circumference` is measured
  std::optional<Band<Length>> circumference = {};  ///< measured rollout, which overrides the marking: 0.2 to 5 m
  Offer offer = {};

  friend constexpr bool operator==(const TyreOffer&, const TyreOffer&) noexcept = default;
};

/// A chain to choose.
struct ChainOffer {
  std::optional<ChainSeries> series = {};  ///< absent: the machine's
  ChainMade made = {};
  /// As sold, or as it is on the machine; it can be made shorter, not longer. Absent: any length.
  std::optional<Links> longest = {};
  Offer offer = {};

  friend constexpr bool operator==(const ChainOffer&, const ChainOffer&) noexcept = default;
};

/// Every combination of these is a set-up to look at; duplicates count once, and order means nothing.
struct Space {
  std::vector<SprocketOffer> fronts;  ///< 1 to 200
  std::vector<SprocketOffer> rears;   ///< 1 to 200
  /// None: the tyre that is on the machine now; up to 10,000. By its marking a tyre has all its tread; one that is worn
  /// is told by its measured circumference.
  std::vector<TyreOffer> tyres = {};
  std::vector<ChainOffer> chains = {};  ///< none: a chain like the one on the machine now, of any length; up to 100
  /// Counts to look at; none: for every pair the shortest even count that closes in the adjuster.
  std::vector<Links> links = {};
  /// What is on the machine now, whose parts cost nothing; absent: the stock set-up.
  std::optional<Setup> present = {};

  friend bool operator==(const Space&, const Space&) = default;
};

namespace detail {

[[nodiscard]] inline std::optional<Error> outside(const Offer& offer) {
  if (offer.price)
    if (auto error = no_money("price", *offer.price)) return error;
  return no_money("labour", offer.labour);
}
[[nodiscard]] inline std::optional<Error> outside(const TyreOffer& tyre) {
  if (!tyre.tyre && !tyre.circumference)
    return Error::value("a tyre needs a marking, or a measured circumference in its place; neither was stated");
  if (tyre.circumference) return outside("circumference", *tyre.circumference, 0.2_m, 5.0_m);
  return std::nullopt;
}
/// The error of the first offer of a list that has one, which it names.
template <class Offers>
[[nodiscard]] std::optional<Error> outside_offers(const std::string& name, const Offers& offers, std::size_t most) {
  if (offers.size() > most)
    return Error::range("number of " + name, std::to_string(offers.size()), "at most " + std::to_string(most));
  for (std::size_t i = 0; i < offers.size(); ++i)
    if (auto error = outside(offers[i].offer)) return error->in(name + "[" + std::to_string(i) + "]");
  return std::nullopt;
}
[[nodiscard]] inline std::optional<Error> outside(const Space& space) {
  if (space.fronts.empty()) return Error::value("fronts: none was given; expected 1 to 200 sprockets");
  if (space.rears.empty()) return Error::value("rears: none was given; expected 1 to 200 sprockets");
  if (auto error = outside_offers("fronts", space.fronts, 200)) return error;
  if (auto error = outside_offers("rears", space.rears, 200)) return error;
  if (auto error = outside_offers("tyres", space.tyres, 10000)) return error;
  if (auto error = outside_offers("chains", space.chains, 100)) return error;
  for (std::size_t i = 0; i < space.tyres.size(); ++i)
    if (auto error = outside(space.tyres[i])) return error->in("tyres[" + std::to_string(i) + "]");
  for (std::size_t i = 0; i < space.chains.size(); ++i)
    if (auto error = outside(space.chains[i].made)) return error->in("chains[" + std::to_string(i) + "]");
  return std::nullopt;
}

}  // namespace detail

}  // namespace layshaft
