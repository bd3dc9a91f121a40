// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/band.hpp>
#include <layshaft/core/row_of.hpp>
#include <layshaft/core/source.hpp>
#include <layshaft/core/units.hpp>

#include <string_view>

/// @file
/// What sprockets are made of, and how hard it is.
namespace layshaft {

enum class SprocketMaterial { steel, hardened_steel, aluminium_6000, aluminium_7000 };

inline constexpr SprocketMaterial sprocket_materials[] = {SprocketMaterial::steel, SprocketMaterial::hardened_steel,
                                                          SprocketMaterial::aluminium_6000,
                                                          SprocketMaterial::aluminium_7000};

[[nodiscard]] constexpr std::string_view to_string(SprocketMaterial material) noexcept {
  switch (material) {
    case SprocketMaterial::steel: return "steel";
    case SprocketMaterial::hardened_steel: return "hardened steel";
    case SprocketMaterial::aluminium_6000: return "aluminium 6000";
    case SprocketMaterial::aluminium_7000: return "aluminium 7000";
  }
  return {};
}

/// A material's hardness by Vickers, a load over the area of its imprint.
struct Material {
  SprocketMaterial kind;
  Band<Pressure> hardness;
  Source source;

  friend constexpr bool operator==(const Material&, const Material&) noexcept = default;
};

// Handbook figures from memory, at 9.81 MPa a point of Vickers: plain medium-carbon steel 160 to 220, teeth hardened by
// induction or case 400 to 700, wrought aluminium alloys of the 6000 family 95 to 120, of the 7000 family 150 to 190. A
// hard skin on aluminium is left out: it is thin against what a tooth may lose.
// clang-format off
inline constexpr Material materials[] = {
  {SprocketMaterial::steel,          {Pressure::from_value(1.57e9), Pressure::from_value(1.86e9), Pressure::from_value(2.16e9)}, {"hardness of plain medium-carbon steel", Certainty::from_memory}},
  {SprocketMaterial::hardened_steel, {Pressure::from_value(3.92e9), Pressure::from_value(5.40e9), Pressure::from_value(6.87e9)}, {"hardness of induction- or case-hardened teeth", Certainty::from_memory}},
  {SprocketMaterial::aluminium_6000, {Pressure::from_value(0.93e9), Pressure::from_value(1.05e9), Pressure::from_value(1.18e9)}, {"hardness of 6000 aluminium alloys", Certainty::from_memory}},
  {SprocketMaterial::aluminium_7000, {Pressure::from_value(1.47e9), Pressure::from_value(1.67e9), Pressure::from_value(1.86e9)}, {"hardness of 7000 aluminium alloys", Certainty::from_memory}},
};
// clang-format on

/// The row of a material.
[[nodiscard]] constexpr const Material& material(SprocketMaterial kind) noexcept {
  return detail::row_of(materials, kind);
}

}  // namespace layshaft
