// SPDX-License-Identifier: MIT
#include "formula.hpp"
#include "wants.hpp"
#include "working.hpp"

#include <layshaft/chain/chain.hpp>
#include <layshaft/chain/explain.hpp>

namespace layshaft::python {
namespace {

void register_series(py::module_& module) {
  Class<ChainSeries> type(
      module, "ChainSeries",
      "ChainSeries(name)\n--\n\nA chain series, single strand, by any usual spelling of its name: '520', '08B', "
      "'08B-1', 'DIN/ISO 08B', 'ANSI 40', '#40', '415H', '08B narrow'. Pitch, roller diameter and inner width are "
      "Lengths; each other dimension, strength and mass is None where no source gives it. Raises ParseError for an "
      "unknown name, with those nearest to it.\n\n"
      ">>> ls.ChainSeries(\"DIN/ISO 08B\").name, ls.ChainSeries(\"520\").pitch\n"
      "('08B', Length('15.875 mm'))");
  def_init(type, "ChainSeries(name)", [](const Arguments& given) { return given.want<ChainSeries>("name"); });
  def_property(type, "name", "The name of the series.", [](const ChainSeries& s) { return s.name(); });
  def_property(type, "aliases", "Its other names, an ANSI number first: a tuple, which may be empty.",
               [](const ChainSeries& s) { return py::object(give_list(s.aliases())); });
  def_property(type, "pitch", "Pitch.", [](const ChainSeries& s) { return s.pitch(); });
  def_property(type, "roller_diameter", "Greatest roller diameter.",
               [](const ChainSeries& s) { return s.roller_diameter(); });
  def_property(type, "inner_width", "Least width between the inner plates.",
               [](const ChainSeries& s) { return s.inner_width(); });
  def_property(type, "pin_diameter", "Greatest pin diameter, or None.",
               [](const ChainSeries& s) { return s.pin_diameter(); });
  def_property(type, "path_depth", "Least height of a channel that the chain runs through, or None.",
               [](const ChainSeries& s) { return s.path_depth(); });
  def_property(type, "inner_plate_height", "Greatest height of the inner plates, or None.",
               [](const ChainSeries& s) { return s.inner_plate_height(); });
  def_property(type, "outer_plate_height", "Greatest height of the outer plates, or None.",
               [](const ChainSeries& s) { return s.outer_plate_height(); });
  def_property(type, "inner_link_width", "Greatest width of an inner link over its plates, or None.",
               [](const ChainSeries& s) { return s.inner_link_width(); });
  def_property(type, "width_over_pin", "Greatest width over a riveted pin, or None; a joint with a clip is wider.",
               [](const ChainSeries& s) { return s.width_over_pin(); });
  def_property(type, "tensile_strength", "Least tensile strength, a Force, or None.",
               [](const ChainSeries& s) { return s.tensile_strength(); });
  def_property(type, "mass_per_length", "A LinearDensity, or None.",
               [](const ChainSeries& s) { return s.mass_per_length(); });
  def_property(type, "sources", "Where each property comes from: a dict of Source.", [](const ChainSeries& s) {
    py::dict sources;
    for (const ChainProperty property : chain_properties)
      if (const Source source = s.source(property); !source.document.empty())
        sources[py::str(to_string(property))] = source;
    return py::object(sources);
  });
  def_special(type, "__str__", [](const ChainSeries& s) { return give(s.name()); });
  def_value(type, [](const ChainSeries& s) { return Remake{tuple_of(give(s.name())), {}}; });
  def(module, "chain_series_names()", "The names of all chain series.",
      [](const Arguments&) { return py::object(give_list(chain_series_names())); });
}

void register_sprocket(py::module_& module) {
  Class<Sprocket> type(module, "Sprocket",
                       "Sprocket(series, teeth)\n--\n\nA sprocket to ISO 606: its diameters, what it measures, "
                       "and the form of its teeth.\n\n"
                       ">>> round(ls.Sprocket(\"520\", 13).pitch_diameter / ls.mm, 3)\n"
                       "66.335");
  def_init(type, "Sprocket(series, teeth)", [](const Arguments& given) {
    return Sprocket(given.want<ChainSeries>("series"), given.want<Teeth>("teeth"));
  });
  def_property(type, "series", "Its chain series.", [](const Sprocket& s) { return s.series(); });
  def_property(type, "teeth", "Its number of teeth.", [](const Sprocket& s) { return s.teeth(); });
  def_property(type, "pitch_diameter", "Diameter of the circle through the joints.",
               [](const Sprocket& s) { return s.pitch_diameter(); });
  def_property(type, "root_diameter", "Diameter at the roots of the teeth.",
               [](const Sprocket& s) { return s.root_diameter(); });
  def_property(type, "tip_diameter", "Diameter over the tips, a Band between the standard's limits.",
               [](const Sprocket& s) { return s.tip_diameter(); });
  def_property(type, "ansi_outside_diameter", "Diameter over the tips to ANSI, beside the standard's band.",
               [](const Sprocket& s) { return s.ansi_outside_diameter(); });
  def_property(type, "measuring_pin", "Diameter of the pins to measure over: that of the rollers.",
               [](const Sprocket& s) { return s.measuring_pin(); });
  def_property(type, "over_pins",
               "What a new sprocket measures over two such pins, in the gaps that are opposite or nearest to it.",
               [](const Sprocket& s) { return s.over_pins(); });
  def_property(type, "tooth_width", "Width of a tooth, single strand: a Band whose nominal is the greatest.",
               [](const Sprocket& s) { return s.tooth_width(); });
  def_property(type, "seating_radius", "Radius of the arc that a roller is seated on, a Band between the limits.",
               [](const Sprocket& s) { return s.seating_radius(); });
  def_property(type, "seating_angle", "Angle over which a roller is seated, a Band between the limits, from memory.",
               [](const Sprocket& s) { return s.seating_angle(); });
  def_property(type, "flank_radius",
               "Radius of the flanks beside the seat, a Band; the least goes with the greatest seat.",
               [](const Sprocket& s) { return s.flank_radius(); });
  def_property(type, "tooth_side_relief", "How far in from the side of a tooth its rounded edge begins.",
               [](const Sprocket& s) { return s.tooth_side_relief(); });
  def_explain(type, "How a number came about, such as 'tip diameter' or 'over pins': a Working.");
  def_value(type, [](const Sprocket& s) { return Remake{tuple_of(give(s.series()), give(s.teeth())), {}}; });
}

void register_loop(py::module_& module) {
  Class<ChainLoop> type(module, "ChainLoop",
                        "ChainLoop(series, front, rear)\n--\n\nThe exact loop of a chain around two sprockets, "
                        "both ways: links for a centre "
                        "distance, and centre distance for links.\n\n"
                        ">>> loop = ls.ChainLoop(\"520\", front=13, rear=50)\n"
                        ">>> round(loop.links(\"615 mm\"), 2)\n"
                        "109.88\n"
                        ">>> f\"{loop.centre(110):.2f mm}\"\n"
                        "'615.99 mm'");
  def_init(type, "ChainLoop(series, front, rear)", [](const Arguments& given) {
    return ChainLoop(given.want<ChainSeries>("series"), given.want<Teeth>("front"), given.want<Teeth>("rear"));
  });
  def_property(type, "series", "The chain series.", [](const ChainLoop& l) { return l.series(); });
  def_property(type, "front", "Teeth of the front sprocket.", [](const ChainLoop& l) { return l.front(); });
  def_property(type, "rear", "Teeth of the rear sprocket.", [](const ChainLoop& l) { return l.rear(); });
  def_property(type, "smallest_centre", "The centre distance at which the sprockets touch.",
               [](const ChainLoop& l) { return l.smallest_centre(); });
  def_property(type, "fewest_links", "The fewest links that go around both sprockets.",
               [](const ChainLoop& l) { return l.fewest_links(); });
  def(type, "links(centre)",
      "The number of links, a real number, at a centre distance. RangeError where the sprockets collide. Error: within "
      "2.3 ulp.",
      [](const ChainLoop& l, const Arguments& given) { return l.links(given.want<Length>("centre")); });
  def(type, "centre(links)",
      "The centre distance (Length) of a number of links, whole or real. RangeError where the sprockets cannot carry "
      "so few. Error: within 2.8 ulp.",
      [](const ChainLoop& l, const Arguments& given) { return l.centre(given.want<double>("links")); });
  def(type, "wrap_front(centre)", "The Angle over which the chain wraps the front sprocket.",
      [](const ChainLoop& l, const Arguments& given) { return l.wrap_front(given.want<Length>("centre")); });
  def(type, "wrap_rear(centre)", "The Angle over which the chain wraps the rear sprocket.",
      [](const ChainLoop& l, const Arguments& given) { return l.wrap_rear(given.want<Length>("centre")); });
  def(type, "run_length(centre)", "The Length of each straight run.",
      [](const ChainLoop& l, const Arguments& given) { return l.run_length(given.want<Length>("centre")); });
  def(type, "links_approximate(centre)",
      "The number of links by the handbook's formula, to stand beside the exact one.",
      [](const ChainLoop& l, const Arguments& given) { return l.links_approximate(given.want<Length>("centre")); });
  def(type, "explain(what, *, centre=None, links=None)",
      "How a number of the loop came about: a Working. 'links', 'run length' and the wraps are explained at a centre "
      "distance, 'centre' for a number of links.",
      [](const ChainLoop& l, const Arguments& given) {
        const std::string what = want_what(given);
        const LoopQuestion at{.centre = given.want<std::optional<Length>>("centre"),
                              .links = given.want<std::optional<double>>("links")};
        py::dict named;
        name_if(named, "centre", at.centre);
        name_if(named, "links", at.links);
        return PyWorking(l.explain(what, at), py::cast(l).attr("explain"), tuple_of(what), named);
      });
  def_value(type, [](const ChainLoop& l) {
    return Remake{tuple_of(give(l.series()), give(l.front()), give(l.rear())), {}};
  });
}

void register_fit(py::module_& module) {
  const char* signature = "Adjuster(centre_min, centre_max, slack='0 mm')";
  Class<Adjuster> adjuster(
      module, "Adjuster",
      Signature(signature)
          .doc("Where the axle can stand, as centre distances on the stand, and the slack to set: the hand movement at "
               "mid-span of the lower run, up plus down, in neutral.",
               false)
          .c_str());
  def_init(adjuster, signature, [](const Arguments& given) {
    return Adjuster(given.want<Length>("centre_min"), given.want<Length>("centre_max"),
                    given.want<Length>("slack", Length()));
  });
  def_property(adjuster, "centre_min", "Foremost position.", [](const Adjuster& a) { return a.centre_min(); });
  def_property(adjuster, "centre_max", "Rearmost position.", [](const Adjuster& a) { return a.centre_max(); });
  def_property(adjuster, "slack", "Hand movement at mid-span.", [](const Adjuster& a) { return a.slack(); });
  def_value(adjuster, [](const Adjuster& a) {
    Remake remake{tuple_of(give(a.centre_min()), give(a.centre_max())), {}};
    if (a.slack() != Length()) remake.named["slack"] = give(a.slack());
    return remake;
  });

  auto fit = def_struct<ChainFit>(
      module, "ChainFit", "A number of links in an adjuster. Bands run over a new chain's length, 0 to +0.15 %.",
      Field{"links", &ChainFit::links, "The number of links."},
      Field{"centre", &ChainFit::centre, "Where the axle stands with the stated slack, a Band of Length."},
      Field{"fits", &ChainFit::fits, "Whether the whole band stands inside the adjuster."},
      Field{"adjuster_forward", &ChainFit::adjuster_forward, "Room to come forward, a Band of Length; below 0: none."},
      Field{"adjuster_rearward", &ChainFit::adjuster_rearward, "Room to go back, a Band of Length; below 0: none."},
      Field{"wear_room", &ChainFit::wear_room, "Elongation at which the adjuster ends, a Band of fractions."},
      Field{"offset_link", &ChainFit::offset_link, "Whether the odd count needs an offset link."});
  def_property(fit, "stretch_left", "How much the chain can still stretch: wear_room by its everyday name.",
               [](const ChainFit& f) { return f.stretch_left(); });
  def(module, "fit_links(loop, links, adjuster)", "Where the axle stands with this many links: a ChainFit.",
      [](const Arguments& given) {
        return fit_links(given.want<ChainLoop>("loop"), given.want<Links>("links"), given.want<Adjuster>("adjuster"));
      });
  def(module, "shortest_links(loop, adjuster)",
      "The shortest even chain that reaches the stated slack inside the adjuster. Error where none does: it says by "
      "how much, and which nearest sprockets would fit.",
      [](const Arguments& given) {
        return shortest_links(given.want<ChainLoop>("loop"), given.want<Adjuster>("adjuster"));
      });
  def(module, "links_to_cut(bought, needed)",
      "How many links to cut from a longer chain. RangeError where it is too short.",
      [](const Arguments& given) { return links_to_cut(given.want<Links>("bought"), given.want<Links>("needed")); });
  def(module, "round_links(links, rounding='up to even')",
      "A real number of links made whole: 'up to even', 'nearest even', 'down to even' or 'up'. Books differ.",
      [](const Arguments& given) {
        return round_links(given.want<double>("links"), given.want<LinkRounding>("rounding", LinkRounding::up_to_even));
      });
}

}  // namespace

void register_chain(py::module_& module) {
  register_series(module);
  register_sprocket(module);
  register_loop(module);
  register_fit(module);
  def_formula<formula::pitch_diameter>(module, "Pitch diameter (Length) of a sprocket.");
  def_formula<formula::effective_links>(module, "The links of nominal length that a longer chain counts as.");
  def_formula<formula::links_with_slack>(module, "The links, a real number, of a loop with a length to spare.");
  def_formula<formula::adjuster_forward>(module, "How far (Length) the axle can move forward.");
  def_formula<formula::adjuster_rearward>(module, "How far (Length) the axle can move back.");
  def_formula<formula::wear_room>(module,
                                  "How far a chain can wear longer, a fraction, until the axle stands at the rear "
                                  "end, from the links that a loop of nominal length would have there.");
  def_formula<formula::spare_length>(module, "Chain length (Length) to spare for a hand movement at mid-span.");
  def_formula<formula::slack_by_hand>(module, "Hand movement (Length) at mid-span, up plus down, for a spare length.");
}

}  // namespace layshaft::python
