// SPDX-License-Identifier: MIT
#include <layshaft/road/shift_rule.hpp>

#include <layshaft/core/recorder.hpp>

#include <gtest/gtest.h>
#include <core/formula_range.hpp>
#include <core/not_finite.hpp>
#include <reference/csv.hpp>
#include <tyre/watched.hpp>

#include <cmath>
#include <string>
#include <vector>

namespace {
using namespace layshaft;
using layshaft_test::nothing;
using layshaft_test::number;

/// The example of the regulation as recalled: 72 kW, 199 kg, idle at 1150 rpm, rated at 11,800 rpm, and what rpm each
/// gear turns for a km/h; here as overall ratios over a circumference of 2 m.
WorldCycleParts example() {
  OverallRatios ratios;
  for (const double rpm_per_kmh : {133.66, 94.91, 76.16, 65.69, 58.85, 54.04})
    ratios.push_back(rpm_per_kmh * (2.0 / (1000.0 / 60.0)));
  return {72_kW, 199_kg, 1150_rpm, 11800_rpm, ratios, 2_m};
}

// A consistency check only: both the formulas and the example are from memory.
TEST(ShiftRule, OfTheWorldCycleGivesItsExample) {
  const ShiftRule rule = ShiftRule::world_cycle(example());
  EXPECT_EQ(rule.source().certainty, Certainty::from_memory);
  ASSERT_EQ(rule.gears(), 6);
  int up = 0, down = 0;
  for (const auto& row : layshaft_test::read_csv("gear_shift_example.csv")) {
    EXPECT_EQ(row.at("certainty"), "from memory");
    const Speed speed = row.at("dir") == "up" ? rule.up()[static_cast<std::size_t>(up++)]
                                              : rule.down()[static_cast<std::size_t>(down++)];
    EXPECT_NEAR(in(speed, units::kmh), number(row.at("v_kmh_remembered")), 0.05) << row.at("shift");
    EXPECT_NEAR(in(speed, units::kmh), number(row.at("v_kmh_recomputed")), 0.01) << row.at("shift");
  }
  EXPECT_EQ(up, 5);
  EXPECT_EQ(down, 5);
}

TEST(ShiftRule, MapsSpeedToGear) {
  const ShiftRule rule({20_kmh, 40_kmh, 60_kmh}, {10_kmh, 30_kmh, 50_kmh});
  EXPECT_EQ(rule.gears(), 4);
  for (const auto& [kmh, gear] : {std::pair{0.0, 1}, std::pair{19.9, 1}, std::pair{20.0, 2}, std::pair{59.9, 3},
                                  std::pair{60.0, 4}, std::pair{300.0, 4}})
    EXPECT_EQ(rule.gear_at(kmh * units::kmh), gear) << kmh;
  EXPECT_EQ(rule.gear_after(2, 15_kmh), 2);  // between the speed of shifting down and that of shifting up
  EXPECT_EQ(rule.gear_after(1, 15_kmh), 1);
  EXPECT_EQ(rule.gear_after(2, 9_kmh), 1);
  EXPECT_EQ(rule.gear_after(4, 0_kmh), 1);
  EXPECT_EQ(rule.gear_after(1, 100_kmh), 4);
  EXPECT_EQ(rule.gear_after(0, 15_kmh), 1);  // no such gear: the nearest
  EXPECT_EQ(rule.gear_after(9, 55_kmh), 4);
  const ShiftRule single({}, {});
  EXPECT_EQ(single.gears(), 1);
  EXPECT_EQ(single.gear_at(100_kmh), 1);
  EXPECT_EQ(single.gear_after(1, 100_kmh), 1);
}

TEST(ShiftRule, SettlesInOneGearAtEverySpeed) {
  const ShiftRule rule = ShiftRule::world_cycle(example());
  for (int gear = 1; gear <= rule.gears(); ++gear)
    for (double kmh = 0.0; kmh < 120.0; kmh += 0.1) {
      const int next = rule.gear_after(gear, kmh * units::kmh);
      EXPECT_EQ(rule.gear_after(next, kmh * units::kmh), next) << gear << " " << kmh;
    }
}

TEST(ShiftRule, AtEngineSpeedsShiftsWhereTheEngineTurnsSo) {
  const OverallRatios ratios{20.0, 14.0, 10.0};
  const ShiftRule rule = ShiftRule::at_engine_speeds(7000_rpm, 3000_rpm, ratios, 2_m);
  EXPECT_EQ(rule.up()[0], road_speed(7000_rpm, 20.0, 2_m));
  EXPECT_EQ(rule.down()[1], road_speed(3000_rpm, 10.0, 2_m));
  // A shift up from 7000 rpm lands at 4900 and 5000: a shift down at 5000 would come at once.
  EXPECT_FALSE(ShiftRule::try_at_engine_speeds(7000_rpm, 5001_rpm, ratios, 2_m));
  EXPECT_TRUE(ShiftRule::try_at_engine_speeds(7000_rpm, 4899_rpm, ratios, 2_m));
  EXPECT_FALSE(ShiftRule::try_at_engine_speeds(7000_rpm, 7001_rpm, ratios, 2_m));
  EXPECT_FALSE(ShiftRule::try_at_engine_speeds(nothing * units::rpm, 3000_rpm, ratios, 2_m));
  EXPECT_FALSE(ShiftRule::try_at_engine_speeds(7000_rpm, 3000_rpm, {}, 2_m));
  EXPECT_FALSE(ShiftRule::try_at_engine_speeds(7000_rpm, 3000_rpm, {14.0, 14.0}, 2_m));
  EXPECT_FALSE(ShiftRule::try_at_engine_speeds(7000_rpm, 3000_rpm, {14.0, nothing}, 2_m));
  EXPECT_FALSE(ShiftRule::try_at_engine_speeds(7000_rpm, 3000_rpm, ratios, 0_m));
}

TEST(ShiftRule, NamesTheOverallRatioThatIsWrong) {
  const auto refusal = [](const OverallRatios& ratios) {
    const auto rule = ShiftRule::try_at_engine_speeds(7000_rpm, 3000_rpm, ratios, 1_m);
    return rule ? std::string("none") : std::string(rule.error().what());
  };
  EXPECT_EQ(refusal({20.0, 14.0}), "none");
  EXPECT_TRUE(refusal({nothing, 14.0}).starts_with("overall ratio 1 is not a number"));
  EXPECT_TRUE(refusal({20.0, nothing}).starts_with("overall ratio 2 is not a number"));
  EXPECT_TRUE(refusal({14.0, 20.0}).starts_with("overall ratio 2 is 20; expected less than the 14 before it"));
  EXPECT_EQ(refusal({1e4}), "none");
  EXPECT_TRUE(refusal({std::nextafter(1e4, 1e5)}).starts_with("overall ratio 1 is"));
  EXPECT_EQ(refusal({1e-3}), "none");
  EXPECT_TRUE(refusal({std::nextafter(1e-3, 0.0)}).starts_with("overall ratio 1 is"));
}

TEST(ShiftRule, NamesTheShiftThatIsWrong) {
  const auto refusal = [](const ShiftSpeeds& up, const ShiftSpeeds& down) {
    const auto rule = ShiftRule::make(up, down);
    return rule ? std::string("none") : std::string(rule.error().what());
  };
  EXPECT_EQ(refusal({20_kmh, 40_kmh}, {20_kmh, 30_kmh}), "none");
  EXPECT_EQ(refusal({20_kmh, 40_kmh}, {10_kmh}), "number of shifts down is 1; expected 2, one a shift up");
  EXPECT_EQ(refusal({20_kmh, 20_kmh}, {5_kmh, 10_kmh}),
            "shift up 2 is 20 km/h; expected more than the 20 km/h before it");
  EXPECT_EQ(refusal({20_kmh, 40_kmh}, {10_kmh, 10_kmh}),
            "shift down 2 is 10 km/h; expected more than the 10 km/h before it");
  EXPECT_TRUE(refusal({20_kmh}, {21_kmh}).starts_with("shift down 1 is 21 km/h"));
  EXPECT_TRUE(refusal({0_kmh}, {0_kmh}).starts_with("shift up 1 is 0 km/h"));
  EXPECT_TRUE(refusal({nothing * units::kmh}, {1_kmh}).starts_with("shift up 1 is not a number"));
  ShiftSpeeds many;
  for (int i = 1; i <= 16; ++i) many.push_back(i * 10.0 * units::kmh);
  EXPECT_EQ(refusal(many, many), "number of shifts is more than 15; expected 0 to 15");
  EXPECT_THROW(ShiftRule({20_kmh}, {21_kmh}), RangeError);
}

TEST(ShiftRule, OfTheWorldCycleNamesWhatDoesNotFit) {
  const auto refusal = [](auto change) {
    WorldCycleParts parts = example();
    change(parts);
    const auto rule = ShiftRule::try_world_cycle(parts);
    return rule ? std::string("none") : std::string(rule.error().what());
  };
  EXPECT_EQ(refusal([](WorldCycleParts&) {}), "none");
  EXPECT_EQ(refusal([](WorldCycleParts& p) { p.overall_ratios = {12.0}; }), "none");
  EXPECT_TRUE(refusal([](WorldCycleParts& p) { p.rated_power = 0_kW; }).starts_with("rated_power is 0 kW"));
  EXPECT_TRUE(refusal([](WorldCycleParts& p) { p.unladen_mass = 0_kg; }).starts_with("unladen_mass is 0 kg"));
  EXPECT_TRUE(refusal([](WorldCycleParts& p) { p.idle = 0_rpm; }).starts_with("idle is 0 rpm"));
  EXPECT_TRUE(refusal([](WorldCycleParts& p) { p.rated_speed = 1000_rpm; }).starts_with("rated_speed is 1000 rpm"));
  EXPECT_TRUE(refusal([](WorldCycleParts& p) { p.circumference = 0_m; }).starts_with("circumference is 0 mm"));
  EXPECT_TRUE(refusal([](WorldCycleParts& p) { p.overall_ratios = {}; }).starts_with("number of gears is 0"));
  EXPECT_NE(refusal([](WorldCycleParts& p) { p.rated_power = 900_kW; }).find("does not fit this machine"),
            std::string::npos);
  int too_fast_for_first_alone = 0;
  for (int kilowatts = 10; kilowatts < 900; ++kilowatts) {
    WorldCycleParts parts = example();
    parts.rated_power = double(kilowatts) * units::kW;
    const Speed clutch = layshaft::detail::world_cycle_clutch(layshaft::Unwatched(), parts);
    const bool fits = clutch < layshaft::detail::world_cycle_shift_up(layshaft::Unwatched(), parts, 1);
    const std::string told = refusal([&](WorldCycleParts& p) { p = parts; });
    EXPECT_EQ(told == "none", fits) << kilowatts << " kW";
    // In its own words, since a list of shifts that falls is refused as well.
    EXPECT_EQ(told.find("does not fit this machine") != std::string::npos, !fits) << told;
    if (!fits && clutch < layshaft::detail::world_cycle_shift_up(layshaft::Unwatched(), parts, 2))
      ++too_fast_for_first_alone;
  }
  EXPECT_GT(too_fast_for_first_alone, 0);
}

TEST(ShiftRule, OfTheWorldCycleTellsItsSteps) {
  const WorldCycleParts parts = example();
  const auto first = layshaft_test::expect_watched(
      std::array{Corner::nominal}, [&](auto watch, Corner) { return detail::world_cycle_shift_up(watch, parts, 1); },
      {"rated power", "unladen mass", "shift share", "first shift share", "idle speed", "rated engine speed",
       "shift engine speed", "overall ratio 1", "circumference", "shift speed"});
  EXPECT_EQ(first.result().certainty(), Certainty::from_memory);
  layshaft_test::expect_watched(std::array{Corner::nominal},
                                [&](auto watch, Corner) { return detail::world_cycle_shift_up(watch, parts, 3); },
                                {"rated power", "unladen mass", "shift share", "idle speed", "rated engine speed",
                                 "shift engine speed", "overall ratio 3", "circumference", "shift speed"});
  layshaft_test::expect_watched(std::array{Corner::nominal},
                                [&](auto watch, Corner) { return detail::world_cycle_clutch(watch, parts); },
                                {"idle speed", "rated engine speed", "shift share", "shift engine speed",
                                 "overall ratio 2", "circumference", "shift speed"});
}

TEST(ShiftFormulas, AskForTheirRange) {
  using layshaft_test::expect_range;
  expect_range<formula::shift_share>("00", 72_kW, 199_kg);
  expect_range<formula::first_shift_share>("f", 0.35);
  expect_range<formula::shift_engine_speed>("fff", 1150_rpm, 11800_rpm, 0.35);
  EXPECT_NEAR(shift_share(72_kW, 199_kg), 0.349, 0.0005);  // as the example recalls it
}

TEST(ShiftRule, HoldsFifteenShiftsAtTheMost) {
  ShiftSpeeds fifteen, sixteen;
  for (int i = 1; i <= 16; ++i) {
    if (i <= 15) fifteen.push_back(10.0 * i * units::kmh);
    sixteen.push_back(10.0 * i * units::kmh);
  }
  EXPECT_TRUE(ShiftRule::make(fifteen, fifteen));
  for (const auto& [up, down] : {std::pair{sixteen, fifteen}, {fifteen, sixteen}}) {
    const auto rule = ShiftRule::make(up, down);
    ASSERT_FALSE(rule);
    EXPECT_EQ(std::string(rule.error().what()), "number of shifts is more than 15; expected 0 to 15");
  }
  OverallRatios seventeen;
  for (int i = 0; i < 17; ++i) seventeen.push_back(40.0 - i);
  for (const auto& [ratios, got] : {std::pair<OverallRatios, std::string>{seventeen, "more than 16"}, {{}, "0"}}) {
    const auto rule = ShiftRule::try_at_engine_speeds(6000_rpm, 2000_rpm, ratios, 2_m);
    ASSERT_FALSE(rule);
    EXPECT_EQ(std::string(rule.error().what()), "number of gears is " + got + "; expected 1 to 16");
  }
}

}  // namespace
