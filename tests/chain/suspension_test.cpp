// SPDX-License-Identifier: MIT
#include <layshaft/chain/suspension.hpp>

#include <gtest/gtest.h>
#include <core/formula_range.hpp>

#include <limits>
#include <string>

namespace {
using namespace layshaft;
using layshaft_test::expect_range;

SuspensionParts parts() {
  return {.layshaft_ahead = 75_mm,
          .layshaft_above = 10_mm,
          .arm = 565_mm,
          .droop = 18_deg,
          .rest = 12_deg,
          .bump = -6.0_deg};
}

// Worked by hand from the coordinates: (75 + 565 cos a, 10 + 565 sin a).
TEST(Suspension, KnowsTheCentreDistanceAtEveryAngle) {
  const Suspension swingarm(parts());
  const double expected[][2] = {{18, 639.565}, {12, 640.467}, {6, 640.638}, {0, 640.078}, {-6, 638.791}};
  for (const auto& [angle, centre] : expected)
    EXPECT_NEAR(in(swingarm.centre(angle * units::deg), units::mm), centre, 5e-4) << angle;
}

TEST(Suspension, IsTightestWhereLayshaftPivotAndAxleStandInLine) {
  const TightPoint tight = Suspension(parts()).tight_point();
  EXPECT_NEAR(in(tight.angle, units::deg), 7.595, 5e-4);
  EXPECT_NEAR(in(tight.centre, units::mm), 640.664, 5e-4);
  EXPECT_NEAR(in(tight.centre, units::mm), 565.0 + std::hypot(75.0, 10.0), 1e-9);
}

TEST(Suspension, IsTightestAtAnEndWhereTheyStandInLineOutsideTheTravel) {
  SuspensionParts low = parts();
  low.layshaft_above = 40_mm;  // in line at 28 degrees
  EXPECT_EQ(Suspension(low).tight_point().angle, 18_deg);
  SuspensionParts high = parts();
  high.layshaft_above = -30.0_mm;
  EXPECT_EQ(Suspension(high).tight_point().angle, -6.0_deg);
  SuspensionParts behind = parts();
  behind.layshaft_ahead = -20.0_mm;
  behind.layshaft_above = 5_mm;
  EXPECT_EQ(Suspension(behind).tight_point().angle, 18_deg);
}

TEST(Suspension, TightPointIsTheGreatestCentreDistanceOfTheTravel) {
  for (const double ahead : {-60.0, -5.0, 0.0, 12.0, 75.0, 140.0})
    for (const double above : {-80.0, -10.0, 0.0, 3.0, 60.0}) {
      SuspensionParts some = parts();
      some.layshaft_ahead = ahead * units::mm;
      some.layshaft_above = above * units::mm;
      const Suspension swingarm(some);
      const TightPoint tight = swingarm.tight_point();
      for (int i = 0; i <= 240; ++i) {
        const Angle angle = some.bump + (some.droop - some.bump) * (i / 240.0);
        EXPECT_LE(swingarm.centre(std::min(angle, some.droop)), tight.centre * (1.0 + 1e-15)) << ahead << ' ' << above;
      }
    }
}

TEST(Suspension, FindsTheArmThatGivesACentreDistance) {
  const Suspension swingarm(parts());
  for (const double arm : {540.0, 565.0, 590.0})
    for (const double angle : {-6.0, 0.0, 11.0, 18.0}) {
      const Length centre = swingarm.centre(angle * units::deg, arm * units::mm);
      EXPECT_NEAR(in(swingarm.arm_of(Unwatched(), centre, angle * units::deg), units::mm), arm, 1e-9);
    }
}

TEST(Suspension, TakesAnArmForEachEndOfTheAdjuster) {
  SuspensionParts two = parts();
  two.arm_rear = 585_mm;
  EXPECT_NEAR(in(Suspension(two).arm(), units::mm), 575.0, 1e-12);
  EXPECT_EQ(Suspension(two).centre(6_deg, 565_mm), Suspension(parts()).centre(6_deg));
  EXPECT_EQ(Suspension(two).tight_point(565_mm), Suspension(parts()).tight_point());
}

TEST(Suspension, RefusesWhatIsNoSwingarm) {
  static constexpr double nan = std::numeric_limits<double>::quiet_NaN();
  const auto refused = [](auto change, const char* name) {
    SuspensionParts wrong = parts();
    change(wrong);
    const auto swingarm = Suspension::make(wrong);
    ASSERT_FALSE(swingarm) << name;
    EXPECT_EQ(swingarm.error().kind(), ErrorKind::range);
    EXPECT_TRUE(std::string(swingarm.error().what()).starts_with(name)) << swingarm.error().what();
  };
  refused([](auto& p) { p.layshaft_ahead = Length::from_value(nan); }, "layshaft_ahead");
  refused([](auto& p) { p.layshaft_above = 2_m; }, "layshaft_above");
  refused([](auto& p) { p.arm = 40_mm; }, "arm");
  refused([](auto& p) { p.arm = 60_mm; }, "arm");  // the layshaft stands farther from the pivot
  refused([](auto& p) { p.arm_rear = 500_mm; }, "arm_rear");
  refused([](auto& p) { p.droop = 90_deg; }, "droop");
  refused([](auto& p) { p.bump = 19_deg; }, "bump");
  refused([](auto& p) { p.bump = p.rest = p.droop; }, "bump");
  refused([](auto& p) { p.rest = 18.1_deg; }, "rest");
  EXPECT_THROW((void)Suspension(parts()).centre(18.5_deg), RangeError);
  EXPECT_THROW((void)Suspension(parts()).centre(6_deg, 60_mm), RangeError);
  EXPECT_THROW((void)Suspension(parts()).tight_point(20_m), RangeError);
}

// By hand: 1.001 sqrt(75² + 10²) + 1 = 76.7397 mm.
TEST(Suspension, NeedsAnArmThatReachesAThousandthAndAMillimetreBeyondTheLayshaft) {
  SuspensionParts shortest = parts();
  shortest.arm = 76.74_mm;
  EXPECT_TRUE(Suspension::make(shortest));
  shortest.arm = 76.739_mm;
  EXPECT_FALSE(Suspension::make(shortest));
  const Suspension swingarm(parts());
  EXPECT_TRUE(swingarm.try_centre(6_deg, 76.74_mm));
  EXPECT_FALSE(swingarm.try_centre(6_deg, 76.739_mm));
  EXPECT_TRUE(swingarm.try_tight_point(76.74_mm));
  EXPECT_FALSE(swingarm.try_tight_point(76.739_mm));
}

TEST(Suspension, FormulasKnowTheirRange) {
  expect_range<formula::suspension_centre>("ff+f", 75_mm, 10_mm, 565_mm, 12_deg);
  expect_range<formula::tight_angle>("+f", 75_mm, 10_mm);
  EXPECT_TRUE(formula::arm_of_centre::in_range(75_mm, 10_mm, 640_mm, 12_deg));
  EXPECT_FALSE(formula::arm_of_centre::in_range(75_mm, 10_mm, 70_mm, 12_deg));
}

}  // namespace
