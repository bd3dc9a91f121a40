// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/band.hpp>
#include <layshaft/core/checks.hpp>
#include <layshaft/core/units.hpp>

#include <optional>
#include <string>
#include <string_view>

/// @file
/// The door for distances on the road, which are told in kilometres: a life of 99000000 mm tells nobody anything.
namespace layshaft::detail {

[[nodiscard]] inline std::string in_km(Length distance) { return in_words(in(distance, units::km)).append(" km"); }

/// No error when low <= distance <= high; NaN and infinity never pass.
[[nodiscard]] inline std::optional<Error> outside_km(std::string_view name, Length distance, Length low, Length high) {
  if (is_finite(distance) && low <= distance && distance <= high) return std::nullopt;
  return Error::range(name, is_finite(distance) ? in_km(distance) : in_words(distance),
                      in_km(low).append(" to ").append(in_km(high)));
}

/// The same for a band, which must also stand in rising order.
[[nodiscard]] inline std::optional<Error> outside_km(std::string_view name, const Band<Length>& band, Length low,
                                                     Length high) {
  for (const Corner corner : corners)
    if (auto error = outside_km(name, band.at(corner), low, high)) return error;
  if (well_formed(band)) return std::nullopt;
  return Error::range(name,
                      in_km(band.low).append(", ").append(in_km(band.nominal)).append(", ").append(in_km(band.high)),
                      "low, nominal and high in rising order");
}

}  // namespace layshaft::detail
