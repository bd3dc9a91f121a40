// SPDX-License-Identifier: MIT
#include "formula.hpp"
#include "value.hpp"
#include "wants.hpp"

#include <layshaft/wear/wear.hpp>

namespace layshaft::python {

void register_wear(py::module_& module) {
  def_struct<Hunting>(module, "Hunting", "How the teeth of a sprocket meet the links of a chain.",
                      Field{"passes", &Hunting::passes, "Passes of the chain until a tooth meets the same link again."},
                      Field{"distinct_links", &Hunting::distinct_links, "How many different links each tooth meets."},
                      Field{"link_kinds", &Hunting::link_kinds, "1: only inner or only outer links; 2: both."});
  def(module, "hunting(teeth, links)", "How a sprocket's teeth and a chain's links share their meetings: a Hunting.",
      [](const Arguments& given) { return hunting(given.want<Teeth>("teeth"), given.want<Links>("links")); });
  def_formula<formula::passes>(module, "Passes of the whole chain until a tooth meets the same link again.");
  def_formula<formula::distinct_links>(module, "How many different links each tooth meets in that time.");
  def_struct<ToothWear>(
      module, "ToothWear", "How often each tooth meets the chain, and which links.",
      Field{"front_contacts_per_km", &ToothWear::front_contacts_per_km, "Of each front tooth, a Band."},
      Field{"rear_contacts_per_km", &ToothWear::rear_contacts_per_km, "Of each rear tooth, a Band."},
      Field{"front_hunting", &ToothWear::front_hunting, "The front sprocket's Hunting."},
      Field{"rear_hunting", &ToothWear::rear_hunting, "The rear sprocket's Hunting."});
  def(module, "tooth_wear(front, rear, links, circumference)",
      "How often each tooth meets the chain over a kilometre, and which links: a ToothWear.",
      [](const Arguments& given) {
        return tooth_wear(given.want<Teeth>("front"), given.want<Teeth>("rear"), given.want<Links>("links"),
                          given.want<Band<Length>>("circumference"));
      });
  def_formula<formula::front_contacts>(module, "How often each front tooth meets the chain over a distance.");
  def_formula<formula::rear_contacts>(module, "How often each rear tooth meets the chain over a distance.");
  def_formula<formula::contacts_change>(module, "How much oftener a tooth meets the chain, a fraction.");
  def_formula<formula::chain_tension>(module, "The pull (Force) of the chain's tight run that makes a thrust.");
  def_formula<formula::chain_tension_change>(module,
                                             "The change of the chain's pull at equal thrust, as trial / base - 1.");
}

}  // namespace layshaft::python
