// SPDX-License-Identifier: MIT
#include <layshaft/gearing/contribution.hpp>

#include <gtest/gtest.h>
#include <core/formula_range.hpp>

#include <random>

namespace {
using namespace layshaft;
using layshaft_test::expect_range;

// Worked by hand to 50 digits: ln(1/1.06) and ln(1.125), each times (F - 1)/ln F with F = 1.125/1.06.
TEST(Contribution, SharesOutATallerTyreAndMoreTeethBehind) {
  const double whole = 1.125 / 1.06;
  EXPECT_NEAR(contribution(whole, 1.0 / 1.06), -0.0600377350865296, 1e-15);  // -6.00 points
  EXPECT_NEAR(contribution(whole, 1.125), 0.1213584898035107, 1e-15);        // +12.14 points
  EXPECT_NEAR(whole - 1.0, 0.0613207547169811, 1e-15);                       // +6.13 % in all
}

TEST(Contribution, AddsUpToTheWholeChange) {
  std::mt19937_64 random(23);
  std::uniform_real_distribution<double> factor(0.5, 2.0);
  for (int i = 0; i < 1000; ++i) {
    const double a = factor(random), b = factor(random), c = factor(random);
    const double whole = a * b * c;
    EXPECT_NEAR(contribution(whole, a) + contribution(whole, b) + contribution(whole, c), whole - 1.0, 2e-14);
  }
}

TEST(Contribution, HasItsLimitWhereFactorsCancel) {
  EXPECT_EQ(logarithmic_mean(1.0), 1.0);
  EXPECT_DOUBLE_EQ(contribution(1.0, 1.25), std::log(1.25));
  EXPECT_NEAR(contribution(1.0 + 1e-12, 1.25), std::log(1.25), 1e-11);
  EXPECT_EQ(contribution(1.3, 1.0), 0.0);
}

// 2026-11-26: below 1e-16 of a ratio less one nothing was left, and every share came to nothing.
TEST(Contribution, HoldsForChangesToNearlyNothing) {
  for (const double ratio : {1e-300, 1e-20, 1e-9, 0.49999, 0.5})
    EXPECT_NEAR(contribution(ratio, ratio), ratio - 1.0, 1e-15);
}

TEST(Contribution, KnowsItsRange) { expect_range<formula::contribution>("++", 1.06, 1.125); }

}  // namespace
