// SPDX-License-Identifier: MIT
#include <layshaft/wear/contacts.hpp>

#include <gtest/gtest.h>
#include <core/formula_range.hpp>

namespace {
using namespace layshaft;
using layshaft_test::expect_range;

// Common practice, no source: a front tooth of 14/40 meets the chain about three times as often as a rear one.
TEST(Contacts, OfAFrontToothAreAboutThreeTimesARearTooths) {
  const double times = front_contacts(1_km, 2.0_m, 14_teeth, 40_teeth) / rear_contacts(1_km, 2.0_m);
  EXPECT_DOUBLE_EQ(times, 40.0 / 14.0);
  EXPECT_NEAR(times, 3.0, 0.15);
}

// Worked by hand: 500 turns of a 2 m wheel in a kilometre.
TEST(Contacts, AreOnePerTurn) {
  EXPECT_DOUBLE_EQ(rear_contacts(1_km, 2.0_m), 500.0);
  EXPECT_DOUBLE_EQ(front_contacts(1_km, 2.0_m, 15_teeth, 45_teeth), 1500.0);
}

TEST(Contacts, KnowTheirRange) {
  expect_range<formula::rear_contacts>("++", 1_km, 2_m);
  expect_range<formula::front_contacts>("++##", 1_km, 2_m, 14_teeth, 40_teeth);
}

TEST(ContactsChange, IsTheChangeOfTurns) {
  EXPECT_NEAR(front_contacts_change(40.0 / 14.0, 2_m, 45.0 / 14.0, 2.12_m), 1.125 / 1.06 - 1.0, 1e-15);
  EXPECT_NEAR(rear_contacts_change(2_m, 2.12_m), 1.0 / 1.06 - 1.0, 1e-15);
  EXPECT_EQ(front_contacts_change(3.1, 2.017_m, 3.1, 2.017_m), 0.0);
  EXPECT_EQ(rear_contacts_change(2.017_m, 2.017_m), 0.0);
  expect_range<formula::front_contacts_change>("++++", 3.0, 2_m, 3.1, 2.1_m);
  expect_range<formula::rear_contacts_change>("++", 2_m, 2.1_m);
}

}  // namespace
