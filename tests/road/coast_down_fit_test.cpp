// SPDX-License-Identifier: MIT
#include <layshaft/road/coast_down_fit.hpp>

#include <layshaft/road/coast_down.hpp>

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <limits>
#include <random>
#include <span>
#include <string>
#include <vector>

namespace {
using namespace layshaft;

/// A coast-down run in steps of a millisecond by the classic Runge-Kutta method, with errors of a speedometer.
struct Coasting {
  std::vector<Duration> times;
  std::vector<Speed> speeds;

  Coasting(double mass, double constant, double linear, double quadratic, double start, int samples, double scatter,
           std::uint64_t seed, double period = 1.0) {
    std::mt19937_64 random(seed);
    std::normal_distribution<double> error(0.0, 1.0);
    const auto slow = [&](double v) { return -(constant + linear * v + quadratic * v * v) / mass; };
    double v = start;
    for (int i = 0; i < samples; ++i) {
      times.push_back(i * period * units::s);
      speeds.push_back((v + scatter * error(random)) * units::mps);
      const double h = 0.05 * period;
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
  EXPECT_EQ(all.freedom, 56);
}

TEST(CoastDownFit, TakesSamplesHoweverFarApart) {
  const auto expect_truth = [](double mass, double start, int samples, double period) {
    const Coasting run(mass, 20.0, 0.0, 0.31, start, samples, 0.0, 1, period);
    const RoadLoad road =
        RoadLoad::from_coast_down({.times = run.times, .speeds = run.speeds, .mass = mass * units::kg});
    EXPECT_NEAR(road.constant().nominal.value(), 20.0, 1e-4) << period;
    EXPECT_NEAR(road.quadratic().nominal.value(), 0.31, 1e-6) << period;
  };
  expect_truth(220.0, 30.0, 100, 0.25);
  // Where the sums of squares are nothing but rounding, a step may have to be taken back.
  for (int start = 25; start <= 50; ++start) expect_truth(220.0, start, 12, 1.0);
  expect_truth(20000.0, 30.0, 8, 120.0);  // so heavy that it rolls for a quarter of an hour
}

/// The inverse of a symmetric matrix, its rows and columns first measured by its diagonal, by Gauss and Jordan.
std::vector<std::vector<double>> inverse_of(std::vector<std::vector<double>> matrix) {
  const std::size_t size = matrix.size();
  std::vector<double> unit(size);
  for (std::size_t i = 0; i < size; ++i) unit[i] = std::sqrt(matrix[i][i]);
  std::vector<std::vector<double>> inverse(size, std::vector<double>(size));
  for (std::size_t i = 0; i < size; ++i) {
    inverse[i][i] = 1.0;
    for (std::size_t j = 0; j < size; ++j) matrix[i][j] /= unit[i] * unit[j];
  }
  for (std::size_t pivot = 0; pivot < size; ++pivot) {
    const double on_diagonal = matrix[pivot][pivot];
    for (std::size_t j = 0; j < size; ++j) matrix[pivot][j] /= on_diagonal, inverse[pivot][j] /= on_diagonal;
    for (std::size_t row = 0; row < size; ++row) {
      if (row == pivot) continue;
      const double factor = matrix[row][pivot];
      for (std::size_t j = 0; j < size; ++j) {
        matrix[row][j] -= factor * matrix[pivot][j];
        inverse[row][j] -= factor * inverse[pivot][j];
      }
    }
  }
  for (std::size_t i = 0; i < size; ++i)
    for (std::size_t j = 0; j < size; ++j) inverse[i][j] /= unit[i] * unit[j];
  return inverse;
}

// Least squares by the book: where they are least the errors are at right angles to how the run moves with each
// unknown; their variance times the inverse of J'J is the covariance. J by differences of runs, to the fourth order.
TEST(CoastDownFit, HasTheCovarianceOfLeastSquares) {
  for (const bool with_linear : {false, true}) {
    constexpr int samples = 60;
    const Coasting log(220.0, 40.0, with_linear ? 1.8 : 0.0, 0.25, 35.0, samples, 0.01, 3);
    const CoastDownFit fit =
        fit_coast_down({.times = log.times, .speeds = log.speeds, .mass = 220_kg, .with_linear = with_linear});
    const std::array<double, 4> found{fit.start_speed.value(), fit.road.constant().nominal.value(),
                                      fit.road.linear().value(), fit.road.quadratic().nominal.value()};
    const auto run = [&](std::size_t moved, double by) {
      std::array<double, 4> of = found;
      of[moved] += by;
      return Coasting(220.0, of[1], of[2], of[3], of[0], samples, 0.0, 1).speeds;
    };
    const std::vector<std::size_t> unknowns =
        with_linear ? std::vector<std::size_t>{0, 1, 2, 3} : std::vector<std::size_t>{0, 1, 3};
    std::vector<std::vector<double>> moves;
    for (const std::size_t one : unknowns) {
      const double by = 1e-3 * found[one];
      const auto less = run(one, -by), least = run(one, -2.0 * by), more = run(one, by), most = run(one, 2.0 * by);
      std::vector<double>& move = moves.emplace_back();
      for (std::size_t i = 0; i < samples; ++i)
        move.push_back((8.0 * (more[i] - less[i]) - (most[i] - least[i])).value() / (12.0 * by));
    }
    const auto along = [](const std::vector<double>& a, const std::vector<double>& b) {
      double sum = 0.0;
      for (std::size_t i = 0; i < a.size(); ++i) sum += a[i] * b[i];
      return sum;
    };
    const std::vector<Speed> fitted = run(0, 0.0);
    std::vector<double> off;
    for (std::size_t i = 0; i < samples; ++i) off.push_back((log.speeds[i] - fitted[i]).value());
    std::vector<std::vector<double>> normal(moves.size());
    for (std::size_t i = 0; i < moves.size(); ++i) {
      for (const auto& other : moves) normal[i].push_back(along(moves[i], other));
      EXPECT_NEAR(along(moves[i], off) / std::sqrt(normal[i][i] * along(off, off)), 0.0, 1e-5) << unknowns[i];
    }
    const double variance = along(off, off) / (samples - static_cast<double>(moves.size()));
    EXPECT_NEAR(fit.scatter.value() / std::sqrt(variance), 1.0, 1e-6);
    const auto inverse = inverse_of(normal);
    std::array<std::array<double, 4>, 4> covariance{};
    for (std::size_t i = 0; i < unknowns.size(); ++i)
      for (std::size_t j = 0; j < unknowns.size(); ++j) covariance[unknowns[i]][unknowns[j]] = variance * inverse[i][j];
    std::size_t place = 0;
    for (std::size_t i = 1; i < 4; ++i)
      for (std::size_t j = i; j < 4; ++j, ++place)
        EXPECT_NEAR(fit.covariance[place], covariance[i][j], 1e-4 * std::fabs(covariance[i][j])) << i << j;
    EXPECT_NEAR(fit.constant_uncertainty.value(), std::sqrt(covariance[1][1]), 1e-4 * std::sqrt(covariance[1][1]));
    EXPECT_NEAR(fit.linear_uncertainty.value(), std::sqrt(covariance[2][2]), 1e-4 * std::sqrt(covariance[2][2]));
    EXPECT_NEAR(fit.quadratic_uncertainty.value(), std::sqrt(covariance[3][3]), 1e-4 * std::sqrt(covariance[3][3]));
  }
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
  // The series to its third power of 1/n: Abramowitz and Stegun, Handbook of Mathematical Functions, 26.7.5.
  fit.freedom = 1;
  EXPECT_NEAR(fit.sureness(), 9.7105835100859481, 1e-12);
  fit.freedom = 2;
  EXPECT_NEAR(fit.sureness(), 4.1712054635627028, 1e-12);
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

TEST(CoastDownFit, SaysWhereALogTellsNothing) {
  const std::string nothing =
      "the coast-down log does not tell the parts of the resistance apart; "
      "expected a longer one, over a wider range of speeds";
  const std::vector<Duration> times{0_s, 1_s, 2_s, 3_s, 4_s, 5_s};
  const auto refusal = [&](const std::vector<double>& speeds) {
    std::vector<Speed> made;
    for (const double speed : speeds) made.push_back(speed * units::mps);
    return refusal_of_fit({.times = times, .speeds = made, .mass = 220_kg});
  };
  EXPECT_EQ(refusal({30.0, 30.0, 30.0, 30.0, 30.0, 29.999999999999}), nothing);  // at one speed all parts look alike
  EXPECT_EQ(refusal({30.0, 30.0, 30.0, 30.0, 30.0, 1.0}), nothing);              // the first guess speeds up and away
  EXPECT_EQ(refusal({30.0, 1.0, 1.0, 1.0, 1.0, 1.0}), nothing);  // no run comes near, and the search finds no end
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
  const std::span<const Duration> times = good.times;
  const std::span<const Speed> speeds = good.speeds;
  EXPECT_EQ(refusal_of_fit({.times = times.first(5), .speeds = speeds.first(5), .mass = 220_kg, .with_linear = true}),
            "number of samples is 5; expected at least 6");
  EXPECT_FALSE(refusal_of_fit({.times = times.first(6), .speeds = speeds.first(6), .mass = 220_kg, .with_linear = true})
                   .starts_with("number of samples"));
  EXPECT_EQ(changed([&](Coasting& r) { r.times[0] = -2e12 * units::s; }).substr(0, 9), "time 1 is");
  EXPECT_EQ(changed([&](Coasting& r) { r.speeds[0] = 1001_kmh; }).substr(0, 10), "speed 1 is");
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
  EXPECT_EQ(refusal_of_fit({.times = good.times, .speeds = good.speeds, .mass = 220_kg, .equivalent_mass = 440_kg}),
            "none");
  EXPECT_TRUE(refusal_of_fit({.times = good.times, .speeds = good.speeds, .mass = 220_kg, .equivalent_mass = 441_kg})
                  .starts_with("equivalent_mass is 441 kg"));
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

struct PlainLog {
  bool with_linear;
  std::vector<double> times, speeds;  // s, m/s

  [[nodiscard]] Result<CoastDownFit> fit() const {
    std::vector<Duration> at;
    std::vector<Speed> speed;
    for (const double one : times) at.push_back(one * units::s);
    for (const double one : speeds) speed.push_back(one * units::mps);
    return try_fit_coast_down({.times = at, .speeds = speed, .mass = 200_kg, .with_linear = with_linear});
  }
  /// How far the log lies from a run of 200 kg: the sum of squares, the run in steps of a hundredth of a second or so.
  [[nodiscard]] double squares(double v, double constant, double quadratic) const {
    const auto slow = [&](double u) { return -(constant + quadratic * u * u) / 200.0; };
    double sum = 0.0;
    for (std::size_t i = 0; i < times.size(); ++i) {
      if (i > 0) {
        const double whole = times[i] - times[i - 1], steps = std::ceil(whole / 0.01), h = whole / steps;
        for (double done = 0.0; done < steps; done += 1.0) {
          const double a = slow(v), b = slow(v + 0.5 * h * a), c = slow(v + 0.5 * h * b), d = slow(v + h * c);
          v += h / 6.0 * (a + 2.0 * b + 2.0 * c + d);
        }
      }
      sum += (speeds[i] - v) * (speeds[i] - v);
    }
    return sum;
  }
};

// Logs that no machine rolls: at one speed until the last sample, up and down at will, by leaps. Each stops the search
// at another place: at the first guess, on the way, out of breath, at the end.
TEST(CoastDownFit, SaysThatALogWhichIsNoCoastDownTellsNothing) {
  const PlainLog logs[] = {
      {true, {0, 1, 2, 3, 4, 5, 6, 7}, {60.17, 60.17, 60.17, 60.17, 60.17, 60.17, 60.17, 54.153}},
      {false, {0, 14.1, 28.2, 42.2, 56.3, 70.4, 84.5, 98.5}, {17.51, 17.51, 17.51, 17.51, 17.51, 17.51, 17.51, 15.759}},
      {false, {0, 0.1, 0.3, 0.4, 0.5}, {60.72, 31.75, 79.14, 55.8, 18.53}},
      {true, {0, 4.3, 5.1, 8.2, 11, 12.4}, {37.71, 45.63, 7.25, 63.19, 33.55, 23.42}},
      {false, {0, 151, 302.6, 538.7, 687.6, 766.8, 872.8}, {56.51, 53.73, 46.63, 45.71, 46.8, 52.91, 33.54}},
      {true, {0, 3.7, 10.3, 17.4, 21.6, 22.5}, {10.08, 68.5, 4.54, 56.93, 70.64, 9.072}},
      {true, {0, 9.2, 15.1, 18.1, 19.2, 21.4}, {66.27, 13.32, 7.49, 40.21, 69.61, 52.67}},
      {false, {0, 17.2, 41.5, 57.9, 62}, {78.63, 39.38, 72.83, 57.87, 62.44}},
  };
  for (const PlainLog& log : logs) {
    const auto fit = log.fit();
    ASSERT_FALSE(fit) << log.times[1];
    EXPECT_EQ(std::string(fit.error().what()),
              "the coast-down log does not tell the parts of the resistance apart; expected a longer one, over a wider "
              "range of speeds");
  }
}

// Short logs of a speed that hardly changes, in hundredths of a metre a second: the search goes astray and comes back.
TEST(CoastDownFit, IsTheNearestRunWhereTheLogTellsLittle) {
  const PlainLog logs[] = {
      {false, {0, 1.4, 2.8, 4.2, 5.6}, {56.03, 56.03, 56.02, 56.03, 56.02}},
      {false, {0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6}, {40.48, 40.48, 40.47, 40.47, 40.47, 40.47, 40.47}},
  };
  for (const PlainLog& log : logs) {
    const auto fit = log.fit();
    ASSERT_TRUE(fit) << fit.error().what();
    const double v = fit->start_speed.value(), constant = fit->road.constant().nominal.value(),
                 quadratic = fit->road.quadratic().nominal.value();
    const double least = log.squares(v, constant, quadratic);
    EXPECT_NEAR(fit->scatter.value(), std::sqrt(least / fit->freedom), 1e-8);  // as its steps are told to err
    // Any other start is further off; so is any other constant or quadratic part.
    for (const double step : {-1e-3, 1e-3}) {
      EXPECT_GT(log.squares(v + step, constant, quadratic), least);
      EXPECT_GT(log.squares(v, constant * (1.0 + step), quadratic), least);
      EXPECT_GT(log.squares(v, constant, quadratic * (1.0 + step)), least);
    }
    EXPECT_GT(fit->constant_uncertainty, units::N * std::fabs(constant) * 0.1);  // and it says how little that is
  }
}

}  // namespace
