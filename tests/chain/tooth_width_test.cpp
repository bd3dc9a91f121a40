// SPDX-License-Identifier: MIT
#include <layshaft/chain/tooth_width.hpp>

#include <gtest/gtest.h>
#include <core/formula_range.hpp>
#include <reference/chain_examples.hpp>

namespace {
using namespace layshaft;
using layshaft_test::expect_range;

// Source: Bhandari, Design of Machine Elements, ch. 14, Ex. 14.5: 12B, inner width 11.68 mm (chain_worked_examples.csv,
// B14.5d).
TEST(ToothWidth, IsATextbooks) {
  const Band<Length> width = tooth_width(ChainSeries("12B"));
  EXPECT_NEAR(width.nominal / units::mm, layshaft_test::printed_first("B14.5d"), 0.5e-6);
  EXPECT_EQ(width.high, width.nominal);
  EXPECT_NEAR(width.low / units::mm, 11.096 - 0.43, 1e-9);
  EXPECT_EQ(formula::tooth_width_of_large_pitch::about.source.certainty, Certainty::published);
}

TEST(ToothWidth, IsLessOfTheInnerWidthUpToHalfAnInchOfPitch) {
  for (const ChainSeries series : all_chain_series()) {
    const double share = tooth_width(series).nominal / series.inner_width();
    EXPECT_NEAR(share, series.pitch() > 12.7_mm ? 0.95 : 0.93, 1e-15) << series.name();
  }
  // What is not seen in print stays marked.
  EXPECT_EQ(formula::tooth_width_of_small_pitch::about.source.certainty, Certainty::from_memory);
  EXPECT_EQ(formula::tooth_width_least::about.source.certainty, Certainty::from_memory);
}

TEST(ToothWidth, IsWellFormedAndGoesIntoTheChainForEverySeries) {
  for (const ChainSeries series : all_chain_series()) {
    const Band<Length> width = tooth_width(series);
    EXPECT_TRUE(well_formed(width)) << series.name();
    EXPECT_GT(width.low, 0.8 * width.high) << series.name();
    EXPECT_LT(width.high, series.inner_width()) << series.name();
  }
}

// Each range of the table goes to the size it says, and not beyond.
TEST(ToothTolerance, ChangesAtTheEndsOfItsRanges) {
  for (const auto& [size, tolerance] : {std::pair{2.0, 0.25},
                                        {3.0, 0.25},
                                        {3.001, 0.30},
                                        {6.0, 0.30},
                                        {6.001, 0.36},
                                        {10.0, 0.36},
                                        {10.5, 0.43},
                                        {18.5, 0.52},
                                        {30.5, 0.62},
                                        {50.0, 0.62},
                                        {50.5, 0.74},
                                        {80.0, 0.74}})
    EXPECT_DOUBLE_EQ(tooth_tolerance(size * units::mm).tolerance / units::mm, tolerance) << size;
  for (const ChainSeries series : all_chain_series()) {
    EXPECT_GT(tooth_width(series).nominal, 1_mm) << series.name();
    EXPECT_LT(tooth_width(series).nominal, 80_mm) << series.name();
  }
}

TEST(ToothWidth, KnowsItsRange) {
  expect_range<formula::tooth_width_of_small_pitch>("+", 7.75_mm);
  expect_range<formula::tooth_width_of_large_pitch>("+", 11.68_mm);
  expect_range<formula::tooth_width_least>("..", 11_mm, 0.43_mm);
  EXPECT_FALSE(formula::tooth_width_least::in_range(0.43_mm, 0.43_mm));
  EXPECT_FALSE(formula::tooth_width_least::in_range(0.0_mm, -1.0_mm));
}

// What the compiler made, made again while the program runs.
TEST(ToothTolerance, IsThatOfTheTableInEveryRange) {
  const auto made = layshaft::detail::make_tooth_tolerances();
  ASSERT_EQ(made.size(), tooth_tolerances.size());
  for (std::size_t i = 0; i < made.size(); ++i) {
    const ToothTolerance& found = tooth_tolerance(made[i].to);
    EXPECT_EQ(found.to, made[i].to);
    EXPECT_EQ(found.tolerance, made[i].tolerance);
    EXPECT_EQ(found.range, made[i].range);
  }
}

}  // namespace
