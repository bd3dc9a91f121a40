// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/chain/ansi_tooth_form.hpp>
#include <layshaft/chain/efficiency.hpp>
#include <layshaft/chain/envelope.hpp>
#include <layshaft/chain/f4.hpp>
#include <layshaft/chain/fit.hpp>
#include <layshaft/chain/fit_chain.hpp>
#include <layshaft/chain/interchange.hpp>
#include <layshaft/chain/loop.hpp>
#include <layshaft/chain/mesh.hpp>
#include <layshaft/chain/polygon.hpp>
#include <layshaft/chain/power_rating.hpp>
#include <layshaft/chain/slack.hpp>
#include <layshaft/chain/slack_through_travel.hpp>
#include <layshaft/chain/sprocket.hpp>
#include <layshaft/chain/sprocket_measure.hpp>
#include <layshaft/chain/squat.hpp>
#include <layshaft/chain/suspension.hpp>
#include <layshaft/chain/tension.hpp>
#include <layshaft/chain/tooth_form.hpp>
#include <layshaft/chain/tooth_shares.hpp>
#include <layshaft/chain/tooth_width.hpp>
#include <layshaft/core/angle_of_slope.hpp>
#include <layshaft/gearing/change.hpp>
#include <layshaft/gearing/contribution.hpp>
#include <layshaft/gearing/downshift.hpp>
#include <layshaft/gearing/gear_steps.hpp>
#include <layshaft/gearing/ratio.hpp>
#include <layshaft/gearing/rule_of_thumb.hpp>
#include <layshaft/gearing/speed.hpp>
#include <layshaft/instrument/legal_limits.hpp>
#include <layshaft/instrument/reading.hpp>
#include <layshaft/road/acceleration.hpp>
#include <layshaft/road/air.hpp>
#include <layshaft/road/body.hpp>
#include <layshaft/road/climb.hpp>
#include <layshaft/road/coast_down.hpp>
#include <layshaft/road/engine_curve.hpp>
#include <layshaft/road/limits.hpp>
#include <layshaft/road/powertrain.hpp>
#include <layshaft/road/road_load.hpp>
#include <layshaft/road/shift_rule.hpp>
#include <layshaft/road/slope.hpp>
#include <layshaft/road/speed_run.hpp>
#include <layshaft/road/standing_start.hpp>
#include <layshaft/road/top_speed.hpp>
#include <layshaft/setup/contributions.hpp>
#include <layshaft/tyre/closeness.hpp>
#include <layshaft/tyre/code_designated.hpp>
#include <layshaft/tyre/cycle_rim.hpp>
#include <layshaft/tyre/dimensions.hpp>
#include <layshaft/tyre/fitness.hpp>
#include <layshaft/tyre/flotation.hpp>
#include <layshaft/tyre/growth.hpp>
#include <layshaft/tyre/measured_rollout.hpp>
#include <layshaft/tyre/rolling.hpp>
#include <layshaft/tyre/rolling_radius.hpp>
#include <layshaft/tyre/tread.hpp>
#include <layshaft/wear/break_even.hpp>
#include <layshaft/wear/chain_stretch.hpp>
#include <layshaft/wear/contacts.hpp>
#include <layshaft/wear/hunting.hpp>
#include <layshaft/wear/joint_wear.hpp>
#include <layshaft/wear/replacement_plan.hpp>
#include <layshaft/wear/running_cost.hpp>
#include <layshaft/wear/tension.hpp>
#include <layshaft/wear/tooth_rate.hpp>
#include <layshaft/wear/tread_rate.hpp>

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
using Formulas = FormulaList<
    formula::run_angle, formula::loop_links, formula::run_length, formula::wrap_front, formula::wrap_rear,
    formula::links_approximate, formula::centre_approximate, formula::smallest_centre, formula::spare_length,
    formula::slack_by_hand, formula::hanging_sag, formula::spare_length_of_sag, formula::spare_length_of_links,
    formula::suspension_centre, formula::arm_of_centre, formula::tight_angle, formula::line_angle,
    formula::tight_run_angle, formula::squat_slope, formula::transfer_slope, formula::ratio_of_slopes,
    formula::angle_of_slope, formula::chain_outside_radius, formula::wall_clearance, formula::chain_pull,
    formula::chain_speed, formula::centrifugal_tension, formula::slack_tension, formula::tight_tension,
    formula::chain_power, formula::chain_safety, formula::pressure_angle_least, formula::pressure_angle_most,
    formula::tension_left, formula::tooth_force_share, formula::plate_rating, formula::roller_rating,
    formula::joint_friction_pull, formula::seal_drag_pull, formula::chain_efficiency,
    formula::chain_efficiency_approximate, formula::f4_of_angle, formula::centre_f4, formula::teeth_in_mesh,
    formula::speed_variation, formula::stretch_left_approximate, formula::adjuster_turns, formula::effective_links,
    formula::links_with_slack, formula::adjuster_forward, formula::adjuster_rearward, formula::wear_room,
    formula::pitch_diameter, formula::root_diameter, formula::tip_diameter_least, formula::tip_diameter_greatest,
    formula::tip_diameter, formula::over_pins_even, formula::over_pins_odd, formula::ansi_outside_diameter,
    formula::turns_ratio, formula::thrust_change, formula::thrust_change_with_loss, formula::speed_change,
    formula::engine_speed_change, formula::contribution, formula::tyre_factor, formula::front_factor,
    formula::rear_factor, formula::wear_factor, formula::loss_factor, formula::thrust_ratio, formula::speed_factor,
    formula::gear_ratio, formula::final_ratio, formula::overall_ratio, formula::equivalent_rear, formula::rear_added,
    formula::front_removed, formula::thrust_change_by_thumb, formula::road_speed, formula::engine_speed,
    formula::gear_step, formula::geometric_step, formula::progressive_step, formula::engine_turns,
    formula::highest_lawful_reading, formula::wheel_indicated_ratio, formula::correction_factor,
    formula::odometer_drift, formula::stock_reading, formula::indicated_speed, formula::overall_diameter_on_another_rim,
    formula::cycle_diameter, formula::section_height, formula::overall_diameter, formula::overall_diameter_limit,
    formula::snow_diameter_limit, formula::worn_diameter, formula::section_height_of_diameter,
    formula::flotation_diameter, formula::rolling_circumference, formula::section_width_limit,
    formula::section_width_on_another_rim, formula::free_radius, formula::static_radius, formula::effective_radius,
    formula::circumference_of_radius, formula::radius_of_circumference, formula::static_radius_of_effective,
    formula::factor_of_share, formula::share_of_factor, formula::radius_growth, formula::radius_growth_at_speed,
    formula::drive_thrust, formula::joint_efficiency, formula::thrust_balance, formula::spare_thrust,
    formula::share_of_weight, formula::slope_held, formula::slope_held_back, formula::holding_force, formula::slip_time,
    formula::slip_distance, formula::clutch_heat, formula::kinetic_energy, formula::turning_energy,
    formula::overrun_thrust, formula::wheel_mass, formula::engine_mass, formula::overrun_engine_mass,
    formula::equivalent_mass, formula::acceleration, formula::holding_ratio, formula::best_ratio, formula::moved_mass,
    formula::geopotential_height, formula::standard_temperature, formula::air_pressure, formula::air_density,
    formula::density_ratio, formula::joint_centre, formula::coasting_force, formula::coasting_bend,
    formula::coasting_time, formula::constant_in_wind, formula::linear_in_wind, formula::overtaken,
    formula::constant_on_slope, formula::summed_time, formula::torque_between, formula::torque_of_power,
    formula::engine_power, formula::scaled_torque, formula::wheelie_thrust, formula::traction_thrust,
    formula::wheelie_acceleration, formula::slipping_speed, formula::slipping_wheel_speed, formula::constant_resistance,
    formula::quadratic_resistance, formula::rolling_on_slope, formula::climb_resistance, formula::air_speed,
    formula::air_drag, formula::linear_part, formula::resistance, formula::speed_resistance, formula::level_resistance,
    formula::rolling_resistance, formula::shift_share, formula::first_shift_share, formula::shift_engine_speed,
    formula::width_growth, formula::tread_worn, formula::tread_left, formula::distance_left,
    formula::worn_circumference, formula::rollout_per_turn, formula::laden_circumference, formula::load_margin,
    formula::speed_margin, formula::radius_margin, formula::width_margin, formula::tread_margin,
    formula::ride_height_change, formula::circumference_change, formula::rear_contacts, formula::front_contacts,
    formula::contacts_change, formula::passes, formula::distinct_links, formula::evenness, formula::chain_tension,
    formula::chain_passes, formula::joint_wear, formula::stretch_of_wear, formula::wear_rate_change,
    formula::bearing_pressure, formula::pitch_climb, formula::bends, formula::flank_sliding, formula::tooth_force,
    formula::tooth_wear_weight, formula::tooth_thickness, formula::worn_out_depth, formula::flank_depth_worn,
    formula::sprocket_life_weight, formula::life_change, formula::stretch_limit_of_sprocket,
    formula::chain_tension_change, formula::cost_per_distance, formula::cost_difference, formula::break_even_life_ratio,
    formula::break_even_price, formula::life_on_worn_sprockets, formula::true_distance, formula::tread_worn_over,
    formula::days_left, formula::tooth_width_of_small_pitch, formula::tooth_width_of_large_pitch,
    formula::tooth_width_least, formula::seating_radius_least, formula::seating_radius_greatest,
    formula::seating_radius, formula::flank_radius_least, formula::flank_radius_greatest, formula::flank_radius,
    formula::seating_angle_least, formula::seating_angle_greatest, formula::seating_angle, formula::tooth_side_relief,
    formula::seat_least, formula::side_play, formula::ansi_seating_diameter, formula::ansi_seating_angle,
    formula::ansi_working_angle, formula::ansi_working_distance, formula::ansi_working_along,
    formula::ansi_working_across, formula::ansi_working_radius, formula::ansi_working_chord, formula::ansi_flat,
    formula::ansi_topping_distance, formula::ansi_topping_across, formula::ansi_topping_along,
    formula::ansi_topping_radius, formula::ansi_topping_offset, formula::ansi_topping_height,
    formula::ansi_tip_distance>;

/// The texts of all formulas.
inline constexpr auto& all_formulas = Formulas::texts;

}  // namespace layshaft
