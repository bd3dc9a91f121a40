// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/choose/study.hpp>
#include <layshaft/setup/on_road.hpp>

#include <algorithm>
#include <array>
#include <iterator>  // size
#include <string>

/// @file
/// What each measure comes to: every number by the formulas that an appraisal or a comparison uses.
namespace layshaft::detail {

inline std::optional<Error> Study::cannot_tell() const {
  const auto needs = [](Measure measure, const char* what) {
    return Error::value(std::string("\"").append(to_string(measure)).append("\" needs ").append(what));
  };
  const bool mass = machine_.road_load() && (machine_.body() || machine_.road_load()->mass());
  for (const Measured& one : measured_) {
    switch (one.what) {
      case Measure::top_speed:
        if (!machine_.engine() || !machine_.road_load()) return needs(one.what, "the machine's engine and road load");
        break;
      case Measure::climb:
        if (!machine_.engine() || !mass) return needs(one.what, "the machine's engine, road load and mass");
        break;
      case Measure::thrust_over_limit:
        if (!machine_.engine() || !machine_.road_load() || !machine_.body() || !states_limit(*machine_.body()))
          return needs(one.what, "the machine's engine, road load, and a body with its centre of mass and wheelbase");
        break;
      case Measure::tight_point_slack:
        if (!machine_.suspension() || !(machine_.adjuster().slack() > Length()))
          return needs(one.what, "the machine's suspension and the adjuster's slack");
        break;
      case Measure::chain_safety:
        if (!machine_.peak_torque()) return needs(one.what, "the engine's greatest torque at the crank");
        break;
      case Measure::load_margin:
        if (!machine_.tyre_asked().axle_load) return needs(one.what, "tyre_asked with an axle_load");
        break;
      case Measure::speed_margin:
        if (!machine_.tyre_asked().top_speed) return needs(one.what, "tyre_asked with a top_speed");
        break;
      case Measure::radius_margin:
        if (!machine_.tyre_asked().radius_clearance) return needs(one.what, "tyre_asked with a radius_clearance");
        break;
      case Measure::width_margin:
        if (!machine_.tyre_asked().width_clearance) return needs(one.what, "tyre_asked with a width_clearance");
        break;
      default: break;
    }
  }
  return std::nullopt;
}

inline void Study::prepare_tyres() {
  tyres_.reserve(space_.tyres.size());
  const bool any_of_tyre = any_of(MeasuredOn::tyre);
  for (const TyreOffer& offer : space_.tyres) {
    StudyTyre& tyre = tyres_.emplace_back(tyre_with(offer, any_of_tyre));
    for (std::size_t i = 0; i < goals_.limits.size(); ++i) {
      if (measure_row(goals_.limits[i].measured.what).on != MeasuredOn::tyre) continue;
      const auto& told = tyre.values[limit_places_[i]];
      tyre.ruled_out = tyre.ruled_out || !told || overstepped(goals_.limits[i], *told) > 0.0;
    }
  }
  fill_columns();
}

inline bool Study::any_of(MeasuredOn on) const noexcept {
  return std::any_of(measured_.begin(), measured_.end(),
                     [&](const Measured& one) { return measure_row(one.what).on == on; });
}

inline StudyTyre Study::tyre(const TyreOffer& offer) const { return tyre_with(offer, any_of(MeasuredOn::tyre)); }

inline StudyTyre Study::tyre_with(const TyreOffer& offer, bool any_of_tyre) const {
  const auto place = [](Corner at) { return static_cast<std::size_t>(at); };
  const Rollout wheel = offer.circumference ? Rollout(*offer.circumference) : Rollout(*offer.tyre);
  StudyTyre tyre{offer, true, wheel.circumference(), {}, {}, false};
  tyre.changed = present_.tyre() && offer.tyre ? !(present_.tyre()->undated() == offer.tyre->undated())
                                               : present_.circumference() != offer.circumference;
  const auto at_corners = [&](const WheelCorners& at) {
    return std::pair(stock_at_[place(at.base_size)][place(at.base_rolling)], wheel.at(at.trial_size, at.trial_rolling));
  };
  tyre.runs.fill(at_corners(WheelCorners()));
  for (const WheelCorners& at : wheel_corners(Rollout(stock_), wheel)) {
    const auto run = at_corners(at);
    if (run.second / run.first < tyre.runs[1].second / tyre.runs[1].first) tyre.runs[1] = run;
    if (run.second / run.first > tyre.runs[2].second / tyre.runs[2].first) tyre.runs[2] = run;
  }
  if (any_of_tyre) tyre.values.resize(measured_.size());
  for (std::size_t i = 0; i < measured_.size(); ++i)
    if (measure_row(measured_[i].what).on == MeasuredOn::tyre) tyre.values[i] = value(measured_[i], tyre);
  return tyre;
}

inline Result<StudyDrive> Study::drive(const SprocketOffer& front, const SprocketOffer& rear, const ChainOffer& chain,
                                       std::optional<Links> links) const {
  const ChainLoop loop(chain.series.value_or(machine_.chain()), front.teeth, rear.teeth);
  if (!links) {
    const auto shortest = try_shortest_links(loop, machine_.adjuster());
    if (!shortest) return shortest.error();
    links = *shortest;
  }
  const auto stand = try_fit_links(loop, *links, machine_.adjuster());
  if (!stand) return stand.error();
  return drive_of(front, rear, chain, *stand);
}

inline DriveFactors Study::factors(const StudyDrive& drive) const {
  return {final_ratio(drive.front.teeth, drive.rear.teeth) / stock_ratio_, stock_rear_diameter_ / rear_diameter(drive),
          cost_of(drive), double(drive.front_changed) + double(drive.rear_changed) + double(drive.chain_changed)};
}

inline TyreFactors Study::factors(const StudyTyre& tyre) noexcept {
  const auto& [likely, least, greatest] = tyre.runs;
  const auto under = [](const auto& run) { return layshaft::tyre_factor(run.first, run.second); };
  const auto over = [](const auto& run) { return double(run.second / run.first); };
  const Band<Length>& rolls = tyre.circumference;
  return {{under(greatest), under(likely), under(least)},
          {over(least), over(likely), over(greatest)},
          {rolls.low.value(), rolls.nominal.value(), rolls.high.value()}};
}

inline void Study::fill_columns() {
  turning_.resize(measured_.size());
  for (const StudyTyre& tyre : tyres_) {
    const TyreFactors of_tyre = factors(tyre);
    stock_over_tyre_.push_back(of_tyre.stock_over_tyre);
    tyre_over_stock_.push_back(of_tyre.tyre_over_stock);
    circumference_.push_back(of_tyre.circumference);
    for (std::size_t i = 0; i < measured_.size(); ++i)
      if (measured_[i].what == Measure::engine_speed) turning_[i].push_back(of_tyre.turning(*measured_[i].speed));
  }
}

inline StudyDrive Study::drive_of(const SprocketOffer& front, const SprocketOffer& rear, const ChainOffer& chain,
                                  const ChainFit& fit) const {
  // A material that nobody states counts as that of the part it is held against.
  const auto other = [](const SprocketOffer& offer, Teeth teeth, std::optional<SprocketMaterial> material) {
    return offer.teeth != teeth || (offer.material && material && *offer.material != *material);
  };
  SetupParts parts = present_.parts();
  parts.front = front.teeth;
  parts.rear = rear.teeth;
  parts.front_material = front.material;
  parts.rear_material = rear.material;
  parts.chain = chain.series;
  parts.chain_made = chain.made;
  parts.links = fit.links;
  parts.drive_efficiency.reset();  // of other sprockets nobody measured it
  const auto series = [&](const std::optional<ChainSeries>& stated) { return stated.value_or(machine_.chain()); };
  StudyDrive drive{front, rear, chain, fit, *Setup::make(parts), false, false, false, {}};
  drive.front_changed = other(front, present_.front(), present_.front_material());
  drive.rear_changed = other(rear, present_.rear(), present_.rear_material());
  drive.chain_changed = series(chain.series) != series(present_.chain()) || chain.made != present_.chain_made() ||
                        present_links_ != fit.links;
  for (int gear = 1; gear <= static_cast<int>(machine_.gearbox().gears().size()); ++gear)
    drive.overall_ratios.push_back(overall_ratio_in(Unwatched(), machine_.gearbox(), gear, front.teeth, rear.teeth));
  return drive;
}

inline std::optional<Band<double>> Study::value(const Measured& measured, const StudyDrive& drive) const {
  const auto exactly = [](double value) { return Band<double>::exactly(value); };
  const auto si = [](const auto& band) {
    return Band<double>{band.low.value(), band.nominal.value(), band.high.value()};
  };
  const auto chain_drive = [&] { return layshaft::detail::drive_of(machine_, drive.setup, drive.fit); };
  switch (measured.what) {
    case Measure::axle_room: {
      const auto room = [&](Corner at) {
        return std::min(drive.fit.adjuster_forward.at(at), drive.fit.adjuster_rearward.at(at));
      };
      return si(over_runs(one_cause, room));
    }
    case Measure::wear_room: return drive.fit.wear_room;
    case Measure::front_teeth: return exactly(drive.front.teeth.count());
    case Measure::rear_teeth: return exactly(drive.rear.teeth.count());
    case Measure::links: return exactly(drive.fit.links.count());
    case Measure::front_changed: return exactly(drive.front_changed ? 1.0 : 0.0);
    case Measure::rear_changed: return exactly(drive.rear_changed ? 1.0 : 0.0);
    case Measure::chain_changed: return exactly(drive.chain_changed ? 1.0 : 0.0);
    case Measure::evenness:
      return exactly(std::min(hunting(drive.front.teeth, drive.fit.links).evenness,
                              hunting(drive.rear.teeth, drive.fit.links).evenness));
    case Measure::chain_mass: {
      const ChainSeries series = drive.chain.series.value_or(machine_.chain());
      const auto mass = mass_of(series, drive.chain.made);
      if (!mass) return std::nullopt;
      return exactly((*mass * series.pitch() * double(drive.fit.links.count())).value());
    }
    case Measure::chain_stretch_change: {
      const ComparedSetups setups = compared(drive);
      return over_runs(seal_runs(setups),
                       [&](const auto& at) { return layshaft::detail::chain_stretch_change(Unwatched(), setups, at); });
    }
    case Measure::front_life_change:
    case Measure::rear_life_change: {
      const ComparedSetups setups = compared(drive);
      const ToothWeights teeth{setups, measured.what == Measure::front_life_change};
      return over_runs(teeth.runs(), [&](const auto& at) { return teeth.life_change(Unwatched(), at); });
    }
    case Measure::loss_change: return exactly(layshaft::detail::loss_change(Unwatched(), compared(drive)));
    case Measure::wrap:
    case Measure::teeth_in_mesh: {
      const ChainLoop loop = loop_of(machine_, drive.setup);
      const auto mesh = try_engagement(loop, std::max(drive.fit.centre.nominal, loop.smallest_centre()));
      if (!mesh) return std::nullopt;
      return exactly(measured.what == Measure::wrap ? mesh->wrap_front.value() : mesh->front);
    }
    case Measure::tight_point_slack: {
      const auto told = chain_drive();
      if (!told || !told->slack) return std::nullopt;
      return si(told->slack->least_slack);
    }
    case Measure::chain_safety: {
      const auto told = chain_drive();
      if (!told || !told->loads || !told->loads->safety) return std::nullopt;
      return exactly(*told->loads->safety);
    }
    default: return std::nullopt;
  }
}

inline std::optional<Band<double>> Study::value(const Measured& measured, const StudyTyre& tyre) const {
  const auto margin = [&](FitnessCode what) -> std::optional<Band<double>> {
    if (!tyre.offer.tyre) return std::nullopt;
    const auto fitness = try_tyre_fitness(*tyre.offer.tyre, machine_.tyre_asked(), stock_.tyre());
    if (!fitness) return std::nullopt;
    for (const FitnessCheck& check : fitness->checks)
      if (check.what == what && check.verdict != FitnessVerdict::unknown)
        return Band<double>::exactly(check.margin.value);
    return std::nullopt;
  };
  switch (measured.what) {
    case Measure::load_margin: return margin(FitnessCode::load);
    case Measure::speed_margin: return margin(FitnessCode::speed);
    case Measure::radius_margin: return margin(FitnessCode::radius);
    case Measure::width_margin: return margin(FitnessCode::width);
    case Measure::circumference_change:
      return over_runs(tyre.runs, [](const auto& at) { return layshaft::circumference_change(at.first, at.second); });
    case Measure::rear_contacts_change:
      return over_runs(tyre.runs,
                       [](const auto& at) { return contacts_change(layshaft::tyre_factor(at.first, at.second)); });
    case Measure::tyre_changed: return Band<double>::exactly(tyre.changed ? 1.0 : 0.0);
    default: return std::nullopt;
  }
}

inline void Study::set_reading_rules() {
  const auto& error = machine_.speedometer().reading_error();
  for (const Speed& speed : speedometer_speeds) {
    const Band<Speed> shown = indicated_band(speed, error, Band<double>::exactly(1.0));
    reading_rules_.push_back(
        {over(shown, [&](Speed reading) { return double(reading / speed); }), highest_lawful_reading(speed) / speed});
  }
  // A stated error is the same share at all speeds, and the rule allows a smaller one the faster it goes: the fastest
  // tells for all.
  if (error) reading_rules_.erase(reading_rules_.begin(), reading_rules_.end() - 1);
}

inline Band<double> Study::speedometer_beyond_rule(const StudyDrive& drive, const StudyTyre& tyre) const {
  const Band<double> ratio = indicated_ratio_of(drive, tyre);
  Band<double> worst = Band<double>::exactly(0.0);
  for (const ReadingRule& rule : reading_rules_) {
    const auto told =
        over_runs(one_cause, [&](Corner at) { return outside_rule(rule.stock.at(at) * ratio.at(at), rule); });
    worst.low = std::max(worst.low, told.low);
    worst.nominal = std::max(worst.nominal, told.nominal);
    worst.high = std::max(worst.high, told.high);
  }
  return worst;
}

inline std::optional<Band<double>> Study::on_road(const Measured& measured, const StudyDrive& drive,
                                                  const StudyTyre& tyre) const {
  const auto train = try_powertrain(machine_, setup_of(drive, tyre));
  if (!train) return std::nullopt;
  const RoadLoad& road = *machine_.road_load();
  if (measured.what == Measure::top_speed) {
    const auto top = try_top_speed(*train, road);
    if (!top) return std::nullopt;
    return Band<double>{top->speed.low.value(), top->speed.nominal.value(), top->speed.high.value()};
  }
  const int gear = measured.what == Measure::climb ? measured.gear.value_or(1) : 1;
  const auto climb = try_best_climb(*train, road, gear);
  if (!climb) return std::nullopt;
  if (measured.what == Measure::climb)
    return Band<double>{climb->slope.low.value(), climb->slope.nominal.value(), climb->slope.high.value()};
  const auto limit = try_thrust_limit(*machine_.body(), surface(SurfaceKind::asphalt));
  if (!limit) return std::nullopt;
  return over(limit->thrust, [&](Force most) { return double(climb->thrust / most); });
}

inline std::optional<Band<double>> Study::value(const Measured& measured, const StudyDrive& drive,
                                                const StudyTyre& tyre) const {
  switch (measured.what) {
    case Measure::thrust_change: return over_gearing<formula::thrust_change>(drive, tyre);
    case Measure::speed_change: return over_gearing<formula::speed_change>(drive, tyre);
    case Measure::engine_speed: {
      const double ratio = ratio_of(measured, drive);
      return over(tyre.circumference, [&](Length circumference) {
        return engine_speed_at(Unwatched(), *measured.speed, ratio, circumference).value();
      });
    }
    case Measure::walking_pace: {
      const auto pace =
          slipping_speed_at(lowest_pull_, drive.overall_ratios[0], tyre.circumference, surface(SurfaceKind::asphalt));
      return Band<double>{pace.low.value(), pace.nominal.value(), pace.high.value()};
    }
    case Measure::chain_pull_change: {
      const Length diameter = rear_diameter(drive);
      return over_runs(tyre.runs, [&](const auto& at) {
        return layshaft::chain_tension_change(at.first, stock_rear_diameter_, at.second, diameter);
      });
    }
    case Measure::speedometer_beyond_rule: return speedometer_beyond_rule(drive, tyre);
    case Measure::cost: {
      const auto of_drive = cost_of(drive), of_tyre = cost_of(tyre);
      if (!of_drive || !of_tyre) return std::nullopt;
      return plus(*of_drive, *of_tyre);
    }
    case Measure::parts_changed:
      return Band<double>::exactly((drive.front_changed ? 1.0 : 0.0) + (drive.rear_changed ? 1.0 : 0.0) +
                                   (drive.chain_changed ? 1.0 : 0.0) + (tyre.changed ? 1.0 : 0.0));
    case Measure::top_speed:
    case Measure::climb:
    case Measure::thrust_over_limit: return on_road(measured, drive, tyre);
    default: return std::nullopt;
  }
}

}  // namespace layshaft::detail
