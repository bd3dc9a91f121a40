// SPDX-License-Identifier: MIT
#include <layshaft/choose/trade_off.hpp>

#include <gtest/gtest.h>

#include <algorithm>
#include <random>
#include <vector>

namespace {
using namespace layshaft;

TEST(Dominates, AsksForNoWorseAndSomewhereBetter) {
  static_assert(dominates(Losses{{1.0, 2.0}}, Losses{{1.0, 3.0}}));
  static_assert(!dominates(Losses{{1.0, 3.0}}, Losses{{1.0, 3.0}}));
  static_assert(!dominates(Losses{{0.0, 4.0}}, Losses{{1.0, 3.0}}));
}

// By the definition, each against all others.
TEST(TradeOff, IsWhatNothingDominates) {
  std::mt19937 random(7);
  for (int round = 0; round < 200; ++round) {
    std::uniform_int_distribution<int> wishes(1, 5), few(0, 5), count(1, 60);
    const int dimensions = wishes(random);
    std::vector<Losses> all(static_cast<std::size_t>(count(random)));
    for (Losses& losses : all)
      for (int i = 0; i < dimensions; ++i) losses.push_back(few(random));
    TradeOff<int> trade_off, first_half, second_half;
    for (std::size_t i = 0; i < all.size(); ++i) {
      trade_off.add(all[i], static_cast<int>(i));
      (i % 2 == 0 ? first_half : second_half).add(all[i], static_cast<int>(i));
    }
    std::vector<int> expected;
    for (std::size_t i = 0; i < all.size(); ++i)
      if (std::none_of(all.begin(), all.end(), [&](const Losses& other) { return dominates(other, all[i]); }))
        expected.push_back(static_cast<int>(i));
    const auto items = [](const TradeOff<int>& of) {
      std::vector<int> list;
      for (const auto& member : of.members()) list.push_back(member.item);
      std::sort(list.begin(), list.end());
      return list;
    };
    ASSERT_EQ(items(trade_off), expected);
    first_half.add(second_half);
    ASSERT_EQ(items(first_half), expected);
  }
}

}  // namespace
