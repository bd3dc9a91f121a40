// SPDX-License-Identifier: MIT
#include <layshaft/setup/wear_outlook.hpp>

#include "machines.hpp"

#include <gtest/gtest.h>

namespace {
using namespace layshaft_test;

TEST(WearOutlook, SaysWhereItsThrustComesFrom) {
  const Machine bare = roomy_trail_bike();
  EXPECT_EQ(wear_outlook(bare, bare.stock()).thrust_from, ThrustFrom::assumed);
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

}  // namespace
