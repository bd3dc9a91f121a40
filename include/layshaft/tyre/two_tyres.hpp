// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/band.hpp>
#include <layshaft/core/fixed_list.hpp>
#include <layshaft/tyre/size.hpp>

/// @file
/// A calculation on two tyres at the corners of what makes each uncertain: its size within the tolerance of its
/// marking, and how far it settles. Two markings of the same dimensions and use have one size, and tyres of one
/// construction settle alike; what is shared stands at the same corner on both sides, so that it cancels.
namespace layshaft {

/// Where the causes of two tyres stand in one run.
struct TwoTyreCorners {
  Corner base_size = Corner::nominal;
  Corner base_rolling = Corner::nominal;
  Corner trial_size = Corner::nominal;
  Corner trial_rolling = Corner::nominal;
};

/// Whether two tyres share the cause of size.
[[nodiscard]] constexpr bool share_size(const TyreSize& a, const TyreSize& b) noexcept {
  return a.construction() == b.construction() && a.section_width() == b.section_width() &&
         a.overall_diameter() == b.overall_diameter();
}
/// Whether two tyres share the cause of settling.
[[nodiscard]] constexpr bool share_rolling(const TyreSize& a, const TyreSize& b) noexcept {
  return a.construction() == b.construction();
}

namespace detail {
[[nodiscard]] consteval FixedList<TwoTyreCorners, 17> corners_of_two(bool one_size, bool one_rolling) {
  constexpr Corner ends[] = {Corner::low, Corner::high};
  FixedList<TwoTyreCorners, 17> runs{{TwoTyreCorners()}};
  for (const Corner base_size : ends)
    for (const Corner base_rolling : ends)
      for (const Corner trial_size : ends)
        for (const Corner trial_rolling : ends)
          if ((!one_size || trial_size == base_size) && (!one_rolling || trial_rolling == base_rolling))
            runs.push_back({base_size, base_rolling, trial_size, trial_rolling});
  return runs;
}
/// By whether the rolling factor is shared, then whether the size is; made by the compiler, since comparisons ask
/// often.
inline constexpr FixedList<TwoTyreCorners, 17> corners_of_all_two[2][2] = {
    {corners_of_two(false, false), corners_of_two(true, false)},
    {corners_of_two(false, true), corners_of_two(true, true)}};
}  // namespace detail

/// The runs: nominal, then every corner of the causes; shared ones stand at the same on both sides.
[[nodiscard]] constexpr const FixedList<TwoTyreCorners, 17>& two_tyre_corners(bool one_size,
                                                                              bool one_rolling) noexcept {
  return detail::corners_of_all_two[one_rolling][one_size];
}
[[nodiscard]] constexpr const FixedList<TwoTyreCorners, 17>& two_tyre_corners(const TyreSize& base,
                                                                              const TyreSize& trial) noexcept {
  return two_tyre_corners(share_size(base, trial), share_rolling(base, trial));
}

}  // namespace layshaft
