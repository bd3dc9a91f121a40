// SPDX-License-Identifier: MIT
#include <layshaft/road/speed_run.hpp>

#include "invented_powertrain.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <random>
#include <string>

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

/// An engine of 20 N m throughout before two gears, on a machine of 225 kg: between shifts all is constant, by hand.
struct EvenRun {
  static constexpr double first = 3.05 * 1.9 * 48.0 / 13.0, second = 3.05 * 1.42 * 48.0 / 13.0,
                          radius = 2.02 / (2.0 * pi);
  static constexpr double rolling_mass = 225.0 + 1.1 / (radius * radius);
  static constexpr double shift_speed = 200.0 * pi * radius / first;  // at 6000 rpm: 34 km/h

  [[nodiscard]] static Powertrain train() {
    return trail_train([](PowertrainParts& p) {
      const EngineCurve even({1000_rpm, 9000_rpm}, {20_Nm, 20_Nm});
      p.engine = Engine(EngineParts{.curve = {even, even, even}, .inertia = 0.011_kg_m2});
      p.gearbox = Gearbox({.primary = 3.05, .gears = {1.9, 1.42}, .idle = 900_rpm, .rev_limit = 9000_rpm});
    });
  }
  [[nodiscard]] static double acceleration(double ratio, double resistance) {
    return (20.0 * ratio * 0.92 / radius - resistance) /
           (rolling_mass + 0.011 * ratio * ratio * 0.92 / (radius * radius));
  }
  static SpeedRun run(Speed start, Speed end, const SpeedRunParts& how,
                      const RoadCoefficients& road = {.constant = 60_N}) {
    return try_time_to_speed(train(), RoadLoad(road), start, end, how).value();
  }
};

TEST(SpeedRun, CoastsWhileItShifts) {
  const double v0 = 15.0 / 3.6, v = EvenRun::shift_speed, v1 = 55.0 / 3.6, shift = 0.5;
  // On the level it slows down by 60 N; where the hill drives as much as that, neither in the shift nor before.
  for (const double resistance : {60.0, 0.0}) {
    const Slope slope = resistance > 0.0 ? Slope() : Slope(-60.0 / (225.0 * 9.80665));
    const SpeedRun run =
        EvenRun::run(15_kmh, 55_kmh, {.slope = slope, .shift_time = shift * units::s, .shift_at = 6000_rpm});
    const double lower = EvenRun::acceleration(EvenRun::first, resistance);
    const double upper = EvenRun::acceleration(EvenRun::second, resistance);
    const double slowing = resistance / EvenRun::rolling_mass, after = v - slowing * shift;
    ASSERT_TRUE(run.reaches);
    EXPECT_NEAR(run.time->nominal.value(), (v - v0) / lower + shift + (v1 - after) / upper, 1e-9);
    const double way =
        0.5 * (v * v - v0 * v0) / lower + shift * (v - 0.5 * slowing * shift) + 0.5 * (v1 * v1 - after * after) / upper;
    EXPECT_NEAR(run.distance->nominal.value(), way, 1e-8);
    const double rolled = 60.0 * std::cos(slope.angle().value()) * way;
    EXPECT_NEAR(run.energy.rolling.value(), rolled, 1e-6);
    EXPECT_NEAR(run.energy.climb.value(), resistance > 0.0 ? 0.0 : -rolled, 1e-6);
    EXPECT_EQ(run.energy.drag, 0_J);
    EXPECT_NEAR(run.energy.rest() / run.energy.engine_work, 0.0, 1e-9);
  }
}

/// The same against a drag of c v^2 alone: t = m/(2 sqrt(F c)) ln of ((w + v1)(w - v0)/((w - v1)(w + v0))), w^2 = F/c,
/// and m/(2c) ln((F - c v0^2)/(F - c v1^2)) of way; without thrust v/(1 + c v t/m), and m/c ln(1 + c v t/m).
TEST(SpeedRun, CoastsAgainstTheAirWhileItShifts) {
  const double c = 1.5, v0 = 15.0 / 3.6, v = EvenRun::shift_speed, v1 = 50.0 / 3.6, shift = 0.8;
  double time = shift, way = 0.0;
  const auto pull = [&](double ratio, double from, double to) {
    const double mass = EvenRun::rolling_mass + 0.011 * ratio * ratio * 0.92 / (EvenRun::radius * EvenRun::radius);
    const double force = 20.0 * ratio * 0.92 / EvenRun::radius, top = std::sqrt(force / c);
    time += mass / (2.0 * std::sqrt(force * c)) * std::log((top + to) * (top - from) / ((top - to) * (top + from)));
    way += mass / (2.0 * c) * std::log((force - c * from * from) / (force - c * to * to));
  };
  const double slowing = 1.0 + c * v * shift / EvenRun::rolling_mass;
  way += EvenRun::rolling_mass / c * std::log(slowing);
  pull(EvenRun::first, v0, v);
  pull(EvenRun::second, v / slowing, v1);
  const SpeedRun run = EvenRun::run(15_kmh, 50_kmh, {.shift_time = shift * units::s, .shift_at = 6000_rpm},
                                    {.quadratic = c * units::kg_per_m});
  EXPECT_NEAR(run.time->nominal.value(), time, 1e-9);
  EXPECT_NEAR(run.distance->nominal.value(), way, 1e-8);
}

TEST(SpeedRun, EndsWhereTheMachineStopsInAShift) {
  const Slope hill(0.2);
  const double slowing = (60.0 * std::cos(hill.angle().value()) + 225.0 * 9.80665 * std::sin(hill.angle().value())) /
                         EvenRun::rolling_mass;
  const double stop = EvenRun::shift_speed / slowing;  // 4.7 s
  const auto run = [&](double shift) {
    return EvenRun::run(20_kmh, 40_kmh, {.slope = hill, .shift_time = shift * units::s, .shift_at = 6000_rpm});
  };
  EXPECT_TRUE(run(0.99 * stop).reaches);
  EXPECT_FALSE(run(1.01 * stop).may_reach);
  EXPECT_EQ(run(1.01 * stop).shifts.size(), 1u);
}

TEST(SpeedRun, BeginsInTheGearOfItsSpeed) {
  const Speed shift = Speed::from_value(EvenRun::shift_speed), end = 55_kmh;
  const SpeedRunParts how{.shift_at = 6000_rpm};
  EXPECT_EQ(EvenRun::run(0.999 * shift, end, how).shifts.size(), 1u);
  const SpeedRun second = EvenRun::run(1.001 * shift, end, how);
  EXPECT_TRUE(second.shifts.empty());
  EXPECT_NEAR(second.time->nominal.value(),
              (end - 1.001 * shift).value() / EvenRun::acceleration(EvenRun::second, 60.0), 1e-9);
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

// A torque that rises or falls evenly by 0.0045 N m an rpm, against 300 N: a torque of 300 r/(0.92 ratio) in the gear.
TEST(SpeedRun, EndsWhereTheThrustFallsToTheResistance) {
  const RoadLoad road(RoadCoefficients{.constant = 300_N});
  const double first = EvenRun::first, torque = 300.0 * EvenRun::radius / (first * 0.92);  // 4.9 N m
  const auto train = [](Torque at_1000, Torque at_9000, int gears) {
    return trail_train([&](PowertrainParts& p) {
      const EngineCurve curve({1000_rpm, 9000_rpm}, {at_1000, at_9000});
      p.engine = Engine(EngineParts{.curve = {curve, curve, curve}, .inertia = 0.011_kg_m2});
      FixedList<GearRatio, most_gears> ratios{1.9};
      if (gears == 2) ratios.push_back(1.42);
      p.gearbox = Gearbox({.primary = 3.05, .gears = ratios, .idle = 900_rpm, .rev_limit = 9000_rpm});
    });
  };
  const auto at = [&](double rpm) { return rpm * (2.0 * pi / 60.0) * EvenRun::radius / first * units::mps; };
  const auto reaches = [&](const Powertrain& with, double from, double to, const SpeedRunParts& how = {}) {
    const SpeedRun run = try_time_to_speed(with, road, at(from), at(to), how).value();
    EXPECT_EQ(run.reaches, run.may_reach);
    return run.reaches;
  };
  const double falling = 9000.0 - (torque - 2.0) / 0.0045, rising = 1000.0 + (torque - 2.0) / 0.0045;
  const Powertrain fading = train(38_Nm, 2_Nm, 1), growing = train(2_Nm, 38_Nm, 1);
  EXPECT_TRUE(reaches(fading, 2000.0, falling - 3.0));
  EXPECT_FALSE(reaches(fading, 2000.0, falling + 3.0));
  EXPECT_TRUE(reaches(growing, rising + 20.0, 5000.0));
  EXPECT_FALSE(reaches(growing, rising - 20.0, 5000.0));
  // The next gear would still pull, but the rider waits for a speed that this one never reaches.
  const Powertrain two = train(38_Nm, 2_Nm, 2);
  EXPECT_TRUE(reaches(two, 2000.0, falling + 3.0, {.shift_at = (falling - 20.0) * units::rpm}));
  EXPECT_FALSE(reaches(two, 2000.0, falling + 3.0, {.shift_at = (falling + 20.0) * units::rpm}));
}

TEST(SpeedRun, NeedsAClutchThatHoldsTheHill) {
  const auto may = [](Torque clutch) {
    const Powertrain train = trail_train([&](PowertrainParts& p) {
      EngineParts engine = p.engine.parts();
      engine.clutch_torque = clutch;
      p.engine = Engine(engine);
    });
    return try_time_to_speed(train, trail_road(), 0_kmh, 20_kmh, {.slope = Slope(0.2)})->may_reach;
  };
  // On 20 % the hill takes 225 g sin(atan(0.2)) = 433 N and the tyres 44 N: in first gear of 30.4 to one and a wheel of
  // 0.3215 m, of which 0.92 arrives, that is 5.5 N m.
  EXPECT_TRUE(may(6_Nm));
  EXPECT_FALSE(may(5_Nm));
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
  const Powertrain bare = trail_train([](PowertrainParts& p) { p.body.reset(); });
  const auto of_bare = [&](const RoadLoad& road, const SpeedRunParts& how) {
    const auto run = try_time_to_speed(bare, road, 0_kmh, 40_kmh, how);
    return run ? std::string() : std::string(run.error().what());
  };
  const RoadLoad laden = trail_road().carrying(225_kg);
  EXPECT_EQ(of_bare(laden, {}), "");
  EXPECT_EQ(of_bare(laden, {.ground = SurfaceKind::gravel}), "a run on a ground needs the machine's body");
  EXPECT_TRUE(of_bare(trail_road(), {}).starts_with("a slope needs the mass that climbs it"));
}

/// One torque at every speed, two gears, and nothing that turns in the engine: what algebra can follow.
Powertrain of_one_torque(Mass mass = 225_kg) {
  return trail_train([&](PowertrainParts& p) {
    p.engine = EngineCurve({1000_rpm, 9000_rpm}, {20_Nm, 20_Nm});
    p.gearbox = Gearbox({.primary = 3.05, .gears = {1.42, 1.1}, .idle = 900_rpm, .rev_limit = 9000_rpm});
    p.body = Body({.mass = mass, .wheel_inertia = 1.1_kg_m2});
  });
}
constexpr double wheel_radius = 2.02 / (2.0 * pi);
double thrust_of_one_torque(double gear) { return 20.0 * 3.05 * gear * 48.0 / 13.0 * 0.92 / wheel_radius; }
double moved_of_one_torque(double mass) { return mass + 1.1 / (wheel_radius * wheel_radius); }
/// What a run has more of than one whose shifts take no time: from the shift at 6000 rpm in the first of two gears.
struct Coasted {
  double speed, time, distance;
  EnergyBalance energy;
  Coasted(const Powertrain& train, const RoadLoad& road, Speed from, Speed to, const Slope& slope, Duration shift)
      : speed(train.speed(6000_rpm, 1, Corner::nominal).value()) {
    const SpeedRun slow =
        try_time_to_speed(train, road, from, to, {.slope = slope, .shift_time = shift, .shift_at = 6000_rpm}).value();
    const SpeedRun quick =
        try_time_to_speed(train, road, from, to, {.slope = slope, .shift_time = 0_s, .shift_at = 6000_rpm}).value();
    time = (slow.time->nominal - quick.time->nominal).value();
    distance = (slow.distance->nominal - quick.distance->nominal).value();
    energy = slow.energy;
    expect_balanced(slow);
  }
};

TEST(SpeedRun, CoastsThroughAShiftAsAlgebraSays) {
  const double moved = moved_of_one_torque(225.0);
  const double slowing = 60.0 / moved, pulling = (thrust_of_one_torque(1.1) - 60.0) / moved;
  for (const double shift : {0.1, 0.3, 0.35, 0.5, 0.7, 1.0, 2.0, 3.3}) {
    const Coasted shifted(of_one_torque(), RoadLoad({.constant = 60_N}), 40_kmh, 80_kmh, Slope(), shift * units::s);
    // It loses v - u while it coasts, and the second gear has to win that back.
    const double v = shifted.speed, u = v - slowing * shift;
    EXPECT_NEAR(shifted.time, shift + (v - u) / pulling, 1e-12) << shift;
    EXPECT_NEAR(shifted.distance, 0.5 * (v + u) * shift + 0.5 * (v * v - u * u) / pulling, 1e-11) << shift;
  }
}

TEST(SpeedRun, CoastsOnAtTheSpeedAtWhichHillAndAirBalance) {
  const Powertrain train = of_one_torque();
  const double v = train.speed(6000_rpm, 1, Corner::nominal).value(), weight = 225.0 * 9.80665;
  // 60 cos a + m g sin a + 0.3 v^2 = 0: both together are a sine of another angle.
  const double slope = -std::asin(0.3 * v * v / std::hypot(60.0, weight)) - std::atan(60.0 / weight);
  const Coasted shifted(train, RoadLoad({.constant = 60_N, .quadratic = 0.3_kg_per_m}), 40_kmh, 80_kmh,
                        Slope(slope * units::rad), 2_s);
  EXPECT_NEAR(shifted.time, 2.0, 1e-11);
  EXPECT_NEAR(shifted.distance, 2.0 * v, 1e-10);
}

// Once, where a coast came near the speed at which hill and air balance, the machine was taken to keep its own: its
// speed goes with the hyperbolic tangent, or, from above, with its inverse.
TEST(SpeedRun, CoastsTowardsTheSpeedAtWhichHillAndAirBalance) {
  for (const double mass : {20.0, 130.0})
    for (const double balance : {12.0, 21.0, 24.0, 40.0})
      for (const double shift : {0.3, 10.0}) {
        const Powertrain train = of_one_torque(mass * units::kg);
        const double v = train.speed(6000_rpm, 1, Corner::nominal).value(), air = 0.4;
        const double fall = air * balance * balance / (mass * 9.80665);
        if (fall > 0.9) continue;  // no slope is so steep
        const double moved = moved_of_one_torque(mass), turns = air * balance / moved * shift;
        const double grown = std::exp(-2.0 * turns), off = (v - balance) / (v + balance) * grown;
        const double u = balance * (1.0 + off) / (1.0 - off);
        const double way = moved / air * (turns + std::log((1.0 - off) / (1.0 - off / grown)));
        const double pulled = thrust_of_one_torque(1.1) / moved;
        // the second gear from the one speed to the other: thrust + air (balance^2 - v^2) = air (top^2 - v^2)
        const double top = std::sqrt(balance * balance + pulled * moved / air);
        const auto time_to = [&](double to) { return moved / (air * top) * std::atanh(to / top); };
        const auto way_to = [&](double to) { return -0.5 * moved / air * std::log(top * top - to * to); };
        const Speed end = std::max(80.0 / 3.6, 1.01 * u) * units::mps;
        if (end > train.speed(9000_rpm, 2, Corner::nominal)) continue;
        const Coasted shifted(train, RoadLoad({.quadratic = air * units::kg_per_m}), 40_kmh, end,
                              Slope(-std::asin(fall) * units::rad), shift * units::s);
        EXPECT_NEAR(shifted.time, shift + time_to(v) - time_to(u), 1e-10) << mass << ' ' << balance << ' ' << shift;
        EXPECT_NEAR(shifted.distance, way + way_to(v) - way_to(u), 1e-9) << mass << ' ' << balance << ' ' << shift;
      }
}

// Once, the machine was taken to stop where it would if it went on slowing as at first: 1/v grows evenly with time.
TEST(SpeedRun, CoastsEverMoreSlowlyAgainstTheAirAlone) {
  const double air = 0.8, moved = moved_of_one_torque(20.0), top = std::sqrt(thrust_of_one_torque(1.1) / air);
  const auto time_to = [&](double to) { return moved / (air * top) * std::atanh(to / top); };
  const auto way_to = [&](double to) { return -0.5 * moved / air * std::log(top * top - to * to); };
  for (const double shift : {0.2, 1.0, 5.0}) {
    const Coasted shifted(of_one_torque(20_kg), RoadLoad({.quadratic = air * units::kg_per_m}), 40_kmh, 80_kmh, Slope(),
                          shift * units::s);
    const double v = shifted.speed, u = v / (1.0 + air / moved * v * shift);
    EXPECT_NEAR(shifted.time, shift + time_to(v) - time_to(u), 1e-11) << shift;
    EXPECT_NEAR(shifted.distance, moved / air * std::log(v / u) + way_to(v) - way_to(u), 1e-10) << shift;
  }
}

// A resistance that grows as the machine slows, which fits of a coast-down tell: F = 200 N - 12 N/(m/s) v.
TEST(SpeedRun, CoastsAgainstAResistanceThatGrowsAsItSlows) {
  const double moved = moved_of_one_torque(225.0), rate = 12.0 / moved, level = 200.0 / 12.0;
  const RoadLoad road({.constant = 200_N, .linear = -12.0 * units::N_per_mps});
  const Powertrain train = trail_train([](PowertrainParts& p) {
    p.engine = EngineCurve({1000_rpm, 9000_rpm}, {20_Nm, 20_Nm});
    p.gearbox = Gearbox({.primary = 3.05, .gears = {2.0, 1.6}, .idle = 900_rpm, .rev_limit = 9000_rpm});
    p.body = Body({.mass = 225_kg, .wheel_inertia = 1.1_kg_m2});
  });
  const double pushed = thrust_of_one_torque(1.6) / 12.0 - level;  // of the second gear: dv/dt = rate (v + pushed)
  for (const double shift : {0.3, 3.0, 8.0}) {
    const Coasted shifted(train, road, 30_kmh, 60_kmh, Slope(), shift * units::s);
    const double v = shifted.speed, u = level - (level - v) * std::exp(rate * shift);
    ASSERT_GT(u, 5.0);
    const double back = std::log((v + pushed) / (u + pushed)) / rate;
    EXPECT_NEAR(shifted.time, shift + back, 1e-11) << shift;
    EXPECT_NEAR(shifted.distance,
                (level * shift - (level - v) * std::expm1(rate * shift) / rate) + ((v - u) / rate - pushed * back),
                1e-10)
        << shift;
  }
}

TEST(SpeedRun, StopsInAShiftThatIsTooLongForTheHill) {
  // 20 km/h on 20 %: that is lost within 3 s without thrust, and within none of 0.3 s.
  const SpeedRunParts slow{.slope = Slope(0.2), .shift_time = 10_s, .shift_at = 4000_rpm};
  const SpeedRun stopped = try_time_to_speed(trail_train(), trail_road(), 15_kmh, 40_kmh, slow).value();
  EXPECT_FALSE(stopped.may_reach);
  EXPECT_EQ(stopped.time, std::nullopt);
  ASSERT_EQ(stopped.shifts.size(), 1u);
  SpeedRunParts quick = slow;
  quick.shift_time = 0.3_s;
  EXPECT_TRUE(try_time_to_speed(trail_train(), trail_road(), 15_kmh, 40_kmh, quick)->reaches);
}

}  // namespace
