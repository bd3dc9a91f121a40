// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/choose/scan.hpp>

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <utility>
#include <vector>

/// @file
/// The trade-off in order, and what is told of each of its set-ups.
namespace layshaft::detail {

/// The trade-off in the order of how well its set-ups fare: by score, then as the lists stand.
struct Ranked {
  double score;
  Place place;
  Losses losses;
};
[[nodiscard]] inline std::vector<Ranked> rank(const Study& study, const TradeOff<Place>& trade_off) {
  const auto& members = trade_off.members();
  const auto& wishes = study.goals().wishes;
  double weights = 0.0;
  for (const Wish& wish : wishes) weights += wish.weight;
  std::vector<Ranked> ranked;
  for (const auto& member : members) ranked.push_back({0.0, member.item, member.losses});
  for (std::size_t i = 0; i < wishes.size(); ++i) {
    double best = std::numeric_limits<double>::infinity(), worst = -best;
    for (const auto& member : members) {
      best = std::min(best, member.losses[i]);
      worst = std::max(worst, member.losses[i]);
    }
    if (!(best < worst)) continue;
    for (Ranked& one : ranked) one.score += wishes[i].weight / weights * ((one.losses[i] - best) / (worst - best));
  }
  // Scores that differ by rounding alone are one score, so that what stands first does not hang on the order of sums.
  const auto key = [](const Ranked& one) { return std::pair(std::round(one.score * 1e12), one.place); };
  std::sort(ranked.begin(), ranked.end(), [&](const Ranked& a, const Ranked& b) { return key(a) < key(b); });
  return ranked;
}

[[nodiscard]] inline Chosen chosen(const Study& study, const Ranked& one, const std::vector<Ranked>& front,
                                   const Ranked* next) {
  const auto drive = study.drive(one.place.combination, one.place.links);
  const StudyTyre& tyre = study.tyres()[one.place.tyre];
  const MeasuredValues values = all_values(study, *drive, tyre);
  std::optional<MeasuredValues> next_values;
  if (next) {
    const auto other = study.drive(next->place.combination, next->place.links);
    next_values = all_values(study, *other, study.tyres()[next->place.tyre]);
  }
  Chosen told{study.setup_of(*drive, tyre), one.score, {}, {}, true, {}};
  const Goals& goals = study.goals();
  for (std::size_t i = 0; i < goals.wishes.size(); ++i) {
    WishTold wish{goals.wishes[i], *values[study.place_of_wish(i)], {}, true};
    for (const Ranked& other : front) wish.best = wish.best && one.losses[i] <= other.losses[i];
    if (next) wish.next = (*next_values)[study.place_of_wish(i)]->nominal;
    told.reason.wishes.push_back(wish);
  }
  for (std::size_t i = 0; i < goals.limits.size(); ++i) {
    const Band<double>& value = *values[study.place_of_limit(i)];
    const Limit& limit = goals.limits[i];
    told.limits.push_back({limit, value});
    for (const double end : {value.low, value.high})
      if (study.overstepped(limit, Band<double>::exactly(end)) > 0.0) told.sure = false;
  }
  return told;
}

}  // namespace layshaft::detail
