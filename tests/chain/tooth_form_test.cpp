// SPDX-License-Identifier: MIT
#include <layshaft/chain/sprocket.hpp>
#include <layshaft/chain/tooth_form.hpp>

#include <gtest/gtest.h>
#include <core/formula_range.hpp>
#include <reference/chain_examples.hpp>

namespace {
using namespace layshaft;
using layshaft_test::expect_range;
using layshaft_test::printed_first;

// Source: Bhandari, Design of Machine Elements, ch. 14, Ex. 14.5: 12B of 17 teeth; root diameter from the mean seating
// radius, mean flank radius, side relief (chain_worked_examples.csv, B14.5b, c and e).
TEST(ToothForm, IsATextbooks) {
  const Sprocket sprocket(ChainSeries("12B"), 17_teeth);
  EXPECT_NEAR((sprocket.pitch_diameter() - 2.0 * sprocket.seating_radius().nominal) / units::mm,
              printed_first("B14.5b"), 0.5e-6);
  EXPECT_NEAR(sprocket.flank_radius().nominal / units::mm, printed_first("B14.5c"), 0.5e-6);
  EXPECT_NEAR(sprocket.tooth_side_relief() / units::mm, printed_first("B14.5e"), 0.5e-6);
}

TEST(ToothForm, SeatsTheRollerAndLeavesRoomAroundIt) {
  for (const ChainSeries series : all_chain_series())
    for (const int teeth : {Teeth::least, 9, 13, 48, 150, Teeth::greatest}) {
      SCOPED_TRACE(std::string(series.name()) + " " + std::to_string(teeth));
      const Sprocket sprocket{series, Teeth(teeth)};
      const Band<Length> seat = sprocket.seating_radius(), flank = sprocket.flank_radius();
      const Band<Angle> angle = sprocket.seating_angle();
      EXPECT_TRUE(well_formed(seat) && well_formed(flank) && well_formed(angle));
      EXPECT_GT(2.0 * seat.low, series.roller_diameter());
      EXPECT_LT(2.0 * seat.high, 1.1 * series.roller_diameter());
      EXPECT_GT(flank.low, seat.high);
      EXPECT_NEAR((angle.high - angle.low) / units::deg, 20.0, 1e-12);
      EXPECT_GT(angle.low, 90.0_deg);
      EXPECT_LT(angle.high, 140.0_deg);
    }
}

TEST(ToothForm, KeepsTheSeatingAngleMarkedAsRecalled) {
  for (const Formula* one : {&formula::seating_angle_least::about, &formula::seating_angle_greatest::about})
    EXPECT_EQ(one->source.certainty, Certainty::from_memory);
}

TEST(ToothForm, KnowsItsRange) {
  expect_range<formula::seating_radius_least>("+", 8.51_mm);
  expect_range<formula::seating_radius_greatest>("+", 8.51_mm);
  expect_range<formula::seating_radius>("ff", 4.3_mm, 4.5_mm);
  expect_range<formula::flank_radius_least>("+#", 8.51_mm, 14_teeth);
  expect_range<formula::flank_radius_greatest>("+#", 8.51_mm, 14_teeth);
  expect_range<formula::flank_radius>("ff", 16_mm, 25_mm);
  expect_range<formula::seating_angle_least>("#", 14_teeth);
  expect_range<formula::seating_angle_greatest>("#", 14_teeth);
  expect_range<formula::seating_angle>("ff", 110_deg, 130_deg);
  expect_range<formula::tooth_side_relief>("+", 12.7_mm);
}

// By hand from 120 - 90/z and 140 - 90/z degrees.
TEST(ToothForm, SeatsTheRollerOverTheMiddleOfWhatIsAllowed) {
  const Angle least = seating_angle_least(18_teeth), greatest = seating_angle_greatest(18_teeth);
  EXPECT_NEAR(in(least, units::deg), 115.0, 1e-12);
  EXPECT_NEAR(in(greatest, units::deg), 135.0, 1e-12);
  EXPECT_NEAR(in(seating_angle(least, greatest), units::deg), 125.0, 1e-12);
}

}  // namespace
