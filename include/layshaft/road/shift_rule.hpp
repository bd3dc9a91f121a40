// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/checks.hpp>
#include <layshaft/core/fixed_list.hpp>
#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>
#include <layshaft/core/result.hpp>
#include <layshaft/core/watch.hpp>
#include <layshaft/gearing/gearbox.hpp>
#include <layshaft/gearing/speed.hpp>

#include <algorithm>  // clamp
#include <string>
#include <utility>

/// @file
/// Which gear a rider is in at a road speed.
namespace layshaft {

/// How the world motorcycle cycle tells when to shift.
inline constexpr Source world_cycle_source{"UN Global Technical Regulation No. 2, gear use, as recalled",
                                           Certainty::from_memory};

/// How far between idle and rated speed an engine is revved before a shift up from second gear on, by what power it has
/// a kilogram: 35 % at 0.26 kW/kg. The regulation takes 75 kg for the rider.
LAYSHAFT_FORMULA(inline, double, shift_share, (Power rated_power, Mass unladen_mass),
                 is_finite(rated_power) && is_finite(unladen_mass) && rated_power >= 0.0_kW && unladen_mass >= 0.0_kg,
                 world_cycle_source,
                 0.5753 * exponential(0.0 - 1.9 * (rated_power / 1.0_kW) / ((unladen_mass + 75.0_kg) / 1.0_kg)))

/// The same from first gear to second.
LAYSHAFT_FORMULA(constexpr, double, first_shift_share, (double shift_share), is_finite(shift_share), world_cycle_source,
                 shift_share - 0.1)

/// The engine speed at a share of the way from idle to rated speed.
LAYSHAFT_FORMULA(constexpr, AngularSpeed, shift_engine_speed,
                 (AngularSpeed idle_speed, AngularSpeed rated_engine_speed, double shift_share),
                 is_finite(idle_speed) && is_finite(rated_engine_speed) && is_finite(shift_share), world_cycle_source,
                 (rated_engine_speed - idle_speed) * shift_share + idle_speed)

/// Shift speeds, one a shift.
using ShiftSpeeds = FixedList<Speed, most_gears - 1>;
/// Overall ratios, one a gear from first up.
using OverallRatios = FixedList<double, most_gears>;

/// What the world motorcycle cycle asks of a machine.
struct WorldCycleParts {
  Power rated_power;             ///< above 0, to 1000 kW
  Mass unladen_mass;             ///< 1 kg to 100 t, of the machine without its rider
  AngularSpeed idle;             ///< 1 to 100,000 rpm
  AngularSpeed rated_speed;      ///< at which the rated power is: idle to 100,000 rpm
  OverallRatios overall_ratios;  ///< 1e-3 to 10,000, falling, from first gear up
  Length circumference;          ///< 1 mm to 100 m

  friend constexpr bool operator==(const WorldCycleParts&, const WorldCycleParts&) noexcept = default;
};

namespace detail {

/// The road speed of the world cycle's shift up from a gear, for whoever watches.
template <class Watch>
[[nodiscard]] auto world_cycle_shift_up(Watch watch, const WorldCycleParts& parts, int gear) {
  const auto power = watch.given("rated_power", parts.rated_power);
  const auto mass = watch.given("unladen_mass", parts.unladen_mass);
  const auto share = watch.step(formula::shift_share{}, power, mass);
  const auto own_share = [&] {
    if (gear > 1) return share;
    return watch.step(formula::first_shift_share{}, share);
  }();
  const auto idle = watch.given("idle_speed", parts.idle);
  const auto rated = watch.given("rated_engine_speed", parts.rated_speed);
  const auto turning = watch.step(formula::shift_engine_speed{}, idle, rated, own_share);
  const auto ratio = watch.given({"overall_ratio", gear}, parts.overall_ratios[static_cast<std::size_t>(gear - 1)]);
  const auto rolled = watch.given("circumference", parts.circumference);
  return watch.step("shift_speed", formula::road_speed{}, turning, ratio, rolled);
}
/// The road speed at which the clutch is pulled in second gear and the machine rolls to a stop, for whoever watches.
template <class Watch>
[[nodiscard]] constexpr auto world_cycle_clutch(Watch watch, const WorldCycleParts& parts) {
  const auto idle = watch.given("idle_speed", parts.idle);
  const auto rated = watch.given("rated_engine_speed", parts.rated_speed);
  const auto share = watch.given("shift_share", 0.03, world_cycle_source);
  const auto turning = watch.step(formula::shift_engine_speed{}, idle, rated, share);
  const auto ratio = watch.given({"overall_ratio", 2}, parts.overall_ratios[1]);
  const auto rolled = watch.given("circumference", parts.circumference);
  return watch.step("shift_speed", formula::road_speed{}, turning, ratio, rolled);
}

}  // namespace detail

/// Road speeds at which a rider shifts. Up from gear g at up()[g - 1]; down to gear g again at down()[g - 1], which is
/// no higher.
class ShiftRule {
 public:
  /// Fixed road speeds: `up` rising, `down` rising and none above its `up`, both above 0 and to 1000 km/h, as many of
  /// the one as of the other, 0 to 15. Or a RangeError.
  [[nodiscard]] static Result<ShiftRule> make(const ShiftSpeeds& up, const ShiftSpeeds& down,
                                              const Source& source = sources::stated) {
    constexpr std::size_t most = most_gears - 1;
    if (up.overfull() || down.overfull())
      return Error::range("number of shifts", "more than " + std::to_string(most), "0 to " + std::to_string(most));
    if (up.size() != down.size())
      return Error::range("number of shifts down", std::to_string(down.size()),
                          std::to_string(up.size()) + ", one a shift up");
    for (std::size_t i = 0; i < up.size(); ++i) {
      if (auto error = detail::outside(numbered("shift up", i), up[i], 1e-3_kmh, 1000.0_kmh)) return *std::move(error);
      if (auto error = detail::outside(numbered("shift down", i), down[i], 1e-3_kmh, up[i])) return *std::move(error);
      if (i == 0) continue;
      if (auto error = falling("shift up", up, i)) return *std::move(error);
      if (auto error = falling("shift down", down, i)) return *std::move(error);
    }
    return ShiftRule(up, down, source);
  }
  /// Fixed engine speeds in every gear: up where the engine turns faster than `up`, down where it turns slower than
  /// `down`. Or a RangeError: ratios 1e-3 to 10,000 that fall, 1 to 16 of them, circumference 1 mm to 100 m, speeds
  /// above 0 and to 100,000 rpm, and `down` so low that a shift up does not ask for one down at once.
  [[nodiscard]] static Result<ShiftRule> try_at_engine_speeds(AngularSpeed up, AngularSpeed down,
                                                              const OverallRatios& overall_ratios,
                                                              Length circumference) {
    if (auto error = refused(overall_ratios, circumference)) return *std::move(error);
    if (auto error = detail::outside("up", up, 1.0_rpm, 100000.0_rpm)) return *std::move(error);
    if (auto error = detail::outside("down", down, 1.0_rpm, up)) return *std::move(error);
    ShiftSpeeds rising, returning;
    for (std::size_t i = 0; i + 1 < overall_ratios.size(); ++i) {
      rising.push_back(road_speed(up, overall_ratios[i], circumference));
      returning.push_back(road_speed(down, overall_ratios[i + 1], circumference));
    }
    return make(rising, returning);
  }
  /// The rule of the world motorcycle cycle, from memory, which `source()` tells: up by the machine's power to mass;
  /// down from a gear at the speed of the shift up into the one below, and from second with the clutch pulled. Or a
  /// RangeError, or an Error where the machine's power is so great that the rule shifts out of first gear below idle.
  [[nodiscard]] static Result<ShiftRule> try_world_cycle(const WorldCycleParts& parts) {
    if (auto error = refused(parts.overall_ratios, parts.circumference)) return *std::move(error);
    if (auto error = detail::outside("rated_power", parts.rated_power, 1.0_W, 1000.0_kW)) return *std::move(error);
    if (auto error = detail::outside("unladen_mass", parts.unladen_mass, 1.0_kg, 100000.0_kg)) return *std::move(error);
    if (auto error = detail::outside("idle", parts.idle, 1.0_rpm, 100000.0_rpm)) return *std::move(error);
    if (auto error = detail::outside("rated_speed", parts.rated_speed, parts.idle, 100000.0_rpm))
      return *std::move(error);
    ShiftSpeeds up, down;
    for (int gear = 1; gear < static_cast<int>(parts.overall_ratios.size()); ++gear)
      up.push_back(detail::world_cycle_shift_up(Unwatched(), parts, gear));
    if (!up.empty()) {
      const Speed clutch = detail::world_cycle_clutch(Unwatched(), parts);
      if (!(clutch < up[0]))
        return Error::value("the world cycle's rule shifts out of first gear at " + detail::in_words(up[0]) +
                            ", where second gear must be declutched already; it does not fit this machine");
      down.push_back(clutch);
      for (std::size_t i = 0; i + 1 < up.size(); ++i) down.push_back(up[i]);
    }
    return make(up, down, world_cycle_source);
  }
#if LAYSHAFT_EXCEPTIONS
  /// @throws RangeError as `make` says.
  ShiftRule(const ShiftSpeeds& up, const ShiftSpeeds& down) : ShiftRule(make(up, down).value()) {}
  /// @throws RangeError as `try_at_engine_speeds` says.
  [[nodiscard]] static ShiftRule at_engine_speeds(AngularSpeed up, AngularSpeed down,
                                                  const OverallRatios& overall_ratios, Length circumference) {
    return try_at_engine_speeds(up, down, overall_ratios, circumference).value();
  }
  /// @throws RangeError or Error as `try_world_cycle` says.
  [[nodiscard]] static ShiftRule world_cycle(const WorldCycleParts& parts) { return try_world_cycle(parts).value(); }
#endif

  [[nodiscard]] constexpr const ShiftSpeeds& up() const noexcept { return up_; }
  [[nodiscard]] constexpr const ShiftSpeeds& down() const noexcept { return down_; }
  [[nodiscard]] constexpr int gears() const noexcept { return static_cast<int>(up_.size()) + 1; }
  [[nodiscard]] constexpr const Source& source() const noexcept { return source_; }

  /// The gear, from 1, of a rider who has sped up to a speed.
  [[nodiscard]] constexpr int gear_at(Speed speed) const noexcept {
    int gear = 1;
    while (gear < gears() && speed >= up_[static_cast<std::size_t>(gear - 1)]) ++gear;
    return gear;
  }
  /// The gear at a speed of one who was in `gear`: that one as long as neither shift asks for another. Unchecked, for
  /// use along a log; a gear that there is not counts as the nearest that there is.
  [[nodiscard]] constexpr int gear_after(int gear, Speed speed) const noexcept {
    gear = std::clamp(gear, 1, gears());
    while (gear < gears() && speed >= up_[static_cast<std::size_t>(gear - 1)]) ++gear;
    while (gear > 1 && speed < down_[static_cast<std::size_t>(gear - 2)]) --gear;
    return gear;
  }

  friend constexpr bool operator==(const ShiftRule&, const ShiftRule&) noexcept = default;

 private:
  constexpr ShiftRule(const ShiftSpeeds& up, const ShiftSpeeds& down, const Source& source) noexcept
      : up_(up), down_(down), source_(source) {}

  [[nodiscard]] static std::string numbered(const char* what, std::size_t place) {
    return std::string(what).append(" ").append(std::to_string(place + 1));
  }
  [[nodiscard]] static std::optional<Error> falling(const char* what, const ShiftSpeeds& speeds, std::size_t i) {
    if (speeds[i - 1] < speeds[i]) return std::nullopt;
    return Error::range(numbered(what, i), detail::in_words(speeds[i]),
                        "more than the " + detail::in_words(speeds[i - 1]) + " before it");
  }
  [[nodiscard]] static std::optional<Error> refused(const OverallRatios& ratios, Length circumference) {
    if (ratios.empty() || ratios.overfull())
      return Error::range("number of gears", ratios.empty() ? "0" : "more than " + std::to_string(most_gears),
                          "1 to " + std::to_string(most_gears));
    for (std::size_t i = 0; i < ratios.size(); ++i) {
      if (auto error = detail::outside(numbered("overall ratio", i), ratios[i], 1e-3, 1e4)) return error;
      if (i > 0 && !(ratios[i] < ratios[i - 1]))
        return Error::range(numbered("overall ratio", i), detail::in_words(ratios[i]),
                            "less than the " + detail::in_words(ratios[i - 1]) + " before it");
    }
    return detail::outside("circumference", circumference, 1.0_mm, 100.0_m);
  }

  ShiftSpeeds up_, down_;
  Source source_;
};

}  // namespace layshaft
