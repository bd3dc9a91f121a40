// SPDX-License-Identifier: MIT
#include <layshaft/instrument/legal_limits.hpp>

#include <gtest/gtest.h>
#include <core/formula_range.hpp>

namespace {
using namespace layshaft;
using layshaft_test::expect_range;

// Source: UN Regulation No. 39, paragraph 5.3; worked upper limits 50 -> 59, 70 -> 81, 90 -> 103, 110 -> 125 and
// 130 -> 147 km/h.
TEST(HighestLawfulReading, AgreesWithTheWorkedLimits) {
  const std::pair<double, double> limits[] = {{50, 59}, {70, 81}, {90, 103}, {110, 125}, {130, 147}};
  for (const auto& [speed, highest] : limits)
    EXPECT_NEAR(highest_lawful_reading(speed * units::kmh) / units::kmh, highest, 1e-12);
}

TEST(SpeedometerVerdict, KeepsToBothEdges) {
  const auto verdict = [](double low, double high) {
    return speedometer_verdict(90_kmh, {low * units::kmh, low * units::kmh, high * units::kmh});
  };
  EXPECT_EQ(verdict(90.0, 103.0), SpeedometerVerdict::lawful);
  EXPECT_EQ(verdict(89.99, 103.0), SpeedometerVerdict::uncertain);
  EXPECT_EQ(verdict(90.0, 103.01), SpeedometerVerdict::uncertain);
  EXPECT_EQ(verdict(85.0, 89.99), SpeedometerVerdict::too_low);
  EXPECT_EQ(verdict(103.01, 110.0), SpeedometerVerdict::too_high);
  EXPECT_EQ(verdict(80.0, 110.0), SpeedometerVerdict::uncertain);
  EXPECT_EQ(speedometer_verdict(0_kmh, Band<Speed>::exactly(0_kmh)), SpeedometerVerdict::lawful);
}

TEST(IndicatedBand, IsWhatTheRuleAllowedWhereTheErrorIsUnknown) {
  const Band<Speed> shown = indicated_band(90_kmh, std::nullopt, Band<double>::exactly(1.0));
  EXPECT_EQ(shown.low, 90_kmh);
  EXPECT_EQ(shown.nominal, 90_kmh);
  EXPECT_EQ(shown.high, highest_lawful_reading(90_kmh));
  EXPECT_EQ(speedometer_verdict(90_kmh, shown), SpeedometerVerdict::lawful);
}

TEST(IndicatedBand, TakesBothCauses) {
  const Band<Speed> shown = indicated_band(100_kmh, Band<double>{0.02, 0.04, 0.06}, Band<double>{0.95, 1.0, 1.05});
  EXPECT_NEAR(shown.low / units::kmh, 100.0 * 1.02 * 0.95, 1e-12);
  EXPECT_NEAR(shown.nominal / units::kmh, 104.0, 1e-12);
  EXPECT_NEAR(shown.high / units::kmh, 100.0 * 1.06 * 1.05, 1e-12);
}

TEST(HighestLawfulReading, KnowsItsRange) { expect_range<formula::highest_lawful_reading>("0", 90_kmh); }

TEST(SpeedometerVerdict, HasAWord) {
  static_assert(to_string(SpeedometerVerdict::lawful) == "lawful");
  static_assert(to_string(SpeedometerVerdict::too_low) == "too low");
  static_assert(to_string(SpeedometerVerdict::too_high) == "too high");
  static_assert(to_string(SpeedometerVerdict::uncertain) == "uncertain");
}

}  // namespace
