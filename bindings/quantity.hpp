// SPDX-License-Identifier: MIT
#pragma once

#include "class.hpp"

#include <layshaft/core/core.hpp>

#include <span>
#include <string>
#include <string_view>

/// @file
/// The Python classes of the quantities, seen without their C++ type: what is bound once serves them all.
namespace layshaft::python {

/// One Python class of quantities.
struct Kind {
  std::string_view name;
  std::string_view example;
  std::span<const UnitName> units;
  double (*value)(py::handle);  ///< in SI, of an instance of this class
  py::object (*make)(double);   ///< an instance, of a finite value in SI
  std::string (*text)(double);  ///< of a value in SI, so that it reads back
  Result<double> (*read)(std::string_view);
  PyTypeObject* type = nullptr;  ///< set when the class is registered
};

namespace detail {
template <class Quantity>
inline Kind kind{QuantityNames<Quantity>::name,
                 QuantityNames<Quantity>::example,
                 QuantityNames<Quantity>::units,
                 [](py::handle object) { return as<Quantity>(object).value(); },
                 [](double value) {
                   const auto quantity = Quantity::from_value(value);
                   return make_copy(class_record<Quantity>, &quantity);
                 },
                 [](double value) { return to_text(Quantity::from_value(value)); },
                 [](std::string_view text) -> Result<double> {
                   const auto quantity = try_parse_quantity<Quantity>(text);
                   if (!quantity) return quantity.error();
                   return quantity->value();
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

}  // namespace layshaft::python
