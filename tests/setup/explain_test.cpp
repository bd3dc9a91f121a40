// SPDX-License-Identifier: MIT
#include <layshaft/setup/explain.hpp>

#include "setup/example_machines.hpp"
#include "setup/plain_numbers.hpp"

#include <gtest/gtest.h>
#include <core/workings.hpp>
#include <reference/road_examples.hpp>

#include <cmath>
#include <limits>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace {
using namespace layshaft;
using layshaft_test::all_machines;
using layshaft_test::all_setups;
using layshaft_test::expect_no_idle_step;
using layshaft_test::expect_sound;
using layshaft_test::names_of;
using layshaft_test::pair;
using layshaft_test::plain_number;
using layshaft_test::PlainNumber;
using layshaft_test::printed_number;
using layshaft_test::step_named;
using layshaft_test::with;
using Names = std::vector<std::string>;

void expect_equal(const Working& working, const PlainNumber& plain) {
  for (const Corner corner : corners) EXPECT_EQ(working.result().result(corner), plain.at(corner)) << int(corner);
}
double value(const Working& working, std::string_view step) { return step_named(working, step).result().value; }
bool has(const Working& working, std::string_view name) {
  for (const Step& step : working.steps())
    if (step.name() == name) return true;
  return false;
}

// ---- every name, against the plain calculation ----

TEST(Explain, EndsInTheBandOfThePlainCalculationToTheBit) {
  int explained = 0, refused = 0;
  for (const Machine& machine : all_machines())
    for (const layshaft::Setup& setup : all_setups(machine)) {
      const int gears = static_cast<int>(machine.gearbox().gears().size());
      const SetupQuestion at{.gear = 1 + explained % gears, .engine_speed = 83_rpm, .speed = 31_kmh};
      for (const auto& one : layshaft::detail::explained_of_setup) {
        SCOPED_TRACE(machine.name() + ", " + std::string(one.what));
        const auto plain = plain_number(machine, setup, one.what, at);
        const auto working = try_explain(machine, setup, one.what, at);
        if (!plain) {
          ++refused;  // a set-up whose chain does not close: what does not depend on it can still be explained
          if (!working) {
            EXPECT_STREQ(working.error().what(), plain.error().what());
          }
          continue;
        }
        ++explained;
        ASSERT_TRUE(working) << working.error().what();
        expect_sound(*working);
        expect_equal(*working, *plain);
      }
    }
  EXPECT_GT(explained, 2000);
  EXPECT_LT(refused, explained / 5);
}

TEST(ComparisonExplain, EndsInTheBandOfThePlainCalculationToTheBit) {
  int explained = 0;
  for (const Machine& machine : all_machines()) {
    const std::vector<layshaft::Setup> setups = all_setups(machine);
    for (std::size_t base = 0; base < setups.size(); base += 3)
      for (const layshaft::Setup& trial : setups) {
        const auto comparison = try_compare(machine, setups[base], trial);
        if (!comparison) continue;
        for (const auto& one : layshaft::detail::explained_of_comparison) {
          SCOPED_TRACE(machine.name() + ", " + std::string(one.what));
          const auto plain = plain_number(*comparison, one.what);
          const auto working = comparison->try_explain(one.what);
          ASSERT_EQ(bool(working), bool(plain)) << working.error().what();  // no part of a cause that has none
          if (!working) continue;
          expect_sound(*working);
          expect_equal(*working, *plain);
          ++explained;
        }
      }
  }
  EXPECT_GT(explained, 3000);
}

TEST(Explain, HoldsNoStepThatTheResultDoesNotStandOn) {
  for (const Machine& machine : all_machines())
    for (const layshaft::Setup& setup : {machine.stock(), with(machine.stock(), [&](SetupParts& parts) {
                                           parts.links = appraise(machine, machine.stock()).chain().links;
                                         })})
      for (const auto& one : layshaft::detail::explained_of_setup) {
        SCOPED_TRACE(setup.links() ? "links stated" : "links chosen");
        const bool of_engine = one.what == "thrust" || one.what == "steepest slope" || one.what == "top speed";
        if (of_engine && !machine.engine()) continue;
        const Speed speed = 0.9 * appraise(machine, setup).speed_range(1).highest.nominal;
        expect_no_idle_step(explain(machine, setup, one.what, {.gear = 1, .engine_speed = 83_rpm, .speed = speed}));
      }
}
// The causes' points and the trade's rule stand beside a change, and nothing else does.
TEST(ComparisonExplain, HoldsNoIdleStepButTheCausesAndTheTradesRule) {
  const Machine machine = layshaft_test::trail_bike();
  const auto base =
      with(machine.stock(), [](SetupParts& parts) { parts.drive_efficiency = Band<double>::exactly(0.95); });
  const Comparison comparison = compare(machine, base, all_setups(machine).back());
  for (const auto& one : layshaft::detail::explained_of_comparison) {
    const Working working = comparison.explain(one.what);
    const bool change = one.what == "thrust" || one.what == "speed" || one.what == "engine speed";
    if (!change) {
      expect_no_idle_step(working);
      continue;
    }
    std::set<std::size_t> reached;
    for (std::size_t place = 0; place < working.steps().size(); ++place) {
      const std::string name = working.steps()[place].name();
      if (name.ends_with(" contribution") || name == "thrust change by thumb" || place == working.result_place())
        layshaft_test::add_reached(working, place, reached);
    }
    EXPECT_EQ(reached.size(), working.steps().size()) << one.what;
  }
}

TEST(Workings, AreWrittenInWordsOfTheGlossary) {
  std::set<std::string> words;
  const auto read = [&](const Result<Working>& working) {
    if (!working) return;
    for (const Step& step : working->steps()) words.emplace(step.identity().name.word);
  };
  for (const Machine& machine : all_machines())
    for (const layshaft::Setup& setup : all_setups(machine)) {
      for (const auto& one : layshaft::detail::explained_of_setup)
        read(try_explain(machine, setup, one.what, {.gear = 1, .engine_speed = 83_rpm, .speed = 31_kmh}));
      if (const auto comparison = try_compare(machine, machine.stock(), setup))
        for (const auto& one : layshaft::detail::explained_of_comparison) read(comparison->try_explain(one.what));
      const ChainLoop loop(machine.chain(), setup.front(), setup.rear());
      for (const auto& one : layshaft::detail::explained_of_loop)
        read(loop.try_explain(one.what, {.centre = 600_mm, .links = loop.links(600_mm)}));
      for (const auto& one : layshaft::detail::explained_of_sprocket)
        read(Sprocket(machine.chain(), setup.rear()).try_explain(one.what));
      if (!setup.tyre()) continue;
      for (const auto& one : layshaft::detail::explained_of_tyre) read(setup.tyre()->try_explain(one.what));
    }
  EXPECT_GT(words.size(), 60u);
  for (const std::string& word : words) EXPECT_NE(find_word(word), nullptr) << word;
}

// ---- what the steps are ----

TEST(Explain, LeadsFromTheMarkingAndTheTeethToTheSpeed) {
  const Machine machine = layshaft_test::trail_bike();
  const Working working = explain(machine, machine.stock(), "road speed", {.gear = 3, .engine_speed = 5000_rpm});
  EXPECT_EQ(working.title(), "road speed in gear 3, Fernbrake 280 trail bike");
  EXPECT_EQ(names_of(working),
            (Names{"rim diameter", "section width", "aspect ratio", "section height", "height factor",
                   "overall diameter", "rolling factor", "circumference", "driving", "driven", "primary", "driving 3",
                   "driven 3", "gear 3", "front", "rear", "overall ratio", "engine speed", "road speed"}));
  EXPECT_EQ(value(working, "primary"), 66.0 / 21.0);
  EXPECT_EQ(value(working, "gear 3"), 28.0 / 19.0);
  EXPECT_EQ(step_named(working, "gear 3").formula(), &formula::gear_ratio::about);
  EXPECT_EQ(to_string(step_named(working, "overall ratio").certainty()), "derived");
  EXPECT_EQ(to_string(working.result().certainty()), "from memory");  // the tyre's limits and rolling factor are
  EXPECT_EQ(working.result().from_steps(), (std::vector<int>{17, 16, 7}));
}

TEST(Explain, TakesARatioThatWasStatedForGiven) {
  const Machine machine = layshaft_test::farm_bike();
  const Working working = explain(machine, machine.stock(), "overall ratio", {.gear = 4});
  EXPECT_EQ(step_named(working, "gear 4").kind(), StepKind::given);
  EXPECT_FALSE(has(working, "driving 4"));
  EXPECT_EQ(step_named(working, "primary").kind(), StepKind::computed);
}

TEST(Explain, TakesAMeasuredRolloutForGiven) {
  const Machine machine = layshaft_test::cargo_cycle();
  const Working working = explain(machine, machine.stock(), "circumference");
  EXPECT_EQ(names_of(working), (Names{"circumference"}));
  EXPECT_EQ(working.result().kind(), StepKind::given);
  EXPECT_EQ(working.result().source(), measured_rollout);
  EXPECT_EQ(to_string(working.result().certainty()), "stated");
  EXPECT_EQ(working.result().result(Corner::low), Amount(1490_mm));
}

TEST(Explain, TakesTheWornTreadOffTheDiameter) {
  const Machine machine = layshaft_test::trail_bike();
  const auto worn = with(machine.stock(), [](SetupParts& parts) { parts.tread_worn = 5_mm; });
  const Working working = explain(machine, worn, "circumference");
  EXPECT_EQ(step_named(working, "tread worn").result(), Amount(5_mm));
  EXPECT_NEAR(value(working, "worn diameter"), value(working, "overall diameter") - 0.010, 1e-15);
  EXPECT_EQ(step_named(working, "worn diameter").formula(), &formula::worn_diameter::about);
  EXPECT_NEAR(value(working, "circumference"), pi * value(working, "worn diameter") * value(working, "rolling factor"),
              1e-15);
}

TEST(Explain, ChoosesTheLinksAmongThoseThatFit) {
  MachineParts parts = layshaft_test::trail_bike_parts();
  parts.adjuster = Adjuster(602_mm, 660_mm, 40_mm);
  const Machine machine(parts);
  const Working working = explain(machine, machine.stock(), "links");
  const Step& links = working.result();
  EXPECT_EQ(links.kind(), StepKind::chosen);
  EXPECT_FALSE(links.detail().empty());
  const int least = static_cast<int>(links.result().value);
  EXPECT_EQ(least, appraise(machine, machine.stock()).chain().links.count());
  ASSERT_FALSE(links.run().others.empty());
  int longer = least;
  for (const Amount& other : links.run().others) {
    longer += 2;
    EXPECT_EQ(other, Amount(Links(longer)));
    EXPECT_TRUE(fit_links(ChainLoop(machine.chain(), 12_teeth, 47_teeth), Links(longer), machine.adjuster()).fits);
  }
  EXPECT_FALSE(fit_links(ChainLoop(machine.chain(), 12_teeth, 47_teeth), Links(longer + 2), machine.adjuster()).fits);
  // It is the first even number behind the real one that the foremost place of the axle asks for.
  const double exact = value(working, "links with slack at the front end");
  EXPECT_EQ(links.from_steps().size(), 1u);
  EXPECT_GE(least, exact);
  EXPECT_LT(least - 2.0, exact);
  EXPECT_EQ(step_named(working, "foremost centre").kind(), StepKind::chosen);
  EXPECT_EQ(step_named(working, "foremost centre").result(), Amount(602_mm));
  ASSERT_EQ(step_named(working, "foremost centre").run().others.size(), 1u);
  EXPECT_EQ(step_named(working, "foremost centre").run().others[0],
            Amount(ChainLoop(machine.chain(), 12_teeth, 47_teeth).smallest_centre()));
}

TEST(Explain, HasNoOthersToChooseWhereOneChainAloneFits) {
  const Machine machine = layshaft_test::farm_bike();
  const Working working = explain(machine, machine.stock(), "links");
  const ChainLoop loop(machine.chain(), machine.stock().front(), machine.stock().rear());
  const auto next = Links(static_cast<int>(working.result().result().value) + 2);
  EXPECT_EQ(working.result().run().others.empty(), !fit_links(loop, next, machine.adjuster()).fits);
}

TEST(Explain, TakesStatedLinksForGiven) {
  const Machine machine = layshaft_test::trail_bike();
  const auto stated = with(machine.stock(), [](SetupParts& parts) { parts.links = 110_links; });
  const Working working = explain(machine, stated, "links");
  EXPECT_EQ(working.result().kind(), StepKind::given);
  EXPECT_EQ(working.result().result(), Amount(110_links));
}

TEST(Explain, ProvesWhereTheAxleStands) {
  const Machine machine = layshaft_test::trail_bike();
  const Working working = explain(machine, machine.stock(), "centre");
  const Step& centre = working.result();
  EXPECT_EQ(centre.kind(), StepKind::solved);
  for (const Corner corner : corners) {
    const StepRun& run = *centre.run(corner);
    const Step& target = working.steps()[static_cast<std::size_t>(run.from.at(0))];
    const Step& proof = working.steps()[static_cast<std::size_t>(run.reached)];
    EXPECT_EQ(target.name(), "effective links");
    EXPECT_EQ(proof.name(), "links with slack");
    EXPECT_NEAR(proof.result(corner).value, target.result(corner).value, 1e-12);
    EXPECT_EQ(run.formula, &formula::links_with_slack::about);
  }
  // A new chain may be up to 0.15 % long; as long as nominal is the least, and what is meant.
  EXPECT_EQ(step_named(working, "elongation").result(Corner::low).value, 0.0);
  EXPECT_EQ(step_named(working, "elongation").result().value, 0.0);
  EXPECT_EQ(step_named(working, "elongation").result(Corner::high).value, 0.0015);
  EXPECT_EQ(centre.result(Corner::low), centre.result());
  EXPECT_GT(centre.result(Corner::high).value, centre.result().value);
}

TEST(Explain, TellsTheSpeedometersAllowanceFromItsMeasuredError) {
  const Machine allowed = layshaft_test::trail_bike(), measured = layshaft_test::farm_bike();
  const Working open = explain(allowed, allowed.stock(), "indicated speed", {.speed = 80_kmh});
  EXPECT_EQ(step_named(open, "stock reading").run(Corner::low)->formula, &formula::stock_reading::about);
  EXPECT_EQ(step_named(open, "stock reading").run(Corner::high)->formula, &formula::highest_lawful_reading::about);
  EXPECT_FALSE(step_named(open, "reading error").run(Corner::high));
  EXPECT_EQ(step_named(open, "reading error").source(), layshaft::detail::unmeasured_instrument);
  EXPECT_EQ(to_string(open.result().certainty()), "from memory");
  const Working known = explain(measured, measured.stock(), "indicated speed", {.speed = 80_kmh});
  EXPECT_EQ(step_named(known, "reading error").result(Corner::high).value, 0.06);
  EXPECT_EQ(step_named(known, "reading error").source(), sources::stated);
}

TEST(Explain, TakesAFrontTyreThatWasNotStatedForUnchanged) {
  const Machine machine = layshaft_test::farm_bike();
  const auto unstated = with(machine.stock(), [](SetupParts& parts) { parts.front_tyre.reset(); });
  const Working working = explain(machine, unstated, "indicated ratio");
  EXPECT_EQ(names_of(working), (Names{"indicated ratio"}));
  EXPECT_EQ(working.result().source().document, "no change of front tyre stated");
  EXPECT_EQ(explain(machine, unstated, "odometer drift").result().result().value, 0.0);
}

// A true 80 km/h on an instrument that is 2 to 6 % fast.
TEST(Explain, TellsABandOfTheInstrumentsOwnErrorWhereNothingElseChanges) {
  const Machine machine = layshaft_test::farm_bike();
  const Working working = explain(machine, machine.stock(), "indicated speed", {.speed = 80_kmh});
  const double shown[] = {1.02 * 80.0, 1.04 * 80.0, 1.06 * 80.0};
  for (std::size_t i = 0; i < 3; ++i)
    EXPECT_NEAR(working.result().result(corners[i]).value * 3.6, shown[i], 1e-12) << i;
}

/// The trail bike with an engine of the same torque all along, and whatever resists.
MachineParts evenly_pulling(Torque torque, std::optional<RoadLoad> road) {
  MachineParts parts = layshaft_test::trail_bike_parts();
  parts.engine = EngineCurve({2600_rpm, 10000_rpm}, {torque, torque});  // it may turn at 9100 rpm
  parts.drive_efficiency = Band<double>::exactly(0.9);
  parts.road_load = road;
  return parts;
}

TEST(Explain, NeedsARoadLoadForWhatResistsAlone) {
  const Machine machine(evenly_pulling(18_Nm, {}));
  const SetupQuestion at{.gear = 2, .speed = 30_kmh};
  const Working working = explain(machine, machine.stock(), "thrust", at);
  const double turns = 66.0 / 21.0 * (30.0 / 16.0) * (47.0 / 12.0) / value(working, "circumference");  // a metre
  EXPECT_NEAR(working.result().result().value, 0.9 * 18.0 * 2.0 * pi * turns, 1e-9);
  for (const std::string what : {"top speed", "steepest slope"}) {
    const auto refused = try_explain(machine, machine.stock(), what, at);
    ASSERT_FALSE(refused) << what;
    EXPECT_EQ(refused.error().what(), "to explain the " + what + ", the machine must state its road load");
  }
  // A slope also needs a mass, which what resists on the level does not.
  const Machine massless(evenly_pulling(18_Nm, RoadLoad(RoadCoefficients{.constant = 50_N})));
  EXPECT_TRUE(try_explain(massless, massless.stock(), "thrust", at));
  const auto on_slope = try_explain(massless, massless.stock(), "steepest slope", at);
  ASSERT_FALSE(on_slope);
  EXPECT_STREQ(on_slope.error().what(), "a slope needs the mass that climbs it; state the mass of the road load");
  const auto slope = [&](Force resists) {
    const Machine on_road(evenly_pulling(18_Nm, RoadLoad(RoadCoefficients{.constant = resists, .mass = 200_kg})));
    return explain(on_road, on_road.stock(), "steepest slope", at).result().result().value;
  };
  EXPECT_GT(slope(50_N), slope(100_N));
}

TEST(Explain, HoldsTheEngineSpeedAtItsLimit) {
  const Machine machine(evenly_pulling(18_Nm, {}));
  const Speed fastest = appraise(machine, machine.stock()).speed_range(2).highest.nominal;
  const Working within = explain(machine, machine.stock(), "thrust", {.gear = 2, .speed = 0.5 * fastest});
  EXPECT_TRUE(has(within, "engine speed"));
  EXPECT_FALSE(has(within, "limit engine speed"));
  // A small tyre would turn the engine faster than it may.
  const Working beyond = explain(machine, machine.stock(), "thrust", {.gear = 2, .speed = 0.9999 * fastest});
  const auto held = step_named(beyond, "limit engine speed").run(Corner::high);
  ASSERT_TRUE(held);
  EXPECT_EQ(held->result, Amount(9100_rpm));
}

// 2026-11-26: of a machine whose mass nobody stated only the top speed itself was told, not how it came about.
TEST(Explain, SaysWhatLimitsTheTopSpeed) {
  const auto of = [](Force constant, double quadratic) {
    const Machine machine(evenly_pulling(
        18_Nm, RoadLoad(RoadCoefficients{.constant = constant, .quadratic = quadratic * units::kg_per_m})));
    return explain(machine, machine.stock(), "top speed");
  };
  const double top_ratio = 66.0 / 21.0 * (25.0 / 24.0) * (47.0 / 12.0);
  const Working revs = of(10_N, 0.01);  // 9100 rpm in fifth gear
  EXPECT_EQ(value(revs, "limit engine speed"), AngularSpeed(9100_rpm).value());
  EXPECT_FALSE(has(revs, "balance engine speed"));
  EXPECT_NEAR(revs.result().result().value, 9100.0 / 60.0 / top_ratio * value(revs, "circumference"), 1e-12);
  // Where the thrust is even, 10 N + k v^2 meet it at the root of (thrust - 10 N) / k. Of 2 N s^2/m^2 that lies within
  // fourth gear, whose thrust is more than fifth's.
  const Working balance = of(10_N, 2.0);
  EXPECT_EQ(step_named(balance, "balance engine speed").kind(), StepKind::solved);
  EXPECT_FALSE(has(balance, "limit engine speed"));
  const double fourth = 66.0 / 21.0 * (27.0 / 22.0) * (47.0 / 12.0);
  const double thrust = 0.9 * 18.0 * 2.0 * pi * fourth / value(balance, "circumference");
  EXPECT_NEAR(balance.result().result().value, std::sqrt((thrust - 10.0) / 2.0), 1e-9);
  const Working none = of(20_kN, 0.5);
  EXPECT_EQ(none.result().result().value, 0.0);
  EXPECT_TRUE(has(none, "driving 1"));  // first gear stands for all
  EXPECT_FALSE(has(none, "driving 2"));
}

TEST(ComparisonExplain, SaysOfWhichSprocketItTells) {
  const Machine machine = layshaft_test::roomy_trail_bike();
  const Comparison comparison = compare(machine, layshaft_test::on_sprockets(machine, 14, 43, 106),
                                        layshaft_test::on_sprockets(machine, 13, 40, 104));
  const WearChange& wear = comparison.wear;
  struct Of {
    const char *what, *title, *step;
    const Band<double>& plain;
  };
  for (const Of& of :
       {Of{"front tooth", "change of how fast a front tooth wears", "front tooth change", wear.front_tooth_change},
        Of{"rear tooth", "change of how fast a rear tooth wears", "rear tooth change", wear.rear_tooth_change},
        Of{"front life", "change of how far the front sprocket lasts", "front life change", wear.front_life_change},
        Of{"rear life", "change of how far the rear sprocket lasts", "rear life change", wear.rear_life_change}}) {
    const Working working = comparison.explain(of.what);
    EXPECT_EQ(working.title(), of.title);
    EXPECT_EQ(working.result().name(), of.step);
    EXPECT_EQ(has(working, "base front"), std::string_view(of.what).starts_with("front")) << of.what;
    for (const Corner corner : corners)
      EXPECT_EQ(working.result().result(corner).value, of.plain.at(corner)) << of.what;
  }
}

TEST(ComparisonExplain, TellsBaseAndTrialApart) {
  const Machine machine = layshaft_test::trail_bike();
  const auto trial = with(machine.stock(), [](SetupParts& parts) {
    parts.rear = 50_teeth;
    parts.tyre = TyreSize("120/100-18 68M", TyreUse::special);
    parts.tread_worn = 2_mm;
  });
  const Comparison comparison = compare(machine, machine.stock(), trial);
  const Working working = comparison.explain("thrust");
  EXPECT_EQ(working.title(), "change of thrust");
  EXPECT_EQ(step_named(working, "base rear").result(), Amount(47_teeth));
  EXPECT_EQ(step_named(working, "trial rear").result(), Amount(50_teeth));
  EXPECT_EQ(step_named(working, "trial tread worn").result(), Amount(2_mm));
  EXPECT_FALSE(has(working, "base tread worn"));
  EXPECT_TRUE(has(working, "trial new circumference"));
  EXPECT_FALSE(has(working, "base new circumference"));
  // The causes' points and the trade's rule stand in it as the comparison has them.
  const Contributions causes = comparison.contributions(Change::thrust);
  ASSERT_EQ(causes.size(), 4u);
  const char* points[] = {"tyre contribution", "front contribution", "rear contribution", "wear contribution"};
  double sum = 0.0;
  for (std::size_t i = 0; i < causes.size(); ++i) {
    EXPECT_EQ(value(working, points[i]), causes[i].points.nominal) << points[i];
    sum += value(working, points[i]);
  }
  EXPECT_NEAR(sum, working.result().result().value, 1e-15);
  EXPECT_EQ(value(working, "thrust change by thumb"), comparison.rule_of_thumb.thrust_change);
  EXPECT_EQ(to_string(step_named(working, "thrust change by thumb").certainty()), "from memory");  // the tyres' growth
  EXPECT_FALSE(has(working, "loss factor"));
}

TEST(ComparisonExplain, CountsTheDrivesLossWhereBothStateIt) {
  const Machine machine = layshaft_test::trail_bike();
  const auto with_efficiency = [&](const Band<double>& efficiency) {
    return with(machine.stock(), [&](SetupParts& parts) { parts.drive_efficiency = efficiency; });
  };
  const auto worn = with_efficiency({0.90, 0.92, 0.95}), fresh = with_efficiency({0.96, 0.97, 0.98});
  const Working working = compare(machine, worn, fresh).explain("thrust");
  EXPECT_EQ(working.result().formula(), &formula::thrust_change_with_loss::about);
  EXPECT_NEAR(working.result().result().value, 0.97 / 0.92 - 1.0, 1e-15);
  EXPECT_NEAR(working.result().result(Corner::low).value, 0.96 / 0.95 - 1.0, 1e-15);
  EXPECT_NEAR(working.result().result(Corner::high).value, 0.98 / 0.90 - 1.0, 1e-15);
  EXPECT_EQ(step_named(working, "base drive efficiency").result(Corner::low).value, 0.95);
  EXPECT_NEAR(value(working, "loss contribution"), working.result().result().value, 1e-15);
  EXPECT_FALSE(has(compare(machine, worn, machine.stock()).explain("thrust"), "loss factor"));
  EXPECT_FALSE(has(compare(machine, worn, fresh).explain("speed"), "loss factor"));
}

TEST(ComparisonExplain, CancelsTheSameTyreToZeroWidth) {
  const Machine machine = layshaft_test::trail_bike();
  const auto trial = with(machine.stock(), [](SetupParts& parts) { parts.rear = 50_teeth; });
  for (const auto& one : layshaft::detail::explained_of_comparison)
    if (const auto working = compare(machine, machine.stock(), trial).try_explain(one.what)) {
      // These depend on the angle at which rollers press.
      if (one.what.ends_with(" tooth") || one.what.ends_with(" life")) continue;
      EXPECT_TRUE(working->result().exact()) << one.what;
    }
}

TEST(ComparisonExplain, SaysWhatACauseWithoutAPartLacks) {
  const Machine machine = layshaft_test::trail_bike();
  const Comparison comparison = compare(machine, machine.stock(), machine.stock());
  const auto wear = comparison.try_explain("thrust by wear"), loss = comparison.try_explain("thrust by drive loss");
  ASSERT_FALSE(wear);
  ASSERT_FALSE(loss);
  EXPECT_EQ(wear.error().kind(), ErrorKind::value);
  EXPECT_STREQ(wear.error().what(), "the wear has no part in this change of thrust: neither set-up states tread_worn");
  EXPECT_STREQ(loss.error().what(),
               "the drive loss has no part in this change of thrust: not both set-ups state drive_efficiency");
  EXPECT_FALSE(comparison.try_explain("speed by drive loss"));  // which is no name at all
}

// ---- what cannot be explained ----

TEST(Explain, ListsTheNamesItCanExplain) {
  const Machine machine = layshaft_test::trail_bike();
  for (const char* unknown : {"", "speed", "pull", "road  speed", "Road speed", "road speed\n"}) {
    const auto working = try_explain(machine, machine.stock(), unknown, {.gear = 1});
    ASSERT_FALSE(working) << unknown;
    EXPECT_EQ(working.error().kind(), ErrorKind::parse);
    for (const auto& one : layshaft::detail::explained_of_setup)
      EXPECT_NE(working.error().expected().find("\"" + std::string(one.what) + "\""), std::string::npos) << one.what;
  }
  EXPECT_THROW((void)explain(machine, machine.stock(), "pull"), ParseError);
  const Comparison comparison = compare(machine, machine.stock(), machine.stock());
  const auto working = comparison.try_explain("road speed");
  ASSERT_FALSE(working);
  for (const auto& one : layshaft::detail::explained_of_comparison)
    EXPECT_NE(working.error().expected().find("\"" + std::string(one.what) + "\""), std::string::npos) << one.what;
  EXPECT_THROW((void)comparison.explain("links"), ParseError);
  EXPECT_TRUE(try_explain(machine, machine.stock(), "wear_room"));
}

TEST(Explain, SaysWhatTheNumberDependsOn) {
  const Machine machine = layshaft_test::trail_bike();
  struct Open {
    const char *what, *needed;
    SetupQuestion at;
  };
  for (const auto& [what, needed, at] : {
           Open{"overall ratio", "gear", {.engine_speed = 5000_rpm, .speed = 80_kmh}},
           Open{"lowest speed", "gear", {}},
           Open{"highest speed", "gear", {}},
           Open{"road speed", "gear", {.engine_speed = 5000_rpm}},
           Open{"road speed", "engine speed", {.gear = 1, .speed = 80_kmh}},
           Open{"road speed", "engine speed", {}},
           Open{"engine speed", "gear", {.speed = 80_kmh}},
           Open{"engine speed", "speed", {.gear = 1, .engine_speed = 5000_rpm}},
           Open{"indicated speed", "speed", {}},
           Open{"highest lawful reading", "speed", {}},
       }) {
    const auto working = try_explain(machine, machine.stock(), what, at);
    ASSERT_FALSE(working) << what;
    EXPECT_EQ(working.error().kind(), ErrorKind::value);
    EXPECT_EQ(std::string(working.error().what()),
              "to explain the " + std::string(what) + ", say the " + needed + " as well");
    EXPECT_THROW((void)explain(machine, machine.stock(), what, at), Error);
  }
}

TEST(Explain, OfTheThrustNeedsAGearAndASpeed) {
  MachineParts parts = layshaft_test::trail_bike_parts();
  parts.engine = EngineCurve({2600_rpm, 9100_rpm}, {18_Nm, 17_Nm});
  parts.road_load = RoadLoad(RoadCoefficients{.constant = 40_N, .quadratic = 0.3_kg_per_m});
  const Machine machine(parts);
  EXPECT_TRUE(try_explain(machine, machine.stock(), "thrust", {.gear = 2, .speed = 30_kmh}));
  for (const SetupQuestion& open : {SetupQuestion{.speed = 30_kmh}, SetupQuestion{.gear = 2}, SetupQuestion{}})
    for (const std::string what : {"thrust", "steepest slope"}) {
      const auto working = try_explain(machine, machine.stock(), what, open);
      ASSERT_FALSE(working) << what;
      EXPECT_EQ(std::string(working.error().what()), "to explain the " + what + ", say the gear and the speed as well");
    }
  // Neither body nor road load states a mass, which a slope takes.
  const auto slope = try_explain(machine, machine.stock(), "steepest slope", {.gear = 2, .speed = 30_kmh});
  ASSERT_FALSE(slope);
  EXPECT_STREQ(slope.error().what(),
               try_steepest_slope(machine, machine.stock(), *machine.road_load(), 2, 30_kmh).error().what());
}

TEST(Explain, HandsTheErrorOfTheNumberItselfThrough) {
  const Machine machine = layshaft_test::trail_bike();
  const Appraisal appraisal = appraise(machine, machine.stock());
  for (const int gear : {0, -1, 6, std::numeric_limits<int>::max()})
    for (const char* what : {"overall ratio", "lowest speed", "highest speed", "road speed", "engine speed"}) {
      const auto working =
          try_explain(machine, machine.stock(), what, {.gear = gear, .engine_speed = 5000_rpm, .speed = 80_kmh});
      ASSERT_FALSE(working) << what;
      EXPECT_STREQ(working.error().what(), appraisal.try_speed_range(gear).error().what());
    }
  using Limits = std::numeric_limits<double>;
  for (const double bad : {-1.0, -Limits::denorm_min(), 1e9, Limits::quiet_NaN(), Limits::infinity()}) {
    const auto turned = AngularSpeed::from_value(bad);
    const auto road = try_explain(machine, machine.stock(), "road speed", {.gear = 1, .engine_speed = turned});
    ASSERT_FALSE(road) << bad;
    EXPECT_STREQ(road.error().what(), appraisal.try_speed_at(turned, 1).error().what());
    for (const char* what : {"engine speed", "indicated speed", "highest lawful reading"}) {
      const auto working = try_explain(machine, machine.stock(), what, {.gear = 1, .speed = Speed::from_value(bad)});
      ASSERT_FALSE(working) << what << " " << bad;
      EXPECT_EQ(working.error().kind(), ErrorKind::range);
      EXPECT_EQ(working.error().expected(), "0 km/h to 10000 km/h");
    }
  }
  for (const char* what : {"links", "centre", "wear room", "front passes", "rear distinct links"}) {
    const auto few = with(machine.stock(), [](SetupParts& parts) { parts.links = 40_links; });
    const auto none = with(machine.stock(), [](SetupParts& parts) { parts.rear = 80_teeth; });
    MachineParts parts = layshaft_test::trail_bike_parts();
    parts.adjuster = Adjuster(602_mm, 604_mm, 40_mm);
    const Machine tight(parts);
    for (const auto& [on, setup] : {std::pair{machine, few}, {tight, none}}) {
      const auto working = try_explain(on, setup, what);
      const auto plain = try_appraise(on, setup);
      ASSERT_FALSE(plain);
      ASSERT_FALSE(working) << what;
      EXPECT_STREQ(working.error().what(), plain.error().what());
      EXPECT_TRUE(try_explain(on, setup, "circumference"));  // which does not depend on the chain
    }
  }
}

TEST(Explain, KeepsTheMachinesNameAsItCame) {
  MachineParts parts = layshaft_test::trail_bike_parts();
  parts.name = "<script>alert(\"1\")</script> & $x_2$";
  const Machine machine(parts);
  EXPECT_EQ(explain(machine, machine.stock(), "links").title(), "links, " + parts.name);
}

// ---- textbooks, step by step ----

/// A car, put into a machine's clothes: a direct pair of sprockets, and its final drive as the primary.
Machine car(GearRatio primary, std::initializer_list<GearRatio> gears, Teeth front, Teeth rear, Length radius) {
  return Machine(
      {.name = "a textbook's car",
       .gearbox = Gearbox({.primary = primary, .gears = gears, .idle = 800_rpm, .rev_limit = 6000_rpm}),
       .adjuster = Adjuster(600_mm, 700_mm),
       .chain = ChainSeries("520"),
       .speedometer = Speedometer(SpeedometerSensor::layshaft),
       .stock = Setup({.front = front, .rear = rear, .circumference = Band<Length>::exactly(2.0 * pi * radius)})});
}

// Source: a university's vehicle dynamics course, propulsion limits, example 1 (road_worked_examples.csv, TB01): third
// gear 1.46, final drive 3.944, wheel radius 0.2888 m, 3200 rpm: 60.5046 km/h.
TEST(TextbookWorking, OfASpeedIsTheCourses) {
  const Machine machine = car(3.944, {1.46}, 20_teeth, 20_teeth, 0.2888_m);
  const Working working = explain(machine, machine.stock(), "road speed", {.gear = 1, .engine_speed = 3200_rpm});
  EXPECT_EQ(value(working, "primary"), 3.944);
  EXPECT_EQ(value(working, "gear 1"), 1.46);
  EXPECT_NEAR(value(working, "overall ratio"), 3.944 * 1.46, 1e-15);
  EXPECT_NEAR(value(working, "circumference"), 2.0 * pi * 0.2888, 1e-15);
  EXPECT_EQ(step_named(working, "engine speed").result(), Amount(3200_rpm));
  EXPECT_NEAR(working.result().result().value / (1_kmh).value(), printed_number("TB01", 0), 0.5e-4);
}

// Source: a published article on reading gear ratios (road_worked_examples.csv, TB14): primary drive 1.708 x 0.973 =
// 1.662, third gear 1.250, final drive 2.833; from 2000 rpm it leads to 1203, 963 and 340 rpm, stage by stage.
TEST(TextbookWorking, OfRatiosIsTheArticles) {
  const Machine machine = car(1.708 * 0.973, {2.571, 1.667, 1.250, 1.000, 0.800}, 12_teeth, 34_teeth, 300_mm);
  const Working working = explain(machine, machine.stock(), "overall ratio", {.gear = 3});
  EXPECT_NEAR(value(working, "primary"), printed_number("TB14", 0), 0.0005);
  EXPECT_EQ(value(working, "gear 3"), 1.25);
  const double behind_primary = 2000.0 / value(working, "primary");
  EXPECT_NEAR(behind_primary, printed_number("TB14", 1), 0.5);
  EXPECT_NEAR(behind_primary / value(working, "gear 3"), printed_number("TB14", 2), 0.5);
  EXPECT_NEAR(value(working, "rear") / value(working, "front"), 2.833, 0.0005);  // the article's final drive
  EXPECT_NEAR(2000.0 / working.result().result().value, printed_number("TB14", 3), 0.5);
}

// Source: U. C. Jindal, Machine Design, Ex. 29-2, p. 751 (road_worked_examples.csv, TB25): two stages of gears.
TEST(TextbookWorking, OfAGearboxIsJindals) {
  const Machine machine = car(pair(23, 47), {pair(20, 50), pair(33, 37), pair(18, 50)}, 20_teeth, 20_teeth, 300_mm);
  for (const int gear : {1, 2, 3}) {
    const Working working = explain(machine, machine.stock(), "overall ratio", {.gear = gear});
    EXPECT_EQ(step_named(working, "driving").result(), Amount(23_teeth));
    EXPECT_EQ(step_named(working, "driven").result(), Amount(47_teeth));
    EXPECT_NEAR(value(working, "primary") * value(working, "gear " + std::to_string(gear)),
                printed_number("TB25", gear - 1), 0.0005);
    EXPECT_NEAR(working.result().result().value, printed_number("TB25", gear - 1), 0.0005);
  }
}

// Source: a technical college's examination question (road_worked_examples.csv, TB23): a gear of 30 teeth that drives
// one of 29, and a final drive of 20 to 88. The asker's answer, 4.2, is cut off after one decimal.
TEST(TextbookWorking, OfTeethIsTheExaminations) {
  const Machine machine = car(1.0, {pair(30, 29)}, 20_teeth, 88_teeth, 315_mm);
  const Working working = explain(machine, machine.stock(), "overall ratio", {.gear = 1});
  EXPECT_EQ(value(working, "driving 1"), 30.0);
  EXPECT_EQ(value(working, "driven 1"), 29.0);
  EXPECT_GE(working.result().result().value, printed_number("TB23", 0));
  EXPECT_LT(working.result().result().value, printed_number("TB23", 0) + 0.1);
}

// Source: Khurmi & Gupta, Theory of Machines, Ex. 11.23, p. 376 (chain_worked_examples.csv, K11.23a): 20 teeth that
// drive 40 bring 240 rpm down to 120.
TEST(TextbookWorking, OfASpeedReductionIsKhurmisAndGuptas) {
  const Machine machine = car(1.0, {1.0}, 20_teeth, 40_teeth, 300_mm);
  const Working working = explain(machine, machine.stock(), "overall ratio", {.gear = 1});
  EXPECT_EQ(240.0 / working.result().result().value, 120.0);
}

}  // namespace
