// SPDX-License-Identifier: MIT
#include "road.hpp"

#include "formula.hpp"
#include "value.hpp"
#include "working.hpp"

#include <layshaft/road/explain.hpp>

namespace layshaft::python {
namespace {

/// What a row of a table has in Python: it is known by its word, by which the function finds it again.
template <class Row>
void def_row(Class<Row>& type, const char* function) {
  const std::string name(function);
  def_special(type, "__repr__",
              [name](const Row& row) { return name + "('" + std::string(to_string(row.kind)) + "')"; });
  def_special(type, "__eq__",
              [](const Row& row, const py::object& other) { return is<Row>(other) && row == as<Row>(other); });
  def_special(type, "__hash__", [](const Row& row) { return py::hash(give(row.kind)); });
  def_special(type, "__reduce__", [name](const Row& row) {
    return tuple_of(py::module_::import("layshaft._core").attr(name.c_str()), tuple_of(give(row.kind)));
  });
}

void register_tables(py::module_& module) {
  Class<Surface> ground(module, "Surface",
                        "A kind of ground, found by surface(): wide bands, as far as books lie apart.");
  def_property(ground, "kind", "'asphalt', 'gravel', 'loose gravel', 'field' or 'sand'.",
               [](const Surface& s) { return s.kind; });
  def_property(ground, "rolling_coefficient", "Rolling resistance over the load on the tyre, a Band.",
               [](const Surface& s) { return s.rolling_coefficient; });
  def_property(ground, "rolling_source", "Where that comes from.", [](const Surface& s) { return s.rolling_source; });
  def_property(ground, "grip", "Greatest drive force over the load on the tyre, a Band, from memory.",
               [](const Surface& s) { return s.grip; });
  def_property(ground, "driving_slip",
               "How much slower the machine goes than its driven wheel rolls, a Band, from memory.",
               [](const Surface& s) { return s.driving_slip; });
  def_property(ground, "grip_source", "Where grip and slip come from.", [](const Surface& s) { return s.grip_source; });
  def_row(ground, "surface");
  def(module, "surface(kind)", "The Surface of that word: 'asphalt', 'gravel', 'loose gravel', 'field' or 'sand'.",
      [](const Arguments& given) { return surface(given.want<SurfaceKind>("kind")); });

  Class<DragArea> area(module, "DragArea",
                       "How much air a kind of machine moves with its rider, found by drag_area().");
  def_property(area, "kind", "'motorcycle', 'scooter' or 'bicycle'.", [](const DragArea& d) { return d.kind; });
  def_property(area, "area", "Drag coefficient times frontal area, a Band of Area.",
               [](const DragArea& d) { return d.area; });
  def_property(area, "source", "Where that comes from.", [](const DragArea& d) { return d.source; });
  def_row(area, "drag_area");
  def(module, "drag_area(kind)", "The DragArea of that word: 'motorcycle', 'scooter' or 'bicycle'.",
      [](const Arguments& given) { return drag_area(given.want<DragKind>("kind")); });

  def_struct<Air>(module, "Air", "The air at one place.", Field{"temperature", &Air::temperature, "Its Temperature."},
                  Field{"pressure", &Air::pressure, "Its Pressure."}, Field{"density", &Air::density, "Its Density."});
  def(module, "air_at(altitude, temperature=None)",
      "The Air at an altitude, -1000 to 11,000 m, by the standard atmosphere of ISO 2533; on a day of another "
      "Temperature, "
      "200 to 340 K, at the standard pressure.",
      [](const Arguments& given) {
        return air_at(given.want<Length>("altitude"), given.want<std::optional<Temperature>>("temperature"));
      });
}

CoastDownLog log_of(const Arguments& given, const std::vector<Duration>& times, const std::vector<Speed>& speeds) {
  return {.times = times,
          .speeds = speeds,
          .mass = given.want<Mass>("mass"),
          .equivalent_mass = given.want<std::optional<Mass>>("equivalent_mass"),
          .slope = given.want<Slope>("slope", Slope()),
          .with_linear = given.want<bool>("with_linear", false)};
}
const char* log_signature = "(times, speeds, mass, *, equivalent_mass=None, slope=0.0, with_linear=False)";

RoadLoad of_parts(const Arguments& given) {
  const auto one_of = [&](const char* value, const char* word) {
    if (given.object(value).is_none() == given.object(word).is_none())
      raise(Error::value(std::string("RoadLoad.from_parts() needs either ") + value + " or " + word));
  };
  one_of("rolling_coefficient", "surface");
  one_of("drag_area", "machine");
  RoadParts parts{.mass = given.want<Mass>("mass"), .rolling_coefficient = {}, .drag_area = {}};
  if (given.object("surface").is_none()) {
    parts.rolling_coefficient = given.want<Band<double>>("rolling_coefficient");
  } else {
    const Surface& ground = surface(given.want<SurfaceKind>("surface"));
    parts.rolling_coefficient = ground.rolling_coefficient;
    parts.rolling_source = ground.rolling_source;
  }
  if (given.object("machine").is_none()) {
    parts.drag_area = given.want<Band<Area>>("drag_area");
  } else {
    const DragArea& machine = drag_area(given.want<DragKind>("machine"));
    parts.drag_area = machine.area;
    parts.drag_source = machine.source;
  }
  if (given.has("air_density")) parts.air_density = given.want<Band<Density>>("air_density");
  parts.head_wind = given.want<Speed>("head_wind", Speed());
  return RoadLoad::from_parts(parts);
}

/// A band that is exact as its value.
template <class T>
py::object give_plain(const Band<T>& band) {
  return band.low == band.high ? give(band.nominal) : give(band);
}

/// Which function makes the road load again, and of what.
struct MadeBy {
  const char* function;  ///< of the class; null: its constructor
  Remake of;
};
MadeBy made_by(const RoadLoad& road) {
  MadeBy made{nullptr, Remake()};
  py::dict& named = made.of.named;
  if (road.kind() == RoadLoadKind::mass_table) {
    made.function = "by_mass";
    made.of.positional = tuple_of(give(*road.mass()));
    if (road.head_wind() != Speed()) named["head_wind"] = give(road.head_wind());
    name_if(named, "air_density", road.other_air());
    return made;
  }
  if (road.parts()) {
    const RoadParts& parts = *road.parts();
    made.function = "from_parts";
    named["mass"] = give(parts.mass);
    named["rolling_coefficient"] = give_plain(parts.rolling_coefficient);
    named["drag_area"] = give_plain(parts.drag_area);
    for (const Surface& ground : surfaces)
      if (ground.rolling_source == parts.rolling_source) {
        named.attr("pop")("rolling_coefficient");
        named["surface"] = give(ground.kind);
      }
    for (const DragArea& machine : drag_areas)
      if (machine.source == parts.drag_source) {
        named.attr("pop")("drag_area");
        named["machine"] = give(machine.kind);
      }
    named["air_density"] = give_plain(parts.air_density);
  } else {
    named["constant"] = give(road.constant().nominal);
    if (road.linear() != ForcePerSpeed()) named["linear"] = give(road.linear());
    named["quadratic"] = give(road.quadratic().nominal);
    name_if(named, "mass", road.mass());
    if (road.kind() != RoadLoadKind::stated) named["kind"] = give(road.kind());
  }
  if (road.head_wind() != Speed()) named["head_wind"] = give(road.head_wind());
  return made;
}

void register_road_load(py::module_& module) {
  const char* signature =
      "RoadLoad(*, constant='0 N', linear='0 N s/m', quadratic='0 kg/m', mass=None, head_wind='0 km/h', kind='stated')";
  Class<RoadLoad> type(
      module, "RoadLoad",
      Signature(signature)
          .doc("What holds a machine back: F = constant + linear v + quadratic v^2 on the level, quadratic with the "
               "speed "
               "through the air. On a slope the constant part goes with the load on the tyres, and mass climbs. Its "
               "coefficients are bands where its parts are. kind is 'stated', or 'coast-down' of fitted "
               "coefficients.\n\n"
               ">>> road = ls.RoadLoad(constant=\"40 N\", quadratic=0.02 * ls.N_per_kmh2)\n"
               ">>> road.resistance(\"50 km/h\")\n"
               "Force('90 N')",
               false)
          .c_str());
  def_init(type, signature, [](const Arguments& given) {
    const auto kind = given.has("kind")
                          ? detail::want_word<RoadLoadKind>(given.object("kind"), "kind", kinds_of_coefficients)
                          : RoadLoadKind::stated;
    return RoadLoad(RoadCoefficients{.constant = given.want<Force>("constant", Force()),
                                     .linear = given.want<ForcePerSpeed>("linear", ForcePerSpeed()),
                                     .quadratic = given.want<LinearDensity>("quadratic", LinearDensity()),
                                     .mass = given.want<std::optional<Mass>>("mass"),
                                     .head_wind = given.want<Speed>("head_wind", Speed()),
                                     .kind = kind});
  });
  def_static(
      type, "by_mass(mass, *, head_wind='0 km/h', air_density=None)",
      "The road load of a motorcycle of this mass with rider, 95 to 345 kg, by the US road-load table, 40 CFR "
      "86.529-98: a test bench's figure for hard road near 65 km/h, never for walking pace, hills or soft ground, "
      "which kind == 'mass table' tells. In air of another density (Density) than at sea level its drag goes with it.",
      [](const Arguments& given) {
        const RoadLoad road =
            RoadLoad::by_mass(given.want<Mass>("mass")).in_wind(given.want<Speed>("head_wind", Speed()));
        const auto air = given.want<std::optional<Density>>("air_density");
        return air ? road.in_air(*air) : road;
      });
  def_static(
      type,
      "from_parts(*, mass, rolling_coefficient=None, surface=None, drag_area=None, machine=None, "
      "air_density='1.225 kg/m3', head_wind='0 km/h')",
      "The road load of a mass that rolls on a surface through air. Either a rolling_coefficient or the word of a "
      "surface(), either a drag_area or the word of a drag_area(); each may be a Band.",
      of_parts);
  def_static(type, std::string("from_coast_down") + log_signature,
             "The road load that a coast-down log tells; fit_coast_down() also says how sure that is.",
             [](const Arguments& given) {
               const auto times = given.want<std::vector<Duration>>("times");
               const auto speeds = given.want<std::vector<Speed>>("speeds");
               return RoadLoad::from_coast_down(log_of(given, times, speeds));
             });
  def_property(type, "constant", "Constant part, a Band of Force.", [](const RoadLoad& r) { return r.constant(); });
  def_property(type, "linear", "What goes with speed, a ForcePerSpeed.", [](const RoadLoad& r) { return r.linear(); });
  def_property(type, "quadratic", "What goes with its square, a Band of LinearDensity: N/(m/s)^2.",
               [](const RoadLoad& r) { return r.quadratic(); });
  def_property(type, "mass", "The mass with rider, or None.", [](const RoadLoad& r) { return r.mass(); });
  def_property(type, "head_wind", "Wind against the machine.", [](const RoadLoad& r) { return r.head_wind(); });
  def_property(type, "kind",
               "'stated', 'mass table', 'parts' or 'coast-down': where it comes from, and so where it holds.",
               [](const RoadLoad& r) { return to_string(r.kind()); });
  def_property(type, "source", "Where it comes from, and how sure that is.",
               [](const RoadLoad& r) { return r.source(); });
  def(type, "resistance(speed, slope=0.0)",
      "The Force that resists at a speed, 0 to 1000 km/h, on a slope: rise over run, or an Angle. Below zero where "
      "hill or "
      "wind drive. Error on a slope where no mass is stated.",
      [](const RoadLoad& r, const Arguments& given) {
        return r.resistance(given.want<Speed>("speed"), given.want<Slope>("slope", Slope()));
      });
  def(type, "resistance_band(speed, slope=0.0)", "The same as a Band, as wide as the parts are uncertain.",
      [](const RoadLoad& r, const Arguments& given) {
        return r.resistance_band(given.want<Speed>("speed"), given.want<Slope>("slope", Slope()));
      });
  def(type, "in_wind(head_wind)", "The same road load in another wind, -300 to 300 km/h; below zero from behind.",
      [](const RoadLoad& r, const Arguments& given) { return r.in_wind(given.want<Speed>("head_wind")); });
  def(type, "in_air(density)",
      "The same road load in air of another density, above 0, to 10 kg/m3. What is not made of parts is taken as that "
      "of the standard atmosphere at sea level.",
      [](const RoadLoad& r, const Arguments& given) { return r.in_air(given.want<Density>("density")); });
  def(type, "explain(what, *, speed=None, slope=0.0, mass=None, start=None, end=None)",
      "How a number came about: a Working. 'resistance' is explained at a speed, 'coast down time' for a mass from "
      "start to "
      "end.",
      [](const RoadLoad& r, const Arguments& given) {
        const std::string what = want_what(given);
        const RoadQuestion at{.speed = given.want<std::optional<Speed>>("speed"),
                              .slope = given.want<Slope>("slope", Slope()),
                              .mass = given.want<std::optional<Mass>>("mass"),
                              .start = given.want<std::optional<Speed>>("start"),
                              .end = given.want<std::optional<Speed>>("end")};
        py::dict named;
        name_if(named, "speed", at.speed);
        if (!at.slope.level()) named["slope"] = give_slope(at.slope);
        name_if(named, "mass", at.mass);
        name_if(named, "start", at.start);
        name_if(named, "end", at.end);
        return PyWorking(r.explain(what, at), py::cast(r).attr("explain"), tuple_of(what), named);
      });
  def_special(type, "__repr__", [](const RoadLoad& r) {
    const MadeBy made = made_by(r);
    return call_text(made.function ? "RoadLoad." + std::string(made.function) : "RoadLoad", made.of);
  });
  def_special(type, "__eq__", [](const RoadLoad& r, const py::object& other) -> py::object {
    if (!is<RoadLoad>(other)) return py::reinterpret_borrow<py::object>(Py_NotImplemented);
    return py::bool_(r == as<RoadLoad>(other));
  });
  def_special(type, "__hash__", [](const py::object& self) { return py::hash(py::repr(self)); });
  def_special(type, "__reduce__", [](const py::object& self) {
    const MadeBy made = made_by(as<RoadLoad>(self));
    return pickled(
        py::module_::import("layshaft._core").attr("_remake_road"),
        tuple_of(made.function ? py::object(py::str(made.function)) : py::none(), made.of.positional, made.of.named));
  });
  // A static method is not pickled itself: it is found again by its name.
  def(module, "_remake_road(function, positional, named)", "For pickles.", [](const Arguments& given) {
    const py::object type = class_of<RoadLoad>();
    const py::object function = given.object("function");
    return (function.is_none() ? type : py::object(type.attr(function)))(*py::tuple(given.object("positional")),
                                                                         **py::dict(given.object("named")));
  });
}

/// What was asked, kept beside the answer: it is the repr, and pickles ask again.
struct PyFit {
  Remake asked;
  CoastDownFit fit;
};

void register_coast_down(py::module_& module) {
  Class<PyFit> type(module, "CoastDownFit",
                    "What a coast-down log tells; made by fit_coast_down(). The errors of the coefficients are "
                    "bound together, so that the "
                    "resistance at a speed is known better than each.");
  def_property(type, "road", "The fitted RoadLoad, on the level in still air.",
               [](const PyFit& f) { return f.fit.road; });
  def_property(type, "start_speed", "Where the fitted run begins.", [](const PyFit& f) { return f.fit.start_speed; });
  def_property(type, "scatter", "Standard deviation of the logged speeds about it.",
               [](const PyFit& f) { return f.fit.scatter; });
  def_property(type, "slowest", "The least speed of the log: the fit holds from there.",
               [](const PyFit& f) { return f.fit.slowest; });
  def_property(type, "fastest", "The greatest speed of the log: the fit holds to there.",
               [](const PyFit& f) { return f.fit.fastest; });
  def_property(type, "freedom", "Samples over fitted numbers.", [](const PyFit& f) { return f.fit.freedom; });
  def_property(type, "constant_uncertainty", "One standard deviation of the constant part, a Force.",
               [](const PyFit& f) { return f.fit.constant_uncertainty; });
  def_property(type, "linear_uncertainty", "One standard deviation of the linear part, a ForcePerSpeed.",
               [](const PyFit& f) { return f.fit.linear_uncertainty; });
  def_property(type, "quadratic_uncertainty", "One standard deviation of the quadratic part, a LinearDensity.",
               [](const PyFit& f) { return f.fit.quadratic_uncertainty; });
  def_property(type, "sureness", "How many standard deviations to either side hold the truth with 95 % certainty.",
               [](const PyFit& f) { return f.fit.sureness(); });
  def(type, "resistance(speed)",
      "The resistance on the level in still air with its ends of 95 % certainty, a Band of Force. RangeError outside "
      "the "
      "speeds of the log.",
      [](const PyFit& f, const Arguments& given) { return f.fit.resistance(given.want<Speed>("speed")); });
  def_special(type, "__repr__", [](const PyFit& f) { return call_text("fit_coast_down", f.asked); });
  def_special(type, "__eq__", [](const py::object& self, const py::object& other) {
    return is<PyFit>(other) && py::repr(self).equal(py::repr(other));
  });
  def_special(type, "__hash__", [](const py::object& self) { return py::hash(py::repr(self)); });
  def_special(type, "__reduce__", [](const PyFit& f) {
    return pickled(py::module_::import("layshaft._core").attr("fit_coast_down"), f.asked.positional, f.asked.named);
  });
  def(module, std::string("fit_coast_down") + log_signature,
      "Fits a coast-down log: sequences of Duration (rising) and Speed (above 0) of a machine that rolls with its "
      "clutch "
      "pulled, its mass with rider, with equivalent_mass also what the wheels' inertia adds, and the slope of the "
      "road: a "
      "CoastDownFit. with_linear also fits a part that goes with speed. RangeError names what is wrong with a log.",
      [](const Arguments& given) {
        const auto times = given.want<std::vector<Duration>>("times");
        const auto speeds = given.want<std::vector<Speed>>("speeds");
        const CoastDownLog log = log_of(given, times, speeds);
        Remake asked{tuple_of(give_list(times), give_list(speeds), give(log.mass)), {}};
        name_if(asked.named, "equivalent_mass", log.equivalent_mass);
        if (!log.slope.level()) asked.named["slope"] = give_slope(log.slope);
        if (log.with_linear) asked.named["with_linear"] = py::bool_(true);
        return py::cast(PyFit{asked, fit_coast_down(log)});
      });
  def(module, "coast_down_time(road, mass, start, end, slope=0.0)",
      "How long (Duration) a mass takes to roll from one speed down to another, clutch pulled; mass with what the "
      "wheels' inertia adds. Error where hill or wind drive it on before; else within 4.9 ulp.",
      [](const Arguments& given) {
        return coast_down_time(given.want<RoadLoad>("road"), given.want<Mass>("mass"), given.want<Speed>("start"),
                               given.want<Speed>("end"), given.want<Slope>("slope", Slope()));
      });
}

}  // namespace

void register_road(py::module_& module) {
  register_tables(module);
  register_road_load(module);
  register_coast_down(module);
  def_formula<formula::geopotential_height>(module, "Height (Length) by weakening gravity, of an altitude.");
  def_formula<formula::standard_temperature>(module, "Standard Temperature at a height.");
  def_formula<formula::air_pressure>(module, "Standard Pressure where the standard temperature is this.");
  def_formula<formula::air_density>(module, "Density of air at a pressure and a temperature.");
  def_formula<formula::density_ratio>(module, "How dense the air is, over that at sea level.");
  def_formula<formula::constant_resistance>(module, "Rolling resistance (Force) on the level.");
  def_formula<formula::quadratic_resistance>(module,
                                             "What air resists with over the square of speed, a LinearDensity.");
  def_formula<formula::rolling_on_slope>(module, "Rolling resistance (Force) on a slope.");
  def_formula<formula::climb_resistance>(module, "The weight's part (Force) along a slope.");
  def_formula<formula::air_speed>(module, "Speed through the air.");
  def_formula<formula::air_drag>(module, "What the air resists with (Force); below zero where a tail wind overtakes.");
  def_formula<formula::speed_resistance>(module, "What of the resistance (Force) comes with speed alone.");
  def_formula<formula::linear_part>(module, "Resistance (Force) that goes with speed.");
  def_formula<formula::rolling_resistance>(module, "Two parts of the resistance (Force) that the wheels meet.");
  def_formula<formula::resistance>(module, "All that resists (Force).");
  def_formula<formula::level_resistance>(module, "All that resists (Force) on the level.");
  def_formula<formula::coasting_force>(module, "The Force that stands for all those between two speeds.");
  def_formula<formula::coasting_bend>(module, "How much the resistance bends between two speeds.");
  def_formula<formula::coasting_time>(module, "The Duration from one speed down to another.");
  def_formula<formula::constant_in_wind>(module, "Constant part (Force) of the resistance over ground in a head wind.");
  def_formula<formula::linear_in_wind>(module,
                                       "Linear part (ForcePerSpeed) of the resistance over ground in a head wind.");
  def_formula<formula::overtaken>(module, "Quadratic part (LinearDensity) where a tail wind overtakes the machine.");
  def_formula<formula::constant_on_slope>(module, "Constant part (Force) of the resistance on a slope.");
  def_formula<formula::summed_time>(module, "Two times (Duration) one after the other.");
}

}  // namespace layshaft::python
