// SPDX-License-Identifier: MIT
#include <layshaft/tyre/fitness.hpp>

#include <gtest/gtest.h>
#include <core/formula_range.hpp>
#include <tyre/watched.hpp>

#include <limits>
#include <string>

namespace {
using namespace layshaft;
using layshaft_test::expect_range;
using enum FitnessVerdict;

/// The one check that was asked for.
FitnessCheck the_check(const char* marking, const TyreAsked& asked, const std::optional<TyreSize>& stock = {},
                       std::optional<Length> tread = {}) {
  const TyreFitness fitness = tyre_fitness(TyreSize(marking), asked, stock, tread);
  EXPECT_EQ(fitness.checks.size(), 1u);
  return fitness.checks[0];
}

TEST(TyreFitness, LooksAtNothingThatWasNotAsked) {
  EXPECT_TRUE(tyre_fitness("110/90-18 61R"_tyre, {}).checks.empty());
  EXPECT_FALSE(tyre_fitness("110/90-18 61R"_tyre, {}).ride_height_change);
  EXPECT_EQ(tyre_fitness("110/90-18"_tyre, {}).verdict(FitnessCode::load), std::nullopt);
}

TEST(TyreFitness, AnswersInTheOrderOfItsCodes) {
  const TyreFitness fitness = tyre_fitness("120/90-18 65S"_tyre,
                                           {.axle_load = 200_kg,
                                            .top_speed = 160_kmh,
                                            .radius_clearance = 20_mm,
                                            .width_clearance = 25_mm,
                                            .least_tread_depth = 1.6_mm},
                                           "110/90-18"_tyre, 5_mm);
  ASSERT_EQ(fitness.checks.size(), 5u);
  for (std::size_t i = 0; i < 5; ++i) {
    EXPECT_EQ(static_cast<std::size_t>(fitness.checks[i].what), i);
    EXPECT_EQ(fitness.checks[i].verdict, enough);
  }
  EXPECT_EQ(fitness.verdict(FitnessCode::width), enough);
}

// Load index 61 is 257 kg and 65 is 290 kg: ISO 4223-1, published.
TEST(TyreFitness, HoldsTheLoadAgainstTheLoadIndex) {
  const FitnessCheck light = the_check("110/90-18 61R", {.axle_load = 240_kg});
  EXPECT_EQ(light.verdict, enough);
  EXPECT_EQ(light.asked, Amount(240_kg));
  EXPECT_EQ(light.has, Amount(257_kg));
  EXPECT_EQ(light.margin, Amount(17_kg));
  EXPECT_EQ(light.rule.certainty, Certainty::published);
  EXPECT_EQ(the_check("110/90-18 61R", {.axle_load = 257_kg}).verdict, enough);  // what it is rated for, it may carry
  const FitnessCheck heavy = the_check("110/90-18 61R", {.axle_load = 258_kg});
  EXPECT_EQ(heavy.verdict, short_of);
  EXPECT_EQ(heavy.margin, Amount(-1_kg));
  EXPECT_EQ(the_check("110/90-18 20A8", {.axle_load = 10_kg}).rule.certainty, Certainty::from_memory);
}

TEST(TyreFitness, CountsTheTyresOnTheAxle) {
  EXPECT_EQ(the_check("195/70R15 104/102R", {.axle_load = 1800_kg, .tyres_on_axle = 2}).verdict, enough);
  EXPECT_EQ(the_check("195/70R15 104/102R", {.axle_load = 1801_kg, .tyres_on_axle = 2}).verdict, short_of);
  // Twins carry less each: index 102 is 850 kg.
  const FitnessCheck twins = the_check("195/70R15 104/102R", {.axle_load = 3400_kg, .tyres_on_axle = 4});
  EXPECT_EQ(twins.verdict, enough);
  EXPECT_EQ(twins.has, Amount(3400_kg));
  EXPECT_EQ(the_check("195/70R15 104/102R", {.axle_load = 3401_kg, .tyres_on_axle = 4}).verdict, short_of);
  EXPECT_EQ(the_check("195/70R15 104R", {.axle_load = 100_kg, .tyres_on_axle = 4}).verdict, unknown);
}

TEST(TyreFitness, HoldsTheTopSpeedAgainstTheSpeedSymbol) {
  EXPECT_EQ(the_check("110/90-18 61R", {.top_speed = 170_kmh}).verdict, enough);
  EXPECT_EQ(the_check("110/90-18 61R", {.top_speed = 170_kmh}).rule.certainty, Certainty::published);
  const FitnessCheck fast = the_check("110/90-18 61R", {.top_speed = 180_kmh});
  EXPECT_EQ(fast.verdict, short_of);
  EXPECT_NEAR(fast.margin.value * 3.6, -10.0, 1e-12);
  EXPECT_EQ(the_check("110/90-18 61H", {.top_speed = 205_kmh}).verdict, enough);  // H stands above U
}

TEST(TyreFitness, DoesNotGuessWhatTheMarkingLeavesOpen) {
  EXPECT_EQ(the_check("110/90-18", {.axle_load = 1_kg}).verdict, unknown);
  EXPECT_EQ(the_check("110/90-18", {.axle_load = 1_kg}).has, Amount());
  EXPECT_EQ(the_check("110/90-18", {.top_speed = 1_kmh}).verdict, unknown);
  EXPECT_EQ(the_check("150/70ZR17", {.top_speed = 240_kmh}).verdict, enough);  // ZR is for more than 240 km/h
  EXPECT_EQ(the_check("150/70ZR17", {.top_speed = 241_kmh}).verdict, unknown);
  EXPECT_EQ(the_check("150/70ZR17 (69W)", {.top_speed = 270_kmh}).verdict, enough);
  EXPECT_EQ(the_check("150/70ZR17 (69W)", {.top_speed = 280_kmh}).verdict, unknown);
  EXPECT_EQ(the_check("150/70ZR17 69W", {.top_speed = 280_kmh}).verdict, short_of);
}

// From memory: above 210 km/h a tyre carries less than its load index says.
TEST(TyreFitness, DoesNotTrustTheLoadIndexAtTheHighestSpeeds) {
  const auto load_at = [](Speed top_speed, Mass load) {
    return tyre_fitness("150/70ZR17 69W"_tyre, {.axle_load = load, .top_speed = top_speed}).verdict(FitnessCode::load);
  };
  EXPECT_EQ(load_at(210_kmh, 200_kg), enough);
  EXPECT_EQ(load_at(211_kmh, 200_kg), unknown);
  EXPECT_EQ(load_at(211_kmh, 400_kg), short_of);
}

// 110/90-18 as marked: 327.5 mm and 110 mm. 120/90-18 at its largest: 457/2 + 1.07 × 108 mm and 132 mm.
TEST(TyreFitness, HoldsTheLargestTyreAgainstTheRoomThereIs) {
  const TyreSize stock("110/90-18");
  const FitnessCheck taller = the_check("120/90-18", {.radius_clearance = 20_mm}, stock);
  EXPECT_EQ(taller.verdict, enough);
  EXPECT_NEAR(taller.has.value * 1000.0, 16.56, 1e-9);
  EXPECT_NEAR(taller.margin.value * 1000.0, 3.44, 1e-9);
  EXPECT_EQ(taller.rule, diameter_limit_source);
  EXPECT_EQ(the_check("120/90-18", {.radius_clearance = 16_mm}, stock).verdict, short_of);
  EXPECT_EQ(the_check("110/90-18", {.radius_clearance = 0_mm}, stock).verdict, short_of);  // it may be 6.93 mm taller
  EXPECT_EQ(the_check("4.10-18", {.radius_clearance = 20_mm}, stock).rule, code_designated_source);
  EXPECT_EQ(the_check("120/90-18", {.radius_clearance = 20_mm}).verdict, unknown);  // beside what?

  const FitnessCheck wider = the_check("120/90-18", {.width_clearance = 20_mm}, stock);
  EXPECT_EQ(wider.verdict, short_of);
  EXPECT_NEAR(wider.has.value * 1000.0, 22.0, 1e-9);
  EXPECT_NEAR(wider.margin.value * 1000.0, -2.0, 1e-9);
  EXPECT_EQ(the_check("120/90-18", {.width_clearance = 22_mm}, stock).verdict, enough);
  EXPECT_EQ(the_check("120/90-18", {.width_clearance = 22_mm}).verdict, unknown);
  EXPECT_EQ(the_check("25x8-12", {.width_clearance = 500_mm}, stock).verdict, unknown);  // no limit at hand
}

TEST(TyreFitness, HoldsTheTreadAgainstTheLaw) {
  TyreAsked asked;
  asked.take(legal_tread("DE", VehicleClass::motorcycle));
  EXPECT_EQ(the_check("110/90-18", asked, {}, 1.6_mm).verdict, enough);
  const FitnessCheck worn = the_check("110/90-18", asked, {}, 1.5_mm);
  EXPECT_EQ(worn.verdict, short_of);
  EXPECT_NEAR(worn.margin.value * 1000.0, -0.1, 1e-9);
  EXPECT_EQ(worn.rule.document, "StVZO s. 36(3)");
  EXPECT_EQ(the_check("110/90-18", asked).verdict, unknown);  // nobody measured it
  asked.take(legal_tread("GB", VehicleClass::moped));         // a visible pattern is nothing to measure
  EXPECT_TRUE(tyre_fitness("110/90-18"_tyre, asked, {}, 1_mm).checks.empty());
}

// 0.94 of the free radius: 307.85 mm and 316.31 mm.
TEST(TyreFitness, TellsHowMuchHigherTheMachineStands) {
  const TyreSize stock("110/90-18"), trial("120/90-18");
  const Band<Length> higher = *tyre_fitness(trial, {}, stock).ride_height_change;
  EXPECT_NEAR(higher.nominal / units::mm, 8.46, 1e-9);
  EXPECT_TRUE(well_formed(higher));
  // The ends: the tallest trial over the smallest stock tyre, and the other way round, both settling as little.
  EXPECT_NEAR(higher.high / units::mm, 0.985 * (228.5 + 1.07 * 108.0 - 324.53), 1e-9);
  EXPECT_NEAR(higher.low / units::mm, 0.985 * (228.5 + 0.97 * 108.0 - 334.43), 1e-9);
  EXPECT_EQ(*tyre_fitness(stock, {}, TyreSize("110/90-18 M/C 61R")).ride_height_change, Band<Length>::exactly(0_mm));
}

TEST(TyreFitness, RefusesWhatNoMachineAsks) {
  const TyreSize tyre("110/90-18 61R");
  using Limits = std::numeric_limits<double>;
  for (const double bad : {Limits::quiet_NaN(), Limits::infinity(), -Limits::infinity(), -1.0}) {
    EXPECT_FALSE(try_tyre_fitness(tyre, {.axle_load = bad * units::kg}));
    EXPECT_FALSE(try_tyre_fitness(tyre, {.top_speed = bad * units::kmh}));
    EXPECT_FALSE(try_tyre_fitness(tyre, {.radius_clearance = bad * units::m}));
    EXPECT_FALSE(try_tyre_fitness(tyre, {.width_clearance = bad * units::m}));
    EXPECT_FALSE(try_tyre_fitness(tyre, {.least_tread_depth = bad * units::m}));
    EXPECT_FALSE(try_tyre_fitness(tyre, {}, {}, bad * units::m));
  }
  for (const int bad : {-1, 0, 3, 5, 6}) EXPECT_FALSE(try_tyre_fitness(tyre, {.tyres_on_axle = bad}));
  const auto error = try_tyre_fitness(tyre, {.tyres_on_axle = 3});
  EXPECT_STREQ(error.error().what(), "tyres_on_axle is 3; expected 1, 2 or 4");
  EXPECT_STREQ(try_tyre_fitness(tyre, {.axle_load = 0_kg}).error().what(),
               "axle_load is 0 kg; expected 0.1 kg to 100000 kg");
  EXPECT_FALSE(try_tyre_fitness(tyre, {.top_speed = 1001_kmh}));
  EXPECT_FALSE(try_tyre_fitness(tyre, {.radius_clearance = 1.01_m}));
  EXPECT_THROW(static_cast<void>(tyre_fitness(tyre, {.tyres_on_axle = 3})), RangeError);
  EXPECT_TRUE(try_tyre_fitness(tyre, {.axle_load = 100000_kg,
                                      .tyres_on_axle = 4,
                                      .top_speed = 1000_kmh,
                                      .radius_clearance = 1_m,
                                      .width_clearance = 0_m,
                                      .least_tread_depth = 0_m}));
}

TEST(TyreFitness, CanBeWatchedToTheBit) {
  using namespace layshaft::detail;
  const TyreSize stock("110/90-18"), trial("120/90-18 65S");
  layshaft_test::expect_watched(one_cause,
                                [&](auto watch, Corner) { return load_margin_at(watch, load_indices[65], 1, 240_kg); },
                                {"load capacity", "tyres on axle", "axle load", "load margin"});
  layshaft_test::expect_watched(
      one_cause, [&](auto watch, Corner) { return speed_margin_at(watch, *trial.speed_symbol(), 150_kmh); },
      {"rated speed", "top speed", "speed margin"});
  layshaft_test::expect_watched(
      one_cause, [&](auto watch, Corner) { return tread_margin_at(watch, 3_mm, 1.6_mm, sources::stated); },
      {"tread depth", "least tread depth", "tread margin"});
  layshaft_test::expect_watched(one_cause,
                                [&](auto watch, Corner) { return width_margin_at(watch, trial, stock, 25_mm); },
                                {"width clearance", "base section width", "trial section width", "trial width factor",
                                 "trial section width limit", "width growth", "width margin"});
  const auto radius = layshaft_test::expect_watched(
      one_cause, [&](auto watch, Corner) { return radius_margin_at(watch, trial, stock, 25_mm); },
      {"radius clearance", "base rim diameter", "base section width", "base aspect ratio", "base section height",
       "base height factor", "base overall diameter", "trial rim diameter", "trial section width", "trial aspect ratio",
       "trial section height", "trial height factor", "trial overall diameter", "radius growth", "radius margin"});
  EXPECT_EQ(radius.result().certainty(), Certainty::from_memory);
  layshaft_test::expect_watched(
      two_tyre_corners(stock, trial),
      [&](auto watch, const TwoTyreCorners& at) { return ride_height_change_at(watch, stock, trial, at); },
      {"base rim diameter",  "base section width",    "base aspect ratio",   "base section height",
       "base height factor", "base overall diameter", "base free radius",    "base rolling factor",
       "base static share",  "base static radius",    "trial rim diameter",  "trial section width",
       "trial aspect ratio", "trial section height",  "trial height factor", "trial overall diameter",
       "trial free radius",  "trial rolling factor",  "trial static share",  "trial static radius",
       "ride height change"});
}

TEST(TyreFitness, HasAWordForEveryAnswer) {
  static_assert(to_string(FitnessCode::load) == "load" && to_string(FitnessCode::speed) == "speed");
  static_assert(to_string(FitnessCode::radius) == "radius" && to_string(FitnessCode::width) == "width");
  static_assert(to_string(FitnessCode::tread) == "tread");
  static_assert(to_string(enough) == "enough" && to_string(short_of) == "short" && to_string(unknown) == "unknown");
}

TEST(TyreFitness, KnowsTheRangesOfItsFormulas) {
  expect_range<formula::load_margin>("+++", 257_kg, 1.0, 240_kg);
  expect_range<formula::speed_margin>("++", 170_kmh, 150_kmh);
  expect_range<formula::radius_margin>("ff", 20_mm, 16_mm);
  expect_range<formula::width_margin>("ff", 20_mm, 16_mm);
  expect_range<formula::tread_margin>("ff", 3_mm, 1.6_mm);
  expect_range<formula::ride_height_change>("++", 308_mm, 316_mm);
}

}  // namespace
