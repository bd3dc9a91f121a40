// SPDX-License-Identifier: MIT
#include <layshaft/gearing/speed.hpp>

#include <gtest/gtest.h>
#include <core/formula_range.hpp>
#include <reference/road_examples.hpp>

#include <random>

namespace {
using namespace layshaft;
using layshaft_test::expect_range;
using layshaft_test::printed_number;

// Source: a university's vehicle dynamics course, propulsion limits, example 1 (road_worked_examples.csv, TB01): 3200
// rpm in third (1.46) on a final drive of 3.944 with a nominal rolling radius of 0.2888 m.
TEST(RoadSpeed, AgreesWithTheCoursesExample) {
  const Length circumference = 2.0 * pi * 0.2888_m;
  EXPECT_NEAR(road_speed(3200_rpm, 1.46 * 3.944, circumference) / units::kmh, printed_number("TB01", 0), 0.00005);
}

// Source: a published article on reading gear ratios (road_worked_examples.csv, TB14): 2000 rpm in third, down to the
// wheel.
TEST(RoadSpeed, AgreesWithTheTouringMotorcyclesWheel) {
  const double primary = 1.708 * 0.973;
  const Length circumference = 2.0_m;
  const auto turns = [&](double ratio) {
    return road_speed(2000_rpm, ratio, circumference) / circumference * turn / units::rpm;
  };
  EXPECT_NEAR(turns(primary), printed_number("TB14", 1), 0.5);
  EXPECT_NEAR(turns(primary * 1.25), printed_number("TB14", 2), 0.5);
  EXPECT_NEAR(turns(primary * 1.25 * 2.833), printed_number("TB14", 3), 0.5);
}

TEST(EngineSpeed, IsTheInverseOfRoadSpeed) {
  std::mt19937_64 random(21);
  std::uniform_real_distribution<double> rpm(1.0, 15000.0), ratio(0.3, 60.0), mm(300.0, 3000.0);
  for (int i = 0; i < 1000; ++i) {
    const double overall = ratio(random);
    const Length circumference = mm(random) * units::mm;
    const AngularSpeed engine = rpm(random) * units::rpm;
    const AngularSpeed back = engine_speed(road_speed(engine, overall, circumference), overall, circumference);
    EXPECT_NEAR(back / engine, 1.0, 1e-15);
  }
}

// Common practice, no source: 40 to 45 teeth behind with a tyre 6 % taller takes a top speed of 85 mph to about 80, and
// a first gear that ended at 15 mph to about 13 with 40 to 49 and that tyre.
TEST(RoadSpeed, ChangesAsRidersSay) {
  const AngularSpeed limit = engine_speed(85_mph, 40.0, 2.0_m);
  EXPECT_NEAR(road_speed(limit, 45.0, 1.06 * 2.0_m) / units::mph, 80.0, 0.5);
  const AngularSpeed first = engine_speed(15_mph, 40.0, 2.0_m);
  EXPECT_NEAR(road_speed(first, 49.0, 1.06 * 2.0_m) / units::mph, 13.0, 0.5);
}

TEST(RoadSpeed, HoldsInItsRangeOnly) {
  expect_range<formula::road_speed>("f++", 6000_rpm, 20.0, 2_m);
  expect_range<formula::engine_speed>("f++", 90_kmh, 20.0, 2_m);
}

}  // namespace
