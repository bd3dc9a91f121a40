// SPDX-License-Identifier: MIT
#include <layshaft/wear/replacement_plan.hpp>

#include <gtest/gtest.h>
#include <core/formula_range.hpp>
#include <core/not_finite.hpp>

#include <string>

namespace {
using namespace layshaft;
using layshaft_test::endless;
using layshaft_test::expect_range;
using layshaft_test::nothing;

constexpr CostPart part(double price, double labour, double life_km) {
  return {.price = Band<double>::exactly(price),
          .labour = Band<double>::exactly(labour),
          .life = Band<Length>::exactly(life_km * units::km)};
}
/// A chain of 80 that lives 10,000 km, sprockets of 20 and 40 that live 30,000 km; worn sprockets do not matter.
DriveCosts drive(double mismatch = 1.0) {
  return {.chain = part(80, 10, 10000),
          .front = part(20, 10, 30000),
          .rear = part(40, 20, 30000),
          .set_labour = Band<double>::exactly(30),
          .mismatch = Band<double>::exactly(mismatch)};
}

TEST(LifeOnWornSprockets, FallsByTheMismatchAsTheyWear) {
  EXPECT_EQ(life_on_worn_sprockets(10000_km, 2.0, 0.0), 10000_km);
  EXPECT_EQ(life_on_worn_sprockets(10000_km, 2.0, 1.0), 5000_km);
  EXPECT_NEAR(life_on_worn_sprockets(12000_km, 1.4, 0.5) / units::km, 10000.0, 1e-9);
  EXPECT_EQ(life_on_worn_sprockets(10000_km, 1.0, 0.7), 10000_km);
  expect_range<formula::life_on_worn_sprockets>("+.0", 10000_km, 1.3, 0.5);
  EXPECT_FALSE(formula::life_on_worn_sprockets::in_range(10000_km, 0.999, 0.5));
  EXPECT_TRUE(formula::life_on_worn_sprockets::in_range(10000_km, 1.0, 0.0));
}

// Worked by hand. 30,000 km: three sets of 140 + 30; or one set (170) and two chains more at 90; two chains a set are
// a set and a chain for 20,000 km, and half of that again.
TEST(ReplacementPlans, CostWhatTheirPartsDo) {
  const ReplacementPlans told = replacement_plans(30000_km, drive());
  ASSERT_EQ(told.plans.size(), 7u);
  EXPECT_DOUBLE_EQ(told.plans[0].bought.nominal, 510.0);
  EXPECT_DOUBLE_EQ(told.plans[0].used_up.nominal, 510.0);
  EXPECT_DOUBLE_EQ(told.plans[1].bought.nominal, 430.0);
  // The second set's chain is worn; of its sprockets (60, and 30 of labour shared 1:1:2) half is.
  EXPECT_DOUBLE_EQ(told.plans[1].used_up.nominal, 430.0 - 0.5 * (60.0 + 22.5));
  for (std::size_t i = 2; i < 7; ++i) {
    EXPECT_DOUBLE_EQ(told.plans[i].bought.nominal, 350.0) << i;
    EXPECT_NEAR(told.plans[i].used_up.nominal, 350.0, 1e-9) << i;
    EXPECT_EQ(told.plans[i].chains, 3);
    EXPECT_EQ(told.plans[i].fronts, 1);
    EXPECT_EQ(told.plans[i].rears, 1);
  }
  EXPECT_EQ(told.plans[0].chains, 3);
  EXPECT_EQ(told.plans[0].rears, 3);
  EXPECT_EQ(told.plans[1].chains, 3);
  EXPECT_EQ(told.plans[1].fronts, 2);
  EXPECT_EQ(told.cheapest, told.plans[2]);  // of plans that come to the same the first
  EXPECT_FALSE(told.flips);
}

TEST(ReplacementPlans, StandInAKnownOrder) {
  const ReplacementPlans told = replacement_plans(30000_km, drive());
  EXPECT_EQ(told.plans[0].kind, PlanKind::as_a_set);
  for (int i = 0; i < 7; ++i) EXPECT_EQ(told.plans[static_cast<std::size_t>(i)].chains_per_set, i < 6 ? i + 1 : 0);
  for (std::size_t i = 1; i < 6; ++i) EXPECT_EQ(told.plans[i].kind, PlanKind::chains_per_set);
  EXPECT_EQ(told.plans[6].kind, PlanKind::each_when_worn);
  EXPECT_EQ(told, replacement_plans(30000_km, drive()));
}

// Worked by hand: at a mismatch of 2 the second chain starts at a third of the sprockets' life and lives 7,500 km, the
// third at 17.5/30 and lives 10,000/(1 + 17.5/30), and so on; the fifth is thrown away with the sprockets.
TEST(ReplacementPlans, GiveChainsOnWornSprocketsShorterLives) {
  const auto here = [](int chains) {
    const DriveCosts costs = drive(2.0);
    return layshaft::detail::set_life(layshaft::detail::DriveAt(costs, *costs.mismatch, {}), chains) / units::km;
  };
  EXPECT_NEAR(here(1), 10000.0, 1e-9);
  EXPECT_NEAR(here(2), 17500.0, 1e-9);
  const double third = 17500.0 + 10000.0 / (1.0 + 17.5 / 30.0);
  EXPECT_NEAR(here(3), third, 1e-9);
  EXPECT_NEAR(here(4), third + 10000.0 / (1.0 + third / 30000.0), 1e-9);
  EXPECT_EQ(here(5), 30000.0);
  EXPECT_EQ(here(6), 30000.0);
  EXPECT_EQ(replacement_plans(29000_km, drive(2.0)).plans[3].chains, 4);
  EXPECT_EQ(replacement_plans(29000_km, drive(2.0)).plans[3].rears, 1);
}

// By hand: the third chain ends at 30,000 km. Of sprockets that last half a kilometre longer no plan buys a fourth for
// them; those that last half a kilometre less end the set themselves.
TEST(ReplacementPlans, FitNoChainForTheLastKilometreOfASet) {
  const auto set = [](double sprockets_km, int chains) {
    DriveCosts costs = drive();
    costs.front.life = costs.rear.life = Band<Length>::exactly(sprockets_km * units::km);
    return layshaft::detail::set_life(layshaft::detail::DriveAt(costs, *costs.mismatch, {}), chains);
  };
  for (const int chains : {3, 4, 6}) {
    EXPECT_NEAR(in(set(30000.5, chains), units::km), 30000.0, 1e-9) << chains;
    EXPECT_NEAR(in(set(29999.5, chains), units::km), 29999.5, 1e-9) << chains;
  }
  EXPECT_NEAR(in(set(30001.5, 4), units::km), 30001.5, 1e-9);  // more than a kilometre is ridden on a fourth
}

// A rear sprocket that lives twice as long as the front one is not thrown away with it when each goes its own way.
TEST(ReplacementPlans, KeepWhatIsNotWornWhereEachGoesByItself) {
  DriveCosts costs = drive();
  costs.front = part(20, 10, 15000);
  costs.rear = part(90, 20, 60000);
  const ReplacementPlans told = replacement_plans(60000_km, costs);
  const PlanCost& each = told.plans[6];
  EXPECT_EQ(each.chains, 6);
  EXPECT_EQ(each.fronts, 4);
  EXPECT_EQ(each.rears, 1);
  // One set, five chains, three fronts; nothing is left at the end.
  EXPECT_DOUBLE_EQ(each.bought.nominal, 190.0 + 30.0 + 5.0 * 90.0 + 3.0 * 30.0);
  EXPECT_NEAR(each.used_up.nominal, each.bought.nominal, 1e-9);
  EXPECT_EQ(told.cheapest.kind, PlanKind::each_when_worn);
}

// Worked by hand, at a mismatch of 2, with one sprocket that lives 20,000 km and one that lives 40,000 km. The first
// two chains after the set find the short-lived one more worn; the third is fitted when that one is new again, and
// finds the other more worn.
TEST(ReplacementPlans, FitEachChainToTheSprocketThatIsMoreWorn) {
  const double second = 10000.0 / (1.0 + 10000.0 / 20000.0);
  const double third = 10000.0 / (1.0 + (10000.0 + second) / 20000.0);
  const double fitted = 10000.0 + second + third;  // 22,121 km
  const double fourth = 10000.0 / (1.0 + fitted / 40000.0);
  // The set's labour of 30 is shared 1:1:2.
  const double chains = 87.5 + 2.0 * 90.0 + 90.0 * (25000.0 - fitted) / fourth;
  const double front_cost = 27.5, rear_cost = 55.0;
  for (const bool front_first : {true, false}) {
    SCOPED_TRACE(front_first);
    DriveCosts costs = drive(2.0);
    costs.front = part(20, 10, front_first ? 20000 : 40000);
    costs.rear = part(40, 20, front_first ? 40000 : 20000);
    const ReplacementPlans told = replacement_plans(25000_km, costs);
    const PlanCost& each = told.plans[6];
    EXPECT_EQ(each.chains, 4);
    EXPECT_EQ(each.fronts, front_first ? 2 : 1);
    EXPECT_EQ(each.rears, front_first ? 1 : 2);
    // Of what is fitted at the end a quarter of the second short-lived sprocket has been run, and 25/40 of the other.
    EXPECT_NEAR(each.bought.nominal, 140.0 + 30.0 + 3.0 * 90.0 + (front_first ? 30.0 : 60.0), 1e-9);
    const double sprockets =
        front_first ? front_cost + 30.0 * 0.25 + rear_cost * 0.625 : front_cost * 0.625 + rear_cost + 60.0 * 0.25;
    EXPECT_NEAR(each.used_up.nominal, chains + sprockets, 1e-9);
  }
}

// At a mismatch of 2 four chains end at 29,390 km (above), and a fifth is thrown away with the sprockets at 30,000 km.
TEST(ReplacementPlans, ThrowTheLastChainOfASetAwayWithItsSprockets) {
  const ReplacementPlans told = replacement_plans(60000_km, drive(2.0));
  for (const std::size_t i : {4u, 5u}) {
    EXPECT_EQ(told.plans[i].chains, 10) << i;
    EXPECT_EQ(told.plans[i].fronts, 2) << i;
    EXPECT_EQ(told.plans[i].rears, 2) << i;
    EXPECT_NEAR(told.plans[i].bought.nominal, 2.0 * (140.0 + 30.0 + 4.0 * 90.0), 1e-9) << i;
    EXPECT_NEAR(told.plans[i].used_up.nominal, told.plans[i].bought.nominal, 1e-9) << i;
  }
}

// A chain that would live 40,000 km goes with its sprockets at 30,000 km.
TEST(ReplacementPlans, ThrowAChainThatOutlivesItsSprocketsAwayWithThem) {
  DriveCosts costs = drive();
  costs.chain.life = Band<Length>::exactly(40000_km);
  const ReplacementPlans told = replacement_plans(60000_km, costs);
  for (std::size_t i = 0; i < 6; ++i) {
    EXPECT_EQ(told.plans[i].chains, 2) << i;
    EXPECT_EQ(told.plans[i].fronts, 2) << i;
    EXPECT_NEAR(told.plans[i].bought.nominal, 2.0 * 170.0, 1e-9) << i;
    EXPECT_NEAR(told.plans[i].used_up.nominal, 2.0 * 170.0, 1e-9) << i;
  }
}

// Six chains of 10,000 km on sprockets of which one lives 30,000 km: both go at 30,000 km, whichever it is.
TEST(ReplacementPlans, EndASetWithTheSprocketThatIsWornFirst) {
  for (const bool front_first : {true, false}) {
    DriveCosts costs = drive();
    (front_first ? costs.rear : costs.front).life = Band<Length>::exactly(60000_km);
    const ReplacementPlans told = replacement_plans(60000_km, costs);
    EXPECT_EQ(told.plans[5].chains, 6) << front_first;
    EXPECT_EQ(told.plans[5].fronts, 2) << front_first;
    EXPECT_EQ(told.plans[5].rears, 2) << front_first;
  }
}

// By hand, over 9,000 km with a chain of 8,000 to 20,000 km: as a set it takes one set, or two where the chain lives
// shortest; of prices only the chain's is uncertain, by 20 either way.
TEST(ReplacementPlans, AreBandsAroundWhatIsNominal) {
  DriveCosts costs = drive();
  costs.chain.price = {60.0, 80.0, 100.0};
  costs.chain.life = {8000_km, 10000_km, 20000_km};
  const ReplacementPlans told = replacement_plans(9000_km, costs);
  const PlanCost& set = told.plans[0];
  EXPECT_EQ(set.chains, 1);
  EXPECT_DOUBLE_EQ(set.bought.low, 60.0 + 60.0 + 30.0);
  EXPECT_DOUBLE_EQ(set.bought.nominal, 80.0 + 60.0 + 30.0);
  EXPECT_DOUBLE_EQ(set.bought.high, 2.0 * (100.0 + 60.0 + 30.0));
  EXPECT_NEAR(set.used_up.low, 150.0 * 9.0 / 20.0, 1e-9);
  EXPECT_NEAR(set.used_up.nominal, 170.0 * 9.0 / 10.0, 1e-9);
  EXPECT_NEAR(set.used_up.high, 190.0 * 9.0 / 8.0, 1e-9);
}

TEST(ReplacementPlans, NeverUseUpMoreThanTheyBuyAndGrowWithTheDistance) {
  DriveCosts costs = drive();
  costs.mismatch.reset();
  costs.chain.life = {7000_km, 10000_km, 16000_km};
  costs.front.life = {11000_km, 17000_km, 30000_km};
  ReplacementPlans before = replacement_plans(10_km, costs);
  for (double km = 510.0; km < 70000.0; km += 500.0) {
    const ReplacementPlans now = replacement_plans(km * units::km, costs);
    for (std::size_t i = 0; i < 7; ++i) {
      const PlanCost& plan = now.plans[i];
      EXPECT_LE(plan.used_up.nominal, plan.bought.nominal * (1.0 + 1e-12));
      EXPECT_GE(plan.used_up.nominal, before.plans[i].used_up.nominal);
      EXPECT_GE(plan.bought.nominal, before.plans[i].bought.nominal);
      // Continuous but for what is thrown away early: no step is larger than a whole set.
      EXPECT_LE(plan.used_up.nominal - before.plans[i].used_up.nominal, 180.0);
      EXPECT_TRUE(well_formed(plan.used_up) && well_formed(plan.bought));
    }
    before = now;
  }
}

// What comes due within a kilometre is done at once, and nothing is bought for the last kilometre.
TEST(ReplacementPlans, BuyNothingForTheLastKilometre) {
  EXPECT_EQ(replacement_plans(10000_km, drive()).plans[0].chains, 1);
  EXPECT_EQ(replacement_plans(10000.9_km, drive()).plans[0].chains, 1);
  EXPECT_EQ(replacement_plans(10001.1_km, drive()).plans[0].chains, 2);
  DriveCosts costs = drive();
  costs.front = part(20, 10, 9999.5);
  costs.rear = part(40, 20, 10000.2);
  EXPECT_DOUBLE_EQ(replacement_plans(15000_km, costs).plans[6].bought.nominal, 340.0);  // two sets, as sets
}

TEST(ReplacementPlans, SayWhetherTheChoiceFlips) {
  DriveCosts costs = drive();
  costs.mismatch = {1.0, 1.0, 4.0};
  costs.chain.price = {10.0, 80.0, 80.0};
  const ReplacementPlans told = replacement_plans(60000_km, costs);
  EXPECT_TRUE(told.flips);
  int candidates = 0;
  for (const PlanCost& plan : told.plans) candidates += plan.can_be_cheapest ? 1 : 0;
  EXPECT_GT(candidates, 1);
  EXPECT_TRUE(told.cheapest.can_be_cheapest);
  // Dear chains that worn sprockets ruin: at the far corner a set costs less than many chains.
  const DriveCosts ruined{.chain = part(200, 10, 10000),
                          .front = part(10, 0, 30000),
                          .rear = part(10, 0, 30000),
                          .set_labour = Band<double>::exactly(10),
                          .mismatch = Band<double>::exactly(4.0)};
  EXPECT_EQ(replacement_plans(60000_km, ruined).cheapest.kind, PlanKind::as_a_set);
  EXPECT_FALSE(replacement_plans(60000_km, ruined).flips);
}

// Dear chains: where worn sprockets do not matter a set sees three of them, 3 x 210 + 20 over 30,000 km; where they
// ruin them it sees one (above).
TEST(ReplacementPlans, AreCheapestByWhatIsNominal) {
  const DriveCosts dear{.chain = part(200, 10, 10000),
                        .front = part(10, 0, 30000),
                        .rear = part(10, 0, 30000),
                        .set_labour = Band<double>::exactly(10),
                        .mismatch = Band<double>{1.0, 1.0, 4.0}};
  const ReplacementPlans told = replacement_plans(60000_km, dear);
  EXPECT_EQ(told.cheapest.chains_per_set, 3);
  EXPECT_NEAR(told.cheapest.used_up.nominal, 2.0 * (3.0 * 210.0 + 20.0), 1e-9);
  EXPECT_TRUE(told.plans[0].can_be_cheapest);
  EXPECT_TRUE(told.flips);
}

TEST(ReplacementPlans, MarkWhatIsFromMemory) {
  DriveCosts costs = drive();
  EXPECT_EQ(replacement_plans(30000_km, costs).certainty, Certainty::common_practice);
  const ReplacementPlans stated = [&] {
    costs.mismatch = usual_mismatch;
    return replacement_plans(30000_km, costs);
  }();
  costs.mismatch.reset();
  const ReplacementPlans usual = replacement_plans(30000_km, costs);
  EXPECT_EQ(usual.certainty, Certainty::from_memory);
  EXPECT_EQ(usual.plans, stated.plans);
  EXPECT_EQ(usual_mismatch_source.certainty, Certainty::from_memory);
  EXPECT_EQ(formula::life_on_worn_sprockets::about.source, mismatch_source);
}

TEST(ReplacementPlans, ShareTheLabourOfASetEvenlyWhereSingleLabourIsNothing) {
  DriveCosts costs = drive();
  costs.chain.labour = costs.front.labour = costs.rear.labour = Band<double>::exactly(0.0);
  const ReplacementPlans told = replacement_plans(5000_km, costs);
  EXPECT_DOUBLE_EQ(told.plans[0].bought.nominal, 170.0);
  EXPECT_DOUBLE_EQ(told.plans[0].used_up.nominal, 85.0);
  EXPECT_NEAR(told.plans[6].used_up.nominal, 90.0 / 2.0 + (20.0 + 10.0) / 6.0 + (40.0 + 10.0) / 6.0, 1e-9);
}

TEST(ReplacementPlans, RefuseWhatLiesOutsideItsRange) {
  const auto refused = [](const Length& distance, const DriveCosts& costs) {
    const Result<ReplacementPlans> made = try_replacement_plans(distance, costs);
    if (made) return std::string();
    EXPECT_THROW(static_cast<void>(replacement_plans(distance, costs)), RangeError);
    return std::string(made.error().what());
  };
  EXPECT_EQ(refused(9_km, drive()), "distance is 9 km; expected 10 km to 1000000 km");
  for (const Length& bad : {nothing * units::m, endless * units::m, Length(), -10_km, 1000001_km})
    EXPECT_NE(refused(bad, drive()), "");
  EXPECT_EQ(refused(10_km, drive()), "");
  EXPECT_EQ(refused(1000_km, drive(0.9)), "mismatch is 0.9; expected 1 to 10");
  for (const double bad : {nothing, endless, 0.0, -1.0, 10.1}) EXPECT_NE(refused(1000_km, drive(bad)), "") << bad;
  const auto with = [](auto change) {
    DriveCosts costs = drive();
    change(costs);
    return costs;
  };
  EXPECT_EQ(refused(1000_km, with([](auto& c) { c.chain.price.low = -1.0; })),
            "chain: price is -1; expected 0 to 1000000000000");
  EXPECT_EQ(refused(1000_km, with([](auto& c) { c.front.life = Band<Length>::exactly(1_km); })),
            "front: life is 1 km; expected 100 km to 1000000 km");
  EXPECT_EQ(refused(1000_km, with([](auto& c) { c.rear.labour.high = nothing; })),
            "rear: labour is not a number; expected 0 to 1000000000000");
  EXPECT_EQ(refused(1000_km, with([](auto& c) { c.set_labour.nominal = endless; })),
            "set_labour is infinite; expected 0 to 1000000000000");
}

// The longest ride on the shortest lives: a hundred thousand chains and more, and still an answer.
TEST(ReplacementPlans, EndAtTheEdgesToo) {
  const DriveCosts costs{.chain = part(1e12, 1e12, 100),
                         .front = part(0, 0, 100),
                         .rear = part(1e12, 0, 1000000),
                         .set_labour = Band<double>::exactly(1e12),
                         .mismatch = Band<double>::exactly(10.0)};
  const ReplacementPlans told = replacement_plans(1000000_km, costs);
  for (const PlanCost& plan : told.plans) {
    EXPECT_TRUE(well_formed(plan.bought) && well_formed(plan.used_up));
    EXPECT_GE(plan.chains, 9999);
  }
}

TEST(PlanKind, HasWordsForEach) {
  EXPECT_EQ(to_string(plan_kinds[0]), "as a set");
  EXPECT_EQ(to_string(plan_kinds[1]), "several chains a set");
  EXPECT_EQ(to_string(plan_kinds[2]), "each when worn");
}

}  // namespace
