// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>

/// @file
/// Slack of the chain as a hand feels it, and the spare length that makes it.
namespace layshaft {

/// How much longer the chain is than the taut loop when a hand can move the middle of one run by `slack`, up plus down,
/// while the other run is pulled straight: in neutral, on the stand. Each half of the run is then the long side of a
/// flat triangle; for a slack that is small beside the run.
LAYSHAFT_FORMULA(constexpr, Length, spare_length, (Length slack, Length run_length),
                 is_finite(slack) && positive(run_length), sources::geometry, slack / (2.0 * run_length) * slack)

/// How far a hand can move the middle of one run, up plus down, when the chain is longer than the taut loop by
/// `spare_length`, zero or more, and the other run is pulled straight.
LAYSHAFT_FORMULA(inline, Length, slack_by_hand, (Length spare_length, Length run_length),
                 is_finite(spare_length) && spare_length >= 0.0_mm && positive(run_length), sources::geometry,
                 sqrt(2.0 * run_length * spare_length))

}  // namespace layshaft
