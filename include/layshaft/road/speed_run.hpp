// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/road/shift_points.hpp>
#include <layshaft/road/standing_start.hpp>

#include <boost/math/quadrature/gauss_kronrod.hpp>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>
#include <optional>
#include <utility>

/// @file
/// From one speed to another at full throttle: time, way, and where the engine's work went.
///
/// Each pull is integrated over speed between the knots of the engine's curve, where all is smooth. While a shift lasts
/// the machine coasts. Where the engine would turn slower than it pulls cleanly, the clutch slips. What the engine's
/// own turning gives up when a shift slows it down heats the clutch, and drives nothing.
namespace layshaft {

/// Kinetic energy of a mass, with what turns with it, between two speeds.
LAYSHAFT_FORMULA(constexpr, Energy, kinetic_energy, (Mass equivalent_mass, Speed start_speed, Speed end_speed),
                 is_finite(equivalent_mass) && is_finite(start_speed) && is_finite(end_speed), sources::definition,
                 0.5 * (equivalent_mass * (end_speed - start_speed) * (end_speed + start_speed)))

/// Kinetic energy of what turns, between two speeds.
LAYSHAFT_FORMULA(constexpr, Energy, turning_energy,
                 (MomentOfInertia engine_inertia, AngularSpeed lower_speed, AngularSpeed upper_speed),
                 is_finite(engine_inertia) && is_finite(lower_speed) && is_finite(upper_speed), sources::definition,
                 0.5 * (engine_inertia * (upper_speed - lower_speed) * (upper_speed + lower_speed)))

/// How a run is ridden.
struct SpeedRunParts {
  Slope slope = {};
  Duration shift_time = 0.3_s;                ///< without thrust, each time: 0 to 10 s (common practice, no source)
  std::optional<AngularSpeed> shift_at = {};  ///< engine speed of every shift; none: where the thrust stays highest
  /// The rider opens the throttle only as far as the front wheel stays down and the rear one holds on this ground;
  /// none: as if both took any thrust.
  std::optional<SurfaceKind> ground = {};

  friend constexpr bool operator==(const SpeedRunParts&, const SpeedRunParts&) noexcept = default;
};

/// Where the engine's work went.
struct EnergyBalance {
  Energy engine_work{};
  Energy clutch_heat{};  ///< while it slipped
  Energy drive_loss{};   ///< of what the engine's own inertia left
  Energy rolling{};
  Energy drag{};
  Energy climb{};    ///< below zero downhill
  Energy kinetic{};  ///< of machine, wheels and, while it was coupled, the engine

  /// What is not accounted for: nothing, but for rounding and quadrature.
  [[nodiscard]] constexpr Energy rest() const noexcept {
    return engine_work - clutch_heat - drive_loss - rolling - drag - climb - kinetic;
  }
  friend constexpr bool operator==(const EnergyBalance&, const EnergyBalance&) noexcept = default;
};

/// A run from one speed to another.
struct SpeedRun {
  bool reaches;                        ///< the end speed, whatever the causes
  bool may_reach;                      ///< at the best of them
  std::optional<Band<Duration>> time;  ///< as distance: none unless it reaches the end speed whatever the causes
  std::optional<Band<Length>> distance;
  ShiftPoints shifts;    ///< at nominal causes
  EnergyBalance energy;  ///< at nominal causes, as far as the run goes

  friend constexpr bool operator==(const SpeedRun&, const SpeedRun&) noexcept = default;
};

namespace detail {

/// One run, at one corner of its causes.
class RunIntegration {
 public:
  RunIntegration(const Powertrain& train, const RoadLoad& road, const SpeedRunParts& how, const RoadCorners& at)
      : train_(train), road_(road), how_(how), at_(at), moved_(start_mass(train, *road.mass(), at.wheel)) {
    if (how.ground)
      most_thrust_ = try_thrust_limit(*train.body(), surface(*how.ground), how.slope)->thrust.at(at.drive).value();
  }

  /// Runs from start to end; false where it does not get there.
  [[nodiscard]] bool run(Speed start, Speed end) {
    speed_ = start;
    gear_ = 1;
    while (gear_ < train_.gears() && !(start < shift_from(gear_).speed)) ++gear_;
    while (speed_ < end) {
      if (!slip(end)) return false;
      if (!(speed_ < end)) break;
      const bool last = gear_ == train_.gears();
      const ShiftPoint shift = last ? ShiftPoint{} : shift_from(gear_);
      const Speed top = last ? train_.speed(train_.fastest(), gear_, at_.wheel) : shift.speed;
      if (!pull(std::min(end, top))) return false;
      if (!(speed_ < end)) break;
      if (last) return false;
      shifts_.push_back(shift);
      if (!coast()) return false;
      ++gear_;
    }
    return true;
  }

  [[nodiscard]] Duration time() const noexcept { return Duration::from_value(time_); }
  [[nodiscard]] Length distance() const noexcept { return Length::from_value(distance_); }
  [[nodiscard]] const ShiftPoints& shifts() const noexcept { return shifts_; }
  [[nodiscard]] const EnergyBalance& energy() const noexcept { return energy_; }

 private:
  [[nodiscard]] ShiftPoint shift_from(int gear) const {
    if (!how_.shift_at) return shift_point(train_, gear, at_);
    const AngularSpeed before = std::min(*how_.shift_at, train_.fastest());
    const Speed speed = train_.speed(before, gear, at_.wheel);
    return {gear, speed, before, train_.held_engine_speed(speed, gear + 1, at_.wheel), before == train_.fastest()};
  }
  [[nodiscard]] double resistance(double speed) const {
    return road_.resistance(Unwatched(), Speed::from_value(speed), how_.slope, at_.road()).value();
  }
  template <class Integrand>
  [[nodiscard]] static double integral(Integrand integrand, double low, double high, unsigned halvings = 12) {
    using boost::math::quadrature::gauss_kronrod;
    return gauss_kronrod<double, 15>::integrate(integrand, low, high, halvings, 1e-13);
  }
  /// Adds a stretch over which the machine gains speed at a rate that depends on its speed alone.
  template <class Rate>
  void add_stretch(double low, double high, Rate acceleration, unsigned halvings = 12) {
    time_ += integral([&](double v) { return 1.0 / acceleration(v); }, low, high, halvings);
    const double way = integral([&](double v) { return v / acceleration(v); }, low, high, halvings);
    distance_ += way;
    energy_.rolling += Energy::from_value(integral(
        [&](double v) {
          const Speed speed = Speed::from_value(v);
          return road_.rolling_at(Unwatched(), speed, how_.slope, at_.road()).value() * v / acceleration(v);
        },
        low, high, halvings));
    energy_.drag += Energy::from_value(integral(
        [&](double v) {
          return road_.drag_at(Unwatched(), Speed::from_value(v), at_.road()).value() * v / acceleration(v);
        },
        low, high, halvings));
    if (!how_.slope.level()) energy_.climb += road_.climb(Unwatched(), how_.slope) * Length::from_value(way);
    speed_ = Speed::from_value(high);
  }

  /// With the clutch slipping, up to where it is home or to the end.
  [[nodiscard]] bool slip(Speed end) {
    if (!(speed_ < train_.speed(train_.slowest_pull(), gear_, at_.wheel))) return true;
    const AngularSpeed turning = std::max(train_.start_speed(), train_.slowest_pull());
    const Speed caught = std::min(end, train_.speed(turning, gear_, at_.wheel));
    const Torque given = start_torque(train_, at_.drive);
    const double efficiency = train_.drive_efficiency(Unwatched(), gear_, given, train_.start_speed(), at_.drive);
    const double full =
        drive_thrust(given, train_.overall_ratio(gear_), efficiency, train_.circumference().at(at_.wheel)).value();
    const double thrust = std::min(full, most_thrust_);
    const Torque torque = thrust / full * given;
    const double low = speed_.value(), high = caught.value();
    const auto rate = [&](double v) { return (thrust - resistance(v)) / moved_.value(); };
    if (!positive_throughout(rate, low, high)) return false;
    const double before = time_;
    add_stretch(low, high, rate);
    const Energy work = torque * turning * Duration::from_value(time_ - before);
    const double arrived = integral([&](double v) { return thrust * v / rate(v); }, low, high);  // at the ground
    const Energy passed = Energy::from_value(arrived / efficiency);                              // on by the clutch
    energy_.engine_work += work;
    energy_.clutch_heat += work - passed;
    energy_.drive_loss += passed - Energy::from_value(arrived);
    energy_.kinetic += kinetic_energy(moved_, Speed::from_value(low), caught);
    return true;
  }

  /// What the engine does at a road speed, the clutch home.
  struct Pull {
    double engine_power, loss, acceleration;
  };
  [[nodiscard]] Pull pull_at(double v) const {
    const AngularSpeed turning = train_.held_engine_speed(Speed::from_value(v), gear_, at_.wheel);
    const Torque full = train_.engine().curve(at_.drive).torque(Unwatched(), turning);
    const double efficiency = train_.drive_efficiency(Unwatched(), gear_, full, turning, at_.drive);
    const Length rolled = train_.circumference().at(at_.wheel);
    const double ratio = train_.overall_ratio(gear_);
    const Mass engine = engine_mass(train_.engine().inertia(), ratio, efficiency, rolled);
    const Mass all = moved_ + engine;
    const Force met = Force::from_value(resistance(v));
    const Force most = drive_thrust(full, ratio, efficiency, rolled);
    Acceleration gained = acceleration(most, met, all);
    Torque torque = full;
    // What reaches the ground moves the machine's mass; the rest turns engine and wheels. More than the ground or the
    // front wheel takes, the rider does not ask for.
    const Acceleration bearable = (Force::from_value(most_thrust_) - met) / *road_.mass();
    if (bearable < gained) {
      gained = bearable;
      torque = (met + all * gained) / most * full;
    }
    const double turns = turn.value() / rolled.value() * ratio;  // of the engine, in radians a metre
    const double left = torque.value() - train_.engine().inertia().value() * gained.value() * turns;
    return {torque.value() * v * turns, (1.0 - efficiency) * left * v * turns, gained.value()};
  }
  [[nodiscard]] bool pull(Speed to) {
    EngineKnots knots = knots_of(train_, at_.drive);
    double low = speed_.value();
    for (const AngularSpeed& knot : knots) {
      const double high = std::min(train_.speed(knot, gear_, at_.wheel), to).value();
      if (!(low < high)) continue;
      const auto rate = [&](double v) { return pull_at(v).acceleration; };
      if (!positive_throughout(rate, low, high)) return false;
      add_stretch(low, high, rate);
      const auto work = [&](auto power) {
        return Energy::from_value(integral([&](double v) { return power(v) / rate(v); }, low, high));
      };
      energy_.engine_work += work([&](double v) { return pull_at(v).engine_power; });
      energy_.drive_loss += work([&](double v) { return pull_at(v).loss; });
      energy_.kinetic += kinetic_energy(moved_, Speed::from_value(low), Speed::from_value(high));
      energy_.kinetic += turning_energy(train_.engine().inertia(), engine_speed_of(low), engine_speed_of(high));
      low = high;
    }
    return true;
  }
  [[nodiscard]] AngularSpeed engine_speed_of(double v) const {
    return engine_speed(Speed::from_value(v), train_.overall_ratio(gear_), train_.circumference().at(at_.wheel));
  }
  /// Thrust and resistance both bend little between knots, so that a stretch on which the machine would not gain speed
  /// shows at one of so many places.
  template <class Rate>
  [[nodiscard]] static bool positive_throughout(Rate rate, double low, double high) {
    constexpr int parts = 8;
    for (int part = 0; part <= parts; ++part)
      if (!(rate(low + (high - low) * part / parts) > 0.0)) return false;
    return true;
  }

  /// Without thrust, for as long as a shift takes; false where it comes to a stop.
  [[nodiscard]] bool coast() {
    const double whole = how_.shift_time.value();
    const auto rate = [&](double v) { return -resistance(v) / moved_.value(); };
    for (double left = whole; left > 1e-14 * whole;) {
      const double start = speed_.value(), first = rate(start);
      const double farthest = std::max(0.0, start + first * left);  // if that went on
      const double there = rate(farthest);
      // Hill and air may balance at a speed in between, where it ends.
      const double end = there * first < 0.0 ? root_of(rate, start, farthest, first, there) : farthest;
      const double way = std::fabs(end - start);
      if (way < 1e-12 * start) {
        hold(left);
        return true;
      }
      // It nears such a speed ever more slowly: half of the way at a time, over which all is smooth.
      const bool settles = there / first < 0.5;
      double after = settles ? 0.5 * (start + end) : end;
      const unsigned halvings = settles || way < 5e-3 * start ? 0 : 12;
      const auto late = [&](double v) {
        return integral([&](double u) { return 1.0 / rate(u); }, start, v, halvings) - left;
      };
      const double late_end = late(after);
      if (late_end > 0.0) after = root_of(late, start, after, -left, late_end);
      add_stretch(start, after, rate, halvings);
      energy_.kinetic += kinetic_energy(moved_, Speed::from_value(start), speed_);
      left = std::max(0.0, -late_end);
      if (left > 0.0 && !(after > 0.0)) return false;
    }
    return true;
  }
  /// At the speed at which hill, road and air balance.
  void hold(double time) {
    const Length way = speed_ * Duration::from_value(time);
    time_ += time;
    distance_ += way.value();
    const Energy rolled = road_.rolling_at(Unwatched(), speed_, how_.slope, at_.road()) * way;
    const Energy dragged = road_.drag_at(Unwatched(), speed_, at_.road()) * way;
    energy_.rolling += rolled;
    energy_.drag += dragged;
    energy_.climb -= rolled + dragged;
  }
  /// Where something is zero, between two places at which its signs differ.
  template <class Of>
  [[nodiscard]] static double root_of(Of of, double a, double b, double of_a, double of_b) {
    std::uintmax_t most = 100;
    const auto [below, above] =
        boost::math::tools::toms748_solve(of, std::min(a, b), std::max(a, b), a < b ? of_a : of_b, a < b ? of_b : of_a,
                                          boost::math::tools::eps_tolerance<double>(50), most);
    return 0.5 * (below + above);
  }

  const Powertrain& train_;
  const RoadLoad& road_;
  const SpeedRunParts& how_;
  RoadCorners at_;
  Mass moved_;
  double most_thrust_ = std::numeric_limits<double>::max();  ///< that ground and front wheel take
  Speed speed_{};
  int gear_ = 1;
  double time_ = 0.0, distance_ = 0.0;
  ShiftPoints shifts_{};
  EnergyBalance energy_{};
};

}  // namespace detail

/// Time and way from one speed to a higher one, full throttle, with all that turns and the time of the shifts. A
/// machine that does not get there is an answer. Or a RangeError for speeds outside 0 to 1000 km/h that do not rise or
/// a shift time outside 0 to 10 s, or an Error without any mass. Error: within 6.2e-14 s and 1.1e-12 m of the closed
/// form that an engine of constant torque has in one gear.
[[nodiscard]] inline Result<SpeedRun> try_time_to_speed(const Powertrain& train, const RoadLoad& road, Speed start,
                                                        Speed end, const SpeedRunParts& how = {}) {
  if (auto error = detail::outside("start", start, Speed(), 1000.0_kmh)) return *std::move(error);
  if (auto error = detail::outside("end", end, start, 1000.0_kmh)) return *std::move(error);
  if (auto error = detail::outside("shift_time", how.shift_time, Duration(), 10.0_s)) return *std::move(error);
  if (how.shift_at)
    if (auto error = detail::outside("shift_at", *how.shift_at, train.slowest_pull(), 1e6_rpm))
      return *std::move(error);
  if (how.ground) {
    if (!train.body()) return Error::value("a run on a ground needs the machine's body");
    if (const auto limit = try_thrust_limit(*train.body(), surface(*how.ground), how.slope); !limit)
      return limit.error();
  }
  if (auto error = detail::no_mass(train, road)) return *std::move(error);
  const RoadLoad laden = detail::laden_road(train, road);
  SpeedRun all{};
  all.reaches = true;
  std::optional<Band<Duration>> time;
  std::optional<Band<Length>> distance;
  bool first = true;
  for (const RoadCorners& at : road_corners) {
    detail::RunIntegration run(train, laden, how, at);
    const bool reached = run.run(start, end);
    all.reaches = all.reaches && reached;
    all.may_reach = all.may_reach || reached;
    if (first) {
      time = Band<Duration>::exactly(run.time());
      distance = Band<Length>::exactly(run.distance());
      all.shifts = run.shifts();
      all.energy = run.energy();
      first = false;
    }
    time->include(run.time());
    distance->include(run.distance());
  }
  if (all.reaches) all.time = time, all.distance = distance;
  return all;
}

}  // namespace layshaft
