// SPDX-License-Identifier: MIT
#include <layshaft/chain/slack.hpp>

#include <gtest/gtest.h>
#include <core/formula_range.hpp>

#include <cmath>

namespace {
using namespace layshaft;
using layshaft_test::expect_range;

// Worked by hand (facts of the trade: C = 640, S = 1 give 35.8 mm by hand for equal sprockets).
TEST(SpareLength, AndHandMovementAreInverse) {
  EXPECT_NEAR(in(slack_by_hand(1_mm, 640_mm), units::mm), 35.8, 0.05);
  EXPECT_NEAR(in(spare_length(slack_by_hand(1.7_mm, 612_mm), 612_mm), units::mm), 1.7, 1e-12);
}

TEST(SpareLength, IsTheLongSidesOfTwoFlatTriangles) {
  // A run of 600 mm whose middle moves 15 mm each way, by Pythagoras, against the formula for a small slack.
  const double exact = 2.0 * std::sqrt(300.0 * 300.0 + 15.0 * 15.0) - 600.0;
  EXPECT_NEAR(in(spare_length(30_mm, 600_mm), units::mm), exact, 1e-3 * exact);
}

TEST(SpareLength, KnowsItsRange) {
  expect_range<formula::spare_length>("f+", 30_mm, 600_mm);
  // 2026-11-25: a loop too short by a little was in range, and its slack not a number.
  expect_range<formula::slack_by_hand>("0+", 1_mm, 600_mm);
  EXPECT_EQ(slack_by_hand(0_mm, 600_mm), 0_mm);
  EXPECT_EQ(spare_length(0_mm, 600_mm), 0_mm);
}

TEST(Slack, IsAtMostHalfTheRun) {
  for (const SlackMethod method : {SlackMethod::by_hand, SlackMethod::sag_of_one_run, SlackMethod::sag_of_both_runs}) {
    EXPECT_TRUE(try_spare_length({320_mm, method}, 640_mm));
    EXPECT_FALSE(try_spare_length({320.1_mm, method}, 640_mm));
  }
}

}  // namespace
