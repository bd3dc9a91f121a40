// SPDX-License-Identifier: MIT
#include <layshaft/road/standing_start.hpp>

#include "invented_powertrain.hpp"

#include <gtest/gtest.h>

namespace {
using namespace layshaft_test;

// By hand: torque at 2700 rpm is 17 + 200/1500 x 4 N m; nothing but numbers from here on.
TEST(StandingStart, IsWorkedOutByHand) {
  const Powertrain train = trail_train();
  const StandingStart start = try_standing_start(train, trail_road(), Slope(0.2)).value();
  const double torque = 17.0 + 200.0 / 1500.0 * 4.0, ratio = 3.05 * 2.7 * 48.0 / 13.0, radius = 2.02 / (2.0 * pi);
  const double thrust = torque * ratio * 0.92 / radius;
  const double angle = std::atan(0.2);
  const double resistance = 45.0 * std::cos(angle) + 225.0 * 9.80665 * std::sin(angle);
  const double omega = 2700.0 * 2.0 * pi / 60.0, caught = omega / ratio * radius;
  const double acceleration = (thrust - resistance) / (225.0 + 1.1 / (radius * radius));
  ASSERT_TRUE(start.moves);
  EXPECT_EQ(start.limit, StartLimit::engine);
  EXPECT_NEAR(start.thrust.nominal.value(), thrust, 1e-9);
  EXPECT_NEAR(start.caught_speed.nominal.value(), caught, 1e-12);
  EXPECT_NEAR(start.slip_time->nominal.value(), caught / acceleration, 1e-12);
  EXPECT_NEAR(start.slip_distance->nominal.value(), 0.5 * caught * caught / acceleration, 1e-12);
  EXPECT_NEAR(start.clutch_heat->nominal.value(), 0.5 * torque * omega * caught / acceleration, 1e-9);
}

TEST(StandingStart, IsHeldByAClutchThatCarriesLess) {
  const auto with = [](Torque carried, AngularSpeed turning) {
    return trail_train([&](PowertrainParts& p) {
      EngineParts engine = p.engine.parts();
      engine.clutch_torque = carried;
      engine.start_speed = turning;
      p.engine = Engine(engine);
    });
  };
  const StandingStart weak = try_standing_start(with(15_Nm, 6000_rpm), trail_road()).value();
  EXPECT_EQ(weak.limit, StartLimit::clutch);
  const StandingStart strong = try_standing_start(with(45_Nm, 6000_rpm), trail_road()).value();
  EXPECT_EQ(strong.limit, StartLimit::engine);
  EXPECT_NEAR(weak.thrust.nominal / strong.thrust.nominal, 15.0 / 24.0, 1e-12);
}

TEST(StandingStart, ThatDoesNotMoveIsAnAnswer) {
  const StandingStart start = try_standing_start(trail_train(), trail_road(), Slope(60_deg)).value();
  EXPECT_FALSE(start.moves);
  EXPECT_FALSE(start.may_move);
  EXPECT_EQ(start.slip_time, std::nullopt);
  EXPECT_EQ(start.clutch_heat, std::nullopt);
  EXPECT_LT(start.steepest.nominal, 60_deg);
  // just below its steepest it does move
  EXPECT_TRUE(try_standing_start(trail_train(), trail_road(), Slope(0.999 * start.steepest.nominal))->moves);
  EXPECT_FALSE(try_standing_start(trail_train(), trail_road(), Slope(1.001 * start.steepest.nominal))->moves);
}

TEST(StandingStart, MovesPerhapsWhereTheBandSaysSo) {
  const Powertrain guessed = trail_train([](PowertrainParts& p) {
    p.engine = estimate_engine({24_Nm, 6000_rpm, 19_kW, 8500_rpm, 2000_rpm, 9200_rpm});
  });
  const Angle slope = try_standing_start(guessed, trail_road())->steepest.nominal;
  const StandingStart start = try_standing_start(guessed, trail_road(), Slope(slope)).value();
  EXPECT_FALSE(start.moves);
  EXPECT_TRUE(start.may_move);
}

TEST(StandingStart, SaysWhatIsWrong) {
  EXPECT_FALSE(try_standing_start(trail_train(), trail_road(), Slope(), 7));
  EXPECT_FALSE(try_standing_start(trail_train([](PowertrainParts& p) { p.body.reset(); }), trail_road()));
}

}  // namespace
