// SPDX-License-Identifier: MIT
#include "road.hpp"
#include "value.hpp"

#include <layshaft/io/ride_log.hpp>
#include <layshaft/road/log_machine.hpp>
#include <layshaft/road/log_use.hpp>

namespace layshaft::python {
namespace detail {
template <>
struct Words<RideKind> {
  static constexpr RideKind values[] = {RideKind::technical, RideKind::trail, RideKind::gravel_road, RideKind::highway};
};
}  // namespace detail

namespace {

void register_profile(py::module_& module) {
  const char* signature = "RideShare(kind, share, speed, *, slope=0.0, gear=None)";
  Class<RideShare> share(module, "RideShare",
                         Signature(signature)
                             .doc("One share of a ride: 'technical', 'trail', 'gravel road' or 'highway'; its "
                                  "part of the riding time, 0 to 1; "
                                  "the Speed, the slope on the mean, and the gear the rider holds to, from 1, or "
                                  "None: as a shift rule says.",
                                  false)
                             .c_str());
  def_init(share, signature, [](const Arguments& given) {
    return RideShare{given.want<RideKind>("kind"), given.want<double>("share"), given.want<Speed>("speed"),
                     given.want<Slope>("slope", Slope()), given.want<std::optional<int>>("gear")};
  });
  def_property(share, "kind", "What is ridden.", [](const RideShare& s) { return s.kind; });
  def_property(share, "share", "Part of the riding time.", [](const RideShare& s) { return s.share; });
  def_property(share, "speed", "At which it is ridden.", [](const RideShare& s) { return s.speed; });
  def_property(share, "slope", "As it was stated: rise over run, or an Angle.",
               [](const RideShare& s) { return give_slope(s.slope); });
  def_property(share, "gear", "The rider's habit, or None.", [](const RideShare& s) { return s.gear; });
  def_value(share, [](const RideShare& s) {
    Remake remake{tuple_of(give(s.kind), give(s.share), give(s.speed)), {}};
    if (!s.slope.level()) remake.named["slope"] = give_slope(s.slope);
    name_if(remake.named, "gear", s.gear);
    return remake;
  });

  Class<RideProfile> type(module, "RideProfile",
                          "RideProfile(shares)\n--\n\nWhat a rider really rides: 1 to 16 RideShares that together make "
                          "one. RangeError names the share that is wrong.");
  def_init(type, "RideProfile(shares)",
           [](const Arguments& given) { return RideProfile(given.want<RideShares>("shares")); });
  def_property(type, "shares", "The shares, a tuple.",
               [](const RideProfile& p) { return py::object(give_list(p.shares())); });
  def_property(type, "mean_speed", "The mean Speed over the riding time.",
               [](const RideProfile& p) { return p.mean_speed(); });
  def_value(type, [](const RideProfile& p) { return Remake{tuple_of(give_list(p.shares())), {}}; });
}

/// A column in the unit that its name says.
py::object give_column(const std::vector<double>& column, double unit) {
  py::list numbers;
  for (const double value : column) numbers.append(py::float_(value / unit));
  return py::object(py::tuple(numbers));
}
std::vector<double> want_column(const Arguments& given, const char* name, double unit) {
  auto column = given.want<std::vector<double>>(name);
  for (double& value : column) value *= unit;
  return column;
}
/// A column that a log need not have: empty where it is left out.
std::vector<double> want_column_or_none(const Arguments& given, const char* name, double unit) {
  if (given.object(name).is_none()) return {};
  return want_column(given, name, unit);
}

void register_log(py::module_& module) {
  const char* signature =
      "RideLog(*, time_s, speed_kmh, height_m=None, engine_rpm=None, indicated_kmh=None, odometer_km=None, "
      "gap='10 s')";
  Class<RideLog> type(
      module, "RideLog",
      Signature(signature)
          .doc("A recorded ride: sequences of plain numbers in the units that their names say, at least two, equally "
               "many. "
               "indicated_kmh is what the speedometer shows, odometer_km what the odometer has counted, which never "
               "falls. Times rise; samples further apart than gap do not belong together. RangeError names the sample "
               "that is wrong.",
               false)
          .c_str());
  def_init(type, signature, [](const Arguments& given) {
    return RideLog(RideColumns{want_column(given, "time_s", 1.0), want_column(given, "speed_kmh", units::kmh.value()),
                               want_column_or_none(given, "height_m", 1.0),
                               want_column_or_none(given, "engine_rpm", units::rpm.value()),
                               want_column_or_none(given, "indicated_kmh", units::kmh.value()),
                               want_column_or_none(given, "odometer_km", units::km.value())},
                   given.want<Duration>("gap", RideLog::usual_gap));
  });
  def_property(type, "samples", "How many samples there are.",
               [](const RideLog& log) { return static_cast<int>(log.samples()); });
  def_property(type, "gap", "How far apart two samples may lie.", [](const RideLog& log) { return log.gap(); });
  def_property(type, "time_s", "Times in seconds, a tuple.",
               [](const RideLog& log) { return give_column(log.columns().times, 1.0); });
  def_property(type, "speed_kmh", "Speeds in km/h, a tuple.",
               [](const RideLog& log) { return give_column(log.columns().speeds, units::kmh.value()); });
  def_property(type, "height_m", "Heights in metres, a tuple; empty where there are none.",
               [](const RideLog& log) { return give_column(log.columns().heights, 1.0); });
  def_property(type, "engine_rpm", "Engine speeds in rpm, a tuple; empty where there are none.",
               [](const RideLog& log) { return give_column(log.columns().engine_speeds, units::rpm.value()); });
  def_property(type, "indicated_kmh",
               "Speeds that the speedometer showed, in km/h, a tuple; empty where there are none.",
               [](const RideLog& log) { return give_column(log.columns().indicated_speeds, units::kmh.value()); });
  def_property(type, "odometer_km", "What the odometer had counted, in km, a tuple; empty where it was not recorded.",
               [](const RideLog& log) { return give_column(log.columns().odometers, units::km.value()); });
  def_special(type, "__repr__",
              [](const RideLog& log) { return "<RideLog of " + std::to_string(log.samples()) + " samples>"; });
  def_special(type, "__eq__", [](const RideLog& log, const py::object& other) {
    return is<RideLog>(other) && log == as<RideLog>(other);
  });
  def_special(type, "__hash__", [](const RideLog& log) {
    return py::hash(tuple_of(log.samples(), log.columns().times.back(), log.columns().speeds.back()));
  });
  def_pickle(
      type,
      [](const RideLog& log) {
        const RideColumns& c = log.columns();
        return tuple_of(give_column(c.times, 1.0), give_column(c.speeds, 1.0), give_column(c.heights, 1.0),
                        give_column(c.engine_speeds, 1.0), give_column(c.indicated_speeds, 1.0),
                        give_column(c.odometers, 1.0), log.gap().value());
      },
      [](const py::tuple& state) {
        const auto column = [&](std::size_t i) { return want<std::vector<double>>(state[i], "column"); };
        return RideLog({column(0), column(1), column(2), column(3), column(4), column(5)},
                       want<double>(state[6], "gap") * units::s);
      });
  def(module, "read_ride_log(text, *, gap='10 s')",
      "The RideLog of comma-separated values. The first line names the columns: time_s; speed_kmh, speed_mps or "
      "speed_mph; "
      "if recorded height_m, engine_rpm, indicated_kmh or indicated_mph, odometer_km or odometer_mile; others are "
      "passed "
      "over. Commas, semicolons or tabs; a decimal point. Error "
      "names "
      "the line and the column.",
      [](const Arguments& given) {
        return read_ride_log(given.want<std::string>("text"), given.want<Duration>("gap", RideLog::usual_gap));
      });
}

void register_load(py::module_& module) {
  const char* signature = "RideLoad(*, road, mass, spell='2 s')";
  Class<RideLoad> type(
      module, "RideLoad",
      Signature(signature)
          .doc("What the wheel works against along a ride: the RoadLoad that resists, of which the nominal counts, and "
               "the mass with the rider aboard that is sped up and lifted, 0.1 kg to 100 t. Of a RideLog the work of a "
               "spell in one gear, 0 s to an hour, is summed before it is asked whether it drove or held back, since "
               "noise between samples would count as both.",
               false)
          .c_str());
  def_init(type, signature, [](const Arguments& given) {
    RideLoad load{given.want<RoadLoad>("road"), given.want<Mass>("mass")};
    load.spell = given.want<Duration>("spell", load.spell);
    if (auto error = layshaft::detail::refused(load)) raise(*error);
    return load;
  });
  def_property(type, "road", "What resists.", [](const RideLoad& load) { return load.road; });
  def_property(type, "mass", "What is sped up and lifted.", [](const RideLoad& load) { return load.mass; });
  def_property(type, "spell", "How long work is summed before its sign counts.",
               [](const RideLoad& load) { return load.spell; });
  def_value(type, [](const RideLoad& load) {
    Remake remake;
    remake.named["road"] = give(load.road);
    remake.named["mass"] = give(load.mass);
    remake.named["spell"] = give(load.spell);
    return remake;
  });
}

void register_log_machine(py::module_& module) {
  auto gear = def_struct<LogGear>(
      module, "LogGear", "A gear, as a RideLog tells it.",
      Field{
          "engine_turns_per_metre", &LogGear::engine_turns_per_metre,
          "How often the engine turns while the machine goes a metre, the overall ratio over the circumference: a Band "
          "of the median and the quartiles of the gear's stretches."},
      Field{"time_share", &LogGear::time_share,
            "Of the time that was ridden faster than 8 km/h; the rest went into shifts and on the clutch."},
      Field{"stretches", &LogGear::stretches, "How many stretches of the log are this gear's."});
  def(gear, "overall_ratio(circumference)", "The overall ratio as a Band, with a wheel of 1 mm to 100 m. RangeError.",
      [](const LogGear& self, const Arguments& given) {
        return self.overall_ratio(given.want<Length>("circumference"));
      });
  Class<LogMachine> type(module, "LogMachine",
                         "LogMachine(gears)\n--\n\nA machine as a RideLog tells it; made by machine_of_log().");
  def_init(type, "LogMachine(gears)",
           [](const Arguments& given) { return LogMachine{given.want<std::vector<LogGear>>("gears")}; });
  def_property(type, "gears", "LogGears, a tuple, from first up; only those that were ridden in.",
               [](const LogMachine& machine) { return py::object(give_list(machine.gears)); });
  def_value(type, [](const LogMachine& machine) { return Remake{tuple_of(give_list(machine.gears)), {}}; });
  def_struct<InstrumentError>(
      module, "InstrumentError", "How far instruments are out, as a RideLog tells it; made by instrument_error().",
      Field{"speedometer", &InstrumentError::speedometer,
            "What the speedometer shows over the true speed, less one: a Band of the median and the quartiles of all "
            "stretches faster than 20 km/h; None where it was not recorded, or fewer than 10 are."},
      Field{"odometer", &InstrumentError::odometer,
            "What the odometer counts over the true distance, less one; None where it was not recorded, or less than 1 "
            "km "
            "was ridden."});
  def(module, "machine_of_log(log, *, gears=None)",
      "The LogMachine that a RideLog with engine speeds was recorded on: engine speed over road speed, of stretches "
      "faster than 8 km/h over which that changes by no more than 3 %, nor within a second, gathered where most of "
      "them "
      "are. gears, 1 to 16, says how many are expected. RangeError where fewer are told apart, Error where none is, or "
      "the log has no engine speeds.",
      [](const Arguments& given) {
        return machine_of_log(given.want<RideLog>("log"), given.want<std::optional<int>>("gears"));
      });
  def(module, "instrument_error(log)",
      "The InstrumentError of a RideLog's speedometer, on every stretch faster than 20 km/h, and of its odometer, over "
      "all that was recorded, against the speed over ground. Satellite speed is noisy, so only many stretches tell. "
      "Error where neither was recorded, or too little was ridden.",
      [](const Arguments& given) { return instrument_error(given.want<RideLog>("log")); });
}

/// What was asked, kept beside the answer, so that pickles ask again.
struct PyUse {
  py::tuple asked;
  py::dict named;
  RideUse use;
};

void register_use(py::module_& module) {
  Class<PyUse> type(module, "RideUse", "What a ride does to a drive; made by ride_use().");
  def_property(type, "time", "Riding time in all gears.", [](const PyUse& u) { return u.use.time(); });
  def_property(type, "distance", "Distance in all gears.", [](const PyUse& u) { return u.use.distance(); });
  def_property(type, "standstill", "Time that the machine stood, below 0.5 km/h.",
               [](const PyUse& u) { return u.use.standstill(); });
  def_property(type, "gaps", "Time that the recorder left out.", [](const PyUse& u) { return u.use.gaps(); });
  def_property(type, "climbed", "What was climbed in all (Length).", [](const PyUse& u) { return u.use.climbed(); });
  def_property(type, "time_in_gear", "Durations, one a gear from first up.", [](const PyUse& u) {
    py::list times;
    for (int gear = 1; gear <= u.use.gears(); ++gear) times.append(give(u.use.gear(gear).time));
    return py::object(py::tuple(times));
  });
  def_property(type, "distance_in_gear", "Lengths, one a gear from first up.", [](const PyUse& u) {
    py::list distances;
    for (int gear = 1; gear <= u.use.gears(); ++gear) distances.append(give(u.use.gear(gear).distance));
    return py::object(py::tuple(distances));
  });
  def_property(
      type, "wheel_work",
      "Energy at the wheel of all that drove it: the work at the chain less the chain's own loss. None where no "
      "load was stated.",
      [](const PyUse& u) { return u.use.wheel_work(); });
  def_property(type, "wheel_work_in_gear",
               "The same, Energies, one a gear from first up; None where no load was stated.", [](const PyUse& u) {
                 if (!u.use.wheel_work()) return py::object(py::none());
                 py::list work;
                 for (int gear = 1; gear <= u.use.gears(); ++gear) work.append(give(u.use.gear(gear).wheel_work));
                 return py::object(py::tuple(work));
               });
  def_property(type, "mean_thrust",
               "That work over the distance, a Force: the thrust that wears as much as the whole ride; or None.",
               [](const PyUse& u) { return u.use.mean_thrust(); });
  def_property(type, "held_back",
               "Energy that brakes and the engine on overrun took up, above zero. None where no load was stated.",
               [](const PyUse& u) { return u.use.held_back(); });
  def_property(
      type, "engine_speeds",
      "How long the engine turned how fast: Durations, one for every 250 rpm from 0 up; the last takes all beyond.",
      [](const PyUse& u) { return py::object(give_list(u.use.engine_speeds())); });
  def_special(type, "__repr__", [](const PyUse& u) {
    return "<RideUse: " + to_text(u.use.distance()) + " in " + to_text(u.use.time()) + ">";
  });
  def_special(type, "__eq__", [](const PyUse& u, const py::object& other) {
    return is<PyUse>(other) && u.use == as<PyUse>(other).use;
  });
  def_special(type, "__hash__", [](const PyUse& u) { return py::hash(tuple_of(u.use.time().value(), u.use.gears())); });
  def_special(type, "__reduce__", [](const PyUse& u) {
    const py::module_ core = py::module_::import("layshaft._core");
    return pickled(core.attr("ride_use"), u.asked, u.named);
  });
  def(module, "ride_use(ride, overall_ratios, circumference, shift_rule, *, ridden=None, load=None)",
      "Time, distance and, against a RideLoad, work in each gear, and how long the engine turns how fast: a RideUse. "
      "ride is a RideLog, or a "
      "RideProfile "
      "with the Duration that was ridden. Gears follow from the recorded engine speed, or else from the ShiftRule, "
      "which has "
      "as many as there are overall_ratios.",
      [](const Arguments& given) {
        const RideDrive drive{given.want<OverallRatios>("overall_ratios"), given.want<Length>("circumference"),
                              given.want<ShiftRule>("shift_rule"), given.want<std::optional<RideLoad>>("load")};
        const py::object ride = given.object("ride");
        PyUse made{
            tuple_of(ride, given.object("overall_ratios"), given.object("circumference"), given.object("shift_rule")),
            py::dict(), RideUse(drive)};
        if (drive.load) made.named["load"] = given.object("load");
        if (is<RideLog>(ride)) {
          if (given.has("ridden") && !given.object("ridden").is_none())
            raise(Error::value("a RideLog knows how long was ridden; ridden goes with a RideProfile"));
          made.use = ride_use(as<RideLog>(ride), drive);
        } else {
          if (!is<RideProfile>(ride)) wrong_type("ride", "a RideLog or a RideProfile", ride);
          made.named["ridden"] = given.object("ridden");
          made.use = ride_use(as<RideProfile>(ride), given.want<Duration>("ridden"), drive);
        }
        return py::cast(made);
      });
}

}  // namespace

void register_ride(py::module_& module) {
  register_profile(module);
  register_log(module);
  register_load(module);
  register_log_machine(module);
  register_use(module);
}

}  // namespace layshaft::python
