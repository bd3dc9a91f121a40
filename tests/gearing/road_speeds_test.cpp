// SPDX-License-Identifier: MIT
#include <layshaft/gearing/road_speeds.hpp>

#include <gtest/gtest.h>

namespace {
using namespace layshaft;

RoadSpeeds speeds() {
  return {
      Gearbox({.primary = 3.0, .gears = {2.5, 1.0}, .idle = 1300_rpm, .rev_limit = 9000_rpm, .lowest_pull = 2500_rpm}),
      12_teeth, 48_teeth, Band<Length>{1.9_m, 2.0_m, 2.1_m}};
}

TEST(RoadSpeeds, HaveTheOverallRatios) {
  EXPECT_DOUBLE_EQ(speeds().overall_ratios()[0], 30.0);
  EXPECT_DOUBLE_EQ(speeds().overall_ratios()[1], 12.0);
}

TEST(RoadSpeeds, AreBandsOverTheCircumference) {
  const auto at = speeds().try_speed_at(6000_rpm, 2);
  ASSERT_TRUE(at);
  EXPECT_NEAR(at->low / units::mps, 6000.0 / 60.0 * 1.9 / 12.0, 1e-12);
  EXPECT_NEAR(at->nominal / units::kmh, 60.0, 1e-12);
  EXPECT_NEAR(at->high / units::mps, 6000.0 / 60.0 * 2.1 / 12.0, 1e-12);
}

TEST(RoadSpeeds, TurnTheEngineSlowerOnALargerTyre) {
  const auto at = speeds().try_engine_speed_at(60_kmh, 2);
  ASSERT_TRUE(at);
  EXPECT_NEAR(at->nominal / units::rpm, 6000.0, 1e-9);
  EXPECT_NEAR(at->low / units::rpm, 6000.0 * 2.0 / 2.1, 1e-9);
  EXPECT_NEAR(at->high / units::rpm, 6000.0 * 2.0 / 1.9, 1e-9);
}

TEST(RoadSpeeds, OfAGearGoFromTheLowestPullToTheLimit) {
  const auto range = speeds().try_speed_range(1);
  ASSERT_TRUE(range);
  EXPECT_EQ(range->lowest, *speeds().try_speed_at(2500_rpm, 1));
  EXPECT_EQ(range->highest, *speeds().try_speed_at(9000_rpm, 1));
}

TEST(RoadSpeeds, CountGearsFromOneAndRefuseOthers) {
  for (const int bad : {0, -1, 3, 1000}) {
    EXPECT_FALSE(speeds().try_speed_range(bad));
    EXPECT_EQ(speeds().try_speed_at(1000_rpm, bad).error().what(),
              "gear is " + std::to_string(bad) + "; expected 1 to 2");
  }
  EXPECT_TRUE(speeds().try_speed_range(2));
}

TEST(RoadSpeeds, TakeSpeedsFromZeroUpAndNothingThatIsNoNumber) {
  using Limits = std::numeric_limits<double>;
  for (const double bad : {Limits::quiet_NaN(), Limits::infinity(), -Limits::infinity(), -Limits::denorm_min()}) {
    EXPECT_FALSE(speeds().try_speed_at(AngularSpeed::from_value(bad), 1)) << bad;
    EXPECT_FALSE(speeds().try_engine_speed_at(Speed::from_value(bad), 1)) << bad;
  }
  EXPECT_EQ(speeds().try_speed_at(0_rpm, 1)->nominal, 0_kmh);
  EXPECT_EQ(speeds().try_engine_speed_at(0_kmh, 1)->nominal, 0_rpm);
  EXPECT_TRUE(speeds().try_speed_at(1000000_rpm, 1));
  EXPECT_TRUE(speeds().try_engine_speed_at(10000_kmh, 1));
  EXPECT_STREQ(speeds().try_speed_at(1000001_rpm, 1).error().what(),
               "engine_speed is 1000001 rpm; expected 0 rpm to 1000000 rpm");
  EXPECT_STREQ(speeds().try_engine_speed_at(10001_kmh, 1).error().what(),
               "road_speed is 10001 km/h; expected 0 km/h to 10000 km/h");
}

}  // namespace
