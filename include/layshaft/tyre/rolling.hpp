// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/band.hpp>
#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>
#include <layshaft/core/source.hpp>
#include <layshaft/core/units.hpp>
#include <layshaft/core/watch.hpp>
#include <layshaft/tyre/kinds.hpp>
#include <layshaft/tyre/size.hpp>

/// @file
/// How far a tyre carries its machine in one turn.
namespace layshaft {

/// Where the rolling factor comes from. The rolling radius is (2 × free + static) / 3, a published derivation; eight
/// published light-truck tyres then roll at 0.970 to 0.983 of their free radius. A motorcycle tyre under its own load
/// deflects less, and how much less is from memory. rolling_radius.hpp has both.
inline constexpr Source rolling_factor_source{"rolling radius (2 free + static)/3, motorcycle tyre under its own load",
                                              Certainty::from_memory};

/// Rolling circumference over that of the free, new tyre. One band serves every construction: what tells them apart
/// is smaller than what is not known of either.
[[nodiscard]] constexpr Band<double> rolling_factor(TyreConstruction) noexcept {
  return {0.965, 0.980, 0.995};
}

/// Distance rolled in one turn of the wheel.
// clang-format off
LAYSHAFT_FORMULA(constexpr, Length, rolling_circumference, (Length overall_diameter, double rolling_factor),
                 positive(overall_diameter) && positive(rolling_factor), sources::definition,
                 pi * overall_diameter * rolling_factor)
// clang-format on

/// Change of the rolling circumference from one tyre to another.
LAYSHAFT_FORMULA(constexpr, double, circumference_change, (Length base_circumference, Length trial_circumference),
                 positive(base_circumference) && positive(trial_circumference), sources::definition,
                 trial_circumference / base_circumference - 1.0)

namespace detail {
/// The same for whoever watches, with so much of the tread's height worn off.
template <class Watch>
[[nodiscard]] constexpr auto circumference_at(Watch watch, ValueName name, const TyreSize& tyre, Length tread_worn,
                                              Corner size, Corner rolling) {
  const auto factor = [&] {
    const TyreConstruction construction = tyre.construction();
    return watch.looked_up("rolling_factor", rolling_factor(construction).at(rolling), to_string(construction),
                           rolling_factor_source);
  };
  const auto diameter = tyre.overall_diameter(watch, size);
  if (tread_worn == Length()) return watch.step(name, formula::rolling_circumference{}, diameter, factor());
  const auto worn = watch.step(formula::worn_diameter{}, diameter, watch.given("tread_worn", tread_worn));
  return watch.step(name, formula::rolling_circumference{}, worn, factor());
}
}  // namespace detail

/// Distance rolled in one turn, where the tyre's size and its rolling factor stand at these corners of their bands.
/// Comparisons of two tyres take the same corners for both.
[[nodiscard]] constexpr Length rolling_circumference(const TyreSize& tyre, Corner size, Corner rolling) noexcept {
  return detail::circumference_at(Unwatched(), "circumference", tyre, Length(), size, rolling);
}

/// Distance rolled in one turn: nominal, and at the ends of both causes together. Error: within 3.9 ulp of what the
/// marking's own numbers make.
[[nodiscard]] constexpr Band<Length> rolling_circumference(const TyreSize& tyre) noexcept {
  return {rolling_circumference(tyre, Corner::low, Corner::low),
          rolling_circumference(tyre, Corner::nominal, Corner::nominal),
          rolling_circumference(tyre, Corner::high, Corner::high)};
}

/// The same with so much of the tread's height worn off: none or more, and less than the tyre's radius. tread.hpp has
/// it with a door.
[[nodiscard]] constexpr Band<Length> rolling_circumference(const TyreSize& tyre, Length tread_worn) noexcept {
  return over_runs(one_cause, [&](Corner at) {
    return detail::circumference_at(Unwatched(), "circumference", tyre, tread_worn, at, at);
  });
}

}  // namespace layshaft
