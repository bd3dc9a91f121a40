// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/checks.hpp>
#include <layshaft/road/road_load.hpp>

#include <optional>

/// @file
/// What the wheel must work against along a ride.
namespace layshaft {

/// What resists along a ride, and what is sped up and lifted. The work at the wheel follows from both; it is the work
/// at the chain less the chain's own loss.
struct RideLoad {
  RoadLoad road;           ///< its nominal values count; a profile's slopes need its mass
  Mass mass;               ///< of the machine with its rider aboard, 0.1 kg to 100 t
  Duration spell = 2.0_s;  ///< 0 s to an hour; of a log alone: the work of so long a spell in one gear is summed before
                           ///< it is asked whether it drove or held back. Noise between samples would count as both
                           ///< otherwise, each time anew. 0 s: every stretch by itself

  friend constexpr bool operator==(const RideLoad&, const RideLoad&) noexcept = default;
};

namespace detail {
[[nodiscard]] inline std::optional<Error> refused(const RideLoad& load) {
  if (auto error = outside("mass", load.mass, 0.1_kg, 100000.0_kg)) return error;
  return outside("spell", load.spell, Duration(), 1.0_hour);
}
}  // namespace detail

}  // namespace layshaft
