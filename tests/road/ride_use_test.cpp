// SPDX-License-Identifier: MIT
#include <layshaft/road/ride_use.hpp>

#include <layshaft/io/ride_log.hpp>
#include <layshaft/road/log_use.hpp>
#include <layshaft/road/ride_profile.hpp>

#include <gtest/gtest.h>

#include <cmath>
#include <random>
#include <string>

namespace {
using namespace layshaft;

const OverallRatios ratios{30.0, 20.0, 15.0};
const RideDrive drive{ratios, 2_m, ShiftRule({20_kmh, 40_kmh}, {12_kmh, 30_kmh})};

TEST(RideUse, OfSharesIsEachInItsGear) {
  const RideProfile profile({{RideKind::technical, 0.25, 8_kmh, Slope(0.1), 2},
                             {RideKind::trail, 0.25, 25_kmh},
                             {RideKind::highway, 0.5, 80_kmh}});
  const RideUse use = ride_use(profile, 4_hour, drive);
  EXPECT_EQ(use.gear(1).time, 0_s);
  EXPECT_NEAR(use.gear(2).time / units::hour, 2.0, 1e-14);  // the rider's habit, and the rule
  EXPECT_NEAR(use.gear(2).distance / units::km, 33.0, 1e-12);
  EXPECT_NEAR(use.gear(3).distance / units::km, 160.0, 1e-12);
  EXPECT_NEAR(use.distance() / (4_hour * profile.mean_speed()), 1.0, 1e-14);
  EXPECT_NEAR(use.climbed() / units::m, 8000.0 * std::sin(std::atan(0.1)), 1e-9);
  const double highway = engine_speed(80_kmh, 15.0, 2_m) / RideUse::class_width;
  EXPECT_NEAR(use.engine_speeds()[static_cast<std::size_t>(highway)] / units::hour, 2.0, 1e-14);
}

/// A ride of an hour and more, sampled ten times a second, of waves of speed with a recorder's noise.
RideColumns invented(std::size_t samples, bool engine) {
  std::mt19937_64 random(5);
  std::normal_distribution<double> noise(0.0, 0.05);
  RideColumns columns;
  for (std::size_t i = 0; i < samples; ++i) {
    const double t = 0.1 * static_cast<double>(i);
    columns.times.push_back(t);
    columns.speeds.push_back(std::max(0.0, 9.0 + 8.0 * std::sin(0.011 * t) + 2.0 * std::sin(0.17 * t) + noise(random)));
    columns.heights.push_back(500.0 + 40.0 * std::sin(0.003 * t));
    if (engine) {
      const int gear = drive.rule.gear_at(Speed::from_value(columns.speeds.back()));
      columns.engine_speeds.push_back(
          std::max(140.0, columns.speeds.back() * turn.value() / 2.0 * drive.ratio_of(gear)));
    }
  }
  return columns;
}

TEST(RideUse, OfALogAddsUpToItsTimeAndDistance) {
  for (const bool engine : {false, true}) {
    const RideColumns columns = invented(40000, engine);
    const RideUse use = ride_use(RideLog(columns), drive);
    EXPECT_NEAR((use.time() + use.standstill()) / units::s, columns.times.back(), 1e-6);
    double way = 0.0;
    for (std::size_t i = 0; i + 1 < columns.times.size(); ++i) {
      const double speed = 0.5 * (columns.speeds[i] + columns.speeds[i + 1]);
      if (speed >= RideUse::standing.value()) way += speed * (columns.times[i + 1] - columns.times[i]);
    }
    EXPECT_NEAR(use.distance() / units::m, way, 1e-9 * way);
    Duration turning;
    for (const Duration& one : use.engine_speeds()) turning += one;
    EXPECT_NEAR(turning / (engine ? use.time() + use.standstill() : use.time()), 1.0, 1e-12);
    for (int gear = 1; gear <= 3; ++gear) EXPECT_GT(use.gear(gear).time, 60_s);
    EXPECT_EQ(use.gaps(), 0_s);
    EXPECT_GT(use.climbed(), 40_m);
  }
}

TEST(RideUse, TakesTheGearFromTheRecordedEngineSpeed) {
  // 36 km/h is 5 turns of the wheel a second: 4500 rpm at an overall ratio of 15, 6000 at 20, which the rule would
  // choose.
  RideColumns columns{{0, 1, 2}, {10, 10, 10}, {}, {}};
  EXPECT_EQ(ride_use(RideLog(columns), drive).gear(2).time, 2_s);
  for (int i = 0; i < 3; ++i) columns.engine_speeds.push_back((4600_rpm).value());
  EXPECT_EQ(ride_use(RideLog(columns), drive).gear(3).time, 2_s);
}

TEST(RideUse, TellsTheGapsOfALog) {
  const RideUse use = ride_use(RideLog({{0, 1, 2, 100, 101}, {10, 10, 10, 10, 10}, {}, {}}), drive);
  EXPECT_EQ(use.gaps(), 98_s);
  EXPECT_EQ(use.time(), 3_s);
  EXPECT_EQ(use.distance(), 30_m);
}

TEST(RideUse, CountsAStandingMachineApart) {
  const RideUse use = ride_use(RideLog({{0, 1, 2}, {0, 0, 0}, {}, {150, 150, 150}}), drive);
  EXPECT_EQ(use.standstill(), 2_s);
  EXPECT_EQ(use.time(), 0_s);
  EXPECT_EQ(use.engine_speeds()[static_cast<std::size_t>(150.0 / RideUse::class_width.value())], 2_s);
  const RideUse fast = ride_use(RideLog({{0, 1}, {270, 270}, {}, {}}), drive);
  EXPECT_EQ(fast.engine_speeds().back(), 1_s);  // faster than all classes
}

TEST(RideUse, NamesADriveThatIsNone) {
  const RideLog log({{0, 1}, {3, 4}, {}, {}});
  const auto refusal = [&](const RideDrive& bad) {
    const auto use = try_ride_use(log, bad);
    return use ? std::string("none") : std::string(use.error().what());
  };
  EXPECT_EQ(refusal(drive), "none");
  EXPECT_TRUE(refusal({{30.0, 20.0}, 2_m, drive.rule}).starts_with("number of overall ratios is 2; expected 3"));
  EXPECT_TRUE(refusal({{30.0, 0.0, 10.0}, 2_m, drive.rule}).starts_with("overall ratio 2 is 0"));
  EXPECT_TRUE(refusal({ratios, 0_m, drive.rule}).starts_with("circumference is 0 mm"));
  const RideProfile fourth({{RideKind::trail, 1.0, 20_kmh, Slope(), 4}});
  EXPECT_FALSE(try_ride_use(fourth, 1_hour, drive));
  EXPECT_FALSE(try_ride_use(fourth, -(1_hour), drive));
}

TEST(RideProfile, NamesTheShareThatIsWrong) {
  const auto refusal = [](const RideShares& shares) {
    const auto profile = RideProfile::make(shares);
    return profile ? std::string("none") : std::string(profile.error().what());
  };
  EXPECT_EQ(refusal({{RideKind::trail, 0.5, 20_kmh}, {RideKind::highway, 0.5, 90_kmh}}), "none");
  EXPECT_EQ(refusal({}), "number of shares is 0; expected 1 to 16");
  EXPECT_EQ(refusal({{RideKind::trail, 0.5, 20_kmh}}), "sum of the shares is 0.5; expected 1");
  EXPECT_TRUE(refusal({{RideKind::trail, 1.5, 20_kmh}}).starts_with("share 1 is 1.5"));
  EXPECT_TRUE(refusal({{RideKind::trail, 1.0, -1.0 * units::kmh}}).starts_with("speed 1 is -1 km/h"));
  EXPECT_TRUE(refusal({{RideKind::trail, 1.0, 20_kmh, Slope(), 0}}).starts_with("gear 1 is 0"));
  EXPECT_THROW(RideProfile({}), RangeError);
  EXPECT_EQ(to_string(RideKind::gravel_road), "gravel road");
}

}  // namespace
