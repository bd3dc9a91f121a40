// SPDX-License-Identifier: MIT
#include <layshaft/gearing/gear_steps.hpp>

#include <gtest/gtest.h>

namespace {
using namespace layshaft;

Gearbox box(std::initializer_list<double> ratios) {
  GearboxParts parts;
  for (const double ratio : ratios) parts.gears.push_back(ratio);
  parts.idle = 1000_rpm;
  parts.rev_limit = 9000_rpm;
  return Gearbox(parts);
}

TEST(GearSteps, OfAGeometricBoxAreItsOwn) {
  const GearStepping stepping = gear_stepping(box({8.0, 4.0, 2.0, 1.0}));
  for (const GearSteps* steps : {&stepping.own, &stepping.geometric, &stepping.progressive}) {
    ASSERT_EQ(steps->ratios.size(), 4u);
    ASSERT_EQ(steps->steps.size(), 3u);
    for (std::size_t i = 0; i < 3; ++i) EXPECT_NEAR(steps->steps[i], 2.0, 1e-14);
  }
  EXPECT_NEAR(stepping.progression, 1.0, 1e-15);
}

TEST(GearSteps, OfAProgressiveBoxAreItsOwn) {
  const double top = 1.2, q = 1.1;  // each step 1.1 times the one above it
  const double third = top, second = top * q, first = top * q * q;
  const GearStepping stepping = gear_stepping(box({first * second * third, second * third, third, 1.0}));
  EXPECT_NEAR(stepping.progression, q, 1e-14);
  for (std::size_t i = 0; i < 4; ++i) EXPECT_NEAR(stepping.progressive.ratios[i], stepping.own.ratios[i], 1e-13) << i;
  EXPECT_NEAR(stepping.progressive.steps[2], top, 1e-14);
  EXPECT_NEAR(stepping.geometric.steps[0], top * q, 1e-14);  // the mean of all three
}

TEST(GearSteps, KeepFirstAndLastGear) {
  const GearStepping stepping = gear_stepping(box({2.7, 1.85, 1.42, 1.15, 0.96, 0.83}));
  for (const GearSteps* steps : {&stepping.geometric, &stepping.progressive}) {
    EXPECT_NEAR(steps->ratios[0], 2.7, 1e-13);
    EXPECT_NEAR(steps->ratios[5], 0.83, 1e-15);
  }
  EXPECT_GT(stepping.progression, 1.0);
}

TEST(GearSteps, OfFewGearsAreFew) {
  EXPECT_TRUE(gear_stepping(box({2.0})).own.steps.empty());
  const GearStepping two = gear_stepping(box({2.0, 1.5}));
  EXPECT_EQ(two.progressive.steps.size(), 1u);
  EXPECT_EQ(two.progression, 1.0);
}

TEST(GearSteps, OfThreeGearsHaveAProgression) {
  // Steps of 1.5 and 1.25: each is 1.2 times the next.
  EXPECT_NEAR(gear_stepping(box({3.0, 2.0, 1.6})).progression, 1.2, 1e-15);
}

}  // namespace
