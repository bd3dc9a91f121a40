// SPDX-License-Identifier: MIT
#include "formula.hpp"
#include "road.hpp"
#include "value.hpp"

#include <layshaft/gearing/downshift.hpp>
#include <layshaft/gearing/gear_steps.hpp>
#include <layshaft/road/thrust_diagram.hpp>
#include <layshaft/setup/time_to_speed.hpp>

namespace layshaft::python {
namespace {

void register_steps(py::module_& module) {
  def_struct<GearSteps>(module, "GearSteps", "Gears and how far they lie apart.",
                        Field{"ratios", &GearSteps::ratios, "From first gear up, a tuple of numbers."},
                        Field{"steps", &GearSteps::steps, "One a shift, lower over upper ratio, a tuple of numbers."});
  def_struct<GearStepping>(
      module, "GearStepping", "A box's gears beside those of two boxes with the same first and last one.",
      Field{"own", &GearStepping::own, "Its own GearSteps."},
      Field{"geometric", &GearStepping::geometric, "All steps equal (from memory of textbooks)."},
      Field{"progressive", &GearStepping::progressive, "Steps that fall evenly towards the top."},
      Field{"progression", &GearStepping::progression, "Each step over the one above it, as own's are on the mean."});
  def(module, "gear_stepping(gearbox)", "The steps of a Gearbox beside even ones: a GearStepping.",
      [](const Arguments& given) { return gear_stepping(given.want<Gearbox>("gearbox")); });
  def_formula<formula::gear_step>(module, "The step from one gear up to the next, a number.");
  def_formula<formula::geometric_step>(module, "The step of a box whose gears stand equally far apart, a number.");
  def_formula<formula::progressive_step>(module, "The last step of a box whose steps fall evenly, a number.");
  def_formula<formula::engine_turns>(module, "Turns of the engine over a kilometre, a number.");
}

void register_answers(py::module_& module) {
  def_struct<TopSpeed>(
      module, "TopSpeed", "The greatest speed that the thrust holds on a road.",
      Field{"speed", &TopSpeed::speed, "A Band of Speed; nothing where no gear pulls."},
      Field{"gear", &TopSpeed::gear, "From 1, at nominal causes; None where no gear pulls."},
      Field{"limit", &TopSpeed::limit,
            "'revs' where the engine may turn no faster, 'power' where the resistance eats all the thrust, 'no gear "
            "pulls' where none moves it."},
      Field{"certain", &TopSpeed::certain, "Whether it is the same limit over the whole band."});
  def_struct<BestClimb>(module, "BestClimb", "The steepest slope that a gear climbs.",
                        Field{"slope", &BestClimb::slope, "A Band of Angle."},
                        Field{"speed", &BestClimb::speed, "The Speed that suits it, at nominal causes."},
                        Field{"engine_speed", &BestClimb::engine_speed, "The AngularSpeed there."},
                        Field{"thrust", &BestClimb::thrust, "The Force there."});
  def_struct<GroundClimb>(module, "GroundClimb", "The steepest slope that front wheel and ground let anything climb.",
                          Field{"slope", &GroundClimb::slope, "A Band of Angle."},
                          Field{"kind", &GroundClimb::kind, "'wheelie' or 'traction': which it is at nominal grip."});
  def_struct<StandingStart>(
      module, "StandingStart", "How a machine gets away from standstill, its clutch slipping.",
      Field{"thrust", &StandingStart::thrust, "A Band of Force."},
      Field{"limit", &StandingStart::limit, "'engine' or 'clutch': what holds the torque, at nominal causes."},
      Field{"moves", &StandingStart::moves, "Whether it gets away whatever the causes."},
      Field{"may_move", &StandingStart::may_move, "Whether it does at the best of them."},
      Field{"caught_speed", &StandingStart::caught_speed, "A Band of Speed, at which the clutch slips no more."},
      Field{"slip_time", &StandingStart::slip_time, "A Band of Duration; None unless it moves whatever the causes."},
      Field{"slip_distance", &StandingStart::slip_distance, "A Band of Length; None as above."},
      Field{"clutch_heat", &StandingStart::clutch_heat, "Heat in the clutch, a Band of Energy; None as above."},
      Field{"steepest", &StandingStart::steepest, "Slope on which it just gets away in this gear, a Band of Angle."});
  def_struct<ShiftPoint>(
      module, "ShiftPoint", "A shift up that keeps the thrust highest.",
      Field{"gear", &ShiftPoint::gear, "From this gear to the next."},
      Field{"speed", &ShiftPoint::speed, "Road Speed."},
      Field{"engine_speed_before", &ShiftPoint::engine_speed_before, "In the lower gear."},
      Field{"engine_speed_after", &ShiftPoint::engine_speed_after, "In the upper gear."},
      Field{"at_limit", &ShiftPoint::at_limit, "Whether the lower gear pulls harder up to the engine's limit."});
  Class<EnergyBalance> energy = def_struct<EnergyBalance>(
      module, "EnergyBalance", "Where the engine's work went, each an Energy.",
      Field{"engine_work", &EnergyBalance::engine_work, "What the engine gave."},
      Field{"clutch_heat", &EnergyBalance::clutch_heat, "In the clutch while it slipped."},
      Field{"drive_loss", &EnergyBalance::drive_loss, "In gears and chain, of what the engine's own inertia left."},
      Field{"rolling", &EnergyBalance::rolling, "In the tyres."}, Field{"drag", &EnergyBalance::drag, "In the air."},
      Field{"climb", &EnergyBalance::climb, "Uphill; below zero downhill."},
      Field{"kinetic", &EnergyBalance::kinetic, "In machine, wheels and, while it was coupled, the engine."});
  def_property(energy, "rest", "What is not accounted for: nothing, but for rounding and quadrature.",
               [](const EnergyBalance& e) { return e.rest(); });
  def_struct<SpeedRun>(
      module, "SpeedRun", "A run from one speed to another at full throttle.",
      Field{"reaches", &SpeedRun::reaches, "Whether it gets there whatever the causes."},
      Field{"may_reach", &SpeedRun::may_reach, "Whether it does at the best of them."},
      Field{"time", &SpeedRun::time, "A Band of Duration; None unless it gets there whatever the causes."},
      Field{"distance", &SpeedRun::distance, "A Band of Length; None as above."},
      Field{"shifts", &SpeedRun::shifts, "The ShiftPoints ridden, a tuple, at nominal causes."},
      Field{"energy", &SpeedRun::energy, "The EnergyBalance at nominal causes, as far as the run goes."});
  def_struct<ThrustPoint>(
      module, "ThrustPoint", "One point of a gear's line of thrust over speed.",
      Field{"speed", &ThrustPoint::speed, "Road Speed."},
      Field{"engine_speed", &ThrustPoint::engine_speed, "An AngularSpeed."},
      Field{"thrust", &ThrustPoint::thrust, "A Band of Force."},
      Field{"resistance", &ThrustPoint::resistance, "What resists there, a Force."},
      Field{"excess", &ThrustPoint::excess, "Thrust beyond it, a Force; below zero where the gear does not hold."});
  def_struct<Downshift>(
      module, "Downshift", "A shift down at a road speed.",
      Field{"engine_speed", &Downshift::engine_speed, "Once the clutch is home, a Band of AngularSpeed."},
      Field{"rev_limit", &Downshift::rev_limit, "The engine's limit."},
      Field{"over_revs", &Downshift::over_revs, "Whether it is passed whatever the tyre."},
      Field{"may_over_rev", &Downshift::may_over_rev, "Whether it is with the smallest tyre its marking allows."},
      Field{"safe_below", &Downshift::safe_below, "Road speed at which the lower gear reaches it, a Band of Speed."});
  def_struct<GearOnRoad>(
      module, "GearOnRoad", "What one gear is good for.",
      Field{"climb", &GearOnRoad::climb, "The steepest slope it climbs, a BestClimb."},
      Field{"held_back", &GearOnRoad::held_back,
            "The steepest it holds back on, throttle closed, at the lowest speed it pulls: a Band of Angle."},
      Field{"engine_turns", &GearOnRoad::engine_turns, "Over a kilometre, a Band of numbers."});
  def_struct<OnRoad>(
      module, "OnRoad", "What a machine and a set-up do on the machine's road.",
      Field{"top_speed", &OnRoad::top_speed, "A TopSpeed on the level."},
      Field{"gears", &OnRoad::gears, "A tuple of GearOnRoad, from first gear up."},
      Field{"start", &OnRoad::start, "A StandingStart on the level, in first gear."},
      Field{"walking_pace", &OnRoad::walking_pace, "Lowest speed with the clutch out on asphalt, a Band of Speed."},
      Field{"shifts", &OnRoad::shifts, "The ShiftPoints that keep the thrust highest, a tuple."},
      Field{"limit", &OnRoad::limit, "The ThrustLimit of front wheel and asphalt, or None."},
      Field{"road_load", &OnRoad::road_load, "Where what resists comes from, as RoadLoad.kind."});
}

void register_questions(py::module_& module) {
  def(module, "thrust(machine, setup, gear, speed)",
      "The drive force at the ground in a gear, from 1, at a road speed, full throttle, after the drive's losses: a "
      "Band of Force over tyre, curve and losses. RangeError where the gear does not reach that speed.",
      [](const Arguments& given) {
        return thrust(given.want<Machine>("machine"), given.want<Setup>("setup"), given.want<int>("gear"),
                      given.want<Speed>("speed"));
      });
  def(module, "thrust_diagram(machine, setup, road, slope=0.0, points=61)",
      "Thrust over speed on a RoadLoad: a tuple of gears from first up, each a tuple of so many ThrustPoints, 2 to "
      "10,000, from the lowest speed the gear pulls at to its highest.",
      [](const Arguments& given) {
        const Powertrain train = powertrain(given.want<Machine>("machine"), given.want<Setup>("setup"));
        py::list gears;
        for (const auto& line : thrust_diagram(train, given.want<RoadLoad>("road"), given.want<Slope>("slope", Slope()),
                                               given.want<int>("points", 61)))
          gears.append(give_list(line));
        return py::object(py::tuple(gears));
      });
  def(module, "top_speed(machine, setup, road, slope=0.0)",
      "The greatest speed that the thrust holds on a RoadLoad, and what limits it: a TopSpeed. A machine that no gear "
      "moves on that slope has none, which is an answer. Error: within 3.4e-14 m/s for a constant torque.",
      [](const Arguments& given) {
        return top_speed(given.want<Machine>("machine"), given.want<Setup>("setup"), given.want<RoadLoad>("road"),
                         given.want<Slope>("slope", Slope()));
      });
  def(module, "steepest_slope(machine, setup, road, gear, speed)",
      "The steepest slope on which a gear holds a speed, full throttle: a Band of Angle, below zero where only "
      "downhill, 90 deg where the thrust is more than the weight. What front wheel and ground take is another matter: "
      "steepest_on_ground().",
      [](const Arguments& given) {
        return steepest_slope(given.want<Machine>("machine"), given.want<Setup>("setup"), given.want<RoadLoad>("road"),
                              given.want<int>("gear"), given.want<Speed>("speed"));
      });
  def(module, "best_climb(machine, setup, road, gear)",
      "The steepest slope that a gear climbs at the speed that suits it: a BestClimb.", [](const Arguments& given) {
        return best_climb(given.want<Machine>("machine"), given.want<Setup>("setup"), given.want<RoadLoad>("road"),
                          given.want<int>("gear"));
      });
  def(module, "steepest_descent(machine, setup, road, gear, speed)",
      "The steepest slope down which the closed throttle keeps a gear at a speed: a Band of Angle, wide where nobody "
      "measured the engine's drag.",
      [](const Arguments& given) {
        return steepest_descent(given.want<Machine>("machine"), given.want<Setup>("setup"),
                                given.want<RoadLoad>("road"), given.want<int>("gear"), given.want<Speed>("speed"));
      });
  def(module, "steepest_on_ground(body, ground)",
      "The steepest slope that front wheel and ground let anything climb, however hard it pushes: a GroundClimb, of a "
      "Body with wheelbase and centre of mass and the word of a surface().",
      [](const Arguments& given) {
        return steepest_on_ground(given.want<Body>("body"), surface(given.want<SurfaceKind>("ground")));
      });
  def(module, "standing_start(machine, setup, road, slope=0.0, gear=1)",
      "A start from standstill, the clutch slipping at the engine's start speed and full throttle: a StandingStart.",
      [](const Arguments& given) {
        return standing_start(given.want<Machine>("machine"), given.want<Setup>("setup"), given.want<RoadLoad>("road"),
                              given.want<Slope>("slope", Slope()), given.want<int>("gear", 1));
      });
  def(module,
      "time_to_speed(machine, setup, road, start, end, *, slope=0.0, shift_time='0.3 s', shift_at=None, ground=None)",
      "Time and way from one Speed to a higher one at full throttle, with all that turns: a SpeedRun. Each shift takes "
      "shift_time without thrust; shift_at is the engine speed of all shifts, None: where the thrust stays highest. "
      "Where the engine would turn slower than it pulls, the clutch slips. On the word of a surface() the rider opens "
      "the throttle only as far as the front wheel stays down and the rear one holds, which asks for a Body with "
      "wheelbase and centre of mass; None: as if both took any thrust. Error: within 6.2e-14 s and 1.1e-12 m for a "
      "constant torque.",
      [](const Arguments& given) {
        return time_to_speed(given.want<Machine>("machine"), given.want<Setup>("setup"), given.want<RoadLoad>("road"),
                             given.want<Speed>("start"), given.want<Speed>("end"),
                             {.slope = given.want<Slope>("slope", Slope()),
                              .shift_time = given.want<Duration>("shift_time", SpeedRunParts().shift_time),
                              .shift_at = given.want<std::optional<AngularSpeed>>("shift_at"),
                              .ground = given.want<std::optional<SurfaceKind>>("ground")});
      });
  def(module, "shift_points(machine, setup)", "The shifts up that keep the thrust highest: a tuple of ShiftPoints.",
      [](const Arguments& given) { return shift_points(given.want<Machine>("machine"), given.want<Setup>("setup")); });
  def(module, "walking_pace(machine, setup, ground='asphalt')",
      "The lowest speed with the clutch out, in first gear, over the tyre's size and its slip on that ground: a Band "
      "of Speed.",
      [](const Arguments& given) {
        return walking_pace(given.want<Machine>("machine"), given.want<Setup>("setup"),
                            given.want<SurfaceKind>("ground", SurfaceKind::asphalt));
      });
  def(module, "in_air(machine, air)",
      "The same Machine in other Air: less of it feeds an engine that nothing blows into (common practice), and less "
      "of it resists. A motor, whose curve begins at standstill, keeps its torque.",
      [](const Arguments& given) { return in_air(given.want<Machine>("machine"), given.want<Air>("air")); });
  def(module, "on_road(machine, setup)",
      "All that follows from the machine's engine, body and road load: an OnRoad. Error where one is not stated.",
      [](const Arguments& given) { return on_road(given.want<Machine>("machine"), given.want<Setup>("setup")); });
}

}  // namespace

void register_on_road(py::module_& module) {
  register_steps(module);
  register_answers(module);
  register_questions(module);
  def_formula<formula::joint_efficiency>(module, "What is left of the power after two losses, a number.");
  def_formula<formula::thrust_balance>(module, "Thrust over what resists, a number.");
  def_formula<formula::spare_thrust>(module, "Thrust (Force) that is left for the hill.");
  def_formula<formula::share_of_weight>(module, "A force along the road over the weight, a number.");
  def_formula<formula::slope_held>(module, "The slope (Angle) on which a thrust holds a mass.");
  def_formula<formula::slope_held_back>(module, "The slope (Angle) down which a mass is held back.");
  def_formula<formula::holding_force>(module, "What engine and air hold back together (Force).");
  def_formula<formula::slip_time>(module, "Time (Duration) for which the clutch slips.");
  def_formula<formula::slip_distance>(module, "Way (Length) covered meanwhile.");
  def_formula<formula::clutch_heat>(module, "Heat (Energy) in a slipping clutch.");
  def_formula<formula::kinetic_energy>(module, "Kinetic energy (Energy) of a mass between two speeds.");
  def_formula<formula::turning_energy>(module, "Kinetic energy (Energy) of what turns between two speeds.");
}

}  // namespace layshaft::python
