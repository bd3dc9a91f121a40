// SPDX-License-Identifier: MIT
#include <layshaft/tyre/rim_code.hpp>

#include "../reference/csv.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <iterator>
#include <limits>
#include <memory>

namespace {
using namespace layshaft;

// Data against data: every row of tests/reference/tyre_rim_code.csv is from memory.
TEST(RimCode, HasTheDiametersOfTheReference) {
  const auto rows = layshaft_test::read_csv("tyre_rim_code.csv");
  ASSERT_EQ(rows.size(), std::size(rim_codes));
  for (const auto& row : rows) {
    const std::string& name = row.at("rim_code");
    const RimCode* found = find_rim_code(layshaft_test::number(name));
    ASSERT_NE(found, nullptr) << name;
    EXPECT_EQ(found->name, name);
    EXPECT_EQ(found->diameter, layshaft_test::number(row.at("nominal_diameter_mm")) * units::mm) << name;
    EXPECT_EQ(to_string(found->certainty), row.at("certainty")) << name;
  }
}

// Source: the international inch of 25.4 mm; the rule that the table's nominal diameters follow.
TEST(RimCode, StandsForInchesRoundedHalfUpToAMillimetre) {
  for (const RimCode& row : rim_codes)
    EXPECT_EQ(row.diameter, std::floor(25.4 * row.code + 0.5) * units::mm) << row.name;
}

TEST(RimCode, ComesInRisingOrder) {
  for (std::size_t i = 1; i < std::size(rim_codes); ++i) {
    EXPECT_LT(rim_codes[i - 1].code, rim_codes[i].code);
    EXPECT_LT(rim_codes[i - 1].diameter, rim_codes[i].diameter);
  }
}

TEST(RimCode, IsKnownToTheCompiler) {
  static_assert(rim_diameter(18) == 457_mm);
  static_assert(rim_diameter(14.5) == 368_mm);
  static_assert(find_rim_code(14.5)->name == "14.5");
  static_assert(detail::row_of_rim_code(37) < 0);
  static_assert(noexcept(find_rim_code(18)));
}

TEST(RimCode, ThatDoesNotExistIsARangeErrorThatNamesTheNearest) {
  const struct {
    double code;
    std::string_view sentence;
  } table[] = {
      {37, "rim code is 37; expected a rim code in use; the nearest is 30"},
      {3, "rim code is 3; expected a rim code in use; the nearest is 4"},
      {14.25, "rim code is 14.25; expected a rim code in use; the nearest are 14 and 14.5"},
      {27, "rim code is 27; expected a rim code in use; the nearest are 26 and 28"},
      {-18, "rim code is -18; expected a rim code in use; the nearest is 4"},
      {std::numeric_limits<double>::infinity(), "rim code is inf; expected a rim code in use; the nearest is 30"},
      {std::numeric_limits<double>::quiet_NaN(), "rim code is nan; expected a rim code in use"},
  };
  for (const auto& [code, sentence] : table) {
    const Result<Length> result = try_rim_diameter(code);
    ASSERT_FALSE(result) << code;
    EXPECT_EQ(result.error().kind(), ErrorKind::range);
    EXPECT_EQ(result.error().what(), sentence);
    EXPECT_THROW(static_cast<void>(rim_diameter(code)), RangeError);
  }
  EXPECT_EQ(*try_rim_diameter(21), 533_mm);
}

// The places that the compiler worked out are those of a plain search.
TEST(RimCodeRows, AreThePlacesOfTheTable) {
  const auto made = std::make_unique<detail::RimCodeRows>();
  for (int halves = 0; halves < 64; ++halves) {
    int expected = -1;
    for (int row = 0; row < static_cast<int>(std::size(rim_codes)); ++row)
      if (rim_codes[row].code == halves / 2.0) expected = row;
    EXPECT_EQ(made->rows[halves], expected) << halves;
    EXPECT_EQ(detail::rim_code_rows.rows[halves], expected) << halves;
  }
}

TEST(RimDiameter, IsThatOfTheRow) {
  for (const RimCode& row : rim_codes) EXPECT_EQ(rim_diameter(row.code), row.diameter) << row.name;
}

}  // namespace
