// SPDX-License-Identifier: MIT
#include <layshaft/gearing/gearbox.hpp>

#include <gtest/gtest.h>

#include <functional>

namespace {
using namespace layshaft;

GearboxParts good() {
  return {.primary = GearPair{20_teeth, 61_teeth},
          .gears = {2.5, GearPair{18_teeth, 30_teeth}, 1.2},
          .idle = 1300_rpm,
          .rev_limit = 9000_rpm};
}

TEST(Gearbox, KeepsWhatItWasMadeOf) {
  const Gearbox gearbox(good());
  EXPECT_DOUBLE_EQ(gearbox.primary().ratio(), 61.0 / 20.0);
  EXPECT_EQ(gearbox.gears().size(), 3u);
  EXPECT_DOUBLE_EQ(gearbox.gears()[1].ratio(), 30.0 / 18.0);
  ASSERT_TRUE(gearbox.gears()[1].pair());
  EXPECT_EQ(gearbox.gears()[1].pair()->driven, 30_teeth);
  EXPECT_FALSE(gearbox.gears()[0].pair());
  EXPECT_EQ(gearbox.idle(), 1300_rpm);
  EXPECT_EQ(gearbox.lowest_pull(), 1300_rpm);  // idle where none was stated
  EXPECT_EQ(gearbox, Gearbox(good()));
}

TEST(Gearbox, NamesThePartThatIsOutOfRange) {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  const double infinity = std::numeric_limits<double>::infinity();
  struct Case {
    const char* part;
    std::function<void(GearboxParts&)> spoil;
  };
  const Case cases[] = {
      {"primary", [&](GearboxParts& p) { p.primary = 0.0; }},
      {"primary", [&](GearboxParts& p) { p.primary = 100.1; }},
      {"primary", [&](GearboxParts& p) { p.primary = nan; }},
      {"ratio of gear 2",
       [&](GearboxParts& p) {
         p.gears = {2.0, -1.0};
       }},
      {"ratio of gear 1", [&](GearboxParts& p) { p.gears = {infinity}; }},
      {"number of gears is 0", [&](GearboxParts& p) { p.gears = {}; }},
      {"number of gears is more than 16",
       [&](GearboxParts& p) {
         for (std::size_t i = 0; i <= most_gears; ++i) p.gears.push_back(1.0);
       }},
      {"idle", [&](GearboxParts& p) { p.idle = 0_rpm; }},
      {"idle", [&](GearboxParts& p) { p.idle = 9001_rpm; }},
      {"idle", [&](GearboxParts& p) { p.idle = nan * units::rpm; }},
      {"rev_limit", [&](GearboxParts& p) { p.rev_limit = 100001_rpm; }},
      {"rev_limit", [&](GearboxParts& p) { p.rev_limit = -9000_rpm; }},
      {"lowest_pull", [&](GearboxParts& p) { p.lowest_pull = 1299_rpm; }},
      {"lowest_pull", [&](GearboxParts& p) { p.lowest_pull = 9001_rpm; }},
  };
  for (const Case& one : cases) {
    GearboxParts parts = good();
    one.spoil(parts);
    const auto gearbox = Gearbox::make(parts);
    ASSERT_FALSE(gearbox) << one.part;
    EXPECT_EQ(gearbox.error().kind(), ErrorKind::range);
    EXPECT_TRUE(std::string_view(gearbox.error().what()).starts_with(one.part)) << gearbox.error().what();
    EXPECT_THROW(Gearbox{parts}, RangeError);
  }
}

TEST(Gearbox, HasNoPrimaryDriveUnlessItIsStated) {
  EXPECT_EQ(Gearbox({.gears = {2.5}, .idle = 40_rpm, .rev_limit = 120_rpm}).primary().ratio(), 1.0);
  static_assert(GearRatio().ratio() == 1.0);
  static_assert(GearRatio(GearPair{12_teeth, 33_teeth}).ratio() == 2.75);
}

TEST(Gearbox, TakesTheEndsOfItsRange) {
  GearboxParts parts = good();
  parts.primary = 0.01;
  parts.gears = {};
  for (std::size_t i = 0; i < most_gears; ++i) parts.gears.push_back(100.0);
  parts.idle = parts.rev_limit;
  parts.lowest_pull = parts.rev_limit;
  EXPECT_TRUE(Gearbox::make(parts));
}

TEST(Gearbox, RefusesWhatIsJustOutOfRange) {
  const auto refused = [](auto spoil, std::string_view expected) {
    GearboxParts parts = good();
    spoil(parts);
    const auto gearbox = Gearbox::make(parts);
    return !gearbox && gearbox.error().expected() == expected;
  };
  EXPECT_TRUE(refused([](GearboxParts& p) { p.primary = 0.00999; }, "0.01 to 100"));
  EXPECT_TRUE(refused([](GearboxParts& p) { p.gears = {0.00999}; }, "0.01 to 100"));
  EXPECT_TRUE(refused([](GearboxParts& p) { p.gears = {100.1}; }, "0.01 to 100"));
  EXPECT_TRUE(refused([](GearboxParts& p) { p.rev_limit = 0.999_rpm; }, "1 rpm to 100000 rpm"));
  GearboxParts slowest = good();
  slowest.idle = slowest.rev_limit = 1_rpm;
  EXPECT_TRUE(Gearbox::make(slowest));
  slowest.primary = 0.01;
  slowest.gears = {0.01};
  EXPECT_TRUE(Gearbox::make(slowest));
}

}  // namespace
