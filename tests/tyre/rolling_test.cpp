// SPDX-License-Identifier: MIT
#include <layshaft/tyre/rolling.hpp>

#include <gtest/gtest.h>
#include <core/formula_range.hpp>

#include <numbers>

namespace {
using namespace layshaft;
using layshaft_test::expect_range;

// Worked by hand: π × 655 × 0.980 and its fellows, on 649.06 and 668.86.
TEST(RollingCircumference, FollowsFromDiameterAndFactor) {
  const Band<Length> rolled = rolling_circumference("110/90-18"_tyre);
  EXPECT_NEAR(rolled.low / units::mm, std::numbers::pi * 649.06 * 0.965, 1e-9);
  EXPECT_NEAR(rolled.nominal / units::mm, std::numbers::pi * 655.0 * 0.980, 1e-9);
  EXPECT_NEAR(rolled.high / units::mm, std::numbers::pi * 668.86 * 0.995, 1e-9);
}

TEST(RollingCircumference, OfAFactorOfOneIsThatOfTheFreeTyre) {
  EXPECT_NEAR(rolling_circumference(700_mm, 1.0) / units::mm, 2199.1148575128555, 1e-9);  // 700 π
}

TEST(RollingCircumference, TakesEachCauseAtItsOwnCorner) {
  const TyreSize size("120/90-18", TyreUse::special);
  for (const Corner tall : corners)
    for (const Corner rolling : corners)
      EXPECT_EQ(
          rolling_circumference(size, tall, rolling),
          rolling_circumference(size.overall_diameter().at(tall), rolling_factor(size.construction()).at(rolling)));
  const Band<Length> rolled = rolling_circumference(size);
  for (const Corner tall : corners)
    for (const Corner rolling : corners) EXPECT_TRUE(rolled.contains(rolling_circumference(size, tall, rolling)));
}

TEST(RollingCircumference, OfTheSameTyreAtTheSameCornersCancelsExactly) {
  const TyreSize size("4.10-18");
  for (const Corner tall : corners)
    for (const Corner rolling : corners)
      EXPECT_EQ(rolling_circumference(size, tall, rolling) / rolling_circumference(size, tall, rolling), 1.0);
}

TEST(RollingCircumference, IsKnownToTheCompilerAndDoesNotThrow) {
  constexpr TyreSize size = "110/90-18"_tyre;
  static_assert(rolling_circumference(size).low < rolling_circumference(size).high);
  static_assert(noexcept(rolling_circumference(size)));
}

TEST(RollingCircumference, FallsWithTheTreadByTwoPiTimesTheRollingFactor) {
  const TyreSize tyre("110/90-18");
  EXPECT_EQ(rolling_circumference(tyre, 0_mm), rolling_circumference(tyre));
  for (double worn = 0.0; worn <= 16.0; worn += 0.5)
    for (const Corner corner : corners)
      EXPECT_NEAR((rolling_circumference(tyre).at(corner) - rolling_circumference(tyre, worn * units::mm).at(corner)) /
                      units::mm,
                  2.0 * std::numbers::pi * rolling_factor(tyre.construction()).at(corner) * worn, 1e-9);
}

TEST(RollingFactor, IsOneBandForEveryConstructionAndFromMemory) {
  for (const auto construction : {TyreConstruction::diagonal, TyreConstruction::bias_belted, TyreConstruction::radial})
    EXPECT_EQ(rolling_factor(construction), (Band<double>{0.965, 0.980, 0.995}));
  EXPECT_EQ(rolling_factor_source.certainty, Certainty::from_memory);
}

TEST(RollingCircumference, KnowsItsRange) { expect_range<formula::rolling_circumference>("++", 655_mm, 0.98); }

}  // namespace
