// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/chain/fit.hpp>
#include <layshaft/core/caution.hpp>
#include <layshaft/gearing/road_speeds.hpp>
#include <layshaft/instrument/speedometer_reading.hpp>
#include <layshaft/setup/changes.hpp>
#include <layshaft/setup/machine.hpp>
#include <layshaft/setup/on_road.hpp>
#include <layshaft/tyre/load_index.hpp>

#include <algorithm>

/// @file
/// What a rider must be told before riding on a set-up. Parts are held against what the maker fitted; what is felt on
/// the road is held against the base, the set-up ridden before.
namespace layshaft::detail {

/// Elongation at which a chain is replaced: 2 % by a chain maker's catalogue.
inline constexpr double replaced_at_elongation = 0.02;

/// Changes below this share are none: equal parts marked in two ways (120/60 and 80/90 are both 72 mm high), computed.
inline constexpr double change_tolerance = 1e-12;

/// Of the stock set-up's safety, below which a chain counts as weaker: a tenth less is within what torque and strength
/// are known to.
inline constexpr double weaker_than_stock = 0.9;
/// Teeth in mesh by which a front sprocket holds the chain worse than the stock one without being told.
inline constexpr double well_under_stock = 1.0;

inline void drive_cautions(Cautions& cautions, const Machine& machine, const ChainDrive& drive) {
  if (drive.slack && drive.slack->too_tight())
    cautions.push_back({CautionCode::chain_tight_in_travel, {machine.adjuster().slack(), drive.slack->stretch}});
  const double least_in_mesh = std::max(fewest_teeth_in_mesh, drive.stock_teeth_in_mesh - well_under_stock);
  if (drive.engagement.front < least_in_mesh)
    cautions.push_back(
        {CautionCode::few_teeth_in_mesh, {Amount::number(drive.engagement.front), Amount::number(least_in_mesh)}});
  if (drive.loads && drive.loads->safety && drive.stock_safety &&
      *drive.loads->safety < weaker_than_stock * *drive.stock_safety)
    cautions.push_back({CautionCode::chain_weaker_than_stock,
                        {Amount::number(*drive.loads->safety), Amount::number(*drive.stock_safety)}});
}

inline void chain_cautions(Cautions& cautions, const Machine& machine, const Setup& base, const Setup& trial,
                           const ChainFit& chain, const ChainDrive& drive) {
  const Length none = 0.0_mm;
  const Setup& stock = machine.stock();
  if (chain.adjuster_forward.low < -end_tolerance)  // what counts as fitting raises no caution
    cautions.push_back({CautionCode::chain_ahead_of_adjuster, {-chain.adjuster_forward.low}});
  if (chain.adjuster_rearward.low < -end_tolerance)
    cautions.push_back({CautionCode::chain_behind_adjuster, {-chain.adjuster_rearward.low}});
  if (chain.fits && chain.wear_room.low < replaced_at_elongation)
    cautions.push_back({CautionCode::chain_wear_room_small,
                        {Amount::fraction(chain.wear_room.low), Amount::fraction(replaced_at_elongation)}});
  if (chain.offset_link && machine.kind() == MachineKind::motorcycle)
    cautions.push_back({CautionCode::offset_link, {chain.links}});
  if (!(machine.adjuster().slack() > none))
    cautions.push_back({CautionCode::chain_slack_unstated, {}});
  else if (machine.kind() == MachineKind::motorcycle)
    cautions.push_back({CautionCode::check_slack_through_travel, {machine.adjuster().slack()}});
  drive_cautions(cautions, machine, drive);
  if (trial.front() < stock.front() && machine.kind() == MachineKind::motorcycle)
    cautions.push_back({CautionCode::front_sprocket_smaller, {trial.front(), stock.front()}});
  if (trial.rear() > stock.rear())
    cautions.push_back({CautionCode::rear_sprocket_larger, {trial.rear(), stock.rear()}});
  const ChainSeries series = trial.chain().value_or(machine.chain());
  if (!(series == machine.chain()))
    cautions.push_back({CautionCode::chain_series_differs, {series.pitch(), machine.chain().pitch()}});
  const bool other_sprockets = trial.front() != base.front() || trial.rear() != base.rear();
  if (other_sprockets) cautions.push_back({CautionCode::new_sprockets_worn_chain, {}});
  if (other_sprockets || trial.chain() != base.chain() || trial.links() != base.links())
    cautions.push_back({CautionCode::chain_joint_as_maker_says, {chain.links}});
}

/// Whether a tyre lacks a rating that the stock tyre states.
[[nodiscard]] inline bool rating_unstated(const TyreSize& tyre, const TyreSize& stock) {
  return stock.load_index() && !tyre.load_index();  // a service description has a speed symbol as well
}
[[nodiscard]] inline Mass capacity(const TyreSize& tyre) { return *try_load_capacity(*tyre.load_index()); }
[[nodiscard]] inline bool load_below(const TyreSize& tyre, const TyreSize& stock) {
  return stock.load_index() && tyre.load_index() && capacity(tyre) < capacity(stock);
}
[[nodiscard]] inline bool speed_below(const TyreSize& tyre, const TyreSize& stock) {
  return stock.speed_symbol() && tyre.speed_symbol() && tyre.speed_symbol()->speed < stock.speed_symbol()->speed;
}

inline void front_tyre_cautions(Cautions& cautions, const Machine& machine, const Setup& trial) {
  const auto& stock = machine.stock().front_tyre();
  const auto& tyre = trial.front_tyre();
  if (!stock || !tyre || tyre->undated() == stock->undated()) return;
  if (rating_unstated(*tyre, *stock) || load_below(*tyre, *stock) || speed_below(*tyre, *stock) ||
      tyre->rim_diameter() != stock->rim_diameter())
    cautions.push_back({CautionCode::front_tyre_below_stock, {}});
}

inline void tread_caution(Cautions& cautions, const Setup& trial) {
  if (!trial.tread() || !trial.tread()->parts().least) return;
  const Length depth = trial.tread()->depth();
  const Length least = *trial.tread()->parts().least;
  if (depth < least) cautions.push_back({CautionCode::tread_below_least, {depth, least}});
}

inline void tyre_cautions(Cautions& cautions, const Machine& machine, const Setup& trial) {
  const Setup& stock = machine.stock();
  if (!stock.tyre()) return;
  const TyreSize& stock_tyre = *stock.tyre();
  if (!trial.tyre()) {  // only a rollout: whatever turns there, nobody said what it carries
    if (stock_tyre.load_index()) cautions.push_back({CautionCode::tyre_service_unstated, {}});
    return;
  }
  const TyreSize& tyre = *trial.tyre();
  if (tyre.undated() == stock_tyre.undated()) return;  // the same tyre, made in another week

  if (rating_unstated(tyre, stock_tyre)) cautions.push_back({CautionCode::tyre_service_unstated, {}});
  if (load_below(tyre, stock_tyre))
    cautions.push_back({CautionCode::tyre_load_below_stock, {capacity(tyre), capacity(stock_tyre)}});
  if (speed_below(tyre, stock_tyre))
    cautions.push_back(
        {CautionCode::tyre_speed_below_stock, {tyre.speed_symbol()->speed, stock_tyre.speed_symbol()->speed}});
  if (tyre.construction() != stock_tyre.construction())
    cautions.push_back({CautionCode::tyre_construction_differs, {}});
  if (tyre.rim_diameter() != stock_tyre.rim_diameter())
    cautions.push_back({CautionCode::tyre_rim_differs, {tyre.rim_diameter(), stock_tyre.rim_diameter()}});

  const Length none = 0.0_mm;
  const Length higher = (tyre.overall_diameter().high - stock_tyre.overall_diameter().nominal) / 2.0;
  const Length wider = tyre.section_width() - stock_tyre.section_width();
  if (higher > none || wider > none)
    cautions.push_back({CautionCode::tyre_clearance, {std::max(higher, none), std::max(wider, none)}});
  const Length raised = (tyre.overall_diameter().nominal - stock_tyre.overall_diameter().nominal) / 2.0;
  const Length same = change_tolerance * stock_tyre.overall_diameter().nominal;
  if (raised < -same || raised > same) cautions.push_back({CautionCode::ride_height_changed, {raised}});
}

/// Holds the tyre against what the machine asks of it, as far as that was stated.
inline void asked_cautions(Cautions& cautions, const Machine& machine, const Setup& trial) {
  if (!trial.tyre() || machine.tyre_asked() == TyreAsked()) return;
  const auto fitness = try_tyre_fitness(*trial.tyre(), machine.tyre_asked(), machine.stock().tyre());
  bool unknown = false;
  for (const FitnessCheck& check : fitness->checks) {
    unknown = unknown || check.verdict == FitnessVerdict::unknown;
    if (check.verdict != FitnessVerdict::short_of) continue;
    switch (check.what) {
      case FitnessCode::load: cautions.push_back({CautionCode::tyre_load_below_asked, {check.has, check.asked}}); break;
      case FitnessCode::speed:
        cautions.push_back({CautionCode::tyre_speed_below_asked, {check.has, check.asked}});
        break;
      case FitnessCode::radius: cautions.push_back({CautionCode::tyre_needs_room, {check.has, check.asked}}); break;
      case FitnessCode::width: cautions.push_back({CautionCode::tyre_needs_width, {check.has, check.asked}}); break;
      case FitnessCode::tread: break;  // no machine asks for a depth of tread
    }
  }
  if (unknown) cautions.push_back({CautionCode::tyre_fitness_unknown, {}});
}

inline void road_cautions(Cautions& cautions, const Setup& stock, const Setup& base, const Setup& trial) {
  const double rear =
      Rollout(trial).at(Corner::nominal, Corner::nominal) / Rollout(stock).at(Corner::nominal, Corner::nominal);
  double front = 1.0;
  if (trial.front_tyre() && stock.front_tyre())
    front = Rollout(*trial.front_tyre()).at(Corner::nominal, Corner::nominal) /
            Rollout(*stock.front_tyre()).at(Corner::nominal, Corner::nominal);
  const double apart = rear / front - 1.0;
  if (apart < -change_tolerance || apart > change_tolerance)
    cautions.push_back({CautionCode::wheel_speed_ratio_changed, {Amount::fraction(apart)}});
  const double revs = engine_speed_change(Unwatched(), base, trial, WheelCorners());
  if (revs > change_tolerance) cautions.push_back({CautionCode::over_rev_on_downshift, {Amount::fraction(revs)}});
  const double thrust = thrust_change(Unwatched(), base, trial, ThrustCorners());
  if (thrust > change_tolerance)
    cautions.push_back({CautionCode::front_wheel_lifts_sooner, {Amount::fraction(thrust)}});
}

inline void speedometer_cautions(Cautions& cautions, const Speedometer& stock, const RoadSpeeds& speeds,
                                 const SpeedometerReading& reading) {
  const Speed fastest = speeds.try_speed_range(static_cast<int>(speeds.overall_ratios().size()))->highest.nominal;
  const Band<Speed> shown = *reading.try_indicated(fastest);
  if (shown.low < fastest * (1.0 - change_tolerance))
    cautions.push_back({CautionCode::speedometer_may_read_low, {Amount::fraction(1.0 - shown.low / fastest)}});
  if (shown.high > highest_lawful_reading(fastest) * (1.0 + change_tolerance) &&
      reading.indicated_ratio().high > 1.0 + change_tolerance)
    cautions.push_back(
        {CautionCode::speedometer_may_read_high, {Amount::fraction(reading.indicated_ratio().high - 1.0)}});
  if (!stock.reading_error()) cautions.push_back({CautionCode::speedometer_error_unknown, {}});
}

inline void thrust_cautions(Cautions& cautions, const OnRoad& road) {
  const Force most = road.gears[0].climb.thrust;
  if (road.limit && most > road.limit->thrust.nominal) {
    const bool wheelie = road.limit->kind == ThrustLimitKind::wheelie;
    cautions.push_back({wheelie ? CautionCode::thrust_lifts_front_wheel : CautionCode::thrust_spins_rear_wheel,
                        {most, road.limit->thrust.nominal}});
  }
  if (road.road_load == RoadLoadKind::mass_table)
    cautions.push_back({CautionCode::road_load_by_mass_alone, {mass_table_speed}});
}

/// Every caution that bears on a set-up, in the order they are told.
[[nodiscard]] inline Cautions find_cautions(const Machine& machine, const Setup& base, const Setup& trial,
                                            const ChainFit& chain, const ChainDrive& drive, const RoadSpeeds& speeds,
                                            const SpeedometerReading& speedometer, const std::optional<OnRoad>& road) {
  Cautions cautions;
  chain_cautions(cautions, machine, base, trial, chain, drive);
  tyre_cautions(cautions, machine, trial);
  asked_cautions(cautions, machine, trial);
  tread_caution(cautions, trial);
  front_tyre_cautions(cautions, machine, trial);
  const Setup& stock = machine.stock();
  if (machine.kind() == MachineKind::motorcycle) {
    road_cautions(cautions, stock, base, trial);
    if (road) thrust_cautions(cautions, *road);
    if (!(trial == stock)) {
      speedometer_cautions(cautions, machine.speedometer(), speeds, speedometer);
      cautions.push_back({CautionCode::approval_and_insurance, {}});
    }
  }
  cautions.push_back({CautionCode::makers_manual_first, {}});
  return cautions;
}

}  // namespace layshaft::detail
