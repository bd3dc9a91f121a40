// SPDX-License-Identifier: MIT
#pragma once

#include <string_view>

/// @file
/// What kinds of tyre a marking tells apart.
namespace layshaft {

/// How the size is written.
enum class TyreNotation {
  metric,    ///< `110/90-18`: section width in mm, aspect ratio in percent, rim code
  code,      ///< `4.10-18`: section code, roughly in inches, and rim code
  lettered,  ///< `MT90B16`: letters for the section, aspect ratio, rim code
};

/// How the carcass is built: what stands before the rim code.
enum class TyreConstruction {
  diagonal,     ///< `-`
  bias_belted,  ///< `B`
  radial,       ///< `R`, or `ZR` for speeds above 240 km/h
};

/// What the tread is for. The marking does not tell it: a special use tyre (knobbly, for use off the road as well) may
/// stand taller over the same marking.
enum class TyreUse { road, special };

/// Whether the marking says how the tyre holds its air.
enum class TyreTube {
  unmarked,
  tubeless,  ///< `TL`
  tube,      ///< `TT`
};

[[nodiscard]] constexpr std::string_view to_string(TyreNotation notation) noexcept {
  switch (notation) {
    case TyreNotation::metric: return "metric";
    case TyreNotation::code: return "code";
    case TyreNotation::lettered: return "lettered";
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

}  // namespace layshaft
