// SPDX-License-Identifier: MIT
#include "formula.hpp"
#include "wants.hpp"
#include "working.hpp"

#include <layshaft/chain/explain.hpp>
#include <layshaft/chain/interchange.hpp>
#include <layshaft/chain/sprocket_measure.hpp>

namespace layshaft::python {

void register_interchange(py::module_& module) {
  Class<Interchange> type(
      module, "Interchange",
      "Interchange(chain, cut_for)\n--\n\nWhether a chain runs on sprockets that were cut for a series, its own or "
      "another, and why not. Two rollers count as the same while each seats in the least gap that the standard allows "
      "for the other. A chain's strength is no part of this.\n\n"
      ">>> pair = ls.Interchange(\"530\", cut_for=\"520\")\n"
      ">>> pair.fits, pair.reasons\n"
      "(False, ('sloppy',))");
  def_init(type, "Interchange(chain, cut_for)", [](const Arguments& given) {
    return Interchange(given.want<ChainSeries>("chain"), given.want<ChainSeries>("cut_for"));
  });
  def_property(type, "chain", "The ChainSeries that is to run.", [](const Interchange& i) { return i.chain(); });
  def_property(type, "cut_for", "The ChainSeries that the sprockets were cut for.",
               [](const Interchange& i) { return i.cut_for(); });
  def_property(type, "fits", "Whether the chain runs there as on its own sprockets: nothing speaks against it.",
               [](const Interchange& i) { return i.fits(); });
  def_property(type, "reasons",
               "All that speaks against it, a tuple of 'pitch differs', 'roller larger', 'roller smaller', 'tooth too "
               "wide' and 'sloppy'. Where 'sloppy' is the only one the chain goes on, with too much play at the side.",
               [](const Interchange& i) { return py::object(give_list(i.reasons())); });
  def_property(type, "tooth_width", "Width of the sprockets' teeth, a Band of Length whose nominal is the greatest.",
               [](const Interchange& i) { return i.tooth_width(); });
  def_property(
      type, "side_play",
      "How far the chain can move to the side, both sides together, at the least: a Band of Length, nominal on "
      "the widest tooth. Below zero: how much too wide the tooth is.",
      [](const Interchange& i) { return i.side_play(); });
  def_property(type, "roller_difference", "How much larger the chain's roller is than the one the gaps are cut for.",
               [](const Interchange& i) { return i.roller_difference(); });
  def_explain(type, "How 'tooth width' or 'side play' came about: a Working.");
  def_value(type, [](const Interchange& i) { return Remake{tuple_of(give(i.chain()), give(i.cut_for())), {}}; });

  def(module, "chains_for_sprockets(cut_for)",
      "Every ChainSeries whose chain runs on sprockets that were cut for this one, itself among them: a tuple.",
      [](const Arguments& given) {
        return py::object(give_list(chains_for_sprockets(given.want<ChainSeries>("cut_for"))));
      });
  def(module, "sprockets_for_chain(chain)",
      "Every ChainSeries on whose sprockets this chain runs, its own among them: a tuple.", [](const Arguments& given) {
        return py::object(give_list(sprockets_for_chain(given.want<ChainSeries>("chain"))));
      });
  def(module, "tooth_width(series)",
      "Width of the teeth cut for a series, single strand: a Band of Length whose nominal is the greatest.",
      [](const Arguments& given) { return tooth_width(given.want<ChainSeries>("series")); });
  def_formula<formula::over_pins_even>(module, "Size (Length) over two pins, of an even number of teeth.");
  def_formula<formula::over_pins_odd>(module, "Size (Length) over two pins, of an odd number of teeth.");
  def_formula<formula::ansi_outside_diameter>(module, "Diameter (Length) over the tips to ANSI.");
  def_formula<formula::side_play>(module, "Play (Length) of a chain on a tooth, both sides together.");
}

}  // namespace layshaft::python
