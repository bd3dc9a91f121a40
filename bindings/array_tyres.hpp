// SPDX-License-Identifier: MIT
#pragma once

#include <pybind11/pybind11.h>

namespace layshaft::python::arrays {

/// Binds `_parse_tyres`, which reads many designations at once.
void register_parse_tyres(pybind11::module_& module);

}  // namespace layshaft::python::arrays
