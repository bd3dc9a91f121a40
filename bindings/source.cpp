// SPDX-License-Identifier: MIT
#include "value.hpp"

#include <layshaft/core/source.hpp>
#include <layshaft/formulas.hpp>
#include <layshaft/show/formula_text.hpp>

namespace layshaft::python {
namespace {

// What does not depend on the formula's types stands ahead of them, and is compiled once, not once a formula.
template <class T>
T from_si(double number, std::string_view formula) {
  if constexpr (std::is_same_v<T, double>) {
    return number;
  } else if constexpr (requires { T::make(0); }) {
    const auto count = T::make(number == static_cast<int>(number) ? static_cast<int>(number) : 0);
    if (!count) raise(count.error().in(formula));
    return *count;
  } else {
    return T::from_value(number);
  }
}
[[noreturn]] void refuse_count(const Formula& formula, std::size_t given, std::size_t expected) {
  raise(Error::range("number of arguments", std::to_string(given), std::to_string(expected)).in(formula.name));
}
[[noreturn]] void refuse_range(const Formula& formula) {
  raise(Error::value(std::string(formula.name).append(" asks for ").append(formula.range)));
}

/// A formula's function on plain numbers in SI: what its text can be checked with, and what it says of a number.
template <class Formula, class Type = typename Formula::type>
struct InSi;
template <class Formula, class Result, class... Parameters>
struct InSi<Formula, Result(Parameters...)> {
  template <std::size_t... I>
  static double of(const std::vector<double>& numbers, std::index_sequence<I...>) {
    if (numbers.size() != sizeof...(Parameters)) refuse_count(Formula::about, numbers.size(), sizeof...(Parameters));
    const std::tuple<Parameters...> values{from_si<Parameters>(numbers[I], Formula::about.name)...};
    if (!Formula::in_range(std::get<I>(values)...)) refuse_range(Formula::about);
    const Result result = Formula::of(std::get<I>(values)...);
    if constexpr (std::is_same_v<Result, double>)
      return result;
    else
      return result.value();
  }
  static double evaluate(const std::vector<double>& numbers) {
    return of(numbers, std::index_sequence_for<Parameters...>());
  }
};

template <class... All>
double evaluate(FormulaList<All...>, const Formula& formula, const std::vector<double>& numbers) {
  double result = 0.0;
  const bool found =
      ((&All::about == &formula || All::about.name == formula.name ? (result = InSi<All>::evaluate(numbers), true)
                                                                   : false) ||
       ...);
  if (!found) raise(Error::value("no such formula: " + std::string(formula.name)));
  return result;
}

}  // namespace

void register_source(py::module_& module) {
  py::class_<Source> source(module, "Source", py::is_final(),
                            "Where a figure comes from: .document, and .certainty, how sure it is.");
  def_property(source, "document", "The document, with its clause or table.",
               [](const Source& s) { return s.document; });
  def_property(source, "certainty", "'published', 'secondary', 'derived', 'from memory' and so on.",
               [](const Source& s) { return s.certainty; });
  source.def("__eq__", [](const Source& s, const py::object& other) {
    return py::isinstance<Source>(other) && s == py::cast<const Source&>(other);
  });
  source.def("__hash__", [](const Source& s) { return py::hash(py::make_tuple(give(s.document), give(s.certainty))); });
  source.def("__repr__", [](const Source& s) {
    return "<Source: " + std::string(s.document) + " (" + std::string(to_string(s.certainty)) + ")>";
  });

  py::class_<Formula> formula(
      module, "Formula", py::is_final(),
      "What a formula of the library says of itself, in the words of the code that computes it.");
  def_property(formula, "name", "The function's name.", [](const Formula& f) { return f.name; });
  def_property(formula, "parameters", "The parameters with their types.",
               [](const Formula& f) { return f.parameters; });
  def_property(formula, "range", "The condition under which it holds.", [](const Formula& f) { return f.range; });
  def_property(formula, "body", "The expression.", [](const Formula& f) { return f.body; });
  def_property(formula, "source", "Where it comes from.", [](const Formula& f) { return f.source; });
  formula.def(
      "evaluate",
      [](const Formula& f, const py::args& numbers) {
        return evaluate(Formulas(), f, want<std::vector<double>>(numbers, "numbers"));
      },
      "evaluate(*numbers)\n--\n\nThe formula's value for plain numbers in SI units, in the order of its parameters; "
      "the result is in SI too. Raises Error outside its range.");
  def(formula, "to_text()", "The formula in the symbols of its subject: 'v = n * U / (1 rev * i)'.",
      [](const Formula& f, const Arguments&) { return to_text(f); });
  def(formula, "to_latex()", "The formula as TeX, for mathematics mode.",
      [](const Formula& f, const Arguments&) { return to_tex(f); });
  def(formula, "to_mathml()", "The formula as a MathML element.",
      [](const Formula& f, const Arguments&) { return to_mathml(f); });
  def(formula, "_repr_latex_()", "For notebooks.",
      [](const Formula& f, const Arguments&) { return "$" + to_tex(f) + "$"; });
  // Each formula of the library has a name of its own.
  formula.def("__eq__", [](const Formula& f, const py::object& other) {
    return py::isinstance<Formula>(other) && f.name == py::cast<const Formula&>(other).name;
  });
  formula.def("__hash__", [](const Formula& f) { return py::hash(give(f.name)); });
  formula.def("__repr__",
              [](const Formula& f) { return "<Formula: " + std::string(f.name) + " = " + std::string(f.body) + ">"; });
  def(module, "formulas()",
      "Every formula of the library.\n\n"
      ">>> speed = {formula.name: formula for formula in ls.formulas()}[\"road_speed\"]\n"
      ">>> speed.to_text(), speed.source.certainty\n"
      "('v = n * U / (1 rev * i)', 'derived')",
      [](const Arguments&) {
        py::list list;
        for (const Formula* one : all_formulas) list.append(py::cast(*one));
        return py::object(py::tuple(list));
      });
}

}  // namespace layshaft::python
