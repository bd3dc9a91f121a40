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

// A tread tells the height worn off; of a measured rollout it only tells what is left.
TEST(Setup, TakesTheWearFromATread) {
  const Tread tread({.new_depth = 12_mm, .depth = 9_mm});
  SetupParts parts{.front = 12_teeth, .rear = 47_teeth, .tyre = "110/100-18"_tyre};
  parts.tread = tread;
  EXPECT_EQ(Setup::make(parts)->tread_worn(), tread.worn());
  SetupParts twice = parts;
  twice.tread_worn = 3_mm;
  EXPECT_EQ(std::string(Setup::make(twice).error().what()),
            "tread tells the height worn off already: state no tread_worn beside it");
  SetupParts rolled = parts;
  rolled.circumference = Band<Length>::exactly(2_m);
  EXPECT_EQ(Setup::make(rolled)->tread_worn(), 0_mm);
  EXPECT_EQ(Setup::make(rolled)->tread(), tread);
  SetupParts bald = parts;
  bald.tread = Tread({.new_depth = 80_mm, .depth = 1_mm});
  EXPECT_TRUE(std::string(Setup::make(bald).error().what()).starts_with("height worn off the tread is 79 mm; expected"))
      << Setup::make(bald).error().what();
}

Result<Setup> of_worn(Length tread_worn) {
  return Setup::make({.front = 12_teeth, .rear = 47_teeth, .tyre = "110/100-18"_tyre, .tread_worn = tread_worn});
}

TEST(Setup, TakesNoMoreTreadWornThanHalfTheSection) {
  // The smallest tyre of the marking stands 0.97 · 110 mm high on its rim.
  const Length most = 0.25 * ("110/100-18"_tyre.overall_diameter().low - "110/100-18"_tyre.rim_diameter());
  EXPECT_NEAR(most / units::mm, 0.97 * 55.0, 1e-12);
  for (const Length& good : {Length(), 0.1_mm, 8_mm, most}) {
    ASSERT_TRUE(of_worn(good)) << to_text(good);
    EXPECT_EQ(of_worn(good)->tread_worn(), good);
  }
  for (const double bad :
       {-0.001, -std::numeric_limits<double>::denorm_min(), most.value() * 1.0000001, 1.0, nan, infinity, -infinity}) {
    const auto setup = of_worn(Length::from_value(bad));
    ASSERT_FALSE(setup) << bad;
    EXPECT_EQ(setup.error().kind(), ErrorKind::range);
    EXPECT_TRUE(std::string(setup.error().what()).starts_with("tread_worn is ")) << setup.error().what();
  }
}

TEST(Setup, TellsHowMuchTreadMayBeWorn) {
  EXPECT_STREQ(of_worn(60_mm).error().what(),
               "tread_worn is 60 mm; expected 0 mm to 53.35 mm, half the section's height");  // 0.97 · 110 / 2
  const auto rounded = Setup::make({.front = 12_teeth, .rear = 47_teeth, .tyre = "90/85-18"_tyre, .tread_worn = 40_mm});
  ASSERT_FALSE(rounded);
  EXPECT_EQ(rounded.error().expected(), "0 mm to 37.1 mm, half the section's height");  // 0.97 · 76.5 / 2 = 37.1025
}

TEST(Setup, TakesNoTreadWornBesideAMeasuredCircumference) {
  const SetupParts measured{.front = 12_teeth, .rear = 47_teeth, .circumference = Band<Length>::exactly(2_m)};
  EXPECT_TRUE(Setup::make(measured));
  for (const double worn : {0.003, -0.003, nan, infinity}) {
    SetupParts parts = measured;
    parts.tread_worn = Length::from_value(worn);
    const auto setup = Setup::make(parts);
    ASSERT_FALSE(setup) << worn;
    EXPECT_EQ(setup.error().kind(), ErrorKind::value);
    EXPECT_STREQ(setup.error().what(),
                 "a measured circumference has the tread's wear in it already: state no tread_worn beside it");
    parts.tyre = "110/100-18"_tyre;  // the measurement overrides the marking
    EXPECT_FALSE(Setup::make(parts)) << worn;
  }
}

TEST(Setup, TakesADriveEfficiencyFromOneHalfToOne) {
  const auto of_efficiency = [](const Band<double>& efficiency) {
    return Setup::make(
        {.front = 12_teeth, .rear = 47_teeth, .tyre = "110/100-18"_tyre, .drive_efficiency = efficiency});
  };
  EXPECT_FALSE(of_worn(8_mm)->drive_efficiency());
  for (const Band<double>& good :
       {Band<double>{0.5, 0.9, 1.0}, Band<double>::exactly(0.5), Band<double>::exactly(1.0)}) {
    ASSERT_TRUE(of_efficiency(good));
    EXPECT_EQ(of_efficiency(good)->drive_efficiency(), good);
  }
  for (const double bad : {0.0, 0.4999, 1.0001, -0.9, 95.0, nan, infinity, -infinity})
    for (const Band<double>& band : {Band<double>::exactly(bad), Band<double>{bad, 0.9, 0.95},
                                     Band<double>{0.9, bad, 0.95}, Band<double>{0.9, 0.95, bad}}) {
      const auto setup = of_efficiency(band);
      ASSERT_FALSE(setup) << bad;
      EXPECT_EQ(setup.error().expected(), "0.5 to 1");
      EXPECT_TRUE(std::string(setup.error().what()).starts_with("drive_efficiency is ")) << setup.error().what();
    }
  EXPECT_FALSE(of_efficiency({0.97, 0.95, 0.98}));
}

}  // namespace
