// SPDX-License-Identifier: MIT
#include <layshaft/tyre/kinds.hpp>

#include <gtest/gtest.h>

namespace {
using namespace layshaft;

TEST(TyreKinds, HaveAWordEach) {
  static_assert(to_string(TyreNotation::metric) == "metric");
  static_assert(to_string(TyreNotation::code) == "code");
  static_assert(to_string(TyreNotation::lettered) == "lettered");
  static_assert(to_string(TyreNotation::flotation) == "flotation");
  static_assert(to_string(TyreNotation::cycle) == "cycle");
  static_assert(to_string(TyreVehicle::unmarked) == "unmarked");
  static_assert(to_string(TyreVehicle::passenger) == "passenger");
  static_assert(to_string(TyreVehicle::light_truck) == "light truck");
  static_assert(to_string(TyreVehicle::commercial) == "commercial");
  static_assert(to_string(TyreVehicle::all_terrain) == "all-terrain");
  static_assert(to_string(TyreConstruction::diagonal) == "diagonal");
  static_assert(to_string(TyreConstruction::bias_belted) == "bias-belted");
  static_assert(to_string(TyreConstruction::radial) == "radial");
  static_assert(to_string(TyreUse::road) == "road");
  static_assert(to_string(TyreUse::special) == "special");
  static_assert(to_string(TyreUse::snow) == "snow");
  static_assert(to_string(TyreTube::unmarked) == "unmarked");
  static_assert(to_string(TyreTube::tubeless) == "tubeless");
  static_assert(to_string(TyreTube::tube) == "tube");
}

}  // namespace
