// SPDX-License-Identifier: MIT
#include <layshaft/road/speed_run.hpp>

#include "invented_powertrain.hpp"

#include <gtest/gtest.h>

#include <random>

namespace {
using namespace layshaft_test;

/// Constant torque in one gear on a road of constant resistance: v = a t, by hand.
TEST(SpeedRun, OfConstantForceIsThatOfAlgebra) {
  const Powertrain train = trail_train([](PowertrainParts& p) {
    p.engine = Engine(EngineParts{
        .curve = {EngineCurve({1000_rpm, 9000_rpm}, {20_Nm, 20_Nm}), EngineCurve({1000_rpm, 9000_rpm}, {20_Nm, 20_Nm}),
                  EngineCurve({1000_rpm, 9000_rpm}, {20_Nm, 20_Nm})},
        .inertia = 0.011_kg_m2});
    p.gearbox = Gearbox({.primary = 3.05, .gears = {1.42}, .idle = 900_rpm, .rev_limit = 9000_rpm});
  });
  const RoadLoad road(RoadCoefficients{.constant = 60_N});
  const SpeedRun run = try_time_to_speed(train, road, 20_kmh, 65_kmh).value();
  const double radius = 2.02 / (2.0 * pi), ratio = 3.05 * 1.42 * 48.0 / 13.0, efficiency = 0.92;
  const double mass = 225.0 + (1.1 + 0.011 * ratio * ratio * efficiency) / (radius * radius);
  const double acceleration = (20.0 * ratio * efficiency / radius - 60.0) / mass;
  const double v0 = 20.0 / 3.6, v1 = 65.0 / 3.6;
  ASSERT_TRUE(run.reaches);
  EXPECT_NEAR(run.time->nominal.value(), (v1 - v0) / acceleration, 1e-9);
  EXPECT_NEAR(run.distance->nominal.value(), 0.5 * (v1 * v1 - v0 * v0) / acceleration, 1e-8);
  EXPECT_TRUE(run.shifts.empty());
}

void expect_balanced(const SpeedRun& run) { EXPECT_NEAR(run.energy.rest() / run.energy.engine_work, 0.0, 1e-9); }

TEST(SpeedRun, LosesNoEnergy) {
  std::mt19937 random(7);
  std::uniform_real_distribution<double> share(0.0, 1.0);
  for (int i = 0; i < 9; ++i) {
    const Powertrain train = trail_train([&](PowertrainParts& p) {
      if (i % 2) p.drive_efficiency.reset();
    });
    const RoadLoad road(RoadCoefficients{.constant = (20.0 + 80.0 * share(random)) * units::N,
                                         .linear = 0.5 * share(random) * units::N_per_mps,
                                         .quadratic = (0.2 + 0.3 * share(random)) * units::kg_per_m});
    const Speed start = (i % 3 == 0 ? 0.0 : 40.0 * share(random)) * units::kmh;
    const SpeedRun run =
        try_time_to_speed(train, road, start, start + 45_kmh,
                          {.slope = Slope(0.3 * (share(random) - 0.5)), .shift_time = 0.4 * share(random) * units::s})
            .value();
    EXPECT_TRUE(run.may_reach);
    expect_balanced(run);
    EXPECT_GT(run.energy.drive_loss, 0_J);
    EXPECT_GT(run.energy.kinetic, 0_J);
    EXPECT_EQ(run.energy.clutch_heat > 0_J, start < train.speed(2700_rpm, 1, Corner::nominal));
  }
}

TEST(SpeedRun, TakesLongerWithEveryShift) {
  const auto time = [](Duration shift) {
    return try_time_to_speed(trail_train(), trail_road(), 10_kmh, 80_kmh, {.shift_time = shift})->time->nominal;
  };
  EXPECT_LT(time(0_s), time(0.2_s));
  EXPECT_LT(time(0.2_s), time(0.6_s));
  const SpeedRun run = try_time_to_speed(trail_train(), trail_road(), 10_kmh, 80_kmh).value();
  EXPECT_EQ(run.shifts.size(), 3u);
  EXPECT_EQ(run.shifts[0].gear, 1);
}

TEST(SpeedRun, ShiftsWhereItIsTold) {
  const SpeedRunParts early{.shift_at = 6000_rpm};
  const SpeedRun run = try_time_to_speed(trail_train(), trail_road(), 15_kmh, 60_kmh, early).value();
  for (const ShiftPoint& shift : run.shifts) EXPECT_EQ(shift.engine_speed_before, 6000_rpm);
  expect_balanced(run);
  EXPECT_GT(run.time->nominal, try_time_to_speed(trail_train(), trail_road(), 15_kmh, 60_kmh)->time->nominal);
}

TEST(SpeedRun, WithRotatingMassTakesLonger) {
  const auto time = [](MomentOfInertia inertia) {
    const Powertrain train = trail_train([&](PowertrainParts& p) {
      EngineParts engine = p.engine.parts();
      engine.inertia = inertia;
      p.engine = Engine(engine);
    });
    return try_time_to_speed(train, trail_road(), 15_kmh, 60_kmh)->time->nominal;
  };
  EXPECT_LT(time(0_kg_m2), time(0.011_kg_m2));
}

TEST(SpeedRun, OnAGroundIsNoFasterThanTheGroundAllows) {
  const SpeedRunParts free{}, asphalt{.ground = SurfaceKind::asphalt}, gravel{.ground = SurfaceKind::loose_gravel};
  const auto run = [](const SpeedRunParts& how) {
    return try_time_to_speed(trail_train(), trail_road(), 0_kmh, 35_kmh, how).value();
  };
  // on asphalt the engine spends enough on its own turning; the front wheel stays down
  EXPECT_EQ(run(free).time->nominal, run(asphalt).time->nominal);
  EXPECT_LT(run(free).time->nominal, run(gravel).time->nominal);
  EXPECT_LT(run(gravel).time->low, run(gravel).time->high);
  expect_balanced(run(gravel));
  // on loose gravel the ground holds the thrust from standstill to the end, and only the air takes of it
  const Force limit = thrust_limit(*trail_parts().body, surface(SurfaceKind::loose_gravel)).thrust.nominal;
  const double at_start = (limit - 45_N).value() / 225.0, at_end = (limit - 45_N).value() / 225.0 - 0.16;
  EXPECT_GT(run(gravel).time->nominal.value(), 35.0 / 3.6 / at_start);
  EXPECT_LT(run(gravel).time->nominal.value(), 35.0 / 3.6 / at_end);
  EXPECT_FALSE(try_time_to_speed(trail_train([](PowertrainParts& p) { p.body = Body({.mass = 200_kg}); }), trail_road(),
                                 0_kmh, 35_kmh, asphalt));
}

TEST(SpeedRun, ThatDoesNotGetThereIsAnAnswer) {
  const SpeedRun uphill =
      try_time_to_speed(trail_train(), trail_road(), 20_kmh, 110_kmh, {.slope = Slope(0.3)}).value();
  EXPECT_FALSE(uphill.reaches);
  EXPECT_FALSE(uphill.may_reach);
  EXPECT_EQ(uphill.time, std::nullopt);
  const SpeedRun beyond = try_time_to_speed(trail_train(), trail_road(), 20_kmh, 300_kmh).value();
  EXPECT_FALSE(beyond.reaches);
  const SpeedRun stuck =
      try_time_to_speed(trail_train(), trail_road(), 0_kmh, 30_kmh, {.slope = Slope(70_deg)}).value();
  EXPECT_FALSE(stuck.may_reach);
}

TEST(SpeedRun, OfNothingTakesNoTime) {
  const SpeedRun run = try_time_to_speed(trail_train(), trail_road(), 50_kmh, 50_kmh).value();
  EXPECT_EQ(run.time->nominal, 0_s);
  EXPECT_EQ(run.energy, EnergyBalance());
}

TEST(SpeedRun, SaysWhatIsWrong) {
  const auto refusal = [](Speed start, Speed end, const SpeedRunParts& how = {}) {
    const auto run = try_time_to_speed(trail_train(), trail_road(), start, end, how);
    return run ? std::string() : std::string(run.error().what());
  };
  EXPECT_EQ(refusal(60_kmh, 40_kmh), "end is 40 km/h; expected 60 km/h to 1000 km/h");
  EXPECT_TRUE(refusal(-1_kmh, 40_kmh).starts_with("start is -1 km/h"));
  EXPECT_TRUE(refusal(0_kmh, 40_kmh, {.shift_time = 11_s}).starts_with("shift_time is 11 s"));
  EXPECT_TRUE(refusal(0_kmh, 40_kmh, {.shift_at = 1000_rpm}).starts_with("shift_at is 1000 rpm"));
}

}  // namespace
