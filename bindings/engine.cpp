// SPDX-License-Identifier: MIT
#include "formula.hpp"
#include "road.hpp"
#include "value.hpp"

#include <layshaft/road/smooth_curve.hpp>

namespace layshaft::python {
namespace {

py::object speeds_of(const EngineCurve& curve) {
  py::list speeds;
  for (const EnginePoint& point : curve.points()) speeds.append(give(point.speed));
  return py::object(py::tuple(speeds));
}
py::object torques_of(const EngineCurve& curve) {
  py::list torques;
  for (const EnginePoint& point : curve.points()) torques.append(give(point.torque));
  return py::object(py::tuple(torques));
}
/// From which points on the power stays; None where it does nowhere.
py::object constant_power_of(const EngineCurve& curve) {
  py::list flags;
  bool any = false;
  for (const EnginePoint& point : curve.points()) {
    flags.append(py::bool_(point.constant_power));
    any = any || point.constant_power;
  }
  if (!any) return py::none();
  return py::object(py::tuple(flags));
}

EngineOrigin origin_of(const Arguments& given) {
  return {given.want<MeasuredAt>("measured_at", MeasuredAt::crank), sources::stated};
}

EngineCurve curve_of(const Arguments& given) {
  const auto speeds = given.want<std::vector<AngularSpeed>>("speeds");
  const auto torques = given.want<std::vector<Torque>>("torques");
  EngineOrigin origin = origin_of(given);
  if (given.want<bool>("estimated", false)) origin.source = engine_estimate_source;
  const double factor = given.want<double>("torque_factor", 1.0);
  if (given.object("constant_power").is_none()) return EngineCurve(speeds, torques, origin).scaled(factor);
  const auto flags = given.want<std::vector<bool>>("constant_power");
  if (torques.size() != speeds.size() || flags.size() != speeds.size())
    raise(Error::value("speeds, torques and constant_power of an engine curve must be equally many"));
  EnginePoints points;
  for (std::size_t i = 0; i < speeds.size(); ++i) points.push_back({speeds[i], torques[i], flags[i]});
  return EngineCurve(points, origin).scaled(factor);
}

void register_curve(py::module_& module) {
  def_struct<EnginePeak>(module, "EnginePeak", "Where an engine's torque or power is greatest.",
                         Field{"speed", &EnginePeak::speed, "Engine speed there."},
                         Field{"torque", &EnginePeak::torque, "Torque there."},
                         Field{"power", &EnginePeak::power, "Power there."});

  const char* signature =
      "EngineCurve(speeds, torques, *, measured_at='crank', constant_power=None, torque_factor=1.0, estimated=False)";
  Class<EngineCurve> type(
      module, "EngineCurve",
      Signature(signature)
          .doc(
              "The full-throttle torque of an engine over its speed: 2 to 64 points of AngularSpeed (0 to 200,000 rpm, "
              "rising) and Torque (0 to 100,000 Nm), straight between them; never asked beyond its ends. measured_at "
              "is "
              "'crank', 'gearbox output' or 'rear wheel': what lies before that place has taken its loss already. "
              "Speeds "
              "are the engine's in any case, and torque is power over that speed. constant_power says, one bool a "
              "point, "
              "from which points on the power stays. RangeError names the point that is wrong.",
              false)
          .c_str());
  def_init(type, signature, curve_of);
  def_static(type, "from_power(speeds, powers, *, measured_at='crank')",
             "The curve through points of Power over AngularSpeed, above 0: an EngineCurve. They become torques, which "
             "change evenly between them.",
             [](const Arguments& given) {
               return EngineCurve::from_power(given.want<std::vector<AngularSpeed>>("speeds"),
                                              given.want<std::vector<Power>>("powers"), origin_of(given));
             });
  def_static(
      type, "electric(torque, power, limit, *, measured_at='crank')",
      "A motor: constant Torque up to where it makes its Power, then constant power up to the AngularSpeed limit: an "
      "EngineCurve.",
      [](const Arguments& given) {
        return EngineCurve::electric(given.want<Torque>("torque"), given.want<Power>("power"),
                                     given.want<AngularSpeed>("limit"), origin_of(given));
      });
  def_property(type, "speeds", "Engine speeds of the points, a tuple.", speeds_of);
  def_property(type, "torques", "Torques of the points, a tuple, without the torque factor.", torques_of);
  def_property(type, "constant_power",
               "From which points on the power stays, a tuple of bool; None where it does nowhere.", constant_power_of);
  def_property(type, "measured_at", "'crank', 'gearbox output' or 'rear wheel'.",
               [](const EngineCurve& c) { return c.measured_at(); });
  def_property(type, "torque_factor", "What every torque is multiplied by.",
               [](const EngineCurve& c) { return c.torque_factor(); });
  def_property(type, "source", "Where the curve comes from, and how sure that is.",
               [](const EngineCurve& c) { return c.source(); });
  def_property(type, "lowest_speed", "Where it begins.", [](const EngineCurve& c) { return c.lowest_speed(); });
  def_property(type, "highest_speed", "Where it ends.", [](const EngineCurve& c) { return c.highest_speed(); });
  def_property(type, "peak_torque", "Where the torque is greatest, exactly: an EnginePeak.",
               [](const EngineCurve& c) { return c.peak_torque(); });
  def_property(type, "peak_power", "Where the power is greatest, exactly: an EnginePeak.",
               [](const EngineCurve& c) { return c.peak_power(); });
  def(type, "torque(engine_speed)", "The Torque at an engine speed. RangeError beyond the ends of the curve.",
      [](const EngineCurve& c, const Arguments& given) { return c.torque(given.want<AngularSpeed>("engine_speed")); });
  def(type, "power(engine_speed)", "The Power at an engine speed. RangeError beyond the ends of the curve.",
      [](const EngineCurve& c, const Arguments& given) { return c.power(given.want<AngularSpeed>("engine_speed")); });
  def(type, "scaled(torque_factor)",
      "The same curve with every torque multiplied by a factor, 0 to 10, instead of that it had: an EngineCurve.",
      [](const EngineCurve& c, const Arguments& given) { return c.scaled(given.want<double>("torque_factor")); });
  def(type, "covers(engine_speed)", "Whether a speed lies within the curve.",
      [](const EngineCurve& c, const Arguments& given) { return c.covers(given.want<AngularSpeed>("engine_speed")); });
  def_value(type, [](const EngineCurve& c) {
    Remake remake{tuple_of(speeds_of(c), torques_of(c)), {}};
    if (c.measured_at() != MeasuredAt::crank) remake.named["measured_at"] = give(c.measured_at());
    if (const py::object flags = constant_power_of(c); !flags.is_none()) remake.named["constant_power"] = flags;
    if (c.torque_factor() != 1.0) remake.named["torque_factor"] = give(c.torque_factor());
    if (c.source() != sources::stated) remake.named["estimated"] = py::bool_(true);
    return remake;
  });
}

void register_smooth_curve(py::module_& module) {
  Class<SmoothCurve> type(module, "SmoothCurve",
                          "SmoothCurve(curve)\n--\n\nA monotone cubic (Fritsch and Butland) through the points of "
                          "an EngineCurve, at least four, "
                          "none of constant power: smooth, and never beyond the points.");
  def_init(type, "SmoothCurve(curve)",
           [](const Arguments& given) { return SmoothCurve(given.want<EngineCurve>("curve")); });
  def_property(type, "curve", "The EngineCurve whose points it passes through.",
               [](const SmoothCurve& c) { return c.points(); });
  def(type, "torque(engine_speed)", "The Torque at an engine speed. RangeError beyond the ends of the curve.",
      [](const SmoothCurve& c, const Arguments& given) { return c.torque(given.want<AngularSpeed>("engine_speed")); });
  def(type, "dense()", "An EngineCurve of as many points of the smooth one as it holds.",
      [](const SmoothCurve& c, const Arguments&) { return c.dense(); });
  def_value(type, [](const SmoothCurve& c) { return Remake{tuple_of(give(c.points())), {}}; });
}

void register_engine_class(py::module_& module) {
  const char* signature = "Engine(curve, *, inertia='0 kg m2', braking=None, clutch_torque=None, start_speed=None)";
  Class<Engine> type(
      module, "Engine",
      Signature(signature)
          .doc("An engine: its EngineCurve or EngineEstimate; the inertia of all that turns with the crank, a "
               "MomentOfInertia; the torque it drags with at a closed throttle, a Torque or a Band, None: a wide band "
               "from memory, 5, 15 and 30 % of the greatest torque; the most its clutch carries at the crank; and the "
               "engine speed held while the clutch slips at a start, None: the lowest that pulls cleanly.",
               false)
          .c_str());
  def_init(type, signature, [](const Arguments& given) {
    EngineParts parts = given.want<Engine>("curve").parts();
    if (given.has("inertia")) parts.inertia = given.want<MomentOfInertia>("inertia");
    parts.braking = given.want<std::optional<Band<Torque>>>("braking");
    parts.clutch_torque = given.want<std::optional<Torque>>("clutch_torque");
    parts.start_speed = given.want<std::optional<AngularSpeed>>("start_speed");
    return Engine(parts);
  });
  const auto curve = [](const Engine& e) {
    const EngineEstimate& all = e.parts().curve;
    return all.low == all.nominal && all.high == all.nominal ? give(all.nominal) : give(all);
  };
  def_property(type, "curve", "Its EngineCurve, or the EngineEstimate in its place.", curve);
  def_property(type, "inertia", "Of all that turns with the crank.", [](const Engine& e) { return e.inertia(); });
  def_property(type, "braking", "What it drags with at a closed throttle, a Band of Torque.",
               [](const Engine& e) { return e.braking(); });
  def_property(type, "braking_source", "Where that comes from.", [](const Engine& e) { return e.braking_from(); });
  def_property(type, "clutch_torque", "The most its clutch carries, or None.",
               [](const Engine& e) { return e.clutch_torque(); });
  def_property(type, "start_speed", "Held while the clutch slips, or None.",
               [](const Engine& e) { return e.parts().start_speed; });
  def(type, "scaled(torque_factor)",
      "The same Engine with every torque of its curve multiplied by a factor, 0 to 10; its drag stays.",
      [](const Engine& e, const Arguments& given) { return e.scaled(given.want<double>("torque_factor")); });
  def_value(type, [curve](const Engine& e) {
    Remake remake{tuple_of(curve(e)), {}};
    if (e.inertia() != MomentOfInertia()) remake.named["inertia"] = give(e.inertia());
    name_if(remake.named, "braking", e.parts().braking);
    name_if(remake.named, "clutch_torque", e.clutch_torque());
    name_if(remake.named, "start_speed", e.parts().start_speed);
    return remake;
  });
}

}  // namespace

void register_engine(py::module_& module) {
  register_curve(module);
  register_smooth_curve(module);
  def_struct<EngineEstimate>(
      module, "EngineEstimate",
      "A curve guessed from a maker's four numbers, as wide as they leave it; all pass through them.",
      Field{"low", &EngineEstimate::low, "The weakest EngineCurve that is likely (common practice)."},
      Field{"nominal", &EngineEstimate::nominal, "The likeliest EngineCurve (common practice)."},
      Field{"high", &EngineEstimate::high, "The EngineCurve that no other with these peaks can exceed."});
  register_engine_class(module);
  def(module, "estimate_engine(*, torque, torque_speed, power, power_speed, lowest, highest, measured_at='crank')",
      "The curve that a maker's four numbers mean, from the engine speed lowest to highest: an EngineEstimate. Error "
      "where "
      "they contradict one another.",
      [](const Arguments& given) {
        return estimate_engine({given.want<Torque>("torque"), given.want<AngularSpeed>("torque_speed"),
                                given.want<Power>("power"), given.want<AngularSpeed>("power_speed"),
                                given.want<AngularSpeed>("lowest"), given.want<AngularSpeed>("highest")},
                               given.want<MeasuredAt>("measured_at", MeasuredAt::crank));
      });
  def_formula<formula::torque_between>(module, "Torque between two measured points, on a straight line.");
  def_formula<formula::torque_of_power>(module, "Torque that makes a power at an engine speed.");
  def_formula<formula::engine_power>(module, "Power of a torque at an engine speed.");
  def_formula<formula::scaled_torque>(module, "Torque that is left, as at altitude.");
}

}  // namespace layshaft::python
