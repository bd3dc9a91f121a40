// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/amount.hpp>
#include <layshaft/core/band.hpp>
#include <layshaft/core/math.hpp>

#include <charconv>
#include <string>
#include <string_view>

/// @file
/// Quantities as people read them: rounded, in metric or US units, a band with its ends behind it.
///
/// This is for eyes. To write a quantity so that it can be read back, use `to_text` of core/quantity_text.hpp.
namespace layshaft {

/// Which units a text for people is written in.
enum class UnitSystem { metric, us };

/// The unit a quantity is shown in, and how many decimals tell all that is worth telling.
struct DisplayUnit {
  double unit;
  std::string_view name;
  int decimals;
};

[[nodiscard]] constexpr DisplayUnit display_unit(Length, UnitSystem system) noexcept {
  return system == UnitSystem::metric ? DisplayUnit{units::mm.value(), "mm", 1}
                                      : DisplayUnit{units::inch.value(), "in", 2};
}
[[nodiscard]] constexpr DisplayUnit display_unit(Speed, UnitSystem system) noexcept {
  return system == UnitSystem::metric ? DisplayUnit{units::kmh.value(), "km/h", 1}
                                      : DisplayUnit{units::mph.value(), "mph", 1};
}
[[nodiscard]] constexpr DisplayUnit display_unit(Mass, UnitSystem system) noexcept {
  return system == UnitSystem::metric ? DisplayUnit{1.0, "kg", 0} : DisplayUnit{units::lb.value(), "lb", 0};
}
[[nodiscard]] constexpr DisplayUnit display_unit(AngularSpeed, UnitSystem) noexcept {
  return {units::rpm.value(), "rpm", 0};
}
[[nodiscard]] constexpr DisplayUnit display_unit(Angle, UnitSystem) noexcept { return {units::deg.value(), "deg", 1}; }
[[nodiscard]] constexpr DisplayUnit display_unit(Force, UnitSystem system) noexcept {
  return system == UnitSystem::metric ? DisplayUnit{1.0, "N", 0} : DisplayUnit{units::lbf.value(), "lbf", 0};
}
[[nodiscard]] constexpr DisplayUnit display_unit(Torque, UnitSystem system) noexcept {
  return system == UnitSystem::metric ? DisplayUnit{1.0, "Nm", 1} : DisplayUnit{units::lbf_ft.value(), "lbf ft", 1};
}
[[nodiscard]] constexpr DisplayUnit display_unit(Power, UnitSystem system) noexcept {
  return system == UnitSystem::metric ? DisplayUnit{units::kW.value(), "kW", 1}
                                      : DisplayUnit{units::hp.value(), "hp", 1};
}
[[nodiscard]] constexpr DisplayUnit display_unit(Duration, UnitSystem) noexcept { return {1.0, "s", 1}; }
[[nodiscard]] constexpr DisplayUnit display_unit(Acceleration, UnitSystem) noexcept { return {1.0, "m/s2", 2}; }
[[nodiscard]] constexpr DisplayUnit display_unit(Area, UnitSystem) noexcept { return {1.0, "m2", 3}; }
[[nodiscard]] constexpr DisplayUnit display_unit(Energy, UnitSystem) noexcept { return {1.0, "J", 0}; }
[[nodiscard]] constexpr DisplayUnit display_unit(Pressure, UnitSystem) noexcept {
  return {units::bar.value(), "bar", 2};
}
[[nodiscard]] constexpr DisplayUnit display_unit(Density, UnitSystem) noexcept { return {1.0, "kg/m3", 3}; }
[[nodiscard]] constexpr DisplayUnit display_unit(LinearDensity, UnitSystem) noexcept { return {1.0, "kg/m", 2}; }
[[nodiscard]] constexpr DisplayUnit display_unit(ForcePerSpeed, UnitSystem) noexcept { return {1.0, "N s/m", 2}; }
[[nodiscard]] constexpr DisplayUnit display_unit(MomentOfInertia, UnitSystem) noexcept { return {1.0, "kg m2", 3}; }
[[nodiscard]] constexpr DisplayUnit display_unit(Temperature, UnitSystem) noexcept { return {1.0, "K", 1}; }

/// A number with so many decimals, never "-0.0".
[[nodiscard]] inline std::string show_number(double number, int decimals) {
  char buffer[400];
  std::string text(buffer,
                   std::to_chars(buffer, buffer + sizeof buffer, number, std::chars_format::fixed, decimals).ptr);
  if (text.find_first_not_of("-0.") == std::string::npos && text.starts_with('-')) text.erase(0, 1);
  return text;
}

/// A number with its sign, "+6.1", "-2.0", "0.0".
[[nodiscard]] inline std::string show_signed(double number, int decimals) {
  std::string text = show_number(number, decimals);
  const bool zero = text.find_first_not_of("0.") == std::string::npos;
  if (number > 0.0 && !zero) text.insert(0, "+");
  return text;
}

/// A quantity in its display unit: "612.3 mm".
template <class Unit>
[[nodiscard]] std::string show(boost::units::quantity<Unit> quantity, UnitSystem system) {
  const DisplayUnit unit = display_unit(quantity, system);
  return show_number(quantity.value() / unit.unit, unit.decimals).append(" ").append(unit.name);
}

/// A change as a percentage with its sign: "+6.1 %".
[[nodiscard]] inline std::string show_percent(double fraction, int decimals = 1) {
  return show_signed(100.0 * fraction, decimals).append(" %");
}

namespace detail {

/// The nominal value with its ends in brackets, where the ends show another number than it does.
[[nodiscard]] inline std::string with_ends(const std::string& low, const std::string& nominal, const std::string& high,
                                           std::string_view unit) {
  std::string text = nominal;
  if (low != nominal || high != nominal) text.append(" (").append(low).append(" to ").append(high).append(")");
  return text.append(unit.empty() ? "" : " ").append(unit);
}

}  // namespace detail

/// A band of quantities: "612.3 (611.0 to 613.5) mm", or "612.3 mm" where its ends show the same.
template <class Unit>
[[nodiscard]] std::string show(const Band<boost::units::quantity<Unit>>& band, UnitSystem system) {
  const DisplayUnit unit = display_unit(band.nominal, system);
  const auto number = [&](auto quantity) { return show_number(quantity.value() / unit.unit, unit.decimals); };
  return detail::with_ends(number(band.low), number(band.nominal), number(band.high), unit.name);
}

/// A band of numbers: "0.971 (0.952 to 0.990)".
[[nodiscard]] inline std::string show(const Band<double>& band, int decimals) {
  return detail::with_ends(show_number(band.low, decimals), show_number(band.nominal, decimals),
                           show_number(band.high, decimals), {});
}

/// A band of changes as percentages with their signs: "+6.1 (+4.0 to +8.2) %".
[[nodiscard]] inline std::string show_percent(const Band<double>& band, int decimals = 1) {
  return detail::with_ends(show_signed(100.0 * band.low, decimals), show_signed(100.0 * band.nominal, decimals),
                           show_signed(100.0 * band.high, decimals), "%");
}

/// An amount in its display unit: a caution's numbers.
[[nodiscard]] inline std::string show(const Amount& amount, UnitSystem system) {
  switch (amount.dimension) {
    case Dimension::none: return {};
    case Dimension::number: return show_number(amount.value, 3);
    case Dimension::fraction: return show_number(100.0 * amount.value, 1).append(" %");
    case Dimension::teeth:
    case Dimension::links: return show_number(amount.value, 0);
    case Dimension::length: return show(Length::from_value(amount.value), system);
    case Dimension::mass: return show(Mass::from_value(amount.value), system);
    case Dimension::speed: return show(Speed::from_value(amount.value), system);
    case Dimension::angular_speed: return show(AngularSpeed::from_value(amount.value), system);
    case Dimension::area: return show(Area::from_value(amount.value), system);
    case Dimension::duration: return show(Duration::from_value(amount.value), system);
    case Dimension::acceleration: return show(Acceleration::from_value(amount.value), system);
    case Dimension::force: return show(Force::from_value(amount.value), system);
    case Dimension::torque: return show(Torque::from_value(amount.value), system);
    case Dimension::power: return show(Power::from_value(amount.value), system);
    case Dimension::energy: return show(Energy::from_value(amount.value), system);
    case Dimension::pressure: return show(Pressure::from_value(amount.value), system);
    case Dimension::density: return show(Density::from_value(amount.value), system);
    case Dimension::linear_density: return show(LinearDensity::from_value(amount.value), system);
    case Dimension::force_per_speed: return show(ForcePerSpeed::from_value(amount.value), system);
    case Dimension::angle: return show(Angle::from_value(amount.value), system);
    case Dimension::moment_of_inertia: return show(MomentOfInertia::from_value(amount.value), system);
    case Dimension::temperature: return show(Temperature::from_value(amount.value), system);
  }
  return {};
}

}  // namespace layshaft
