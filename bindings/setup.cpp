// SPDX-License-Identifier: MIT
#include "road.hpp"
#include "value.hpp"

#include <layshaft/io/json.hpp>

#include <algorithm>

namespace layshaft::python {
namespace {

void register_gearbox(py::module_& module) {
  Class<GearPair> pair(module, "GearPair", "GearPair(driving, driven)\n--\n\nA pair of gears by their teeth.");
  def_init(pair, "GearPair(driving, driven)", [](const Arguments& given) {
    return GearPair{given.want<Teeth>("driving"), given.want<Teeth>("driven")};
  });
  def_property(pair, "driving", "Teeth of the driving gear.", [](const GearPair& p) { return p.driving; });
  def_property(pair, "driven", "Teeth of the driven gear.", [](const GearPair& p) { return p.driven; });
  def_property(pair, "ratio", "Driven over driving teeth.", [](const GearPair& p) { return p.ratio(); });
  def_value(pair, [](const GearPair& p) { return Remake{tuple_of(give(p.driving), give(p.driven)), {}}; });

  const char* signature = "Gearbox(*, gears, idle, rev_limit, primary=1.0, lowest_pull=None)";
  Class<Gearbox> type(
      module, "Gearbox",
      Signature(signature)
          .doc("The gears from first up, and the primary drive, as numbers or GearPairs (0.01 to 100); idle, lowest "
               "engine "
               "speed that pulls cleanly (idle when None) and limit, as AngularSpeeds. A cycle's are the rider's.\n\n"
               ">>> ls.Gearbox(primary=3.0, gears=[ls.GearPair(13, 36), 1.9, 1.4], idle=\"1400 rpm\", rev_limit=\"9500 "
               "rpm\").gears\n"
               "(GearPair(13, 36), 1.9, 1.4)",
               false)
          .c_str());
  def_init(type, signature, [](const Arguments& given) {
    GearboxParts parts;
    parts.primary = given.want<GearRatio>("primary", GearRatio(1.0));
    const auto gears = given.want<std::vector<GearRatio>>("gears");
    if (gears.size() > most_gears)
      raise(Error::range("number of gears", std::to_string(gears.size()), "1 to " + std::to_string(most_gears)));
    for (const GearRatio& gear : gears) parts.gears.push_back(gear);
    parts.idle = given.want<AngularSpeed>("idle");
    parts.rev_limit = given.want<AngularSpeed>("rev_limit");
    parts.lowest_pull = given.want<std::optional<AngularSpeed>>("lowest_pull");
    return Gearbox(parts);
  });
  const auto ratio = [](const GearRatio& r) { return r.pair() ? give(*r.pair()) : give(r.ratio()); };
  const auto gears = [ratio](const Gearbox& g) {
    py::list list;
    for (const GearRatio& gear : g.gears()) list.append(ratio(gear));
    return py::object(py::tuple(list));
  };
  def_property(type, "primary", "The primary ratio, a number or a GearPair.",
               [ratio](const Gearbox& g) { return ratio(g.primary()); });
  def_property(type, "gears", "The ratios from first gear up, numbers or GearPairs.", gears);
  def_property(type, "idle", "Engine speed at idle.", [](const Gearbox& g) { return g.idle(); });
  def_property(type, "lowest_pull", "Lowest engine speed that pulls cleanly.",
               [](const Gearbox& g) { return g.lowest_pull(); });
  def_property(type, "rev_limit", "The highest engine speed.", [](const Gearbox& g) { return g.rev_limit(); });
  def_value(type, [ratio, gears](const Gearbox& g) {
    Remake remake;
    remake.named["gears"] = py::list(gears(g));
    remake.named["idle"] = give(g.idle());
    remake.named["rev_limit"] = give(g.rev_limit());
    remake.named["primary"] = ratio(g.primary());
    name_if(remake.named, "lowest_pull", g.parts().lowest_pull);
    return remake;
  });
}

void register_setup_class(py::module_& module) {
  const char* signature =
      "Setup(*, front, rear, tyre=None, chain=None, links=None, circumference=None, front_tyre=None, "
      "tread_worn='0 mm', tread=None, drive_efficiency=None, chain_made=None, front_material=None, "
      "rear_material=None)";
  Class<Setup> type(module, "Setup",
                    Signature(signature)
                        .doc("What a rider can swap: front and rear sprocket, rear tyre (a TyreSize or its "
                             "marking), chain series (None: "
                             "the machine's), links (None: the shortest even chain that closes), a measured "
                             "rollout (a Length or a Band; "
                             "0.2 to 5 m; it overrides the tyre's marking, and may stand in for it), and the "
                             "front tyre, which matters "
                             "where the front wheel drives the speedometer. tread_worn is the height worn off "
                             "the rear tyre's tread, which a measured rollout has in it already; tread, a Tread, "
                             "tells it instead, and how far the tyre may still wear; "
                             "drive_efficiency the chain drive's power out over power in, a number or a Band "
                             "(0.5 to 1), None where nobody measured it; chain_made, a ChainMade, what is known "
                             "of the chain beyond its "
                             "series; and the sprockets' materials, 'steel', 'hardened steel', 'aluminium 6000' "
                             "or 'aluminium 7000', which count where both set-ups of a comparison state them.\n\n"
                             ">>> trial = ls.Setup(front=13, rear=50, tyre=\"120/90-18\")\n"
                             ">>> trial.links is None  # left to the machine's adjuster\n"
                             "True",
                             false)
                        .c_str());
  def_init(type, signature, [](const Arguments& given) {
    SetupParts parts{.front = given.want<Teeth>("front"), .rear = given.want<Teeth>("rear")};
    parts.tyre = given.want<std::optional<TyreSize>>("tyre");
    parts.chain = given.want<std::optional<ChainSeries>>("chain");
    parts.links = given.want<std::optional<Links>>("links");
    parts.circumference = given.want<std::optional<Band<Length>>>("circumference");
    parts.front_tyre = given.want<std::optional<TyreSize>>("front_tyre");
    parts.tread_worn = given.want<Length>("tread_worn", Length());
    parts.tread = given.want<std::optional<Tread>>("tread");
    parts.drive_efficiency = given.want<std::optional<Band<double>>>("drive_efficiency");
    parts.chain_made = given.want<std::optional<ChainMade>>("chain_made").value_or(ChainMade());
    parts.front_material = given.want<std::optional<SprocketMaterial>>("front_material");
    parts.rear_material = given.want<std::optional<SprocketMaterial>>("rear_material");
    return Setup(parts);
  });
  def_property(type, "front_material", "What the front sprocket is made of, or None.",
               [](const Setup& s) { return s.front_material(); });
  def_property(type, "rear_material", "What the rear sprocket is made of, or None.",
               [](const Setup& s) { return s.rear_material(); });
  def_property(type, "front", "Teeth of the front sprocket.", [](const Setup& s) { return s.front(); });
  def_property(type, "rear", "Teeth of the rear sprocket.", [](const Setup& s) { return s.rear(); });
  def_property(type, "tyre", "The rear tyre, or None.", [](const Setup& s) { return s.tyre(); });
  def_property(type, "chain", "The chain series, or None for the machine's.", [](const Setup& s) { return s.chain(); });
  def_property(type, "links", "The number of links, or None.", [](const Setup& s) { return s.links(); });
  def_property(type, "circumference", "The measured rollout, a Band of Length, or None.",
               [](const Setup& s) { return s.circumference(); });
  def_property(type, "front_tyre", "The front tyre, or None.", [](const Setup& s) { return s.front_tyre(); });
  def_property(type, "tread_worn",
               "The height worn off the rear tyre's tread, a Length; none beyond what a measured rollout has in it.",
               [](const Setup& s) { return s.tread_worn(); });
  def_property(type, "tread", "The rear tyre's tread, or None.", [](const Setup& s) { return s.tread(); });
  def_property(type, "drive_efficiency", "The chain drive's efficiency, a Band, or None.",
               [](const Setup& s) { return s.drive_efficiency(); });
  def_property(type, "chain_made", "What is known of the chain beyond its series, a ChainMade.",
               [](const Setup& s) { return s.chain_made(); });
  def(type, "to_json()", "The set-up as JSON text.", [](const Setup& s, const Arguments&) { return to_json(s); });
  def_static(
      type, "from_json(text)", "Reads a set-up; every error names the path to the place.",
      [](const Arguments& given) { return setup_from_json(want_text(given.object("text"), "text", "JSON text")); });
  def_value(type, [](const Setup& s) {
    Remake remake;
    remake.named["front"] = give(s.front());
    remake.named["rear"] = give(s.rear());
    name_if(remake.named, "tyre", s.tyre());
    name_if(remake.named, "chain", s.chain());
    name_if(remake.named, "links", s.links());
    name_if(remake.named, "circumference", s.circumference());
    name_if(remake.named, "front_tyre", s.front_tyre());
    if (s.parts().tread_worn != Length()) remake.named["tread_worn"] = give(s.parts().tread_worn);
    name_if(remake.named, "tread", s.tread());
    name_if(remake.named, "drive_efficiency", s.drive_efficiency());
    if (s.chain_made() != ChainMade()) remake.named["chain_made"] = give(s.chain_made());
    name_if(remake.named, "front_material", s.front_material());
    name_if(remake.named, "rear_material", s.rear_material());
    return remake;
  });
}

void register_machine(py::module_& module) {
  const char* peak_signature = "PeakTorque(torque, engine_speed)";
  Class<PeakTorque> peak(
      module, "PeakTorque",
      Signature(peak_signature).doc("An engine's greatest torque at the crank, and where it has it.", false).c_str());
  def_init(peak, peak_signature, [](const Arguments& given) {
    return PeakTorque{given.want<Torque>("torque"), given.want<AngularSpeed>("engine_speed")};
  });
  def_property(peak, "torque", "A Torque.", [](const PeakTorque& p) { return p.torque; });
  def_property(peak, "engine_speed", "An AngularSpeed.", [](const PeakTorque& p) { return p.engine_speed; });
  def_value(peak, [](const PeakTorque& p) { return Remake{tuple_of(give(p.torque), give(p.engine_speed)), {}}; });
  const char* signature =
      "Machine(*, name, gearbox, adjuster, chain, speedometer, stock, kind='motorcycle', tyre_asked=None, "
      "suspension=None, peak_torque=None, engine=None, body=None, drive_efficiency=None, road_load=None)";
  Class<Machine> type(
      module, "Machine",
      Signature(signature)
          .doc(
              "What stays on the machine: a Gearbox, an Adjuster, the chain series its sprockets are cut for, what its "
              "speedometer senses (a word or a Speedometer), the Setup its maker fitted, and its kind, 'motorcycle' or "
              "'cycle'. Where stated, what it asks of its rear tyre (TyreAsked), its swingarm (Suspension, whose angle "
              "at "
              "rest is that on the stand), its engine's greatest torque at the crank (PeakTorque; None: that of the "
              "engine's curve), its engine (an Engine, or an EngineCurve or EngineEstimate alone), its Body, the "
              "power at the ground over power where the curve was measured (drive_efficiency, a number or a Band, 0.3 "
              "to 1; without the chain's where a Setup states its own; None: by gears and chain), and the RoadLoad it "
              "is ridden on.\n\n"
              ">>> machine = ls.Machine(\n"
              "...     name=\"a trail bike\",\n"
              "...     gearbox=ls.Gearbox(primary=3.0, gears=[2.8, 1.9, 1.4, 1.1, 0.9], idle=\"1400 rpm\", "
              "rev_limit=\"9500 rpm\"),\n"
              "...     adjuster=ls.Adjuster(centre_min=\"590 mm\", centre_max=\"630 mm\"),\n"
              "...     chain=\"520\",\n"
              "...     speedometer=\"rear wheel\",\n"
              "...     stock=ls.Setup(front=13, rear=48, tyre=\"120/80-18\"),\n"
              "... )\n"
              ">>> ls.Machine.from_json(machine.to_json()) == machine\n"
              "True",
              false)
          .c_str());
  def_init(type, signature, [](const Arguments& given) {
    const py::object speedometer = given.object("speedometer");
    return Machine({.name = want_text(given.object("name"), "name", "a str"),
                    .gearbox = given.want<Gearbox>("gearbox"),
                    .adjuster = given.want<Adjuster>("adjuster"),
                    .chain = given.want<ChainSeries>("chain"),
                    .speedometer = is<Speedometer>(speedometer)
                                       ? as<Speedometer>(speedometer)
                                       : Speedometer(given.want<SpeedometerSensor>("speedometer")),
                    .stock = given.want<Setup>("stock"),
                    .kind = given.want<MachineKind>("kind", MachineKind::motorcycle),
                    .tyre_asked = given.want<std::optional<TyreAsked>>("tyre_asked").value_or(TyreAsked()),
                    .suspension = given.want<std::optional<Suspension>>("suspension"),
                    .peak_torque = given.want<std::optional<PeakTorque>>("peak_torque"),
                    .engine = given.want<std::optional<Engine>>("engine"),
                    .body = given.want<std::optional<Body>>("body"),
                    .drive_efficiency = given.want<std::optional<Band<double>>>("drive_efficiency"),
                    .road_load = given.want<std::optional<RoadLoad>>("road_load")});
  });
  def_property(type, "name", "Its name.", [](const Machine& m) { return m.name(); });
  def_property(type, "kind", "'motorcycle' or 'cycle'.", [](const Machine& m) { return m.kind(); });
  def_property(type, "gearbox", "Its Gearbox.", [](const Machine& m) { return m.gearbox(); });
  def_property(type, "adjuster", "Its Adjuster.", [](const Machine& m) { return m.adjuster(); });
  def_property(type, "chain", "Its ChainSeries.", [](const Machine& m) { return m.chain(); });
  def_property(type, "speedometer", "Its Speedometer.", [](const Machine& m) { return m.speedometer(); });
  def_property(type, "stock", "The Setup its maker fitted.", [](const Machine& m) { return m.stock(); });
  def_property(type, "tyre_asked", "What it asks of its rear tyre, a TyreAsked.",
               [](const Machine& m) { return m.tyre_asked(); });
  def_property(type, "suspension", "Its Suspension, or None.", [](const Machine& m) { return m.suspension(); });
  def_property(type, "peak_torque", "Its engine's PeakTorque, as stated or of its curve, or None.",
               [](const Machine& m) { return m.peak_torque(); });
  def_property(type, "engine", "Its Engine, or None.", [](const Machine& m) { return m.engine(); });
  def_property(type, "body", "Its Body, or None.", [](const Machine& m) { return m.body(); });
  def_property(type, "drive_efficiency", "Power at the ground over power at the engine, a Band, or None.",
               [](const Machine& m) { return m.drive_efficiency(); });
  def_property(type, "road_load", "What resists on the road it is ridden on, a RoadLoad, or None.",
               [](const Machine& m) { return m.road_load(); });
  def(type, "to_json()", "The machine as JSON text.", [](const Machine& m, const Arguments&) { return to_json(m); });
  def_static(
      type, "from_json(text)", "Reads a machine; every error names the path to the place.",
      [](const Arguments& given) { return machine_from_json(want_text(given.object("text"), "text", "JSON text")); });
  def_value(type, [](const Machine& m) {
    Remake remake;
    remake.named["name"] = give(m.name());
    remake.named["gearbox"] = give(m.gearbox());
    remake.named["adjuster"] = give(m.adjuster());
    remake.named["chain"] = give(m.chain());
    remake.named["speedometer"] = give(m.speedometer());
    remake.named["stock"] = give(m.stock());
    remake.named["kind"] = give(m.kind());
    if (m.tyre_asked() != TyreAsked()) remake.named["tyre_asked"] = give(m.tyre_asked());
    name_if(remake.named, "suspension", m.suspension());
    name_if(remake.named, "peak_torque", m.parts().peak_torque);
    name_if(remake.named, "engine", m.engine());
    name_if(remake.named, "body", m.body());
    name_if(remake.named, "drive_efficiency", m.drive_efficiency());
    name_if(remake.named, "road_load", m.road_load());
    return remake;
  });
}

}  // namespace

void register_setup(py::module_& module) {
  register_gearbox(module);
  register_setup_class(module);
  register_machine(module);
}

}  // namespace layshaft::python
