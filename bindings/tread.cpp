// SPDX-License-Identifier: MIT
#include "formula.hpp"
#include "value.hpp"
#include "wants.hpp"
#include "working.hpp"

#include <layshaft/tyre/explain.hpp>
#include <layshaft/tyre/tyre.hpp>

namespace layshaft::python {
namespace detail {
template <>
struct Words<VehicleClass> {
  static constexpr auto& values = vehicle_classes;
};
}  // namespace detail

namespace {

RolloutMeasurement want_measurement(const Arguments& given) {
  return {.distance = given.want<Length>("distance"),
          .turns = given.want<int>("turns"),
          .rider_aboard = given.want<bool>("rider_aboard", true),
          .tape_error = given.want<Length>("tape_error", usual_tape_error)};
}

void register_tread_class(py::module_& module) {
  const char* signature = "Tread(*, new_depth, depth, least=None, distance=None)";
  Class<Tread> type(
      module, "Tread",
      Signature(signature)
          .doc("A tyre's tread: its depth when new (0.1 to 100 mm) and now, the least it may be used down to, and the "
               "distance ridden on it so far. RangeError where a part lies outside its range.\n\n"
               ">>> tread = ls.Tread(new_depth=\"9 mm\", depth=\"5 mm\", least=\"1 mm\", distance=\"6000 km\")\n"
               ">>> tread.left, round(tread.distance_left / ls.km)\n"
               "(0.5, 6000)",
               false)
          .c_str());
  def_init(type, signature, [](const Arguments& given) {
    return Tread({.new_depth = given.want<Length>("new_depth"),
                  .depth = given.want<Length>("depth"),
                  .least = given.want<std::optional<Length>>("least"),
                  .distance = given.want<std::optional<Length>>("distance")});
  });
  def_property(type, "new_depth", "Depth when new.", [](const Tread& t) { return t.new_depth(); });
  def_property(type, "depth", "Depth now.", [](const Tread& t) { return t.depth(); });
  def_property(type, "least", "The least it may be used down to, or None.",
               [](const Tread& t) { return t.parts().least; });
  def_property(type, "distance", "Ridden on it so far, or None.", [](const Tread& t) { return t.parts().distance; });
  def_property(type, "worn", "Height worn off: what Setup takes as tread_worn.",
               [](const Tread& t) { return t.worn(); });
  def_property(type, "left", "Share of the usable tread that is left; None where no least depth is stated.",
               [](const Tread& t) { return t.left(); });
  def_property(type, "distance_left",
               "Distance until the least depth if it goes on wearing as it did (an assumption); None where that cannot "
               "be told.",
               [](const Tread& t) { return t.distance_left(); });
  def_explain(type, "How 'worn', 'left' or 'distance left' came about: a Working.");
  def_value(type, [](const Tread& t) {
    Remake remake;
    remake.named["new_depth"] = give(t.new_depth());
    remake.named["depth"] = give(t.depth());
    name_if(remake.named, "least", t.parts().least);
    name_if(remake.named, "distance", t.parts().distance);
    return remake;
  });
  def(module, "circumference_at_depth(tyre, tread, depth, construction=None)",
      "Rolling circumference with so much tread left, a Band of Length. tyre is a TyreSize or its marking, which holds "
      "with new_depth of tread; or the circumference measured at the tread's present depth, with the tyre's "
      "construction beside it.",
      [](const Arguments& given) {
        const Tread tread = given.want<Tread>("tread");
        const Length depth = given.want<Length>("depth");
        if (given.has("construction") && !given.object("construction").is_none())
          return circumference_at_depth(given.want<Band<Length>>("tyre"), given.want<TyreConstruction>("construction"),
                                        tread, depth);
        return circumference_at_depth(given.want<TyreSize>("tyre"), tread, depth);
      });
  def(module, "measured_circumference(distance, turns, *, rider_aboard=True, tape_error='5 mm')",
      "Rolling circumference from the distance that the wheel rolled in so many whole turns (1 to 1000), a Band of "
      "Length: what Setup takes as circumference. The tape may be out by tape_error either way over the whole distance "
      "(5 mm: common practice, no source); pushed without its rider a machine rolls 1 to 3 % farther (from memory).\n\n"
      ">>> ls.show(ls.measured_circumference(\"20.55 m\", 10))\n"
      "'2055.0 (2054.5 to 2055.5) mm'",
      [](const Arguments& given) { return measured_circumference(want_measurement(given)); });
  def(module, "explain_measured_circumference(distance, turns, *, rider_aboard=True, tape_error='5 mm')",
      "How measured_circumference() comes to its result: a Working.", [](const Arguments& given) {
        const RolloutMeasurement measured = want_measurement(given);
        py::dict named;
        named["rider_aboard"] = measured.rider_aboard;
        named["tape_error"] = give(measured.tape_error);
        return PyWorking(explain_measured_circumference(measured),
                         py::module_::import("layshaft").attr("explain_measured_circumference"),
                         tuple_of(measured.distance, measured.turns), named);
      });
  def_formula<formula::tread_worn>(module, "Height (Length) worn off the tread: what Setup takes as tread_worn.");
  def_formula<formula::tread_left>(module,
                                   "Share of the usable tread that is left; below zero once worn past the least.");
  def_formula<formula::distance_left>(module,
                                      "Distance (Length) until the least depth; below zero: how far ago it was.");
  def_formula<formula::worn_circumference>(
      module, "Rolling circumference (Length) at one depth of the tread, of a tyre measured at another.");
}

/// A row is known by its region and the first of its vehicles.
py::tuple key_of(const LegalTread& rule) { return tuple_of(give(rule.region), give(*rule.vehicles.begin())); }

void register_legal_tread(py::module_& module) {
  Class<LegalTread> type(module, "LegalTread", "A rule on how deep a tyre's tread must be; found by legal_tread().");
  def_property(type, "region", "ISO 3166 code: 'DE', 'US', 'US-MD'.", [](const LegalTread& l) { return l.region; });
  def_property(type, "depth", "The least depth; None where only a visible pattern is asked for.",
               [](const LegalTread& l) { return l.depth; });
  def_property(type, "condition", "Where the depth must be; '' where the source does not say.",
               [](const LegalTread& l) { return l.condition; });
  def_property(type, "rule", "'in use', 'wear indicator' or 'handbook'.",
               [](const LegalTread& l) { return to_string(l.rule); });
  def_property(type, "source", "Where the rule stands, and how sure that is.",
               [](const LegalTread& l) { return l.source; });
  def_property(type, "vehicles", "The vehicles it holds for, as legal_tread() takes them.",
               [](const LegalTread& l) { return py::object(give_list(l.vehicles)); });
  def_special(type, "__repr__",
              [](const LegalTread& l) { return "legal_tread" + py::repr(key_of(l)).cast<std::string>(); });
  def_special(type, "__eq__", [](const LegalTread& l, const py::object& other) {
    return is<LegalTread>(other) && key_of(l).equal(key_of(as<LegalTread>(other)));
  });
  def_special(type, "__hash__", [](const LegalTread& l) { return py::hash(key_of(l)); });
  def_special(type, "__reduce__", [](const LegalTread& l) {
    return tuple_of(py::module_::import("layshaft._core").attr("legal_tread"), key_of(l));
  });
  def(module, "legal_tread(region, vehicle='motorcycle')",
      "The rule on tread in a region ('GB', 'DE', 'US-MD') for 'moped', 'light motorcycle', 'motorcycle', 'car' and so "
      "on: a LegalTread. An unknown region or vehicle is an Error that lists those known.\n\n"
      ">>> ls.legal_tread(\"DE\", \"motorcycle\").depth\n"
      "Length('1.6 mm')",
      [](const Arguments& given) {
        return legal_tread(want_text(given.object("region"), "region", "an ISO 3166 code such as 'DE'"),
                           given.want<VehicleClass>("vehicle", VehicleClass::motorcycle));
      });
  def(module, "legal_treads()", "Every rule on tread that is known, a tuple of LegalTread.", [](const Arguments&) {
    py::list rows;
    for (const LegalTread& rule : legal_treads) rows.append(give(rule));
    return py::object(py::tuple(rows));
  });
}

void register_tyre_asked(py::module_& module) {
  const char* signature =
      "TyreAsked(*, axle_load=None, tyres_on_axle=1, top_speed=None, radius_clearance=None, width_clearance=None, "
      "least_tread_depth=None)";
  Class<TyreAsked> type(
      module, "TyreAsked",
      Signature(signature)
          .doc("What a machine asks of a tyre, as far as it is stated: load on the axle (Mass, fully laden) and the "
               "tyres that share it, top speed, room above and beside the stock tyre as marked, least tread depth.",
               false)
          .c_str());
  def_init(type, signature, [](const Arguments& given) {
    const TyreAsked asked{.axle_load = given.want<std::optional<Mass>>("axle_load"),
                          .tyres_on_axle = given.want<int>("tyres_on_axle", 1),
                          .top_speed = given.want<std::optional<Speed>>("top_speed"),
                          .radius_clearance = given.want<std::optional<Length>>("radius_clearance"),
                          .width_clearance = given.want<std::optional<Length>>("width_clearance"),
                          .least_tread_depth = given.want<std::optional<Length>>("least_tread_depth")};
    if (auto error = layshaft::detail::outside(asked, std::nullopt)) raise(*error);
    return asked;
  });
  const auto part = [&](const char* name, const char* doc, auto member) {
    def_property(type, name, doc, [member](const TyreAsked& asked) { return asked.*member; });
  };
  part("axle_load", "Load on the axle, or None.", &TyreAsked::axle_load);
  part("tyres_on_axle", "1; 2; or 4, which are two pairs of twins.", &TyreAsked::tyres_on_axle);
  part("top_speed", "Top speed, or None.", &TyreAsked::top_speed);
  part("radius_clearance", "Room above the stock tyre, or None.", &TyreAsked::radius_clearance);
  part("width_clearance", "Room beside the stock tyre, both sides together, or None.", &TyreAsked::width_clearance);
  part("least_tread_depth", "Least tread depth, or None.", &TyreAsked::least_tread_depth);
  def_value(type, [](const TyreAsked& asked) {
    Remake remake;
    name_if(remake.named, "axle_load", asked.axle_load);
    if (asked.tyres_on_axle != 1) remake.named["tyres_on_axle"] = asked.tyres_on_axle;
    name_if(remake.named, "top_speed", asked.top_speed);
    name_if(remake.named, "radius_clearance", asked.radius_clearance);
    name_if(remake.named, "width_clearance", asked.width_clearance);
    name_if(remake.named, "least_tread_depth", asked.least_tread_depth);
    return remake;
  });
}

}  // namespace

void register_tread(py::module_& module) {
  register_tread_class(module);
  register_legal_tread(module);
  register_tyre_asked(module);
}

}  // namespace layshaft::python
