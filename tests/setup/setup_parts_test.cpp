// SPDX-License-Identifier: MIT
#include "setup/machines.hpp"

#include <gtest/gtest.h>

#include <limits>
#include <string>

namespace {
using namespace layshaft;

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double infinity = std::numeric_limits<double>::infinity();

Result<Setup> of_circumference(const Band<Length>& circumference) {
  return Setup::make({.front = 12_teeth, .rear = 47_teeth, .circumference = circumference});
}

TEST(Setup, KeepsWhatItIsMadeOf) {
  const layshaft::Setup setup({.front = 12_teeth,
                               .rear = 47_teeth,
                               .tyre = "110/100-18"_tyre,
                               .chain = ChainSeries("520"),
                               .links = 108_links,
                               .front_tyre = "80/100-21"_tyre});
  EXPECT_EQ(setup.front(), 12_teeth);
  EXPECT_EQ(setup.rear(), 47_teeth);
  EXPECT_EQ(setup.tyre(), "110/100-18"_tyre);
  EXPECT_EQ(setup.chain(), ChainSeries("520"));
  EXPECT_EQ(setup.links(), 108_links);
  EXPECT_EQ(setup.front_tyre(), "80/100-21"_tyre);
  EXPECT_FALSE(setup.circumference());
  EXPECT_EQ(setup, layshaft::Setup(setup.parts()));
  EXPECT_FALSE(setup == layshaft_test::with(setup, [](SetupParts& parts) { parts.links = 110_links; }));
}

TEST(Setup, NeedsATyreOrAMeasuredCircumference) {
  const auto neither = Setup::make({.front = 12_teeth, .rear = 47_teeth});
  ASSERT_FALSE(neither);
  EXPECT_EQ(neither.error().kind(), ErrorKind::value);
  EXPECT_STREQ(neither.error().what(),
               "a set-up needs a tyre, or a measured circumference in its place; neither was stated");
  EXPECT_THROW(layshaft::Setup({.front = 12_teeth, .rear = 47_teeth}), Error);
}

TEST(Setup, TakesACircumferenceFrom200MillimetresTo5Metres) {
  for (const Length& good : {200.0_mm, 1500.0_mm, 5000.0_mm})
    EXPECT_TRUE(of_circumference(Band<Length>::exactly(good))) << to_text(good);
  for (const double bad : {0.0, -1.5, 0.1999, 5.0001, nan, infinity, -infinity}) {
    const auto length = Length::from_value(bad);
    for (const Band<Length>& band : {Band<Length>::exactly(length), Band<Length>{length, 1.5_m, 1.6_m},
                                     Band<Length>{1.4_m, length, 1.6_m}, Band<Length>{1.4_m, 1.5_m, length}}) {
      const auto setup = of_circumference(band);
      ASSERT_FALSE(setup) << bad;
      EXPECT_EQ(setup.error().kind(), ErrorKind::range);
      EXPECT_TRUE(std::string(setup.error().what()).starts_with("circumference is ")) << setup.error().what();
      EXPECT_EQ(setup.error().expected(), "200 mm to 5000 mm");
      EXPECT_THROW(layshaft::Setup({.front = 12_teeth, .rear = 47_teeth, .circumference = band}), RangeError);
    }
  }
  EXPECT_STREQ(of_circumference({1600_mm, 1500_mm, 1400_mm}).error().what(),
               "circumference is 1600 mm, 1500 mm, 1400 mm; expected low, nominal and high in rising order");
}

}  // namespace
