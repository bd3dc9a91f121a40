// SPDX-License-Identifier: MIT
#include <layshaft/gearing/ratio.hpp>

#include <gtest/gtest.h>
#include <core/formula_range.hpp>
#include <reference/road_examples.hpp>

namespace {
using namespace layshaft;
using layshaft_test::expect_range;
using layshaft_test::printed_number;

// Source: U. C. Jindal, Machine Design, Ex. 29-2, p. 751 (road_worked_examples.csv, TB25): two stages of gears.
TEST(GearRatio, AgreesWithJindalsGearbox) {
  EXPECT_NEAR(gear_ratio(20_teeth, 50_teeth) * gear_ratio(23_teeth, 47_teeth), printed_number("TB25", 0), 0.0005);
  EXPECT_NEAR(gear_ratio(33_teeth, 37_teeth) * gear_ratio(23_teeth, 47_teeth), printed_number("TB25", 1), 0.0005);
  EXPECT_NEAR(gear_ratio(18_teeth, 50_teeth) * gear_ratio(23_teeth, 47_teeth), printed_number("TB25", 2), 0.0005);
}

// Source: a published article on reading gear ratios (road_worked_examples.csv, TB14): primary drive 1.708 x 0.973
// makes 1.662.
TEST(OverallRatio, MultipliesAllStages) {
  const double primary = 1.708 * 0.973;
  EXPECT_NEAR(primary, printed_number("TB14", 0), 0.0005);
  EXPECT_DOUBLE_EQ(overall_ratio(primary, 1.25, 12_teeth, 34_teeth), primary * 1.25 * 34.0 / 12.0);
}

// Source: an examination question's answer of 4.2, cut off after one decimal (road_worked_examples.csv, TB23): a gear
// of 30 teeth that drives one of 29, and a final drive of 20 to 88.
TEST(OverallRatio, AgreesWithTheQuestionsAnswer) {
  const double ratio = overall_ratio(1.0, gear_ratio(30_teeth, 29_teeth), 20_teeth, 88_teeth);
  EXPECT_GE(ratio, printed_number("TB23", 0));
  EXPECT_LT(ratio, printed_number("TB23", 0) + 0.1);
  EXPECT_NEAR(ratio, 29.0 * 88.0 / (30.0 * 20.0), 1e-15);
}

// Common practice, no source: with 40 rear teeth one more rear tooth is about 2 %. It is exactly 2.5 %.
TEST(FinalRatio, GrowsByOneFortiethForOneToothInForty) {
  EXPECT_NEAR(final_ratio(14_teeth, 41_teeth) / final_ratio(14_teeth, 40_teeth) - 1.0, 1.0 / 40.0, 3e-16);
}

// Common practice, no source: 14 to 13 in front is about 40 to 43 behind; 13/43 is about 14/46.
TEST(EquivalentRear, AgreesWithWhatRidersSay) {
  EXPECT_NEAR(equivalent_rear(13_teeth, 40_teeth, 14_teeth), 43.0, 0.1);
  EXPECT_NEAR(equivalent_rear(13_teeth, 43_teeth, 14_teeth), 46.0, 0.5);
}

TEST(EquivalentRear, KeepsTheRatio) {
  for (int front = 10; front <= 20; ++front)
    for (int trial = 10; trial <= 20; ++trial) {
      const double rear = equivalent_rear(Teeth(front), 45_teeth, Teeth(trial));
      EXPECT_NEAR(rear / trial, final_ratio(Teeth(front), 45_teeth), 1e-14);
    }
}

TEST(Ratios, KnowTheirRange) {
  expect_range<formula::gear_ratio>("##", 18_teeth, 30_teeth);
  expect_range<formula::final_ratio>("##", 14_teeth, 40_teeth);
  expect_range<formula::overall_ratio>("++##", 3.0, 2.5, 14_teeth, 40_teeth);
  expect_range<formula::equivalent_rear>("###", 13_teeth, 40_teeth, 14_teeth);
}

}  // namespace
