// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/symbol.hpp>
#include <layshaft/core/unit_names.hpp>
#include <layshaft/core/working.hpp>
#include <layshaft/io/json.hpp>

#include <algorithm>  // find_if
#include <iterator>
#include <string>
#include <string_view>

/// @file
/// A working as JSON: the steps as a graph that any program can draw its own way. It is written, never read. Opt-in;
/// link `layshaft::json`.
///
///     {
///       "layshaft": 1,
///       "title": "road speed in gear 3, ...",
///       "result": 11,                                     the place of the step that was asked for, from 0
///       "steps": [{
///         "name": "base overall diameter",
///         "symbol": "D0", "word": "overall_diameter",     the word of the glossary
///         "scope": "base", "index": 3,                    which of several, where there are several
///         "kind": "computed",                             or given, looked up, solved, chosen
///         "unit": "m",                                    SI; "1" of a number, "teeth" or "links" of a count
///         "result": {"low": ..., "nominal": ..., "high": ...},  null where that run did without the step
///         "formula": {"name": ..., "parameters": ..., "body": ..., "source": ...},
///         "source": {"document": ..., "certainty": ...},
///         "certainty": "derived",                         of the result: as the least sure of all that went into it
///         "from_steps": [0, 3],                           places of the steps that fed it, in the formula's order
///         "detail": "...",                                the row looked up, or the rule chosen by
///         "others": [...],                                of a step chosen: what else was possible, in the same unit
///         "reached": 9, "residual": 0                     of a step solved: the step that must come to the one it is
///       }, ...]                                           from, and by how much it misses
///     }
namespace layshaft {

namespace detail {

/// The name of the SI unit among those of a quantity, as QuantityNames spell it first.
template <class Quantity>
[[nodiscard]] constexpr std::string_view si_unit_of() noexcept {
  constexpr const auto& units = QuantityNames<Quantity>::units;
  constexpr auto si =
      std::find_if(std::begin(units), std::end(units), [](const UnitName& one) { return one.unit == 1.0; });
  static_assert(si != std::end(units));
  return si->name;
}

/// What an amount's value is counted in.
[[nodiscard]] constexpr std::string_view si_unit(Dimension dimension) noexcept {
  switch (dimension) {
    case Dimension::none:
    case Dimension::number:
    case Dimension::fraction: return "1";
    case Dimension::teeth: return "teeth";
    case Dimension::links: return "links";
    case Dimension::length: return si_unit_of<Length>();
    case Dimension::mass: return si_unit_of<Mass>();
    case Dimension::speed: return si_unit_of<Speed>();
    case Dimension::angular_speed: return si_unit_of<AngularSpeed>();
    case Dimension::area: return si_unit_of<Area>();
    case Dimension::duration: return si_unit_of<Duration>();
    case Dimension::acceleration: return si_unit_of<Acceleration>();
    case Dimension::force: return si_unit_of<Force>();
    case Dimension::torque: return si_unit_of<Torque>();
    case Dimension::power: return si_unit_of<Power>();
    case Dimension::energy: return si_unit_of<Energy>();
    case Dimension::pressure: return si_unit_of<Pressure>();
    case Dimension::density: return si_unit_of<Density>();
    case Dimension::linear_density: return si_unit_of<LinearDensity>();
    case Dimension::force_per_speed: return si_unit_of<ForcePerSpeed>();
    case Dimension::angle: return si_unit_of<Angle>();
    case Dimension::moment_of_inertia: return si_unit_of<MomentOfInertia>();
    case Dimension::temperature: return si_unit_of<Temperature>();
  }
  return "1";
}

[[nodiscard]] constexpr std::string_view word_of(Scope scope) noexcept {
  switch (scope) {
    case Scope::none: break;
    case Scope::base: return "base";
    case Scope::trial: return "trial";
    case Scope::front_end: return "front end";
    case Scope::rear_end: return "rear end";
  }
  return {};
}

[[nodiscard]] inline boost::json::value json_of(std::string_view text) {
  return boost::json::value(boost::json::string_view(text.data(), text.size()));
}
[[nodiscard]] inline boost::json::object json_of(const Source& source) {
  return {{"document", json_of(source.document)}, {"certainty", json_of(to_string(source.certainty))}};
}
[[nodiscard]] inline boost::json::array json_of(const std::vector<int>& places) {
  return boost::json::array(places.begin(), places.end());
}

[[nodiscard]] inline boost::json::object json_of(const Step& step) {
  const StepIdentity& identity = step.identity();
  boost::json::object object;
  object["name"] = step.name();
  object["word"] = json_of(identity.name.word);
  object["symbol"] = json_of(symbol_of(step).text);
  if (identity.scope != Scope::none) object["scope"] = json_of(word_of(identity.scope));
  if (identity.name.index > 0) object["index"] = identity.name.index;
  object["kind"] = json_of(to_string(step.kind()));
  object["unit"] = json_of(si_unit(step.result().dimension));
  const auto run = [&](Corner corner) {
    const auto& there = step.run(corner);
    return there ? boost::json::value(there->result.value) : boost::json::value(nullptr);
  };
  object["result"] = {{"low", run(Corner::low)}, {"nominal", run(Corner::nominal)}, {"high", run(Corner::high)}};
  if (const Formula* formula = step.formula())
    object["formula"] = {{"name", json_of(formula->name)},
                         {"parameters", json_of(formula->parameters)},
                         {"body", json_of(formula->body)},
                         {"source", json_of(formula->source)}};
  object["source"] = json_of(step.source());
  object["certainty"] = json_of(to_string(step.certainty()));
  object["from_steps"] = json_of(step.from_steps());
  if (!step.detail().empty()) object["detail"] = step.detail();
  if (step.kind() == StepKind::chosen) {
    boost::json::array others;
    for (const Amount& other : step.run().others) others.push_back(other.value);
    object["others"] = others;
  }
  if (step.kind() == StepKind::solved) {
    object["reached"] = step.run().reached;
    object["residual"] = step.run().residual;
  }
  return object;
}

[[nodiscard]] inline boost::json::object json_of(const Working& working) {
  boost::json::array steps;
  for (const Step& step : working.steps()) steps.push_back(json_of(step));
  return {{"title", json_of(working.title())}, {"result", working.result_place()}, {"steps", steps}};
}

}  // namespace detail

/// A working as a JSON text.
[[nodiscard]] inline std::string to_json(const Working& working) { return detail::json_text(detail::json_of(working)); }

}  // namespace layshaft
