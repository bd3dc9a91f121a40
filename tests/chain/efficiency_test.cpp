// SPDX-License-Identifier: MIT
#include <layshaft/chain/efficiency.hpp>

#include <gtest/gtest.h>

namespace {
using namespace layshaft;

// From memory and by common practice: a copy of the assumptions, against slips.
TEST(JointResistance, IsWhatWasAssumedOfEachKindOfChain) {
  for (const ChainSeal seal : chain_seals)
    EXPECT_EQ(joint_resistance(seal).friction, (Band<double>{0.05, 0.10, 0.15})) << to_string(seal);
  EXPECT_EQ(joint_resistance(ChainSeal::none).seal_drag, Band<Torque>{});
  EXPECT_EQ(joint_resistance(ChainSeal::o_ring).seal_drag, (Band<Torque>{0.005_Nm, 0.04_Nm, 0.12_Nm}));
  EXPECT_EQ(joint_resistance(ChainSeal::shaped).seal_drag, (Band<Torque>{0.003_Nm, 0.02_Nm, 0.08_Nm}));
  EXPECT_EQ(joint_resistance(static_cast<ChainSeal>(99)).seal_drag, Band<Torque>{});  // no kind of seal drags
}

}  // namespace
