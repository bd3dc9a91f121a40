// SPDX-License-Identifier: MIT
// A recorded ride: read from comma-separated values, told what it does to a drive, and asked which machine it was.
// Beside the readers and the sums people write by hand, which check nothing; and at the end samples a second on this
// machine, since what is promised of a log is a rate: more than a million.
#include <layshaft/io/ride_log.hpp>
#include <layshaft/road/log_machine.hpp>
#include <layshaft/road/log_use.hpp>

#include <array>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <numbers>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

#include "ratios.hpp"

namespace {

using namespace layshaft;

constexpr std::size_t samples = 100000;
constexpr std::array<double, 5> overall_ratios{30.0, 20.0, 15.0, 12.0, 10.0};

RideDrive drive() {
  return {{30.0, 20.0, 15.0, 12.0, 10.0},
          2_m,
          ShiftRule({20_kmh, 40_kmh, 55_kmh, 70_kmh}, {12_kmh, 30_kmh, 45_kmh, 60_kmh})};
}
RideDrive loaded_drive() {
  RideDrive loaded = drive();
  loaded.load = RideLoad{RoadLoad({.constant = 40_N, .quadratic = 0.4_kg_per_m}), 230_kg};
  return loaded;
}

/// Waves of speed through all gears, ten samples a second, with a little scatter.
const std::string& text() {
  static const std::string made = [] {
    std::string log = "time_s,speed_kmh,height_m,engine_rpm,indicated_kmh,odometer_km\n";
    double way = 0.0;
    unsigned scatter = 1;
    for (std::size_t i = 0; i < samples; ++i) {
      char line[128];
      const double t = 0.1 * static_cast<double>(i), speed = 45.0 + 42.0 * std::sin(0.01 * t);
      scatter = scatter * 1664525u + 1013904223u;
      const double off = 1.0 + 0.01 * (double(scatter >> 8) / double(1u << 24) - 0.5);
      const std::size_t gear = speed < 20 ? 0 : speed < 40 ? 1 : speed < 55 ? 2 : speed < 70 ? 3 : 4;
      way += speed / 36.0;
      std::snprintf(line, sizeof line, "%.1f,%.2f,%.1f,%.0f,%.1f,%.1f\n", t, speed * off,
                    600.0 + 50.0 * std::sin(0.002 * t), speed / 3.6 / 2.0 * 60.0 * overall_ratios[gear], speed * 1.06,
                    3412.0 + way / 1000.0);
      log += line;
    }
    return log;
  }();
  return made;
}
const RideLog& log(bool engine) {
  static const RideLog with = read_ride_log(text()), without = [] {
    RideColumns columns = with.columns();
    columns.engine_speeds.clear();
    return RideLog(columns);
  }();
  return engine ? with : without;
}

/// A line at a time from a stream, a cell at a time by strtod.
double by_getline() {
  std::istringstream stream(text());
  std::string line;
  std::getline(stream, line);
  std::array<std::vector<double>, 6> columns;
  while (std::getline(stream, line)) {
    const char* at = line.c_str();
    for (auto& column : columns) {
      char* stop = nullptr;
      column.push_back(std::strtod(at, &stop));
      at = *stop == ',' ? stop + 1 : stop;
    }
  }
  return columns[1].back() / 3.6 + columns[0].back();
}
/// The same with a stream for every line, as it is written most often.
double by_streams() {
  std::istringstream stream(text());
  std::string line, cell;
  std::getline(stream, line);
  std::array<std::vector<double>, 6> columns;
  while (std::getline(stream, line)) {
    std::istringstream cells(line);
    for (auto& column : columns) {
      std::getline(cells, cell, ',');
      column.push_back(std::stod(cell));
    }
  }
  return columns[1].back() / 3.6 + columns[0].back();
}
double by_layshaft() {
  const RideColumns columns = read_ride_log(text()).columns();
  return columns.speeds.back() + columns.times.back();
}

double use_by_layshaft(const RideLog& ride, const RideDrive& ridden) {
  const RideUse use = ride_use(ride, ridden);
  return use.distance().value() + use.gear(3).time.value();
}
/// Time, distance and classes of engine speed, in plain doubles; the gear is that of the nearest ratio.
double use_by_hand(const RideLog& ride) {
  const RideColumns& c = ride.columns();
  std::array<double, 5> time{}, distance{};
  std::array<double, 80> classes{};
  for (std::size_t i = 0; i + 1 < samples; ++i) {
    const double seconds = c.times[i + 1] - c.times[i];
    if (seconds > 10.0) continue;
    const double speed = 0.5 * (c.speeds[i] + c.speeds[i + 1]),
                 engine = 0.5 * (c.engine_speeds[i] + c.engine_speeds[i + 1]);
    if (speed < 0.5 / 3.6) continue;
    const double ratio = engine / (speed * std::numbers::pi);
    std::size_t gear = 0;
    for (std::size_t g = 1; g < 5; ++g)
      if (std::max(ratio / overall_ratios[g], overall_ratios[g] / ratio) <
          std::max(ratio / overall_ratios[gear], overall_ratios[gear] / ratio))
        gear = g;
    time[gear] += seconds;
    distance[gear] += speed * seconds;
    classes[static_cast<std::size_t>(engine / (250.0 * std::numbers::pi / 30.0))] += seconds;
  }
  benchmark::DoNotOptimize(classes);
  return distance[0] + distance[1] + distance[2] + distance[3] + distance[4] + time[2];
}

}  // namespace

int main(int count, char** arguments) {
  const char* const reading = "a ride log read from text";
  ratios::must_agree("the rival by getline and strtod", by_layshaft(), by_getline(), 1e-12);
  ratios::must_agree("the rival by streams", by_layshaft(), by_streams(), 1e-12);
  ratios::add(reading, "layshaft::read_ride_log, which checks each cell", by_layshaft);
  ratios::add(reading, "std::getline and std::strtod", by_getline);
  ratios::add(reading, "a std::istringstream a line and std::stod", by_streams);
  const char* const using_it = "what a ride log does to a drive";
  ratios::must_agree("the sums by hand", use_by_layshaft(log(true), drive()), use_by_hand(log(true)), 1e-9);
  ratios::add(using_it, "layshaft::ride_use, gears by engine speed",
              [] { return use_by_layshaft(log(true), drive()); });
  ratios::add(using_it, "the same sums by hand, of plain numbers", [] { return use_by_hand(log(true)); });
  ratios::add(using_it, "layshaft::ride_use, gears by shift rule", [] { return use_by_layshaft(log(false), drive()); });
  ratios::add(using_it, "the same with the work at the wheel",
              [] { return ride_use(log(true), loaded_drive()).wheel_work()->value(); });
  const char* const telling = "what a ride log tells of its machine";
  if (machine_of_log(log(true)).gears.size() != overall_ratios.size()) return 1;
  ratios::add(telling, "layshaft::machine_of_log", [] { return machine_of_log(log(true)).gears[0].time_share; });
  ratios::add(telling, "layshaft::instrument_error", [] { return *instrument_error(log(true)).odometer; });
  const int result = ratios::run(count, arguments);
  std::printf("\nmillions of samples a second here, in the best round\n");
  for (const ratios::Contestant& one : ratios::contestants)
    if (!one.rounds.empty())
      std::printf("  %-64s%8.1f\n", one.name.c_str(), 1e3 * static_cast<double>(samples) / one.rounds[0]);
  return result;
}
