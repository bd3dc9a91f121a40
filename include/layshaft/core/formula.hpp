// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/source.hpp>

#include <cassert>
#include <string_view>

/// @file
/// The form in which every formula of the library is written, once.
namespace layshaft {

/// What a formula says of itself. The texts are those of the code that computes it: the parameter list with its
/// types, the range of its parameters, and the expression, from which later readers take symbols and worked steps.
struct Formula {
  std::string_view name;
  std::string_view parameters;
  std::string_view range;
  std::string_view body;
  Source source;
};

}  // namespace layshaft

/// Writes a formula: the function `NAME`, and beside it `formula::NAME`, which knows its text.
///
/// * SPEC is `constexpr`, or `inline` where the body calls libm, which is not constexpr in C++20.
/// * PARAMETERS is the parenthesised list; each parameter's name is a word of the glossary.
/// * RANGE is the condition under which the formula holds. It is asserted in debug builds, and asked first wherever
///   numbers come in from outside (`formula::NAME::in_range`): there it becomes an error, or NaN in an array.
/// * SOURCE is a Source.
/// * The body is one expression of parameters, constants, `+ - * /`, calls and numbers, so that it can be read back.
#define LAYSHAFT_FORMULA(SPEC, RESULT, NAME, PARAMETERS, RANGE, SOURCE, ...)                                 \
  namespace detail {                                                                                         \
  [[nodiscard]] constexpr bool NAME##_in_range PARAMETERS {                                                  \
    static_cast<void>(sizeof(__VA_ARGS__)); /* names every parameter, so that none counts as unused */       \
    return RANGE;                                                                                            \
  }                                                                                                          \
  }                                                                                                          \
  [[nodiscard]] SPEC RESULT NAME PARAMETERS {                                                                \
    assert((RANGE));                                                                                         \
    return __VA_ARGS__;                                                                                      \
  }                                                                                                          \
  namespace formula {                                                                                        \
  struct NAME {                                                                                              \
    using type = RESULT PARAMETERS;                                                                          \
    static constexpr ::layshaft::Formula about{#NAME, #PARAMETERS, #RANGE, #__VA_ARGS__, SOURCE};            \
    [[nodiscard]] static SPEC RESULT of(const auto&... arguments) { return ::layshaft::NAME(arguments...); } \
    [[nodiscard]] static constexpr bool in_range(const auto&... arguments) {                                 \
      return ::layshaft::detail::NAME##_in_range(arguments...);                                              \
    }                                                                                                        \
  };                                                                                                         \
  }
