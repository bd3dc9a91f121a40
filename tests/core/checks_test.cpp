// SPDX-License-Identifier: MIT
#include <layshaft/core/checks.hpp>

#include <gtest/gtest.h>

namespace {
using namespace layshaft;
using layshaft::detail::outside;

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double infinity = std::numeric_limits<double>::infinity();

TEST(Outside, LetsBothEndsInAndNothingBeyond) {
  EXPECT_FALSE(outside("x", 1.0, 1.0, 2.0));
  EXPECT_FALSE(outside("x", 2.0, 1.0, 2.0));
  for (const double bad : {0.999, 2.001, nan, infinity, -infinity}) EXPECT_TRUE(outside("x", bad, 1.0, 2.0));
  EXPECT_STREQ(outside("x", nan, 1.0, 2.0)->what(), "x is not a number; expected 1 to 2");
  EXPECT_STREQ(outside("x", infinity, 1.0, 2.0)->what(), "x is infinite; expected 1 to 2");
  EXPECT_STREQ(outside("slack", 3_m, 1_mm, 2_m)->what(), "slack is 3000 mm; expected 1 mm to 2000 mm");
  EXPECT_STREQ(outside("slack", Length::from_value(infinity), 1_mm, 2_m)->what(),
               "slack is infinite; expected 1 mm to 2000 mm");
}

TEST(Outside, AsksABandForItsOrderToo) {
  EXPECT_FALSE(outside("b", Band<double>{1.0, 1.5, 2.0}, 1.0, 2.0));
  EXPECT_STREQ(outside("b", Band<double>{1.6, 1.5, 2.0}, 1.0, 2.0)->what(),
               "b is 1.6, 1.5, 2; expected low, nominal and high in rising order");
  EXPECT_TRUE(outside("b", Band<double>{1.0, nan, 2.0}, 1.0, 2.0));
  EXPECT_TRUE(outside("b", Band<double>{1.0, 1.5, 2.1}, 1.0, 2.0));
}

}  // namespace
