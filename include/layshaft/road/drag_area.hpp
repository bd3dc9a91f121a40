// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/band.hpp>
#include <layshaft/core/row_of.hpp>
#include <layshaft/core/source.hpp>
#include <layshaft/core/units.hpp>

#include <string_view>

/// @file
/// How much air a rider moves: drag coefficient times frontal area.
namespace layshaft {

enum class DragKind { motorcycle, scooter, bicycle };
inline constexpr DragKind drag_kinds[] = {DragKind::motorcycle, DragKind::scooter, DragKind::bicycle};

[[nodiscard]] constexpr std::string_view to_string(DragKind kind) noexcept {
  switch (kind) {
    case DragKind::motorcycle: return "motorcycle";
    case DragKind::scooter: return "scooter";
    case DragKind::bicycle: return "bicycle";
  }
  return {};
}

/// One kind of machine, with its rider.
struct DragArea {
  DragKind kind;
  Band<Area> area;
  Source source;

  friend constexpr bool operator==(const DragArea&, const DragArea&) noexcept = default;
};

// Motorcycles: low and high as a textbook on motorcycle dynamics gives the whole range (quoted second hand), nominal
// the middle of what a textbook on automotive aerodynamics gives for various motorcycles, 0.3 to 0.5. Scooters and
// bicycles: coefficient times area of a published life-cycle model, least, most likely and greatest.
// clang-format off
inline constexpr DragArea drag_areas[] = {
  {DragKind::motorcycle, {0.18 * units::m2, 0.40 * units::m2, 0.70 * units::m2}, {"textbooks of motorcycle dynamics and automotive aerodynamics", Certainty::secondary}},
  {DragKind::scooter,    {0.54 * 0.72 * units::m2, 0.6 * 0.8 * units::m2, 0.66 * 0.88 * units::m2}, {"a published life-cycle model of two-wheelers: moped or scooter", Certainty::derived}},
  {DragKind::bicycle,    {0.99 * 0.45 * units::m2, 1.1 * 0.5 * units::m2, 1.21 * 0.55 * units::m2}, {"a published life-cycle model of two-wheelers: bicycle", Certainty::derived}},
};
// clang-format on

/// The row of a kind of machine.
[[nodiscard]] constexpr const DragArea& drag_area(DragKind kind) noexcept { return detail::row_of(drag_areas, kind); }

}  // namespace layshaft
