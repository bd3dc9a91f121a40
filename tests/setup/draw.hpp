// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/layshaft.hpp>

#include <cstddef>
#include <cstdint>
#include <optional>
#include <random>
#include <string_view>
#include <vector>

/// @file
/// Machines and set-ups by chance, the same on every machine.
namespace layshaft_test {

using namespace layshaft;

/// Draws machines and set-ups.
class Draw {
 public:
  [[nodiscard]] double between(double low, double high) {
    return low + (high - low) * (static_cast<double>(random_() >> 11) * 0x1p-53);
  }
  [[nodiscard]] int between(int low, int high) {
    return low + static_cast<int>(random_() % static_cast<std::uint64_t>(high - low + 1));
  }
  [[nodiscard]] bool once_in(int times) { return between(1, times) == 1; }
  template <class Value, std::size_t N>
  [[nodiscard]] const Value& one_of(const Value (&values)[N]) {
    return values[random_() % N];
  }

  [[nodiscard]] GearRatio ratio(double low, double high) {
    if (once_in(2)) return between(low, high);
    return GearPair{Teeth(between(11, 30)), Teeth(between(20, 70))};
  }
  [[nodiscard]] TyreSize tyre() {
    static constexpr std::string_view markings[] = {"110/90-18",  "120/80-18 M/C 62R TT",
                                                    "140/80ZR17", "130/90B16",
                                                    "90/90-21",   "190/55ZR17",
                                                    "2.75-17",    "2.00-18",
                                                    "4.10-18",    "4.60-20",
                                                    "3.50-10",    "2 1/2-8",
                                                    "5.4-14",     "MT90B16",
                                                    "MJ90-19"};
    static const std::vector<TyreSize> tyres = [] {
      std::vector<TyreSize> all;
      for (const std::string_view marking : markings)
        for (const TyreUse use : tyre_uses) all.emplace_back(marking, use);
      return all;
    }();
    return tyres[static_cast<std::size_t>(between(0, static_cast<int>(tyres.size()) - 1))];
  }
  [[nodiscard]] layshaft::Setup setup() {
    SetupParts parts{.front = Teeth(between(10, 20)), .rear = Teeth(between(28, 60))};
    if (once_in(5)) {
      const double nominal = between(1.2, 2.3);
      parts.circumference = Band<Length>{nominal * between(0.97, 1.0) * units::m, nominal * units::m,
                                         nominal * between(1.0, 1.02) * units::m};
    } else {
      parts.tyre = tyre();
      if (once_in(2)) parts.tread_worn = between(0.1, 9.0) * units::mm;
    }
    if (!once_in(3)) parts.front_tyre = tyre();
    if (!once_in(3))
      parts.drive_efficiency = Band<double>{between(0.85, 0.92), between(0.92, 0.96), between(0.96, 1.0)};
    if (once_in(8)) parts.chain = series();
    return layshaft::Setup(parts);
  }
  [[nodiscard]] ChainSeries series() {
    static constexpr std::string_view names[] = {"420", "428", "520", "525", "530", "532", "630", "cycle", "10B"};
    return ChainSeries(one_of(names));
  }
  [[nodiscard]] Machine machine() {
    FixedList<GearRatio, most_gears> gears;
    for (int gear = between(1, 6); gear > 0; --gear) gears.push_back(ratio(0.6, 3.2));
    const ChainSeries chain = series();
    const Length front_end = between(420.0, 750.0) * units::mm;
    const Length travel = between(1.2, 3.0) * chain.pitch();  // one after the other: arguments have no order
    const Length slack = once_in(4) ? Length() : between(5.0, 45.0) * units::mm;
    constexpr SpeedometerSensor sensors[] = {SpeedometerSensor::layshaft, SpeedometerSensor::rear_wheel,
                                             SpeedometerSensor::front_wheel};
    std::optional<Band<double>> error;
    if (once_in(2)) error = Band<double>{between(-0.02, 0.02), between(0.02, 0.04), between(0.04, 0.08)};
    const AngularSpeed idle = between(800.0, 2000.0) * units::rpm, limit = between(5000.0, 15000.0) * units::rpm;
    std::optional<Engine> engine;
    std::optional<Body> body;
    std::optional<RoadLoad> road;
    if (once_in(4)) {
      const Torque lowest = between(5.0, 40.0) * units::Nm, crest = between(5.0, 60.0) * units::Nm;
      const EngineCurve curve({idle, 0.6 * limit, 1.1 * limit}, {lowest, crest, between(1.0, 30.0) * units::Nm});
      engine = curve;
      const Mass mass = between(90.0, 400.0) * units::kg;
      if (once_in(2)) body = Body({.mass = mass});
      road = RoadLoad::from_parts({.mass = mass,
                                   .rolling_coefficient = surface(SurfaceKind::gravel).rolling_coefficient,
                                   .drag_area = drag_area(DragKind::motorcycle).area});
    }
    return Machine({.name = "a machine",
                    .gearbox = Gearbox({.primary = ratio(1.0, 4.0), .gears = gears, .idle = idle, .rev_limit = limit}),
                    .adjuster = Adjuster(front_end, front_end + travel, slack),
                    .chain = chain,
                    .speedometer = Speedometer(one_of(sensors), error),
                    .stock = setup(),
                    .engine = engine,
                    .body = body,
                    .road_load = road});
  }

 private:
  std::mt19937_64 random_{20261125};
};

}  // namespace layshaft_test
