// SPDX-License-Identifier: MIT
#include <layshaft/chain/series.hpp>

#include <gtest/gtest.h>

#include <string>
#include <string_view>

namespace {

using namespace layshaft;

constexpr ChainSeries known_to_the_compiler("520");
static_assert(known_to_the_compiler.pitch() == 15.875_mm);
static_assert(known_to_the_compiler == ChainSeries("520"));
static_assert(known_to_the_compiler != ChainSeries("525"));

struct Spelling {
  std::string_view text;
  std::string_view name;
};

TEST(ChainSeries, ReadsEveryUsualSpelling) {
  for (const auto& [text, name] : {
           Spelling{"520", "520"},
           {" 520 ", "520"},
           {"5 2 0", "520"},
           {"\t520", "520"},
           {"520\xC2\xA0", "520"},
           {"08B", "08B"},
           {"08b", "08B"},
           {"08 B", "08B"},
           {"08B-1", "08B"},
           {"08b - 1", "08B"},
           {"08B\xE2\x80\x93"
            "1",
            "08B"},
           {"ISO 08B", "08B"},
           {"iso606 08B-1", "08B"},
           {"ISO 606 08B", "08B"},
           {"40", "08A"},
           {"ANSI 40", "08A"},
           {"ansi 40-1", "08A"},
           {"#40", "08A"},
           {"ANSI #40", "08A"},
           {"No. 40", "08A"},
           {"100", "20A"},
           {"240", "48A"},
           {"25", "04C"},
           {"35", "06C"},
           {"41", "085"},
           {"cycle", "cycle"},
           {"Cycle", "cycle"},
           {"CYCLE", "cycle"},
           {"1/2 x 3/32", "cycle"},
           {"1/2x3/32", "cycle"},
           {"1/2 \xC3\x97 3/32", "cycle"},
           {"081", "081"},
       }) {
    const auto series = ChainSeries::make(text);
    ASSERT_TRUE(series) << text;
    EXPECT_EQ(series->name(), name) << text;
    EXPECT_EQ(*series, ChainSeries(name)) << text;
  }
}

TEST(ChainSeries, ReadsEveryNameAndAliasOfTheTable) {
  EXPECT_EQ(chain_series_names().size(), chain_series_table.size());
  for (std::size_t i = 0; i < chain_series_table.size(); ++i) {
    const ChainSeriesRow& row = chain_series_table[i];
    EXPECT_EQ(chain_series_names()[i], row.name);
    EXPECT_EQ(ChainSeries(row.name).name(), row.name);
    EXPECT_EQ(ChainSeries(row.name).alias(), row.alias);
    if (!row.alias.empty()) {
      EXPECT_EQ(ChainSeries(row.alias).name(), row.name);
    }
  }
}

struct Mistake {
  std::string_view text;
  std::size_t position;
  std::string_view nearest;  // empty: no name is near
};

TEST(ChainSeries, RefusesWhatIsNoSeriesAndSaysWhereAndWhatIsNear) {
  for (const auto& [text, position, nearest] : {
           Mistake{"08B-2", 3, "08B"},  // two strands
           {"520H", 3, "520"},          // a make of it
           {"52", 2, "520"},            // half a name
           {"08D", 2, "081"},           // no such letter; of three as near, the first of the table
           {"ANSI 401", 7, "40"},       // no such number
           {"52\x01", 2, "520"},        // a control character
           {"foo", 0, ""},
           {"", 0, ""},
           {"   ", 3, ""},
           {"#", 1, ""},
           {"-1", 0, ""},
           {"0", 1, ""},
           {"ANSI", 4, ""},
           {"a name that is longer than any chain series has", 0, ""},
       }) {
    SCOPED_TRACE(std::string(text));
    const auto series = ChainSeries::make(text);
    ASSERT_FALSE(series);
    const Error& error = series.error();
    EXPECT_EQ(error.kind(), ErrorKind::parse);
    EXPECT_EQ(error.text(), text);
    EXPECT_EQ(error.position(), position);
    if (nearest.empty()) {
      EXPECT_EQ(error.expected().find("the nearest"), std::string::npos) << error.expected();
    } else {
      EXPECT_TRUE(error.expected().starts_with(std::string(nearest) + " (the nearest)")) << error.expected();
    }
    for (const std::string_view name : chain_series_names())
      EXPECT_NE(error.expected().find(name), std::string::npos) << name;
  }
}

TEST(ChainSeries, ThrowsTheSameError) {
  try {
    const ChainSeries series("08B-2");
    FAIL() << series.name();
  } catch (const ParseError& error) {
    EXPECT_STREQ(error.what(), ChainSeries::make("08B-2").error().what());
  }
}

TEST(ChainSeries, KnowsTheSourceOfEachFigure) {
  const ChainSeries series("08B");
  for (const auto property : {ChainProperty::pitch, ChainProperty::roller_diameter, ChainProperty::inner_width,
                              ChainProperty::pin_diameter, ChainProperty::tensile_strength})
    EXPECT_EQ(series.source(property).document, "ISO 606:1994 as adopted in GOST 13568-97, Annex A, Table A.1");
  EXPECT_EQ(series.source(ChainProperty::mass_per_length).document,
            "a chain maker's 2020 catalogue, pp. 18-19 and 24-25");
  EXPECT_EQ(ChainSeries("520").source(ChainProperty::inner_width).certainty, Certainty::secondary);
}

TEST(ChainSeries, GivesNoFigureAndNoSourceWhereThereIsNone) {
  const ChainSeries series("520");
  EXPECT_FALSE(series.pin_diameter());
  EXPECT_FALSE(series.tensile_strength());
  EXPECT_FALSE(series.mass_per_length());
  for (const auto property :
       {ChainProperty::pin_diameter, ChainProperty::tensile_strength, ChainProperty::mass_per_length})
    EXPECT_TRUE(series.source(property).document.empty());
}

}  // namespace
