// SPDX-License-Identifier: MIT
#include <layshaft/chain/fit_chain.hpp>

#include <gtest/gtest.h>
#include <core/formula_range.hpp>

#include <cmath>

namespace {
using namespace layshaft;
using layshaft_test::expect_range;

ChainLoop taller_loop() { return ChainLoop(ChainSeries("520"), 13_teeth, 50_teeth); }

TEST(FitChain, FindsEveryCountThatCloses) {
  for (const bool odd : {false, true}) {
    const auto fits = fit_chain(taller_loop(), 590_mm, 650_mm, 20_mm, odd);
    std::vector<int> found, expected;
    for (const ChainFit& fit : fits) found.push_back(fit.links.count());
    for (int links = 60; links < 200; ++links) {
      if (!odd && links % 2 != 0) continue;
      const auto fit = try_fit_links(taller_loop(), Links(links), Adjuster(590_mm, 650_mm, 20_mm));
      if (fit && fit->fits) expected.push_back(links);
    }
    EXPECT_EQ(found, expected);
    EXPECT_GE(found.size(), odd ? 5u : 3u);
    for (const ChainFit& fit : fits) EXPECT_EQ(fit.offset_link, fit.links.count() % 2 != 0);
  }
}

TEST(FitChain, IsEmptyWhereNothingCloses) {
  EXPECT_TRUE(fit_chain(taller_loop(), 615.5_mm, 616_mm).empty());
  EXPECT_FALSE(try_fit_chain(taller_loop(), 50_mm, 60_mm));
  EXPECT_FALSE(try_fit_chain(taller_loop(), 600_mm, 590_mm));
  EXPECT_THROW((void)fit_chain(taller_loop(), 600_mm, 650_mm, -1.0_mm), RangeError);
}

// The estimate leaves out that the runs' angle changes on the way: at most a hundredth of the room.
TEST(FitChain, HandbookStretchIsNearTheExactOne) {
  double worst = 0.0;
  for (const ChainFit& fit : fit_chain(taller_loop(), 590_mm, 650_mm)) {
    const Angle angle =
        run_angle(pitch_diameter(15.875_mm, 13_teeth), pitch_diameter(15.875_mm, 50_teeth), fit.centre.nominal);
    const double estimate = stretch_left_approximate(fit.adjuster_rearward.nominal, angle, fit.links, 15.875_mm);
    worst = std::max(worst, std::fabs(estimate / fit.stretch_left().nominal - 1.0));
    EXPECT_EQ(fit.stretch_left(), fit.wear_room);
  }
  EXPECT_LT(worst, 0.01);
  EXPECT_GT(worst, 0.0);
}

TEST(FitChain, CountsTurnsOfTheAdjuster) {
  EXPECT_NEAR(adjuster_turns(5_mm, 1.25_mm), 4.0, 1e-15);
  expect_range<formula::adjuster_turns>("f+", 5_mm, 1.25_mm);
  expect_range<formula::stretch_left_approximate>("ff#+", 5_mm, 0.1 * units::rad, 110_links, 15.875_mm);
}

TEST(PairsForChain, KeepThePresentChainInTheAdjuster) {
  const Adjuster adjuster(590_mm, 650_mm, 20_mm);
  const auto pairs = pairs_for_chain(taller_loop(), 110_links, adjuster, 0.004);
  ASSERT_FALSE(pairs.empty());
  double before = 0.0;
  for (const KeptChainPair& pair : pairs) {
    EXPECT_FALSE(pair.front == 13_teeth && pair.rear == 50_teeth);
    EXPECT_GE(pair.centre, 590_mm);
    EXPECT_LE(pair.centre, 650_mm);
    EXPECT_GE(std::fabs(pair.ratio_change), before);
    before = std::fabs(pair.ratio_change);
    EXPECT_NEAR(pair.ratio_change, pair.rear / pair.front * 13.0 / 50.0 - 1.0, 1e-14);
    // So many links, longer by 0.4 %, have the slack there.
    const ChainLoop other(ChainSeries("520"), pair.front, pair.rear);
    EXPECT_NEAR(detail::links_with_slack(other, pair.centre, 20_mm), 110.0 * 1.004, 1e-9);
  }
  EXPECT_FALSE(try_pairs_for_chain(taller_loop(), 110_links, adjuster, 0.2));
  EXPECT_FALSE(try_pairs_for_chain(taller_loop(), 20_links, adjuster));
  EXPECT_THROW((void)pairs_for_chain(taller_loop(), 20_links, adjuster), RangeError);
}

// By hand: 30 mm to the rear lengthen the loop by 60 mm times cos 60 degrees, of 100 links of half an inch.
TEST(FitChain, HandbookStretchIsTwiceTheWayTimesTheCosine) {
  EXPECT_NEAR(stretch_left_approximate(30_mm, 60_deg, 100_links, 12.7_mm), 30.0 / 1270.0, 1e-15);
}

TEST(PairsForChain, TakeAnElongationOfUpToATenth) {
  const ChainLoop loop(ChainSeries("520"), 16_teeth, 43_teeth);
  const Adjuster adjuster(550_mm, 700_mm);
  EXPECT_TRUE(try_pairs_for_chain(loop, 110_links, adjuster, 0.1));
  EXPECT_FALSE(try_pairs_for_chain(loop, 110_links, adjuster, 0.10001));
}

}  // namespace
