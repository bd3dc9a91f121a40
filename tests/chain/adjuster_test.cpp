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

TEST(Adjuster, TakesBothEndsOfItsRangeAndNothingBeyond) {
  const auto beyond = [](Length length) { return Length::from_value(std::nextafter(length.value(), HUGE_VAL)); };
  const auto below = [](Length length) { return Length::from_value(std::nextafter(length.value(), -HUGE_VAL)); };
  EXPECT_TRUE(Adjuster::make(1_mm, 1_mm, 0.25_mm));
  EXPECT_TRUE(Adjuster::make(100_m, 100_m, 25_m));
  EXPECT_FALSE(Adjuster::make(below(1_mm), 1_mm));
  EXPECT_FALSE(Adjuster::make(600_mm, beyond(100_m)));
  EXPECT_FALSE(Adjuster::make(beyond(100_m), beyond(100_m)));
  EXPECT_FALSE(Adjuster::make(600_mm, below(600_mm)));
  EXPECT_FALSE(Adjuster::make(600_mm, 640_mm, below(0_mm)));
  EXPECT_FALSE(Adjuster::make(600_mm, 640_mm, beyond(0.25 * 600_mm)));
  for (const double bad : {std::nan(""), HUGE_VAL, -HUGE_VAL}) {
    const Length length = Length::from_value(bad);
    EXPECT_FALSE(Adjuster::make(length, 640_mm));
    EXPECT_FALSE(Adjuster::make(600_mm, length));
    EXPECT_FALSE(Adjuster::make(600_mm, 640_mm, length));
    EXPECT_THROW(Adjuster(600_mm, 640_mm, length), RangeError);
  }
  EXPECT_STREQ(Adjuster::make(600_mm, 599_mm).error().what(), "centre_max is 599 mm; expected 600 mm to 100000 mm");
}

TEST(Adjuster, KeepsWhatItWasMadeOf) {
  const Adjuster adjuster(612_mm, 648_mm, 38_mm);
  EXPECT_EQ(adjuster.centre_min(), 612_mm);
  EXPECT_EQ(adjuster.centre_max(), 648_mm);
  EXPECT_EQ(adjuster.slack(), 38_mm);
  EXPECT_EQ(adjuster, *Adjuster::make(612_mm, 648_mm, 38_mm));
  EXPECT_NE(adjuster, Adjuster(612_mm, 648_mm));
  EXPECT_NE(adjuster, Adjuster(611_mm, 648_mm, 38_mm));
  EXPECT_NE(adjuster, Adjuster(612_mm, 649_mm, 38_mm));
  EXPECT_EQ(Adjuster(612_mm, 648_mm).slack(), 0_mm);
}

TEST(Adjuster, NamesTheForemostPlaceWhereThatIsTooFar) {
  EXPECT_TRUE(std::string_view(Adjuster::make(100.1_m, 100.2_m).error().what()).starts_with("centre_min"));
}

}  // namespace
