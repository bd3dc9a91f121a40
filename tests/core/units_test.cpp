// SPDX-License-Identifier: MIT
#include <layshaft/core/units.hpp>

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <utility>

namespace {
using namespace layshaft;

/// How many doubles lie between a value and the one that stands nearest to the exact one.
double ulps(double value, long double exact) {
  const double nearest = static_cast<double>(exact);
  const double ulp = std::nextafter(nearest, INFINITY) - nearest;
  return std::abs(static_cast<double>((static_cast<long double>(value) - exact) / ulp));
}

TEST(Units, OfTurningAreRightToTheUlp) {
  const long double pi = std::numbers::pi_v<long double>;
  EXPECT_EQ(turn.value(), static_cast<double>(2.0L * pi));
  EXPECT_LE(ulps(units::rpm.value(), pi / 30.0L), 1.0);
  EXPECT_LE(ulps((9500.0_rpm).value(), 9500.0L * pi / 30.0L), 1.0);
  EXPECT_LE(ulps(units::deg.value(), pi / 180.0L), 1.0);
}

// Source: the international agreement of 1959 and NIST SP 811, App. B: exact by definition.
TEST(Units, ThatAreExactByDefinitionAreExactToTheUlp) {
  EXPECT_EQ((1_inch).value(), 0.0254);
  EXPECT_EQ((1_mile).value(), 1609.344);
  EXPECT_EQ((1_mph).value(), 0.44704);
  EXPECT_EQ((1_lbf).value(), 4.4482216152605);
  EXPECT_EQ((1_lb).value(), 0.45359237);
  EXPECT_LE(ulps((1_kmh).value(), 1.0L / 3.6L), 1.0);
  EXPECT_LE(ulps((1_lbf_ft).value(), 4.4482216152605L * 0.3048L), 1.0);
  EXPECT_LE(ulps((1_hp).value(), 550.0L * 4.4482216152605L * 0.3048L), 1.5);
}

// Source: the same, and the prefixes of the SI; each against long double.
TEST(Units, OfResistanceAreThoseOfSpeed) {
  EXPECT_LE(ulps((1_N_per_kmh).value(), 3.6L), 1.0);
  EXPECT_LE(ulps((1_N_per_kmh2).value(), 3.6L * 3.6L), 1.0);
  EXPECT_EQ((1_N_per_mps).value(), 1.0);
}

TEST(Units, AreAllRightToTheUlp) {
  const long double pi = std::numbers::pi_v<long double>, pound_force = 4.4482216152605L;
  const std::pair<double, long double> units[] = {
      {(1_mm).value(), 1.0L / 1000},
      {(1_cm).value(), 1.0L / 100},
      {(1_m).value(), 1},
      {(1_km).value(), 1000},
      {(1_inch).value(), 254.0L / 10000},
      {(1_mile).value(), 5280.0L * 12 * 254 / 10000},
      {(1_m2).value(), 1},
      {(1_mps).value(), 1},
      {(1_kmh).value(), 1000.0L / 3600},
      {(1_mph).value(), 5280.0L * 12 * 254 / 10000 / 3600},
      {(1_mps2).value(), 1},
      {(1_rpm).value(), 2.0L * pi / 60},
      {(1_radps).value(), 1},
      {(1_N).value(), 1},
      {(1_kN).value(), 1000},
      {(1_lbf).value(), pound_force},
      {(1_Nm).value(), 1},
      {(1_lbf_ft).value(), pound_force * 12 * 254 / 10000},
      {(1_W).value(), 1},
      {(1_kW).value(), 1000},
      {(1_J).value(), 1},
      {(1_Pa).value(), 1},
      {(1_bar).value(), 100000},
      {(1_kg).value(), 1},
      {(1_lb).value(), 45359237.0L / 100000000},
      {(1_g).value(), 1.0L / 1000},
      {(1_kg_per_m3).value(), 1},
      {(1_kg_per_m).value(), 1},
      {(1_deg).value(), pi / 180},
      {(1_rad).value(), 1},
      {(1_s).value(), 1},
      {(1_minute).value(), 60},
      {(1_hour).value(), 3600},
      {(1_kg_m2).value(), 1},
      {(1_kelvin).value(), 1},
  };
  for (const auto& [value, exact] : units) EXPECT_LE(ulps(value, exact), 1.0) << value;
  EXPECT_EQ(half_turn.value(), static_cast<double>(pi));
}

TEST(Units, OfTurningStayRightForEveryEngineSpeed) {
  const long double pi = std::numbers::pi_v<long double>;
  for (int speed = 1; speed <= 20000; ++speed)
    ASSERT_LE(ulps((speed * 1.0 * units::rpm).value(), speed * pi / 30.0L), 1.5) << speed;
}

TEST(Units, AreQuantitiesOfOne) {
  static_assert(110.0 * units::mm == 110.0_mm);
  static_assert(110_mm == 110.0_mm);
  static_assert(double(25.4_mm / units::inch) > 0.999999999 && double(25.4_mm / units::inch) < 1.000000001);
  EXPECT_EQ((15.875_mm).value(), 15.875 * 0.001);
}

TEST(In, GivesAPlainDouble) {
  static_assert(std::is_same_v<decltype(in(1_inch, units::mm)), double>);
  EXPECT_NEAR(in(1_inch, units::mm), 25.4, 1e-14);
  EXPECT_EQ(in(9500_rpm, units::rpm), 9500.0);
}

TEST(Units, KeepPowerTheProductOfTorqueAndTurning) {
  const Power power = 20_Nm * 1000_radps;
  EXPECT_EQ(power, 20_kW);
}

}  // namespace
