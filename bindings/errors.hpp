// SPDX-License-Identifier: MIT
#pragma once

#include <pybind11/pybind11.h>

/// @file
/// layshaft.Error, ParseError and RangeError, all of them ValueErrors, raised with the words of their C++ twins.
namespace layshaft::python {

void register_errors(pybind11::module_& module);
/// Sets Python's error by the C++ exception that is being handled.
void set_error_of_exception();

}  // namespace layshaft::python
