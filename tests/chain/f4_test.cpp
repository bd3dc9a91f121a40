// SPDX-License-Identifier: MIT
#include <layshaft/chain/f4.hpp>

#include <gtest/gtest.h>
#include <core/formula_range.hpp>
#include <reference/csv.hpp>

#include <cmath>
#include <vector>

namespace {
using namespace layshaft;
using layshaft_test::expect_range;
using layshaft_test::number;
using layshaft_test::read_csv;

// Source: the standard's factor f4, exact and recalled (chain_f4.csv), to 1e-5.
TEST(F4, AgreesWithTheTable) {
  const auto rows = read_csv("chain_f4.csv");
  EXPECT_GT(rows.size(), 30u);
  for (const auto& row : rows) {
    const double found = f4(number(row.at("ratio_X_minus_z1_over_z2_minus_z1")));
    EXPECT_NEAR(found, number(row.at("f4_exact")), 5.1e-7);
    EXPECT_NEAR(found, number(row.at("f4_recalled")), 1e-5);
  }
}

TEST(F4, SolvesItsOwnEquation) {
  std::vector<double> ratios{1.0001, 1.01, 1.5, 3.0, 40.0, 1e6};
  // Near one the equation is flat at its root, and rounding keeps Newton's steps from getting ever smaller.
  for (double beyond = 1e-4; beyond < 1.0; beyond *= 1.003) ratios.push_back(1.0 + beyond);
  for (const double ratio : ratios) {
    // f4 = 1/(4 (cos a + a sin a)), back to the angle by halves.
    const double found = f4(ratio);
    double low = 0.0, high = 1.5707963267948966;
    for (int i = 0; i < 200; ++i) {
      const double a = 0.5 * (low + high);
      (1.0 / std::tan(a) + a > (2.0 * ratio - 1.0) * 1.5707963267948966 ? low : high) = a;
    }
    EXPECT_NEAR(found, 0.25 / (std::cos(low) + low * std::sin(low)), 1e-14) << ratio;
  }
  EXPECT_TRUE(std::isnan(f4(1.0)));
  EXPECT_TRUE(std::isnan(f4(std::nan(""))));
}

TEST(CentreMethods, StandSideBySideWithTheirErrors) {
  for (const auto& [front, rear, links] :
       {std::tuple{13, 50, 110.0}, {16, 43, 110.0}, {43, 16, 110.0}, {20, 20, 90.0}}) {
    const ChainLoop loop(ChainSeries("520"), Teeth(front), Teeth(rear));
    const CentreMethods methods = centre_methods(loop, links);
    EXPECT_EQ(methods.exact, loop.centre(links));
    EXPECT_EQ(methods.handbook_error, methods.handbook - methods.exact);
    EXPECT_EQ(methods.f4_error, methods.f4 - methods.exact);
    EXPECT_LT(std::fabs(methods.f4_error / loop.series().pitch()), 2e-5);
    EXPECT_LT(std::fabs(methods.handbook_error / loop.series().pitch()), 0.01);
  }
  EXPECT_FALSE(try_centre_methods(ChainLoop(ChainSeries("520"), 13_teeth, 50_teeth), 20.0));
  EXPECT_THROW((void)centre_methods(ChainLoop(ChainSeries("520"), 13_teeth, 50_teeth), 20.0), RangeError);
  expect_range<formula::f4_of_angle>("f", 0.1 * units::rad);
  EXPECT_FALSE(formula::centre_f4::in_range(0.25, 12.7_mm, 20.0, 20_teeth, 20_teeth));
  EXPECT_TRUE(formula::centre_f4::in_range(0.25, 12.7_mm, 90.0, 20_teeth, 20_teeth));
}

TEST(CentreMethods, AreEqualWhereAllOfThemAre) {
  const ChainLoop loop(ChainSeries("520"), 13_teeth, 48_teeth);
  const CentreMethods methods = centre_methods(loop, 110.0);
  EXPECT_EQ(methods, centre_methods(loop, 110.0));
  for (Length CentreMethods::*one : {&CentreMethods::exact, &CentreMethods::handbook, &CentreMethods::f4,
                                     &CentreMethods::handbook_error, &CentreMethods::f4_error}) {
    CentreMethods other = methods;
    other.*one += 1.0_mm;
    EXPECT_NE(methods, other);
  }
}

}  // namespace
