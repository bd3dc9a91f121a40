// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/band.hpp>
#include <layshaft/core/row_of.hpp>
#include <layshaft/core/source.hpp>

#include <string_view>

/// @file
/// What is ridden on: how hard tyres roll there, how much they hold, and how far they slip while they drive.
///
/// One tyre, one pressure and one day make a single number of each; what stands here is how far the books lie apart.
/// Nothing here replaces a measurement, by coasting down or by pulling the machine with a spring balance.
namespace layshaft {

enum class SurfaceKind { asphalt, gravel, loose_gravel, field, sand };
inline constexpr SurfaceKind surface_kinds[] = {SurfaceKind::asphalt, SurfaceKind::gravel, SurfaceKind::loose_gravel,
                                                SurfaceKind::field, SurfaceKind::sand};

[[nodiscard]] constexpr std::string_view to_string(SurfaceKind kind) noexcept {
  switch (kind) {
    case SurfaceKind::asphalt: return "asphalt";
    case SurfaceKind::gravel: return "gravel";
    case SurfaceKind::loose_gravel: return "loose gravel";
    case SurfaceKind::field: return "field";
    case SurfaceKind::sand: return "sand";
  }
  return {};
}

/// One kind of ground.
struct Surface {
  SurfaceKind kind;
  Band<double> rolling_coefficient;  ///< rolling resistance over the load on the tyre
  Source rolling_source;
  Band<double> grip;          ///< greatest drive force over the load on the tyre
  Band<double> driving_slip;  ///< how much slower the machine goes than its driven wheel rolls, pulling moderately
  Source grip_source;         ///< of grip and slip both

  friend constexpr bool operator==(const Surface&, const Surface&) noexcept = default;
};

// Rolling: low and high are the ends of what handbooks and engineering tables give for pneumatic tyres (Carvill,
// Mechanical Engineer's Data Handbook; Marks' Standard Handbook, values of Moyer; tables of vehicle dynamics courses;
// an automotive handbook, that one from memory; of motorcycles themselves only a published life-cycle model: 0.016,
// 0.020, 0.024 on roads), all but that model quoted second hand. Nominal is one of those figures. Grip and slip: no
// table at hand gives them for motorcycle tyres; wide bands from memory.
// clang-format off
inline constexpr Surface surfaces[] = {
  {SurfaceKind::asphalt,      {0.010, 0.020, 0.025}, {"rolling resistance tables: asphalt, new to worn; motorcycles on roads", Certainty::secondary},
                              {0.60, 0.90, 1.10},    {0.00, 0.02, 0.05}, {"grip and slip on asphalt, wet to dry", Certainty::from_memory}},
  {SurfaceKind::gravel,       {0.010, 0.020, 0.040}, {"rolling resistance tables: rolled or packed gravel to loose worn gravel", Certainty::secondary},
                              {0.40, 0.55, 0.70},    {0.01, 0.05, 0.10}, {"grip and slip on packed gravel", Certainty::from_memory}},
  {SurfaceKind::loose_gravel, {0.040, 0.060, 0.080}, {"rolling resistance tables: loose worn gravel, wet loose gravel", Certainty::secondary},
                              {0.30, 0.45, 0.60},    {0.03, 0.10, 0.20}, {"grip and slip on loose gravel", Certainty::from_memory}},
  {SurfaceKind::field,        {0.080, 0.100, 0.350}, {"rolling resistance tables: medium hard soil; field", Certainty::from_memory},
                              {0.25, 0.45, 0.60},    {0.03, 0.12, 0.25}, {"grip and slip on fields", Certainty::from_memory}},
  {SurfaceKind::sand,         {0.100, 0.200, 0.400}, {"rolling resistance tables: sand, loose sand", Certainty::secondary},
                              {0.20, 0.40, 0.60},    {0.05, 0.20, 0.40}, {"grip and slip on loose sand", Certainty::from_memory}},
};
// clang-format on

/// The row of a kind of ground.
[[nodiscard]] constexpr const Surface& surface(SurfaceKind kind) noexcept { return detail::row_of(surfaces, kind); }

}  // namespace layshaft
