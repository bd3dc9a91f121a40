// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/counts.hpp>
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

// Where the processor multiplies and adds in one rounding, a compiler may fuse a product with a sum, and does so or not
// as the neighbourhood suits it: the end of one formula with the beginning of the next, or not even within one formula,
// where a product serves two of them. A watched calculation has other neighbours, and would then differ in the last
// bit. So each formula's values and its result are kept apart from what stands around them, by telling the compiler
// that they could have become any other. That costs no instruction, and is nothing at all where nothing is fused.
#if defined(__GNUC__) && (defined(__FMA__) || defined(__FMA4__))
#define LAYSHAFT_NUMBER_PLACE "x"
#elif defined(__GNUC__) && defined(__aarch64__)
#define LAYSHAFT_NUMBER_PLACE "w"
#elif defined(__GNUC__) && defined(__FP_FAST_FMA)
#define LAYSHAFT_NUMBER_PLACE "m"
#endif

/// The value, kept apart from what is computed around it.
[[nodiscard]] constexpr double apart(double value) noexcept {
#ifdef LAYSHAFT_NUMBER_PLACE
  if (!std::is_constant_evaluated()) asm("" : "+" LAYSHAFT_NUMBER_PLACE(value));
#endif
  return value;
}
template <class Unit>
[[nodiscard]] constexpr boost::units::quantity<Unit> apart(boost::units::quantity<Unit> value) noexcept {
  return boost::units::quantity<Unit>::from_value(apart(value.value()));
}
/// Whole counts are rounded to nothing.
template <class Kind>
[[nodiscard]] constexpr Count<Kind> apart(Count<Kind> count) noexcept {
  return count;
}

#ifdef LAYSHAFT_NUMBER_PLACE
// Counts stand aside: no product of counts alone is ever summed.
/// Lets `all` depend on one more value.
inline void tie(double& all, double value) noexcept {
  asm("" : "+" LAYSHAFT_NUMBER_PLACE(all) : LAYSHAFT_NUMBER_PLACE(value));
}
template <class Unit>
void tie(double& all, boost::units::quantity<Unit> value) noexcept {
  tie(all, value.value());
}
template <class Kind>
void tie(double&, Count<Kind>) noexcept {}
/// The value, as if it depended on all others.
[[nodiscard]] inline double tied(double value, double all) noexcept {
  asm("" : "+" LAYSHAFT_NUMBER_PLACE(value) : LAYSHAFT_NUMBER_PLACE(all));
  return value;
}
template <class Unit>
[[nodiscard]] boost::units::quantity<Unit> tied(boost::units::quantity<Unit> value, double all) noexcept {
  return boost::units::quantity<Unit>::from_value(tied(value.value(), all));
}
template <class Kind>
[[nodiscard]] Count<Kind> tied(Count<Kind> count, double) noexcept {
  return count;
}
#endif

/// The result of a formula, rounded as if it stood alone. Its values are tied to each other, so that what it has in
/// common with a formula of other values is not worked out once for both.
template <class Formula, class... Values>
[[nodiscard]] constexpr auto result_of(const Values&... values) {
#ifdef LAYSHAFT_NUMBER_PLACE
  if (!std::is_constant_evaluated()) {
    double all;
    asm("" : "=" LAYSHAFT_NUMBER_PLACE(all));  // whatever stands there
    (tie(all, values), ...);
    return apart(Formula::of(tied(values, all)...));
  }
#endif
  return apart(Formula::of(values...));
}

}  // namespace detail

#undef LAYSHAFT_NUMBER_PLACE

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
    return detail::result_of<Formula>(values...);
  }
  /// The result of a formula, under another name: the front sprocket's pitch diameter.
  template <class Formula, class... Values>
  [[nodiscard]] constexpr auto step(ValueName, Formula, const Values&... values) const {
    return detail::result_of<Formula>(values...);
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
  /// A value that is kept already, and the calculation for the same watch that gives it again.
  template <class Value, class Calculation>
  [[nodiscard]] constexpr Value known(Value value, const Calculation&) const noexcept {
    return detail::apart(value);
  }
  /// The plain value, for a solver that takes one.
  template <class Value>
  [[nodiscard]] static constexpr Value plain(Value value) noexcept {
    return value;
  }
};

}  // namespace layshaft
