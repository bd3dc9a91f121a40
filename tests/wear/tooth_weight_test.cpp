// SPDX-License-Identifier: MIT
#include <layshaft/wear/tooth_weight.hpp>

#include <layshaft/core/watch.hpp>
#include <layshaft/wear/better_hunting.hpp>

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

TEST(Material, StandsForEachWord) {
  for (const SprocketMaterial kind : sprocket_materials) {
    EXPECT_EQ(material(kind).kind, kind);
    EXPECT_TRUE(well_formed(material(kind).hardness));
    EXPECT_EQ(material(kind).source.certainty, Certainty::from_memory);
    EXPECT_FALSE(to_string(kind).empty());
  }
}

// A club's published example: 96 links meet the same tooth again after 5 passes on 15 teeth, after 7 on 14.
TEST(Hunting, RanksByEvennessNotByPeriodAlone) {
  EXPECT_EQ(hunting(15_teeth, 96_links).passes, 5);
  EXPECT_EQ(hunting(14_teeth, 96_links).passes, 7);
  EXPECT_GT(hunting(15_teeth, 96_links).evenness, hunting(14_teeth, 96_links).evenness);
}

TEST(BetterHunting, FindsOnlyPairsThatHuntBetterNearby) {
  const auto pairs = better_hunting(14_teeth, 42_teeth, 112_links);
  ASSERT_FALSE(pairs.empty());
  const double own = hunting(14_teeth, 112_links).evenness * hunting(42_teeth, 112_links).evenness;
  for (std::size_t i = 0; i < pairs.size(); ++i) {
    EXPECT_GT(pairs[i].evenness(), own);
    EXPECT_LE(std::fabs(pairs[i].ratio_change), 0.03);
    if (i > 0) {
      EXPECT_LE(pairs[i].evenness(), pairs[i - 1].evenness());
    }
  }
  EXPECT_TRUE(better_hunting(13_teeth, 47_teeth, 110_links).empty());  // already even: primes
  EXPECT_FALSE(try_better_hunting(14_teeth, 42_teeth, 112_links, 0.6));
  EXPECT_FALSE(try_better_hunting(14_teeth, 42_teeth, 112_links, 0.03, 0));
}

}  // namespace
