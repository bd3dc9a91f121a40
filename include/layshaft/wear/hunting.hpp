// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/counts.hpp>
#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>

/// @file
/// Which tooth meets which link, and how soon it meets the same one again.
namespace layshaft {

/// How the teeth of one sprocket meet the links of a chain. All follows from their common factor.
struct Hunting {
  int passes;          ///< passes of the whole chain until a tooth meets the same link again
  int distinct_links;  ///< how many different links each tooth meets in that time
  int link_kinds;      ///< 1 when each tooth meets only inner or only outer links, else 2
  double evenness;     ///< 1 where every tooth meets every link, less the fewer it meets: how evenly wear is shared
  double inner_only;   ///< share of the teeth that meet only inner links: 1/2, or none
  double outer_only;   ///< share of the teeth that meet only outer links

  friend constexpr bool operator==(const Hunting&, const Hunting&) = default;
};

/// Passes of the whole chain until a tooth meets the same link again.
LAYSHAFT_FORMULA(constexpr, double, passes, (Teeth teeth, Links links), true, sources::arithmetic,
                 teeth / common_factor(teeth, links))

/// How many different links each tooth meets in that time.
LAYSHAFT_FORMULA(constexpr, double, distinct_links, (Teeth teeth, Links links), true, sources::arithmetic,
                 links / common_factor(teeth, links))

/// How evenly the teeth share the links: the share of the links that a tooth meets, and half of that where it meets
/// only one kind. A period alone ranks wrongly: 96 links repeat later on 14 teeth than on 15, yet each of the 14 meets
/// only inner or only outer links.
LAYSHAFT_FORMULA(constexpr, double, evenness, (double distinct_links, Links links, double link_kinds),
                 distinct_links > 0.0 && link_kinds >= 1.0 && link_kinds <= 2.0, sources::definition,
                 distinct_links / links * (link_kinds / 2.0))

/// How a sprocket and a chain share their meetings.
///
/// A tooth that meets a link meets next the link `teeth` further on, so of `links` links it meets every `gcd`-th: that
/// is links/gcd of them, in teeth/gcd passes. Inner and outer links alternate, so an even common factor keeps a tooth
/// on one kind. An odd chain has an offset link that is neither, and every tooth meets all kinds.
/// 96 links on 15 teeth repeat after 5 passes, on 14 after 7.
[[nodiscard]] constexpr Hunting hunting(Teeth teeth, Links links) noexcept {
  const double met = distinct_links(teeth, links);
  const int kinds = static_cast<int>(common_factor(teeth, links)) % 2 == 0 ? 1 : 2;
  const double of_one_kind = kinds == 1 ? 0.5 : 0.0;  // neighbours on the sprocket meet different kinds
  return {static_cast<int>(passes(teeth, links)),
          static_cast<int>(met),
          kinds,
          evenness(met, links, kinds),
          of_one_kind,
          of_one_kind};
}

}  // namespace layshaft
