// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/chain/sprocket.hpp>

#include <vector>

/// @file
/// Which chains run on which sprockets.
namespace layshaft {

/// A chain on a sprocket that was cut for a series.
struct ChainOnSprocket {
  bool same_pitch;          ///< to 0.05 %, so that no tooth is climbed
  bool same_roller;         ///< to 2 %: a smaller roller sits deep and loose, a larger one rides high
  bool tooth_goes_between;  ///< the tooth is narrower than the chain's inner width
  Length side_play;         ///< inner width less the tooth's; below zero it does not go between

  /// Whether the chain runs as its own would.
  [[nodiscard]] constexpr bool fits() const noexcept { return same_pitch && same_roller && tooth_goes_between; }

  friend constexpr bool operator==(const ChainOnSprocket&, const ChainOnSprocket&) noexcept = default;
};

/// A chain of one series on a sprocket that was cut for another; the sprocket's tooth as wide as ISO 606 makes it.
[[nodiscard]] inline ChainOnSprocket chain_on_sprocket(const ChainSeries& chain, const ChainSeries& cut_for) noexcept {
  const auto near = [](Length a, Length b, double share) { return a / b < 1.0 + share && b / a < 1.0 + share; };
  const Length tooth = tooth_width(cut_for.inner_width(), tooth_width_share(cut_for.pitch()));
  return {near(chain.pitch(), cut_for.pitch(), 0.0005), near(chain.roller_diameter(), cut_for.roller_diameter(), 0.02),
          tooth < chain.inner_width(), chain.inner_width() - tooth};
}

/// Every series whose chain runs on sprockets cut for this one, itself among them, in the table's order. A chain that
/// is wider than its sprocket's own runs with more side play; strength and maker's word come first.
[[nodiscard]] inline std::vector<ChainSeries> interchangeable(const ChainSeries& cut_for) {
  std::vector<ChainSeries> fitting;
  for (const std::string_view name : chain_series_names()) {
    const ChainSeries chain = *ChainSeries::make(name);
    if (chain_on_sprocket(chain, cut_for).fits()) fitting.push_back(chain);
  }
  return fitting;
}

}  // namespace layshaft
