// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/band.hpp>
#include <layshaft/core/checks.hpp>
#include <layshaft/core/counts.hpp>
#include <layshaft/core/fixed_list.hpp>
#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>

#include <algorithm>  // min
#include <string>

/// @file
/// How a sprocket's teeth in mesh share the chain's pull, by the angle at which a new roller presses on a new tooth.
///
/// Link 1 is that of the tight run. Each tooth takes a part of its link's pull and leaves the rest to the next. The
/// drops in tension and what is left for the slack run add up to the tight run's pull; the teeth's forces, which stand
/// at angles to it, come to more. The slack run must hold what is left, or the chain climbs.
namespace layshaft {

namespace sources {
inline constexpr Source pressure_angle_least{"ANSI B29.1 tooth form, least pressure angle 17 - 64/N degrees",
                                             Certainty::published};
inline constexpr Source pressure_angle_most{"ANSI B29.1 tooth form, greatest pressure angle 35 - 120/N degrees",
                                            Certainty::from_memory};
}  // namespace sources

/// The least angle between a new tooth's pressure and its link.
LAYSHAFT_FORMULA(constexpr, Angle, pressure_angle_least, (Teeth teeth), teeth.count() > 3,
                 sources::pressure_angle_least, 17.0_deg - 64.0_deg / teeth)

/// The greatest angle between a new tooth's pressure and its link.
LAYSHAFT_FORMULA(constexpr, Angle, pressure_angle_most, (Teeth teeth), teeth.count() > 3, sources::pressure_angle_most,
                 35.0_deg - 120.0_deg / teeth)

/// The pull left for the next link, over that of the link before.
LAYSHAFT_FORMULA(inline, double, tension_left, (Angle pressure_angle, Teeth teeth),
                 positive(pressure_angle) && pressure_angle + turn / teeth < half_turn, sources::geometry,
                 sin(pressure_angle) / sin(pressure_angle + turn / teeth))

/// The force on a tooth, over the pull of its link.
LAYSHAFT_FORMULA(inline, double, tooth_force_share, (Angle pressure_angle, Teeth teeth),
                 positive(pressure_angle) && pressure_angle + turn / teeth < half_turn, sources::geometry,
                 sin(turn / teeth) / sin(pressure_angle + turn / teeth))

/// One tooth in mesh, counted from the tight run; both over the tight run's pull.
struct ToothShare {
  Band<double> tension;  ///< pull of the link that runs onto it
  Band<double> force;    ///< on the tooth

  friend constexpr bool operator==(const ToothShare&, const ToothShare&) noexcept = default;
};

/// The most teeth in mesh that are shared out; on any more the pull is long down to nothing.
inline constexpr std::size_t most_shared_teeth = 64;

/// The teeth in mesh, from the tight run on.
struct ToothShares {
  FixedList<ToothShare, most_shared_teeth> teeth;
  Band<double> rest;  ///< pull that the slack run must hold, over the tight run's

  friend constexpr bool operator==(const ToothShares&, const ToothShares&) noexcept = default;
};

/// How `engaged` teeth of a sprocket share the pull, as a band over the pressure angles of the tooth form's limits, the
/// middle of which is nominal; or a RangeError for no tooth engaged, more than there are, or more than 64.
[[nodiscard]] inline Result<ToothShares> try_tooth_shares(Teeth teeth, int engaged) {
  const int most = std::min(teeth.count(), static_cast<int>(most_shared_teeth));
  if (engaged < 1 || engaged > most)
    return Error::range("engaged", std::to_string(engaged), "1 to " + std::to_string(most));
  const Angle least = pressure_angle_least(teeth), greatest = pressure_angle_most(teeth);
  const Band<Angle> pressure{least, 0.5 * (least + greatest), greatest};
  ToothShares shares{{}, Band<double>::exactly(1.0)};
  Band<double> pull = Band<double>::exactly(1.0);
  for (int tooth = 0; tooth < engaged; ++tooth) {
    const auto force =
        over_runs(one_cause, [&](Corner at) { return pull.at(at) * tooth_force_share(pressure.at(at), teeth); });
    shares.teeth.push_back({pull, force});
    // What is left rises with the angle, so that the ends stay ends.
    pull = over_runs(one_cause, [&](Corner at) { return pull.at(at) * tension_left(pressure.at(at), teeth); });
  }
  shares.rest = pull;
  return shares;
}
#if LAYSHAFT_EXCEPTIONS
/// @throws RangeError as `try_tooth_shares` says.
[[nodiscard]] inline ToothShares tooth_shares(Teeth teeth, int engaged) {
  return try_tooth_shares(teeth, engaged).value();
}
#endif

}  // namespace layshaft
