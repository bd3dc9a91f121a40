// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/chain/loads.hpp>
#include <layshaft/chain/tension.hpp>
#include <layshaft/core/band.hpp>
#include <layshaft/wear/joint_wear.hpp>
#include <layshaft/wear/road_distance.hpp>

#include <array>
#include <optional>
#include <string_view>
#include <utility>

/// @file
/// How fast a chain grows on the road, and how far it may.
///
/// How well a joint resists wear is hardly known: clean, lubricated and evenly loaded, bench tests say one thing; in
/// mud it may be a hundredth of that. So an absolute figure is a band of decades, until the rider has measured
/// (stretch_fit.hpp); a comparison of two set-ups on one chain is exact.
namespace layshaft {

/// On the bench: the four rows of GOST 13568-97, Appendix V, that carry a pressure, as bounds of load times sliding
/// over the volume lost.
inline constexpr Band<Pressure> bench_wear_resistance{Pressure::from_value(8.1e15), Pressure::from_value(1.4e16),
                                                      Pressure::from_value(2.6e16)};
/// On the road: from a hundredth of the bench's least, in mud, to its best. Nominal is such that a plain chain lasts
/// some ten thousand kilometres (common practice, no source).
inline constexpr Band<Pressure> road_wear_resistance{0.01 * bench_wear_resistance.low, Pressure::from_value(3.0e14),
                                                     bench_wear_resistance.high};
inline constexpr Source road_wear_source{"bench life tests of GOST 13568-97, down two decades for dirt",
                                         Certainty::from_memory};
inline constexpr Source sealed_wear_source{
    "bench life tests of GOST 13568-97, down two decades for dirt, times an assumed factor of the seal",
    Certainty::from_memory};

/// How many times longer the joints of a kind of chain last, whatever else: assumptions, for no published figure was
/// found.
[[nodiscard]] constexpr Band<double> seal_life_factor(ChainSeal seal) noexcept {
  switch (seal) {
    case ChainSeal::none: break;
    case ChainSeal::o_ring: return {1.0, 2.0, 5.0};
    case ChainSeal::shaped: return {1.0, 3.0, 8.0};
  }
  return Band<double>::exactly(1.0);
}

/// A bush's length where no source gives the inner link's width: so many times the width between its plates, as of the
/// standard's small chains (computed).
inline constexpr double bush_over_inner_width = 1.45;

/// Where the wear resistance of a kind of chain comes from.
[[nodiscard]] constexpr const Source& road_wear_source_of(ChainSeal seal) noexcept {
  return seal == ChainSeal::none ? road_wear_source : sealed_wear_source;
}

/// What acts on the chain while it is ridden.
struct StretchDuty {
  Band<Force> thrust;          ///< mean over the distance at the contact patch: above 0, to 100 kN
  Band<Length> circumference;  ///< of the wheel: 0.1 to 10 m
  Speed speed{};               ///< for the centrifugal pull, where the chain's mass is known: 0 to 500 km/h
  std::optional<Band<Pressure>> wear_resistance = {};  ///< as measured; else the road's, times the seal's factor

  friend constexpr bool operator==(const StretchDuty&, const StretchDuty&) noexcept = default;
};

/// What holds how far a chain may grow.
enum class StretchLimitKind { maker, sprocket, adjuster };

[[nodiscard]] constexpr std::string_view to_string(StretchLimitKind kind) noexcept {
  switch (kind) {
    case StretchLimitKind::maker: return "maker's limit";
    case StretchLimitKind::sprocket: return "largest sprocket";
    case StretchLimitKind::adjuster: return "adjuster";
  }
  return {};
}

/// A chain maker's general limit: 2 %.
inline constexpr double usual_stretch_limit = 0.02;
inline constexpr Source usual_stretch_source{"a chain maker's drive-chain catalogue, p. 67", Certainty::published};

/// The growth at which a chain climbs off a sprocket: 200/N per cent, which governs only above a hundred teeth.
LAYSHAFT_FORMULA(constexpr, double, stretch_limit_of_sprocket, (Teeth teeth), true, usual_stretch_source, 2.0 / teeth)

/// How far a chain may grow.
struct StretchLimit {
  double elongation;
  StretchLimitKind kind;

  friend constexpr bool operator==(const StretchLimit&, const StretchLimit&) noexcept = default;
};

/// The least of a maker's limit, 0.01 to 10 %, that of the largest sprocket, and the room left in the adjuster, -1
/// to 1. Or a RangeError.
[[nodiscard]] inline Result<StretchLimit> try_stretch_limit(Teeth largest, double wear_room,
                                                            double makers = usual_stretch_limit) {
  if (auto error = detail::outside("wear_room", wear_room, -1.0, 1.0)) return *std::move(error);
  if (auto error = detail::outside("makers", makers, 1e-4, 0.1)) return *std::move(error);
  StretchLimit limit{makers, StretchLimitKind::maker};
  const double climbs = stretch_limit_of_sprocket(largest);
  if (climbs < limit.elongation) limit = {climbs, StretchLimitKind::sprocket};
  if (wear_room < limit.elongation) limit = {wear_room, StretchLimitKind::adjuster};
  return limit;
}
#if LAYSHAFT_EXCEPTIONS
/// @throws RangeError as `try_stretch_limit` says.
[[nodiscard]] inline StretchLimit stretch_limit(Teeth largest, double wear_room, double makers = usual_stretch_limit) {
  return try_stretch_limit(largest, wear_room, makers).value();
}
#endif

/// An assumed band of growth, tightened by a measured one: what both allow; where they do not meet, what was measured
/// alone. Nominal is what was measured, as far as that lies within.
[[nodiscard]] constexpr Band<double> tightened(const Band<double>& assumed, const Band<double>& measured) noexcept {
  const double low = assumed.low < measured.low ? measured.low : assumed.low;
  const double high = measured.high < assumed.high ? measured.high : assumed.high;
  if (high < low) return measured;
  return {low, measured.nominal < low ? low : high < measured.nominal ? high : measured.nominal, high};
}

namespace detail {

[[nodiscard]] inline std::optional<Error> outside(const StretchDuty& duty) {
  if (auto error = outside("thrust", duty.thrust, 1e-3_N, 100.0_kN)) return error;
  if (auto error = outside("circumference", duty.circumference, 0.1_m, 10.0_m)) return error;
  if (auto error = outside("speed", duty.speed, 0.0_kmh, 500.0_kmh)) return error;
  if (duty.wear_resistance)
    return outside("wear_resistance", *duty.wear_resistance, Pressure::from_value(1e9), Pressure::from_value(1e20));
  return std::nullopt;
}

/// The bush's length for whoever watches.
template <class Watch>
[[nodiscard]] constexpr auto bush_length_of(Watch watch, ChainSeries series) {
  if (const auto width = series.inner_link_width())
    return watch.looked_up("bush_length", *width, series.name(), series.source(ChainProperty::inner_link_width));
  return watch.given("bush_length", bush_over_inner_width * series.inner_width(),
                     Source{"1.45 times the width between the plates", Certainty::derived});
}

/// How much longer the chain is after a distance, for whoever watches; fast where the corner is low.
template <class Watch, class WatchedForce, class WatchedLength>
[[nodiscard]] auto stretch_over(Watch watch, const ChainLoop& loop, Links links, const WatchedForce& thrust,
                                const WatchedLength& circumference, Length distance, Force slack_tension,
                                Pressure wear_resistance, const Source& source) {
  const auto drive = loop.drive(watch);
  const auto pull = watch.step(formula::chain_tension{}, thrust, circumference, drive.rear_diameter);
  const auto slack = watch.given("slack_tension", slack_tension);
  const auto tight = watch.step(formula::tight_tension{}, pull, slack);
  const auto bush = bush_length_of(watch, loop.series());
  const auto resists = watch.given("wear_resistance", wear_resistance, source);
  const auto wear = watch.step(formula::joint_wear{}, tight, slack, drive.front, drive.rear, bush, resists);
  const auto ridden = watch.given("distance", distance);
  const auto passes =
      watch.step(formula::chain_passes{}, ridden, circumference, drive.rear, watch.given("links", links));
  return watch.step(formula::stretch_of_wear{}, passes, wear, drive.pitch);
}

/// The centrifugal pull at a road speed; none where the chain's mass is not known.
[[nodiscard]] inline Force centrifugal_at(const ChainLoop& loop, const ChainMade& made, Speed speed,
                                          Length circumference) {
  const auto mass = mass_of(loop.series(), made);
  if (!mass || speed == Speed()) return Force();
  const Length along = double(loop.rear().count()) * loop.series().pitch();  // of chain a turn of the wheel
  return centrifugal_tension(*mass, speed * (along / circumference));
}

/// A corner of the joints' resistance, whose low is fast wear.
struct StretchCorners {
  Corner wheel = Corner::nominal;
  Corner load = Corner::nominal;
  Corner joints = Corner::nominal;
};
inline constexpr std::array<StretchCorners, 5> stretch_corners{{{},
                                                                {Corner::low, Corner::high, Corner::low},
                                                                {Corner::high, Corner::high, Corner::low},
                                                                {Corner::low, Corner::low, Corner::high},
                                                                {Corner::high, Corner::low, Corner::high}}};

/// What the joints resist with at a corner.
[[nodiscard]] inline Pressure resistance_at(const StretchDuty& duty, const ChainMade& made, Corner joints) {
  if (duty.wear_resistance) return duty.wear_resistance->at(joints);
  return seal_life_factor(made.seal).at(joints) * road_wear_resistance.at(joints);
}
[[nodiscard]] inline Source resistance_from(const StretchDuty& duty, const ChainMade& made) {
  return duty.wear_resistance ? sources::stated : road_wear_source_of(made.seal);
}

}  // namespace detail

/// How much longer a chain grows over a distance, 0 to 1,000,000 km, as a share of its length: a band of decades unless
/// the wear resistance was measured. Or a RangeError.
[[nodiscard]] inline Result<Band<double>> try_chain_stretch(const ChainLoop& loop, Links links, const StretchDuty& duty,
                                                            Length distance = 1000.0_km, const ChainMade& made = {}) {
  if (auto error = detail::outside(duty)) return *std::move(error);
  if (auto error = detail::outside(made)) return error->in("chain_made");
  if (auto error = detail::outside_km("distance", distance, 0.0_km, 1e6_km)) return *std::move(error);
  return over_runs(detail::stretch_corners, [&](const detail::StretchCorners& at) {
    const Length circumference = duty.circumference.at(at.wheel);
    return detail::stretch_over(Unwatched(), loop, links, duty.thrust.at(at.load), circumference, distance,
                                detail::centrifugal_at(loop, made, duty.speed, circumference),
                                detail::resistance_at(duty, made, at.joints), detail::resistance_from(duty, made));
  });
}
#if LAYSHAFT_EXCEPTIONS
/// @throws RangeError as `try_chain_stretch` says.
[[nodiscard]] inline Band<double> chain_stretch(const ChainLoop& loop, Links links, const StretchDuty& duty,
                                                Length distance = 1000.0_km, const ChainMade& made = {}) {
  return try_chain_stretch(loop, links, duty, distance, made).value();
}
#endif

}  // namespace layshaft
