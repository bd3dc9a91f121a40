// SPDX-License-Identifier: MIT
#pragma once

#include <string_view>

/// @file
/// What kinds of tyre a marking tells apart.
namespace layshaft {

/// How the size is written.
enum class TyreNotation : unsigned char {
  metric,     ///< `110/90-18`: section width in mm, aspect ratio in percent, rim code
  code,       ///< `4.10-18`: section code, roughly in inches, and rim code
  lettered,   ///< `MT90B16`: letters for the section, aspect ratio, rim code
  flotation,  ///< `31x10.50R15LT`, `25x8-12`: overall diameter and section width in inches, rim code
  cycle,      ///< `37-622`, `700x28C`, `26x2.00`, `24x1 3/8`: section width, and a bead seat diameter or its name
};

/// How the carcass is built: what stands before the rim code.
enum class TyreConstruction : unsigned char {
  diagonal,     ///< `-`
  bias_belted,  ///< `B`
  radial,       ///< `R`, or `ZR` for speeds above 240 km/h
};

/// What the tread is for. The marking does not tell it: a special use tyre (knobbly, for use off the road as well) may
/// stand taller over the same marking, and a snow tyre (its tread is made for mud and snow) a little.
enum class TyreUse { road, special, snow };

inline constexpr TyreUse tyre_uses[] = {TyreUse::road, TyreUse::special, TyreUse::snow};

/// Whether the marking says how the tyre holds its air.
enum class TyreTube : unsigned char {
  unmarked,
  tubeless,  ///< `TL`
  tube,      ///< `TT`
};

/// What the letters before or behind the size say that the tyre is made for. `M/C` is a mark of its own, since it
/// stands beside others: TyreSize::motorcycle.
enum class TyreVehicle : unsigned char {
  unmarked,
  passenger,    ///< `P`, before a metric size
  light_truck,  ///< `LT`, before a metric size and behind any other
  commercial,   ///< `C`, behind the size
  all_terrain,  ///< `AT`, before the size
};

/// The week a tyre was made in, as its DOT code says: `DOT 2319` is week 23 of 2019. Weeks count from 1 to 53.
struct TyreWeek {
  int week;
  int year;

  friend constexpr bool operator==(const TyreWeek&, const TyreWeek&) = default;
};

[[nodiscard]] constexpr std::string_view to_string(TyreNotation notation) noexcept {
  switch (notation) {
    case TyreNotation::metric: return "metric";
    case TyreNotation::code: return "code";
    case TyreNotation::lettered: return "lettered";
    case TyreNotation::flotation: return "flotation";
    case TyreNotation::cycle: return "cycle";
  }
  return {};
}

[[nodiscard]] constexpr std::string_view to_string(TyreConstruction construction) noexcept {
  switch (construction) {
    case TyreConstruction::diagonal: return "diagonal";
    case TyreConstruction::bias_belted: return "bias-belted";
    case TyreConstruction::radial: return "radial";
  }
  return {};
}

[[nodiscard]] constexpr std::string_view to_string(TyreUse use) noexcept {
  switch (use) {
    case TyreUse::road: return "road";
    case TyreUse::special: return "special";
    case TyreUse::snow: return "snow";
  }
  return {};
}

[[nodiscard]] constexpr std::string_view to_string(TyreTube tube) noexcept {
  switch (tube) {
    case TyreTube::unmarked: return "unmarked";
    case TyreTube::tubeless: return "tubeless";
    case TyreTube::tube: return "tube";
  }
  return {};
}

[[nodiscard]] constexpr std::string_view to_string(TyreVehicle vehicle) noexcept {
  switch (vehicle) {
    case TyreVehicle::unmarked: return "unmarked";
    case TyreVehicle::passenger: return "passenger";
    case TyreVehicle::light_truck: return "light truck";
    case TyreVehicle::commercial: return "commercial";
    case TyreVehicle::all_terrain: return "all-terrain";
  }
  return {};
}

}  // namespace layshaft
