// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/choose/goals.hpp>
#include <layshaft/core/band.hpp>
#include <layshaft/core/caution.hpp>
#include <layshaft/setup/setup_parts.hpp>

#include <cstddef>
#include <cstdint>
#include <functional>
#include <optional>
#include <vector>

/// @file
/// How a choice is asked for, and what comes of it.
namespace layshaft {

/// How a choice is worked out.
struct ChooseOptions {
  int shortlist = 3;  ///< how many are ranked: 1 to 1000
  int threads = 1;    ///< 1 to 256; 0: as many as the machine has cores
  /// Called now and then, from one thread at a time, with the set-ups looked at and all there may be; false stops. It
  /// must not throw.
  std::function<bool(std::uint64_t done, std::uint64_t all)> progress = {};
};

/// How one wish fares in a set-up that was chosen, beside the next one in the ranking.
struct WishTold {
  Wish wish;
  Band<double> value;          ///< in the wish's own measure, SI units
  std::optional<double> next;  ///< the nominal value of the next in the ranking
  bool best = false;           ///< no other of the trade-off comes nearer to this wish
};

/// How one limit is kept.
struct LimitTold {
  Limit limit;
  Band<double> value;  ///< in the limit's own measure, SI units
};

/// Why a set-up stands where it does; show/choice_text.hpp puts it in words.
struct Reason {
  std::vector<WishTold> wishes;  ///< as the goals' wishes stand
};

/// A set-up that keeps all limits, and that nothing beats in every wish.
struct Chosen {
  Setup setup;
  double score = 0.0;  ///< 0: the best of the trade-off in every wish; 1: the worst
  Reason reason;
  std::vector<LimitTold> limits;  ///< as the goals' limits stand
  bool sure = true;               ///< the limits are kept over the whole of every band
  Cautions cautions;              ///< what the rider must be told before riding on it; of those that are ranked
};

/// One limit that would have to give way, and how far.
struct RelaxedLimit {
  std::size_t place = 0;  ///< among the goals' limits, counted from 0
  Limit limit;            ///< as it was asked for
  double by = 0.0;        ///< in the measure's SI units
};

/// The least that would have to give way for a set-up to keep all other limits.
struct Relaxation {
  std::vector<RelaxedLimit> limits;  ///< one, where any one is enough; else as few as there must be
  Setup setup;                       ///< that then keeps them
};

/// What came of a choice.
struct Choice {
  std::vector<Chosen> ranked;  ///< the best first
  std::vector<Chosen> front;   ///< the whole trade-off, the best first: nothing beats one of these in every wish
  std::vector<Relaxation> relaxations;   ///< where nothing keeps all limits; those that ask for least first
  std::uint64_t examined = 0;            ///< set-ups looked at
  std::uint64_t kept = 0;                ///< set-ups that keep all limits
  std::vector<std::uint64_t> ruled_out;  ///< by each limit, set-ups that break it first
  std::uint64_t untold = 0;              ///< set-ups of which a wish cannot be told, as a price is not known
  bool complete = true;                  ///< false: stopped by the progress callback
  /// The best at the low and at the high end of every band, where it is another than the best.
  std::optional<Setup> best_at_low, best_at_high;
};

}  // namespace layshaft
