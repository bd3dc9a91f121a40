// SPDX-License-Identifier: MIT
#pragma once

#include <charconv>
#include <version>  // of the standard library

#if defined(_LIBCPP_VERSION) && _LIBCPP_VERSION < 200000
#define LAYSHAFT_FROM_CHARS_LACKS_DOUBLE
#include <layshaft/core/decimal_by_strtod.hpp>
#endif

/// @file
/// Decimal numbers out of text, whatever the locale, also where the standard library has no std::from_chars for double.
namespace layshaft::detail {

/// As std::from_chars: the nearest double of the longest start that is a number.
inline std::from_chars_result read_decimal(const char* first, const char* last, double& number) {
#if defined(LAYSHAFT_FROM_CHARS_LACKS_DOUBLE)
  return decimal_by_strtod(first, last, number);
#else
  return std::from_chars(first, last, number);
#endif
}

}  // namespace layshaft::detail

#undef LAYSHAFT_FROM_CHARS_LACKS_DOUBLE
