// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/explaining.hpp>
#include <layshaft/tyre/rolling.hpp>

/// @file
/// How a tyre's dimensions came about. Opt-in.
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
};

}  // namespace detail

inline Result<Working> TyreSize::try_explain(std::string_view what) const {
  return detail::explain_by_name(detail::explained_of_tyre, what, *this);
}
#if LAYSHAFT_EXCEPTIONS
inline Working TyreSize::explain(std::string_view what) const { return try_explain(what).value(); }
#endif

}  // namespace layshaft
