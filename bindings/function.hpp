// SPDX-License-Identifier: MIT
#pragma once

#include "convert.hpp"

#include <array>
#include <concepts>
#include <span>
#include <utility>

/// @file
/// Functions, methods and constructors bound by a signature in Python's own notation. A wrong call is told in the words
/// that Python uses for its own functions, and every argument comes in through `want`.
namespace layshaft::python {

/// `road_speed(engine_speed, overall_ratio, circumference)`, `Setup(*, front, rear, tyre, chain=None)`: names,
/// which may be left out (with what then holds, for help() alone), and, behind the star, which must be named. A star
/// with a name, `evaluate(*numbers)`, takes all that is given without one.
class Signature {
 public:
  explicit Signature(std::string_view text);

  static constexpr std::size_t most_parameters = 40;
  struct Parameter {
    std::string name;
    PyObject* key;  ///< the name as Python interns it
    bool required;
  };
  [[nodiscard]] const std::string& name() const noexcept { return name_; }
  [[nodiscard]] const std::vector<Parameter>& parameters() const noexcept { return parameters_; }
  [[nodiscard]] std::size_t index(std::string_view parameter) const;
  /// The docstring with the signature in front of it, in the form that inspect.signature() reads.
  [[nodiscard]] std::string doc(std::string_view doc, bool method) const { return this->doc(name_, doc, method); }
  /// The same for another name: that of a constructor is __init__.
  [[nodiscard]] std::string doc(std::string_view name, std::string_view doc, bool method) const;
  /// One object a parameter, null for one left out. Raises TypeError when the call does not fit.
  void bind(PyObject* const* given, std::size_t positional, PyObject* names, PyObject** values) const;

 private:
  [[noreturn]] void refuse(const std::string& what) const;

  std::string name_;
  std::string parameters_text_;
  std::vector<Parameter> parameters_;
  std::size_t positional_ = 0;  ///< as many can be given without a name
  bool takes_rest_ = false;     ///< `*numbers`: any number more of them
};

/// The arguments of one call, which the caller keeps alive.
class Arguments {
 public:
  Arguments(const Signature& signature, PyObject* const* given, std::size_t positional, PyObject* names)
      : signature_(signature), given_(given, positional) {
    signature.bind(given, positional, names, values_.data());
  }

  [[nodiscard]] const Signature& signature() const noexcept { return signature_; }
  /// The object given for a parameter by its place; null when it was left out.
  [[nodiscard]] py::handle operator[](std::size_t place) const { return values_[place]; }
  /// What was given without a name, where the signature takes any number of it.
  [[nodiscard]] std::span<PyObject* const> rest() const noexcept { return given_; }
  /// Whether the argument was given.
  [[nodiscard]] bool has(std::string_view name) const { return values_[signature_.index(name)] != nullptr; }
  /// The object given; None when it was left out.
  [[nodiscard]] py::object object(std::string_view name) const {
    return py::reinterpret_borrow<py::object>(handle(name));
  }
  template <class T>
  [[nodiscard]] decltype(auto) want(std::string_view name) const {
    return python::want<T>(handle(name), name);
  }
  /// The argument for a parameter by its place.
  template <class T>
  [[nodiscard]] decltype(auto) want(std::size_t place) const {
    return python::want<T>(values_[place], signature_.parameters()[place].name);
  }
  /// The argument, or what holds when it was left out.
  template <class T>
  [[nodiscard]] T want(std::string_view name, T otherwise) const {
    return has(name) ? T(python::want<T>(handle(name), name)) : otherwise;
  }

 private:
  [[nodiscard]] py::handle handle(std::string_view name) const;

  const Signature& signature_;
  std::span<PyObject* const> given_;
  std::array<PyObject*, Signature::most_parameters> values_;  // bind() sets those that there are
};

namespace detail {

// What is bound, without its types: Python's side of it is then compiled once, not once a function. A Function that
// holds something is kept as long as the process runs, as is what is bound by it.
template <class Function>
[[nodiscard]] const void* keep(Function function) {
  if constexpr (std::is_empty_v<Function>)
    return nullptr;
  else
    return new Function(std::move(function));
}
template <class Function>
[[nodiscard]] decltype(auto) kept(const void* function) {
  if constexpr (std::is_empty_v<Function>)
    return Function();
  else
    return *static_cast<const Function*>(function);
}

/// Calls `function`; `self` is null unless it is a method. A new reference.
using Body = PyObject* (*)(const void* function, py::handle self, const Arguments& given);
/// A value of the class, by new.
using Maker = void* (*)(const void* function, const Arguments& given);
using Getter = PyObject* (*)(const void* function, py::handle self);

void bind_function(py::module_& module, std::string_view signature, std::string_view doc, Body body,
                   const void* function);
void bind_static(py::handle type, std::string_view signature, std::string_view doc, Body body, const void* function);
void bind_method(py::handle type, std::string_view signature, std::string_view doc, Body body, const void* function);
/// The constructor, or another method that gives an instance its value.
void bind_maker(const ClassRecord& record, const char* name, std::string_view signature, Maker make,
                const void* function);
void bind_property(py::handle type, const char* name, const char* doc, Getter get, const void* function);
/// A method of whatever class, which checks its `self` itself; for __special__ names.
[[nodiscard]] py::object free_method(std::string_view signature, Body body, const void* function);

template <class T>
[[nodiscard]] PyObject* give_new(const T& value) {
  return give(value).release().ptr();
}

}  // namespace detail

/// Binds `function(const Arguments&)` into a module.
template <class Function>
void def(py::module_& module, std::string_view signature, std::string_view doc, Function function) {
  detail::bind_function(
      module, signature, doc,
      [](const void* kept, py::handle, const Arguments& given) {
        return detail::give_new(detail::kept<Function>(kept)(given));
      },
      detail::keep(function));
}

/// Binds `function(const T&, const Arguments&)` as a method.
template <class T, class Function>
void def(Class<T>& type, std::string_view signature, std::string_view doc, Function function) {
  detail::bind_method(
      type, signature, doc,
      [](const void* kept, py::handle self, const Arguments& given) {
        return detail::give_new(detail::kept<Function>(kept)(as<T>(self), given));
      },
      detail::keep(function));
}

/// Binds `function(const Arguments&)` as a static method.
template <class T, class Function>
void def_static(Class<T>& type, std::string_view signature, std::string_view doc, Function function) {
  detail::bind_static(
      type, signature, doc,
      [](const void* kept, py::handle, const Arguments& given) {
        return detail::give_new(detail::kept<Function>(kept)(given));
      },
      detail::keep(function));
}

/// Binds a __special__ method: a function of the value or of its object, and of the other object where it takes one.
template <class T, class Function>
void def_special(Class<T>& type, const std::string& name, Function function) {
  constexpr bool alone = std::invocable<const Function&, const T&> || std::invocable<const Function&, py::object>;
  detail::bind_method(
      type, name + (alone ? "()" : "(other)"), {},
      [](const void* kept, py::handle self, const Arguments& given) {
        const auto& call = detail::kept<Function>(kept);
        const auto object = [](py::handle handle) { return py::reinterpret_borrow<py::object>(handle); };
        if constexpr (std::invocable<const Function&, const T&>)
          return detail::give_new(call(as<T>(self)));
        else if constexpr (alone)
          return detail::give_new(call(object(self)));
        else if constexpr (std::invocable<const Function&, const T&, py::object>)
          return detail::give_new(call(as<T>(self), object(given[0])));
        else
          return detail::give_new(call(object(self), object(given[0])));
      },
      detail::keep(function));
}

/// Binds `function(const Arguments&) -> T` as the constructor; the signature is that of the class.
template <class T, class Function>
void def_init(Class<T>&, std::string_view signature, Function function) {
  detail::bind_maker(
      detail::class_record<T>, "__init__", signature,
      [](const void* kept, const Arguments& given) -> void* { return new T(detail::kept<Function>(kept)(given)); },
      detail::keep(function));
}

/// Binds a read-only property: `get(const T&)`.
template <class T, class Get>
void def_property(Class<T>& type, const char* name, const char* doc, Get get) {
  detail::bind_property(
      type, name, doc,
      [](const void* kept, py::handle self) { return detail::give_new(detail::kept<Get>(kept)(as<T>(self))); },
      detail::keep(get));
}

}  // namespace layshaft::python
