// SPDX-License-Identifier: MIT
#include <layshaft/road/smooth_curve.hpp>

#include <gtest/gtest.h>

#include <string>

namespace {
using namespace layshaft;

const EngineCurve seven_points({1500_rpm, 3000_rpm, 4500_rpm, 6000_rpm, 7000_rpm, 8000_rpm, 9500_rpm},
                               {9_Nm, 15_Nm, 18.5_Nm, 21_Nm, 20.5_Nm, 19_Nm, 13_Nm});

// scipy 1.11's PchipInterpolator on the same points, in rad/s and N m; test_road.py asks it anew.
TEST(SmoothCurve, IsTheMonotoneCubicOfAnotherLibrary) {
  const SmoothCurve smooth(seven_points);
  const double rpm_and_torque[][2] = {{1600.0, 9.47914230019493},   {2000.0, 11.30214424951267},
                                      {3300.0, 15.836561403508771}, {5000.0, 19.580246913580243},
                                      {6700.0, 20.71825},           {7500.0, 19.92095588235294},
                                      {9000.0, 15.542483660130713}, {9400.0, 13.54237908496732}};
  for (const auto& [rpm, torque] : rpm_and_torque)
    EXPECT_NEAR(in(smooth.torque(rpm * units::rpm), units::Nm), torque, 1e-12) << rpm;
}

TEST(SmoothCurve, PassesThroughThePointsAndNeverBeyondThem) {
  const SmoothCurve smooth(seven_points);
  for (const EnginePoint& point : seven_points.points()) EXPECT_EQ(smooth.torque(point.speed), point.torque);
  const EnginePoints& points = seven_points.points();
  for (std::size_t i = 1; i < points.size(); ++i)
    for (int j = 0; j <= 50; ++j) {
      const Torque torque = smooth.torque(points[i - 1].speed + (j / 50.0) * (points[i].speed - points[i - 1].speed));
      EXPECT_GE(torque, std::min(points[i - 1].torque, points[i].torque) * (1.0 - 1e-14));
      EXPECT_LE(torque, std::max(points[i - 1].torque, points[i].torque) * (1.0 + 1e-14));
    }
}

TEST(SmoothCurve, BecomesACurveOfMorePoints) {
  const SmoothCurve smooth(seven_points.scaled(0.9));
  const EngineCurve dense = smooth.dense();
  EXPECT_GT(dense.points().size(), 55u);
  EXPECT_LE(dense.points().size(), most_engine_points);
  EXPECT_EQ(dense.torque_factor(), 0.9);
  EXPECT_EQ(dense.peak_torque().torque, seven_points.scaled(0.9).peak_torque().torque);
  for (double rpm = 1500.0; rpm <= 9500.0; rpm += 10.0)
    EXPECT_NEAR(in(dense.torque(rpm * units::rpm), units::Nm), in(smooth.torque(rpm * units::rpm), units::Nm), 0.01);
}

TEST(SmoothCurve, AsksForFourPointsAndNoMore) {
  const auto three = SmoothCurve::make(EngineCurve({1000_rpm, 2000_rpm, 3000_rpm}, {1_Nm, 2_Nm, 3_Nm}));
  ASSERT_FALSE(three);
  EXPECT_STREQ(three.error().what(), "number of points is 3; expected at least 4");
  EXPECT_TRUE(SmoothCurve::make(EngineCurve({1000_rpm, 2000_rpm, 3000_rpm, 4000_rpm}, {1_Nm, 2_Nm, 3_Nm, 1_Nm})));
  EnginePoints points;
  for (int i = 1; i <= 5; ++i) points.push_back({i * 1000.0 * units::rpm, 10_Nm, i == 3});
  EXPECT_FALSE(SmoothCurve::make(EngineCurve(points)));
  EXPECT_THROW((void)SmoothCurve(seven_points).torque(9501_rpm), RangeError);
  EXPECT_FALSE(SmoothCurve(seven_points).try_torque(1499_rpm));
}

}  // namespace
