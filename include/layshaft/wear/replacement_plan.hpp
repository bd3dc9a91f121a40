// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/band.hpp>
#include <layshaft/core/checks.hpp>
#include <layshaft/core/fixed_list.hpp>
#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>
#include <layshaft/core/result.hpp>
#include <layshaft/core/source.hpp>
#include <layshaft/core/units.hpp>
#include <layshaft/wear/road_distance.hpp>
#include <layshaft/wear/running_cost.hpp>

#include <array>
#include <cstddef>
#include <optional>
#include <string_view>
#include <utility>

/// @file
/// When to replace chain and sprockets, singly or as a set, and what each way costs over a distance.
///
/// What is assumed, and named as such: a part lives as long as the one before it and is used up evenly
/// (`even_life_source`); a new chain lives shorter on worn sprockets (`mismatch_source`), by how worn the worse of the
/// two is on the day the chain is fitted. That a worn chain wears new sprockets faster is not counted.
namespace layshaft {

/// By how much worn sprockets shorten a new chain's life.
inline constexpr Source mismatch_source{
    "assumption: worn sprockets shorten a new chain's life, in proportion to how much of their own they have run",
    Certainty::common_practice};

/// The factor by which sprockets at the end of their life shorten a new chain's, where nothing else is stated.
inline constexpr Band<double> usual_mismatch{1.0, 1.3, 2.0};
/// Where that band comes from: nowhere. It is wide for that reason.
inline constexpr Source usual_mismatch_source{
    "assumption: sprockets at the end of their life shorten a new chain's by a factor of 1.0 to 2.0",
    Certainty::from_memory};

/// Life of a new chain on sprockets that have run a part of theirs.
LAYSHAFT_FORMULA(constexpr, Length, life_on_worn_sprockets, (Length life, double mismatch, double life_run),
                 positive(life) && is_finite(mismatch) && mismatch >= 1.0 && is_finite(life_run) && life_run >= 0.0,
                 mismatch_source, life / (1.0 + (mismatch - 1.0) * life_run))

/// What comes due within this distance of each other is replaced at once; and nobody buys a part for the last of it.
inline constexpr Length done_together = 1_km;

/// Chain and sprockets as they are priced, and how they live when all three are new together. The kinds of the parts
/// are not looked at: their places say what they are.
struct DriveCosts {
  CostPart chain = {};
  CostPart front = {};
  CostPart rear = {};
  Band<double> set_labour = {};               ///< of replacing all three at once: 0 to 1e12
  std::optional<Band<double>> mismatch = {};  ///< 1 to 10; where none is stated, `usual_mismatch` holds

  friend constexpr bool operator==(const DriveCosts&, const DriveCosts&) noexcept = default;
};

/// When parts are replaced.
enum class PlanKind : unsigned char {
  as_a_set,        ///< all three as soon as the first of them is worn
  chains_per_set,  ///< the chain alone when it is worn, but sprockets with it after so many chains
  each_when_worn,  ///< each part by itself
};

/// All of them, in order.
inline constexpr PlanKind plan_kinds[] = {PlanKind::as_a_set, PlanKind::chains_per_set, PlanKind::each_when_worn};

/// The words for it.
[[nodiscard]] constexpr std::string_view to_string(PlanKind kind) noexcept {
  switch (kind) {
    case PlanKind::as_a_set: return "as a set";
    case PlanKind::chains_per_set: return "several chains a set";
    case PlanKind::each_when_worn: return "each when worn";
  }
  return {};
}

/// One plan, and what it costs over the distance, beginning with three new parts that are bought and fitted.
struct PlanCost {
  PlanKind kind = PlanKind::as_a_set;
  /// How many chains a pair of sprockets is to see: 1 as a set, 2 to 6; 0 where each is replaced when worn. Sprockets
  /// that are worn sooner take the chain with them.
  int chains_per_set = 1;
  Band<double> bought = {};   ///< all that is bought and fitted by the end
  Band<double> used_up = {};  ///< the same, but of what is fitted at the end only the part that it has run of its time
  int chains = 0;             ///< how many are bought, at nominal lives
  int fronts = 0;             ///< how many front sprockets
  int rears = 0;              ///< how many rear sprockets
  bool can_be_cheapest = false;  ///< whether it is the cheapest by `used_up` somewhere within the bands

  friend constexpr bool operator==(const PlanCost&, const PlanCost&) noexcept = default;
};

/// All plans, and the one that costs least.
struct ReplacementPlans {
  /// As a set; two to six chains a set; each when worn. In this order.
  FixedList<PlanCost, 7> plans = {};
  /// The first that costs least by `used_up` at nominal prices, lives and mismatch.
  PlanCost cheapest = {};
  /// Whether another plan costs least somewhere within the bands.
  bool flips = false;
  /// From memory where no mismatch is stated, else common practice, as the assumptions are.
  Certainty certainty = Certainty::from_memory;

  friend constexpr bool operator==(const ReplacementPlans&, const ReplacementPlans&) noexcept = default;
};

namespace detail {

/// No more than six: more chains on one pair of sprockets is nobody's plan.
inline constexpr int most_chains_per_set = 6;
/// By what part of itself a plan must cost less than an earlier one to be cheaper, not the same but for rounding.
inline constexpr double same_cost = 1e-9;

/// Where the causes of a plan's cost stand. Money moves every cost one way, so all of it moves together; lives need
/// not, as a longer-lived sprocket may take one more chain that is then thrown away half used.
struct PlanCorners {
  Corner money = Corner::nominal;
  Corner chain = Corner::nominal;
  Corner front = Corner::nominal;
  Corner rear = Corner::nominal;
  Corner mismatch = Corner::nominal;
};
inline constexpr auto plan_corners = [] {
  FixedList<PlanCorners, 33> all;
  all.push_back({});
  const auto end = [](int which, int bit) { return (which >> bit) % 2 == 0 ? Corner::low : Corner::high; };
  for (int which = 0; which < 32; ++which)
    all.push_back({end(which, 0), end(which, 1), end(which, 2), end(which, 3), end(which, 4)});
  return all;
}();

/// A drive's prices and lives at one corner: chain, front and rear sprocket.
struct DriveAt {
  std::array<double, 3> price;
  std::array<double, 3> labour;
  std::array<double, 3> labour_in_set;  ///< labour of a set, shared as that of the single parts is
  std::array<Length, 3> life;
  double mismatch;

  constexpr DriveAt(const DriveCosts& drive, const Band<double>& band, const PlanCorners& at) noexcept
      : price{drive.chain.price.at(at.money), drive.front.price.at(at.money), drive.rear.price.at(at.money)},
        labour{drive.chain.labour.at(at.money), drive.front.labour.at(at.money), drive.rear.labour.at(at.money)},
        labour_in_set{},
        life{drive.chain.life.at(at.chain), drive.front.life.at(at.front), drive.rear.life.at(at.rear)},
        mismatch(band.at(at.mismatch)) {
    const double set = drive.set_labour.at(at.money);
    const double singly = labour[0] + labour[1] + labour[2];
    for (std::size_t i = 0; i < 3; ++i) labour_in_set[i] = singly > 0.0 ? set * (labour[i] / singly) : set / 3.0;
  }
};

/// What one run of a plan comes to.
struct PlanRun {
  double bought = 0.0;
  double used_up = 0.0;
  std::array<int, 3> count{};
};

/// Distance from one set to the next, when the sprockets are to see so many chains.
[[nodiscard]] constexpr Length set_life(const DriveAt& drive, int chains) noexcept {
  const Length sprockets = drive.life[1] < drive.life[2] ? drive.life[1] : drive.life[2];
  Length end{};
  for (int i = 0; i < chains; ++i) {
    const Length next = end + life_on_worn_sprockets(drive.life[0], drive.mismatch, end / sprockets);
    if (next + done_together >= sprockets) return next < sprockets ? next : sprockets;
    end = next;
  }
  return end;
}

/// Rides the distance, replacing parts as the plan says; no chains a set: each when worn.
[[nodiscard]] constexpr PlanRun run_plan(const DriveAt& drive, int chains_per_set, Length distance) noexcept {
  PlanRun run;
  std::array<Length, 3> fitted{}, due{};
  std::array<double, 3> labour{};
  std::array<bool, 3> renewed{true, true, true};
  const Length set = chains_per_set > 0 ? set_life(drive, chains_per_set) : Length();
  for (Length now{};;) {
    const bool all = renewed[0] && renewed[1] && renewed[2];
    for (std::size_t i = 0; i < 3; ++i) {
      if (!renewed[i]) continue;
      fitted[i] = now;
      labour[i] = all ? drive.labour_in_set[i] : drive.labour[i];
      run.bought += drive.price[i] + labour[i];
      ++run.count[i];
      if (i > 0) due[i] = now + (chains_per_set > 0 ? set : drive.life[i]);
    }
    if (renewed[0]) {
      const double front_run = (now - fitted[1]) / drive.life[1];
      const double rear_run = (now - fitted[2]) / drive.life[2];
      due[0] = now + life_on_worn_sprockets(drive.life[0], drive.mismatch, front_run > rear_run ? front_run : rear_run);
      // Sprockets of a set take its last chain with them.
      if (chains_per_set > 0 && due[0] > due[1]) due[0] = due[1];
    }
    Length next = due[0];
    for (std::size_t i = 1; i < 3; ++i)
      if (due[i] < next) next = due[i];
    if (next + done_together >= distance) break;
    for (std::size_t i = 0; i < 3; ++i) {
      renewed[i] = due[i] <= next + done_together;
      if (renewed[i]) run.used_up += drive.price[i] + labour[i];
    }
    now = next;
  }
  for (std::size_t i = 0; i < 3; ++i) {
    const Length end = due[i] < distance ? due[i] : distance;
    run.used_up += cost_per_distance(drive.price[i], labour[i], end - fitted[i], due[i] - fitted[i]);
  }
  return run;
}

}  // namespace detail

/// What each plan costs over a distance of 10 to 1,000,000 km. Or a RangeError, where the distance, a price, a labour,
/// a life or the mismatch lies outside its range or is no rising band.
///
/// The bands hold the results at all corners of five causes: prices and labour together, the life of the chain, of the
/// front and of the rear sprocket, and the mismatch. At each corner the first plan that costs least by `used_up` is its
/// cheapest. A set's labour is shared among its parts as their single labours are, evenly where those are all nothing.
[[nodiscard]] inline Result<ReplacementPlans> try_replacement_plans(Length distance, const DriveCosts& drive) {
  if (auto error = detail::outside_km("distance", distance, 10_km, 1e6 * units::km)) return *std::move(error);
  if (auto error = detail::outside("chain", drive.chain)) return *std::move(error);
  if (auto error = detail::outside("front", drive.front)) return *std::move(error);
  if (auto error = detail::outside("rear", drive.rear)) return *std::move(error);
  if (auto error = detail::no_money("set_labour", drive.set_labour)) return *std::move(error);
  const Band<double> mismatch = drive.mismatch ? *drive.mismatch : usual_mismatch;
  if (auto error = detail::outside("mismatch", mismatch, 1.0, 10.0)) return *std::move(error);

  constexpr int count = detail::most_chains_per_set + 1;
  std::array<PlanCost, count> plans;
  for (int i = 0; i < count; ++i) {
    auto& plan = plans[static_cast<std::size_t>(i)];
    plan.chains_per_set = (i + 1) % count;  // 1 to 6, and 0 for the last
    plan.kind = i == 0 ? PlanKind::as_a_set : i + 1 < count ? PlanKind::chains_per_set : PlanKind::each_when_worn;
  }
  std::size_t cheapest = 0;
  bool nominal = true;
  for (const detail::PlanCorners& at : detail::plan_corners) {
    const detail::DriveAt here(drive, mismatch, at);
    std::size_t least = 0;
    double least_cost = 0.0;
    for (std::size_t i = 0; i < plans.size(); ++i) {
      PlanCost& plan = plans[i];
      const detail::PlanRun run = detail::run_plan(here, plan.chains_per_set, distance);
      if (nominal) {
        plan.bought = Band<double>::exactly(run.bought);
        plan.used_up = Band<double>::exactly(run.used_up);
        plan.chains = run.count[0];
        plan.fronts = run.count[1];
        plan.rears = run.count[2];
      }
      plan.bought.include(run.bought);
      plan.used_up.include(run.used_up);
      if (i == 0 || run.used_up < least_cost * (1.0 - detail::same_cost)) {
        least = i;
        least_cost = run.used_up;
      }
    }
    plans[least].can_be_cheapest = true;
    if (nominal) cheapest = least;
    nominal = false;
  }
  ReplacementPlans told;
  int candidates = 0;
  for (const PlanCost& plan : plans) {
    told.plans.push_back(plan);
    candidates += plan.can_be_cheapest ? 1 : 0;
  }
  told.cheapest = plans[cheapest];
  told.flips = candidates > 1;
  told.certainty =
      weaker(mismatch_source.certainty, drive.mismatch ? sources::stated.certainty : usual_mismatch_source.certainty);
  return told;
}
#if LAYSHAFT_EXCEPTIONS
/// @throws RangeError as `try_replacement_plans` says.
[[nodiscard]] inline ReplacementPlans replacement_plans(Length distance, const DriveCosts& drive) {
  return try_replacement_plans(distance, drive).value();
}
#endif

}  // namespace layshaft
