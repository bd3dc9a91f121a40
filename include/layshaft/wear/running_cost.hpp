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
#include <layshaft/core/watch.hpp>
#include <layshaft/wear/road_distance.hpp>

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

/// @file
/// What a part costs on the road. Prices are plain numbers in any one currency: which one is the reader's, as long as
/// it is the same everywhere.
namespace layshaft {

/// How a price becomes a cost a kilometre. That is an assumption: the next part need not live as long as this one.
inline constexpr Source even_life_source{
    "assumption: a part is used up evenly over its life, and the next lives as long", Certainty::common_practice};

/// Cost over a distance of a part that is bought and fitted anew whenever its life is over.
LAYSHAFT_FORMULA(constexpr, double, cost_per_distance, (double price, double labour, Length distance, Length life),
                 is_finite(price) && is_finite(labour) && price >= 0.0 && labour >= 0.0 && positive(distance) &&
                     positive(life),
                 even_life_source, (price + labour) * (distance / life))

/// What kind of part it is.
enum class PartKind : unsigned char { chain, front_sprocket, rear_sprocket, tyre, other };

/// All of them, in order.
inline constexpr PartKind part_kinds[] = {PartKind::chain, PartKind::front_sprocket, PartKind::rear_sprocket,
                                          PartKind::tyre, PartKind::other};

/// The word for a kind of part.
[[nodiscard]] constexpr std::string_view to_string(PartKind kind) noexcept {
  switch (kind) {
    case PartKind::chain: return "chain";
    case PartKind::front_sprocket: return "front sprocket";
    case PartKind::rear_sprocket: return "rear sprocket";
    case PartKind::tyre: return "tyre";
    case PartKind::other: return "other";
  }
  return {};
}

/// A part that wears, and what it takes to put a new one on. Functions that take one check it.
struct CostPart {
  PartKind kind = PartKind::other;
  Band<double> price = {};   ///< of the part, in the reader's currency: 0 to 1e12
  Band<double> labour = {};  ///< of fitting it, in the same currency: 0 to 1e12; 0 is the rider's own time
  Band<Length> life = {};    ///< distance until it is worn out: 100 to 1,000,000 km

  friend constexpr bool operator==(const CostPart&, const CostPart&) noexcept = default;
};

/// The parts whose cost is asked for, up to sixteen.
using CostParts = FixedList<CostPart, 16>;

/// Cost of one part on the road.
struct PartCost {
  PartKind kind = PartKind::other;
  Band<double> per_1000_km = {};  ///< low: the lowest price over the longest life

  friend constexpr bool operator==(const PartCost&, const PartCost&) noexcept = default;
};

/// Cost of several parts on the road, each replaced by itself when it is worn.
struct RunningCost {
  FixedList<PartCost, CostParts::capacity> parts = {};  ///< in the order asked for
  Band<double> per_1000_km = {};  ///< of all together; the ends are those at which every part is cheap, or is dear

  friend constexpr bool operator==(const RunningCost&, const RunningCost&) noexcept = default;
};

namespace detail {

/// No error when it is an amount of money.
[[nodiscard]] inline std::optional<Error> no_money(std::string_view name, const Band<double>& amount) {
  return outside(name, amount, 0.0, 1e12);
}
[[nodiscard]] inline std::optional<Error> outside(const CostPart& part) {
  if (auto error = no_money("price", part.price)) return error;
  if (auto error = no_money("labour", part.labour)) return error;
  return outside_km("life", part.life, 100_km, 1e6 * units::km);
}
/// The same, telling which part.
[[nodiscard]] inline std::optional<Error> outside(std::string_view name, const CostPart& part) {
  if (auto error = outside(part)) return error->in(name);
  return std::nullopt;
}

/// The life at which a cost is at this end: what lives longest costs least.
[[nodiscard]] constexpr Corner life_at(Corner cost) noexcept {
  return cost == Corner::low ? Corner::high : cost == Corner::high ? Corner::low : Corner::nominal;
}

/// Cost of a part over a distance at one end of it, for whoever watches.
template <class Watch, class Distance>
[[nodiscard]] constexpr auto cost_of(Watch watch, const CostPart& part, const Distance& distance, Corner cost) {
  const auto price = watch.given("price", part.price.at(cost));
  const auto labour = watch.given("labour", part.labour.at(cost));
  const auto life = watch.given("life", part.life.at(life_at(cost)));
  return watch.step(formula::cost_per_distance{}, price, labour, distance, life);
}
[[nodiscard]] constexpr double cost_per_1000_km(const CostPart& part, Corner cost) {
  return cost_of(Unwatched(), part, 1000_km, cost);
}

}  // namespace detail

/// What the parts cost per 1,000 km, each and all together. Or an Error, where there is none or there are more than
/// sixteen, or a RangeError, where a part's price, labour or life lies outside its range or is no rising band.
[[nodiscard]] inline Result<RunningCost> try_running_cost(const CostParts& parts) {
  if (parts.empty()) return Error::value("parts: none was given; expected 1 to 16");
  if (parts.overfull()) return Error::value("parts: more than 16 were given; expected 1 to 16");
  for (std::size_t i = 0; i < parts.size(); ++i)
    if (auto error = detail::outside("parts[" + std::to_string(i) + "]", parts[i])) return *std::move(error);
  RunningCost cost;
  for (const CostPart& part : parts)
    cost.parts.push_back(
        {part.kind, over_runs(one_cause, [&](Corner at) { return detail::cost_per_1000_km(part, at); })});
  cost.per_1000_km = over_runs(one_cause, [&](Corner at) {
    double sum = 0.0;
    for (const CostPart& part : parts) sum += detail::cost_per_1000_km(part, at);
    return sum;
  });
  return cost;
}
#if LAYSHAFT_EXCEPTIONS
/// @throws Error or RangeError as `try_running_cost` says.
[[nodiscard]] inline RunningCost running_cost(const CostParts& parts) { return try_running_cost(parts).value(); }
#endif

}  // namespace layshaft
