// SPDX-License-Identifier: MIT
#include <layshaft/tyre/load_index.hpp>

#include "../reference/csv.hpp"

#include <gtest/gtest.h>

#include <climits>
#include <set>

namespace {
using namespace layshaft;

// Source: ISO 4223-1 series as in tests/reference/tyre_load_index.csv; the rows marked published were seen.
TEST(LoadIndex, HasTheMassesOfTheReference) {
  int published = 0;
  const auto rows = layshaft_test::read_csv("tyre_load_index.csv");
  ASSERT_EQ(rows.size(), std::size(load_indices));
  for (const auto& row : rows) {
    const int index = static_cast<int>(layshaft_test::number(row.at("load_index")));
    const LoadIndex* found = find_load_index(index);
    ASSERT_NE(found, nullptr) << index;
    EXPECT_EQ(found->index, index);
    EXPECT_EQ(found->capacity / units::kg, layshaft_test::number(row.at("max_mass_kg"))) << index;
    EXPECT_EQ(to_string(found->certainty), row.at("certainty")) << index;
    published += found->certainty == Certainty::published;
  }
  EXPECT_EQ(published, 84);  // 43 to 125 and 142
}

TEST(LoadIndex, RisesWithTheIndex) {
  for (int index = 1; index <= greatest_load_index; ++index)
    EXPECT_GT(load_capacity(index), load_capacity(index - 1)) << index;
}

// The series is one of preferred numbers with 80 steps to a decade: 80 steps on, ten times as much, to the kilogram.
// In five places one of the two is rounded otherwise, by less than half a percent.
TEST(LoadIndex, CarriesTenTimesAsMuchEightyStepsOn) {
  const std::set<int> rounded{35, 37, 61, 63, 67};
  for (int index = 0; index + 80 <= greatest_load_index; ++index) {
    EXPECT_NEAR(load_capacity(index + 80) / load_capacity(index), 10.0, 0.05) << index;
    EXPECT_NE(load_capacity(index + 80) / units::kg == 10.0 * (load_capacity(index) / units::kg),
              rounded.contains(index))
        << index;
  }
}

TEST(LoadIndex, IsKnownToTheCompiler) {
  static_assert(load_capacity(61) == 257_kg);
  static_assert(find_load_index(61)->certainty == Certainty::published);
  static_assert(detail::row_of_load_index(-1) < 0 && detail::row_of_load_index(151) < 0);
  static_assert(noexcept(find_load_index(61)));
}

TEST(LoadIndex, OutsideItsRangeIsARangeError) {
  for (const int index : {-1, 151, INT_MIN, INT_MAX}) {
    const Result<Mass> result = try_load_capacity(index);
    ASSERT_FALSE(result) << index;
    EXPECT_EQ(result.error().kind(), ErrorKind::range);
    EXPECT_STREQ(result.error().what(), ("load index is " + std::to_string(index) + "; expected 0 to 150").c_str());
    EXPECT_THROW(static_cast<void>(load_capacity(index)), RangeError);
  }
  EXPECT_EQ(*try_load_capacity(0), 45_kg);
  EXPECT_EQ(*try_load_capacity(150), 3350_kg);
}

TEST(LoadIndex, IsNotFoundBeyondTheEndsOfItsTable) {
  for (const int none : {-1, 151, 1000}) EXPECT_EQ(find_load_index(none), nullptr) << none;
  for (const int index : {0, 150}) EXPECT_EQ(find_load_index(index)->index, index);
}

}  // namespace
