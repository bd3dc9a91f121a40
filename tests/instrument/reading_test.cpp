// SPDX-License-Identifier: MIT
#include <layshaft/instrument/reading.hpp>

#include <gtest/gtest.h>
#include <core/formula_range.hpp>

namespace {
using namespace layshaft;
using layshaft_test::expect_range;

TEST(WheelIndicatedRatio, IsLowWithATallerTyre) {
  EXPECT_EQ(wheel_indicated_ratio(2.0_m, 2.0_m), 1.0);
  EXPECT_NEAR(wheel_indicated_ratio(2.0_m, 2.12_m), 1.0 / 1.06, 1e-15);
  EXPECT_GT(wheel_indicated_ratio(2.0_m, 1.9_m), 1.0);
}

TEST(CorrectionFactor, BringsTheStockReadingBack) {
  for (const double ratio : {0.8, 0.9434, 1.0, 1.125}) {
    EXPECT_NEAR(ratio * correction_factor(ratio), 1.0, 2e-16);
    const Speed shown = indicated_speed(stock_reading(90_kmh, 0.04), ratio);
    EXPECT_NEAR(double(shown * correction_factor(ratio) / units::kmh), 93.6, 1e-12);
  }
}

TEST(StockReading, IsFastByItsErrorAtAnySpeed) {
  EXPECT_EQ(stock_reading(0_kmh, 0.04), 0_kmh);
  EXPECT_EQ(stock_reading(50_kmh, 0.0), 50_kmh);
  EXPECT_NEAR(double(stock_reading(50_kmh, 0.04) / units::kmh), 52.0, 1e-13);
  EXPECT_NEAR(double(stock_reading(50_kmh, -0.04) / units::kmh), 48.0, 1e-13);
}

TEST(SpeedometerSensor, HasAWord) {
  static_assert(to_string(SpeedometerSensor::layshaft) == "layshaft");
  static_assert(to_string(SpeedometerSensor::rear_wheel) == "rear wheel");
  static_assert(to_string(SpeedometerSensor::front_wheel) == "front wheel");
}

TEST(Readings, KnowTheirRange) {
  expect_range<formula::wheel_indicated_ratio>("++", 2_m, 2.1_m);
  expect_range<formula::correction_factor>("+", 0.95);
  expect_range<formula::stock_reading>("ff", 90_kmh, 0.04);
  expect_range<formula::indicated_speed>("f+", 90_kmh, 0.95);
}

TEST(OdometerDrift, IsTheRatioLessOne) {
  EXPECT_EQ(odometer_drift(1.0), 0.0);
  EXPECT_NEAR(odometer_drift(0.94), -0.06, 1e-15);
  expect_range<formula::odometer_drift>("+", 0.95);
}

}  // namespace
