// SPDX-License-Identifier: MIT
#include <layshaft/chain/sprocket.hpp>
#include <layshaft/chain/sprocket_measure.hpp>

#include <gtest/gtest.h>
#include <core/formula_range.hpp>

#include <algorithm>
#include <cmath>
#include <complex>
#include <numbers>
#include <string>

namespace {
using namespace layshaft;
using layshaft_test::expect_range;

/// How far apart the outsides of two pins are, of all pins lying in all gaps, at the most: pins laid out one by one on
/// the corners of the chain's polygon, of which only the side is known.
double over_pins_laid_out(double pitch, int teeth, double pin) {
  std::complex<double> corner, direction = pitch;
  const auto turn = std::polar(1.0, 2.0 * std::numbers::pi / teeth);
  double furthest = 0.0;
  for (int i = 0; i < teeth; ++i, direction *= turn) {
    corner += direction;
    furthest = std::max(furthest, std::abs(corner));  // from the first corner
  }
  return furthest + pin;
}

// Outside check: plane geometry, by walking round the polygon rather than by its radius.
TEST(OverPins, IsTheGreatestDistanceOverPinsInItsGaps) {
  for (const char* name : {"520", "08B", "12B", "cycle", "04C"})
    for (const int teeth : {4, 5, 9, 11, 13, 14, 15, 16, 42, 43, 60, 149, 150}) {
      SCOPED_TRACE(std::string(name) + " " + std::to_string(teeth));
      const Sprocket sprocket{ChainSeries(name), Teeth(teeth)};
      const ChainSeries series = sprocket.series();
      const double expected =
          over_pins_laid_out(series.pitch() / units::mm, teeth, series.roller_diameter() / units::mm);
      EXPECT_NEAR(sprocket.over_pins() / units::mm, expected, 1e-11 * expected);
    }
}

TEST(OverPins, IsThePitchDiameterAndAPinWhereTheGapsAreOpposite) {
  const Sprocket even(ChainSeries("520"), 14_teeth);
  EXPECT_EQ(even.measuring_pin(), 10.16_mm);
  EXPECT_EQ(even.over_pins(), even.pitch_diameter() + 10.16_mm);
  // Where they are not, the size is less by the height of half a gap's arc: at 13 teeth 0.73 %.
  const Sprocket odd(ChainSeries("520"), 13_teeth);
  EXPECT_NEAR((odd.over_pins() - 10.16_mm) / odd.pitch_diameter(), 1.0 - 0.0072911, 1e-7);
}

// Outside check: three tenths of a pitch outside the middle of each side of the chain's polygon, which is where the
// ANSI figure comes from.
TEST(AnsiOutsideDiameter, StandsThreeTenthsOfAPitchOutsideThePolygon) {
  for (const int teeth : {9, 13, 17, 28, 60, 150}) {
    const Sprocket sprocket{ChainSeries("08A"), Teeth(teeth)};
    const double pitch = 12.7, radius = sprocket.pitch_diameter() / units::mm / 2.0;
    const double inside = std::sqrt(radius * radius - pitch * pitch / 4.0);
    EXPECT_NEAR(sprocket.ansi_outside_diameter() / units::mm, 2.0 * (inside + 0.3 * pitch), 1e-10);
  }
}

TEST(AnsiOutsideDiameter, LiesInsideTheBandOfTheStandardForAnsiChains) {
  for (const ChainSeries series : all_chain_series()) {
    if (!series.name().ends_with("A")) continue;
    for (int teeth = 9; teeth <= 150; ++teeth) {
      const Sprocket sprocket{series, Teeth(teeth)};
      EXPECT_LE(sprocket.ansi_outside_diameter(), sprocket.tip_diameter().high) << series.name() << " " << teeth;
      EXPECT_GE(sprocket.ansi_outside_diameter(), sprocket.pitch_diameter()) << series.name() << " " << teeth;
    }
  }
}

TEST(SprocketMeasures, KnowTheirRange) {
  expect_range<formula::over_pins_even>("++", 57_mm, 8.51_mm);
  expect_range<formula::over_pins_odd>("+#+", 57_mm, 13_teeth, 8.51_mm);
  expect_range<formula::ansi_outside_diameter>("+#", 12.7_mm, 14_teeth);
}

}  // namespace
