// SPDX-License-Identifier: MIT
#include "formula.hpp"
#include "wants.hpp"
#include "working.hpp"

#include <layshaft/tyre/explain.hpp>
#include <layshaft/tyre/tyre.hpp>

namespace layshaft::python {
namespace detail {
template <>
struct Words<TyreDeflection> {
  static constexpr TyreDeflection values[] = {TyreDeflection::motorcycle, TyreDeflection::light_truck};
};
}  // namespace detail

namespace {

TyreDeflection want_deflection(const Arguments& given) {
  return given.want<TyreDeflection>("deflection", TyreDeflection::motorcycle);
}

void register_rolling(py::module_& module) {
  def(module, "rolling_circumference(tyre, deflection='motorcycle')",
      "The distance the tyre rolls in one turn, a Band of Length over the tolerance of its marking and its rolling "
      "factor. A measured rollout is better: give it to Setup as circumference. deflection is 'motorcycle' (from "
      "memory) or 'light truck' (published, and more).\n\n"
      ">>> rolled = ls.rolling_circumference(\"120/90-18\")\n"
      ">>> ls.show(rolled)\n"
      "'2072.0 (2020.6 to 2151.0) mm'",
      [](const Arguments& given) {
        const auto tyre = given.want<TyreSize>("tyre");
        const TyreDeflection deflection = want_deflection(given);
        return deflection == TyreDeflection::motorcycle ? rolling_circumference(tyre)
                                                        : rolling_circumference(tyre, deflection);
      });
  def(module, "rolling_factor(construction='diagonal', deflection='motorcycle')",
      "Rolling circumference over that of the free tyre, a Band: of motorcycle tyres from memory, of 'light truck' "
      "ones "
      "from published radii.",
      [](const Arguments& given) {
        return rolling_factor(given.want<TyreConstruction>("construction", TyreConstruction::diagonal),
                              want_deflection(given));
      });
  def(module, "static_share(construction='diagonal', deflection='motorcycle')",
      "Static over free radius, a Band: of motorcycle tyres from memory, of 'light truck' ones published.",
      [](const Arguments& given) {
        return static_share(given.want<TyreConstruction>("construction", TyreConstruction::diagonal),
                            want_deflection(given));
      });
  def(module, "free_radius(tyre)",
      "Radius of the new tyre, inflated and off the ground: a Band of Length over the tolerance of its marking.",
      [](const Arguments& given) { return free_radius(given.want<TyreSize>("tyre")); });
  def(module, "static_radius(tyre, deflection='motorcycle')",
      "Height of the axle above the ground on the new tyre under its load, at rest: a Band of Length.",
      [](const Arguments& given) { return static_radius(given.want<TyreSize>("tyre"), want_deflection(given)); });
  def(module, "effective_radius(tyre, deflection='motorcycle')",
      "Radius of the circle that rolls as far as the new tyre does: a Band of Length.",
      [](const Arguments& given) { return effective_radius(given.want<TyreSize>("tyre"), want_deflection(given)); });
  def(module, "static_radius_from(circumference, free_radius)",
      "Height of the axle (Length) on a tyre that rolls this far in one turn and has this free radius off the ground "
      "(30 mm to 1 m). Small errors of either come out two to three times as large.",
      [](const Arguments& given) {
        return static_radius_from(given.want<Length>("circumference"), given.want<Length>("free_radius"));
      });
  def_formula<formula::circumference_of_radius>(module,
                                                "Distance (Length) rolled in one turn, of an effective radius.");
  def_formula<formula::radius_of_circumference>(module, "Effective radius (Length) that a circumference means.");
  def_formula<formula::factor_of_share>(module, "Rolling factor, from static over free radius.");
  def_formula<formula::share_of_factor>(module, "Static over free radius, from the rolling factor.");
}

void register_tyre_formulas(py::module_& module) {
  def_formula<formula::section_height>(module,
                                       "Section height (Length) from section width and aspect ratio in per cent.");
  def_formula<formula::overall_diameter>(module, "Overall diameter (Length) of the free tyre.");
  def_formula<formula::overall_diameter_limit>(module, "A limit of the overall diameter (Length).");
  def_formula<formula::overall_diameter_on_another_rim>(
      module, "Overall diameter (Length) of a listed section on another rim than the one it is listed with.");
  def_formula<formula::flotation_diameter>(module, "Overall diameter (Length) of a flotation tyre.");
  def_formula<formula::cycle_diameter>(module, "Overall diameter (Length) of a cycle tyre.");
  def_formula<formula::snow_diameter_limit>(module,
                                            "Limit of a snow tyre's overall diameter (Length), from a road tyre's.");
  def_formula<formula::worn_diameter>(module, "Overall diameter (Length) with so much of the tread's height worn off.");
  def_formula<formula::section_height_of_diameter>(module, "Section height (Length) from a known overall diameter.");
  def_formula<formula::section_width_limit>(module, "Greatest section width (Length) of a marking.");
  def_formula<formula::section_width_on_another_rim>(
      module, "Section width (Length) on a rim of another width than the one it is measured on.");
}

}  // namespace

void register_tyre(py::module_& module) {
  const char* signature = "TyreSize(text, use='road')";
  Class<TyreSize> type(
      module, "TyreSize",
      Signature(signature)
          .doc("A tyre's size as its sidewall says it: metric '110/90-18 M/C 61R TL', code '4.10-18 59P', lettered "
               "'MT90B16', flotation '31x10.50R15LT', cycle '37-622'. use is 'road', 'special' (knobs "
               "for rough ground, which stand higher) or 'snow'.\n\n"
               "Raises ParseError with .position, .expected and .caret where the text cannot be read; the nearest "
               "markings stand in what was expected.\n\n"
               ">>> tyre = ls.TyreSize(\"120/90-18 M/C 65R\")\n"
               ">>> tyre.section_width, tyre.rim_diameter, tyre.load_index, tyre.speed_symbol\n"
               "(Length('120 mm'), Length('457 mm'), 65, 'R')\n"
               ">>> tyre.overall_diameter\n"
               "Band(Length('666.52 mm'), Length('673 mm'), Length('688.12 mm'))\n"
               ">>> ls.TyreSize(\"120/90\")\n"
               "Traceback (most recent call last):\n"
               "    ...\n"
               "layshaft.ParseError: the designation ends too soon at position 6 of \"120/90\"; expected -, B, R or "
               "ZR, then the rim code",
               false)
          .c_str());
  def_init(type, signature, [](const Arguments& given) {
    const auto use = given.want<TyreUse>("use", TyreUse::road);
    const py::object text = given.object("text");
    if (is<TyreSize>(text)) return TyreSize(as<TyreSize>(text).designation(), use);
    return TyreSize(want_text(text, "text", "a marking such as '110/90-18'"), use);
  });
  def_property(type, "designation", "The marking in its canonical form.",
               [](const TyreSize& t) { return t.designation(); });
  def_property(type, "notation", "'metric', 'code', 'lettered', 'flotation' or 'cycle'.",
               [](const TyreSize& t) { return t.notation(); });
  def_property(type, "construction", "'diagonal', 'bias-belted' or 'radial'.",
               [](const TyreSize& t) { return t.construction(); });
  def_property(type, "use", "'road', 'special' or 'snow'.", [](const TyreSize& t) { return t.use(); });
  def_property(type, "section_width", "Nominal section width, a Length.",
               [](const TyreSize& t) { return t.section_width(); });
  def_property(type, "aspect_ratio", "As marked, in per cent; None where the marking has none.",
               [](const TyreSize& t) { return t.aspect_ratio(); });
  def_property(type, "rim_code", "The rim's code, about its diameter in inches; None of a cycle's.",
               [](const TyreSize& t) { return t.rim_code(); });
  def_property(type, "rim_diameter",
               "Nominal rim diameter, a Length; of a cycle tyre, the diameter that its bead sits on.",
               [](const TyreSize& t) { return t.rim_diameter(); });
  def_property(type, "overall_diameter", "Overall diameter of the free tyre, a Band over the tolerance of its marking.",
               [](const TyreSize& t) { return t.overall_diameter(); });
  def_property(type, "load_index", "As marked, or None.", [](const TyreSize& t) { return t.load_index(); });
  def_property(type, "speed_symbol", "As marked, or None.", [](const TyreSize& t) -> std::optional<std::string_view> {
    if (const auto symbol = t.speed_symbol()) return symbol->name;
    return std::nullopt;
  });
  def_property(type, "second_load_index", "Of a tyre in twins, as marked, or None.",
               [](const TyreSize& t) { return t.second_load_index(); });
  def_property(type, "ply_rating", "As marked, or None.", [](const TyreSize& t) { return t.ply_rating(); });
  def_property(type, "made", "Week and year it was made, a tuple, or None.", [](const TyreSize& t) {
    const auto made = t.made();
    return made ? py::object(tuple_of(made->week, made->year)) : py::object(py::none());
  });
  def_property(type, "beyond_symbol", "The service description stands in brackets: made for speeds above its symbol's.",
               [](const TyreSize& t) { return t.beyond_symbol(); });
  def_property(type, "zr", "Marked ZR, the radial for speeds above 240 km/h.",
               [](const TyreSize& t) { return t.zr(); });
  def_property(type, "motorcycle", "Marked M/C.", [](const TyreSize& t) { return t.motorcycle(); });
  def_property(type, "tube", "'tubeless' (TL), 'tube' (TT) or 'unmarked'.", [](const TyreSize& t) { return t.tube(); });
  def_property(type, "reinforced", "Marked REINF.", [](const TyreSize& t) { return t.reinforced(); });
  def_property(type, "vehicle",
               "What the letters P, LT, C or AT say: 'passenger', 'light truck', 'commercial', 'all-terrain' or "
               "'unmarked'.",
               [](const TyreSize& t) { return t.vehicle(); });
  def(type, "undated()", "The same tyre without its week of manufacture.",
      [](const TyreSize& t, const Arguments&) { return t.undated(); });
  def_property(type, "winter", "Marked M+S.", [](const TyreSize& t) { return t.winter(); });
  def_property(type, "multi_service", "Marked MST.", [](const TyreSize& t) { return t.multi_service(); });
  def_property(type, "not_for_highway", "Marked NHS.", [](const TyreSize& t) { return t.not_for_highway(); });
  def_property(type, "source", "Where its dimensions come from, and how sure they are.",
               [](const TyreSize& t) { return t.source(); });
  def_explain(type,
              "How 'overall diameter', 'circumference', 'free radius', 'static radius' or 'effective radius' came "
              "about: a Working.");
  def_special(type, "__str__", [](const TyreSize& t) { return t.designation(); });
  def_value(type, [](const TyreSize& t) {
    Remake remake{tuple_of(give(t.designation())), {}};
    if (t.use() != TyreUse::road) remake.named["use"] = give(t.use());
    return remake;
  });

  def(module, "load_capacity(index)",
      "The Mass a tyre of this load index (0 to 150) carries. Source: ISO 4223-1.\n\n"
      ">>> ls.load_capacity(65)\n"
      "Mass('290 kg')",
      [](const Arguments& given) { return load_capacity(given.want<int>("index")); });
  def(module, "rated_speed(symbol)",
      "The Speed a tyre of this speed symbol ('A1' to 'Y') is rated to.\n\n"
      ">>> ls.rated_speed(\"R\")\n"
      "Speed('170 km/h')",
      [](const Arguments& given) {
        return rated_speed(want_text(given.object("symbol"), "symbol", "a speed symbol such as 'R'"));
      });
  register_rolling(module);
  register_tyre_formulas(module);
  def(module, "nearest_markings(text)",
      "The markings nearest to a text that is none, a tuple of str, the nearest first; empty where nothing is near.",
      [](const Arguments& given) {
        py::list near;
        for (const std::string& marking : nearest_markings(want_text(given.object("text"), "text", "a tyre's marking")))
          near.append(marking);
        return py::object(py::tuple(near));
      });
}

}  // namespace layshaft::python
