// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/explaining.hpp>
#include <layshaft/setup/comparison.hpp>

#include <optional>
#include <string>

/// @file
/// How the numbers of a set-up, and of a comparison, came about. Opt-in.
namespace layshaft {

/// Where a number of a set-up is asked for; each number needs what it depends on.
struct SetupQuestion {
  std::optional<int> gear = {};  ///< counted from 1
  std::optional<AngularSpeed> engine_speed = {};
  std::optional<Speed> speed = {};  ///< road speed, which is also the true speed that a speedometer is asked about
};

namespace detail {

inline constexpr Source curve_end{"the end of the engine's curve, or its limit", Certainty::stated};

struct SetupAsked {
  const Machine& machine;
  const Setup& setup;
  SetupQuestion at;
};

[[nodiscard]] inline std::string title_of(std::string_view what, const SetupAsked& asked) {
  return std::string(what).append(", ").append(asked.machine.name());
}

/// The working of a number that follows from the wheel's circumference: `calculation(watch, circumference)`.
template <class Calculation>
[[nodiscard]] Working explain_on_wheel(std::string_view what, const SetupAsked& asked, Calculation calculation) {
  return explain_over(title_of(what, asked), one_cause, [&](Recorder::Watch watch, Corner at) {
    return calculation(watch, Rollout(asked.setup).at(watch, at, at));
  });
}
/// The same in a gear: `calculation(watch, overall_ratio, circumference)`.
template <class Calculation>
[[nodiscard]] Result<Working> explain_in_gear(std::string_view what, const SetupAsked& asked, Calculation calculation) {
  if (!asked.at.gear) return left_open(what, "gear");
  const Gearbox& gearbox = asked.machine.gearbox();
  const RoadSpeeds speeds(gearbox, asked.setup.front(), asked.setup.rear(), Rollout(asked.setup).circumference());
  if (auto range = speeds.try_speed_range(*asked.at.gear); !range) return range.error();
  const std::string in_gear = std::string(what) + " in gear " + std::to_string(*asked.at.gear);
  return explain_on_wheel(in_gear, asked, [&](Recorder::Watch watch, const auto& circumference) {
    const auto ratio = overall_ratio_in(watch, gearbox, *asked.at.gear, asked.setup.front(), asked.setup.rear());
    return calculation(watch, ratio, circumference);
  });
}
[[nodiscard]] inline Result<Working> explain_speed(std::string_view what, const SetupAsked& asked,
                                                   AngularSpeed engine_speed) {
  if (auto error = outside("engine_speed", engine_speed, 0.0_rpm, 1e6_rpm)) return *error;
  return explain_in_gear(what, asked, [&](auto watch, const auto& ratio, const auto& circumference) {
    return speed_at(watch, engine_speed, ratio, circumference);
  });
}

/// The working of a number of the chain's fit: `calculation(watch, loop, drive, links, corner)`.
template <class Calculation>
[[nodiscard]] Result<Working> explain_fit(std::string_view what, const SetupAsked& asked, Calculation calculation) {
  const auto chain = fit_chain_of(asked.machine, asked.setup);
  if (!chain) return chain.error();
  const ChainLoop loop(asked.setup.chain().value_or(asked.machine.chain()), asked.setup.front(), asked.setup.rear());
  return explain_over(title_of(what, asked), one_cause, [&](Recorder::Watch watch, Corner at) {
    const auto drive = loop.drive(watch);
    const auto links = asked.setup.links() ? watch.given("links", *asked.setup.links())
                                           : chosen_links(watch, loop, drive, asked.machine.adjuster(), chain->links);
    return calculation(watch, loop, drive, links, at);
  });
}
/// The working of how a sprocket and the chain meet: `calculation(watch, links)`.
template <class Formula>
[[nodiscard]] Result<Working> explain_hunting(std::string_view what, const SetupAsked& asked, ValueName name,
                                              Teeth teeth, Formula formula) {
  return explain_fit(what, asked, [&](auto watch, const auto&, const auto&, const auto& links, Corner) {
    return watch.step(formula, watch.given(name, teeth), links);
  });
}

/// The working of a number of the speedometer: `calculation(watch, indicated_ratio)`.
template <class Calculation>
[[nodiscard]] Working explain_reading(std::string_view what, const SetupAsked& asked, Calculation calculation) {
  const SpeedometerSensor sensor = asked.machine.speedometer().sensor();
  const Setup& stock = asked.machine.stock();
  return explain_over(title_of(what, asked), reading_corners(sensor, stock, asked.setup),
                      [&](Recorder::Watch watch, const WheelCorners& at) {
                        return calculation(watch, indicated_ratio(watch, sensor, stock, asked.setup, at));
                      });
}
/// The corners of a reading and of the instrument's own error together.
struct IndicatedCorners : WheelCorners {
  Corner error = Corner::nominal;
};
[[nodiscard]] inline Result<Working> explain_indicated(const SetupAsked& asked) {
  if (!asked.at.speed) return left_open("indicated speed", "speed");
  if (auto error = outside("speed", *asked.at.speed, 0.0_kmh, 10000_kmh)) return *error;
  const Speedometer& instrument = asked.machine.speedometer();
  const Setup& stock = asked.machine.stock();
  FixedList<IndicatedCorners, 35> runs;
  for (const WheelCorners& wheels : reading_corners(instrument.sensor(), stock, asked.setup)) {
    if (runs.empty()) runs.push_back({wheels, Corner::nominal});
    runs.push_back({wheels, Corner::low});
    runs.push_back({wheels, Corner::high});
  }
  return explain_over(title_of("indicated speed", asked), runs, [&](Recorder::Watch watch, const auto& at) {
    const auto ratio = indicated_ratio(watch, instrument.sensor(), stock, asked.setup, at);
    return indicated_at(watch, *asked.at.speed, instrument.reading_error(), at.error, ratio);
  });
}

/// The working of a number of the powertrain: `calculation(watch, train, road, corners)`. The road, whose mass is the
/// body's where that is stated, is only there for what asks for it.
template <class Calculation>
[[nodiscard]] Result<Working> explain_on_road(std::string_view what, std::string_view where, const SetupAsked& asked,
                                              bool with_road, Calculation calculation) {
  const auto train = try_powertrain(asked.machine, asked.setup);
  if (!train) return train.error();
  if (with_road && !asked.machine.road_load())
    return Error::value(std::string("to explain the ").append(what).append(", the machine must state its road load"));
  const RoadLoad unasked = *RoadLoad::make({});
  const RoadLoad& stated = with_road ? *asked.machine.road_load() : unasked;
  const RoadLoad road = laden_road(*train, stated);
  const std::string title = std::string(what).append(where);
  return explain_over(title_of(title, asked), road_corners, [&](Recorder::Watch watch, const RoadCorners& at) {
    return calculation(watch, *train, road, at);
  });
}
/// The same in a gear at a speed: `calculation(watch, train, road, engine_speed, overall_ratio, circumference,
/// corners)`.
template <class Calculation>
[[nodiscard]] Result<Working> explain_pull(std::string_view what, const SetupAsked& asked, bool with_road,
                                           Calculation calculation) {
  if (!asked.at.gear || !asked.at.speed) return left_open(what, "gear and the speed");
  const int gear = *asked.at.gear;
  const Speed speed = *asked.at.speed;
  if (const auto train = try_powertrain(asked.machine, asked.setup); train) {
    if (auto error = train->not_in_gear(gear, speed)) return *std::move(error);
    if (with_road && asked.machine.road_load())  // a slope pulls at a mass
      if (auto error = no_mass(*train, *asked.machine.road_load())) return *std::move(error);
  }
  const std::string where = " in gear " + std::to_string(gear) + " at " + in_words(speed);
  return explain_on_road(
      what, where, asked, with_road,
      [&](Recorder::Watch watch, const Powertrain& train, const RoadLoad& road, const RoadCorners& at) {
        const auto ratio = overall_ratio_in(watch, train.gearbox(), gear, asked.setup.front(), asked.setup.rear());
        const auto rolled = Rollout(asked.setup).at(watch, at.wheel, at.wheel);
        const AngularSpeed held = train.held_engine_speed(speed, gear, at.wheel);
        const bool covered = held == engine_speed(speed, train.overall_ratio(gear), train.circumference().at(at.wheel));
        const auto driven = watch.given("road_speed", speed);
        const auto turning = [&] {
          if (covered) return watch.step("engine_speed", formula::engine_speed{}, driven, ratio, rolled);
          return watch.given("limit_engine_speed", held, curve_end);
        }();
        return calculation(watch, train, road, turning, driven, ratio, rolled, at);
      });
}
/// The top speed: where the thrust balances what resists, or where the engine may turn no faster.
[[nodiscard]] inline Result<Working> explain_top_speed(const SetupAsked& asked) {
  return explain_on_road(
      "top speed", "", asked, true,
      [&](Recorder::Watch watch, const Powertrain& train, const RoadLoad& road, const RoadCorners& at) {
        const Balance top = top_speed_at(train, road, Slope(), at);
        const int gear = top.gear > 0 ? top.gear : 1;
        const auto ratio = overall_ratio_in(watch, train.gearbox(), gear, asked.setup.front(), asked.setup.rear());
        const auto rolled = Rollout(asked.setup).at(watch, at.wheel, at.wheel);
        constexpr const char* rule = "the highest speed that any gear holds; none where no gear pulls";
        const auto no_other = [] { return std::array<Speed, 0>{}; };
        if (top.limit == TopSpeedLimit::no_gear)
          return watch.chosen("top_speed", Speed(), rule, no_other, ratio, rolled);
        const auto turning = [&] {
          if (top.limit == TopSpeedLimit::revs) return watch.given("limit_engine_speed", train.fastest());
          return watch.solved("balance_engine_speed", *highest_balance(train, road, Slope(), gear, at),
                              watch.given("balance", 1.0, sources::definition), [&](const auto& solution) {
                                const auto thrust = train.thrust(watch, gear, solution, ratio, rolled, at.drive);
                                const auto speed =
                                    watch.step("road_speed", formula::road_speed{}, solution, ratio, rolled);
                                const auto resistance = road.resistance(watch, speed, Slope(), at.road());
                                return watch.step(formula::thrust_balance{}, thrust, resistance);
                              });
        }();
        const auto held = watch.step("held_speed", formula::road_speed{}, turning, ratio, rolled);
        return watch.chosen("top_speed", watch.plain(held), rule, no_other, held);
      });
}

inline constexpr Explained<SetupAsked> explained_of_setup[] = {
    {"overall ratio",
     [](const SetupAsked& asked) {
       return explain_in_gear("overall ratio", asked, [](auto, const auto& ratio, const auto&) { return ratio; });
     }},
    {"road speed",
     [](const SetupAsked& asked) -> Result<Working> {
       if (!asked.at.engine_speed) return left_open("road speed", "engine speed");
       return explain_speed("road speed", asked, *asked.at.engine_speed);
     }},
    {"lowest speed",
     [](const SetupAsked& asked) {
       return explain_speed("lowest speed", asked, asked.machine.gearbox().lowest_pull());
     }},
    {"highest speed",
     [](const SetupAsked& asked) {
       return explain_speed("highest speed", asked, asked.machine.gearbox().rev_limit());
     }},
    {"engine speed",
     [](const SetupAsked& asked) -> Result<Working> {
       if (!asked.at.speed) return left_open("engine speed", "speed");
       if (auto error = outside("speed", *asked.at.speed, 0.0_kmh, 10000_kmh)) return *error;
       return explain_in_gear("engine speed", asked, [&](auto watch, const auto& ratio, const auto& circumference) {
         return engine_speed_at(watch, *asked.at.speed, ratio, circumference);
       });
     }},
    {"engine turns",
     [](const SetupAsked& asked) {
       return explain_in_gear("engine turns", asked, [&](auto watch, const auto& ratio, const auto& circumference) {
         return watch.step(formula::engine_turns{}, ratio, circumference);
       });
     }},
    {"thrust",
     [](const SetupAsked& asked) {
       return explain_pull("thrust", asked, false,
                           [&](auto watch, const Powertrain& train, const RoadLoad&, const auto& turning, const auto&,
                               const auto& ratio, const auto& rolled, const RoadCorners& at) {
                             return train.thrust(watch, *asked.at.gear, turning, ratio, rolled, at.drive);
                           });
     }},
    {"steepest slope",
     [](const SetupAsked& asked) {
       return explain_pull("steepest slope", asked, true,
                           [&](auto watch, const Powertrain& train, const RoadLoad& road, const auto& turning,
                               const auto& driven, const auto& ratio, const auto& rolled, const RoadCorners& at) {
                             return steepest_at(watch, train, road, *asked.at.gear, turning, driven, ratio, rolled, at);
                           });
     }},
    {"top speed", explain_top_speed},
    {"circumference",
     [](const SetupAsked& asked) -> Result<Working> {
       return explain_on_wheel("circumference", asked, [](auto, const auto& circumference) { return circumference; });
     }},
    {"links",
     [](const SetupAsked& asked) {
       return explain_fit("links", asked,
                          [](auto, const auto&, const auto&, const auto& links, Corner) { return links; });
     }},
    {"centre",
     [](const SetupAsked& asked) {
       return explain_fit("centre", asked,
                          [&](auto watch, const auto& loop, const auto& drive, const auto& links, Corner at) {
                            return axle_position(watch, loop, drive, links, asked.machine.adjuster().slack(), at);
                          });
     }},
    {"adjuster forward",
     [](const SetupAsked& asked) {
       return explain_fit("adjuster forward", asked,
                          [&](auto watch, const auto& loop, const auto& drive, const auto& links, Corner at) {
                            const Adjuster& adjuster = asked.machine.adjuster();
                            const auto centre = axle_position(watch, loop, drive, links, adjuster.slack(), at);
                            return watch.step(formula::adjuster_forward{}, centre,
                                              watch.given("centre_min", adjuster.centre_min()));
                          });
     }},
    {"adjuster rearward",
     [](const SetupAsked& asked) {
       return explain_fit("adjuster rearward", asked,
                          [&](auto watch, const auto& loop, const auto& drive, const auto& links, Corner at) {
                            const Adjuster& adjuster = asked.machine.adjuster();
                            const auto centre = axle_position(watch, loop, drive, links, adjuster.slack(), at);
                            return watch.step(formula::adjuster_rearward{}, centre,
                                              watch.given("centre_max", adjuster.centre_max()));
                          });
     }},
    {"wear room",
     [](const SetupAsked& asked) {
       return explain_fit("wear room", asked,
                          [&](auto watch, const auto&, const auto& drive, const auto& links, Corner at) {
                            return wear_room_of(watch, drive, links, asked.machine.adjuster(), at);
                          });
     }},
    {"front contacts",
     [](const SetupAsked& asked) -> Result<Working> {
       return explain_on_wheel("front contacts", asked, [&](auto watch, const auto& circumference) {
         return front_contacts_per_km(watch, circumference, asked.setup.front(), asked.setup.rear());
       });
     }},
    {"rear contacts",
     [](const SetupAsked& asked) -> Result<Working> {
       return explain_on_wheel("rear contacts", asked, [](auto watch, const auto& circumference) {
         return rear_contacts_per_km(watch, circumference);
       });
     }},
    {"front passes",
     [](const SetupAsked& asked) {
       return explain_hunting("front passes", asked, "front", asked.setup.front(), formula::passes{});
     }},
    {"rear passes",
     [](const SetupAsked& asked) {
       return explain_hunting("rear passes", asked, "rear", asked.setup.rear(), formula::passes{});
     }},
    {"front distinct links",
     [](const SetupAsked& asked) {
       return explain_hunting("front distinct links", asked, "front", asked.setup.front(), formula::distinct_links{});
     }},
    {"rear distinct links",
     [](const SetupAsked& asked) {
       return explain_hunting("rear distinct links", asked, "rear", asked.setup.rear(), formula::distinct_links{});
     }},
    {"indicated ratio",
     [](const SetupAsked& asked) -> Result<Working> {
       return explain_reading("indicated ratio", asked, [](auto, const auto& ratio) { return ratio; });
     }},
    {"correction factor",
     [](const SetupAsked& asked) -> Result<Working> {
       return explain_reading("correction factor", asked, [](auto watch, const auto& ratio) {
         return watch.step(formula::correction_factor{}, ratio);
       });
     }},
    {"odometer drift",
     [](const SetupAsked& asked) -> Result<Working> {
       return explain_reading("odometer drift", asked, [](auto watch, const auto& ratio) {
         return watch.step(formula::odometer_drift{}, ratio);
       });
     }},
    {"indicated speed", [](const SetupAsked& asked) { return explain_indicated(asked); }},
    {"highest lawful reading",
     [](const SetupAsked& asked) -> Result<Working> {
       if (!asked.at.speed) return left_open("highest lawful reading", "speed");
       if (auto error = outside("speed", *asked.at.speed, 0.0_kmh, 10000_kmh)) return *error;
       return explain_over(title_of("highest lawful reading", asked), one_cause, [&](Recorder::Watch watch, Corner) {
         return watch.step(formula::highest_lawful_reading{}, watch.given("true_speed", *asked.at.speed));
       });
     }},
};

/// The working of a change over the corners of the wheels: `calculation(watch, corners)`.
template <class Calculation>
[[nodiscard]] Working explain_change(std::string_view what, const ComparedSetups& setups, Calculation calculation) {
  return explain_over(std::string(what), wheel_corners(Rollout(setups.base), Rollout(setups.trial)), calculation);
}

[[nodiscard]] inline Working explain_tooth(std::string_view what, const ToothWeights& of) {
  return explain_over(std::string(what), of.runs(),
                      [&](Recorder::Watch watch, const ToothWearCorners& at) { return of.wear_change(watch, at); });
}
[[nodiscard]] inline Working explain_life(std::string_view what, const ToothWeights& of) {
  return explain_over(std::string(what), of.runs(),
                      [&](Recorder::Watch watch, const ToothWearCorners& at) { return of.life_change(watch, at); });
}

/// The working of one cause's part of a change; an error where the cause has none.
template <Change change, ContributionCause cause>
[[nodiscard]] Result<Working> explain_part(const ComparedSetups& setups) {
  const auto runs = change_corners(change, setups.base, setups.trial);
  const auto parts = contributions_at(Unwatched(), change, setups.base, setups.trial, runs[0]);
  for (std::size_t i = 0; i < parts.size(); ++i) {
    if (parts[i].cause != cause) continue;
    const std::string title = "change of " + std::string(to_string(change)) + " by " + std::string(to_string(cause));
    return explain_over(title, runs, [&](Recorder::Watch watch, const ThrustCorners& at) {
      return contributions_at(watch, change, setups.base, setups.trial, at)[i].points;
    });
  }
  return Error::value(std::string("the ")
                          .append(to_string(cause))
                          .append(" has no part in this change of ")
                          .append(to_string(change))
                          .append(cause == ContributionCause::wear ? ": neither set-up states tread_worn"
                                                                   : ": not both set-ups state drive_efficiency"));
}

/// The one run of what has no causes.
inline constexpr std::array exactly_once = {Corner::nominal};

inline constexpr Explained<ComparedSetups> explained_of_comparison[] = {
    // the causes and the rule of thumb stand before the exact change, which is what was asked for
    {"thrust",
     [](const ComparedSetups& setups) -> Result<Working> {
       return explain_over(
           "change of thrust", thrust_corners(setups.base, setups.trial),
           [&](Recorder::Watch watch, const ThrustCorners& at) {
             static_cast<void>(contributions_at(watch, Change::thrust, setups.base, setups.trial, at));
             static_cast<void>(thrust_change_by_thumb(watch, setups.base, setups.trial, at));
             return thrust_change(watch, setups.base, setups.trial, at);
           },
           Told::everything);
     }},
    {"speed",
     [](const ComparedSetups& setups) -> Result<Working> {
       return explain_over(
           "change of speed", wheel_corners(Rollout(setups.base), Rollout(setups.trial)),
           [&](Recorder::Watch watch, const WheelCorners& at) {
             static_cast<void>(contributions_at(watch, Change::speed, setups.base, setups.trial, {at}));
             return speed_change(watch, setups.base, setups.trial, at);
           },
           Told::everything);
     }},
    {"engine speed",
     [](const ComparedSetups& setups) -> Result<Working> {
       return explain_over(
           "change of engine speed", wheel_corners(Rollout(setups.base), Rollout(setups.trial)),
           [&](Recorder::Watch watch, const WheelCorners& at) {
             static_cast<void>(contributions_at(watch, Change::engine_speed, setups.base, setups.trial, {at}));
             return engine_speed_change(watch, setups.base, setups.trial, at);
           },
           Told::everything);
     }},
    {"thrust by tyre", explain_part<Change::thrust, ContributionCause::tyre>},
    {"thrust by front sprocket", explain_part<Change::thrust, ContributionCause::front_sprocket>},
    {"thrust by rear sprocket", explain_part<Change::thrust, ContributionCause::rear_sprocket>},
    {"thrust by wear", explain_part<Change::thrust, ContributionCause::wear>},
    {"thrust by drive loss", explain_part<Change::thrust, ContributionCause::drive_loss>},
    {"speed by tyre", explain_part<Change::speed, ContributionCause::tyre>},
    {"speed by front sprocket", explain_part<Change::speed, ContributionCause::front_sprocket>},
    {"speed by rear sprocket", explain_part<Change::speed, ContributionCause::rear_sprocket>},
    {"speed by wear", explain_part<Change::speed, ContributionCause::wear>},
    {"engine speed by tyre", explain_part<Change::engine_speed, ContributionCause::tyre>},
    {"engine speed by front sprocket", explain_part<Change::engine_speed, ContributionCause::front_sprocket>},
    {"engine speed by rear sprocket", explain_part<Change::engine_speed, ContributionCause::rear_sprocket>},
    {"engine speed by wear", explain_part<Change::engine_speed, ContributionCause::wear>},
    {"indicated ratio",
     [](const ComparedSetups& setups) -> Result<Working> {
       return explain_over("indicated ratio", reading_corners(setups.sensor, setups.base, setups.trial),
                           [&](Recorder::Watch watch, const WheelCorners& at) {
                             return indicated_ratio(watch, setups.sensor, setups.base, setups.trial, at);
                           });
     }},
    {"chain tension",
     [](const ComparedSetups& setups) -> Result<Working> {
       return explain_change("change of the chain's pull", setups, [&](Recorder::Watch watch, const WheelCorners& at) {
         return chain_tension_change(watch, setups, at);
       });
     }},
    {"chain stretch",
     [](const ComparedSetups& setups) -> Result<Working> {
       return explain_over(
           "change of how fast the chain grows", seal_runs(setups),
           [&](Recorder::Watch watch, const SealCorners& at) { return chain_stretch_change(watch, setups, at); });
     }},
    {"front tooth",
     [](const ComparedSetups& setups) -> Result<Working> {
       return explain_tooth("change of how fast a front tooth wears", {setups, true});
     }},
    {"rear tooth",
     [](const ComparedSetups& setups) -> Result<Working> {
       return explain_tooth("change of how fast a rear tooth wears", {setups, false});
     }},
    {"front life",
     [](const ComparedSetups& setups) -> Result<Working> {
       return explain_life("change of how far the front sprocket lasts", {setups, true});
     }},
    {"rear life",
     [](const ComparedSetups& setups) -> Result<Working> {
       return explain_life("change of how far the rear sprocket lasts", {setups, false});
     }},
    {"loss",
     [](const ComparedSetups& setups) -> Result<Working> {
       return explain_over("change of what the joints lose", exactly_once,
                           [&](Recorder::Watch watch, Corner) { return loss_change(watch, setups); });
     }},
    {"front contacts",
     [](const ComparedSetups& setups) -> Result<Working> {
       return explain_change(
           "change of the front teeth's contacts", setups,
           [&](Recorder::Watch watch, const WheelCorners& at) { return front_contacts_change(watch, setups, at); });
     }},
    {"rear contacts",
     [](const ComparedSetups& setups) -> Result<Working> {
       return explain_change(
           "change of the rear teeth's contacts", setups,
           [&](Recorder::Watch watch, const WheelCorners& at) { return rear_contacts_change(watch, setups, at); });
     }},
};

}  // namespace detail

/// How a number of a set-up came about: `try_explain(machine, setup, "road speed", {.gear = 3, .engine_speed =
/// 5000_rpm})`.
/// @return the working; a parse error that lists the names there are; or the error that the number itself would be.
[[nodiscard]] inline Result<Working> try_explain(const Machine& machine, const Setup& setup, std::string_view what,
                                                 const SetupQuestion& at = {}) {
  return detail::explain_by_name(detail::explained_of_setup, what, detail::SetupAsked{machine, setup, at});
}

inline Result<Working> Comparison::try_explain(std::string_view what) const {
  return detail::explain_by_name(detail::explained_of_comparison, what, setups);
}

#if LAYSHAFT_EXCEPTIONS
/// How a number of a set-up came about.
/// @throws ParseError that lists the names there are; or the error that the number itself would be.
[[nodiscard]] inline Working explain(const Machine& machine, const Setup& setup, std::string_view what,
                                     const SetupQuestion& at = {}) {
  return try_explain(machine, setup, what, at).value();
}
inline Working Comparison::explain(std::string_view what) const { return try_explain(what).value(); }
#endif

}  // namespace layshaft
