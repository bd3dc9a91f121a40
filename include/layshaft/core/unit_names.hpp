// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/units.hpp>

#include <string_view>

/// @file
/// How each kind of quantity is called, and the spellings of its units in text.
namespace layshaft {

/// One spelling of a unit: `number name` is the quantity `number * unit`.
struct UnitName {
  std::string_view name;
  double unit;  ///< the unit's size in SI
};

/// What a quantity is called, an example of how to write it, and its units. The first unit is the one it is printed
/// in; a spelling that stands behind another of the same size is read only. Every list holds the SI unit, in which any
/// value can be printed so that it reads back to the last bit.
template <class Quantity>
struct QuantityNames;

#define LAYSHAFT_QUANTITY_NAMES(QUANTITY, EXAMPLE, ...)  \
  template <>                                            \
  struct QuantityNames<QUANTITY> {                       \
    static constexpr std::string_view name = #QUANTITY;  \
    static constexpr std::string_view example = EXAMPLE; \
    static constexpr UnitName units[] = {__VA_ARGS__};   \
  };

// clang-format off
LAYSHAFT_QUANTITY_NAMES(Length, "612 mm",
  {"mm", units::mm.value()}, {"cm", units::cm.value()}, {"m", 1.0}, {"km", units::km.value()},
  {"inch", units::inch.value()}, {"in", units::inch.value()}, {"mile", units::mile.value()})
LAYSHAFT_QUANTITY_NAMES(Area, "0.62 m2", {"m2", 1.0}, {"m^2", 1.0}, {"m²", 1.0})
LAYSHAFT_QUANTITY_NAMES(Mass, "132 kg", {"kg", 1.0}, {"g", units::g.value()}, {"lb", units::lb.value()})
LAYSHAFT_QUANTITY_NAMES(Duration, "12 s",
  {"s", 1.0}, {"min", units::minute.value()}, {"minute", units::minute.value()}, {"h", units::hour.value()},
  {"hour", units::hour.value()})
LAYSHAFT_QUANTITY_NAMES(Speed, "90 km/h",
  {"km/h", units::kmh.value()}, {"kmh", units::kmh.value()}, {"mph", units::mph.value()}, {"m/s", 1.0}, {"mps", 1.0})
LAYSHAFT_QUANTITY_NAMES(Acceleration, "9.81 m/s2", {"m/s2", 1.0}, {"m/s^2", 1.0}, {"m/s²", 1.0})
LAYSHAFT_QUANTITY_NAMES(Force, "320 N", {"N", 1.0}, {"kN", units::kN.value()}, {"lbf", units::lbf.value()})
LAYSHAFT_QUANTITY_NAMES(Torque, "21 Nm", {"Nm", 1.0}, {"N m", 1.0}, {"lbf ft", units::lbf_ft.value()},
  {"lbf_ft", units::lbf_ft.value()})
LAYSHAFT_QUANTITY_NAMES(Power, "15 kW", {"kW", units::kW.value()}, {"W", 1.0}, {"hp", units::hp.value()})
LAYSHAFT_QUANTITY_NAMES(Energy, "1200 J", {"J", 1.0})
LAYSHAFT_QUANTITY_NAMES(Pressure, "1.8 bar", {"bar", units::bar.value()}, {"MPa", units::MPa.value()}, {"Pa", 1.0})
LAYSHAFT_QUANTITY_NAMES(Density, "1.2 kg/m3", {"kg/m3", 1.0}, {"kg/m^3", 1.0}, {"kg/m³", 1.0})
LAYSHAFT_QUANTITY_NAMES(LinearDensity, "0.7 kg/m", {"kg/m", 1.0})
LAYSHAFT_QUANTITY_NAMES(ForcePerSpeed, "1.5 N s/m",
  {"N s/m", 1.0}, {"N/(m/s)", 1.0}, {"kg/s", 1.0}, {"N/(km/h)", units::N_per_kmh.value()})
LAYSHAFT_QUANTITY_NAMES(Angle, "12 deg", {"deg", units::deg.value()}, {"°", units::deg.value()}, {"rad", 1.0})
LAYSHAFT_QUANTITY_NAMES(AngularSpeed, "9500 rpm", {"rpm", units::rpm.value()}, {"rad/s", 1.0})
LAYSHAFT_QUANTITY_NAMES(MomentOfInertia, "0.02 kg m2", {"kg m2", 1.0}, {"kg m^2", 1.0}, {"kg m²", 1.0})
LAYSHAFT_QUANTITY_NAMES(Temperature, "293.15 K", {"K", 1.0})
// clang-format on

#undef LAYSHAFT_QUANTITY_NAMES

}  // namespace layshaft
