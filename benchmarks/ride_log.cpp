// SPDX-License-Identifier: MIT
// A recorded ride: read from comma-separated values, and told what it does to a drive. Samples a second, since what a
// library promises of logs is a rate.
#include <layshaft/io/ride_log.hpp>
#include <layshaft/road/log_use.hpp>

#include <benchmark/benchmark.h>

#include <cmath>
#include <cstdint>
#include <cstdio>
#include <string>

namespace {
using namespace layshaft;

constexpr std::size_t samples = 100000;

const RideDrive& drive() {
  static const RideDrive made{{30.0, 20.0, 15.0, 12.0, 10.0},
                              2_m,
                              ShiftRule({20_kmh, 40_kmh, 55_kmh, 70_kmh}, {12_kmh, 30_kmh, 45_kmh, 60_kmh})};
  return made;
}
const std::string& text() {
  static const std::string made = [] {
    std::string log = "time_s,speed_kmh,height_m,engine_rpm\n";
    for (std::size_t i = 0; i < samples; ++i) {
      char line[96];
      const double t = 0.1 * static_cast<double>(i), speed = 40.0 + 30.0 * std::sin(0.01 * t);
      std::snprintf(line, sizeof line, "%.1f,%.2f,%.1f,%.0f\n", t, speed, 600.0 + 50.0 * std::sin(0.002 * t),
                    90.0 * speed);
      log += line;
    }
    return log;
  }();
  return made;
}

void read(benchmark::State& state) {
  for (auto _ : state) benchmark::DoNotOptimize(read_ride_log(text()));
  state.SetItemsProcessed(state.iterations() * std::int64_t{samples});
}
void use(benchmark::State& state, bool engine) {
  RideColumns columns = read_ride_log(text()).columns();
  if (!engine) columns.engine_speeds.clear();
  const RideLog log(columns);
  for (auto _ : state) benchmark::DoNotOptimize(ride_use(log, drive()));
  state.SetItemsProcessed(state.iterations() * std::int64_t{samples});
}
BENCHMARK(read);
BENCHMARK_CAPTURE(use, by_shift_rule, false);
BENCHMARK_CAPTURE(use, by_engine_speed, true);

}  // namespace

BENCHMARK_MAIN();
