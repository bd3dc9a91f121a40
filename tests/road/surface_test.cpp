// SPDX-License-Identifier: MIT
#include <layshaft/road/surface.hpp>

#include <gtest/gtest.h>
#include <reference/csv.hpp>

#include <algorithm>
#include <iterator>
#include <string>
#include <string_view>

namespace {
using namespace layshaft;
using layshaft_test::number;

TEST(Surface, HasARowForEachKindInRisingOrder) {
  for (const SurfaceKind kind :
       {SurfaceKind::asphalt, SurfaceKind::gravel, SurfaceKind::loose_gravel, SurfaceKind::field, SurfaceKind::sand}) {
    const Surface& row = surface(kind);
    EXPECT_EQ(row.kind, kind);
    EXPECT_TRUE(well_formed(row.rolling_coefficient) && well_formed(row.grip) && well_formed(row.driving_slip));
    EXPECT_GT(row.rolling_coefficient.low, 0.0);
    EXPECT_LT(row.driving_slip.high, 1.0);
    EXPECT_FALSE(to_string(kind).empty());
    EXPECT_EQ(row.grip_source.certainty, Certainty::from_memory);  // and says so
    EXPECT_NE(row.rolling_source.certainty, Certainty::published);
  }
  EXPECT_EQ(surface(SurfaceKind::field).rolling_source.certainty, Certainty::from_memory);
}

// Rolling by rows of rolling_resistance.csv: low, nominal, high; grip and slip from memory, kept so that none changes
// unseen.
TEST(Surface, HasTheFiguresThatWereChosen) {
  const struct {
    SurfaceKind kind;
    Band<double> rolling, grip, slip;
  } table[] = {
      {SurfaceKind::asphalt, {0.01, 0.02, 0.025}, {0.6, 0.9, 1.1}, {0.0, 0.02, 0.05}},
      {SurfaceKind::gravel, {0.01, 0.02, 0.04}, {0.4, 0.55, 0.7}, {0.01, 0.05, 0.1}},
      {SurfaceKind::loose_gravel, {0.04, 0.06, 0.08}, {0.3, 0.45, 0.6}, {0.03, 0.1, 0.2}},
      {SurfaceKind::field, {0.08, 0.1, 0.35}, {0.25, 0.45, 0.6}, {0.03, 0.12, 0.25}},
      {SurfaceKind::sand, {0.1, 0.2, 0.4}, {0.2, 0.4, 0.6}, {0.05, 0.2, 0.4}},
  };
  for (const auto& [kind, rolling, grip, slip] : table) {
    EXPECT_EQ(surface(kind).rolling_coefficient, rolling) << to_string(kind);
    EXPECT_EQ(surface(kind).grip, grip) << to_string(kind);
    EXPECT_EQ(surface(kind).driving_slip, slip) << to_string(kind);
  }
}

TEST(Surface, RollsHarderTheSofterItIs) {
  for (std::size_t i = 1; i < std::size(surfaces); ++i) {
    EXPECT_LE(surfaces[i - 1].rolling_coefficient.nominal, surfaces[i].rolling_coefficient.nominal);
    EXPECT_LE(surfaces[i - 1].driving_slip.nominal, surfaces[i].driving_slip.nominal);
  }
}

// Every figure of a band is one that a row of the collected tables prints.
TEST(Surface, HasNoRollingCoefficientThatNoTablePrints) {
  const auto rows = layshaft_test::read_csv("rolling_resistance.csv");
  const auto printed = [&](double figure) {
    return std::any_of(rows.begin(), rows.end(), [&](const auto& row) {
      return number(row.at("c_lo")) == figure || number(row.at("c_hi")) == figure ||
             row.at("source").find("mode " + std::string(figure == 0.02 ? "0.02" : "none")) != std::string::npos;
    });
  };
  for (const Surface& row : surfaces)
    for (const Corner corner : corners)
      EXPECT_TRUE(printed(row.rolling_coefficient.at(corner)))
          << to_string(row.kind) << " " << row.rolling_coefficient.at(corner);
}

// The bands hold what the tables give for that ground: asphalt and concrete, rolled gravel, loose gravel, sand, field.
TEST(Surface, HoldsWhatTheTablesGiveForPneumaticTyres) {
  const auto rows = layshaft_test::read_csv("rolling_resistance.csv");
  const auto holds = [&](SurfaceKind kind, std::string_view vehicle, std::string_view ground) {
    for (const auto& row : rows) {
      if (row.at("vehicle_or_tyre") != vehicle || row.at("surface") != ground) continue;
      const Band<double>& band = surface(kind).rolling_coefficient;
      EXPECT_TRUE(band.contains(number(row.at("c_lo"))) && band.contains(number(row.at("c_hi")))) << ground;
      return;
    }
    ADD_FAILURE() << "no row " << ground;
  };
  holds(SurfaceKind::asphalt, "pneumatic tyre", "new asphalt/concrete");
  holds(SurfaceKind::asphalt, "pneumatic tyre", "worn asphalt/concrete");
  holds(SurfaceKind::asphalt, "motorcycle (life-cycle model)", "road");
  holds(SurfaceKind::gravel, "pneumatic tyre", "rolled new gravel");
  holds(SurfaceKind::gravel, "pneumatic tyre", "loose worn gravel");
  holds(SurfaceKind::gravel, "pneumatic tyre", "dry firm well-packed gravel");
  holds(SurfaceKind::loose_gravel, "pneumatic tyre", "loose worn gravel");
  holds(SurfaceKind::loose_gravel, "pneumatic tyre", "wet loose gravel");
  holds(SurfaceKind::field, "pneumatic tyre", "medium hard soil");
  holds(SurfaceKind::field, "car tyre", "field");
  holds(SurfaceKind::sand, "pneumatic tyre", "sand");
  holds(SurfaceKind::sand, "car tyre", "loose sand");
}

}  // namespace
