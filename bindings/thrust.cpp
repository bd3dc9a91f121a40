// SPDX-License-Identifier: MIT
#include "formula.hpp"
#include "road.hpp"
#include "value.hpp"

namespace layshaft::python {
namespace {

void register_body(py::module_& module) {
  const char* signature =
      "Body(*, mass, wheelbase=None, centre_ahead=None, centre_height=None, wheel_inertia='0 kg m2')";
  Class<Body> type(
      module, "Body",
      Signature(signature)
          .doc("The Mass that is moved, with rider and luggage, and, as far as stated, wheelbase and centre of mass: "
               "ahead of "
               "the rear contact patch and above the ground (Lengths); and the inertia of both wheels together, a "
               "MomentOfInertia. RangeError names the part that is wrong.",
               false)
          .c_str());
  def_init(type, signature, [](const Arguments& given) {
    return Body({.mass = given.want<Mass>("mass"),
                 .wheelbase = given.want<std::optional<Length>>("wheelbase"),
                 .centre_ahead = given.want<std::optional<Length>>("centre_ahead"),
                 .centre_height = given.want<std::optional<Length>>("centre_height"),
                 .wheel_inertia = given.want<MomentOfInertia>("wheel_inertia", MomentOfInertia())});
  });
  def_property(type, "mass", "With rider and luggage.", [](const Body& b) { return b.mass(); });
  def_property(type, "wheelbase", "Between the contact patches, or None.", [](const Body& b) { return b.wheelbase(); });
  def_property(type, "centre_ahead", "Centre of mass ahead of the rear contact patch, or None.",
               [](const Body& b) { return b.centre_ahead(); });
  def_property(type, "centre_height", "Centre of mass above the ground, or None.",
               [](const Body& b) { return b.centre_height(); });
  def_property(type, "wheel_inertia", "Of both wheels together.", [](const Body& b) { return b.wheel_inertia(); });
  def(type, "carrying(mass, ahead, height)",
      "The Body with one more mass, whose centre lies so far ahead of the rear contact patch and so high: a rider, "
      "luggage.",
      [](const Body& b, const Arguments& given) {
        return b.carrying(given.want<Mass>("mass"), given.want<Length>("ahead"), given.want<Length>("height"));
      });
  def_value(type, [](const Body& b) {
    Remake remake;
    remake.named["mass"] = give(b.mass());
    name_if(remake.named, "wheelbase", b.wheelbase());
    name_if(remake.named, "centre_ahead", b.centre_ahead());
    name_if(remake.named, "centre_height", b.centre_height());
    if (b.wheel_inertia() != MomentOfInertia()) remake.named["wheel_inertia"] = give(b.wheel_inertia());
    return remake;
  });
}

void register_limits(py::module_& module) {
  def_struct<ThrustLimit>(module, "ThrustLimit", "The most thrust that a body and its ground take.",
                          Field{"wheelie", &ThrustLimit::wheelie, "The Force at which the front wheel lifts."},
                          Field{"thrust", &ThrustLimit::thrust,
                                "The lesser of that and what the ground takes, a Band of Force over the band of grip."},
                          Field{"kind", &ThrustLimit::kind, "'wheelie' or 'traction': which it is at nominal grip."});
  def(module, "thrust_limit(body, grip, slope=0.0)",
      "The most thrust that a Body and its ground take on a slope: a ThrustLimit. grip is a number or Band, 0 to 10, "
      "or a "
      "Surface, whose grip is from memory. Error where the body does not state wheelbase and centre of mass.",
      [](const Arguments& given) {
        const Body& body = given.want<Body>("body");
        const Slope slope = given.want<Slope>("slope", Slope());
        const py::object grip = given.object("grip");
        if (is<Surface>(grip)) return thrust_limit(body, as<Surface>(grip), slope);
        return thrust_limit(body, given.want<Band<double>>("grip"), slope);
      });
}

const char* drive_signature =
    "mass, torque, circumference, wheel_inertia='0 kg m2', engine_inertia='0 kg m2', drive_efficiency=1.0, "
    "resistance='0 N')";

DriveParts drive_of(const Arguments& given) {
  return {.mass = given.want<Mass>("mass"),
          .wheel_inertia = given.want<MomentOfInertia>("wheel_inertia", MomentOfInertia()),
          .engine_inertia = given.want<MomentOfInertia>("engine_inertia", MomentOfInertia()),
          .drive_efficiency = given.want<double>("drive_efficiency", 1.0),
          .circumference = given.want<Length>("circumference"),
          .torque = given.want<Torque>("torque"),
          .resistance = given.want<Force>("resistance", Force())};
}

void register_acceleration(py::module_& module) {
  def(module, std::string("acceleration_in(overall_ratio, *, ") + drive_signature,
      "The Acceleration at an overall ratio while the engine drives, with the inertia of all that turns: the "
      "efficiency "
      "multiplies the engine's too.",
      [](const Arguments& given) { return acceleration_in(drive_of(given), given.want<double>("overall_ratio")); });
  def(module, std::string("best_ratio_for(*, ") + drive_signature,
      "The overall ratio that gives the greatest acceleration at a constant torque; engine_inertia must be above 0.",
      [](const Arguments& given) { return best_ratio_for(drive_of(given)); });
}

void register_shift_rule(py::module_& module) {
  const char* signature = "ShiftRule(up, down, *, from_memory=False)";
  Class<ShiftRule> type(
      module, "ShiftRule",
      Signature(signature)
          .doc("Road speeds at which a rider shifts up from each gear, and back down to it, which are no higher. "
               "from_memory "
               "marks those of the world motorcycle cycle. RangeError names the shift that is wrong.",
               false)
          .c_str());
  def_init(type, signature, [](const Arguments& given) {
    const auto rule = ShiftRule::make(given.want<ShiftSpeeds>("up"), given.want<ShiftSpeeds>("down"),
                                      given.want<bool>("from_memory", false) ? world_cycle_source : sources::stated);
    if (!rule) raise(rule.error());
    return *rule;
  });
  def_static(type, "at_engine_speeds(up, down, overall_ratios, circumference)",
             "Shifts at fixed engine speeds, in gears of these overall ratios from first up: a ShiftRule.",
             [](const Arguments& given) {
               return ShiftRule::at_engine_speeds(given.want<AngularSpeed>("up"), given.want<AngularSpeed>("down"),
                                                  given.want<OverallRatios>("overall_ratios"),
                                                  given.want<Length>("circumference"));
             });
  def_static(type, "world_cycle(*, rated_power, unladen_mass, idle, rated_speed, overall_ratios, circumference)",
             "The rule of the world motorcycle cycle (UN GTR No. 2), from memory: a ShiftRule.",
             [](const Arguments& given) {
               return ShiftRule::world_cycle({given.want<Power>("rated_power"), given.want<Mass>("unladen_mass"),
                                              given.want<AngularSpeed>("idle"), given.want<AngularSpeed>("rated_speed"),
                                              given.want<OverallRatios>("overall_ratios"),
                                              given.want<Length>("circumference")});
             });
  def_property(type, "up", "Road speeds of the shifts up, a tuple.",
               [](const ShiftRule& r) { return py::object(give_list(r.up())); });
  def_property(type, "down", "Road speeds of the shifts down, a tuple.",
               [](const ShiftRule& r) { return py::object(give_list(r.down())); });
  def_property(type, "gears", "How many gears there are.", [](const ShiftRule& r) { return r.gears(); });
  def_property(type, "source", "Where the rule comes from, and how sure that is.",
               [](const ShiftRule& r) { return r.source(); });
  def(type, "gear_at(speed)", "The gear, from 1, of a rider who has sped up to a speed.",
      [](const ShiftRule& r, const Arguments& given) { return r.gear_at(given.want<Speed>("speed")); });
  def(type, "gear_after(gear, speed)", "The gear at a speed of one who was in gear.",
      [](const ShiftRule& r, const Arguments& given) {
        return r.gear_after(given.want<int>("gear"), given.want<Speed>("speed"));
      });
  def_value(type, [](const ShiftRule& r) {
    Remake remake{tuple_of(give_list(r.up()), give_list(r.down())), {}};
    if (r.source() != sources::stated) remake.named["from_memory"] = py::bool_(true);
    return remake;
  });
}

}  // namespace

void register_thrust(py::module_& module) {
  register_body(module);
  register_limits(module);
  register_acceleration(module);
  register_shift_rule(module);
  def_formula<formula::joint_centre>(module, "Where the centre of two masses lies along a line (Length).");
  def_formula<formula::wheelie_thrust>(module, "The Force at which the front wheel lifts.");
  def_formula<formula::traction_thrust>(module, "The Force at which the rear wheel spins.");
  def_formula<formula::wheelie_acceleration>(module, "The Acceleration at which the front wheel lifts on the level.");
  def_formula<formula::slipping_speed>(module, "How fast the machine goes while its driven wheel rolls and slips.");
  def_formula<formula::slipping_wheel_speed>(module,
                                             "How fast the driven wheel rolls while the machine goes at a speed.");
  def_formula<formula::drive_thrust>(module, "Thrust (Force) at the contact patch of a torque at the engine.");
  def_formula<formula::overrun_thrust>(module,
                                       "What a torque that drags at the engine holds back (Force), on overrun.");
  def_formula<formula::wheel_mass>(module, "The Mass that the wheels' turning counts as.");
  def_formula<formula::engine_mass>(module, "The Mass that the engine's turning counts as in a gear, while it drives.");
  def_formula<formula::overrun_engine_mass>(module, "The same (Mass) while the wheel drives the engine.");
  def_formula<formula::equivalent_mass>(module, "The Mass with all that turns.");
  def_formula<formula::acceleration>(module, "The Acceleration that thrust over resistance gives a mass.");
  def_formula<formula::holding_ratio>(module, "The overall ratio at which a torque just holds a resistance.");
  def_formula<formula::best_ratio>(module, "The overall ratio that speeds up most.");
  def_formula<formula::moved_mass>(module, "The Mass with its wheels' turning.");
  def_formula<formula::shift_share>(module,
                                    "How far the world cycle revs an engine, of the way from idle to rated speed.");
  def_formula<formula::first_shift_share>(module, "The same from first gear to second.");
  def_formula<formula::shift_engine_speed>(module, "The engine speed (AngularSpeed) at such a share.");
}

}  // namespace layshaft::python
