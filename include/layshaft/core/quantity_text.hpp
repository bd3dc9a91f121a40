// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/decimal.hpp>
#include <layshaft/core/math.hpp>
#include <layshaft/core/result.hpp>
#include <layshaft/core/unit_names.hpp>

#include <algorithm>
#include <charconv>  // to_chars, whatever the locale
#include <span>
#include <string>
#include <string_view>

/// @file
/// Quantities as text with a unit, `612 mm`, read and written so that nothing is lost on the way: what is written reads
/// back to the bit. What people write, a decimal number of any unit, is read within 2.8 ulp.
namespace layshaft {

namespace detail {

/// The names of a kind of quantity without its type, so that all are read and written by the same few functions: in
/// those a quantity is its number in SI.
struct NamesOfQuantity {
  std::string_view name, example;
  std::span<const UnitName> units;
};
template <class Quantity>
inline constexpr NamesOfQuantity names_of{QuantityNames<Quantity>::name, QuantityNames<Quantity>::example,
                                          QuantityNames<Quantity>::units};

/// The units of a quantity as a list for a message: "mm, cm, m …"; spellings that mean the same are left out.
[[nodiscard]] inline std::string unit_list(std::span<const UnitName> units) {
  std::string list;
  double last = 0.0;
  for (const UnitName& unit : units) {
    if (unit.unit == last) continue;
    if (!list.empty()) list.append(", ");
    list.append(unit.name);
    last = unit.unit;
  }
  return list;
}

[[nodiscard]] constexpr bool is_space(char c) noexcept { return c == ' ' || c == '\t'; }

/// The place behind the spaces that start at a place of a text; no-break and thin ones, which typeset texts have
/// between number and unit, count as well.
[[nodiscard]] constexpr std::size_t behind_spaces(std::string_view text, std::size_t position) noexcept {
  while (position < text.size()) {
    const std::string_view rest = text.substr(position);
    if (is_space(rest[0]))
      position += 1;
    else if (rest.starts_with("\xC2\xA0"))
      position += 2;
    else if (rest.starts_with("\xE2\x80\xAF") || rest.starts_with("\xE2\x80\x89"))
      position += 3;
    else
      break;
  }
  return position;
}

}  // namespace detail

/// A number in at most `precision` significant digits (1 to 17), without trailing zeros: "0.0254", "1e+20".
[[nodiscard]] inline std::string to_text(double number, int precision) {
  char buffer[32];
  return {buffer, std::to_chars(buffer, buffer + sizeof buffer, number, std::chars_format::general, precision).ptr};
}

/// The fewest digits, 15 to 17, that read back as the very same number.
[[nodiscard]] inline std::string to_text(double number) {
  for (const int precision : {15, 16}) {
    const std::string text = to_text(number, precision);
    double back = 0.0;
    detail::read_decimal(text.data(), text.data() + text.size(), back);
    if (back == number) return text;
  }
  return to_text(number, 17);
}

namespace detail {

[[nodiscard]] inline Error no_quantity(std::string_view text, std::size_t position, std::string_view problem,
                                       const NamesOfQuantity& names) {
  return Error::parse(text, position, problem,
                      std::string("a ")
                          .append(names.name)
                          .append(" such as \"")
                          .append(names.example)
                          .append("\" (units ")
                          .append(unit_list(names.units))
                          .append(")"));
}

[[nodiscard]] inline Result<double> try_parse_si(std::string_view text, const NamesOfQuantity& names) {
  const auto fault = [&](std::size_t position, std::string_view problem) {
    return no_quantity(text, position, problem, names);
  };
  std::size_t begin = 0;
  std::size_t end = text.size();
  while (begin < end && is_space(text[begin])) ++begin;
  while (end > begin && is_space(text[end - 1])) --end;
  if (begin == end) return fault(begin, "nothing to read");

  const std::size_t number_at = begin + (text[begin] == '+' ? 1 : 0);
  if (number_at > begin && number_at < end && text[number_at] == '-') return fault(begin, "two signs");
  double number = 0.0;
  const auto [stop, error] = read_decimal(text.data() + number_at, text.data() + end, number);
  if (error == std::errc::result_out_of_range) return fault(begin, "a number too large or too small");
  if (error != std::errc{}) return fault(begin, "no number");
  if (!is_finite(number)) return fault(begin, "a number that is not finite");

  const std::size_t unit_at = behind_spaces(text.substr(0, end), static_cast<std::size_t>(stop - text.data()));
  if (unit_at == end) return fault(end, "no unit");
  const std::string_view name = text.substr(unit_at, end - unit_at);
  for (const UnitName& unit : names.units) {
    if (unit.name != name) continue;
    if (!is_finite(number * unit.unit)) return fault(begin, "a number too large");
    return number * unit.unit;
  }
  return fault(unit_at, "unknown unit");
}

}  // namespace detail

/// Reads a quantity: a decimal number, a space or none, a unit of its kind. White space around it does not count.
/// @return the quantity, finite; or a parse error with the position, and the units that would have been right.
template <class Quantity>
[[nodiscard]] Result<Quantity> try_parse_quantity(std::string_view text) {
  const Result<double> number = detail::try_parse_si(text, detail::names_of<Quantity>);
  if (!number) return number.error();
  return Quantity::from_value(*number);
}

#if LAYSHAFT_EXCEPTIONS
/// Reads a quantity: `parse_quantity<Length>("612 mm")`.
/// @throws ParseError with the position, and the units that would have been right.
template <class Quantity>
[[nodiscard]] Quantity parse_quantity(std::string_view text) {
  return try_parse_quantity<Quantity>(text).value();
}
#endif

namespace detail {

/// As many digits as somebody may write by hand.
inline constexpr int plain_digits = 9;

/// The number of a quantity in one unit, in at most `precision` digits; empty where that would not read back as the
/// same value.
[[nodiscard]] inline std::string exact_number(double si, const UnitName& unit, int precision) {
  std::string text = to_text(si / unit.unit, precision);
  double back = 0.0;
  read_decimal(text.data(), text.data() + text.size(), back);
  return back * unit.unit == si ? text : std::string();
}

/// The unit in which a quantity was plainly written (1.5 inch): of those other than the first, the one with the
/// shortest number; null where none has an exact one that somebody would write by hand.
[[nodiscard]] inline const UnitName* plainly_written(double si, std::span<const UnitName> units) {
  const UnitName* shortest = nullptr;
  std::size_t size = 0;
  for (const UnitName& unit : units) {
    const std::string number = exact_number(si, unit, plain_digits);
    if (number.empty() || number.find('e') != std::string::npos) continue;
    if (shortest && number.size() >= size) continue;
    shortest = &unit;
    size = number.size();
  }
  return shortest;
}

[[nodiscard]] inline std::string si_to_text(double si, std::span<const UnitName> units) {
  const auto text = [](std::string number, const UnitName& unit) { return number.append(" ").append(unit.name); };
  if (std::string number = exact_number(si, units[0], plain_digits); !number.empty()) return text(number, units[0]);
  if (const UnitName* unit = plainly_written(si, units)) return text(exact_number(si, *unit, plain_digits), *unit);
  for (const int precision : {15, 16, 17})
    if (std::string number = exact_number(si, units[0], precision); !number.empty()) return text(number, units[0]);
  // Every list of units holds the SI unit.
  const auto si_unit = std::find_if(units.begin(), units.end(), [](const UnitName& one) { return one.unit == 1.0; });
  return text(exact_number(si, *si_unit, 17), *si_unit);
}

}  // namespace detail

/// The quantity as text that reads back as the very same value: in its first unit, or in the unit it was plainly
/// written in (1.5 inch), with the fewest digits; in its SI unit where no number of the first unit is exact.
template <class Quantity>
[[nodiscard]] std::string to_text(Quantity quantity) {
  return detail::si_to_text(quantity.value(), QuantityNames<Quantity>::units);
}

}  // namespace layshaft
