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

}  // namespace
