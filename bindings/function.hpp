// SPDX-License-Identifier: MIT
#pragma once

#include "convert.hpp"

#include <functional>
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
  [[nodiscard]] std::string doc(std::string_view doc, bool method) const { return this->doc(name_, doc, method); }
  /// The same for another name: that of a constructor is __init__.
  [[nodiscard]] std::string doc(std::string_view name, std::string_view doc, bool method) const;
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

namespace detail {

// What is bound, without its types: pybind11's own machinery is then compiled once, not once a function.
template <class T>
[[nodiscard]] const T& self(py::handle object) {
  if (!py::isinstance<T>(object)) wrong_type("self", py::repr(py::type::of<T>()).template cast<std::string>(), object);
  return py::cast<const T&>(object);
}

void bind_function(py::module_& module, std::string_view signature, std::string_view doc,
                   std::function<py::object(const Arguments&)> call);
void bind_static(py::handle type, std::string_view signature, std::string_view doc,
                 std::function<py::object(const Arguments&)> call);
void bind_method(py::handle type, std::string_view signature, std::string_view doc,
                 std::function<py::object(py::handle, const Arguments&)> call);
void bind_property(py::handle type, const char* name, const char* doc, std::function<py::object(py::handle)> get);

}  // namespace detail

/// Binds `function(const Arguments&)` into a module.
template <class Function>
void def(py::module_& module, std::string_view signature, std::string_view doc, Function function) {
  detail::bind_function(module, signature, doc, [function](const Arguments& given) { return give(function(given)); });
}

/// Binds `function(const T&, const Arguments&)` as a method.
template <class T, class... Options, class Function>
void def(py::class_<T, Options...>& type, std::string_view signature, std::string_view doc, Function function) {
  detail::bind_method(type, signature, doc, [function](py::handle self, const Arguments& given) {
    return give(function(detail::self<T>(self), given));
  });
}

/// Binds `function(const Arguments&)` as a static method.
template <class T, class... Options, class Function>
void def_static(py::class_<T, Options...>& type, std::string_view signature, std::string_view doc, Function function) {
  detail::bind_static(type, signature, doc, [function](const Arguments& given) { return give(function(given)); });
}

/// Binds `function(const Arguments&) -> T` as the constructor; the signature is that of the class.
template <class T, class... Options, class Function>
void def_init(py::class_<T, Options...>& type, std::string_view signature, Function function) {
  const auto shape = std::make_shared<Signature>(signature);
  type.def(py::init([shape, function](const py::args& args, const py::kwargs& kwargs) {
             return T(function(Arguments(*shape, args, kwargs)));
           }),
           shape->doc("__init__", "Makes one.", true).c_str());
}

/// Binds a read-only property: `get(const T&)`.
template <class T, class... Options, class Get>
void def_property(py::class_<T, Options...>& type, const char* name, const char* doc, Get get) {
  detail::bind_property(type, name, doc, [get](py::handle self) { return give(get(detail::self<T>(self))); });
}

}  // namespace layshaft::python
