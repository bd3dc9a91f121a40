// SPDX-License-Identifier: MIT
#include <layshaft/core/unit_names.hpp>

#include <gtest/gtest.h>

#include <set>
#include <string_view>

namespace {
using namespace layshaft;

template <class Quantity>
void expect_good_names() {
  using Names = QuantityNames<Quantity>;
  std::set<std::string_view> spellings;
  bool si = false;
  for (const UnitName& unit : Names::units) {
    EXPECT_TRUE(spellings.insert(unit.name).second) << Names::name << ": " << unit.name << " stands twice";
    EXPECT_GT(unit.unit, 0.0) << unit.name;
    si = si || unit.unit == 1.0;
  }
  EXPECT_TRUE(si) << Names::name << " has no SI unit";
  const std::string_view example = Names::example;
  EXPECT_NE(spellings.count(example.substr(example.find(' ') + 1)), 0u) << example;
  EXPECT_EQ(example.substr(example.find(' ') + 1), Names::units[0].name) << example;
}

TEST(QuantityNames, HoldTheSiUnitAndEachSpellingOnce) {
  expect_good_names<Length>();
  expect_good_names<Area>();
  expect_good_names<Mass>();
  expect_good_names<Duration>();
  expect_good_names<Speed>();
  expect_good_names<Acceleration>();
  expect_good_names<Force>();
  expect_good_names<Torque>();
  expect_good_names<Power>();
  expect_good_names<Energy>();
  expect_good_names<Pressure>();
  expect_good_names<Density>();
  expect_good_names<LinearDensity>();
  expect_good_names<ForcePerSpeed>();
  expect_good_names<Angle>();
  expect_good_names<AngularSpeed>();
  expect_good_names<MomentOfInertia>();
  expect_good_names<Temperature>();
}

TEST(QuantityNames, AreThoseOfTheTypes) {
  static_assert(QuantityNames<Length>::name == "Length");
  static_assert(QuantityNames<AngularSpeed>::name == "AngularSpeed");
  static_assert(QuantityNames<Length>::units[0].unit == units::mm.value());
  static_assert(QuantityNames<AngularSpeed>::units[0].unit == units::rpm.value());
}

}  // namespace
