// SPDX-License-Identifier: MIT
#include <layshaft/road/shift_points.hpp>

#include "invented_powertrain.hpp"

#include <gtest/gtest.h>

namespace {
using namespace layshaft_test;

TEST(ShiftPoints, KeepTheThrustHighest) {
  const Powertrain train = trail_train();
  const ShiftPoints points = shift_points(train);
  ASSERT_EQ(points.size(), 5u);
  for (const ShiftPoint& point : points) {
    const auto thrust = [&](int gear, Speed speed) { return try_thrust(train, gear, speed)->nominal.value(); };
    if (point.at_limit) {
      EXPECT_EQ(point.engine_speed_before, 9000_rpm);
      EXPECT_GE(thrust(point.gear, point.speed), thrust(point.gear + 1, point.speed));
    } else {
      EXPECT_NEAR(thrust(point.gear, point.speed), thrust(point.gear + 1, point.speed), 1e-9);
      EXPECT_GT(thrust(point.gear, 0.99 * point.speed), thrust(point.gear + 1, 0.99 * point.speed));
    }
    EXPECT_NEAR(point.engine_speed_before / point.engine_speed_after,
                train.overall_ratio(point.gear) / train.overall_ratio(point.gear + 1), 1e-12);
  }
}

// Between gears of ratio r a curve T0 - k n crosses itself at n (1 - 1/r^2)k = T0 (1 - 1/r), that is n = T0 r/(k(r +
// 1)).
TEST(ShiftPoints, OfAFallingCurveAreThoseOfAlgebra) {
  const Powertrain train = trail_train([](PowertrainParts& p) {
    p.engine = EngineCurve({1000_rpm, 9000_rpm}, {40_Nm, 4_Nm});
    p.gearbox = Gearbox({.gears = {2.0, 1.5}, .idle = 900_rpm, .rev_limit = 9000_rpm});
  });
  const double slope = 36.0 / 8000.0, standstill = 40.0 + slope * 1000.0, step = 2.0 / 1.5;
  const ShiftPoints points = shift_points(train);
  ASSERT_EQ(points.size(), 1u);
  EXPECT_FALSE(points[0].at_limit);
  EXPECT_NEAR(in(points[0].engine_speed_before, units::rpm), standstill * step / (slope * (step + 1.0)), 1e-8);
}

// The gears of the test before cross at 5650.8 rpm: just above where the upper gear pulls cleanly, which is in the
// lowest part of the speeds looked through; and just below, where the shift waits for it.
TEST(ShiftPoints, WaitForTheUpperGearToPullCleanly) {
  const auto shift = [](AngularSpeed lowest_pull) {
    return shift_points(trail_train([&](PowertrainParts& p) {
      p.engine = EngineCurve({1000_rpm, 9000_rpm}, {40_Nm, 4_Nm});
      p.gearbox = Gearbox({.gears = {2.0, 1.5}, .idle = 900_rpm, .rev_limit = 9000_rpm, .lowest_pull = lowest_pull});
    }))[0];
  };
  const double slope = 36.0 / 8000.0, standstill = 40.0 + slope * 1000.0, step = 2.0 / 1.5;
  const ShiftPoint above = shift(4220_rpm), below = shift(4240_rpm);  // 5626.7 and 5653.3 rpm in the lower gear
  EXPECT_NEAR(in(above.engine_speed_before, units::rpm), standstill * step / (slope * (step + 1.0)), 1e-8);
  EXPECT_NEAR(in(below.engine_speed_before, units::rpm), 4240.0 * step, 1e-8);
  EXPECT_FALSE(above.at_limit || below.at_limit);
}

TEST(ShiftPoints, OfOneGearAreNone) {
  EXPECT_TRUE(shift_points(trail_train([](PowertrainParts& p) {
                p.gearbox = Gearbox({.gears = {1.0}, .idle = 1400_rpm, .rev_limit = 9000_rpm});
              })).empty());
}

}  // namespace
