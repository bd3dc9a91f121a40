// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>

#include <cmath>  // log1p

/// @file
/// How a change made of several factors is shared out among them, exactly and additively.
///
/// A tyre 6 % taller and 40 to 45 teeth behind change thrust by the factors 1/1.06 and 45/40: -5.66 % and +12.5 %,
/// which do not add up to the +6.13 % they make. Sharing the whole change by each factor's part of its logarithm does:
/// -6.00 and +12.14 points. The tyre's share then depends a little on what else is changed, which a ledger can live
/// with.
namespace layshaft {

/// The logarithmic mean of a ratio and one, (F - 1)/ln F, which tends to 1 where F does.
[[nodiscard]] inline double logarithmic_mean(double ratio) noexcept {
  const double change = ratio - 1.0;
  if (change == 0.0) return 1.0;
  // The change is exact near one; far below, it has lost the ratio.
  return change / (ratio > 0.5 ? std::log1p(change) : std::log(ratio));
}

/// The points that one factor contributes to a change by the ratio of all factors together; both above zero. The
/// contributions of all factors add up to `ratio - 1`.
LAYSHAFT_FORMULA(inline, double, contribution, (double ratio, double factor), positive(ratio) && positive(factor),
                 sources::definition, logarithmic_mean(ratio) * ln(factor))

}  // namespace layshaft
