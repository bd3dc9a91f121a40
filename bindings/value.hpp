// SPDX-License-Identifier: MIT
#pragma once

#include "function.hpp"

#include <string>

/// @file
/// What every immutable value has in Python: ==, hash, a repr that evaluates back, and pickling by its constructor.
namespace layshaft::python {

/// The arguments that make a value again.
struct Remake {
  py::tuple positional;
  py::dict named;
};

/// Puts an argument down where it was given.
template <class T>
void name_if(py::dict& named, const char* name, const std::optional<T>& value) {
  if (value) named[name] = give(*value);
}

/// Registers the function by which pickles make values again.
void register_remake(py::module_& module);

/// `name(positional, name=value)`
[[nodiscard]] std::string call_text(std::string name, const Remake& remake);
/// The same for the class of a value.
[[nodiscard]] std::string repr_of(py::handle self, const Remake& remake);

namespace detail {
void bind_value(py::handle type, std::function<bool(py::handle, py::handle)> equal,
                std::function<Remake(py::handle)> remake);
}

/// Binds ==, hash, repr and pickling; `remake(const T&)` gives the arguments that make the value again.
template <class T, class... Options, class Function>
void def_value(py::class_<T, Options...>& type, Function remake) {
  detail::bind_value(
      type,
      [](py::handle a, py::handle b) { return py::isinstance<T>(b) && py::cast<const T&>(a) == py::cast<const T&>(b); },
      [remake](py::handle self) { return remake(detail::self<T>(self)); });
}

/// A member of a struct, as a read-only property and a parameter of the constructor.
template <class T, class Member>
struct Field {
  const char* name;
  Member T::*member;
  const char* doc;
};
template <class T, class Member>
Field(const char*, Member T::*, const char*) -> Field<T, Member>;

/// Binds a struct of public members, all of them, in their order: constructor by keyword, properties, and what every
/// value has.
template <class T, class... Members>
py::class_<T> def_struct(py::module_& module, const std::string& name, const std::string& doc,
                         Field<T, Members>... fields) {
  std::string signature = name + "(*";
  (signature.append(", ").append(fields.name), ...);
  signature += ")";
  py::class_<T> type(module, name.c_str(), py::is_final(), Signature(signature).doc(doc, false).c_str());
  def_init(type, signature,
           [fields...](const Arguments& given) { return T{given.template want<Members>(fields.name)...}; });
  (def_property(type, fields.name, fields.doc, [member = fields.member](const T& self) { return self.*member; }), ...);
  def_value(type, [fields...](const T& self) {
    Remake remake;
    ((remake.named[fields.name] = give(self.*(fields.member))), ...);
    return remake;
  });
  return type;
}

}  // namespace layshaft::python
