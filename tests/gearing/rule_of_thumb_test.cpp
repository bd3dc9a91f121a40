// SPDX-License-Identifier: MIT
#include <layshaft/gearing/rule_of_thumb.hpp>

#include <gtest/gtest.h>
#include <core/formula_range.hpp>

namespace {
using namespace layshaft;
using layshaft_test::expect_range;

// Common practice, no source.
TEST(RuleOfThumb, ReckonsAsRidersDo) {
  EXPECT_DOUBLE_EQ(thrust_change_by_thumb(1.0, 0.0, 0.0), 0.02);
  EXPECT_DOUBLE_EQ(thrust_change_by_thumb(0.0, 1.0, 0.0), 0.06);
  EXPECT_DOUBLE_EQ(thrust_change_by_thumb(0.0, 0.0, 0.06), -0.06);
  EXPECT_DOUBLE_EQ(thrust_change_by_thumb(5.0, 0.0, 0.06), 0.04);
}

TEST(RuleOfThumb, KnowsItsRange) { expect_range<formula::thrust_change_by_thumb>("fff", 1.0, 0.0, 0.06); }

TEST(RuleOfThumb, CountsTeethAndTyresTheWayItReckons) {
  static_assert(rear_added(40_teeth, 45_teeth) == 5.0 && rear_added(45_teeth, 40_teeth) == -5.0);
  static_assert(front_removed(14_teeth, 13_teeth) == 1.0 && front_removed(13_teeth, 14_teeth) == -1.0);
  expect_range<formula::rear_added>("##", 40_teeth, 45_teeth);
  expect_range<formula::front_removed>("##", 14_teeth, 13_teeth);
}

}  // namespace
