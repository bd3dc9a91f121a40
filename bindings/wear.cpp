// SPDX-License-Identifier: MIT
#include "formula.hpp"
#include "value.hpp"
#include "wants.hpp"

#include <layshaft/setup/wear_outlook.hpp>
#include <layshaft/wear/better_hunting.hpp>
#include <layshaft/wear/stretch_fit.hpp>
#include <layshaft/wear/wear.hpp>

namespace layshaft::python {
namespace detail {
template <>
struct Words<StretchLimitKind> {
  static constexpr StretchLimitKind values[] = {StretchLimitKind::maker, StretchLimitKind::sprocket,
                                                StretchLimitKind::adjuster};
};
template <>
struct Words<ThrustFrom> {
  static constexpr ThrustFrom values[] = {ThrustFrom::stated, ThrustFrom::road_load, ThrustFrom::assumed};
};
}  // namespace detail

namespace {

void register_material(py::module_& module) {
  def(module, "hardness(material)",
      "The Vickers hardness of a sprocket material, 'steel', 'hardened steel', 'aluminium 6000' or 'aluminium 7000': a "
      "Band of Pressure, from memory.",
      [](const Arguments& given) { return material(given.want<SprocketMaterial>("material")).hardness; });
}

void register_stretch(py::module_& module) {
  def(module,
      "chain_stretch(loop, links, thrust, circumference, *, distance='1000 km', speed='0 km/h', wear_resistance=None, "
      "chain_made=None)",
      "How much longer a chain grows over a distance, a Band of the share of its length: decades wide unless the "
      "wear resistance (load times sliding over the volume worn off, a Pressure or a Band) was measured. thrust is the "
      "mean Force at the contact patch or a Band, above 0 to 100 kN; distance is 0 to 1,000,000 km; speed, 0 to 500 "
      "km/h, adds the centrifugal pull where the chain's mass is known. RangeError beyond.",
      [](const Arguments& given) {
        const StretchDuty duty{.thrust = given.want<Band<Force>>("thrust"),
                               .circumference = given.want<Band<Length>>("circumference"),
                               .speed = given.want<Speed>("speed", Speed()),
                               .wear_resistance = given.want<std::optional<Band<Pressure>>>("wear_resistance")};
        return chain_stretch(given.want<ChainLoop>("loop"), given.want<Links>("links"), duty,
                             given.want<Length>("distance", 1000.0_km),
                             given.want<std::optional<ChainMade>>("chain_made").value_or(ChainMade()));
      });
  def(module, "seal_life_factor(seal)",
      "How many times longer the joints of a kind of chain last, 'none', 'O-ring' or 'shaped': a Band, an assumption.",
      [](const Arguments& given) { return seal_life_factor(given.want<ChainSeal>("seal")); });
  def_struct<StretchLimit>(module, "StretchLimit", "How far a chain may grow.",
                           Field{"elongation", &StretchLimit::elongation, "As a share of its length."},
                           Field{"kind", &StretchLimit::kind, "\"maker's limit\", 'largest sprocket' or 'adjuster'."});
  def(module, "stretch_limit(largest, wear_room, makers=0.02)",
      "The least of a maker's limit, that of the largest sprocket (200/N per cent) and the adjuster's room: a "
      "StretchLimit.",
      [](const Arguments& given) {
        return stretch_limit(given.want<Teeth>("largest"), given.want<double>("wear_room"),
                             given.want<double>("makers", usual_stretch_limit));
      });
  const char* signature = "StretchMeasurement(odometer, length, links)";
  Class<StretchMeasurement> one(module, "StretchMeasurement",
                                Signature(signature)
                                    .doc("So many links of a chain under tension, measured over their pins at an "
                                         "odometer reading.",
                                         false)
                                    .c_str());
  def_init(one, signature, [](const Arguments& given) {
    return StretchMeasurement{given.want<Length>("odometer"), given.want<Length>("length"), given.want<int>("links")};
  });
  def_property(one, "odometer", "A Length.", [](const StretchMeasurement& m) { return m.odometer; });
  def_property(one, "length", "Of the links.", [](const StretchMeasurement& m) { return m.length; });
  def_property(one, "links", "How many were measured.", [](const StretchMeasurement& m) { return m.links; });
  def_value(one, [](const StretchMeasurement& m) {
    return Remake{tuple_of(give(m.odometer), give(m.length), give(m.links)), {}};
  });
  def_struct<DistanceLeft>(module, "DistanceLeft", "How much further a part goes.",
                           Field{"low", &DistanceLeft::low, "At the least, a Length."},
                           Field{"nominal", &DistanceLeft::nominal, "Likely."},
                           Field{"high", &DistanceLeft::high, "At the most; None where it may last for ever."});
  def_struct<ReplaceBy>(
      module, "ReplaceBy",
      "When to replace a part, in datetime.dates; None: more than a hundred years ahead, or not to be told.",
      Field{"earliest", &ReplaceBy::earliest, "If all errors are on the bad side: measure again before it."},
      Field{"expected", &ReplaceBy::expected, "Likely."}, Field{"latest", &ReplaceBy::latest, "At the latest."});
  def(module, "replace_by(left, measured, per_day)",
      "The days on which a distance that was left (a DistanceLeft, or a Length or Band whose part below zero counts as "
      "nothing left) on the day measured, a datetime.date, is ridden at so much a day, 1 m to 5,000 km: a ReplaceBy.",
      [](const Arguments& given) {
        const py::object left = given.object("left");
        const auto measured = given.want<std::chrono::sys_days>("measured");
        const auto per_day = given.want<Length>("per_day");
        if (is<DistanceLeft>(left)) return replace_by(as<DistanceLeft>(left), measured, per_day);
        return replace_by(DistanceLeft(given.want<Band<Length>>("left")), measured, per_day);
      });
  auto fit = def_struct<StretchFit>(
      module, "StretchFit", "What a rider's measurements say of how fast the chain grows.",
      Field{"per_1000_km", &StretchFit::per_1000_km, "Growth as a share of the chain's length, a Band."},
      Field{"now", &StretchFit::now, "Growth at the last measurement over the nominal pitch, a Band."},
      Field{"last", &StretchFit::last, "Odometer then."},
      Field{"measurements", &StretchFit::measurements, "How many there were."});
  def(fit, "distance_left(limit)",
      "How much further the chain goes until it has grown so far: a DistanceLeft. Error where it shows no growth.",
      [](const StretchFit& f, const Arguments& given) { return f.distance_left(given.want<double>("limit")); });
  def(module, "fit_stretch(pitch, measurements, error='0.5 mm')",
      "How fast a chain grows by a rider's measurements, at least two: a StretchFit. A line by least squares; from "
      "three on its ends hold with 95 % certainty, and never narrower than the measuring error allows.",
      [](const Arguments& given) {
        return fit_stretch(given.want<Length>("pitch"), given.want<std::vector<StretchMeasurement>>("measurements"),
                           given.want<Length>("error", usual_measuring_error));
      });
  def_struct<WearOutlook>(
      module, "WearOutlook", "What to expect of a chain on its machine.",
      Field{"thrust", &WearOutlook::thrust, "Mean over the distance, a Band of Force."},
      Field{"thrust_from", &WearOutlook::thrust_from, "'stated', 'road load' or 'assumed'."},
      Field{"stretch_per_1000_km", &WearOutlook::stretch_per_1000_km,
            "A Band of decades, unless a measured growth tightens it."},
      Field{"limit", &WearOutlook::limit, "The StretchLimit that governs."},
      Field{"chain_life", &WearOutlook::chain_life, "From new to the limit, a Band of Length."},
      Field{"pitch_climb", &WearOutlook::pitch_climb, "How far the chain then climbs on the rear teeth."});
  def(module, "wear_outlook(machine, setup, thrust=None, makers_limit=0.02, measured=None)",
      "What to expect of a set-up's chain: a WearOutlook. thrust is the mean Force or a Band, RideUse.mean_thrust of a "
      "ride; None: what resists on the machine's road at 60 km/h (of a cycle at 15), else an assumption. measured, a "
      "Band or a number from -0.1 to 0.1, is the growth in 1,000 km as measured on this very set-up: "
      "StretchFit.per_1000_km. It tightens the assumed band to what both allow; where they do not meet, it replaces "
      "it.",
      [](const Arguments& given) {
        return wear_outlook(given.want<Machine>("machine"), given.want<Setup>("setup"),
                            given.want<std::optional<Band<Force>>>("thrust"),
                            given.want<double>("makers_limit", usual_stretch_limit),
                            given.want<std::optional<Band<double>>>("measured"));
      });
  def(module, "tightened(assumed, measured)",
      "A Band of growth, tightened by a measured one: what both allow; where they do not meet, what was measured.",
      [](const Arguments& given) {
        return tightened(given.want<Band<double>>("assumed"), given.want<Band<double>>("measured"));
      });
  def_formula<formula::chain_passes>(module, "Passes of the whole chain over a distance, a number.");
  def_formula<formula::joint_wear>(module, "How much deeper (Length) one pass wears a joint.");
  def_formula<formula::stretch_of_wear>(module, "How much longer the chain is by it, a share.");
  def_formula<formula::wear_rate_change>(module, "A change of what wears, trial / base - 1.");
  def_formula<formula::bearing_pressure>(module, "The Pressure in a joint.");
  def_formula<formula::pitch_climb>(module, "How far (Length) a worn chain climbs on its teeth.");
  def_formula<formula::bends>(module, "Bends of a joint a pass, in turns, a number.");
  def_formula<formula::stretch_limit_of_sprocket>(module, "Growth at which a chain climbs off a sprocket, a share.");
}

}  // namespace

void register_wear(py::module_& module) {
  def_struct<Hunting>(module, "Hunting", "How the teeth of a sprocket meet the links of a chain.",
                      Field{"passes", &Hunting::passes, "Passes of the chain until a tooth meets the same link again."},
                      Field{"distinct_links", &Hunting::distinct_links, "How many different links each tooth meets."},
                      Field{"link_kinds", &Hunting::link_kinds, "1: only inner or only outer links; 2: both."},
                      Field{"evenness", &Hunting::evenness,
                            "The share of the links that a tooth meets, half of that where it meets one kind only."},
                      Field{"inner_only", &Hunting::inner_only, "Share of the teeth that meet only inner links."},
                      Field{"outer_only", &Hunting::outer_only, "Share of the teeth that meet only outer links."});
  def_struct<HuntingPair>(
      module, "HuntingPair", "Two sprockets near others that share their teeth's wear more evenly.",
      Field{"front", &HuntingPair::front, "Teeth."}, Field{"rear", &HuntingPair::rear, "Teeth."},
      Field{"ratio_change", &HuntingPair::ratio_change, "Final ratio over that of the pair asked about, less one."},
      Field{"front_hunting", &HuntingPair::front_hunting, "A Hunting."},
      Field{"rear_hunting", &HuntingPair::rear_hunting, "A Hunting."});
  def(module, "better_hunting(front, rear, links, within=0.03, reach=3)",
      "Pairs within so many teeth whose ratio differs by no more than within and that hunt better on as many links: a "
      "tuple of HuntingPair, the most even first. Whether the chain closes is another question.",
      [](const Arguments& given) {
        return py::object(
            give_list(better_hunting(given.want<Teeth>("front"), given.want<Teeth>("rear"), given.want<Links>("links"),
                                     given.want<double>("within", 0.03), given.want<int>("reach", 3))));
      });
  def_formula<formula::evenness>(module, "How evenly the teeth share the links, a number.");
  def(module, "hunting(teeth, links)",
      "How a sprocket's teeth and a chain's links share their meetings: a Hunting.\n\n"
      ">>> even, odd = ls.hunting(50, 110), ls.hunting(49, 110)\n"
      ">>> even.distinct_links, odd.distinct_links\n"
      "(11, 110)",
      [](const Arguments& given) { return hunting(given.want<Teeth>("teeth"), given.want<Links>("links")); });
  def_formula<formula::passes>(module, "Passes of the whole chain until a tooth meets the same link again.");
  def_formula<formula::distinct_links>(module, "How many different links each tooth meets in that time.");
  def_struct<ToothWear>(
      module, "ToothWear", "How often each tooth meets the chain, and which links.",
      Field{"front_contacts_per_km", &ToothWear::front_contacts_per_km, "Of each front tooth, a Band."},
      Field{"rear_contacts_per_km", &ToothWear::rear_contacts_per_km, "Of each rear tooth, a Band."},
      Field{"front_hunting", &ToothWear::front_hunting, "The front sprocket's Hunting."},
      Field{"rear_hunting", &ToothWear::rear_hunting, "The rear sprocket's Hunting."});
  def(module, "tooth_wear(front, rear, links, circumference)",
      "How often each tooth meets the chain over a kilometre, and which links: a ToothWear.",
      [](const Arguments& given) {
        return tooth_wear(given.want<Teeth>("front"), given.want<Teeth>("rear"), given.want<Links>("links"),
                          given.want<Band<Length>>("circumference"));
      });
  def_formula<formula::front_contacts>(module, "How often each front tooth meets the chain over a distance.");
  def_formula<formula::rear_contacts>(module, "How often each rear tooth meets the chain over a distance.");
  def_formula<formula::contacts_change>(module, "How much oftener a tooth meets the chain, a fraction.");
  def_formula<formula::chain_tension>(module, "The pull (Force) of the chain's tight run that makes a thrust.");
  def_formula<formula::chain_tension_change>(module,
                                             "The change of the chain's pull at equal thrust, as trial / base - 1.");
  register_material(module);
  register_stretch(module);
  def_formula<formula::flank_sliding>(module, "How far (Length) a roller slides on the flank while its joint bends.");
  def_formula<formula::tooth_force>(module, "Force on the tooth that takes most.");
  def_formula<formula::tooth_wear_weight>(module, "What a tooth loses over a distance, a number to compare.");
  def_formula<formula::tooth_thickness>(module, "How thick (Length) a tooth is at the pitch circle, between rollers.");
  def_formula<formula::worn_out_depth>(module, "How deep (Length) a tooth's flank may be worn.");
  def(module, "flank_wear_limit(sprocket)",
      "How deep a Sprocket's flanks may be worn before it is worn out, a Band of Length: 15 to 35 % of the tooth's "
      "thickness at the pitch circle, an assumption.",
      [](const Arguments& given) { return flank_wear_limit(given.want<Sprocket>("sprocket")); });
  def_formula<formula::flank_depth_worn>(module, "How deep (Length) a flank is worn by what its tooth loses.");
  def_formula<formula::sprocket_life_weight>(module, "How far a sprocket lasts, a number to compare.");
  def_formula<formula::life_change>(module, "A change of how far a part lasts, trial / base - 1.");
}

}  // namespace layshaft::python
