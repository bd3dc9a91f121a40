// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/result.hpp>
#include <layshaft/core/source.hpp>
#include <layshaft/core/units.hpp>

#include <charconv>  // writes a number without a locale
#include <cstddef>
#include <iterator>  // std::size of the table
#include <string>
#include <string_view>

/// @file
/// The rim code of a tyre marking, roughly the rim's diameter in inches, and the nominal diameter it stands for.
namespace layshaft {

/// One row: a rim code, as a number and as it is marked, the nominal rim diameter, and how sure that is.
struct RimCode {
  double code;
  std::string_view name;
  Length diameter;
  Certainty certainty;
};

/// Where the table below comes from.
inline constexpr Source rim_diameter_source{"nominal rim diameters of ISO 5751 and its sister standards",
                                            Certainty::from_memory};

namespace detail::rim_code_table {
using enum Certainty;

// Source: nominal rim diameters of ISO 5751 and its sister standards, from memory. Each is 25.4 mm times the code,
// rounded half up to a whole millimetre.
// clang-format off
inline constexpr RimCode rows[] = {
    {4.0, "4", 102_mm, from_memory},
    {5.0, "5", 127_mm, from_memory},
    {6.0, "6", 152_mm, from_memory},
    {7.0, "7", 178_mm, from_memory},
    {8.0, "8", 203_mm, from_memory},
    {9.0, "9", 229_mm, from_memory},
    {10.0, "10", 254_mm, from_memory},
    {11.0, "11", 279_mm, from_memory},
    {12.0, "12", 305_mm, from_memory},
    {13.0, "13", 330_mm, from_memory},
    {14.0, "14", 356_mm, from_memory},
    {14.5, "14.5", 368_mm, from_memory},
    {15.0, "15", 381_mm, from_memory},
    {16.0, "16", 406_mm, from_memory},
    {16.5, "16.5", 419_mm, from_memory},
    {17.0, "17", 432_mm, from_memory},
    {17.5, "17.5", 445_mm, from_memory},
    {18.0, "18", 457_mm, from_memory},
    {19.0, "19", 483_mm, from_memory},
    {19.5, "19.5", 495_mm, from_memory},
    {20.0, "20", 508_mm, from_memory},
    {20.5, "20.5", 521_mm, from_memory},
    {21.0, "21", 533_mm, from_memory},
    {22.0, "22", 559_mm, from_memory},
    {22.5, "22.5", 572_mm, from_memory},
    {23.0, "23", 584_mm, from_memory},
    {24.0, "24", 610_mm, from_memory},
    {24.5, "24.5", 622_mm, from_memory},
    {25.0, "25", 635_mm, from_memory},
    {26.0, "26", 660_mm, from_memory},
    {28.0, "28", 711_mm, from_memory},
    {30.0, "30", 762_mm, from_memory},
};
// clang-format on
}  // namespace detail::rim_code_table

/// The rim codes in use, in rising order.
inline constexpr const auto& rim_codes = detail::rim_code_table::rows;

namespace detail {
/// The place in the table of each number of half inches, -1 where there is none.
struct RimCodeRows {
  signed char rows[64] = {};
  constexpr RimCodeRows() noexcept {
    for (signed char& row : rows) row = -1;
    for (std::size_t row = 0; row < std::size(rim_codes); ++row)
      rows[static_cast<std::size_t>(2.0 * rim_codes[row].code)] = static_cast<signed char>(row);
  }
};
inline constexpr RimCodeRows rim_code_rows;

/// The place of a rim code in its table, -1 where there is none.
[[nodiscard]] constexpr int row_of_rim_code(double code) noexcept {
  if (!(code >= 0.0 && code < std::size(rim_code_rows.rows) / 2)) return -1;
  const int row = rim_code_rows.rows[static_cast<std::size_t>(2.0 * code)];
  return row >= 0 && rim_codes[row].code == code ? row : -1;
}
}  // namespace detail

/// The row of a rim code, or null where there is none.
[[nodiscard]] constexpr const RimCode* find_rim_code(double code) noexcept {
  const int row = detail::row_of_rim_code(code);
  return row < 0 ? nullptr : &rim_codes[row];
}

namespace detail {
/// The names that stand next to something a table does not hold; empty beyond either end of the table.
struct Neighbours {
  std::string_view below;
  std::string_view above;

  /// A phrase of what was expected, with the neighbours put behind it.
  [[nodiscard]] std::string behind(std::string_view expected) const {
    std::string words(expected);
    if (below.empty() && above.empty()) return words;
    const bool both = !below.empty() && !above.empty() && below != above;
    words.append(both ? "; the nearest are " : "; the nearest is ").append(below.empty() ? above : below);
    if (both) words.append(" and ").append(above);
    return words;
  }
};

[[nodiscard]] constexpr Neighbours rim_codes_next_to(double code) noexcept {
  Neighbours next;
  for (const RimCode& row : rim_codes) {
    if (row.code <= code) next.below = row.name;
    if (row.code >= code && next.above.empty()) next.above = row.name;
  }
  return next;
}
}  // namespace detail

/// The nominal diameter of a rim of this code, or a RangeError that names the nearest codes in use.
[[nodiscard]] inline Result<Length> try_rim_diameter(double code) {
  if (const int row = detail::row_of_rim_code(code); row >= 0) return rim_codes[row].diameter;
  char digits[32];
  const std::to_chars_result written = std::to_chars(digits, digits + sizeof digits, code);
  return Error::range("rim code", {digits, static_cast<std::size_t>(written.ptr - digits)},
                      detail::rim_codes_next_to(code).behind("a rim code in use"));
}

#if LAYSHAFT_EXCEPTIONS
/// The nominal diameter of a rim of this code.
/// @throws RangeError where the code is not in use.
[[nodiscard]] constexpr Length rim_diameter(double code) {
  if (const int row = detail::row_of_rim_code(code); row >= 0) return rim_codes[row].diameter;
  raise(try_rim_diameter(code).error());
}
#endif

}  // namespace layshaft
