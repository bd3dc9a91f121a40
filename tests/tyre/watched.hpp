// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/recorder.hpp>

#include <gtest/gtest.h>

#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

/// @file
/// A tyre's calculations, watched.
namespace layshaft_test {

/// Runs `calculation(watch, corner)` with a recorder and without: the results must be the same to the bit, and the
/// steps of the nominal run have these names, in order.
template <class Runs, class Calculation>
layshaft::Working expect_watched(const Runs& runs, Calculation calculation, std::initializer_list<const char*> names) {
  const layshaft::Working working =
      layshaft::explain_over("a test", runs, [&](auto watch, const auto& at) { return calculation(watch, at); });
  const auto plain = layshaft::over_runs(runs, [&](const auto& at) { return calculation(layshaft::Unwatched(), at); });
  for (const layshaft::Corner corner : layshaft::corners)
    EXPECT_EQ(working.result().result(corner), layshaft::detail::amount_of(plain.at(corner)));
  std::vector<std::string> told;
  for (const layshaft::Step& step : working.steps()) told.push_back(step.name());
  EXPECT_EQ(told, std::vector<std::string>(names.begin(), names.end()));
  return working;
}

}  // namespace layshaft_test
