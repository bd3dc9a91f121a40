// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/checks.hpp>
#include <layshaft/instrument/reading.hpp>

#include <optional>
#include <utility>

/// @file
/// The instrument as it came with the machine.
namespace layshaft {

/// What a machine's speedometer senses, and by how much it was out before anything was changed.
class Speedometer {
 public:
  /// @param sensor what it senses
  /// @param reading_error the stock reading over the true speed, less one: 0.04 for 4 % fast, -0.3 to 0.5; none where
  /// nobody measured it.
  [[nodiscard]] static Result<Speedometer> make(SpeedometerSensor sensor,
                                                std::optional<Band<double>> reading_error = std::nullopt) {
    if (reading_error)
      if (auto error = detail::outside("reading_error", *reading_error, -0.3, 0.5)) return *std::move(error);
    return Speedometer(sensor, reading_error, Unchecked{});
  }
#if LAYSHAFT_EXCEPTIONS
  /// @throws RangeError as `make` says.
  explicit Speedometer(SpeedometerSensor sensor, std::optional<Band<double>> reading_error = std::nullopt)
      : Speedometer(make(sensor, reading_error).value()) {}
#endif

  [[nodiscard]] SpeedometerSensor sensor() const noexcept { return sensor_; }
  [[nodiscard]] const std::optional<Band<double>>& reading_error() const noexcept { return reading_error_; }

  friend bool operator==(const Speedometer&, const Speedometer&) = default;

 private:
  struct Unchecked {};
  Speedometer(SpeedometerSensor sensor, std::optional<Band<double>> reading_error, Unchecked)
      : sensor_(sensor), reading_error_(reading_error) {}

  SpeedometerSensor sensor_;
  std::optional<Band<double>> reading_error_;
};

}  // namespace layshaft
