// SPDX-License-Identifier: MIT
#pragma once

#include "wants.hpp"

#include <layshaft/road/road.hpp>

/// @file
/// Doors for what stands in signatures of the road: a slope as a number or an Angle, a kind of ground by its word.
namespace layshaft::python::detail {

template <>
struct Words<MeasuredAt> {
  static constexpr auto& values = places_of_measurement;
};
template <>
struct Words<SurfaceKind> {
  static constexpr auto& values = surface_kinds;
};
template <>
struct Words<DragKind> {
  static constexpr auto& values = drag_kinds;
};
template <>
struct Words<ThrustLimitKind> {
  static constexpr ThrustLimitKind values[] = {ThrustLimitKind::wheelie, ThrustLimitKind::traction};
};
template <>
struct Words<RoadLoadKind> {
  static constexpr auto& values = road_load_kinds;
};
template <>
struct Words<TopSpeedLimit> {
  static constexpr TopSpeedLimit values[] = {TopSpeedLimit::revs, TopSpeedLimit::power, TopSpeedLimit::no_gear};
};
template <>
struct Words<StartLimit> {
  static constexpr StartLimit values[] = {StartLimit::engine, StartLimit::clutch};
};

/// Rise over run as a number, or an Angle.
template <>
struct Want<Slope> {
  static Slope from(py::handle object, std::string_view argument) {
    const bool number = is_real_number(object);
    if (!number && !PyUnicode_Check(object.ptr()) && kind_of(object) != &kind_of<Angle>())
      wrong_type(argument, "a slope: rise over run, such as 0.1, or an Angle such as 6 * deg or '6 deg'", object);
    const auto slope = number ? Slope::make(want_number(object, argument))
                              : Slope::make(Angle::from_value(want_quantity(object, kind_of<Angle>(), argument)));
    if (!slope) raise(slope.error());
    return *slope;
  }
};

/// An engine, or a curve that makes one without more.
template <>
struct Want<Engine> {
  static Engine from(py::handle object, std::string_view argument) {
    if (is<EngineCurve>(object)) return as<EngineCurve>(object);
    if (is<EngineEstimate>(object)) return as<EngineEstimate>(object);
    if (is<Engine>(object)) return as<Engine>(object);
    wrong_type(argument, "an EngineCurve, an EngineEstimate or an Engine", object);
  }
};

/// A FixedList of any sequence; one too many is remembered, for the library to refuse.
template <class T, std::size_t Capacity>
struct Want<FixedList<T, Capacity>> {
  static FixedList<T, Capacity> from(py::handle object, std::string_view argument) {
    FixedList<T, Capacity> list;
    for (const T& value : Want<std::vector<T>>::from(object, argument)) list.push_back(value);
    return list;
  }
};

}  // namespace layshaft::python::detail

namespace layshaft::python {
/// A slope as it was stated.
[[nodiscard]] inline py::object give_slope(const Slope& slope) {
  return slope.stated_grade() ? give(*slope.stated_grade()) : give(slope.angle());
}
}  // namespace layshaft::python
