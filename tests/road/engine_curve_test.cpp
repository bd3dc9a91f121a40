// SPDX-License-Identifier: MIT
#include <layshaft/road/engine_curve.hpp>

#include <layshaft/core/recorder.hpp>

#include <gtest/gtest.h>
#include <core/formula_range.hpp>
#include <core/not_finite.hpp>
#include <tyre/watched.hpp>

#include <cmath>
#include <random>
#include <string>
#include <vector>

namespace {
using namespace layshaft;
using layshaft_test::endless;
using layshaft_test::nothing;

const EngineCurve single({3000_rpm, 6000_rpm, 8000_rpm, 9500_rpm}, {15_Nm, 21_Nm, 19_Nm, 13_Nm});

TEST(EngineCurve, GoesThroughItsPointsAndStraightBetween) {
  for (const EnginePoint& point : single.points()) EXPECT_EQ(single.torque(point.speed), point.torque);
  EXPECT_NEAR(in(single.torque(4500_rpm), units::Nm), 18.0, 1e-13);
  EXPECT_NEAR(in(single.torque(7000_rpm), units::Nm), 20.0, 1e-13);
  EXPECT_NEAR(in(single.power(7000_rpm), units::kW), 20.0 * 7000.0 * pi / 30.0 / 1000.0, 1e-13);
  EXPECT_EQ(single.lowest_speed(), 3000_rpm);
  EXPECT_EQ(single.highest_speed(), 9500_rpm);
  EXPECT_EQ(single.measured_at(), MeasuredAt::crank);
  EXPECT_EQ(single.source(), sources::stated);
}

TEST(EngineCurve, NeverTellsWhatLiesBeyondItsEnds) {
  for (const double bad : {2999.999, 9500.001, 0.0, -5000.0, nothing, endless, -endless}) {
    const auto torque = single.try_torque(bad * units::rpm);
    ASSERT_FALSE(torque) << bad;
    EXPECT_EQ(torque.error().kind(), ErrorKind::range);
    EXPECT_TRUE(std::string(torque.error().what()).starts_with("engine_speed is "));
    EXPECT_EQ(torque.error().expected(), "3000 rpm to 9500 rpm");
    EXPECT_FALSE(single.try_power(bad * units::rpm));
    EXPECT_FALSE(single.covers(bad * units::rpm));
  }
  EXPECT_THROW((void)single.torque(10000_rpm), RangeError);
  EXPECT_TRUE(single.covers(9500_rpm));
}

TEST(EngineCurve, FindsItsPeaksExactly) {
  const EnginePeak torque = single.peak_torque();
  EXPECT_EQ(torque.speed, 6000_rpm);
  EXPECT_EQ(torque.torque, 21_Nm);
  // By hand: on the last piece T = 19 - 6 (n - 8000)/1500, so that T n is greatest at n = (8000 + 19/6 * 1500)/2 =
  // 6375, which lies before the piece; on the one before at (6000 + 21/2 * 2000)/2 = 13500, behind it: so at the point
  // itself.
  EXPECT_EQ(single.peak_power().speed, 8000_rpm);
  // And one where it lies within: T = 20 - 10 (n - 5000)/5000, greatest at (5000 + 2 * 5000)/2 = 7500 with T = 15.
  const EngineCurve within({1000_rpm, 5000_rpm, 10000_rpm}, {20_Nm, 20_Nm, 10_Nm});
  EXPECT_NEAR(in(within.peak_power().speed, units::rpm), 7500.0, 1e-11);
  EXPECT_NEAR(in(within.peak_power().torque, units::Nm), 15.0, 1e-13);
  EXPECT_EQ(within.peak_torque().speed, 1000_rpm);  // of several the lowest
}

TEST(EngineCurve, HasNoSpeedWithMoreThanItsPeaks) {
  std::mt19937_64 random(6);
  std::uniform_real_distribution<double> share(0.0, 1.0);
  for (int round = 0; round < 300; ++round) {
    std::vector<AngularSpeed> speeds;
    std::vector<Torque> torques;
    double speed = 500.0 + 1000.0 * share(random);
    for (int i = 0; i < 2 + round % 12; ++i) {
      speeds.push_back(speed * units::rpm);
      torques.push_back(60.0 * share(random) * units::Nm);
      speed += 1.0 + 2000.0 * share(random);
    }
    const EngineCurve curve(speeds, torques);
    const EnginePeak torque = curve.peak_torque(), power = curve.peak_power();
    EXPECT_EQ(curve.torque(torque.speed), torque.torque);
    EXPECT_EQ(curve.power(power.speed), power.power);
    for (int i = 0; i <= 1000; ++i) {
      const AngularSpeed at = std::min(
          curve.highest_speed(), curve.lowest_speed() + (i / 1000.0) * (curve.highest_speed() - curve.lowest_speed()));
      EXPECT_LE(curve.torque(at), torque.torque);
      EXPECT_LE(curve.power(at), power.power * (1.0 + 1e-15));
    }
  }
}

TEST(EngineCurve, ComesOfPowerAsWell) {
  const EngineCurve curve = EngineCurve::from_power({4000_rpm, 8000_rpm}, {8_kW, 15_kW}, {MeasuredAt::rear_wheel});
  EXPECT_NEAR(in(curve.power(8000_rpm), units::kW), 15.0, 1e-13);
  EXPECT_NEAR(in(curve.power(4000_rpm), units::kW), 8.0, 1e-13);
  EXPECT_EQ(curve.measured_at(), MeasuredAt::rear_wheel);
  const std::vector<AngularSpeed> standing{0_rpm, 8000_rpm};
  const std::vector<Power> powers{0_kW, 15_kW};
  EXPECT_FALSE(EngineCurve::try_from_power(standing, powers));
  const std::vector<Power> endless_power{0_kW, endless * units::kW};
  const std::vector<AngularSpeed> speeds{1000_rpm, 8000_rpm};
  EXPECT_TRUE(std::string(EngineCurve::try_from_power(speeds, endless_power).error().what()).starts_with("power 2 is"));
}

TEST(EngineCurve, OfAMotorIsConstantTorqueThenConstantPower) {
  const EngineCurve motor = EngineCurve::electric(60_Nm, 11_kW, 8000_rpm);
  const AngularSpeed corner = 11_kW / 60_Nm;
  EXPECT_EQ(motor.torque(0_rpm), 60_Nm);
  EXPECT_EQ(motor.torque(corner), 60_Nm);
  EXPECT_EQ(motor.torque(0.5 * corner), 60_Nm);
  for (const double speed : {2000.0, 4321.0, 7999.0, 8000.0})
    EXPECT_NEAR(in(motor.power(speed * units::rpm), units::kW), 11.0, 1e-14) << speed;
  EXPECT_EQ(motor.peak_torque().speed, 0_rpm);
  EXPECT_NEAR(in(motor.peak_power().power, units::kW), 11.0, 1e-14);
  EXPECT_NEAR(motor.peak_power().speed / corner, 1.0, 1e-14);
  const EngineCurve slow = EngineCurve::electric(60_Nm, 11_kW, 1000_rpm);  // ends before its power is reached
  EXPECT_EQ(slow.points().size(), 2u);
  EXPECT_EQ(slow.torque(1000_rpm), 60_Nm);
  EXPECT_FALSE(EngineCurve::try_electric(0_Nm, 11_kW, 8000_rpm));
  EXPECT_FALSE(EngineCurve::try_electric(60_Nm, -11_kW * 1.0, 8000_rpm));
  EXPECT_FALSE(EngineCurve::try_electric(60_Nm, 11_kW, 0_rpm));
}

TEST(EngineCurve, IsScaledAsAltitudeAsks) {
  const EngineCurve high = single.scaled(0.8);
  EXPECT_EQ(high.torque_factor(), 0.8);
  EXPECT_NEAR(in(high.torque(4500_rpm), units::Nm), 14.4, 1e-13);
  EXPECT_EQ(high.scaled(1.0), single);  // instead of the factor it had, not on top of it
  EXPECT_EQ(high.peak_power().speed, single.peak_power().speed);
  EXPECT_NEAR(high.peak_power().power / single.peak_power().power, 0.8, 1e-15);
  for (const double bad : {-0.1, 10.1, nothing, endless}) EXPECT_FALSE(single.try_scaled(bad)) << bad;
  EXPECT_EQ(single.scaled(0.0).torque(4500_rpm), 0_Nm);
}

std::string refusal_of_curve(std::vector<double> rpm, std::vector<double> nm) {
  std::vector<AngularSpeed> speeds;
  std::vector<Torque> torques;
  for (const double one : rpm) speeds.push_back(one * units::rpm);
  for (const double one : nm) torques.push_back(one * units::Nm);
  const auto curve = EngineCurve::make(speeds, torques);
  return curve ? "none" : curve.error().what();
}

TEST(EngineCurve, SaysWhichPointIsWrong) {
  EXPECT_EQ(refusal_of_curve({3000, 6000}, {15, 21}), "none");
  EXPECT_EQ(refusal_of_curve({}, {}), "number of points is 0; expected 2 to 64");
  EXPECT_EQ(refusal_of_curve({3000}, {15}), "number of points is 1; expected 2 to 64");
  EXPECT_EQ(refusal_of_curve({3000, 6000}, {15}), "number of torques is 1; expected 2, one a speed");
  EXPECT_EQ(refusal_of_curve({3000, 2000}, {15, 21}), "speed 2 is 2000 rpm; expected more than the 3000 rpm before it");
  EXPECT_EQ(refusal_of_curve({3000, 3000}, {15, 21}), "speed 2 is 3000 rpm; expected more than the 3000 rpm before it");
  EXPECT_EQ(refusal_of_curve({-1, 3000}, {15, 21}), "speed 1 is -1 rpm; expected 0 rpm to 200000 rpm");
  EXPECT_EQ(refusal_of_curve({3000, nothing}, {15, 21}), "speed 2 is not a number; expected 0 rpm to 200000 rpm");
  EXPECT_EQ(refusal_of_curve({3000, endless}, {15, 21}), "speed 2 is infinite; expected 0 rpm to 200000 rpm");
  EXPECT_EQ(refusal_of_curve({3000, 6000}, {15, -1}), "torque 2 is -1 Nm; expected 0 Nm to 100000 Nm");
  EXPECT_EQ(refusal_of_curve({3000, 6000}, {nothing, 1}), "torque 1 is not a number; expected 0 Nm to 100000 Nm");
  EXPECT_EQ(refusal_of_curve({3000, 6000}, {0, 0}), "an engine curve needs a torque above 0 somewhere");
  std::vector<double> many(64), level(64, 20.0);
  for (std::size_t i = 0; i < many.size(); ++i) many[i] = 100.0 * static_cast<double>(i + 1);
  EXPECT_EQ(refusal_of_curve(many, level), "none");
  many.push_back(7000);
  level.push_back(20);
  EXPECT_EQ(refusal_of_curve(many, level), "number of points is more than 64; expected 2 to 64");
  EXPECT_THROW(EngineCurve({3000_rpm}, {15_Nm}), RangeError);
  EnginePoints from_standstill;
  from_standstill.push_back({0_rpm, 20_Nm, true});
  from_standstill.push_back({3000_rpm, 20_Nm});
  EXPECT_FALSE(EngineCurve::make(from_standstill));  // constant power from standstill would be endless torque
}

TEST(EngineCurve, TellsItsTorqueStepByStep) {
  using layshaft_test::expect_watched;
  constexpr std::array once{Corner::nominal};
  const auto torque = [](const EngineCurve& curve, AngularSpeed speed) {
    return [&curve, speed](auto watch, Corner) { return curve.torque(watch, watch.given("engine_speed", speed)); };
  };
  expect_watched(once, torque(single, 4500_rpm),
                 {"engine speed", "lower speed", "lower torque", "upper speed", "upper torque", "engine torque"});
  expect_watched(once, torque(single, 6000_rpm), {"point torque"});
  const EngineCurve high = single.scaled(0.8);
  expect_watched(once, torque(high, 6000_rpm), {"point torque", "torque factor", "scaled torque"});
  const EngineCurve motor = EngineCurve::electric(60_Nm, 11_kW, 8000_rpm);
  expect_watched(once, torque(motor, 5000_rpm), {"engine speed", "power", "engine torque"});
  const auto working = expect_watched(
      once, [](auto watch, Corner) { return single.power(watch, watch.given("engine_speed", 6000_rpm)); },
      {"engine speed", "point torque", "engine power"});
  EXPECT_EQ(working.steps()[1].detail(), "crank");
}

TEST(EngineCurve, AllocatesNothing) { static_assert(std::is_trivially_destructible_v<EngineCurve>); }

TEST(EngineFormulas, AskForTheirRange) {
  using layshaft_test::expect_range;
  expect_range<formula::torque_between>("..f.f", 4500_rpm, 3000_rpm, 15_Nm, 6000_rpm, 21_Nm);
  EXPECT_FALSE(formula::torque_between::in_range(2999_rpm, 3000_rpm, 15_Nm, 6000_rpm, 21_Nm));
  EXPECT_FALSE(formula::torque_between::in_range(3000_rpm, 3000_rpm, 15_Nm, 3000_rpm, 21_Nm));
  expect_range<formula::torque_of_power>("f+", 15_kW, 8000_rpm);
  expect_range<formula::engine_power>("ff", 21_Nm, 8000_rpm);
  expect_range<formula::scaled_torque>("f0", 21_Nm, 0.8);
}

TEST(EngineCurve, OfPowerHasOneASpeed) {
  const std::vector<AngularSpeed> speeds{3000_rpm, 6000_rpm};
  const std::vector<Power> powers{5_kW, 9_kW, 9_kW};
  const auto curve = EngineCurve::try_from_power(speeds, powers);
  ASSERT_FALSE(curve);
  EXPECT_EQ(std::string(curve.error().what()), "number of powers is 3; expected 2, one a speed");
}

}  // namespace
