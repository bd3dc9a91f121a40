// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/band.hpp>
#include <layshaft/core/formula.hpp>
#include <layshaft/core/watch.hpp>
#include <layshaft/instrument/reading.hpp>

#include <optional>
#include <string_view>

/// @file
/// What UN Regulation No. 39 lets a speedometer show, and whether one does.
///
/// Type approval asks 0 <= V1 - V2 <= 0.1 V2 + 4 km/h of the indicated speed V1 at a true speed V2. National law on
/// machines in use may differ; this is context for a rider, not legal advice.
namespace layshaft {

/// The highest reading that UN R39 allows at a true speed of zero or more: 50 -> 59, 90 -> 103, 130 -> 147 km/h. The
/// lowest is the true speed itself.
LAYSHAFT_FORMULA(constexpr, Speed, highest_lawful_reading, (Speed true_speed),
                 is_finite(true_speed) && true_speed >= 0.0_kmh, sources::un_r39,
                 true_speed + 0.1 * true_speed + 4.0_kmh)

/// Whether a reading keeps to the rule.
enum class SpeedometerVerdict {
  lawful,     ///< at every corner of what is known
  too_low,    ///< shows less than the true speed at every corner
  too_high,   ///< shows more than the rule allows at every corner
  uncertain,  ///< some corners keep to the rule and some do not
};

[[nodiscard]] constexpr std::string_view to_string(SpeedometerVerdict verdict) noexcept {
  switch (verdict) {
    case SpeedometerVerdict::lawful: return "lawful";
    case SpeedometerVerdict::too_low: return "too low";
    case SpeedometerVerdict::too_high: return "too high";
    case SpeedometerVerdict::uncertain: return "uncertain";
  }
  return {};
}

/// The verdict of UN R39 on a band of readings at a true speed of zero or more.
[[nodiscard]] constexpr SpeedometerVerdict speedometer_verdict(Speed true_speed,
                                                               const Band<Speed>& indicated) noexcept {
  constexpr double rounding = 1e-12;  // a reading of the edge itself, computed, is still on the edge
  const Speed lowest = true_speed * (1.0 - rounding);
  const Speed highest = highest_lawful_reading(true_speed) * (1.0 + rounding);
  if (indicated.low >= lowest && indicated.high <= highest) return SpeedometerVerdict::lawful;
  if (indicated.high < lowest) return SpeedometerVerdict::too_low;
  if (indicated.low > highest) return SpeedometerVerdict::too_high;
  return SpeedometerVerdict::uncertain;
}

namespace detail {
/// Where the stock reading stands when nobody measured the instrument.
inline constexpr Source unmeasured_instrument{"the rule's allowance, since nobody measured it",
                                              Certainty::common_practice};

/// What the instrument shows with its own error at a corner, for whoever watches.
template <class Watch, class Ratio>
[[nodiscard]] constexpr auto indicated_at(Watch watch, Speed true_speed, const std::optional<Band<double>>& error,
                                          Corner at, const Ratio& indicated_ratio) {
  const auto true_reading = watch.given("true_speed", true_speed);
  const auto stock = [&] {
    if (error) return watch.step(formula::stock_reading{}, true_reading, watch.given("reading_error", error->at(at)));
    if (at != Corner::high)
      return watch.step(formula::stock_reading{}, true_reading,
                        watch.given("reading_error", 0.0, unmeasured_instrument));
    return watch.step("stock_reading", formula::highest_lawful_reading{}, true_reading);
  }();
  return watch.step(formula::indicated_speed{}, stock, indicated_ratio);
}
}  // namespace detail

/// What the instrument shows at a true speed once the parts are changed, as a band over both causes: its own error and
/// the change of parts.
///
/// The stock instrument's own error is a fraction of the true speed. Where nobody measured it, the band is what the
/// rule allowed the instrument when it was approved: true to 0.1 V + 4 km/h fast, with no error as its nominal value.
[[nodiscard]] constexpr Band<Speed> indicated_band(Speed true_speed, const std::optional<Band<double>>& reading_error,
                                                   const Band<double>& indicated_ratio) noexcept {
  return over_runs(one_cause, [&](Corner at) {
    return detail::indicated_at(Unwatched(), true_speed, reading_error, at, indicated_ratio.at(at));
  });
}

}  // namespace layshaft
