// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/counts.hpp>

/// @file
/// A quantity whose kind is known only at run time, for lists that hold quantities of several kinds.
namespace layshaft {

/// What an amount is an amount of.
enum class Dimension {
  none,
  number,
  fraction,
  teeth,
  links,
  length,
  mass,
  speed,
  angular_speed,
  area,
  duration,
  acceleration,
  force,
  torque,
  power,
  energy,
  pressure,
  density,
  linear_density,
  force_per_speed,
  angle,
  moment_of_inertia,
  temperature,
};

namespace detail {
/// The dimension of a type of quantity.
template <class Quantity>
inline constexpr Dimension dimension_of = Dimension::none;
template <>
inline constexpr Dimension dimension_of<Length> = Dimension::length;
template <>
inline constexpr Dimension dimension_of<Area> = Dimension::area;
template <>
inline constexpr Dimension dimension_of<Mass> = Dimension::mass;
template <>
inline constexpr Dimension dimension_of<Duration> = Dimension::duration;
template <>
inline constexpr Dimension dimension_of<Speed> = Dimension::speed;
template <>
inline constexpr Dimension dimension_of<Acceleration> = Dimension::acceleration;
template <>
inline constexpr Dimension dimension_of<Force> = Dimension::force;
template <>
inline constexpr Dimension dimension_of<Torque> = Dimension::torque;
template <>
inline constexpr Dimension dimension_of<Power> = Dimension::power;
template <>
inline constexpr Dimension dimension_of<Energy> = Dimension::energy;
template <>
inline constexpr Dimension dimension_of<Pressure> = Dimension::pressure;
template <>
inline constexpr Dimension dimension_of<Density> = Dimension::density;
template <>
inline constexpr Dimension dimension_of<LinearDensity> = Dimension::linear_density;
template <>
inline constexpr Dimension dimension_of<ForcePerSpeed> = Dimension::force_per_speed;
template <>
inline constexpr Dimension dimension_of<Angle> = Dimension::angle;
template <>
inline constexpr Dimension dimension_of<AngularSpeed> = Dimension::angular_speed;
template <>
inline constexpr Dimension dimension_of<MomentOfInertia> = Dimension::moment_of_inertia;
template <>
inline constexpr Dimension dimension_of<Temperature> = Dimension::temperature;
}  // namespace detail

/// A value in SI units, or a count or a pure number, with its kind.
struct Amount {
  double value = 0.0;
  Dimension dimension = Dimension::none;

  constexpr Amount() noexcept = default;
  template <class Unit>
  requires(detail::dimension_of<boost::units::quantity<Unit>> !=
           Dimension::none) constexpr Amount(boost::units::quantity<Unit> quantity) noexcept
      : value(quantity.value()), dimension(detail::dimension_of<boost::units::quantity<Unit>>) {}
  constexpr Amount(Teeth teeth) noexcept : value(teeth.count()), dimension(Dimension::teeth) {}
  constexpr Amount(Links links) noexcept : value(links.count()), dimension(Dimension::links) {}
  /// A pure number, 3.4.
  [[nodiscard]] static constexpr Amount number(double value) noexcept { return {value, Dimension::number}; }
  /// A part of one, spoken of in per cent: 0.024.
  [[nodiscard]] static constexpr Amount fraction(double value) noexcept { return {value, Dimension::fraction}; }

  friend constexpr bool operator==(const Amount&, const Amount&) = default;

 private:
  constexpr Amount(double amount, Dimension of) noexcept : value(amount), dimension(of) {}
};

}  // namespace layshaft
