// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/choose/choice.hpp>
#include <layshaft/choose/ranking.hpp>
#include <layshaft/choose/relaxing.hpp>
#include <layshaft/choose/scan.hpp>
#include <layshaft/choose/study.hpp>

#include <algorithm>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

/// @file
/// The whole set at once: every combination of a space held against a rider's goals. Opt-in: it makes threads.
///
/// Every set-up is looked at, or ruled out by a limit that all set-ups with the same sprockets and chain, or with the
/// same tyre, would break. Those that keep all limits are kept as far as no other beats them in every wish; so memory
/// grows with the trade-off, not with the space. The answer does not depend on the order of the lists, nor on threads.
namespace layshaft {

/// Chooses among all set-ups of a space by a rider's goals. Or an Error, where the space or the goals are not as their
/// members say, the machine does not state what a measure needs, its stock set-up has no chain that fits, or no chain
/// of the space closes.
[[nodiscard]] inline Result<Choice> try_choose(const Machine& machine, const Space& space, const Goals& goals,
                                               const ChooseOptions& options = {}) {
  if (options.shortlist < 1 || options.shortlist > 1000)
    return Error::range("shortlist", std::to_string(options.shortlist), "1 to 1000");
  if (options.threads < 0 || options.threads > 256)
    return Error::range("threads", std::to_string(options.threads), "0 to 256");
  const auto study = detail::Study::make(machine, space, goals);
  if (!study) return study.error();
  Choice choice;
  choice.ruled_out.assign(goals.limits.size(), 0);
  TradeOff<detail::Place> as_judged, at_low, at_high;
  choice.complete = detail::scan_all(*study, options, [&](const detail::Found& found) {
    choice.examined += found.examined;
    choice.kept += found.kept;
    choice.untold += found.untold;
    for (std::size_t i = 0; i < found.ruled_out.size(); ++i) choice.ruled_out[i] += found.ruled_out[i];
    as_judged.add(found.as_judged);
    at_low.add(found.at_low);
    at_high.add(found.at_high);
  });
  if (choice.complete && choice.examined == 0) return study->nothing_closes();
  const std::vector<detail::Ranked> front = detail::rank(*study, as_judged);
  for (std::size_t i = 0; i < front.size(); ++i)
    choice.front.push_back(detail::chosen(*study, front[i], front, i + 1 < front.size() ? &front[i + 1] : nullptr));
  const std::size_t shown = std::min(front.size(), static_cast<std::size_t>(options.shortlist));
  choice.ranked.assign(choice.front.begin(), choice.front.begin() + static_cast<std::ptrdiff_t>(shown));
  for (Chosen& one : choice.ranked) one.cautions = study->cautions(one.setup);
  const auto best_of = [&](const TradeOff<detail::Place>& ends) -> std::optional<Setup> {
    const auto ranked = detail::rank(*study, ends);
    if (ranked.empty() || ranked.front().place == front.front().place) return std::nullopt;
    const auto drive = study->drive(ranked.front().place.combination, ranked.front().place.links);
    return study->setup_of(*drive, study->tyres()[ranked.front().place.tyre]);
  };
  choice.best_at_low = best_of(at_low);
  choice.best_at_high = best_of(at_high);
  if (front.empty() && choice.complete) {
    detail::Relaxing relaxing(*study);
    for (std::size_t i = 0; i < study->combinations(); ++i) relaxing.look_at(i);
    choice.relaxations = relaxing.told();
  }
  return choice;
}

#if LAYSHAFT_EXCEPTIONS
/// @throws Error as `try_choose` says.
[[nodiscard]] inline Choice choose(const Machine& machine, const Space& space, const Goals& goals,
                                   const ChooseOptions& options = {}) {
  return try_choose(machine, space, goals, options).value();
}
#endif

}  // namespace layshaft
