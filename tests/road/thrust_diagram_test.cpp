// SPDX-License-Identifier: MIT
#include <layshaft/road/thrust_diagram.hpp>

#include "invented_powertrain.hpp"

#include <gtest/gtest.h>

namespace {
using namespace layshaft_test;

TEST(ThrustDiagram, HasTheThrustAndWhatIsLeftOfIt) {
  const Powertrain train = trail_train();
  const ThrustDiagram diagram = thrust_diagram(train, trail_road(), Slope(0.1), 25);
  ASSERT_EQ(diagram.size(), 6u);
  EXPECT_EQ(diagram, thrust_diagram(train, trail_road(), Slope(0.1), 25));
  EXPECT_NE(diagram, thrust_diagram(train, trail_road(), Slope(0.11), 25));
  const RoadLoad laden = *trail_road().try_carrying(225_kg);
  for (std::size_t i = 0; i < diagram.size(); ++i) {
    const int gear = static_cast<int>(i) + 1;
    ASSERT_EQ(diagram[i].size(), 25u);
    EXPECT_EQ(diagram[i].front().engine_speed, train.slowest_pull());
    EXPECT_EQ(diagram[i].back().engine_speed, train.fastest());
    for (const ThrustPoint& point : diagram[i]) {
      EXPECT_EQ(point.thrust, *try_thrust(train, gear, point.speed));
      EXPECT_EQ(point.resistance, laden.resistance(point.speed, Slope(0.1)));
      EXPECT_EQ(point.excess, point.thrust.nominal - point.resistance);
    }
  }
}

TEST(ThrustDiagram, SaysWhatIsWrong) {
  for (const int points : {-1, 0, 1, 10001})
    EXPECT_FALSE(try_thrust_diagram(trail_train(), trail_road(), Slope(), points));
  const Powertrain bare = trail_train([](PowertrainParts& p) { p.body.reset(); });
  EXPECT_FALSE(try_thrust_diagram(bare, trail_road(), Slope(0.1)));
}

}  // namespace
