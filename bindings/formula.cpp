// SPDX-License-Identifier: MIT
#include "formula.hpp"

namespace layshaft::python::detail {

namespace {

/// "road_speed(engine_speed, overall_ratio)" of "(AngularSpeed engine_speed, double overall_ratio)".
std::string signature_of(const Formula& formula) {
  std::string signature(formula.name);
  signature += "(";
  std::string word;
  for (const char c : formula.parameters.substr(1)) {
    if (c == ',' || c == ')') {
      signature.append(word).append(c == ',' ? ", " : ")");
      word.clear();
    } else if (c == ' ' || c == '\n') {
      word.clear();
    } else {
      word += c;
    }
  }
  return signature;
}

/// Whether the range holds the clause `positive(name)`.
bool asks_positive(std::string_view range, std::string_view name) {
  return range.find("positive(" + std::string(name) + ")") != range.npos;
}

[[noreturn]] void refuse(const PlainFormula& formula, const Arguments& given, const double* numbers) {
  for (std::size_t i = 0; i < formula.parameters.size(); ++i) {
    const std::string& name = given.signature().parameters()[i].name;
    const FormulaType& type = *formula.parameters[i];
    if (asks_positive(formula.about->range, name) && !type.positive(numbers[i]))
      raise(Error::range(name, type.in_words(numbers[i]), "a value above 0"));
  }
  raise(Error::value(std::string(formula.about->name)
                         .append(" does not hold for these arguments; it asks for ")
                         .append(formula.about->range)));
}

PyObject* call_formula(const void* function, py::handle, const Arguments& given) {
  const auto& formula = *static_cast<const PlainFormula*>(function);
  std::array<double, Signature::most_parameters> numbers;
  for (std::size_t i = 0; i < formula.parameters.size(); ++i)
    numbers[i] = formula.parameters[i]->want(given[i], given.signature().parameters()[i].name);
  if (!formula.in_range(numbers.data())) refuse(formula, given, numbers.data());
  const double result = formula.of(numbers.data());
  if (!layshaft::is_finite(result))
    raise(Error::range(formula.about->name, formula.result->in_words(result), "arguments for which it is finite"));
  return formula.result->give(result).release().ptr();
}

}  // namespace

void bind_formula(py::module_& module, const PlainFormula& formula, std::string_view doc) {
  const Source& source = formula.about->source;
  std::string text(doc);
  text.append("\n\nSource: ").append(source.document);
  text.append(" (").append(to_string(source.certainty)).append(").");
  bind_function(module, signature_of(*formula.about), text, call_formula, &formula);
}

}  // namespace layshaft::python::detail
