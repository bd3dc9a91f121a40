// SPDX-License-Identifier: MIT
#include "formula.hpp"
#include "road.hpp"
#include "value.hpp"
#include "wants.hpp"

#include <layshaft/wear/wear.hpp>

namespace layshaft::python {
namespace detail {
template <>
struct Words<PartKind> {
  static constexpr auto& values = part_kinds;
};
template <>
struct Words<PlanKind> {
  static constexpr auto& values = plan_kinds;
};
template <>
struct Words<CheaperPart> {
  static constexpr auto& values = cheaper_parts;
};
template <>
struct Words<Certainty> {
  static constexpr Certainty values[] = {Certainty::published,       Certainty::secondary,   Certainty::derived,
                                         Certainty::common_practice, Certainty::from_memory, Certainty::stated};
};
}  // namespace detail

namespace {

void register_running_cost(py::module_& module) {
  const char* signature = "CostPart(*, price, life, labour=0.0, kind='other')";
  Class<CostPart> type(
      module, "CostPart",
      Signature(signature)
          .doc("A part that wears, and what it takes to put a new one on. price and labour (0 to 1e12, numbers or "
               "Bands) "
               "are in any one currency; life (a Length or a Band of it, 100 to 1,000,000 km) is until it is worn out; "
               "kind is 'chain', 'front sprocket', 'rear sprocket', 'tyre' or 'other'. RangeError outside a range.",
               false)
          .c_str());
  def_init(type, signature, [](const Arguments& given) {
    const CostPart part{.kind = given.want<PartKind>("kind", PartKind::other),
                        .price = given.want<Band<double>>("price"),
                        .labour = given.want<Band<double>>("labour", Band<double>()),
                        .life = given.want<Band<Length>>("life")};
    if (auto error = layshaft::detail::outside(part)) raise(*error);
    return part;
  });
  def_property(type, "price", "Of the part, a Band.", [](const CostPart& p) { return p.price; });
  def_property(type, "life", "Distance until it is worn out, a Band of Length.",
               [](const CostPart& p) { return p.life; });
  def_property(type, "labour", "Of fitting it, a Band.", [](const CostPart& p) { return p.labour; });
  def_property(type, "kind", "What it is: 'chain', 'front sprocket', 'rear sprocket', 'tyre' or 'other'.",
               [](const CostPart& p) { return p.kind; });
  def_value(type, [](const CostPart& p) {
    Remake remake;
    remake.named["price"] = give(p.price);
    remake.named["life"] = give(p.life);
    remake.named["labour"] = give(p.labour);
    remake.named["kind"] = give(p.kind);
    return remake;
  });
  def_struct<PartCost>(module, "PartCost", "Cost of one part on the road.",
                       Field{"kind", &PartCost::kind, "The part's kind."},
                       Field{"per_1000_km", &PartCost::per_1000_km,
                             "Per 1,000 km, a Band; low: the lowest price over the longest life."});
  def_struct<RunningCost>(
      module, "RunningCost", "Cost of several parts on the road.",
      Field{"parts", &RunningCost::parts, "A tuple of PartCost, in the order asked for."},
      Field{"per_1000_km", &RunningCost::per_1000_km,
            "Of all together per 1,000 km, a Band; its ends are those at which every part is cheap, "
            "or is dear."});
  def(module, "running_cost(parts)",
      "What parts cost per 1,000 km, each replaced by itself when it is worn: a RunningCost of 1 to 16 CostParts. That "
      "each lives as long as the one before is an assumption.",
      [](const Arguments& given) { return running_cost(given.want<CostParts>("parts")); });
  def_formula<formula::cost_per_distance>(
      module, "Cost over a distance of a part that is bought and fitted anew whenever its life is over.");
}

void register_break_even(py::module_& module) {
  def_struct<BreakEven>(
      module, "BreakEven", "Two parts for one place, held against each other.",
      Field{"base_per_1000_km", &BreakEven::base_per_1000_km, "What the base part costs, a Band."},
      Field{"trial_per_1000_km", &BreakEven::trial_per_1000_km, "What the trial part costs, a Band."},
      Field{"difference", &BreakEven::difference, "Trial less base per 1,000 km, a Band."},
      Field{"cheaper", &BreakEven::cheaper, "'base', 'trial' or 'alike', at nominal prices and lives."},
      Field{"certain", &BreakEven::certain, "Whether that holds all over the bands; never of two that cost alike."},
      Field{
          "life_ratio", &BreakEven::life_ratio,
          "Life of the trial part over that of the base part from which the trial part costs less, a Band; None where "
          "the base part may cost next to nothing."},
      Field{
          "price", &BreakEven::price,
          "Price of the trial part up to which it costs less, a Band; below zero where even a gift would cost more."});
  def(module, "break_even(base, trial)",
      "Holds two CostParts for one place, such as a steel and an aluminium sprocket, against each other: a BreakEven.",
      [](const Arguments& given) { return break_even(given.want<CostPart>("base"), given.want<CostPart>("trial")); });
  def_formula<formula::cost_difference>(module, "How much more the trial part costs than the base part.");
  def_formula<formula::break_even_life_ratio>(
      module, "Life of the trial part over that of the base part at which both cost alike.");
  def_formula<formula::break_even_price>(
      module, "Price of the trial part at which both cost alike; below zero where even a gift would cost more.");
}

void register_replacement_plans(py::module_& module) {
  const char* signature = "DriveCosts(*, chain, front, rear, set_labour=0.0, mismatch=None)";
  Class<DriveCosts> type(
      module, "DriveCosts",
      Signature(signature)
          .doc("Chain and sprockets (CostParts, whose kinds are not looked at) as they live when all three are new "
               "together, the labour of replacing all three at once, and the mismatch, 1 to 10: the factor by which "
               "sprockets at the end of their life shorten a new chain's. None: 1.0 to 2.0, from memory.",
               false)
          .c_str());
  def_init(type, signature, [](const Arguments& given) {
    return DriveCosts{.chain = given.want<CostPart>("chain"),
                      .front = given.want<CostPart>("front"),
                      .rear = given.want<CostPart>("rear"),
                      .set_labour = given.want<Band<double>>("set_labour", Band<double>()),
                      .mismatch = given.want<std::optional<Band<double>>>("mismatch")};
  });
  def_property(type, "chain", "The chain, a CostPart.", [](const DriveCosts& d) { return d.chain; });
  def_property(type, "front", "The front sprocket, a CostPart.", [](const DriveCosts& d) { return d.front; });
  def_property(type, "rear", "The rear sprocket, a CostPart.", [](const DriveCosts& d) { return d.rear; });
  def_property(type, "set_labour", "Of replacing all three at once, a Band.",
               [](const DriveCosts& d) { return d.set_labour; });
  def_property(type, "mismatch", "As stated, a Band, or None.", [](const DriveCosts& d) { return d.mismatch; });
  def_value(type, [](const DriveCosts& d) {
    Remake remake;
    remake.named["chain"] = give(d.chain);
    remake.named["front"] = give(d.front);
    remake.named["rear"] = give(d.rear);
    remake.named["set_labour"] = give(d.set_labour);
    name_if(remake.named, "mismatch", d.mismatch);
    return remake;
  });
  def_struct<PlanCost>(
      module, "PlanCost", "When parts are replaced, and what that costs over a distance, beginning with a new set.",
      Field{"kind", &PlanCost::kind, "'as a set', 'several chains a set' or 'each when worn'."},
      Field{"chains_per_set", &PlanCost::chains_per_set,
            "How many chains a pair of sprockets is to see: 1 to 6; 0 where each is replaced when worn."},
      Field{"bought", &PlanCost::bought, "All that is bought and fitted by the end, a Band."},
      Field{"used_up", &PlanCost::used_up,
            "The same, but of what is fitted at the end only the part that it has run of its time, a Band."},
      Field{"chains", &PlanCost::chains, "How many are bought, at nominal lives."},
      Field{"fronts", &PlanCost::fronts, "How many front sprockets."},
      Field{"rears", &PlanCost::rears, "How many rear sprockets."},
      Field{"can_be_cheapest", &PlanCost::can_be_cheapest,
            "Whether it is the cheapest by used_up somewhere within the bands."});
  def_struct<ReplacementPlans>(
      module, "ReplacementPlans", "Every plan, and the one that costs least.",
      Field{"plans", &ReplacementPlans::plans,
            "A tuple of PlanCost: as a set, two to six chains a set, each when worn."},
      Field{"cheapest", &ReplacementPlans::cheapest, "The first that costs least by used_up, all at nominal."},
      Field{"flips", &ReplacementPlans::flips, "Whether another plan costs least somewhere within the bands."},
      Field{"certainty", &ReplacementPlans::certainty, "'from memory' where no mismatch was stated."});
  def(module, "replacement_plans(distance, drive)",
      "What each plan of replacing chain and sprockets costs over a distance (10 to 1,000,000 km), from a DriveCosts: "
      "ReplacementPlans. The bands hold all corners of prices, of each part's life and of the mismatch. How worn "
      "sprockets shorten a chain's life is an assumption.",
      [](const Arguments& given) {
        return replacement_plans(given.want<Length>("distance"), given.want<DriveCosts>("drive"));
      });
  def_formula<formula::life_on_worn_sprockets>(
      module, "Life (Length) of a new chain on sprockets that have run a part of theirs.");
}

void register_tread_rate(py::module_& module) {
  def_struct<DepthReading>(
      module, "DepthReading", "A tread's depth, and what the odometer showed then.",
      Field{"depth", &DepthReading::depth, "A Length, at the same place of the pattern each time."},
      Field{"odometer", &DepthReading::odometer, "A Length, as read."});
  def_struct<TreadRate>(
      module, "TreadRate", "How fast a tyre wears; the bands' ends are those of the depths' errors and the odometer.",
      Field{"worn", &TreadRate::worn, "Between the two readings, a Band of Length."},
      Field{"distance", &TreadRate::distance, "Truly ridden between them, a Band of Length."},
      Field{"per_1000_km", &TreadRate::per_1000_km, "Height that the tread loses, a Band of Length."},
      Field{"distance_left", &TreadRate::distance_left,
            "From the second reading until the least depth, a Band of Length; below zero: how far ago. None where no "
            "least depth is stated, or the errors are as large as the wear."},
      Field{"days_left", &TreadRate::days_left, "The same in days, a Band, or None."},
      Field{"measure_again", &TreadRate::measure_again,
            "How far it lasts if all errors were on the bad side, a Length; None where that cannot be told."},
      Field{"certainty", &TreadRate::certainty, "'from memory' where no error of the depths was stated."});
  def(module, "tread_rate(first, second, *, depth_error=None, odometer_factor=1.0, least=None, per_day=None)",
      "How fast a tyre wears, from two DepthReadings: a TreadRate. Each depth may be out by depth_error either way (0 "
      "to 5 mm; None: 0.25 mm, from memory); odometer_factor (0.5 to 2, a number or a Band) is what the odometer "
      "counts "
      "over what is ridden; least is the depth down to which the tread may be used; per_day the true distance ridden "
      "in "
      "a day. RangeError where a reading lies outside its range.",
      [](const Arguments& given) {
        return tread_rate({.first = given.want<DepthReading>("first"),
                           .second = given.want<DepthReading>("second"),
                           .depth_error = given.want<std::optional<Length>>("depth_error"),
                           .odometer_factor = given.want<Band<double>>("odometer_factor", Band<double>::exactly(1.0)),
                           .least = given.want<std::optional<Length>>("least"),
                           .per_day = given.want<std::optional<Length>>("per_day")});
      });
  def_formula<formula::true_distance>(module, "Distance (Length) ridden, from what an odometer counted.");
  def_formula<formula::tread_worn_over>(module, "Height (Length) that the tread loses over a distance.");
  def_formula<formula::days_left>(module, "Days for which a distance lasts; below zero: how many days ago.");
}

}  // namespace

void register_cost(py::module_& module) {
  register_running_cost(module);
  register_break_even(module);
  register_replacement_plans(module);
  register_tread_rate(module);
}

}  // namespace layshaft::python
