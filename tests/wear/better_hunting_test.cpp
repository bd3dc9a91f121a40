// SPDX-License-Identifier: MIT
#include <layshaft/wear/better_hunting.hpp>

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace {
using namespace layshaft;

// A club's published example: 96 links meet the same tooth again after 5 passes on 15 teeth, after 7 on 14.
TEST(Hunting, RanksByEvennessNotByPeriodAlone) {
  EXPECT_EQ(hunting(15_teeth, 96_links).passes, 5);
  EXPECT_EQ(hunting(14_teeth, 96_links).passes, 7);
  EXPECT_GT(hunting(15_teeth, 96_links).evenness, hunting(14_teeth, 96_links).evenness);
}

TEST(BetterHunting, FindsOnlyPairsThatHuntBetterNearby) {
  const auto pairs = better_hunting(14_teeth, 42_teeth, 112_links);
  ASSERT_FALSE(pairs.empty());
  const double own = hunting(14_teeth, 112_links).evenness * hunting(42_teeth, 112_links).evenness;
  for (std::size_t i = 0; i < pairs.size(); ++i) {
    EXPECT_GT(pairs[i].evenness(), own);
    EXPECT_LE(std::fabs(pairs[i].ratio_change), 0.03);
    if (i > 0) {
      EXPECT_LE(pairs[i].evenness(), pairs[i - 1].evenness());
    }
  }
  EXPECT_TRUE(better_hunting(13_teeth, 47_teeth, 110_links).empty());  // already even: primes
  EXPECT_FALSE(try_better_hunting(14_teeth, 42_teeth, 112_links, 0.6));
  EXPECT_FALSE(try_better_hunting(14_teeth, 42_teeth, 112_links, 0.03, 0));
}

TEST(BetterHunting, TakesBothEndsOfItsRange) {
  const auto takes = [](double within, int reach) {
    return try_better_hunting(14_teeth, 42_teeth, 112_links, within, reach).has_value();
  };
  EXPECT_TRUE(takes(0.5, 10));
  EXPECT_TRUE(takes(0.0, 1));
  EXPECT_FALSE(takes(0.5001, 3));
  EXPECT_FALSE(takes(0.03, 11));
}

TEST(BetterHunting, TellsByHowMuchTheRatioChanges) {
  for (const HuntingPair& pair : better_hunting(14_teeth, 42_teeth, 112_links))
    EXPECT_NEAR(pair.ratio_change, double(pair.rear.count()) / pair.front.count() / 3.0 - 1.0, 1e-15);
}

// A plain loop over what a sprocket may have, where some of the pairs within reach have too few or too many teeth.
TEST(BetterHunting, LeavesOutPairsBeyondWhatASprocketMayHave) {
  const auto hunts = [](int front, int rear) {
    return hunting(Teeth(front), 1500_links).evenness * hunting(Teeth(rear), 1500_links).evenness;
  };
  for (const auto& [front, rear] : {std::pair(5, 999), std::pair(4, 48), std::pair(15, 1000), std::pair(1000, 5)}) {
    std::size_t expected = 0;
    for (int a = std::max(front - 3, 4); a <= std::min(front + 3, 1000); ++a)
      for (int b = std::max(rear - 3, 4); b <= std::min(rear + 3, 1000); ++b)
        expected += std::fabs(double(b) / a * front / rear - 1.0) <= 0.5 && hunts(a, b) > hunts(front, rear) ? 1u : 0u;
    EXPECT_EQ(better_hunting(Teeth(front), Teeth(rear), 1500_links, 0.5, 3).size(), expected) << front << '/' << rear;
    EXPECT_GT(expected, 0u) << front << '/' << rear;
  }
}

}  // namespace
