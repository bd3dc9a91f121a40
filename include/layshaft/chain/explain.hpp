// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/chain/ansi_tooth_form.hpp>
#include <layshaft/chain/interchange.hpp>
#include <layshaft/chain/loads.hpp>
#include <layshaft/chain/loop.hpp>
#include <layshaft/chain/mesh.hpp>
#include <layshaft/chain/slack_through_travel.hpp>
#include <layshaft/core/explaining.hpp>

#include <array>

/// @file
/// How the numbers of a sprocket, of its teeth, of an interchange, of a chain's loop, of its slack and of its loads
/// came about. Opt-in.
namespace layshaft {

namespace detail {

inline constexpr std::array just_once = {Corner::nominal};

struct LoopAsked {
  const ChainLoop& loop;
  LoopQuestion at;
};

/// The working of a number at a centre distance: `calculation(watch, centre)`.
template <class Calculation>
[[nodiscard]] Result<Working> explain_at_centre(std::string_view what, const LoopAsked& asked,
                                                Calculation calculation) {
  if (!asked.at.centre) return left_open(what, "centre distance");
  if (const auto links = asked.loop.try_links(*asked.at.centre); !links) return links.error();
  return explain_over(std::string(what), just_once, [&](Recorder::Watch watch, Corner) {
    return calculation(watch, watch.given("centre", *asked.at.centre));
  });
}
template <class Calculation>
[[nodiscard]] Result<Working> explain_for_links(std::string_view what, const LoopAsked& asked,
                                                Calculation calculation) {
  if (!asked.at.links) return left_open(what, "number of links");
  if (const auto centre = asked.loop.try_centre(*asked.at.links); !centre) return centre.error();
  return explain_over(std::string(what), just_once, [&](Recorder::Watch watch, Corner) {
    return calculation(watch, watch.given("links", *asked.at.links));
  });
}

inline constexpr Explained<LoopAsked> explained_of_loop[] = {
    {"links",
     [](const LoopAsked& asked) {
       return explain_at_centre("links", asked, [&](auto watch, const auto& centre) {
         const auto drive = asked.loop.drive(watch);
         return taut_links(watch, drive, centre);
       });
     }},
    {"links approximate",
     [](const LoopAsked& asked) {
       return explain_at_centre("links approximate", asked, [&](auto watch, const auto& centre) {
         return asked.loop.with_parts(
             watch, [&](const auto&... parts) { return watch.step(formula::links_approximate{}, parts..., centre); });
       });
     }},
    {"run length",
     [](const LoopAsked& asked) {
       return explain_at_centre("run length", asked, [&](auto watch, const auto& centre) {
         const auto drive = asked.loop.drive(watch);
         return watch.step(formula::run_length{}, centre, run_angle_of(watch, drive, centre));
       });
     }},
    {"wrap front",
     [](const LoopAsked& asked) {
       return explain_at_centre("wrap front", asked, [&](auto watch, const auto& centre) {
         const auto drive = asked.loop.drive(watch);
         return watch.step(formula::wrap_front{}, run_angle_of(watch, drive, centre));
       });
     }},
    {"wrap rear",
     [](const LoopAsked& asked) {
       return explain_at_centre("wrap rear", asked, [&](auto watch, const auto& centre) {
         const auto drive = asked.loop.drive(watch);
         return watch.step(formula::wrap_rear{}, run_angle_of(watch, drive, centre));
       });
     }},
    {"centre",
     [](const LoopAsked& asked) {
       return explain_for_links("centre", asked, [&](auto watch, const auto& links) {
         const auto drive = asked.loop.drive(watch);
         return watch.solved("centre", *asked.loop.try_centre(watch.plain(links)), links,
                             [&](const auto& centre) { return taut_links(watch, drive, centre); });
       });
     }},
    {"centre approximate",
     [](const LoopAsked& asked) {
       return explain_for_links("centre approximate", asked, [&](auto watch, const auto& links) {
         return asked.loop.with_parts(
             watch, [&](const auto&... parts) { return watch.step(formula::centre_approximate{}, parts..., links); });
       });
     }},
    {"teeth in mesh front",
     [](const LoopAsked& asked) {
       return explain_at_centre("teeth in mesh front", asked, [&](auto watch, const auto& centre) {
         const auto drive = asked.loop.drive(watch);
         return front_in_mesh(watch, drive, centre);
       });
     }},
    {"teeth in mesh rear",
     [](const LoopAsked& asked) {
       return explain_at_centre("teeth in mesh rear", asked, [&](auto watch, const auto& centre) {
         const auto drive = asked.loop.drive(watch);
         return rear_in_mesh(watch, drive, centre);
       });
     }},
    {"smallest centre",
     [](const LoopAsked& asked) -> Result<Working> {
       return explain_over("smallest centre", just_once, [&](Recorder::Watch watch, Corner) {
         return asked.loop.smallest_centre(watch, asked.loop.drive(watch));
       });
     }},
};

inline constexpr Explained<Sprocket> explained_of_sprocket[] = {
    {"pitch diameter",
     [](const Sprocket& sprocket) -> Result<Working> {
       return explain_over("pitch diameter", just_once,
                           [&](Recorder::Watch watch, Corner) { return sprocket.pitch_diameter(watch); });
     }},
    {"root diameter",
     [](const Sprocket& sprocket) -> Result<Working> {
       return explain_over("root diameter", just_once,
                           [&](Recorder::Watch watch, Corner) { return sprocket.root_diameter(watch); });
     }},
    {"tip diameter",
     [](const Sprocket& sprocket) -> Result<Working> {
       return explain_over("tip diameter", one_cause,
                           [&](Recorder::Watch watch, Corner at) { return sprocket.tip_diameter(watch, at); });
     }},
    {"ansi outside diameter",
     [](const Sprocket& sprocket) -> Result<Working> {
       return explain_over("ansi outside diameter", just_once,
                           [&](Recorder::Watch watch, Corner) { return sprocket.ansi_outside_diameter(watch); });
     }},
    {"over pins",
     [](const Sprocket& sprocket) -> Result<Working> {
       return explain_over("over pins", just_once,
                           [&](Recorder::Watch watch, Corner) { return sprocket.over_pins(watch); });
     }},
    {"tooth width",
     [](const Sprocket& sprocket) -> Result<Working> {
       return explain_over("tooth width", one_cause,
                           [&](Recorder::Watch watch, Corner at) { return sprocket.tooth_width(watch, at); });
     }},
    {"seating radius",
     [](const Sprocket& sprocket) -> Result<Working> {
       return explain_over("seating radius", one_cause,
                           [&](Recorder::Watch watch, Corner at) { return sprocket.seating_radius(watch, at); });
     }},
    {"seating angle",
     [](const Sprocket& sprocket) -> Result<Working> {
       return explain_over("seating angle", one_cause,
                           [&](Recorder::Watch watch, Corner at) { return sprocket.seating_angle(watch, at); });
     }},
    {"flank radius",
     [](const Sprocket& sprocket) -> Result<Working> {
       return explain_over("flank radius", one_cause,
                           [&](Recorder::Watch watch, Corner at) { return sprocket.flank_radius(watch, at); });
     }},
    {"tooth side relief",
     [](const Sprocket& sprocket) -> Result<Working> {
       return explain_over("tooth side relief", just_once,
                           [&](Recorder::Watch watch, Corner) { return sprocket.tooth_side_relief(watch); });
     }},
};

inline constexpr Explained<AnsiToothForm> explained_of_ansi_tooth_form[] = {
    {"seating diameter",
     [](const AnsiToothForm& form) -> Result<Working> {
       return explain_over("seating diameter", just_once,
                           [&](Recorder::Watch watch, Corner) { return form.seating_diameter(watch); });
     }},
    {"seating angle",
     [](const AnsiToothForm& form) -> Result<Working> {
       return explain_over("seating angle", just_once,
                           [&](Recorder::Watch watch, Corner) { return form.seating_angle(watch); });
     }},
    {"working angle",
     [](const AnsiToothForm& form) -> Result<Working> {
       return explain_over("working angle", just_once,
                           [&](Recorder::Watch watch, Corner) { return form.working_angle(watch); });
     }},
    {"working distance",
     [](const AnsiToothForm& form) -> Result<Working> {
       return explain_over("working distance", just_once,
                           [&](Recorder::Watch watch, Corner) { return form.working_distance(watch); });
     }},
    {"working along",
     [](const AnsiToothForm& form) -> Result<Working> {
       return explain_over("working along", just_once,
                           [&](Recorder::Watch watch, Corner) { return form.working_along(watch); });
     }},
    {"working across",
     [](const AnsiToothForm& form) -> Result<Working> {
       return explain_over("working across", just_once,
                           [&](Recorder::Watch watch, Corner) { return form.working_across(watch); });
     }},
    {"working radius",
     [](const AnsiToothForm& form) -> Result<Working> {
       return explain_over("working radius", just_once,
                           [&](Recorder::Watch watch, Corner) { return form.working_radius(watch); });
     }},
    {"working chord",
     [](const AnsiToothForm& form) -> Result<Working> {
       return explain_over("working chord", just_once,
                           [&](Recorder::Watch watch, Corner) { return form.working_chord(watch); });
     }},
    {"flat",
     [](const AnsiToothForm& form) -> Result<Working> {
       return explain_over("flat", just_once, [&](Recorder::Watch watch, Corner) { return form.flat(watch); });
     }},
    {"topping distance",
     [](const AnsiToothForm& form) -> Result<Working> {
       return explain_over("topping distance", just_once,
                           [&](Recorder::Watch watch, Corner) { return form.topping_distance(watch); });
     }},
    {"topping across",
     [](const AnsiToothForm& form) -> Result<Working> {
       return explain_over("topping across", just_once,
                           [&](Recorder::Watch watch, Corner) { return form.topping_across(watch); });
     }},
    {"topping along",
     [](const AnsiToothForm& form) -> Result<Working> {
       return explain_over("topping along", just_once,
                           [&](Recorder::Watch watch, Corner) { return form.topping_along(watch); });
     }},
    {"topping radius",
     [](const AnsiToothForm& form) -> Result<Working> {
       return explain_over("topping radius", just_once,
                           [&](Recorder::Watch watch, Corner) { return form.topping_radius(watch); });
     }},
    {"topping offset",
     [](const AnsiToothForm& form) -> Result<Working> {
       return explain_over("topping offset", just_once,
                           [&](Recorder::Watch watch, Corner) { return form.topping_offset(watch); });
     }},
    {"topping height",
     [](const AnsiToothForm& form) -> Result<Working> {
       return explain_over("topping height", just_once,
                           [&](Recorder::Watch watch, Corner) { return form.topping_height(watch); });
     }},
    {"tip distance",
     [](const AnsiToothForm& form) -> Result<Working> {
       return explain_over("tip distance", just_once,
                           [&](Recorder::Watch watch, Corner) { return form.tip_distance(watch); });
     }},
};

inline constexpr Explained<Interchange> explained_of_interchange[] = {
    {"tooth width",
     [](const Interchange& pair) -> Result<Working> {
       return explain_over("tooth width", one_cause, [&](Recorder::Watch watch, Corner at) {
         return tooth_width_for(watch, pair.cut_for(), at);
       });
     }},
    {"side play",
     [](const Interchange& pair) -> Result<Working> {
       return explain_over("side play", one_cause,
                           [&](Recorder::Watch watch, Corner at) { return pair.side_play(watch, at); });
     }},
};

struct SlackAskedAt {
  const SlackThroughTravel& travel;
  Angle angle;
};
inline constexpr Explained<SlackAskedAt> explained_of_slack[] = {
    {"spare length",
     [](const SlackAskedAt& asked) -> Result<Working> {
       return explain_over("spare length", just_once, [&](Recorder::Watch watch, Corner) {
         return asked.travel.spare_length(watch, asked.angle);
       });
     }},
    {"slack",
     [](const SlackAskedAt& asked) -> Result<Working> {
       if (asked.travel.try_at(asked.angle)->spare_length < Length())
         return Error::value("the chain is stretched at this angle: there is no slack to explain, but a spare length");
       return explain_over("slack", just_once,
                           [&](Recorder::Watch watch, Corner) { return asked.travel.slack(watch, asked.angle); });
     }},
};

struct LoadsAsked {
  const ChainLoop& loop;
  const ChainDuty& duty;
  const ChainMade& made;
};
inline constexpr Explained<LoadsAsked> explained_of_loads[] = {
    {"pull",
     [](const LoadsAsked& asked) -> Result<Working> {
       return explain_over("pull", just_once, [&](Recorder::Watch watch, Corner) {
         const auto drive = asked.loop.drive(watch);
         const auto torque = watch.given("torque", asked.duty.torque);
         return watch.step(formula::chain_pull{}, torque, drive.front_diameter);
       });
     }},
    {"tight tension",
     [](const LoadsAsked& asked) -> Result<Working> {
       return explain_over("tight tension", just_once, [&](Recorder::Watch watch, Corner) {
         return pulls_at(watch, asked.loop, asked.made, asked.duty).tight;
       });
     }},
    {"safety",
     [](const LoadsAsked& asked) -> Result<Working> {
       if (!strength_of(asked.loop.series(), asked.made)) return left_open("safety", "chain's tensile strength");
       return explain_over("safety", just_once, [&](Recorder::Watch watch, Corner) {
         return safety_at(watch, asked.loop, asked.made, asked.duty);
       });
     }},
    {"efficiency",
     [](const LoadsAsked& asked) -> Result<Working> {
       if (!pin_of(asked.loop.series(), asked.made)) return left_open("efficiency", "chain's pin diameter");
       return explain_over("efficiency", one_cause, [&](Recorder::Watch watch, Corner at) {
         return efficiency_at(watch, asked.loop, asked.made, asked.duty, at);
       });
     }},
};

}  // namespace detail

inline Result<Working> SlackThroughTravel::try_explain(std::string_view what, Angle angle) const {
  if (const auto point = try_at(angle); !point) return point.error();
  return detail::explain_by_name(detail::explained_of_slack, what, detail::SlackAskedAt{*this, angle});
}
/// How a number of `chain_loads` came about: "pull", "tight tension", "safety" or "efficiency"; errors as
/// `try_chain_loads`, or where the chain's figure that it takes is not known.
[[nodiscard]] inline Result<Working> try_explain_chain_loads(const ChainLoop& loop, const ChainDuty& duty,
                                                             const ChainMade& made, std::string_view what) {
  if (const auto loads = try_chain_loads(loop, duty, made); !loads) return loads.error();
  return detail::explain_by_name(detail::explained_of_loads, what, detail::LoadsAsked{loop, duty, made});
}

inline Result<Working> ChainLoop::try_explain(std::string_view what, const LoopQuestion& at) const {
  return detail::explain_by_name(detail::explained_of_loop, what, detail::LoopAsked{*this, at});
}
inline Result<Working> Sprocket::try_explain(std::string_view what) const {
  return detail::explain_by_name(detail::explained_of_sprocket, what, *this);
}
inline Result<Working> AnsiToothForm::try_explain(std::string_view what) const {
  return detail::explain_by_name(detail::explained_of_ansi_tooth_form, what, *this);
}
inline Result<Working> Interchange::try_explain(std::string_view what) const {
  return detail::explain_by_name(detail::explained_of_interchange, what, *this);
}
#if LAYSHAFT_EXCEPTIONS
inline Working SlackThroughTravel::explain(std::string_view what, Angle angle) const {
  return try_explain(what, angle).value();
}
/// @throws as `try_explain_chain_loads` says.
[[nodiscard]] inline Working explain_chain_loads(const ChainLoop& loop, const ChainDuty& duty, const ChainMade& made,
                                                 std::string_view what) {
  return try_explain_chain_loads(loop, duty, made, what).value();
}
inline Working ChainLoop::explain(std::string_view what, const LoopQuestion& at) const {
  return try_explain(what, at).value();
}
inline Working Sprocket::explain(std::string_view what) const { return try_explain(what).value(); }
inline Working AnsiToothForm::explain(std::string_view what) const { return try_explain(what).value(); }
inline Working Interchange::explain(std::string_view what) const { return try_explain(what).value(); }
#endif

}  // namespace layshaft
