// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/explaining.hpp>
#include <layshaft/road/coast_down.hpp>
#include <layshaft/road/road_load.hpp>

#include <string_view>

/// @file
/// How the numbers of a road load came about. Opt-in.
namespace layshaft {

namespace detail {

struct RoadAsked {
  const RoadLoad& road;
  RoadQuestion at;
};

inline constexpr Explained<RoadAsked> explained_of_road[] = {
    {"resistance",
     [](const RoadAsked& asked) -> Result<Working> {
       if (!asked.at.speed) return left_open("resistance", "speed");
       if (auto error = asked.road.unasked(*asked.at.speed, asked.at.slope)) return *std::move(error);
       return explain_over("resistance", one_cause, [&](Recorder::Watch watch, Corner at) {
         const auto speed = watch.given("road_speed", *asked.at.speed);
         return asked.road.resistance(watch, speed, asked.at.slope, at);
       });
     }},
    {"coast down time",
     [](const RoadAsked& asked) -> Result<Working> {
       if (!asked.at.mass || !asked.at.start || !asked.at.end)
         return left_open("coast down time", "mass, the start and the end");
       const auto time = [&](Corner at) {
         return try_coast_down_time(asked.road, *asked.at.mass, *asked.at.start, *asked.at.end, asked.at.slope, at);
       };
       for (const Corner at : one_cause)
         if (const auto told = time(at); !told) return told.error();
       if (*asked.at.start == *asked.at.end)
         return Error::range("end", in_words(*asked.at.end), "less than the start, or there is nothing to explain");
       return explain_over("coast down time", one_cause, [&](Recorder::Watch watch, Corner at) {
         return coast_down_time_of(watch, asked.road, *asked.at.mass, *asked.at.start, *asked.at.end, asked.at.slope,
                                   at);
       });
     }},
};

}  // namespace detail

inline Result<Working> RoadLoad::try_explain(std::string_view what, const RoadQuestion& at) const {
  return detail::explain_by_name(detail::explained_of_road, what, detail::RoadAsked{*this, at});
}
#if LAYSHAFT_EXCEPTIONS
inline Working RoadLoad::explain(std::string_view what, const RoadQuestion& at) const {
  return try_explain(what, at).value();
}
#endif

}  // namespace layshaft
