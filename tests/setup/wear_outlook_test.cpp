// SPDX-License-Identifier: MIT
#include <layshaft/setup/wear_outlook.hpp>

#include "machines.hpp"

#include <gtest/gtest.h>

#include <string>
#include <utility>

namespace {
using namespace layshaft_test;

TEST(WearOutlook, SaysWhereItsThrustComesFrom) {
  const Machine bare = roomy_trail_bike();
  EXPECT_EQ(wear_outlook(bare, bare.stock()).thrust_from, ThrustFrom::assumed);
  EXPECT_EQ(wear_outlook(bare, bare.stock()).thrust, (Band<Force>{40_N, 120_N, 300_N}));
  MachineParts parts = bare.parts();
  parts.road_load = RoadLoad::by_mass(212_kg);
  const Machine machine(parts);
  const WearOutlook road = wear_outlook(machine, machine.stock());
  EXPECT_EQ(road.thrust_from, ThrustFrom::road_load);
  EXPECT_EQ(road.thrust.nominal, machine.road_load()->resistance(60_kmh));
  const WearOutlook stated = wear_outlook(machine, machine.stock(), Band<Force>::exactly(90_N));
  EXPECT_EQ(stated.thrust_from, ThrustFrom::stated);
  EXPECT_GT(road.stretch_per_1000_km.high / road.stretch_per_1000_km.low, 100.0);  // decades
  EXPECT_NEAR(road.chain_life.nominal / 1000.0_km, road.limit.elongation / road.stretch_per_1000_km.nominal, 1e-12);
  EXPECT_GT(road.pitch_climb, 0_mm);
  EXPECT_FALSE(try_wear_outlook(machine, machine.stock(), Band<Force>::exactly(0_N)));
  EXPECT_FALSE(try_wear_outlook(machine, machine.stock(), {}, 0.2));
}

TEST(WearOutlook, TakesAGrowthThatWasMeasuredUpToATenth) {
  const Machine machine = roomy_trail_bike();
  const auto measured = [&](Band<double> rate) { return try_wear_outlook(machine, machine.stock(), {}, 0.02, rate); };
  EXPECT_TRUE(measured({0.05, 0.08, 0.1}));
  EXPECT_TRUE(measured({-0.1, 0.001, 0.1}));
  for (const Band<double>& bad : {Band<double>{0.05, 0.08, 0.1001}, {-0.1001, 0.001, 0.1}}) {
    const auto refused = measured(bad);
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.error().expected(), "-0.1 to 0.1");
    EXPECT_TRUE(std::string(refused.error().what()).starts_with("measured is ")) << refused.error().what();
  }
}

TEST(WearOutlook, IsTightenedByWhatWasMeasured) {
  const Machine machine = roomy_trail_bike();
  const WearOutlook assumed = wear_outlook(machine, machine.stock());
  const double grows = assumed.stretch_per_1000_km.nominal;
  const auto measured = [&](Band<double> rate) { return wear_outlook(machine, machine.stock(), {}, 0.02, rate); };
  const WearOutlook sure = measured({0.9 * grows, grows, 1.1 * grows});
  EXPECT_EQ(sure.stretch_per_1000_km, (Band<double>{0.9 * grows, grows, 1.1 * grows}));
  EXPECT_EQ(sure.chain_life.nominal, assumed.chain_life.nominal);
  EXPECT_NEAR(sure.chain_life.low / sure.chain_life.high, 0.9 / 1.1, 1e-12);
  // A scatter that leaves open whether it grows tells nothing of how long it may last.
  const WearOutlook unsure = measured({-grows, grows, 3.0 * grows});
  EXPECT_EQ(unsure.stretch_per_1000_km.low, assumed.stretch_per_1000_km.low);
  EXPECT_EQ(unsure.chain_life.high, assumed.chain_life.high);
  EXPECT_FALSE(try_wear_outlook(machine, machine.stock(), {}, 0.02, Band<double>{0.0, 0.1, 0.2}));
}

TEST(WearOutlook, IsOfTheSpeedThatACycleIsRiddenAt) {
  MachineParts parts = cargo_cycle_parts();
  parts.road_load = RoadLoad(RoadCoefficients{.constant = 8_N, .quadratic = 0.25_kg_per_m});
  const Machine cycle(parts);
  const WearOutlook outlook = wear_outlook(cycle, cycle.stock());
  EXPECT_EQ(outlook.thrust_from, ThrustFrom::road_load);
  EXPECT_EQ(outlook.thrust.nominal, cycle.road_load()->resistance(15_kmh));
  // 36/18: the limit is that of the larger sprocket, which is the front one.
  EXPECT_EQ(outlook.limit, stretch_limit(36_teeth, appraise(cycle, cycle.stock()).chain().wear_room.nominal));
}

// The larger of both, wherever it sits: 2/120 is less than the maker's 2 %.
TEST(WearOutlook, IsLimitedByTheLargerSprocket) {
  MachineParts parts = cargo_cycle_parts();
  parts.adjuster = Adjuster(800_mm, 900_mm);
  for (const auto& [front, rear] : {std::pair(120, 18), std::pair(18, 120)}) {
    const Machine cycle(parts);
    const WearOutlook outlook = wear_outlook(cycle, with(cycle.stock(), [&](SetupParts& of) {
                                               of.front = Teeth(front);
                                               of.rear = Teeth(rear);
                                             }));
    EXPECT_EQ(outlook.limit.kind, StretchLimitKind::sprocket) << front;
    EXPECT_NEAR(outlook.limit.elongation, 2.0 / 120.0, 1e-15) << front;
  }
}

TEST(WearOutlook, AssumesAThrustWhereTheWindPushes) {
  MachineParts parts = roomy_trail_bike().parts();
  parts.road_load = RoadLoad::by_mass(212_kg).in_wind(-150.0_kmh);
  const Machine machine(parts);
  ASSERT_LE(machine.road_load()->resistance_band(60_kmh).low, Force());
  const WearOutlook outlook = wear_outlook(machine, machine.stock());
  EXPECT_EQ(outlook.thrust_from, ThrustFrom::assumed);
  EXPECT_EQ(outlook.thrust, assumed_thrust);
}

TEST(WearOutlook, HasNoLifeForAChainWithoutRoom) {
  const Machine machine = trail_bike();
  const auto setup = with(machine.stock(), [](SetupParts& of) { of.links = 112_links; });
  ASSERT_LT(appraise(machine, setup).chain().wear_room.nominal, 0.0);
  const WearOutlook outlook = wear_outlook(machine, setup);
  EXPECT_EQ(outlook.limit.kind, StretchLimitKind::adjuster);
  EXPECT_LT(outlook.limit.elongation, 0.0);
  EXPECT_EQ(outlook.chain_life, Band<Length>());
  EXPECT_EQ(outlook.pitch_climb, Length());
}

// A growth that was measured below all that is assumed: the chain lasts at least as long as at the least that is.
TEST(WearOutlook, TakesNoChainToLastLongerThanAtTheLeastGrowthAssumed) {
  const Machine machine = roomy_trail_bike();
  const WearOutlook assumed = wear_outlook(machine, machine.stock());
  const double least = assumed.stretch_per_1000_km.low;
  const WearOutlook slow =
      wear_outlook(machine, machine.stock(), {}, 0.02, Band<double>{0.1 * least, 0.2 * least, 0.5 * least});
  EXPECT_EQ(slow.stretch_per_1000_km, (Band<double>{0.1 * least, 0.2 * least, 0.5 * least}));
  EXPECT_EQ(slow.chain_life, Band<Length>::exactly(assumed.chain_life.high));
}

TEST(WearOutlook, HandsTheErrorOfTheSetupThrough) {
  MachineParts parts = trail_bike_parts();
  parts.adjuster = Adjuster(619_mm, 627_mm, 40_mm);  // in which no even chain closes
  const Machine machine(parts);
  const auto refused = try_wear_outlook(machine, machine.stock());
  ASSERT_FALSE(refused);
  EXPECT_STREQ(refused.error().what(), try_appraise(machine, machine.stock()).error().what());
}

}  // namespace
