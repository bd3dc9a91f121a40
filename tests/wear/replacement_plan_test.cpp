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
