// SPDX-License-Identifier: MIT
#include <layshaft/wear/tension.hpp>

#include <layshaft/chain/sprocket.hpp>

#include <gtest/gtest.h>
#include <core/formula_range.hpp>

namespace {
using namespace layshaft;
using layshaft_test::expect_range;

// Worked by hand from 1/sin(pi/z): the thrust's moment about the axle is the chain's.
TEST(ChainTension, IsTheThrustTimesTheLevers) {
  const Length rear = pitch_diameter(15.875_mm, 48_teeth);
  EXPECT_NEAR(chain_tension(500_N, 2.0_m, rear) / units::N, 500.0 * (2.0 / pi) / 0.24272538, 1e-3);
  EXPECT_EQ(chain_tension(0_N, 2.0_m, rear), 0_N);
  EXPECT_LT(chain_tension(-10_N, 2.0_m, rear), 0_N);  // engine braking pulls the other run
}

// 13/40 and 14/43 are two ways to one ratio, whose teeth meet the chain equally often; the pull tells them apart.
TEST(ChainTensionChange, TellsTwoWaysToOneRatioApart) {
  const double change =
      chain_tension_change(2.0_m, pitch_diameter(15.875_mm, 43_teeth), 2.0_m, pitch_diameter(15.875_mm, 40_teeth));
  EXPECT_NEAR(change, 0.075, 0.0005);
}

TEST(ChainTensionChange, IsOfOneKindWithChainTension) {
  const Length from = 2.0_m, to = 2.1_m, small = 200_mm, large = 215_mm;
  EXPECT_NEAR(chain_tension_change(from, small, to, large),
              chain_tension(300_N, to, large) / chain_tension(300_N, from, small) - 1.0, 1e-15);
}

TEST(ChainTension, KnowsItsRange) {
  expect_range<formula::chain_tension>("f++", 500_N, 2_m, 240_mm);
  expect_range<formula::chain_tension_change>("++++", 2_m, 240_mm, 2.1_m, 230_mm);
}

}  // namespace
