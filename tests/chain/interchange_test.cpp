// SPDX-License-Identifier: MIT
#include <layshaft/chain/interchange.hpp>
#include <layshaft/chain/published_chains.hpp>

#include <gtest/gtest.h>
#include <core/formula_range.hpp>
#include <reference/csv.hpp>

#include <algorithm>
#include <cmath>
#include <string>

namespace {
using namespace layshaft;
using layshaft_test::expect_range;
using layshaft_test::number;
using layshaft_test::read_csv;
using layshaft_test::Row;

std::vector<std::string> names(const std::vector<ChainSeries>& list) {
  std::vector<std::string> all;
  for (const ChainSeries& series : list) all.emplace_back(series.name());
  return all;
}

// 520, 525 and 530 share pitch and roller; a tooth of 520 (0.95 of 6.35 mm) goes between the plates of all three, one
// of 530 (0.95 of 9.53 mm) only between its own and those of 10A and 10B, which are as wide.
TEST(Interchange, GoesByPitchRollerAndWidth) {
  const auto on_520 = names(interchangeable(ChainSeries("520"))), on_530 = names(interchangeable(ChainSeries("530")));
  const auto has = [](const std::vector<std::string>& list, const char* name) {
    return std::find(list.begin(), list.end(), name) != list.end();
  };
  EXPECT_TRUE(has(on_520, "520") && has(on_520, "525") && has(on_520, "530") && has(on_520, "10B"));
  EXPECT_FALSE(has(on_520, "532") || has(on_520, "428") || has(on_520, "630"));
  EXPECT_TRUE(has(on_530, "530") && has(on_530, "10A") && has(on_530, "10B"));
  EXPECT_FALSE(has(on_530, "520") || has(on_530, "525"));
  const ChainOnSprocket narrow = chain_on_sprocket(ChainSeries("520"), ChainSeries("530"));
  EXPECT_TRUE(narrow.same_pitch && narrow.same_roller);
  EXPECT_FALSE(narrow.tooth_goes_between || narrow.fits());
  EXPECT_NEAR(in(narrow.side_play, units::mm), 6.35 - 0.95 * 9.53, 1e-12);
  EXPECT_FALSE(chain_on_sprocket(ChainSeries("532"), ChainSeries("530")).same_roller);
  EXPECT_FALSE(chain_on_sprocket(ChainSeries("428"), ChainSeries("530")).same_pitch);
  for (const std::string_view name : chain_series_names())
    EXPECT_TRUE(chain_on_sprocket(ChainSeries(name), ChainSeries(name)).fits()) << name;
}

// Bhandari, Design of Machine Elements, example 14.5: 12B, b1 = 11.68 mm, tooth width 11.096 mm.
TEST(Sprocket, HasTheToothWidthOfATextbook) {
  EXPECT_NEAR(in(Sprocket(ChainSeries("12B"), 17_teeth).tooth_width(), units::mm), 11.096, 5e-4);
  EXPECT_NEAR(in(Sprocket(ChainSeries("08B"), 17_teeth).tooth_width(), units::mm), 0.93 * 7.75, 1e-12);
}

// By coordinates: the farthest pins on a circle of z places, and both halves of the pins beyond.
TEST(Sprocket, IsMeasuredOverPins) {
  for (const int teeth : {9, 12, 13, 14, 43, 50}) {
    const Sprocket sprocket(ChainSeries("520"), Teeth(teeth));
    const double radius = 0.5 * in(sprocket.pitch_diameter(), units::mm);
    double farthest = 0.0;
    for (int i = 1; i < teeth; ++i)
      farthest = std::fmax(farthest, 2.0 * radius * std::sin(3.14159265358979323846 * i / teeth));
    EXPECT_NEAR(in(sprocket.over_pins(), units::mm), farthest + 10.16, 1e-9) << teeth;
  }
  EXPECT_NEAR(in(ansi_outside_diameter(12.7_mm, 20_teeth), units::mm),
              12.7 * (0.6 + 1.0 / std::tan(3.14159265358979323846 / 20.0)), 1e-12);
  const Sprocket sprocket(ChainSeries("40"), 20_teeth);
  EXPECT_LT(sprocket.ansi_outside_diameter(), sprocket.tip_diameter().high);
  EXPECT_GT(sprocket.ansi_outside_diameter(), sprocket.pitch_diameter());
  expect_range<formula::over_pins_even>("++", 80_mm, 10_mm);
  expect_range<formula::over_pins_odd>("+#+", 80_mm, 13_teeth, 10_mm);
  expect_range<formula::tooth_width>("++", 6_mm, 0.95);
  expect_range<formula::ansi_outside_diameter>("+#", 12.7_mm, 20_teeth);
}

/// A printed cell is that of the table, or absent in both.
template <class Quantity>
void expect_cell(const std::optional<Quantity>& value, Quantity unit, const std::string& printed, double scale = 1.0) {
  if (printed.empty() || printed == "-") {
    EXPECT_FALSE(value);
  } else {
    ASSERT_TRUE(value);
    EXPECT_DOUBLE_EQ(*value / unit, number(printed) * scale);
  }
}

// Every row of the published tables, in their order: ISO 606 (25), catalogues and national standard (65), motorcycles.
TEST(PublishedChains, HoldEveryRowAsPrinted) {
  std::size_t at = 0;
  for (const char* file : {"chain_iso606.csv", "chain_series.csv", "chain_motorcycle.csv"})
    for (const Row& row : read_csv(file)) {
      const bool iso = row.contains("iso_no");
      ASSERT_LT(at, published_chains.size());
      const PublishedChain& chain = published_chains[at++];
      SCOPED_TRACE(std::string(chain.designation));
      EXPECT_EQ(chain.designation, row.at(iso ? "iso_no" : "designation"));
      expect_cell(std::optional(chain.pitch), units::mm, row.at("pitch_mm"));
      expect_cell(std::optional(chain.roller_diameter), units::mm, row.at("roller_d1_max_mm"));
      expect_cell(std::optional(chain.inner_width), units::mm, row.at("inner_width_b1_min_mm"));
      expect_cell(chain.pin_diameter, units::mm, row.at("pin_d2_max_mm"));
      expect_cell(chain.plate_height, units::mm, row.at(iso ? "inner_plate_h2_max_mm" : "plate_height_h2_max_mm"));
      expect_cell(chain.tensile_strength, units::kN, row.at(iso ? "min_tensile_1_daN" : "min_tensile_kN"),
                  iso ? 0.01 : 1.0);
      if (!iso) expect_cell(chain.mass_per_length, units::kg_per_m, row.at("mass_kg_per_m"));
      if (!chain.series.empty()) {
        EXPECT_TRUE(ChainSeries::make(chain.series)) << chain.series;
      }
      if (row.at("certainty") == "from memory") {
        EXPECT_EQ(chain.source.certainty, Certainty::from_memory);
      }
    }
  EXPECT_EQ(at, published_chains.size());
}

// Where a series takes its plate height from the standard, it is the standard's.
TEST(PublishedChains, GiveTheSeriesTheirPlateHeights) {
  for (const PublishedChain& chain : published_chains) {
    const auto series = ChainSeries::make(chain.series);
    if (!series || series->source(ChainProperty::plate_height) != chain.source) continue;
    EXPECT_EQ(series->plate_height(), chain.plate_height) << chain.designation;
  }
  EXPECT_FALSE(ChainSeries("520").plate_height());
  EXPECT_EQ(ChainSeries("08B").plate_height(), 11.81_mm);
}

TEST(PublishedChains, AreFoundByUsualSpellings) {
  for (const auto& [text, name] : {std::pair{"DIN 08B-1", "08B"},
                                   {"din/iso 08b", "08B"},
                                   {"ASA 40", "08A"},
                                   {"#41", "085"},
                                   {"25", "04C"},
                                   {"35", "06C"},
                                   {"ANSI 50", "10A"},
                                   {"415b", "083"},
                                   {"08b NARROW", "08B narrow"}})
    EXPECT_EQ(ChainSeries(text).name(), name) << text;
}

}  // namespace
