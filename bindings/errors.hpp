// SPDX-License-Identifier: MIT
#pragma once

#include <pybind11/pybind11.h>

/// @file
/// layshaft.Error, ParseError and RangeError, all of them ValueErrors, raised with the words of their C++ twins.
namespace layshaft::python {

void register_errors(pybind11::module_& module);

}  // namespace layshaft::python
