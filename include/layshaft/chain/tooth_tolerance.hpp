// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/source.hpp>
#include <layshaft/core/units.hpp>

#include <array>
#include <cstddef>
#include <string_view>

/// @file
/// How much narrower than its greatest width a tooth may be.
///
/// Widths of grade 14 (h14: nothing above, all below), as quoted from ISO 286-1: secondary. That the standard for
/// sprockets asks for this grade is from memory, so the whole is.
namespace layshaft {

namespace sources {
inline constexpr Source tooth_tolerance{"ISO 286-1, grade 14, for tooth widths as recalled", Certainty::from_memory};
}

/// A range of sizes and the tolerance of it.
struct ToothTolerance {
  Length to;  ///< the range begins above that of the row before, and goes to this
  Length tolerance;
  std::string_view range;
};

namespace detail {
// clang-format off
[[nodiscard]] constexpr auto make_tooth_tolerances() noexcept {
  using namespace literals;
  return std::to_array<ToothTolerance>({
    {3.0_mm, 0.25_mm, "over 1 to 3 mm"},
    {6.0_mm, 0.30_mm, "over 3 to 6 mm"},
    {10.0_mm, 0.36_mm, "over 6 to 10 mm"},
    {18.0_mm, 0.43_mm, "over 10 to 18 mm"},
    {30.0_mm, 0.52_mm, "over 18 to 30 mm"},
    {50.0_mm, 0.62_mm, "over 30 to 50 mm"},
    {80.0_mm, 0.74_mm, "over 50 to 80 mm"},
  });
}
// clang-format on
}  // namespace detail

inline constexpr auto tooth_tolerances = detail::make_tooth_tolerances();

/// The tolerance of a width. Every series of the table has teeth of more than 1 mm and less than 80 mm; a width beyond
/// has that of the nearest range.
[[nodiscard]] constexpr const ToothTolerance& tooth_tolerance(Length width) noexcept {
  std::size_t row = 0;
  while (row + 1 < tooth_tolerances.size() && tooth_tolerances[row].to < width) ++row;
  return tooth_tolerances[row];
}

}  // namespace layshaft
