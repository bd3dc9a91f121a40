// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/checks.hpp>
#include <layshaft/wear/hunting.hpp>

#include <algorithm>
#include <cmath>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

/// @file
/// Pairs of sprockets near another that share their teeth's wear more evenly. Opt-in: it allocates.
namespace layshaft {

/// A pair near another, on the same chain.
struct HuntingPair {
  Teeth front, rear;
  double ratio_change;  ///< final ratio over that of the pair asked about, less one
  Hunting front_hunting, rear_hunting;

  /// Of both sprockets together.
  [[nodiscard]] constexpr double evenness() const noexcept { return front_hunting.evenness * rear_hunting.evenness; }
  friend constexpr bool operator==(const HuntingPair&, const HuntingPair&) = default;
};
/// Pairs within so many teeth of a pair, whose ratio differs by no more than `within` and whose evenness on the same
/// number of links is better; the most even first, of equals the nearest in ratio. Whether the chain closes is for
/// try_fit_links to say. Or a RangeError: within 0 to 0.5, reach 1 to 10 teeth.
[[nodiscard]] inline Result<std::vector<HuntingPair>> try_better_hunting(Teeth front, Teeth rear, Links links,
                                                                         double within = 0.03, int reach = 3) {
  if (auto error = detail::outside("within", within, 0.0, 0.5)) return *std::move(error);
  if (reach < 1 || reach > 10) return Error::range("reach", std::to_string(reach), "1 to 10");
  const auto pair_of = [&](Teeth a, Teeth b) {
    return HuntingPair{a, b, (double(b.count()) / a.count()) / (double(rear.count()) / front.count()) - 1.0,
                       hunting(a, links), hunting(b, links)};
  };
  const double own = pair_of(front, rear).evenness();
  std::vector<HuntingPair> found;
  for (int i = -reach; i <= reach; ++i)
    for (int j = -reach; j <= reach; ++j) {
      const auto a = Teeth::make(front.count() + i), b = Teeth::make(rear.count() + j);
      if (!a || !b) continue;
      const HuntingPair pair = pair_of(*a, *b);
      if (std::fabs(pair.ratio_change) <= within && pair.evenness() > own) found.push_back(pair);
    }
  std::ranges::sort(found, {}, [](const HuntingPair& pair) {
    return std::tuple(-pair.evenness(), std::fabs(pair.ratio_change), pair.front.count(), pair.rear.count());
  });
  return found;
}
#if LAYSHAFT_EXCEPTIONS
/// @throws RangeError as `try_better_hunting` says.
[[nodiscard]] inline std::vector<HuntingPair> better_hunting(Teeth front, Teeth rear, Links links, double within = 0.03,
                                                             int reach = 3) {
  return try_better_hunting(front, rear, links, within, reach).value();
}
#endif

}  // namespace layshaft
