// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/units.hpp>

#include <cmath>   // sin, cos, asin, atan, atanh, pow, sqrt, cbrt, exp, log
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
/// The angle in -90 to 90 degrees whose tangent is given.
[[nodiscard]] inline Angle arctan(double slope) noexcept { return Angle::from_value(std::atan(slope)); }
/// A number to the power of another.
[[nodiscard]] inline double to_the(double base, double exponent) noexcept { return std::pow(base, exponent); }
/// The length whose square is given; NaN below zero.
[[nodiscard]] inline Length sqrt(Area area) noexcept { return Length::from_value(std::sqrt(area.value())); }

/// The number whose cube is given.
[[nodiscard]] inline double cube_root(double number) noexcept { return std::cbrt(number); }
/// The square root of a number; NaN below zero.
[[nodiscard]] inline double square_root(double number) noexcept { return std::sqrt(number); }
/// arctan(root)/root of the root of a number, which goes on smoothly through 1 at zero to artanh(root)/root of the root
/// of its size below; the time that a resistance of constant, linear and quadratic parts takes has that shape. NaN from
/// -1 down.
[[nodiscard]] inline double arctan_ratio(double square) noexcept {
  if (square == 0.0) return 1.0;
  const double root = std::sqrt(std::fabs(square));
  if (square > 0.0) return std::atan(root) / root;
  if (!(square > -1.0)) return std::numeric_limits<double>::quiet_NaN();
  // Near one the root has lost what the square still tells.
  return (square > -0.5 ? std::atanh(root) : std::log1p(root) - 0.5 * std::log1p(square)) / root;
}
/// e to the power of a number.
[[nodiscard]] inline double exponential(double number) noexcept { return std::exp(number); }
/// The natural logarithm. (Not log: a using-directive would make that ambiguous with <math.h>'s.)
[[nodiscard]] inline double ln(double number) noexcept { return std::log(number); }
/// A quantity without its sign.
template <class Unit>
[[nodiscard]] constexpr boost::units::quantity<Unit> magnitude(boost::units::quantity<Unit> quantity) noexcept {
  return boost::units::quantity<Unit>::from_value(quantity.value() < 0.0 ? -quantity.value() : quantity.value());
}

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
