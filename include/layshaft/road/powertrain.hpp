// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/chain/loads.hpp>
#include <layshaft/gearing/road_speeds.hpp>
#include <layshaft/road/acceleration.hpp>
#include <layshaft/road/body.hpp>
#include <layshaft/road/engine.hpp>
#include <layshaft/road/road_load.hpp>

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <utility>

/// @file
/// From the engine to the ground: everything between a curve of torque and the thrust in each gear.
namespace layshaft {

/// What is left of the power after two losses one behind the other.
// clang-format off
LAYSHAFT_FORMULA(constexpr, double, joint_efficiency, (double gearbox_efficiency, double chain_efficiency),
                 is_finite(gearbox_efficiency) && is_finite(chain_efficiency), sources::definition,
                 gearbox_efficiency * chain_efficiency)
// clang-format on

/// What primary drive and gearbox pass on where nobody measured it: two meshes of gears, of 0.966 to 0.99 each.
inline constexpr Band<double> usual_gearbox_efficiency{0.933, 0.945, 0.98};
inline constexpr Source gearbox_efficiency_source{
    "two gear meshes, each after a vehicle dynamics course's manual gearbox (0.966 to 0.973)", Certainty::secondary};
/// What a chain drive passes on where its pins' diameter is not known: below 75 mph.
inline constexpr Band<double> usual_chain_efficiency{0.96, 0.975, 0.99};
inline constexpr Source usual_chain_source{
    "Burgess and Lodge, Optimisation of the chain drive system on sports motorcycles, Sports Engineering 7(2), 2004",
    Certainty::published};
inline constexpr Source chain_loads_source{"the chain's loads at this torque and speed", Certainty::from_memory};
inline constexpr Source wheel_curve_source{"the curve was measured at the rear wheel", Certainty::stated};

/// A torque below this share of the greatest bends the chain's joints no less: the chain's efficiency is taken as
/// there.
inline constexpr double least_torque_share = 0.05;

/// What a Powertrain is made of.
struct PowertrainParts {
  Engine engine;
  Gearbox gearbox;
  ChainLoop loop;              ///< the chain on its sprockets
  Band<Length> circumference;  ///< of the rear wheel: 0.1 to 10 m
  ChainMade chain_made = {};
  std::optional<Band<double>> drive_efficiency = {};  ///< from where the curve was measured to the ground: 0.3 to 1
  std::optional<Band<double>> chain_efficiency = {};  ///< the chain's own; the figure above is then without it
  std::optional<Body> body = {};

  friend bool operator==(const PowertrainParts&, const PowertrainParts&) = default;
};

/// Where the causes of an answer stand in one run: the tyre's size, and all else together, low where it takes thrust: a
/// weak engine, a lossy drive, a road that resists.
struct RoadCorners {
  Corner wheel = Corner::nominal;
  Corner drive = Corner::nominal;

  /// Where the road's resistance stands.
  [[nodiscard]] constexpr Corner road() const noexcept { return opposite(drive); }
  [[nodiscard]] static constexpr Corner opposite(Corner corner) noexcept {
    return corner == Corner::low ? Corner::high : corner == Corner::high ? Corner::low : Corner::nominal;
  }
};
/// The runs of an answer on the road. What resists, loses and pulls moves every answer one way, so its ends stand for
/// all three at once.
inline constexpr std::array<RoadCorners, 5> road_corners{{{},
                                                          {Corner::low, Corner::low},
                                                          {Corner::high, Corner::low},
                                                          {Corner::low, Corner::high},
                                                          {Corner::high, Corner::high}}};

/// An engine, its gears and a chain drive that turns a wheel.
class Powertrain {
 public:
  using Parts = PowertrainParts;

  /// The powertrain; or a RangeError that names the part, or where the engine's curve and the gearbox's speeds do not
  /// meet; or an Error for a loss stated twice.
  [[nodiscard]] static Result<Powertrain> make(const Parts& parts) {
    if (auto error = detail::outside("circumference", parts.circumference, 0.1_m, 10.0_m)) return *std::move(error);
    if (parts.drive_efficiency)
      if (auto error = detail::outside("drive_efficiency", *parts.drive_efficiency, 0.3, 1.0)) return *std::move(error);
    if (parts.chain_efficiency)
      if (auto error = detail::outside("chain_efficiency", *parts.chain_efficiency, 0.3, 1.0)) return *std::move(error);
    if (auto error = detail::loss_stated_twice(parts.engine, parts.drive_efficiency.has_value()))
      return *std::move(error);
    if (auto error = detail::never_pulls(parts.engine, parts.gearbox)) return *std::move(error);
    if (auto error = detail::outside(parts.chain_made)) return error->in("chain_made");
    return Powertrain(parts);
  }

  [[nodiscard]] const Engine& engine() const noexcept { return parts_.engine; }
  [[nodiscard]] const Gearbox& gearbox() const noexcept { return parts_.gearbox; }
  [[nodiscard]] const ChainLoop& loop() const noexcept { return parts_.loop; }
  [[nodiscard]] const Band<Length>& circumference() const noexcept { return parts_.circumference; }
  [[nodiscard]] const std::optional<Body>& body() const noexcept { return parts_.body; }
  [[nodiscard]] const Parts& parts() const noexcept { return parts_; }

  [[nodiscard]] int gears() const noexcept { return static_cast<int>(overall_ratios_.size()); }
  /// Engine turns a turn of the wheel, in a gear from 1.
  [[nodiscard]] double overall_ratio(int gear) const noexcept {
    return overall_ratios_[static_cast<std::size_t>(gear - 1)];
  }
  [[nodiscard]] const FixedList<double, most_gears>& overall_ratios() const noexcept { return overall_ratios_; }
  /// The engine speeds at which the curve tells a torque, up to the limit.
  [[nodiscard]] AngularSpeed slowest() const noexcept { return parts_.engine.curve().lowest_speed(); }
  [[nodiscard]] AngularSpeed fastest() const noexcept {
    return std::min(parts_.engine.curve().highest_speed(), parts_.gearbox.rev_limit());
  }
  /// The lowest at which it pulls cleanly with the clutch out: the gearbox's, unless the curve begins above it.
  [[nodiscard]] AngularSpeed slowest_pull() const noexcept { return std::max(slowest(), parts_.gearbox.lowest_pull()); }
  /// The engine speed that is held while the clutch slips at a start.
  [[nodiscard]] AngularSpeed start_speed() const noexcept {
    return std::min(parts_.engine.parts().start_speed.value_or(slowest_pull()), fastest());
  }

  /// The speed on the road at an engine speed.
  [[nodiscard]] Speed speed(AngularSpeed engine_speed, int gear, Corner wheel) const noexcept {
    return road_speed(engine_speed, overall_ratio(gear), parts_.circumference.at(wheel));
  }
  /// The engine speed on the road, held within the curve: where a small or a large tyre would carry it beyond an end of
  /// it, the end counts.
  [[nodiscard]] AngularSpeed held_engine_speed(Speed road_speed, int gear, Corner wheel) const noexcept {
    return std::clamp(layshaft::engine_speed(road_speed, overall_ratio(gear), parts_.circumference.at(wheel)),
                      slowest(), fastest());
  }

  /// What speaks against a gear.
  [[nodiscard]] std::optional<Error> gear_outside(int gear) const {
    if (gear >= 1 && gear <= gears()) return std::nullopt;
    return Error::range("gear", std::to_string(gear), "1 to " + std::to_string(gears()));
  }
  /// What speaks against asking for a thrust there.
  [[nodiscard]] std::optional<Error> not_in_gear(int gear, Speed road_speed) const {
    if (auto error = gear_outside(gear)) return error;
    constexpr double rounding = 1e-9;
    const Speed lowest = speed(slowest(), gear, Corner::nominal), highest = speed(fastest(), gear, Corner::nominal);
    if (is_finite(road_speed) && lowest * (1.0 - rounding) <= road_speed && road_speed <= highest * (1.0 + rounding))
      return std::nullopt;
    return Error::range(
        "speed in gear " + std::to_string(gear), detail::in_words(road_speed),
        detail::in_words(lowest) + " to " + detail::in_words(highest) + ", where the engine's curve tells a torque");
  }

 private:
  template <class Watch>
  [[nodiscard]] auto gearbox_efficiency(Watch watch, Corner drive) const {
    if (parts_.drive_efficiency) return watch.given("gearbox_efficiency", parts_.drive_efficiency->at(drive));
    if (parts_.engine.measured_at() == MeasuredAt::gearbox_output)
      return watch.given("gearbox_efficiency", 1.0,
                         Source{"the curve was measured at the gearbox's output", Certainty::stated});
    return watch.given("gearbox_efficiency", usual_gearbox_efficiency.at(drive), gearbox_efficiency_source);
  }

 public:
  /// What arrives at the ground of the engine's power, for whoever watches, at a torque and a speed of the engine.
  template <class Watch>
  [[nodiscard]] auto drive_efficiency(Watch watch, int gear, Torque torque, AngularSpeed engine_speed,
                                      Corner drive) const {
    if (parts_.engine.measured_at() == MeasuredAt::rear_wheel)
      return watch.given("drive_efficiency", 1.0, wheel_curve_source);
    if (parts_.drive_efficiency && !parts_.chain_efficiency)
      return watch.given("drive_efficiency", parts_.drive_efficiency->at(drive));
    const auto gearbox = gearbox_efficiency(watch, drive);
    const auto chain = [&] {
      if (parts_.chain_efficiency) return watch.given("chain_efficiency", parts_.chain_efficiency->at(drive));
      if (!detail::pin_of(parts_.loop.series(), parts_.chain_made))
        return watch.given("chain_efficiency", usual_chain_efficiency.at(drive), usual_chain_source);
      return watch.given("chain_efficiency",
                         chain_efficiency_at(gear, torque * watch.plain(gearbox), engine_speed, drive),
                         chain_loads_source);
    }();
    return watch.step("drive_efficiency", formula::joint_efficiency{}, gearbox, chain);
  }

  /// The thrust at an engine speed that the curve covers, full throttle, for whoever watches.
  template <class Watch, class WatchedSpeed, class WatchedRatio, class WatchedLength>
  [[nodiscard]] auto thrust(Watch watch, int gear, const WatchedSpeed& engine_speed, const WatchedRatio& overall_ratio,
                            const WatchedLength& circumference, Corner drive) const {
    const auto torque = parts_.engine.curve(drive).torque(watch, engine_speed);
    const auto efficiency = drive_efficiency(watch, gear, watch.plain(torque), watch.plain(engine_speed), drive);
    return watch.step("thrust", formula::drive_thrust{}, torque, overall_ratio, efficiency, circumference);
  }
  [[nodiscard]] Force thrust(int gear, AngularSpeed engine_speed, const RoadCorners& at) const {
    return thrust(Unwatched(), gear, engine_speed, overall_ratio(gear), parts_.circumference.at(at.wheel), at.drive);
  }
  /// What the closed throttle holds back at the ground, for whoever watches.
  template <class Watch, class WatchedRatio, class WatchedLength>
  [[nodiscard]] auto overrun(Watch watch, int gear, AngularSpeed engine_speed, const WatchedRatio& overall_ratio,
                             const WatchedLength& circumference, Corner drag, Corner drive) const {
    const auto torque = watch.given("drag_torque", parts_.engine.braking().at(drag), parts_.engine.braking_from());
    const auto efficiency = drive_efficiency(watch, gear, watch.plain(torque), engine_speed, drive);
    return watch.step("overrun_thrust", formula::overrun_thrust{}, torque, overall_ratio, efficiency, circumference);
  }

  friend bool operator==(const Powertrain&, const Powertrain&) = default;

 private:
  explicit Powertrain(const Parts& parts) : parts_(parts) {
    for (int gear = 1; gear <= static_cast<int>(parts_.gearbox.gears().size()); ++gear)
      overall_ratios_.push_back(
          detail::overall_ratio_in(Unwatched(), parts_.gearbox, gear, parts_.loop.front(), parts_.loop.rear()));
  }

  /// The chain's efficiency by its loads.
  [[nodiscard]] double chain_efficiency_at(int gear, Torque torque, AngularSpeed engine_speed, Corner drive) const {
    const double to_shaft =
        parts_.gearbox.primary().ratio() * parts_.gearbox.gears()[static_cast<std::size_t>(gear - 1)].ratio();
    const Torque least = least_torque_share * parts_.engine.curve().peak_torque().torque;
    const ChainDuty duty{.torque = std::max(torque, least) * to_shaft, .shaft_speed = engine_speed / to_shaft};
    return std::clamp(
        detail::efficiency_at(Unwatched(), parts_.loop, parts_.chain_made, duty, RoadCorners::opposite(drive)), 0.3,
        1.0);
  }

  Parts parts_;
  FixedList<double, most_gears> overall_ratios_;
};

/// The thrust in a gear, from 1, at a road speed, full throttle, after the drive's losses; a band over the tyre's size,
/// the engine's curve and the losses. Or a RangeError where the gear does not reach that speed.
[[nodiscard]] inline Result<Band<Force>> try_thrust(const Powertrain& train, int gear, Speed speed) {
  if (auto error = train.not_in_gear(gear, speed)) return *std::move(error);
  return over_runs(road_corners, [&](const RoadCorners& at) {
    return train.thrust(gear, train.held_engine_speed(speed, gear, at.wheel), at);
  });
}

}  // namespace layshaft
