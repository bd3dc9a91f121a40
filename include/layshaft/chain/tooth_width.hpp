// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/chain/series.hpp>
#include <layshaft/chain/tooth_tolerance.hpp>
#include <layshaft/core/band.hpp>
#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>
#include <layshaft/core/watch.hpp>

/// @file
/// How wide the teeth of a sprocket are that is cut for a chain series, single strand.
namespace layshaft {

namespace sources {
inline constexpr Source tooth_width{"ISO 606 as worked in Bhandari, Design of Machine Elements, ch. 14, Ex. 14.5",
                                    Certainty::published};
inline constexpr Source tooth_width_as_recalled{"ISO 606, tooth width of small pitches, as recalled",
                                                Certainty::from_memory};
}  // namespace sources

/// The greatest width of a tooth for a single strand of up to 12.7 mm pitch.
LAYSHAFT_FORMULA(constexpr, Length, tooth_width_of_small_pitch, (Length inner_width), positive(inner_width),
                 sources::tooth_width_as_recalled, 0.93 * inner_width)

/// The greatest width of a tooth for a single strand of more than 12.7 mm pitch.
LAYSHAFT_FORMULA(constexpr, Length, tooth_width_of_large_pitch, (Length inner_width), positive(inner_width),
                 sources::tooth_width, 0.95 * inner_width)

/// The least width of a tooth.
LAYSHAFT_FORMULA(constexpr, Length, tooth_width_least, (Length tooth_width, Length width_tolerance),
                 positive(tooth_width) && is_finite(width_tolerance) && width_tolerance < tooth_width,
                 sources::tooth_tolerance, tooth_width - width_tolerance)

namespace detail {
/// The tooth width for whoever watches: the greatest, and at the low corner the least.
template <class Watch>
[[nodiscard]] constexpr auto tooth_width_for(Watch watch, ChainSeries series, Corner at) {
  const auto inner =
      watch.looked_up("inner_width", series.inner_width(), series.name(), series.source(ChainProperty::inner_width));
  const auto greatest = [&](ValueName name) {
    if (series.pitch() <= 12.7_mm) return watch.step(name, formula::tooth_width_of_small_pitch{}, inner);
    return watch.step(name, formula::tooth_width_of_large_pitch{}, inner);
  };
  if (at != Corner::low) return greatest("tooth_width");
  const auto widest = greatest("tooth_width_greatest");
  const ToothTolerance& allowed = tooth_tolerance(watch.plain(widest));
  const auto tolerance = watch.looked_up("width_tolerance", allowed.tolerance, allowed.range, sources::tooth_tolerance);
  return watch.step("tooth_width", formula::tooth_width_least{}, widest, tolerance);
}
}  // namespace detail

/// The width of the teeth cut for a series, single strand: nominal is the greatest, which is published for pitches
/// above 12.7 mm; how much less it may be is from memory.
[[nodiscard]] constexpr Band<Length> tooth_width(ChainSeries series) {
  return over_runs(one_cause, [&](Corner at) { return detail::tooth_width_for(Unwatched(), series, at); });
}

}  // namespace layshaft
