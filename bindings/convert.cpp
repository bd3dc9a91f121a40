// SPDX-License-Identifier: MIT
#include "convert.hpp"

#include <limits>

namespace layshaft::python {

namespace {

constexpr std::size_t longest_repr = 60;
/// Python counts days from the first one of the year 1.
constexpr int ordinal_of_epoch = 719163;

py::object date_class() { return py::module_::import("datetime").attr("date"); }

py::object real_class() {
  // Looked up where it is needed only: int and float are told without it.
  return py::module_::import("numbers").attr("Real");
}

/// The UTF-8 bytes of a str; lone surrogates pass as they are, for the parsers to refuse.
std::string utf8(py::handle text) {
  const auto bytes = py::reinterpret_steal<py::bytes>(PyUnicode_AsEncodedString(text.ptr(), "utf-8", "surrogatepass"));
  if (!bytes) throw py::error_already_set();
  return std::string(bytes);
}

}  // namespace

void raise_type_error(const std::string& sentence) {
  PyErr_SetString(PyExc_TypeError, sentence.c_str());
  throw py::error_already_set();
}
std::string with_article(std::string_view type) {
  const bool vowel = std::string_view("AEIOUaeiou").find(type[0]) != std::string_view::npos;
  return std::string(vowel ? "an " : "a ").append(type);
}

bool is_real_number(py::handle object) {
  if (PyFloat_Check(object.ptr())) return true;
  if (PyBool_Check(object.ptr())) return false;
  if (PyLong_Check(object.ptr())) return true;
  if (PyUnicode_Check(object.ptr()) || object.is_none() || kind_of(object)) return false;
  return py::isinstance(object, real_class());
}

bool is_array(py::handle object) { return !is_real_number(object) && py::hasattr(object, "__array__"); }

std::string what_came(py::handle object) {
  if (object.is_none()) return "None";
  const auto type = py::str(py::type::handle_of(object).attr("__name__")).cast<std::string>();
  if (is_array(object)) return type;
  if (kind_of(object)) return py::repr(object).cast<std::string>();
  if (PyList_Check(object.ptr()) || PyTuple_Check(object.ptr()) || PyDict_Check(object.ptr()))
    return type + " of length " + std::to_string(py::len(object));
  const py::object repr = py::repr(object).attr("encode")("utf-8", "backslashreplace").attr("decode")("utf-8");
  auto text = repr.cast<std::string>();
  if (text.size() > longest_repr) {
    text = repr[py::slice(0, longest_repr, 1)].cast<std::string>() + "...";
  }
  return text.starts_with(type + "(") || text.starts_with("<") ? text : type + " " + text;
}

void wrong_type(std::string_view argument, const std::string& expected, py::handle came) {
  raise_type_error(std::string(argument) + ": expected " + expected + ", got " + what_came(came));
}

double want_quantity(py::handle object, const Kind& kind, std::string_view argument) {
  if (Py_TYPE(object.ptr()) == kind.type) return kind.value(object);
  if (PyUnicode_Check(object.ptr())) {
    const auto value = kind.read(utf8(object));
    if (!value) raise(value.error().in(argument));
    return *value;
  }
  if (is_array(object))
    raise_type_error(std::string(argument) + ": expected one " + std::string(kind.name) + ", got " + what_came(object) +
                     "; layshaft.arrays has the functions that take arrays, of plain numbers");
  wrong_type(argument, with_article(kind.name) + " such as " + ways_to_write(kind), object);
}

double want_number(py::handle object, std::string_view argument) {
  if (!is_real_number(object)) wrong_type(argument, "a number", object);
  const double number = PyFloat_AsDouble(object.ptr());
  if (number == -1.0 && PyErr_Occurred()) {
    if (!PyErr_ExceptionMatches(PyExc_OverflowError)) throw py::error_already_set();
    PyErr_Clear();
    raise(Error::range(argument, "too large for a float", "a finite number"));
  }
  if (!is_finite(number)) raise(Error::range(argument, layshaft::detail::in_words(number), "a finite number"));
  return number;
}

int want_int(py::handle object, std::string_view argument, const std::string& expected) {
  if (PyBool_Check(object.ptr()) || !PyIndex_Check(object.ptr()) || is_array(object))
    wrong_type(argument, expected, object);
  const auto whole = py::reinterpret_steal<py::object>(PyNumber_Index(object.ptr()));
  if (!whole) throw py::error_already_set();
  int overflow = 0;
  const long value = PyLong_AsLongAndOverflow(whole.ptr(), &overflow);
  if (overflow || value < std::numeric_limits<int>::min() || value > std::numeric_limits<int>::max())
    raise(Error::range(argument, "too large", expected + " that fits 32 bits"));
  return static_cast<int>(value);
}

bool want_bool(py::handle object, std::string_view argument) {
  if (!PyBool_Check(object.ptr())) wrong_type(argument, "True or False", object);
  return object.ptr() == Py_True;
}

std::size_t detail::want_place(py::handle object, std::string_view argument, const void* values, std::size_t count,
                               std::string_view (*word_at)(const void*, std::size_t place)) {
  std::string words;
  for (std::size_t i = 0; i < count; ++i) words.append(i == 0 ? "'" : ", '").append(word_at(values, i)).append("'");
  const std::string word = want_text(object, argument, "one of " + words);
  for (std::size_t i = 0; i < count; ++i)
    if (word_at(values, i) == word) return i;
  raise(Error::range(argument, in_quotes(word), "one of " + words));
}

namespace {

/// Calls `take(item, place)` with each item of a sequence. The item is held so long: a sequence may make it only when
/// it is asked for, or lose it meanwhile.
template <class Take>
void go_through(py::handle object, std::string_view argument, const Take& take) {
  if (!py::isinstance<py::sequence>(object) || py::isinstance<py::str>(object))
    wrong_type(argument, "a list or tuple", object);
  const auto count = py::len(object);
  for (std::size_t i = 0; i < count; ++i) {
    const auto item = py::reinterpret_steal<py::object>(PySequence_GetItem(object.ptr(), static_cast<Py_ssize_t>(i)));
    if (!item) throw py::error_already_set();
    take(item, i);
  }
}
std::string name_of(std::string_view argument, std::size_t place) {
  return std::string(argument) + "[" + std::to_string(place) + "]";
}

}  // namespace

void detail::for_each_item(py::handle object, std::string_view argument,
                           void (*take)(void* into, py::handle item, std::string_view place), void* into) {
  go_through(object, argument,
             [&](const py::object& item, std::size_t place) { take(into, item, name_of(argument, place)); });
}

std::vector<double> want_numbers(py::handle object, std::string_view argument) {
  std::vector<double> numbers;
  go_through(object, argument, [&](const py::object& item, std::size_t place) {
    // A finite float needs no name.
    const bool plain = PyFloat_CheckExact(item.ptr()) && is_finite(PyFloat_AS_DOUBLE(item.ptr()));
    numbers.push_back(plain ? PyFloat_AS_DOUBLE(item.ptr()) : want_number(item, name_of(argument, place)));
  });
  return numbers;
}

std::string in_quotes(std::string_view word) {
  std::string shown = "'";
  layshaft::detail::append_printable(shown, word);
  return shown + "'";
}

std::string want_text(py::handle object, std::string_view argument, const std::string& expected) {
  if (!PyUnicode_Check(object.ptr())) wrong_type(argument, expected, object);
  return utf8(object);
}

std::chrono::sys_days want_day(py::handle object, std::string_view argument) {
  const py::object date = date_class();
  // A datetime is a date too, but of which place?
  if (!py::type::handle_of(object).is(date)) wrong_type(argument, "a datetime.date", object);
  const int ordinal = object.attr("toordinal")().cast<int>();
  return std::chrono::sys_days(std::chrono::days(ordinal - ordinal_of_epoch));
}

py::tuple detail::tuple_of_objects(std::initializer_list<py::object> items) {
  py::tuple made(items.size());
  Py_ssize_t place = 0;
  for (const py::object& item : items) PyTuple_SET_ITEM(made.ptr(), place++, item.inc_ref().ptr());
  return made;
}

py::object give(std::chrono::sys_days day) {
  return date_class().attr("fromordinal")(static_cast<int>(day.time_since_epoch().count()) + ordinal_of_epoch);
}

}  // namespace layshaft::python
