// SPDX-License-Identifier: MIT
#include <layshaft/road/explain.hpp>

#include <layshaft/road/drag_area.hpp>
#include <layshaft/show/working_text.hpp>

#include <gtest/gtest.h>
#include <core/workings.hpp>

#include <random>
#include <string>

namespace {
using namespace layshaft;
using namespace layshaft_test;

RoadLoad gravel() {
  return RoadLoad::from_parts({.mass = 220_kg,
                               .rolling_coefficient = surface(SurfaceKind::gravel).rolling_coefficient,
                               .drag_area = drag_area(DragKind::motorcycle).area,
                               .rolling_source = surface(SurfaceKind::gravel).rolling_source,
                               .drag_source = drag_area(DragKind::motorcycle).source});
}

TEST(RoadLoad, ExplainsItsNumbersToTheBit) {
  const RoadLoad blown(
      {.constant = 40_N, .linear = 0.8_N_per_mps, .quadratic = 0.3_kg_per_m, .mass = 200_kg, .head_wind = -(22_kmh)});
  for (const RoadLoad& road : {gravel(), RoadLoad::by_mass(220_kg), blown})
    for (const Slope& slope : {Slope(), Slope(0.08), Slope(-0.004)}) {
      const Working force = road.explain("resistance", {.speed = 50_kmh, .slope = slope});
      expect_sound(force);
      expect_no_idle_step(force);
      const Band<Force> band = road.resistance_band(50_kmh, slope);
      for (const Corner corner : corners) EXPECT_EQ(force.result().result(corner), Amount(band.at(corner)));
      EXPECT_FALSE(to_text(force, WorkingStyle()).empty());

      const RoadQuestion asked{.slope = slope, .mass = 225_kg, .start = 70_kmh, .end = 20_kmh};
      const Working time = road.explain("coast down time", asked);
      expect_sound(time);
      expect_no_idle_step(time);
      for (const Corner at : corners) {
        const Duration plain = coast_down_time(road, 225_kg, 70_kmh, 20_kmh, slope, at);
        bool told = false;
        for (const Corner corner : corners) told = told || time.result().result(corner) == Amount(plain);
        EXPECT_TRUE(told);
      }
    }
}

TEST(RoadLoad, GivesTheSameBitsWatchedOrNot) {
  std::mt19937_64 random(17);
  const auto between = [&](double low, double high) {
    return low + (high - low) * std::uniform_real_distribution<double>(0.0, 1.0)(random);
  };
  int timed = 0;
  for (int round = 0; round < 2000; ++round) {
    const RoadLoad road({.constant = between(0.0, 120.0) * units::N,
                         .linear = between(-1.0, 4.0) * units::N_per_mps,
                         .quadratic = between(0.0, 0.6) * units::kg_per_m,
                         .mass = between(80.0, 400.0) * units::kg,
                         .head_wind = round % 3 == 0 ? Speed() : between(-60.0, 60.0) * units::kmh});
    const Slope slope(round % 2 == 0 ? 0.0 : between(-0.04, 0.1));
    const Speed start = between(20.0, 150.0) * units::kmh, end = start * between(0.05, 0.98);
    EXPECT_EQ(road.explain("resistance", {.speed = start, .slope = slope}).result().result(),
              Amount(road.resistance(start, slope)));
    const auto time = try_coast_down_time(road, *road.mass(), start, end, slope);
    if (!time) continue;
    ++timed;
    EXPECT_EQ(road.explain("coast down time", {.slope = slope, .mass = road.mass(), .start = start, .end = end})
                  .result()
                  .result(),
              Amount(*time));
  }
  EXPECT_GT(timed, 1000);
}

TEST(RoadLoad, ShowsTheNumbersThatMultiplyOut) {
  const std::string text =
      to_text(gravel().explain("resistance", {.speed = 50_kmh, .slope = Slope(0.1)}), WorkingStyle());
  for (const char* part : {"km/h", "m/s2", "kg/m3", "m2", "deg", " N"})
    EXPECT_NE(text.find(part), std::string::npos) << part;
}

TEST(RoadLoad, SaysWhatTheNumberDependsOn) {
  EXPECT_FALSE(gravel().try_explain("resistance", {}));
  EXPECT_FALSE(gravel().try_explain("resistance", {.speed = -1.0 * units::kmh}));
  for (const RoadQuestion& open : {RoadQuestion{.mass = 220_kg, .start = 70_kmh},
                                   {.mass = 220_kg, .end = 20_kmh},
                                   {.start = 70_kmh, .end = 20_kmh}}) {
    const auto told = gravel().try_explain("coast down time", open);
    ASSERT_FALSE(told);
    EXPECT_NE(std::string(told.error().what()).find("mass, the start and the end"), std::string::npos);
  }
  EXPECT_FALSE(gravel().try_explain("coast down time", {.mass = 220_kg, .start = 70_kmh, .end = 80_kmh}));
  EXPECT_FALSE(gravel().try_explain("coast down time", {.mass = 220_kg, .start = 70_kmh, .end = 70_kmh}));
  const auto unknown = gravel().try_explain("top speed", {});
  ASSERT_FALSE(unknown);
  EXPECT_EQ(unknown.error().expected(), "one of \"resistance\", \"coast down time\"");
}

}  // namespace
