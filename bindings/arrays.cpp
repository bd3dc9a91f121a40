// SPDX-License-Identifier: MIT
// layshaft._arrays: formulas as real NumPy ufuncs. One line of the list at the end makes one.
#include <layshaft/layshaft.hpp>

#include <pybind11/pybind11.h>

#define NPY_NO_DEPRECATED_API NPY_2_0_API_VERSION
#include <numpy/arrayobject.h>
#include <numpy/ufuncobject.h>

#include <cfenv>  // to clear what NumPy would warn of
#include <concepts>
#include <limits>
#include <utility>

namespace layshaft::python {
namespace {

namespace py = pybind11;

constexpr double nan = std::numeric_limits<double>::quiet_NaN();

// How an element becomes a parameter of a formula, and its result an element. `fits` asks for what the parameter's own
// type demands; the formula's range is asked after that.

/// A plain number.
struct Number {
  static bool fits(double) { return true; }
  static double from(double element) { return element; }
  static double to(double value) { return value; }
};
/// A quantity, as a number of this unit.
template <const auto& Unit>
struct In {
  static bool fits(double) { return true; }
  static auto from(double element) { return element * Unit; }
  static double to(std::remove_cvref_t<decltype(Unit)> value) { return value / Unit; }
};
/// A whole count: any other number is out of range.
template <class T>
struct Whole {
  static bool fits(double element) {
    return element >= T::least && element <= T::greatest && element == static_cast<int>(element);
  }
  static T from(double element) { return *T::make(static_cast<int>(element)); }
};

template <class Formula, class Out, class... Ins>
struct Ufunc {
  static constexpr int inputs = sizeof...(Ins);

  static double one(std::same_as<double> auto... elements) {
    if (!(Ins::fits(elements) && ...)) return nan;
    if (!Formula::in_range(Ins::from(elements)...)) return nan;
    const double result = Out::to(Formula::of(Ins::from(elements)...));
    return result - result == 0.0 ? result : nan;
  }

  template <std::size_t... I>
  static void run(char** arrays, npy_intp count, const npy_intp* steps, std::index_sequence<I...>) {
    const npy_intp size = sizeof(double);
    char* const out = arrays[inputs];
    if (((steps[I] == size) && ...) && steps[inputs] == size) {
      // In a row, where the compiler may make vectors of it.
      const double* const in[] = {reinterpret_cast<const double*>(arrays[I])...};
      auto* const to = reinterpret_cast<double*>(out);
      for (npy_intp i = 0; i < count; ++i) to[i] = one(in[I][i]...);
    } else {
      for (npy_intp i = 0; i < count; ++i)
        *reinterpret_cast<double*>(out + i * steps[inputs]) =
            one(*reinterpret_cast<const double*>(arrays[I] + i * steps[I])...);
    }
  }
  static void loop(char** arrays, const npy_intp* dimensions, const npy_intp* steps, void*) {
    run(arrays, dimensions[0], steps, std::index_sequence_for<Ins...>());
    std::feclearexcept(FE_ALL_EXCEPT);  // NaN out is the answer, not a warning
  }

  /// NumPy keeps the pointers, so that what they point to is static.
  static void add(py::module_& module, const char* name, const char* doc) {
    static PyUFuncGenericFunction loops[] = {loop};
    static void* data[] = {nullptr};
    static char types[sizeof...(Ins) + 1];
    for (char& type : types) type = NPY_DOUBLE;
    PyObject* ufunc = PyUFunc_FromFuncAndData(loops, data, types, 1, inputs, 1, PyUFunc_None, name, doc, 0);
    if (!ufunc) throw py::error_already_set();
    module.attr(name) = py::reinterpret_steal<py::object>(ufunc);
  }
};

/// One ufunc: its name and the units of its result and its arguments. The docstring is static.
template <class Formula, class Out, class... Ins>
void add(py::module_& module, const char* name, const char* doc) {
  Ufunc<Formula, Out, Ins...>::add(module, name, doc);
}

/// The loop both ways: not one formula but a solve, which asks for its own range and answers NaN outside it.
struct LinksOfCentre {
  static bool in_range(const auto&...) { return true; }
  static double of(Length pitch, Teeth front, Teeth rear, Length centre) {
    return chain_links(pitch, front, rear, centre);
  }
};
struct CentreOfLinks {
  static bool in_range(const auto&...) { return true; }
  static Length of(Length pitch, Teeth front, Teeth rear, double links) {
    return chain_centre(pitch, front, rear, links);
  }
};

/// The lower of two formulas.
struct RatingOfPitch {
  static bool in_range(Length pitch, Teeth, AngularSpeed shaft_speed) {
    return positive(pitch) && positive(shaft_speed);
  }
  static Power of(Length pitch, Teeth teeth, AngularSpeed shaft_speed) {
    return power_rating_of_pitch(pitch, teeth, shaft_speed);
  }
};

using Rpm = In<units::rpm>;
using Kmh = In<units::kmh>;
using Mm = In<units::mm>;
using Km = In<units::km>;
using TeethCount = Whole<Teeth>;
using LinksCount = Whole<Links>;

void add_all(py::module_& module) {
  add<formula::overall_ratio, Number, Number, Number, TeethCount, TeethCount>(
      module, "overall_ratio",
      "overall_ratio(primary, gear, front, rear): engine turns per turn of the wheel; front and rear are tooth "
      "counts.");
  add<formula::road_speed, Kmh, Rpm, Number, Mm>(
      module, "road_speed_kmh",
      "road_speed_kmh(engine_rpm, overall_ratio, circumference_mm): road speed in km/h, without slip, from the engine "
      "speed in revolutions a minute, engine turns per wheel turn, and the rolling circumference in millimetres.");
  add<formula::engine_speed, Rpm, Kmh, Number, Mm>(
      module, "engine_rpm",
      "engine_rpm(speed_kmh, overall_ratio, circumference_mm): engine speed in revolutions a minute, without slip, "
      "from "
      "the road speed in km/h, engine turns per wheel turn, and the rolling circumference in millimetres.");
  add<formula::thrust_change, Number, Number, Mm, Number, Mm>(
      module, "thrust_change",
      "thrust_change(base_ratio, base_circumference_mm, trial_ratio, trial_circumference_mm): change of thrust in the "
      "same gear at equal engine torque, as trial / base - 1.");
  add<formula::thrust_change_with_loss, Number, Number, Mm, Number, Mm, Number, Number>(
      module, "thrust_change_with_loss",
      "thrust_change_with_loss(base_ratio, base_circumference_mm, trial_ratio, trial_circumference_mm, "
      "base_efficiency, trial_efficiency): the same where the chain drive's efficiency, above 0, changes as well.");
  add<formula::speed_change, Number, Number, Mm, Number, Mm>(
      module, "speed_change",
      "speed_change(base_ratio, base_circumference_mm, trial_ratio, trial_circumference_mm): change of road speed in "
      "the same gear at equal engine speed, as trial / base - 1.");
  add<formula::contribution, Number, Number, Number>(
      module, "contribution",
      "contribution(ratio, factor): the points that one factor contributes to a change by the ratio of all factors "
      "together; those of all factors add up to ratio - 1.");
  add<formula::worn_diameter, Mm, Mm, Mm>(
      module, "worn_diameter_mm",
      "worn_diameter_mm(overall_diameter_mm, tread_worn_mm): a tyre's overall diameter in millimetres with so many "
      "millimetres of its tread's height worn off.");
  add<formula::rolling_circumference, Mm, Mm, Number>(
      module, "rolling_circumference_mm",
      "rolling_circumference_mm(overall_diameter_mm, rolling_factor): the distance in millimetres rolled in one turn, "
      "from the free tyre's overall diameter in millimetres.");
  add<formula::worn_circumference, Mm, Mm, Number, Mm, Mm>(
      module, "worn_circumference_mm",
      "worn_circumference_mm(circumference_mm, rolling_factor, measured_tread_depth_mm, tread_depth_mm): rolling "
      "circumference in millimetres at one depth of the tread, of a tyre whose circumference was measured at another.");
  add<formula::tread_left, Number, Mm, Mm, Mm>(
      module, "tread_left",
      "tread_left(new_tread_depth_mm, tread_depth_mm, least_tread_depth_mm): share of the usable tread that is left; "
      "below zero once it is worn past the least.");
  add<formula::distance_left, Km, Km, Mm, Mm, Mm>(
      module, "distance_left_km",
      "distance_left_km(distance_km, new_tread_depth_mm, tread_depth_mm, least_tread_depth_mm): kilometres until the "
      "least depth, if the tread goes on wearing as it did over distance_km; below zero: how far ago it was.");
  add<formula::static_radius, Mm, Mm, Number>(
      module, "static_radius_mm",
      "static_radius_mm(free_radius_mm, static_share): height in millimetres of the axle above the ground, from the "
      "share of the free radius that is left under load.");
  add<formula::effective_radius, Mm, Mm, Mm>(
      module, "effective_radius_mm",
      "effective_radius_mm(free_radius_mm, static_radius_mm): radius in millimetres of the circle that rolls as far as "
      "the tyre does.");
  add<formula::circumference_of_radius, Mm, Mm>(
      module, "circumference_of_radius_mm",
      "circumference_of_radius_mm(effective_radius_mm): millimetres rolled in one turn.");
  add<formula::circumference_change, Number, Mm, Mm>(
      module, "circumference_change",
      "circumference_change(base_circumference_mm, trial_circumference_mm): change of the rolling circumference, as "
      "trial / base - 1.");
  add<formula::pitch_diameter, Mm, Mm, TeethCount>(
      module, "sprocket_pitch_diameter_mm",
      "sprocket_pitch_diameter_mm(pitch_mm, teeth): pitch diameter in millimetres of a sprocket for a chain pitch in "
      "millimetres.");
  add<formula::speed_variation, Number, TeethCount>(
      module, "chain_speed_variation",
      "chain_speed_variation(teeth): 1 - cos(180 degrees / teeth), how much slower the chain runs on a sprocket's flat "
      "than on its corner.");
  add<RatingOfPitch, In<units::hp>, In<units::inch>, TeethCount, Rpm>(
      module, "chain_power_rating_hp",
      "chain_power_rating_hp(pitch_in, teeth, shaft_rpm): the horsepower that ANSI B29.1 rates the standard chain of a "
      "pitch in inches for, one strand, by the lower of its two branches. Context, never a verdict.");
  add<LinksOfCentre, Number, Mm, TeethCount, TeethCount, Mm>(
      module, "chain_links",
      "chain_links(pitch_mm, front, rear, centre_mm): links of the closed loop, a real number, exactly, for a pitch "
      "and a "
      "centre distance in millimetres; NaN where the pitch circles overlap.");
  add<CentreOfLinks, Mm, Mm, TeethCount, TeethCount, Number>(
      module, "chain_centre_mm",
      "chain_centre_mm(pitch_mm, front, rear, links): centre distance in millimetres of a closed loop of so many links "
      "(whole or real), the inverse of chain_links; NaN where so few links do not go around.");
  add<formula::front_contacts, Number, Km, Mm, TeethCount, TeethCount>(
      module, "front_contacts",
      "front_contacts(distance_km, circumference_mm, front, rear): how often each front tooth meets the chain over a "
      "distance in kilometres.");
  add<formula::rear_contacts, Number, Km, Mm>(
      module, "rear_contacts",
      "rear_contacts(distance_km, circumference_mm): how often each rear tooth meets the chain over a distance in "
      "kilometres.");
  add<formula::passes, Number, TeethCount, LinksCount>(
      module, "passes", "passes(teeth, links): passes of the whole chain until a tooth meets the same link again.");
  add<formula::distinct_links, Number, TeethCount, LinksCount>(
      module, "distinct_links",
      "distinct_links(teeth, links): how many different links each tooth meets in that time.");
  add<formula::highest_lawful_reading, Kmh, Kmh>(module, "highest_lawful_reading_kmh",
                                                 "highest_lawful_reading_kmh(true_speed_kmh): the highest reading in "
                                                 "km/h that UN R39 allows at a true speed in km/h.");
}

}  // namespace
}  // namespace layshaft::python

PYBIND11_MODULE(_arrays, module) {
  module.doc() = "layshaft's formulas as NumPy ufuncs; import layshaft.arrays instead.";
  if (_import_array() < 0 || _import_umath() < 0) throw pybind11::error_already_set();
  layshaft::python::add_all(module);
}
