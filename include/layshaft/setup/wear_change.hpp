// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/chain/loop.hpp>
#include <layshaft/chain/sprocket.hpp>
#include <layshaft/setup/changes.hpp>
#include <layshaft/setup/contributions.hpp>
#include <layshaft/setup/machine.hpp>
#include <layshaft/setup/rollout.hpp>
#include <layshaft/setup/setup_parts.hpp>
#include <layshaft/wear/chain_stretch.hpp>
#include <layshaft/wear/contacts.hpp>
#include <layshaft/wear/tension.hpp>
#include <layshaft/wear/tooth_weight.hpp>

#include <optional>

/// @file
/// What wears, lasts and loses otherwise on one set-up than on another of the same machine.
namespace layshaft {

/// What the changes of a comparison depend on.
struct ComparedSetups {
  Setup base;
  Setup trial;
  ChainSeries chain;  ///< the machine's, where a set-up names no other
  SpeedometerSensor sensor;
  Links base_links;
  Links trial_links;

  friend bool operator==(const ComparedSetups&, const ComparedSetups&) = default;
};

/// What wears otherwise than before: fractions, trial / base - 1.
struct WearChange {
  Band<double> chain_tension_change;   ///< the chain's pull at equal thrust
  Band<double> front_contacts_change;  ///< meetings of each front tooth per kilometre
  Band<double> rear_contacts_change;   ///< meetings of each rear tooth per kilometre
  /// How fast the chain grows at equal thrust, its centrifugal pull left out; where the kinds of seal differ, with the
  /// factors that are assumed of them.
  Band<double> chain_stretch_change;
  Band<double> front_tooth_change;  ///< how fast each front tooth wears, of its material where both state it
  Band<double> rear_tooth_change;   ///< how fast each rear tooth wears
  Band<double> loss_change;         ///< share of power that the joints lose, at equal thrust
  Band<double> front_life_change;   ///< how far the front sprocket lasts, in kilometres
  Band<double> rear_life_change;    ///< how far the rear sprocket lasts

  friend constexpr bool operator==(const WearChange&, const WearChange&) = default;
};

namespace detail {

// The changes, one run each, for whoever watches.

template <class Watch>
[[nodiscard]] auto rear_pitch_diameter_of(Watch watch, const Setup& setup, ChainSeries machines) {
  const ChainSeries series = setup.chain().value_or(machines);
  const auto pitch = watch.looked_up("pitch", series.pitch(), series.name(), series.source(ChainProperty::pitch));
  return watch.step("rear_pitch_diameter", formula::pitch_diameter{}, pitch, watch.given("rear", setup.rear()));
}
template <class Watch>
[[nodiscard]] auto chain_tension_change(Watch watch, const ComparedSetups& setups, const WheelCorners& at) {
  const auto base_circumference = base_wheel(watch, setups.base, at);
  const auto base_diameter = rear_pitch_diameter_of(watch.on(Scope::base), setups.base, setups.chain);
  const auto trial_circumference = trial_wheel(watch, setups.trial, at);
  const auto trial_diameter = rear_pitch_diameter_of(watch.on(Scope::trial), setups.trial, setups.chain);
  return watch.step(formula::chain_tension_change{}, base_circumference, base_diameter, trial_circumference,
                    trial_diameter);
}
template <class Watch>
[[nodiscard]] auto front_contacts_change(Watch watch, const ComparedSetups& setups, const WheelCorners& at) {
  return with_gearing(watch, setups.base, setups.trial, at, [&](const auto&... gearing) {
    return watch.step("front_contacts_change", formula::contacts_change{},
                      watch.step(formula::turns_ratio{}, gearing...));
  });
}
template <class Watch>
[[nodiscard]] auto rear_contacts_change(Watch watch, const ComparedSetups& setups, const WheelCorners& at) {
  const auto base_circumference = base_wheel(watch, setups.base, at);
  const auto trial_circumference = trial_wheel(watch, setups.trial, at);
  return watch.step("rear_contacts_change", formula::contacts_change{},
                    watch.step("wheel_turns_ratio", formula::tyre_factor{}, base_circumference, trial_circumference));
}
/// Where the factors of the seals stand in one run, which two chains of one kind share.
struct SealCorners {
  Corner base = Corner::nominal;
  Corner trial = Corner::nominal;
};
using SealRuns = FixedList<SealCorners, 5>;
[[nodiscard]] constexpr SealRuns seal_runs(ChainSeal base, ChainSeal trial) noexcept {
  SealRuns runs;
  runs.push_back({});
  if (base == trial) return runs;
  for (const Corner one : {Corner::low, Corner::high})
    for (const Corner other : {Corner::low, Corner::high}) runs.push_back({one, other});
  return runs;
}
[[nodiscard]] constexpr SealRuns seal_runs(const ComparedSetups& setups) noexcept {
  return seal_runs(setups.base.chain_made().seal, setups.trial.chain_made().seal);
}
/// How fast a set-up's chain grows under a thrust of 100 N. The wheel's circumference cancels: a larger wheel pulls
/// harder and turns less.
template <class Watch>
[[nodiscard]] auto stretch_of(Watch watch, const Setup& setup, ChainSeries machines, Links links, Corner seal) {
  const ChainLoop loop(setup.chain().value_or(machines), setup.front(), setup.rear());
  const auto thrust = watch.given("thrust", reference_thrust, reference_source);
  const auto circumference = watch.given("circumference", reference_circumference, reference_source);
  const ChainSeal kind = setup.chain_made().seal;
  return stretch_over(watch, loop, links, thrust, circumference, 1000.0_km, Force(),
                      seal_life_factor(kind).at(seal) * road_wear_resistance.nominal, road_wear_source_of(kind));
}
template <class Watch>
[[nodiscard]] auto chain_stretch_change(Watch watch, const ComparedSetups& setups, const SealCorners& at) {
  const auto base = stretch_of(watch.on(Scope::base), setups.base, setups.chain, setups.base_links, at.base);
  const auto trial = stretch_of(watch.on(Scope::trial), setups.trial, setups.chain, setups.trial_links, at.trial);
  return watch.step("chain_stretch_change", formula::wear_rate_change{}, base, trial);
}
/// What of a sprocket's wear is asked for: how fast each tooth wears, or how far the sprocket lasts by it.
struct ToothWeights {
  const ComparedSetups& setups;
  bool front;

  /// Of what the two are made, where both say it; else of the same, whatever it is.
  [[nodiscard]] std::optional<SprocketMaterial> material_of(const Setup& setup) const {
    const auto made_of = [&](const Setup& of) { return front ? of.front_material() : of.rear_material(); };
    if (!made_of(setups.base) || !made_of(setups.trial)) return std::nullopt;
    return made_of(setup);
  }
  [[nodiscard]] Teeth teeth(const Setup& setup) const { return front ? setup.front() : setup.rear(); }
  [[nodiscard]] ToothWearRuns runs() const {
    return tooth_wear_runs(material_of(setups.base), material_of(setups.trial),
                           teeth(setups.base) == teeth(setups.trial));
  }

  template <class Watch>
  [[nodiscard]] auto wear_of(Watch watch, const Setup& setup, Corner pressure, Corner hardness) const {
    const ChainSeries series = setup.chain().value_or(setups.chain);
    if (front)
      return front_tooth_weight(watch, series, setup.front(), setup.rear(), material_of(setup), pressure, hardness);
    return rear_tooth_weight(watch, series, setup.rear(), material_of(setup), pressure, hardness);
  }
  template <class Watch>
  [[nodiscard]] auto wear_change(Watch watch, const ToothWearCorners& at) const {
    const auto base = wear_of(watch.on(Scope::base), setups.base, at.pressure, at.base_hardness);
    const auto trial = wear_of(watch.on(Scope::trial), setups.trial, at.pressure, at.trial_hardness);
    return watch.step(front ? "front_tooth_change" : "rear_tooth_change", formula::wear_rate_change{}, base, trial);
  }
  template <class Watch>
  [[nodiscard]] auto life_change(Watch watch, const ToothWearCorners& at) const {
    const auto life_of = [&](auto of, const Setup& setup, Corner hardness) {
      const Sprocket sprocket(setup.chain().value_or(setups.chain), teeth(setup));
      return sprocket_life_weight(of, sprocket, wear_of(of, setup, at.pressure, hardness));
    };
    const auto base = life_of(watch.on(Scope::base), setups.base, at.base_hardness);
    const auto trial = life_of(watch.on(Scope::trial), setups.trial, at.trial_hardness);
    return watch.step(front ? "front_life_change" : "rear_life_change", formula::life_change{}, base, trial);
  }
};
/// The loss in the joints at equal thrust goes with their bends: pull and speed cancel against the power.
template <class Watch>
[[nodiscard]] auto loss_change(Watch watch, const ComparedSetups& setups) {
  const auto bends_of = [](auto of, const Setup& setup) {
    const auto front = of.given("front", setup.front());
    const auto rear = of.given("rear", setup.rear());
    return of.step(formula::bends{}, front, rear);
  };
  const auto base = bends_of(watch.on(Scope::base), setups.base);
  const auto trial = bends_of(watch.on(Scope::trial), setups.trial);
  return watch.step("loss_change", formula::wear_rate_change{}, base, trial);
}
}  // namespace detail

/// The change of the chain's pull, of contacts, of wear and loss, over the causes the set-ups do not share. Both rear
/// sprockets' pitch diameters are those of their own chain series.
[[nodiscard]] inline WearChange wear_change(const ComparedSetups& setups) {
  const auto runs = wheel_corners(Rollout(setups.base), Rollout(setups.trial));
  using detail::chain_tension_change, detail::front_contacts_change, detail::rear_contacts_change;
  const detail::ToothWeights front{setups, true}, rear{setups, false};
  const auto tooth_wear = [](const detail::ToothWeights& of) {
    return over_runs(of.runs(), [&](const auto& at) { return of.wear_change(Unwatched(), at); });
  };
  const auto life = [](const detail::ToothWeights& of) {
    return over_runs(of.runs(), [&](const auto& at) { return of.life_change(Unwatched(), at); });
  };
  return {over_runs(runs, [&](const auto& at) { return chain_tension_change(Unwatched(), setups, at); }),
          over_runs(runs, [&](const auto& at) { return front_contacts_change(Unwatched(), setups, at); }),
          over_runs(runs, [&](const auto& at) { return rear_contacts_change(Unwatched(), setups, at); }),
          over_runs(detail::seal_runs(setups),
                    [&](const auto& at) { return detail::chain_stretch_change(Unwatched(), setups, at); }),
          tooth_wear(front),
          tooth_wear(rear),
          Band<double>::exactly(detail::loss_change(Unwatched(), setups)),
          life(front),
          life(rear)};
}

}  // namespace layshaft
