// SPDX-License-Identifier: MIT
#include <layshaft/chain/drive.hpp>

#include <gtest/gtest.h>

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

}  // namespace
