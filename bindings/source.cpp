// SPDX-License-Identifier: MIT
#include "formula.hpp"
#include "value.hpp"

#include <layshaft/accuracy.hpp>
#include <layshaft/core/source.hpp>
#include <layshaft/formulas.hpp>
#include <layshaft/show/formula_text.hpp>

#include <algorithm>
#include <array>
#include <cstdint>
#include <limits>

namespace layshaft::python {
namespace {

template <class... All>
constexpr auto plain_formulas(FormulaList<All...>) {
  return std::array{&detail::plain_formula<All>...};
}

/// A formula's value for plain numbers in SI: what its text can be checked with, and what it says of a number.
double evaluate(const Formula& formula, const std::vector<double>& numbers) {
  static constexpr auto all = plain_formulas(Formulas());
  const auto found = std::ranges::find_if(all, [&](const auto* one) { return one->about->name == formula.name; });
  if (found == all.end()) raise(Error::value("no such formula: " + std::string(formula.name)));
  const detail::PlainFormula& plain = **found;
  if (numbers.size() != plain.parameters.size())
    raise(Error::range("number of arguments", std::to_string(numbers.size()), std::to_string(plain.parameters.size()))
              .in(formula.name));
  for (std::size_t i = 0; i < numbers.size(); ++i) (void)plain.parameters[i]->checked(numbers[i], formula.name);
  if (!plain.in_range(numbers.data()))
    raise(Error::value(std::string(formula.name).append(" asks for ").append(formula.range)));
  return plain.of(numbers.data());
}

constexpr std::uint8_t not_bound = 255;
/// The bounds of the formulas' errors in tenths of an ulp, in the order of the list.
template <class... All>
constexpr auto tenths_of_ulp(FormulaList<All...>) {
  const auto tenths = [](double ulp) { return ulp < 25.0 ? static_cast<std::uint8_t>(10.0 * ulp + 0.5) : not_bound; };
  return std::array{tenths(error_ulp(All::about.name))...};
}

double error_of(const Formula& formula) {
  static constexpr auto all = tenths_of_ulp(Formulas());
  for (std::size_t i = 0; i < all.size(); ++i)
    if (all_formulas[i]->name == formula.name && all[i] != not_bound) return all[i] / 10.0;
  return std::numeric_limits<double>::infinity();
}

}  // namespace

void register_source(py::module_& module) {
  Class<Source> source(module, "Source", "Where a figure comes from: .document, and .certainty, how sure it is.");
  def_property(source, "document", "The document, with its clause or table.",
               [](const Source& s) { return s.document; });
  def_property(source, "certainty", "'published', 'secondary', 'derived', 'from memory' and so on.",
               [](const Source& s) { return s.certainty; });
  def_special(source, "__eq__",
              [](const Source& s, const py::object& other) { return is<Source>(other) && s == as<Source>(other); });
  def_special(source, "__hash__",
              [](const Source& s) { return py::hash(tuple_of(give(s.document), give(s.certainty))); });
  def_special(source, "__repr__", [](const Source& s) {
    return "<Source: " + std::string(s.document) + " (" + std::string(to_string(s.certainty)) + ")>";
  });

  Class<Formula> formula(module, "Formula",
                         "What a formula of the library says of itself, in the words of the code that computes it.");
  def_property(formula, "name", "The function's name.", [](const Formula& f) { return f.name; });
  def_property(formula, "parameters", "The parameters with their types.",
               [](const Formula& f) { return f.parameters; });
  def_property(formula, "range", "The condition under which it holds.", [](const Formula& f) { return f.range; });
  def_property(formula, "body", "The expression.", [](const Formula& f) { return f.body; });
  def_property(formula, "source", "Where it comes from.", [](const Formula& f) { return f.source; });
  def_property(
      formula, "error_ulp",
      "The bound of its error, in units of the last place of the result or, where terms cancel, of the largest "
      "value rounded on the way.",
      [](const Formula& f) { return error_of(f); });
  def(formula, "evaluate(*numbers)",
      "The formula's value for plain numbers in SI units, in the order of its parameters; the result is in SI too. "
      "Raises Error outside its range.",
      [](const Formula& f, const Arguments& given) {
        std::vector<double> numbers;
        for (PyObject* one : given.rest())
          numbers.push_back(want_number(one, "numbers[" + std::to_string(numbers.size()) + "]"));
        return evaluate(f, numbers);
      });
  def(formula, "to_text()", "The formula in the symbols of its subject: 'v = n * U / (1 rev * i)'.",
      [](const Formula& f, const Arguments&) { return to_text(f); });
  def(formula, "to_latex()", "The formula as TeX, for mathematics mode.",
      [](const Formula& f, const Arguments&) { return to_tex(f); });
  def(formula, "to_mathml()", "The formula as a MathML element.",
      [](const Formula& f, const Arguments&) { return to_mathml(f); });
  def(formula, "_repr_latex_()", "For notebooks.",
      [](const Formula& f, const Arguments&) { return "$" + to_tex(f) + "$"; });
  // Each formula of the library has a name of its own.
  def_special(formula, "__eq__", [](const Formula& f, const py::object& other) {
    return is<Formula>(other) && f.name == as<Formula>(other).name;
  });
  def_special(formula, "__hash__", [](const Formula& f) { return py::hash(give(f.name)); });
  def_special(formula, "__repr__",
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
