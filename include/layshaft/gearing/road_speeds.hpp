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

namespace detail {
/// The overall ratio in a gear, counted from 1, for whoever watches.
template <class Watch>
[[nodiscard]] auto overall_ratio_in(Watch watch, const Gearbox& gearbox, int gear, Teeth front, Teeth rear) {
  const auto primary = ratio_of(watch, "primary", gearbox.primary());
  const auto ratio = ratio_of(watch, {"gear", gear}, gearbox.gears()[static_cast<std::size_t>(gear - 1)]);
  const auto front_teeth = watch.given("front", front);
  const auto rear_teeth = watch.given("rear", rear);
  return watch.step(formula::overall_ratio{}, primary, ratio, front_teeth, rear_teeth);
}
template <class Watch, class Ratio, class Circumference>
[[nodiscard]] auto speed_at(Watch watch, AngularSpeed engine_speed, const Ratio& overall_ratio,
                            const Circumference& circumference) {
  return watch.step(formula::road_speed{}, watch.given("engine_speed", engine_speed), overall_ratio, circumference);
}
template <class Watch, class Ratio, class Circumference>
[[nodiscard]] auto engine_speed_at(Watch watch, Speed road_speed, const Ratio& overall_ratio,
                                   const Circumference& circumference) {
  return watch.step(formula::engine_speed{}, watch.given("road_speed", road_speed), overall_ratio, circumference);
}
}  // namespace detail

/// Overall ratios and the speeds that follow. Gears count from 1.
class RoadSpeeds {
 public:
  RoadSpeeds(const Gearbox& gearbox, Teeth front, Teeth rear, const Band<Length>& circumference)
      : circumference_(circumference), lowest_pull_(gearbox.lowest_pull()), rev_limit_(gearbox.rev_limit()) {
    for (int gear = 1; gear <= static_cast<int>(gearbox.gears().size()); ++gear)
      overall_ratios_.push_back(detail::overall_ratio_in(Unwatched(), gearbox, gear, front, rear));
  }

  /// Engine turns per turn of the wheel, from first gear up.
  [[nodiscard]] const FixedList<double, most_gears>& overall_ratios() const noexcept { return overall_ratios_; }
  [[nodiscard]] const Band<Length>& circumference() const noexcept { return circumference_; }
  /// The engine's limit.
  [[nodiscard]] AngularSpeed rev_limit() const noexcept { return rev_limit_; }

  /// The road speed at an engine speed of zero or more in a gear, or a RangeError.
  [[nodiscard]] Result<Band<Speed>> try_speed_at(AngularSpeed engine_speed, int gear) const {
    if (auto error = gear_outside(gear)) return *std::move(error);
    if (auto error = detail::outside("engine_speed", engine_speed, 0.0_rpm, 1e6_rpm)) return *std::move(error);
    return over(circumference_, [&](Length c) { return detail::speed_at(Unwatched(), engine_speed, ratio(gear), c); });
  }
  /// The engine speed at a road speed of zero or more in a gear, or a RangeError. A larger tyre turns the engine
  /// slower.
  [[nodiscard]] Result<Band<AngularSpeed>> try_engine_speed_at(Speed road_speed, int gear) const {
    if (auto error = gear_outside(gear)) return *std::move(error);
    if (auto error = detail::outside("road_speed", road_speed, 0.0_kmh, 10000_kmh)) return *std::move(error);
    return over(circumference_,
                [&](Length c) { return detail::engine_speed_at(Unwatched(), road_speed, ratio(gear), c); });
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
