// SPDX-License-Identifier: MIT
#include <layshaft/road/acceleration.hpp>

#include <layshaft/core/recorder.hpp>
#include <layshaft/gearing/speed.hpp>

#include <gtest/gtest.h>
#include <boost/math/tools/minima.hpp>
#include <core/formula_range.hpp>
#include <reference/road_examples.hpp>
#include <tyre/watched.hpp>

#include <cmath>
#include <limits>
#include <random>

namespace {
using namespace layshaft;
using layshaft_test::printed_number;

constexpr Length rolled(double radius) { return 2.0 * pi * radius * units::m; }

// Source: a university's vehicle dynamics course, propulsion limits, example 1: 60.5046 km/h and 3330.5 N.
TEST(DriveThrust, IsThatOfTheCourse) {
  EXPECT_NEAR(in(road_speed(3200_rpm, 1.46 * 3.944, rolled(0.2888)), units::kmh), printed_number("TB01", 0), 0.00005);
  EXPECT_NEAR(in(drive_thrust(174_Nm, 1.46 * 3.944, 0.96, rolled(0.2888)), units::N), printed_number("TB01", 1), 0.05);
}

// Source: published lecture notes on gear systems: 20 kW at 1500 rpm, down to 300 rpm at 70 %: 127.3 Nm, 445.6 Nm.
TEST(DriveThrust, IsTorqueTimesRatioTimesEfficiencyOverRadius) {
  const Torque in_torque = 20_kW / 1500_rpm;
  EXPECT_NEAR(in(in_torque, units::Nm), printed_number("TB16", 0), 0.05);
  EXPECT_NEAR(in(drive_thrust(in_torque, 5.0, 0.70, rolled(1.0)), units::N), printed_number("TB16", 2), 0.05);
}

// Source: the same course, example 3: mass factor of third gear 1.0757 with one term of the wheels, worked out anew.
TEST(EquivalentMass, IsThatOfTheCourse) {
  const double overall = 1.46 * 3.944;
  const Mass engine = engine_mass(MomentOfInertia::from_value(0.09 + 0.0791), overall, 1.0, rolled(0.2876));
  const Mass shaft = engine_mass(MomentOfInertia::from_value(0.1356), 3.944, 1.0, rolled(0.2876));
  const Mass wheels = wheel_mass(1.24_kg_m2, rolled(0.2876));
  EXPECT_NEAR((equivalent_mass(1430_kg, wheels, engine) + shaft) / 1430_kg, 1.0757, 0.00005);
}

// Source: Khurmi and Gupta, Theory of Machines, example 3.15: G = 22, a = 1.38 m/s2; worked out anew 21.77 and 1.3780.
const DriveParts textbook{.mass = 1500_kg,
                          .wheel_inertia = 8_kg_m2,
                          .engine_inertia = 1_kg_m2,
                          .drive_efficiency = 0.85,
                          .circumference = rolled(0.3),
                          .torque = 200_Nm,
                          .resistance = (300.0 + 1500.0 * 9.81 * 0.25) * units::N};

TEST(BestRatio, IsThatOfTheTextbook) {
  const double best = best_ratio_for(textbook);
  EXPECT_NEAR(best, printed_number("TB07", 0), 0.5);
  EXPECT_NEAR(best, 21.77, 0.005);
  EXPECT_NEAR(in(acceleration_in(textbook, best), units::mps2), 1.3780, 0.00005);
  EXPECT_NEAR(in(acceleration_in(textbook, 22.0), units::mps2), printed_number("TB07", 1), 0.005);
  EXPECT_NEAR(in(acceleration_in(textbook, 22.0), units::mps2), 1.3779, 0.00005);
  const AngularSpeed turning = engine_speed(Speed::from_value(6.67), 22.0, rolled(0.3));
  EXPECT_NEAR(turning.value(), printed_number("TB07", 4), 0.5);
  EXPECT_NEAR(in(200_Nm * turning, units::kW), printed_number("TB07", 5), 0.05);
}

TEST(BestRatio, IsWhereNoOtherRatioSpeedsUpMore) {
  std::mt19937_64 random(3);
  const auto between = [&](double low, double high) {
    return low + (high - low) * std::uniform_real_distribution<double>(0.0, 1.0)(random);
  };
  for (int round = 0; round < 200; ++round) {
    const DriveParts parts{.mass = between(80, 400) * units::kg,
                           .wheel_inertia = between(0.1, 3.0) * units::kg_m2,
                           .engine_inertia = between(0.001, 0.1) * units::kg_m2,
                           .drive_efficiency = between(0.8, 1.0),
                           .circumference = between(1.4, 2.2) * units::m,
                           .torque = between(5, 100) * units::Nm,
                           .resistance = between(0, 800) * units::N};
    const double best = best_ratio_for(parts);
    const auto slowness = [&](double ratio) { return -acceleration_in(parts, ratio).value(); };
    const auto [found, least] = boost::math::tools::brent_find_minima(slowness, 0.5 * best, 2.0 * best, 40);
    EXPECT_NEAR(found / best, 1.0, 1e-5);
    EXPECT_LE(slowness(best), least + 1e-12);
  }
}

TEST(Acceleration, BalancesPowerAsItsEfficiencySays) {
  // Engine work = loss + resistance + kinetic, with the engine's whole inertia, and the loss (1 - eta)(T - I a_e) w.
  const double i = 14.0, circumference = 2.0, v = 9.0;
  const DriveParts parts{.mass = 210_kg,
                         .wheel_inertia = 1.1_kg_m2,
                         .engine_inertia = 0.02_kg_m2,
                         .drive_efficiency = 0.93,
                         .circumference = circumference * units::m,
                         .torque = 24_Nm,
                         .resistance = 160_N};
  const double a = acceleration_in(parts, i).value(), turns = 2.0 * pi / circumference;
  const double w_wheel = v * turns, w = i * w_wheel, dw = a * turns * i;
  const double loss = (1.0 - 0.93) * (24.0 - 0.02 * dw) * w;
  const double kinetic = 210.0 * a * v + 1.1 * a * turns * w_wheel + 0.02 * dw * w;
  EXPECT_NEAR(24.0 * w, loss + 160.0 * v + kinetic, 1e-9 * 24.0 * w);
}

TEST(Overrun, DividesByTheEfficiency) {
  EXPECT_NEAR(overrun_thrust(10_Nm, 14.0, 0.9, 2_m) / drive_thrust(10_Nm, 14.0, 1.0, 2_m), 1.0 / 0.9, 1e-15);
  EXPECT_NEAR(overrun_engine_mass(0.02_kg_m2, 14.0, 0.9, 2_m) / engine_mass(0.02_kg_m2, 14.0, 0.9, 2_m), 1.0 / 0.81,
              1e-15);
}

TEST(Acceleration, NamesWhatLiesOutsideItsRange) {
  constexpr double nothing = std::numeric_limits<double>::quiet_NaN();
  const auto refusal = [](auto change, bool best = false) {
    DriveParts parts = textbook;
    change(parts);
    if (best) {
      const auto made = try_best_ratio_for(parts);
      return made ? std::string("none") : std::string(made.error().what());
    }
    const auto made = try_acceleration_in(parts, 10.0);
    return made ? std::string("none") : std::string(made.error().what());
  };
  EXPECT_EQ(refusal([](DriveParts&) {}), "none");
  EXPECT_TRUE(refusal([](DriveParts& p) { p.mass = 0_kg; }).starts_with("mass is 0 kg"));
  EXPECT_TRUE(refusal([](DriveParts& p) { p.wheel_inertia = -1.0 * units::kg_m2; }).starts_with("wheel_inertia is"));
  EXPECT_TRUE(refusal([](DriveParts& p) { p.engine_inertia = 1001_kg_m2; }).starts_with("engine_inertia is"));
  EXPECT_TRUE(refusal([](DriveParts& p) { p.drive_efficiency = 1.01; }).starts_with("drive_efficiency is 1.01"));
  EXPECT_TRUE(refusal([](DriveParts& p) { p.circumference = 0_m; }).starts_with("circumference is 0 mm"));
  EXPECT_TRUE(refusal([](DriveParts& p) { p.torque = 0_Nm; }).starts_with("torque is 0 Nm"));
  EXPECT_TRUE(refusal([&](DriveParts& p) { p.resistance = nothing * units::N; }).starts_with("resistance is not"));
  EXPECT_EQ(refusal([](DriveParts& p) { p.resistance = -(100_N); }), "none");
  EXPECT_TRUE(refusal([](DriveParts& p) { p.resistance = -(100_N); }, true).starts_with("resistance is -100 N"));
  EXPECT_TRUE(refusal([](DriveParts& p) { p.engine_inertia = 0_kg_m2; }, true).starts_with("engine_inertia is 0"));
  EXPECT_FALSE(try_acceleration_in(textbook, 0.0));
  EXPECT_THROW((void)acceleration_in(textbook, nothing), RangeError);
}

TEST(Acceleration, TellsItsSteps) {
  layshaft_test::expect_watched(
      std::array{Corner::nominal}, [](auto watch, Corner) { return detail::acceleration_of(watch, textbook, 10.0); },
      {"engine torque", "overall ratio", "drive efficiency", "circumference", "thrust", "wheel inertia", "wheel mass",
       "engine inertia", "engine mass", "mass", "equivalent mass", "resistance", "acceleration"});
  layshaft_test::expect_watched(
      std::array{Corner::nominal}, [](auto watch, Corner) { return detail::best_ratio_of(watch, textbook); },
      {"resistance", "engine torque", "drive efficiency", "circumference", "holding ratio", "wheel inertia",
       "wheel mass", "mass", "moved mass", "engine inertia", "overall ratio 1", "engine mass of one", "best ratio"});
}

TEST(AccelerationFormulas, AskForTheirRange) {
  using layshaft_test::expect_range;
  expect_range<formula::drive_thrust>("f+f+", 20_Nm, 14.0, 0.9, 2_m);
  expect_range<formula::overrun_thrust>("f+++", 20_Nm, 14.0, 0.9, 2_m);
  expect_range<formula::wheel_mass>("f+", 1_kg_m2, 2_m);
  expect_range<formula::engine_mass>("f+f+", 0.02_kg_m2, 14.0, 0.9, 2_m);
  expect_range<formula::overrun_engine_mass>("f+++", 0.02_kg_m2, 14.0, 0.9, 2_m);
  expect_range<formula::equivalent_mass>("fff", 200_kg, 10_kg, 20_kg);
  expect_range<formula::acceleration>("ff+", 500_N, 100_N, 230_kg);
  expect_range<formula::holding_ratio>("f+++", 500_N, 20_Nm, 0.9, 2_m);
  expect_range<formula::best_ratio>("0++", 7.0, 230_kg, 0.5_kg);
  expect_range<formula::moved_mass>("ff", 200_kg, 10_kg);
}

TEST(BestRatio, NamesThePartThatLiesOutsideItsRange) {
  const auto refusal = [](auto change) {
    DriveParts parts = textbook;
    change(parts);
    const auto best = try_best_ratio_for(parts);
    return best ? std::string("none") : std::string(best.error().what());
  };
  EXPECT_EQ(refusal([](DriveParts&) {}), "none");
  EXPECT_TRUE(refusal([](DriveParts& p) { p.mass = 0_kg; }).starts_with("mass is 0 kg"));
  EXPECT_TRUE(refusal([](DriveParts& p) { p.drive_efficiency = 1.1; }).starts_with("drive_efficiency is 1.1"));
}

}  // namespace
