// SPDX-License-Identifier: MIT
#include "value.hpp"

namespace layshaft::python {

void register_remake(py::module_& module) {
  module.def("_remake", [](const py::object& type, const py::tuple& positional, const py::dict& named) {
    return type(*positional, **named);
  });
}

std::string repr_of(py::handle self, const Remake& remake) {
  std::string text = py::str(py::type::handle_of(self).attr("__name__")).cast<std::string>() + "(";
  bool first = true;
  const auto separate = [&] {
    if (!first) text += ", ";
    first = false;
  };
  for (const py::handle value : remake.positional) {
    separate();
    text += py::repr(value).cast<std::string>();
  }
  for (const auto& [name, value] : remake.named) {
    separate();
    text += name.cast<std::string>() + "=" + py::repr(value).cast<std::string>();
  }
  return text + ")";
}

}  // namespace layshaft::python
