// SPDX-License-Identifier: MIT
#include "wants.hpp"
#include "working.hpp"

#include <layshaft/chain/ansi_tooth_form.hpp>
#include <layshaft/chain/explain.hpp>

namespace layshaft::python {

void register_tooth_form(py::module_& module) {
  Class<AnsiToothForm> type(
      module, "AnsiToothForm",
      "AnsiToothForm(sprocket)\n--\n\nThe form of a Sprocket's teeth to ANSI: half a gap is an arc on which the "
      "roller is seated, a working arc, a short straight piece and the arc of the tip. Lengths and Angles.");
  def_init(type, "AnsiToothForm(sprocket)",
           [](const Arguments& given) { return AnsiToothForm(given.want<Sprocket>("sprocket")); });
  def_property(type, "sprocket", "The Sprocket.", [](const AnsiToothForm& f) { return f.sprocket(); });
  def_property(type, "seating_diameter",
               "The diameter of the curve that a roller is seated on; 0.003 inch more than in proportion.",
               [](const AnsiToothForm& f) { return f.seating_diameter(); });
  def_property(type, "seating_angle",
               "How far the seating curve reaches to either side of the line that the tooth gap is symmetrical to.",
               [](const AnsiToothForm& f) { return f.seating_angle(); });
  def_property(type, "working_angle", "The angle of the working curve, which follows the seating curve.",
               [](const AnsiToothForm& f) { return f.working_angle(); });
  def_property(type, "working_distance", "How far the centre of the working curve stands from that of the roller.",
               [](const AnsiToothForm& f) { return f.working_distance(); });
  def_property(type, "working_along", "The same along the gap's line.",
               [](const AnsiToothForm& f) { return f.working_along(); });
  def_property(type, "working_across", "The same across it.",
               [](const AnsiToothForm& f) { return f.working_across(); });
  def_property(type, "working_radius", "The radius of the working curve; 0.0015 inch more than in proportion.",
               [](const AnsiToothForm& f) { return f.working_radius(); });
  def_property(type, "working_chord", "The chord of the working curve.",
               [](const AnsiToothForm& f) { return f.working_chord(); });
  def_property(
      type, "flat",
      "The length of the straight piece between the working curve and the tip's; below zero for very few teeth.",
      [](const AnsiToothForm& f) { return f.flat(); });
  def_property(type, "topping_distance", "How far the centre of the tip's curve stands from that of the roller.",
               [](const AnsiToothForm& f) { return f.topping_distance(); });
  def_property(type, "topping_across", "The same across the gap's line.",
               [](const AnsiToothForm& f) { return f.topping_across(); });
  def_property(type, "topping_along", "The same along it.", [](const AnsiToothForm& f) { return f.topping_along(); });
  def_property(type, "topping_radius", "The radius of the tip's curve; 0.0015 inch less than in proportion.",
               [](const AnsiToothForm& f) { return f.topping_radius(); });
  def_property(type, "topping_offset", "How far the centre of the tip's curve stands beyond the middle of the pitch.",
               [](const AnsiToothForm& f) { return f.topping_offset(); });
  def_property(type, "topping_height", "How high above the side of the chain's polygon a tooth would be pointed.",
               [](const AnsiToothForm& f) { return f.topping_height(); });
  def_property(type, "tip_distance", "How far that point stands from the gap's line.",
               [](const AnsiToothForm& f) { return f.tip_distance(); });
  def_explain(type, "How a number came about, such as 'topping radius': a Working.");
  def_value(type, [](const AnsiToothForm& f) { return Remake{tuple_of(give(f.sprocket())), {}}; });
}

}  // namespace layshaft::python
