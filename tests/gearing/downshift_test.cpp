// SPDX-License-Identifier: MIT
#include <layshaft/gearing/downshift.hpp>

#include <gtest/gtest.h>

namespace {
using namespace layshaft;

const Gearbox three_gears({.primary = 3.0, .gears = {2.5, 1.6, 1.2}, .idle = 1400_rpm, .rev_limit = 9000_rpm});
const RoadSpeeds speeds_in_three(three_gears, 13_teeth, 48_teeth, {1.95_m, 2.00_m, 2.06_m});

TEST(Downshift, TellsTheEngineSpeedAndWhetherItIsTooMuch) {
  const Downshift calm = try_downshift(speeds_in_three, 9000_rpm, 1, 20_kmh).value();
  EXPECT_EQ(calm.engine_speed, *speeds_in_three.try_engine_speed_at(20_kmh, 1));
  EXPECT_FALSE(calm.over_revs || calm.may_over_rev);
  const Speed safe = calm.safe_below.nominal;
  EXPECT_EQ(safe, speeds_in_three.try_speed_range(1)->highest.nominal);
  const Downshift edge = try_downshift(speeds_in_three, 9000_rpm, 1, safe).value();
  EXPECT_FALSE(edge.over_revs);
  EXPECT_TRUE(edge.may_over_rev);
  EXPECT_TRUE(try_downshift(speeds_in_three, 9000_rpm, 1, 1.1 * safe)->over_revs);
  EXPECT_FALSE(try_downshift(speeds_in_three, 9000_rpm, 0, safe));
  EXPECT_FALSE(try_downshift(speeds_in_three, 9000_rpm, 1, -1_kmh));
}

TEST(EngineTurns, AreTheOverallRatioTimesTheWheelsTurns) { EXPECT_EQ(engine_turns(20.0, 2_m), 10000.0); }

TEST(Downshift, IsTheSameOfTheSameShift) {
  const Downshift one = try_downshift(speeds_in_three, 9000_rpm, 1, 20_kmh).value();
  EXPECT_EQ(one, try_downshift(speeds_in_three, 9000_rpm, 1, 20_kmh).value());
  EXPECT_NE(one, try_downshift(speeds_in_three, 9000_rpm, 1, 21_kmh).value());
}

}  // namespace
