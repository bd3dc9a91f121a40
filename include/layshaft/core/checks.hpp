// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/band.hpp>
#include <layshaft/core/quantity_text.hpp>

#include <optional>
#include <string>
#include <string_view>

/// @file
/// What every door asks of what comes in: the value is finite and inside its range, or this is the error that says so.
namespace layshaft::detail {

[[nodiscard]] inline std::string in_words(double number) {
  return number != number ? "not a number" : is_finite(number) ? to_text(number, 15) : "infinite";
}
template <class Unit>
[[nodiscard]] std::string in_words(boost::units::quantity<Unit> quantity) {
  return is_finite(quantity) ? to_text(quantity) : in_words(quantity.value());
}

/// No error when low <= value <= high; NaN and infinity never pass.
template <class Value>
[[nodiscard]] std::optional<Error> outside(std::string_view name, Value value, Value low, Value high) {
  if (is_finite(value) && low <= value && value <= high) return std::nullopt;
  return Error::range(name, in_words(value), in_words(low).append(" to ").append(in_words(high)));
}

/// The same for a band, which must also stand in rising order.
template <class Value>
[[nodiscard]] std::optional<Error> outside(std::string_view name, const Band<Value>& band, Value low, Value high) {
  for (const Corner corner : corners)
    if (auto error = outside(name, band.at(corner), low, high)) return error;
  if (well_formed(band)) return std::nullopt;
  return Error::range(
      name, in_words(band.low).append(", ").append(in_words(band.nominal)).append(", ").append(in_words(band.high)),
      "low, nominal and high in rising order");
}

}  // namespace layshaft::detail
