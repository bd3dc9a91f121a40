// SPDX-License-Identifier: MIT
#include <layshaft/tyre/flotation.hpp>
#include <layshaft/tyre/size.hpp>

#include <gtest/gtest.h>
#include <core/formula_range.hpp>

#include <string_view>

namespace {
using namespace layshaft;
using layshaft_test::expect_range;

// Worked by hand: 31 in = 787.4 mm on a rim of 381 mm; least 381 + (774.7 − 381) × 0.97, greatest 381 + 406.4 × 1.07.
TEST(FlotationSize, HasTheDiameterOfItsMarking) {
  const TyreSize size("31x10.50R15LT");
  EXPECT_NEAR(size.overall_diameter().nominal / units::inch, 31.0, 1e-12);
  EXPECT_NEAR(size.overall_diameter().low / units::mm, 762.889, 1e-9);
  EXPECT_NEAR(size.overall_diameter().high / units::mm, 815.848, 1e-9);
  EXPECT_NEAR(TyreSize("31x10.50R15LT", TyreUse::special).overall_diameter().high / units::mm, 836.168, 1e-9);
  EXPECT_NEAR(size.section_width() / units::inch, 10.5, 1e-12);
  EXPECT_EQ(size.rim_diameter(), 381_mm);
  EXPECT_EQ(size.aspect_ratio(), std::nullopt);
}

TEST(FlotationSize, IsUpToSixtyInchesHighAndThirtyWide) {
  const auto higher = TyreSize::make("60.01x30-16");
  ASSERT_FALSE(higher);
  EXPECT_NE(std::string_view(higher.error().what()).find("an overall diameter that no tyre has"),
            std::string_view::npos);
  EXPECT_EQ(TyreSize("60x30-16").section_width(), 30.0 * units::inch);
  const auto wider = TyreSize::make("60x30.01-16");
  ASSERT_FALSE(wider);
  EXPECT_TRUE(std::string_view(wider.error().what()).find("a section width that no tyre has") !=
              std::string_view::npos);
}

TEST(FlotationSize, SaysThatItsLimitsAreFromMemory) {
  EXPECT_EQ(TyreSize("25x8-12").source(), flotation_source);
  EXPECT_EQ(flotation_source.certainty, Certainty::from_memory);
}

TEST(FlotationDiameter, StandsUnderTheMarking) {
  static_assert(flotation_undersize == 0.5 * units::inch);
  EXPECT_NEAR(flotation_diameter(31.0 * units::inch, flotation_undersize) / units::inch, 30.5, 1e-12);
  EXPECT_EQ(flotation_diameter(787.4_mm, Length()), 787.4_mm);
  EXPECT_TRUE(formula::flotation_diameter::in_range(787_mm, 0_mm));
  EXPECT_FALSE(formula::flotation_diameter::in_range(12.7_mm, 12.7_mm));
  expect_range<formula::flotation_diameter>("..", 787_mm, 12.7_mm);
  EXPECT_FALSE(formula::flotation_diameter::in_range(0_mm, 0_mm));
  EXPECT_FALSE(formula::flotation_diameter::in_range(787_mm, -1_mm));
}

}  // namespace
