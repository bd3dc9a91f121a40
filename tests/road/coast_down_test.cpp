// SPDX-License-Identifier: MIT
#include <layshaft/road/coast_down.hpp>

#include <layshaft/core/recorder.hpp>
#include <layshaft/road/drag_area.hpp>

#include <gtest/gtest.h>
#include <boost/math/quadrature/gauss_kronrod.hpp>
#include <core/formula_range.hpp>
#include <core/not_finite.hpp>
#include <core/workings.hpp>
#include <tyre/watched.hpp>

#include <random>
#include <string>

namespace {
using namespace layshaft;
using layshaft_test::endless;
using layshaft_test::nothing;

/// The integral of m dv / F(v) by Boost.Math, cut where the air stands still, since F bends there.
double by_quadrature(const RoadLoad& road, Mass mass, Speed start, Speed end, const Slope& slope) {
  const auto integrand = [&](double v) {
    return mass.value() / road.resistance(Unwatched(), v * units::mps, slope, Corner::nominal).value();
  };
  const double calm = -road.head_wind().value();
  const auto piece = [&](double low, double high) {
    return low < high ? boost::math::quadrature::gauss_kronrod<double, 31>::integrate(integrand, low, high, 15, 1e-14)
                      : 0.0;
  };
  return piece(end.value(), std::min(start.value(), calm)) + piece(std::max(end.value(), calm), start.value());
}

// Printed with the table of US 40 CFR 86.529-98: from 70 to 60 km/h in 2.953, 4.848 and 6.185 s.
TEST(CoastDownTime, IsThatOfTheUsRoadLoadTable) {
  for (const auto& [mass, printed] : {std::pair{100_kg, 2.953}, std::pair{200_kg, 4.848}, std::pair{300_kg, 6.185}})
    EXPECT_NEAR(in(coast_down_time(RoadLoad::by_mass(mass), mass, 70_kmh, 60_kmh), units::s), printed, 0.0005);
}

TEST(CoastDownTime, HasTheSimpleCasesExactly) {
  // A constant force alone: m dv / F. Drag alone: m/c (1/v2 - 1/v1). A linear force alone: m/b ln(v1/v2).
  EXPECT_NEAR(coast_down_time(RoadLoad({.constant = 50_N}), 200_kg, 30_mps, 10_mps).value(), 80.0, 1e-13);
  EXPECT_NEAR(coast_down_time(RoadLoad({.quadratic = 0.5_kg_per_m}), 200_kg, 30_mps, 10_mps).value(),
              200.0 / 0.5 * (1.0 / 10.0 - 1.0 / 30.0), 1e-13);
  EXPECT_NEAR(coast_down_time(RoadLoad({.linear = 4_N_per_mps}), 200_kg, 30_mps, 10_mps).value(), 50.0 * std::log(3.0),
              1e-13);
  EXPECT_EQ(coast_down_time(RoadLoad({.constant = 50_N}), 200_kg, 30_mps, 30_mps), 0_s);
}

TEST(CoastDownTime, IsTheIntegralWhateverTheRoadTheWindAndTheHill) {
  std::mt19937_64 random(11);
  const auto between = [&](double low, double high) {
    return low + (high - low) * std::uniform_real_distribution<double>(0.0, 1.0)(random);
  };
  int done = 0, refused = 0, cut = 0;
  for (int round = 0; round < 3000; ++round) {
    const Mass mass = between(80.0, 400.0) * units::kg;
    const RoadLoad road({.constant = between(0.0, 120.0) * units::N,
                         .linear = between(-3.0, 6.0) * units::N_per_mps,
                         .quadratic = between(0.0, 0.6) * units::kg_per_m,
                         .mass = mass,
                         .head_wind = round % 3 == 0 ? Speed() : between(-60.0, 60.0) * units::kmh});
    const Slope slope(round % 2 == 0 ? 0.0 : between(-0.04, 0.08));
    const Speed start = between(20.0, 150.0) * units::kmh;
    const Speed end = start * between(0.05, 0.98);
    const auto time = try_coast_down_time(road, mass, start, end, slope);
    if (!time) {
      ++refused;
      bool driven = false;
      for (int i = 0; i <= 20000 && !driven; ++i)
        driven = road.resistance(end + (i / 20000.0) * (start - end), slope) < 0.01_N;
      EXPECT_TRUE(driven) << time.error().what();
      continue;
    }
    ++done;
    cut += detail::coasting_stretches(road, start, end, slope, Corner::nominal).size() > 1;
    const double expected = by_quadrature(road, mass, start, end, slope);
    if (expected < 1e4) {  // nearer to standstill of the resistance the quadrature gives up first
      EXPECT_NEAR(time->value() / expected, 1.0, 1e-9) << round;
    }
  }
  EXPECT_GT(done, 2000);
  EXPECT_GT(refused, 50);
  EXPECT_GT(cut, 200);
}

TEST(CoastDownTime, SaysWhereNothingSlowsItAnyMore) {
  const RoadLoad road = RoadLoad::from_parts(
      {.mass = 200_kg, .rolling_coefficient = Band<double>::exactly(0.02), .drag_area = Band<Area>::exactly(0.5_m2)});
  EXPECT_TRUE(try_coast_down_time(road, 200_kg, 100_kmh, 20_kmh, Slope(-0.01)));
  const auto downhill = try_coast_down_time(road, 200_kg, 100_kmh, 20_kmh, Slope(-0.05));
  ASSERT_FALSE(downhill);
  EXPECT_NE(std::string(downhill.error().what()).find("does not slow down to 20 km/h"), std::string::npos);
  EXPECT_FALSE(try_coast_down_time(RoadLoad({}), 200_kg, 100_kmh, 20_kmh));  // nothing resists at all
  EXPECT_FALSE(try_coast_down_time(RoadLoad({.quadratic = 0.5_kg_per_m}), 200_kg, 100_kmh, 0_kmh));  // never quite
  EXPECT_FALSE(
      try_coast_down_time(RoadLoad({.constant = 50_N}), 200_kg, 100_kmh, 0_kmh, Slope(0.1)));  // no mass stated
}

TEST(CoastDownTime, NamesWhatLiesOutsideItsRange) {
  const RoadLoad road({.constant = 50_N});
  for (const double bad : {0.0, -1.0, nothing, endless})
    EXPECT_FALSE(try_coast_down_time(road, bad * units::kg, 70_kmh, 60_kmh)) << bad;
  for (const double bad : {-1.0, 1001.0, nothing, endless})
    EXPECT_FALSE(try_coast_down_time(road, 200_kg, bad * units::kmh, 0_kmh)) << bad;
  for (const double bad : {-1.0, 71.0, nothing, endless})
    EXPECT_FALSE(try_coast_down_time(road, 200_kg, 70_kmh, bad * units::kmh)) << bad;
  EXPECT_THROW((void)coast_down_time(road, 200_kg, 60_kmh, 70_kmh), RangeError);
}

TEST(CoastDownTime, TellsItsSteps) {
  const RoadLoad road({.constant = 40_N, .quadratic = 0.3_kg_per_m});
  layshaft_test::expect_watched(one_cause,
                                [&](auto watch, Corner at) {
                                  return detail::coast_down_time_of(watch, road, 200_kg, 70_kmh, 20_kmh, Slope(), at);
                                },
                                {"constant resistance", "linear resistance", "quadratic resistance", "equivalent mass",
                                 "start speed", "end speed", "coasting force", "coasting bend", "coasting time"});
  const RoadLoad blown({.constant = 40_N, .quadratic = 0.3_kg_per_m, .mass = 200_kg, .head_wind = -(30_kmh)});
  const auto several = layshaft_test::expect_watched(one_cause,
                                                     [&](auto watch, Corner at) {
                                                       return detail::coast_down_time_of(watch, blown, 200_kg, 70_kmh,
                                                                                         10_kmh, Slope(0.02), at);
                                                     },
                                                     {"constant resistance",
                                                      "grade",
                                                      "slope angle",
                                                      "rolling on slope",
                                                      "mass",
                                                      "gravity",
                                                      "climb resistance",
                                                      "constant on slope",
                                                      "linear resistance",
                                                      "quadratic resistance",
                                                      "head wind",
                                                      "constant in wind",
                                                      "linear in wind",
                                                      "equivalent mass",
                                                      "start speed 1",
                                                      "end speed 1",
                                                      "coasting force 1",
                                                      "coasting bend 1",
                                                      "coasting time 1",
                                                      "overtaken",
                                                      "constant in wind 2",
                                                      "linear in wind 2",
                                                      "start speed 2",
                                                      "end speed 2",
                                                      "coasting force 2",
                                                      "coasting bend 2",
                                                      "coasting time 2",
                                                      "summed time 2"});
  layshaft_test::expect_sound(several);
  layshaft_test::expect_no_idle_step(several);
}

TEST(CoastingFormulas, AskForTheirRange) {
  using layshaft_test::expect_range;
  expect_range<formula::coasting_force>("fffff", 40_N, 1_N_per_mps, 0.3_kg_per_m, 70_kmh, 60_kmh);
  expect_range<formula::coasting_bend>("fffff+", 40_N, 1_N_per_mps, 0.3_kg_per_m, 70_kmh, 60_kmh, 90_N);
  expect_range<formula::coasting_time>("fff+.", 200_kg, 70_kmh, 60_kmh, 90_N, 0.1);
  EXPECT_FALSE(formula::coasting_time::in_range(200_kg, 70_kmh, 60_kmh, 90_N, -1.0));
  expect_range<formula::constant_in_wind>("fff", 40_N, 0.3_kg_per_m, 10_kmh);
  expect_range<formula::linear_in_wind>("fff", 1_N_per_mps, 0.3_kg_per_m, 10_kmh);
  expect_range<formula::overtaken>("f", 0.3_kg_per_m);
  expect_range<formula::constant_on_slope>("ff", 40_N, 10_N);
  expect_range<formula::summed_time>("ff", 4_s, 5_s);
}

}  // namespace
