// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/error.hpp>

#include <cassert>
#include <utility>
#include <variant>  // a value or an error, never both

/// @file
/// A value, or the error that stands in its place.
namespace layshaft {

/// What the entries that do not throw return: `T::make(…)` for types, `try_…(…)` for functions.
template <class T>
class [[nodiscard]] Result {
 public:
  using value_type = T;

  Result(T value) : state_(std::move(value)) {}      // NOLINT: a value is a good result
  Result(Error error) : state_(std::move(error)) {}  // NOLINT: an error is a bad one

  [[nodiscard]] bool has_value() const noexcept { return state_.index() == 0; }
  [[nodiscard]] explicit operator bool() const noexcept { return has_value(); }

  /// The value; to ask for it where there is an error is a mistake of the program, asserted in debug builds.
  [[nodiscard]] const T& operator*() const noexcept {
    assert(has_value());
    return *std::get_if<0>(&state_);
  }
  [[nodiscard]] const T* operator->() const noexcept { return &**this; }
  /// The error; to ask for it where there is a value is a mistake of the program, asserted in debug builds.
  [[nodiscard]] const Error& error() const noexcept {
    assert(!has_value());
    return *std::get_if<1>(&state_);
  }

#if LAYSHAFT_EXCEPTIONS
  /// The value.
  /// @throws Error, ParseError or RangeError where there is none.
  [[nodiscard]] T value() && {
    if (!has_value()) raise(error());
    return std::move(*std::get_if<0>(&state_));
  }
#endif

 private:
  std::variant<T, Error> state_;
};

}  // namespace layshaft
