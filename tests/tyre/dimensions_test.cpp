// SPDX-License-Identifier: MIT
#include <layshaft/tyre/dimensions.hpp>

#include <gtest/gtest.h>
#include <core/formula_range.hpp>

#include <limits>

namespace {
using namespace layshaft;
using layshaft_test::expect_range;

TEST(Dimensions, ASnowTyreMayBeAHundredthTaller) {
  EXPECT_NEAR(snow_diameter_limit(668.86_mm, snow_allowance) / units::mm, 675.5486, 1e-9);
  EXPECT_EQ(snow_allowance_source.certainty, Certainty::from_memory);
}

TEST(TyreDimensions, FollowFromTheMarking) {
  EXPECT_NEAR(section_height(110_mm, 90) / units::mm, 99.0, 1e-12);
  EXPECT_NEAR(overall_diameter(457_mm, 99_mm) / units::mm, 655.0, 1e-12);
  EXPECT_NEAR(overall_diameter_limit(457_mm, 99_mm, least_height_factor) / units::mm, 649.06, 1e-12);
  EXPECT_NEAR(overall_diameter_limit(457_mm, 99_mm, greatest_height_factor(TyreUse::road)) / units::mm, 668.86, 1e-12);
  EXPECT_NEAR(overall_diameter_limit(457_mm, 108_mm, greatest_height_factor(TyreUse::special)) / units::mm, 698.92,
              1e-12);
}

TEST(TyreDimensions, LimitOfTheWholeHeightIsTheNominalDiameter) {
  for (double height = 20.0; height < 400.0; height += 7.0)
    EXPECT_EQ(overall_diameter_limit(432_mm, height * units::mm, 1.0), overall_diameter(432_mm, height * units::mm));
}

TEST(TyreDimensions, GiveTheHeightBack) {
  for (double height = 20.0; height < 400.0; height += 7.0)
    EXPECT_NEAR(section_height_of_diameter(overall_diameter(533_mm, height * units::mm), 533_mm) / units::mm, height,
                1e-10);
}

TEST(TyreDimensions, ScaleWithTheirUnit) {
  const double ratio = overall_diameter(2.0 * 457_mm, section_height(2.0 * 110_mm, 90)) /
                       overall_diameter(457_mm, section_height(110_mm, 90));
  EXPECT_NEAR(ratio, 2.0, 1e-15);
}

TEST(TyreDimensions, KnowTheirRange) {
  constexpr double infinity = std::numeric_limits<double>::infinity();
  EXPECT_TRUE(formula::section_height::in_range(110_mm, 90));
  EXPECT_FALSE(formula::section_height::in_range(0_mm, 90));
  EXPECT_FALSE(formula::section_height::in_range(110_mm, -90));
  EXPECT_FALSE(formula::overall_diameter::in_range(infinity * units::mm, 99_mm));
  EXPECT_FALSE(formula::overall_diameter_limit::in_range(457_mm, 99_mm, std::numeric_limits<double>::quiet_NaN()));
  EXPECT_FALSE(formula::section_height_of_diameter::in_range(400_mm, 457_mm));
}

TEST(TyreDimensions, SayThatTheirLimitsAreFromMemory) {
  static_assert(formula::overall_diameter_limit::about.source.certainty == Certainty::from_memory);
  static_assert(formula::overall_diameter_limit::about.body == "rim_diameter + 2.0 * section_height * height_factor");
}

TEST(TyreDimensions, AskForLengthsAboveZero) {
  expect_range<formula::section_height>("++", 110_mm, 90.0);
  expect_range<formula::overall_diameter>("++", 457_mm, 99_mm);
  expect_range<formula::overall_diameter_limit>("+++", 457_mm, 99_mm, 1.07);
  expect_range<formula::section_height_of_diameter>("..", 655_mm, 457_mm);
  EXPECT_FALSE(formula::section_height_of_diameter::in_range(457_mm, 457_mm));
  EXPECT_FALSE(formula::section_height_of_diameter::in_range(655_mm, 0_mm));
}

// From memory; growth_test.cpp holds it against the widths of the listed sections.
TEST(SectionWidthLimit, IsATenthMoreOrLessOnSmallRims) {
  EXPECT_NEAR(section_width_limit(110_mm, greatest_width_factor(18.0)) / units::mm, 121.0, 1e-12);
  EXPECT_NEAR(section_width_limit(100_mm, greatest_width_factor(10.0)) / units::mm, 108.0, 1e-12);
  EXPECT_EQ(greatest_width_factor(12.0), 1.08);
  EXPECT_EQ(greatest_width_factor(13.0), 1.10);
  EXPECT_EQ(width_limit_source.certainty, Certainty::from_memory);
  expect_range<formula::section_width_limit>("++", 110_mm, 1.1);
}

// ISO 5751-2 prints the 0.4: half an inch of rim is 5.08 mm of section.
TEST(SectionWidth, ChangesByTwoFifthsOfTheRimsWidth) {
  EXPECT_NEAR(section_width_on_another_rim(110_mm, 3.0 * units::inch, 2.5 * units::inch) / units::mm, 115.08, 1e-12);
  EXPECT_EQ(section_width_on_another_rim(110_mm, 2.5 * units::inch, 2.5 * units::inch), 110_mm);
  EXPECT_EQ(formula::section_width_on_another_rim::about.source.certainty, Certainty::from_memory);
  expect_range<formula::section_width_on_another_rim>(".+.", 110_mm, 70_mm, 60_mm);
  EXPECT_FALSE(formula::section_width_on_another_rim::in_range(20_mm, 70_mm, 60_mm));
  EXPECT_FALSE(formula::section_width_on_another_rim::in_range(110_mm, 70_mm, 0_mm));
}

TEST(WornDiameter, LosesTheTreadAllRound) {
  EXPECT_NEAR(worn_diameter(655_mm, 5_mm) / units::mm, 645.0, 1e-12);
  EXPECT_EQ(worn_diameter(655_mm, 0_mm), 655_mm);
  expect_range<formula::worn_diameter>("..", 655_mm, 5_mm);
  EXPECT_TRUE(formula::worn_diameter::in_range(655_mm, 0_mm));
  EXPECT_FALSE(formula::worn_diameter::in_range(655_mm, -1_mm));
  EXPECT_FALSE(formula::worn_diameter::in_range(655_mm, 327.5_mm));  // nothing would be left
}

}  // namespace
