// SPDX-License-Identifier: MIT
#include <layshaft/chain/ansi_tooth_form.hpp>

#include <gtest/gtest.h>
#include <core/formula_range.hpp>
#include <reference/chain_examples.hpp>

#include <cmath>
#include <numbers>
#include <string>

namespace {
using namespace layshaft;
using layshaft_test::expect_range;
using layshaft_test::printed_first;

// Source: ANSI tooth-form worksheet, pitch 1 inch, 28 teeth, roller 0.625 inch (chain_worked_examples.csv, A2 to A16).
// The formulas, since no series of the table has a roller of just that diameter.
TEST(AnsiToothForm, IsThatOfAWorksheet) {
  constexpr Length pitch = 1.0_inch, roller = 0.625_inch;
  constexpr Teeth teeth = 28_teeth;
  const Length ac = ansi_working_distance(roller), ab = ansi_topping_distance(roller);
  const Angle angle = ansi_seating_angle(teeth);
  const Length tip_radius = ansi_topping_radius(roller, teeth);
  const Length height = ansi_topping_height(tip_radius, ansi_topping_offset(ab, pitch));
  constexpr double half_a_digit = 0.5e-4;
  EXPECT_NEAR(ansi_seating_diameter(roller) / units::inch, printed_first("A2"), half_a_digit);
  EXPECT_NEAR(angle / units::deg, printed_first("A3"), half_a_digit);
  EXPECT_NEAR(ansi_working_angle(teeth) / units::deg, printed_first("A4"), half_a_digit);
  EXPECT_NEAR(ac / units::inch, printed_first("A5"), half_a_digit);
  EXPECT_NEAR(ansi_working_along(ac, angle) / units::inch, printed_first("A6"), half_a_digit);
  EXPECT_NEAR(ansi_working_across(ac, angle) / units::inch, printed_first("A7"), half_a_digit);
  EXPECT_NEAR(ansi_working_radius(roller) / units::inch, printed_first("A8"), half_a_digit);
  EXPECT_NEAR(ab / units::inch, printed_first("A9"), half_a_digit);
  EXPECT_NEAR(ansi_topping_across(ab, teeth) / units::inch, printed_first("A10"), half_a_digit);
  EXPECT_NEAR(ansi_topping_along(ab, teeth) / units::inch, printed_first("A11"), half_a_digit);
  EXPECT_NEAR(ansi_flat(roller, teeth) / units::inch, printed_first("A12"), half_a_digit);
  EXPECT_NEAR(tip_radius / units::inch, printed_first("A13"), half_a_digit);
  EXPECT_NEAR(height / units::inch, printed_first("A14"), half_a_digit);
  EXPECT_NEAR(ansi_tip_distance(pitch, height, teeth) / units::inch, printed_first("A15"), half_a_digit);
  EXPECT_NEAR(ansi_working_chord(roller, teeth) / units::inch, printed_first("A16"), half_a_digit);
}

TEST(AnsiToothForm, IsThatOfItsSprocket) {
  const AnsiToothForm form(Sprocket(ChainSeries("40"), 17_teeth));
  const Length roller = 7.95_mm;
  EXPECT_EQ(form.sprocket().teeth(), 17_teeth);
  EXPECT_EQ(form.seating_diameter(), ansi_seating_diameter(roller));
  EXPECT_EQ(form.working_along(), ansi_working_along(0.8 * roller, form.seating_angle()));
  EXPECT_EQ(form.topping_height(), ansi_topping_height(form.topping_radius(), form.topping_offset()));
  EXPECT_EQ(form.tip_distance(), ansi_tip_distance(12.7_mm, form.topping_height(), 17_teeth));
}

// Plane geometry. The centres of both arcs stand where the arcs go over into each other: the working arc ends, and the
// tip's begins, on lines square to the straight piece, so their two radii and centres close a figure with it.
TEST(AnsiToothForm, ClosesAroundTheToothForEverySeries) {
  for (const ChainSeries series : all_chain_series())
    for (const int teeth : {9, 13, 17, 28, 45, 60, 150}) {
      SCOPED_TRACE(std::string(series.name()) + " " + std::to_string(teeth));
      const AnsiToothForm form(Sprocket(series, Teeth(teeth)));
      EXPECT_GT(form.seating_diameter(), series.roller_diameter());
      // The working arc starts where the seating arc ends: its radius is the seat's and the distance of the centres.
      EXPECT_NEAR(form.working_radius() / units::mm,
                  (form.working_distance() + form.seating_diameter() / 2.0) / units::mm, 1e-9);
      EXPECT_NEAR(std::hypot(form.working_along().value(), form.working_across().value()),
                  form.working_distance().value(), 1e-15);
      EXPECT_NEAR(std::hypot(form.topping_along().value(), form.topping_across().value()),
                  form.topping_distance().value(), 1e-15);
      // The chord of the working arc, from its radius and angle.
      EXPECT_NEAR(form.working_chord().value(),
                  2.0 * form.working_radius().value() * std::sin(form.working_angle().value() / 2.0), 1e-12);
      // Both centres at one distance from the straight piece's line, less the radii.
      const double b = form.working_angle().value(), slope = (17.0 - 64.0 / teeth) * std::numbers::pi / 180.0;
      EXPECT_NEAR(form.working_distance().value() * std::cos(b) + form.topping_distance().value() * std::cos(slope),
                  form.working_radius().value() + form.topping_radius().value(), 1e-12);
      EXPECT_GT(form.flat(), Length());
      EXPECT_GT(form.topping_height(), Length());
    }
}

TEST(AnsiToothForm, HasANumberForEverySprocketThereIs) {
  for (const ChainSeries series : all_chain_series())
    for (int teeth = Teeth::least; teeth <= Teeth::greatest; teeth += 1 + teeth / 10)
      EXPECT_TRUE(is_finite(AnsiToothForm(Sprocket(series, Teeth(teeth))).tip_distance()))
          << series.name() << " " << teeth;
}

TEST(AnsiToothForm, KnowsItsRange) {
  expect_range<formula::ansi_seating_diameter>("+", 7.95_mm);
  expect_range<formula::ansi_seating_angle>("#", 17_teeth);
  expect_range<formula::ansi_working_angle>("#", 17_teeth);
  expect_range<formula::ansi_working_distance>("+", 7.95_mm);
  expect_range<formula::ansi_working_along>("ff", 6_mm, 37_deg);
  expect_range<formula::ansi_working_across>("ff", 6_mm, 37_deg);
  expect_range<formula::ansi_working_radius>("+", 7.95_mm);
  expect_range<formula::ansi_working_chord>("+#", 7.95_mm, 17_teeth);
  expect_range<formula::ansi_flat>("+#", 7.95_mm, 17_teeth);
  expect_range<formula::ansi_topping_distance>("+", 7.95_mm);
  expect_range<formula::ansi_topping_across>("f#", 11_mm, 17_teeth);
  expect_range<formula::ansi_topping_along>("f#", 11_mm, 17_teeth);
  expect_range<formula::ansi_topping_radius>("+#", 7.95_mm, 17_teeth);
  expect_range<formula::ansi_topping_offset>("f+", 11_mm, 12.7_mm);
  expect_range<formula::ansi_topping_height>("..", 6_mm, 5_mm);
  EXPECT_TRUE(formula::ansi_topping_height::in_range(5.0_mm, -5.0_mm));
  EXPECT_FALSE(formula::ansi_topping_height::in_range(4.9_mm, -5.0_mm));
  EXPECT_FALSE(formula::ansi_topping_height::in_range(4.9_mm, 5.0_mm));
  expect_range<formula::ansi_tip_distance>("+f#", 12.7_mm, 4_mm, 17_teeth);
}

// By hand from the standard's 35 + 60/N and 18 - 56/N degrees.
TEST(AnsiToothForm, HasTheAnglesOfTheStandard) {
  EXPECT_NEAR(in(ansi_seating_angle(20_teeth), units::deg), 38.0, 1e-12);
  EXPECT_NEAR(in(ansi_seating_angle(60_teeth), units::deg), 36.0, 1e-12);
  EXPECT_NEAR(in(ansi_working_angle(20_teeth), units::deg), 15.2, 1e-12);
  EXPECT_NEAR(in(ansi_working_angle(56_teeth), units::deg), 17.0, 1e-12);
}

}  // namespace
