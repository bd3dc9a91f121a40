// SPDX-License-Identifier: MIT
#include <layshaft/setup/wear_change.hpp>

#include "machines.hpp"

#include <layshaft/setup/comparison.hpp>

#include <gtest/gtest.h>

#include <cmath>
#include <optional>

namespace {
using namespace layshaft_test;

// Two ways to one ratio: 13/40 against 14/43 at the same thrust, computed: tension +7.5 %, loss +7.6 % of itself, chain
// stretch about +9.7 % on 104 and 106 links.
TEST(WearChange, TellsTwoWaysToOneRatioApart) {
  const Machine machine = roomy_trail_bike();
  const WearChange change =
      compare(machine, on_sprockets(machine, 14, 43, 106), on_sprockets(machine, 13, 40, 104)).wear;
  EXPECT_NEAR(change.chain_tension_change.nominal, 0.075, 0.0005);
  EXPECT_NEAR(change.loss_change.nominal, 0.0765, 0.0005);
  EXPECT_NEAR(change.chain_stretch_change.nominal, 0.097, 0.0005);
  EXPECT_NEAR(change.front_contacts_change.nominal, (40.0 / 13.0) / (43.0 / 14.0) - 1.0, 1e-12);
  EXPECT_GT(change.front_tooth_change.nominal, 0.15);
  EXPECT_GT(change.rear_tooth_change.nominal, 0.15);
  EXPECT_GT(change.front_tooth_change.width(), 0.0);
  EXPECT_LT(change.front_tooth_change.width(), 0.05);
}

// A tooth's wear and a sprocket's life by hand, as far as they do not cancel. A tooth wears with how often it meets the
// chain over a distance, with the pull, which goes with the rear sprocket's lever, with the share of it that the first
// tooth in mesh takes, and with how far the roller slides, which goes with the pitch angle. Rollers press midway
// between the limits of ANSI B29.1, 17 - 64/N and (from memory) 35 - 120/N degrees. What a tooth may lose goes with its
// thickness at the pitch circle: what the rollers beside it leave, 10.16 mm thick on a 520 (the source is that of its
// series).
TEST(WearChange, TellsFrontTeethFromRearOnes) {
  const auto first_share = [](double teeth) {
    const double pressing = 0.5 * (17.0 - 64.0 / teeth + 35.0 - 120.0 / teeth) * pi / 180.0, turns = 2.0 * pi / teeth;
    return std::sin(turns) / std::sin(pressing + turns);
  };
  const auto rear_wear = [&](double rear) { return std::sin(pi / rear) * first_share(rear) / rear; };
  const auto front_wear = [&](double front, double rear) {
    return rear / front * std::sin(pi / rear) * first_share(front) / front;
  };
  const auto thick = [](double teeth) {
    const double diameter = 15.875 / std::sin(pi / teeth);
    return diameter * std::sin(pi / teeth - 2.0 * std::asin(10.16 / 2.0 / diameter));
  };
  const Machine machine = roomy_trail_bike();
  const WearChange change =
      compare(machine, on_sprockets(machine, 14, 43, 106), on_sprockets(machine, 13, 40, 104)).wear;
  const double front = front_wear(13, 40) / front_wear(14, 43), rear = rear_wear(40) / rear_wear(43);
  EXPECT_NEAR(change.front_tooth_change.nominal, front - 1.0, 1e-12);
  EXPECT_NEAR(change.rear_tooth_change.nominal, rear - 1.0, 1e-12);
  EXPECT_NEAR(change.front_life_change.nominal, thick(13) / thick(14) / front - 1.0, 1e-12);
  EXPECT_NEAR(change.rear_life_change.nominal, thick(40) / thick(43) / rear - 1.0, 1e-12);
}

// On equal teeth the rollers press alike, whatever the angle.
TEST(WearChange, IsSureOfTheSprocketThatStays) {
  const Machine machine = roomy_trail_bike();
  const auto change = [&](int front, int rear) {
    return compare(machine, machine.stock(), on_sprockets(machine, front, rear, 108)).wear;
  };
  const WearChange other_front = change(13, 47), other_rear = change(12, 45);
  EXPECT_EQ(other_front.rear_tooth_change, Band<double>::exactly(0.0));
  EXPECT_EQ(other_front.rear_life_change, Band<double>::exactly(0.0));
  EXPECT_GT(other_front.front_tooth_change.width(), 0.0);
  EXPECT_GT(other_front.front_life_change.width(), 0.0);
  // The front sprocket turns less often for a kilometre, and the chain pulls harder.
  const double front = 45.0 / 47.0 * (std::sin(pi / 45.0) / std::sin(pi / 47.0));
  EXPECT_NEAR(other_rear.front_tooth_change.nominal, front - 1.0, 1e-12);
  EXPECT_NEAR(other_rear.front_life_change.nominal, 1.0 / front - 1.0, 1e-12);
  EXPECT_EQ(other_rear.front_tooth_change.width(), 0.0);
  EXPECT_EQ(other_rear.front_life_change.width(), 0.0);
  EXPECT_GT(other_rear.rear_tooth_change.width(), 0.0);
}

TEST(WearChange, IsNoneAgainstItself) {
  const Machine machine = roomy_trail_bike();
  const WearChange change = compare(machine, machine.stock(), machine.stock()).wear;
  for (const Band<double>& one :
       {change.chain_stretch_change, change.front_tooth_change, change.rear_tooth_change, change.loss_change,
        change.chain_tension_change, change.front_life_change, change.rear_life_change})
    EXPECT_EQ(one, Band<double>::exactly(0.0));
}

TEST(WearChange, CountsMaterialsWhereBothAreStated) {
  const Machine machine = roomy_trail_bike();
  const auto of = [&](std::optional<SprocketMaterial> rear) {
    return with(machine.stock(), [&](SetupParts& parts) { parts.rear_material = rear; });
  };
  const auto change = [&](std::optional<SprocketMaterial> base, std::optional<SprocketMaterial> trial) {
    return compare(machine, of(base), of(trial)).wear.rear_tooth_change;
  };
  const Band<double> softer = change(SprocketMaterial::hardened_steel, SprocketMaterial::aluminium_7000);
  EXPECT_GT(softer.low, 1.0);  // more than twice as fast, at the least
  EXPECT_GT(softer.width(), 0.5);
  EXPECT_EQ(change(SprocketMaterial::steel, SprocketMaterial::steel), Band<double>::exactly(0.0));
  EXPECT_EQ(change({}, SprocketMaterial::aluminium_7000), Band<double>::exactly(0.0));
  EXPECT_EQ(change(SprocketMaterial::aluminium_7000, {}), Band<double>::exactly(0.0));
}

// On one chain teeth are as thick but for a hair; so sprockets last as much longer as their teeth wear slower.
TEST(WearChange, TellsLivesByTheWearOfTeeth) {
  const Machine machine = roomy_trail_bike();
  const WearChange change =
      compare(machine, on_sprockets(machine, 14, 43, 106), on_sprockets(machine, 13, 40, 104)).wear;
  EXPECT_NEAR((1.0 + change.front_life_change.nominal) * (1.0 + change.front_tooth_change.nominal), 1.0, 0.005);
  EXPECT_NEAR((1.0 + change.rear_life_change.nominal) * (1.0 + change.rear_tooth_change.nominal), 1.0, 0.005);
  EXPECT_LT(change.front_life_change.high, 0.0);
}

TEST(WearChange, CountsAssumedFactorsOfSealsWhereTheyDiffer) {
  const Machine machine = roomy_trail_bike();
  const auto sealed = [&](ChainSeal seal) {
    return with(machine.stock(), [&](SetupParts& parts) { parts.chain_made.seal = seal; });
  };
  const auto change = [&](ChainSeal base, ChainSeal trial) {
    return compare(machine, sealed(base), sealed(trial)).wear.chain_stretch_change;
  };
  EXPECT_EQ(change(ChainSeal::o_ring, ChainSeal::o_ring), Band<double>::exactly(0.0));
  const Band<double> factor = seal_life_factor(ChainSeal::o_ring), slower = change(ChainSeal::none, ChainSeal::o_ring);
  EXPECT_NEAR(slower.nominal, 1.0 / factor.nominal - 1.0, 1e-12);
  EXPECT_NEAR(slower.low, 1.0 / factor.high - 1.0, 1e-12);
  EXPECT_NEAR(slower.high, 1.0 / factor.low - 1.0, 1e-12);
  EXPECT_LT(change(ChainSeal::o_ring, ChainSeal::shaped).low, 0.0);
  EXPECT_GT(change(ChainSeal::o_ring, ChainSeal::shaped).high, 0.0);  // assumptions settle nothing
}

}  // namespace
