// SPDX-License-Identifier: MIT
#pragma once

#include "pickle.hpp"

#include <initializer_list>
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

/// `name(positional, name=value)`
[[nodiscard]] std::string call_text(std::string name, const Remake& remake);
/// The same for the class of a value.
[[nodiscard]] std::string repr_of(py::handle self, const Remake& remake);

namespace detail {
using Equal = bool (*)(py::handle, py::handle);  // both of the type
using Remaker = Remake (*)(const void* function, py::handle self);
void bind_value(py::handle type, Equal equal, Remaker remake, const void* function);

/// A field without its types.
struct BoundField {
  const char* name;
  Getter get;
  const void* member;
};
/// `Name(*, one, another)`
[[nodiscard]] std::string signature_of(std::string_view name, std::initializer_list<const char*> fields);
/// Of a struct of such fields: each of them, by its name.
[[nodiscard]] Remake remake_of_fields(const void* fields, py::handle self);
}  // namespace detail

/// Binds ==, hash, repr and pickling; `remake(const T&)` gives the arguments that make the value again.
template <class T, class Function>
void def_value(Class<T>& type, Function remake) {
  detail::bind_value(
      type, [](py::handle a, py::handle b) { return as<T>(a) == as<T>(b); },
      [](const void* kept, py::handle self) { return Remake(detail::kept<Function>(kept)(as<T>(self))); },
      detail::keep(remake));
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
Class<T> def_struct(py::module_& module, const char* name, std::string_view doc, Field<T, Members>... fields) {
  static_assert(sizeof...(Members) <= Signature::most_parameters);
  const std::string signature = detail::signature_of(name, {fields.name...});
  Class<T> type(module, name, Signature(signature).doc(doc, false).c_str());
  detail::bind_maker(
      detail::class_record<T>, "__init__", signature,
      [](const void*, const Arguments& given) -> void* {
        return [&]<std::size_t... I>(std::index_sequence<I...>) { return new T{given.template want<Members>(I)...}; }
        (std::index_sequence_for<Members...>());
      },
      nullptr);
  const auto bound = [&]<class Member>(const Field<T, Member>& field) {
    const detail::Getter get = [](const void* kept, py::handle self) {
      return detail::give_new(as<T>(self).**static_cast<Member T::*const*>(kept));
    };
    const detail::BoundField made{field.name, get, detail::keep(field.member)};
    detail::bind_property(type, made.name, field.doc, made.get, made.member);
    return made;
  };
  detail::bind_value(
      type, [](py::handle a, py::handle b) { return as<T>(a) == as<T>(b); }, detail::remake_of_fields,
      new std::vector<detail::BoundField>{bound(fields)...});
  return type;
}

}  // namespace layshaft::python
