// SPDX-License-Identifier: MIT
#include <layshaft/accuracy.hpp>
#include <layshaft/formulas.hpp>

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>

namespace {
using namespace layshaft;

static_assert(error_ulp("road_speed") >= 0.5 && error_ulp("road_speed") < 4.0);
static_assert(ErrorBound{"", 5, 12, 0, 7}.greatest() == 1.2);

// That they hold is for tests/accuracy/.
TEST(ErrorBounds, AreThereForEveryFormulaOnce) {
  std::set<std::string_view> bound;
  for (const ErrorBound& one : error_bounds) EXPECT_TRUE(bound.insert(one.function).second) << one.function;
  for (const Formula* one : all_formulas) EXPECT_TRUE(bound.contains(one->name)) << one->name;
  EXPECT_TRUE(bound.contains("chain_links") && bound.contains("chain_centre"));
}

TEST(ErrorBounds, PromiseNothingOfANameThatIsNotThere) {
  EXPECT_TRUE(std::isinf(error_ulp("")));
  EXPECT_TRUE(std::isinf(error_ulp("road speed")));
}

TEST(ErrorBounds, TellTheWorstOfAllArgumentsInUlp) {
  for (const ErrorBound& one : error_bounds)
    EXPECT_EQ(error_ulp(one.function), std::max({one.ordinary, one.edge, one.cancelling, one.wide}) / 10.0)
        << one.function;
}

}  // namespace
