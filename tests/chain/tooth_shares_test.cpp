// SPDX-License-Identifier: MIT
#include <layshaft/chain/tooth_shares.hpp>

#include <gtest/gtest.h>
#include <core/formula_range.hpp>

namespace {
using namespace layshaft;
using layshaft_test::expect_range;

// By hand, 15 teeth: 17 - 64/15 = 12.733 degrees, 35 - 120/15 = 27 degrees.
TEST(ToothShares, TakeTheToothFormsPressureAngles) {
  EXPECT_NEAR(in(pressure_angle_least(15_teeth), units::deg), 12.7333, 5e-5);
  EXPECT_NEAR(in(pressure_angle_most(15_teeth), units::deg), 27.0, 1e-12);
  EXPECT_EQ(formula::pressure_angle_most::about.source.certainty, Certainty::from_memory);
}

TEST(ToothShares, DropsAndTheRestAddUpToTheTightRun) {
  for (const int teeth : {4, 9, 13, 15, 43, 60})
    for (const Angle& angle : {pressure_angle_least(Teeth(teeth)), pressure_angle_most(Teeth(teeth))}) {
      double pull = 1.0, drops = 0.0;
      for (int tooth = 0; tooth < teeth / 2; ++tooth) {
        const double left = pull * tension_left(angle, Teeth(teeth));
        drops += pull - left;
        pull = left;
      }
      EXPECT_NEAR(drops + pull, 1.0, 1e-15);
      EXPECT_GT(pull, 0.0);
    }
}

// The teeth's forces stand at angles: on 15 teeth they come to 1.076 of the pull at the least pressure angle (published
// relation, worked by hand: 0.6800 / (1 - 0.3685)).
TEST(ToothShares, ForcesOfTheTeethComeToMoreThanThePull) {
  const Angle least = pressure_angle_least(15_teeth);
  double pull = 1.0, forces = 0.0;
  for (int tooth = 0; tooth < 15; ++tooth) {
    forces += pull * tooth_force_share(least, 15_teeth);
    pull *= tension_left(least, 15_teeth);
  }
  EXPECT_NEAR(forces, 1.0769, 1e-4);
}

TEST(ToothShares, FallFromToothToTooth) {
  const ToothShares shares = tooth_shares(15_teeth, 6);
  ASSERT_EQ(shares.teeth.size(), 6u);
  EXPECT_EQ(shares.teeth[0].tension, Band<double>::exactly(1.0));
  for (std::size_t i = 1; i < shares.teeth.size(); ++i) {
    EXPECT_LT(shares.teeth[i].tension.high, shares.teeth[i - 1].tension.high);
    EXPECT_LT(shares.teeth[i].force.nominal, shares.teeth[i - 1].force.nominal);
    EXPECT_TRUE(well_formed(shares.teeth[i].force));
  }
  EXPECT_LT(shares.rest.high, shares.teeth[5].tension.high);
  EXPECT_GT(shares.rest.low, 0.0);
  EXPECT_LT(shares.rest.low, shares.rest.high);
}

TEST(ToothShares, RefuseTeethThatAreNotThere) {
  EXPECT_FALSE(try_tooth_shares(15_teeth, 0));
  EXPECT_FALSE(try_tooth_shares(15_teeth, 16));
  EXPECT_FALSE(try_tooth_shares(100_teeth, 65));
  EXPECT_TRUE(try_tooth_shares(100_teeth, 64));
  EXPECT_THROW((void)tooth_shares(15_teeth, -1), RangeError);
}

TEST(ToothShares, FormulasKnowTheirRange) {
  EXPECT_TRUE(formula::tension_left::in_range(13_deg, 15_teeth));
  EXPECT_FALSE(formula::tension_left::in_range(0_deg, 15_teeth));
  EXPECT_FALSE(formula::tooth_force_share::in_range(160_deg, 15_teeth));
  expect_range<formula::pressure_angle_least>("#", 15_teeth);
  expect_range<formula::pressure_angle_most>("#", 15_teeth);
}

TEST(ToothShares, TakeTheMiddleOfThePressureAnglesAsNominal) {
  const Angle middle = 0.5 * (pressure_angle_least(15_teeth) + pressure_angle_most(15_teeth));
  const ToothShares shares = tooth_shares(15_teeth, 2);
  EXPECT_DOUBLE_EQ(shares.teeth[0].force.nominal, tooth_force_share(middle, 15_teeth));
  EXPECT_DOUBLE_EQ(shares.teeth[1].tension.nominal, tension_left(middle, 15_teeth));
}

TEST(ToothShares, AreKnownFromFourTeethOn) {
  EXPECT_TRUE(formula::pressure_angle_least::in_range(4_teeth));
  EXPECT_TRUE(formula::pressure_angle_most::in_range(4_teeth));
  EXPECT_TRUE(formula::tooth_force_share::in_range(10_deg, 15_teeth));
  EXPECT_FALSE(formula::tooth_force_share::in_range(0_deg, 15_teeth));
  EXPECT_FALSE(formula::tooth_force_share::in_range(156_deg, 15_teeth));  // with a tooth of 24 degrees half a turn
}

}  // namespace
