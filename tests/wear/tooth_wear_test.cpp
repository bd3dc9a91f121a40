// SPDX-License-Identifier: MIT
#include <layshaft/wear/tooth_wear.hpp>

#include <gtest/gtest.h>

namespace {
using namespace layshaft;

TEST(ToothWear, CountsTheContactsOverTheBandOfTheCircumference) {
  constexpr Band<Length> circumference{1.6_m, 2.0_m, 2.5_m};
  constexpr ToothWear wear = tooth_wear(12_teeth, 48_teeth, 108_links, circumference);
  static_assert(wear.rear_contacts_per_km == Band<double>{400.0, 500.0, 625.0});  // a larger tyre meets less often
  static_assert(wear.front_contacts_per_km == Band<double>{1600.0, 2000.0, 2500.0});
  static_assert(wear.front_hunting == hunting(12_teeth, 108_links));
  static_assert(wear.rear_hunting == hunting(48_teeth, 108_links));
  EXPECT_EQ(wear.front_hunting, (Hunting{1, 9, 1, 9.0 / 108.0 * 0.5, 0.5, 0.5}));
}

// Common practice, no source: a front tooth of 14/40 meets the chain about three times as often as a rear one.
TEST(ToothWear, FallsOnTheFrontTeethAboutThreeTimesAsOften) {
  const ToothWear wear = tooth_wear(14_teeth, 40_teeth, 106_links, Band<Length>::exactly(2.0_m));
  EXPECT_NEAR(wear.front_contacts_per_km.nominal / wear.rear_contacts_per_km.nominal, 3.0, 0.15);
  EXPECT_EQ(wear.front_contacts_per_km.width(), 0.0);
}

}  // namespace
