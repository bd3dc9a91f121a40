// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/choose/choose.hpp>

#include <cstddef>
#include <optional>
#include <utility>
#include <vector>

/// @file
/// Every set-up of a space with all its numbers, one after the other: for pictures of the whole, and for studies that
/// ask for more than a choice. Only one is in memory at a time.
namespace layshaft {

/// One set-up of a space, whether it keeps the limits or not.
struct Surveyed {
  Setup setup;
  std::vector<std::optional<Band<double>>> wishes;  ///< as the goals' wishes stand, SI units; none: not to be told
  std::vector<std::optional<Band<double>>> limits;  ///< as the goals' limits stand
  std::vector<std::size_t> broken;                  ///< places of the limits that it breaks, or that cannot be told
};

/// Calls `visit(surveyed)` with every set-up whose chain closes, sprockets and chain in the outer loop, until it
/// returns false. Or an Error as `try_choose` says.
/// @return how many were visited
template <class Visit>
[[nodiscard]] Result<std::uint64_t> try_survey(const Machine& machine, const Space& space, const Goals& goals,
                                               Visit visit) {
  const auto study = detail::Study::make(machine, space, goals);
  if (!study) return study.error();
  std::uint64_t visited = 0;
  bool going_on = true;
  for (std::size_t i = 0; going_on && i < study->combinations(); ++i)
    study->each_drive(i, [&](const detail::StudyDrive& drive) {
      for (std::size_t t = 0; going_on && t < study->tyres().size(); ++t) {
        const detail::StudyTyre& tyre = study->tyres()[t];
        const detail::MeasuredValues values = detail::all_values(*study, drive, tyre);
        Surveyed one{study->setup_of(drive, tyre), {}, {}, {}};
        for (std::size_t w = 0; w < goals.wishes.size(); ++w) one.wishes.push_back(values[study->place_of_wish(w)]);
        for (std::size_t l = 0; l < goals.limits.size(); ++l) {
          const auto& value = values[study->place_of_limit(l)];
          one.limits.push_back(value);
          if (!value || study->overstepped(goals.limits[l], *value) > 0.0) one.broken.push_back(l);
        }
        ++visited;
        going_on = visit(std::as_const(one));
      }
    });
  return visited;
}

}  // namespace layshaft
