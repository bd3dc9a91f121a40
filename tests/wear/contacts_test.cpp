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
  EXPECT_EQ(contacts_change(1.125), 0.125);
  EXPECT_EQ(contacts_change(1.0), 0.0);
  expect_range<formula::contacts_change>("+", 1.1);
}

}  // namespace
