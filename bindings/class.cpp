// SPDX-License-Identifier: MIT
#include "class.hpp"

#include "convert.hpp"

#include <stdexcept>

namespace layshaft::python {

namespace detail {

void refuse_empty(py::handle instance) {
  raise_type_error(with_article(py::str(py::type::handle_of(instance).attr("__name__")).cast<std::string>()) +
                   " that __new__ alone has made holds no value");
}

void fill(const ClassRecord& record, py::handle instance, void* value) {
  void* none = nullptr;
  if (!value_place(instance).compare_exchange_strong(none, value, std::memory_order_acq_rel)) return record.end(value);
  auto* place = reinterpret_cast<py::detail::instance*>(instance.ptr());
  place->owned = true;
  place->simple_holder_constructed = true;
}

py::object make_copy(const ClassRecord& record, const void* value) {
  if (!record.python) throw std::logic_error(std::string("a class not registered: ") + record.type->name());
  auto made = py::reinterpret_steal<py::object>(py::detail::make_new_instance(record.python));
  fill(record, made, record.copy(value));
  return made;
}

const void* want_instance(const ClassRecord& record, py::handle object, std::string_view argument) {
  if (Py_TYPE(object.ptr()) != record.python) {
    const py::handle type(reinterpret_cast<PyObject*>(record.python));
    wrong_type(argument, with_article(py::str(type.attr("__name__")).cast<std::string>()), object);
  }
  const void* value = value_of(object);
  if (!value) refuse_empty(object);
  return value;
}

void drop(const ClassRecord& record, py::detail::value_and_holder& held) {
  const py::error_scope kept;  // an exception may be under way
  if (held.holder_constructed()) {
    record.end(held.value_ptr());
    held.set_holder_constructed(false);
  } else {
    py::detail::call_operator_delete(held.value_ptr(), record.size, record.align);
  }
  held.value_ptr() = nullptr;
}

}  // namespace detail

AnyClass::AnyClass(py::module_& module, const char* name, const char* doc, ClassRecord& record) {
  py::detail::type_record made;
  made.scope = module;
  made.name = name;
  made.doc = doc;
  made.type = record.type;
  made.type_size = record.size;
  made.type_align = record.align;
  // The value's pointer is all that is held; what pybind11 calls the holder only says whether there is one.
  made.holder_size = sizeof(void*);
  made.holder_enum_v = py::detail::holder_enum_t::std_unique_ptr;
  made.init_instance = [](py::detail::instance* instance, const void*) {
    if (instance->owned) instance->simple_holder_constructed = true;
  };
  made.dealloc = record.drop;
  made.is_final = true;
  initialize(made);
  attr("__module__") = "layshaft";  // where it is to be found, for pickle and for people
  record.python = reinterpret_cast<PyTypeObject*>(ptr());
}

}  // namespace layshaft::python
