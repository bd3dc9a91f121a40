// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/checks.hpp>
#include <layshaft/instrument/legal_limits.hpp>

#include <optional>

/// @file
/// What the machine's speedometer and odometer make of a set-up.
namespace layshaft {

/// The instrument part of an appraisal: readings against what the stock parts gave.
class SpeedometerReading {
 public:
  /// @param reading_error the stock instrument's own error, where it is known
  /// @param indicated_ratio reading with this set-up over reading with the stock one, at the same true speed
  SpeedometerReading(const std::optional<Band<double>>& reading_error, const Band<double>& indicated_ratio)
      : reading_error_(reading_error), indicated_ratio_(indicated_ratio) {}

  /// The stock reading over the true speed, less one; none where nobody measured it.
  [[nodiscard]] const std::optional<Band<double>>& reading_error() const noexcept { return reading_error_; }

  /// The reading over the stock parts' reading, at the same true speed.
  [[nodiscard]] const Band<double>& indicated_ratio() const noexcept { return indicated_ratio_; }
  /// What a correction unit must multiply the sender's turns by to bring the stock reading back.
  [[nodiscard]] Band<double> correction_factor() const noexcept {
    return over(indicated_ratio_, layshaft::correction_factor);
  }
  /// How far the odometer drifts from its stock count: it counts 1 + this for each kilometre it counted before. It has
  /// no legal allowance, and whatever the speedometer's own error is, the odometer does not share it.
  [[nodiscard]] Band<double> odometer_drift() const noexcept {
    return over(indicated_ratio_, layshaft::odometer_drift);
  }

  /// What the speedometer shows at a true speed of zero or more; a wide band where its own error is not known.
  [[nodiscard]] Result<Band<Speed>> try_indicated(Speed true_speed) const {
    if (auto error = detail::outside("true_speed", true_speed, 0.0_kmh, 10000_kmh)) return *std::move(error);
    return indicated_band(true_speed, reading_error_, indicated_ratio_);
  }
  /// What UN R39 says of that reading.
  [[nodiscard]] Result<SpeedometerVerdict> try_verdict(Speed true_speed) const {
    const auto indicated = try_indicated(true_speed);
    if (!indicated) return indicated.error();
    return speedometer_verdict(true_speed, *indicated);
  }

#if LAYSHAFT_EXCEPTIONS
  /// @throws RangeError
  [[nodiscard]] Band<Speed> indicated(Speed true_speed) const { return try_indicated(true_speed).value(); }
  /// @throws RangeError
  [[nodiscard]] SpeedometerVerdict verdict(Speed true_speed) const { return try_verdict(true_speed).value(); }
#endif

  friend bool operator==(const SpeedometerReading&, const SpeedometerReading&) = default;

 private:
  std::optional<Band<double>> reading_error_;
  Band<double> indicated_ratio_;
};

}  // namespace layshaft
