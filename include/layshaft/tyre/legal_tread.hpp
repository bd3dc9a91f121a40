// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/fixed_list.hpp>
#include <layshaft/core/result.hpp>
#include <layshaft/core/source.hpp>
#include <layshaft/core/units.hpp>

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

/// @file
/// The least tread the rules of some countries ask for. Context for a rider, not legal advice: rules change, and a
/// tyre is often past its best before it is past the law.
namespace layshaft {

/// What kinds of vehicle the rules tell apart.
enum class VehicleClass {
  moped,
  light_motorcycle,  ///< small and light motorcycles, above 50 cc where a rule counts them
  motorcycle,
  car,
  light_goods,    ///< goods vehicles to 3.5 t
  heavy_steered,  ///< front axle of trucks and buses
  heavy_other,    ///< their other axles
};

inline constexpr VehicleClass vehicle_classes[] = {
    VehicleClass::moped,       VehicleClass::light_motorcycle, VehicleClass::motorcycle, VehicleClass::car,
    VehicleClass::light_goods, VehicleClass::heavy_steered,    VehicleClass::heavy_other};

[[nodiscard]] constexpr std::string_view to_string(VehicleClass vehicle) noexcept {
  switch (vehicle) {
    case VehicleClass::moped: return "moped";
    case VehicleClass::light_motorcycle: return "light motorcycle";
    case VehicleClass::motorcycle: return "motorcycle";
    case VehicleClass::car: return "car";
    case VehicleClass::light_goods: return "light goods vehicle";
    case VehicleClass::heavy_steered: return "truck or bus, front axle";
    case VehicleClass::heavy_other: return "truck or bus, other axles";
  }
  return {};
}

/// What kind of rule a row is.
enum class TreadRule {
  in_use,     ///< what a tyre on the road must have
  indicator,  ///< depth of the wear indicators moulded into new tyres, down to which they are made to be used
  handbook,   ///< what a public operator's handbook asks of its vehicles
};

[[nodiscard]] constexpr std::string_view to_string(TreadRule rule) noexcept {
  switch (rule) {
    case TreadRule::in_use: return "in use";
    case TreadRule::indicator: return "wear indicator";
    case TreadRule::handbook: return "handbook";
  }
  return {};
}

/// One row: where, for what, how deep, and where on the tyre.
struct LegalTread {
  std::string_view region;  ///< ISO 3166 code: DE, US, US-MD
  FixedList<VehicleClass, 5> vehicles;
  TreadRule rule;
  std::optional<Length> depth;  ///< none where only a visible pattern is asked for
  std::string_view condition;   ///< where the depth must be; empty where the source does not say
  Source source;

  [[nodiscard]] constexpr bool applies_to(VehicleClass vehicle) const noexcept {
    for (const VehicleClass one : vehicles)
      if (one == vehicle) return true;
    return false;
  }
};

namespace detail::legal_tread_table {
using enum VehicleClass;
using enum TreadRule;
using enum Certainty;
inline constexpr std::nullopt_t pattern_only = std::nullopt;

// Sources: each row's own. A row holds for the vehicles it lists, and says nothing of others.
// clang-format off
inline constexpr LegalTread rows[] = {
    {"DE", {motorcycle, car, light_goods, heavy_steered, heavy_other}, in_use, 1.6_mm, "main grooves in the middle three quarters of the tread", {"StVZO s. 36(3)", published}},
    {"DE", {moped, light_motorcycle}, in_use, 1.0_mm, "", {"StVZO s. 36(3)", published}},
    {"GB", {car, light_goods}, in_use, 1.6_mm, "unbroken band over the middle three quarters, all round", {"UK police advice on tyre law", published}},
    {"GB", {light_motorcycle, motorcycle}, in_use, 1.0_mm, "three quarters of the breadth; pattern visible on the rest", {"UK police advice on tyre law", published}},
    {"GB", {moped}, in_use, pattern_only, "pattern visible", {"UK police advice on tyre law", published}},
    {"US", {light_motorcycle, motorcycle}, indicator, 0.8_mm, "three indicators or more, 1/32 inch", {"FMVSS 119 S6.4", published}},
    {"US-MD", {light_motorcycle, motorcycle}, in_use, 0.8_mm, "inspection; 1/32 inch", {"COMAR 11.14.03.05", published}},
    {"US", {heavy_steered}, handbook, 3.2_mm, "4/32 inch", {"US postal service handbook PO-515, ss. 452, 462", published}},
    {"US", {heavy_other}, handbook, 1.6_mm, "2/32 inch", {"US postal service handbook PO-515, ss. 452, 462", published}},
    {"BR", {light_motorcycle, motorcycle}, indicator, 0.8_mm, "", {"Inmetro 083/2008", published}},
    {"BR", {car}, indicator, 1.6_mm, "up to 0.6 mm more", {"Inmetro 005/2000, Contran 558/80", published}},
    {"JP", {light_motorcycle, motorcycle}, in_use, 0.8_mm, "", {"Japanese road vehicle rules", from_memory}},
    {"JP", {car}, in_use, 1.6_mm, "", {"Japanese road vehicle rules", from_memory}},
};
// clang-format on
}  // namespace detail::legal_tread_table

/// The rules known.
inline constexpr const auto& legal_treads = detail::legal_tread_table::rows;

/// The row for a vehicle in a region: the region's own, else its country's (US-MD, then US); null where there is none.
[[nodiscard]] constexpr const LegalTread* find_legal_tread(std::string_view region, VehicleClass vehicle) noexcept {
  for (const LegalTread& row : legal_treads)
    if (row.region == region && row.applies_to(vehicle)) return &row;
  const std::size_t dash = region.find('-');
  return dash == region.npos ? nullptr : find_legal_tread(region.substr(0, dash), vehicle);
}

/// The rule for a vehicle in a region; or a ParseError that lists the regions known, or an Error that says which
/// vehicles the region's rules speak of.
[[nodiscard]] inline Result<LegalTread> try_legal_tread(std::string_view region, VehicleClass vehicle) {
  if (const LegalTread* row = find_legal_tread(region, vehicle)) return *row;
  std::string regions, vehicles;
  for (const LegalTread& row : legal_treads)
    if (regions.find(row.region) == std::string::npos) regions.append(regions.empty() ? "" : ", ").append(row.region);
  for (const VehicleClass one : vehicle_classes)
    if (find_legal_tread(region, one)) vehicles.append(vehicles.empty() ? "" : "; ").append(to_string(one));
  if (vehicles.empty()) return Error::parse(region, 0, "no region whose rule on tread is known", "one of " + regions);
  return Error::value(std::string("no rule on the tread of a ")
                          .append(to_string(vehicle))
                          .append(" is known in ")
                          .append(region)
                          .append("; there are those for ")
                          .append(vehicles));
}
#if LAYSHAFT_EXCEPTIONS
/// @throws ParseError or Error as `try_legal_tread` says.
[[nodiscard]] inline LegalTread legal_tread(std::string_view region, VehicleClass vehicle) {
  return try_legal_tread(region, vehicle).value();
}
#endif

}  // namespace layshaft
