// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/chain/loop.hpp>
#include <layshaft/core/explaining.hpp>

#include <array>

/// @file
/// How the numbers of a sprocket and of a chain's loop came about. Opt-in.
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
};

}  // namespace detail

inline Result<Working> ChainLoop::try_explain(std::string_view what, const LoopQuestion& at) const {
  return detail::explain_by_name(detail::explained_of_loop, what, detail::LoopAsked{*this, at});
}
inline Result<Working> Sprocket::try_explain(std::string_view what) const {
  return detail::explain_by_name(detail::explained_of_sprocket, what, *this);
}
#if LAYSHAFT_EXCEPTIONS
inline Working ChainLoop::explain(std::string_view what, const LoopQuestion& at) const {
  return try_explain(what, at).value();
}
inline Working Sprocket::explain(std::string_view what) const { return try_explain(what).value(); }
#endif

}  // namespace layshaft
