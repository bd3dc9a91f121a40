// SPDX-License-Identifier: MIT
#include "setup/machines.hpp"

#include <gtest/gtest.h>

#include <string>

namespace {
using namespace layshaft;
using layshaft_test::machines;
using layshaft_test::with;

Teeth more(Teeth teeth, int added) { return Teeth(teeth.count() + added); }

TEST(Compare, FindsNoChangeInTheSameSetup) {
  for (const Machine& machine : machines()) {
    const Comparison comparison = compare(machine, machine.stock(), machine.stock());
    EXPECT_EQ(comparison.base, comparison.trial);
    EXPECT_EQ(comparison.thrust_change, Band<double>::exactly(0.0));
    EXPECT_EQ(comparison.speed_change, Band<double>::exactly(0.0));
    EXPECT_EQ(comparison.engine_speed_change, Band<double>::exactly(0.0));
    EXPECT_EQ(comparison.indicated_ratio, Band<double>::exactly(1.0));
    EXPECT_EQ(comparison.links_change, 0);
    EXPECT_EQ(comparison.rule_of_thumb, (RuleOfThumb{0.0, 0.0}));
    EXPECT_EQ(comparison.wear.chain_tension_change, Band<double>::exactly(0.0));
    EXPECT_EQ(comparison.wear.front_contacts_change, Band<double>::exactly(0.0));
    EXPECT_EQ(comparison.wear.rear_contacts_change, Band<double>::exactly(0.0));
    for (const Change change : {Change::thrust, Change::speed, Change::engine_speed})
      for (const Contribution& one : comparison.contributions(change))
        EXPECT_EQ(one.points, Band<double>::exactly(0.0)) << to_string(change) << ", " << to_string(one.cause);
  }
}

// 2026-11-25: the change of contacts was the quotient of two rounded counts, and kept a width of one ulp with the same
// tyre on both sides.
TEST(Compare, CancelsTheSameTyreOnBothSidesToZeroWidth) {
  for (const Machine& machine : machines())
    for (const int front : {-1, 0, 1})
      for (const int rear : {-3, -2, 1, 3}) {
        const auto trial = with(machine.stock(), [&](SetupParts& parts) {
          parts.front = more(parts.front, front);
          parts.rear = more(parts.rear, rear);
        });
        const Comparison comparison = compare(machine, machine.stock(), trial);
        for (const Band<double>& band :
             {comparison.thrust_change, comparison.speed_change, comparison.engine_speed_change,
              comparison.indicated_ratio, comparison.wear.chain_tension_change, comparison.wear.front_contacts_change,
              comparison.wear.rear_contacts_change})
          EXPECT_EQ(band.width(), 0.0) << machine.name() << " " << front << " " << rear;
        for (const Change change : {Change::thrust, Change::speed, Change::engine_speed})
          for (const Contribution& one : comparison.contributions(change)) EXPECT_EQ(one.points.width(), 0.0);
        EXPECT_EQ(comparison.wear.front_contacts_change, comparison.thrust_change);  // a turn is a turn
        EXPECT_EQ(comparison.wear.rear_contacts_change, Band<double>::exactly(0.0));
      }
}

TEST(Compare, ComposesTheChangesOfTheTwoSetups) {
  const Machine machine = layshaft_test::trail_bike();
  const auto& base = machine.stock();
  const auto trial = with(base, [](SetupParts& parts) {
    parts.rear = 50_teeth;
    parts.tyre = TyreSize("120/100-18 68M", TyreUse::special);
  });
  const Comparison comparison = compare(machine, base, trial);
  EXPECT_EQ(comparison.base.chain(), appraise(machine, base).chain());
  EXPECT_EQ(comparison.trial.chain(), appraise(machine, trial).chain());
  EXPECT_EQ(comparison.thrust_change, thrust_change(base, trial));
  EXPECT_EQ(comparison.speed_change, speed_change(base, trial));
  EXPECT_EQ(comparison.engine_speed_change, engine_speed_change(base, trial));
  EXPECT_EQ(comparison.indicated_ratio, indicated_ratio(SpeedometerSensor::layshaft, base, trial));
  EXPECT_EQ(comparison.links_change, comparison.trial.chain().links.count() - comparison.base.chain().links.count());
  EXPECT_EQ(comparison.cautions(), comparison.trial.cautions());
  EXPECT_GT(comparison.thrust_change.width(), 0.0);
  // Three teeth behind by 2 % each, less the growth of the tyre: (120 − 110) · 2 / 677 of its diameter.
  EXPECT_NEAR(comparison.rule_of_thumb.thrust_change, 0.06 - 20.0 / 677.0, 1e-12);
  EXPECT_EQ(comparison.rule_of_thumb.error, comparison.rule_of_thumb.thrust_change - comparison.thrust_change.nominal);
  // A tooth less in front gives, a tooth more takes.
  const auto smaller_front = with(base, [](SetupParts& parts) { parts.front = 11_teeth; });
  EXPECT_GT(compare(machine, base, smaller_front).rule_of_thumb.thrust_change, 0.0);
  EXPECT_LT(compare(machine, smaller_front, base).rule_of_thumb.thrust_change, 0.0);
  EXPECT_NEAR(compare(machine, base, smaller_front).rule_of_thumb.error, 0.06 - 1.0 / 11.0, 1e-12);  // as three behind
  // The speedometer was made for the stock parts, whatever was ridden before.
  const Comparison from_trial = compare(machine, trial, smaller_front);
  EXPECT_EQ(from_trial.trial.speedometer(), appraise(machine, smaller_front).speedometer());
  EXPECT_EQ(from_trial.base.speedometer(), appraise(machine, trial).speedometer());
  EXPECT_EQ(from_trial.indicated_ratio, indicated_ratio(SpeedometerSensor::layshaft, trial, smaller_front));
}

TEST(Compare, SharesTheChangeOfThrustOutToTheLastPoint) {
  for (const Machine& machine : machines()) {
    auto trial = with(machine.stock(), [](SetupParts& parts) {
      parts.front = more(parts.front, -1);
      parts.rear = more(parts.rear, 2);
      if (parts.tyre)
        parts.tyre = parts.tyre->notation() == TyreNotation::code ? "3.00-17 45P"_tyre : "120/100-18 68M"_tyre;
      if (parts.circumference) parts.circumference = Band<Length>{1520_mm, 1535_mm, 1540_mm};
    });
    const Comparison comparison = compare(machine, machine.stock(), trial);
    const Contributions causes = comparison.contributions(Change::thrust);
    ASSERT_EQ(causes.size(), 3u);
    const Contribution tyre = causes[0], front = causes[1], rear = causes[2];
    EXPECT_EQ(tyre.cause, ContributionCause::tyre);
    EXPECT_EQ(front.cause, ContributionCause::front_sprocket);
    EXPECT_EQ(rear.cause, ContributionCause::rear_sprocket);
    EXPECT_NEAR(tyre.points.nominal + front.points.nominal + rear.points.nominal, comparison.thrust_change.nominal,
                1e-15);
    EXPECT_LT(tyre.points.nominal, 0.0) << machine.name();
    EXPECT_GT(front.points.nominal, 0.0) << machine.name();
    EXPECT_GT(rear.points.nominal, 0.0) << machine.name();
    EXPECT_GT(tyre.points.width(), front.points.width()) << machine.name();  // the tyre is what is not known
  }
  static_assert(to_string(ContributionCause::front_sprocket) == "front sprocket");
}

// Computed: sin(180°/43) against sin(180°/40), pitch for pitch. The two ratios differ by 0.2 %.
TEST(Compare, TellsTwoWaysToOneRatioApartByTheChainsPull) {
  MachineParts parts = layshaft_test::trail_bike_parts();
  parts.adjuster = Adjuster(590_mm, 640_mm, 40_mm);
  const Machine machine(parts);
  const auto of = [&](Teeth front, Teeth rear) {
    return with(machine.stock(), [&](SetupParts& setup) {
      setup.front = front;
      setup.rear = rear;
    });
  };
  const Comparison comparison = compare(machine, of(14_teeth, 43_teeth), of(13_teeth, 40_teeth));
  EXPECT_NEAR(comparison.wear.chain_tension_change.nominal, 0.075, 0.0005);
  EXPECT_NEAR(comparison.wear.front_contacts_change.nominal, 0.0, 0.002);
  EXPECT_NEAR(comparison.thrust_change.nominal, 0.0, 0.002);
}

TEST(Compare, NamesTheSetupThatCannotBeAppraised) {
  const Machine machine = layshaft_test::trail_bike();
  const auto bad = with(machine.stock(), [](SetupParts& parts) { parts.links = 40_links; });
  const auto of_base = try_compare(machine, bad, machine.stock());
  const auto of_trial = try_compare(machine, machine.stock(), bad);
  ASSERT_FALSE(of_base);
  ASSERT_FALSE(of_trial);
  EXPECT_TRUE(std::string(of_base.error().what()).starts_with("base: number of links is 40;"))
      << of_base.error().what();
  EXPECT_TRUE(std::string(of_trial.error().what()).starts_with("trial: number of links is 40;"))
      << of_trial.error().what();
  EXPECT_THROW(static_cast<void>(compare(machine, bad, machine.stock())), RangeError);
  // No even chain closes in 4 mm of adjuster, for one of the two.
  MachineParts parts = layshaft_test::trail_bike_parts();
  const Length centre = appraise(machine, machine.stock()).chain().centre.low;
  parts.adjuster = Adjuster(centre - 1.0_mm, centre + 3.0_mm, 40_mm);
  const Machine tight(parts);
  const auto between = with(machine.stock(), [](SetupParts& of) { of.rear = 49_teeth; });
  const auto misses = try_compare(tight, tight.stock(), between);
  ASSERT_FALSE(misses);
  const std::string what = misses.error().what();
  for (const char* words : {"trial: no even number of links fits", "12/49 teeth", "the nearest sprockets that close"})
    EXPECT_NE(what.find(words), std::string::npos) << words << "\n" << what;
  EXPECT_TRUE(std::string(try_compare(tight, between, tight.stock()).error().what()).starts_with("base: no even "));
}

}  // namespace
