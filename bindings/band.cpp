// SPDX-License-Identifier: MIT
#include "band.hpp"

#include "function.hpp"

namespace layshaft::python {
namespace {

/// Any of the three: a quantity, text of the kind that the others have, or a number.
PyBand read_band(const Arguments& given) {
  const Kind* kind = nullptr;
  for (const char* part : {"low", "nominal", "high"})
    if (const Kind* one = kind_of(given.object(part)); one && !kind) kind = one;
  const auto value = [&](const char* part) {
    if (kind) return want_quantity(given.object(part), *kind, part);
    if (!is_real_number(given.object(part)))
      wrong_type(part, "a number or a quantity such as Length('612 mm')", given.object(part));
    return want_number(given.object(part), part);
  };
  PyBand band{kind, {value("low"), value("nominal"), value("high")}};
  if (!well_formed(band.values)) {
    const auto words = [&](double one) { return kind ? kind->text(one) : to_text(one); };
    raise(Error::range("Band",
                       words(band.values.low) + ", " + words(band.values.nominal) + ", " + words(band.values.high),
                       "low, nominal and high in rising order"));
  }
  return band;
}

std::string repr(const PyBand& band) {
  const auto part = [&](double value) { return py::repr(value_to_python(band.kind, value)).cast<std::string>(); };
  return "Band(" + part(band.values.low) + ", " + part(band.values.nominal) + ", " + part(band.values.high) + ")";
}

}  // namespace

void register_band(py::module_& module) {
  Class<PyBand> type(module, "Band",
                     "Band(low, nominal, high)\n--\n\nThe low, nominal and high value of one quantity or number. "
                     "`value in band` asks whether it lies between the ends; there is no arithmetic on bands.\n\n"
                     ">>> band = ls.Band(612 * ls.mm, 615 * ls.mm, 620 * ls.mm)\n"
                     ">>> ls.show(band.width), 618 * ls.mm in band\n"
                     "('8.0 mm', True)");
  def_init(type, "Band(low, nominal, high)", read_band);
  const auto part = [&](const char* name, const char* doc, double Band<double>::*member) {
    def_property(type, name, doc,
                 [member](const PyBand& band) { return value_to_python(band.kind, band.values.*member); });
  };
  part("low", "The least it can be.", &Band<double>::low);
  part("nominal", "What is expected.", &Band<double>::nominal);
  part("high", "The most it can be.", &Band<double>::high);
  def_property(type, "width", "How far apart the ends stand.",
               [](const PyBand& band) { return value_to_python(band.kind, band.values.high - band.values.low); });
  def_special(type, "__contains__", [](const PyBand& band, const py::object& value) {
    if (band.kind) return band.values.contains(want_quantity(value, *band.kind, "value"));
    return band.values.contains(want_number(value, "value"));
  });
  def_special(type, "__eq__", [](const PyBand& band, const py::object& other) -> py::object {
    if (!is<PyBand>(other)) return py::reinterpret_borrow<py::object>(Py_NotImplemented);
    return py::bool_(band == as<PyBand>(other));
  });
  const auto parts = [](const PyBand& band) {
    return tuple_of(value_to_python(band.kind, band.values.low), value_to_python(band.kind, band.values.nominal),
                    value_to_python(band.kind, band.values.high));
  };
  def_special(type, "__hash__", [parts](const PyBand& band) { return py::hash(parts(band)); });
  def_special(type, "__repr__", repr);
  // Band[Length] in annotations that are evaluated.
  def_static(type, "__class_getitem__(item)", "For annotations.", [](const Arguments& given) {
    return py::object(py::module_::import("types").attr("GenericAlias")(class_of<PyBand>(), given.object("item")));
  });
  def_special(type, "__reduce__",
              [parts](const py::object& self) { return tuple_of(py::type::of(self), parts(as<PyBand>(self))); });
}

}  // namespace layshaft::python
