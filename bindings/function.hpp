// SPDX-License-Identifier: MIT
#pragma once

#include "convert.hpp"

#include <memory>
#include <utility>

/// @file
/// Functions, methods and constructors bound by a signature in Python's own notation. A wrong call is told in the words
/// that Python uses for its own functions, and every argument comes in through `want`.
namespace layshaft::python {

/// `road_speed(engine_speed, overall_ratio, circumference)`, `Setup(*, front, rear, tyre, chain=None)`: names,
/// which may be left out (with what then holds, for help() alone), and, behind the star, which must be named.
class Signature {
 public:
  explicit Signature(std::string_view text);

  struct Parameter {
    std::string name;
    bool required;
    bool keyword_only;
  };
  [[nodiscard]] const std::string& name() const noexcept { return name_; }
  [[nodiscard]] std::size_t index(std::string_view parameter) const;
  /// The docstring with the signature in front of it, in the form that inspect.signature() reads.
  [[nodiscard]] std::string doc(std::string_view doc, bool method) const;
  /// One object a parameter, null for one left out. Raises TypeError when the call does not fit.
  [[nodiscard]] std::vector<py::object> bind(const py::args& args, const py::kwargs& kwargs) const;

 private:
  std::string name_;
  std::string parameters_text_;
  std::vector<Parameter> parameters_;
};

/// The arguments of one call.
class Arguments {
 public:
  Arguments(const Signature& signature, const py::args& args, const py::kwargs& kwargs)
      : signature_(signature), values_(signature.bind(args, kwargs)) {}

  /// Whether the argument was given.
  [[nodiscard]] bool has(std::string_view name) const { return bool(values_[signature_.index(name)]); }
  /// The object given; None when it was left out.
  [[nodiscard]] py::object object(std::string_view name) const {
    const py::object& value = values_[signature_.index(name)];
    return value ? value : py::none();
  }
  template <class T>
  [[nodiscard]] decltype(auto) want(std::string_view name) const {
    return python::want<T>(object(name), name);
  }
  /// The argument, or what holds when it was left out.
  template <class T>
  [[nodiscard]] T want(std::string_view name, T otherwise) const {
    return has(name) ? T(python::want<T>(object(name), name)) : otherwise;
  }

 private:
  const Signature& signature_;
  std::vector<py::object> values_;
};

/// Binds `function(const Arguments&)` into a module.
template <class Function>
void def(py::module_& module, std::string_view signature, std::string_view doc, Function function) {
  const auto shape = std::make_shared<Signature>(signature);
  module.def(
      shape->name().c_str(),
      [shape, function](const py::args& args, const py::kwargs& kwargs) {
        return give(function(Arguments(*shape, args, kwargs)));
      },
      shape->doc(doc, false).c_str());
}

/// Binds `function(const T&, const Arguments&)` as a method.
template <class T, class... Options, class Function>
void def(py::class_<T, Options...>& type, std::string_view signature, std::string_view doc, Function function) {
  const auto shape = std::make_shared<Signature>(signature);
  type.def(
      shape->name().c_str(),
      [shape, function](const T& self, const py::args& args, const py::kwargs& kwargs) {
        return give(function(self, Arguments(*shape, args, kwargs)));
      },
      shape->doc(doc, true).c_str());
}

/// Binds `function(const Arguments&) -> T` as the constructor; the signature is that of the class.
template <class T, class... Options, class Function>
void def_init(py::class_<T, Options...>& type, std::string_view signature, Function function) {
  const auto shape = std::make_shared<Signature>(signature);
  type.def(py::init([shape, function](const py::args& args, const py::kwargs& kwargs) {
    return T(function(Arguments(*shape, args, kwargs)));
  }));
}

/// Binds a read-only property: `get(const T&)`.
template <class T, class... Options, class Get>
void def_property(py::class_<T, Options...>& type, const char* name, const char* doc, Get get) {
  type.def_property_readonly(
      name, [get](const T& self) { return give(get(self)); }, doc);
}

}  // namespace layshaft::python
