// SPDX-License-Identifier: MIT
#include "errors.hpp"

#include <layshaft/core/error.hpp>

#include <algorithm>
#include <string>
#include <string_view>

namespace layshaft::python {
namespace {

namespace py = pybind11;

// Made once with the module and never let go, as exception classes are.
PyObject* error_class = nullptr;
PyObject* parse_error_class = nullptr;
PyObject* range_error_class = nullptr;

PyObject* make_class(py::module_& module, const char* name, PyObject* base, const char* doc) {
  PyObject* made = PyErr_NewExceptionWithDoc(("layshaft." + std::string(name)).c_str(), doc, base, nullptr);
  if (!made) throw py::error_already_set();
  module.attr(name) = py::handle(made);
  return made;
}

py::object to_str(std::string_view utf8) {
  return py::reinterpret_steal<py::object>(
      PyUnicode_DecodeUTF8(utf8.data(), static_cast<Py_ssize_t>(utf8.size()), "replace"));
}

// C++ counts bytes of UTF-8, Python characters.
std::size_t characters(std::string_view utf8, std::size_t bytes) {
  return static_cast<std::size_t>(std::ranges::count_if(
      utf8.substr(0, bytes), [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; }));
}

void set_python_error(const Error& error) {
  std::string sentence = error.what();
  const bool parse = error.kind() == ErrorKind::parse;
  const std::size_t position = parse ? characters(error.text(), error.position()) : 0;
  if (parse && position != error.position()) {
    const std::string said = "at position " + std::to_string(error.position());
    if (const auto at = sentence.find(said); at != sentence.npos)
      sentence.replace(at, said.size(), "at position " + std::to_string(position));
  }
  PyObject* type = parse ? parse_error_class : error.kind() == ErrorKind::range ? range_error_class : error_class;
  const py::object raised = py::reinterpret_borrow<py::object>(type)(to_str(sentence));
  if (parse) {
    raised.attr("text") = to_str(error.text());
    raised.attr("position") = position;
    raised.attr("expected") = to_str(error.expected());
    raised.attr("caret") = to_str(error.caret());
  }
  PyErr_SetObject(type, raised.ptr());
}

}  // namespace

void set_error_of_exception() {
  try {
    throw;
  } catch (py::error_already_set& error) {
    error.restore();
  } catch (...) {
    py::detail::try_translate_exceptions();
  }
}

void register_errors(py::module_& module) {
  error_class = make_class(module, "Error", PyExc_ValueError, "Something layshaft cannot work with.");
  parse_error_class = make_class(module, "ParseError", error_class,
                                 "A text that cannot be read: .text, .position (a character of it, from 0) and "
                                 ".expected say which, where, and what would have been right; .caret is the text "
                                 "with a caret under the place.");
  range_error_class = make_class(module, "RangeError", error_class, "A value outside its range.");
  py::register_exception_translator([](std::exception_ptr pointer) {
    try {
      if (pointer) std::rethrow_exception(pointer);
    } catch (const Error& error) {
      set_python_error(error);
    }
  });
}

}  // namespace layshaft::python
