// SPDX-License-Identifier: MIT
#include <layshaft/road/climb.hpp>

#include "invented_powertrain.hpp"

#include <gtest/gtest.h>

namespace {
using namespace layshaft_test;

TEST(Climb, HoldsJustTheResistanceOnItsSlope) {
  const Powertrain train = trail_train();
  const RoadLoad road = *trail_road().try_carrying(225_kg);
  for (const double kmh : {25.0, 40.0, 60.0}) {
    const Speed speed = kmh * units::kmh;
    const Angle slope = try_steepest_slope(train, trail_road(), 3, speed)->nominal;
    EXPECT_NEAR(in(road.resistance(speed, Slope(slope)), units::N), in(try_thrust(train, 3, speed)->nominal, units::N),
                1e-9)
        << kmh;
  }
}

TEST(Climb, IsBelowZeroWhereOnlyDownhill) {
  const RoadLoad wind = RoadLoad(RoadCoefficients{.constant = 45_N, .quadratic = 2_kg_per_m});
  EXPECT_LT(try_steepest_slope(trail_train(), wind, 6, 110_kmh)->nominal, Angle());
}

TEST(Climb, EndsAtTheVertical) {
  const Powertrain light = trail_train([](PowertrainParts& p) { p.body = Body({.mass = 90_kg}); });
  const Band<Angle> slope = *try_steepest_slope(light, trail_road(), 1, 25_kmh);
  EXPECT_EQ(slope, Band<Angle>::exactly(90_deg));
}

TEST(Climb, IsSteepestNowhereElse) {
  const Powertrain train = trail_train([](PowertrainParts& p) { p.circumference = {1.98_m, 2.02_m, 2.06_m}; });
  for (int gear = 2; gear <= 6; ++gear) {
    const BestClimb best = try_best_climb(train, trail_road(), gear).value();
    const Speed low = train.speed(train.slowest_pull(), gear, Corner::nominal);
    const Speed high = train.speed(train.fastest(), gear, Corner::nominal);
    for (int i = 0; i <= 200; ++i) {
      const Speed speed = low + i / 200.0 * (high - low);
      EXPECT_LE(try_steepest_slope(train, trail_road(), gear, speed)->nominal,
                (best.slope.nominal + 1e-9 * units::deg));
    }
    EXPECT_NEAR(in(try_steepest_slope(train, trail_road(), gear, best.speed)->nominal, units::deg),
                in(best.slope.nominal, units::deg), 1e-9);
    EXPECT_LT(best.slope.low, best.slope.nominal);
    EXPECT_LT(best.slope.nominal, best.slope.high);
  }
}

TEST(Descent, HoldsJustTheWeight) {
  const Powertrain train = trail_train();
  const Band<Angle> slope = *try_steepest_descent(train, trail_road(), 1, 12_kmh);
  EXPECT_LT(slope.low, slope.nominal);
  EXPECT_LT(slope.nominal, slope.high);
  // by hand: 3 N m through the overall ratio, divided by the efficiency, and the road's resistance downhill
  const Force dragged = turn / 2.02_m * (3_Nm * train.overall_ratio(1)) / 0.92;
  const RoadLoad road = *trail_road().try_carrying(225_kg);
  EXPECT_NEAR(in(road.resistance(12_kmh, Slope(-slope.nominal)), units::N), -in(dragged, units::N), 1e-9);
}

// Both limits go with the cosine and the weight, so that tan = limit/weight - rolling coefficient.
TEST(GroundClimb, IsLimitedByFrontWheelOrGround) {
  const Body body = *trail_parts().body;
  const GroundClimb asphalt = steepest_on_ground(body, surface(SurfaceKind::asphalt));
  EXPECT_EQ(asphalt.kind, ThrustLimitKind::wheelie);
  EXPECT_NEAR(std::tan(asphalt.slope.nominal.value()), 0.67 / 0.84 - 0.02, 1e-12);
  const GroundClimb gravel = steepest_on_ground(body, surface(SurfaceKind::loose_gravel));
  EXPECT_EQ(gravel.kind, ThrustLimitKind::traction);
  EXPECT_NEAR(std::tan(gravel.slope.nominal.value()), 0.45 * (1.43 - 0.67) / (1.43 - 0.45 * 0.84) - 0.06, 1e-12);
  // there the limit of thrust on the slope is what the slope asks for
  const Slope there(gravel.slope.nominal);
  const Force limit = thrust_limit(body, surface(SurfaceKind::loose_gravel), there).thrust.nominal;
  const RoadLoad rolling =
      RoadLoad::from_parts({.mass = body.mass(), .rolling_coefficient = Band<double>::exactly(0.06), .drag_area = {}});
  EXPECT_NEAR(in(rolling.resistance(0_kmh, there), units::N), in(limit, units::N), 1e-9);
  EXPECT_FALSE(try_steepest_on_ground(Body({.mass = 200_kg}), surface(SurfaceKind::sand)));
}

TEST(Climb, SaysWhatIsWrong) {
  EXPECT_FALSE(try_steepest_slope(trail_train(), trail_road(), 7, 20_kmh));
  EXPECT_FALSE(try_steepest_slope(trail_train(), trail_road(), 1, 90_kmh));
  EXPECT_FALSE(try_best_climb(trail_train(), trail_road(), 0));
  const Powertrain bare = trail_train([](PowertrainParts& p) { p.body.reset(); });
  EXPECT_FALSE(try_best_climb(bare, trail_road(), 1));
  EXPECT_FALSE(try_steepest_descent(bare, trail_road(), 1, 12_kmh));
  const auto slope = try_steepest_slope(bare, trail_road(), 1, 20_kmh);
  ASSERT_FALSE(slope);
  EXPECT_TRUE(std::string(slope.error().what()).starts_with("a slope needs the mass that climbs it"));
  const auto too_fast = try_steepest_descent(trail_train(), trail_road(), 1, 90_kmh);
  ASSERT_FALSE(too_fast);
  EXPECT_TRUE(std::string(too_fast.error().what()).starts_with("speed in gear 1 is 90 km/h"));
}

}  // namespace
