// SPDX-License-Identifier: MIT
#include <layshaft/core/amount.hpp>

#include <gtest/gtest.h>

namespace {
using namespace layshaft;

TEST(Amount, KeepsItsKind) {
  EXPECT_EQ(Amount(612_mm).dimension, Dimension::length);
  EXPECT_EQ(Amount(612_mm).value, (612_mm).value());
  EXPECT_EQ(Amount(14_teeth).value, 14.0);
  EXPECT_EQ(Amount(106_links).dimension, Dimension::links);
  EXPECT_EQ(Amount::fraction(0.5).dimension, Dimension::fraction);
  EXPECT_NE(Amount::fraction(0.5), Amount::number(0.5));
  EXPECT_EQ(Amount().dimension, Dimension::none);
}

TEST(Amount, IsInSiUnits) {
  static_assert(Amount(90_kmh).value == (90_kmh).value() && Amount(90_kmh).dimension == Dimension::speed);
  static_assert(Amount(9500_rpm).value == (9500_rpm).value() && Amount(9500_rpm).dimension == Dimension::angular_speed);
  static_assert(Amount(100_kg).value == 100.0 && Amount(100_kg).dimension == Dimension::mass);
  static_assert(Amount(14_teeth).dimension == Dimension::teeth);
  static_assert(Amount::number(3.4).value == 3.4 && Amount::number(3.4).dimension == Dimension::number);
  EXPECT_NE(Amount(1_m), Amount(1_mps));
  EXPECT_NE(Amount(14_teeth), Amount(14_links));
}

}  // namespace
