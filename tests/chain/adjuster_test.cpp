// SPDX-License-Identifier: MIT
#include <layshaft/chain/adjuster.hpp>

#include <gtest/gtest.h>

#include <cmath>
#include <string_view>

namespace {
using namespace layshaft;

TEST(Adjuster, NamesThePartThatIsOutOfRange) {
  const double nan = std::nan("");
  EXPECT_TRUE(Adjuster::make(600_mm, 600_mm));
  EXPECT_TRUE(Adjuster::make(600_mm, 640_mm, 150_mm));
  const auto starts = [](const Result<Adjuster>& result, std::string_view part) {
    return !result && std::string_view(result.error().what()).starts_with(part);
  };
  EXPECT_TRUE(starts(Adjuster::make(0_mm, 640_mm), "centre_min"));
  EXPECT_TRUE(starts(Adjuster::make(nan * units::mm, 640_mm), "centre_min"));
  EXPECT_TRUE(starts(Adjuster::make(600_mm, 599_mm), "centre_max"));
  EXPECT_TRUE(starts(Adjuster::make(600_mm, 101_m), "centre_max"));
  EXPECT_TRUE(starts(Adjuster::make(600_mm, 640_mm, -1_mm), "slack"));
  EXPECT_TRUE(starts(Adjuster::make(600_mm, 640_mm, 151_mm), "slack"));
  EXPECT_THROW(Adjuster(600_mm, 599_mm), RangeError);
}

TEST(Adjuster, KeepsWhatItWasMadeOf) {
  const Adjuster adjuster(612_mm, 648_mm, 38_mm);
  EXPECT_EQ(adjuster.centre_min(), 612_mm);
  EXPECT_EQ(adjuster.centre_max(), 648_mm);
  EXPECT_EQ(adjuster.slack(), 38_mm);
  EXPECT_EQ(adjuster, *Adjuster::make(612_mm, 648_mm, 38_mm));
  EXPECT_NE(adjuster, Adjuster(612_mm, 648_mm));
  EXPECT_EQ(Adjuster(612_mm, 648_mm).slack(), 0_mm);
}

}  // namespace
