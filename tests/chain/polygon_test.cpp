// SPDX-License-Identifier: MIT
#include <layshaft/chain/mesh.hpp>
#include <layshaft/chain/polygon.hpp>

#include <gtest/gtest.h>
#include <core/formula_range.hpp>
#include <reference/csv.hpp>

#include <string>

namespace {
using namespace layshaft;
using layshaft_test::expect_range;
using layshaft_test::number;
using layshaft_test::read_csv;

// Source: polygon speed variation 1 - cos(pi/z), seven printed values (chain_chordal.csv), half of the last digit.
TEST(SpeedVariation, AgreesWithThePrintedTable) {
  int printed = 0;
  for (const auto& row : read_csv("chain_chordal.csv")) {
    const double per_cent = 100.0 * speed_variation(Teeth(std::stoi(row.at("teeth"))));
    EXPECT_NEAR(per_cent, number(row.at("speed_variation_percent")), 5.1e-5) << row.at("teeth");
    if (row.at("printed_percent").empty()) continue;
    EXPECT_NEAR(per_cent, number(row.at("printed_percent")), 0.00501) << row.at("teeth");
    ++printed;
  }
  EXPECT_EQ(printed, 7);
}

TEST(SpeedVariation, FallsWithTheTeeth) {
  for (int teeth = 4; teeth < 200; ++teeth) EXPECT_GT(speed_variation(Teeth(teeth)), speed_variation(Teeth(teeth + 1)));
}

// Worked separately, as the convex hull of both polygons with a whole number of pitches in the tight run: at 38.5
// pitches the loop varies by 0.0004 pitch at 13/40 and by 0.0062 at 14/40, an even front sprocket whose two runs are in
// phase.
TEST(PolygonRipple, IsWorseWhereBothRunsAreInPhase) {
  const Length pitch = 15.875_mm;
  const PolygonRipple odd = polygon_ripple(ChainLoop(ChainSeries("520"), 13_teeth, 40_teeth), 38.5 * pitch);
  const PolygonRipple even = polygon_ripple(ChainLoop(ChainSeries("520"), 14_teeth, 40_teeth), 38.5 * pitch);
  EXPECT_NEAR(odd.loop_length / pitch, 0.0004, 5e-5);
  EXPECT_NEAR(even.loop_length / pitch, 0.0062, 5e-5);
}

TEST(PolygonRipple, OfTheChainIsNearlyThatOfASteadyFrontSprocket) {
  for (const int teeth : {11, 14, 17}) {
    const PolygonRipple ripple = polygon_ripple(ChainLoop(ChainSeries("520"), Teeth(teeth), 45_teeth), 620_mm);
    EXPECT_NEAR(1.0 - ripple.least_chain_speed / ripple.greatest_chain_speed, speed_variation(Teeth(teeth)),
                0.02 * speed_variation(Teeth(teeth)));
    EXPECT_LT(ripple.least_ratio, 1.0);
    EXPECT_GT(ripple.greatest_ratio, 1.0);
  }
}

// Equal sprockets a whole number of pitches apart: two parallel cranks of one length, and no ripple at all.
TEST(PolygonRipple, VanishesForEqualSprocketsAWholeNumberOfPitchesApart) {
  const PolygonRipple ripple = polygon_ripple(ChainLoop(ChainSeries("520"), 20_teeth, 20_teeth), 30.0 * 15.875_mm);
  EXPECT_NEAR(ripple.least_ratio, 1.0, 1e-12);
  EXPECT_NEAR(ripple.greatest_ratio, 1.0, 1e-12);
  EXPECT_NEAR(ripple.loop_length / (15.875_mm), 0.0, 1e-12);
}

TEST(PolygonRipple, LeavesTheMeanRatioAlone) {
  for (const double centre : {590.0, 612.3, 641.7}) {
    const ChainLoop loop(ChainSeries("520"), 13_teeth, 47_teeth);
    const detail::PinPolygons pins(loop.front(), loop.rear(), centre / 15.875);
    double sum = 0.0;
    constexpr int places = 4096;
    for (int i = 0; i < places; ++i) {
      const auto state = pins.at(pins.front_step() * (i + 0.5) / places);
      sum += state.front_lever / state.rear_lever;
    }
    EXPECT_NEAR(sum / places, 13.0 / 47.0, 1e-6) << centre;
  }
}

TEST(PolygonRipple, RefusesSprocketsThatCollide) {
  EXPECT_FALSE(try_polygon_ripple(ChainLoop(ChainSeries("520"), 13_teeth, 40_teeth), 100_mm));
  EXPECT_THROW((void)polygon_ripple(ChainLoop(ChainSeries("520"), 13_teeth, 40_teeth), 100_mm), RangeError);
  expect_range<formula::speed_variation>("#", 13_teeth);
}

// By hand: 13/46 on 15.875 mm, 640 mm apart; the wrap is 180 - 2 asin((116.35 - 33.17)/640) = 165.1 degrees, 5.96
// teeth.
TEST(Engagement, TellsTheTeethInMesh) {
  const Engagement at = engagement(ChainLoop(ChainSeries("520"), 13_teeth, 46_teeth), 600_mm);
  EXPECT_NEAR(at.front, 5.9, 0.05);
  EXPECT_GT(at.wrap_front, usual_least_wrap);
  EXPECT_LT(at.front, usual_least_teeth_in_mesh);
  EXPECT_GT(at.front, fewest_teeth_in_mesh);
  EXPECT_NEAR(at.front / 13.0 + at.rear / 46.0, 1.0, 1e-14);  // both wraps make one turn
  EXPECT_FALSE(try_engagement(ChainLoop(ChainSeries("520"), 13_teeth, 46_teeth), 50_mm));
  EXPECT_THROW((void)engagement(ChainLoop(ChainSeries("520"), 13_teeth, 46_teeth), 50_mm), RangeError);
  expect_range<formula::teeth_in_mesh>("#f", 13_teeth, 160_deg);
}

}  // namespace
