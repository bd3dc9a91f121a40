// SPDX-License-Identifier: MIT
#include <layshaft/road/road_load.hpp>

#include <layshaft/core/recorder.hpp>
#include <layshaft/road/drag_area.hpp>

#include <gtest/gtest.h>
#include <core/formula_range.hpp>
#include <core/not_finite.hpp>
#include <tyre/watched.hpp>

#include <cmath>
#include <string>

namespace {
using namespace layshaft;
using layshaft_test::endless;
using layshaft_test::nothing;

RoadParts on_gravel() {
  return {.mass = 220_kg,
          .rolling_coefficient = surface(SurfaceKind::gravel).rolling_coefficient,
          .drag_area = drag_area(DragKind::motorcycle).area,
          .rolling_source = surface(SurfaceKind::gravel).rolling_source,
          .drag_source = drag_area(DragKind::motorcycle).source};
}

TEST(RoadLoad, IsItsPolynomial) {
  const RoadLoad road({.constant = 40_N, .linear = 1.5_N_per_mps, .quadratic = 0.3_kg_per_m});
  EXPECT_EQ(road.resistance(0_kmh), 40_N);
  EXPECT_NEAR(in(road.resistance(20_mps), units::N), 40.0 + 1.5 * 20.0 + 0.3 * 400.0, 1e-13);
  EXPECT_EQ(road.kind(), RoadLoadKind::stated);
  EXPECT_EQ(road.resistance_band(20_mps).width(), 0_N);
}

// Source: US 40 CFR 86.529-98, figure F98-9: printed at 65 km/h, of rounded coefficients.
TEST(RoadLoad, ByMassIsThatOfTheTable) {
  for (const MassRow& row : mass_table) {
    const RoadLoad road = RoadLoad::by_mass(row.equivalent);
    EXPECT_NEAR(in(road.resistance(mass_table_speed), units::N), row.at_65_kmh.value(), 0.2);
    EXPECT_EQ(road.kind(), RoadLoadKind::mass_table);
    EXPECT_EQ(road.source().certainty, Certainty::published);
    EXPECT_EQ(road.mass(), row.equivalent);
  }
  for (const double bad : {0.0, -100.0, 94.4, 345.6, 1000.0, nothing, endless}) {
    const auto road = RoadLoad::try_by_mass(bad * units::kg);
    ASSERT_FALSE(road) << bad;
    EXPECT_EQ(road.error().kind(), ErrorKind::range);
  }
}

// Why its kind must be told: 0.6 N at 5 km/h and 100 kg, where rolling alone takes about 16 N on asphalt.
TEST(RoadLoad, ByMassIsNotForWalkingPace) {
  EXPECT_NEAR(in(RoadLoad::by_mass(100_kg).resistance(5_kmh), units::N), 0.56, 0.005);
  const auto rolling = RoadLoad::from_parts({.mass = 100_kg,
                                             .rolling_coefficient = surface(SurfaceKind::asphalt).rolling_coefficient,
                                             .drag_area = Band<Area>::exactly(0_m2)});
  EXPECT_GT(rolling.resistance_band(5_kmh).low, 9_N);
}

TEST(RoadLoad, OfPartsIsRollingAirAndHill) {
  const RoadLoad road = RoadLoad::from_parts(on_gravel());
  const Slope hill(0.15);
  const double g = 9.80665, v = 50.0 / 3.6;
  const auto expected = [&](double rolling, double area) {
    return rolling * 220.0 * g / std::sqrt(1.0 + 0.15 * 0.15) + 0.5 * 1.225 * area * v * v +
           220.0 * g * 0.15 / std::sqrt(1.0 + 0.15 * 0.15);
  };
  const Band<Force> band = road.resistance_band(50_kmh, hill);
  EXPECT_NEAR(band.low.value(), expected(0.010, 0.18), 1e-11);
  EXPECT_NEAR(band.nominal.value(), expected(0.020, 0.40), 1e-11);
  EXPECT_NEAR(band.high.value(), expected(0.040, 0.70), 1e-11);
  EXPECT_EQ(road.resistance(50_kmh, hill), band.nominal);
  EXPECT_EQ(road.resistance(50_kmh, hill, Corner::high), band.high);
  EXPECT_EQ(road.source().certainty, Certainty::secondary);  // as its weakest part
  EXPECT_LT(road.resistance(5_kmh, Slope(-0.15)), 0_N);      // the hill drives
}

TEST(RoadLoad, MeetsTheWindThatItIsIn) {
  const RoadLoad still({.constant = 40_N, .quadratic = 0.3_kg_per_m});
  const RoadLoad against = still.in_wind(36_kmh), behind = still.in_wind(-(36_kmh));
  EXPECT_NEAR(in(against.resistance(36_kmh), units::N), 40.0 + 0.3 * 400.0, 1e-13);
  EXPECT_EQ(behind.resistance(36_kmh), 40_N);                                      // as fast as the wind
  EXPECT_NEAR(in(behind.resistance(0_kmh), units::N), 40.0 - 0.3 * 100.0, 1e-13);  // it pushes
  EXPECT_EQ(still.in_wind(0_kmh), still);
  EXPECT_FALSE(still.try_in_wind(301_kmh));
  EXPECT_FALSE(still.try_in_wind(nothing * units::kmh));
  const RoadLoad parts = RoadLoad::from_parts(on_gravel()).in_wind(36_kmh);
  EXPECT_EQ(parts.parts()->head_wind, 36_kmh);
}

TEST(RoadLoad, NeedsAMassForASlope) {
  const RoadLoad road({.constant = 40_N, .quadratic = 0.3_kg_per_m});
  EXPECT_TRUE(road.try_resistance(30_kmh));
  const auto uphill = road.try_resistance(30_kmh, Slope(0.1));
  ASSERT_FALSE(uphill);
  EXPECT_NE(std::string(uphill.error().what()).find("needs the mass"), std::string::npos);
  const RoadLoad heavy({.constant = 40_N, .quadratic = 0.3_kg_per_m, .mass = 200_kg});
  EXPECT_GT(heavy.resistance(30_kmh, Slope(0.1)), road.resistance(30_kmh) + 190_N);
}

TEST(RoadLoad, NamesWhatLiesOutsideItsRange) {
  const auto refusal = [](const auto& made) { return made ? std::string("none") : std::string(made.error().what()); };
  EXPECT_EQ(refusal(RoadLoad::make({})), "none");
  EXPECT_TRUE(refusal(RoadLoad::make({.constant = nothing * units::N})).starts_with("constant is not a number"));
  EXPECT_TRUE(refusal(RoadLoad::make({.linear = endless * units::N_per_mps})).starts_with("linear is infinite"));
  EXPECT_TRUE(refusal(RoadLoad::make({.quadratic = -1.0 * units::kg_per_m})).starts_with("quadratic is -1 kg/m"));
  EXPECT_TRUE(refusal(RoadLoad::make({.mass = 0_kg})).starts_with("mass is 0 kg"));
  EXPECT_TRUE(refusal(RoadLoad::make({.head_wind = 301_kmh})).starts_with("head_wind is 301 km/h"));
  const auto parts = [&](auto change) {
    RoadParts changed = on_gravel();
    change(changed);
    return refusal(RoadLoad::try_from_parts(changed));
  };
  EXPECT_EQ(parts([](RoadParts&) {}), "none");
  EXPECT_TRUE(parts([](RoadParts& p) { p.mass = 0_kg; }).starts_with("mass is 0 kg"));
  EXPECT_TRUE(parts([](RoadParts& p) { p.rolling_coefficient = {0.2, 0.1, 0.3}; }).find("rising order") > 0);
  EXPECT_TRUE(parts([](RoadParts& p) { p.rolling_coefficient.high = 2.1; }).starts_with("rolling_coefficient is 2.1"));
  EXPECT_TRUE(parts([](RoadParts& p) { p.drag_area.high = 101_m2; }).starts_with("drag_area is 101 m2"));
  EXPECT_TRUE(parts([](RoadParts& p) { p.air_density.low = -1.0 * units::kg_per_m3; }).starts_with("air_density is"));
  EXPECT_TRUE(parts([](RoadParts& p) { p.head_wind = nothing * units::kmh; }).starts_with("head_wind is not a number"));
  const RoadLoad road = RoadLoad::from_parts(on_gravel());
  for (const double bad : {-0.1, 1000.1, nothing, endless}) EXPECT_FALSE(road.try_resistance(bad * units::kmh)) << bad;
  for (const double bad : {-0.1, 1000.1, nothing, endless}) {
    const auto band = road.try_resistance_band(bad * units::kmh);
    ASSERT_FALSE(band) << bad;
    EXPECT_TRUE(std::string(band.error().what()).starts_with("speed is ")) << bad;
  }
  EXPECT_THROW((void)road.resistance(-1.0 * units::kmh), RangeError);
  EXPECT_THROW(RoadLoad({.mass = 0_kg}), RangeError);
}

TEST(RoadLoad, TellsItsResistanceStepByStep) {
  using layshaft_test::expect_watched;
  const auto resistance = [](const RoadLoad& road, const Slope& slope) {
    return [&road, slope](auto watch, Corner at) {
      return road.resistance(watch, watch.given("road_speed", 50.0_kmh), slope, at);
    };
  };
  const RoadLoad parts = RoadLoad::from_parts(on_gravel());
  const auto on_hill = expect_watched(one_cause, resistance(parts, Slope(0.1)),
                                      {"road speed", "rolling coefficient", "mass", "gravity", "constant resistance",
                                       "grade", "slope angle", "rolling on slope", "air density", "drag area",
                                       "quadratic resistance", "air drag", "climb resistance", "resistance"});
  EXPECT_EQ(on_hill.result().certainty(), Certainty::secondary);
  expect_watched(one_cause, resistance(parts, Slope()),
                 {"road speed", "rolling coefficient", "mass", "gravity", "constant resistance", "air density",
                  "drag area", "quadratic resistance", "air drag", "resistance"});
  const RoadLoad stated(
      {.constant = 40_N, .linear = 1.5_N_per_mps, .quadratic = 0.3_kg_per_m, .mass = 200_kg, .head_wind = 20_kmh});
  expect_watched(one_cause, resistance(stated, Slope(-3_deg * 1.0)),
                 {"road speed", "constant resistance", "slope angle", "rolling on slope", "linear resistance",
                  "linear part", "rolling resistance", "quadratic resistance", "head wind", "air speed", "air drag",
                  "mass", "gravity", "climb resistance", "resistance"});
  const auto table =
      expect_watched(one_cause, resistance(RoadLoad::by_mass(180_kg), Slope()),
                     {"road speed", "constant resistance", "quadratic resistance", "air drag", "resistance"});
  EXPECT_EQ(table.steps()[1].source(), mass_table_source);
}

TEST(RoadFormulas, AskForTheirRange) {
  using layshaft_test::expect_range;
  expect_range<formula::constant_resistance>("fff", 0.02, 200_kg, standard_gravity);
  expect_range<formula::quadratic_resistance>("ff", 1.2_kg_per_m3, 0.5_m2);
  expect_range<formula::rolling_on_slope>("ff", 40_N, 5_deg);
  expect_range<formula::climb_resistance>("fff", 200_kg, standard_gravity, 5_deg);
  expect_range<formula::air_speed>("ff", 50_kmh, 10_kmh);
  expect_range<formula::air_drag>("ff", 0.3_kg_per_m, 60_kmh);
  expect_range<formula::linear_part>("ff", 1_N_per_mps, 60_kmh);
  expect_range<formula::rolling_resistance>("ff", 40_N, 10_N);
  expect_range<formula::resistance>("fff", 40_N, 50_N, 100_N);
  expect_range<formula::level_resistance>("ff", 40_N, 50_N);
}

TEST(RoadLoad, InOtherAirIsThatOfItsParts) {
  const Density thin = 0.9_kg_per_m3;
  const RoadLoad parts = RoadLoad::from_parts(on_gravel()).in_air(thin);
  EXPECT_EQ(parts.parts()->air_density, Band<Density>::exactly(thin));
  EXPECT_EQ(parts.constant(), RoadLoad::from_parts(on_gravel()).constant());
  for (const Corner at : corners)  // 0.5 rho A, with the areas of the table
    EXPECT_NEAR(parts.quadratic().at(at).value(), 0.5 * 0.9 * on_gravel().drag_area.at(at).value(), 1e-15);
  EXPECT_EQ(parts.other_air(), std::nullopt);
  RoadParts made = on_gravel();
  made.air_density = Band<Density>::exactly(thin);
  EXPECT_EQ(parts, RoadLoad::from_parts(made));
  // Stated coefficients go with the density over that of the standard atmosphere, 1.225 kg/m3.
  const RoadLoad stated = RoadLoad({.constant = 40_N, .quadratic = 0.3_kg_per_m}).in_air(thin);
  EXPECT_NEAR(stated.quadratic().nominal.value(), 0.3 * 0.9 / 1.225, 1e-15);
  EXPECT_EQ(stated.other_air(), std::nullopt);
  EXPECT_EQ(RoadLoad::by_mass(180_kg).in_air(thin).other_air(), thin);
  for (const double bad : {0.0, -1.0, 10.1, nothing, endless}) {
    const auto refused = RoadLoad::by_mass(180_kg).try_in_air(bad * units::kg_per_m3);
    ASSERT_FALSE(refused) << bad;
    EXPECT_TRUE(std::string(refused.error().what()).starts_with("density is "));
  }
}

TEST(RoadLoad, CarriesAnotherMassThatTheSlopeLifts) {
  const RoadLoad gravel = RoadLoad::from_parts(on_gravel());
  const RoadLoad laden = gravel.carrying(300_kg);
  EXPECT_EQ(laden.mass(), 300_kg);
  EXPECT_EQ(laden.resistance(30_kmh), gravel.resistance(30_kmh));  // what the tyres resist with stays
  const double more = (laden.resistance(30_kmh, Slope(0.1)) - gravel.resistance(30_kmh, Slope(0.1))).value();
  EXPECT_NEAR(more, 80.0 * 9.80665 * 0.1 / std::sqrt(1.01), 1e-10);
  const auto none = gravel.try_carrying(0_kg);
  ASSERT_FALSE(none);
  EXPECT_EQ(std::string(none.error().what()), "mass is 0 kg; expected 0.1 kg to 100000 kg");
  // Watched, the two masses are two values where they differ, and one where they do not.
  const auto masses = [](const RoadLoad& road) {
    Recorder recorder;
    static_cast<void>(road.lifted(recorder.watch()));
    return recorder.steps().at(0).identity.name.index;
  };
  EXPECT_EQ(masses(gravel), 0);
  EXPECT_EQ(masses(laden), 2);
  EXPECT_EQ(masses(RoadLoad({.constant = 40_N}).carrying(300_kg)), 0);
}

TEST(RoadLoad, OfCoefficientsIsStatedOrOfACoastDown) {
  EXPECT_EQ(RoadLoad({.kind = RoadLoadKind::coast_down}).source(), fitted_source);
  for (const RoadLoadKind kind : {RoadLoadKind::mass_table, RoadLoadKind::parts}) {
    const auto road = RoadLoad::make({.constant = 40_N, .kind = kind});
    ASSERT_FALSE(road);
    EXPECT_EQ(std::string(road.error().what()), "a road load of coefficients is either stated or of a coast-down");
  }
}

}  // namespace
