// SPDX-License-Identifier: MIT
#include <layshaft/wear/running_cost.hpp>

#include <gtest/gtest.h>
#include <core/formula_range.hpp>
#include <core/not_finite.hpp>

#include <string>

namespace {
using namespace layshaft;
using layshaft_test::endless;
using layshaft_test::expect_range;
using layshaft_test::nothing;

constexpr CostPart chain{.kind = PartKind::chain,
                         .price = {60.0, 80.0, 100.0},
                         .labour = {0.0, 20.0, 60.0},
                         .life = {8000_km, 20000_km, 40000_km}};
constexpr CostPart tyre{.kind = PartKind::tyre,
                        .price = Band<double>::exactly(120.0),
                        .labour = Band<double>::exactly(30.0),
                        .life = {6000_km, 10000_km, 15000_km}};

TEST(CostPerDistance, IsAShareOfWhatANewPartCosts) {
  EXPECT_DOUBLE_EQ(cost_per_distance(80.0, 20.0, 1000_km, 20000_km), 5.0);
  EXPECT_EQ(cost_per_distance(80.0, 20.0, 20000_km, 20000_km), 100.0);
  EXPECT_EQ(cost_per_distance(0.0, 0.0, 1000_km, 1_km), 0.0);
  expect_range<formula::cost_per_distance>("00++", 80.0, 20.0, 1000_km, 20000_km);
}

TEST(CostPerDistance, SaysThatEvenLivesAreAnAssumption) {
  EXPECT_EQ(formula::cost_per_distance::about.source, even_life_source);
  EXPECT_EQ(even_life_source.certainty, Certainty::common_practice);
}

// Worked by hand: 60/40, 100/20 and 160/8 for the chain; 150 over 15, 10 and 6 for the tyre.
TEST(RunningCost, IsLowWhereTheLowestPriceMeetsTheLongestLife) {
  const RunningCost cost = running_cost({chain, tyre});
  ASSERT_EQ(cost.parts.size(), 2u);
  EXPECT_EQ(cost.parts[0].kind, PartKind::chain);
  EXPECT_DOUBLE_EQ(cost.parts[0].per_1000_km.low, 1.5);
  EXPECT_DOUBLE_EQ(cost.parts[0].per_1000_km.nominal, 5.0);
  EXPECT_DOUBLE_EQ(cost.parts[0].per_1000_km.high, 20.0);
  EXPECT_EQ(cost.parts[1].kind, PartKind::tyre);
  EXPECT_DOUBLE_EQ(cost.parts[1].per_1000_km.low, 10.0);
  EXPECT_DOUBLE_EQ(cost.parts[1].per_1000_km.nominal, 15.0);
  EXPECT_DOUBLE_EQ(cost.parts[1].per_1000_km.high, 25.0);
  EXPECT_DOUBLE_EQ(cost.per_1000_km.low, 11.5);
  EXPECT_DOUBLE_EQ(cost.per_1000_km.nominal, 20.0);
  EXPECT_DOUBLE_EQ(cost.per_1000_km.high, 45.0);
}

TEST(RunningCost, ScalesWithPricesToTheBitWhereTheyDouble) {
  CostPart dear = chain;
  dear.price = {120.0, 160.0, 200.0};
  dear.labour = {0.0, 40.0, 120.0};
  const Band<double> once = running_cost({chain}).per_1000_km, twice = running_cost({dear}).per_1000_km;
  for (const Corner corner : corners) EXPECT_EQ(twice.at(corner), 2.0 * once.at(corner));
}

TEST(RunningCost, IsTheSameInAnyUnitOfLength) {
  CostPart by_mile = chain;
  by_mile.life = {1000.0 * units::mile, 1000.0 * units::mile, 1000.0 * units::mile};
  by_mile.price = by_mile.labour = Band<double>::exactly(50.0);
  EXPECT_DOUBLE_EQ(running_cost({by_mile}).per_1000_km.nominal, 100.0 / 1.609344);
}

TEST(RunningCost, HasNoWidthWhereAllIsExact) {
  const CostPart exact{.price = Band<double>::exactly(7.0), .life = Band<Length>::exactly(3000_km)};
  EXPECT_EQ(running_cost({exact, exact}).per_1000_km.width(), 0.0);
  EXPECT_EQ(running_cost({exact}).parts[0].kind, PartKind::other);
}

/// What it refuses, in words; empty where it does not.
std::string refused(const CostPart& part) {
  const Result<RunningCost> made = try_running_cost({tyre, part});
  if (made) return {};
  EXPECT_EQ(made.error().kind(), ErrorKind::range);
  EXPECT_THROW(static_cast<void>(running_cost({tyre, part})), RangeError);
  return made.error().what();
}

TEST(RunningCost, RefusesWhatNoPartCosts) {
  const auto with = [](Band<double> price, Band<double> labour, Band<Length> life) {
    return CostPart{PartKind::chain, price, labour, life};
  };
  const Band<double> some = Band<double>::exactly(10.0);
  const Band<Length> far = Band<Length>::exactly(5000_km);
  EXPECT_EQ(refused(with(some, some, far)), "");
  EXPECT_EQ(refused(with(Band<double>::exactly(-1.0), some, far)),
            "parts[1]: price is -1; expected 0 to 1000000000000");
  EXPECT_EQ(refused(with({3.0, 2.0, 4.0}, some, far)),
            "parts[1]: price is 3, 2, 4; expected low, nominal and high in rising order");
  EXPECT_EQ(refused(with(some, some, Band<Length>::exactly(99_km))),
            "parts[1]: life is 99 km; expected 100 km to 1000000 km");
  for (const double bad : {nothing, endless, -endless, -1e-300, 1.1e12}) {
    EXPECT_NE(refused(with({bad, bad, bad}, some, far)), "") << bad;
    EXPECT_NE(refused(with({0.0, 1.0, bad}, some, far)), "") << bad;
    EXPECT_NE(refused(with(some, {0.0, bad, 2.0}, far)), "") << bad;
  }
  for (const Length& bad : {nothing * units::m, endless * units::m, Length(), -5000_km, 1000001_km})
    EXPECT_NE(refused(with(some, some, {bad, bad, bad})), "");
  // The edges themselves are in.
  EXPECT_EQ(refused(with(Band<double>::exactly(0.0), Band<double>::exactly(0.0), Band<Length>::exactly(100_km))), "");
  EXPECT_EQ(refused(with(Band<double>::exactly(1e12), Band<double>::exactly(1e12), Band<Length>::exactly(1000000_km))),
            "");
}

TEST(RunningCost, NamesTheFirstPartThatIsWrong) {
  CostPart bad = tyre;
  bad.price = Band<double>::exactly(-1.0);
  EXPECT_STREQ(try_running_cost({bad, tyre}).error().what(), "parts[0]: price is -1; expected 0 to 1000000000000");
  EXPECT_STREQ(try_running_cost({tyre, chain, bad, bad}).error().what(),
               "parts[2]: price is -1; expected 0 to 1000000000000");
}

TEST(RunningCost, TakesOneToSixteenParts) {
  CostParts parts;
  EXPECT_STREQ(try_running_cost(parts).error().what(), "parts: none was given; expected 1 to 16");
  for (int i = 0; i < 16; ++i) parts.push_back(tyre);
  EXPECT_DOUBLE_EQ(running_cost(parts).per_1000_km.nominal, 240.0);
  parts.push_back(tyre);
  EXPECT_STREQ(try_running_cost(parts).error().what(), "parts: more than 16 were given; expected 1 to 16");
  EXPECT_THROW(static_cast<void>(running_cost(parts)), Error);
}

TEST(PartKind, HasAWordForEach) {
  std::string words;
  for (const PartKind kind : part_kinds) words.append(to_string(kind)).append(", ");
  EXPECT_EQ(words, "chain, front sprocket, rear sprocket, tyre, other, ");
}

}  // namespace
