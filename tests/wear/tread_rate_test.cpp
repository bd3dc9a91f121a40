// SPDX-License-Identifier: MIT
#include <layshaft/wear/tread_rate.hpp>

#include <gtest/gtest.h>
#include <core/formula_range.hpp>
#include <core/not_finite.hpp>
#include <tyre/watched.hpp>

#include <string>

namespace {
using namespace layshaft;
using layshaft_test::endless;
using layshaft_test::expect_range;
using layshaft_test::nothing;

/// 12 mm at 1,000 km, 8 mm at 5,000 km, down to 2 mm; 100 km a day.
constexpr TreadReadings readings{
    .first = {12_mm, 1000_km}, .second = {8_mm, 5000_km}, .depth_error = 0_mm, .least = 2_mm, .per_day = 100_km};

void expect_band(const Band<Length>& band, Length unit, double low, double nominal, double high) {
  EXPECT_NEAR(band.low / unit, low, 1e-9 * (1.0 + low * low));
  EXPECT_NEAR(band.nominal / unit, nominal, 1e-9 * (1.0 + nominal * nominal));
  EXPECT_NEAR(band.high / unit, high, 1e-9 * (1.0 + high * high));
}

TEST(TreadRate, IsWhatWasWornOffOverWhatWasRidden) {
  const TreadRate rate = tread_rate(readings);
  expect_band(rate.worn, units::mm, 4, 4, 4);
  expect_band(rate.distance, units::km, 4000, 4000, 4000);
  expect_band(rate.per_1000_km, units::mm, 1, 1, 1);
  expect_band(*rate.distance_left, units::km, 6000, 6000, 6000);
  EXPECT_NEAR(rate.days_left->nominal, 60.0, 1e-9);
  EXPECT_NEAR(*rate.measure_again / units::km, 6000.0, 1e-6);
}

// What a tread says that was new at the first reading: one and the same formula.
TEST(TreadRate, AgreesWithTheTreadsOwnDistanceLeft) {
  const Tread tread({.new_depth = 12_mm, .depth = 8_mm, .least = 2_mm, .distance = 4000_km});
  EXPECT_EQ(tread_rate(readings).distance_left->nominal, *tread.distance_left());
  EXPECT_EQ(tread_rate(readings).worn.nominal, tread.worn());
}

// Worked by hand: either depth may be out by 0.25 mm. Most: 12.25 to 7.75 mm; least: 11.75 to 8.25 mm.
TEST(TreadRate, IsABandByTheErrorOfBothDepths) {
  TreadReadings by_hand = readings;
  by_hand.depth_error.reset();
  const TreadRate rate = tread_rate(by_hand);
  expect_band(rate.worn, units::mm, 3.5, 4, 4.5);
  expect_band(rate.per_1000_km, units::mm, 0.875, 1, 1.125);
  expect_band(*rate.distance_left, units::km, 5.75 / 4.5 * 4000, 6000, 6.25 / 3.5 * 4000);
  EXPECT_EQ(*rate.measure_again, rate.distance_left->low);
  EXPECT_NEAR(rate.days_left->low, 5.75 / 4.5 * 40.0, 1e-9);
  EXPECT_NEAR(rate.days_left->high, 6.25 / 3.5 * 40.0, 1e-9);
  EXPECT_EQ(rate.certainty, Certainty::from_memory);
  EXPECT_EQ(depth_error_source.certainty, Certainty::from_memory);
  EXPECT_EQ(tread_rate(readings).certainty, Certainty::common_practice);
}

TEST(TreadRate, IsPutRightForTheOdometer) {
  TreadReadings fast = readings;
  fast.odometer_factor = {1.0, 1.25, 1.25};
  const TreadRate rate = tread_rate(fast);
  expect_band(rate.distance, units::km, 3200, 3200, 4000);
  expect_band(rate.per_1000_km, units::mm, 1, 1.25, 1.25);
  expect_band(*rate.distance_left, units::km, 4800, 4800, 6000);
}

TEST(TreadRate, SaysNoDistanceWhereTheErrorsAreAsLargeAsTheWear) {
  TreadReadings early = readings;
  early.second.depth = 11.5_mm;
  early.depth_error = 0.25_mm;
  const TreadRate rate = tread_rate(early);
  EXPECT_NEAR(rate.worn.low / units::mm, 0.0, 1e-12);
  EXPECT_GE(rate.worn.low, 0_mm);
  EXPECT_EQ(rate.distance_left, std::nullopt);
  EXPECT_EQ(rate.days_left, std::nullopt);
  EXPECT_NEAR(*rate.measure_again / units::km, 9.25 / 1.0 * 4000, 1e-6);  // but it does last so far
  early.depth_error = 3_mm;
  EXPECT_EQ(tread_rate(early).worn.low, 0_mm);
}

TEST(TreadRate, SaysNothingOfATreadThatHasNotWorn) {
  TreadReadings same = readings;
  same.second.depth = 12_mm;
  const TreadRate rate = tread_rate(same);
  EXPECT_EQ(rate.per_1000_km, Band<Length>::exactly(0_mm));
  EXPECT_EQ(rate.distance_left, std::nullopt);
  EXPECT_EQ(rate.measure_again, std::nullopt);
  TreadReadings bare = readings;
  bare.least.reset();
  EXPECT_EQ(tread_rate(bare).distance_left, std::nullopt);
  EXPECT_EQ(tread_rate(bare).days_left, std::nullopt);
  EXPECT_EQ(tread_rate(bare).measure_again, std::nullopt);
  bare = readings;
  bare.per_day.reset();
  EXPECT_TRUE(tread_rate(bare).distance_left);
  EXPECT_EQ(tread_rate(bare).days_left, std::nullopt);
}

TEST(TreadRate, TellsHowLongAgoTheLeastDepthWas) {
  TreadReadings past = readings;
  past.least = 9_mm;
  const TreadRate rate = tread_rate(past);
  expect_band(*rate.distance_left, units::km, -1000, -1000, -1000);
  EXPECT_NEAR(rate.days_left->nominal, -10.0, 1e-9);
  EXPECT_EQ(*rate.measure_again, Length());
}

TEST(TreadRate, NeverTakesADepthForLessThanNothing) {
  TreadReadings bald = readings;
  bald.second.depth = 0.1_mm;
  bald.depth_error = 1_mm;
  const TreadRate rate = tread_rate(bald);
  expect_band(rate.worn, units::mm, 9.9, 11.9, 13.0);
  EXPECT_TRUE(well_formed(*rate.distance_left));
}

TEST(TreadRate, RefusesReadingsThatCannotBe) {
  const auto refused = [](auto change) {
    TreadReadings changed = readings;
    change(changed);
    const Result<TreadRate> made = try_tread_rate(changed);
    if (made) return std::string();
    EXPECT_THROW(static_cast<void>(tread_rate(changed)), RangeError);
    return std::string(made.error().what());
  };
  using R = TreadReadings;
  EXPECT_EQ(refused([](R&) {}), "");
  EXPECT_EQ(refused([](R& r) { r.first.depth = 101_mm; }), "first.depth is 101 mm; expected 0 mm to 100 mm");
  EXPECT_EQ(refused([](R& r) { r.second.depth = 13_mm; }), "second.depth is 13 mm; expected 0 mm to 12 mm");
  EXPECT_EQ(refused([](R& r) { r.second.odometer = 1000.5_km; }),
            "second.odometer is 1000.5 km; expected at least 1 km more than the first");
  EXPECT_EQ(refused([](R& r) { r.second.odometer = 900_km; }),
            "second.odometer is 900 km; expected 1000 km to 10000000 km");
  EXPECT_EQ(refused([](R& r) { r.depth_error = 6_mm; }), "depth_error is 6 mm; expected 0 mm to 5 mm");
  EXPECT_EQ(refused([](R& r) {
              r.odometer_factor = {1.0, 0.9, 1.1};
            }),
            "odometer_factor is 1, 0.9, 1.1; expected low, nominal and high in rising order");
  EXPECT_EQ(refused([](R& r) { r.odometer_factor = Band<double>::exactly(2.1); }),
            "odometer_factor is 2.1; expected 0.5 to 2");
  EXPECT_EQ(refused([](R& r) { r.least = 12_mm; }), "least is 12 mm; expected less than the first depth");
  EXPECT_EQ(refused([](R& r) { r.per_day = 0_km; }), "per_day is 0 km; expected 0.001 km to 5000 km");
  for (const double bad : {nothing, endless, -endless, -1e-9}) {
    const Length length = bad * units::m;
    EXPECT_NE(refused([&](R& r) { r.first.depth = length; }), "") << bad;
    EXPECT_NE(refused([&](R& r) { r.first.odometer = length; }), "") << bad;
    EXPECT_NE(refused([&](R& r) { r.second.depth = length; }), "") << bad;
    EXPECT_NE(refused([&](R& r) { r.second.odometer = length; }), "") << bad;
    EXPECT_NE(refused([&](R& r) { r.depth_error = length; }), "") << bad;
    EXPECT_NE(refused([&](R& r) { r.odometer_factor = {bad, bad, bad}; }), "") << bad;
    EXPECT_NE(refused([&](R& r) { r.least = length; }), "") << bad;
    EXPECT_NE(refused([&](R& r) { r.per_day = length; }), "") << bad;
  }
  EXPECT_EQ(refused([](R& r) { r.second.odometer = 1001_km; }), "");
  EXPECT_EQ(refused([](R& r) { r.second.depth = 0_mm; }), "");
  EXPECT_EQ(refused([](R& r) { r.least = 0_mm; }), "");
}

TEST(TreadRate, CanBeWatchedToTheBit) {
  using namespace layshaft::detail;
  TreadReadings by_hand = readings;
  by_hand.depth_error.reset();
  by_hand.odometer_factor = {0.98, 1.0, 1.04};
  layshaft_test::expect_watched(
      tread_rate_corners, [&](auto watch, const TreadRateCorners& at) { return worn_per_1000_km(watch, by_hand, at); },
      {"new tread depth", "tread depth", "tread worn", "odometer distance", "odometer factor", "true distance",
       "distance", "tread worn over"});
  layshaft_test::expect_watched(
      tread_rate_corners,
      [&](auto watch, const TreadRateCorners& at) { return distance_left_between(watch, by_hand, at); },
      {"odometer distance", "odometer factor", "true distance", "new tread depth", "tread depth", "least tread depth",
       "distance left"});
}

TEST(TreadRate, KnowsItsRanges) {
  expect_range<formula::true_distance>("++", 4000_km, 1.03);
  expect_range<formula::tread_worn_over>("0++", 4_mm, 4000_km, 1000_km);
  expect_range<formula::days_left>("f+", 6000_km, 100_km);
  EXPECT_NEAR(days_left(-1000_km, 100_km), -10.0, 1e-12);
}

}  // namespace
