// SPDX-License-Identifier: MIT
#include <layshaft/show/display.hpp>

#include <gtest/gtest.h>

#include <cmath>
#include <string>

namespace {
using namespace layshaft;
constexpr UnitSystem metric = UnitSystem::metric, us = UnitSystem::us;

TEST(ShowNumber, HasSoManyDecimalsAndNoMinusBeforeZero) {
  EXPECT_EQ(show_number(612.345, 1), "612.3");
  EXPECT_EQ(show_number(-2.0, 1), "-2.0");
  EXPECT_EQ(show_number(0.0, 2), "0.00");
  EXPECT_EQ(show_number(-0.0, 1), "0.0");
  EXPECT_EQ(show_number(-0.04, 1), "0.0");
  EXPECT_EQ(show_number(-0.4, 0), "0");
  EXPECT_EQ(show_number(-0.06, 1), "-0.1");
  EXPECT_EQ(show_number(1e22, 0), "10000000000000000000000");
  EXPECT_EQ(show_number(1.7976931348623157e308, 3).size(), 313u);
}

TEST(ShowNumber, NeverShowsMinusZero) {
  for (int decimals = 0; decimals <= 4; ++decimals)
    for (int i = -2000; i <= 2000; ++i) {
      const double number = i * 0.00037;
      const std::string text = show_number(number, decimals), with_sign = show_signed(number, decimals);
      const bool zero = text.find_first_not_of("0.") == std::string::npos;
      EXPECT_EQ(text.starts_with('-'), number < 0.0 && !zero && text != "0") << text;
      EXPECT_EQ(with_sign, zero || number < 0.0 ? text : "+" + text);
      EXPECT_LE(std::abs(std::stod(text) - number), 0.5000001 * std::pow(10.0, -decimals));
    }
}

TEST(ShowSigned, HasASignUnlessItShowsZero) {
  EXPECT_EQ(show_signed(6.13, 1), "+6.1");
  EXPECT_EQ(show_signed(-2.0, 1), "-2.0");
  EXPECT_EQ(show_signed(0.04, 1), "0.0");
  EXPECT_EQ(show_signed(-0.04, 1), "0.0");
  EXPECT_EQ(show_signed(0.0, 0), "0");
}

TEST(Show, WritesAQuantityInTheUnitsOfTheReader) {
  EXPECT_EQ(show(612.34_mm, metric), "612.3 mm");
  EXPECT_EQ(show(612.34_mm, us), "24.11 in");
  EXPECT_EQ(show(90_kmh, metric), "90.0 km/h");
  EXPECT_EQ(show(60_mph, us), "60.0 mph");
  EXPECT_EQ(show(100_kmh, us), "62.1 mph");
  EXPECT_EQ(show(132.4_kg, metric), "132 kg");
  EXPECT_EQ(show(100_kg, us), "220 lb");
  EXPECT_EQ(show(9500_rpm, metric), "9500 rpm");
  EXPECT_EQ(show(9500_rpm, us), "9500 rpm");
  EXPECT_EQ(show(-0.01_mm, metric), "0.0 mm");
}

TEST(Show, PutsTheEndsOfABandBehindItsNominalValueWhereTheyShow) {
  EXPECT_EQ(show(Band<Length>{611_mm, 612.34_mm, 613.5_mm}, metric), "612.3 (611.0 to 613.5) mm");
  EXPECT_EQ(show(Band<Length>{612.33_mm, 612.34_mm, 612.349_mm}, metric), "612.3 mm");
  EXPECT_EQ(show(Band<Length>{612.34_mm, 612.34_mm, 613.5_mm}, metric), "612.3 (612.3 to 613.5) mm");
  EXPECT_EQ(show(Band<Speed>{59_mph, 60_mph, 61_mph}, us), "60.0 (59.0 to 61.0) mph");
  EXPECT_EQ(show(Band<double>{0.952, 0.971, 0.990}, 3), "0.971 (0.952 to 0.990)");
  EXPECT_EQ(show(Band<double>::exactly(1.0), 3), "1.000");
  EXPECT_EQ(show(Band<double>{-0.0001, 0.0, 0.0001}, 3), "0.000");
}

TEST(ShowPercent, HasASign) {
  EXPECT_EQ(show_percent(0.0613), "+6.1 %");
  EXPECT_EQ(show_percent(-0.0613, 2), "-6.13 %");
  EXPECT_EQ(show_percent(-0.0001), "0.0 %");
  EXPECT_EQ(show_percent(Band<double>{0.040, 0.061, 0.082}), "+6.1 (+4.0 to +8.2) %");
  EXPECT_EQ(show_percent(Band<double>{-0.02, 0.0, 0.02}), "0.0 (-2.0 to +2.0) %");
  EXPECT_EQ(show_percent(Band<double>::exactly(-0.02)), "-2.0 %");
}

TEST(ShowAmount, KnowsEveryKind) {
  EXPECT_EQ(show(Amount(), metric), "");
  EXPECT_EQ(show(Amount::number(3.4), metric), "3.400");
  EXPECT_EQ(show(Amount::fraction(0.024), metric), "2.4 %");
  EXPECT_EQ(show(Amount::fraction(-0.0001), metric), "0.0 %");
  EXPECT_EQ(show(Amount(14_teeth), metric), "14");
  EXPECT_EQ(show(Amount(106_links), us), "106");
  EXPECT_EQ(show(Amount(612.34_mm), metric), "612.3 mm");
  EXPECT_EQ(show(Amount(612.34_mm), us), "24.11 in");
  EXPECT_EQ(show(Amount(100_kg), us), "220 lb");
  EXPECT_EQ(show(Amount(100_kmh), us), "62.1 mph");
  EXPECT_EQ(show(Amount(9500_rpm), us), "9500 rpm");
  EXPECT_EQ(show(Amount(2.0_m * 0.25_m), us), "0.500 m2");
  EXPECT_EQ(show(Amount(Duration::from_value(4.25)), us), "4.2 s");
  EXPECT_EQ(show(Amount(Acceleration::from_value(9.80665)), us), "9.81 m/s2");
  EXPECT_EQ(show(Amount(Energy::from_value(12345.6)), us), "12346 J");
  EXPECT_EQ(show(Amount(Pressure::from_value(180000.0)), us), "1.80 bar");
  EXPECT_EQ(show(Amount(Density::from_value(1.225)), us), "1.225 kg/m3");
  EXPECT_EQ(show(Amount(LinearDensity::from_value(1.549)), us), "1.55 kg/m");
  EXPECT_EQ(show(Amount(ForcePerSpeed::from_value(0.754)), us), "0.75 N s/m");
  EXPECT_EQ(show(Amount(MomentOfInertia::from_value(0.0624)), us), "0.062 kg m2");
  EXPECT_EQ(show(Amount(Temperature::from_value(288.15)), metric), "288.1 K");
  EXPECT_EQ(show(Amount(12.34_deg), metric), "12.3 deg");
}

// By NIST SP 811, App. B: 1 lbf is 4.448222 N, 1 lbf ft is 1.355818 Nm, 1 hp (of 550 ft lbf/s) is 745.6999 W.
TEST(ShowAmount, TurnsForceTorqueAndPowerIntoTheUnitsOfTheReader) {
  EXPECT_EQ(show(Amount(4448.222_N), metric), "4448 N");
  EXPECT_EQ(show(Amount(4448.222_N), us), "1000 lbf");
  EXPECT_EQ(show(Amount(135.5818_Nm), metric), "135.6 Nm");
  EXPECT_EQ(show(Amount(135.5818_Nm), us), "100.0 lbf ft");
  EXPECT_EQ(show(Amount(74.56999_kW), metric), "74.6 kW");
  EXPECT_EQ(show(Amount(74.56999_kW), us), "100.0 hp");
}

TEST(ShowAmount, SaysNothingOfAKindThatIsNone) {
  Amount amount = Amount::number(3.4);
  amount.dimension = static_cast<Dimension>(99);
  EXPECT_EQ(show(amount, metric), "");
}

}  // namespace
