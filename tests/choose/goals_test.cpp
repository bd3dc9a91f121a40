// SPDX-License-Identifier: MIT
#include <layshaft/choose/goals.hpp>

#include <gtest/gtest.h>

#include <limits>
#include <optional>
#include <string>
#include <vector>

namespace {
using namespace layshaft;

/// What is wrong with goals on a machine of five gears; empty where nothing is.
std::string goals_fault(const Goals& goals) {
  const auto error = detail::outside(goals, 5);
  return error ? std::string(error->what()) : std::string();
}
const std::vector<Wish> any_wish = {{{Measure::rear_teeth}, Want::less}};
std::string goals_fault(const Limit& limit) { return goals_fault(Goals{{limit}, any_wish}); }
std::string goals_fault(const Wish& wish) { return goals_fault(Goals{{}, {wish}}); }

TEST(Goals, NameTheKindThatAMeasureHasAndTheOneThatWasGiven) {
  struct Case {
    Measured measured;
    Amount amount;
    std::string given, expected;
  };
  const Case cases[] = {
      {{Measure::axle_room}, Amount::number(10.0), "a number", "a length"},
      {{Measure::load_margin}, 5_kmh, "a speed", "a mass"},
      {{Measure::speed_margin}, 5_kg, "a mass", "a speed"},
      {{Measure::engine_speed, {}, 50_kmh}, 5_deg, "an angle", "an angular speed"},
      {{Measure::climb}, 5_rpm, "an angular speed", "an angle"},
      {{Measure::thrust_change}, 5_mm, "a length", "a number"},
      {{Measure::links}, 5_mm, "a length", "a number"},
  };
  for (const Case& one : cases) {
    const std::string rest =
        " of \"" + std::string(to_string(one.measured.what)) + "\" is " + one.given + "; expected " + one.expected;
    EXPECT_EQ(goals_fault(Limit{one.measured, one.amount, {}}), "limits[0]: least" + rest);
    EXPECT_EQ(goals_fault(Limit{one.measured, {}, one.amount}), "limits[0]: most" + rest);
    EXPECT_EQ(goals_fault(Wish{one.measured, Want::target, one.amount}), "wishes[0]: target" + rest);
  }
  // Numbers and fractions stand for each other.
  EXPECT_EQ(goals_fault(Limit{{Measure::thrust_change}, Amount::number(0.1), Amount::fraction(0.2)}), "");
  EXPECT_EQ(goals_fault(Limit{{Measure::links}, Amount::fraction(90.0), Amount::number(100.0)}), "");
}

TEST(Goals, TakeAmountsThatStandForSomething) {
  for (const double amount : {-1e12, 0.0, 1e12})
    EXPECT_EQ(goals_fault(Limit{{Measure::cost}, Amount::number(amount), {}}), "") << amount;
  for (const double amount : {-1.1e12, 1.1e12, std::numeric_limits<double>::quiet_NaN(),
                              std::numeric_limits<double>::infinity(), -std::numeric_limits<double>::infinity()}) {
    const auto error = detail::outside(Limit{{Measure::cost}, {}, Amount::number(amount)}, 5);
    ASSERT_TRUE(error) << amount;
    EXPECT_EQ(error->kind(), ErrorKind::range);
    EXPECT_EQ(std::string(error->what()).rfind("most is ", 0), 0u) << error->what();
    EXPECT_NE(std::string(error->what()).find("; expected -1e12 to 1e12 in SI units"), std::string::npos);
  }
}

TEST(Goals, AskAtAGearAndASpeedWhereTheMeasureHasThem) {
  for (const int gear : {1, 5}) EXPECT_EQ(goals_fault(Wish{{Measure::climb, gear}}), "") << gear;
  EXPECT_EQ(goals_fault(Wish{{Measure::climb}}), "");
  for (const int gear : {-1, 0, 6})
    EXPECT_EQ(goals_fault(Wish{{Measure::climb, gear}}),
              "wishes[0]: gear of \"climb\" is " + std::to_string(gear) + "; expected 1 to 5");
  EXPECT_EQ(goals_fault(Wish{{Measure::climb, {}, 50_kmh}}),
            "wishes[0]: \"climb\" depends on no speed; leave speed out");
  EXPECT_EQ(goals_fault(Wish{{Measure::engine_speed, 2, 50_kmh}}), "");
  EXPECT_NE(goals_fault(Wish{{Measure::engine_speed, 2, 0_kmh}}).find("speed is 0"), std::string::npos);
}

TEST(Goals, HaveLimitsThatCanBeKept) {
  const auto links = [](std::optional<double> least, std::optional<double> most) {
    Limit limit{{Measure::links}};
    if (least) limit.least = Amount::number(*least);
    if (most) limit.most = Amount::number(*most);
    return goals_fault(limit);
  };
  EXPECT_EQ(links(104.0, {}), "");
  EXPECT_EQ(links({}, 104.0), "");
  EXPECT_EQ(links(104.0, 104.0), "");
  EXPECT_EQ(links(106.0, 104.0), "limits[0]: a limit's most lies below its least, so that nothing can keep it");
  EXPECT_EQ(links({}, {}), "limits[0]: a limit needs least, most, or both; neither was given");
}

TEST(Goals, HaveWishesThatSayWhatFor) {
  const auto cost = [](Want want, std::optional<Amount> target, double weight = 1.0) {
    return goals_fault(Wish{{Measure::cost}, want, target, weight});
  };
  EXPECT_EQ(cost(Want::target, Amount::number(50.0)), "");
  EXPECT_EQ(cost(Want::target, {}), "wishes[0]: a wish for a target needs the target");
  for (const Want want : {Want::less, Want::more})
    EXPECT_EQ(cost(want, Amount::number(50.0)), "wishes[0]: a wish for less or more has no target");
  for (const double weight : {1e-300, 1e6}) EXPECT_EQ(cost(Want::less, {}, weight), "") << weight;
  for (const double weight : {0.0, -1.0, 1.1e6, std::numeric_limits<double>::quiet_NaN()})
    EXPECT_NE(cost(Want::less, {}, weight).find("; expected above 0, to 1000000"), std::string::npos) << weight;
}

TEST(Goals, AreNeitherTooFewNorTooMany) {
  const Limit limit{{Measure::links}, Amount::number(90.0), {}};
  const auto so_many = [&](std::size_t limits, std::size_t wishes) {
    return goals_fault(Goals{std::vector<Limit>(limits, limit), std::vector<Wish>(wishes, any_wish[0])});
  };
  EXPECT_EQ(so_many(0, 1), "");
  EXPECT_EQ(so_many(32, 16), "");
  EXPECT_EQ(so_many(33, 16), "number of limits is 33; expected at most 32");
  EXPECT_EQ(so_many(32, 17), "number of wishes is 17; expected 1 to 16");
  EXPECT_EQ(so_many(32, 0), "number of wishes is 0; expected 1 to 16");
}

}  // namespace
