// SPDX-License-Identifier: MIT
#pragma once

#include <boost/units/quantity.hpp>
#include <boost/units/systems/si.hpp>

#include <numbers>  // pi, of which the turn is made

/// @file
/// The quantities that cross layshaft's public boundary, the units they are written in, and their literals.
///
/// Every quantity is a Boost.Units quantity over SI units, so its `.value()` is in metres, kilograms, seconds,
/// radians and what follows from them. A unit is a quantity of one: `110.0 * units::mm`, or `110.0_mm`, which is the
/// same number times the same factor. `length / units::inch` becomes a plain double where one is asked for, and
/// `in(length, units::inch)` is one.
namespace layshaft {

using Length = boost::units::quantity<boost::units::si::length>;
using Area = boost::units::quantity<boost::units::si::area>;
using Mass = boost::units::quantity<boost::units::si::mass>;
using Duration = boost::units::quantity<boost::units::si::time>;
using Speed = boost::units::quantity<boost::units::si::velocity>;
using Acceleration = boost::units::quantity<boost::units::si::acceleration>;
using Force = boost::units::quantity<boost::units::si::force>;
using Torque = boost::units::quantity<boost::units::si::torque>;
using Power = boost::units::quantity<boost::units::si::power>;
using Energy = boost::units::quantity<boost::units::si::energy>;
using Pressure = boost::units::quantity<boost::units::si::pressure>;
using Density = boost::units::quantity<boost::units::si::mass_density>;
using LinearDensity =
    boost::units::quantity<boost::units::divide_typeof_helper<boost::units::si::mass, boost::units::si::length>::type>;
/// What a resistance grows by with speed, in N/(m/s); what it grows by with the square of speed, in N/(m/s)^2, is a
/// LinearDensity: the mass of air that is moved over a metre.
using ForcePerSpeed = boost::units::quantity<
    boost::units::divide_typeof_helper<boost::units::si::force, boost::units::si::velocity>::type>;
using Angle = boost::units::quantity<boost::units::si::plane_angle>;
using AngularSpeed = boost::units::quantity<boost::units::si::angular_velocity>;
using MomentOfInertia = boost::units::quantity<boost::units::si::moment_of_inertia>;
using Temperature = boost::units::quantity<boost::units::si::temperature>;

/// One full turn. Boost.Units' own revolution cuts 2π short by 466 ulp, so this one is made of std::numbers::pi.
inline constexpr Angle turn = Angle::from_value(2.0 * std::numbers::pi);
/// Half a turn, the angle between the two runs' wraps of a drive with equal sprockets.
inline constexpr Angle half_turn = Angle::from_value(std::numbers::pi);

/// A unit is a quantity of one. Each factor is exact by definition or an expression of exact ones:
/// inch, mile, pound (avoirdupois) and pound-force by the international agreement of 1959 and NIST SP 811, App. B.
namespace units {}
/// `110.0_mm`, `9500_rpm`: the number times the unit of that name.
inline namespace literals {}

#define LAYSHAFT_UNIT(QUANTITY, NAME, FACTOR)                                              \
  namespace units {                                                                        \
  inline constexpr QUANTITY NAME = QUANTITY::from_value(FACTOR);                           \
  }                                                                                        \
  inline namespace literals {                                                              \
  [[nodiscard]] constexpr QUANTITY operator""_##NAME(long double number) noexcept {        \
    return static_cast<double>(number) * units::NAME;                                      \
  }                                                                                        \
  [[nodiscard]] constexpr QUANTITY operator""_##NAME(unsigned long long number) noexcept { \
    return static_cast<double>(number) * units::NAME;                                      \
  }                                                                                        \
  }

// clang-format off
LAYSHAFT_UNIT(Length, mm, 0.001)
LAYSHAFT_UNIT(Length, cm, 0.01)
LAYSHAFT_UNIT(Length, m, 1.0)
LAYSHAFT_UNIT(Length, km, 1000.0)
LAYSHAFT_UNIT(Length, inch, 0.0254)
LAYSHAFT_UNIT(Length, mile, 1609.344)
LAYSHAFT_UNIT(Area, m2, 1.0)
LAYSHAFT_UNIT(Speed, mps, 1.0)
LAYSHAFT_UNIT(Speed, kmh, 1.0 / 3.6)
LAYSHAFT_UNIT(Speed, mph, 0.44704)
LAYSHAFT_UNIT(Acceleration, mps2, 1.0)
LAYSHAFT_UNIT(AngularSpeed, rpm, std::numbers::pi / 30.0)
LAYSHAFT_UNIT(AngularSpeed, radps, 1.0)
LAYSHAFT_UNIT(Force, N, 1.0)
LAYSHAFT_UNIT(Force, kN, 1000.0)
LAYSHAFT_UNIT(Force, lbf, 4.4482216152605)
LAYSHAFT_UNIT(Torque, Nm, 1.0)
LAYSHAFT_UNIT(Torque, lbf_ft, 4.4482216152605 * 0.3048)
LAYSHAFT_UNIT(Power, W, 1.0)
LAYSHAFT_UNIT(Power, kW, 1000.0)
LAYSHAFT_UNIT(Power, hp, 550.0 * 4.4482216152605 * 0.3048)
LAYSHAFT_UNIT(Energy, J, 1.0)
LAYSHAFT_UNIT(Pressure, Pa, 1.0)
LAYSHAFT_UNIT(Pressure, bar, 100000.0)
LAYSHAFT_UNIT(Pressure, MPa, 1000000.0)
LAYSHAFT_UNIT(Mass, kg, 1.0)
LAYSHAFT_UNIT(Mass, lb, 0.45359237)
LAYSHAFT_UNIT(Mass, g, 0.001)
LAYSHAFT_UNIT(Density, kg_per_m3, 1.0)
LAYSHAFT_UNIT(LinearDensity, kg_per_m, 1.0)
LAYSHAFT_UNIT(LinearDensity, N_per_kmh2, 3.6 * 3.6)
LAYSHAFT_UNIT(ForcePerSpeed, N_per_mps, 1.0)
LAYSHAFT_UNIT(ForcePerSpeed, N_per_kmh, 3.6)
LAYSHAFT_UNIT(Angle, deg, std::numbers::pi / 180.0)
LAYSHAFT_UNIT(Angle, rad, 1.0)
LAYSHAFT_UNIT(Duration, s, 1.0)
LAYSHAFT_UNIT(Duration, minute, 60.0)
LAYSHAFT_UNIT(Duration, hour, 3600.0)
LAYSHAFT_UNIT(MomentOfInertia, kg_m2, 1.0)
LAYSHAFT_UNIT(Temperature, kelvin, 1.0)
// clang-format on

#undef LAYSHAFT_UNIT

/// A quantity as a plain number of a unit: `in(615_mm, units::inch)`. The quotient `length / units::inch` becomes a
/// double wherever one is asked for; where nothing asks, as in printf, this does. Error: within 2.9 ulp from one unit
/// into another.
template <class Unit>
[[nodiscard]] constexpr double in(boost::units::quantity<Unit> quantity, boost::units::quantity<Unit> unit) noexcept {
  return quantity.value() / unit.value();
}

// What must not compile says here what to write instead: compilers quote the line of a deleted function.
template <class Unit, class Other>
double in(boost::units::quantity<Unit>, boost::units::quantity<Other>) = delete;  // ask in a unit of its own kind
template <class Unit>
void operator*(int, boost::units::quantity<Unit>) = delete;  // quantities take doubles: write `2.0 * length`
template <class Unit>
void operator*(boost::units::quantity<Unit>, int) = delete;  // quantities take doubles: write `length * 2.0`
template <class Unit>
void operator/(boost::units::quantity<Unit>, int) = delete;  // quantities take doubles: write `length / 2.0`

}  // namespace layshaft
