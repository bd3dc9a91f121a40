// SPDX-License-Identifier: MIT
#include <layshaft/chain/squat.hpp>

#include <gtest/gtest.h>
#include <chain/swingarm.hpp>
#include <core/formula_range.hpp>

#include <cmath>
#include <string>

namespace {
using namespace layshaft;
using layshaft_test::expect_range;
using layshaft_test::swingarm;

constexpr SquatGeometry road{.wheel_radius = 315_mm, .mass_centre_height = 620_mm, .wheelbase = 1400_mm};

// The case worked by hand, by the lines' intersection.
TEST(Squat, IsTheRatioOfTheTwoSlopes) {
  const ChainLoop loop(ChainSeries("520"), 16_teeth, 43_teeth);
  const Squat at = squat(swingarm(), loop, 565_mm, 12_deg, road);
  EXPECT_NEAR(in(at.transfer_angle, units::deg), 23.8865, 5e-5);
  EXPECT_NEAR(in(at.squat_angle, units::deg), 28.98417, 5e-6);
  EXPECT_NEAR(at.ratio, 0.799456, 5e-7);
  EXPECT_EQ(squat_ratio(swingarm(), loop, 565_mm, 12_deg, road), at.ratio);
}

/// The same by moments about the swingarm's pivot: thrust F at the ground, chain pull F R/r along the tight run at the
/// wheel, load transfer F h/w at the ground. The chain and thrust lift the arm by what a load of F tan(sigma) would.
double by_moments(double ahead, double above, double arm, double theta, double front_radius, double rear_radius,
                  double wheel, double height, double wheelbase) {
  const double ax = -arm * std::cos(theta), ay = -arm * std::sin(theta);
  const double dx = ahead - ax, dy = above - ay, centre = std::hypot(dx, dy);
  const double slope = std::atan2(dy, dx) - std::asin((rear_radius - front_radius) / centre);
  const double cx = ax - rear_radius * std::sin(slope), cy = ay + rear_radius * std::cos(slope);
  const double pull = wheel / rear_radius;  // for a thrust of 1; it pulls the wheel forward along the run
  const double of_chain = cx * pull * std::sin(slope) - cy * pull * std::cos(slope);
  const double of_thrust = -(ay - wheel) * 1.0;  // forward force at the contact patch (ax, ay - wheel)
  // Moments about the pivot that press the wheel down (turn the arm's rear end down) are positive here.
  const double anti = of_chain + of_thrust;
  const double load = height / wheelbase * std::fabs(ax);
  return load / std::fabs(anti);
}

TEST(Squat, AgreesWithMomentsAboutThePivot) {
  for (const int front : {13, 16})
    for (const int rear : {38, 43, 52})
      for (const double angle : {-5.0, 0.0, 6.0, 12.0, 17.0}) {
        const ChainLoop loop(ChainSeries("520"), Teeth(front), Teeth(rear));
        const Squat at = squat(swingarm(), loop, 565_mm, angle * units::deg, road);
        const double radians = angle * 3.14159265358979323846 / 180.0;
        EXPECT_NEAR(at.ratio,
                    by_moments(75, 10, 565, radians, 0.5 * in(pitch_diameter(15.875_mm, Teeth(front)), units::mm),
                               0.5 * in(pitch_diameter(15.875_mm, Teeth(rear)), units::mm), 315, 620, 1400),
                    1e-9)
            << front << '/' << rear << ' ' << angle;
      }
}

TEST(Squat, FallsAsTheArmHangsLower) {
  const ChainLoop loop(ChainSeries("520"), 16_teeth, 43_teeth);
  EXPECT_GT(squat(swingarm(), loop, 565_mm, 0_deg, road).ratio, squat(swingarm(), loop, 565_mm, 12_deg, road).ratio);
}

TEST(Squat, RefusesWhatIsOutOfRange) {
  const ChainLoop loop(ChainSeries("520"), 16_teeth, 43_teeth);
  EXPECT_FALSE(try_squat(swingarm(), loop, 565_mm, 19_deg, road));
  EXPECT_FALSE(try_squat(swingarm(), loop, 76_mm, 12_deg, road));
  SquatGeometry wrong = road;
  wrong.wheel_radius = 0_mm;
  EXPECT_FALSE(try_squat(swingarm(), loop, 565_mm, 12_deg, wrong));
  wrong = road;
  wrong.mass_centre_height = 0_mm;
  EXPECT_FALSE(try_squat(swingarm(), loop, 565_mm, 12_deg, wrong));
  wrong = road;
  wrong.wheelbase = 0_mm;
  EXPECT_THROW((void)squat(swingarm(), loop, 565_mm, 12_deg, wrong), RangeError);
}

TEST(Squat, FormulasKnowTheirRange) {
  expect_range<formula::tight_run_angle>("ff", 11_deg, 6_deg);
  expect_range<formula::transfer_slope>("++", 620_mm, 1400_mm);
  expect_range<formula::angle_of_slope>("f", 0.5);
  EXPECT_TRUE(formula::ratio_of_slopes::in_range(0.4, 0.5));
  EXPECT_FALSE(formula::ratio_of_slopes::in_range(0.4, 0.0));
  EXPECT_TRUE(formula::line_angle::in_range(75_mm, 10_mm, 565_mm, 12_deg));
  EXPECT_FALSE(formula::line_angle::in_range(-75.0_mm, 10_mm, 565_mm, 90_deg));
  EXPECT_TRUE(formula::squat_slope::in_range(12_deg, 5_deg, 315_mm, 217_mm));
  EXPECT_FALSE(formula::squat_slope::in_range(120_deg, 5_deg, 315_mm, 217_mm));
}

// Equal sprockets with layshaft, pivot and axle on a level: the tight run is parallel to the arm, and both slopes to
// where they meet, far ahead, are those of the ground.
TEST(Squat, IsRefusedWhereItsSlopeIsThatOfTheGround) {
  const Suspension level({.layshaft_ahead = 75_mm,
                          .layshaft_above = 0_mm,
                          .arm = 565_mm,
                          .droop = 18_deg,
                          .rest = 12_deg,
                          .bump = -6.0_deg});
  const ChainLoop equal(ChainSeries("520"), 20_teeth, 20_teeth);
  const auto flat = try_squat(level, equal, 565_mm, 0_deg, road);
  ASSERT_FALSE(flat);
  EXPECT_EQ(flat.error().kind(), ErrorKind::value);
  EXPECT_FALSE(try_squat_ratio(level, equal, 565_mm, 0_deg, road));
  EXPECT_GT(squat(level, equal, 565_mm, 1_deg, road).ratio, 0.0);
  EXPECT_LT(squat(level, equal, 565_mm, -1.0_deg, road).ratio, 0.0);
}

TEST(Squat, IsRefusedWhereTheSprocketsTouch) {
  const auto touching = try_squat(swingarm(), ChainLoop(ChainSeries("520"), 13_teeth, 100_teeth), 120_mm, 12_deg, road);
  ASSERT_FALSE(touching);
  EXPECT_TRUE(std::string(touching.error().what()).starts_with("centre distance is ")) << touching.error().what();
}

TEST(Squat, IsEqualWhereAllOfItIs) {
  const Squat one = squat(swingarm(), ChainLoop(ChainSeries("520"), 16_teeth, 43_teeth), 565_mm, 12_deg, road);
  EXPECT_EQ(one, (Squat{one.transfer_angle, one.squat_angle, one.ratio}));
  EXPECT_NE(one, (Squat{one.transfer_angle + 1.0_deg, one.squat_angle, one.ratio}));
  EXPECT_NE(one, (Squat{one.transfer_angle, one.squat_angle + 1.0_deg, one.ratio}));
  EXPECT_NE(one, (Squat{one.transfer_angle, one.squat_angle, one.ratio + 0.1}));
}

}  // namespace
