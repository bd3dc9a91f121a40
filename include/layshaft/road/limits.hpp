// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/band.hpp>
#include <layshaft/core/watch.hpp>
#include <layshaft/road/body.hpp>
#include <layshaft/road/gravity.hpp>
#include <layshaft/road/slope.hpp>
#include <layshaft/road/surface.hpp>

#include <array>
#include <string_view>

/// @file
/// The most thrust that does anything: more lifts the front wheel, or spins the rear one.
///
/// Drag of the air and what the suspension does are left out; machine and rider are one stiff body on two wheels of
/// which the rear one drives.
namespace layshaft {

/// The thrust at which the front wheel lifts.
LAYSHAFT_FORMULA(inline, Force, wheelie_thrust,
                 (Mass mass, Acceleration gravity, Angle slope_angle, Length centre_ahead, Length centre_height),
                 positive(mass) && positive(gravity) && is_finite(slope_angle) && is_finite(centre_ahead) &&
                     positive(centre_height),
                 sources::geometry, centre_ahead / centre_height * mass * gravity * cos(slope_angle))

/// The thrust at which the rear wheel spins, with the load that this thrust itself shifts to it: below the thrust at
/// which the front wheel lifts, which is where the grip is less than centre_ahead / centre_height.
LAYSHAFT_FORMULA(inline, Force, traction_thrust,
                 (double grip, Mass mass, Acceleration gravity, Angle slope_angle, Length wheelbase,
                  Length centre_ahead, Length centre_height),
                 is_finite(grip) && positive(mass) && positive(gravity) && is_finite(slope_angle) &&
                     positive(wheelbase) && is_finite(centre_ahead) && positive(centre_height) && grip >= 0.0 &&
                     grip * centre_height < wheelbase,
                 sources::geometry,
                 (wheelbase - centre_ahead) / (wheelbase - grip * centre_height) * grip * mass * gravity *
                     cos(slope_angle))

/// The acceleration at which the front wheel lifts on the level.
LAYSHAFT_FORMULA(constexpr, Acceleration, wheelie_acceleration,
                 (Acceleration gravity, Length centre_ahead, Length centre_height),
                 positive(gravity) && is_finite(centre_ahead) && positive(centre_height), sources::geometry,
                 centre_ahead / centre_height * gravity)

/// How fast the machine goes while its driven wheel rolls at a speed and slips.
// clang-format off
LAYSHAFT_FORMULA(constexpr, Speed, slipping_speed, (Speed wheel_speed, double driving_slip),
                 is_finite(wheel_speed) && is_finite(driving_slip) && driving_slip >= 0.0 && driving_slip < 1.0,
                 sources::definition, wheel_speed * (1.0 - driving_slip))
// clang-format on

/// How fast the driven wheel must roll for the machine to go at a speed.
LAYSHAFT_FORMULA(constexpr, Speed, slipping_wheel_speed, (Speed road_speed, double driving_slip),
                 is_finite(road_speed) && is_finite(driving_slip) && driving_slip >= 0.0 && driving_slip <= 0.99,
                 sources::definition, road_speed / (1.0 - driving_slip))

/// What holds the thrust.
enum class ThrustLimitKind { wheelie, traction };

[[nodiscard]] constexpr std::string_view to_string(ThrustLimitKind kind) noexcept {
  return kind == ThrustLimitKind::wheelie ? "wheelie" : "traction";
}

/// The most thrust that a body and its ground take, on a slope.
struct ThrustLimit {
  Force wheelie;         ///< the front wheel lifts
  Band<Force> thrust;    ///< the lesser of that and what the ground takes, over the band of grip
  ThrustLimitKind kind;  ///< which it is at nominal grip

  friend constexpr bool operator==(const ThrustLimit&, const ThrustLimit&) noexcept = default;
};

namespace detail {

/// Whether the body states what a limit of thrust needs.
[[nodiscard]] constexpr bool states_limit(const Body& body) noexcept {
  return body.wheelbase() && body.centre_ahead() && body.centre_height();
}
/// The wheelie limit for whoever watches; only where the body states its centre of mass.
template <class Watch>
[[nodiscard]] auto wheelie_thrust_of(Watch watch, const Body& body, const Slope& slope) {
  const auto mass = watch.given("mass", body.mass());
  const auto weight = gravity(watch);
  const auto angle = slope.angle(watch);
  const auto ahead = watch.given("centre_ahead", *body.centre_ahead());
  const auto height = watch.given("centre_height", *body.centre_height());
  return watch.step(formula::wheelie_thrust{}, mass, weight, angle, ahead, height);
}
/// The traction limit for whoever watches; only where it lies below the other.
template <class Watch>
[[nodiscard]] auto traction_thrust_of(Watch watch, const Body& body, const Slope& slope, double grip,
                                      const Source& source) {
  const auto held = watch.given("grip", grip, source);
  const auto mass = watch.given("mass", body.mass());
  const auto weight = gravity(watch);
  const auto angle = slope.angle(watch);
  const auto wheelbase = watch.given("wheelbase", *body.wheelbase());
  const auto ahead = watch.given("centre_ahead", *body.centre_ahead());
  const auto height = watch.given("centre_height", *body.centre_height());
  return watch.step(formula::traction_thrust{}, held, mass, weight, angle, wheelbase, ahead, height);
}
/// Whether the ground lets go before the front wheel lifts.
[[nodiscard]] inline bool ground_lets_go(const Body& body, double grip) noexcept {
  return grip * *body.centre_height() < *body.centre_ahead();
}
/// The lesser of both for whoever watches.
template <class Watch>
[[nodiscard]] auto thrust_limit_of(Watch watch, const Body& body, const Slope& slope, double grip,
                                   const Source& source) {
  const auto lifts = wheelie_thrust_of(watch, body, slope);
  if (!ground_lets_go(body, grip))
    return watch.chosen(
        "thrust_limit", watch.plain(lifts), "the front wheel lifts before the rear one spins",
        [] { return std::array<Force, 0>{}; }, lifts);
  const auto spins = traction_thrust_of(watch, body, slope, grip, source);
  return watch.chosen(
      "thrust_limit", watch.plain(spins), "the rear wheel spins before the front one lifts",
      [&] { return std::array{watch.plain(lifts)}; }, spins, lifts);
}

}  // namespace detail

/// The most thrust that the body and its ground take on a slope, for a band of grip, 0 to 10. Or an Error where the
/// body does not state wheelbase and centre of mass, or a RangeError.
[[nodiscard]] inline Result<ThrustLimit> try_thrust_limit(const Body& body, const Band<double>& grip,
                                                          const Slope& slope = Slope(),
                                                          const Source& grip_source = sources::stated) {
  if (!detail::states_limit(body))
    return Error::value("a limit of thrust needs wheelbase, centre_ahead and centre_height of the body");
  if (auto error = detail::outside("grip", grip, 0.0, 10.0)) return *std::move(error);
  return ThrustLimit{
      detail::wheelie_thrust_of(Unwatched(), body, slope),
      over(grip, [&](double held) { return detail::thrust_limit_of(Unwatched(), body, slope, held, grip_source); }),
      detail::ground_lets_go(body, grip.nominal) ? ThrustLimitKind::traction : ThrustLimitKind::wheelie};
}
/// The same on a kind of ground, of which the table has a wide band of grip, from memory.
[[nodiscard]] inline Result<ThrustLimit> try_thrust_limit(const Body& body, const Surface& ground,
                                                          const Slope& slope = Slope()) {
  return try_thrust_limit(body, ground.grip, slope, ground.grip_source);
}
#if LAYSHAFT_EXCEPTIONS
/// @throws Error or RangeError as `try_thrust_limit` says.
[[nodiscard]] inline ThrustLimit thrust_limit(const Body& body, const Band<double>& grip, const Slope& slope = Slope(),
                                              const Source& grip_source = sources::stated) {
  return try_thrust_limit(body, grip, slope, grip_source).value();
}
/// @throws Error or RangeError as `try_thrust_limit` says.
[[nodiscard]] inline ThrustLimit thrust_limit(const Body& body, const Surface& ground, const Slope& slope = Slope()) {
  return try_thrust_limit(body, ground, slope).value();
}
#endif

}  // namespace layshaft
