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

/// @file
/// The list of all formulas, for what reads them: tests, docs, worked steps. Opt-in; a test compares it with the headers.
namespace layshaft {

/// Every formula of the library, by subject.
inline constexpr const Formula* all_formulas[] = {
    &formula::run_angle::about,
    &formula::loop_links::about,
    &formula::run_length::about,
    &formula::wrap_front::about,
    &formula::wrap_rear::about,
    &formula::links_approximate::about,
    &formula::centre_approximate::about,
    &formula::spare_length::about,
    &formula::slack_by_hand::about,
    &formula::pitch_diameter::about,
    &formula::root_diameter::about,
    &formula::tip_diameter_least::about,
    &formula::tip_diameter_greatest::about,
    &formula::turns_ratio::about,
    &formula::thrust_change::about,
    &formula::speed_change::about,
    &formula::engine_speed_change::about,
    &formula::contribution::about,
    &formula::gear_ratio::about,
    &formula::final_ratio::about,
    &formula::overall_ratio::about,
    &formula::equivalent_rear::about,
    &formula::thrust_change_by_thumb::about,
    &formula::road_speed::about,
    &formula::engine_speed::about,
    &formula::highest_lawful_reading::about,
    &formula::wheel_indicated_ratio::about,
    &formula::correction_factor::about,
    &formula::stock_reading::about,
    &formula::indicated_speed::about,
    &formula::overall_diameter_on_another_rim::about,
    &formula::section_height::about,
    &formula::overall_diameter::about,
    &formula::overall_diameter_limit::about,
    &formula::section_height_of_diameter::about,
    &formula::rolling_circumference::about,
    &formula::rear_contacts::about,
    &formula::front_contacts::about,
    &formula::chain_tension::about,
    &formula::chain_tension_change::about,
};

}  // namespace layshaft
