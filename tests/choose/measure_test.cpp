// SPDX-License-Identifier: MIT
#include <layshaft/choose/measure.hpp>

#include <gtest/gtest.h>

#include <iterator>
#include <set>

namespace {
using namespace layshaft;

TEST(Measures, HaveOneRowEachInTheirOwnOrder) {
  std::set<std::string_view> names;
  for (std::size_t i = 0; i < std::size(measure_rows); ++i) {
    const MeasureRow& row = measure_rows[i];
    EXPECT_EQ(static_cast<std::size_t>(row.kind), i) << row.name;
    EXPECT_EQ(&measure_row(row.kind), &row);
    EXPECT_EQ(to_string(row.kind), row.name);
    EXPECT_TRUE(names.insert(row.name).second) << row.name;
    EXPECT_FALSE(row.meaning.empty());
  }
  EXPECT_EQ(names.size(), static_cast<std::size_t>(Measure::chain_mass) + 1);
}

}  // namespace
