// SPDX-License-Identifier: MIT
#include <layshaft/chain/fit.hpp>

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <random>
#include <string>
#include <string_view>

namespace {
using namespace layshaft;

ChainLoop loop() { return {ChainSeries("520"), 13_teeth, 48_teeth}; }

TEST(FitLinks, StandsWhereTheLoopIsTautWithoutSlack) {
  const ChainFit fit = fit_links(loop(), 110_links, Adjuster(600_mm, 660_mm));
  EXPECT_NEAR(in(fit.centre.nominal, units::mm), in(loop().centre(110_links), units::mm), 1e-9);
  EXPECT_EQ(fit.centre.low, fit.centre.nominal);
  EXPECT_TRUE(fit.fits);
  EXPECT_FALSE(fit.offset_link);
}

// Source: ISO 606: a new chain may be 0 to +0.15 % long; at about 106 links of 15.875 mm that moves the axle up to
// 1.27 mm.
TEST(FitLinks, MovesTheAxleByWhatANewChainMayBeLong) {
  const ChainLoop usual(ChainSeries("520"), 14_teeth, 43_teeth);
  const ChainFit fit = fit_links(usual, 106_links, Adjuster(580_mm, 660_mm));
  EXPECT_NEAR(in(fit.centre.width(), units::mm), 1.27, 0.02);
  // The axle moves by half of what the chain is long, over the cosine of the runs' angle.
  const Angle angle =
      run_angle(pitch_diameter(15.875_mm, 14_teeth), pitch_diameter(15.875_mm, 43_teeth), fit.centre.nominal);
  EXPECT_NEAR(in(fit.centre.width(), units::mm), 0.0015 * 106 * 15.875 / (2.0 * cos(angle)), 1e-3);
}

// The published relation, by hand: up plus down is sqrt(2 l S), with S the spare length and l the straight run.
TEST(FitLinks, LeavesTheSlackAskedFor) {
  for (const double slack : {10.0, 25.0, 38.0, 60.0}) {
    const Adjuster adjuster(590_mm, 660_mm, slack * units::mm);
    const ChainFit fit = fit_links(loop(), 110_links, adjuster);
    const double spare = (110.0 - loop().links(fit.centre.nominal)) * 15.875;
    const double run = in(loop().run_length(fit.centre.nominal), units::mm);
    EXPECT_NEAR(std::sqrt(2.0 * run * spare), slack, 1e-6);
    EXPECT_LT(fit.centre.nominal, loop().centre(110_links));
  }
}

TEST(FitLinks, TellsTheRoomAtBothEnds) {
  const Adjuster adjuster(612_mm, 648_mm, 38_mm);
  const ChainFit fit = fit_links(loop(), 110_links, adjuster);
  EXPECT_EQ(fit.adjuster_forward.low, fit.centre.low - 612_mm);
  EXPECT_EQ(fit.adjuster_forward.high, fit.centre.high - 612_mm);
  EXPECT_EQ(fit.adjuster_rearward.low, 648_mm - fit.centre.high);
  EXPECT_EQ(fit.adjuster_rearward.high, 648_mm - fit.centre.low);
}

TEST(FitLinks, HasWearRoomUntilTheAxleStandsAtTheRearEnd) {
  const Adjuster adjuster(612_mm, 648_mm, 38_mm);
  const ChainFit fit = fit_links(loop(), 110_links, adjuster);
  // A chain so much longer, at the rear end, leaves just the slack.
  const double spare = (110.0 * (1.0 + fit.wear_room.nominal) - loop().links(648_mm)) * 15.875;
  EXPECT_NEAR(std::sqrt(2.0 * in(loop().run_length(648_mm), units::mm) * spare), 38.0, 1e-9);
  EXPECT_NEAR(fit.wear_room.nominal - fit.wear_room.low, 0.0015, 1e-15);
}

TEST(FitLinks, SaysThatItDoesNotFitAndByHowMuch) {
  const ChainFit ahead = fit_links(loop(), 108_links, Adjuster(620_mm, 648_mm));
  EXPECT_FALSE(ahead.fits);
  EXPECT_LT(ahead.adjuster_forward.low, 0.0_mm);
  const ChainFit behind = fit_links(loop(), 120_links, Adjuster(620_mm, 648_mm));
  EXPECT_FALSE(behind.fits);
  EXPECT_LT(behind.adjuster_rearward.low, 0.0_mm);
}

TEST(FitLinks, TakesAnOddCountOnlyAsAChoiceAndSaysSo) {
  EXPECT_TRUE(fit_links(loop(), 111_links, Adjuster(600_mm, 660_mm)).offset_link);
}

TEST(FitLinks, RefusesFewerLinksThanTheSprocketsCarry) {
  const auto fit = try_fit_links(loop(), 30_links, Adjuster(600_mm, 660_mm));
  ASSERT_FALSE(fit);
  EXPECT_EQ(fit.error().kind(), ErrorKind::range);
  EXPECT_NE(std::string_view(fit.error().what()).find("30"), std::string_view::npos) << fit.error().what();
  EXPECT_THROW(static_cast<void>(fit_links(loop(), 30_links, Adjuster(600_mm, 660_mm))), RangeError);
  EXPECT_FALSE(try_fit_links(loop(), 110_links, Adjuster(50_mm, 60_mm)));
}

TEST(ShortestLinks, AreEvenAndStandAtOrBehindTheFrontEnd) {
  std::mt19937_64 random(31);
  std::uniform_int_distribution<int> front(11, 17), rear(36, 56);
  std::uniform_real_distribution<double> least(560.0, 640.0);
  for (int i = 0; i < 500; ++i) {
    const ChainLoop one(ChainSeries("520"), Teeth(front(random)), Teeth(rear(random)));
    const Length begin = least(random) * units::mm;
    const Adjuster adjuster(begin, begin + 40_mm, 30_mm);
    const Links links = shortest_links(one, adjuster);
    EXPECT_EQ(links.count() % 2, 0);
    EXPECT_TRUE(fit_links(one, links, adjuster).fits);
    EXPECT_LT(fit_links(one, Links(links.count() - 2), adjuster).adjuster_forward.low, 0.0_mm);
  }
}

TEST(ShortestLinks, SayByHowMuchTheyMissAndWhatWouldFit) {
  const Adjuster narrow(630_mm, 634_mm, 30_mm);
  const auto links = try_shortest_links(loop(), narrow);
  ASSERT_FALSE(links);
  const std::string what = links.error().what();
  EXPECT_NE(what.find("short of its front end"), std::string::npos) << what;
  EXPECT_NE(what.find("past its rear end"), std::string::npos) << what;
  const SprocketPairs pairs = nearest_sprockets(loop(), narrow);
  ASSERT_FALSE(pairs.empty());
  for (const SprocketPair& pair : pairs) {
    EXPECT_TRUE(fit_links(ChainLoop(ChainSeries("520"), pair.front, pair.rear), pair.links, narrow).fits);
    EXPECT_LE(std::abs(pair.front.count() - 13), 1);
    EXPECT_LE(std::abs(pair.rear.count() - 48), 3);
  }
  const std::string first = std::to_string(pairs[0].front.count()) + "/" + std::to_string(pairs[0].rear.count());
  EXPECT_NE(what.find(first), std::string::npos) << what;
}

// Ends of an adjuster that were themselves computed: what rounding did on the way must not ask for two links more.
TEST(ShortestLinks, AreThoseThatPutTheAxleAtTheFrontEnd) {
  for (int links = 80; links <= 160; links += 2) {
    const Length front_end = loop().centre(Links(links));
    EXPECT_EQ(shortest_links(loop(), Adjuster(front_end, front_end + 20_mm)), Links(links));
    const Adjuster with_slack(front_end - 1_mm, front_end + 20_mm, 25_mm);
    const Length stand = fit_links(loop(), Links(links), with_slack).centre.low;
    EXPECT_EQ(shortest_links(loop(), Adjuster(stand, stand + 20_mm, 25_mm)), Links(links));
  }
}

TEST(ShortestLinks, NeedAnAdjusterThatLeavesTheTeethClear) {
  const auto links = try_shortest_links(loop(), Adjuster(50_mm, 60_mm));
  ASSERT_FALSE(links);
  EXPECT_EQ(links.error().kind(), ErrorKind::range);
  EXPECT_TRUE(std::string_view(links.error().what()).starts_with("centre_max is 60 mm")) << links.error().what();
  // The front end may lie where they touch: the axle then stands behind it.
  const Links fewest = shortest_links(loop(), Adjuster(50_mm, 400_mm));
  EXPECT_GE(fewest, loop().fewest_links());
  EXPECT_LE(fewest.count(), loop().fewest_links().count() + 1);
  EXPECT_FALSE(try_shortest_links(loop(), Adjuster(99_m, 100_m)));
}

TEST(NearestSprockets, ComeInOrderOfTheTeethTheyChange) {
  const SprocketPairs pairs = nearest_sprockets(loop(), Adjuster(600_mm, 660_mm, 30_mm));
  EXPECT_EQ(pairs.size(), SprocketPairs::capacity);  // so wide an adjuster takes all of them
  const auto changed = [](const SprocketPair& pair) {
    return std::abs(pair.front.count() - 13) + std::abs(pair.rear.count() - 48);
  };
  for (std::size_t i = 1; i < pairs.size(); ++i) EXPECT_LE(changed(pairs[i - 1]), changed(pairs[i]));
  // Of one tooth changed, a rear one changes the ratio least: 49/48 < 48/47 < 14/13 < 13/12.
  EXPECT_EQ(pairs[0].rear, 49_teeth);
  EXPECT_EQ(pairs[1].rear, 47_teeth);
  EXPECT_EQ(pairs[2].front, 14_teeth);
  EXPECT_EQ(pairs[3].front, 12_teeth);
  // Fewer teeth than a sprocket can have are not offered.
  for (const SprocketPair& pair :
       nearest_sprockets(ChainLoop(ChainSeries("520"), 4_teeth, 5_teeth), Adjuster(600_mm, 660_mm)))
    EXPECT_GE(std::min(pair.front, pair.rear), 4_teeth);
}

}  // namespace
