// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/road/ride_log.hpp>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <cstdio>
#include <numbers>
#include <random>
#include <string>
#include <vector>

/// @file
/// A ride that nobody rode, with everything that makes real ones hard to read: shifts, a slipping clutch, coasting with
/// it pulled, stops, a recorder that stood still, and noise on all that is recorded.
namespace layshaft_test {

struct InventedRide {
  std::vector<double> overall_ratios{30.7, 20.8, 15.96, 12.9, 10.5, 8.96};
  double circumference = 2.03;      ///< m
  double speedometer_error = 0.06;  ///< fast
  double odometer_error = 0.015;    ///< too many
  double odometer_step = 10.0;      ///< m
  double seconds = 6000.0;          ///< with the gap
  double period = 0.1;              ///< s between samples
  double gap_at = 0.4, gap = 45.0;  ///< after this part of the ride the recorder stands still for so many seconds
  double noise = 1.0;               ///< 0 for none
  std::uint64_t seed = 20;
};

/// Random numbers that are the same with every standard library.
class Dice {
 public:
  explicit Dice(std::uint64_t seed) : random_(seed) {}
  [[nodiscard]] double uniform(double low, double high) {
    return low + (high - low) * static_cast<double>(random_() >> 11) * 0x1p-53;
  }
  [[nodiscard]] double normal() {
    const double size = std::sqrt(-2.0 * std::log(uniform(0x1p-53, 1.0)));
    return size * std::cos(uniform(0.0, 2.0 * std::numbers::pi));
  }

 private:
  std::mt19937_64 random_;
};

[[nodiscard]] inline layshaft::RideColumns invented(const InventedRide& ride) {
  constexpr double step = 0.05, rpm = std::numbers::pi / 30.0;
  Dice rider(ride.seed), recorder(ride.seed + 1);
  layshaft::RideColumns columns{{}, {}, {}, {}, {}, {}};
  const auto turning = [&](int gear, double speed) {  // rpm
    return speed / ride.circumference * ride.overall_ratios[static_cast<std::size_t>(gear)] * 60.0;
  };
  const int top = static_cast<int>(ride.overall_ratios.size()) - 1;
  double speed = 0.0, target = 8.0, until = 20.0, way = 0.0, shift_up = 5200.0, drifting = 0.0, height_off = 0.0;
  double shifting = 0.0, shifted_from = 0.0, pulled = 0.0, engine = 1450.0;
  int gear = 0;
  double next = 0.0;
  const double gap_from = ride.gap_at * ride.seconds;
  const auto steps = static_cast<long>(ride.seconds / step + 0.5);
  for (long i = 0; i <= steps; ++i) {
    const double time = step * static_cast<double>(i);
    if (time >= until) {
      const double mood = rider.uniform(0.0, 1.0);
      target = mood < 0.06  ? 0.0
               : mood < 0.3 ? rider.uniform(2.6, 5.5)
               : mood < 0.6 ? rider.uniform(5.5, 13.0)
                            : rider.uniform(13.0, 25.0);
      until = time + (target == 0.0 ? rider.uniform(6.0, 14.0) : rider.uniform(14.0, 45.0));
      if (target < speed && rider.uniform(0.0, 1.0) < 0.2) pulled = rider.uniform(2.0, 6.0);
    }
    const double wanted =
        target == 0.0 ? 0.0 : target * (1.0 + 0.06 * std::sin(0.31 * time) + 0.03 * std::sin(1.3 * time));
    speed = std::max(0.0, speed + step * std::clamp((wanted - speed) / 2.5, -3.0, 2.2));
    if (speed < 0.05) speed = target == 0.0 ? 0.0 : speed;
    way += step * speed;

    if (shifting <= 0.0) {
      const double now = turning(gear, speed);
      const int to = gear < top && now > shift_up ? gear + 1 : gear > 0 && now < 2800.0 ? gear - 1 : gear;
      if (to != gear) {
        shifting = rider.uniform(0.3, 0.7);
        shifted_from = engine;
        shift_up = rider.uniform(4700.0, 6300.0);
        gear = to;
      }
    }
    const double bound = std::max(turning(gear, speed), speed < 0.3 ? 1450.0 : 1750.0);  // below that the clutch slips
    if (pulled > 0.0) {
      pulled -= step;
      engine += (1450.0 - engine) * step / 0.6;
    } else if (shifting > 0.0) {
      const double left = std::max(0.0, shifting - step);
      engine = bound + (shifted_from - bound) * left / (shifting + 0.2);
      shifting = left;
    } else {
      engine = bound;
    }

    if (time + 0.5 * step < next) continue;
    next += ride.period;
    drifting += (recorder.normal() * 0.06 * 0.5 - drifting) * std::min(1.0, ride.period / 1.5) +
                recorder.normal() * 0.03 * std::sqrt(std::min(1.0, ride.period / 1.5));
    height_off += -height_off * ride.period / 20.0 + recorder.normal() * 0.5 * std::sqrt(ride.period / 20.0);
    const double satellite = speed + ride.noise * (drifting + 0.03 * recorder.normal()) * (speed > 0.0 ? 1.0 : 0.3);
    const double revs = engine * (1.0 + 0.002 * ride.noise * recorder.normal());
    const double shown = speed * (1.0 + ride.speedometer_error) + 0.03 * ride.noise * recorder.normal();
    if (time > gap_from && time < gap_from + ride.gap) continue;
    columns.times.push_back(time);
    columns.speeds.push_back(std::max(0.0, satellite));
    columns.heights.push_back(512.0 + 60.0 * std::sin(way / 900.0) + 20.0 * std::sin(way / 230.0) +
                              ride.noise * height_off);
    columns.engine_speeds.push_back((ride.noise > 0.0 ? std::round(revs / 10.0) * 10.0 : revs) * rpm);
    columns.indicated_speeds.push_back(speed > 0.0 ? std::max(0.0, shown) : 0.0);
    columns.odometers.push_back(3412000.0 + ride.odometer_step *
                                                std::floor(way * (1.0 + ride.odometer_error) / ride.odometer_step));
  }
  return columns;
}

/// As a recorder writes it.
[[nodiscard]] inline std::string to_csv(const layshaft::RideColumns& columns) {
  std::string text = "# invented ride\ntime_s,speed_kmh,height_m,engine_rpm,indicated_kmh,odometer_km\n";
  for (std::size_t i = 0; i < columns.times.size(); ++i) {
    char line[160];
    std::snprintf(line, sizeof line, "%.0f,%.2f,%.1f,%.0f,%.1f,%.2f\n", columns.times[i], columns.speeds[i] * 3.6,
                  columns.heights[i], columns.engine_speeds[i] * 30.0 / std::numbers::pi,
                  columns.indicated_speeds[i] * 3.6, columns.odometers[i] / 1000.0);
    text += line;
  }
  return text;
}

/// The ride of examples/rides/evening_loop.csv, on the machine of examples/machines/trail_bike.json as it is sold: half
/// an hour, a sample a second.
[[nodiscard]] inline InventedRide evening_loop(double circumference) {
  InventedRide ride;
  ride.overall_ratios.clear();
  for (const double gear : {35.0 / 13.0, 31.0 / 17.0, 28.0 / 20.0, 26.0 / 23.0, 24.0 / 26.0, 22.0 / 28.0})
    ride.overall_ratios.push_back(71.0 / 23.0 * gear * 48.0 / 13.0);
  ride.circumference = circumference;
  ride.speedometer_error = 0.05;
  ride.seconds = 1544.0;
  ride.period = 1.0;
  ride.seed = 7;
  return ride;
}

}  // namespace layshaft_test
