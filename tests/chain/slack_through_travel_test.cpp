// SPDX-License-Identifier: MIT
#include <layshaft/chain/slack_through_travel.hpp>

#include <gtest/gtest.h>
#include <chain/swingarm.hpp>

#include <cmath>
#include <string>

namespace {
using namespace layshaft;
using layshaft_test::swingarm;

ChainLoop swung_loop() { return ChainLoop(ChainSeries("520"), 16_teeth, 43_teeth); }

// Worked by hand: a chain just tight at the tight point of 640.664 mm.
TEST(SlackThroughTravel, KnowsSpareLengthAndHandMovementAtEveryAngle) {
  const double links = swung_loop().links(swingarm().tight_point().centre);
  const SlackThroughTravel travel = slack_through_travel(swingarm(), swung_loop(), links);
  const double expected[][3] = {
      {18, 2.1841, 52.71}, {12, 0.3921, 22.35}, {6, 0.0514, 8.09}, {0, 1.1646, 38.50}, {-6, 3.7231, 68.77}};
  for (const auto& [angle, spare, hand] : expected) {
    const SlackPoint point = travel.at(angle * units::deg);
    EXPECT_NEAR(in(point.spare_length, units::mm), spare, 5e-5) << angle;
    EXPECT_NEAR(in(point.slack, units::mm), hand, 5e-3) << angle;
  }
  EXPECT_NEAR(in(travel.tight_point().spare_length, units::mm), 0.0, 1e-10);
  EXPECT_FALSE(travel.too_tight());
}

TEST(SlackThroughTravel, FallsToNothingExactlyWhereTheLoopIsAsLongAsTheChain) {
  const SlackThroughTravel travel = slack_through_travel(swingarm(), swung_loop(), 110.0, {.slack = 12_mm});
  ASSERT_TRUE(travel.too_tight());
  // Between rest, where it is slack, and the tight point, where it is stretched, by halves.
  Angle slack = swingarm().rest(), stretched = swingarm().tightest();
  for (int i = 0; i < 60; ++i) {
    const Angle middle = 0.5 * (slack + stretched);
    (travel.at(middle).spare_length > Length() ? slack : stretched) = middle;
  }
  EXPECT_NEAR(swung_loop().links(travel.at(slack).centre), 110.0, 1e-9);
  EXPECT_EQ(travel.at(stretched).slack, 0_mm);
}

TEST(SlackThroughTravel, LeavesWhatIsSetAtRestAndLeastAtTheTightPoint) {
  for (const double slack : {15.0, 30.0, 45.0}) {
    const SlackThroughTravel travel =
        slack_through_travel(swingarm(), swung_loop(), 110.0, {.slack = slack * units::mm});
    EXPECT_NEAR(in(travel.rest().slack, units::mm), slack, 1e-6);
    for (int i = 0; i <= 240; ++i)
      EXPECT_GE(travel.at(std::min(-6.0_deg + double(i) * 0.1_deg, 18_deg)).spare_length,
                travel.tight_point().spare_length - 1e-9 * units::mm);
  }
}

TEST(SlackThroughTravel, SetsAtRestWhatLeavesTheLeastAtTheTightPoint) {
  const Length set = slack_to_set(swingarm(), swung_loop(), 110.0, 15_mm);
  EXPECT_GT(set, 15_mm);
  const SlackThroughTravel travel = slack_through_travel(swingarm(), swung_loop(), 110.0, {.slack = set});
  EXPECT_NEAR(in(travel.tight_point().slack, units::mm), 15.0, 1e-6);
}

TEST(SlackThroughTravel, CarriesTheManualsSlackOver) {
  const ChainLoop other(ChainSeries("520"), 15_teeth, 45_teeth);
  const Length set = carried_slack(swingarm(), swung_loop(), 110.0, 30_mm, other, 110.0);
  const auto stock = slack_through_travel(swingarm(), swung_loop(), 110.0, {.slack = 30_mm});
  const auto trial = slack_through_travel(swingarm(), other, 110.0, {.slack = set});
  EXPECT_NEAR(stock.tight_point().slack / trial.tight_point().slack, 1.0, 1e-9);
  EXPECT_NEAR(in(carried_slack(swingarm(), swung_loop(), 110.0, 30_mm, swung_loop(), 110.0), units::mm), 30.0, 1e-6);
  const auto refused = try_carried_slack(swingarm(), swung_loop(), 110.0, 5_mm, other, 110.0);
  ASSERT_FALSE(refused);
  EXPECT_TRUE(std::string(refused.error().what()).starts_with("the stock chain with 5 mm of slack at rest"))
      << refused.error().what();
}

TEST(SlackThroughTravel, RefusesWhatCannotBe) {
  EXPECT_FALSE(try_slack_through_travel(swingarm(), swung_loop(), 110.0, {.slack = 30_mm, .arm = 565_mm}));
  EXPECT_FALSE(try_slack_through_travel(swingarm(), swung_loop(), 20.0));
  EXPECT_FALSE(try_slack_through_travel(swingarm(), swung_loop(), 110.0, {.slack = -1.0_mm}));
  EXPECT_FALSE(try_slack_through_travel(swingarm(), swung_loop(), 110.0, {.arm = 76_mm}));
  EXPECT_FALSE(slack_through_travel(swingarm(), swung_loop(), 110.0).try_at(19_deg));
  EXPECT_THROW((void)slack_to_set(swingarm(), swung_loop(), 20.0, 15_mm), RangeError);
  const Suspension wide({.layshaft_ahead = 75_mm,
                         .layshaft_above = 10_mm,
                         .arm = 100_mm,
                         .droop = 18_deg,
                         .rest = 12_deg,
                         .bump = -6.0_deg});
  const auto touching = try_slack_through_travel(wide, ChainLoop(ChainSeries("520"), 16_teeth, 52_teeth), 60.0);
  ASSERT_FALSE(touching);
  EXPECT_TRUE(std::string(touching.error().what()).starts_with("centre distance within the travel is"))
      << touching.error().what();
}

// By hand: 20 links over twice four teeth stand the shafts 8 pitches of 15.875 mm, 127 mm, apart; the pivot alone lies
// half a metre from the layshaft.
TEST(SlackThroughTravel, RefusesAChainThatDoesNotReachThePivot) {
  const Suspension far({.layshaft_ahead = 500_mm,
                        .layshaft_above = 0_mm,
                        .arm = 565_mm,
                        .droop = 18_deg,
                        .rest = 12_deg,
                        .bump = -6.0_deg});
  const auto travel =
      try_slack_through_travel(far, ChainLoop(ChainSeries("520"), 4_teeth, 4_teeth), 20.0, {.slack = 5_mm});
  ASSERT_FALSE(travel);
  EXPECT_STREQ(travel.error().what(), "no arm of this swingarm leaves 5 mm of slack on 20 links");
}

TEST(SlackThroughTravel, CarriesNoSlackOverFromStockPartsThatCannotBe) {
  const auto carried = try_carried_slack(swingarm(), swung_loop(), 20.0, 30_mm, swung_loop(), 110.0);
  ASSERT_FALSE(carried);
  EXPECT_TRUE(std::string(carried.error().what()).starts_with("number of links is 20")) << carried.error().what();
}

TEST(SlackPoint, IsEqualWhereAllOfItIs) {
  const SlackPoint point = slack_through_travel(swingarm(), swung_loop(), 110.0, {.slack = 30_mm}).rest();
  SlackPoint other = point;
  EXPECT_EQ(point, other);
  other.angle += 1.0_deg;
  EXPECT_NE(point, other);
  for (Length SlackPoint::*one :
       {&SlackPoint::centre, &SlackPoint::spare_length, &SlackPoint::slack, &SlackPoint::sag}) {
    other = point;
    other.*one += 1.0_mm;
    EXPECT_NE(point, other);
  }
}

TEST(SlackThroughTravel, TakesSlackUpToAQuarterOfTheCentreDistance) {
  const Length quarter = 0.25 * swung_loop().centre(110_links);
  EXPECT_TRUE(try_slack_through_travel(swingarm(), swung_loop(), 110.0, {.slack = 0.9999 * quarter}));
  const auto refused = try_slack_through_travel(swingarm(), swung_loop(), 110.0, {.slack = 1.0001 * quarter});
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().kind(), ErrorKind::range);
  EXPECT_TRUE(std::string(refused.error().what()).starts_with("slack is ")) << refused.error().what();
}

// Worked by hand for C = 640 mm and a spare length of 1 mm (equal sprockets, so that the run is 640 mm): 35.8, 11.0,
// 15.5 mm.
TEST(Slack, IsToldInEveryWayItIsMeasured) {
  EXPECT_NEAR(in(slack_of(1_mm, 640_mm, SlackMethod::by_hand).movement, units::mm), 35.8, 0.05);
  EXPECT_NEAR(in(slack_of(1_mm, 640_mm, SlackMethod::sag_of_both_runs).movement, units::mm), 11.0, 0.05);
  EXPECT_NEAR(in(slack_of(1_mm, 640_mm, SlackMethod::sag_of_one_run).movement, units::mm), 15.5, 0.05);
  for (const SlackMethod from : {SlackMethod::by_hand, SlackMethod::sag_of_one_run, SlackMethod::sag_of_both_runs}) {
    EXPECT_NEAR(in(spare_length(slack_of(1_mm, 640_mm, from), 640_mm), units::mm), 1.0, 1e-12);
    const Slack hand = measured_as(slack_of(1_mm, 640_mm, from), SlackMethod::by_hand, 640_mm);
    EXPECT_NEAR(in(hand.movement, units::mm), std::sqrt(2.0 * 640.0), 1e-9);
    EXPECT_EQ(hand.method, SlackMethod::by_hand);
  }
}

// A chain catenary against its parabola: y = a (cosh(x/a) - 1), half length a sinh(x/a).
TEST(Slack, OfAHangingRunIsACatenaryNearly) {
  const double run = 0.640, a = 4.0;
  const double spare = 2.0 * a * std::sinh(0.5 * run / a) - run, sag = a * (std::cosh(0.5 * run / a) - 1.0);
  EXPECT_NEAR(hanging_sag(Length::from_value(spare), Length::from_value(run)).value(), sag, 1e-3 * sag);
}

TEST(Slack, OfAGapIsNotGuessed) {
  const auto spare = try_spare_length({50_mm, SlackMethod::gap}, 600_mm);
  ASSERT_FALSE(spare);
  EXPECT_NE(std::string(spare.error().what()).find("measure how far a hand moves"), std::string::npos);
  EXPECT_FALSE(try_slack_of(1_mm, 600_mm, SlackMethod::gap));
  EXPECT_FALSE(try_measured_as({50_mm, SlackMethod::gap}, SlackMethod::by_hand, 600_mm));
  EXPECT_FALSE(try_spare_length({-1.0_mm, SlackMethod::by_hand}, 600_mm));
  EXPECT_FALSE(try_spare_length({1_mm, SlackMethod::by_hand}, 0_mm));
  EXPECT_FALSE(try_slack_of(-1.0_mm, 600_mm, SlackMethod::by_hand));
  EXPECT_EQ(try_slack_of(1_mm, 0_mm, SlackMethod::by_hand).error().kind(), ErrorKind::range);
  EXPECT_FALSE(try_spare_length({50_mm, static_cast<SlackMethod>(99)}, 600_mm));  // nor of what is no method
  EXPECT_FALSE(try_slack_of(1_mm, 600_mm, static_cast<SlackMethod>(99)));
  EXPECT_THROW((void)spare_length(Slack{400_mm}, 600_mm), RangeError);
}

}  // namespace
