// SPDX-License-Identifier: MIT
#include <layshaft/chain/fit_chain.hpp>

#include <gtest/gtest.h>
#include <core/formula_range.hpp>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <set>
#include <utility>
#include <vector>

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

// With the front end where the teeth would touch, the first count is the fewest that closes, odd or even.
TEST(FitChain, BeginsWithTheFewestLinksThatClose) {
  std::set<int> odd;
  for (int rear = 46; rear <= 54; ++rear) {
    const ChainLoop loop(ChainSeries("520"), 13_teeth, Teeth(rear));
    const auto fits = fit_chain(loop, 50_mm, 400_mm, Length(), true);
    ASSERT_FALSE(fits.empty());
    EXPECT_EQ(fits.front().links, loop.fewest_links());
    odd.insert(loop.fewest_links().count() % 2);
    for (std::size_t i = 1; i < fits.size(); ++i) EXPECT_EQ(fits[i].links.count(), fits[i - 1].links.count() + 1);
  }
  EXPECT_EQ(odd.size(), 2u);
}

// By hand: 10000 links of a 520 reach to 79.1 m and no farther, at 99 m there would have to be some 12,500.
TEST(FitChain, EndsWithTheMostLinksThereAre) {
  const auto fits = fit_chain(taller_loop(), 79_m, 100_m);
  ASSERT_FALSE(fits.empty());
  EXPECT_EQ(fits.back().links, 10000_links);
  EXPECT_EQ(fits.front().links, round_links(taller_loop().links(79_m)));
  EXPECT_EQ(fits.size(), static_cast<std::size_t>((10000 - fits.front().links.count()) / 2 + 1));
  EXPECT_TRUE(fit_chain(taller_loop(), 99_m, 100_m).empty());
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

// Equal sprockets, by hand: each tooth on both moves the axle by half a pitch, one less to the rear and one more to the
// front by as much. Of such two the smaller front sprocket comes first.
TEST(PairsForChain, NameTheSmallerFrontSprocketFirstOfTwoThatAreAsNear) {
  const auto pairs =
      pairs_for_chain(ChainLoop(ChainSeries("219"), 6_teeth, 6_teeth), 26_links, Adjuster(54_mm, 101_mm));
  ASSERT_GT(pairs.size(), 2u);
  for (const std::size_t i : {0u, 1u}) {
    EXPECT_EQ(pairs[i].front, Teeth(i == 0 ? 5 : 7));
    EXPECT_EQ(pairs[i].rear, pairs[i].front);
    EXPECT_EQ(pairs[i].ratio_change, 0.0);
    EXPECT_NEAR(in(pairs[i].axle_move, units::mm), i == 0 ? 3.887 : -3.887, 1e-9);
  }
  EXPECT_EQ(pairs[0].axle_move, -pairs[1].axle_move);
  EXPECT_EQ(pairs[0], pairs[0]);
  EXPECT_NE(pairs[0], pairs[1]);
}

// A sprocket has at least four teeth.
TEST(PairsForChain, AreOfSprocketsThatThereAre) {
  for (const auto& [front, rear] : {std::pair{5, 40}, {40, 5}}) {
    const ChainLoop loop(ChainSeries("520"), Teeth(front), Teeth(rear));
    const Length present = loop.centre(110_links);
    std::size_t expected = 0;
    for (int f = std::max(4, front - kept_front); f <= front + kept_front; ++f)
      for (int r = std::max(4, rear - kept_rear); r <= rear + kept_rear; ++r) {
        const Length centre = ChainLoop(ChainSeries("520"), Teeth(f), Teeth(r)).centre(110_links);
        expected += (f != front || r != rear) && centre >= present - 20.0_mm && centre <= present + 20.0_mm;
      }
    const auto pairs = pairs_for_chain(loop, 110_links, Adjuster(present - 20.0_mm, present + 20.0_mm));
    EXPECT_EQ(pairs.size(), expected);
    EXPECT_GT(expected, 10u);
    for (const KeptChainPair& pair : pairs) EXPECT_GE(std::min(pair.front, pair.rear), 4_teeth);
  }
}

}  // namespace
