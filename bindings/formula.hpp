// SPDX-License-Identifier: MIT
#pragma once

#include "function.hpp"

#include <layshaft/core/checks.hpp>

#include <array>
#include <utility>

/// @file
/// Binds a formula by what it knows of itself: its parameters' names and types, its range and its source.
namespace layshaft::python {

namespace detail {

/// The names in "(AngularSpeed engine_speed, double overall_ratio)".
[[nodiscard]] std::vector<std::string> parameter_names(std::string_view parameters);
/// Whether the range holds the clause `positive(name)`.
[[nodiscard]] bool asks_positive(std::string_view range, std::string_view name);

inline std::string in_words(double number) { return layshaft::detail::in_words(number); }
template <class Unit>
std::string in_words(boost::units::quantity<Unit> quantity) {
  return layshaft::detail::in_words(quantity);
}
template <class CountKind>
std::string in_words(Count<CountKind> count) {
  return std::to_string(count.count());
}
template <class T>
bool is_positive(const T& value) {
  return positive(value);
}
template <class CountKind>
bool is_positive(Count<CountKind>) {
  return true;
}

template <class Formula, class Type = typename Formula::type>
struct BoundFormula;

template <class Formula, class Result, class... Parameters>
struct BoundFormula<Formula, Result(Parameters...)> {
  template <std::size_t... I>
  static void bind(py::module_& module, const char* doc, std::index_sequence<I...>) {
    const auto names = parameter_names(Formula::about.parameters);
    std::string signature(Formula::about.name);
    for (std::size_t i = 0; i < names.size(); ++i) signature.append(i == 0 ? "(" : ", ").append(names[i]);
    signature += ")";
    std::string text(doc);
    text.append("\n\nSource: ").append(Formula::about.source.document);
    text.append(" (").append(to_string(Formula::about.source.certainty)).append(").");
    def(module, signature, text, [names](const Arguments& given) {
      const std::tuple<std::remove_cvref_t<Parameters>...> values{given.template want<Parameters>(names[I])...};
      if (!Formula::in_range(std::get<I>(values)...)) {
        (refuse(names[I], std::get<I>(values)), ...);
        raise(Error::value(std::string(Formula::about.name)
                               .append(" does not hold for these arguments; it asks for ")
                               .append(Formula::about.range)));
      }
      const auto result = Formula::of(std::get<I>(values)...);
      if (!layshaft::is_finite(result))
        raise(Error::range(Formula::about.name, in_words(result), "arguments for which it is finite"));
      return result;
    });
  }
  template <class T>
  static void refuse(const std::string& name, const T& value) {
    if (asks_positive(Formula::about.range, name) && !is_positive(value))
      raise(Error::range(name, in_words(value), "a value above 0"));
  }
};

}  // namespace detail

/// Binds a formula of numbers, quantities and counts. The arguments pass the door, then the formula's own range.
template <class Formula>
void def_formula(py::module_& module, const char* doc) {
  [&]<class Result, class... Parameters>(Result (*)(Parameters...)) {
    detail::BoundFormula<Formula>::bind(module, doc, std::index_sequence_for<Parameters...>());
  }(static_cast<typename Formula::type*>(nullptr));
}

}  // namespace layshaft::python
