// SPDX-License-Identifier: MIT
#include <layshaft/chain/interchange.hpp>

#include <gtest/gtest.h>
#include <core/formula_range.hpp>

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

namespace {
using namespace layshaft;
using layshaft_test::expect_range;
using Reasons = Interchange::Reasons;
using enum InterchangeReason;

static_assert(Interchange(ChainSeries("520"), ChainSeries("10B narrow")).fits());
static_assert(!Interchange(ChainSeries("520"), ChainSeries("530")).fits());

struct Pair {
  std::string_view chain;
  std::string_view cut_for;
  Reasons reasons;
};

// By hand from the table: a tooth is 0.93 of the inner width to 12.7 mm pitch, 0.95 above.
TEST(Interchange, SaysWhatSpeaksAgainstAChainOnASprocket) {
  for (const auto& [chain, cut_for, reasons] : {
           Pair{"520", "520", {}},
           {"520", "10B narrow", {}},         // tooth 6.16 in 6.35
           {"10B narrow", "520", {}},         // 6.03 in 6.48
           {"428", "08B", {}},                // the same dimensions
           {"08A", "425", {}},                // rollers of 7.95 and 7.92 mm
           {"420", "085", {}},                // 5.81 in 6.35
           {"530", "10B", {}},                // 9.17 in 9.53
           {"520", "525", {tooth_too_wide}},  // 7.55 in 6.35
           {"525", "520", {sloppy}},          // 6.03, where its own are 7.19 to 7.55
           {"530", "520", {sloppy}},
           {"525", "530", {tooth_too_wide}},
           {"428", "420", {roller_larger, sloppy}},  // 8.51 in a gap for 7.77
           {"420", "428", {roller_smaller, tooth_too_wide}},
           {"532", "530", {roller_larger}},
           {"12A", "12B", {roller_smaller, sloppy}},  // 11.91 in a gap for 12.07; 11.10, its own from 11.51
           {"12B", "12A", {roller_larger, tooth_too_wide}},
           {"520", "428", {pitch_differs, roller_larger, tooth_too_wide}},
           {"081", "cycle", {sloppy}},
           {"cycle", "081", {tooth_too_wide}},
       }) {
    const Interchange pair{ChainSeries(chain), ChainSeries(cut_for)};
    std::string got;
    for (const InterchangeReason reason : pair.reasons()) got.append(to_string(reason)).append("; ");
    EXPECT_EQ(pair.reasons(), reasons) << chain << " on " << cut_for << ": " << got;
    EXPECT_EQ(pair.fits(), reasons.empty());
    EXPECT_EQ(pair.chain(), ChainSeries(chain));
    EXPECT_EQ(pair.cut_for(), ChainSeries(cut_for));
    EXPECT_EQ(*Interchange::make(ChainSeries(chain), ChainSeries(cut_for)), pair);
  }
}

TEST(Interchange, TellsThePlayAndTheDifferenceOfTheRollers) {
  const Interchange pair{ChainSeries("12A"), ChainSeries("12B")};
  EXPECT_NEAR(pair.roller_difference() / units::mm, -0.16, 1e-12);
  // 12.57 less a tooth of 0.95 x 11.68 = 11.096, which may be 0.43 less.
  EXPECT_NEAR(pair.side_play().nominal / units::mm, 1.474, 1e-9);
  EXPECT_EQ(pair.side_play().low, pair.side_play().nominal);
  EXPECT_NEAR(pair.side_play().high / units::mm, 1.904, 1e-9);
  EXPECT_EQ(pair.tooth_width(), tooth_width(ChainSeries("12B")));
}

TEST(Interchange, LetsEveryChainRunOnItsOwnSprockets) {
  for (const ChainSeries series : all_chain_series()) {
    EXPECT_TRUE(Interchange(series, series).fits()) << series.name();
    EXPECT_GT(Interchange(series, series).side_play().low, Length()) << series.name();
  }
}

/// What must hold of every pair of series.
void expect_sound(ChainSeries chain, ChainSeries cut_for) {
  SCOPED_TRACE(std::string(chain.name()) + " on " + std::string(cut_for.name()));
  const Interchange pair(chain, cut_for);
  const Reasons reasons = pair.reasons();
  EXPECT_FALSE(reasons.overfull());
  const auto has = [&](InterchangeReason reason) {
    return std::find(reasons.begin(), reasons.end(), reason) != reasons.end();
  };
  EXPECT_EQ(has(pitch_differs), chain.pitch() != cut_for.pitch());
  EXPECT_FALSE(has(roller_larger) && has(roller_smaller));
  EXPECT_FALSE(has(tooth_too_wide) && has(sloppy));
  EXPECT_EQ(has(tooth_too_wide), pair.side_play().nominal < Length());
  EXPECT_TRUE(well_formed(pair.side_play()));
  // Rollers are the same one way where they are the same the other way.
  const Reasons swapped = Interchange(cut_for, chain).reasons();
  EXPECT_EQ(has(roller_larger), std::find(swapped.begin(), swapped.end(), roller_smaller) != swapped.end());
  if (has(roller_larger)) {
    EXPECT_GT(pair.roller_difference(), Length());
  }
  if (has(roller_smaller)) {
    EXPECT_LT(pair.roller_difference(), Length());
  }
}

TEST(Interchange, IsSoundForEveryPair) {
  for (const ChainSeries chain : all_chain_series())
    for (const ChainSeries cut_for : all_chain_series()) expect_sound(chain, cut_for);
}

TEST(Interchange, ListsTheChainsThatRunAndNoOther) {
  const auto names = [](const std::vector<ChainSeries>& all) {
    std::vector<std::string_view> list;
    for (const ChainSeries series : all) list.push_back(series.name());
    return list;
  };
  using Names = std::vector<std::string_view>;
  EXPECT_EQ(names(chains_for_sprockets(ChainSeries("520"))), (Names{"520", "10BF19", "10BF20", "10B narrow"}));
  EXPECT_EQ(names(sprockets_for_chain(ChainSeries("530"))), (Names{"530", "10A", "10B"}));
  EXPECT_EQ(names(chains_for_sprockets(ChainSeries("532"))), (Names{"532"}));
  for (const ChainSeries chain : all_chain_series())
    for (const ChainSeries cut_for : all_chain_series()) {
      const auto chains = chains_for_sprockets(cut_for);
      EXPECT_EQ(std::find(chains.begin(), chains.end(), chain) != chains.end(), Interchange(chain, cut_for).fits());
      const auto sprockets = sprockets_for_chain(chain);
      EXPECT_EQ(std::find(sprockets.begin(), sprockets.end(), cut_for) != sprockets.end(),
                Interchange(chain, cut_for).fits());
    }
}

TEST(Interchange, KnowsItsRange) {
  expect_range<formula::seat_least>("+", 8.51_mm);
  expect_range<formula::side_play>("++", 7.75_mm, 7.2_mm);
}

TEST(InterchangeReason, HasItsName) {
  EXPECT_EQ(to_string(InterchangeReason::pitch_differs), "pitch differs");
  EXPECT_EQ(to_string(InterchangeReason::roller_larger), "roller larger");
  EXPECT_EQ(to_string(InterchangeReason::roller_smaller), "roller smaller");
  EXPECT_EQ(to_string(InterchangeReason::tooth_too_wide), "tooth too wide");
  EXPECT_EQ(to_string(InterchangeReason::sloppy), "sloppy");
}

}  // namespace
