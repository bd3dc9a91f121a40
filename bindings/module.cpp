// SPDX-License-Identifier: MIT
#include <layshaft/version.hpp>

#include "errors.hpp"

namespace layshaft::python {

void register_quantities(pybind11::module_& module);
void register_band(pybind11::module_& module);
void register_gearing(pybind11::module_& module);

}  // namespace layshaft::python

PYBIND11_MODULE(_core, module) {
  using namespace layshaft::python;
  pybind11::options options;
  options.disable_function_signatures();  // each docstring starts with the signature that we state ourselves

  module.doc() = "layshaft, as it is bound from C++; import layshaft instead.";
  module.attr("__version__") = LAYSHAFT_VERSION;
  register_errors(module);
  register_quantities(module);
  register_band(module);     // of quantities
  register_gearing(module);  // over quantities
}
