// SPDX-License-Identifier: MIT
#include <layshaft/tyre/measured_rollout.hpp>

#include <layshaft/tyre/rolling.hpp>

#include <gtest/gtest.h>
#include <core/formula_range.hpp>
#include <tyre/watched.hpp>

#include <climits>
#include <limits>

namespace {
using namespace layshaft;
using layshaft_test::expect_range;

TEST(MeasuredRollout, IsTheDistanceOverTheTurnsWithTheTapesErrorEitherWay) {
  const Band<Length> rolled = measured_circumference({.distance = 20.5_m, .turns = 10});
  EXPECT_NEAR(rolled.nominal / units::mm, 2050.0, 1e-9);
  EXPECT_NEAR(rolled.low / units::mm, 2049.5, 1e-9);
  EXPECT_NEAR(rolled.high / units::mm, 2050.5, 1e-9);
}

// From memory: without the rider a machine rolls 1 to 3 % farther. Worked by hand: 2050 / 1.02, 2049.5 / 1.03,
// 2050.5 / 1.01.
TEST(MeasuredRollout, WithoutTheRiderIsShortenedAndWidened) {
  const Band<Length> rolled = measured_circumference({.distance = 20.5_m, .turns = 10, .rider_aboard = false});
  EXPECT_NEAR(rolled.nominal / units::mm, 2009.8039215686274, 1e-9);
  EXPECT_NEAR(rolled.low / units::mm, 1989.8058252427184, 1e-9);
  EXPECT_NEAR(rolled.high / units::mm, 2030.1980198019803, 1e-9);
  EXPECT_EQ(unladen_excess_source.certainty, Certainty::from_memory);
  EXPECT_EQ(tape_error_source.certainty, Certainty::common_practice);
}

TEST(MeasuredRollout, IsExactWithAnExactTape) {
  const Band<Length> rolled = measured_circumference({.distance = 2.05_m, .tape_error = 0_mm});
  EXPECT_EQ(rolled, Band<Length>::exactly(2.05_m));
}

TEST(MeasuredRollout, NarrowsInProportionToTheTurns) {
  double last = std::numeric_limits<double>::infinity();
  for (const int turns : {1, 2, 5, 10, 100, 1000}) {
    const double width = measured_circumference({.distance = 1.0 * turns * 2.05_m, .turns = turns}).width() / units::mm;
    EXPECT_NEAR(width, 10.0 / turns, 1e-9);
    EXPECT_LT(width, last);
    last = width;
  }
}

TEST(MeasuredRollout, IsNarrowerThanAnyMarking) {
  const Band<Length> marking = rolling_circumference("110/90-18"_tyre);
  const Band<Length> aboard = measured_circumference({.distance = 10.0 * marking.nominal, .turns = 10});
  const Band<Length> pushed =
      measured_circumference({.distance = 10.2 * marking.nominal, .turns = 10, .rider_aboard = false});
  EXPECT_LT(aboard.width(), 0.02 * marking.width());
  EXPECT_LT(pushed.width(), 0.5 * marking.width());
  EXPECT_TRUE(marking.contains(pushed.nominal));
}

TEST(MeasuredRollout, RefusesWhatNobodyMeasures) {
  const auto refused = [](const RolloutMeasurement& measured) {
    const Result<Band<Length>> got = try_measured_circumference(measured);
    if (got) return std::string();
    EXPECT_EQ(got.error().kind(), ErrorKind::range);
    EXPECT_THROW(static_cast<void>(measured_circumference(measured)), RangeError);
    return std::string(got.error().what());
  };
  EXPECT_EQ(refused({.distance = 20_m, .turns = 0}), "turns is 0; expected 1 to 1000");
  EXPECT_EQ(refused({.distance = 20_m, .turns = 1}), "distance is 20000 mm; expected 200 mm to 5000 mm");
  EXPECT_EQ(refused({.distance = 20_m, .turns = 10, .tape_error = 2.5_m}),
            "tape_error is 2500 mm; expected 0 mm to 2000 mm");
  for (const int turns : {-1, 1001, INT_MIN, INT_MAX}) EXPECT_NE(refused({.distance = 20_m, .turns = turns}), "");
  using Limits = std::numeric_limits<double>;
  for (const double bad : {Limits::quiet_NaN(), Limits::infinity(), -Limits::infinity(), -1.0, 0.0})
    EXPECT_NE(refused({.distance = bad * units::m}), "");
  for (const double bad : {Limits::quiet_NaN(), Limits::infinity(), -0.001})
    EXPECT_NE(refused({.distance = 2_m, .tape_error = bad * units::m}), "");
  // What comes out is always what a set-up takes: 0.2 to 5 m, ends and all.
  EXPECT_NE(refused({.distance = 0.2_m}), "");
  EXPECT_NE(refused({.distance = 5.0_m}), "");
  EXPECT_NE(refused({.distance = 0.205_m, .rider_aboard = false, .tape_error = 0_mm}), "");
  EXPECT_EQ(refused({.distance = 0.2_m, .tape_error = 0_mm}), "");
  EXPECT_EQ(refused({.distance = 5.0_m, .tape_error = 0_mm}), "");
  EXPECT_EQ(refused({.distance = 0.2061_m, .rider_aboard = false, .tape_error = 0_mm}), "");
  EXPECT_EQ(refused({.distance = 2000_m, .turns = 1000}), "");
}

TEST(MeasuredRollout, CanBeWatchedToTheBit) {
  const RolloutMeasurement aboard{.distance = 20.5_m, .turns = 10};
  RolloutMeasurement pushed = aboard;
  pushed.rider_aboard = false;
  const auto with_rider =
      layshaft_test::expect_watched(layshaft::detail::rollout_corners,
                                    [&](auto watch, const RolloutCorners& at) {
                                      return layshaft::detail::measured_circumference_at(watch, aboard, at);
                                    },
                                    {"rollout", "tape error", "turns", "circumference"});
  EXPECT_EQ(with_rider.result().certainty(), Certainty::common_practice);
  const auto without = layshaft_test::expect_watched(
      layshaft::detail::rollout_corners,
      [&](auto watch, const RolloutCorners& at) {
        return layshaft::detail::measured_circumference_at(watch, pushed, at);
      },
      {"rollout", "tape error", "turns", "rollout per turn", "unladen excess", "circumference"});
  EXPECT_EQ(without.result().certainty(), Certainty::from_memory);
}

TEST(MeasuredRollout, KnowsItsRanges) {
  expect_range<formula::rollout_per_turn>("+.+", 20_m, 5_mm, 10.0);
  EXPECT_TRUE(formula::rollout_per_turn::in_range(20_m, -5_mm, 10.0));
  EXPECT_FALSE(formula::rollout_per_turn::in_range(20_m, -20_m, 10.0));
  expect_range<formula::laden_circumference>("+0", 2_m, 0.02);
}

}  // namespace
