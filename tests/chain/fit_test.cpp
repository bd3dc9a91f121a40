// SPDX-License-Identifier: MIT
#include <layshaft/chain/fit.hpp>

#include <gtest/gtest.h>
#include <core/formula_range.hpp>
#include <reference/csv.hpp>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <random>
#include <string>
#include <string_view>

namespace {
using namespace layshaft;
using layshaft_test::expect_range;

/// The number that stands right behind the words in a sentence; NaN where the words do not stand there.
double number_behind(std::string_view words, std::string_view sentence) {
  const std::size_t at = sentence.find(words);
  if (at == sentence.npos) return std::nan("");
  const std::string_view rest = sentence.substr(at + words.size());
  return layshaft_test::number(rest.substr(0, rest.find(' ')));
}

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
  EXPECT_EQ(fit.adjuster_forward.nominal, fit.centre.nominal - 612_mm);
  EXPECT_EQ(fit.adjuster_forward.high, fit.centre.high - 612_mm);
  EXPECT_EQ(fit.adjuster_rearward.low, 648_mm - fit.centre.high);
  EXPECT_EQ(fit.adjuster_rearward.nominal, 648_mm - fit.centre.nominal);
  EXPECT_EQ(fit.adjuster_rearward.high, 648_mm - fit.centre.low);
  for (const Band<Length>& band : {fit.centre, fit.adjuster_forward, fit.adjuster_rearward})
    EXPECT_TRUE(well_formed(band));
  EXPECT_TRUE(well_formed(fit.wear_room));
  EXPECT_EQ(fit.wear_room.high, fit.wear_room.nominal);
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

// A chain that fits at its nominal length, but not when it is as long as the standard allows, is none to rely on. A
// nanometre is the rounding of an adjuster's ends that were themselves computed.
TEST(FitLinks, FitsOnlyWhereTheWholeBandDoes) {
  const ChainFit fit = fit_links(loop(), 110_links, Adjuster(600_mm, 660_mm, 30_mm));
  const Length low = fit.centre.low, high = fit.centre.high, hair = 1e-6 * units::mm;
  const auto fits = [](Length least, Length greatest) {
    return fit_links(loop(), 110_links, Adjuster(least, greatest, 30_mm)).fits;
  };
  EXPECT_TRUE(fits(low, high));
  EXPECT_TRUE(fits(low + 0.5 * hair, high - 0.5 * hair));
  EXPECT_FALSE(fits(low + 2.0 * hair, high));
  EXPECT_FALSE(fits(low, high - 2.0 * hair));
  EXPECT_FALSE(fits(low, 0.5 * (low + high)));
  EXPECT_FALSE(fits(0.5 * (low + high), high));
}

TEST(FitLinks, TakesAnOddCountOnlyAsAChoiceAndSaysSo) {
  EXPECT_TRUE(fit_links(loop(), 111_links, Adjuster(600_mm, 660_mm)).offset_link);
  EXPECT_FALSE(fit_links(loop(), 112_links, Adjuster(600_mm, 660_mm)).offset_link);
  EXPECT_EQ(fit_links(loop(), 111_links, Adjuster(600_mm, 660_mm)).links, 111_links);
}

// Slack takes links of its own: a count may close taut, and yet not with the slack before the teeth touch.
TEST(FitLinks, SaysHowManyLinksTheSlackTakes) {
  const Adjuster slack(400_mm, 660_mm, 100_mm);
  const Links fewest = loop().fewest_links();
  EXPECT_TRUE(try_fit_links(loop(), fewest, Adjuster(400_mm, 660_mm)));
  const auto refused = try_fit_links(loop(), fewest, slack);
  ASSERT_FALSE(refused);
  const std::string what = refused.error().what();
  EXPECT_TRUE(what.starts_with("number of links is " + std::to_string(fewest.count()) + "; expected at least "))
      << what;
  EXPECT_TRUE(what.ends_with(" for 100 mm of slack on sprockets of 13/48 teeth")) << what;
  const auto least = static_cast<int>(number_behind("at least ", what));
  EXPECT_GT(least, fewest.count());
  EXPECT_TRUE(try_fit_links(loop(), Links(least), slack));
  EXPECT_FALSE(try_fit_links(loop(), Links(least - 1), slack));
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

TEST(ShortestLinks, NameTheThreeNearestSprocketsAndNoMore) {
  const Adjuster narrow(630_mm, 634_mm, 30_mm);
  const SprocketPairs pairs = nearest_sprockets(loop(), narrow);
  ASSERT_GT(pairs.size(), 3u);
  std::string end = "; the nearest sprockets that close: ";
  for (std::size_t i = 0; i < 3; ++i)
    end += (i == 0 ? "" : ", ") + std::to_string(pairs[i].front.count()) + "/" + std::to_string(pairs[i].rear.count()) +
           " with " + std::to_string(pairs[i].links.count()) + " links";
  const std::string what = try_shortest_links(loop(), narrow).error().what();
  EXPECT_TRUE(what.ends_with(end)) << what;
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

// 2026-11-25: the axle stood within the adjuster, and yet was told to be short of its front end.
TEST(ShortestLinks, SayWhenItIsTheTeethThatStopTheAxle) {
  const ChainLoop small(ChainSeries("520"), 16_teeth, 24_teeth);
  const Adjuster adjuster(104_mm, 124_mm);
  const Length foremost = small.smallest_centre();
  ASSERT_GT(foremost, adjuster.centre_min());
  const auto links = try_shortest_links(small, adjuster);
  ASSERT_FALSE(links);
  const std::string what = links.error().what();
  EXPECT_EQ(what.find("front end"), std::string::npos) << what;
  const Length short_centre = chain_centre(15.875_mm, 16_teeth, 24_teeth, 34.0);
  ASSERT_GT(short_centre, adjuster.centre_min());
  EXPECT_NEAR(number_behind("34 links leave the axle ", what), in(foremost - short_centre, units::mm), 0.005) << what;
  EXPECT_NE(what.find(" mm short of where the teeth touch, 36 links run up to "), std::string::npos) << what;
}

// What the two nearest even counts are said to miss by is what fit_links finds.
TEST(ShortestLinks, MissByWhatTheySay) {
  const Adjuster narrow(630_mm, 634_mm, 30_mm);
  const std::string what = try_shortest_links(loop(), narrow).error().what();
  const Links fewer(static_cast<int>(number_behind("48 teeth: ", what)));
  const Links more(fewer.count() + 2);
  EXPECT_NEAR(number_behind("leave the axle ", what),
              in(-fit_links(loop(), fewer, narrow).adjuster_forward.low, units::mm), 0.005);
  EXPECT_NEAR(number_behind(std::to_string(more.count()) + " links run up to ", what),
              in(-fit_links(loop(), more, narrow).adjuster_rearward.low, units::mm), 0.005);
}

TEST(NearestSprockets, ComeInOrderOfTheTeethTheyChange) {
  const SprocketPairs pairs = nearest_sprockets(loop(), Adjuster(600_mm, 660_mm, 30_mm));
  static_assert(SprocketPairs::capacity == 3 * 7 - 1);
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
}

TEST(NearestSprockets, OfferNoFewerAndNoMoreTeethThanASprocketHas) {
  // 4 and 5 in front; 4 to 8 behind.
  const SprocketPairs small =
      nearest_sprockets(ChainLoop(ChainSeries("520"), 4_teeth, 5_teeth), Adjuster(600_mm, 660_mm));
  EXPECT_EQ(small.size(), 2u * 5u - 1u);
  for (const SprocketPair& pair : small) EXPECT_GE(std::min(pair.front, pair.rear), 4_teeth);
  // 999 and 1000 in front; 995 to 1000 behind.
  const SprocketPairs large =
      nearest_sprockets(ChainLoop(ChainSeries("520"), 1000_teeth, 998_teeth), Adjuster(9_m, 10_m));
  EXPECT_EQ(large.size(), 2u * 6u - 1u);
}

// Worked out by trying every pair and every even count.
TEST(NearestSprockets, AreAllThatCloseAndNoOthers) {
  for (const double front_end : {620.0, 628.0, 631.5, 640.0}) {
    const Adjuster adjuster(front_end * units::mm, (front_end + 5.0) * units::mm, 30_mm);
    std::size_t close = 0;
    const SprocketPairs pairs = nearest_sprockets(loop(), adjuster);
    for (int front = 12; front <= 14; ++front) {
      for (int rear = 45; rear <= 51; ++rear) {
        if (front == 13 && rear == 48) continue;
        const ChainLoop one(ChainSeries("520"), Teeth(front), Teeth(rear));
        int shortest = 0;
        for (int links = 100; links <= 120 && shortest == 0; links += 2)
          if (fit_links(one, Links(links), adjuster).fits) shortest = links;
        if (shortest == 0) continue;
        ++close;
        const SprocketPair expected{Teeth(front), Teeth(rear), Links(shortest)};
        EXPECT_NE(std::find(pairs.begin(), pairs.end(), expected), pairs.end()) << front << "/" << rear;
      }
    }
    EXPECT_EQ(pairs.size(), close) << front_end;
    EXPECT_GT(close, 0u);
    EXPECT_LT(close, SprocketPairs::capacity);
  }
}

TEST(FitFormulas, CountALongerChainAsMoreLinks) {
  EXPECT_EQ(effective_links(110_links, 0.0), 110.0);
  EXPECT_NEAR(effective_links(110_links, new_chain_elongation), 110.165, 1e-12);
  EXPECT_NEAR(links_with_slack(109.5, 5.0_mm, 12.5_mm), 109.9, 1e-13);
  EXPECT_NEAR(adjuster_forward(612_mm, 600_mm) / units::mm, 12.0, 1e-12);
  EXPECT_NEAR(adjuster_rearward(612_mm, 600_mm) / units::mm, -12.0, 1e-12);  // it stands too far back
  EXPECT_NEAR(wear_room(111.1, 110_links, 0.0015), 0.01 - 0.0015, 1e-15);
}

TEST(FitFormulas, KnowTheirRange) {
  expect_range<formula::effective_links>("#.", 110_links, 0.0015);
  EXPECT_TRUE(formula::effective_links::in_range(110_links, -0.999));
  EXPECT_FALSE(formula::effective_links::in_range(110_links, -1.0));
  expect_range<formula::links_with_slack>("+0+", 109.5, 5_mm, 12.7_mm);
  expect_range<formula::adjuster_forward>("ff", 612_mm, 600_mm);
  expect_range<formula::adjuster_rearward>("ff", 612_mm, 640_mm);
  expect_range<formula::wear_room>("+#f", 111.0, 110_links, 0.0015);
}

// As many links as close where the pitch circles touch leave none over for slack: not to the last bit of the solve.
TEST(CentreWithSlack, IsNoneWherePitchCirclesWouldHaveToOverlap) {
  const ChainSeries series("520");
  const Length pitch = series.pitch();
  for (int front = 4; front < 60; ++front)
    for (int rear = 4; rear < 60; ++rear) {
      const Length touching = 0.5 * (pitch_diameter(pitch, Teeth(front)) + pitch_diameter(pitch, Teeth(rear)));
      const double links = chain_links(pitch, Teeth(front), Teeth(rear), touching);
      for (const double one : {links, std::nextafter(links, 0.0), std::nextafter(links, HUGE_VAL)}) {
        const ChainLoop loop(series, Teeth(front), Teeth(rear));
        EXPECT_FALSE(is_finite(layshaft::detail::centre_with_slack(loop, one, 1_mm))) << front << '/' << rear;
      }
    }
}

// The adjuster ends just behind where 13/48 touch; with four teeth more even the pitch circles overlap there.
TEST(NearestSprockets, AreNoneThatCollideAtTheRearEnd) {
  const Length end = loop().smallest_centre() + 0.1_mm;
  const Adjuster adjuster(end - 20.0_mm, end);
  EXPECT_GT(0.5 * (pitch_diameter(15.875_mm, 14_teeth) + pitch_diameter(15.875_mm, 51_teeth)), end);
  ASSERT_FALSE(try_shortest_links(loop(), adjuster));
  const SprocketPairs pairs = nearest_sprockets(loop(), adjuster);
  EXPECT_FALSE(pairs.empty());
  for (const SprocketPair& pair : pairs) {
    const ChainLoop other(ChainSeries("520"), pair.front, pair.rear);
    EXPECT_LT(other.smallest_centre(), end);
    EXPECT_TRUE(fit_links(other, pair.links, adjuster).fits);
  }
}

}  // namespace
