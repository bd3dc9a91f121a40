// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/setup/rollout.hpp>

/// @file
/// A comparison of two wheels at the corners of what makes them uncertain.
namespace layshaft {

/// The results of a calculation from a base and a trial circumference, which rises or falls in each of them throughout,
/// over the corners of all causes; shared ones stand at the same corner on both sides.
template <class Calculation>
[[nodiscard]] constexpr auto over_causes(const Rollout& base, const Rollout& trial, Calculation calculation) {
  const auto at = [&](Corner base_size, Corner base_rolling, Corner trial_size, Corner trial_rolling) {
    return calculation(base.at(base_size, base_rolling), trial.at(trial_size, trial_rolling));
  };
  const bool one_size = share_size(base, trial);
  const bool one_rolling = share_rolling(base, trial);
  constexpr Corner nominal = Corner::nominal;
  constexpr Corner ends[] = {Corner::low, Corner::high};
  auto band = Band<decltype(at(nominal, nominal, nominal, nominal))>::exactly(at(nominal, nominal, nominal, nominal));
  for (const Corner base_size : ends)
    for (const Corner base_rolling : ends)
      for (const Corner trial_size : ends)
        for (const Corner trial_rolling : ends) {
          if (one_size && trial_size != base_size) continue;
          if (one_rolling && trial_rolling != base_rolling) continue;
          band.include(at(base_size, base_rolling, trial_size, trial_rolling));
        }
  return band;
}

}  // namespace layshaft
