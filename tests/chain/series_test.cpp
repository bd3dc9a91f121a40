// SPDX-License-Identifier: MIT
#include <layshaft/chain/series.hpp>

#include <gtest/gtest.h>

#include <string>
#include <string_view>
#include <utility>

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
           {"#520", "520"},
           {"08-B", "08B"},
           {"08B1", "08B"},
           {"12a1", "12A"},
           {"04C-1", "04C"},
           {"081-1", "081"},
           {"520-1", "520"},
           {"25H-1", "25H"},
           {"cycle-1", "cycle"},
           {"DIN/ISO 08B", "08B"},
           {"DIN 8187-08B-1", "08B"},
           {"DIN 8188 08A", "08A"},
           {"ISO 606-08B", "08B"},
           {"ISO 083", "083"},
           {"BS 228 08B", "08B"},
           {"BS-08B", "08B"},
           {"ASA 40", "08A"},
           {"ANSI B29.1 40", "08A"},
           {"\xE2\x84\x96 40", "08A"},  // the number sign
           {"no 40", "08A"},
           {"\xEF\xBC\x95\xEF\xBC\x92\xEF\xBC\x90", "520"},  // full-width digits
           {"415B", "083"},
           {"415h", "415H"},
           {"415 BF5", "415BF5"},
           {"10BF19", "10BF19"},
           {"08B narrow", "08B narrow"},
           {"08B-narrow", "08B narrow"},
           {"10b motorcycle", "10B narrow"},
           {"25H", "25H"},
           {"219", "219"},
           {"270h", "270H"},
           {"1/2 x 1/8", "081"},
           {"PR-12.7-18.2", "08B"},
           {"PR-12.7-18.2-1", "PR-12.7-18.2-1"},
           {"PR-12,7-10-1", "cycle"},
           {"pr 15.875-23-1", "10B narrow"},
           {"GOST 13568 PR-19.05-31.8", "PR-19.05-31.8"},
           {"\xD0\x9F\xD0\xA0-12,7-18,2", "08B"},  // PR in its own letters
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
    EXPECT_EQ(all_chain_series()[i], ChainSeries(row.name));
    std::size_t aliases = 0;
    for (const std::string_view alias : row.aliases) {
      if (alias.empty()) continue;
      EXPECT_EQ(ChainSeries(alias).name(), row.name);
      EXPECT_EQ(ChainSeries(row.name).aliases()[aliases++], alias);
    }
    EXPECT_EQ(ChainSeries(row.name).aliases().size(), aliases);
  }
}

struct Mistake {
  std::string_view text;
  std::size_t position;
  std::string_view nearest;  // empty: no name is near, and all are listed
};

TEST(ChainSeries, RefusesWhatIsNoSeriesAndSaysWhereAndWhatIsNear) {
  for (const auto& [text, position, nearest] : {
           Mistake{"08B-2", 4, "08B"},  // two strands
           {"40-2", 2, "40"},
           {"3-5", 1, ""},      // of five strands, and no name without them
           {"520H", 3, "520"},  // a make of it
           {"520 O-ring", 4, ""},
           {"52", 2, "520 or 525"},                  // half a name
           {"08D", 2, "081, 083, 085, 08A or 08B"},  // no such letter
           {"521", 2, "520 or 525"},                 // no such number
           {"ANSI 401", 7, "40"},
           {"8B", 1, "08B, 28B or 48B"},  // not a name in use
           {"084", 2, "081, 083, 085, 08A or 08B"},
           {"1/2 x 5/16", 6, "1/2 x 3/32 or 1/2 x 1/8"},  // names several
           {"PR-12.7-9-1", 9, "PR-12.7-9"},               // there -1 is part of the name
           {"PR-12.7-18.3-1", 11, "PR-12.7-18.2-1"},
           {"52\x01", 2, "520 or 525"},  // a control character
           {"52\xE2\x85\x9E"
            "0",
            2, "520"},  // the sign of seven eighths, which is no space
           {"foo", 0, ""},
           {"", 0, ""},
           {"   ", 3, ""},
           {"#", 1, ""},
           {"-1", 2, ""},
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
    if (!nearest.empty()) {
      EXPECT_TRUE(error.expected().starts_with(std::string(nearest) + " (the nearest)")) << error.expected();
      continue;
    }
    EXPECT_EQ(error.expected().find("the nearest"), std::string::npos) << error.expected();
    for (const std::string_view name : chain_series_names())
      EXPECT_NE(error.expected().find(name), std::string::npos) << name;
  }
}

TEST(ChainSeries, ListsEveryNameOnceWithItsOtherOneWhereNoneIsNear) {
  std::string list;
  for (const ChainSeries series : all_chain_series()) {
    list += (list.empty() ? "one of " : ", ") + std::string(series.name());
    if (!series.aliases().empty()) list += " (" + std::string(series.aliases().front()) + ")";
  }
  EXPECT_TRUE(list.starts_with("one of 219, 25H, 270H, ")) << list;
  EXPECT_NE(list.find(", 04C (25), 06C (35), "), std::string::npos) << list;
  EXPECT_NE(list.find(", 04B, 05B (PR-8-4.6), "), std::string::npos) << list;
  for (const auto& [text, what] : {std::pair<std::string_view, std::string_view>{"foo", "unknown chain series"},
                                   {"", "no chain series"},
                                   {"ANSI", "no chain series"}}) {
    const Error error = ChainSeries::make(text).error();
    EXPECT_EQ(error.expected(), list) << text;
    EXPECT_TRUE(std::string_view(error.what()).starts_with(what)) << error.what();
  }
}

TEST(ChainSeries, RefusesANameThatIsNoneOfTheStandardBeforeIt) {
  for (const auto& [text, expected] : {
           std::pair<std::string_view, std::string_view>{
               "ISO 40", "40 without what stands before it, for it is no name of that standard; or 40A or 40B"},
           {"DIN 8188 08B", "08B without what stands before it, for it is no name of that standard; or 08A"},
           {"DIN 8187 08A", "08A without what stands before it, for it is no name of that standard; or "},
           {"ANSI 520", "520 without what stands before it, for it is no name of that standard; or 50"},
           {"ANSI 08A", "08A without what stands before it, for it is no name of that standard"},
           {"BS 40", "40 without what stands before it, for it is no name of that standard; or 40B"},
       }) {
    const auto series = ChainSeries::make(text);
    ASSERT_FALSE(series) << text;
    EXPECT_TRUE(series.error().expected().starts_with(expected)) << series.error().expected();
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
  for (const auto property : chain_properties) {
    if (property == ChainProperty::mass_per_length) continue;
    EXPECT_EQ(series.source(property).document, "ISO 606:1994 as adopted in GOST 13568-97, Annex A, Table A.1");
  }
  EXPECT_EQ(series.source(ChainProperty::mass_per_length).document,
            "a chain maker's 2020 catalogue, pp. 18-19 and 24-25");
  EXPECT_EQ(ChainSeries("520").source(ChainProperty::inner_width).certainty, Certainty::secondary);
}

TEST(ChainSeries, GivesNoFigureAndNoSourceWhereThereIsNone) {
  const ChainSeries series("520");
  EXPECT_FALSE(series.pin_diameter());
  EXPECT_FALSE(series.path_depth());
  EXPECT_FALSE(series.inner_plate_height());
  EXPECT_FALSE(series.outer_plate_height());
  EXPECT_FALSE(series.inner_link_width());
  EXPECT_FALSE(series.width_over_pin());
  EXPECT_FALSE(series.tensile_strength());
  EXPECT_FALSE(series.mass_per_length());
  for (const auto property : chain_properties)
    EXPECT_EQ(series.source(property).document.empty(), property > ChainProperty::inner_width) << to_string(property);
}

// Source: ISO 606:1994 as adopted in GOST 13568-97, Annex A, Table A.1, the row of 12B.
TEST(ChainSeries, HasTheOutlineOfTheStandard) {
  const ChainSeries series("12B");
  EXPECT_EQ(series.path_depth(), 16.39_mm);
  EXPECT_EQ(series.inner_plate_height(), 16.13_mm);
  EXPECT_EQ(series.outer_plate_height(), 16.13_mm);
  EXPECT_EQ(series.inner_link_width(), 15.62_mm);
  EXPECT_EQ(series.width_over_pin(), 22.7_mm);
}

// What the compiler made of the table, made again while the program runs.
TEST(ChainSeries, AreKnownToTheCompilerByTheNamesThatTheTableHas) {
  const auto known = layshaft::detail::make_known_chain_names();
  ASSERT_EQ(known.size(), layshaft::detail::count_chain_names());
  ASSERT_EQ(known.size(), layshaft::detail::known_chain_names.size());
  for (std::size_t i = 0; i < known.size(); ++i) {
    const auto& compiled = layshaft::detail::known_chain_names[i];
    EXPECT_EQ(known[i].printed, compiled.printed);
    EXPECT_EQ(known[i].text(), compiled.text());
    EXPECT_EQ(known[i].row, compiled.row);
    EXPECT_EQ(known[i].kind, compiled.kind) << known[i].printed;
  }
}

TEST(ChainSeries, HasANameOfTheStandardByItsTwoDigitsAndLetter) {
  namespace names = layshaft::detail::chain_names;
  for (const auto& [name, kind] : {std::pair<std::string_view, unsigned>{"08A", names::iso_a},
                                   {"12A", names::iso_a},
                                   {"08B", names::iso_b},
                                   {"04C", names::iso_other},
                                   {"081", names::iso_other},
                                   {"520", names::trade},
                                   {"12D", names::trade},
                                   {"A2A", names::trade},
                                   {"1BA", names::trade},
                                   {"108A", names::trade},
                                   {"PR-12.7-9", names::national}})
    EXPECT_EQ(names::kind_of(name, false), kind) << name;
  EXPECT_EQ(names::kind_of("40", true), names::ansi);
  EXPECT_EQ(names::kind_of("40", false), names::trade);
  EXPECT_EQ(names::kind_of("415B", true), names::trade);
}

TEST(ChainSeries, HasNoSourceOfAPropertyThatIsNone) {
  EXPECT_TRUE(ChainSeries("08B").source(static_cast<ChainProperty>(99)).document.empty());
}

}  // namespace
