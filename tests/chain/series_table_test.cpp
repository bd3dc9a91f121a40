// SPDX-License-Identifier: MIT
#include <layshaft/chain/listings_table.hpp>
#include <layshaft/chain/series_table.hpp>

#include <gtest/gtest.h>
#include <reference/csv.hpp>

#include <algorithm>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <tuple>
#include <vector>

namespace {

using namespace layshaft;
using layshaft_test::number;
using layshaft_test::read_csv;
using layshaft_test::Row;
namespace from = layshaft::detail::chain_sources;

const ChainSeriesRow* row_named(std::string_view name) {
  const auto row = std::find_if(chain_series_table.begin(), chain_series_table.end(),
                                [&](const ChainSeriesRow& candidate) { return candidate.name == name; });
  return row == chain_series_table.end() ? nullptr : &*row;
}
std::vector<ChainListing> listings_of(std::string_view series) {
  std::vector<ChainListing> all;
  for (const ChainListing& listing : chain_listings_table)
    if (listing.series == series) all.push_back(listing);
  return all;
}

/// A table's figure is that of the literal, to the last bit but one; an empty cell is none.
template <class Quantity>
void expect_figure(const std::optional<Quantity>& figure, Quantity unit, const Row& printed, const char* column) {
  SCOPED_TRACE(column);
  ASSERT_EQ(figure.has_value(), !printed.at(column).empty());
  if (figure) {
    EXPECT_DOUBLE_EQ(*figure / unit, number(printed.at(column)));
  }
}
void expect_mm(const std::optional<Length>& length, const Row& printed, const char* column) {
  expect_figure(length, units::mm, printed, column);
}

/// The columns that all three tables have.
template <class Chain>
void expect_common(const Chain& chain, const Row& printed, const char* plate) {
  expect_mm(chain.pitch, printed, "pitch_mm");
  expect_mm(chain.roller_diameter, printed, "roller_d1_max_mm");
  expect_mm(chain.inner_width, printed, "inner_width_b1_min_mm");
  expect_mm(chain.pin_diameter, printed, "pin_d2_max_mm");
  expect_mm(chain.inner_plate_height, printed, plate);
}
template <class Chain>
void expect_strength_and_mass(const Chain& chain, const Row& printed) {
  expect_figure(chain.tensile_strength, units::kN, printed, "min_tensile_kN");
  expect_figure(chain.mass_per_length, units::kg_per_m, printed, "mass_kg_per_m");
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
    expect_common(*row, printed, "inner_plate_h2_max_mm");
    expect_mm(row->path_depth, printed, "chain_path_h1_min_mm");
    expect_mm(row->outer_plate_height, printed, "outer_plate_h3_max_mm");
    expect_mm(row->inner_link_width, printed, "inner_link_b2_max_mm");
    expect_mm(row->width_over_pin, printed, "over_pin_b4_simplex_max_mm");
    ASSERT_TRUE(row->tensile_strength);
    // The table prints decanewtons, 1 daN = 0.01 kN.
    EXPECT_DOUBLE_EQ(*row->tensile_strength / units::kN, number(printed.at("min_tensile_1_daN")) / 100.0);
    for (const Source& source : {row->sources.pitch, row->sources.roller, row->sources.inner_width, row->sources.pin,
                                 row->sources.inner_plate, row->sources.outline, row->sources.strength}) {
      EXPECT_EQ(source.document, printed.at("source"));
      EXPECT_EQ(source.certainty, Certainty::published);
    }
    const auto listing = listings_of(printed.at("iso_no")).front();
    EXPECT_EQ(listing.source, from::iso);
    EXPECT_EQ(listing.designation, printed.at("iso_no"));
    expect_common(listing, printed, "inner_plate_h2_max_mm");
    EXPECT_EQ(listing.tensile_strength, row->tensile_strength);
    EXPECT_FALSE(listing.mass_per_length);
  }
}

// Source: a chain maker's 2020 catalogue, pp. 18-19 and 24-25 (chain_series.csv).
TEST(ChainSeriesTable, TakesMassesAndAnsiNumbersFromTheCatalogueItNames) {
  int checked = 0;
  for (const Row& printed : read_csv("chain_series.csv")) {
    if (printed.at("source") != from::catalogue.document) continue;
    const std::string designation = printed.at("designation");
    const std::size_t slash = designation.find('/');
    SCOPED_TRACE(designation);
    const ChainSeriesRow* row = row_named(designation.substr(0, slash));
    ASSERT_NE(row, nullptr);
    if (slash != designation.npos) {
      EXPECT_EQ(row->aliases[0], designation.substr(slash + 1));
    }
    expect_figure(row->mass_per_length, units::kg_per_m, printed, "mass_kg_per_m");
    if (row->sources.strength == from::catalogue) {  // no standard at hand has it
      expect_common(*row, printed, "plate_height_h2_max_mm");
      expect_strength_and_mass(*row, printed);
    }
    ++checked;
  }
  EXPECT_EQ(checked, 30);
}

/// What the source of a row of the tables is called in the library.
std::string_view document_of(const Row& printed) {
  const std::string& source = printed.at("source");
  if (source.starts_with("GOST 13568-97 Table 1")) return from::national.document;
  if (source.starts_with("GOST 13568-97 Table A.1 footnote")) return from::footnote.document;
  if (source.starts_with("motorcycle chain size charts")) return from::charts.document;
  if (source.find("kart forum") != source.npos) return from::forum.document;
  if (source.starts_with("from memory")) return from::memory.document;
  return source;
}

// Source: the tables named (chain_series.csv, chain_motorcycle.csv): every row, every column, word for word.
TEST(ChainListings, HoldEveryRowOfTheTablesAsPrinted) {
  std::size_t rows = read_csv("chain_iso606.csv").size();
  for (const char* file : {"chain_series.csv", "chain_motorcycle.csv"})
    for (const Row& printed : read_csv(file)) {
      SCOPED_TRACE(printed.at("designation") + ", " + printed.at("source"));
      const ChainListing* found = nullptr;
      for (const ChainListing& listing : chain_listings_table)
        if (listing.designation == printed.at("designation") && listing.source.document == document_of(printed)) {
          EXPECT_EQ(found, nullptr) << "twice";
          found = &listing;
        }
      ASSERT_NE(found, nullptr);
      EXPECT_EQ(to_string(found->source.certainty), printed.at("certainty"));
      expect_common(*found, printed, "plate_height_h2_max_mm");
      expect_strength_and_mass(*found, printed);
      ++rows;
    }
  EXPECT_EQ(rows, 111u);
  EXPECT_EQ(chain_listings_table.size(), rows);
}

TEST(ChainListings, StandInTheOrderOfTheSeries) {
  std::vector<std::string_view> order;
  for (const ChainListing& listing : chain_listings_table)
    if (order.empty() || order.back() != listing.series) order.push_back(listing.series);
  ASSERT_EQ(order.size(), chain_series_table.size());
  for (std::size_t i = 0; i < order.size(); ++i) EXPECT_EQ(order[i], chain_series_table[i].name);
}

/// One figure of a series beside what its listings print of it.
template <class Quantity>
void expect_chosen(const ChainSeriesRow& row, const char* what, const std::optional<Quantity>& figure,
                   const Source& source, const std::optional<Quantity> ChainListing::*of_listing, bool least) {
  SCOPED_TRACE(std::string(row.name) + ", " + what);
  std::vector<ChainListing> printed;
  for (const ChainListing& listing : listings_of(row.name))
    if (listing.*of_listing) printed.push_back(listing);
  ASSERT_EQ(figure.has_value(), !printed.empty());
  if (!figure) return;
  const bool agreed = std::all_of(printed.begin(), printed.end(), [&](const ChainListing& listing) {
    return listing.*of_listing == printed.front().*of_listing;
  });
  // The source that counts first decides, but of strengths that no standard sets the least.
  const bool of_standard = source == from::iso || printed.front().source == from::iso;
  auto expected = printed.front();
  if (least && !of_standard)
    for (const ChainListing& listing : printed)
      if (listing.*of_listing < expected.*of_listing) expected = listing;
  EXPECT_EQ(*figure, *(expected.*of_listing));
  EXPECT_TRUE(source.document.starts_with(expected.source.document)) << source.document;
  // Where two disagree and no standard decides, the figure is secondary.
  if (agreed || of_standard) {
    EXPECT_EQ(source, expected.source);
  } else {
    EXPECT_EQ(source.certainty, Certainty::secondary);
  }
}

TEST(ChainSeriesTable, ChoosesEachFigureByOneRule) {
  for (const ChainSeriesRow& row : chain_series_table) {
    expect_chosen(row, "pin", row.pin_diameter, row.sources.pin, &ChainListing::pin_diameter, false);
    expect_chosen(row, "plate", row.inner_plate_height, row.sources.inner_plate, &ChainListing::inner_plate_height,
                  false);
    expect_chosen(row, "strength", row.tensile_strength, row.sources.strength, &ChainListing::tensile_strength, true);
    // The mass is the catalogue's wherever the standard has the rest; it has none itself.
    if (row.sources.strength == from::iso) {
      EXPECT_EQ(row.sources.mass, from::catalogue) << row.name;
    } else {
      expect_chosen(row, "mass", row.mass_per_length, row.sources.mass, &ChainListing::mass_per_length, false);
    }
    SCOPED_TRACE(std::string(row.name));
    const auto listings = listings_of(row.name);
    EXPECT_EQ(row.pitch, listings.front().pitch);
    EXPECT_EQ(row.roller_diameter, listings.front().roller_diameter);
    EXPECT_EQ(row.inner_width, listings.front().inner_width);
    EXPECT_EQ(row.sources.pitch, listings.front().source);
    for (const ChainListing& listing : listings) {
      EXPECT_EQ(listing.pitch, row.pitch) << listing.designation;
      if (row.sources.pitch != from::iso) {
        EXPECT_EQ(listing.roller_diameter, row.roller_diameter) << listing.designation;
        if (listing.inner_width != row.inner_width) {
          EXPECT_EQ(row.sources.inner_width.certainty, Certainty::secondary) << listing.designation;
        }
      }
    }
  }
}

// Source: the notes of the tables: only the pitch of the kart's 219 was quoted, the rest recalled; 25H and 270H were
// recalled whole (chain_motorcycle.csv).
TEST(ChainSeriesTable, KeepsWhatIsFromMemoryMarked) {
  const ChainSeriesRow& kart = *row_named("219");
  EXPECT_EQ(kart.sources.pitch.certainty, Certainty::secondary);
  EXPECT_EQ(kart.sources.roller.certainty, Certainty::from_memory);
  EXPECT_EQ(kart.sources.inner_width.certainty, Certainty::from_memory);
  for (const char* name : {"25H", "270H"})
    for (const Source& source : {row_named(name)->sources.pitch, row_named(name)->sources.roller,
                                 row_named(name)->sources.inner_width, row_named(name)->sources.pin})
      EXPECT_EQ(source.certainty, Certainty::from_memory) << name;
}

// Source: GOST 13568-97, Table 1, which sets its chains equal to others of which it prints another inner width
// (chain_series.csv). Where pitch, roller, inner width and pin are the same the name is another name; else a row.
TEST(ChainSeriesTable, GivesANationalChainARowOfItsOwnWhereItsDimensionsAreItsOwn) {
  int rows = 0, names = 0;
  for (const Row& printed : read_csv("chain_series.csv")) {
    const std::string designation = printed.at("designation");
    if (!designation.starts_with("PR-")) continue;
    SCOPED_TRACE(designation);
    const std::string name = designation.substr(0, designation.find('('));
    if (const ChainSeriesRow* row = row_named(name)) {
      expect_common(*row, printed, "plate_height_h2_max_mm");
      expect_strength_and_mass(*row, printed);
      ++rows;
      continue;
    }
    const auto known = std::find_if(chain_series_table.begin(), chain_series_table.end(),
                                    [&](const auto& row) { return row.aliases[0] == name || row.aliases[1] == name; });
    ASSERT_NE(known, chain_series_table.end());
    expect_mm(known->pitch, printed, "pitch_mm");
    expect_mm(known->roller_diameter, printed, "roller_d1_max_mm");
    expect_mm(known->inner_width, printed, "inner_width_b1_min_mm");
    expect_mm(known->pin_diameter, printed, "pin_d2_max_mm");
    ++names;
  }
  EXPECT_EQ(rows, 8);
  EXPECT_EQ(names, 7);
}

// Source: the two rows of chain_series.csv for 081, which agree on the dimensions and on nothing else.
TEST(ChainSeriesTable, Marks081SecondaryWhereTwoSourcesDisagree) {
  const ChainSeriesSources& sources = row_named("081")->sources;
  EXPECT_EQ(row_named("081")->tensile_strength, 8.9_kN);
  for (const Source& source : {sources.pitch, sources.roller, sources.inner_width})
    EXPECT_EQ(source.certainty, Certainty::published);
  for (const Source& source : {sources.pin, sources.strength, sources.mass, sources.inner_plate})
    EXPECT_EQ(source.certainty, Certainty::secondary);
}

TEST(ChainSeriesTable, NamesASourceForEveryFigureAndForNoOther) {
  for (const ChainSeriesRow& row : chain_series_table) {
    SCOPED_TRACE(std::string(row.name));
    const auto named = [](const Source& source) { return !source.document.empty(); };
    EXPECT_TRUE(named(row.sources.pitch) && named(row.sources.roller) && named(row.sources.inner_width));
    EXPECT_EQ(row.pin_diameter.has_value(), named(row.sources.pin));
    EXPECT_EQ(row.inner_plate_height.has_value(), named(row.sources.inner_plate));
    for (const auto& outline : {row.path_depth, row.outer_plate_height, row.inner_link_width, row.width_over_pin})
      EXPECT_EQ(outline.has_value(), named(row.sources.outline));
    EXPECT_EQ(row.tensile_strength.has_value(), named(row.sources.strength));
    EXPECT_EQ(row.mass_per_length.has_value(), named(row.sources.mass));
  }
}

TEST(ChainSeriesTable, HasDimensionsThatGoTogether) {
  for (const ChainSeriesRow& row : chain_series_table) {
    SCOPED_TRACE(std::string(row.name));
    EXPECT_LT(row.roller_diameter, row.pitch);
    if (row.pin_diameter) {
      EXPECT_LT(*row.pin_diameter, row.roller_diameter);
    }
    if (row.inner_plate_height) {
      EXPECT_LT(*row.inner_plate_height, row.pitch);
    }
    if (row.path_depth) {
      EXPECT_GT(*row.path_depth, *row.inner_plate_height);
    }
    if (row.inner_link_width) {
      EXPECT_GT(*row.inner_link_width, row.inner_width);
    }
    if (row.width_over_pin) {
      EXPECT_GT(*row.width_over_pin, *row.inner_link_width);
    }
  }
}

TEST(ChainSeriesTable, GivesNoNameTwice) {
  std::set<std::string_view> names;
  for (const ChainSeriesRow& row : chain_series_table) {
    EXPECT_TRUE(names.insert(row.name).second) << row.name;
    for (const std::string_view alias : row.aliases)
      if (!alias.empty()) {
        EXPECT_TRUE(names.insert(alias).second) << alias;
      }
    EXPECT_FALSE(row.aliases[0].empty() && !row.aliases[1].empty()) << row.name;
  }
}

TEST(ChainSeriesTable, IsToTheBitWhatAProgramWouldMakeOfIt) {
  const auto figures = [](const ChainSeriesRow& row) {
    return std::tie(row.name, row.aliases, row.pitch, row.roller_diameter, row.inner_width, row.pin_diameter,
                    row.path_depth, row.inner_plate_height, row.outer_plate_height, row.inner_link_width,
                    row.width_over_pin, row.tensile_strength, row.mass_per_length);
  };
  auto made = layshaft::detail::make_chain_series_table();  // the table itself is made by the compiler
  ASSERT_EQ(made.size(), chain_series_table.size());
  for (std::size_t i = 0; i < made.size(); ++i)
    EXPECT_TRUE(figures(made[i]) == figures(chain_series_table[i])) << made[i].name;
}

TEST(ChainListingsTable, IsToTheBitWhatAProgramWouldMakeOfIt) {
  const auto figures = [](const ChainListing& row) {
    return std::tie(row.designation, row.series, row.pitch, row.roller_diameter, row.inner_width, row.pin_diameter,
                    row.inner_plate_height, row.tensile_strength, row.mass_per_length, row.source);
  };
  auto made = layshaft::detail::make_chain_listings_table();
  ASSERT_EQ(made.size(), chain_listings_table.size());
  for (std::size_t i = 0; i < made.size(); ++i)
    EXPECT_TRUE(figures(made[i]) == figures(chain_listings_table[i])) << made[i].designation;
}

}  // namespace
