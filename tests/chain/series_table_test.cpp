// SPDX-License-Identifier: MIT
#include <layshaft/chain/series_table.hpp>

#include <gtest/gtest.h>
#include <reference/csv.hpp>

#include <algorithm>
#include <set>
#include <string>
#include <string_view>

namespace {

using namespace layshaft;
using layshaft_test::number;
using layshaft_test::read_csv;
using layshaft_test::Row;

const ChainSeriesRow* row_named(std::string_view name) {
  const auto row = std::find_if(chain_series_table.begin(), chain_series_table.end(),
                                [&](const ChainSeriesRow& candidate) { return candidate.name == name; });
  return row == chain_series_table.end() ? nullptr : &*row;
}

/// A table's millimetres are those of the literal, to the last bit but one.
void expect_mm(Length length, const std::string& printed) { EXPECT_DOUBLE_EQ(length / units::mm, number(printed)); }

void expect_dimensions(const ChainSeriesRow& row, const Row& printed) {
  expect_mm(row.pitch, printed.at("pitch_mm"));
  expect_mm(row.roller_diameter, printed.at("roller_d1_max_mm"));
  expect_mm(row.inner_width, printed.at("inner_width_b1_min_mm"));
  if (printed.at("pin_d2_max_mm").empty()) {
    EXPECT_FALSE(row.pin_diameter);
  } else {
    ASSERT_TRUE(row.pin_diameter);
    expect_mm(*row.pin_diameter, printed.at("pin_d2_max_mm"));
  }
}

/// The strength and mass of chain_series.csv and chain_motorcycle.csv.
void expect_strength_and_mass(const ChainSeriesRow& row, const Row& printed) {
  if (printed.at("min_tensile_kN").empty()) {
    EXPECT_FALSE(row.tensile_strength);
    EXPECT_FALSE(row.mass_per_length);
    return;
  }
  ASSERT_TRUE(row.tensile_strength && row.mass_per_length);
  EXPECT_DOUBLE_EQ(*row.tensile_strength / units::kN, number(printed.at("min_tensile_kN")));
  EXPECT_DOUBLE_EQ(*row.mass_per_length / units::kg_per_m, number(printed.at("mass_kg_per_m")));
}

const Row& find(const std::vector<Row>& rows, std::string_view column, std::string_view cell) {
  const auto row = std::find_if(rows.begin(), rows.end(),
                                [&](const Row& candidate) { return candidate.at(std::string(column)) == cell; });
  if (row == rows.end()) throw std::runtime_error("no row " + std::string(cell));
  return *row;
}

// Source: ISO 606:1994 as adopted in GOST 13568-97, Annex A, Table A.1 (chain_iso606.csv): every row, and every column
// that the library uses.
TEST(ChainSeriesTable, HoldsEveryRowOfIso606AsPrinted) {
  const auto rows = read_csv("chain_iso606.csv");
  EXPECT_EQ(rows.size(), 25u);
  for (const Row& printed : rows) {
    SCOPED_TRACE(printed.at("iso_no"));
    ASSERT_EQ(printed.at("certainty"), "published");
    const ChainSeriesRow* row = row_named(printed.at("iso_no"));
    ASSERT_NE(row, nullptr);
    expect_dimensions(*row, printed);
    ASSERT_TRUE(row->tensile_strength);
    // The table prints decanewtons, 1 daN = 0.01 kN.
    EXPECT_DOUBLE_EQ(*row->tensile_strength / units::kN, number(printed.at("min_tensile_1_daN")) / 100.0);
    for (const Source& source : {row->sources.dimensions, row->sources.pin, row->sources.strength}) {
      EXPECT_EQ(source.document, printed.at("source"));
      EXPECT_EQ(source.certainty, Certainty::published);
    }
  }
}

// Source: a chain maker's 2020 catalogue, pp. 18-19 and 24-25 (chain_series.csv).
TEST(ChainSeriesTable, TakesMassesFromTheCatalogueItNames) {
  int checked = 0;
  for (const Row& printed : read_csv("chain_series.csv")) {
    if (printed.at("source") != "a chain maker's 2020 catalogue, pp. 18-19 and 24-25") continue;
    const std::string designation = printed.at("designation");
    const std::size_t slash = designation.find('/');
    SCOPED_TRACE(designation);
    const ChainSeriesRow* row = row_named(designation.substr(0, slash));
    ASSERT_NE(row, nullptr);
    EXPECT_EQ(row->alias, slash == designation.npos ? "" : designation.substr(slash + 1));
    ASSERT_TRUE(row->mass_per_length);
    EXPECT_DOUBLE_EQ(*row->mass_per_length / units::kg_per_m, number(printed.at("mass_kg_per_m")));
    EXPECT_EQ(row->sources.mass.document, printed.at("source"));
    if (row->sources.dimensions.document == printed.at("source")) {
      expect_dimensions(*row, printed);
      expect_strength_and_mass(*row, printed);
    }
    ++checked;
  }
  EXPECT_EQ(checked, 30);
}

// Source: GOST 13568-97, Table 1 (chain_series.csv).
TEST(ChainSeriesTable, TakesTheNarrowCycleChainsFromTheNationalStandard) {
  const auto rows = read_csv("chain_series.csv");
  const Row& cycle = find(rows, "designation", "PR-12.7-10-1");
  expect_dimensions(*row_named("cycle"), cycle);
  expect_strength_and_mass(*row_named("cycle"), cycle);
  const Row& narrow = find(rows, "designation", "PR-12.7-9(=081-1)");
  expect_dimensions(*row_named("081"), narrow);
  expect_strength_and_mass(*row_named("081"), narrow);
}

// Source: the two rows of chain_series.csv for 081, which agree on the dimensions and on nothing else.
TEST(ChainSeriesTable, Marks081SecondaryWhereTwoSourcesDisagree) {
  const auto rows = read_csv("chain_series.csv");
  const Row& one = find(rows, "designation", "PR-12.7-9(=081-1)");
  const Row& other = find(rows, "designation", "081-type");
  for (const char* column : {"pitch_mm", "roller_d1_max_mm", "inner_width_b1_min_mm"})
    EXPECT_EQ(number(one.at(column)), number(other.at(column))) << column;
  for (const char* column : {"pin_d2_max_mm", "min_tensile_kN", "mass_kg_per_m"})
    EXPECT_NE(number(one.at(column)), number(other.at(column))) << column;
  const ChainSeriesSources& sources = row_named("081")->sources;
  EXPECT_EQ(sources.dimensions.certainty, Certainty::published);
  for (const Source& source : {sources.pin, sources.strength, sources.mass})
    EXPECT_EQ(source.certainty, Certainty::secondary);
}

// Source: charts of motorcycle chain sizes, secondary, and a chain maker's catalogue for 423 (chain_motorcycle.csv).
TEST(ChainSeriesTable, HoldsTheMotorcycleSeriesAsPrintedAndNoFigureThatNoSourceGives) {
  const auto rows = read_csv("chain_motorcycle.csv");
  for (const char* name : {"415", "420", "423", "425", "428", "520", "525", "530", "532", "630"}) {
    SCOPED_TRACE(name);
    const Row& printed = find(rows, "designation", name);
    const ChainSeriesRow* row = row_named(name);
    ASSERT_NE(row, nullptr);
    expect_dimensions(*row, printed);
    expect_strength_and_mass(*row, printed);
    EXPECT_EQ(to_string(row->sources.dimensions.certainty), printed.at("certainty"));
  }
}

TEST(ChainSeriesTable, NamesASourceForEveryFigureAndForNoOther) {
  for (const ChainSeriesRow& row : chain_series_table) {
    SCOPED_TRACE(std::string(row.name));
    EXPECT_FALSE(row.sources.dimensions.document.empty());
    EXPECT_EQ(row.pin_diameter.has_value(), !row.sources.pin.document.empty());
    EXPECT_EQ(row.tensile_strength.has_value(), !row.sources.strength.document.empty());
    EXPECT_EQ(row.mass_per_length.has_value(), !row.sources.mass.document.empty());
  }
}

TEST(ChainSeriesTable, GivesNoNameTwice) {
  std::set<std::string_view> names;
  for (const ChainSeriesRow& row : chain_series_table) {
    EXPECT_TRUE(names.insert(row.name).second) << row.name;
    if (!row.alias.empty()) {
      EXPECT_TRUE(names.insert(row.alias).second) << row.alias;
    }
  }
}

}  // namespace
