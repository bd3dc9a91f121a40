// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/chain/fit.hpp>
#include <layshaft/chain/loads.hpp>
#include <layshaft/chain/mesh.hpp>
#include <layshaft/chain/slack_through_travel.hpp>

#include <optional>

/// @file
/// A machine's chain drive as one: will it run slack enough everywhere, hold, and what it loses.
namespace layshaft {

/// The slack that is left through the suspension's travel, by hand at mid-span.
struct SlackLeft {
  Angle tightest;            ///< of the arm, below the horizontal, where there is least
  Band<Length> least_slack;  ///< there, with the stated slack set at rest; over a new chain's length
  Length stretch;            ///< how much too short the chain is there: none where it has slack everywhere
  Length stock_least_slack;  ///< what the stock sprockets leave there, with the stated slack set at rest
  /// At rest, so that at the tight point there is left what the stock sprockets leave; absent where the stock chain
  /// itself would be stretched, so that geometry and slack cannot both be right.
  std::optional<Length> slack_to_set;

  /// The chain would be stretched somewhere: never ride so.
  [[nodiscard]] constexpr bool too_tight() const noexcept { return stretch > Length(); }

  friend constexpr bool operator==(const SlackLeft&, const SlackLeft&) noexcept = default;
};

/// What follows for a chain on two sprockets beside where its axle stands; what a machine does not state is absent.
struct ChainDrive {
  Engagement engagement;               ///< with the axle where it stands
  double stock_teeth_in_mesh;          ///< of the stock front sprocket, with the stock sprockets as far apart
  std::optional<SlackLeft> slack;      ///< with a suspension and a slack to set
  std::optional<ChainLoads> loads;     ///< at the engine's greatest torque in first gear
  std::optional<double> stock_safety;  ///< the stock set-up's own safety there, to hold this one's beside

  friend constexpr bool operator==(const ChainDrive&, const ChainDrive&) noexcept = default;
};

/// The slack left through the travel with so much set at rest, beside stock sprockets with the same. Or an error where
/// the swingarm cannot hold a chain so.
[[nodiscard]] inline Result<SlackLeft> try_slack_left(const Suspension& suspension, Length slack, const ChainLoop& loop,
                                                      Links links, const ChainLoop& stock_loop, Links stock_links) {
  const auto at = [&](const ChainLoop& over, Links count, double elongation) {
    return SlackThroughTravel::with_slack(suspension, over, effective_links(count, elongation), slack);
  };
  const auto nominal = at(loop, links, 0.0);
  if (!nominal) return nominal.error();
  const auto longest = at(loop, links, new_chain_elongation);
  if (!longest) return longest.error();
  const auto stock = at(stock_loop, stock_links, 0.0);
  if (!stock) return stock.error();
  const SlackPoint tight = nominal->tight_point(), when_long = longest->tight_point();
  SlackLeft left{tight.angle,
                 {std::min(tight.slack, when_long.slack), tight.slack, std::max(tight.slack, when_long.slack)},
                 nominal->too_tight() ? -tight.spare_length : Length(),
                 stock->tight_point().slack,
                 {}};
  if (stock->too_tight()) return left;
  const auto to_set = try_slack_to_set(suspension, loop, double(links.count()), left.stock_least_slack);
  if (!to_set) return to_set.error();
  left.slack_to_set = *to_set;
  return left;
}

}  // namespace layshaft
