// SPDX-License-Identifier: MIT
#include <layshaft/version.hpp>

#include "errors.hpp"

namespace layshaft::python {

void register_quantities(pybind11::module_& module);
void register_band(pybind11::module_& module);
void register_remake(pybind11::module_& module);
void register_source(pybind11::module_& module);
void register_working(pybind11::module_& module);
void register_gearing(pybind11::module_& module);
void register_tyre(pybind11::module_& module);
void register_parse_tyres(pybind11::module_& module);
void register_tread(pybind11::module_& module);
void register_fitness(pybind11::module_& module);
void register_chain(pybind11::module_& module);
void register_chain_fitting(pybind11::module_& module);
void register_chain_travel(pybind11::module_& module);
void register_chain_loads(pybind11::module_& module);
void register_tooth_form(pybind11::module_& module);
void register_listings(pybind11::module_& module);
void register_interchange(pybind11::module_& module);
void register_wear(pybind11::module_& module);
void register_cost(pybind11::module_& module);
void register_instrument(pybind11::module_& module);
void register_engine(pybind11::module_& module);
void register_road(pybind11::module_& module);
void register_thrust(pybind11::module_& module);
void register_ride(pybind11::module_& module);
void register_setup(pybind11::module_& module);
void register_on_road(pybind11::module_& module);
void register_appraisals(pybind11::module_& module);
void register_choose(pybind11::module_& module);
void register_bulk(pybind11::module_& module);
void register_show(pybind11::module_& module);

namespace {

/// No garbage collection for as long as this lives: of thousands of objects that are all kept there is none.
class NoCollection {
 public:
  NoCollection() : was_(PyGC_Disable() == 1) {}
  ~NoCollection() {
    if (was_) PyGC_Enable();
  }
  NoCollection(const NoCollection&) = delete;
  NoCollection& operator=(const NoCollection&) = delete;

 private:
  bool was_;
};

}  // namespace

}  // namespace layshaft::python

// Without the GIL too: what is bound does not change after the module is made, nor does any value.
PYBIND11_MODULE(_core, module, pybind11::mod_gil_not_used()) {
  using namespace layshaft::python;
  const NoCollection none;

  module.doc() = "layshaft, as it is bound from C++; import layshaft instead.";
  module.attr("__version__") = LAYSHAFT_VERSION;
  register_errors(module);
  register_quantities(module);
  register_band(module);  // of quantities
  register_remake(module);
  register_source(module);
  register_working(module);      // of formulas
  register_gearing(module);      // over quantities
  register_tyre(module);         // with sources
  register_parse_tyres(module);  // of tyres
  register_tread(module);        // of tyres
  register_fitness(module);      // of what is asked of tyres
  register_chain(module);
  register_chain_fitting(module);  // of loops
  register_chain_travel(module);
  register_chain_loads(module);
  register_tooth_form(module);   // of sprockets
  register_listings(module);     // of chains
  register_interchange(module);  // of chains and sprockets
  register_wear(module);
  register_cost(module);  // of parts that wear, and of treads
  register_instrument(module);
  register_engine(module);
  register_road(module);        // with sources
  register_thrust(module);      // on surfaces
  register_ride(module);        // by shift rules
  register_setup(module);       // of tyres, chains and instruments
  register_on_road(module);     // of both
  register_appraisals(module);  // of machines and set-ups
  register_choose(module);      // of set-ups
  register_bulk(module);        // of measures
  register_show(module);
}
