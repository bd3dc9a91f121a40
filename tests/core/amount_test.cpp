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

TEST(Amount, KnowsEveryKindOfQuantity) {
  static_assert(Amount(Area()).dimension == Dimension::area && Amount(Duration()).dimension == Dimension::duration);
  static_assert(Amount(Acceleration()).dimension == Dimension::acceleration);
  static_assert(Amount(500_N).dimension == Dimension::force && Amount(Power()).dimension == Dimension::power);
  static_assert(Amount(Pressure()).dimension == Dimension::pressure &&
                Amount(Density()).dimension == Dimension::density);
  static_assert(Amount(LinearDensity()).dimension == Dimension::linear_density);
  static_assert(Amount(ForcePerSpeed()).dimension == Dimension::force_per_speed);
  static_assert(Amount(5_deg).dimension == Dimension::angle);
  static_assert(Amount(MomentOfInertia()).dimension == Dimension::moment_of_inertia);
  static_assert(Amount(Temperature()).dimension == Dimension::temperature);
  // Torque has energy's units but for the angle, and is another kind.
  static_assert(Amount(Torque()).dimension == Dimension::torque && Amount(Energy()).dimension == Dimension::energy);
  EXPECT_NE(Amount(Torque()), Amount(Energy()));
}

}  // namespace
