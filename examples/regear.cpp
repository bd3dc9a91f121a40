// SPDX-License-Identifier: MIT
// Which sprockets and chain suit a taller tyre, and what everything else does then.
//
//   regear [MACHINE.json] [--fitted MARKING] [--use road|special|snow] [--circumference LENGTH] [--fronts 12,13]
//          [--rears 47-53] [--thrust PERCENT] [--cruise SPEED] [--bought LINKS] [--ride RIDE.csv] [--units metric|us]
//
// The machine's stock set-up is the yardstick; the fitted tyre is what the rider has put on since. regear.py says the
// same in the same words.
#include <layshaft/explain.hpp>
#include <layshaft/io/json.hpp>
#include <layshaft/io/ride_log.hpp>
#include <layshaft/layshaft.hpp>
#include <layshaft/road/log_use.hpp>
#include <layshaft/show/show.hpp>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <fstream>
#include <iomanip>
#include <iostream>
#include <iterator>
#include <sstream>
#include <vector>

namespace {

using namespace layshaft;

struct Question {
  std::string machine_file = LAYSHAFT_MACHINES_DIR "/trail_bike.json";
  std::optional<TyreSize> fitted;
  std::optional<Band<Length>> circumference;
  std::vector<Teeth> fronts;
  std::vector<Teeth> rears;
  double thrust = 0.0;  // the change wished for, as a fraction
  std::optional<Speed> cruise;
  std::optional<Links> bought;
  std::optional<std::string> explain;
  std::optional<std::string> ride_file;  // a recorded ride, by which wear is weighed
  std::optional<Length> rolled;          // measured over so many turns
  int turns = 1;
  std::optional<Length> tread;  // depth of the tyre's tread when new
  std::string region = "GB";    // whose law on tread counts
  UnitSystem units = UnitSystem::metric;
};

struct Candidate {
  Setup setup;
  Comparison comparison;
};

[[noreturn]] void fail(const std::string& sentence) { raise(Error::value(sentence)); }

int whole(std::string_view text) {
  int number = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
  if (error != std::errc{} || end != text.data() + text.size())
    fail("expected a whole number, got \"" + std::string(text) + "\"");
  return number;
}

TyreUse tyre_use(std::string_view word) {
  for (const TyreUse use : tyre_uses)
    if (word == to_string(use)) return use;
  fail("expected --use road, --use special or --use snow, got " + std::string(word));
}

// "12,13" and "47-53", and both mixed.
std::vector<Teeth> teeth_list(std::string_view text) {
  std::vector<Teeth> list;
  std::stringstream parts{std::string(text)};
  for (std::string part; std::getline(parts, part, ',');) {
    const std::size_t dash = part.find('-');
    const int first = whole(std::string_view(part).substr(0, dash));
    const int last = dash == std::string::npos ? first : whole(std::string_view(part).substr(dash + 1));
    if (last < first) fail("expected teeth in rising order, got \"" + part + "\"");
    for (int count = first; count <= last; ++count) list.emplace_back(count);
  }
  if (list.empty()) fail("expected teeth such as 12,13 or 47-53, got nothing");
  return list;
}

std::string read_file(const std::string& name) {
  std::ifstream file(name, std::ios::binary);
  if (!file) fail("cannot open " + name);
  return {std::istreambuf_iterator<char>(file), {}};
}

Question ask(int argc, char** argv) {
  Question question;
  bool own_machine = false;
  std::string marking, use = "road";
  for (int i = 1; i < argc; ++i) {
    const std::string_view option = argv[i];
    if (!option.starts_with("--")) {
      question.machine_file = option;
      own_machine = true;
      continue;
    }
    if (i + 1 == argc) fail("expected a value after " + std::string(option));
    const std::string_view value = argv[++i];
    if (option == "--fitted")
      marking = value;
    else if (option == "--use")
      use = value;
    else if (option == "--circumference")
      question.circumference = Band<Length>::exactly(parse_quantity<Length>(value));
    else if (option == "--fronts")
      question.fronts = teeth_list(value);
    else if (option == "--rears")
      question.rears = teeth_list(value);
    else if (option == "--thrust")
      question.thrust = whole(value) / 100.0;
    else if (option == "--cruise")
      question.cruise = parse_quantity<Speed>(value);
    else if (option == "--rolled")
      question.rolled = parse_quantity<Length>(value);
    else if (option == "--turns")
      question.turns = whole(value);
    else if (option == "--tread")
      question.tread = parse_quantity<Length>(value);
    else if (option == "--region")
      question.region = value;
    else if (option == "--explain")
      question.explain = value;
    else if (option == "--ride")
      question.ride_file = value;
    else if (option == "--bought")
      question.bought = Links(whole(value));
    else if (option == "--units" && value == "us")
      question.units = UnitSystem::us;
    else if (option == "--units" && value == "metric")
      question.units = UnitSystem::metric;
    else
      fail("unknown option " + std::string(option) + " " + std::string(value));
  }
  if (!own_machine && marking.empty() && !question.circumference) {  // the rider of the README
    marking = "120/90-18 M/C 65R TT";
    use = "special";
    if (!question.cruise) question.cruise = 85_kmh;
    if (!question.bought) question.bought = 120_links;
    if (!question.tread) question.tread = 12_mm;
  }
  if (question.rolled)
    question.circumference = measured_circumference({.distance = *question.rolled, .turns = question.turns});
  if (!marking.empty()) question.fitted = TyreSize(marking, tyre_use(use));
  return question;
}

// The stock set-up on the fitted tyre, with other sprockets or the same; the chain is then an open question.
Setup on_fitted_tyre(const Question& question, const Setup& stock, Teeth front, Teeth rear) {
  SetupParts parts = stock.parts();
  parts.front = front;
  parts.rear = rear;
  if (front != stock.front() || rear != stock.rear()) parts.links.reset();
  if (question.fitted) parts.tyre = question.fitted, parts.circumference.reset();
  if (question.circumference) parts.circumference = question.circumference;
  if (question.fitted || question.circumference) {
    parts.tread_worn = Length();
    parts.tread.reset();
  }
  return Setup(parts);
}

// Every pair of the candidates whose chain closes in the adjuster, nearest to the wish first.
//
// Half a point of thrust is less than any rider feels, and less than the tyre's own tolerance: among pairs that near to
// the best, the one that changes fewest sprockets comes first, then the one whose chain pulls least.
std::vector<Candidate> candidates(const Question& question, const Machine& machine) {
  const Setup& stock = machine.stock();
  std::vector<Teeth> fronts = question.fronts, rears = question.rears;
  if (fronts.empty())
    for (int step = -1; step <= 1; ++step) fronts.emplace_back(stock.front().count() + step);
  if (rears.empty())
    for (int step = -3; step <= 6; ++step) rears.emplace_back(stock.rear().count() + step);
  std::vector<Candidate> list;
  for (const Teeth front : fronts)
    for (const Teeth rear : rears) {
      const Setup setup = on_fitted_tyre(question, stock, front, rear);
      const auto comparison = try_compare(machine, stock, setup);
      if (comparison && comparison->trial.chain().fits) list.push_back({setup, *comparison});
    }
  if (list.empty()) fail("none of the candidates' chains closes in the adjuster");
  const auto miss = [&](const Candidate& one) {
    return std::abs(one.comparison.thrust_change.nominal - question.thrust);
  };
  double nearest = miss(list.front());
  for (const Candidate& one : list) nearest = std::min(nearest, miss(one));
  constexpr double felt = 0.005;
  const auto rank = [&](const Candidate& one) {
    const bool near = miss(one) <= nearest + felt;
    const int changed = (one.setup.front() != stock.front()) + (one.setup.rear() != stock.rear());
    return std::tuple(!near, near ? double(changed) : miss(one), one.comparison.wear.chain_tension_change.nominal,
                      one.setup.front().count(), one.setup.rear().count());
  };
  std::ranges::stable_sort(list, {}, rank);
  return list;
}

std::string sprockets(const Setup& setup) {
  return std::to_string(setup.front().count()) + "/" + std::to_string(setup.rear().count());
}

std::string tyre_of(const Setup& setup, UnitSystem units) {
  if (setup.circumference()) return "a measured rollout of " + show(*setup.circumference(), units);
  const TyreUse use = setup.tyre()->use();
  return setup.tyre()->designation() + (use == TyreUse::road ? "" : " (" + std::string(to_string(use)) + " use)");
}

void heading(std::string_view text) { std::cout << "\n" << text << "\n"; }
void row(std::string_view label, std::string_view text) {
  std::cout << "  " << std::left << std::setw(24) << label << text << "\n";
}
void row(std::string_view label, std::string_view one, std::string_view two, std::string_view three) {
  std::cout << "  " << std::left << std::setw(24) << label << std::setw(30) << one << std::setw(30) << two << three
            << "\n";
}

void print_ledger(const Comparison& advised, const Setup& stock, const Setup& setup) {
  heading("What makes up the change of thrust, in points that add up");
  const auto from_to = [](const char* what, Teeth from, Teeth to) {
    return what + std::to_string(from.count()) + " to " + std::to_string(to.count());
  };
  for (const auto& [cause, points] : advised.contributions(Change::thrust)) {
    std::string label(to_string(cause));
    if (cause == ContributionCause::front_sprocket) label = from_to("front ", stock.front(), setup.front());
    if (cause == ContributionCause::rear_sprocket) label = from_to("rear ", stock.rear(), setup.rear());
    row(label, show_percent(points));
  }
  row("what is left", show_percent(advised.thrust_change));
  row("by rule of thumb", show_percent(advised.rule_of_thumb.thrust_change) + ", off by " +
                              show_signed(100.0 * advised.rule_of_thumb.error, 1) + " points");
}

void print_parts(const Question& question, const Machine& machine, const Candidate& best) {
  const Setup& stock = machine.stock();
  const Comparison& advised = best.comparison;
  const ChainFit& chain = advised.trial.chain();
  heading("What to buy and where it stands");
  row("front sprocket",
      std::to_string(best.setup.front().count()) + " (as made " + std::to_string(stock.front().count()) + ")");
  row("rear sprocket",
      std::to_string(best.setup.rear().count()) + " (as made " + std::to_string(stock.rear().count()) + ")");
  row("chain", std::string(machine.chain().name()) + ", " + std::to_string(chain.links.count()) + " links (" +
                   show_signed(advised.links_change, 0) + " against as made)");
  if (question.bought) {
    const auto cut = try_links_to_cut(*question.bought, chain.links);
    row("links to cut", cut ? std::to_string(*cut) + " from a chain of " + std::to_string(question.bought->count())
                            : std::string(cut.error().what()));
  }
  row("axle", show(chain.centre, question.units) + " from the front sprocket's axis");
  row("room forward", show(chain.adjuster_forward, question.units));
  row("room rearward", show(chain.adjuster_rearward, question.units) + ", which takes a chain " +
                           show_number(100.0 * chain.wear_room.nominal, 1) + " % longer than new");
}

void print_drive(const Question& question, const Machine& machine, const Comparison& advised) {
  const ChainDrive& made = advised.base.drive();
  const ChainDrive& drive = advised.trial.drive();
  heading("The chain drive");
  row("teeth in mesh in front",
      show_number(drive.engagement.front, 1) + " (as made " + show_number(made.engagement.front, 1) + ")");
  if (drive.slack) {
    row("slack through travel", show(machine.adjuster().slack(), question.units) + " by hand at rest leave " +
                                    show(drive.slack->least_slack, question.units) + " at the tight point, " +
                                    show(drive.slack->tightest, question.units) + " below level");
    if (drive.slack->slack_to_set)
      row("slack to set at rest", show(*drive.slack->slack_to_set, question.units) + " leave " +
                                      show(drive.slack->stock_least_slack, question.units) + ", as the stock parts do");
  }
  if (drive.loads) {
    row("pull in first gear", show(drive.loads->pull, question.units) + " at the engine's greatest torque");
    if (drive.loads->safety && drive.stock_safety)
      row("strength over pull",
          show_number(*drive.loads->safety, 1) + " (as made " + show_number(*drive.stock_safety, 1) + ")");
    if (drive.loads->efficiency)
      row("power it passes on", show(*drive.loads->efficiency, 3) + " of what comes in, friction from memory");
  }
}

void print_road(const Question& question, const Machine& machine, const Appraisal& made, const Appraisal& tyre_only,
                const Comparison& advised, const Comparison& tyre_alone) {
  const UnitSystem units = question.units;
  const int gears = static_cast<int>(made.overall_ratios().size());
  heading("On the road, engine turning freely and no slip");
  row("", "as made", "tyre only", "as advised");
  row("thrust, every gear", "", show_percent(tyre_alone.thrust_change), show_percent(advised.thrust_change));
  row("speed at equal revs", "", show_percent(tyre_alone.speed_change), show_percent(advised.speed_change));
  if (question.cruise)
    row("revs at " + show(*question.cruise, units), show(made.engine_speed_at(*question.cruise, gears), units),
        show(tyre_only.engine_speed_at(*question.cruise, gears), units),
        show(advised.trial.engine_speed_at(*question.cruise, gears), units));
  const Gearbox& gearbox = machine.gearbox();
  const std::string unit(display_unit(Speed(), units).name);
  std::cout << "  speed in " << unit << " from " << show(gearbox.lowest_pull(), units) << " to "
            << show(gearbox.rev_limit(), units) << ", nominal\n";
  const auto range = [&](const Appraisal& appraisal, int gear) {
    const SpeedRange speeds = appraisal.speed_range(gear);
    const auto number = [&](Speed speed) { return show_number(speed.value() / display_unit(speed, units).unit, 1); };
    return number(speeds.lowest.nominal) + " to " + number(speeds.highest.nominal);
  };
  for (int gear = 1; gear <= gears; ++gear)
    row("gear " + std::to_string(gear), range(made, gear), range(tyre_only, gear), range(advised.trial, gear));
}

// What the engine makes of it on the machine's own road, as far as the machine tells.
void print_engine(const Question& question, const Appraisal& made, const Appraisal& tyre_only,
                  const Appraisal& advised) {
  if (!made.road() || !tyre_only.road() || !advised.road()) return;
  const UnitSystem units = question.units;
  const auto three = [&](const std::string& label, auto text) {
    row(label, text(*made.road()), text(*tyre_only.road()), text(*advised.road()));
  };
  heading("With the engine at full throttle");
  row("", "as made", "tyre only", "as advised");
  three("top speed", [&](const OnRoad& road) { return show(road.top_speed.speed, units); });
  three("held by", [](const OnRoad& road) {
    return std::string(to_string(road.top_speed.limit)) +
           (road.top_speed.gear ? " in gear " + std::to_string(*road.top_speed.gear) : "") +
           (road.top_speed.certain ? "" : ", likely");
  });
  for (std::size_t i = 0; i < made.road()->gears.size(); ++i)
    three("gear " + std::to_string(i + 1) + " climbs",
          [&](const OnRoad& road) { return show(road.gears[i].climb.slope, units); });
  three("gets away on", [&](const OnRoad& road) { return show(road.start.steepest, units); });
  three("gear 1 holds back on", [&](const OnRoad& road) { return show(road.gears[0].held_back, units); });
  three("walking pace", [&](const OnRoad& road) { return show(road.walking_pace, units); });
  three("thrust in gear 1", [&](const OnRoad& road) { return show(road.gears[0].climb.thrust, units); });
  if (made.road()->limit) {
    const ThrustLimit& limit = *made.road()->limit;
    row("of use on asphalt", show(limit.thrust, units) + ", then the " +
                                 (limit.kind == ThrustLimitKind::wheelie ? "front wheel lifts" : "rear wheel spins"));
  }
  three("turns a km, top gear",
        [](const OnRoad& road) { return show(road.gears[road.gears.size() - 1].engine_turns, 0); });
  row("what resists", made.road()->road_load == RoadLoadKind::mass_table
                          ? "a table by mass alone: for hard, level road near 65 km/h"
                          : "as the machine states it; full throttle, no wind, tyres that do not slip");
}

void print_speedometer(const Question& question, const Machine& machine, const Appraisal& advised) {
  const SpeedometerReading& reading = advised.speedometer();
  heading("Speedometer, which senses the " + std::string(to_string(machine.speedometer().sensor())));
  row("reading over before", show(reading.indicated_ratio(), 3));
  row("correction factor", show(reading.correction_factor(), 3));
  row("odometer counts", show_percent(reading.odometer_drift()) + " against before");
  if (machine.kind() != MachineKind::motorcycle) return;
  const Speed top = advised.speed_range(static_cast<int>(advised.overall_ratios().size())).highest.nominal;
  const Speed test_speeds[] = {30_kmh, 50_kmh, 90_kmh, 120_kmh};
  for (const Speed& speed : test_speeds) {
    if (speed > top) break;
    row("at a true " + show(speed, question.units), show(reading.indicated(speed), question.units) + ", " +
                                                        std::string(to_string(reading.verdict(speed))) + " by UN R39");
  }
}

std::string meets(const Hunting& hunting) {
  return "the same link again after " + std::to_string(hunting.passes) + " passes, " +
         (hunting.link_kinds == 2 ? "inner and outer links" : "only inner or only outer links");
}

// The mean thrust of the rider's recorded ride; none without a ride, or a machine whose load is not known.
std::optional<Band<Force>> thrust_of_ride(const Question& question, const Machine& machine, const Setup& setup) {
  if (!question.ride_file || !machine.road_load() || !machine.body()) return std::nullopt;
  const Appraisal appraisal = appraise(machine, setup);
  const Length circumference = appraisal.circumference().nominal;
  const AngularSpeed limit = machine.gearbox().rev_limit();
  const OverallRatios& ratios = appraisal.overall_ratios();
  const RideDrive drive{.overall_ratios = ratios,
                        .circumference = circumference,
                        .rule = ShiftRule::at_engine_speeds(0.62 * limit, 0.36 * limit, ratios, circumference),
                        .load = RideLoad{.road = *machine.road_load(), .mass = machine.body()->mass()}};
  const RideLog log = read_ride_log(read_file(*question.ride_file));
  const auto mean = ride_use(log, drive).mean_thrust();
  if (!mean) return std::nullopt;
  return Band<Force>::exactly(*mean);
}

std::string weighed_by(const Question& question, const Machine& machine, const WearOutlook& outlook) {
  switch (outlook.thrust_from) {
    case ThrustFrom::stated: return "the mean of " + *question.ride_file;
    case ThrustFrom::road_load:
      return "what resists at " +
             show(machine.kind() == MachineKind::cycle ? outlook_speed_of_cycles : outlook_speed, question.units) +
             ", for want of a ride";
    case ThrustFrom::assumed: break;
  }
  return "an assumption, for want of a road load";
}

void print_wear(const Question& question, const Machine& machine, const Setup& setup, const Appraisal& advised,
                const WearChange& change) {
  heading("What wears, against as made");
  row("chain's pull", show_percent(change.chain_tension_change) + " at equal thrust");
  row("each front tooth",
      show(advised.wear().front_contacts_per_km, 0) + " meetings a km, " + show_percent(change.front_contacts_change));
  row("each rear tooth",
      show(advised.wear().rear_contacts_per_km, 0) + " meetings a km, " + show_percent(change.rear_contacts_change));
  row("chain's growth", show_percent(change.chain_stretch_change) + " at equal thrust");
  row("wear of a front tooth", show_percent(change.front_tooth_change));
  row("wear of a rear tooth", show_percent(change.rear_tooth_change));
  row("front sprocket's life", show_percent(change.front_life_change));
  row("rear sprocket's life", show_percent(change.rear_life_change));
  row("loss in the joints", show_percent(change.loss_change));
  row("a front tooth meets", meets(advised.wear().front_hunting));
  row("a rear tooth meets", meets(advised.wear().rear_hunting));
  const WearOutlook outlook = wear_outlook(machine, setup, thrust_of_ride(question, machine, setup));
  row("weighed by a thrust of", show(outlook.thrust, question.units) + ": " + weighed_by(question, machine, outlook));
  const Band<double>& grown = outlook.stretch_per_1000_km;
  row("growth in 1000 km", show_number(100.0 * grown.nominal, 4) + " %, from " + show_number(100.0 * grown.low, 4) +
                               " in clean oil to " + show_number(100.0 * grown.high, 4) + " in mud");
  row("measure, and replace at", show_number(100.0 * outlook.limit.elongation, 1) + " % of growth, which the " +
                                     std::string(to_string(outlook.limit.kind)) + " sets");
}

// What a measured rollout adds to what the marking tells.
void print_measured(const Question& question, const Machine& machine, const Candidate& best) {
  SetupParts parts = best.setup.parts();
  parts.circumference.reset();
  if (!question.rolled || !parts.tyre) return;
  const Comparison marked = compare(machine, machine.stock(), Setup(parts));
  heading("What measuring tightened: " + std::to_string(question.turns) + " turns over " +
          show(*question.rolled, question.units));
  const auto line = [&](std::string_view label, const Comparison& one) {
    row(label, show(one.trial.circumference(), question.units), show_percent(one.thrust_change),
        show(one.indicated_ratio, 3));
  };
  row("", "circumference", "thrust, every gear", "speedometer over before");
  line("by its marking", marked);
  line("as measured", best.comparison);
}

// The set-up with the tyre worn down to a depth of tread.
Setup at_depth(const Question& question, const Setup& setup, Length depth) {
  SetupParts parts = setup.parts();
  const Tread when_new({.new_depth = *question.tread, .depth = *question.tread});
  if (parts.circumference)
    parts.circumference = circumference_at_depth(
        *parts.circumference, parts.tyre ? parts.tyre->construction() : TyreConstruction::diagonal, when_new, depth);
  else
    parts.tread = Tread({.new_depth = *question.tread, .depth = depth});
  return Setup(parts);
}

void print_life(const Question& question, const Machine& machine, const Candidate& best) {
  if (!question.tread || machine.kind() != MachineKind::motorcycle) return;
  const LegalTread rule = legal_tread(question.region, VehicleClass::motorcycle);
  const Length least = rule.depth.value_or(0_mm);
  heading("Over the tyre's life, against as made; legal down to " + show(least, question.units) + " (" +
          std::string(rule.source.document) + ")");
  row("tread left", "circumference", "thrust, every gear", "speedometer over before");
  for (const Length& depth : {*question.tread, 0.5 * (*question.tread + least), least}) {
    const Comparison then = compare(machine, machine.stock(), at_depth(question, best.setup, depth));
    row(show(depth, question.units), show(then.trial.circumference(), question.units), show_percent(then.thrust_change),
        show(then.indicated_ratio, 3));
  }
}

// "it changes only the rear sprocket", and what it comes down to.
std::string parts_changed(const Setup& stock, const Setup& setup) {
  const bool front = setup.front() != stock.front(), rear = setup.rear() != stock.rear();
  return front && rear ? "changes both sprockets"
         : front       ? "changes only the front sprocket"
         : rear        ? "changes only the rear sprocket"
                       : "changes no sprocket";
}

void print_reason(const Question& question, const Machine& machine, const std::vector<Candidate>& list) {
  const Candidate& best = list.front();
  const double pull = best.comparison.wear.chain_tension_change.nominal;
  const Band<double>& thrust = best.comparison.thrust_change;
  const double miss = std::abs(thrust.nominal - question.thrust);
  heading("Why this one");
  std::cout << "  You wished for " << show_percent(question.thrust) << " of thrust. " << sprockets(best.setup);
  if (miss < 0.0005)
    std::cout << " gives just that.\n";
  else
    std::cout << " comes within " << show_number(100.0 * miss, 1) << " points of that, which is "
              << (miss <= 0.5 * thrust.width()
                      ? "less than the tyre itself leaves open.\n"
                      : "more than the tyre leaves open: other sprockets might come nearer.\n");
  std::cout
      << "  Half a point more or less is not felt, so of the pairs as near it is the one that asks for least:\n  it "
      << parts_changed(machine.stock(), best.setup) << ", and its chain's pull changes by " << show_percent(pull)
      << " at the same thrust. The next best:\n";
  for (std::size_t i = 1; i < std::min<std::size_t>(list.size(), 4); ++i) {
    const Comparison& other = list[i].comparison;
    std::cout << "  " << sprockets(list[i].setup) << " gives " << show_percent(other.thrust_change.nominal) << " with "
              << other.trial.chain().links.count() << " links, " << parts_changed(machine.stock(), list[i].setup)
              << ", chain's pull " << show_percent(other.wear.chain_tension_change.nominal) << "\n";
  }
}

// How a number of the advice came about: of the change if it has such a number, else of the set-up, in top gear.
Working working_of(const Question& question, const Machine& machine, const Candidate& best) {
  if (const auto of_change = best.comparison.try_explain(*question.explain)) return *of_change;
  const Gearbox& gearbox = machine.gearbox();
  return explain(machine, best.setup, *question.explain,
                 {.gear = static_cast<int>(gearbox.gears().size()),
                  .engine_speed = gearbox.rev_limit(),
                  .speed = question.cruise});
}

void advise(const Question& question) {
  const Machine machine = machine_from_json(read_file(question.machine_file));
  const Setup& stock = machine.stock();
  const std::vector<Candidate> list = candidates(question, machine);
  const Candidate& best = list.front();
  const Comparison& advised = best.comparison;
  const Setup tyre_setup = on_fitted_tyre(question, stock, stock.front(), stock.rear());
  const Comparison tyre_alone = compare(machine, stock, tyre_setup);

  if (question.explain) {
    std::cout << to_text(working_of(question, machine, best), {.units = question.units});
    return;
  }
  std::cout << machine.name() << ": " << tyre_of(stock, question.units) << " as made, now on "
            << tyre_of(tyre_setup, question.units) << "\n\n";
  std::cout << (best.setup.front() == stock.front() && best.setup.rear() == stock.rear() ? "Keep " : "Fit ")
            << sprockets(best.setup) << " with " << advised.trial.chain().links.count()
            << " links: thrust in every gear is then " << show_percent(advised.thrust_change)
            << " against as made, where the tyre alone would leave " << show_percent(tyre_alone.thrust_change) << ".\n";
  print_ledger(advised, stock, best.setup);
  print_parts(question, machine, best);
  print_drive(question, machine, best.comparison);
  print_road(question, machine, advised.base, tyre_alone.trial, advised, tyre_alone);
  print_engine(question, advised.base, tyre_alone.trial, advised.trial);
  print_speedometer(question, machine, advised.trial);
  print_wear(question, machine, best.setup, advised.trial, advised.wear);
  print_measured(question, machine, best);
  print_life(question, machine, best);
  print_reason(question, machine, list);
  heading("Before you ride");
  for (const Caution& caution : advised.cautions()) std::cout << "  - " << sentence(caution, question.units) << "\n";
}

}  // namespace

int main(int argc, char** argv) {
  try {
    advise(ask(argc, argv));
    return 0;
  } catch (const ParseError& error) {
    std::cerr << "regear: " << error.what() << "\n" << error.caret() << "\n";
    return 1;
  } catch (const std::exception& error) {
    std::cerr << "regear: " << error.what() << "\n";
    return 1;
  }
}
