// SPDX-License-Identifier: MIT
#include <layshaft/road/mass_table.hpp>

#include <gtest/gtest.h>
#include <reference/csv.hpp>

#include <iterator>

namespace {
using namespace layshaft;
using layshaft_test::number;

// Source: US 40 CFR 86.529-98, figure F98-9.
TEST(MassTable, IsThePublishedOneRowByRow) {
  const auto rows = layshaft_test::read_csv("road_load_cfr.csv");
  ASSERT_EQ(rows.size(), std::size(mass_table));
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const MassRow& row = mass_table[i];
    EXPECT_EQ(row.lowest, number(rows[i].at("loaded_mass_lo_kg")) * units::kg);
    EXPECT_EQ(row.highest, number(rows[i].at("loaded_mass_hi_kg")) * units::kg);
    EXPECT_EQ(row.equivalent, number(rows[i].at("equiv_inertial_mass_kg")) * units::kg);
    EXPECT_EQ(row.constant, number(rows[i].at("A_N")) * units::N);
    EXPECT_EQ(row.quadratic, number("0" + rows[i].at("C_N_per_kmh2")) * units::N_per_kmh2);
    EXPECT_EQ(row.at_65_kmh, number(rows[i].at("F65_N_printed")) * units::N);
  }
}

// The printed force is that of the coefficients as printed, but for their rounding: a half in the last digit of C alone
// is 0.00005 x 65^2 = 0.21 N.
TEST(MassTable, ComesToItsPrintedForceAt65KmhWithin02N) {
  for (const MassRow& row : mass_table) {
    const Force at_65 = row.constant + row.quadratic * 65_kmh * 65_kmh;
    EXPECT_NEAR(at_65.value(), row.at_65_kmh.value(), 0.2) << in(row.lowest, units::kg);
  }
}

TEST(MassTable, IsWithoutGapsAndEndsAtBothEnds) {
  EXPECT_EQ(find_mass_row(94.49_kg), nullptr);
  EXPECT_EQ(find_mass_row(94.5_kg), &mass_table[0]);
  EXPECT_EQ(find_mass_row(105.49_kg), &mass_table[0]);
  EXPECT_EQ(find_mass_row(105.5_kg), &mass_table[1]);
  EXPECT_EQ(find_mass_row(345.49_kg), &mass_table[24]);
  EXPECT_EQ(find_mass_row(345.5_kg), nullptr);
  EXPECT_EQ(find_mass_row(0_kg), nullptr);
  for (double kg = 94.5; kg < 345.5; kg += 0.25) EXPECT_NE(find_mass_row(kg * units::kg), nullptr) << kg;
}

// The table is built by the compiler; built anew while the program runs it has the same bits.
TEST(MassTable, IsTheSameBuiltWhileTheProgramRuns) {
  const auto rows = layshaft_test::read_csv("road_load_cfr.csv");
  ASSERT_EQ(rows.size(), std::size(mass_table));
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const MassRow row =
        detail::mass_row(number(rows[i].at("loaded_mass_lo_kg")), number(rows[i].at("loaded_mass_hi_kg")),
                         number(rows[i].at("equiv_inertial_mass_kg")), number(rows[i].at("A_N")),
                         number("0" + rows[i].at("C_N_per_kmh2")), number(rows[i].at("F65_N_printed")));
    EXPECT_EQ(row.lowest, mass_table[i].lowest);
    EXPECT_EQ(row.highest, mass_table[i].highest);
    EXPECT_EQ(row.equivalent, mass_table[i].equivalent);
    EXPECT_EQ(row.constant, mass_table[i].constant);
    EXPECT_EQ(row.quadratic, mass_table[i].quadratic);
    EXPECT_EQ(row.at_65_kmh, mass_table[i].at_65_kmh);
  }
}

}  // namespace
