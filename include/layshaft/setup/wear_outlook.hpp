// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/setup/appraisal.hpp>
#include <layshaft/wear/chain_stretch.hpp>

#include <optional>
#include <utility>

/// @file
/// How long a set-up's chain may last on its machine, by what is ridden.
namespace layshaft {

/// The speed whose resistance stands for the mean thrust where no ride is stated (assumptions).
inline constexpr Speed outlook_speed = 60.0_kmh;
inline constexpr Speed outlook_speed_of_cycles = 15.0_kmh;
/// The mean thrust where the machine states no road load either: an assumption, a band from memory.
inline constexpr Band<Force> assumed_thrust{Force::from_value(40.0), Force::from_value(120.0),
                                            Force::from_value(300.0)};

/// Where the mean thrust of an outlook comes from.
enum class ThrustFrom {
  stated,     ///< as RideUse::mean_thrust tells of a ride, or as measured
  road_load,  ///< what resists on the machine's road at 60 km/h, of a cycle at 15 km/h
  assumed,    ///< a band from memory
};

[[nodiscard]] constexpr std::string_view to_string(ThrustFrom from) noexcept {
  switch (from) {
    case ThrustFrom::stated: return "stated";
    case ThrustFrom::road_load: return "road load";
    case ThrustFrom::assumed: return "assumed";
  }
  return {};
}

/// What to expect of a chain.
struct WearOutlook {
  Band<Force> thrust;  ///< mean over the distance
  ThrustFrom thrust_from;
  Band<double> stretch_per_1000_km;  ///< of decades, unless a measured growth tightens it
  StretchLimit limit;
  Band<Length> chain_life;  ///< to the limit, from new: a band of decades
  Length pitch_climb;       ///< how far the chain then climbs on the rear teeth

  friend constexpr bool operator==(const WearOutlook&, const WearOutlook&) = default;
};

/// The outlook of a set-up: of a mean thrust where one is stated, above 0 to 100 kN, else of the machine's road, else
/// of an assumed thrust. Wear goes with load times way, so that of a whole ride only the work at the wheel over its
/// distance counts. A growth per 1,000 km that was measured on this very set-up (StretchFit::per_1000_km), -0.1 to 0.1,
/// tightens the band. Or the error of the set-up, or a RangeError; the maker's limit is 0.01 to 10 %.
[[nodiscard]] inline Result<WearOutlook> try_wear_outlook(const Machine& machine, const Setup& setup,
                                                          const std::optional<Band<Force>>& thrust = {},
                                                          double makers_limit = usual_stretch_limit,
                                                          const std::optional<Band<double>>& measured = {}) {
  if (measured)
    if (auto error = detail::outside("measured", *measured, -0.1, 0.1)) return *std::move(error);
  const auto chain = detail::fit_chain_of(machine, setup);
  if (!chain) return chain.error();
  const ChainLoop loop = detail::loop_of(machine, setup);
  WearOutlook outlook{assumed_thrust, ThrustFrom::assumed, {}, {}, {}, {}};
  const Speed speed = machine.kind() == MachineKind::cycle ? outlook_speed_of_cycles : outlook_speed;
  if (thrust) {
    outlook.thrust = *thrust;
    outlook.thrust_from = ThrustFrom::stated;
  } else if (machine.road_load()) {
    const Band<Force> resists = *machine.road_load()->try_resistance_band(speed);
    if (resists.low > Force()) {  // a wind from behind may push
      outlook.thrust = resists;
      outlook.thrust_from = ThrustFrom::road_load;
    }
  }
  const StretchDuty duty{.thrust = outlook.thrust, .circumference = Rollout(setup).circumference(), .speed = speed};
  const auto stretch = try_chain_stretch(loop, chain->links, duty, 1000.0_km, setup.chain_made());
  if (!stretch) return stretch.error();
  outlook.stretch_per_1000_km = measured ? tightened(*stretch, *measured) : *stretch;
  const Teeth largest = setup.front() < setup.rear() ? setup.rear() : setup.front();
  const auto limit = try_stretch_limit(largest, chain->wear_room.nominal, makers_limit);
  if (!limit) return limit.error();
  outlook.limit = *limit;
  // Where a measured growth may be none, the chain lasts at least as long as at the growth that is assumed.
  const Band<double>& grows = outlook.stretch_per_1000_km;
  const auto life = [&](double rate) {
    return outlook.limit.elongation / (rate < stretch->low ? stretch->low : rate) * 1000.0_km;
  };
  if (outlook.limit.elongation > 0.0) outlook.chain_life = {life(grows.high), life(grows.nominal), life(grows.low)};
  outlook.pitch_climb = pitch_climb(Sprocket(loop.series(), setup.rear()).pitch_diameter(),
                                    outlook.limit.elongation > 0.0 ? outlook.limit.elongation : 0.0);
  return outlook;
}
#if LAYSHAFT_EXCEPTIONS
/// @throws Error as `try_wear_outlook` says.
[[nodiscard]] inline WearOutlook wear_outlook(const Machine& machine, const Setup& setup,
                                              const std::optional<Band<Force>>& thrust = {},
                                              double makers_limit = usual_stretch_limit,
                                              const std::optional<Band<double>>& measured = {}) {
  return try_wear_outlook(machine, setup, thrust, makers_limit, measured).value();
}
#endif

}  // namespace layshaft
