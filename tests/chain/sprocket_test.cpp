// SPDX-License-Identifier: MIT
#include <layshaft/chain/sprocket.hpp>

#include <gtest/gtest.h>
#include <core/formula_range.hpp>
#include <reference/csv.hpp>

#include <cmath>
#include <string>

namespace {

using namespace layshaft;
using layshaft_test::expect_range;
using layshaft_test::number;
using layshaft_test::read_csv;

// Source: printed tables of unit pitch diameters (sprocket_unit_pitch_diameter.csv). The column for a pitch of 25.4 mm
// holds to half of its last digit; the column of three decimals is cut off, not rounded, so it holds to one unit.
TEST(PitchDiameter, AgreesWithThePrintedTables) {
  int rows = 0;
  int misprints = 0;
  for (const auto& row : read_csv("sprocket_unit_pitch_diameter.csv")) {
    const auto teeth = Teeth::make(static_cast<int>(number(row.at("teeth"))));
    ASSERT_TRUE(teeth);
    SCOPED_TRACE(row.at("teeth"));
    // A millimetre of rounding is 1e-13 here; the rest is the printed figure's own.
    EXPECT_NEAR(pitch_diameter(1.0_mm, *teeth) / units::mm, number(row.at("exact")), 0.5e-6 + 1e-12);
    ++rows;
    if (row.at("note") == "misprint") {
      ++misprints;
      continue;
    }
    if (!row.at("printed_mm_for_25_4_mm_pitch").empty()) {
      EXPECT_NEAR(pitch_diameter(25.4_mm, *teeth) / units::mm, number(row.at("printed_mm_for_25_4_mm_pitch")),
                  0.005 + 1e-9);
    }
    if (!row.at("printed_3_decimals").empty()) {
      EXPECT_NEAR(pitch_diameter(1.0_mm, *teeth) / units::mm, number(row.at("printed_3_decimals")), 0.001 + 1e-9);
    }
  }
  EXPECT_EQ(rows, 148);
  EXPECT_EQ(misprints, 5);
}

// Source: Bhandari, Design of Machine Elements, ch. 14, Ex. 14.4 and 14.6 (chain_worked_examples.csv).
TEST(PitchDiameter, AgreesWithATextbook) {
  for (const auto& row : read_csv("chain_worked_examples.csv")) {
    const Teeth teeth = row.at("id") == "B14.4a" ? 17_teeth : row.at("id") == "B14.4b" ? 34_teeth : 80_teeth;
    if (row.at("id") != "B14.4a" && row.at("id") != "B14.4b" && row.at("id") != "B14.6a") continue;
    EXPECT_NEAR(pitch_diameter(19.05_mm, teeth) / units::mm, number(row.at("printed")), 0.5e-6) << row.at("id");
  }
}

// Source: ANSI tooth-form worksheet, pitch 1 inch, 28 teeth (chain_worked_examples.csv, A1).
TEST(PitchDiameter, AgreesWithAnAnsiWorksheet) {
  for (const auto& row : read_csv("chain_worked_examples.csv")) {
    if (row.at("id") != "A1") continue;
    EXPECT_NEAR(pitch_diameter(1.0_inch, 28_teeth) / units::inch, number(row.at("printed")), 0.5e-4);
    return;
  }
  FAIL() << "no row A1";
}

// Source: Bhandari, Design of Machine Elements, ch. 14, Ex. 14.5: pitch 19.05 mm, roller 12.07 mm (12B), 17 teeth; the
// mean of ISO's two tip diameters, and the two themselves (chain_worked_examples.csv, B14.5a).
TEST(Sprocket, HasTheTipDiameterOfATextbookCase) {
  const Band<Length> tip = Sprocket(ChainSeries("12B"), 17_teeth).tip_diameter();
  for (const auto& row : read_csv("chain_worked_examples.csv")) {
    if (row.at("id") != "B14.5a") continue;
    EXPECT_NEAR(tip.nominal / units::mm, number(row.at("printed")), 0.5e-6);
    EXPECT_EQ(row.at("note"), "da_max=115.416, da_min=108.861");
    EXPECT_NEAR(tip.high / units::mm, 115.416, 0.5e-3);
    EXPECT_NEAR(tip.low / units::mm, 108.861, 0.5e-3);
    return;
  }
  FAIL() << "no row B14.5a";
}

TEST(Sprocket, HasAHexagonsDiameterAtSixTeeth) {
  // The corners of a regular hexagon lie one side from its middle.
  const Sprocket sprocket(ChainSeries("520"), 6_teeth);
  EXPECT_DOUBLE_EQ(sprocket.pitch_diameter() / units::mm, 2.0 * 15.875);
  EXPECT_DOUBLE_EQ(sprocket.root_diameter() / units::mm, 2.0 * 15.875 - 10.16);
}

TEST(Sprocket, HasItsDiametersInOrder) {
  for (const std::string_view name : chain_series_names()) {
    for (const int count : {Teeth::least, 9, 13, 14, 42, 150, Teeth::greatest}) {
      SCOPED_TRACE(std::string(name) + " " + std::to_string(count));
      const Sprocket sprocket{ChainSeries(name), Teeth(count)};
      const Band<Length> tip = sprocket.tip_diameter();
      EXPECT_GT(sprocket.root_diameter(), Length());
      EXPECT_LT(sprocket.root_diameter(), sprocket.pitch_diameter());
      EXPECT_LT(sprocket.pitch_diameter(), tip.high);
      EXPECT_TRUE(well_formed(tip));
      EXPECT_LT(tip.low, tip.high);
      EXPECT_EQ(sprocket.series(), ChainSeries(name));
      EXPECT_EQ(sprocket.teeth(), Teeth(count));
      EXPECT_EQ(*Sprocket::make(ChainSeries(name), Teeth(count)), sprocket);
    }
  }
}

TEST(Sprocket, GrowsWithEveryTooth) {
  for (int count = Teeth::least; count < Teeth::greatest; ++count)
    EXPECT_LT(pitch_diameter(12.7_mm, Teeth(count)), pitch_diameter(12.7_mm, Teeth(count + 1)));
}

TEST(SprocketFormulas, KnowTheirRange) {
  EXPECT_TRUE(formula::pitch_diameter::in_range(12.7_mm, 14_teeth));
  for (const double pitch : {0.0, -1.0, std::nan(""), HUGE_VAL})
    EXPECT_FALSE(formula::pitch_diameter::in_range(Length::from_value(pitch), 14_teeth));
  EXPECT_TRUE(formula::root_diameter::in_range(50.0_mm, 8.51_mm));
  EXPECT_FALSE(formula::root_diameter::in_range(8.51_mm, 8.51_mm));
  EXPECT_FALSE(formula::root_diameter::in_range(50.0_mm, 0.0_mm));
}

TEST(SprocketFormulas, AskForDiametersAboveZero) {
  expect_range<formula::pitch_diameter>("+#", 12.7_mm, 14_teeth);
  expect_range<formula::root_diameter>("..", 50_mm, 8.51_mm);
  expect_range<formula::tip_diameter_least>("++#+", 57_mm, 12.7_mm, 14_teeth, 8.51_mm);
  expect_range<formula::tip_diameter_greatest>("+++", 57_mm, 12.7_mm, 8.51_mm);
}

TEST(SprocketFormulas, TakeTheTipDiameterInTheMiddleOfWhatIsAllowed) {
  EXPECT_NEAR(tip_diameter(108_mm, 116_mm) / units::mm, 112.0, 1e-12);
  expect_range<formula::tip_diameter>("ff", 108_mm, 116_mm);
}

}  // namespace
