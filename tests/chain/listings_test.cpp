// SPDX-License-Identifier: MIT
#include <layshaft/chain/listings.hpp>

#include <gtest/gtest.h>

#include <string>

namespace {
using namespace layshaft;

TEST(ChainListings, AreThoseOfTheSeriesAndNoOther) {
  std::size_t all = 0;
  for (const ChainSeries series : all_chain_series()) {
    const auto listings = chain_listings(series);
    EXPECT_FALSE(listings.empty()) << series.name();
    for (const ChainListing& listing : listings) EXPECT_EQ(listing.series, series.name());
    all += listings.size();
  }
  EXPECT_EQ(all, chain_listings_table.size());
}

TEST(ChainListings, ShowHowTheSourcesDiffer) {
  // Source: chain_iso606.csv and chain_series.csv, the rows of 16B: today's chains are stronger than the standard asks.
  const auto listings = chain_listings(ChainSeries("16B"));
  ASSERT_EQ(listings.size(), 3u);
  EXPECT_EQ(listings[0].tensile_strength, 42.3_kN);
  EXPECT_EQ(listings[1].tensile_strength, 60.0_kN);
  EXPECT_EQ(listings[2].tensile_strength, 60.0_kN);
  EXPECT_EQ(listings[0].source, ChainSeries("16B").source(ChainProperty::tensile_strength));
  EXPECT_FALSE(listings[0] == listings[1]);
}

TEST(ChainListings, DifferByTheirSeriesOrTheirSourceToo) {
  const ChainListing one = chain_listings_table.front();
  ChainListing other = one;
  EXPECT_TRUE(one == other);
  other.series = "another";
  EXPECT_FALSE(one == other);
  other = one;
  other.source.document = "another";
  EXPECT_FALSE(one == other);
  other = one;
  other.designation = "another";
  EXPECT_FALSE(one == other);
}

}  // namespace
