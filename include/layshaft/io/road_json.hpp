// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/io/json_reader.hpp>
#include <layshaft/io/json_writer.hpp>
#include <layshaft/road/body.hpp>
#include <layshaft/road/drag_area.hpp>
#include <layshaft/road/engine.hpp>
#include <layshaft/road/road_load.hpp>

#include <string>
#include <utility>

/// @file
/// The road's parts of a machine as JSON: engine, body, road load. Opt-in with json.hpp.
namespace layshaft::detail {

[[nodiscard]] inline boost::json::object json_of(const EngineCurve& curve) {
  boost::json::array speeds, torques, constant_power;
  bool any = false;
  for (const EnginePoint& point : curve.points()) {
    speeds.emplace_back(to_text(point.speed));
    torques.emplace_back(to_text(point.torque));
    constant_power.emplace_back(point.constant_power);
    any = any || point.constant_power;
  }
  boost::json::object object{{"speeds", std::move(speeds)}, {"torques", std::move(torques)}};
  if (any) object["constant_power"] = std::move(constant_power);
  if (curve.measured_at() != MeasuredAt::crank) object["measured_at"] = std::string(to_string(curve.measured_at()));
  if (curve.torque_factor() != 1.0) object["torque_factor"] = curve.torque_factor();
  if (curve.source() == engine_estimate_source) object["estimated"] = true;
  return object;
}

[[nodiscard]] inline boost::json::object json_of(const Engine& engine) {
  const EngineParts& parts = engine.parts();
  const EngineEstimate& curve = parts.curve;
  boost::json::object object;
  if (curve.low == curve.nominal && curve.high == curve.nominal)
    object["curve"] = json_of(curve.nominal);
  else
    object["curve"] = {{"low", json_of(curve.low)}, {"nominal", json_of(curve.nominal)}, {"high", json_of(curve.high)}};
  if (parts.inertia != MomentOfInertia()) object["inertia"] = to_text(parts.inertia);
  if (parts.braking) object["braking"] = json_of(*parts.braking);
  if (parts.clutch_torque) object["clutch_torque"] = to_text(*parts.clutch_torque);
  if (parts.start_speed) object["start_speed"] = to_text(*parts.start_speed);
  return object;
}

[[nodiscard]] inline boost::json::object json_of(const Body& body) {
  boost::json::object object{{"mass", to_text(body.mass())}};
  if (body.wheelbase()) object["wheelbase"] = to_text(*body.wheelbase());
  if (body.centre_ahead()) object["centre_ahead"] = to_text(*body.centre_ahead());
  if (body.centre_height()) object["centre_height"] = to_text(*body.centre_height());
  if (body.wheel_inertia() != MomentOfInertia()) object["wheel_inertia"] = to_text(body.wheel_inertia());
  return object;
}

[[nodiscard]] inline boost::json::object json_of(const RoadParts& parts) {
  boost::json::object object{{"mass", to_text(parts.mass)}};
  object["rolling_coefficient"] = json_of(parts.rolling_coefficient);
  for (const Surface& ground : surfaces)
    if (ground.rolling_source == parts.rolling_source) {
      object.erase("rolling_coefficient");
      object["surface"] = std::string(to_string(ground.kind));
    }
  object["drag_area"] = json_of(parts.drag_area);
  for (const DragArea& row : drag_areas)
    if (row.source == parts.drag_source) {
      object.erase("drag_area");
      object["machine"] = std::string(to_string(row.kind));
    }
  if (parts.air_density != RoadParts().air_density) object["air_density"] = json_of(parts.air_density);
  return object;
}

[[nodiscard]] inline boost::json::object json_of(const RoadLoad& road) {
  boost::json::object object;
  if (road.parts()) {
    object = json_of(*road.parts());
  } else if (road.kind() == RoadLoadKind::mass_table) {
    object["by_mass"] = to_text(*road.mass());
    if (road.other_air()) object["air_density"] = to_text(*road.other_air());
  } else {
    object["constant"] = to_text(road.constant().nominal);
    if (road.linear() != ForcePerSpeed()) object["linear"] = to_text(road.linear());
    object["quadratic"] = to_text(road.quadratic().nominal);
    if (road.mass()) object["mass"] = to_text(*road.mass());
    if (road.kind() != RoadLoadKind::stated) object["kind"] = std::string(to_string(road.kind()));
  }
  if (road.head_wind() != Speed()) object["head_wind"] = to_text(road.head_wind());
  return object;
}

/// A list of quantities, one a point of a curve.
template <class Quantity>
[[nodiscard]] std::vector<Quantity> read_quantities(const JsonValue& value) {
  std::vector<Quantity> list;
  for (const JsonValue& one : value.elements("a list of texts with units")) list.push_back(one.quantity<Quantity>());
  return list;
}
[[nodiscard]] inline EngineCurve read_curve(const JsonValue& value, JsonObject& object) {
  const auto speeds = read_quantities<AngularSpeed>(object.at("speeds"));
  const auto torques = read_quantities<Torque>(object.at("torques"));
  if (torques.size() != speeds.size())
    object.at("torques").expected(std::to_string(speeds.size()) + " torques, one a speed");
  std::vector<bool> constant_power(speeds.size());
  if (const auto flags = object.find("constant_power")) {
    const auto list = flags->elements("a list of true and false");
    if (list.size() != speeds.size()) flags->expected(std::to_string(speeds.size()) + " of true and false");
    for (std::size_t i = 0; i < list.size(); ++i) constant_power[i] = list[i].truth();
  }
  EnginePoints points;
  for (std::size_t i = 0; i < speeds.size(); ++i) points.push_back({speeds[i], torques[i], constant_power[i]});
  EngineOrigin origin;
  if (const auto place = object.find("measured_at")) origin.measured_at = read_word(*place, places_of_measurement);
  if (const auto estimated = object.find("estimated"); estimated && estimated->truth())
    origin.source = engine_estimate_source;
  const auto factor = object.find("torque_factor");
  object.done();
  const EngineCurve curve = value.checked(EngineCurve::make(points, origin));
  return factor ? factor->checked(curve.try_scaled(factor->number("a factor such as 0.9"))) : curve;
}
[[nodiscard]] inline EngineEstimate read_curves(const JsonValue& value) {
  JsonObject object(value, "an engine's curve");
  const auto low = object.find("low"), nominal = object.find("nominal"), high = object.find("high");
  const auto rating = object.find("estimate");
  const auto curve_at = [](const JsonValue& one) {
    JsonObject parts(one, "an engine's curve");
    return read_curve(one, parts);
  };
  if (rating) {
    object.done();
    JsonObject parts(*rating, "a maker's four numbers");
    const EngineRating numbers{
        parts.at("torque").quantity<Torque>(),       parts.at("torque_speed").quantity<AngularSpeed>(),
        parts.at("power").quantity<Power>(),         parts.at("power_speed").quantity<AngularSpeed>(),
        parts.at("lowest").quantity<AngularSpeed>(), parts.at("highest").quantity<AngularSpeed>()};
    const auto place = parts.find("measured_at");
    parts.done();
    return rating->checked(
        try_estimate_engine(numbers, place ? read_word(*place, places_of_measurement) : MeasuredAt::crank));
  }
  if (low || nominal || high) {
    const EngineEstimate curves{curve_at(object.at("low")), curve_at(object.at("nominal")),
                                curve_at(object.at("high"))};
    object.done();
    return curves;
  }
  const EngineCurve curve = read_curve(value, object);
  return {curve, curve, curve};
}
[[nodiscard]] inline Engine read_engine(const JsonValue& value) {
  JsonObject object(value, "an engine");
  EngineParts parts{.curve = read_curves(object.at("curve"))};
  if (const auto inertia = object.find("inertia")) parts.inertia = inertia->quantity<MomentOfInertia>();
  if (const auto braking = object.find("braking"))
    parts.braking = read_band(*braking, [](const JsonValue& one) { return one.quantity<Torque>(); });
  if (const auto clutch = object.find("clutch_torque")) parts.clutch_torque = clutch->quantity<Torque>();
  if (const auto start = object.find("start_speed")) parts.start_speed = start->quantity<AngularSpeed>();
  object.done();
  return value.checked(Engine::make(parts));
}

[[nodiscard]] inline Body read_body(const JsonValue& value) {
  JsonObject object(value, "what is moved");
  BodyParts parts{.mass = object.at("mass").quantity<Mass>()};
  if (const auto length = object.find("wheelbase")) parts.wheelbase = length->quantity<Length>();
  if (const auto length = object.find("centre_ahead")) parts.centre_ahead = length->quantity<Length>();
  if (const auto length = object.find("centre_height")) parts.centre_height = length->quantity<Length>();
  if (const auto inertia = object.find("wheel_inertia")) parts.wheel_inertia = inertia->quantity<MomentOfInertia>();
  object.done();
  return value.checked(Body::make(parts));
}

[[nodiscard]] inline RoadLoad read_road_parts(const JsonValue& value, JsonObject& object) {
  RoadParts parts{.mass = object.at("mass").quantity<Mass>(), .rolling_coefficient = {}, .drag_area = {}};
  if (const auto word = object.find("surface")) {
    const Surface& ground = surface(read_word(*word, surface_kinds));
    parts.rolling_coefficient = ground.rolling_coefficient;
    parts.rolling_source = ground.rolling_source;
  } else {
    parts.rolling_coefficient = read_band(object.at("rolling_coefficient"),
                                          [](const JsonValue& one) { return one.number("a number such as 0.02"); });
  }
  if (const auto word = object.find("machine")) {
    const DragArea& row = drag_area(read_word(*word, drag_kinds));
    parts.drag_area = row.area;
    parts.drag_source = row.source;
  } else {
    parts.drag_area = read_band(object.at("drag_area"), [](const JsonValue& one) { return one.quantity<Area>(); });
  }
  if (const auto air = object.find("air_density"))
    parts.air_density = read_band(*air, [](const JsonValue& one) { return one.quantity<Density>(); });
  if (const auto wind = object.find("head_wind")) parts.head_wind = wind->quantity<Speed>();
  object.done();
  return value.checked(RoadLoad::try_from_parts(parts));
}
[[nodiscard]] inline RoadLoad read_road_load(const JsonValue& value) {
  JsonObject object(value, "what resists: by_mass, or rolling_coefficient and drag_area, or coefficients");
  if (const auto by_mass = object.find("by_mass")) {
    RoadLoad road = by_mass->checked(RoadLoad::try_by_mass(by_mass->quantity<Mass>()));
    if (const auto air = object.find("air_density")) road = air->checked(road.try_in_air(air->quantity<Density>()));
    if (const auto wind = object.find("head_wind")) road = wind->checked(road.try_in_wind(wind->quantity<Speed>()));
    object.done();
    return road;
  }
  if (object.find("surface") || object.find("rolling_coefficient") || object.find("machine") ||
      object.find("drag_area"))
    return read_road_parts(value, object);
  RoadCoefficients of;
  if (const auto constant = object.find("constant")) of.constant = constant->quantity<Force>();
  if (const auto linear = object.find("linear")) of.linear = linear->quantity<ForcePerSpeed>();
  if (const auto quadratic = object.find("quadratic")) of.quadratic = quadratic->quantity<LinearDensity>();
  if (const auto mass = object.find("mass")) of.mass = mass->quantity<Mass>();
  if (const auto wind = object.find("head_wind")) of.head_wind = wind->quantity<Speed>();
  if (const auto kind = object.find("kind")) {
    of.kind = read_word(*kind, kinds_of_coefficients);
  }
  object.done();
  return value.checked(RoadLoad::make(of));
}

}  // namespace layshaft::detail
