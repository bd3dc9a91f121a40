// SPDX-License-Identifier: MIT
#include "value.hpp"

#include <layshaft/core/source.hpp>
#include <layshaft/formulas.hpp>

namespace layshaft::python {

void register_source(py::module_& module) {
  py::class_<Source> source(module, "Source", py::is_final(),
                            "Where a figure comes from: .document, and .certainty, how sure it is.");
  def_property(source, "document", "The document, with its clause or table.", [](const Source& s) { return s.document; });
  def_property(source, "certainty", "'published', 'secondary', 'derived', 'from memory' and so on.",
               [](const Source& s) { return s.certainty; });
  source.def("__eq__", [](const Source& s, const py::object& other) {
    return py::isinstance<Source>(other) && s == py::cast<const Source&>(other);
  });
  source.def("__hash__", [](const Source& s) { return py::hash(py::make_tuple(give(s.document), give(s.certainty))); });
  source.def("__repr__", [](const Source& s) {
    return "<Source: " + std::string(s.document) + " (" + std::string(to_string(s.certainty)) + ")>";
  });

  py::class_<Formula> formula(module, "Formula", py::is_final(),
                              "What a formula of the library says of itself, in the words of the code that computes it.");
  def_property(formula, "name", "The function's name.", [](const Formula& f) { return f.name; });
  def_property(formula, "parameters", "The parameters with their types.", [](const Formula& f) { return f.parameters; });
  def_property(formula, "range", "The condition under which it holds.", [](const Formula& f) { return f.range; });
  def_property(formula, "body", "The expression.", [](const Formula& f) { return f.body; });
  def_property(formula, "source", "Where it comes from.", [](const Formula& f) { return f.source; });
  formula.def("__repr__", [](const Formula& f) {
    return "<Formula: " + std::string(f.name) + " = " + std::string(f.body) + ">";
  });
  def(module, "formulas()", "Every formula of the library.", [](const Arguments&) {
    py::list list;
    for (const Formula* one : all_formulas) list.append(py::cast(*one));
    return py::object(py::tuple(list));
  });
}

}  // namespace layshaft::python
