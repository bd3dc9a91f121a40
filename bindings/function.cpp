// SPDX-License-Identifier: MIT
#include "function.hpp"

#include "errors.hpp"

#include <algorithm>
#include <stdexcept>

namespace layshaft::python {

namespace {

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
  return text;
}

std::string_view text_of_key(PyObject* key) {
  Py_ssize_t size = 0;
  const char* text = PyUnicode_AsUTF8AndSize(key, &size);
  if (!text) throw py::error_already_set();
  return {text, static_cast<std::size_t>(size)};
}

}  // namespace

Signature::Signature(std::string_view text) {
  const std::size_t open = text.find('(');
  if (open == text.npos || text.back() != ')') throw std::logic_error("a signature reads name(parameters)");
  name_ = text.substr(0, open);
  parameters_text_ = text.substr(open + 1, text.size() - open - 2);
  bool keyword_only = false;
  for (std::string_view rest = parameters_text_; !trimmed(rest).empty();) {
    const std::size_t comma = rest.find(',');
    const std::string_view one = trimmed(rest.substr(0, comma));
    rest = comma == rest.npos ? std::string_view() : rest.substr(comma + 1);
    if (one.front() == '*') {
      keyword_only = true;
      takes_rest_ = one.size() > 1;
      continue;
    }
    const std::size_t equals = one.find('=');
    const std::string name(trimmed(one.substr(0, equals)));
    PyObject* key = PyUnicode_InternFromString(name.c_str());
    if (!key) throw py::error_already_set();
    parameters_.push_back({name, key, equals == one.npos});
    if (!keyword_only) positional_ = parameters_.size();
  }
  if (parameters_.size() > most_parameters) throw std::logic_error(name_ + " has too many parameters");
}

std::size_t Signature::index(std::string_view parameter) const {
  const auto found = std::ranges::find(parameters_, parameter, &Parameter::name);
  if (found == parameters_.end())
    throw std::logic_error(name_ + " has no parameter " + std::string(parameter));  // a mistake in the bindings
  return static_cast<std::size_t>(found - parameters_.begin());
}

std::string Signature::doc(std::string_view name, std::string_view doc, bool method) const {
  std::string text(name);
  text += "(";
  if (method) text += parameters_text_.empty() ? "self" : "self, ";
  return text.append(parameters_text_).append(")\n--\n\n").append(doc);
}

void Signature::refuse(const std::string& what) const {
  raise_type_error(name_ + "() " + what + "; it is called as " + name_ + "(" + parameters_text_ + ")");
}

void Signature::bind(PyObject* const* given, std::size_t positional, PyObject* names, PyObject** values) const {
  const std::size_t count = parameters_.size();
  PyObject* const* named_values = given + positional;
  if (positional > positional_ && takes_rest_) positional = positional_;
  if (positional > positional_)
    refuse("takes " + (positional_ == 0 ? "no" : "at most " + std::to_string(positional_)) + " positional argument" +
           (positional_ == 1 ? "" : "s") + " (" + std::to_string(positional) + " given)");
  std::copy_n(given, positional, values);
  std::fill(values + positional, values + count, nullptr);
  const std::size_t named = names ? static_cast<std::size_t>(PyTuple_GET_SIZE(names)) : 0;
  for (std::size_t i = 0; i < named; ++i) {
    PyObject* key = PyTuple_GET_ITEM(names, static_cast<Py_ssize_t>(i));
    auto found = std::ranges::find(parameters_, key, &Parameter::key);  // as a rule both are interned
    if (found == parameters_.end()) found = std::ranges::find(parameters_, text_of_key(key), &Parameter::name);
    if (found == parameters_.end()) refuse("has no parameter " + in_quotes(text_of_key(key)));
    PyObject*& place = values[found - parameters_.begin()];
    if (place) raise_type_error(name_ + "() got the argument '" + found->name + "' twice");
    place = named_values[i];
  }
  std::string missing;
  for (std::size_t i = 0; i < count; ++i)
    if (parameters_[i].required && !values[i])
      missing.append(missing.empty() ? "" : ", ").append("'").append(parameters_[i].name).append("'");
  if (!missing.empty()) refuse("is missing " + missing);
}

py::handle Arguments::handle(std::string_view name) const {
  PyObject* value = values_[signature_.index(name)];
  return value ? value : Py_None;
}

namespace detail {

namespace {

// What is bound is never let go: it lives as long as the module, and that is not unloaded.
struct BoundFunction {
  Signature shape;
  std::string name;
  std::string doc;
  Body body;
  const void* function;
  PyTypeObject* type = nullptr;         ///< of `self`; null where nothing, or not the call, has to check it
  Maker make = nullptr;                 ///< in place of `body`, of what gives an instance its value
  const ClassRecord* record = nullptr;  ///< then, of that value
  PyMethodDef def{};
};
struct BoundProperty {
  std::string name;
  std::string doc;
  Getter get;
  const void* function;
  PyGetSetDef def{};
};

/// The Python object that a built-in function carries along.
struct Carrier {
  PyObject ob_base;
  const BoundFunction* bound;
};

/// A function is pickled as the attribute of what it carries: of the module, then.
PyObject* reduce_carrier(PyObject*, PyObject*) {
  try {
    return python::tuple_of(py::module_::import("importlib").attr("import_module"), python::tuple_of("layshaft._core"))
        .release()
        .ptr();
  } catch (...) {
    set_error_of_exception();
    return nullptr;
  }
}

PyTypeObject* make_carrier_type() {
  static PyMethodDef methods[] = {{"__reduce__", reduce_carrier, METH_NOARGS, nullptr}, {}};
  static PyType_Slot slots[] = {{Py_tp_methods, methods}, {}};
  static PyType_Spec spec{"layshaft._core", sizeof(Carrier), 0, Py_TPFLAGS_DEFAULT | Py_TPFLAGS_DISALLOW_INSTANTIATION,
                          slots};
  auto* type = reinterpret_cast<PyTypeObject*>(PyType_FromSpec(&spec));
  if (!type) throw py::error_already_set();
  return type;
}

[[noreturn]] void refuse_self(const BoundFunction& bound, PyObject* self) {
  wrong_type("self", py::repr(py::handle(reinterpret_cast<PyObject*>(bound.type))).cast<std::string>(), self);
}

PyObject* call(PyObject* carrier, PyObject* const* given, Py_ssize_t count, PyObject* names) noexcept {
  const BoundFunction& bound = *reinterpret_cast<const Carrier*>(carrier)->bound;
  try {
    PyObject* self = nullptr;
    if (bound.type) {
      if (count == 0) raise_type_error(bound.name + "() is missing 'self'");
      self = *given++;
      --count;
      if (Py_TYPE(self) != bound.type) refuse_self(bound, self);
    }
    if (bound.make && value_of(self)) return Py_NewRef(Py_None);  // values do not change
    const Arguments arguments(bound.shape, given, static_cast<std::size_t>(count), names);
    if (!bound.make) return bound.body(bound.function, self, arguments);
    fill(*bound.record, self, bound.make(bound.function, arguments));
    return Py_NewRef(Py_None);
  } catch (...) {
    set_error_of_exception();
    return nullptr;
  }
}

PyObject* get(PyObject* self, void* closure) noexcept {
  const auto& bound = *static_cast<const BoundProperty*>(closure);
  try {
    return bound.get(bound.function, self);
  } catch (...) {
    set_error_of_exception();
    return nullptr;
  }
}

/// A built-in function, of the module that has a name.
py::object built_in(BoundFunction* bound, py::handle module_name) {
  static PyTypeObject* const carrier_type = make_carrier_type();
  auto* carrier = PyObject_New(Carrier, carrier_type);
  if (!carrier) throw py::error_already_set();
  carrier->bound = bound;
  bound->def = {bound->name.c_str(), reinterpret_cast<PyCFunction>(reinterpret_cast<void (*)()>(call)),
                METH_FASTCALL | METH_KEYWORDS, bound->doc.empty() ? nullptr : bound->doc.c_str()};
  auto made = py::reinterpret_steal<py::object>(
      PyCFunction_NewEx(&bound->def, reinterpret_cast<PyObject*>(carrier), module_name.ptr()));
  Py_DECREF(carrier);
  if (!made) throw py::error_already_set();
  return made;
}
py::object as_method(const py::object& function) {
  auto made = py::reinterpret_steal<py::object>(PyInstanceMethod_New(function.ptr()));
  if (!made) throw py::error_already_set();
  return made;
}
PyTypeObject* type_of(py::handle type) { return reinterpret_cast<PyTypeObject*>(type.ptr()); }

}  // namespace

void bind_function(py::module_& module, std::string_view signature, std::string_view doc, Body body,
                   const void* function) {
  Signature shape(signature);
  auto* bound = new BoundFunction{shape, shape.name(), shape.doc(doc, false), body, function};
  // Public names are those of the package.
  const py::object home = bound->name.front() == '_' ? py::object(module.attr("__name__")) : py::str("layshaft");
  module.attr(bound->name.c_str()) = built_in(bound, home);
}

void bind_static(py::handle type, std::string_view signature, std::string_view doc, Body body, const void* function) {
  Signature shape(signature);
  auto* bound = new BoundFunction{shape, shape.name(), shape.doc(doc, false), body, function};
  type.attr(bound->name.c_str()) = py::staticmethod(built_in(bound, type.attr("__module__")));
}

void bind_method(py::handle type, std::string_view signature, std::string_view doc, Body body, const void* function) {
  Signature shape(signature);
  const std::string text = doc.empty() ? std::string() : shape.doc(doc, true);
  auto* bound = new BoundFunction{shape, shape.name(), text, body, function, type_of(type)};
  type.attr(bound->name.c_str()) = as_method(built_in(bound, type.attr("__module__")));
}

void bind_maker(const ClassRecord& record, const char* name, std::string_view signature, Maker make,
                const void* function) {
  Signature shape(signature);
  const py::handle type(reinterpret_cast<PyObject*>(record.python));
  const std::string doc = shape.doc(name, "Makes one.", true);
  auto* bound = new BoundFunction{shape, name, doc, nullptr, function, record.python, make, &record};
  type.attr(name) = as_method(built_in(bound, type.attr("__module__")));
}

void bind_property(py::handle type, const char* name, const char* doc, Getter getter, const void* function) {
  auto* bound = new BoundProperty{name, doc, getter, function};
  bound->def = {bound->name.c_str(), get, nullptr, bound->doc.c_str(), bound};
  const auto made = py::reinterpret_steal<py::object>(PyDescr_NewGetSet(type_of(type), &bound->def));
  if (!made) throw py::error_already_set();
  type.attr(name) = made;
}

py::object free_method(std::string_view signature, Body body, const void* function) {
  Signature shape(signature);
  return as_method(built_in(new BoundFunction{shape, shape.name(), {}, body, function}, {}));
}

}  // namespace detail

}  // namespace layshaft::python
