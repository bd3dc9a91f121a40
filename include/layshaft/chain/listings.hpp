// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/chain/listings_table.hpp>
#include <layshaft/chain/series.hpp>

#include <span>

/// @file
/// What the sources print of a chain series, each for itself.
namespace layshaft {

/// Every listing there is of a series, the source that counts first at the front; at least one.
[[nodiscard]] constexpr std::span<const ChainListing> chain_listings(ChainSeries series) noexcept {
  std::size_t first = 0;
  while (first < chain_listings_table.size() && chain_listings_table[first].series != series.name()) ++first;
  std::size_t last = first;
  while (last < chain_listings_table.size() && chain_listings_table[last].series == series.name()) ++last;
  return std::span(chain_listings_table).subspan(first, last - first);
}

}  // namespace layshaft
