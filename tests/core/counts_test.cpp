// SPDX-License-Identifier: MIT
#include <layshaft/core/counts.hpp>

#include <gtest/gtest.h>

#include <climits>
#include <type_traits>

namespace {
using namespace layshaft;

TEST(Count, KnowsItsRange) {
  for (const int good : {4, 5, 999, 1000}) {
    ASSERT_TRUE(Teeth::make(good));
    EXPECT_EQ(Teeth::make(good)->count(), good);
    EXPECT_EQ(Teeth(good).count(), good);
  }
  for (const int bad : {3, 0, -14, 1001, INT_MAX, INT_MIN}) {
    ASSERT_FALSE(Teeth::make(bad));
    EXPECT_EQ(Teeth::make(bad).error().kind(), ErrorKind::range);
    EXPECT_EQ(Teeth::make(bad).error().what(), "number of teeth is " + std::to_string(bad) + "; expected 4 to 1000");
    EXPECT_THROW(Teeth{bad}, RangeError);
  }
  EXPECT_STREQ(Links::make(3).error().what(), "number of links is 3; expected 4 to 10000");
}

TEST(Count, IsNoPlainNumberAndNoOtherCount) {
  static_assert(!std::is_convertible_v<int, Teeth>);
  static_assert(!std::is_convertible_v<Teeth, int>);
  static_assert(!std::is_convertible_v<Teeth, double>);
  static_assert(!std::is_constructible_v<Links, Teeth>);
  static_assert(!std::is_constructible_v<Teeth, double>);  // 2026-11-25: Teeth(14.7) was 14 teeth, without a word
  static_assert(!std::is_constructible_v<Teeth, float>);
  static_assert(std::is_constructible_v<Teeth, int>);
}

TEST(Count, BecomesANumberInAFormula) {
  static_assert(40_teeth / 14_teeth == 40.0 / 14.0);
  static_assert(40_teeth - 14_teeth == 26.0);
  static_assert(14_teeth + 40_teeth == 54.0);
  static_assert(2.0 * 14_teeth == 28.0 && 14_teeth * 2.0 == 28.0);
  static_assert(1.0 - 14_teeth == -13.0 && 14_teeth - 1.0 == 13.0);
  static_assert(12.7_mm * 14_teeth == 14_teeth * 12.7_mm);
  static_assert(13_teeth < 14_teeth && 106_links == Links::literal(106));
  EXPECT_EQ(half_turn / 10_teeth, half_turn / 10.0);
}

TEST(Count, TakesNumbersOnEitherSide) {
  static_assert(14_teeth + 0.5 == 14.5 && 0.5 + 14_teeth == 14.5);
  static_assert(110_links * 1.5 == 165.0 && 110_links / 2.0 == 55.0);
  static_assert(110_links - 0.5 == 109.5 && 0.5 - 110_links == -109.5);
}

TEST(CommonFactor, IsTheGreatestWholeNumberThatDividesBoth) {
  static_assert(common_factor(15_teeth, 96_links) == 3.0);
  static_assert(common_factor(14_teeth, 96_links) == 2.0);
  static_assert(common_factor(13_teeth, 96_links) == 1.0);
  static_assert(common_factor(48_teeth, 96_links) == 48.0 && common_factor(96_links, 48_teeth) == 48.0);
}

// What is built in alone, while the program runs: by no constant expression.
TEST(Count, CountsAsAnIntDoes) {
  for (int count = 4; count < 200; count += 7)
    for (const double number : {0.5, 3.0, 1e6}) {
      const Teeth teeth(count);
      const Links links(count);
      EXPECT_EQ(number + teeth, number + count);
      EXPECT_EQ(teeth + number, count + number);
      EXPECT_EQ(number - links, number - count);
      EXPECT_EQ(links - number, count - number);
    }
}

}  // namespace
