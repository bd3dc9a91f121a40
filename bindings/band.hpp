// SPDX-License-Identifier: MIT
#pragma once

#include "quantity.hpp"

/// @file
/// Python's Band: one class for the bands of every quantity and of numbers.
namespace layshaft::python {

/// A band of values in SI; a null kind says that they are plain numbers.
struct PyBand {
  const Kind* kind = nullptr;
  Band<double> values;

  friend bool operator==(const PyBand& a, const PyBand& b) noexcept { return a.kind == b.kind && a.values == b.values; }
};

[[nodiscard]] inline py::object value_to_python(const Kind* kind, double value) {
  return kind ? kind->make(value) : py::float_(value);
}

template <class Unit>
[[nodiscard]] PyBand to_py_band(const Band<boost::units::quantity<Unit>>& band) {
  return {&kind_of<boost::units::quantity<Unit>>(), {band.low.value(), band.nominal.value(), band.high.value()}};
}
[[nodiscard]] inline PyBand to_py_band(const Band<double>& band) { return {nullptr, band}; }

}  // namespace layshaft::python
