// SPDX-License-Identifier: MIT
#include <layshaft/tyre/closeness.hpp>

#include <gtest/gtest.h>
#include <core/formula_range.hpp>
#include <tyre/watched.hpp>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <limits>
#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace {
using namespace layshaft;
using layshaft_test::expect_range;

const CloseSize* find(const std::vector<CloseSize>& sizes, std::string_view designation) {
  const auto found = std::ranges::find(sizes, designation, [](const CloseSize& one) { return one.tyre.designation(); });
  return found == sizes.end() ? nullptr : &*found;
}

TEST(ClosestSizes, StartWithTheStockSizeItselfAndNoChange) {
  for (const char* marking :
       {"110/90-18", "110/90-18 M/C 61R TL", "150/70R17", "4.10-18", "MT90B16", "3.00-10", "120/95-17", "2 1/2-8"}) {
    const TyreSize stock(marking);
    const auto sizes = closest_sizes(stock, 0.0);
    ASSERT_FALSE(sizes.empty()) << marking;
    const auto own = std::ranges::find_if(sizes, [&](const CloseSize& one) {
      return one.tyre.notation() == stock.notation() && share_size(one.tyre, stock);
    });
    ASSERT_NE(own, sizes.end()) << marking;
    EXPECT_EQ(own->circumference_change, Band<double>::exactly(0.0)) << marking;
    for (const CloseSize& one : sizes) EXPECT_NEAR(one.circumference_change.nominal, 0.0, 1e-12);
  }
}

TEST(ClosestSizes, AreSortedByNearnessThenByWidth) {
  const auto sizes = closest_sizes("110/90-18"_tyre, 0.03);
  ASSERT_GT(sizes.size(), 20u);
  for (std::size_t i = 1; i < sizes.size(); ++i) {
    const double before = std::abs(sizes[i - 1].circumference_change.nominal);
    const double here = std::abs(sizes[i].circumference_change.nominal);
    EXPECT_LE(before, here + 1e-12);
    if (std::abs(before - here) < 1e-13) {
      EXPECT_LE(sizes[i - 1].tyre.section_width(), sizes[i].tyre.section_width());
    }
  }
  EXPECT_EQ(sizes[0].tyre.designation(), "110/90-18");
  EXPECT_EQ(sizes[1].tyre.designation(), "165/60-18");  // 99 mm high as well
}

// Worked by hand: 655 mm against 654 mm (4.60-18, listed), and 655 against 457 + 2 × 0.8 × 120 = 649 mm.
TEST(ClosestSizes, HaveTheChangeThatTheDiametersHave) {
  const auto sizes = closest_sizes("110/90-18"_tyre, 0.02);
  ASSERT_NE(find(sizes, "4.60-18"), nullptr);
  EXPECT_NEAR(find(sizes, "4.60-18")->circumference_change.nominal, 654.0 / 655.0 - 1.0, 1e-14);
  ASSERT_NE(find(sizes, "120/80-18"), nullptr);
  EXPECT_NEAR(find(sizes, "120/80-18")->circumference_change.nominal, 649.0 / 655.0 - 1.0, 1e-14);
  EXPECT_EQ(find(sizes, "120/90-18"), nullptr);  // 673 mm: 2.7 % more
}

TEST(ClosestSizes, AreAllThatLieWithinTheFractionAndNoOthers) {
  const TyreSize stock("110/90-18");
  std::set<std::string> expected;
  for (int width = 50; width <= 400; width += 5)
    for (const int aspect : usual_aspect_ratios)
      if (std::abs((457.0 + 0.02 * aspect * width) / 655.0 - 1.0) <= 0.015 + 1e-12)
        expected.insert(std::to_string(width) + "/" + std::to_string(aspect) + "-18");
  std::set<std::string> metric;
  for (const CloseSize& one : closest_sizes(stock, 0.015)) {
    EXPECT_LE(std::abs(one.circumference_change.nominal), 0.015 + 1e-12);
    EXPECT_EQ(one.tyre.rim_diameter(), 457_mm);
    EXPECT_EQ(one.tyre.construction(), stock.construction());
    if (one.tyre.notation() == TyreNotation::metric) {
      EXPECT_TRUE(metric.insert(one.tyre.designation()).second);
    }
  }
  EXPECT_EQ(metric, expected);
}

TEST(ClosestSizes, GrowOnlyMoreAsTheFractionGrows) {
  std::size_t last = 0;
  for (const double within : {0.0, 0.001, 0.01, 0.02, 0.05, 0.1}) {
    const std::size_t count = closest_sizes("110/90-18"_tyre, within).size();
    EXPECT_GE(count, last);
    last = count;
  }
}

TEST(ClosestSizes, AreOfTheStockTyresUse) {
  for (const CloseSize& one : closest_sizes(TyreSize("110/90-18", TyreUse::special), 0.01))
    EXPECT_EQ(one.tyre.use(), TyreUse::special);
}

TEST(ClosestSizes, OnAnotherRimKeepTheCircumferenceByTheSection) {
  const TyreSize stock("110/90-18");
  const auto sizes = closest_sizes(stock, 17.0, 0.005);
  ASSERT_FALSE(sizes.empty());
  for (const CloseSize& one : sizes) EXPECT_EQ(one.tyre.rim_diameter(), 432_mm);
  ASSERT_NE(find(sizes, "140/80-17"), nullptr);  // 432 + 224 = 656 mm
  EXPECT_NEAR(find(sizes, "140/80-17")->circumference_change.nominal, 656.0 / 655.0 - 1.0, 1e-14);
}

TEST(ClosestSizes, HaveABandOverWhatTheTyresDoNotShare) {
  const auto sizes = closest_sizes("110/90-18"_tyre, 0.02);
  const Band<double>& change = find(sizes, "120/80-18")->circumference_change;
  // One rolling factor for both; the smallest of the one against the largest of the other.
  EXPECT_NEAR(change.low, (457.0 + 2 * 0.97 * 96.0) / (457.0 + 2 * 1.07 * 99.0) - 1.0, 1e-14);
  EXPECT_NEAR(change.high, (457.0 + 2 * 1.07 * 96.0) / (457.0 + 2 * 0.97 * 99.0) - 1.0, 1e-14);
  EXPECT_TRUE(change.contains(change.nominal));
}

TEST(ClosestSizes, RefuseRimsThatNobodyMakesAndFractionsThatAreNotNear) {
  const TyreSize stock("110/90-18");
  using Limits = std::numeric_limits<double>;
  for (const double bad : {Limits::quiet_NaN(), Limits::infinity(), -0.01, 0.51}) {
    EXPECT_THROW(static_cast<void>(closest_sizes(stock, bad)), RangeError) << bad;
    EXPECT_THROW(static_cast<void>(closest_sizes(stock, 18.0, bad)), RangeError) << bad;
  }
  for (const double bad : {Limits::quiet_NaN(), Limits::infinity(), 0.0, 18.2, -18.0})
    EXPECT_FALSE(try_closest_sizes(stock, bad, 0.01)) << bad;
  EXPECT_FALSE(try_closest_sizes(TyreSize("37-622"), 0.01));
  EXPECT_TRUE(try_closest_sizes(TyreSize("37-622"), 19.0, 0.01));
  EXPECT_TRUE(try_closest_sizes(stock, 0.5));
}

TEST(ClosestSizes, CanBeWatchedToTheBit) {
  const TyreSize stock("110/90-18"), trial("4.60-18");
  layshaft_test::expect_watched(
      two_tyre_corners(stock, trial),
      [&](auto watch, const TwoTyreCorners& at) {
        return layshaft::detail::circumference_change_at(watch, stock, trial, at);
      },
      {"base rim diameter", "base section width", "base aspect ratio", "base section height", "base height factor",
       "base overall diameter", "base rolling factor", "base circumference", "trial listed diameter",
       "trial listed rim diameter", "trial rim diameter", "trial overall diameter", "trial rolling factor",
       "trial circumference", "circumference change"});
}

TEST(ClosestSizes, KnowTheRangeOfTheirFormula) { expect_range<formula::circumference_change>("++", 2_m, 2.1_m); }

// Common practice, no source: a copy, against slips.
TEST(UsualAspectRatios, AreThoseFromFortyFiveToAHundred) {
  EXPECT_EQ(std::vector<int>(std::begin(usual_aspect_ratios), std::end(usual_aspect_ratios)),
            (std::vector<int>{45, 50, 55, 60, 65, 70, 75, 80, 85, 90, 100}));
}

}  // namespace
