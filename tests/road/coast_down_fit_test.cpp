// SPDX-License-Identifier: MIT
#include <layshaft/road/coast_down_fit.hpp>

#include <layshaft/road/coast_down.hpp>

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <random>
#include <string>
#include <vector>

namespace {
using namespace layshaft;

/// A coast-down run in steps of a millisecond by the classic Runge-Kutta method, with errors of a speedometer.
struct Coasting {
  std::vector<Duration> times;
  std::vector<Speed> speeds;

  Coasting(double mass, double constant, double linear, double quadratic, double start, int samples, double scatter,
           std::uint64_t seed) {
    std::mt19937_64 random(seed);
    std::normal_distribution<double> error(0.0, 1.0);
    const auto slow = [&](double v) { return -(constant + linear * v + quadratic * v * v) / mass; };
    double v = start;
    for (int i = 0; i < samples; ++i) {
      times.push_back(i * 1.0 * units::s);
      speeds.push_back((v + scatter * error(random)) * units::mps);
      constexpr double h = 0.05;
      for (int j = 0; j < 20; ++j) {
        const double a = slow(v), b = slow(v + 0.5 * h * a), c = slow(v + 0.5 * h * b), d = slow(v + h * c);
        v += h / 6.0 * (a + 2.0 * b + 2.0 * c + d);
      }
    }
  }
};

TEST(CoastDownFit, FindsTheTruthInALogWithoutErrors) {
  const Coasting run(220.0, 55.0, 0.0, 0.31, 30.0, 40, 0.0, 1);
  const CoastDownFit fit = fit_coast_down({.times = run.times, .speeds = run.speeds, .mass = 220_kg});
  EXPECT_NEAR(fit.road.constant().nominal.value(), 55.0, 1e-5);
  EXPECT_NEAR(fit.road.quadratic().nominal.value(), 0.31, 1e-7);
  EXPECT_NEAR(fit.start_speed.value(), 30.0, 1e-7);
  EXPECT_LT(fit.scatter, 1e-7_mps);
  EXPECT_EQ(fit.road.linear(), ForcePerSpeed());
  EXPECT_EQ(fit.road.kind(), RoadLoadKind::coast_down);
  EXPECT_EQ(fit.road.mass(), 220_kg);
  EXPECT_EQ(fit.freedom, 37);
  const Coasting bent(220.0, 40.0, 1.8, 0.25, 35.0, 60, 0.0, 1);
  const CoastDownFit all =
      fit_coast_down({.times = bent.times, .speeds = bent.speeds, .mass = 220_kg, .with_linear = true});
  EXPECT_NEAR(all.road.constant().nominal.value(), 40.0, 1e-4);
  EXPECT_NEAR(all.road.linear().value(), 1.8, 1e-4);
  EXPECT_NEAR(all.road.quadratic().nominal.value(), 0.25, 1e-5);
}

TEST(CoastDownFit, TellsHowSureItIs) {
  int constant = 0, quadratic = 0, force = 0;
  constexpr int rounds = 600;
  for (int round = 0; round < rounds; ++round) {
    const Coasting run(220.0, 55.0, 0.0, 0.31, 30.0, 35, 0.15, 100 + static_cast<std::uint64_t>(round));
    const CoastDownFit fit = fit_coast_down({.times = run.times, .speeds = run.speeds, .mass = 220_kg});
    const double k = fit.sureness();
    constant += std::fabs(fit.road.constant().nominal.value() - 55.0) <= k * fit.constant_uncertainty.value();
    quadratic += std::fabs(fit.road.quadratic().nominal.value() - 0.31) <= k * fit.quadratic_uncertainty.value();
    force += fit.resistance(20_mps).contains((55.0 + 0.31 * 400.0) * units::N);
    EXPECT_LT(fit.resistance(20_mps).width(), 2.0 * k * fit.constant_uncertainty * 1.5);
  }
  // 95 % of 600 are 570, with a standard deviation of 5.3: four of those either way.
  for (const int held : {constant, quadratic, force}) {
    EXPECT_GE(held, 570 - 22);
    EXPECT_LE(held, 570 + 22);
  }
}

// Student's factors to three decimals, from any table of them.
TEST(CoastDownFit, TakesStudentsFactor) {
  const Coasting run(220.0, 55.0, 0.0, 0.31, 30.0, 35, 0.0, 1);
  CoastDownFit fit = fit_coast_down({.times = run.times, .speeds = run.speeds, .mass = 220_kg});
  for (const auto& [freedom, factor] :
       {std::pair{5, 2.571}, std::pair{10, 2.228}, std::pair{30, 2.042}, std::pair{120, 1.980}}) {
    fit.freedom = freedom;
    EXPECT_NEAR(fit.sureness() / factor, 1.0, freedom < 10 ? 0.002 : 0.0005) << freedom;
  }
}

TEST(CoastDownFit, TakesSlopeAndWheelsIntoAccount) {
  // The same road, run down a slope of 1 % with wheels that count as 8 kg.
  const double alpha = std::atan(0.01), weight = 220.0 * 9.80665;
  const Coasting run(228.0, 55.0 * std::cos(alpha) - weight * std::sin(alpha), 0.0, 0.31, 30.0, 60, 0.0, 1);
  const RoadLoad road = RoadLoad::from_coast_down(
      {.times = run.times, .speeds = run.speeds, .mass = 220_kg, .equivalent_mass = 228_kg, .slope = Slope(-0.01)});
  EXPECT_NEAR(road.constant().nominal.value(), 55.0, 1e-4);
  EXPECT_NEAR(road.quadratic().nominal.value(), 0.31, 1e-6);
}

TEST(CoastDownFit, RunsAgainAsTheLogRan) {
  const Coasting run(220.0, 55.0, 0.0, 0.31, 30.0, 35, 0.1, 7);
  const CoastDownFit fit = fit_coast_down({.times = run.times, .speeds = run.speeds, .mass = 220_kg});
  const Duration time = coast_down_time(fit.road, 220_kg, fit.start_speed, 12_mps);
  const RoadLoad truth({.constant = 55_N, .quadratic = 0.31_kg_per_m});
  EXPECT_NEAR(time / coast_down_time(truth, 220_kg, 30_mps, 12_mps), 1.0, 0.01);
}

std::string refusal_of_fit(const CoastDownLog& log) {
  const auto fit = try_fit_coast_down(log);
  return fit ? "none" : fit.error().what();
}

TEST(CoastDownFit, SaysWhatIsWrongWithALog) {
  constexpr double nothing = std::numeric_limits<double>::quiet_NaN();
  const Coasting good(220.0, 55.0, 0.0, 0.31, 30.0, 20, 0.0, 1);
  const auto changed = [&](auto change) {
    Coasting run = good;
    change(run);
    return refusal_of_fit({.times = run.times, .speeds = run.speeds, .mass = 220_kg});
  };
  EXPECT_EQ(changed([](Coasting&) {}), "none");
  EXPECT_EQ(changed([](Coasting& r) { r.speeds.pop_back(); }), "number of speeds is 19; expected 20, one a time");
  EXPECT_EQ(changed([](Coasting& r) {
              r.speeds.resize(4);
              r.times.resize(4);
            }),
            "number of samples is 4; expected at least 5");
  EXPECT_EQ(changed([](Coasting& r) { r.times[3] = 2_s; }), "time 4 is 2 s; expected more than the 2 s before it");
  EXPECT_EQ(changed([](Coasting& r) { r.times[3] = 1_s; }), "time 4 is 1 s; expected more than the 2 s before it");
  EXPECT_EQ(changed([](Coasting& r) { r.times.back() = 2000_s; }),
            "time 20 is 2000 s; expected at most 10 minutes after the one before it");
  EXPECT_TRUE(changed([&](Coasting& r) { r.times[5] = nothing * units::s; }).starts_with("time 6 is not a number"));
  EXPECT_TRUE(changed([&](Coasting& r) { r.speeds[5] = nothing * units::kmh; }).starts_with("speed 6 is not a number"));
  EXPECT_TRUE(changed([](Coasting& r) { r.speeds[5] = -1.0 * units::kmh; }).starts_with("speed 6 is -1 km/h"));
  EXPECT_TRUE(changed([](Coasting& r) { r.speeds.back() = 200_kmh; }).starts_with("last speed is 200 km/h"));
  EXPECT_TRUE(refusal_of_fit({.times = good.times, .speeds = good.speeds, .mass = 0_kg}).starts_with("mass is 0 kg"));
  EXPECT_TRUE(refusal_of_fit({.times = good.times, .speeds = good.speeds, .mass = 220_kg, .equivalent_mass = 210_kg})
                  .starts_with("equivalent_mass is 210 kg"));
  EXPECT_EQ(refusal_of_fit({}), "number of samples is 0; expected at least 5");
  // An engine that pushes at low speed: resistance that bends down.
  const Coasting bent(220.0, 10.0, 8.0, -0.1, 30.0, 40, 0.0, 1);
  EXPECT_NE(refusal_of_fit({.times = bent.times, .speeds = bent.speeds, .mass = 220_kg, .with_linear = true})
                .find("bends down with speed"),
            std::string::npos);
  EXPECT_THROW((void)RoadLoad::from_coast_down({}), RangeError);
  const CoastDownFit fit = fit_coast_down({.times = good.times, .speeds = good.speeds, .mass = 220_kg});
  EXPECT_FALSE(fit.try_resistance(fit.fastest * 1.01));
  EXPECT_FALSE(fit.try_resistance(fit.slowest * 0.99));
}

}  // namespace
