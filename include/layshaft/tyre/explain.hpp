// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/explaining.hpp>
#include <layshaft/tyre/measured_rollout.hpp>
#include <layshaft/tyre/rolling.hpp>
#include <layshaft/tyre/rolling_radius.hpp>
#include <layshaft/tyre/tread.hpp>

#include <array>

/// @file
/// How a tyre's dimensions, its tread's wear and a measured rollout came about. Opt-in.
namespace layshaft {

namespace detail {

inline constexpr Explained<TyreSize> explained_of_tyre[] = {
    {"overall diameter",
     [](const TyreSize& tyre) -> Result<Working> {
       return explain_over("overall diameter of " + tyre.designation(), one_cause,
                           [&](Recorder::Watch watch, Corner at) { return tyre.overall_diameter(watch, at); });
     }},
    {"circumference",
     [](const TyreSize& tyre) -> Result<Working> {
       return explain_over("circumference of " + tyre.designation(), one_cause, [&](Recorder::Watch watch, Corner at) {
         return circumference_at(watch, "circumference", tyre, Length(), at, at);
       });
     }},
    {"free radius",
     [](const TyreSize& tyre) -> Result<Working> {
       return explain_over("free radius of " + tyre.designation(), one_cause,
                           [&](Recorder::Watch watch, Corner at) { return free_radius_at(watch, tyre, Length(), at); });
     }},
    {"static radius",
     [](const TyreSize& tyre) -> Result<Working> {
       return explain_over("static radius of " + tyre.designation(), one_cause, [&](Recorder::Watch watch, Corner at) {
         return static_radius_at(watch, tyre, Length(), TyreDeflection::motorcycle, at, at);
       });
     }},
    {"effective radius",
     [](const TyreSize& tyre) -> Result<Working> {
       return explain_over("effective radius of " + tyre.designation(), one_cause,
                           [&](Recorder::Watch watch, Corner at) {
                             return effective_radius_at(watch, tyre, Length(), TyreDeflection::motorcycle, at, at);
                           });
     }},
};

inline constexpr std::array tread_is_sure = {Corner::nominal};

inline constexpr Explained<Tread> explained_of_tread[] = {
    {"worn",
     [](const Tread& tread) -> Result<Working> {
       return explain_over("height worn off the tread", tread_is_sure,
                           [&](Recorder::Watch watch, Corner) { return tread.worn(watch); });
     }},
    {"left",
     [](const Tread& tread) -> Result<Working> {
       if (!tread.left()) return left_open("left", "least depth");
       return explain_over("share of the tread that is left", tread_is_sure,
                           [&](Recorder::Watch watch, Corner) { return tread.left(watch); });
     }},
    {"distance left",
     [](const Tread& tread) -> Result<Working> {
       if (!tread.distance_left()) return left_open("distance left", "least depth, distance ridden or wear so far");
       return explain_over("distance that is left", tread_is_sure,
                           [&](Recorder::Watch watch, Corner) { return tread.distance_left(watch); });
     }},
};

}  // namespace detail

inline Result<Working> TyreSize::try_explain(std::string_view what) const {
  return detail::explain_by_name(detail::explained_of_tyre, what, *this);
}
inline Result<Working> Tread::try_explain(std::string_view what) const {
  return detail::explain_by_name(detail::explained_of_tread, what, *this);
}
/// How a measured circumference came about; errors as `try_measured_circumference`.
[[nodiscard]] inline Result<Working> try_explain_measured_circumference(const RolloutMeasurement& measured) {
  if (const auto circumference = try_measured_circumference(measured); !circumference) return circumference.error();
  return explain_over("measured circumference", detail::rollout_corners,
                      [&](Recorder::Watch watch, const RolloutCorners& at) {
                        return detail::measured_circumference_at(watch, measured, at);
                      });
}
#if LAYSHAFT_EXCEPTIONS
/// @throws RangeError as `try_measured_circumference` says.
[[nodiscard]] inline Working explain_measured_circumference(const RolloutMeasurement& measured) {
  return try_explain_measured_circumference(measured).value();
}
inline Working Tread::explain(std::string_view what) const { return try_explain(what).value(); }
inline Working TyreSize::explain(std::string_view what) const { return try_explain(what).value(); }
#endif

}  // namespace layshaft
