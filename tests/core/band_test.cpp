// SPDX-License-Identifier: MIT
#include <layshaft/core/band.hpp>

#include <gtest/gtest.h>

#include <array>

namespace {
using namespace layshaft;

TEST(Band, IsExactWhereNothingIsLeftOpen) {
  static_assert(Band<double>::exactly(2.0).width() == 0.0);
  EXPECT_EQ(Band<Length>::exactly(2_m).at(Corner::high), 2_m);
}

TEST(Band, GivesTheValueAtACorner) {
  const Band<double> band{1.0, 2.0, 4.0};
  EXPECT_EQ(band.at(Corner::low), 1.0);
  EXPECT_EQ(band.at(Corner::nominal), 2.0);
  EXPECT_EQ(band.at(Corner::high), 4.0);
  EXPECT_EQ(band.width(), 3.0);
  EXPECT_TRUE(band.contains(1.0));
  EXPECT_TRUE(band.contains(4.0));
  EXPECT_FALSE(band.contains(0.999));
  EXPECT_FALSE(band.contains(4.001));
}

TEST(Band, TakesInMoreCorners) {
  auto band = Band<double>::exactly(2.0);
  band.include(3.0);
  band.include(1.0);
  band.include(2.5);
  EXPECT_EQ(band, (Band<double>{1.0, 2.0, 3.0}));
}

TEST(Over, StandsInRisingOrderAlsoWhereTheCalculationFalls) {
  const auto band = over(Band<double>{1.0, 2.0, 4.0}, [](double x) { return 8.0 / x; });
  EXPECT_EQ(band, (Band<double>{2.0, 4.0, 8.0}));
}

TEST(WellFormed, RefusesDisorderAndWhatIsNotFinite) {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  const double infinity = std::numeric_limits<double>::infinity();
  EXPECT_TRUE(well_formed(Band<double>{1.0, 1.0, 1.0}));
  EXPECT_FALSE(well_formed(Band<double>{1.0, 0.9, 2.0}));
  EXPECT_FALSE(well_formed(Band<double>{1.0, 2.1, 2.0}));
  EXPECT_FALSE(well_formed(Band<double>{1.0, nan, 2.0}));
  EXPECT_FALSE(well_formed(Band<double>{nan, 1.0, 2.0}));
  EXPECT_FALSE(well_formed(Band<double>{-infinity, 1.0, 2.0}));
  EXPECT_FALSE(well_formed(Band<double>{0.0, 1.0, infinity}));
}

TEST(OverRuns, TakesInEveryRunAndTheFirstAsNominal) {
  const std::array runs{2.0, 5.0, 1.0, 4.0};
  EXPECT_EQ(over_runs(runs, [](double x) { return 8.0 / x; }), (Band<double>{1.6, 4.0, 8.0}));
  EXPECT_EQ(over_runs(std::array{2.0}, [](double x) { return x; }), Band<double>::exactly(2.0));
  static_assert(one_cause.front() == Corner::nominal && one_cause.size() == 3);
  // One cause at its corners is the band over that cause.
  const Band<double> cause{1.0, 2.0, 4.0};
  const auto calculation = [](double x) { return 8.0 / x; };
  EXPECT_EQ(over_runs(one_cause, [&](Corner at) { return calculation(cause.at(at)); }), over(cause, calculation));
}

}  // namespace
