// SPDX-License-Identifier: MIT
#include <layshaft/road/limits.hpp>

#include <layshaft/core/recorder.hpp>

#include <gtest/gtest.h>
#include <core/formula_range.hpp>
#include <reference/road_examples.hpp>
#include <tyre/watched.hpp>

#include <cmath>
#include <limits>
#include <random>
#include <string>

namespace {
using namespace layshaft;

const Body trail({.mass = 220_kg, .wheelbase = 1.45_m, .centre_ahead = 0.68_m, .centre_height = 0.72_m});

// Source: a college physics problem, wheelbase 1.56 m, centre of mass midway and 0.775 m high, g = 9.8 m/s2.
TEST(WheelieLimit, IsThatOfTheTextbook) {
  const Acceleration g = Acceleration::from_value(9.8);
  EXPECT_NEAR(wheelie_acceleration(g, 0.78_m, 0.775_m).value(), layshaft_test::printed_number("TB10", 0), 0.005);
}

// Source: a textbook problem; its answer was cut off and was worked out anew: 1.09347 g.
TEST(WheelieLimit, CountsARiderAsASecondMass) {
  constexpr Length foot = 12.0 * units::inch;
  const Body both = Body({.mass = 375_lb, .centre_ahead = 2.8 * foot, .centre_height = 1.7 * foot})
                        .carrying(200_lb, 2.5 * foot, 3.9 * foot);
  const Acceleration lifts = wheelie_acceleration(standard_gravity, *both.centre_ahead(), *both.centre_height());
  EXPECT_NEAR(lifts / standard_gravity, (375.0 * 2.8 + 200.0 * 2.5) / (375.0 * 1.7 + 200.0 * 3.9), 1e-14);
  EXPECT_NEAR(lifts / standard_gravity, 1.09347, 0.000005);
}

/// The load on each wheel by the balance of moments: a body that is pushed by F at the rear contact patch on a slope.
struct Loads {
  double rear, front;
  Loads(const Body& body, double thrust, double slope) {
    const double weight = body.mass().value() * standard_gravity.value();
    const double w = body.wheelbase()->value(), b = body.centre_ahead()->value(), h = body.centre_height()->value();
    front = (weight * std::cos(slope) * b - thrust * h) / w;  // moments about the rear contact patch
    rear = weight * std::cos(slope) - front;
  }
};

TEST(ThrustLimit, IsWhereTheLoadsSaySo) {
  std::mt19937_64 random(8);
  const auto between = [&](double low, double high) {
    return low + (high - low) * std::uniform_real_distribution<double>(0.0, 1.0)(random);
  };
  int wheelies = 0;
  for (int round = 0; round < 2000; ++round) {
    const double w = between(1.2, 1.6);
    const Body body({.mass = between(100, 350) * units::kg,
                     .wheelbase = w * units::m,
                     .centre_ahead = w * between(0.3, 0.7) * units::m,
                     .centre_height = between(0.4, 0.9) * units::m});
    const double grip = between(0.2, 1.4);
    const Slope slope(between(-0.5, 0.8));
    const ThrustLimit limit = thrust_limit(body, Band<double>::exactly(grip), slope);
    const Loads at_wheelie(body, limit.wheelie.value(), slope.angle().value());
    EXPECT_NEAR(at_wheelie.front, 0.0, 1e-9);
    const Loads at_limit(body, limit.thrust.nominal.value(), slope.angle().value());
    if (limit.kind == ThrustLimitKind::traction) {
      EXPECT_NEAR(limit.thrust.nominal.value(), grip * at_limit.rear, 1e-9);
      EXPECT_GE(at_limit.front, -1e-9);
    } else {
      ++wheelies;
      EXPECT_EQ(limit.thrust.nominal, limit.wheelie);
      EXPECT_LE(limit.thrust.nominal.value(), grip * at_limit.rear * (1.0 + 1e-12));
    }
    EXPECT_LE(limit.thrust.nominal, limit.wheelie);
  }
  EXPECT_GT(wheelies, 200);
}

TEST(ThrustLimit, IsABandOverTheGripOfASurface) {
  const ThrustLimit sand = thrust_limit(trail, surface(SurfaceKind::sand));
  EXPECT_EQ(sand.kind, ThrustLimitKind::traction);
  EXPECT_LT(sand.thrust.low, sand.thrust.nominal);
  EXPECT_LT(sand.thrust.nominal, sand.thrust.high);
  EXPECT_LT(sand.thrust.high, sand.wheelie);
  const ThrustLimit asphalt = thrust_limit(trail, surface(SurfaceKind::asphalt));
  EXPECT_EQ(asphalt.thrust.high, asphalt.wheelie);
  EXPECT_EQ(thrust_limit(trail, Band<double>::exactly(10.0)).kind, ThrustLimitKind::wheelie);
  EXPECT_EQ(thrust_limit(trail, Band<double>::exactly(0.0)).thrust.nominal, 0_N);
  EXPECT_EQ(to_string(ThrustLimitKind::wheelie), "wheelie");
}

TEST(ThrustLimit, AsksForWhatItNeeds) {
  constexpr double nothing = std::numeric_limits<double>::quiet_NaN();
  const auto without = try_thrust_limit(Body({.mass = 220_kg}), surface(SurfaceKind::sand));
  ASSERT_FALSE(without);
  EXPECT_NE(std::string(without.error().what()).find("centre_height"), std::string::npos);
  for (const double bad : {-0.1, 10.1, nothing}) EXPECT_FALSE(try_thrust_limit(trail, Band<double>::exactly(bad)));
  EXPECT_FALSE(try_thrust_limit(trail, Band<double>{0.5, 0.4, 0.6}));
  EXPECT_THROW((void)thrust_limit(Body({.mass = 220_kg}), surface(SurfaceKind::sand)), Error);
}

TEST(ThrustLimit, TellsItsSteps) {
  const auto limit = [](double grip) {
    return
        [grip](auto watch, Corner) { return detail::thrust_limit_of(watch, trail, Slope(0.2), grip, sources::stated); };
  };
  const auto spins =
      layshaft_test::expect_watched(std::array{Corner::nominal}, limit(0.5),
                                    {"mass", "gravity", "grade", "slope angle", "centre ahead", "centre height",
                                     "wheelie thrust", "grip", "wheelbase", "traction thrust", "thrust limit"});
  EXPECT_EQ(spins.result().kind(), StepKind::chosen);
  EXPECT_EQ(spins.result().run().others.size(), 1u);
  layshaft_test::expect_watched(
      std::array{Corner::nominal}, limit(1.2),
      {"mass", "gravity", "grade", "slope angle", "centre ahead", "centre height", "wheelie thrust", "thrust limit"});
}

TEST(Slip, TurnsTheWheelFasterThanTheRoad) {
  EXPECT_NEAR(in(slipping_speed(50_kmh, 0.1), units::kmh), 45.0, 1e-13);
  EXPECT_NEAR(in(slipping_wheel_speed(45_kmh, 0.1), units::kmh), 50.0, 1e-13);
  EXPECT_EQ(slipping_speed(50_kmh, 0.0), 50_kmh);
}

TEST(LimitFormulas, AskForTheirRange) {
  using layshaft_test::expect_range;
  expect_range<formula::wheelie_thrust>("++ff+", 200_kg, standard_gravity, 5_deg, 0.7_m, 0.7_m);
  expect_range<formula::traction_thrust>(".++f.f.", 0.5, 200_kg, standard_gravity, 5_deg, 1.4_m, 0.7_m, 0.7_m);
  EXPECT_FALSE(formula::traction_thrust::in_range(2.0, 200_kg, standard_gravity, 5_deg, 1.4_m, 0.7_m, 0.7_m));
  EXPECT_FALSE(formula::traction_thrust::in_range(-0.1, 200_kg, standard_gravity, 5_deg, 1.4_m, 0.7_m, 0.7_m));
  expect_range<formula::wheelie_acceleration>("+f+", standard_gravity, 0.7_m, 0.7_m);
  expect_range<formula::slipping_speed>("f.", 50_kmh, 0.1);
  EXPECT_FALSE(formula::slipping_speed::in_range(50_kmh, 1.0));
  EXPECT_FALSE(formula::slipping_speed::in_range(50_kmh, -0.1));
  expect_range<formula::slipping_wheel_speed>("f.", 50_kmh, 0.1);
  EXPECT_TRUE(formula::slipping_wheel_speed::in_range(50_kmh, 0.99));
  EXPECT_FALSE(formula::slipping_wheel_speed::in_range(50_kmh, 0.9905));
  EXPECT_FALSE(formula::slipping_wheel_speed::in_range(50_kmh, 1.0));
}

TEST(ThrustLimit, NeedsWheelbaseAndBothPlacesOfTheCentre) {
  for (const BodyParts& parts : {BodyParts{.mass = 220_kg, .centre_ahead = 0.68_m, .centre_height = 0.72_m},
                                 {.mass = 220_kg, .wheelbase = 1.45_m, .centre_height = 0.72_m},
                                 {.mass = 220_kg, .wheelbase = 1.45_m, .centre_ahead = 0.68_m}}) {
    const auto limit = try_thrust_limit(Body(parts), Band<double>::exactly(0.8));
    ASSERT_FALSE(limit);
    EXPECT_EQ(std::string(limit.error().what()),
              "a limit of thrust needs wheelbase, centre_ahead and centre_height of the body");
  }
}

}  // namespace
