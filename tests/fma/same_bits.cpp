// SPDX-License-Identifier: MIT
#include "same_bits.hpp"

#include <setup/draw.hpp>
#include <setup/plain_numbers.hpp>

#include <bit>
#include <cstdint>
#include <cstdio>
#include <iterator>
#include <string>
#include <string_view>

#if defined(__FMA__)
const bool built_to_fuse = true;
#else
const bool built_to_fuse = false;
#endif

namespace {
using namespace layshaft;
using layshaft_test::Draw;
using layshaft_test::plain_number;
using layshaft_test::PlainNumber;

class Comparer {
 public:
  void compare(const Working& working, const PlainNumber& plain) {
    for (const Corner corner : corners)
      compare(working.title(), working.result().result(corner), plain.at(corner), corner);
  }
  void compare(std::string_view what, Amount recorded, Amount plain, Corner corner) {
    ++compared;
    if (std::bit_cast<std::uint64_t>(recorded.value) == std::bit_cast<std::uint64_t>(plain.value) &&
        recorded.dimension == plain.dimension)
      return;
    constexpr int told = 20;
    if (++differ <= told)
      std::printf("%.*s, corner %d: recorded %a, plain %a\n", static_cast<int>(what.size()), what.data(),
                  static_cast<int>(corner), recorded.value, plain.value);
  }
  void compare_errors(std::string_view what, const Error& recorded, const Error& plain) {
    ++compared;
    if (std::string_view(recorded.what()) == plain.what()) return;
    ++differ;
    std::printf("%.*s: \"%s\" and \"%s\"\n", static_cast<int>(what.size()), what.data(), recorded.what(), plain.what());
  }

  int compared = 0, differ = 0, comparisons = 0;
};

template <class Names, class Place>
std::string_view name_of(const Names& names, Place place) {
  return names[static_cast<std::size_t>(place) % std::size(names)].what;
}

constexpr std::string_view points[] = {"tyre_contribution", "front_contribution", "rear_contribution",
                                       "wear_contribution", "loss_contribution"};

/// The points of each cause, and the trade's rule, as the working of a change has them beside it.
void compare_what_stands_beside(Comparer& comparer, const Working& working, const Comparison& comparison,
                                std::string_view what) {
  for (const Change change : {Change::thrust, Change::speed, Change::engine_speed}) {
    if (what != to_string(change)) continue;
    for (const Contribution& one : comparison.contributions(change))
      for (const Step& step : working.steps())
        if (step.identity().name.word == points[static_cast<std::size_t>(one.cause)])
          comparer.compare(step.name(), step.result(), Amount::number(one.points.nominal), Corner::nominal);
  }
  for (const Step& step : working.steps())
    if (step.identity().name.word == "thrust_change_by_thumb")
      comparer.compare(step.name(), step.result(), Amount::number(comparison.rule_of_thumb.thrust_change),
                       Corner::nominal);
}

/// One number of a comparison, where both chains close.
void compare_with_stock(Comparer& comparer, const Machine& machine, const layshaft::Setup& trial, int turn) {
  const auto comparison = try_compare(machine, machine.stock(), trial);
  if (!comparison) return;
  ++comparer.comparisons;
  const std::string_view what = name_of(layshaft::detail::explained_of_comparison, turn);
  const auto plain = plain_number(*comparison, what);
  const auto working = comparison->try_explain(what);
  if (!plain || !working) return;  // the part of a cause that has none
  comparer.compare(*working, *plain);
  compare_what_stands_beside(comparer, *working, *comparison, what);
}

/// A chain's loads and its slack through a swingarm's travel, of one loop.
template <class Drawn>
void compare_drive(Comparer& comparer, Drawn& draw, const ChainLoop& loop, Length centre) {
  const ChainMade made{.seal = ChainSeal::shaped,
                       .pin_diameter = draw.between(3.0, 8.0) * units::mm,
                       .tensile_strength = draw.between(5.0, 60.0) * units::kN,
                       .mass_per_length = draw.between(0.3, 3.0) * units::kg_per_m};
  const ChainDuty duty{.torque = draw.between(1.0, 400.0) * units::Nm,
                       .shaft_speed = draw.between(0.0, 6000.0) * units::rpm,
                       .spike = draw.between(1.0, 3.0),
                       .slack_tension = draw.between(0.0, 100.0) * units::N};
  const ChainLoads loads = chain_loads(loop, duty, made);
  const auto compare = [&](std::string_view what, const PlainNumber& plain) {
    comparer.compare(explain_chain_loads(loop, duty, made, what), plain);
  };
  compare("pull", layshaft_test::plain(loads.pull));
  compare("tight tension", layshaft_test::plain(loads.tight_tension));
  compare("safety", layshaft_test::plain(*loads.safety));
  compare("efficiency", layshaft_test::plain(*loads.efficiency));

  const Suspension suspension({.layshaft_ahead = draw.between(-80.0, 120.0) * units::mm,
                               .layshaft_above = draw.between(-60.0, 60.0) * units::mm,
                               .arm = centre,
                               .droop = draw.between(5.0, 30.0) * units::deg,
                               .rest = 4_deg,
                               .bump = draw.between(-15.0, 3.0) * units::deg});
  const auto travel = SlackThroughTravel::with_arm(suspension, loop, loop.links(centre), centre);
  if (!travel) return;
  const Angle angle = suspension.rest();
  comparer.compare(travel->explain("spare length", angle), layshaft_test::plain(travel->at(angle).spare_length));
  if (travel->at(angle).spare_length >= Length())
    comparer.compare(travel->explain("slack", angle), layshaft_test::plain(travel->at(angle).slack));
}

}  // namespace

int numbers_that_differ(int setups) {
  namespace detail = layshaft::detail;
  Draw draw;
  Comparer comparer;
  for (int i = 0; i < setups; ++i) {
    const Machine machine = draw.machine();
    const layshaft::Setup trial = draw.setup();
    const SetupQuestion at{.gear = draw.between(1, static_cast<int>(machine.gearbox().gears().size())),
                           .engine_speed = draw.between(500.0, 15000.0) * units::rpm,
                           .speed = draw.between(1.0, 250.0) * units::kmh};
    const ChainLoop loop(trial.chain().value_or(machine.chain()), trial.front(), trial.rear());
    const Length centre = draw.between(400.0, 800.0) * units::mm;

    // One name of each table, in turn: the tables' lengths have few factors in common, so all meet in time.
    const std::string_view of_setup = name_of(detail::explained_of_setup, i);
    const auto plain = plain_number(machine, trial, of_setup, at);
    const auto working = try_explain(machine, trial, of_setup, at);
    if (plain && working)
      comparer.compare(*working, *plain);
    else if (!plain && !working)
      comparer.compare_errors(of_setup, working.error(), plain.error());
    constexpr int times = 3;  // comparisons take longest, and have their turn less often
    if (i % times == 0) compare_with_stock(comparer, machine, trial, i / times);
    const std::string_view of_loop = name_of(detail::explained_of_loop, i);
    const LoopQuestion question{.centre = centre, .links = loop.links(centre)};
    comparer.compare(loop.explain(of_loop, question), *plain_number(loop, of_loop, question));
    if (i % times == 1) compare_drive(comparer, draw, loop, centre);
    const Sprocket sprocket(loop.series(), trial.rear());
    const std::string_view of_sprocket = name_of(detail::explained_of_sprocket, i);
    comparer.compare(sprocket.explain(of_sprocket), plain_number(sprocket, of_sprocket));
    const AnsiToothForm form(sprocket);
    const std::string_view of_form = name_of(detail::explained_of_ansi_tooth_form, i);
    comparer.compare(form.explain(of_form), plain_number(form, of_form));
    const Interchange pair(loop.series(), machine.chain());
    const std::string_view of_pair = name_of(detail::explained_of_interchange, i);
    comparer.compare(pair.explain(of_pair), plain_number(pair, of_pair));
    if (trial.tyre()) {
      const std::string_view of_tyre = name_of(detail::explained_of_tyre, i / 3);
      comparer.compare(trial.tyre()->explain(of_tyre), plain_number(*trial.tyre(), of_tyre));
    }
  }
  std::printf("%d set-ups, %d comparisons; %d numbers compared, %d differ%s\n", setups, comparer.comparisons,
              comparer.compared, comparer.differ, built_to_fuse ? "; built to multiply and add in one rounding" : "");
  if (4 * comparer.comparisons < setups) {
    std::puts("too few of the chains close");
    return -1;
  }
  return comparer.differ;
}
