// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/checks.hpp>
#include <layshaft/core/result.hpp>

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <utility>
#include <vector>

/// @file
/// What a recorder wrote down along a ride. Opt-in: it allocates.
namespace layshaft {

/// Columns of a log as plain numbers in SI, all as long as the times, but for those that are empty.
struct RideColumns {
  std::vector<double> times;                  ///< s, rising
  std::vector<double> speeds;                 ///< m/s over ground, 0 to 1000 km/h
  std::vector<double> heights;                ///< m above the sea, -1000 to 11,000; or empty
  std::vector<double> engine_speeds;          ///< rad/s, 0 to 100,000 rpm; or empty
  std::vector<double> indicated_speeds = {};  ///< m/s that the speedometer shows, 0 to 1000 km/h; or empty
  std::vector<double> odometers = {};  ///< m that the odometer has counted, 0 to 10,000,000 km, never falling; or empty

  friend bool operator==(const RideColumns&, const RideColumns&) = default;
};

/// A recorded ride: times and speeds, and heights, engine speeds and what the instruments showed where they were
/// recorded. Between two samples everything changes evenly, unless they lie further apart than a gap: then the recorder
/// stood still.
class RideLog {
 public:
  using Columns = RideColumns;
  /// How far apart two samples may lie and still belong together, where nobody says otherwise.
  static constexpr Duration usual_gap = 10.0_s;

  /// The log; or a RangeError that names the sample, from 1, and its column: fewer than 2 samples, a column of another
  /// length, a number that is missing or outside its range, a time that does not rise, an odometer that falls; gap 0.01
  /// s to a day.
  [[nodiscard]] static Result<RideLog> make(Columns columns, Duration gap = usual_gap) {
    const std::size_t samples = columns.times.size();
    if (samples < 2) return Error::range("number of samples", std::to_string(samples), "at least 2");
    if (auto error = detail::outside("gap", gap, 0.01_s, 24.0_hour)) return *std::move(error);
    if (auto error = outside("time", "s", columns.times, samples, false, 1.0, -1e12, 1e12)) return *std::move(error);
    if (auto error = outside("speed", "km/h", columns.speeds, samples, false, units::kmh.value(), 0.0, 1000.0))
      return *std::move(error);
    if (auto error = outside("height", "m", columns.heights, samples, true, 1.0, -1000.0, 11000.0))
      return *std::move(error);
    if (auto error =
            outside("engine speed", "rpm", columns.engine_speeds, samples, true, units::rpm.value(), 0.0, 100000.0))
      return *std::move(error);
    if (auto error = outside("indicated speed", "km/h", columns.indicated_speeds, samples, true, units::kmh.value(),
                             0.0, 1000.0))
      return *std::move(error);
    if (auto error = outside("odometer reading", "km", columns.odometers, samples, true, units::km.value(), 0.0, 1e7))
      return *std::move(error);
    for (std::size_t i = 1; i < columns.odometers.size(); ++i)
      if (columns.odometers[i] < columns.odometers[i - 1])
        return Error::range(
            "odometer reading " + std::to_string(i + 1),
            detail::in_words(columns.odometers[i] / units::km.value()) + " km",
            "at least the " + detail::in_words(columns.odometers[i - 1] / units::km.value()) + " km before it");
    for (std::size_t i = 1; i < samples; ++i)
      if (!(columns.times[i - 1] < columns.times[i]))
        return Error::range("time " + std::to_string(i + 1), detail::in_words(columns.times[i]) + " s",
                            "more than the " + detail::in_words(columns.times[i - 1]) + " s before it");
    return RideLog(std::move(columns), gap, Unchecked{});
  }
#if LAYSHAFT_EXCEPTIONS
  /// @throws RangeError as `make` says.
  explicit RideLog(Columns columns, Duration gap = usual_gap) : RideLog(make(std::move(columns), gap).value()) {}
#endif

  [[nodiscard]] const Columns& columns() const noexcept { return columns_; }
  [[nodiscard]] Duration gap() const noexcept { return gap_; }
  [[nodiscard]] std::size_t samples() const noexcept { return columns_.times.size(); }
  [[nodiscard]] bool has_heights() const noexcept { return !columns_.heights.empty(); }
  [[nodiscard]] bool has_engine_speeds() const noexcept { return !columns_.engine_speeds.empty(); }
  [[nodiscard]] bool has_indicated_speeds() const noexcept { return !columns_.indicated_speeds.empty(); }
  [[nodiscard]] bool has_odometers() const noexcept { return !columns_.odometers.empty(); }

  /// Calls `each(place, seconds)` for every pair of samples that belong together, place and place + 1.
  template <class Each>
  void for_each_stretch(Each each) const {
    const double gap = gap_.value();
    const double* const times = columns_.times.data();
    for (std::size_t i = 0; i + 1 < columns_.times.size(); ++i) {
      const double seconds = times[i + 1] - times[i];
      if (seconds <= gap) each(i, seconds);
    }
  }

  friend bool operator==(const RideLog&, const RideLog&) = default;

 private:
  struct Unchecked {};
  RideLog(Columns columns, Duration gap, Unchecked) : columns_(std::move(columns)), gap_(gap) {}

  [[nodiscard]] static std::optional<Error> outside(const char* name, const char* unit,
                                                    const std::vector<double>& column, std::size_t samples,
                                                    bool may_be_empty, double size, double low, double high) {
    if (column.empty() && may_be_empty) return std::nullopt;
    if (column.size() != samples)
      return Error::range(std::string("number of ").append(name).append("s"), std::to_string(column.size()),
                          std::to_string(samples).append(", one a time"));
    const double least = low * size, most = high * size;
    for (std::size_t i = 0; i < column.size(); ++i)
      if (!(least <= column[i] && column[i] <= most))
        return Error::range(std::string(name).append(" ").append(std::to_string(i + 1)),
                            is_finite(column[i]) ? detail::in_words(column[i] / size).append(" ").append(unit)
                                                 : detail::in_words(column[i]),
                            to_text(low, 15)
                                .append(" ")
                                .append(unit)
                                .append(" to ")
                                .append(to_text(high, 15))
                                .append(" ")
                                .append(unit));
    return std::nullopt;
  }

  Columns columns_;
  Duration gap_;
};

}  // namespace layshaft
