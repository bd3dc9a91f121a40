// SPDX-License-Identifier: MIT
#include "road.hpp"
#include "value.hpp"

#include <layshaft/io/ride_log.hpp>
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
  py::class_<RideShare> share(module, "RideShare", py::is_final(),
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
    Remake remake{py::make_tuple(give(s.kind), give(s.share), give(s.speed)), {}};
    if (!s.slope.level()) remake.named["slope"] = give_slope(s.slope);
    name_if(remake.named, "gear", s.gear);
    return remake;
  });

  py::class_<RideProfile> type(
      module, "RideProfile", py::is_final(),
      "RideProfile(shares)\n--\n\nWhat a rider really rides: 1 to 16 RideShares that together make "
      "one. RangeError names the share that is wrong.");
  def_init(type, "RideProfile(shares)",
           [](const Arguments& given) { return RideProfile(given.want<RideShares>("shares")); });
  def_property(type, "shares", "The shares, a tuple.",
               [](const RideProfile& p) { return py::object(give_list(p.shares())); });
  def_property(type, "mean_speed", "The mean Speed over the riding time.",
               [](const RideProfile& p) { return p.mean_speed(); });
  def_value(type, [](const RideProfile& p) { return Remake{py::make_tuple(give_list(p.shares())), {}}; });
}

/// A column in the unit that its name says.
py::object give_column(const std::vector<double>& column, double unit) {
  py::list numbers;
  for (const double value : column) numbers.append(py::float_(value / unit));
  return py::object(py::tuple(numbers));
}
std::vector<double> want_column(const Arguments& given, const char* name, double unit) {
  std::vector<double> column;
  if (given.object(name).is_none()) return column;
  column = given.want<std::vector<double>>(name);
  for (double& value : column) value *= unit;
  return column;
}

void register_log(py::module_& module) {
  const char* signature = "RideLog(*, time_s, speed_kmh, height_m=None, engine_rpm=None, gap='10 s')";
  py::class_<RideLog> type(
      module, "RideLog", py::is_final(),
      Signature(signature)
          .doc("A recorded ride: sequences of plain numbers in the units that their names say, at least two, equally "
               "many. "
               "Times rise; samples further apart than gap do not belong together. RangeError names the sample that is "
               "wrong.",
               false)
          .c_str());
  def_init(type, signature, [](const Arguments& given) {
    return RideLog(
        RideColumns{want_column(given, "time_s", 1.0), want_column(given, "speed_kmh", units::kmh.value()),
                    want_column(given, "height_m", 1.0), want_column(given, "engine_rpm", units::rpm.value())},
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
  type.def("__repr__", [](const RideLog& log) { return "<RideLog of " + std::to_string(log.samples()) + " samples>"; });
  type.def("__eq__", [](const RideLog& log, const py::object& other) {
    return py::isinstance<RideLog>(other) && log == py::cast<const RideLog&>(other);
  });
  type.def("__hash__", [](const RideLog& log) {
    return py::hash(py::make_tuple(log.samples(), log.columns().times.back(), log.columns().speeds.back()));
  });
  type.def(py::pickle(
      [](const RideLog& log) {
        const RideColumns& c = log.columns();
        return py::make_tuple(1, give_column(c.times, 1.0), give_column(c.speeds, 1.0), give_column(c.heights, 1.0),
                              give_column(c.engine_speeds, 1.0), log.gap().value());
      },
      [](const py::tuple& state) {
        const auto column = [&](std::size_t i) { return want<std::vector<double>>(state[i], "column"); };
        return RideLog({column(1), column(2), column(3), column(4)}, want<double>(state[5], "gap") * units::s);
      }));
  def(module, "read_ride_log(text, *, gap='10 s')",
      "The RideLog of comma-separated values. The first line names the columns: time_s; speed_kmh, speed_mps or "
      "speed_mph; "
      "if recorded height_m and engine_rpm; others are passed over. Commas, semicolons or tabs; a decimal point. Error "
      "names "
      "the line and the column.",
      [](const Arguments& given) {
        return read_ride_log(given.want<std::string>("text"), given.want<Duration>("gap", RideLog::usual_gap));
      });
}

/// What was asked, kept beside the answer, so that pickles ask again.
struct PyUse {
  py::tuple asked;
  py::dict named;
  RideUse use;
};

void register_use(py::module_& module) {
  py::class_<PyUse> type(module, "RideUse", py::is_final(), "What a ride does to a drive; made by ride_use().");
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
      type, "engine_speeds",
      "How long the engine turned how fast: Durations, one for every 250 rpm from 0 up; the last takes all beyond.",
      [](const PyUse& u) { return py::object(give_list(u.use.engine_speeds())); });
  type.def("__repr__", [](const PyUse& u) {
    return "<RideUse: " + to_text(u.use.distance()) + " in " + to_text(u.use.time()) + ">";
  });
  type.def("__eq__", [](const PyUse& u, const py::object& other) {
    return py::isinstance<PyUse>(other) && u.use == py::cast<const PyUse&>(other).use;
  });
  type.def("__hash__", [](const PyUse& u) { return py::hash(py::make_tuple(u.use.time().value(), u.use.gears())); });
  type.def("__reduce__", [](const PyUse& u) {
    const py::module_ core = py::module_::import("layshaft._core");
    return py::make_tuple(core.attr("_remake"), py::make_tuple(core.attr("ride_use"), u.asked, u.named));
  });
  def(module, "ride_use(ride, overall_ratios, circumference, shift_rule, *, ridden=None)",
      "Time and distance in each gear, and how long the engine turns how fast: a RideUse. ride is a RideLog, or a "
      "RideProfile "
      "with the Duration that was ridden. Gears follow from the recorded engine speed, or else from the ShiftRule, "
      "which has "
      "as many as there are overall_ratios.",
      [](const Arguments& given) {
        const RideDrive drive{given.want<OverallRatios>("overall_ratios"), given.want<Length>("circumference"),
                              given.want<ShiftRule>("shift_rule")};
        const py::object ride = given.object("ride");
        PyUse made{py::make_tuple(ride, given.object("overall_ratios"), given.object("circumference"),
                                  given.object("shift_rule")),
                   py::dict(), RideUse(drive)};
        if (py::isinstance<RideLog>(ride)) {
          if (given.has("ridden") && !given.object("ridden").is_none())
            raise(Error::value("a RideLog knows how long was ridden; ridden goes with a RideProfile"));
          made.use = ride_use(py::cast<const RideLog&>(ride), drive);
        } else {
          if (!py::isinstance<RideProfile>(ride)) wrong_type("ride", "a RideLog or a RideProfile", ride);
          made.named["ridden"] = given.object("ridden");
          made.use = ride_use(py::cast<const RideProfile&>(ride), given.want<Duration>("ridden"), drive);
        }
        return py::cast(made);
      });
}

}  // namespace

void register_ride(py::module_& module) {
  register_profile(module);
  register_log(module);
  register_use(module);
}

}  // namespace layshaft::python
