// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/glyph.hpp>
#include <layshaft/core/result.hpp>
#include <layshaft/core/source.hpp>
#include <layshaft/core/units.hpp>

#include <cstddef>
#include <iterator>  // std::size of the table
#include <string_view>

/// @file
/// The speed symbol of a service description: the speed at which a tyre carries the load of its load index.
namespace layshaft {

/// A speed symbol, the speed it stands for, and how sure that is. Two are equal when their names are.
/// The name points at static text. The order of the speeds is not the alphabet's: H stands between U and V.
struct SpeedSymbol {
  std::string_view name;
  Speed speed;
  Certainty certainty;

  /// Where its speed comes from.
  [[nodiscard]] constexpr Source source() const noexcept { return {"speed symbols of UN tyre regulations", certainty}; }

  friend constexpr bool operator==(const SpeedSymbol& a, const SpeedSymbol& b) noexcept { return a.name == b.name; }
};

namespace detail::speed_symbol_table {
using enum Certainty;

// Source: speed symbols of tyre service descriptions as UN tyre regulations list them; the certainty of each row stands
// in it. The size code ZR and the symbols in brackets name no speed of their own and are no rows.
// clang-format off
inline constexpr SpeedSymbol rows[] = {
    {"A1", 5_kmh, from_memory},
    {"A2", 10_kmh, from_memory},
    {"A3", 15_kmh, from_memory},
    {"A4", 20_kmh, from_memory},
    {"A5", 25_kmh, from_memory},
    {"A6", 30_kmh, from_memory},
    {"A7", 35_kmh, from_memory},
    {"A8", 40_kmh, published},
    {"B", 50_kmh, published},
    {"C", 60_kmh, from_memory},
    {"D", 65_kmh, from_memory},
    {"E", 70_kmh, from_memory},
    {"F", 80_kmh, published},
    {"G", 90_kmh, from_memory},
    {"J", 100_kmh, published},
    {"K", 110_kmh, secondary},
    {"L", 120_kmh, published},
    {"M", 130_kmh, published},
    {"N", 140_kmh, published},
    {"P", 150_kmh, published},
    {"Q", 160_kmh, published},
    {"R", 170_kmh, published},
    {"S", 180_kmh, published},
    {"T", 190_kmh, published},
    {"U", 200_kmh, published},
    {"H", 210_kmh, published},
    {"V", 240_kmh, published},
    {"W", 270_kmh, published},
    {"Y", 300_kmh, published},
};
// clang-format on
}  // namespace detail::speed_symbol_table

namespace detail {
inline constexpr std::string_view speed_symbols_in_words = "a speed symbol: A1 to A8, B to H, J to N, P to W, or Y";
}  // namespace detail

/// The speed symbols known, from the slowest to the fastest.
inline constexpr const auto& speed_symbols = detail::speed_symbol_table::rows;

namespace detail {
/// The place of a symbol in its table, -1 where there is none. By characters: a call to memcmp for each row takes
/// longer than reading.
[[nodiscard]] constexpr int row_of_speed_symbol(std::string_view name) noexcept {
  if (name.empty()) return -1;
  for (int row = 0; row < static_cast<int>(std::size(speed_symbols)); ++row) {
    const std::string_view here = speed_symbols[row].name;
    if (here[0] == name[0] && here.size() == name.size() && here.back() == name.back()) return row;
  }
  return -1;
}

/// Reads one symbol, in either case, and gives its place in the table; where there is none it gives -1, and the cursor
/// stays at the character that is not one.
[[nodiscard]] constexpr int read_speed_symbol(Cursor& cursor) noexcept {
  if (!cursor.glyph().is_letter()) return -1;
  char name[2] = {cursor.character(), '\0'};
  std::size_t letters = 1;
  if (name[0] == 'A') {  // the slowest symbols carry a digit
    cursor.advance();
    name[letters++] = cursor.character();
  }
  const int row = row_of_speed_symbol({name, letters});
  if (row >= 0) cursor.advance();
  return row;
}
}  // namespace detail

/// The row of a symbol written exactly as in the table, or null where there is none.
[[nodiscard]] constexpr const SpeedSymbol* find_speed_symbol(std::string_view name) noexcept {
  const int row = detail::row_of_speed_symbol(name);
  return row < 0 ? nullptr : &speed_symbols[row];
}

/// The speed symbol a text names, in either case, spaces around it allowed; otherwise a ParseError.
[[nodiscard]] inline Result<SpeedSymbol> try_speed_symbol(std::string_view text) {
  detail::Cursor cursor(text);
  cursor.skip_spaces();
  const int row = detail::read_speed_symbol(cursor);
  cursor.skip_spaces();
  if (row >= 0 && cursor.at_end()) return speed_symbols[row];
  return Error::parse(text, cursor.position(), row >= 0 ? "text after the speed symbol" : "no speed symbol",
                      detail::speed_symbols_in_words);
}

/// The speed a symbol stands for; otherwise a ParseError.
[[nodiscard]] inline Result<Speed> try_rated_speed(std::string_view symbol) {
  const Result<SpeedSymbol> found = try_speed_symbol(symbol);
  if (!found) return found.error();
  return found->speed;
}

#if LAYSHAFT_EXCEPTIONS
/// The speed symbol a text names.
/// @throws ParseError where it names none.
[[nodiscard]] inline SpeedSymbol speed_symbol(std::string_view text) { return try_speed_symbol(text).value(); }

/// The speed a symbol stands for.
/// @throws ParseError where there is no such symbol.
[[nodiscard]] inline Speed rated_speed(std::string_view symbol) { return try_rated_speed(symbol).value(); }
#endif

}  // namespace layshaft
