// SPDX-License-Identifier: MIT
#include <layshaft/wear/tooth_weight.hpp>

#include <layshaft/core/watch.hpp>

#include <gtest/gtest.h>

#include <cmath>
#include <optional>

namespace {
using namespace layshaft;

const ChainSeries series("520");
double front(int z1, int z2, std::optional<SprocketMaterial> of = {}, Corner hardness = Corner::nominal) {
  return detail::front_tooth_weight(Unwatched(), series, Teeth(z1), Teeth(z2), of, Corner::nominal, hardness);
}
double rear(int z2, std::optional<SprocketMaterial> of = {}) {
  return detail::rear_tooth_weight(Unwatched(), series, Teeth(z2), of, Corner::nominal, Corner::nominal);
}

TEST(ToothWeight, GoesWithMeetingsPullAndSliding) {
  // Half the hardness wears twice as fast; 14/40 meets each front tooth about three times as often as a rear one
  // (common practice, no source).
  EXPECT_NEAR(front_contacts(1_km, 2_m, 14_teeth, 40_teeth) / rear_contacts(1_km, 2_m), 40.0 / 14.0, 1e-12);
  EXPECT_GT(front(14, 40), 3.0 * rear(40));
  const double soft = rear(44, SprocketMaterial::aluminium_7000), hard = rear(44, SprocketMaterial::hardened_steel);
  const Pressure aluminium = material(SprocketMaterial::aluminium_7000).hardness.nominal;
  const Pressure steel = material(SprocketMaterial::hardened_steel).hardness.nominal;
  EXPECT_NEAR(soft / hard, steel / aluminium, 1e-12);
}

TEST(ToothWeight, IsLessOnLargerSprocketsOfOneRatio) {
  for (int step = 1; step <= 4; ++step) {
    EXPECT_LT(front(12 + step, 36 + 3 * step), front(11 + step, 33 + 3 * step));
    EXPECT_LT(rear(36 + 3 * step), rear(33 + 3 * step));
  }
}

TEST(ToothWearRuns, ShareWhatIsOfOneMaterialOrOneCount) {
  const auto runs = [](std::optional<SprocketMaterial> base, std::optional<SprocketMaterial> trial, bool equal) {
    return tooth_wear_runs(base, trial, equal).size();
  };
  EXPECT_EQ(runs({}, SprocketMaterial::steel, false), 3u);
  EXPECT_EQ(runs(SprocketMaterial::steel, SprocketMaterial::steel, false), 3u);
  EXPECT_EQ(runs(SprocketMaterial::steel, SprocketMaterial::steel, true), 1u);
  EXPECT_EQ(runs(SprocketMaterial::steel, SprocketMaterial::aluminium_7000, false), 9u);
  EXPECT_EQ(runs(SprocketMaterial::steel, SprocketMaterial::aluminium_7000, true), 5u);
}

}  // namespace
