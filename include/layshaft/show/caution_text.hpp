// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/caution.hpp>
#include <layshaft/show/display.hpp>

#include <string>
#include <string_view>

/// @file
/// What each caution says to a rider.
namespace layshaft {

/// The sentence of a caution with its numbers put in. In the texts, {0} and {1} stand for its amounts.
[[nodiscard]] inline std::string sentence(const Caution& caution, UnitSystem system) {
  const auto text = [&]() -> std::string_view {
    switch (caution.code) {
      case CautionCode::chain_ahead_of_adjuster:
        return "The chain is too short: with the asked slack the axle would stand {0} ahead of the adjuster's front "
               "end.";
      case CautionCode::chain_behind_adjuster:
        return "The chain is too long: the axle would stand {0} behind the adjuster's rear end.";
      case CautionCode::chain_wear_room_small:
        return "The adjuster ends when the chain is {0} longer than new, before the {1} at which chains are usually "
               "replaced; expect to cut links or replace it early.";
      case CautionCode::offset_link:
        return "{0} links is an odd count and needs an offset link, the weakest part a chain can have: do not use one "
               "on "
               "a motorcycle. Choose an even count.";
      case CautionCode::chain_slack_unstated:
        return "No slack is stated for this machine, so the axle position holds for a chain pulled straight. Set the "
               "slack the maker's manual asks for.";
      case CautionCode::check_slack_through_travel:
        return "Set {0} of slack as the maker's manual describes and check it at the tightest point of the "
               "suspension's "
               "travel and at several wheel positions, engine off and in neutral. Too tight breaks bearings and "
               "chains; "
               "too loose can throw the chain.";
      case CautionCode::chain_tight_in_travel:
        return "With {0} of slack at rest the chain would be {1} too short within the suspension's travel: that breaks "
               "bearings and chains, or throws the rider. Do not ride so.";
      case CautionCode::few_teeth_in_mesh:
        return "Only {0} teeth of the front sprocket hold the chain, less than {1}: it can jump, and wears fast.";
      case CautionCode::chain_weaker_than_stock:
        return "At the engine's greatest torque in first gear the chain holds {0} times its pull; with the stock parts "
               "it "
               "held {1} times. Ask the chain's maker whether it is meant for this machine.";
      case CautionCode::front_sprocket_smaller:
        return "A front sprocket of {0} teeth (stock {1}) brings the chain nearer the swingarm and its slider; check "
               "the "
               "clearance over the whole travel.";
      case CautionCode::rear_sprocket_larger:
        return "A rear sprocket of {0} teeth (stock {1}) needs room under the chain guard and at the chain guide; "
               "refit "
               "every guard.";
      case CautionCode::chain_series_differs:
        return "This chain is of another series than the machine's (pitch {0}, the machine's {1}; series of one pitch "
               "differ in width). Both sprockets must be of the same series as the chain.";
      case CautionCode::new_sprockets_worn_chain:
        return "A worn chain ruins new sprockets. Unless the chain is nearly new, change chain and both sprockets "
               "together.";
      case CautionCode::chain_joint_as_maker_says:
        return "Join the {0} links with the rivet or clip link that the chain's maker names for it, and as the maker "
               "says.";
      case CautionCode::tyre_load_below_stock:
        return "The tyre carries {0}; the stock tyre carried {1}. Do not fit a tyre rated below what the maker asks "
               "for.";
      case CautionCode::tyre_speed_below_stock:
        return "The tyre is rated to {0}; the stock tyre to {1}. Do not fit a tyre rated below what the maker asks "
               "for.";
      case CautionCode::tyre_service_unstated:
        return "The tyre's marking gives no load index and speed symbol to hold against the stock tyre's; read them "
               "from "
               "its sidewall before buying.";
      case CautionCode::tyre_load_below_asked:
        return "The tyre may carry {0}, but the axle bears up to {1}: do not fit it (load index series of ISO 4223-1).";
      case CautionCode::tyre_speed_below_asked:
        return "The tyre is rated to {0}, but the machine runs up to {1}: do not fit it.";
      case CautionCode::tyre_needs_room:
        return "At its largest the tyre stands {0} higher than the stock one as marked, and there is room for {1}: it "
               "can touch. It grows further with speed.";
      case CautionCode::tyre_needs_width:
        return "At its widest the tyre is {0} wider than the stock one as marked, and there is room for {1}: it can "
               "touch chain, swingarm or guard.";
      case CautionCode::tyre_fitness_unknown:
        return "The tyre's marking does not tell whether it does all that this machine asks of it (load, speed, room); "
               "ask the tyre's maker before riding.";
      case CautionCode::tread_below_least:
        return "Of the tread {0} is left, and {1} is the least that the law, or you, ask for: do not ride on this "
               "tyre.";
      case CautionCode::front_tyre_below_stock:
        return "The front tyre is rated below the stock one, states no rating, or is made for another rim. Do not fit "
               "a front tyre that is less than the maker asks for.";
      case CautionCode::tyre_construction_differs:
        return "The tyre is built another way (diagonal, bias-belted or radial) than the stock one; front and rear "
               "must go "
               "together as the maker of the machine or of the tyre says.";
      case CautionCode::tyre_rim_differs:
        return "The tyre is made for a rim of {0}; the stock rim is {1}. It does not go on the stock wheel.";
      case CautionCode::tyre_clearance:
        return "At its largest the tyre stands up to {0} higher and is nominally {1} wider than the stock one as "
               "marked; "
               "check the rim width it needs and the clearance at swingarm, mudguard and chain through the whole "
               "travel.";
      case CautionCode::ride_height_changed:
        return "The axle stands {0} higher than with the stock tyre (a minus sign: lower): height, steering and side "
               "stand "
               "feel it.";
      case CautionCode::wheel_speed_ratio_changed:
        return "Rear against front wheel circumference changes by {0}: ABS and traction control compare the two; ask "
               "the "
               "maker what they allow.";
      case CautionCode::over_rev_on_downshift:
        return "At the same road speed the engine turns {0} faster: a downshift over-revs it sooner than you are used "
               "to.";
      case CautionCode::front_wheel_lifts_sooner:
        return "With {0} more thrust in each gear the front wheel lifts, and the rear wheel spins, sooner.";
      case CautionCode::thrust_lifts_front_wheel:
        return "In first gear the engine pushes with {0}, and the front wheel lifts from {1} on, uphill sooner: more "
               "is "
               "of no use there, and may throw the rider.";
      case CautionCode::thrust_spins_rear_wheel:
        return "In first gear the engine pushes with {0}; dry asphalt takes about {1} before the rear wheel spins, "
               "anything softer less.";
      case CautionCode::road_load_by_mass_alone:
        return "What resists is a table's figure by mass alone: it holds on hard, level road near {0}, and never for "
               "walking pace, hills or soft ground.";
      case CautionCode::speedometer_may_read_low:
        return "The speedometer may read below the true speed (by up to {0}); that is unlawful on most roads. Correct "
               "it before "
               "riding.";
      case CautionCode::speedometer_may_read_high:
        return "The speedometer reads up to {0} higher than with stock parts, which may be more than the rule allows. "
               "Correct it.";
      case CautionCode::speedometer_error_unknown:
        return "The stock speedometer's own error is not known, so its verdict is a range. Check it against a known "
               "distance or a satellite receiver.";
      case CautionCode::approval_and_insurance:
        return "Other tyres or gearing than stock can touch the machine's approval and insurance, and road law differs "
               "by "
               "country; ask before riding on public roads.";
      case CautionCode::makers_manual_first:
        return "These figures are estimates until measured on the machine. The maker's manual, local road law and a "
               "qualified technician come first.";
    }
    return {};
  }();
  std::string out;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] == '{') {
      out.append(show(caution.amounts[static_cast<std::size_t>(text[i + 1] - '0')], system));
      i += 2;  // the digit and the closing brace
    } else {
      out.push_back(text[i]);
    }
  }
  return out;
}

}  // namespace layshaft
