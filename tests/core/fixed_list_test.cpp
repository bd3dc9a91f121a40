// SPDX-License-Identifier: MIT
#include <layshaft/core/fixed_list.hpp>

#include <gtest/gtest.h>

namespace {
using namespace layshaft;

TEST(FixedList, KeepsTheOrder) {
  FixedList<int, 3> list;
  EXPECT_TRUE(list.empty());
  list.push_back(5);
  list.push_back(4);
  EXPECT_EQ(list.size(), 2u);
  EXPECT_EQ(list[0], 5);
  EXPECT_EQ(list[1], 4);
  int sum = 0;
  for (const int value : list) sum += value;
  EXPECT_EQ(sum, 9);
}

TEST(FixedList, ComparesOnlyWhatItHolds) {
  FixedList<int, 3> a{1, 2};
  const FixedList<int, 3> b{1, 2};
  EXPECT_EQ(a, b);
  a.push_back(0);
  EXPECT_NE(a, b);
  EXPECT_NE((FixedList<int, 3>{1, 3}), b);
}

TEST(FixedList, RemembersThatItWasAskedToHoldMore) {
  FixedList<int, 1> list{1};
  EXPECT_FALSE(list.overfull());
  list.push_back(2);
  EXPECT_TRUE(list.overfull());
  EXPECT_EQ(list.size(), 1u);
  EXPECT_EQ(list[0], 1);
  EXPECT_NE(list, (FixedList<int, 1>{1}));
  EXPECT_EQ((FixedList<int, 1>{2}), (FixedList<int, 1>{2}));
  static_assert(FixedList<int, 2>{1, 2, 3}.overfull() && !FixedList<int, 2>{1, 2}.overfull());
}

#if !defined(NDEBUG)
TEST(FixedListDeathTest, AssertsThatTheIndexIsInside) {
  const FixedList<int, 2> list{1};
  EXPECT_DEATH(static_cast<void>(list[1]), "index < size_");
}
#endif

}  // namespace
