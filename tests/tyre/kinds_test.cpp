// SPDX-License-Identifier: MIT
#include <layshaft/tyre/kinds.hpp>

#include <gtest/gtest.h>

namespace {
using namespace layshaft;

static_assert(to_string(TyreNotation::metric) == "metric");  // known to the compiler too

TEST(TyreKinds, HaveAWordEach) {
  EXPECT_EQ(to_string(TyreNotation::metric), "metric");
  EXPECT_EQ(to_string(TyreNotation::code), "code");
  EXPECT_EQ(to_string(TyreNotation::lettered), "lettered");
  EXPECT_EQ(to_string(TyreNotation::flotation), "flotation");
  EXPECT_EQ(to_string(TyreNotation::cycle), "cycle");
  EXPECT_EQ(to_string(TyreVehicle::unmarked), "unmarked");
  EXPECT_EQ(to_string(TyreVehicle::passenger), "passenger");
  EXPECT_EQ(to_string(TyreVehicle::light_truck), "light truck");
  EXPECT_EQ(to_string(TyreVehicle::commercial), "commercial");
  EXPECT_EQ(to_string(TyreVehicle::all_terrain), "all-terrain");
  EXPECT_EQ(to_string(TyreConstruction::diagonal), "diagonal");
  EXPECT_EQ(to_string(TyreConstruction::bias_belted), "bias-belted");
  EXPECT_EQ(to_string(TyreConstruction::radial), "radial");
  EXPECT_EQ(to_string(TyreUse::road), "road");
  EXPECT_EQ(to_string(TyreUse::special), "special");
  EXPECT_EQ(to_string(TyreUse::snow), "snow");
  EXPECT_EQ(to_string(TyreTube::unmarked), "unmarked");
  EXPECT_EQ(to_string(TyreTube::tubeless), "tubeless");
  EXPECT_EQ(to_string(TyreTube::tube), "tube");
}

}  // namespace
