// SPDX-License-Identifier: MIT
#include <layshaft/tyre/tread.hpp>

#include <gtest/gtest.h>
#include <core/formula_range.hpp>
#include <tyre/watched.hpp>

#include <limits>
#include <numbers>
#include <string_view>

namespace {
using namespace layshaft;
using layshaft_test::expect_range;

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double infinite = std::numeric_limits<double>::infinity();
const Tread knobs({.new_depth = 16_mm, .depth = 10_mm, .least = 4_mm, .distance = 3000_km});

TEST(Tread, TellsWhatIsWornOffWhatIsLeftAndHowFarItLasts) {
  EXPECT_NEAR(knobs.worn() / units::mm, 6.0, 1e-12);
  EXPECT_NEAR(*knobs.left(), 0.5, 1e-12);                         // 6 of 12 mm
  EXPECT_NEAR(*knobs.distance_left() / units::km, 3000.0, 1e-9);  // as far again
}

TEST(Tread, PastItsMinimumHasLessThanNothingLeft) {
  const Tread worn_out({.new_depth = 6_mm, .depth = 1_mm, .least = 2_mm, .distance = 10000_km});
  EXPECT_NEAR(*worn_out.left(), -0.25, 1e-12);
  EXPECT_NEAR(*worn_out.distance_left() / units::km, -2000.0, 1e-9);  // it was there 2000 km ago
}

TEST(Tread, TellsNothingOfWhatWasNotStated) {
  const Tread bare({.new_depth = 6_mm, .depth = 4_mm});
  EXPECT_EQ(bare.left(), std::nullopt);
  EXPECT_EQ(bare.distance_left(), std::nullopt);
  const Tread no_distance({.new_depth = 6_mm, .depth = 4_mm, .least = 1_mm});
  EXPECT_EQ(no_distance.distance_left(), std::nullopt);
  const Tread as_new({.new_depth = 6_mm, .depth = 6_mm, .least = 1_mm, .distance = 5_km});
  EXPECT_EQ(as_new.worn(), 0_mm);
  EXPECT_EQ(*as_new.left(), 1.0);
  EXPECT_EQ(as_new.distance_left(), std::nullopt);  // nothing worn off to reckon from
}

TEST(Tread, WearsEvenlySoThatTheWholeLifeIsTheSameFromEverywhere) {
  for (double depth = 15.5; depth >= 4.0; depth -= 0.5) {
    const Length ridden = (16.0 - depth) / 12.0 * 6000_km;
    const Tread tread({.new_depth = 16_mm, .depth = depth * units::mm, .least = 4_mm, .distance = ridden});
    EXPECT_NEAR((ridden + *tread.distance_left()) / units::km, 6000.0, 1e-8) << depth;
  }
}

TEST(Tread, SaysThatEvenWearIsAnAssumption) {
  EXPECT_EQ(formula::distance_left::about.source, even_wear_source);
  EXPECT_EQ(even_wear_source.certainty, Certainty::common_practice);
}

TEST(Tread, RefusesWhatNoTreadIs) {
  const auto refused = [](const TreadParts& parts) {
    const Result<Tread> made = Tread::make(parts);
    if (made) return std::string();
    EXPECT_EQ(made.error().kind(), ErrorKind::range);
    EXPECT_THROW(static_cast<void>(Tread(parts)), RangeError);
    return std::string(made.error().what());
  };
  EXPECT_EQ(refused({.new_depth = 101_mm, .depth = 1_mm}), "new_depth is 101 mm; expected 0.1 mm to 100 mm");
  EXPECT_EQ(refused({.new_depth = 6_mm, .depth = 7_mm}), "depth is 7 mm; expected 0 mm to 6 mm");
  EXPECT_EQ(refused({.new_depth = 6_mm, .depth = 4_mm, .least = 6_mm}),
            "least is 6 mm; expected less than the new depth");
  for (const double bad : {nan, infinite, -infinite, -0.001}) {
    EXPECT_NE(refused({.new_depth = bad * units::m, .depth = 0_mm}), "");
    EXPECT_NE(refused({.new_depth = 6_mm, .depth = bad * units::m}), "");
    EXPECT_NE(refused({.new_depth = 6_mm, .depth = 4_mm, .least = bad * units::m}), "");
    EXPECT_NE(refused({.new_depth = 6_mm, .depth = 4_mm, .least = 1_mm, .distance = bad * units::m}), "");
  }
  EXPECT_NE(refused({.new_depth = 0_mm, .depth = 0_mm}), "");
  EXPECT_NE(refused({.new_depth = 6_mm, .depth = 4_mm, .least = 6.001_mm}), "");
  EXPECT_NE(refused({.new_depth = 6_mm, .depth = 4_mm, .distance = 0_m}), "");
  EXPECT_NE(refused({.new_depth = 6_mm, .depth = 4_mm, .distance = 1000001_km}), "");
  for (const TreadParts& good :
       {TreadParts{.new_depth = 0.1_mm, .depth = 0_mm}, TreadParts{.new_depth = 100_mm, .depth = 100_mm},
        TreadParts{.new_depth = 6_mm, .depth = 0_mm, .least = 0_mm, .distance = 1000000_km}})
    EXPECT_EQ(refused(good), "");
}

TEST(CircumferenceAtDepth, OfANewTreadIsThatOfTheMarking) {
  for (const char* marking : {"110/90-18", "4.10-18", "150/70R17"})
    EXPECT_EQ(circumference_at_depth(TyreSize(marking), knobs, 16_mm), rolling_circumference(TyreSize(marking)));
}

TEST(CircumferenceAtDepth, FallsInAStraightLineByTwoPiTimesTheRollingFactor) {
  const TyreSize tyre("110/90-18");
  const Band<double> factor = rolling_factor(tyre.construction());
  const Band<Length> new_tyre = rolling_circumference(tyre);
  for (double depth = 0.0; depth <= 16.0; depth += 0.25)
    for (const Corner corner : corners)
      EXPECT_NEAR((new_tyre.at(corner) - circumference_at_depth(tyre, knobs, depth * units::mm).at(corner)) / units::mm,
                  2.0 * std::numbers::pi * factor.at(corner) * (16.0 - depth), 1e-9);
}

TEST(CircumferenceAtDepth, IsWhatASetUpMakesOfTheTreadWorn) {
  const TyreSize tyre("110/90-18");
  EXPECT_EQ(circumference_at_depth(tyre, knobs, knobs.depth()), rolling_circumference(tyre, knobs.worn()));
}

TEST(CircumferenceAtDepth, OfAMeasuredRolloutIsTheMeasurementAtItsOwnDepth) {
  const Band<Length> measured{2.01_m, 2.02_m, 2.03_m};
  EXPECT_EQ(circumference_at_depth(measured, TyreConstruction::diagonal, knobs, knobs.depth()), measured);
  const Band<Length> bald = circumference_at_depth(measured, TyreConstruction::diagonal, knobs, 0_mm);
  EXPECT_NEAR((measured.nominal - bald.nominal) / units::mm, 2.0 * std::numbers::pi * 0.980 * 10.0, 1e-9);
  EXPECT_NEAR((measured.low - bald.low) / units::mm, 2.0 * std::numbers::pi * 0.995 * 10.0, 1e-9);
  EXPECT_NEAR((measured.high - bald.high) / units::mm, 2.0 * std::numbers::pi * 0.965 * 10.0, 1e-9);
  const Band<Length> when_new = circumference_at_depth(measured, TyreConstruction::diagonal, knobs, 16_mm);
  EXPECT_NEAR((when_new.nominal - measured.nominal) / units::mm, 2.0 * std::numbers::pi * 0.980 * 6.0, 1e-9);
  EXPECT_TRUE(well_formed(bald) && well_formed(when_new));
  // A measurement stays narrower than a marking all the tyre's life.
  EXPECT_LT(bald.width(), circumference_at_depth(TyreSize("110/90-18"), knobs, 0_mm).width());
}

// A marked tyre's section stands twice in its diameter: half of one height is a quarter of both.
TEST(CircumferenceAtDepth, OfAMarkedTyreHasATreadUpToHalfOfItsSection) {
  const TyreSize low("90/50-10");
  const double section = (low.overall_diameter().low - low.rim_diameter()) / 2.0 / units::mm;
  for (const double share : {0.4999, 0.5001}) {
    const Tread tread({.new_depth = share * section * units::mm, .depth = 5_mm});
    const auto rolled = try_circumference_at_depth(low, tread, 5_mm);
    EXPECT_EQ(rolled.has_value(), share < 0.5);
    if (rolled) continue;
    EXPECT_TRUE(std::string_view(rolled.error().what()).starts_with("new_depth is ")) << rolled.error().what();
  }
}

TEST(CircumferenceAtDepth, RefusesADepthThatTheTreadNeverHas) {
  const TyreSize tyre("110/90-18");
  const Band<Length> measured{2.01_m, 2.02_m, 2.03_m};
  const Tread lugs({.new_depth = 80_mm, .depth = 60_mm});
  for (const Length& bad : {17_mm, -1_mm, nan * units::m, infinite * units::m}) {
    EXPECT_THROW(static_cast<void>(circumference_at_depth(tyre, knobs, bad)), RangeError);
    EXPECT_THROW(static_cast<void>(circumference_at_depth(measured, TyreConstruction::radial, knobs, bad)), RangeError);
  }
  EXPECT_FALSE(try_circumference_at_depth(tyre, lugs, 10_mm));
  EXPECT_FALSE(try_circumference_at_depth(measured, TyreConstruction::radial, lugs, 10_mm));
  const Band<Length> falling{2.03_m, 2.02_m, 2.01_m}, nothing{0_m, 2.02_m, 2.03_m};
  for (const Band<Length>& bad : {falling, nothing, Band<Length>{2_m, nan * units::m, 2_m}})
    EXPECT_FALSE(try_circumference_at_depth(bad, TyreConstruction::radial, knobs, 10_mm));
}

TEST(Tread, CanBeWatchedToTheBit) {
  using namespace layshaft::detail;
  layshaft_test::expect_watched(one_cause, [](auto watch, Corner) { return knobs.worn(watch); },
                                {"new tread depth", "tread depth", "tread worn"});
  layshaft_test::expect_watched(one_cause, [](auto watch, Corner) { return knobs.left(watch); },
                                {"new tread depth", "tread depth", "least tread depth", "tread left"});
  layshaft_test::expect_watched(one_cause, [](auto watch, Corner) { return knobs.distance_left(watch); },
                                {"distance", "new tread depth", "tread depth", "least tread depth", "distance left"});
  layshaft_test::expect_watched(
      one_cause,
      [](auto watch, Corner at) {
        return layshaft::detail::circumference_at_depth(watch, TyreSize("110/90-18"), knobs, 7_mm, at, at);
      },
      {"rim diameter", "section width", "aspect ratio", "section height", "height factor", "overall diameter",
       "new tread depth", "tread depth", "tread worn", "worn diameter", "rolling factor", "circumference"});
  const Band<Length> measured{2.01_m, 2.02_m, 2.03_m};
  layshaft_test::expect_watched(
      worn_rollout_corners,
      [&](auto watch, const WornRolloutCorners& at) {
        return rollout_at_depth(watch, measured, TyreConstruction::radial, 10_mm, 3_mm, at);
      },
      {"circumference", "rolling factor", "measured tread depth", "tread depth", "worn circumference"});
}

TEST(Tread, KnowsItsRanges) {
  expect_range<formula::tread_worn>("..", 16_mm, 10_mm);
  expect_range<formula::tread_left>("...", 16_mm, 10_mm, 4_mm);
  expect_range<formula::distance_left>("+..0", 3000_km, 16_mm, 10_mm, 4_mm);
  expect_range<formula::worn_circumference>("....", 2_m, 0.98, 10_mm, 3_mm);
  EXPECT_TRUE(formula::tread_worn::in_range(6_mm, 6_mm));
  EXPECT_FALSE(formula::tread_worn::in_range(6_mm, 6.1_mm));
  EXPECT_FALSE(formula::tread_worn::in_range(6_mm, -0.1_mm));
  EXPECT_TRUE(formula::tread_left::in_range(6_mm, 0_mm, 0_mm));
  EXPECT_FALSE(formula::tread_left::in_range(6_mm, 3_mm, 6_mm));
  EXPECT_FALSE(formula::tread_left::in_range(6_mm, 7_mm, 1_mm));
  EXPECT_FALSE(formula::tread_left::in_range(6_mm, 3_mm, -1_mm));
  EXPECT_FALSE(formula::distance_left::in_range(5_km, 6_mm, 6_mm, 1_mm));
  EXPECT_FALSE(formula::worn_circumference::in_range(10_mm, 1.0, 10_mm, 1_mm));
  EXPECT_FALSE(formula::worn_circumference::in_range(2_m, 1.0, -1_mm, 1_mm));
  EXPECT_FALSE(formula::worn_circumference::in_range(2_m, 1.0, 1_mm, -1_mm));
}

}  // namespace
