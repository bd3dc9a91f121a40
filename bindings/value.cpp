// SPDX-License-Identifier: MIT
#include "value.hpp"

namespace layshaft::python {

void register_remake(py::module_& module) {
  module.def("_remake", [](const py::object& type, const py::tuple& positional, const py::dict& named) {
    return type(*positional, **named);
  });
}

std::string call_text(std::string name, const Remake& remake) {
  std::string text = std::move(name) + "(";
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

std::string repr_of(py::handle self, const Remake& remake) {
  return call_text(py::str(py::type::handle_of(self).attr("__name__")).cast<std::string>(), remake);
}

namespace detail {

void bind_value(py::handle type, std::function<bool(py::handle, py::handle)> equal,
                std::function<Remake(py::handle)> remake) {
  const auto method = [type](const char* name, auto function) {
    type.attr(name) = py::cpp_function(function, py::name(name), py::is_method(type));
  };
  method("__eq__", [equal = std::move(equal)](const py::object& self, const py::object& other) -> py::object {
    if (!py::type::of(other).is(py::type::of(self))) return py::reinterpret_borrow<py::object>(Py_NotImplemented);
    return py::bool_(equal(self, other));
  });
  method("__repr__", [remake](const py::object& self) { return repr_of(self, remake(self)); });
  method("__hash__", [](const py::object& self) { return py::hash(py::repr(self)); });
  method("__reduce__", [remake](const py::object& self) {
    const Remake made = remake(self);
    return py::make_tuple(py::module_::import("layshaft._core").attr("_remake"),
                          py::make_tuple(py::type::of(self), made.positional, made.named));
  });
}

}  // namespace detail

}  // namespace layshaft::python
