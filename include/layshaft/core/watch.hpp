// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/formula.hpp>
#include <layshaft/core/units.hpp>

#include <string_view>
#include <type_traits>  // is_constant_evaluated

/// @file
/// Calculations that can be watched. A calculation of several steps is a template on who watches it: `Unwatched`, and
/// it is plain arithmetic; a recorder (core/recorder.hpp, opt-in), and every step leaves a record. It takes its watch
/// by value, touches values only through the watch's functions, and so runs the same code in either case.
///
///     template <class Watch>
///     constexpr auto top_speed(Watch watch, AngularSpeed limit, double ratio, Length circumference) {
///       return watch.step(formula::road_speed{}, watch.given("engine_speed", limit),
///                         watch.given("overall_ratio", ratio), watch.given("circumference", circumference));
///     }
namespace layshaft {

/// What part of a calculation a value belongs to, where the same is worked out more than once.
enum class Scope {
  none,
  base,       ///< of a comparison
  trial,      ///< of a comparison
  front_end,  ///< with the axle at the front end of its adjuster
  rear_end,   ///< at the rear end
};

/// What a value in a calculation is called: a word of the glossary, and a number where there are several: gear 3.
struct ValueName {
  std::string_view word;
  int index = 0;

  constexpr ValueName(const char* word_of_glossary, int one_of_several = 0) noexcept
      : word(word_of_glossary), index(one_of_several) {}
  constexpr ValueName(std::string_view word_of_glossary, int one_of_several = 0) noexcept
      : word(word_of_glossary), index(one_of_several) {}
  friend constexpr bool operator==(const ValueName&, const ValueName&) = default;
};

namespace detail {

/// The value, kept apart from what is computed around it. Where the processor multiplies and adds in one rounding, a
/// compiler may fuse the end of one formula with the beginning of the next, and does so or not as the neighbourhood
/// suits it; a watched calculation, with other neighbours, would then differ in the last bit. This tells it that the
/// value could have become any other. It costs no instruction, and is nothing at all where there is nothing to fuse.
[[nodiscard]] constexpr double apart(double value) noexcept {
#if defined(__GNUC__) && (defined(__FMA__) || defined(__FMA4__))
  if (!std::is_constant_evaluated()) asm("" : "+x"(value));
#elif defined(__GNUC__) && defined(__aarch64__)
  if (!std::is_constant_evaluated()) asm("" : "+w"(value));
#elif defined(__GNUC__) && defined(__FP_FAST_FMA)
  if (!std::is_constant_evaluated()) asm("" : "+m"(value));
#endif
  return value;
}
template <class Unit>
[[nodiscard]] constexpr boost::units::quantity<Unit> apart(boost::units::quantity<Unit> value) noexcept {
  return boost::units::quantity<Unit>::from_value(apart(value.value()));
}
/// Whole counts are rounded to nothing.
template <class Kind>
[[nodiscard]] constexpr Kind apart(Kind count) noexcept {
  return count;
}

}  // namespace detail

/// Nobody watches: a value is itself, a step is its formula.
struct Unwatched {
  /// The same watch for one part of the calculation.
  [[nodiscard]] constexpr Unwatched on(Scope) const noexcept { return {}; }

  /// A value that came in from outside.
  template <class Value>
  [[nodiscard]] constexpr Value given(ValueName, Value value, const Source& = sources::stated) const noexcept {
    return detail::apart(value);
  }
  /// A value out of a table: which table or rule, and which row of it.
  template <class Value>
  [[nodiscard]] constexpr Value looked_up(ValueName, Value value, std::string_view /*row*/,
                                          const Source&) const noexcept {
    return detail::apart(value);
  }
  /// The result of a formula, under the formula's own name.
  template <class Formula, class... Values>
  requires requires { Formula::about; }
  [[nodiscard]] constexpr auto step(Formula, const Values&... values) const {
    return detail::apart(Formula::of(values...));
  }
  /// The result of a formula, under another name: the front sprocket's pitch diameter.
  template <class Formula, class... Values>
  [[nodiscard]] constexpr auto step(ValueName, Formula, const Values&... values) const {
    return detail::apart(Formula::of(values...));
  }
  /// A value found by a solver: that at which `left_side(value)`, a calculation for the same watch, comes to the
  /// target.
  template <class Value, class Target, class LeftSide>
  [[nodiscard]] constexpr Value solved(ValueName, Value value, const Target&, LeftSide) const noexcept {
    return detail::apart(value);
  }
  /// A value chosen by a rule; `others()` lists what else was possible.
  template <class Value, class Others, class... Values>
  [[nodiscard]] constexpr Value chosen(ValueName, Value value, std::string_view /*rule*/, Others,
                                       const Values&...) const noexcept {
    return value;
  }
  /// The plain value, for a solver that takes one.
  template <class Value>
  [[nodiscard]] static constexpr Value plain(Value value) noexcept {
    return value;
  }
};

}  // namespace layshaft
