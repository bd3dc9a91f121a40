// SPDX-License-Identifier: MIT
#include "formula.hpp"
#include "wants.hpp"
#include "working.hpp"

#include <layshaft/tyre/explain.hpp>
#include <layshaft/tyre/tyre.hpp>

namespace layshaft::python {

void register_tyre(py::module_& module) {
  const char* signature = "TyreSize(text, use='road')";
  py::class_<TyreSize> type(
      module, "TyreSize", py::is_final(),
      Signature(signature)
          .doc("A tyre's size as its sidewall says it: metric '110/90-18 M/C 61R TL', code '4.10-18 59P', lettered "
               "'MT90B16', flotation '31x10.50R15LT', cycle '37-622'. use is 'road' or 'special' (knobs for rough ground, which stand higher).\n\n"
               "Raises ParseError with .position and .expected where the text cannot be read.",
               false)
          .c_str());
  def_init(type, signature, [](const Arguments& given) {
    const auto use = given.want<TyreUse>("use", TyreUse::road);
    const py::object text = given.object("text");
    if (py::isinstance<TyreSize>(text)) return TyreSize(py::cast<const TyreSize&>(text).designation(), use);
    return TyreSize(want_text(text, "text", "a marking such as '110/90-18'"), use);
  });
  def_property(type, "designation", "The marking in its canonical form.",
               [](const TyreSize& t) { return t.designation(); });
  def_property(type, "notation", "'metric', 'code', 'lettered', 'flotation' or 'cycle'.", [](const TyreSize& t) { return t.notation(); });
  def_property(type, "construction", "'diagonal', 'bias-belted' or 'radial'.",
               [](const TyreSize& t) { return t.construction(); });
  def_property(type, "use", "'road' or 'special'.", [](const TyreSize& t) { return t.use(); });
  def_property(type, "section_width", "Nominal section width, a Length.",
               [](const TyreSize& t) { return t.section_width(); });
  def_property(type, "aspect_ratio", "As marked, in per cent; None where the marking has none.",
               [](const TyreSize& t) { return t.aspect_ratio(); });
  def_property(type, "rim_code", "The rim's code, about its diameter in inches; None of a cycle's.",
               [](const TyreSize& t) { return t.rim_code(); });
  def_property(type, "rim_diameter", "Nominal rim diameter, a Length.",
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
    return made ? py::object(py::make_tuple(made->week, made->year)) : py::object(py::none());
  });
  def_property(type, "winter", "Marked M+S.", [](const TyreSize& t) { return t.winter(); });
  def_property(type, "multi_service", "Marked MST.", [](const TyreSize& t) { return t.multi_service(); });
  def_property(type, "not_for_highway", "Marked NHS.", [](const TyreSize& t) { return t.not_for_highway(); });
  def_property(type, "source", "Where its dimensions come from, and how sure they are.",
               [](const TyreSize& t) { return t.source(); });
  def_explain(type, "How 'overall diameter' or 'circumference' came about: a Working.");
  type.def("__str__", [](const TyreSize& t) { return t.designation(); });
  def_value(type, [](const TyreSize& t) {
    Remake remake{py::make_tuple(give(t.designation())), {}};
    if (t.use() != TyreUse::road) remake.named["use"] = give(t.use());
    return remake;
  });

  def(module, "load_capacity(index)", "The Mass a tyre of this load index (0 to 150) carries. Source: ISO 4223-1.",
      [](const Arguments& given) { return load_capacity(given.want<int>("index")); });
  def(module, "rated_speed(symbol)", "The Speed a tyre of this speed symbol ('A1' to 'Y') is rated to.",
      [](const Arguments& given) {
        return rated_speed(want_text(given.object("symbol"), "symbol", "a speed symbol such as 'R'"));
      });
  def(module, "rolling_circumference(tyre)",
      "The distance the tyre rolls in one turn, a Band of Length over the tolerance of its marking and its rolling "
      "factor. A measured rollout is better: give it to Setup as circumference.",
      [](const Arguments& given) { return rolling_circumference(given.want<TyreSize>("tyre")); });
  def(module, "rolling_factor(construction='diagonal')",
      "Rolling circumference over that of the free tyre, a Band (from memory).", [](const Arguments& given) {
        return rolling_factor(given.want<TyreConstruction>("construction", TyreConstruction::diagonal));
      });
  def_formula<formula::section_height>(module,
                                       "Section height (Length) from section width and aspect ratio in per cent.");
  def_formula<formula::overall_diameter>(module, "Overall diameter (Length) of the free tyre.");
  def_formula<formula::overall_diameter_limit>(module, "A limit of the overall diameter (Length).");
  def_formula<formula::worn_diameter>(module, "Overall diameter (Length) with so much of the tread's height worn off.");
  def_formula<formula::section_height_of_diameter>(module, "Section height (Length) from a known overall diameter.");
}

}  // namespace layshaft::python
