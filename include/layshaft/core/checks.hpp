// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/band.hpp>
#include <layshaft/core/quantity_text.hpp>

#include <optional>
#include <span>
#include <string>
#include <string_view>

/// @file
/// What every door asks of what comes in: the value is finite and inside its range, or this is the error that says so.
namespace layshaft::detail {

[[nodiscard]] inline std::string in_words(double number) {
  return number != number ? "not a number" : is_finite(number) ? to_text(number, 15) : "infinite";
}
/// A quantity by its number in SI, or a plain number, which has no units.
[[nodiscard]] inline std::string in_words(double si, std::span<const UnitName> units) {
  if (units.empty() || !is_finite(si)) return in_words(si);
  return si_to_text(si, units);
}
template <class Unit>
[[nodiscard]] std::string in_words(boost::units::quantity<Unit> quantity) {
  return in_words(quantity.value(), QuantityNames<boost::units::quantity<Unit>>::units);
}

/// A plain number or a quantity, its type left behind: what follows a refusal is compiled once for all.
struct Plain {
  double value;
  std::span<const UnitName> units;

  explicit Plain(double number) : value(number), units() {}
  template <class Unit>
  explicit Plain(boost::units::quantity<Unit> quantity)
      : value(quantity.value()), units(QuantityNames<boost::units::quantity<Unit>>::units) {}

  [[nodiscard]] std::string in_words() const { return detail::in_words(value, units); }
};
[[nodiscard]] inline Error out_of_range(std::string_view name, Plain value, Plain low, Plain high) {
  return Error::range(name, value.in_words(), low.in_words().append(" to ").append(high.in_words()));
}
[[nodiscard]] inline Error out_of_order(std::string_view name, Plain low, Plain nominal, Plain high) {
  return Error::range(name, low.in_words().append(", ").append(nominal.in_words()).append(", ").append(high.in_words()),
                      "low, nominal and high in rising order");
}

/// No error when low <= value <= high; NaN and infinity never pass.
template <class Value>
[[nodiscard]] std::optional<Error> outside(std::string_view name, Value value, Value low, Value high) {
  if (is_finite(value) && low <= value && value <= high) return std::nullopt;
  return out_of_range(name, Plain(value), Plain(low), Plain(high));
}

/// The same for a band, which must also stand in rising order.
template <class Value>
[[nodiscard]] std::optional<Error> outside(std::string_view name, const Band<Value>& band, Value low, Value high) {
  for (const Corner corner : corners)
    if (auto error = outside(name, band.at(corner), low, high)) return error;
  if (well_formed(band)) return std::nullopt;
  return out_of_order(name, Plain(band.low), Plain(band.nominal), Plain(band.high));
}

}  // namespace layshaft::detail
