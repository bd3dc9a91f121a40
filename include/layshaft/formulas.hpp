// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/chain/loop.hpp>
#include <layshaft/chain/slack.hpp>
#include <layshaft/chain/sprocket.hpp>
#include <layshaft/gearing/change.hpp>
#include <layshaft/gearing/contribution.hpp>
#include <layshaft/gearing/ratio.hpp>
#include <layshaft/gearing/rule_of_thumb.hpp>
#include <layshaft/gearing/speed.hpp>
#include <layshaft/instrument/legal_limits.hpp>
#include <layshaft/instrument/reading.hpp>
#include <layshaft/tyre/code_designated.hpp>
#include <layshaft/tyre/dimensions.hpp>
#include <layshaft/tyre/rolling.hpp>
#include <layshaft/wear/contacts.hpp>
#include <layshaft/wear/tension.hpp>

#include <array>

/// @file
/// The list of all formulas, for what reads them: tests, docs, worked steps. Opt-in; a test compares it with the
/// headers.
namespace layshaft {

/// Formulas as a list of types, each of which knows its function and its text.
template <class... Formulas>
struct FormulaList {
  static constexpr std::array<const Formula*, sizeof...(Formulas)> texts{&Formulas::about...};
};

/// Every formula of the library, by subject.
using Formulas =
    FormulaList<formula::run_angle, formula::loop_links, formula::run_length, formula::wrap_front, formula::wrap_rear,
                formula::links_approximate, formula::centre_approximate, formula::spare_length, formula::slack_by_hand,
                formula::pitch_diameter, formula::root_diameter, formula::tip_diameter_least,
                formula::tip_diameter_greatest, formula::turns_ratio, formula::thrust_change, formula::speed_change,
                formula::engine_speed_change, formula::contribution, formula::gear_ratio, formula::final_ratio,
                formula::overall_ratio, formula::equivalent_rear, formula::thrust_change_by_thumb, formula::road_speed,
                formula::engine_speed, formula::highest_lawful_reading, formula::wheel_indicated_ratio,
                formula::correction_factor, formula::stock_reading, formula::indicated_speed,
                formula::overall_diameter_on_another_rim, formula::section_height, formula::overall_diameter,
                formula::overall_diameter_limit, formula::section_height_of_diameter, formula::rolling_circumference,
                formula::rear_contacts, formula::front_contacts, formula::chain_tension, formula::chain_tension_change>;

/// The texts of all formulas.
inline constexpr auto& all_formulas = Formulas::texts;

}  // namespace layshaft
