// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/chain/listings_table.hpp>
#include <layshaft/chain/series.hpp>

#include <algorithm>
#include <span>

/// @file
/// What the sources print of a chain series, each for itself.
namespace layshaft {

/// Every listing there is of a series, the source that counts first at the front; at least one.
[[nodiscard]] constexpr std::span<const ChainListing> chain_listings(ChainSeries series) noexcept {
  const auto of_series = [&](const ChainListing& listing) { return listing.series == series.name(); };
  const auto first = std::find_if(chain_listings_table.begin(), chain_listings_table.end(), of_series);
  return {first, std::find_if_not(first, chain_listings_table.end(), of_series)};
}

}  // namespace layshaft
