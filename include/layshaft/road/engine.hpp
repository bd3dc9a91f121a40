// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/band.hpp>
#include <layshaft/core/checks.hpp>
#include <layshaft/gearing/gearbox.hpp>
#include <layshaft/road/engine_curve.hpp>
#include <layshaft/road/engine_estimate.hpp>

#include <algorithm>  // min, max
#include <optional>
#include <string>
#include <utility>

/// @file
/// An engine with all that the road asks of it: torque over speed, what turns with it, how it brakes, what its clutch
/// carries.
namespace layshaft {

/// What a closed throttle drags with where nobody measured it, as a share of the greatest torque.
inline constexpr Band<double> braking_share{0.05, 0.15, 0.30};
inline constexpr Source braking_source{"drag of a closed throttle as a share of the greatest torque",
                                       Certainty::from_memory};

/// What an Engine is made of.
struct EngineParts {
  EngineEstimate curve;                          ///< all three the same where the curve was measured
  MomentOfInertia inertia{};                     ///< of all that turns with the crank: 0 to 1000 kg m2
  std::optional<Band<Torque>> braking = {};      ///< at the crank, throttle closed: 0 to 100,000 N m
  std::optional<Torque> clutch_torque = {};      ///< the most the clutch carries, at the crank: above 0, to 100,000 N m
  std::optional<AngularSpeed> start_speed = {};  ///< held while the clutch slips at a start: within the curve

  friend bool operator==(const EngineParts&, const EngineParts&) noexcept = default;
};

/// An engine, or a motor. A curve alone makes one, without inertia.
class Engine {
 public:
  using Parts = EngineParts;

  /// The engine, or a RangeError that names the part and its range.
  [[nodiscard]] static Result<Engine> make(const Parts& parts) {
    if (auto error = detail::outside("inertia", parts.inertia, MomentOfInertia(), 1e3_kg_m2)) return *std::move(error);
    if (parts.braking)
      if (auto error = detail::outside("braking", *parts.braking, Torque(), 1e5_Nm)) return *std::move(error);
    if (parts.clutch_torque)
      if (auto error = detail::outside("clutch_torque", *parts.clutch_torque, 1e-3_Nm, 1e5_Nm))
        return *std::move(error);
    const EngineCurve& curve = parts.curve.nominal;
    if (parts.start_speed)
      if (auto error = detail::outside("start_speed", *parts.start_speed, curve.lowest_speed(), curve.highest_speed()))
        return *std::move(error);
    return Engine(parts, Unchecked{});
  }
#if LAYSHAFT_EXCEPTIONS
  /// @throws RangeError as `make` says.
  explicit Engine(const Parts& parts) : Engine(make(parts).value()) {}
#endif
  /// An engine of whom only the curve is known, so that `.engine = curve` will do.
  Engine(const EngineCurve& curve) : parts_{.curve = {curve, curve, curve}} {}
  /// The same of a curve that was guessed from a maker's numbers.
  Engine(const EngineEstimate& curve) : parts_{.curve = curve} {}

  /// The curve, at a corner of what is known of it.
  [[nodiscard]] const EngineCurve& curve(Corner corner = Corner::nominal) const noexcept {
    return parts_.curve.at(corner);
  }
  [[nodiscard]] MeasuredAt measured_at() const noexcept { return parts_.curve.nominal.measured_at(); }
  [[nodiscard]] MomentOfInertia inertia() const noexcept { return parts_.inertia; }
  [[nodiscard]] const std::optional<Torque>& clutch_torque() const noexcept { return parts_.clutch_torque; }
  /// What it drags with, throttle closed: as stated, else a wide band from memory.
  [[nodiscard]] Band<Torque> braking() const noexcept {
    if (parts_.braking) return *parts_.braking;
    const Torque most = parts_.curve.nominal.peak_torque().torque;
    return {braking_share.low * most, braking_share.nominal * most, braking_share.high * most};
  }
  [[nodiscard]] Source braking_from() const noexcept { return parts_.braking ? sources::stated : braking_source; }
  [[nodiscard]] const Parts& parts() const noexcept { return parts_; }

  /// The same with every torque of the curve multiplied by a factor, as the density of the air asks; its drag stays.
  /// Or a RangeError, unless the factor is 0 to 10.
  [[nodiscard]] Result<Engine> try_scaled(double torque_factor) const {
    if (auto error = detail::outside("torque_factor", torque_factor, 0.0, 10.0)) return *std::move(error);
    Parts parts = parts_;
    parts.braking = braking();
    for (EngineCurve* curve : {&parts.curve.low, &parts.curve.nominal, &parts.curve.high})
      *curve = *curve->try_scaled(torque_factor);
    return Engine(parts, Unchecked{});
  }
#if LAYSHAFT_EXCEPTIONS
  /// @throws RangeError as `try_scaled` says.
  [[nodiscard]] Engine scaled(double torque_factor) const { return try_scaled(torque_factor).value(); }
#endif

  friend bool operator==(const Engine&, const Engine&) noexcept = default;

 private:
  struct Unchecked {};
  Engine(const Parts& parts, Unchecked) : parts_(parts) {}

  Parts parts_;
};

namespace detail {
/// What speaks against a loss stated beside an engine's curve.
[[nodiscard]] inline std::optional<Error> loss_stated_twice(const Engine& engine, bool stated) {
  if (!stated || engine.measured_at() != MeasuredAt::rear_wheel) return std::nullopt;
  return Error::value(
      "the engine's curve was measured at the rear wheel and has the drive's loss in it already; state no "
      "drive_efficiency beside it");
}
/// What speaks against an engine in front of a gearbox: a curve beside the speeds at which it pulls.
[[nodiscard]] inline std::optional<Error> never_pulls(const Engine& engine, const Gearbox& gearbox) {
  const EngineCurve& curve = engine.curve();
  if (std::max(curve.lowest_speed(), gearbox.lowest_pull()) < std::min(curve.highest_speed(), gearbox.rev_limit()))
    return std::nullopt;
  return Error::range(
      "engine speeds of the curve",
      in_words(curve.lowest_speed()).append(" to ").append(in_words(curve.highest_speed())),
      "some between " + in_words(gearbox.lowest_pull()) + " and the limit of " + in_words(gearbox.rev_limit()));
}
}  // namespace detail

}  // namespace layshaft
