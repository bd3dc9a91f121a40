// SPDX-License-Identifier: MIT
#include <layshaft/instrument/speedometer_reading.hpp>

#include <gtest/gtest.h>

#include <limits>

namespace {
using namespace layshaft;

constexpr Band<double> fast{0.02, 0.04, 0.06};
constexpr Band<double> shorter_geared{1.05, 1.0625, 1.075};

TEST(SpeedometerReading, GivesTheFactorAndTheDriftOfTheOdometer) {
  const SpeedometerReading reading(fast, shorter_geared);
  EXPECT_EQ(reading.indicated_ratio(), shorter_geared);
  EXPECT_EQ(reading.reading_error(), fast);
  EXPECT_EQ(reading.correction_factor(), (Band<double>{1.0 / 1.075, 1.0 / 1.0625, 1.0 / 1.05}));
  EXPECT_EQ(reading.odometer_drift(), (Band<double>{1.05 - 1.0, 0.0625, 1.075 - 1.0}));
  // The odometer does not share the speedometer's own error.
  EXPECT_EQ(SpeedometerReading(std::nullopt, shorter_geared).odometer_drift(), reading.odometer_drift());
}

TEST(SpeedometerReading, KeepsTheOdometerApart) {
  const SpeedometerReading reading(Band<double>::exactly(0.05), Band<double>{0.96, 0.97, 0.98});
  EXPECT_NEAR(reading.odometer_drift().nominal, -0.03, 1e-15);  // whatever the speedometer's own 5 %
  EXPECT_NEAR(reading.correction_factor().nominal, 1.0 / 0.97, 1e-15);
  EXPECT_NEAR(reading.correction_factor().low, 1.0 / 0.98, 1e-15);
  EXPECT_EQ(reading.verdict(90_kmh), SpeedometerVerdict::lawful);
  EXPECT_NEAR(reading.indicated(90_kmh).nominal / units::kmh, 90.0 * 1.05 * 0.97, 1e-12);
}

TEST(SpeedometerReading, CombinesItsOwnErrorWithTheChangeOfParts) {
  const Band<Speed> shown = SpeedometerReading(fast, shorter_geared).indicated(80_kmh);
  EXPECT_NEAR(double(shown.low / units::kmh), 80.0 * 1.02 * 1.05, 1e-12);
  EXPECT_NEAR(double(shown.nominal / units::kmh), 80.0 * 1.04 * 1.0625, 1e-12);
  EXPECT_NEAR(double(shown.high / units::kmh), 80.0 * 1.06 * 1.075, 1e-12);
}

// UN R39, paragraph 5.3: an instrument that was approved shows at 70 km/h between 70 and 81.
TEST(SpeedometerReading, IsAsWideAsTheRuleWhereNobodyMeasuredIt) {
  const SpeedometerReading reading(std::nullopt, Band<double>::exactly(1.0));
  EXPECT_NEAR(double(reading.indicated(70_kmh).low / units::kmh), 70.0, 1e-12);
  EXPECT_NEAR(double(reading.indicated(70_kmh).high / units::kmh), 81.0, 1e-12);
  EXPECT_EQ(reading.verdict(70_kmh), SpeedometerVerdict::lawful);
}

TEST(SpeedometerReading, HasAVerdictAtAnySpeed) {
  EXPECT_EQ(SpeedometerReading(fast, Band<double>::exactly(1.0)).verdict(100_kmh), SpeedometerVerdict::lawful);
  EXPECT_EQ(SpeedometerReading(fast, Band<double>::exactly(0.9)).verdict(100_kmh), SpeedometerVerdict::too_low);
  EXPECT_EQ(SpeedometerReading(fast, Band<double>::exactly(1.2)).verdict(100_kmh), SpeedometerVerdict::too_high);
  EXPECT_EQ(SpeedometerReading(fast, Band<double>::exactly(0.97)).verdict(100_kmh), SpeedometerVerdict::uncertain);
  EXPECT_EQ(SpeedometerReading(std::nullopt, Band<double>::exactly(0.97)).verdict(100_kmh),
            SpeedometerVerdict::uncertain);
  EXPECT_EQ(SpeedometerReading(fast, Band<double>::exactly(1.2)).verdict(0_kmh), SpeedometerVerdict::lawful);
}

TEST(SpeedometerReading, RefusesASpeedThatCannotBe) {
  const SpeedometerReading reading(fast, shorter_geared);
  for (const double good : {0.0, 1.0, 10000.0 / 3.6})
    EXPECT_TRUE(reading.try_indicated(Speed::from_value(good))) << good;
  for (const double bad : {-1e-9, -10.0, 2778.0, std::numeric_limits<double>::quiet_NaN(),
                           std::numeric_limits<double>::infinity(), -std::numeric_limits<double>::infinity()}) {
    EXPECT_FALSE(reading.try_indicated(Speed::from_value(bad))) << bad;
    EXPECT_FALSE(reading.try_verdict(Speed::from_value(bad))) << bad;
    EXPECT_THROW(static_cast<void>(reading.indicated(Speed::from_value(bad))), RangeError) << bad;
    EXPECT_THROW(static_cast<void>(reading.verdict(Speed::from_value(bad))), RangeError) << bad;
  }
  EXPECT_STREQ(reading.try_indicated(-10_kmh).error().what(), "true_speed is -10 km/h; expected 0 km/h to 10000 km/h");
}

}  // namespace
