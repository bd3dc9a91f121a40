// SPDX-License-Identifier: MIT
#include <layshaft/tyre/rolling_radius.hpp>

#include <gtest/gtest.h>
#include <core/formula_range.hpp>
#include <tyre/watched.hpp>

#include <limits>
#include <numbers>

namespace {
using namespace layshaft;
using layshaft_test::expect_range;

constexpr TyreConstruction constructions[] = {TyreConstruction::diagonal, TyreConstruction::bias_belted,
                                              TyreConstruction::radial};
constexpr TyreDeflection deflections[] = {TyreDeflection::motorcycle, TyreDeflection::light_truck};

// Published: eight light-truck tyres stand at 0.909 to 0.940 (radial) and 0.937 to 0.947 (bias) of their free radius,
// and roll at 0.970 to 0.983 of it. From the printed ratios the least comes to 0.9697 and the greatest to 0.9823: the
// one agrees to half the last digit; the other to one unit of it, since 0.947 is itself printed to three digits.
TEST(RollingRadius, IsThatOfTheEightPublishedLightTruckTyres) {
  const Band<double> radial = rolling_factor(TyreConstruction::radial, TyreDeflection::light_truck);
  const Band<double> bias = rolling_factor(TyreConstruction::diagonal, TyreDeflection::light_truck);
  EXPECT_NEAR(radial.low, 0.970, 0.0005);
  EXPECT_NEAR(bias.high, 0.983, 0.001);
  EXPECT_DOUBLE_EQ(radial.high, 0.980);
  EXPECT_NEAR(bias.low, 0.979, 1e-12);
  EXPECT_EQ(static_share(TyreConstruction::radial, TyreDeflection::light_truck).low, 0.909);
  EXPECT_EQ(static_share(TyreConstruction::radial, TyreDeflection::light_truck).high, 0.940);
  EXPECT_EQ(static_share(TyreConstruction::diagonal, TyreDeflection::light_truck).low, 0.937);
  EXPECT_EQ(static_share(TyreConstruction::diagonal, TyreDeflection::light_truck).high, 0.947);
  EXPECT_EQ(light_truck_share_source.certainty, Certainty::published);
}

TEST(RollingRadius, OfALightTruckTyreIsMostLikelyInTheMiddleOfWhatWasSeen) {
  for (const TyreConstruction construction : constructions) {
    const Band<double> share = static_share(construction, TyreDeflection::light_truck);
    EXPECT_NEAR(share.nominal, 0.5 * (share.low + share.high), 1e-15) << to_string(construction);
  }
}

TEST(RollingRadius, OfABiasBeltedLightTruckTyreIsAnywhereThatWasSeen) {
  const Band<double> belted = static_share(TyreConstruction::bias_belted, TyreDeflection::light_truck);
  EXPECT_EQ(belted.low, static_share(TyreConstruction::radial, TyreDeflection::light_truck).low);
  EXPECT_EQ(belted.high, static_share(TyreConstruction::diagonal, TyreDeflection::light_truck).high);
}

TEST(RollingRadius, OfAMotorcycleTyreGoesWithTheRollingFactorAndIsFromMemory) {
  for (const TyreConstruction construction : constructions) {
    const Band<double> share = static_share(construction);
    EXPECT_NEAR(share.low, 0.895, 1e-15);  // 3 × 0.965 - 2
    EXPECT_NEAR(share.nominal, 0.940, 1e-15);
    EXPECT_NEAR(share.high, 0.985, 1e-15);
    EXPECT_EQ(rolling_factor(construction, TyreDeflection::motorcycle), rolling_factor(construction));
  }
  const Working working = explain_over("static", one_cause, [](Recorder::Watch watch, Corner at) {
    return layshaft::detail::static_share_at(watch, TyreConstruction::radial, TyreDeflection::motorcycle, at);
  });
  EXPECT_EQ(working.result().certainty(), Certainty::from_memory);
}

TEST(RollingRadius, NeverSettlesLessThanAMotorcycleTyreCanOrMoreThanItsEnds) {
  for (const TyreConstruction construction : constructions)
    for (const TyreDeflection deflection : deflections) {
      const Band<double> share = static_share(construction, deflection);
      EXPECT_TRUE(well_formed(share));
      EXPECT_GT(share.low, 0.89);
      EXPECT_LT(share.high, 1.0);
    }
}

// Worked by hand: 110/90-18 is 655 mm high; 327.5 mm, 0.94 of it, and a third of the way from free to static.
TEST(RollingRadius, OfATyreIsWorkedOutByHand) {
  const TyreSize tyre("110/90-18");
  EXPECT_NEAR(free_radius(tyre).nominal / units::mm, 327.5, 1e-12);
  EXPECT_NEAR(free_radius(tyre).low / units::mm, 649.06 / 2.0, 1e-12);
  EXPECT_NEAR(free_radius(tyre).high / units::mm, 668.86 / 2.0, 1e-12);
  EXPECT_NEAR(static_radius(tyre).nominal / units::mm, 307.85, 1e-12);
  EXPECT_NEAR(effective_radius(tyre).nominal / units::mm, 320.95, 1e-12);
  EXPECT_NEAR(static_radius(tyre).low / units::mm, 0.895 * 649.06 / 2.0, 1e-12);
  EXPECT_NEAR(effective_radius(tyre).high / units::mm, 0.995 * 668.86 / 2.0, 1e-12);
}

TEST(RollingRadius, OfAMotorcycleTyreRollsItsCircumference) {
  for (const char* marking : {"110/90-18", "150/70R17", "4.10-18", "MT90B16", "37-622"}) {
    const TyreSize tyre(marking);
    const Band<Length> by_factor = rolling_circumference(tyre);
    const Band<Length> by_radii = rolling_circumference(tyre, TyreDeflection::motorcycle);
    for (const Corner corner : corners) {
      EXPECT_NEAR(by_radii.at(corner) / by_factor.at(corner), 1.0, 4e-16) << marking;
      EXPECT_NEAR(2.0 * std::numbers::pi * effective_radius(tyre).at(corner) / by_factor.at(corner), 1.0, 4e-16);
    }
  }
}

TEST(RollingRadius, StandsBetweenStaticAndFreeAndNearerToFree) {
  for (const TyreDeflection deflection : deflections)
    for (const char* marking : {"110/90-18", "195/70R15", "3.50-10"}) {
      const TyreSize tyre(marking);
      for (const Corner corner : corners) {
        const Length free = free_radius(tyre).at(corner), at_rest = static_radius(tyre, deflection).at(corner),
                     effective = effective_radius(tyre, deflection).at(corner);
        EXPECT_LT(at_rest, effective);
        EXPECT_LT(effective, free);
        EXPECT_NEAR((free - effective) / (free - at_rest), 1.0 / 3.0, 1e-12);
      }
    }
}

TEST(RollingRadius, LeadsFromACircumferenceBackToTheStaticRadius) {
  for (double share = 0.01; share < 1.0; share += 0.01) {
    const Length free = 327.5_mm;
    const Length rolled = circumference_of_radius(effective_radius(free, static_radius(free, share)));
    EXPECT_NEAR(static_radius_from(rolled, free) / units::mm, share * 327.5, 1e-9);
  }
  const Length own = circumference_of_radius(300_mm);
  EXPECT_NEAR(static_radius_from(own, 300_mm) / units::mm, 300.0, 1e-9);  // a tyre that does not settle
}

TEST(RollingRadius, RefusesACircumferenceThatTheFreeRadiusCannotRoll) {
  constexpr double nan = std::numeric_limits<double>::quiet_NaN(), infinite = std::numeric_limits<double>::infinity();
  const Length free = 300_mm, whole = circumference_of_radius(free);
  for (const Length& bad :
       {1.001 * whole, 2.0 / 3.0 * whole, 0.5 * whole, 0_mm, -1.0 * whole, nan * units::m, infinite * units::m}) {
    const Result<Length> got = try_static_radius_from(bad, free);
    ASSERT_FALSE(got) << bad.value();
    EXPECT_EQ(got.error().kind(), ErrorKind::range);
    EXPECT_THROW(static_cast<void>(static_radius_from(bad, free)), RangeError);
  }
  EXPECT_STREQ(try_static_radius_from(2_m, free).error().what(),
               "circumference is 2000 mm; expected more than two thirds of the free tyre's, and at most all of its "
               "1884.96 mm");
  for (const Length& bad : {29_mm, 1001_mm, 0_mm, nan * units::m, infinite * units::m})
    EXPECT_FALSE(try_static_radius_from(2_m, bad)) << bad.value();
}

TEST(RollingRadius, IsKnownToTheCompilerAndDoesNotThrow) {
  static_assert(effective_radius("110/90-18"_tyre).low < effective_radius("110/90-18"_tyre).high);
  constexpr TyreSize tyre = "110/90-18"_tyre;
  static_assert(noexcept(static_radius(tyre)));
  static_assert(to_string(TyreDeflection::motorcycle) == "motorcycle");
  static_assert(to_string(TyreDeflection::light_truck) == "light truck");
}

TEST(RollingRadius, CanBeWatchedToTheBit) {
  using layshaft::detail::circumference_by_radii_at;
  const TyreSize tyre("110/90-18");
  layshaft_test::expect_watched(
      one_cause,
      [&](auto watch, Corner at) {
        return circumference_by_radii_at(watch, tyre, 3_mm, TyreDeflection::motorcycle, at, at);
      },
      {"rim diameter", "section width", "aspect ratio", "section height", "height factor", "overall diameter",
       "tread worn", "worn diameter", "free radius", "rolling factor", "static share", "static radius",
       "effective radius", "circumference"});
  layshaft_test::expect_watched(
      one_cause,
      [&](auto watch, Corner at) {
        return layshaft::detail::static_radius_at(watch, tyre, Length(), TyreDeflection::light_truck, at, at);
      },
      {"rim diameter", "section width", "aspect ratio", "section height", "height factor", "overall diameter",
       "free radius", "static share", "static radius"});
  layshaft_test::expect_watched(
      one_cause, [&](auto watch, Corner) { return layshaft::detail::static_radius_from(watch, 2.0_m, 327_mm); },
      {"circumference", "effective radius", "free radius", "static radius"});
}

TEST(RollingRadius, KnowsItsRanges) {
  expect_range<formula::free_radius>("+", 655_mm);
  expect_range<formula::static_radius>("++", 327.5_mm, 0.94);
  expect_range<formula::effective_radius>("++", 327.5_mm, 308_mm);
  expect_range<formula::circumference_of_radius>("+", 320_mm);
  expect_range<formula::radius_of_circumference>("+", 2_m);
  expect_range<formula::factor_of_share>("+", 0.94);
  expect_range<formula::static_radius_of_effective>("..", 320_mm, 327_mm);
  expect_range<formula::share_of_factor>(".", 0.98);
  EXPECT_FALSE(formula::share_of_factor::in_range(2.0 / 3.0));
  EXPECT_FALSE(formula::static_radius_of_effective::in_range(199_mm, 300_mm));
  EXPECT_FALSE(formula::static_radius_of_effective::in_range(200_mm, -300_mm));
}

// A number that was cast without a look names no construction: as of one that none of the eight was, all that was seen.
TEST(RollingRadius, OfNoConstructionIsAnywhereThatWasSeen) {
  EXPECT_EQ(static_share(static_cast<TyreConstruction>(9), TyreDeflection::light_truck),
            static_share(TyreConstruction::bias_belted, TyreDeflection::light_truck));
}

}  // namespace
