// SPDX-License-Identifier: MIT
#pragma once

#include <pybind11/pybind11.h>

#include <atomic>
#include <string>
#include <typeinfo>

/// @file
/// The Python classes of C++ values. Making, copying and dropping an instance is compiled once, not once a class: of
/// the C++ type only a ClassRecord is left. Nothing can inherit from these classes, so that the class of an object says
/// all of it.
namespace layshaft::python {

namespace py = pybind11;

/// What must be known of the C++ type behind a class.
struct ClassRecord {
  const std::type_info* type;
  std::size_t size;
  std::size_t align;
  void* (*copy)(const void*);                   ///< of a value, by new
  void (*end)(void*);                           ///< deletes a value
  void (*drop)(py::detail::value_and_holder&);  ///< lets the value of an instance go
  PyTypeObject* python = nullptr;               ///< set when the class is registered
};

namespace detail {

/// Where an instance holds its value; null in one that was made by __new__ alone. It is put there once, by whichever
/// thread comes first, and never changes after.
[[nodiscard]] inline std::atomic_ref<void*> value_place(py::handle instance) {
  return std::atomic_ref(reinterpret_cast<py::detail::instance*>(instance.ptr())->simple_value_holder[0]);
}
[[nodiscard]] inline const void* value_of(py::handle instance) {
  return value_place(instance).load(std::memory_order_acquire);
}
[[noreturn]] void refuse_empty(py::handle instance);
/// Gives a new value to an instance; where it has one by now, the new one is let go.
void fill(const ClassRecord& record, py::handle instance, void* value);
/// An instance with a copy of the value.
[[nodiscard]] py::object make_copy(const ClassRecord& record, const void* value);
/// The value of an object that must be of this class; a TypeError names the argument.
[[nodiscard]] const void* want_instance(const ClassRecord& record, py::handle object, std::string_view argument);

void drop(const ClassRecord& record, py::detail::value_and_holder& held);

template <class T>
inline ClassRecord class_record{&typeid(T),
                                sizeof(T),
                                alignof(T),
                                [](const void* value) -> void* { return new T(*static_cast<const T*>(value)); },
                                [](void* value) { delete static_cast<T*>(value); },
                                [](py::detail::value_and_holder& held) { drop(class_record<T>, held); }};

}  // namespace detail

/// Whether an object is an instance of the class of T.
template <class T>
[[nodiscard]] bool is(py::handle object) {
  return Py_TYPE(object.ptr()) == detail::class_record<T>.python;
}
/// The value of an instance of that class.
template <class T>
[[nodiscard]] const T& as(py::handle instance) {
  const void* value = detail::value_of(instance);
  if (!value) detail::refuse_empty(instance);
  return *static_cast<const T*>(value);
}
/// That class.
template <class T>
[[nodiscard]] py::object class_of() {
  return py::reinterpret_borrow<py::object>(reinterpret_cast<PyObject*>(detail::class_record<T>.python));
}

/// A class, seen without its type.
class AnyClass : public py::detail::generic_type {
 public:
  AnyClass(py::module_& module, const char* name, const char* doc, ClassRecord& record);
};

/// Registers the class of T; its docstring begins with the signature where it can be called.
template <class T>
class Class : public AnyClass {
 public:
  Class(py::module_& module, const char* name, const char* doc)
      : AnyClass(module, name, doc, detail::class_record<T>) {}
};

}  // namespace layshaft::python
