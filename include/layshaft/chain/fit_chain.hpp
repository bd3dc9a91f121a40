// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/chain/fit.hpp>

#include <string>
#include <vector>

/// @file
/// Every chain that closes in an adjuster, what its screws do, and what the present chain can be kept on.
namespace layshaft {

/// How much longer a chain can wear until the adjuster ends, by the handbook's estimate: the loop grows by twice the
/// way of the axle, times the cosine of the runs' angle. `ChainFit::wear_room` is exact.
LAYSHAFT_FORMULA(inline, double, stretch_left_approximate,
                 (Length adjuster_rearward, Angle run_angle, Links links, Length pitch),
                 is_finite(adjuster_rearward) && is_finite(run_angle) && positive(pitch), sources::geometry,
                 2.0 * adjuster_rearward * cos(run_angle) / (links * pitch))

/// Turns of an adjuster's screw that move the axle so far.
LAYSHAFT_FORMULA(constexpr, double, adjuster_turns, (Length adjuster_way, Length thread_pitch),
                 is_finite(adjuster_way) && positive(thread_pitch), sources::definition, adjuster_way / thread_pitch)

/// Every number of links that closes with the axle between two centre distances, the shortest first, with so much slack
/// by hand. Odd numbers only where they are asked for: an offset link is not for motorcycles. None that closes is an
/// empty list; sprockets that touch at the rear end are a RangeError, as a slack or a centre distance out of range is.
[[nodiscard]] inline Result<std::vector<ChainFit>> try_fit_chain(const ChainLoop& loop, Length centre_min,
                                                                 Length centre_max, Length slack = Length(),
                                                                 bool offset_links = false) {
  const auto adjuster = Adjuster::make(centre_min, centre_max, slack);
  if (!adjuster) return adjuster.error();
  if (auto error = detail::collides(loop, *adjuster)) return *std::move(error);
  std::vector<ChainFit> fits;
  const auto first = detail::shortest_behind(loop, *adjuster);
  if (!first) return fits;
  const int step = offset_links ? 1 : 2;
  // A link below the first even count may close as well, where odd counts are asked for. It is a count still: the least
  // sprockets carry more links than the least that there are.
  for (int count = first->count() - (offset_links ? 1 : 0); count <= Links::greatest; count += step) {
    const auto stand = detail::fit(loop, *Links::make(count), *adjuster);
    if (stand && stand->fits) fits.push_back(*stand);
    if (stand && !stand->fits && stand->centre.low > adjuster->centre_max()) break;
  }
  return fits;
}

/// How far `pairs_for_chain` looks: teeth more or fewer in front, and behind.
inline constexpr int kept_front = 2;
inline constexpr int kept_rear = 6;

/// Other sprockets on which the present chain closes.
struct KeptChainPair {
  Teeth front;
  Teeth rear;
  double ratio_change;  ///< of the final ratio, against the present sprockets
  Length centre;        ///< where the axle then stands
  Length axle_move;     ///< to the rear; forward where negative

  friend constexpr bool operator==(const KeptChainPair&, const KeptChainPair&) noexcept = default;
};

/// The sprockets near the present ones, within two teeth in front and six behind, that keep the present chain, which is
/// longer than nominal by `elongation` (0 to 0.1) as it has worn. Those that change the ratio least come first, then
/// the smaller change of the axle. Sprockets and chain wear together: a worn chain ruins new sprockets. Or a
/// RangeError, where elongation or links are out of range.
[[nodiscard]] inline Result<std::vector<KeptChainPair>> try_pairs_for_chain(const ChainLoop& loop, Links links,
                                                                            const Adjuster& adjuster,
                                                                            double elongation = 0.0) {
  if (auto error = detail::outside("elongation", elongation, 0.0, 0.1)) return *std::move(error);
  const double effective = effective_links(links, elongation);
  if (const auto centre = loop.try_centre(effective); !centre) return centre.error();
  const Length present = detail::centre_with_slack(loop, effective, adjuster.slack());
  std::vector<KeptChainPair> pairs;
  for (int front = loop.front().count() - kept_front; front <= loop.front().count() + kept_front; ++front)
    for (int rear = loop.rear().count() - kept_rear; rear <= loop.rear().count() + kept_rear; ++rear) {
      const auto front_teeth = Teeth::make(front), rear_teeth = Teeth::make(rear);
      if (!front_teeth || !rear_teeth || (*front_teeth == loop.front() && *rear_teeth == loop.rear())) continue;
      const ChainLoop other(loop.series(), *front_teeth, *rear_teeth);
      const Length centre = detail::centre_with_slack(other, effective, adjuster.slack());
      if (!(centre >= std::max(adjuster.centre_min(), other.smallest_centre()) - detail::end_tolerance &&
            centre <= adjuster.centre_max() + detail::end_tolerance))
        continue;
      pairs.push_back({*front_teeth, *rear_teeth, *rear_teeth / *front_teeth / (loop.rear() / loop.front()) - 1.0,
                       centre, centre - present});
    }
  const auto size = [](auto value) { return value < decltype(value)() ? -value : value; };
  std::sort(pairs.begin(), pairs.end(), [&](const KeptChainPair& a, const KeptChainPair& b) {
    const double by_ratio = size(a.ratio_change) - size(b.ratio_change);
    if (by_ratio != 0.0) return by_ratio < 0.0;
    if (const Length by_move = size(a.axle_move) - size(b.axle_move); by_move != Length()) return by_move < Length();
    return a.front < b.front;  // behind the same one, no two rear sprockets change both as much
  });
  return pairs;
}
#if LAYSHAFT_EXCEPTIONS
/// @throws RangeError as `try_fit_chain` says.
[[nodiscard]] inline std::vector<ChainFit> fit_chain(const ChainLoop& loop, Length centre_min, Length centre_max,
                                                     Length slack = Length(), bool offset_links = false) {
  return try_fit_chain(loop, centre_min, centre_max, slack, offset_links).value();
}
/// @throws RangeError as `try_pairs_for_chain` says.
[[nodiscard]] inline std::vector<KeptChainPair> pairs_for_chain(const ChainLoop& loop, Links links,
                                                                const Adjuster& adjuster, double elongation = 0.0) {
  return try_pairs_for_chain(loop, links, adjuster, elongation).value();
}
#endif

}  // namespace layshaft
