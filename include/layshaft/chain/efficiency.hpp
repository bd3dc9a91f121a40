// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/chain/tension.hpp>
#include <layshaft/core/band.hpp>
#include <layshaft/core/checks.hpp>
#include <layshaft/core/counts.hpp>
#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>
#include <layshaft/core/source.hpp>
#include <layshaft/core/watch.hpp>

#include <string_view>

/// @file
/// What a chain loses in its joints.
///
/// Known is the geometry: on each pass round the loop a joint bends four times, where it runs on to and off each
/// sprocket, each time by a tooth's angle; twice under the tight run's pull and twice under the slack run's. Assumed is
/// how much it resists: a friction of pin in bush, and in a sealed chain the drag of its seals, for which no published
/// figure was found. So the loss is a band, as wide as what is not known.
namespace layshaft {

/// What keeps the grease in a chain's joints.
enum class ChainSeal {
  none,    ///< a plain chain
  o_ring,  ///< round rings
  shaped,  ///< rings of a shaped section, with lips
};

inline constexpr ChainSeal chain_seals[] = {ChainSeal::none, ChainSeal::o_ring, ChainSeal::shaped};

[[nodiscard]] constexpr std::string_view to_string(ChainSeal seal) noexcept {
  switch (seal) {
    case ChainSeal::none: return "none";
    case ChainSeal::o_ring: return "O-ring";
    case ChainSeal::shaped: return "shaped";
  }
  return {};
}

inline constexpr Source joint_friction_source{"friction of steel pin in steel bush, lubricated",
                                              Certainty::from_memory};
inline constexpr Source seal_drag_source{"assumption: no published figure of a joint's seal drag was found",
                                         Certainty::common_practice};

/// How much a chain's joints resist being bent. Both are assumptions that whoever has measured replaces.
struct JointResistance {
  Band<double> friction{0.05, 0.10, 0.15};  ///< coefficient of pin in bush: joint_friction_source
  Band<Torque> seal_drag{};                 ///< of one joint's seals, whatever the pull: seal_drag_source

  friend constexpr bool operator==(const JointResistance&, const JointResistance&) noexcept = default;
};

/// What is assumed of a kind of chain where nobody measured.
[[nodiscard]] constexpr JointResistance joint_resistance(ChainSeal seal) noexcept {
  JointResistance resistance;
  switch (seal) {
    case ChainSeal::none: break;
    case ChainSeal::o_ring: resistance.seal_drag = {0.005_Nm, 0.04_Nm, 0.12_Nm}; break;
    case ChainSeal::shaped: resistance.seal_drag = {0.003_Nm, 0.02_Nm, 0.08_Nm}; break;
  }
  return resistance;
}

/// The pull that the friction of all bending joints takes: by their work over a pitch of chain.
LAYSHAFT_FORMULA(constexpr, Force, joint_friction_pull,
                 (double joint_friction, Length pin_diameter, Length pitch, Teeth front, Teeth rear,
                  Force tight_tension, Force slack_tension),
                 is_finite(joint_friction) && joint_friction >= 0.0 && positive(pin_diameter) && positive(pitch) &&
                     is_finite(tight_tension) && is_finite(slack_tension),
                 sources::definition,
                 pi* joint_friction* pin_diameter / pitch * (1.0 / front + 1.0 / rear) *
                     (tight_tension + slack_tension))

/// The pull that the seals of all bending joints take.
LAYSHAFT_FORMULA(constexpr, Force, seal_drag_pull, (Torque seal_drag, Length pitch, Teeth front, Teeth rear),
                 is_finite(seal_drag) && positive(pitch), sources::definition,
                 2.0 * turn * seal_drag / pitch * (1.0 / front + 1.0 / rear))

/// Power out over power in.
LAYSHAFT_FORMULA(constexpr, double, chain_efficiency,
                 (Force chain_pull, Force joint_friction_pull, Force seal_drag_pull),
                 positive(chain_pull) && is_finite(joint_friction_pull) && is_finite(seal_drag_pull),
                 sources::definition, 1.0 - (joint_friction_pull + seal_drag_pull) / chain_pull)

/// The same by the rule that leaves out the slack run's pull and the seals: what a plain chain loses at low speed.
LAYSHAFT_FORMULA(constexpr, double, chain_efficiency_approximate,
                 (double joint_friction, Length pin_diameter, Length pitch, Teeth front, Teeth rear),
                 is_finite(joint_friction) && joint_friction >= 0.0 && positive(pin_diameter) && positive(pitch),
                 sources::definition, 1.0 - pi * joint_friction * pin_diameter / pitch * (1.0 / front + 1.0 / rear))

}  // namespace layshaft
