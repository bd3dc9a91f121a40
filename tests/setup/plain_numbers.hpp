// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/explain.hpp>
#include <layshaft/layshaft.hpp>

#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>
#include <type_traits>

/// @file
/// Every number that can be explained, by its name, as those ask for it who want no working.
namespace layshaft_test {

using namespace layshaft;

using PlainNumber = Band<Amount>;

[[nodiscard]] inline Amount plain_amount(double number) { return Amount::number(number); }
template <class Quantity>
[[nodiscard]] Amount plain_amount(Quantity quantity) {
  return Amount(quantity);
}
template <class Quantity>
[[nodiscard]] PlainNumber plain(const Band<Quantity>& band) {
  return {plain_amount(band.low), plain_amount(band.nominal), plain_amount(band.high)};
}
template <class Quantity>
[[nodiscard]] PlainNumber plain(Quantity exact) {
  return {plain_amount(exact), plain_amount(exact), plain_amount(exact)};
}
template <class Quantity>
[[nodiscard]] Result<PlainNumber> plain(const Result<Quantity>& result) {
  if (!result) return result.error();
  return plain(*result);
}
[[noreturn]] inline void no_plain_number(std::string_view what) {
  throw std::runtime_error("no plain number is known for \"" + std::string(what) + "\"");
}

[[nodiscard]] inline Result<PlainNumber> plain_number(const Machine& machine, const layshaft::Setup& setup,
                                                      std::string_view what, const SetupQuestion& at) {
  const auto appraisal = try_appraise(machine, setup);
  if (!appraisal) return appraisal.error();
  const ChainFit& chain = appraisal->chain();
  const ToothWear& wear = appraisal->wear();
  const SpeedometerReading& speedometer = appraisal->speedometer();
  const auto range = [&] { return *appraisal->try_speed_range(*at.gear); };
  if (what == "overall ratio") return plain(appraisal->overall_ratios()[static_cast<std::size_t>(*at.gear - 1)]);
  if (what == "road speed") return plain(appraisal->try_speed_at(*at.engine_speed, *at.gear));
  if (what == "lowest speed") return plain(range().lowest);
  if (what == "highest speed") return plain(range().highest);
  if (what == "engine speed") return plain(appraisal->try_engine_speed_at(*at.speed, *at.gear));
  if (what == "circumference") return plain(appraisal->circumference());
  if (what == "engine turns")
    return plain(over(appraisal->circumference(), [&](Length circumference) {
      return engine_turns(appraisal->overall_ratios()[static_cast<std::size_t>(*at.gear - 1)], circumference);
    }));
  if (what == "thrust") return plain(try_thrust(machine, setup, *at.gear, *at.speed));
  if (what == "steepest slope" || what == "top speed") {
    if (!machine.engine()) return try_powertrain(machine, setup).error();
    if (!machine.road_load())
      return Error::value("to explain the " + std::string(what) + ", the machine must state its road load");
    if (what == "top speed") {
      const auto top = try_top_speed(machine, setup, *machine.road_load());
      if (!top) return top.error();
      return plain(top->speed);
    }
    return plain(try_steepest_slope(machine, setup, *machine.road_load(), *at.gear, *at.speed));
  }
  if (what == "links") return plain(chain.links);
  if (what == "centre") return plain(chain.centre);
  if (what == "adjuster forward") return plain(chain.adjuster_forward);
  if (what == "adjuster rearward") return plain(chain.adjuster_rearward);
  if (what == "wear room") return plain(chain.wear_room);
  if (what == "front contacts") return plain(wear.front_contacts_per_km);
  if (what == "rear contacts") return plain(wear.rear_contacts_per_km);
  if (what == "front passes") return plain(double(wear.front_hunting.passes));
  if (what == "rear passes") return plain(double(wear.rear_hunting.passes));
  if (what == "front distinct links") return plain(double(wear.front_hunting.distinct_links));
  if (what == "rear distinct links") return plain(double(wear.rear_hunting.distinct_links));
  if (what == "indicated ratio") return plain(speedometer.indicated_ratio());
  if (what == "correction factor") return plain(speedometer.correction_factor());
  if (what == "odometer drift") return plain(speedometer.odometer_drift());
  if (what == "indicated speed") return plain(speedometer.try_indicated(*at.speed));
  if (what == "highest lawful reading") return plain(highest_lawful_reading(*at.speed));
  no_plain_number(what);
}

/// The number of a comparison; nothing where it is the part of a cause that has none.
[[nodiscard]] inline std::optional<PlainNumber> plain_number(const Comparison& comparison, std::string_view what) {
  if (what == "thrust") return plain(comparison.thrust_change);
  if (what == "speed") return plain(comparison.speed_change);
  if (what == "engine speed") return plain(comparison.engine_speed_change);
  if (what == "indicated ratio") return plain(comparison.indicated_ratio);
  if (what == "chain tension") return plain(comparison.wear.chain_tension_change);
  if (what == "chain stretch") return plain(comparison.wear.chain_stretch_change);
  if (what == "front tooth") return plain(comparison.wear.front_tooth_change);
  if (what == "rear tooth") return plain(comparison.wear.rear_tooth_change);
  if (what == "front life") return plain(comparison.wear.front_life_change);
  if (what == "rear life") return plain(comparison.wear.rear_life_change);
  if (what == "loss") return plain(comparison.wear.loss_change);
  if (what == "front contacts") return plain(comparison.wear.front_contacts_change);
  if (what == "rear contacts") return plain(comparison.wear.rear_contacts_change);
  for (const Change change : {Change::thrust, Change::speed, Change::engine_speed})
    for (const ContributionCause cause :
         {ContributionCause::tyre, ContributionCause::front_sprocket, ContributionCause::rear_sprocket,
          ContributionCause::wear, ContributionCause::drive_loss}) {
      if (std::string(to_string(change)).append(" by ").append(to_string(cause)) != what) continue;
      for (const Contribution& one : comparison.contributions(change))
        if (one.cause == cause) return plain(one.points);
      return std::nullopt;
    }
  no_plain_number(what);
}

[[nodiscard]] inline Result<PlainNumber> plain_number(const ChainLoop& loop, std::string_view what,
                                                      const LoopQuestion& at) {
  if (what == "links") return plain(loop.try_links(*at.centre));
  if (what == "links approximate") return plain(loop.try_links_approximate(*at.centre));
  if (what == "run length") return plain(loop.try_run_length(*at.centre));
  if (what == "wrap front") return plain(loop.try_wrap_front(*at.centre));
  if (what == "wrap rear") return plain(loop.try_wrap_rear(*at.centre));
  if (what == "centre") return plain(loop.try_centre(*at.links));
  if (what == "centre approximate") {
    if (const auto exact = loop.try_centre(*at.links); !exact) return exact.error();
    return plain(centre_approximate(loop.series().pitch(), loop.front(), loop.rear(), *at.links));
  }
  if (what == "smallest centre") return plain(loop.smallest_centre());
  if (what == "teeth in mesh front" || what == "teeth in mesh rear") {
    const auto mesh = try_engagement(loop, *at.centre);
    if (!mesh) return mesh.error();
    return plain(what.ends_with("front") ? mesh->front : mesh->rear);
  }
  no_plain_number(what);
}

[[nodiscard]] inline PlainNumber plain_number(const Sprocket& sprocket, std::string_view what) {
  if (what == "pitch diameter") return plain(sprocket.pitch_diameter());
  if (what == "root diameter") return plain(sprocket.root_diameter());
  if (what == "tip diameter") return plain(sprocket.tip_diameter());
  if (what == "ansi outside diameter") return plain(sprocket.ansi_outside_diameter());
  if (what == "over pins") return plain(sprocket.over_pins());
  if (what == "tooth width") return plain(sprocket.tooth_width());
  if (what == "seating radius") return plain(sprocket.seating_radius());
  if (what == "seating angle") return plain(sprocket.seating_angle());
  if (what == "flank radius") return plain(sprocket.flank_radius());
  if (what == "tooth side relief") return plain(sprocket.tooth_side_relief());
  no_plain_number(what);
}

[[nodiscard]] inline PlainNumber plain_number(const AnsiToothForm& form, std::string_view what) {
  if (what == "seating diameter") return plain(form.seating_diameter());
  if (what == "seating angle") return plain(form.seating_angle());
  if (what == "working angle") return plain(form.working_angle());
  if (what == "working distance") return plain(form.working_distance());
  if (what == "working along") return plain(form.working_along());
  if (what == "working across") return plain(form.working_across());
  if (what == "working radius") return plain(form.working_radius());
  if (what == "working chord") return plain(form.working_chord());
  if (what == "flat") return plain(form.flat());
  if (what == "topping distance") return plain(form.topping_distance());
  if (what == "topping across") return plain(form.topping_across());
  if (what == "topping along") return plain(form.topping_along());
  if (what == "topping radius") return plain(form.topping_radius());
  if (what == "topping offset") return plain(form.topping_offset());
  if (what == "topping height") return plain(form.topping_height());
  if (what == "tip distance") return plain(form.tip_distance());
  no_plain_number(what);
}

[[nodiscard]] inline PlainNumber plain_number(const Interchange& pair, std::string_view what) {
  if (what == "tooth width") return plain(pair.tooth_width());
  if (what == "side play") return plain(pair.side_play());
  no_plain_number(what);
}

[[nodiscard]] inline PlainNumber plain_number(const TyreSize& tyre, std::string_view what) {
  if (what == "overall diameter") return plain(tyre.overall_diameter());
  if (what == "circumference") return plain(rolling_circumference(tyre));
  if (what == "free radius") return plain(free_radius(tyre));
  if (what == "static radius") return plain(static_radius(tyre));
  if (what == "effective radius") return plain(effective_radius(tyre));
  no_plain_number(what);
}

}  // namespace layshaft_test
