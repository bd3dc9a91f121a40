// SPDX-License-Identifier: MIT
#include <layshaft/setup/costs_after.hpp>

#include "machines.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <utility>

namespace {
using namespace layshaft_test;

CostPart part(PartKind kind, double price, Band<Length> life) { return {kind, Band<double>::exactly(price), {}, life}; }
// Invented prices.
DriveCosts drive() {
  return {part(PartKind::chain, 90.0, {12000_km, 15000_km, 20000_km}),
          part(PartKind::front_sprocket, 20.0, {10000_km, 14000_km, 18000_km}),
          part(PartKind::rear_sprocket, 45.0, {20000_km, 25000_km, 32000_km}),
          {},
          {}};
}

TEST(CostsAfter, LeaveAllAsItWasOnTheSameSetup) {
  const Machine machine = roomy_trail_bike();
  const CostChange change = costs_after(compare(machine, machine.stock(), machine.stock()), drive());
  EXPECT_EQ(change.difference, Band<double>::exactly(0.0));
  EXPECT_EQ(change.trial, drive());
  EXPECT_NEAR(change.base_per_1000_km.nominal, 90.0 / 15 + 20.0 / 14 + 45.0 / 25, 1e-12);
  EXPECT_NEAR(change.base_per_1000_km.high, 90.0 / 12 + 20.0 / 10 + 45.0 / 20, 1e-12);
}

// All corners of what the lives are and of how much they change, written out.
TEST(CostsAfter, ShareWhatBothSetupsShare) {
  const Machine machine = roomy_trail_bike();
  const Comparison comparison =
      compare(machine, on_sprockets(machine, 14, 43, 106), on_sprockets(machine, 13, 40, 104));
  const CostChange change = costs_after(comparison, drive());
  EXPECT_NEAR(1.0 + change.chain_life_change.nominal, 1.0 / 1.097, 0.001);  // the maker's limit governs on both
  double least = 1e9, most = -1e9;
  const double money[] = {90.0, 20.0, 45.0};
  const Band<double> lives[] = {{12, 15, 20}, {10, 14, 18}, {20, 25, 32}};
  const Band<double> changes[] = {change.chain_life_change, comparison.wear.front_life_change,
                                  comparison.wear.rear_life_change};
  for (const Corner life : corners)
    for (const Corner by : corners) {
      double difference = 0.0;
      for (int i = 0; i < 3; ++i)
        difference += money[i] / lives[i].at(life) / (1.0 + changes[i].at(by)) - money[i] / lives[i].at(life);
      least = std::min(least, difference);
      most = std::max(most, difference);
    }
  EXPECT_NEAR(change.difference.low, least, 1e-12);
  EXPECT_NEAR(change.difference.high, most, 1e-12);
  EXPECT_GT(least, 0.0);  // the smaller pair costs more for sure, though neither cost is known so well
  EXPECT_LT(change.trial_per_1000_km.low, change.base_per_1000_km.high);
}

TEST(CostsAfter, ScaleWithPricesAndTakeOthers) {
  const Machine machine = roomy_trail_bike();
  const Comparison comparison =
      compare(machine, on_sprockets(machine, 14, 43, 106), on_sprockets(machine, 13, 40, 104));
  DriveCosts dear = drive();
  for (CostPart* one : {&dear.chain, &dear.front, &dear.rear}) one->price = Band<double>::exactly(2.0 * one->price.low);
  const CostChange once = costs_after(comparison, drive()), twice = costs_after(comparison, dear);
  EXPECT_NEAR(twice.difference.nominal, 2.0 * once.difference.nominal, 1e-12);
  const CostChange free = costs_after(comparison, drive(), {.rear = Band<double>::exactly(0.0)});
  EXPECT_NEAR(once.trial_per_1000_km.nominal - free.trial_per_1000_km.nominal,
              45.0 / (25.0 * (1.0 + comparison.wear.rear_life_change.nominal)), 1e-12);
}

TEST(CostsAfter, SayWhatIsWrongAndWhere) {
  const Machine machine = roomy_trail_bike();
  const Comparison comparison = compare(machine, machine.stock(), machine.stock());
  DriveCosts wrong = drive();
  wrong.front.price = Band<double>::exactly(-1.0);
  const auto refused = try_costs_after(comparison, wrong);
  ASSERT_FALSE(refused);
  EXPECT_EQ(std::string(refused.error().what()).rfind("base: front: price is -1", 0), 0u) << refused.error().what();
  EXPECT_FALSE(try_costs_after(comparison, drive(), {.chain = Band<double>::exactly(1e13)}));
  EXPECT_FALSE(try_costs_after(comparison, drive(), {}, 0.5));
}

TEST(CostsAfter, NeedAChainThatHasRoomToGrow) {
  const Machine machine = roomy_trail_bike();
  // So long a chain that the axle stands behind the adjuster from the start.
  const layshaft::Setup stock = on_sprockets(machine, 12, 47, 108), loose = on_sprockets(machine, 12, 47, 120);
  ASSERT_LT(appraise(machine, loose).chain().wear_room.nominal, 0.0);
  const auto text = [&](const layshaft::Setup& base, const layshaft::Setup& trial) {
    const auto told = try_costs_after(compare(machine, base, trial), drive());
    return told ? std::string() : std::string(told.error().what());
  };
  EXPECT_EQ(text(loose, stock), "base: the adjuster leaves the chain no room to grow");
  EXPECT_EQ(text(stock, loose), "trial: the adjuster leaves the chain no room to grow");
  EXPECT_EQ(text(stock, stock), "");
}

// A chain climbs off a sprocket of 120 teeth at 2/120, less than the maker's 2 %, also where that is the front one.
TEST(CostsAfter, TakeTheLimitOfTheLargerSprocket) {
  MachineParts parts = cargo_cycle_parts();
  parts.adjuster = Adjuster(800_mm, 900_mm);
  const Machine cycle(parts);
  const auto on = [&](int front, int rear) {
    return with(cycle.stock(), [&](SetupParts& of) {
      of.front = Teeth(front);
      of.rear = Teeth(rear);
    });
  };
  for (const auto& [front, rear] : {std::pair(120, 18), std::pair(18, 120)}) {
    const Comparison comparison = compare(cycle, on(36, 18), on(front, rear));
    const Band<double> life = *try_chain_life_change(comparison);
    const double grows = comparison.wear.chain_stretch_change.nominal;
    EXPECT_NEAR(life.nominal, (2.0 / 120.0) / 0.02 / (1.0 + grows) - 1.0, 1e-12) << front;
  }
}

}  // namespace
