// SPDX-License-Identifier: MIT
#pragma once

#include <charconv>  // from_chars_result
#include <cstdlib>
#include <limits>
#include <string>
#include <string_view>
#include <system_error>  // errc

#include <locale.h>  // newlocale: C++'s own header does not promise it
#if defined(__APPLE__)
#include <xlocale.h>
#endif

/// @file
/// std::from_chars for double, by the C library's strtod in the "C" locale: libc++ has had none before its version 20.
namespace layshaft::detail {

/// As std::from_chars does without a format: an optional minus, digits with a point or not, an exponent; or inf, nan.
/// strtod alone would also read spaces, a plus, and hexadecimals.
[[nodiscard]] inline std::from_chars_result decimal_by_strtod(const char* first, const char* last, double& number) {
  const std::string_view text(first, static_cast<std::size_t>(last - first));
  std::size_t at = text.starts_with('-') ? 1 : 0;
  const auto digits = [&] {
    const std::size_t begin = at;
    while (at < text.size() && text[at] >= '0' && text[at] <= '9') ++at;
    return at - begin;
  };
  const auto word = [&](std::string_view lower) {
    if (text.size() - at < lower.size()) return false;
    for (std::size_t i = 0; i < lower.size(); ++i)
      if ((text[at + i] | 0x20) != lower[i]) return false;
    at += lower.size();
    return true;
  };
  const bool negative = at == 1;
  const auto no_finite = [&](double positive) {
    number = negative ? -positive : positive;
    return std::from_chars_result{first + at, std::errc()};
  };
  if (word("infinity") || word("inf")) return no_finite(std::numeric_limits<double>::infinity());
  if (word("nan")) return no_finite(std::numeric_limits<double>::quiet_NaN());
  std::size_t of_number = digits();
  if (at < text.size() && text[at] == '.') {
    ++at;
    of_number += digits();
  }
  if (of_number == 0) return {first, std::errc::invalid_argument};
  const std::size_t mantissa_end = at;
  if (at < text.size() && (text[at] | 0x20) == 'e') {
    ++at;
    if (at < text.size() && (text[at] == '+' || text[at] == '-')) ++at;
    if (digits() == 0) at = mantissa_end;  // the letter belongs to what follows
  }

  static const locale_t c_locale = newlocale(LC_ALL_MASK, "C", nullptr);
  const double read = strtod_l(std::string(text.substr(0, at)).c_str(), nullptr, c_locale);
  const bool is_zero = text.substr(0, mantissa_end).find_first_of("123456789") == std::string_view::npos;
  const bool fits = read - read == 0.0 && (read != 0.0 || is_zero);
  if (fits) number = read;
  return {first + at, fits ? std::errc() : std::errc::result_out_of_range};
}

}  // namespace layshaft::detail
