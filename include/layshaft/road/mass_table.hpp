// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/source.hpp>
#include <layshaft/core/units.hpp>

/// @file
/// The road load of motorcycles by their mass, as a test bench sets it.
namespace layshaft {

/// One row: motorcycles of a mass with rider, and what resists them.
struct MassRow {
  Mass lowest, highest;     ///< of the loaded vehicle, in whole kilograms
  Mass equivalent;          ///< that the bench's flywheels stand for
  Force constant;           ///< A of F = A + C V^2
  LinearDensity quadratic;  ///< C
  Force at_65_kmh;          ///< as printed
};

inline constexpr Source mass_table_source{"US 40 CFR 86.529-98, figure F98-9", Certainty::published};

namespace detail {
[[nodiscard]] constexpr MassRow mass_row(double lowest, double highest, double equivalent, double constant,
                                         double quadratic, double at_65_kmh) {
  return {lowest * units::kg,  highest * units::kg,           equivalent * units::kg,
          constant * units::N, quadratic * units::N_per_kmh2, at_65_kmh * units::N};
}
}  // namespace detail

// Source: US 40 CFR 86.529-98, figure F98-9. Loaded mass from and to, equivalent inertial mass in kg; A in N; C in
// N/(km/h)^2; force at 65 km/h in N.
// clang-format off
inline constexpr MassRow mass_table[] = {
  detail::mass_row( 95, 105, 100,  0.0,  .0224,  94.8),
  detail::mass_row(106, 115, 110,  0.82, .0227,  96.8),
  detail::mass_row(116, 125, 120,  1.70, .0230,  98.8),
  detail::mass_row(126, 135, 130,  2.57, .0233, 100.9),
  detail::mass_row(136, 145, 140,  3.44, .0235, 102.9),
  detail::mass_row(146, 155, 150,  4.32, .0238, 104.9),
  detail::mass_row(156, 165, 160,  5.19, .0241, 107.0),
  detail::mass_row(166, 175, 170,  6.06, .0244, 109.0),
  detail::mass_row(176, 185, 180,  6.94, .0246, 111.0),
  detail::mass_row(186, 195, 190,  7.81, .0249, 113.1),
  detail::mass_row(196, 205, 200,  8.69, .0252, 115.1),
  detail::mass_row(206, 215, 210,  9.56, .0255, 117.1),
  detail::mass_row(216, 225, 220, 10.43, .0257, 119.2),
  detail::mass_row(226, 235, 230, 11.31, .0260, 121.2),
  detail::mass_row(236, 245, 240, 12.18, .0263, 123.2),
  detail::mass_row(246, 255, 250, 13.06, .0266, 125.3),
  detail::mass_row(256, 265, 260, 13.93, .0268, 127.3),
  detail::mass_row(266, 275, 270, 14.80, .0271, 129.3),
  detail::mass_row(276, 285, 280, 15.68, .0274, 131.4),
  detail::mass_row(286, 295, 290, 16.55, .0277, 133.4),
  detail::mass_row(296, 305, 300, 17.43, .0279, 135.4),
  detail::mass_row(306, 315, 310, 18.30, .0282, 137.5),
  detail::mass_row(316, 325, 320, 19.17, .0285, 139.5),
  detail::mass_row(326, 335, 330, 20.05, .0288, 141.6),
  detail::mass_row(336, 345, 340, 20.92, .0290, 143.6),
};
// clang-format on

/// The row of a mass, which is rounded to whole kilograms (a half up) as the table's bounds are; null outside it.
[[nodiscard]] constexpr const MassRow* find_mass_row(Mass mass) noexcept {
  for (const MassRow& row : mass_table)
    if (row.lowest - 0.5_kg <= mass && mass < row.highest + 0.5_kg) return &row;
  return nullptr;
}

}  // namespace layshaft
