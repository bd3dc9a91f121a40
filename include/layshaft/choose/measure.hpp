// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/amount.hpp>
#include <layshaft/core/row_of.hpp>
#include <layshaft/core/units.hpp>

#include <optional>
#include <string_view>

/// @file
/// What a rider can ask of a set-up when choosing: each a number, with a kind and a direction.
namespace layshaft {

/// A number of a set-up on a machine. Changes are against the stock set-up, costs against what is fitted now.
enum class Measure : unsigned char {
  thrust_change,
  speed_change,
  engine_speed,
  walking_pace,
  top_speed,
  climb,
  thrust_over_limit,
  speedometer_beyond_rule,
  axle_room,
  wear_room,
  tight_point_slack,
  wrap,
  teeth_in_mesh,
  chain_safety,
  front_teeth,
  rear_teeth,
  links,
  chain_pull_change,
  front_contacts_change,
  rear_contacts_change,
  chain_stretch_change,
  front_life_change,
  rear_life_change,
  loss_change,
  evenness,
  load_margin,
  speed_margin,
  radius_margin,
  width_margin,
  circumference_change,
  cost,
  parts_changed,
  front_changed,
  rear_changed,
  chain_changed,
  tyre_changed,
  chain_mass,
};

/// On what parts of a set-up a measure depends, so that one of few parts is worked out once for many set-ups.
enum class MeasuredOn : unsigned char { drive, tyre, both };

/// What else a measure needs.
enum class MeasureNeeds : unsigned char { nothing, gear_and_speed, gear };

/// What is to be known of a measure.
struct MeasureRow {
  Measure kind;
  std::string_view name;
  Dimension dimension;
  MeasuredOn on;
  MeasureNeeds needs;
  std::string_view meaning;
};

// clang-format off
inline constexpr MeasureRow measure_rows[] = {
  {Measure::thrust_change,           "thrust change",           Dimension::fraction,       MeasuredOn::both,  MeasureNeeds::nothing,        "thrust in every gear at equal engine torque, over stock less one"},
  {Measure::speed_change,            "speed change",            Dimension::fraction,       MeasuredOn::both,  MeasureNeeds::nothing,        "speed in every gear at equal engine speed, over stock less one"},
  {Measure::engine_speed,            "engine speed",            Dimension::angular_speed,  MeasuredOn::both,  MeasureNeeds::gear_and_speed, "engine speed in a gear (the last, if none is stated) at a road speed"},
  {Measure::walking_pace,            "walking pace",            Dimension::speed,          MeasuredOn::both,  MeasureNeeds::nothing,        "lowest speed in first gear with the clutch out, on asphalt"},
  {Measure::top_speed,               "top speed",               Dimension::speed,          MeasuredOn::both,  MeasureNeeds::nothing,        "top speed on the machine's road"},
  {Measure::climb,                   "climb",                   Dimension::angle,          MeasuredOn::both,  MeasureNeeds::gear,           "steepest slope that a gear (the first, if none is stated) climbs on the machine's road"},
  {Measure::thrust_over_limit,       "thrust over limit",       Dimension::number,         MeasuredOn::both,  MeasureNeeds::nothing,        "greatest thrust in first gear over what lifts the front wheel or spins the rear one on asphalt"},
  {Measure::speedometer_beyond_rule, "speedometer beyond rule", Dimension::fraction,       MeasuredOn::both,  MeasureNeeds::nothing,        "how far the speedometer reads outside UN R39 at 40, 80 and 120 km/h, of the true speed; 0 is lawful"},
  {Measure::axle_room,               "axle room",               Dimension::length,         MeasuredOn::drive, MeasureNeeds::nothing,        "what the axle can still move to the nearer end of its adjuster"},
  {Measure::wear_room,               "wear room",               Dimension::fraction,       MeasuredOn::drive, MeasureNeeds::nothing,        "how far the chain can grow until the adjuster ends"},
  {Measure::tight_point_slack,       "tight point slack",       Dimension::length,         MeasuredOn::drive, MeasureNeeds::nothing,        "slack left by hand at the tight point of the suspension's travel"},
  {Measure::wrap,                    "wrap",                    Dimension::angle,          MeasuredOn::drive, MeasureNeeds::nothing,        "wrap of the chain on the front sprocket"},
  {Measure::teeth_in_mesh,           "teeth in mesh",           Dimension::number,         MeasuredOn::drive, MeasureNeeds::nothing,        "front teeth in mesh"},
  {Measure::chain_safety,            "chain safety",            Dimension::number,         MeasuredOn::drive, MeasureNeeds::nothing,        "strength of the chain over its pull at the engine's greatest torque in first gear"},
  {Measure::front_teeth,             "front teeth",             Dimension::number,         MeasuredOn::drive, MeasureNeeds::nothing,        "teeth of the front sprocket"},
  {Measure::rear_teeth,              "rear teeth",              Dimension::number,         MeasuredOn::drive, MeasureNeeds::nothing,        "teeth of the rear sprocket"},
  {Measure::links,                   "links",                   Dimension::number,         MeasuredOn::drive, MeasureNeeds::nothing,        "links of the chain"},
  {Measure::chain_pull_change,       "chain pull change",       Dimension::fraction,       MeasuredOn::both,  MeasureNeeds::nothing,        "the chain's pull at equal thrust, over stock less one"},
  {Measure::front_contacts_change,   "front contacts change",   Dimension::fraction,       MeasuredOn::both,  MeasureNeeds::nothing,        "how often a front tooth meets the chain in a kilometre, over stock less one"},
  {Measure::rear_contacts_change,    "rear contacts change",    Dimension::fraction,       MeasuredOn::tyre,  MeasureNeeds::nothing,        "how often a rear tooth meets the chain in a kilometre, over stock less one"},
  {Measure::chain_stretch_change,    "chain stretch change",    Dimension::fraction,       MeasuredOn::drive, MeasureNeeds::nothing,        "how fast the chain grows at equal thrust, over stock less one"},
  {Measure::front_life_change,       "front life change",       Dimension::fraction,       MeasuredOn::drive, MeasureNeeds::nothing,        "kilometres of the front sprocket, over stock less one"},
  {Measure::rear_life_change,        "rear life change",        Dimension::fraction,       MeasuredOn::drive, MeasureNeeds::nothing,        "kilometres of the rear sprocket, over stock less one"},
  {Measure::loss_change,             "loss change",             Dimension::fraction,       MeasuredOn::drive, MeasureNeeds::nothing,        "share of power that the joints lose at equal thrust, over stock less one"},
  {Measure::evenness,                "evenness",                Dimension::number,         MeasuredOn::drive, MeasureNeeds::nothing,        "how evenly the teeth meet the links, of the sprocket that does so worse"},
  {Measure::load_margin,             "load margin",             Dimension::mass,           MeasuredOn::tyre,  MeasureNeeds::nothing,        "load the tyre carries more than the machine asks"},
  {Measure::speed_margin,            "speed margin",            Dimension::speed,          MeasuredOn::tyre,  MeasureNeeds::nothing,        "speed the tyre is rated for above what the machine asks"},
  {Measure::radius_margin,           "radius margin",           Dimension::length,         MeasuredOn::tyre,  MeasureNeeds::nothing,        "clearance left over the tyre"},
  {Measure::width_margin,            "width margin",            Dimension::length,         MeasuredOn::tyre,  MeasureNeeds::nothing,        "clearance left beside the tyre"},
  {Measure::circumference_change,    "circumference change",    Dimension::fraction,       MeasuredOn::tyre,  MeasureNeeds::nothing,        "rolling circumference of the rear wheel, over stock less one"},
  {Measure::cost,                    "cost",                    Dimension::number,         MeasuredOn::both,  MeasureNeeds::nothing,        "prices and labour of all that is not on the machine now"},
  {Measure::parts_changed,           "parts changed",           Dimension::number,         MeasuredOn::both,  MeasureNeeds::nothing,        "how many of front and rear sprocket, chain and tyre are not those on the machine now"},
  {Measure::front_changed,           "front changed",           Dimension::number,         MeasuredOn::drive, MeasureNeeds::nothing,        "1 where the front sprocket is not the one on the machine now, else 0"},
  {Measure::rear_changed,            "rear changed",            Dimension::number,         MeasuredOn::drive, MeasureNeeds::nothing,        "1 where the rear sprocket is not the one on the machine now, else 0"},
  {Measure::chain_changed,           "chain changed",           Dimension::number,         MeasuredOn::drive, MeasureNeeds::nothing,        "1 where the chain is not the one on the machine now, or is shortened, else 0"},
  {Measure::tyre_changed,            "tyre changed",            Dimension::number,         MeasuredOn::tyre,  MeasureNeeds::nothing,        "1 where the tyre is not the one on the machine now, else 0"},
  {Measure::chain_mass,              "chain mass",              Dimension::mass,           MeasuredOn::drive, MeasureNeeds::nothing,        "mass of the chain, where its maker or its series tells it"},
};
// clang-format on

/// The row of a measure.
[[nodiscard]] constexpr const MeasureRow& measure_row(Measure measure) noexcept {
  return detail::row_of(measure_rows, measure);
}
[[nodiscard]] constexpr std::string_view to_string(Measure measure) noexcept { return measure_row(measure).name; }

/// A measure where it is asked for.
struct Measured {
  Measure what{};
  std::optional<int> gear = {};     ///< counted from 1
  std::optional<Speed> speed = {};  ///< road speed, above 0, to 10,000 km/h

  friend constexpr bool operator==(const Measured&, const Measured&) noexcept = default;
};

}  // namespace layshaft
