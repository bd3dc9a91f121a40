// SPDX-License-Identifier: MIT
#pragma once

#include "function.hpp"

#include <layshaft/core/checks.hpp>

#include <array>
#include <span>
#include <utility>

/// @file
/// Formulas by what they know of themselves: their parameters' names and types, their range and their source. A formula
/// is seen over plain numbers in SI, so that all but its own few instructions is compiled once for all of them.
namespace layshaft::python {

namespace detail {

/// What a formula's parameter or result is, of its type only.
struct FormulaType {
  double (*want)(py::handle object, std::string_view argument);  ///< through the door
  double (*checked)(double number, std::string_view formula);    ///< a plain number; raises where it cannot be one
  bool (*positive)(double number);
  std::string (*in_words)(double number);
  py::object (*give)(double number);
};

template <class T>
struct Plain {
  static T of(double number) { return T::from_value(number); }
  static double number(const T& value) { return value.value(); }
  static bool positive(double number) { return layshaft::positive(of(number)); }
  static double checked(double number, std::string_view) { return number; }
  static std::string in_words(double number) { return layshaft::detail::in_words(of(number)); }
};
template <>
struct Plain<double> {
  static double of(double number) { return number; }
  static double number(double value) { return value; }
  static bool positive(double number) { return layshaft::positive(number); }
  static double checked(double number, std::string_view) { return number; }
  static std::string in_words(double number) { return layshaft::detail::in_words(number); }
};
template <class CountKind>
struct Plain<Count<CountKind>> {
  static Count<CountKind> of(double number) { return *Count<CountKind>::make(static_cast<int>(number)); }
  static double number(Count<CountKind> value) { return value.count(); }
  static bool positive(double) { return true; }
  static double checked(double number, std::string_view formula) {
    const auto count = Count<CountKind>::make(number == static_cast<int>(number) ? static_cast<int>(number) : 0);
    if (!count) raise(count.error().in(formula));
    return number;
  }
  static std::string in_words(double number) { return std::to_string(static_cast<int>(number)); }
};

template <class T>
inline constexpr FormulaType formula_type{
    [](py::handle object, std::string_view argument) { return Plain<T>::number(want<T>(object, argument)); },
    Plain<T>::checked, Plain<T>::positive, Plain<T>::in_words,
    [](double number) { return python::give(Plain<T>::of(number)); }};

/// A formula over plain numbers in SI, as many as it has parameters.
struct PlainFormula {
  const Formula* about;
  std::span<const FormulaType* const> parameters;
  const FormulaType* result;
  bool (*in_range)(const double* numbers);
  double (*of)(const double* numbers);
};

template <class Formula, class Type = typename Formula::type>
struct PlainFormulaOf;
template <class Formula, class Result, class... Parameters>
struct PlainFormulaOf<Formula, Result(Parameters...)> {
  static constexpr std::array<const FormulaType*, sizeof...(Parameters)> parameters{
      &formula_type<std::remove_cvref_t<Parameters>>...};
  template <std::size_t... I>
  static constexpr PlainFormula make(std::index_sequence<I...>) {
    return {&Formula::about, parameters, &formula_type<Result>,
            [](const double* numbers) {
              return Formula::in_range(Plain<std::remove_cvref_t<Parameters>>::of(numbers[I])...);
            },
            [](const double* numbers) {
              return Plain<Result>::number(Formula::of(Plain<std::remove_cvref_t<Parameters>>::of(numbers[I])...));
            }};
  }
};
template <class Formula>
inline constexpr PlainFormula plain_formula =
    PlainFormulaOf<Formula>::make(std::make_index_sequence<PlainFormulaOf<Formula>::parameters.size()>());

void bind_formula(py::module_& module, const PlainFormula& formula, std::string_view doc);

}  // namespace detail

/// Binds a formula of numbers, quantities and counts. The arguments pass the door, then the formula's own range.
template <class Formula>
void def_formula(py::module_& module, const char* doc) {
  detail::bind_formula(module, detail::plain_formula<Formula>, doc);
}

}  // namespace layshaft::python
