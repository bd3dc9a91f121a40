// SPDX-License-Identifier: MIT
#include <layshaft/gearing/change.hpp>

#include <gtest/gtest.h>
#include <core/formula_range.hpp>

#include <random>

namespace {
using namespace layshaft;
using layshaft_test::expect_range;

// Common practice, no source: a tyre 6 % taller and 40 to 45 behind; worked by hand: 1.125 / 1.06 - 1.
TEST(ThrustChange, OfATallerTyreAndMoreTeethBehind) {
  EXPECT_NEAR(thrust_change(40.0, 2.0_m, 45.0, 2.12_m), 0.0613207547169811, 1e-15);
}

TEST(ThrustChange, TimesSpeedChangeIsOne) {
  std::mt19937_64 random(22);
  std::uniform_real_distribution<double> ratio(2.0, 4.5), metre(1.6, 2.4);
  for (int i = 0; i < 1000; ++i) {
    const double from = ratio(random), to = ratio(random);
    const Length small = metre(random) * units::m, large = metre(random) * units::m;
    const double thrust = thrust_change(from, small, to, large);
    const double speed = speed_change(from, small, to, large);
    EXPECT_NEAR((1.0 + thrust) * (1.0 + speed), 1.0, 2e-15);
    EXPECT_NEAR(engine_speed_change(speed), thrust, 2e-15);
  }
}

TEST(Changes, AreExactlyZeroWhenNothingChanges) {
  EXPECT_EQ(thrust_change(3.1, 2.017_m, 3.1, 2.017_m), 0.0);
  EXPECT_EQ(speed_change(3.1, 2.017_m, 3.1, 2.017_m), 0.0);
  EXPECT_EQ(engine_speed_change(0.0), 0.0);
}

TEST(Changes, HoldInTheirRangeOnly) {
  EXPECT_FALSE(formula::thrust_change::in_range(0.0, 2_m, 1.0, 2_m));
  EXPECT_FALSE(formula::thrust_change::in_range(1.0, 2_m, 1.0, -2_m));
  EXPECT_TRUE(formula::engine_speed_change::in_range(-0.999));
  EXPECT_FALSE(formula::engine_speed_change::in_range(-1.0));
}

TEST(Changes, KnowTheirRange) {
  expect_range<formula::turns_ratio>("++++", 3.0, 2_m, 3.1, 2.1_m);
  expect_range<formula::thrust_change>("++++", 3.0, 2_m, 3.1, 2.1_m);
  expect_range<formula::speed_change>("++++", 3.0, 2_m, 3.1, 2.1_m);
  expect_range<formula::engine_speed_change>(".", 0.1);
}

TEST(ThrustChange, WithLossCountsTheEfficiencyAsAFactor) {
  EXPECT_NEAR(thrust_change_with_loss(3.0, 2_m, 3.0, 2_m, 0.92, 0.97), 0.97 / 0.92 - 1.0, 1e-15);
  EXPECT_NEAR(thrust_change_with_loss(40.0, 2_m, 45.0, 2.12_m, 0.95, 0.95), thrust_change(40.0, 2_m, 45.0, 2.12_m),
              1e-15);
  EXPECT_EQ(thrust_change_with_loss(3.1, 2.017_m, 3.1, 2.017_m, 0.9, 0.9), 0.0);
  expect_range<formula::thrust_change_with_loss>("++++++", 3.0, 2_m, 3.1, 2.1_m, 0.95, 0.97);
}

}  // namespace
