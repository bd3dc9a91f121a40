// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/io/json_reader.hpp>
#include <layshaft/io/json_writer.hpp>
#include <layshaft/io/road_json.hpp>
#include <layshaft/setup/machine.hpp>

#include <string>
#include <string_view>

/// @file
/// Machines and set-ups as JSON: quantities as text with their unit, ratios as numbers or pairs of gears. Opt-in; link
/// `layshaft::json`, which holds Boost.JSON's definitions, and leave exceptions on.
///
/// Every file carries `"layshaft": 1`, the version of the form. Unknown keys, missing keys, wrong units and values out
/// of range are errors that name the path to the place, and a key that stands twice names its byte; nothing is read by
/// half.
namespace layshaft {

/// The version of the form that is written, and the only one that is read so far.
inline constexpr int json_version = 1;

namespace detail {

[[nodiscard]] inline boost::json::value json_of(const GearRatio& ratio) {
  if (!ratio.pair()) return ratio.ratio();
  return {{"driving", ratio.pair()->driving.count()}, {"driven", ratio.pair()->driven.count()}};
}

inline void add_tyre(boost::json::object& to, const char* key, const char* use_key,
                     const std::optional<TyreSize>& tyre) {
  if (!tyre) return;
  to[key] = tyre->designation();
  if (tyre->use() != TyreUse::road) to[use_key] = std::string(to_string(tyre->use()));
}

[[nodiscard]] inline boost::json::object json_of(const Tread& tread) {
  boost::json::object object;
  object["new_depth"] = to_text(tread.new_depth());
  object["depth"] = to_text(tread.depth());
  if (tread.parts().least) object["least"] = to_text(*tread.parts().least);
  if (tread.parts().distance) object["distance"] = to_text(*tread.parts().distance);
  return object;
}

[[nodiscard]] inline boost::json::object json_of(const ChainMade& made) {
  boost::json::object object;
  if (made.seal != ChainSeal::none) object["seal"] = std::string(to_string(made.seal));
  if (made.pin_diameter) object["pin_diameter"] = to_text(*made.pin_diameter);
  if (made.tensile_strength) object["tensile_strength"] = to_text(*made.tensile_strength);
  if (made.mass_per_length) object["mass_per_length"] = to_text(*made.mass_per_length);
  if (made.plate_height) object["plate_height"] = to_text(*made.plate_height);
  if (made.joint_friction) object["joint_friction"] = json_of(*made.joint_friction);
  if (made.seal_drag) object["seal_drag"] = json_of(*made.seal_drag);
  return object;
}
[[nodiscard]] inline boost::json::object json_of(const Suspension& suspension) {
  const SuspensionParts& parts = suspension.parts();
  boost::json::object object;
  object["layshaft_ahead"] = to_text(parts.layshaft_ahead);
  object["layshaft_above"] = to_text(parts.layshaft_above);
  object["arm"] = to_text(parts.arm);
  if (parts.arm_rear) object["arm_rear"] = to_text(*parts.arm_rear);
  object["droop"] = to_text(parts.droop);
  object["rest"] = to_text(parts.rest);
  object["bump"] = to_text(parts.bump);
  return object;
}

[[nodiscard]] inline boost::json::object json_of(const Setup& setup) {
  boost::json::object object;
  object["front"] = setup.front().count();
  object["rear"] = setup.rear().count();
  add_tyre(object, "tyre", "tyre_use", setup.tyre());
  if (setup.parts().tread_worn != Length()) object["tread_worn"] = to_text(setup.parts().tread_worn);
  if (setup.tread()) object["tread"] = json_of(*setup.tread());
  if (setup.circumference()) object["circumference"] = json_of(*setup.circumference());
  if (setup.chain()) object["chain"] = std::string(setup.chain()->name());
  if (setup.links()) object["links"] = setup.links()->count();
  if (setup.drive_efficiency()) object["drive_efficiency"] = json_of(*setup.drive_efficiency());
  add_tyre(object, "front_tyre", "front_tyre_use", setup.front_tyre());
  if (setup.chain_made() != ChainMade()) object["chain_made"] = json_of(setup.chain_made());
  if (setup.front_material()) object["front_material"] = std::string(to_string(*setup.front_material()));
  if (setup.rear_material()) object["rear_material"] = std::string(to_string(*setup.rear_material()));
  return object;
}

[[nodiscard]] inline boost::json::object json_of(const Gearbox& gearbox) {
  boost::json::object object;
  object["primary"] = json_of(gearbox.primary());
  boost::json::array gears;
  for (const GearRatio& gear : gearbox.gears()) gears.push_back(json_of(gear));
  object["gears"] = gears;
  object["idle"] = to_text(gearbox.idle());
  if (gearbox.parts().lowest_pull) object["lowest_pull"] = to_text(*gearbox.parts().lowest_pull);
  object["rev_limit"] = to_text(gearbox.rev_limit());
  return object;
}

/// A tread rule is a matter of where one rides, not of the machine, and stays out of its file.
[[nodiscard]] inline boost::json::object json_of(const TyreAsked& asked) {
  boost::json::object object;
  if (asked.axle_load) object["axle_load"] = to_text(*asked.axle_load);
  if (asked.tyres_on_axle != 1) object["tyres_on_axle"] = asked.tyres_on_axle;
  if (asked.top_speed) object["top_speed"] = to_text(*asked.top_speed);
  if (asked.radius_clearance) object["radius_clearance"] = to_text(*asked.radius_clearance);
  if (asked.width_clearance) object["width_clearance"] = to_text(*asked.width_clearance);
  return object;
}

[[nodiscard]] inline boost::json::object json_of(const Machine& machine) {
  boost::json::object object;
  object["name"] = machine.name();
  object["kind"] = std::string(to_string(machine.kind()));
  object["gearbox"] = json_of(machine.gearbox());
  const Adjuster& adjuster = machine.adjuster();
  object["adjuster"] = {{"centre_min", to_text(adjuster.centre_min())},
                        {"centre_max", to_text(adjuster.centre_max())},
                        {"slack", to_text(adjuster.slack())}};
  object["chain"] = std::string(machine.chain().name());
  boost::json::object speedometer{{"sensor", std::string(to_string(machine.speedometer().sensor()))}};
  if (machine.speedometer().reading_error())
    speedometer["reading_error"] = json_of(*machine.speedometer().reading_error());
  object["speedometer"] = speedometer;
  object["stock"] = json_of(machine.stock());
  if (machine.tyre_asked() != TyreAsked()) object["tyre_asked"] = json_of(machine.tyre_asked());
  if (machine.suspension()) object["suspension"] = json_of(*machine.suspension());
  if (const auto& peak = machine.parts().peak_torque)
    object["peak_torque"] = {{"torque", to_text(peak->torque)}, {"engine_speed", to_text(peak->engine_speed)}};
  if (machine.engine()) object["engine"] = json_of(*machine.engine());
  if (machine.body()) object["body"] = json_of(*machine.body());
  if (machine.drive_efficiency()) object["drive_efficiency"] = json_of(*machine.drive_efficiency());
  if (machine.road_load()) object["road_load"] = json_of(*machine.road_load());
  return object;
}

/// A whole file: the version first, then what it holds.
[[nodiscard]] inline std::string json_text(const boost::json::object& content) {
  boost::json::object object{{"layshaft", json_version}};
  for (const auto& member : content) object.insert(member);
  std::string out;
  write_json(out, object);
  return out.append("\n");
}

[[nodiscard]] inline GearRatio read_gear_ratio(const JsonValue& value) {
  if (!value.is_object()) return value.number("a ratio, or {\"driving\": teeth, \"driven\": teeth}");
  JsonObject pair(value, "a pair of gears");
  const GearPair gears{pair.at("driving").count<TeethKind>(), pair.at("driven").count<TeethKind>()};
  pair.done();
  return gears;
}

[[nodiscard]] inline Gearbox read_gearbox(const JsonValue& value) {
  JsonObject object(value, "a gearbox");
  GearboxParts parts;
  if (const auto primary = object.find("primary")) parts.primary = read_gear_ratio(*primary);
  const JsonValue gears = object.at("gears");
  for (const JsonValue& gear : gears.elements("a list of ratios")) {
    if (parts.gears.size() == most_gears)
      raise(Error::range("number of gears", "more", "1 to " + std::to_string(most_gears)).in(gears.path()));
    parts.gears.push_back(read_gear_ratio(gear));
  }
  parts.idle = object.at("idle").quantity<AngularSpeed>();
  if (const auto lowest_pull = object.find("lowest_pull")) parts.lowest_pull = lowest_pull->quantity<AngularSpeed>();
  parts.rev_limit = object.at("rev_limit").quantity<AngularSpeed>();
  object.done();
  return value.checked(Gearbox::make(parts));
}

[[nodiscard]] inline Adjuster read_adjuster(const JsonValue& value) {
  JsonObject object(value, "an adjuster");
  const Length centre_min = object.at("centre_min").quantity<Length>();
  const Length centre_max = object.at("centre_max").quantity<Length>();
  const auto slack = object.find("slack");
  object.done();
  return value.checked(Adjuster::make(centre_min, centre_max, slack ? slack->quantity<Length>() : 0.0_mm));
}

[[nodiscard]] inline Speedometer read_speedometer(const JsonValue& value) {
  constexpr SpeedometerSensor sensors[] = {SpeedometerSensor::layshaft, SpeedometerSensor::rear_wheel,
                                           SpeedometerSensor::front_wheel};
  if (value.is_string()) return value.checked(Speedometer::make(read_word(value, sensors)));
  JsonObject object(value, "what the speedometer senses, or {\"sensor\": ..., \"reading_error\": ...}");
  const SpeedometerSensor sensor = read_word(object.at("sensor"), sensors);
  std::optional<Band<double>> reading_error;
  if (const auto error = object.find("reading_error"))
    reading_error = read_band(*error, [](const JsonValue& one) { return one.number("a fraction such as 0.04"); });
  object.done();
  return value.checked(Speedometer::make(sensor, reading_error));
}

[[nodiscard]] inline std::optional<TyreSize> read_tyre(JsonObject& object, std::string_view key,
                                                       std::string_view use_key) {
  const auto tyre = object.find(key);
  const auto use_word = object.find(use_key);
  if (!tyre && use_word) use_word->expected("no use where no tyre is stated");
  if (!tyre) return std::nullopt;
  const TyreUse use = use_word ? read_word(*use_word, tyre_uses) : TyreUse::road;
  return tyre->checked(TyreSize::make(tyre->text("a tyre's marking, such as \"110/90-18\""), use));
}

[[nodiscard]] inline Tread read_tread(const JsonValue& value) {
  JsonObject object(value, "a tread such as {\"new_depth\": \"12 mm\", \"depth\": \"8 mm\"}");
  TreadParts parts{.new_depth = object.at("new_depth").quantity<Length>(),
                   .depth = object.at("depth").quantity<Length>()};
  if (const auto least = object.find("least")) parts.least = least->quantity<Length>();
  if (const auto distance = object.find("distance")) parts.distance = distance->quantity<Length>();
  object.done();
  return value.checked(Tread::make(parts));
}

[[nodiscard]] inline ChainMade read_chain_made(const JsonValue& value) {
  JsonObject object(value, "what is known of the chain");
  ChainMade made;
  if (const auto seal = object.find("seal")) made.seal = read_word(*seal, chain_seals);
  if (const auto pin = object.find("pin_diameter")) made.pin_diameter = pin->quantity<Length>();
  if (const auto strength = object.find("tensile_strength")) made.tensile_strength = strength->quantity<Force>();
  if (const auto mass = object.find("mass_per_length")) made.mass_per_length = mass->quantity<LinearDensity>();
  if (const auto height = object.find("plate_height")) made.plate_height = height->quantity<Length>();
  if (const auto friction = object.find("joint_friction"))
    made.joint_friction = read_band(*friction, [](const JsonValue& one) { return one.number("a number such as 0.1"); });
  if (const auto drag = object.find("seal_drag"))
    made.seal_drag = read_band(*drag, [](const JsonValue& one) { return one.quantity<Torque>(); });
  object.done();
  return made;
}
[[nodiscard]] inline Suspension read_suspension(const JsonValue& value) {
  JsonObject object(value, "a swingarm");
  SuspensionParts parts{.layshaft_ahead = object.at("layshaft_ahead").quantity<Length>(),
                        .layshaft_above = object.at("layshaft_above").quantity<Length>(),
                        .arm = object.at("arm").quantity<Length>(),
                        .droop = object.at("droop").quantity<Angle>(),
                        .rest = object.at("rest").quantity<Angle>(),
                        .bump = object.at("bump").quantity<Angle>()};
  if (const auto rear = object.find("arm_rear")) parts.arm_rear = rear->quantity<Length>();
  object.done();
  return value.checked(Suspension::make(parts));
}
[[nodiscard]] inline PeakTorque read_peak_torque(const JsonValue& value) {
  JsonObject object(value, "an engine's greatest torque");
  const PeakTorque peak{object.at("torque").quantity<Torque>(), object.at("engine_speed").quantity<AngularSpeed>()};
  object.done();
  return peak;
}

[[nodiscard]] inline Setup read_setup(const JsonValue& value, JsonObject& object) {
  SetupParts parts{.front = object.at("front").count<TeethKind>(), .rear = object.at("rear").count<TeethKind>()};
  parts.tyre = read_tyre(object, "tyre", "tyre_use");
  if (const auto tread_worn = object.find("tread_worn")) parts.tread_worn = tread_worn->quantity<Length>();
  if (const auto tread = object.find("tread")) parts.tread = read_tread(*tread);
  if (const auto circumference = object.find("circumference"))
    parts.circumference = read_band(*circumference, [](const JsonValue& one) { return one.quantity<Length>(); });
  if (const auto chain = object.find("chain"))
    parts.chain = chain->checked(ChainSeries::make(chain->text("a chain series, such as \"520\"")));
  if (const auto links = object.find("links")) parts.links = links->count<LinksKind>();
  if (const auto efficiency = object.find("drive_efficiency"))
    parts.drive_efficiency =
        read_band(*efficiency, [](const JsonValue& one) { return one.number("a fraction such as 0.96"); });
  parts.front_tyre = read_tyre(object, "front_tyre", "front_tyre_use");
  if (const auto made = object.find("chain_made")) parts.chain_made = read_chain_made(*made);
  if (const auto material = object.find("front_material"))
    parts.front_material = read_word(*material, sprocket_materials);
  if (const auto material = object.find("rear_material"))
    parts.rear_material = read_word(*material, sprocket_materials);
  object.done();
  return value.checked(Setup::make(parts));
}

[[nodiscard]] inline TyreAsked read_tyre_asked(const JsonValue& value) {
  JsonObject object(value, "what the machine asks of its rear tyre");
  TyreAsked asked;
  if (const auto load = object.find("axle_load")) asked.axle_load = load->quantity<Mass>();
  if (const auto tyres = object.find("tyres_on_axle"))
    asked.tyres_on_axle = static_cast<int>(tyres->whole("1, 2 or 4 tyres"));
  if (const auto speed = object.find("top_speed")) asked.top_speed = speed->quantity<Speed>();
  if (const auto room = object.find("radius_clearance")) asked.radius_clearance = room->quantity<Length>();
  if (const auto room = object.find("width_clearance")) asked.width_clearance = room->quantity<Length>();
  object.done();
  return asked;
}

[[nodiscard]] inline Machine read_machine(const JsonValue& value, JsonObject& object) {
  constexpr MachineKind kinds[] = {MachineKind::motorcycle, MachineKind::cycle};
  const auto kind = object.find("kind");
  const JsonValue chain = object.at("chain");
  const JsonValue stock = object.at("stock");
  JsonObject stock_object(stock, "a set-up");
  MachineParts parts{.name = std::string(object.at("name").text("the machine's name")),
                     .gearbox = read_gearbox(object.at("gearbox")),
                     .adjuster = read_adjuster(object.at("adjuster")),
                     .chain = chain.checked(ChainSeries::make(chain.text("a chain series, such as \"520\""))),
                     .speedometer = read_speedometer(object.at("speedometer")),
                     .stock = read_setup(stock, stock_object),
                     .kind = kind ? read_word(*kind, kinds) : MachineKind::motorcycle};
  if (const auto asked = object.find("tyre_asked")) parts.tyre_asked = read_tyre_asked(*asked);
  if (const auto suspension = object.find("suspension")) parts.suspension = read_suspension(*suspension);
  if (const auto peak = object.find("peak_torque")) parts.peak_torque = read_peak_torque(*peak);
  if (const auto engine = object.find("engine")) parts.engine = read_engine(*engine);
  if (const auto body = object.find("body")) parts.body = read_body(*body);
  if (const auto efficiency = object.find("drive_efficiency"))
    parts.drive_efficiency =
        read_band(*efficiency, [](const JsonValue& one) { return one.number("a fraction such as 0.9"); });
  if (const auto road = object.find("road_load")) parts.road_load = read_road_load(*road);
  object.done();
  return value.checked(Machine::make(std::move(parts)));
}

/// Reads one thing out of a whole file: its version first, then what it holds.
template <class Read>
[[nodiscard]] auto read_json(std::string_view text, std::string_view what, Read read) {
  const boost::json::value document = parse_json(text);
  const JsonValue root(document, "$");
  JsonObject object(root, what);
  const JsonValue version = object.at("layshaft");
  if (version.whole("the version 1") != json_version) version.expected("the version 1");
  return read(root, object);
}

/// The error as a value in place of the exception.
template <class T, class Read>
[[nodiscard]] Result<T> caught(Read read) {
  try {
    return read();
  } catch (const Error& error) {
    return error;
  }
}

}  // namespace detail

/// A machine as a JSON text.
[[nodiscard]] inline std::string to_json(const Machine& machine) { return detail::json_text(detail::json_of(machine)); }
/// A set-up as a JSON text.
[[nodiscard]] inline std::string to_json(const Setup& setup) { return detail::json_text(detail::json_of(setup)); }

/// Reads a machine.
/// @throws Error, ParseError or RangeError; each names the path to the place.
[[nodiscard]] inline Machine machine_from_json(std::string_view text) {
  return detail::read_json(text, "a machine", detail::read_machine);
}
/// Reads a set-up.
/// @throws Error, ParseError or RangeError; each names the path to the place.
[[nodiscard]] inline Setup setup_from_json(std::string_view text) {
  return detail::read_json(text, "a set-up", detail::read_setup);
}
/// Reads a machine, the error as a value.
[[nodiscard]] inline Result<Machine> try_machine_from_json(std::string_view text) {
  return detail::caught<Machine>([&] { return machine_from_json(text); });
}
/// Reads a set-up, the error as a value.
[[nodiscard]] inline Result<Setup> try_setup_from_json(std::string_view text) {
  return detail::caught<Setup>([&] { return setup_from_json(text); });
}

}  // namespace layshaft
