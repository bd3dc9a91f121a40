// SPDX-License-Identifier: MIT
#include <layshaft/wear/joint_wear.hpp>

#include <layshaft/chain/series.hpp>
#include <layshaft/wear/chain_stretch.hpp>

#include <gtest/gtest.h>

namespace {
using namespace layshaft;

// GOST 13568-97, Appendix V, Table V.1: bench lives of four chains, with the pressure and the bound of specific wear
// derived from them. Load, teeth, loop passes in the mean life and growth as printed there.
struct Bench {
  const char* series;
  int front, rear, links;
  double load, passes, growth, pressure, specific_wear;  // N, 1, 1, N/mm2, mm2/N
};
constexpr Bench rows[] = {
    {"05B", 21, 21, 120, 250.0, 3.36e7, 0.00306, 22.69, 4.65e-11},
    {"06B", 21, 21, 120, 600.0, 3.46e7, 0.00300, 21.45, 3.92e-11},
    {"08B", 17, 44, 110, 1400.0, 1.31e7, 0.00402, 27.84, 1.23e-10},
    {"10B", 16, 42, 100, 2200.0, 1.25e7, 0.00399, 32.61, 1.13e-10},
};

TEST(JointWear, GivesTheBenchsPressures) {
  for (const Bench& row : rows) {
    const ChainSeries series(row.series);
    const Pressure pressure = bearing_pressure(row.load * units::N, *series.pin_diameter(), *series.inner_link_width());
    EXPECT_NEAR(in(pressure, units::MPa), row.pressure, 0.005) << row.series;
  }
}

TEST(JointWear, GivesTheBenchsGrowth) {
  for (const Bench& row : rows) {
    const ChainSeries series(row.series);
    const Length depth = joint_wear(row.load * units::N, Force(), Teeth(row.front), Teeth(row.rear),
                                    *series.inner_link_width(), 1.0 / row.specific_wear * units::MPa);
    // printed to three digits: passes, specific wear and growth
    EXPECT_NEAR(stretch_of_wear(row.passes, depth, series.pitch()) / row.growth, 1.0, 0.01) << row.series;
  }
}

TEST(JointWear, OfOneRowIsToldByAnyOtherWithinTheBand) {
  for (const Bench& row : rows)
    for (const Bench& other : rows) {
      const double ratio = other.specific_wear / row.specific_wear;
      EXPECT_GT(ratio, bench_wear_resistance.low / bench_wear_resistance.high * 0.95);
      EXPECT_LT(ratio, bench_wear_resistance.high / bench_wear_resistance.low * 1.05);
      EXPECT_TRUE(bench_wear_resistance.contains(1.0 / row.specific_wear * units::MPa)) << row.series;
    }
}

TEST(PitchClimb, IsHowMuchLargerThePitchCircleGets) {
  const Length radius = 0.5 * 250_mm;
  EXPECT_NEAR(in(pitch_climb(250_mm, 0.02), units::mm), in(1.02 * radius - radius, units::mm), 1e-12);
}

TEST(ChainPasses, AreTheTeethThatPassOverTheLinks) { EXPECT_EQ(chain_passes(2000_m, 2_m, 48_teeth, 120_links), 400.0); }

}  // namespace
