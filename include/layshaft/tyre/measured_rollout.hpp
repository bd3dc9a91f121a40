// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/band.hpp>
#include <layshaft/core/checks.hpp>
#include <layshaft/core/fixed_list.hpp>
#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>
#include <layshaft/core/source.hpp>
#include <layshaft/core/units.hpp>
#include <layshaft/core/watch.hpp>

#include <string>
#include <utility>

/// @file
/// The rolling circumference of the tyre that is on the wheel: chalk it and the ground, push the machine in a straight
/// line at walking pace, tyres at riding pressure, and measure how far it went in so many turns. That overrides all
/// that a marking tells.
namespace layshaft {

/// How far off the tape may be over the whole distance, chalk marks included, where nobody says otherwise.
inline constexpr Length usual_tape_error = 5.0_mm;
inline constexpr Source tape_error_source{"common practice: 5 mm over the whole distance", Certainty::common_practice};

/// How much longer a machine rolls in a turn without its rider than with: a share of the distance with the rider.
inline constexpr Band<double> unladen_excess{0.01, 0.02, 0.03};
inline constexpr Source unladen_excess_source{"a machine pushed without its rider rolls 1 to 3 % farther",
                                              Certainty::from_memory};

/// Distance in one turn, of a distance measured over several, with the tape off by so much (below zero: it reads long).
LAYSHAFT_FORMULA(constexpr, Length, rollout_per_turn, (Length rollout, Length tape_error, double turns),
                 positive(rollout) && is_finite(tape_error) && positive(turns) && rollout + tape_error > 0.0_mm,
                 sources::definition, (rollout + tape_error) / turns)

/// Distance in one turn with the rider aboard, of that without.
LAYSHAFT_FORMULA(constexpr, Length, laden_circumference, (Length rollout_per_turn, double unladen_excess),
                 positive(rollout_per_turn) && is_finite(unladen_excess) && unladen_excess >= 0.0, sources::definition,
                 rollout_per_turn / (1.0 + unladen_excess))

/// What was measured.
struct RolloutMeasurement {
  Length distance;                       ///< over all turns
  int turns = 1;                         ///< whole turns of the wheel, 1 to 1000
  bool rider_aboard = true;              ///< false: pushed without the rider, so the result is corrected, and wider
  Length tape_error = usual_tape_error;  ///< either way, over the whole distance: 0 to a tenth of it

  friend constexpr bool operator==(const RolloutMeasurement&, const RolloutMeasurement&) noexcept = default;
};

/// Where the causes of a measurement stand in one run.
struct RolloutCorners {
  Corner tape = Corner::nominal;    ///< low: the distance is shorter than it was read
  Corner excess = Corner::nominal;  ///< counts without the rider only
};

namespace detail {

/// The rolling circumference with the rider aboard, for whoever watches.
template <class Watch>
[[nodiscard]] constexpr auto measured_circumference_at(Watch watch, const RolloutMeasurement& measured,
                                                       const RolloutCorners& at) {
  const Length none{};
  const auto distance = watch.given("rollout", measured.distance);
  const auto error = watch.given("tape_error",
                                 at.tape == Corner::low    ? none - measured.tape_error
                                 : at.tape == Corner::high ? measured.tape_error
                                                           : none,
                                 measured.tape_error == usual_tape_error ? tape_error_source : sources::stated);
  const auto turns = watch.given("turns", double(measured.turns));
  if (measured.rider_aboard) return watch.step("circumference", formula::rollout_per_turn{}, distance, error, turns);
  const auto unladen = watch.step(formula::rollout_per_turn{}, distance, error, turns);
  const auto excess = watch.given("unladen_excess", unladen_excess.at(at.excess), unladen_excess_source);
  return watch.step("circumference", formula::laden_circumference{}, unladen, excess);
}

/// The runs of a measurement: nominal, then the corners at its ends.
inline constexpr FixedList<RolloutCorners, 3> rollout_corners{
    {Corner::nominal, Corner::nominal}, {Corner::low, Corner::high}, {Corner::high, Corner::low}};

}  // namespace detail

/// The rolling circumference, rider aboard, that a measurement means: what SetupParts::circumference takes. Or a
/// RangeError, where turns or tape error lie outside their range, or one turn comes to less than 0.2 m or more than 5
/// m, with the tape's error and the rider's weight taken in.
[[nodiscard]] inline Result<Band<Length>> try_measured_circumference(const RolloutMeasurement& measured) {
  if (measured.turns < 1 || measured.turns > 1000)
    return Error::range("turns", std::to_string(measured.turns), "1 to 1000");
  if (auto error = detail::outside("distance", measured.distance, measured.turns * 0.2 * units::m,
                                   measured.turns * 5.0 * units::m))
    return *std::move(error);
  if (auto error = detail::outside("tape_error", measured.tape_error, Length(), 0.1 * measured.distance))
    return *std::move(error);
  const auto circumference = over_runs(detail::rollout_corners, [&](const RolloutCorners& at) {
    return detail::measured_circumference_at(Unwatched(), measured, at);
  });
  if (auto error = detail::outside("circumference", circumference, 0.2_m, 5.0_m)) return *std::move(error);
  return circumference;
}
#if LAYSHAFT_EXCEPTIONS
/// @throws RangeError as `try_measured_circumference` says.
[[nodiscard]] inline Band<Length> measured_circumference(const RolloutMeasurement& measured) {
  return try_measured_circumference(measured).value();
}
#endif

}  // namespace layshaft
