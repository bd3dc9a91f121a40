// SPDX-License-Identifier: MIT
#include "formula.hpp"

#include <layshaft/gearing/gearing.hpp>

namespace layshaft::python {

void register_gearing(py::module_& module) {
  def_formula<formula::gear_ratio>(module, "The ratio of a pair of gears: driven teeth over driving teeth.");
  def_formula<formula::final_ratio>(module, "The ratio of the chain drive: rear over front sprocket.");
  def_formula<formula::overall_ratio>(module,
                                      "Engine turns per turn of the wheel.\n\n"
                                      ">>> ls.overall_ratio(2.5, 1.5, 13, 52)\n"
                                      "15.0");
  def_formula<formula::equivalent_rear>(
      module,
      "How many teeth, as a real number, the rear sprocket would need with another front sprocket to keep the "
      "final ratio.");
  def_formula<formula::road_speed>(module,
                                   "The road speed (Speed) at an engine speed, without slip.\n\n"
                                   ">>> ls.road_speed(\"6000 rpm\", 20.0, \"2 m\")\n"
                                   "Speed('36 km/h')");
  def_formula<formula::engine_speed>(module, "The engine speed (AngularSpeed) at a road speed, without slip.");
  def_formula<formula::turns_ratio>(module, "Turns of a shaft ahead of the wheel over a distance, trial over base.");
  def_formula<formula::thrust_change>(
      module,
      "The change of thrust in the same gear at equal engine torque, as trial / base - 1.\n\n"
      ">>> round(ls.thrust_change(48 / 13, \"2021 mm\", 50 / 13, \"2072 mm\"), 4)\n"
      "0.016");
  def_formula<formula::thrust_change_with_loss>(
      module,
      "The change of thrust in the same gear at equal engine torque, where the drive's efficiency changes as well, as "
      "trial / base - 1.");
  def_formula<formula::speed_change>(
      module, "The change of road speed in the same gear at equal engine speed, as trial / base - 1.");
  def_formula<formula::engine_speed_change>(
      module,
      "The change of engine speed in the same gear at equal road speed, as trial / base - 1, from the change of "
      "road speed at equal engine speed.");
}

}  // namespace layshaft::python
