// SPDX-License-Identifier: MIT
#include "formula.hpp"
#include "value.hpp"
#include "wants.hpp"

#include <layshaft/chain/chain.hpp>

namespace layshaft::python {
namespace {

void register_methods(py::module_& module) {
  def_struct<CentreMethods>(module, "CentreMethods",
                            "The centre distance for a number of links, by every way there is; all Lengths.",
                            Field{"exact", &CentreMethods::exact, "Of the loop over the pitch polygons."},
                            Field{"handbook", &CentreMethods::handbook, "By the handbook's formula."},
                            Field{"f4", &CentreMethods::f4, "By the standard's factor f4."},
                            Field{"handbook_error", &CentreMethods::handbook_error, "Handbook less exact."},
                            Field{"f4_error", &CentreMethods::f4_error, "Standard less exact."});
  def(module, "centre_methods(loop, links)",
      "The centre distance for a number of links (whole or real) by every way there is: CentreMethods. RangeError "
      "where "
      "the sprockets cannot carry so few.",
      [](const Arguments& given) {
        return centre_methods(given.want<ChainLoop>("loop"), given.want<double>("links"));
      });
  def(module, "f4(ratio)",
      "The standard's factor f4 for (links - smaller) / (larger - smaller) teeth, above 1. RangeError otherwise.",
      [](const Arguments& given) {
        const double ratio = given.want<double>("ratio");
        if (!(ratio > 1.0)) raise(Error::range("ratio", layshaft::detail::in_words(ratio), "above 1"));
        return f4(ratio);
      });
  def_formula<formula::f4_of_angle>(module, "The factor f4, from the angle of the runs.");
  def_formula<formula::centre_f4>(module, "Centre distance (Length) by the factor f4.");
}

void register_mesh(py::module_& module) {
  def_struct<Engagement>(module, "Engagement", "Wrap and teeth in mesh on both sprockets.",
                         Field{"wrap_front", &Engagement::wrap_front, "Angle of the chain on the front sprocket."},
                         Field{"wrap_rear", &Engagement::wrap_rear, "Angle of the chain on the rear sprocket."},
                         Field{"front", &Engagement::front, "Teeth in mesh on the front sprocket, a float."},
                         Field{"rear", &Engagement::rear, "Teeth in mesh on the rear sprocket, a float."});
  def(module, "engagement(loop, centre)",
      "Wrap and teeth in mesh at a centre distance: an Engagement. Handbooks ask for 120 degrees and 6 teeth on the "
      "smaller sprocket (common practice, no source); motorcycles ride well with a little less. RangeError as "
      "loop.links.",
      [](const Arguments& given) { return engagement(given.want<ChainLoop>("loop"), given.want<Length>("centre")); });
  def_formula<formula::teeth_in_mesh>(module, "Teeth in mesh, from the angle of wrap.");
  def_struct<PolygonRipple>(
      module, "PolygonRipple", "How a drive swings within one tooth of its front sprocket.",
      Field{"loop_length", &PolygonRipple::loop_length, "How much (Length) the taut loop varies."},
      Field{"least_ratio", &PolygonRipple::least_ratio,
            "Least speed of the rear shaft at a steady front one, over its mean."},
      Field{"greatest_ratio", &PolygonRipple::greatest_ratio, "Greatest."},
      Field{"least_chain_speed", &PolygonRipple::least_chain_speed, "Least speed of the tight run, over its mean."},
      Field{"greatest_chain_speed", &PolygonRipple::greatest_chain_speed, "Greatest."});
  def(module, "polygon_ripple(loop, centre)",
      "How loop length, chain speed and the rear shaft's speed swing within one tooth, from the pins on both polygons "
      "with whole links in the tight run: a PolygonRipple. RangeError as loop.links.",
      [](const Arguments& given) {
        return polygon_ripple(given.want<ChainLoop>("loop"), given.want<Length>("centre"));
      });
  def_formula<formula::speed_variation>(
      module, "1 - cos(180 degrees / teeth): how much slower the chain runs on a flat than on a corner.");
}

void register_fitting(py::module_& module) {
  def(module, "fit_chain(loop, centre_min, centre_max, *, slack='0 mm', offset_links=False)",
      "Every number of links that closes with the axle between two centre distances, with so much slack by hand: a "
      "tuple "
      "of ChainFit, the shortest chain first; empty where none closes. Odd numbers, which need an offset link, only "
      "where asked for: never on a motorcycle.",
      [](const Arguments& given) {
        return py::object(give_list(fit_chain(given.want<ChainLoop>("loop"), given.want<Length>("centre_min"),
                                              given.want<Length>("centre_max"), given.want<Length>("slack", Length()),
                                              given.want<bool>("offset_links", false))));
      });
  def_struct<KeptChainPair>(
      module, "KeptChainPair", "Other sprockets on which the present chain closes.",
      Field{"front", &KeptChainPair::front, "Teeth of the front sprocket."},
      Field{"rear", &KeptChainPair::rear, "Teeth of the rear sprocket."},
      Field{"ratio_change", &KeptChainPair::ratio_change, "Change of the final ratio, a fraction."},
      Field{"centre", &KeptChainPair::centre, "Where the axle then stands, a Length."},
      Field{"axle_move", &KeptChainPair::axle_move, "To the rear, a Length; below 0 forward."});
  def(module, "pairs_for_chain(loop, links, adjuster, *, elongation=0.0)",
      "Sprockets within two teeth in front and six behind that keep the present chain, longer than nominal by "
      "elongation "
      "(0 to 0.1): a tuple of KeptChainPair, the smallest change of the ratio first. A worn chain ruins new sprockets.",
      [](const Arguments& given) {
        return py::object(
            give_list(pairs_for_chain(given.want<ChainLoop>("loop"), given.want<Links>("links"),
                                      given.want<Adjuster>("adjuster"), given.want<double>("elongation", 0.0))));
      });
  def_formula<formula::stretch_left_approximate>(
      module, "How far a chain can wear until the adjuster ends, by the handbook, a fraction.");
  def_formula<formula::adjuster_turns>(module, "Turns of an adjuster's screw that move the axle so far.");
}

}  // namespace

void register_chain_fitting(py::module_& module) {
  register_methods(module);
  register_mesh(module);
  register_fitting(module);
}

}  // namespace layshaft::python
