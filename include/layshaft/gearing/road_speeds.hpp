// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/band.hpp>
#include <layshaft/core/checks.hpp>
#include <layshaft/gearing/gearbox.hpp>
#include <layshaft/gearing/speed.hpp>

#include <optional>
#include <string>

/// @file
/// What a gearbox, a pair of sprockets and a circumference make of engine speed and road speed, gear by gear.
namespace layshaft {

/// The speeds a gear covers: at the lowest engine speed that pulls cleanly, and at the limit.
struct SpeedRange {
  Band<Speed> lowest;
  Band<Speed> highest;

  friend constexpr bool operator==(const SpeedRange&, const SpeedRange&) = default;
};

/// Overall ratios and the speeds that follow. Gears count from 1.
class RoadSpeeds {
 public:
  RoadSpeeds(const Gearbox& gearbox, Teeth front, Teeth rear, const Band<Length>& circumference)
      : circumference_(circumference), lowest_pull_(gearbox.lowest_pull()), rev_limit_(gearbox.rev_limit()) {
    for (const GearRatio& gear : gearbox.gears())
      overall_ratios_.push_back(overall_ratio(gearbox.primary().ratio(), gear.ratio(), front, rear));
  }

  /// Engine turns per turn of the wheel, from first gear up.
  [[nodiscard]] const FixedList<double, most_gears>& overall_ratios() const noexcept { return overall_ratios_; }
  [[nodiscard]] const Band<Length>& circumference() const noexcept { return circumference_; }

  /// The road speed at an engine speed of zero or more in a gear, or a RangeError.
  [[nodiscard]] Result<Band<Speed>> try_speed_at(AngularSpeed engine_speed, int gear) const {
    if (auto error = gear_outside(gear)) return *std::move(error);
    if (auto error = detail::outside("engine_speed", engine_speed, 0.0_rpm, 1e6_rpm)) return *std::move(error);
    return over(circumference_, [&](Length c) { return road_speed(engine_speed, ratio(gear), c); });
  }
  /// The engine speed at a road speed of zero or more in a gear, or a RangeError. A larger tyre turns the engine
  /// slower.
  [[nodiscard]] Result<Band<AngularSpeed>> try_engine_speed_at(Speed road_speed, int gear) const {
    if (auto error = gear_outside(gear)) return *std::move(error);
    if (auto error = detail::outside("road_speed", road_speed, 0.0_kmh, 10000_kmh)) return *std::move(error);
    return over(circumference_, [&](Length c) { return engine_speed(road_speed, ratio(gear), c); });
  }
  /// The speeds a gear covers, or a RangeError where there is no such gear.
  [[nodiscard]] Result<SpeedRange> try_speed_range(int gear) const {
    if (auto error = gear_outside(gear)) return *std::move(error);
    return SpeedRange{*try_speed_at(lowest_pull_, gear), *try_speed_at(rev_limit_, gear)};
  }

  friend bool operator==(const RoadSpeeds&, const RoadSpeeds&) = default;

 private:
  [[nodiscard]] double ratio(int gear) const noexcept { return overall_ratios_[static_cast<std::size_t>(gear - 1)]; }
  [[nodiscard]] std::optional<Error> gear_outside(int gear) const {
    const int gears = static_cast<int>(overall_ratios_.size());
    if (gear >= 1 && gear <= gears) return std::nullopt;
    return Error::range("gear", std::to_string(gear), "1 to " + std::to_string(gears));
  }

  FixedList<double, most_gears> overall_ratios_;
  Band<Length> circumference_;
  AngularSpeed lowest_pull_;
  AngularSpeed rev_limit_;
};

}  // namespace layshaft
