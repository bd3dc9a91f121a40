// SPDX-License-Identifier: MIT
#include "value.hpp"

namespace layshaft::python {

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

namespace {

/// What a value's methods have to know of its type.
struct BoundValue {
  Equal equal;
  Remaker remake;
  const void* function;

  [[nodiscard]] Remake remade(py::handle self) const { return remake(function, self); }
};

const BoundValue& bound_value(const void* function) { return *static_cast<const BoundValue*>(function); }

}  // namespace

void bind_value(py::handle type, Equal equal, Remaker remake, const void* function) {
  const auto* bound = new BoundValue{equal, remake, function};
  bind_method(
      type, "__eq__(other)", {},
      [](const void* value, py::handle self, const Arguments& given) {
        if (Py_TYPE(given[0].ptr()) != Py_TYPE(self.ptr())) return Py_NewRef(Py_NotImplemented);
        return give_new(bound_value(value).equal(self, given[0]));
      },
      bound);
  bind_method(
      type, "__repr__()", {},
      [](const void* value, py::handle self, const Arguments&) {
        return give_new(repr_of(self, bound_value(value).remade(self)));
      },
      bound);
  bind_method(
      type, "__hash__()", {},
      [](const void*, py::handle self, const Arguments&) { return give_new(py::hash(py::repr(self))); }, bound);
  bind_method(
      type, "__reduce__()", {},
      [](const void* value, py::handle self, const Arguments&) {
        const Remake made = bound_value(value).remade(self);
        return pickled(py::type::handle_of(self), made.positional, made.named).release().ptr();
      },
      bound);
}

std::string signature_of(std::string_view name, std::initializer_list<const char*> fields) {
  std::string signature(name);
  signature += "(*";
  for (const char* field : fields) signature.append(", ").append(field);
  return signature + ")";
}

Remake remake_of_fields(const void* fields, py::handle self) {
  Remake remake;
  for (const BoundField& field : *static_cast<const std::vector<BoundField>*>(fields))
    remake.named[field.name] = py::reinterpret_steal<py::object>(field.get(field.member, self));
  return remake;
}

}  // namespace detail

}  // namespace layshaft::python
