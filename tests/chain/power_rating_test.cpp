// SPDX-License-Identifier: MIT
#include <layshaft/chain/power_rating.hpp>

#include <gtest/gtest.h>
#include <core/formula_range.hpp>
#include <reference/csv.hpp>

#include <string>

namespace {
using namespace layshaft;
using layshaft_test::expect_range;
using layshaft_test::number;
using layshaft_test::read_csv;

// Source: ANSI B29.1 horsepower tables, single strand, chains 40 and 50 (chain_hp_rating.csv): every row, to one unit
// of its last printed digit, and the branch that governs.
TEST(PowerRating, AgreesWithThePrintedTables) {
  const auto rows = read_csv("chain_hp_rating.csv");
  EXPECT_EQ(rows.size(), 208u);
  for (const auto& row : rows) {
    SCOPED_TRACE(row.at("chain") + ", " + row.at("teeth") + " teeth, " + row.at("rpm") + " rpm");
    const PowerRating rating = power_ratings(ChainSeries(row.at("chain")), Teeth(std::stoi(row.at("teeth"))),
                                             number(row.at("rpm")) * units::rpm);
    const std::string& printed = row.at("hp_printed");
    const std::size_t point = printed.find('.');
    double last = 1.0;
    if (point != printed.npos)
      for (std::size_t i = point + 1; i < printed.size(); ++i) last /= 10.0;
    EXPECT_NEAR(in(rating.governing, units::hp), number(printed), std::max(last, 0.01) * 1.01);
    EXPECT_EQ(rating.governed_by() == "plates", row.at("governing") == "plate");
  }
}

TEST(PowerRating, HasConstantsOfItsOwnForLightAndRollerlessChain) {
  const AngularSpeed slow = 100_rpm, fast = 3000_rpm;
  // 41 has the pitch of 40: 0.0022 of 0.004, and 3.4 of 17.
  EXPECT_NEAR(
      power_ratings(ChainSeries("41"), 15_teeth, slow).plate / power_ratings(ChainSeries("40"), 15_teeth, slow).plate,
      0.0022 / 0.004, 1e-15);
  EXPECT_NEAR(
      power_ratings(ChainSeries("41"), 15_teeth, fast).roller / power_ratings(ChainSeries("40"), 15_teeth, fast).roller,
      3.4 / 17.0, 1e-15);
  EXPECT_EQ(rating_constants(ChainSeries("25")).roller, 29.0);
  EXPECT_EQ(rating_constants(ChainSeries("35")).roller, 29.0);
  EXPECT_EQ(rating_constants(ChainSeries("520")).plate, 0.004);
  EXPECT_EQ(power_rating(ChainSeries("520"), 15_teeth, slow), power_rating(ChainSeries("50"), 15_teeth, slow));
  EXPECT_EQ(power_rating_of_pitch(0.5 * units::inch, 15_teeth, slow), power_rating(ChainSeries("40"), 15_teeth, slow));
}

TEST(PowerRating, RefusesASpeedOutOfRange) {
  EXPECT_FALSE(try_power_rating(ChainSeries("40"), 15_teeth, 0_rpm));
  EXPECT_FALSE(try_power_ratings(ChainSeries("40"), 15_teeth, 30001_rpm));
  EXPECT_THROW((void)power_rating(ChainSeries("40"), 15_teeth, 0_rpm), RangeError);
  expect_range<formula::plate_rating>("++#+", 0.004, 12.7_mm, 15_teeth, 1000_rpm);
  expect_range<formula::roller_rating>("++#+", 17.0, 12.7_mm, 15_teeth, 1000_rpm);
}

// By hand from the formulas: twice the pitch makes 2^(3 - 0.07 * 2) times the plates' rating of one inch, which has
// 1^(3 - 0.07), and 2^0.8 times the rollers'.
TEST(PowerRating, GrowsWithThePitchAsTheFormulasSay) {
  const auto plate = [](Length pitch) { return plate_rating(0.004, pitch, 17_teeth, 300_rpm); };
  const auto roller = [](Length pitch) { return roller_rating(17.0, pitch, 17_teeth, 300_rpm); };
  EXPECT_NEAR(plate(2.0_inch) / plate(1.0_inch), 7.2601532, 5e-8);
  EXPECT_NEAR(roller(2.0_inch) / roller(1.0_inch), 1.7411011, 5e-8);
}

}  // namespace
