// SPDX-License-Identifier: MIT
#pragma once

#include "band.hpp"
#include "quantity.hpp"

#include <chrono>
#include <initializer_list>
#include <optional>
#include <type_traits>
#include <vector>

/// @file
/// The door of every bound function: `want<T>` makes a C++ value of a Python object, or raises an error that says which
/// argument, what came and what was expected. A wrong type is a TypeError, a wrong value one of layshaft's own errors.
namespace layshaft::python {

/// Raises the TypeError "ARGUMENT: expected EXPECTED, got WHAT CAME".
[[noreturn]] void wrong_type(std::string_view argument, const std::string& expected, py::handle came);

/// A value in SI of this kind; text is read.
[[nodiscard]] double want_quantity(py::handle object, const Kind& kind, std::string_view argument);
/// A finite number.
[[nodiscard]] double want_number(py::handle object, std::string_view argument);
/// A sequence of them.
[[nodiscard]] std::vector<double> want_numbers(py::handle object, std::string_view argument);
/// A whole number; whatever Python takes as an index, but no bool.
[[nodiscard]] int want_int(py::handle object, std::string_view argument, const std::string& expected);
[[nodiscard]] bool want_bool(py::handle object, std::string_view argument);
/// A word from outside as an error shows it: in quotes, cut, and without what steers a terminal.
[[nodiscard]] std::string in_quotes(std::string_view word);
[[nodiscard]] std::string want_text(py::handle object, std::string_view argument, const std::string& expected);
[[nodiscard]] std::chrono::sys_days want_day(py::handle object, std::string_view argument);

namespace detail {

template <class T>
struct Want;

/// The place of a word among those of so many values.
[[nodiscard]] std::size_t want_place(py::handle object, std::string_view argument, const void* values,
                                     std::size_t count, std::string_view (*word_at)(const void*, std::size_t place));
/// Takes each item of a sequence, any but text, with its place: "rears[2]".
void for_each_item(py::handle object, std::string_view argument,
                   void (*take)(void* into, py::handle item, std::string_view place), void* into);

template <class Unit>
struct Want<boost::units::quantity<Unit>> {
  using Quantity = boost::units::quantity<Unit>;
  static Quantity from(py::handle object, std::string_view argument) {
    return Quantity::from_value(want_quantity(object, kind_of<Quantity>(), argument));
  }
};
template <>
struct Want<double> {
  static double from(py::handle object, std::string_view argument) { return want_number(object, argument); }
};
template <>
struct Want<int> {
  static int from(py::handle object, std::string_view argument) { return want_int(object, argument, "an int"); }
};
template <>
struct Want<bool> {
  static bool from(py::handle object, std::string_view argument) { return want_bool(object, argument); }
};
template <>
struct Want<std::string> {
  static std::string from(py::handle object, std::string_view argument) { return want_text(object, argument, "a str"); }
};
template <>
struct Want<std::chrono::sys_days> {
  static std::chrono::sys_days from(py::handle object, std::string_view argument) { return want_day(object, argument); }
};
template <class CountKind>
struct Want<Count<CountKind>> {
  static Count<CountKind> from(py::handle object, std::string_view argument) {
    const int count = want_int(object, argument, std::string("a ").append(CountKind::name).append(", an int"));
    const auto result = Count<CountKind>::make(count);
    if (!result) raise(result.error().in(argument));
    return *result;
  }
};
template <class T>
struct Want<std::optional<T>> {
  static std::optional<T> from(py::handle object, std::string_view argument) {
    if (object.is_none()) return std::nullopt;
    return Want<T>::from(object, argument);
  }
};
/// A Band, or a value known exactly.
template <class T>
struct Want<Band<T>> {
  static Band<T> from(py::handle object, std::string_view argument) {
    if (!is<PyBand>(object)) return Band<T>::exactly(Want<T>::from(object, argument));
    const auto& band = as<PyBand>(object);
    const auto part = [&](double value) { return Want<T>::from(value_to_python(band.kind, value), argument); };
    return {part(band.values.low), part(band.values.nominal), part(band.values.high)};
  }
};
/// Any sequence but text.
template <class T>
struct Want<std::vector<T>> {
  static std::vector<T> from(py::handle object, std::string_view argument) {
    std::vector<T> values;
    for_each_item(
        object, argument,
        [](void* into, py::handle item, std::string_view place) {
          static_cast<std::vector<T>*>(into)->push_back(Want<T>::from(item, place));
        },
        &values);
    return values;
  }
};
template <>
struct Want<std::vector<double>> {
  static std::vector<double> from(py::handle object, std::string_view argument) {
    return want_numbers(object, argument);
  }
};
/// A class bound by itself: an instance of it.
template <class T>
struct Want {
  static const T& from(py::handle object, std::string_view argument) {
    return *static_cast<const T*>(want_instance(class_record<T>, object, argument));
  }
};

}  // namespace detail

/// The C++ value of a Python object, which came in as `argument`.
template <class T>
[[nodiscard]] decltype(auto) want(py::handle object, std::string_view argument) {
  return detail::Want<T>::from(object, argument);
}

/// A C++ value as Python shows it: counts as ints, bands as Band, enumerations as their word, lists as tuples, what is
/// missing as None.
template <class T>
[[nodiscard]] py::object give(const T& value) {
  if constexpr (std::is_enum_v<T>) {
    const std::string_view word = to_string(value);
    return py::str(word.data(), word.size());
  } else if constexpr (std::is_convertible_v<const T&, py::object>) {
    return value;
  } else if constexpr (std::is_class_v<T>) {
    return detail::make_copy(detail::class_record<T>, &value);
  } else {
    return py::cast(value);
  }
}
[[nodiscard]] inline py::object give(std::string_view text) { return py::str(text.data(), text.size()); }
[[nodiscard]] inline py::object give(const std::string& text) { return py::str(text); }
/// A datetime.date.
[[nodiscard]] py::object give(std::chrono::sys_days day);
template <class CountKind>
[[nodiscard]] py::object give(Count<CountKind> count) {
  return py::int_(count.count());
}
template <class T>
[[nodiscard]] py::object give(const Band<T>& band) {
  return give(to_py_band(band));
}
template <class T>
[[nodiscard]] py::object give(const std::optional<T>& value) {
  if (!value) return py::none();
  return give(*value);
}
/// Anything that can be gone through, as a tuple.
template <class List>
[[nodiscard]] py::tuple give_list(const List& list) {
  py::tuple items(std::size(list));
  Py_ssize_t place = 0;
  for (const auto& item : list) PyTuple_SET_ITEM(items.ptr(), place++, give(item).release().ptr());
  return items;
}
[[nodiscard]] inline py::object give(py::handle object) { return py::reinterpret_borrow<py::object>(object); }
namespace detail {
[[nodiscard]] py::tuple tuple_of_objects(std::initializer_list<py::object> items);
}
/// A tuple of the parts, each as Python shows it.
template <class... Parts>
[[nodiscard]] py::tuple tuple_of(const Parts&... parts) {
  return detail::tuple_of_objects({give(parts)...});
}
/// A short list becomes a tuple.
template <class T, std::size_t Capacity>
[[nodiscard]] py::object give(const FixedList<T, Capacity>& list) {
  return give_list(list);
}

}  // namespace layshaft::python
