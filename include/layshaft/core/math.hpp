// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/units.hpp>

#include <cmath>   // sin, cos, asin, atan, pow, sqrt, cbrt
#include <limits>  // the largest double, to tell a finite number

/// @file
/// The few functions of mathematics that formulas call on quantities, and the two questions every door asks.
/// They are layshaft's own because Boost.Units' angle is a dimension and its quantities are found by no other lookup.
/// What takes a plain double has a name that <math.h> has not, so that `using namespace layshaft` stays harmless.
namespace layshaft {

inline constexpr double pi = std::numbers::pi;

/// Sine of an angle; a libm call, so not constexpr in C++20.
[[nodiscard]] inline double sin(Angle angle) noexcept { return std::sin(angle.value()); }
/// Cosine of an angle.
[[nodiscard]] inline double cos(Angle angle) noexcept { return std::cos(angle.value()); }
/// The angle in −90° to 90° whose sine is given; NaN outside −1 to 1.
[[nodiscard]] inline Angle arcsin(double sine) noexcept { return Angle::from_value(std::asin(sine)); }
/// The length whose square is given; NaN below zero.
[[nodiscard]] inline Angle arctan(double slope) noexcept { return Angle::from_value(std::atan(slope)); }
/// A number to the power of another.
[[nodiscard]] inline double to_the(double base, double exponent) noexcept { return std::pow(base, exponent); }
[[nodiscard]] inline Length sqrt(Area area) noexcept { return Length::from_value(std::sqrt(area.value())); }

/// The number whose cube is given.
[[nodiscard]] inline double cube_root(double number) noexcept { return std::cbrt(number); }

/// True of a number that is neither NaN nor infinite; constexpr, which std::isfinite is not in C++20.
[[nodiscard]] constexpr bool is_finite(double number) noexcept {
  return number >= -std::numeric_limits<double>::max() && number <= std::numeric_limits<double>::max();
}
/// True of a finite quantity.
template <class Unit>
[[nodiscard]] constexpr bool is_finite(boost::units::quantity<Unit> quantity) noexcept {
  return is_finite(quantity.value());
}
/// True of a finite number above zero.
[[nodiscard]] constexpr bool positive(double number) noexcept { return is_finite(number) && number > 0.0; }
/// True of a finite quantity above zero.
template <class Unit>
[[nodiscard]] constexpr bool positive(boost::units::quantity<Unit> quantity) noexcept {
  return positive(quantity.value());
}

}  // namespace layshaft
