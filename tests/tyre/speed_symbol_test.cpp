// SPDX-License-Identifier: MIT
#include <layshaft/tyre/speed_symbol.hpp>

#include "../reference/csv.hpp"

#include <gtest/gtest.h>

#include <iterator>
#include <string>

namespace {
using namespace layshaft;

// Source: tests/reference/tyre_speed_symbol.csv; the rows marked published were seen in the UN tyre regulations.
TEST(SpeedSymbol, HasTheSpeedsOfTheReference) {
  std::size_t speeds = 0;
  int published = 0;
  for (const auto& row : layshaft_test::read_csv("tyre_speed_symbol.csv")) {
    const std::string& name = row.at("symbol");
    if (row.at("speed_km_h").front() == '>') {  // ZR and the symbols in brackets name no speed of their own
      EXPECT_FALSE(try_rated_speed(name)) << name;
      continue;
    }
    ++speeds;
    const SpeedSymbol* found = find_speed_symbol(name);
    ASSERT_NE(found, nullptr) << name;
    EXPECT_EQ(found->speed, layshaft_test::number(row.at("speed_km_h")) * units::kmh) << name;
    EXPECT_EQ(to_string(found->certainty), row.at("certainty")) << name;
    published += found->certainty == Certainty::published;
  }
  EXPECT_EQ(speeds, std::size(speed_symbols));
  EXPECT_EQ(published, 17);
}

TEST(SpeedSymbol, ComesInRisingOrderWithHBetweenUAndV) {
  for (std::size_t i = 1; i < std::size(speed_symbols); ++i)
    EXPECT_LT(speed_symbols[i - 1].speed, speed_symbols[i].speed) << speed_symbols[i].name;
  EXPECT_LT(rated_speed("U"), rated_speed("H"));
  EXPECT_LT(rated_speed("H"), rated_speed("V"));
}

TEST(SpeedSymbol, IsReadInEitherCaseAndWithSpacesAround) {
  EXPECT_EQ(rated_speed("R"), 170_kmh);
  EXPECT_EQ(rated_speed("r"), 170_kmh);
  EXPECT_EQ(rated_speed("  a8 "), 40_kmh);
  EXPECT_EQ(speed_symbol("\xEF\xBC\xB2").name, "R");  // full-width
  for (const SpeedSymbol& symbol : speed_symbols) EXPECT_EQ(speed_symbol(symbol.name), symbol);
}

TEST(SpeedSymbol, IsKnownToTheCompilerAndEqualByName) {
  static_assert(find_speed_symbol("A8")->speed == 40_kmh);
  static_assert(detail::row_of_speed_symbol("I") < 0 && detail::row_of_speed_symbol("") < 0);
  static_assert(*find_speed_symbol("H") == SpeedSymbol{"H", 0_kmh, Certainty::from_memory});
  static_assert(!(*find_speed_symbol("H") == *find_speed_symbol("V")));
  static_assert(noexcept(find_speed_symbol("H")));
}

TEST(SpeedSymbol, ThatDoesNotExistIsAParseErrorAtItsPlace) {
  const struct {
    std::string_view text;
    std::size_t position;
  } table[] = {{"", 0},    {"  ", 2}, {"I", 0},   {"O", 0},   {"X", 0},
               {"A", 1},   {"A9", 1}, {"A0", 1},  {"RR", 1},  {"R R", 2},
               {"(W)", 0}, {"ZR", 0}, {"61R", 0}, {"R\n", 1}, {std::string_view("\0R", 2), 0}};
  for (const auto& [text, position] : table) {
    const Result<SpeedSymbol> result = try_speed_symbol(text);
    ASSERT_FALSE(result) << text;
    EXPECT_EQ(result.error().kind(), ErrorKind::parse);
    EXPECT_EQ(result.error().position(), position) << text;
    EXPECT_EQ(result.error().text(), text);
    EXPECT_NE(result.error().expected().find("A1 to A8"), std::string::npos);
    EXPECT_THROW(static_cast<void>(rated_speed(text)), ParseError);
    EXPECT_THROW(static_cast<void>(speed_symbol(text)), ParseError);
  }
}

TEST(SpeedSymbol, IsFoundByItsWholeNameAlone) {
  for (const char* none : {"", "A", "A9", "A11", "BB", "HR", "Z", "1"})
    EXPECT_EQ(find_speed_symbol(none), nullptr) << none;
  for (const SpeedSymbol& row : speed_symbols) EXPECT_EQ(find_speed_symbol(std::string(row.name)), &row) << row.name;
}

}  // namespace
