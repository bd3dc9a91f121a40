// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/gearing/speed.hpp>
#include <layshaft/road/ride_log.hpp>
#include <layshaft/road/ride_use.hpp>

#include <algorithm>  // max
#include <cstddef>
#include <limits>
#include <optional>
#include <utility>

/// @file
/// What a recorded ride did to a drive. Opt-in with the log.
namespace layshaft {

namespace detail {

/// The gear whose overall ratio lies nearest to what the engine turned for the wheel, in the ratio of both.
[[nodiscard]] inline int nearest_gear(const RideDrive& drive, double ratio) noexcept {
  int nearest = 1;
  double least = std::numeric_limits<double>::infinity();
  for (int gear = 1; gear <= static_cast<int>(drive.overall_ratios.size()); ++gear) {
    const double off = std::max(ratio / drive.ratio_of(gear), drive.ratio_of(gear) / ratio);
    if (off < least) least = off, nearest = gear;
  }
  return nearest;
}

/// Gathers the work of spells, for a RideUse.
class WorkSpells {
 public:
  WorkSpells(RideUse& use, const RideLoad& load) noexcept
      : use_(use), long_enough_(load.spell.value() * (1.0 - 1e-6)) {}  // however the times between samples are rounded

  /// Adds the work of the stretch from a sample to the next.
  void add(int gear, std::size_t place, double seconds, double work) noexcept {
    if (gear != gear_ || place != next_) end();
    gear_ = gear;
    next_ = place + 1;
    seconds_ += seconds;
    work_ += work;
    if (seconds_ >= long_enough_) end();
  }
  void end() noexcept {
    if (seconds_ > 0.0) use_.add_work(gear_, Energy::from_value(work_));
    seconds_ = work_ = 0.0;
  }

 private:
  RideUse& use_;
  double long_enough_, seconds_ = 0.0, work_ = 0.0;
  int gear_ = 1;
  std::size_t next_ = 0;
};

/// The work at the wheel over the stretch from a sample to the next; below zero where it was held back.
[[nodiscard]] inline double stretch_work(const RideLoad& load, const RideColumns& columns, std::size_t i,
                                         double seconds) noexcept {
  const double before = columns.speeds[i], after = columns.speeds[i + 1], speed = 0.5 * (before + after);
  const double mass = load.mass.value();
  const Force resistance = load.road.resistance(Unwatched(), Speed::from_value(speed), Slope(), Corner::nominal);
  double work = resistance.value() * speed * seconds + mass * (after - before) * speed;
  if (!columns.heights.empty()) work += mass * standard_gravity.value() * (columns.heights[i + 1] - columns.heights[i]);
  return work;
}

}  // namespace detail

/// What a recorded ride does to a drive. The gear is that whose ratio the recorded engine speed comes nearest to; where
/// none was recorded, the shift rule follows the speed. Or a RangeError, where the drive is none.
///
/// Where the drive states a load, the work at the wheel over a stretch is the resistance on the level at its mean speed
/// times its distance, what speeds up the mass, and, where heights were recorded, what lifts it. Heights must be
/// smooth: an error of 1 m counts as much as 9.8 J a kilogram. A machine that stands does no work.
[[nodiscard]] inline Result<RideUse> try_ride_use(const RideLog& log, const RideDrive& drive) {
  if (auto error = detail::refused(drive)) return *std::move(error);
  RideUse use(drive);
  const RideColumns& columns = log.columns();
  const bool heights = log.has_heights(), turning = log.has_engine_speeds();
  const double* const speeds = columns.speeds.data();
  const double* const rises = columns.heights.data();
  const double* const engine = columns.engine_speeds.data();
  const double turns = turn.value() / drive.circumference.value();  // of the wheel, in radians a metre
  const double standing = RideUse::standing.value();
  std::optional<detail::WorkSpells> spells;
  if (drive.load) spells.emplace(use, *drive.load);
  int gear = 1;
  double told = 0.0;
  log.for_each_stretch([&](std::size_t i, double seconds) {
    const double speed = 0.5 * (speeds[i] + speeds[i + 1]);
    const double wheel = speed * turns;
    double engine_speed = 0.0;
    if (turning) {
      engine_speed = 0.5 * (engine[i] + engine[i + 1]);
      if (speed >= standing && engine_speed > 0.0) gear = detail::nearest_gear(drive, engine_speed / wheel);
      if (speed < standing) use.add_engine(seconds * units::s, AngularSpeed::from_value(engine_speed));
    } else {
      gear = drive.rule.gear_after(gear, Speed::from_value(speed));
      engine_speed = wheel * drive.ratio_of(gear);
    }
    use.add(gear, seconds * units::s, Speed::from_value(speed), AngularSpeed::from_value(engine_speed));
    if (spells && speed >= standing)
      spells->add(gear, i, seconds, detail::stretch_work(*drive.load, columns, i, seconds));
    if (heights) use.add_rise(Length::from_value(rises[i + 1] - rises[i]));
    told += seconds;
  });
  if (spells) spells->end();
  const double whole = columns.times.back() - columns.times.front();
  if (whole - told > 1e-9 * whole) use.add_gap((whole - told) * units::s);
  return use;
}
#if LAYSHAFT_EXCEPTIONS
/// @throws RangeError as `try_ride_use` says.
[[nodiscard]] inline RideUse ride_use(const RideLog& log, const RideDrive& drive) {
  return try_ride_use(log, drive).value();
}
#endif

}  // namespace layshaft
