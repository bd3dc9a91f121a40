// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/chain/series.hpp>
#include <layshaft/chain/sprocket.hpp>
#include <layshaft/chain/tension.hpp>
#include <layshaft/chain/tooth_shares.hpp>
#include <layshaft/core/fixed_list.hpp>
#include <layshaft/wear/contacts.hpp>
#include <layshaft/wear/material.hpp>
#include <layshaft/wear/tooth_rate.hpp>

#include <optional>

/// @file
/// The weight of what wears one tooth, for two set-ups to be held against each other. By itself it means nothing.
namespace layshaft {

/// What cancels between two set-ups: a thrust and a wheel, the same on both sides.
inline constexpr Force reference_thrust = Force::from_value(100.0);
inline constexpr Length reference_circumference = Length::from_value(2.0);
inline constexpr Source reference_source{"for reference; it cancels", Certainty::stated};

/// Where the causes of a change of a tooth's wear stand in one run: the angle at which rollers press, which both share,
/// and the hardness of each material, which both share where they are of one.
struct ToothWearCorners {
  Corner pressure = Corner::nominal;
  Corner base_hardness = Corner::nominal;
  Corner trial_hardness = Corner::nominal;
};
using ToothWearRuns = FixedList<ToothWearCorners, 9>;

/// The runs of two sprockets. On equal teeth rollers press alike, whatever the angle.
[[nodiscard]] constexpr ToothWearRuns tooth_wear_runs(std::optional<SprocketMaterial> base,
                                                      std::optional<SprocketMaterial> trial,
                                                      bool equal_teeth) noexcept {
  constexpr Corner ends[] = {Corner::low, Corner::high};
  const bool shared = !base || !trial || *base == *trial;
  ToothWearRuns runs;
  runs.push_back({});
  for (const Corner end : ends) {
    const Corner pressure = equal_teeth ? Corner::nominal : end;
    if (shared && !equal_teeth) runs.push_back({pressure});
    if (shared) continue;
    for (const Corner other : ends)
      if (equal_teeth)
        runs.push_back({pressure, end, other});
      else
        for (const Corner hard : ends) runs.push_back({pressure, hard, other});
  }
  return runs;
}

namespace detail {

inline constexpr Source pressing_source{"ANSI B29.1 tooth form, between its least and greatest pressure angle",
                                        Certainty::from_memory};

/// The force on the tooth that takes most of the pull, for whoever watches.
template <class Watch, class WatchedForce, class WatchedTeeth>
[[nodiscard]] auto greatest_tooth_force(Watch watch, const WatchedForce& tension, const WatchedTeeth& teeth,
                                        Corner pressure) {
  const Teeth count = watch.plain(teeth);
  const Angle least = pressure_angle_least(count), most = pressure_angle_most(count);
  const Band<Angle> pressing{least, 0.5 * (least + most), most};
  const auto angle = watch.given("pressure_angle", pressing.at(pressure), pressing_source);
  const auto share = watch.step(formula::tooth_force_share{}, angle, teeth);
  return watch.step(formula::tooth_force{}, tension, share);
}
/// The weight of a tooth's wear over a kilometre, from how often it meets the chain.
template <class Watch, class WatchedNumber, class WatchedTeeth, class WatchedLength>
[[nodiscard]] auto tooth_weight(Watch watch, ChainSeries series, const WatchedNumber& contacts,
                                const WatchedTeeth& teeth, const WatchedLength& rear_diameter,
                                const WatchedLength& pitch, const WatchedLength& circumference,
                                std::optional<SprocketMaterial> made_of, Corner pressure, Corner hardness) {
  const auto thrust = watch.given("thrust", reference_thrust, reference_source);
  const auto tension = watch.step(formula::chain_tension{}, thrust, circumference, rear_diameter);
  const auto force = greatest_tooth_force(watch, tension, teeth, pressure);
  const auto roller = watch.looked_up("roller_diameter", series.roller_diameter(), series.name(),
                                      series.source(ChainProperty::roller_diameter));
  const auto slides = watch.step(formula::flank_sliding{}, roller, teeth);
  const Material& of = material(made_of.value_or(SprocketMaterial::hardened_steel));
  const auto hard = watch.given("hardness", of.hardness.at(made_of ? hardness : Corner::nominal),
                                made_of ? of.source : reference_source);
  return watch.step(formula::tooth_wear_weight{}, contacts, force, slides, hard, pitch);
}
template <class Watch>
[[nodiscard]] auto front_tooth_weight(Watch watch, ChainSeries series, Teeth front, Teeth rear,
                                      std::optional<SprocketMaterial> made_of, Corner pressure, Corner hardness) {
  const auto pitch = watch.looked_up("pitch", series.pitch(), series.name(), series.source(ChainProperty::pitch));
  const auto front_teeth = watch.given("front", front);
  const auto rear_teeth = watch.given("rear", rear);
  const auto circumference = watch.given("circumference", reference_circumference, reference_source);
  const auto distance = watch.given("distance", 1.0_km);
  const auto contacts =
      watch.step("contacts", formula::front_contacts{}, distance, circumference, front_teeth, rear_teeth);
  const auto rear_diameter = watch.step("rear_pitch_diameter", formula::pitch_diameter{}, pitch, rear_teeth);
  return tooth_weight(watch, series, contacts, front_teeth, rear_diameter, pitch, circumference, made_of, pressure,
                      hardness);
}
template <class Watch>
[[nodiscard]] auto rear_tooth_weight(Watch watch, ChainSeries series, Teeth rear,
                                     std::optional<SprocketMaterial> made_of, Corner pressure, Corner hardness) {
  const auto pitch = watch.looked_up("pitch", series.pitch(), series.name(), series.source(ChainProperty::pitch));
  const auto rear_teeth = watch.given("rear", rear);
  const auto circumference = watch.given("circumference", reference_circumference, reference_source);
  const auto distance = watch.given("distance", 1.0_km);
  const auto contacts = watch.step("contacts", formula::rear_contacts{}, distance, circumference);
  const auto rear_diameter = watch.step("rear_pitch_diameter", formula::pitch_diameter{}, pitch, rear_teeth);
  return tooth_weight(watch, series, contacts, rear_teeth, rear_diameter, pitch, circumference, made_of, pressure,
                      hardness);
}
/// How far a sprocket lasts, as a weight, from that of its teeth's wear. The share that a flank may lose and the width
/// of the teeth are nominal: both sides share what they are.
template <class Watch, class WatchedNumber>
[[nodiscard]] auto sprocket_life_weight(Watch watch, const Sprocket& sprocket, const WatchedNumber& wears) {
  const ChainSeries series = sprocket.series();
  const auto pitch = watch.looked_up("pitch", series.pitch(), series.name(), series.source(ChainProperty::pitch));
  const auto roller = watch.looked_up("roller_diameter", series.roller_diameter(), series.name(),
                                      series.source(ChainProperty::roller_diameter));
  const auto thickness = watch.step(formula::tooth_thickness{}, sprocket.pitch_diameter(watch), roller,
                                    watch.given("teeth", sprocket.teeth()));
  const auto share = watch.given("worn_out_share", worn_out_share.nominal, worn_out_source);
  const auto allowed = watch.step(formula::worn_out_depth{}, thickness, share);
  const auto width = sprocket.tooth_width(watch, Corner::nominal);
  const auto lost = watch.step(formula::flank_depth_worn{}, wears, pitch, width, roller);
  return watch.step(formula::sprocket_life_weight{}, allowed, lost);
}

}  // namespace detail

/// How deep a sprocket's flanks may be worn before it is worn out: a band, as the share it may lose is.
[[nodiscard]] inline Band<Length> flank_wear_limit(const Sprocket& sprocket) {
  const Length thickness =
      tooth_thickness(sprocket.pitch_diameter(), sprocket.series().roller_diameter(), sprocket.teeth());
  return over(worn_out_share, [&](double share) { return worn_out_depth(thickness, share); });
}

}  // namespace layshaft
