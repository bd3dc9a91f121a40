// SPDX-License-Identifier: MIT
#include <layshaft/chain/drive.hpp>

#include <gtest/gtest.h>

#include <string>

namespace {
using namespace layshaft;

Suspension trail_swingarm(Length layshaft_above = 22_mm) {
  return Suspension({.layshaft_ahead = 70_mm,
                     .layshaft_above = layshaft_above,
                     .arm = 550_mm,
                     .droop = 19_deg,
                     .rest = 14_deg,
                     .bump = -8.0_deg});
}
const ChainLoop stock(ChainSeries("520"), 13_teeth, 48_teeth), trial(ChainSeries("520"), 13_teeth, 52_teeth);

TEST(SlackLeft, IsTheStocksOwnForTheStockSprockets) {
  const SlackLeft left = *try_slack_left(trail_swingarm(), 38_mm, stock, 110_links, stock, 110_links);
  EXPECT_EQ(left.least_slack.nominal, left.stock_least_slack);
  EXPECT_FALSE(left.too_tight());
  ASSERT_TRUE(left.slack_to_set);
  EXPECT_NEAR(in(*left.slack_to_set, units::mm), 38.0, 1e-6);
}

TEST(SlackLeft, SaysWhatToSetForOtherSprockets) {
  const SlackLeft left = *try_slack_left(trail_swingarm(), 38_mm, trial, 112_links, stock, 110_links);
  ASSERT_TRUE(left.slack_to_set);
  const auto travel = slack_through_travel(trail_swingarm(), trial, 112.0, {.slack = *left.slack_to_set});
  EXPECT_NEAR(travel.tight_point().slack / left.stock_least_slack, 1.0, 1e-9);
  EXPECT_EQ(travel.tight_point().angle, left.tightest);
  EXPECT_LE(left.least_slack.low, left.least_slack.high);
}

TEST(SlackLeft, TellsByHowMuchTheChainIsTooShort) {
  const SlackLeft left = *try_slack_left(trail_swingarm(-40.0_mm), 20_mm, trial, 112_links, stock, 110_links);
  EXPECT_TRUE(left.too_tight());
  EXPECT_GT(left.stretch, 0_mm);
  EXPECT_EQ(left.least_slack.nominal, 0_mm);
  EXPECT_FALSE(left.slack_to_set);  // the stock chain would be stretched as well
  EXPECT_FALSE(try_slack_left(trail_swingarm(), 38_mm, trial, 20_links, stock, 110_links));
  EXPECT_FALSE(try_slack_left(trail_swingarm(), 38_mm, trial, 112_links, stock, 20_links));
}

// By hand: 1.95 links more, of a chain of 1300 that is 0.15 % long, take 15.5 mm more of an arm that ends at 10 m.
TEST(SlackLeft, IsRefusedWhereOnlyTheLongestNewChainIsTooLong) {
  const auto nominal = SlackThroughTravel::with_slack(trail_swingarm(), trial, 1300.0, 38_mm);
  ASSERT_TRUE(nominal);
  EXPECT_GT(nominal->arm(), 10_m - 15.5_mm);
  const auto left = try_slack_left(trail_swingarm(), 38_mm, trial, 1300_links, stock, 110_links);
  ASSERT_FALSE(left);
  EXPECT_TRUE(std::string(left.error().what()).starts_with("arm is ")) << left.error().what();
}

// The stock sprockets leave more at the tight point than the others do; to leave as much, these would have to stand
// nearer, and then they touch at the end of the travel.
TEST(SlackLeft, IsRefusedWhereTheSlackToSetWouldMakeTheSprocketsTouch) {
  const Suspension low({.layshaft_ahead = 22_mm,
                        .layshaft_above = -37.0_mm,
                        .arm = 150_mm,
                        .droop = 29_deg,
                        .rest = -8.0_deg,
                        .bump = -11.0_deg});
  const ChainLoop wide(ChainSeries("520"), 22_teeth, 48_teeth), small(ChainSeries("520"), 17_teeth, 21_teeth);
  const auto own = SlackThroughTravel::with_slack(low, wide, 63.0, 37_mm);
  const auto of_stock = SlackThroughTravel::with_slack(low, small, 40.0, 37_mm);
  ASSERT_TRUE(own);
  ASSERT_TRUE(of_stock);
  EXPECT_GT(of_stock->tight_point().slack, own->tight_point().slack);
  const auto left = try_slack_left(low, 37_mm, wide, 63_links, small, 40_links);
  ASSERT_FALSE(left);
  EXPECT_TRUE(std::string(left.error().what()).starts_with("centre distance within the travel is "))
      << left.error().what();
}

}  // namespace
