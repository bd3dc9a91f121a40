// SPDX-License-Identifier: MIT
#include <layshaft/road/air.hpp>

#include <layshaft/core/recorder.hpp>

#include <gtest/gtest.h>
#include <core/formula_range.hpp>
#include <tyre/watched.hpp>

#include <limits>

namespace {
using namespace layshaft;

struct StandardRow {
  double altitude, celsius, pressure, density;
  double density_digit;  // the last printed one; temperatures to 0.01 K, pressures to four digits
};

// Source: U.S. Standard Atmosphere, 1976, as an engineering table prints it; below 32 km it is that of ISO 2533:1975.
// Its row of 4000 m is left out: it prints 0.8194 for 0.81935, which itself was rounded up.
constexpr StandardRow published[] = {
    {-1000.0, 21.50, 113900.0, 1.347, 1e-3}, {0.0, 15.00, 101300.0, 1.225, 1e-3},
    {1000.0, 8.50, 89880.0, 1.112, 1e-3},    {2000.0, 2.00, 79500.0, 1.007, 1e-3},
    {3000.0, -4.49, 70120.0, 0.9093, 1e-4},  {5000.0, -17.47, 54050.0, 0.7364, 1e-4},
};

TEST(Air, IsTheStandardAtmosphereToHalfTheLastPrintedDigit) {
  for (const StandardRow& row : published) {
    const Air air = air_at(row.altitude * units::m);
    EXPECT_NEAR(air.temperature.value() - 273.15, row.celsius, 0.005) << row.altitude;
    EXPECT_NEAR(air.pressure.value(), row.pressure, row.pressure > 1e5 ? 50.0 : 5.0) << row.altitude;
    EXPECT_NEAR(air.density.value(), row.density, 0.5 * row.density_digit) << row.altitude;
  }
  EXPECT_NEAR(in(air_at(2000_m).density, units::kg_per_m3), 1.00655, 0.000005);  // the same, with more digits
}

TEST(Air, IsExactlyTheStandardAtSeaLevel) {
  EXPECT_EQ(air_at(0_m), Air());
  EXPECT_EQ(Air().density, 1.225_kg_per_m3);
}

TEST(Air, IsThinnerOnAWarmDayAtTheSamePressure) {
  const Air standard = air_at(1000_m), warm = air_at(1000_m, 303.15_kelvin);
  EXPECT_EQ(warm.pressure, standard.pressure);
  EXPECT_EQ(warm.temperature, 303.15_kelvin);
  EXPECT_NEAR(in(warm.density, units::kg_per_m3), standard.density.value() * (standard.temperature.value() / 303.15),
              1e-15);
  // The gas law with the standard's own constant, which nothing here computes with: 1.225 is printed to 7 digits.
  EXPECT_NEAR(warm.density.value(), warm.pressure.value() / (287.05287 * 303.15), 1e-7);
}

TEST(Air, NamesWhatLiesOutsideItsLayer) {
  constexpr double nothing = std::numeric_limits<double>::quiet_NaN(),
                   endless = std::numeric_limits<double>::infinity();
  EXPECT_TRUE(try_air_at(-1000_m * 1.0));
  EXPECT_TRUE(try_air_at(11000_m));
  for (const double bad : {-1000.1, 11000.1, nothing, endless, -endless}) {
    const auto air = try_air_at(bad * units::m);
    ASSERT_FALSE(air) << bad;
    EXPECT_TRUE(std::string(air.error().what()).starts_with("altitude is ")) << air.error().what();
  }
  for (const double bad : {199.9, 340.1, nothing, endless})
    EXPECT_TRUE(std::string(try_air_at(0_m, bad * units::kelvin).error().what()).starts_with("temperature is "));
  EXPECT_THROW((void)air_at(12_km), RangeError);
}

TEST(Air, TellsItsDensityStepByStep) {
  layshaft_test::expect_watched(std::array{Corner::nominal},
                                [](auto watch, Corner) { return detail::air_density_at(watch, 1500_m, std::nullopt); },
                                {"altitude", "earth radius", "geopotential height", "sea level temperature",
                                 "lapse height", "standard temperature", "sea level pressure", "pressure exponent",
                                 "air pressure", "sea level density", "air density"});
  layshaft_test::expect_watched(std::array{Corner::nominal},
                                [](auto watch, Corner) { return detail::air_density_at(watch, 1500_m, 300_kelvin); },
                                {"altitude", "earth radius", "geopotential height", "sea level temperature",
                                 "lapse height", "standard temperature", "sea level pressure", "pressure exponent",
                                 "air pressure", "air temperature", "sea level density", "air density"});
}

TEST(AirFormulas, AskForTheirRange) {
  using layshaft_test::expect_range;
  expect_range<formula::geopotential_height>("..", 2000_m, standard_atmosphere::earth_radius);
  expect_range<formula::standard_temperature>("+..", 288_kelvin, 2000_m, 44000_m);
  EXPECT_FALSE(formula::standard_temperature::in_range(288_kelvin, 44000_m, 44000_m));
  EXPECT_FALSE(formula::geopotential_height::in_range(-4000_km * 1.0, 6000_km));
  expect_range<formula::air_pressure>("+...", 1_bar, 288_kelvin, 270_kelvin, 5.25);
  EXPECT_FALSE(formula::air_pressure::in_range(1_bar, 288_kelvin, 20_kelvin, 5.25));
  EXPECT_FALSE(formula::air_pressure::in_range(1_bar, 288_kelvin, 270_kelvin, 10.0));
  expect_range<formula::air_density>("+++++", 1.2_kg_per_m3, 1_bar, 1_bar, 288_kelvin, 270_kelvin);
  expect_range<formula::density_ratio>("++", 1.2_kg_per_m3, 1.225_kg_per_m3);
}

}  // namespace
