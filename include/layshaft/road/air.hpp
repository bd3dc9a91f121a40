// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/checks.hpp>
#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>
#include <layshaft/core/result.hpp>
#include <layshaft/core/watch.hpp>

#include <optional>
#include <utility>

/// @file
/// The air that is ridden through: the standard atmosphere up to 11 km, and its density on a warmer or colder day.
///
/// Dry air. Moist air is a little lighter: about 1 % at 30 degrees Celsius and saturated (from memory; left out).
namespace layshaft {

/// The constants of the standard atmosphere in its lowest layer, by ISO 2533:1975 (the same in the U.S. Standard
/// Atmosphere, 1976). The lapse of 6.5 K a kilometre stands here as the height at which it would come to nothing.
namespace standard_atmosphere {
inline constexpr Source source{"ISO 2533:1975, standard atmosphere", Certainty::published};
inline constexpr Temperature temperature = Temperature::from_value(288.15);  ///< at sea level
inline constexpr Pressure pressure = Pressure::from_value(101325.0);         ///< at sea level
inline constexpr Density density = Density::from_value(1.225);               ///< at sea level
inline constexpr Length earth_radius = Length::from_value(6356766.0);
inline constexpr Length lapse_height = Length::from_value(288.15 / 0.0065);
/// g M/(R L): how much faster pressure falls with height than temperature.
inline constexpr double pressure_exponent = 9.80665 / (287.05287 * 0.0065);
inline constexpr Length lowest = Length::from_value(-1000.0);   ///< lowest altitude taken here
inline constexpr Length highest = Length::from_value(11000.0);  ///< highest; there the next layer begins
}  // namespace standard_atmosphere

/// The height that gravity, weaker with altitude, makes of an altitude.
LAYSHAFT_FORMULA(constexpr, Length, geopotential_height, (Length altitude, Length earth_radius),
                 is_finite(altitude) && positive(earth_radius) && altitude > 0.0_mm - 0.5 * earth_radius,
                 standard_atmosphere::source, earth_radius / (earth_radius + altitude) * altitude)

/// The standard temperature at a height.
LAYSHAFT_FORMULA(constexpr, Temperature, standard_temperature,
                 (Temperature sea_level_temperature, Length geopotential_height, Length lapse_height),
                 positive(sea_level_temperature) && is_finite(geopotential_height) && positive(lapse_height) &&
                     geopotential_height < lapse_height,
                 standard_atmosphere::source, (1.0 - geopotential_height / lapse_height) * sea_level_temperature)

/// The standard pressure where the standard temperature is this.
LAYSHAFT_FORMULA(inline, Pressure, air_pressure,
                 (Pressure sea_level_pressure, Temperature sea_level_temperature, Temperature standard_temperature,
                  double pressure_exponent),
                 positive(sea_level_pressure) && positive(sea_level_temperature) && positive(standard_temperature) &&
                     positive(pressure_exponent) && pressure_exponent < 10.0 &&
                     standard_temperature < 10.0 * sea_level_temperature &&
                     sea_level_temperature < 10.0 * standard_temperature,
                 standard_atmosphere::source,
                 exponential(ln(standard_temperature / sea_level_temperature) * pressure_exponent) * sea_level_pressure)

/// The density of air at a pressure and a temperature, from that at sea level.
LAYSHAFT_FORMULA(constexpr, Density, air_density,
                 (Density sea_level_density, Pressure air_pressure, Pressure sea_level_pressure,
                  Temperature sea_level_temperature, Temperature air_temperature),
                 positive(sea_level_density) && positive(air_pressure) && positive(sea_level_pressure) &&
                     positive(sea_level_temperature) && positive(air_temperature),
                 standard_atmosphere::source,
                 air_pressure / sea_level_pressure * (sea_level_temperature / air_temperature) * sea_level_density)

/// How dense the air is, over that of sea level; the torque of an engine that nothing blows into goes about with it
/// (common practice).
LAYSHAFT_FORMULA(constexpr, double, density_ratio, (Density air_density, Density sea_level_density),
                 positive(air_density) && positive(sea_level_density), sources::definition,
                 air_density / sea_level_density)

/// The air at one place.
struct Air {
  Temperature temperature = standard_atmosphere::temperature;
  Pressure pressure = standard_atmosphere::pressure;
  Density density = standard_atmosphere::density;

  friend constexpr bool operator==(const Air&, const Air&) noexcept = default;
};

namespace detail {

/// The standard temperature for whoever watches.
template <class Watch>
[[nodiscard]] constexpr auto standard_temperature_at(Watch watch, Length altitude) {
  namespace isa = standard_atmosphere;
  const auto above_sea = watch.given("altitude", altitude);
  const auto radius = watch.looked_up("earth_radius", isa::earth_radius, "standard atmosphere", isa::source);
  const auto height = watch.step(formula::geopotential_height{}, above_sea, radius);
  const auto warmth = watch.looked_up("sea_level_temperature", isa::temperature, "standard atmosphere", isa::source);
  const auto lapse = watch.looked_up("lapse_height", isa::lapse_height, "standard atmosphere", isa::source);
  return watch.step(formula::standard_temperature{}, warmth, height, lapse);
}
/// The standard pressure for whoever watches.
template <class Watch>
[[nodiscard]] auto air_pressure_at(Watch watch, Length altitude) {
  namespace isa = standard_atmosphere;
  const auto temperature = standard_temperature_at(watch, altitude);
  const auto pressure = watch.looked_up("sea_level_pressure", isa::pressure, "standard atmosphere", isa::source);
  const auto warmth = watch.looked_up("sea_level_temperature", isa::temperature, "standard atmosphere", isa::source);
  const auto exponent =
      watch.looked_up("pressure_exponent", isa::pressure_exponent, "standard atmosphere", isa::source);
  return watch.step(formula::air_pressure{}, pressure, warmth, temperature, exponent);
}
/// The density at an altitude for whoever watches, on a day of the standard temperature or of a stated one.
template <class Watch>
[[nodiscard]] auto air_density_at(Watch watch, Length altitude, std::optional<Temperature> stated) {
  namespace isa = standard_atmosphere;
  const auto pressure = air_pressure_at(watch, altitude);
  const auto temperature = stated ? watch.given("air_temperature", *stated) : standard_temperature_at(watch, altitude);
  const auto density = watch.looked_up("sea_level_density", isa::density, "standard atmosphere", isa::source);
  const auto sea = watch.looked_up("sea_level_pressure", isa::pressure, "standard atmosphere", isa::source);
  const auto warmth = watch.looked_up("sea_level_temperature", isa::temperature, "standard atmosphere", isa::source);
  return watch.step(formula::air_density{}, density, pressure, sea, warmth, temperature);
}

}  // namespace detail

/// The air at an altitude above sea level, -1000 to 11,000 m, with the standard pressure; and the standard temperature
/// unless another is stated, 200 to 340 K. Or a RangeError.
[[nodiscard]] inline Result<Air> try_air_at(Length altitude, std::optional<Temperature> temperature = {}) {
  if (auto error = detail::outside("altitude", altitude, standard_atmosphere::lowest, standard_atmosphere::highest))
    return *std::move(error);
  if (temperature)
    if (auto error = detail::outside("temperature", *temperature, 200.0_kelvin, 340.0_kelvin)) return *std::move(error);
  return Air{temperature ? *temperature : detail::standard_temperature_at(Unwatched(), altitude),
             detail::air_pressure_at(Unwatched(), altitude),
             detail::air_density_at(Unwatched(), altitude, temperature)};
}
#if LAYSHAFT_EXCEPTIONS
/// @throws RangeError as `try_air_at` says.
[[nodiscard]] inline Air air_at(Length altitude, std::optional<Temperature> temperature = {}) {
  return try_air_at(altitude, temperature).value();
}
#endif

}  // namespace layshaft
