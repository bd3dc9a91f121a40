// SPDX-License-Identifier: MIT
#include <layshaft/chain/envelope.hpp>

#include <gtest/gtest.h>
#include <core/formula_range.hpp>

#include <cmath>

namespace {
using namespace layshaft;
using layshaft_test::expect_range;

Suspension level_swingarm() {
  return Suspension({.layshaft_ahead = 75_mm,
                     .layshaft_above = 0_mm,
                     .arm = 565_mm,
                     .droop = 18_deg,
                     .rest = 0_deg,
                     .bump = -6.0_deg});
}

TEST(Envelope, AddsHalfThePlateToThePitchCircle) {
  // By hand: 16 teeth on 15.875 mm stand on 81.37 mm; plates of 15 mm reach to 48.18 mm.
  EXPECT_NEAR(in(chain_outside_radius(pitch_diameter(15.875_mm, 16_teeth), 15_mm), units::mm),
              0.5 * (15.875 / std::sin(3.14159265358979323846 / 16.0) + 15.0), 1e-12);
  EXPECT_NEAR(in(wall_clearance(52_mm, 48.18_mm), units::mm), 3.82, 1e-12);
  expect_range<formula::chain_outside_radius>("++", 81_mm, 15_mm);
  expect_range<formula::wall_clearance>("++", 52_mm, 48_mm);
}

// Equal sprockets on a level arm: both runs lie level, a pitch radius above and below the line of centres.
TEST(Envelope, KnowsTheRoomBesideALevelRun) {
  const ChainLoop loop(ChainSeries("520"), 20_teeth, 20_teeth);
  const double radius = 0.5 * in(pitch_diameter(15.875_mm, 20_teeth), units::mm);
  const Suspension rigid({.layshaft_ahead = 75_mm,
                          .layshaft_above = 0_mm,
                          .arm = 565_mm,
                          .droop = 0.001_deg,
                          .rest = 0_deg,
                          .bump = -0.001_deg});
  const Clearance above =
      chain_clearance(rigid, loop, 565_mm, {.ahead = -200.0_mm, .above = 90_mm, .radius = 10_mm}, 15_mm);
  EXPECT_NEAR(in(above.least, units::mm), 90.0 - radius - 10.0 - 7.5, 0.02);
  const Clearance between =
      chain_clearance(rigid, loop, 565_mm, {.ahead = -200.0_mm, .above = 0_mm, .radius = 10_mm}, 15_mm);
  EXPECT_NEAR(in(between.least, units::mm), radius - 10.0 - 7.5, 0.02);
  const Clearance inside = chain_clearance(rigid, loop, 565_mm, {.ahead = 75_mm, .above = 0_mm, .radius = 0_mm}, 15_mm);
  EXPECT_NEAR(in(inside.least, units::mm), -radius - 7.5, 0.02);  // in the middle of the front sprocket
}

// By brute force: the pins of the loop as points, 20,000 angles.
TEST(Envelope, FindsTheLeastRoomOfTheWholeTravel) {
  const ChainLoop loop(ChainSeries("520"), 14_teeth, 48_teeth);
  for (const Obstacle& obstacle : {Obstacle{-60.0_mm, 0_mm, 10_mm}, Obstacle{0_mm, 0_mm, 12_mm},
                                   Obstacle{-300.0_mm, -330.0_mm, 12_mm}, Obstacle{-120.0_mm, 95_mm, 8_mm, true}}) {
    const Clearance found = chain_clearance(level_swingarm(), loop, 565_mm, obstacle, 15_mm);
    double least = 1e9;
    for (int i = 0; i <= 20000; ++i) {
      const double angle = (-6.0 + 24.0 * i / 20000.0) * 3.14159265358979323846 / 180.0;
      double x = in(obstacle.ahead, units::mm), y = in(obstacle.above, units::mm);
      if (obstacle.on_arm) {
        const double turned_x = x * std::cos(angle) - y * std::sin(angle);
        y = x * std::sin(angle) + y * std::cos(angle);
        x = turned_x;
      }
      const double ax = -565.0 * std::cos(angle), ay = -565.0 * std::sin(angle);
      const double r1 = 0.5 * 15.875 / std::sin(3.14159265358979323846 / 14.0);
      const double r2 = 0.5 * 15.875 / std::sin(3.14159265358979323846 / 48.0);
      double room = std::min(std::hypot(x - 75.0, y) - r1, std::hypot(x - ax, y - ay) - r2);
      // A run touches both circles: its normal n has n.(front - rear) = r2 - r1 on its side.
      const double dx = 75.0 - ax, dy = -ay, centre = std::hypot(dx, dy);
      for (const double side : {1.0, -1.0}) {
        const double along = (r2 - r1) / centre, across = std::sqrt(1.0 - along * along);
        const double nx = (along * dx - side * across * dy) / centre, ny = (along * dy + side * across * dx) / centre;
        const double fx = 75.0 + r1 * nx, fy = r1 * ny, bx = ax + r2 * nx, by = ay + r2 * ny;
        const double length2 = (fx - bx) * (fx - bx) + (fy - by) * (fy - by);
        const double t = std::fmin(1.0, std::fmax(0.0, ((x - bx) * (fx - bx) + (y - by) * (fy - by)) / length2));
        room = std::min(room, std::hypot(x - bx - t * (fx - bx), y - by - t * (fy - by)));
      }
      least = std::min(least, room - in(obstacle.radius, units::mm) - 7.5);
    }
    EXPECT_NEAR(in(found.least, units::mm), least, 1e-4);
    EXPECT_GE(found.angle, -6.0_deg);
    EXPECT_LE(found.angle, 18_deg);
  }
}

TEST(Envelope, RefusesWhatIsOutOfRange) {
  const ChainLoop loop(ChainSeries("520"), 14_teeth, 48_teeth);
  const Obstacle good{-150.0_mm, 40_mm, 15_mm};
  EXPECT_FALSE(try_chain_clearance(level_swingarm(), loop, 565_mm, {20_m, 40_mm, 15_mm}, 15_mm));
  EXPECT_FALSE(try_chain_clearance(level_swingarm(), loop, 565_mm, {0_mm, 20_m, 15_mm}, 15_mm));
  EXPECT_FALSE(try_chain_clearance(level_swingarm(), loop, 565_mm, {0_mm, 40_mm, -1.0_mm}, 15_mm));
  EXPECT_FALSE(try_chain_clearance(level_swingarm(), loop, 565_mm, good, 0_mm));
  EXPECT_FALSE(try_chain_clearance(level_swingarm(), loop, 70_mm, good, 15_mm));
  EXPECT_THROW((void)chain_clearance(level_swingarm(), loop, 90_mm, good, 15_mm), RangeError);  // the sprockets collide
}

// Equal sprockets: the upper run lies a pitch radius above the line of centres, and sweeps over an obstacle behind the
// pivot. Where its middle line goes through the obstacle's middle there is no room but what both take.
TEST(Envelope, FindsThePlaceBetweenTheEndsWhereARunGoesThroughTheObstacle) {
  const ChainLoop loop(ChainSeries("520"), 20_teeth, 20_teeth);
  const Obstacle tube{-300.0_mm, 40_mm, 10_mm};
  const Clearance found = chain_clearance(level_swingarm(), loop, 565_mm, tube, 15_mm);
  EXPECT_NEAR(in(found.least, units::mm), -(10.0 + 7.5), 1e-5);
  const double x = -565.0 * cos(found.angle) - 75.0, y = -565.0 * sin(found.angle);  // of the axle, from the layshaft
  const double above = (-375.0 * y - 40.0 * x) / std::hypot(x, y);  // the obstacle, of the line of centres
  EXPECT_NEAR(above, 0.5 * 15.875 / std::sin(3.14159265358979323846 / 20.0), 1e-5);
  EXPECT_EQ(found, chain_clearance(level_swingarm(), loop, 565_mm, tube, 15_mm));
  EXPECT_NE(found, (Clearance{found.least, found.angle + 1.0_deg}));
  EXPECT_NE(found, (Clearance{found.least + 1.0_mm, found.angle}));
}

}  // namespace
