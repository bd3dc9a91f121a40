// SPDX-License-Identifier: MIT
#include <layshaft/wear/tooth_weight.hpp>

#include <layshaft/core/recorder.hpp>
#include <layshaft/core/watch.hpp>

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <optional>
#include <utility>

namespace {
using namespace layshaft;

const ChainSeries usual_series("520");
double front(int z1, int z2, std::optional<SprocketMaterial> of = {}, Corner hardness = Corner::nominal) {
  return detail::front_tooth_weight(Unwatched(), usual_series, Teeth(z1), Teeth(z2), of, Corner::nominal, hardness);
}
double rear(int z2, std::optional<SprocketMaterial> of = {}) {
  return detail::rear_tooth_weight(Unwatched(), usual_series, Teeth(z2), of, Corner::nominal, Corner::nominal);
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

// The middle of the tooth form's least, 17 - 64/N degrees, and greatest, 35 - 120/N, is 26 - 92/N, which ANSI B29.1 has
// as its average (from memory).
TEST(ToothWeight, PressesByTheAverageAngleOfTheToothForm) {
  constexpr double degree = std::numbers::pi / 180.0;
  for (const int teeth : {11, 14, 45}) {
    const double between = 360.0 / teeth;
    const std::pair<Corner, double> angles[] = {{Corner::low, 17.0 - 64.0 / teeth},
                                                {Corner::nominal, 26.0 - 92.0 / teeth},
                                                {Corner::high, 35.0 - 120.0 / teeth}};
    for (const auto& [corner, angle] : angles)
      EXPECT_NEAR(detail::greatest_tooth_force(Unwatched(), 1000_N, Teeth(teeth), corner).value(),
                  1000.0 * std::sin(between * degree) / std::sin((angle + between) * degree), 1e-9)
          << teeth << " " << int(corner);
  }
}

TEST(ToothWeight, GoesWithTheHardnessOfAStatedMaterialOnly) {
  const Band<Pressure>& hardness = material(SprocketMaterial::hardened_steel).hardness;
  ASSERT_LT(hardness.low, hardness.high);
  const double stated = front(14, 40, SprocketMaterial::hardened_steel), unstated = front(14, 40);
  for (const Corner corner : corners) {
    EXPECT_EQ(front(14, 40, {}, corner), unstated);
    EXPECT_NEAR(front(14, 40, SprocketMaterial::hardened_steel, corner) / stated,
                hardness.nominal / hardness.at(corner), 1e-12);
  }
}

TEST(ToothWeight, SaysWhereItsHardnessIsFrom) {
  const auto source = [](std::optional<SprocketMaterial> of) {
    const Working working = explain_over("wear", one_cause, [&](Recorder::Watch watch, Corner) {
      return detail::front_tooth_weight(watch, usual_series, Teeth(14), Teeth(40), of, Corner::nominal,
                                        Corner::nominal);
    });
    for (const Step& step : working.steps())
      if (step.name() == "hardness") return step.source();
    return Source{"no step of this name"};
  };
  EXPECT_EQ(source({}), reference_source);
  for (const SprocketMaterial of : {SprocketMaterial::steel, SprocketMaterial::aluminium_7000})
    EXPECT_EQ(source(of), material(of).source);
}

// The distance between the two points of the pitch circle that the rollers beside a tooth just reach, found by halving
// an arc, without a sine of the tooth's angle.
TEST(ToothThickness, IsWhatStandsBetweenTwoRollers) {
  for (const char* name : {"420", "520", "08B"})
    for (const int teeth : {11, 13, 16, 40, 60}) {
      const ChainSeries of(name);
      const Sprocket sprocket(of, Teeth(teeth));
      const double radius = 0.5 * sprocket.pitch_diameter().value(), roller = 0.5 * of.roller_diameter().value();
      double inside = 0.0, outside = 3.14159265358979 / teeth;  // angles from a roller's axis
      for (int i = 0; i < 100; ++i) {
        const double middle = 0.5 * (inside + outside);
        const double away = std::hypot(radius * std::cos(middle) - radius, radius * std::sin(middle));
        (away < roller ? inside : outside) = middle;
      }
      const double next = 2.0 * 3.14159265358979 / teeth;
      const double thickness = std::hypot(radius * (std::cos(next - inside) - std::cos(inside)),
                                          radius * (std::sin(next - inside) - std::sin(inside)));
      EXPECT_NEAR(tooth_thickness(sprocket.pitch_diameter(), of.roller_diameter(), Teeth(teeth)).value(), thickness,
                  1e-12);
      const Band<Length> deep = flank_wear_limit(sprocket);
      EXPECT_NEAR(deep.nominal.value(), thickness * 0.25, 1e-12);
      EXPECT_LT(deep.low, deep.nominal);
      EXPECT_LT(deep.nominal, deep.high);
    }
}

// On one chain the teeth are as thick but for a hair, so that a sprocket lasts longer as its teeth wear slower.
TEST(SprocketLife, GoesAgainstTheWearOfATooth) {
  const auto life = [](int teeth, double wears) {
    return detail::sprocket_life_weight(Unwatched(), Sprocket(usual_series, Teeth(teeth)), wears);
  };
  EXPECT_DOUBLE_EQ(life(13, 2.0), 0.5 * life(13, 1.0));
  EXPECT_NEAR(life(13, 1.0) / life(50, 1.0), 1.0, 0.03);
}

TEST(ToothWearRuns, ShareWhatIsOfOneMaterialOrOneCount) {
  const auto runs = [](std::optional<SprocketMaterial> base, std::optional<SprocketMaterial> trial, bool equal) {
    return tooth_wear_runs(base, trial, equal).size();
  };
  EXPECT_EQ(runs({}, SprocketMaterial::steel, false), 3u);
  EXPECT_EQ(runs(SprocketMaterial::steel, {}, false), 3u);
  EXPECT_EQ(runs(SprocketMaterial::steel, SprocketMaterial::steel, false), 3u);
  EXPECT_EQ(runs(SprocketMaterial::steel, SprocketMaterial::steel, true), 1u);
  EXPECT_EQ(runs(SprocketMaterial::steel, SprocketMaterial::aluminium_7000, false), 9u);
  EXPECT_EQ(runs(SprocketMaterial::steel, SprocketMaterial::aluminium_7000, true), 5u);
  // On equal teeth the angle stays where it is.
  for (const ToothWearCorners& at : tooth_wear_runs(SprocketMaterial::steel, SprocketMaterial::aluminium_7000, true))
    EXPECT_EQ(at.pressure, Corner::nominal);
  for (const ToothWearCorners& at : tooth_wear_runs({}, {}, true)) EXPECT_EQ(at.pressure, Corner::nominal);
}

// By hand: half the roller times the angle between two of 16 teeth, 22.5 degrees.
TEST(FlankSliding, IsTheRollersRimOverATooth) {
  EXPECT_NEAR(in(flank_sliding(10_mm, 16_teeth), units::mm), 1.9634954, 5e-8);
}

}  // namespace
