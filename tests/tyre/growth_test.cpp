// SPDX-License-Identifier: MIT
#include <layshaft/tyre/growth.hpp>

#include "../reference/csv.hpp"

#include <gtest/gtest.h>
#include <core/formula_range.hpp>
#include <tyre/watched.hpp>

#include <string>

namespace {
using namespace layshaft;
using layshaft_test::expect_range;

// Worked by hand: of 110/90-18 the section is 99 mm high, and may be 1.07 of that (special use: 1.12).
TEST(Growth, OfAMarkingAgainstItselfIsItsTolerance) {
  const TyreSize road("110/90-18"), special("110/90-18", TyreUse::special);
  EXPECT_NEAR(greatest_radius_growth(road, road) / units::mm, 0.07 * 99.0, 1e-10);
  EXPECT_NEAR(greatest_radius_growth(special, special) / units::mm, 0.12 * 99.0, 1e-10);
  EXPECT_NEAR(*greatest_width_growth(road, road) / units::mm, 11.0, 1e-10);
}

// By hand: a bias tyre of 655 mm, at most 668.86 mm, at its rated 180 km/h and at half of it.
TEST(Growth, WithSpeedRisesWithItsSquareToTheRatedSpeed) {
  const TyreSize bias("110/90-18 61S");
  const Band<Length> full = speed_growth(bias, 180_kmh), half = speed_growth(bias, 90_kmh);
  EXPECT_EQ(full.low, 0_mm);
  EXPECT_NEAR(full.nominal / units::mm, 655.0 / 2.0 * 0.015, 1e-12);
  EXPECT_NEAR(full.high / units::mm, 668.86 / 2.0 * 0.04, 1e-12);
  EXPECT_NEAR(half.high / full.high, 0.25, 1e-15);
  EXPECT_EQ(speed_growth(bias, 0_kmh).high, 0_mm);
  EXPECT_LT(speed_growth(TyreSize("110/90R18 61S"), 180_kmh).high, full.high);
  EXPECT_LT(speed_growth(TyreSize("110/90B18 61S"), 180_kmh).high, full.high);
  EXPECT_EQ(speed_growth_source.certainty, Certainty::from_memory);
}

// The bounds are from memory; by hand, of the free radius at its nominal and its greatest.
TEST(Growth, WithSpeedGoesByTheConstruction) {
  const struct {
    const char* marking;
    double nominal, high;
  } table[] = {{"110/90-18 61S", 0.015, 0.04}, {"110/90B18 61S", 0.008, 0.02}, {"110/90R18 61S", 0.005, 0.015}};
  for (const auto& [marking, nominal, high] : table) {
    const TyreSize tyre(marking);
    const Band<Length> growth = speed_growth(tyre, 180_kmh);
    EXPECT_NEAR(growth.nominal / units::mm, 655.0 / 2.0 * nominal, 1e-12) << marking;
    EXPECT_NEAR(growth.high / tyre.overall_diameter().high, high / 2.0, 1e-15) << marking;
  }
}

TEST(Growth, WithSpeedIsNotGuessedBeyondTheSymbolOrWithoutOne) {
  EXPECT_EQ(std::string(try_speed_growth(TyreSize("110/90-18"), 90_kmh).error().what()),
            "growth with speed needs the tyre's speed symbol, as in 110/90-18 61R");
  const auto beyond = try_speed_growth(TyreSize("110/90-18 61S"), 181_kmh);
  ASSERT_FALSE(beyond);
  EXPECT_EQ(std::string(beyond.error().what()), "road_speed is 181 km/h; expected 0 km/h to 180 km/h");
  EXPECT_THROW((void)speed_growth(TyreSize("110/90-18 61S"), -1.0_kmh), RangeError);
}

TEST(Growth, IsMeasuredFromTheStockTyreAsMarked) {
  const TyreSize stock("110/90-18"), trial("120/90-18"), small("80/80-18");
  EXPECT_NEAR(greatest_radius_growth(trial, stock) / units::mm, 1.07 * 108.0 - 99.0, 1e-10);
  EXPECT_NEAR(*greatest_width_growth(trial, stock) / units::mm, 132.0 - 110.0, 1e-10);
  EXPECT_LT(greatest_radius_growth(small, stock), 0_mm);
  EXPECT_LT(*greatest_width_growth(small, stock), 0_mm);
}

// Source: UN Regulation No. 75, Annex 5, as in tests/reference/tyre_code_designated.csv; all of it from memory.
TEST(Growth, HasTheGreatestWidthsOfTheReference) {
  int compared = 0;
  for (const auto& row : layshaft_test::read_csv("tyre_code_designated.csv")) {
    const Result<TyreSize> tyre = TyreSize::make(row.at("designation"));
    ASSERT_TRUE(tyre) << row.at("designation");
    EXPECT_EQ(*greatest_section_width(*tyre), layshaft_test::number(row.at("section_width_max_mm")) * units::mm)
        << row.at("designation");
    ++compared;
  }
  EXPECT_EQ(compared, 92);
}

// Both are from memory; they were recalled apart, and agree to the millimetre that the table is rounded to.
TEST(Growth, OfMetricSizesGoesByTheRuleThatTheTableOfSectionsFollows) {
  for (const CodeDesignatedTyre& row : code_designated_tyres) {
    if (row.family != TyreFamily::normal_section && row.family != TyreFamily::small_rim &&
        row.family != TyreFamily::low_section)
      continue;
    EXPECT_NEAR(section_width_limit(row.section_width, greatest_width_factor(row.rim_code)) / units::mm,
                row.greatest_section_width / units::mm, 0.5 + 1e-9)
        << row.section << "-" << row.rim_code;
  }
}

TEST(Growth, IsUnknownInWidthWhereNoRuleIsAtHand) {
  for (const char* marking : {"25x8-12", "37-622"}) {
    EXPECT_EQ(greatest_section_width(TyreSize(marking)), std::nullopt) << marking;
    EXPECT_EQ(greatest_width_growth(TyreSize(marking), TyreSize("110/90-18")), std::nullopt) << marking;
  }
  EXPECT_EQ(greatest_section_width(TyreSize("110/90-12")), 108.0 / 100.0 * 110_mm);
}

TEST(Growth, CanBeWatchedToTheBit) {
  const TyreSize stock("110/90-18"), trial("4.60-18");
  const auto working = layshaft_test::expect_watched(
      one_cause, [&](auto watch, Corner) { return layshaft::detail::radius_growth_at(watch, trial, stock); },
      {"base rim diameter", "base section width", "base aspect ratio", "base section height", "base height factor",
       "base overall diameter", "trial listed diameter", "trial listed rim diameter", "trial rim diameter",
       "trial overall diameter", "radius growth"});
  EXPECT_EQ(working.result().certainty(), Certainty::from_memory);
  const struct {
    const char* marking;
    const char* row;
  } table[] = {{"110/90-18", "rim code 13 and above"}, {"110/90-12", "rim code 12 and below"}};
  for (const auto& [marking, row] : table) {
    const auto growth = layshaft_test::expect_watched(
        one_cause,
        [&](auto watch, Corner) { return layshaft::detail::width_growth_at(watch, TyreSize(marking), trial); },
        {"base section width", "trial section width", "trial width factor", "trial section width limit",
         "width growth"});
    EXPECT_EQ(growth.steps()[2].detail(), row);
  }
  layshaft_test::expect_watched(
      one_cause, [&](auto watch, Corner) { return layshaft::detail::width_growth_at(watch, trial, stock); },
      {"base section width", "trial section width limit", "width growth"});
}

TEST(Growth, KnowsItsRanges) {
  expect_range<formula::radius_growth_at_speed>("+0..", 655_mm, 0.04, 90_kmh, 180_kmh);
  EXPECT_FALSE(formula::radius_growth_at_speed::in_range(655_mm, 0.04, 181_kmh, 180_kmh));
  expect_range<formula::radius_growth>("++", 655_mm, 668_mm);
  expect_range<formula::width_growth>("++", 110_mm, 121_mm);
}

// A number that was cast without a look names no construction; a radial tyre's bound is the least that is expected.
TEST(Growth, OfNoConstructionIsTheLeast) {
  EXPECT_EQ(growth_at_rated_speed(static_cast<TyreConstruction>(9)), growth_at_rated_speed(TyreConstruction::radial));
}

}  // namespace
