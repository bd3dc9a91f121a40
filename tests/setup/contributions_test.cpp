// SPDX-License-Identifier: MIT
#include <layshaft/setup/contributions.hpp>

#include "setup/example_machines.hpp"

#include <gtest/gtest.h>
#include <core/formula_range.hpp>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <optional>
#include <string_view>
#include <vector>

namespace {
using namespace layshaft;
using layshaft_test::expect_range;
using layshaft_test::with;

constexpr Change changes[] = {Change::thrust, Change::speed, Change::engine_speed};

Band<double> whole(Change change, const layshaft::Setup& base, const layshaft::Setup& trial) {
  switch (change) {
    case Change::thrust: return thrust_change(base, trial);
    case Change::speed: return speed_change(base, trial);
    case Change::engine_speed: return engine_speed_change(base, trial);
  }
  return {};
}
std::optional<Band<double>> points(const Contributions& contributions, ContributionCause cause) {
  for (const Contribution& one : contributions)
    if (one.cause == cause) return one.points;
  return std::nullopt;
}
double sum(const Contributions& contributions) {
  double sum = 0.0;
  for (const Contribution& one : contributions) sum += one.points.nominal;
  return sum;
}
layshaft::Setup rolling(Length circumference, Teeth front, Teeth rear) {
  return layshaft::Setup({.front = front, .rear = rear, .circumference = Band<Length>::exactly(circumference)});
}

// Worked by hand: a tyre 6 % taller and 40 to 45 teeth behind. F = 1.125 / 1.06 = 1.0613207; (F − 1)/ln F · ln(1/1.06)
// = −0.06003, · ln 1.125 = 0.12135; together 0.06132.
TEST(Contributions, ShareATallerTyreAndMoreTeethOut) {
  const auto base = rolling(2_m, 14_teeth, 40_teeth), trial = rolling(2.12_m, 14_teeth, 45_teeth);
  const Contributions thrust = contributions(Change::thrust, base, trial);
  ASSERT_EQ(thrust.size(), 3u);
  EXPECT_NEAR(points(thrust, ContributionCause::tyre)->nominal, -0.0600, 0.5e-4);
  EXPECT_EQ(points(thrust, ContributionCause::front_sprocket), Band<double>::exactly(0.0));
  EXPECT_NEAR(points(thrust, ContributionCause::rear_sprocket)->nominal, 0.1214, 0.5e-4);
  EXPECT_NEAR(sum(thrust), 0.0613, 0.5e-4);
  EXPECT_NEAR(sum(thrust), 1.125 / 1.06 - 1.0, 1e-15);
  // Road speed at equal engine speed: the other way about, and by another mean.
  const Contributions speed = contributions(Change::speed, base, trial);
  EXPECT_NEAR(sum(speed), 1.06 / 1.125 - 1.0, 1e-15);
  const double mean = (1.06 / 1.125 - 1.0) / std::log(1.06 / 1.125);
  EXPECT_NEAR(points(speed, ContributionCause::tyre)->nominal, mean * std::log(1.06), 1e-15);
  EXPECT_NEAR(points(speed, ContributionCause::rear_sprocket)->nominal, -mean * std::log(1.125), 1e-15);
  // Engine speed at equal road speed changes as thrust does at equal torque.
  EXPECT_EQ(contributions(Change::engine_speed, base, trial), thrust);
}

TEST(Contributions, AddUpToTheWholeWhateverIsChanged) {
  int compared = 0;
  for (const Machine& machine : layshaft_test::all_machines()) {
    const std::vector<layshaft::Setup> setups = layshaft_test::all_setups(machine);
    for (const layshaft::Setup& base : setups)
      for (const layshaft::Setup& trial : setups)
        for (const Change change : changes) {
          const Contributions causes = contributions(change, base, trial);
          // The contributions are logarithms times a mean, each rounded; the whole is a quotient of its own.
          EXPECT_NEAR(sum(causes), whole(change, base, trial).nominal, 4e-15) << to_string(change);
          ++compared;
          for (const Contribution& one : causes) {
            EXPECT_TRUE(well_formed(one.points)) << to_string(one.cause);
          }
          EXPECT_FALSE(causes.overfull());
          ASSERT_GE(causes.size(), 3u);
          EXPECT_EQ(causes[0].cause, ContributionCause::tyre);
          EXPECT_EQ(causes[1].cause, ContributionCause::front_sprocket);
          EXPECT_EQ(causes[2].cause, ContributionCause::rear_sprocket);
        }
  }
  EXPECT_GT(compared, 5000);
}

TEST(Contributions, AddUpToTheWholeAtEveryCornerOfTheCauses) {
  const Machine machine = layshaft_test::trail_bike();
  for (const layshaft::Setup& base : {machine.stock(), layshaft_test::all_setups(machine)[9]})
    for (const layshaft::Setup& trial : layshaft_test::all_setups(machine))
      for (const Change change : changes) {
        Band<double> over = Band<double>::exactly(whole(change, base, trial).nominal);
        for (const ThrustCorners& at : layshaft::detail::change_corners(change, base, trial)) {
          double total = 0.0;
          for (const auto& one : layshaft::detail::contributions_at(Unwatched(), change, base, trial, at))
            total += one.points;
          over.include(total);
        }
        EXPECT_NEAR(over.low, whole(change, base, trial).low, 4e-15);
        EXPECT_NEAR(over.high, whole(change, base, trial).high, 4e-15);
      }
}

TEST(Contributions, OfTheWayBackAreThoseOfTheWayThereByTheRatio) {
  const Machine machine = layshaft_test::trail_bike();
  for (const layshaft::Setup& trial : layshaft_test::all_setups(machine)) {
    const auto there = contributions(Change::thrust, machine.stock(), trial);
    const auto back = contributions(Change::thrust, trial, machine.stock());
    const double ratio = 1.0 + thrust_change(machine.stock(), trial).nominal;
    ASSERT_EQ(there.size(), back.size());
    for (std::size_t i = 0; i < there.size(); ++i)
      EXPECT_NEAR(back[i].points.nominal, -there[i].points.nominal / ratio, 4e-15);
  }
}

// Where all factors together come to one, the mean is one, and each cause keeps its logarithm: no share blows up.
TEST(Contributions, StayFiniteWhereTheCausesCancel) {
  const auto base = rolling(2_m, 12_teeth, 40_teeth), trial = rolling(2.2_m, 12_teeth, 44_teeth);
  for (const Change change : changes) {
    const Contributions causes = contributions(change, base, trial);
    const double tyre = points(causes, ContributionCause::tyre)->nominal;
    EXPECT_NEAR(std::fabs(tyre), std::log(1.1), 1e-15) << to_string(change);
    EXPECT_NEAR(tyre + points(causes, ContributionCause::rear_sprocket)->nominal, 0.0, 1e-15);
  }
  const Contributions same = contributions(Change::thrust, base, base);
  for (const Contribution& one : same) EXPECT_EQ(one.points, Band<double>::exactly(0.0));
}

TEST(Contributions, TellWearFromAnotherTyre) {
  const Machine machine = layshaft_test::trail_bike();
  const auto& fresh = machine.stock();
  const auto worn = with(fresh, [](SetupParts& parts) { parts.tread_worn = 6_mm; });
  const auto taller = with(fresh, [](SetupParts& parts) { parts.tyre = "120/100-18"_tyre; });
  EXPECT_FALSE(points(contributions(Change::thrust, fresh, taller), ContributionCause::wear));
  for (const Change change : changes) {
    // The same tyre worn: all of the change is wear's, and none is the tyre's.
    const Contributions by_wear = contributions(change, fresh, worn);
    ASSERT_EQ(by_wear.size(), 4u);
    EXPECT_EQ(points(by_wear, ContributionCause::tyre), Band<double>::exactly(0.0));
    EXPECT_NEAR(points(by_wear, ContributionCause::wear)->nominal, whole(change, fresh, worn).nominal, 1e-15);
    EXPECT_NE(whole(change, fresh, worn).nominal, 0.0);
    EXPECT_EQ(points(contributions(change, worn, worn), ContributionCause::wear), Band<double>::exactly(0.0));
  }
  // A worn tyre that is swapped for a new one, and a taller one: wear is what has worn off, whatever comes on.
  const Contributions both = contributions(Change::thrust, worn, taller);
  EXPECT_LT(points(both, ContributionCause::wear)->nominal, 0.0);
  EXPECT_LT(points(both, ContributionCause::tyre)->nominal, 0.0);
  EXPECT_GT(points(contributions(Change::thrust, fresh, worn), ContributionCause::wear)->nominal, 0.0);
}

TEST(Contributions, TakeAMeasuredRolloutForWhatItIs) {
  const Machine machine = layshaft_test::trail_bike();
  const auto worn = with(machine.stock(), [](SetupParts& parts) { parts.tread_worn = 6_mm; });
  const auto measured = with(machine.stock(), [](SetupParts& parts) {
    parts.circumference = Band<Length>{2040_mm, 2050_mm, 2060_mm};
  });
  EXPECT_EQ(contributions(Change::speed, machine.stock(), measured).size(), 3u);
  const Contributions causes = contributions(Change::speed, worn, measured);
  ASSERT_EQ(causes.size(), 4u);  // the worn marking against itself, and nothing of the rollout's
  const double ratio = Rollout(machine.stock()).circumference().nominal / Rollout(worn).circumference().nominal;
  const double all = 1.0 + speed_change(worn, measured).nominal;
  EXPECT_NEAR(points(causes, ContributionCause::wear)->nominal, (all - 1.0) / std::log(all) * std::log(ratio), 1e-14);
}

TEST(Contributions, CountTheDrivesLossForThrustAloneAndWhereBothStateIt) {
  const Machine machine = layshaft_test::trail_bike();
  const auto& unstated = machine.stock();
  const auto stated = [&](double low, double nominal, double high) {
    return with(unstated, [&](SetupParts& parts) { parts.drive_efficiency = Band<double>{low, nominal, high}; });
  };
  const auto old = stated(0.90, 0.92, 0.94), fresh = stated(0.96, 0.97, 0.98);
  const Contributions thrust = contributions(Change::thrust, old, fresh);
  ASSERT_EQ(thrust.size(), 4u);
  const Band<double> loss = *points(thrust, ContributionCause::drive_loss);
  EXPECT_NEAR(loss.nominal, 0.97 / 0.92 - 1.0, 1e-15);
  EXPECT_NEAR(loss.low, 0.96 / 0.94 - 1.0, 1e-15);
  EXPECT_NEAR(loss.high, 0.98 / 0.90 - 1.0, 1e-15);
  EXPECT_EQ(points(thrust, ContributionCause::tyre)->nominal, 0.0);
  EXPECT_FALSE(points(contributions(Change::speed, old, fresh), ContributionCause::drive_loss));
  EXPECT_FALSE(points(contributions(Change::engine_speed, old, fresh), ContributionCause::drive_loss));
  EXPECT_FALSE(points(contributions(Change::thrust, old, unstated), ContributionCause::drive_loss));
  EXPECT_FALSE(points(contributions(Change::thrust, unstated, fresh), ContributionCause::drive_loss));
  // Both alike, they stand at the same corner and cancel.
  EXPECT_EQ(points(contributions(Change::thrust, old, old), ContributionCause::drive_loss), Band<double>::exactly(0.0));
  EXPECT_EQ(thrust_change(old, old), Band<double>::exactly(0.0));
}

TEST(Contributions, OfEverythingAtOnceAreFive) {
  const Machine machine = layshaft_test::trail_bike();
  const auto base =
      with(machine.stock(), [](SetupParts& parts) { parts.drive_efficiency = Band<double>::exactly(0.95); });
  const Contributions causes = contributions(Change::thrust, base, layshaft_test::all_setups(machine).back());
  ASSERT_EQ(causes.size(), Contributions::capacity);
  EXPECT_EQ(causes[3].cause, ContributionCause::wear);
  EXPECT_EQ(causes[4].cause, ContributionCause::drive_loss);
}

TEST(Contributions, HaveWords) {
  constexpr std::string_view words_of_changes[] = {"thrust", "speed", "engine speed"};
  for (std::size_t i = 0; i < std::size(changes); ++i) EXPECT_EQ(to_string(changes[i]), words_of_changes[i]);
  constexpr std::string_view words_of_causes[] = {"tyre", "front sprocket", "rear sprocket", "wear", "drive loss"};
  for (int i = 0; i < 5; ++i) EXPECT_EQ(to_string(static_cast<ContributionCause>(i)), words_of_causes[i]);
  static_assert(to_string(Change::thrust) == "thrust" && to_string(ContributionCause::tyre) == "tyre");
}

TEST(ContributionFormulas, KnowTheirRange) {
  expect_range<formula::tyre_factor>("++", 2_m, 2.1_m);
  expect_range<formula::front_factor>("##", 14_teeth, 13_teeth);
  expect_range<formula::rear_factor>("##", 40_teeth, 42_teeth);
  expect_range<formula::wear_factor>("++++", 2_m, 2.1_m, 2_m, 2.1_m);
  expect_range<formula::loss_factor>("++", 0.95, 0.97);
  expect_range<formula::thrust_ratio>("++", 1.1, 1.02);
  expect_range<formula::speed_factor>("+", 1.1);
}

}  // namespace
