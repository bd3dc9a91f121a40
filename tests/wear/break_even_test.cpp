// SPDX-License-Identifier: MIT
#include <layshaft/wear/break_even.hpp>

#include <gtest/gtest.h>
#include <core/formula_range.hpp>
#include <tyre/watched.hpp>

#include <limits>

namespace {
using namespace layshaft;
using layshaft_test::expect_range;

// Invented prices; the sums are worked by hand.
constexpr CostPart steel{.kind = PartKind::rear_sprocket,
                         .price = {30.0, 40.0, 50.0},
                         .labour = Band<double>::exactly(10.0),
                         .life = {20000_km, 25000_km, 40000_km}};
constexpr CostPart aluminium{.kind = PartKind::rear_sprocket,
                             .price = {60.0, 70.0, 80.0},
                             .labour = Band<double>::exactly(10.0),
                             .life = {8000_km, 16000_km, 20000_km}};

TEST(BreakEven, TellsWhichCostsLessAndByHowMuch) {
  const BreakEven told = break_even(steel, aluminium);
  EXPECT_DOUBLE_EQ(told.base_per_1000_km.low, 1.0);
  EXPECT_DOUBLE_EQ(told.base_per_1000_km.nominal, 2.0);
  EXPECT_DOUBLE_EQ(told.base_per_1000_km.high, 3.0);
  EXPECT_DOUBLE_EQ(told.trial_per_1000_km.low, 3.5);
  EXPECT_DOUBLE_EQ(told.trial_per_1000_km.nominal, 5.0);
  EXPECT_DOUBLE_EQ(told.trial_per_1000_km.high, 11.25);
  EXPECT_DOUBLE_EQ(told.difference.low, 0.5);
  EXPECT_DOUBLE_EQ(told.difference.nominal, 3.0);
  EXPECT_DOUBLE_EQ(told.difference.high, 10.25);
  EXPECT_EQ(told.cheaper, CheaperPart::base);
  EXPECT_TRUE(told.certain);
}

TEST(BreakEven, TellsAtWhichLivesAndAtWhichPriceItFlips) {
  const BreakEven told = break_even(steel, aluminium);
  ASSERT_TRUE(told.life_ratio);
  EXPECT_DOUBLE_EQ(told.life_ratio->low, 70.0 / 60.0);
  EXPECT_DOUBLE_EQ(told.life_ratio->nominal, 80.0 / 50.0);
  EXPECT_DOUBLE_EQ(told.life_ratio->high, 90.0 / 40.0);
  EXPECT_DOUBLE_EQ(told.price.low, 40.0 * 8.0 / 40.0 - 10.0);  // below zero: not even as a gift
  EXPECT_DOUBLE_EQ(told.price.nominal, 50.0 * 16.0 / 25.0 - 10.0);
  EXPECT_DOUBLE_EQ(told.price.high, 60.0 * 20.0 / 20.0 - 10.0);
}

// At the life or the price that it names, both cost alike indeed.
TEST(BreakEven, IsEvenWhereItSaysSo) {
  const BreakEven told = break_even(steel, aluminium);
  CostPart lasting = aluminium;
  lasting.life = Band<Length>::exactly(told.life_ratio->nominal * steel.life.nominal);
  EXPECT_NEAR(break_even(steel, lasting).difference.nominal, 0.0, 1e-12);
  CostPart cheap = aluminium;
  cheap.price = Band<double>::exactly(told.price.nominal);
  EXPECT_NEAR(break_even(steel, cheap).difference.nominal, 0.0, 1e-12);
  cheap.price = Band<double>::exactly(told.price.nominal - 1.0);
  EXPECT_EQ(break_even(steel, cheap).cheaper, CheaperPart::trial);
}

TEST(BreakEven, IsUncertainWhereTheBandsMeet) {
  CostPart longer = aluminium;
  longer.life.high = 60000_km;
  const BreakEven told = break_even(steel, longer);
  EXPECT_EQ(told.cheaper, CheaperPart::base);
  EXPECT_FALSE(told.certain);
  EXPECT_LT(told.difference.low, 0.0);
}

TEST(BreakEven, TurnsRoundWithItsParts) {
  const BreakEven there = break_even(steel, aluminium), back = break_even(aluminium, steel);
  EXPECT_EQ(back.cheaper, CheaperPart::trial);
  EXPECT_TRUE(back.certain);
  EXPECT_EQ(back.difference.low, -there.difference.high);
  EXPECT_EQ(back.difference.nominal, -there.difference.nominal);
  EXPECT_EQ(back.difference.high, -there.difference.low);
  EXPECT_NEAR(back.life_ratio->low * there.life_ratio->high, 1.0, 1e-15);
}

TEST(BreakEven, OfAPartWithItselfIsAlikeAndNeverCertain) {
  const CostPart exact{.price = Band<double>::exactly(9.0), .life = Band<Length>::exactly(3000_km)};
  const BreakEven told = break_even(exact, exact);
  EXPECT_EQ(told.cheaper, CheaperPart::alike);
  EXPECT_FALSE(told.certain);
  EXPECT_EQ(told.life_ratio, Band<double>::exactly(1.0));
  EXPECT_EQ(told.price, Band<double>::exactly(9.0));
}

TEST(BreakEven, HasNoLifeRatioToAPartThatMayCostNothing) {
  for (const double price : {0.0, std::numeric_limits<double>::denorm_min(), 1e-7}) {
    const CostPart gift{.price = {price, 5.0, 9.0}, .life = Band<Length>::exactly(3000_km)};
    const BreakEven told = break_even(gift, steel);
    EXPECT_EQ(told.life_ratio, std::nullopt) << price;
    EXPECT_TRUE(well_formed(told.price) && well_formed(told.difference));
  }
  CostPart nothing;
  nothing.life = Band<Length>::exactly(3000_km);
  EXPECT_EQ(break_even(nothing, nothing).cheaper, CheaperPart::alike);
}

TEST(BreakEven, SaysWhichPartIsWrong) {
  CostPart bad = steel;
  bad.labour = Band<double>::exactly(-2.0);
  EXPECT_STREQ(try_break_even(bad, steel).error().what(), "base: labour is -2; expected 0 to 1000000000000");
  EXPECT_STREQ(try_break_even(steel, bad).error().what(), "trial: labour is -2; expected 0 to 1000000000000");
  EXPECT_THROW(static_cast<void>(break_even(steel, CostPart())), RangeError);  // no life
}

TEST(BreakEven, CanBeWatchedToTheBit) {
  using layshaft::detail::two_costs, layshaft::detail::TwoCosts;
  layshaft_test::expect_watched(two_costs,
                                [](auto watch, const TwoCosts& at) {
                                  return layshaft::detail::break_even_life_ratio(watch, steel, aluminium, at);
                                },
                                {"base price", "base labour", "trial price", "trial labour", "break even life ratio"});
  layshaft_test::expect_watched(
      two_costs,
      [](auto watch, const TwoCosts& at) { return layshaft::detail::break_even_price(watch, steel, aluminium, at); },
      {"base price", "base labour", "base life", "trial labour", "trial life", "break even price"});
}

TEST(BreakEven, KnowsItsRanges) {
  expect_range<formula::cost_difference>("ff", 2.0, 3.0);
  expect_range<formula::break_even_life_ratio>("0000", 40.0, 10.0, 70.0, 10.0);
  expect_range<formula::break_even_price>("00+0+", 40.0, 10.0, 25000_km, 10.0, 16000_km);
  EXPECT_FALSE(formula::break_even_life_ratio::in_range(0.0, 0.0, 70.0, 10.0));
}

TEST(CheaperPart, HasAWordForEach) {
  EXPECT_EQ(to_string(cheaper_parts[0]), "base");
  EXPECT_EQ(to_string(cheaper_parts[1]), "trial");
  EXPECT_EQ(to_string(cheaper_parts[2]), "alike");
}

}  // namespace
