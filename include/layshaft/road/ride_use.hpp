// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/checks.hpp>
#include <layshaft/core/result.hpp>
#include <layshaft/road/ride_load.hpp>
#include <layshaft/road/shift_rule.hpp>

#include <array>
#include <cstddef>
#include <optional>
#include <string>

/// @file
/// What a ride does to a drive: time, distance and work in each gear, and how long the engine turns how fast.
namespace layshaft {

/// The drive that is ridden.
struct RideDrive {
  OverallRatios overall_ratios;       ///< one a gear, 1e-3 to 10,000
  Length circumference;               ///< 1 mm to 100 m
  ShiftRule rule;                     ///< of as many gears
  std::optional<RideLoad> load = {};  ///< what resists; without it no work is told

  [[nodiscard]] constexpr double ratio_of(int gear) const noexcept {
    return overall_ratios[static_cast<std::size_t>(gear - 1)];
  }
  friend constexpr bool operator==(const RideDrive&, const RideDrive&) noexcept = default;
};

namespace detail {
[[nodiscard]] inline std::optional<Error> refused(const RideDrive& drive) {
  const auto gears = static_cast<int>(drive.overall_ratios.size());
  if (drive.overall_ratios.overfull() || gears != drive.rule.gears())
    return Error::range(
        "number of overall ratios",
        drive.overall_ratios.overfull() ? "more than " + std::to_string(most_gears) : std::to_string(gears),
        std::to_string(drive.rule.gears()) + ", one a gear of the shift rule");
  for (int gear = 1; gear <= gears; ++gear)
    if (auto error = outside("overall ratio " + std::to_string(gear), drive.ratio_of(gear), 1e-3, 1e4)) return error;
  if (drive.load)
    if (auto error = refused(*drive.load)) return error;
  return outside("circumference", drive.circumference, 1.0_mm, 100.0_m);
}
}  // namespace detail

/// What was ridden in one gear.
struct GearUse {
  Duration time{};
  Length distance{};
  Energy wheel_work{};  ///< at the wheel, of all that drove it; nothing where the drive states no load

  friend constexpr bool operator==(const GearUse&, const GearUse&) noexcept = default;
};

/// What a ride did to a drive.
class RideUse {
 public:
  /// Engine speeds are counted in classes of this width, from 0.
  static constexpr AngularSpeed class_width = 250.0_rpm;
  static constexpr std::size_t classes = 80;  ///< up to 20,000 rpm; the last takes all that is faster
  /// Below this the machine counts as standing, whatever its gear.
  static constexpr Speed standing = 0.5_kmh;

  explicit RideUse(const RideDrive& drive) noexcept
      : gears_(static_cast<int>(drive.overall_ratios.size())), loaded_(drive.load.has_value()) {}

  [[nodiscard]] constexpr int gears() const noexcept { return gears_; }
  /// Of a gear, from 1 to gears().
  [[nodiscard]] constexpr const GearUse& gear(int gear) const noexcept {
    return in_gear_[static_cast<std::size_t>(gear - 1)];
  }
  [[nodiscard]] constexpr Duration standstill() const noexcept { return standstill_; }
  [[nodiscard]] constexpr Duration gaps() const noexcept { return gaps_; }  ///< that the recorder left out
  /// Time with the engine in each class, from 0 up. A machine that stands counts by its recorded engine speed alone.
  [[nodiscard]] constexpr const std::array<Duration, classes>& engine_speeds() const noexcept { return engine_speeds_; }
  /// What was climbed in all; of a log only where it has heights.
  [[nodiscard]] constexpr Length climbed() const noexcept { return climbed_; }
  [[nodiscard]] constexpr Duration time() const noexcept {
    Duration all;
    for (const GearUse& one : in_gear_) all += one.time;
    return all;
  }
  [[nodiscard]] constexpr Length distance() const noexcept {
    Length all;
    for (const GearUse& one : in_gear_) all += one.distance;
    return all;
  }

  /// The work at the wheel of all that drove it, in all gears: the work at the chain less the chain's own loss. None
  /// where the drive states no load.
  [[nodiscard]] constexpr std::optional<Energy> wheel_work() const noexcept {
    if (!loaded_) return std::nullopt;
    Energy all;
    for (const GearUse& one : in_gear_) all += one.wheel_work;
    return all;
  }
  /// That work over the distance: the thrust that wears as much as the whole ride. None without load or way.
  [[nodiscard]] constexpr std::optional<Force> mean_thrust() const noexcept {
    if (!loaded_ || !(distance() > Length())) return std::nullopt;
    return *wheel_work() / distance();
  }
  /// The work that brakes and the engine on overrun took up, above zero. None where the drive states no load.
  [[nodiscard]] constexpr std::optional<Energy> held_back() const noexcept {
    if (!loaded_) return std::nullopt;
    return held_back_;
  }

  /// Adds a stretch; unchecked.
  constexpr void add(int gear, Duration time, Speed speed, AngularSpeed engine_speed) noexcept {
    if (speed < standing) {
      standstill_ += time;
      return;
    }
    GearUse& use = in_gear_[static_cast<std::size_t>(gear - 1)];
    use.time += time;
    use.distance += time * speed;
    add_engine(time, engine_speed);
  }
  constexpr void add_engine(Duration time, AngularSpeed engine_speed) noexcept {
    const double place = engine_speed.value() / class_width.value();
    const std::size_t last = classes - 1;
    engine_speeds_[place < double(last) ? static_cast<std::size_t>(place) : last] += time;
  }
  constexpr void add_rise(Length rise) noexcept {
    if (rise > Length()) climbed_ += rise;
  }
  /// Adds work at the wheel, which was held back where it is below zero; unchecked.
  constexpr void add_work(int gear, Energy work) noexcept {
    if (work > Energy())
      in_gear_[static_cast<std::size_t>(gear - 1)].wheel_work += work;
    else
      held_back_ -= work;
  }
  constexpr void add_gap(Duration time) noexcept { gaps_ += time; }

  friend constexpr bool operator==(const RideUse&, const RideUse&) noexcept = default;

 private:
  int gears_;
  bool loaded_;
  std::array<GearUse, most_gears> in_gear_{};
  std::array<Duration, classes> engine_speeds_{};
  Duration standstill_{}, gaps_{};
  Length climbed_{};
  Energy held_back_{};
};

}  // namespace layshaft
