// SPDX-License-Identifier: MIT
#include <layshaft/choose/survey.hpp>

#include <setup/machines.hpp>

#include <gtest/gtest.h>

#include <vector>

namespace {
using namespace layshaft_test;

const Space few{.fronts = {{11_teeth}, {12_teeth}}, .rears = {{46_teeth}, {48_teeth}, {50_teeth}}};
const Goals pull_and_price{
    {{{Measure::thrust_change}, Amount::fraction(0.0), {}}, {{Measure::front_teeth}, Amount::number(12.0), {}}},
    {{{Measure::cost}, Want::less}}};

TEST(Survey, VisitsEverySetUpAndNamesWhatItBreaks) {
  const Machine machine = roomy_trail_bike();
  std::vector<Surveyed> all;
  const auto visited = try_survey(machine, few, pull_and_price, [&](const Surveyed& one) {
    all.push_back(one);
    return true;
  });
  ASSERT_TRUE(visited);
  EXPECT_EQ(*visited, 6u);
  ASSERT_EQ(all.size(), 6u);
  for (const Surveyed& one : all) {
    EXPECT_EQ(one.limits[0]->nominal, thrust_change(machine.stock(), one.setup).nominal);
    EXPECT_EQ(one.limits[1]->nominal, one.setup.front().count());
    std::vector<std::size_t> broken;
    if (one.limits[0]->nominal < 0.0) broken.push_back(0);
    if (one.setup.front() < 12_teeth) broken.push_back(1);
    EXPECT_EQ(one.broken, broken);
    EXPECT_FALSE(one.wishes[0]);  // no price is known
  }
}

TEST(Survey, StopsWhenItIsToldTo) {
  int calls = 0;
  const auto visited =
      try_survey(roomy_trail_bike(), few, pull_and_price, [&](const Surveyed&) { return ++calls < 4; });
  EXPECT_EQ(*visited, 4u);
  EXPECT_EQ(calls, 4);
}

TEST(Survey, RefusesWhatChooseRefuses) {
  EXPECT_FALSE(try_survey(roomy_trail_bike(), {}, pull_and_price, [](const Surveyed&) { return true; }));
}

}  // namespace
