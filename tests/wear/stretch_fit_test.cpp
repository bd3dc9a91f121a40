// SPDX-License-Identifier: MIT
#include <layshaft/wear/stretch_fit.hpp>

#include <gtest/gtest.h>

#include <cmath>
#include <random>
#include <vector>

namespace {
using namespace layshaft;

constexpr Length pitch = 15.875_mm;
StretchMeasurement at(double km, double growth, int links = 20) {
  return {km * units::km, double(links) * pitch * (1.0 + growth), links};
}

TEST(StretchFit, OfAStraightLineIsTheLine) {
  const std::vector<StretchMeasurement> three{at(1000, 0.001), at(3000, 0.003), at(6000, 0.006)};
  const StretchFit fit = fit_stretch(pitch, three);
  EXPECT_NEAR(fit.per_1000_km.nominal, 0.001, 1e-15);
  EXPECT_NEAR(fit.now.nominal, 0.006, 1e-14);
  EXPECT_NEAR(in(fit.distance_left(0.02).nominal, units::km), 14000.0, 1e-6);
  EXPECT_EQ(fit.distance_left(0.004).nominal, 0_km);
}

TEST(StretchFit, OfTwoTakesTheWorstOfBoth) {
  const std::vector<StretchMeasurement> two{at(1000, 0.001), at(5000, 0.005)};
  const StretchFit fit = fit_stretch(pitch, two, 0.5_mm);
  const double error = 0.5 / (20.0 * 15.875);
  EXPECT_NEAR(fit.per_1000_km.high, 1000.0 * (0.004 + 2.0 * error) / 4000.0, 1e-15);
  EXPECT_NEAR(fit.per_1000_km.low, 1000.0 * (0.004 - 2.0 * error) / 4000.0, 1e-15);
}

TEST(StretchFit, HoldsTheTruthNineteenTimesInTwenty) {
  std::mt19937 random(5);
  std::normal_distribution<double> noise(0.0, 0.25 / (20.0 * 15.875));
  int held = 0;
  constexpr int rides = 400;
  for (int ride = 0; ride < rides; ++ride) {
    std::vector<StretchMeasurement> five;
    for (int i = 0; i < 5; ++i) five.push_back(at(1000.0 * (i + 1), 0.0008 * (i + 1) + noise(random)));
    held += fit_stretch(pitch, five, 0.5_mm).per_1000_km.contains(0.0008);
  }
  EXPECT_GT(held, rides * 93 / 100);
}

TEST(StretchFit, LeavesOpenWhetherItGrowsAtAll) {
  const std::vector<StretchMeasurement> close{at(1000, 0.001), at(1500, 0.0012)};
  const StretchFit fit = fit_stretch(pitch, close);
  EXPECT_LT(fit.per_1000_km.low, 0.0);
  EXPECT_EQ(fit.distance_left(0.02).high, std::nullopt);
  const std::vector<StretchMeasurement> shrinking{at(1000, 0.002), at(5000, 0.001)};
  EXPECT_FALSE(fit_stretch(pitch, shrinking).try_distance_left(0.02));
}

TEST(StretchFit, SaysWhatIsWrong) {
  const auto refusal = [](std::vector<StretchMeasurement> measured, Length error = 0.5_mm) {
    const auto fit = try_fit_stretch(pitch, measured, error);
    return fit ? std::string() : std::string(fit.error().what());
  };
  EXPECT_EQ(refusal({at(1000, 0.0)}), "number of measurements is 1; expected at least 2");
  EXPECT_TRUE(refusal({at(2000, 0.0), at(1000, 0.001)}).starts_with("odometer 2 is 1000 km"));
  EXPECT_TRUE(refusal({at(1000, 0.0), at(2000, 0.2)}).starts_with("length 2 is "));
  EXPECT_TRUE(refusal({at(1000, 0.0, 0), at(2000, 0.001)}).starts_with("links 1 is 0"));
  EXPECT_TRUE(refusal({at(1000, 0.0), at(2000, 0.001)}, 0_mm).starts_with("error is 0 mm"));
  EXPECT_EQ(refusal({at(-1, 0.0), at(2000, 0.001)}), "odometer 1 is -1 km; expected 0 km to 10000000 km");
  const auto of_no_chain = try_fit_stretch(0.9_mm, std::vector{at(1000, 0.0), at(2000, 0.001)});
  ASSERT_FALSE(of_no_chain);
  EXPECT_STREQ(of_no_chain.error().what(), "pitch is 0.9 mm; expected 1 mm to 200 mm");
}

TEST(StretchFit, IsTheSameOfTheSameMeasurements) {
  const std::vector<StretchMeasurement> one{at(1000, 0.001), at(3000, 0.003)}, other{at(1000, 0.001), at(3000, 0.004)};
  EXPECT_EQ(one[0], other[0]);
  EXPECT_NE(one[1], other[1]);
  EXPECT_EQ(fit_stretch(pitch, one), fit_stretch(pitch, one));
  EXPECT_NE(fit_stretch(pitch, one), fit_stretch(pitch, other));
}

TEST(StretchFit, TakesBothEndsOfEachRange) {
  const auto takes = [](std::vector<StretchMeasurement> measured, Length error = 0.5_mm) {
    return try_fit_stretch(pitch, measured, error).has_value();
  };
  EXPECT_TRUE(takes({at(1000, 0.0, 1000), at(2000, 0.001, 1)}));
  EXPECT_FALSE(takes({at(1000, 0.0, 1001), at(2000, 0.001, 1)}));
  EXPECT_TRUE(takes({at(1000, -0.0999), at(2000, 0.0999)}));
  EXPECT_FALSE(takes({at(1000, -0.1001), at(2000, 0.0)}));
  EXPECT_FALSE(takes({at(1000, 0.0), at(2000, 0.1001)}));
  const StretchFit fit = fit_stretch(pitch, std::vector{at(1000, 0.0), at(2000, 0.001)});
  EXPECT_TRUE(fit.try_distance_left(0.2));
  EXPECT_FALSE(fit.try_distance_left(0.2001));
}

// By hand: growths 0, 1, 3 thousandths at 0, 1000, 2000 km. The line rises by 1.5 a thousand kilometres and leaves the
// squares 1/6; its scatter is sqrt(1/6), above half the error, and the greatest t of one degree of freedom in nineteen
// cases of twenty is 12.7062 (any table of Student's t).
TEST(StretchFit, OfThreeHasTheBandOfStudentsT) {
  const StretchFit fit = fit_stretch(pitch, std::vector{at(0, 0.0), at(1000, 0.001), at(2000, 0.003)}, 0.01_mm);
  EXPECT_NEAR(fit.per_1000_km.nominal, 1.5e-3, 1e-12);
  EXPECT_NEAR(fit.per_1000_km.high - fit.per_1000_km.nominal, 12.7062e-3 * std::sqrt(1.0 / 6.0) / std::sqrt(2.0), 1e-8);
  EXPECT_NEAR(fit.now.nominal, (4.0 / 3.0 + 1.5) * 1e-3, 1e-12);
  EXPECT_NEAR(fit.now.high - fit.now.nominal, 12.7062e-3 * std::sqrt(1.0 / 6.0) * std::sqrt(1.0 / 3.0 + 1.0 / 2.0),
              1e-8);
}

// On a straight line nothing scatters: half the stated error stands for it.
TEST(StretchFit, OfThreeOnALineKeepsHalfTheStatedError) {
  const StretchFit fit = fit_stretch(pitch, std::vector{at(0, 0.0), at(1000, 0.001), at(2000, 0.002)}, 0.5_mm);
  const double half = 0.5e3 * 0.5 / (20.0 * 15.875);  // in thousandths, of 20 links
  EXPECT_NEAR(fit.per_1000_km.high - fit.per_1000_km.nominal, 12.7062e-3 * half / std::sqrt(2.0), 1e-8);
}

TEST(StretchFit, NamesBothOdometersThatDoNotRise) {
  EXPECT_EQ(try_fit_stretch(pitch, std::vector{at(2000.5, 0.0), at(1234.25, 0.001)}).error().expected(),
            "more than the 2000.5 km before it");
}

}  // namespace
