// SPDX-License-Identifier: MIT
#include <layshaft/road/top_speed.hpp>

#include "invented_powertrain.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace {
using namespace layshaft_test;

TEST(TopSpeed, BalancesThrustAndResistance) {
  const RoadLoad road(RoadCoefficients{.constant = 60_N, .quadratic = 0.5_kg_per_m});
  const Powertrain train = trail_train();
  const TopSpeed top = try_top_speed(train, road).value();
  ASSERT_EQ(top.limit, TopSpeedLimit::power);
  EXPECT_TRUE(top.certain);
  EXPECT_EQ(top.speed.width(), Speed());
  const Force thrust = try_thrust(train, *top.gear, top.speed.nominal)->nominal;
  EXPECT_NEAR(in(thrust, units::N), in(road.resistance(top.speed.nominal), units::N), 1e-9);
}

// A rotor of constant power on a road that only the air resists: v^3 = P / q, by hand.
TEST(TopSpeed, OfConstantPowerIsTheCubeRoot) {
  const Powertrain train = trail_train([](PowertrainParts& p) {
    p.engine = EngineCurve::electric(100_Nm, 20_kW, 9200_rpm);
    p.drive_efficiency = Band<double>::exactly(1.0);
  });
  const RoadLoad road(RoadCoefficients{.quadratic = 0.6_kg_per_m});
  const TopSpeed top = try_top_speed(train, road).value();
  EXPECT_EQ(top.limit, TopSpeedLimit::power);
  EXPECT_NEAR(top.speed.nominal.value(), std::cbrt(20000.0 / 0.6), 1e-12);
}

TEST(TopSpeed, IsLostToRevsWhereTheEngineCouldPushHarder) {
  const Powertrain train = trail_train();
  const RoadLoad road(RoadCoefficients{.constant = 30_N, .quadratic = 0.15_kg_per_m});
  const TopSpeed top = try_top_speed(train, road).value();
  EXPECT_EQ(top.limit, TopSpeedLimit::revs);
  EXPECT_EQ(top.gear, 6);
  EXPECT_EQ(top.speed.nominal, train.speed(9000_rpm, 6, Corner::nominal));
}

TEST(TopSpeed, NeedNotFallWhenTheGearingGetsShorter) {
  const RoadLoad road(RoadCoefficients{.constant = 60_N, .quadratic = 0.5_kg_per_m});
  const auto with_rear = [&](Teeth rear) {
    const Powertrain train =
        trail_train([&](PowertrainParts& p) { p.loop = ChainLoop(ChainSeries("520"), 13_teeth, rear); });
    return try_top_speed(train, road)->speed.nominal;
  };
  const double speed_change = with_rear(50_teeth) / with_rear(48_teeth) - 1.0;
  EXPECT_GT(speed_change, -0.005);  // by the ratio alone it would be 4 % lower
}

TEST(TopSpeed, FindsACrestBetweenKnotsThatNeitherEndShows) {
  // One straight piece from end to end: both ends lack thrust, and in between there is a little of it.
  const Powertrain train = trail_train([](PowertrainParts& p) {
    p.engine = EngineCurve({2500_rpm, 9200_rpm}, {19_Nm, 24_Nm});
    p.gearbox = Gearbox({.primary = 3.05, .gears = {1.0}, .idle = 1400_rpm, .rev_limit = 9000_rpm});
  });
  const RoadLoad road(RoadCoefficients{.constant = 629_N, .quadratic = 0.2_kg_per_m});
  const TopSpeed top = try_top_speed(train, road).value();
  ASSERT_EQ(top.limit, TopSpeedLimit::power);
  const auto excess = [&](Speed v) { return try_thrust(train, 1, v)->nominal - road.resistance(v); };
  EXPECT_NEAR(excess(top.speed.nominal).value(), 0.0, 1e-9);
  EXPECT_LT(excess(1.001 * top.speed.nominal), Force());
  EXPECT_GT(excess(0.999 * top.speed.nominal), Force());
  for (const AngularSpeed& end : {train.slowest_pull(), train.fastest()})
    EXPECT_LT(excess(train.speed(end, 1, Corner::nominal)), Force());
}

TEST(TopSpeed, OfAMachineThatDoesNotMoveIsAnAnswer) {
  const TopSpeed top = try_top_speed(trail_train(), trail_road(), Slope(40_deg)).value();
  EXPECT_GT(top.speed.nominal, Speed());
  const TopSpeed none = try_top_speed(trail_train([](PowertrainParts& p) {
                                        p.gearbox = Gearbox({.gears = {1.0}, .idle = 1400_rpm, .rev_limit = 9000_rpm});
                                      }),
                                      trail_road(), Slope(20_deg))
                            .value();
  EXPECT_EQ(none.limit, TopSpeedLimit::no_gear);
  EXPECT_EQ(none.gear, std::nullopt);
  EXPECT_EQ(none.speed, Band<Speed>::exactly(Speed()));
  EXPECT_EQ(to_string(none.limit), "no gear pulls");
}

TEST(TopSpeed, SaysWhereTheLimitIsNotCertain) {
  const RoadLoad road = RoadLoad::from_parts({.mass = 225_kg,
                                              .rolling_coefficient = surface(SurfaceKind::asphalt).rolling_coefficient,
                                              .drag_area = {0.3_m2, 0.45_m2, 0.9_m2}});
  const TopSpeed top = try_top_speed(trail_train(), road).value();
  EXPECT_FALSE(top.certain);
  EXPECT_LT(top.speed.low, top.speed.nominal);
}

TEST(TopSpeed, NeedsAMassOnASlope) {
  const Powertrain bare = trail_train([](PowertrainParts& p) { p.body.reset(); });
  EXPECT_TRUE(try_top_speed(bare, trail_road()));
  EXPECT_FALSE(try_top_speed(bare, trail_road(), Slope(0.1)));
  EXPECT_TRUE(try_top_speed(bare, *trail_road().try_carrying(200_kg), Slope(0.1)));
}

// On a road of one force, just what the engine thrusts at a point of its curve, behind which it falls.
TEST(TopSpeed, IsThatOfAPointOfTheCurveWhereItBalancesThereToTheBit) {
  const Powertrain train = trail_train([](PowertrainParts& p) {
    p.gearbox = Gearbox({.primary = 3.05, .gears = {1.42}, .idle = 1400_rpm, .rev_limit = 9000_rpm});
  });
  const Speed speed = train.speed(7500_rpm, 1, Corner::nominal);
  const RoadLoad road({.constant = train.thrust(1, 7500_rpm, RoadCorners())});
  const TopSpeed top = try_top_speed(train, road).value();
  EXPECT_EQ(top.speed, Band<Speed>::exactly(speed));
  EXPECT_EQ(top.limit, TopSpeedLimit::power);
  EXPECT_EQ(top.gear, 1);
}

}  // namespace
