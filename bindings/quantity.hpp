// SPDX-License-Identifier: MIT
#pragma once

#include "class.hpp"

#include <layshaft/core/core.hpp>

#include <string>
#include <string_view>

/// @file
/// The Python classes of the quantities, seen without their C++ type: what is bound once serves them all.
namespace layshaft::python {

/// One Python class of quantities.
struct Kind : layshaft::detail::NamesOfQuantity {
  double (*value)(py::handle);   ///< in SI, of an instance of this class
  py::object (*make)(double);    ///< an instance, of a finite value in SI
  PyTypeObject* type = nullptr;  ///< set when the class is registered

  /// Of a value in SI, so that it reads back.
  [[nodiscard]] std::string text(double si) const { return layshaft::detail::si_to_text(si, units); }
  [[nodiscard]] Result<double> read(std::string_view text) const { return layshaft::detail::try_parse_si(text, *this); }
};

namespace detail {
template <class Quantity>
inline Kind kind{layshaft::detail::names_of<Quantity>, [](py::handle object) { return as<Quantity>(object).value(); },
                 [](double value) {
                   const auto quantity = Quantity::from_value(value);
                   return make_copy(class_record<Quantity>, &quantity);
                 }};
}  // namespace detail

/// The Python class of a C++ quantity.
template <class Quantity>
[[nodiscard]] const Kind& kind_of() {
  return detail::kind<Quantity>;
}
/// The class of a Python object, or null when it is no quantity.
[[nodiscard]] const Kind* kind_of(py::handle object);
/// How a quantity of this kind is written, for messages: "612 * mm or '612 mm'".
[[nodiscard]] std::string ways_to_write(const Kind& kind);

/// True of whatever Python counts as a real number: int, float, a Fraction, a NumPy scalar; not of bool.
[[nodiscard]] bool is_real_number(py::handle object);
/// Whether it is a NumPy array or made like one, which only layshaft.arrays takes.
[[nodiscard]] bool is_array(py::handle object);
/// What came, for messages: "float 612.0", "Mass('1 kg')", "None".
[[nodiscard]] std::string what_came(py::handle object);

/// Python's TypeError with this sentence.
[[noreturn]] void raise_type_error(const std::string& sentence);
/// "an Angle", "a Length".
[[nodiscard]] std::string with_article(std::string_view type);

}  // namespace layshaft::python
