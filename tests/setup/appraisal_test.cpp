// SPDX-License-Identifier: MIT
#include "setup/machines.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <optional>
#include <string>
#include <type_traits>
#include <utility>

namespace {
using namespace layshaft;
using layshaft_test::machines;
using layshaft_test::with;

TEST(Appraise, ComposesWhatEachLayerSays) {
  for (const Machine& machine : machines()) {
    const auto& stock = machine.stock();
    const Appraisal appraisal = appraise(machine, stock);
    const Band<Length> circumference = Rollout(stock).circumference();
    EXPECT_EQ(appraisal.circumference(), circumference);
    ASSERT_EQ(appraisal.overall_ratios().size(), machine.gearbox().gears().size());
    for (std::size_t i = 0; i < appraisal.overall_ratios().size(); ++i)
      EXPECT_EQ(appraisal.overall_ratios()[i],
                overall_ratio(machine.gearbox().primary().ratio(), machine.gearbox().gears()[i].ratio(), stock.front(),
                              stock.rear()));
    const ChainLoop loop(machine.chain(), stock.front(), stock.rear());
    const Links links = shortest_links(loop, machine.adjuster());
    EXPECT_EQ(appraisal.chain(), fit_links(loop, links, machine.adjuster()));
    EXPECT_EQ(appraisal.wear(), tooth_wear(stock.front(), stock.rear(), links, circumference));
    EXPECT_EQ(appraisal.speedometer(),
              SpeedometerReading(machine.speedometer().reading_error(), Band<double>::exactly(1.0)));
    EXPECT_EQ(appraisal, *try_appraise(machine, stock));
  }
}

TEST(Appraise, TakesTheShortestEvenChainThatFitsUnlessLinksAreStated) {
  for (const Machine& machine : machines()) {
    const ChainFit chosen = appraise(machine, machine.stock()).chain();
    EXPECT_TRUE(chosen.fits) << machine.name();
    EXPECT_EQ(chosen.links.count() % 2, 0) << machine.name();
    const auto shorter = appraise(
        machine, with(machine.stock(), [&](SetupParts& parts) { parts.links = Links(chosen.links.count() - 2); }));
    EXPECT_FALSE(shorter.chain().fits) << machine.name();
    EXPECT_LT(shorter.chain().adjuster_forward.low, 0.0_mm) << machine.name();
    EXPECT_EQ(shorter.chain().links.count(), chosen.links.count() - 2);
  }
}

TEST(Appraise, GivesSpeedsAndEngineSpeedsAsBands) {
  for (const Machine& machine : machines()) {
    const Appraisal appraisal = appraise(machine, machine.stock());
    const Band<Length> circumference = appraisal.circumference();
    const int gears = static_cast<int>(appraisal.overall_ratios().size());
    for (int gear = 1; gear <= gears; ++gear) {
      const double ratio = appraisal.overall_ratios()[static_cast<std::size_t>(gear - 1)];
      const Band<Speed> speed = appraisal.speed_at(100_rpm, gear);
      EXPECT_EQ(speed.low, road_speed(100_rpm, ratio, circumference.low));
      EXPECT_EQ(speed.nominal, road_speed(100_rpm, ratio, circumference.nominal));
      EXPECT_EQ(speed.high, road_speed(100_rpm, ratio, circumference.high));
      const Band<AngularSpeed> engine = appraisal.engine_speed_at(20_kmh, gear);
      EXPECT_EQ(engine.low, engine_speed(20_kmh, ratio, circumference.high));  // a larger tyre turns it slower
      EXPECT_EQ(engine.high, engine_speed(20_kmh, ratio, circumference.low));
      const SpeedRange range = appraisal.speed_range(gear);
      EXPECT_EQ(range.lowest, appraisal.speed_at(machine.gearbox().lowest_pull(), gear));
      EXPECT_EQ(range.highest, appraisal.speed_at(machine.gearbox().rev_limit(), gear));
    }
  }
}

// The greatest torque, through primary and first gear on the pitch circle of 12 teeth; nothing strikes.
TEST(Appraise, LoadsTheChainWithTheGreatestTorqueInFirstGear) {
  MachineParts parts = layshaft_test::trail_bike_parts();
  parts.peak_torque = PeakTorque{26_Nm, 6800_rpm};
  const auto loads = appraise(Machine(parts), parts.stock).drive().loads;
  ASSERT_TRUE(loads);
  const double ratio = 66.0 / 21.0 * (33.0 / 12.0), pitch = 0.015875;
  EXPECT_NEAR(loads->pull / units::N, 26.0 * ratio / (0.5 * pitch / std::sin(pi / 12.0)), 1e-9);
  EXPECT_NEAR(loads->chain_speed.value(), 6800.0 / 60.0 / ratio * 12.0 * pitch, 1e-12);
  EXPECT_EQ(loads->greatest_tension, loads->tight_tension);
}

TEST(Appraise, RefusesGearsThatAreNotThereAndSpeedsThatCannotBe) {
  const Appraisal appraisal = appraise(layshaft_test::trail_bike(), layshaft_test::trail_bike().stock());
  for (const int gear : {0, -1, 6, 1000000}) {
    EXPECT_EQ(appraisal.try_speed_at(3000_rpm, gear).error().what(),
              "gear is " + std::to_string(gear) + "; expected 1 to 5");
    EXPECT_FALSE(appraisal.try_engine_speed_at(50_kmh, gear));
    EXPECT_FALSE(appraisal.try_speed_range(gear));
    EXPECT_THROW(static_cast<void>(appraisal.speed_range(gear)), RangeError);
  }
  for (const double bad : {-1.0, std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity(),
                           -std::numeric_limits<double>::infinity()}) {
    EXPECT_FALSE(appraisal.try_speed_at(AngularSpeed::from_value(bad), 1)) << bad;
    EXPECT_FALSE(appraisal.try_engine_speed_at(Speed::from_value(bad), 1)) << bad;
    EXPECT_THROW(static_cast<void>(appraisal.speed_at(AngularSpeed::from_value(bad), 1)), RangeError);
    EXPECT_THROW(static_cast<void>(appraisal.engine_speed_at(Speed::from_value(bad), 1)), RangeError);
  }
  EXPECT_EQ(appraisal.speed_at(0_rpm, 1), Band<Speed>::exactly(0_kmh));
  EXPECT_EQ(appraisal.engine_speed_at(0_kmh, 1), Band<AngularSpeed>::exactly(0_rpm));
}

// 2026-11-25: a loop over the lists of an appraisal that nobody kept ran over memory that was given back.
TEST(Appraise, GivesListsThatOutliveIt) {
  static_assert(std::is_same_v<decltype(std::declval<Appraisal>().cautions()), Cautions>);
  static_assert(std::is_same_v<decltype(std::declval<const Appraisal&>().cautions()), const Cautions&>);
  static_assert(std::is_same_v<decltype(std::declval<Comparison>().cautions()), Cautions>);
  const Machine machine = layshaft_test::trail_bike();
  const Appraisal kept = appraise(machine, machine.stock());
  std::size_t told = 0;
  for (const Caution& caution : appraise(machine, machine.stock()).cautions())
    EXPECT_EQ(caution, kept.cautions()[told++]);
  EXPECT_EQ(told, kept.cautions().size());
  std::size_t gears = 0;
  for (const double ratio : appraise(machine, machine.stock()).overall_ratios())
    EXPECT_EQ(ratio, kept.overall_ratios()[gears++]);
  EXPECT_EQ(gears, kept.overall_ratios().size());
}

TEST(Appraise, SaysByHowMuchNoEvenChainFitsAndWhichNearestSprocketsWould) {
  MachineParts parts = layshaft_test::trail_bike_parts();
  parts.adjuster = Adjuster(619_mm, 627_mm, 40_mm);  // 108 links end in front of it, 110 behind it
  const Machine machine(parts);
  const auto appraisal = try_appraise(machine, machine.stock());
  ASSERT_FALSE(appraisal);
  EXPECT_EQ(appraisal.error().kind(), ErrorKind::value);
  const std::string what = appraisal.error().what();
  for (const char* words :
       {"no even number of links fits", "12/47 teeth", "108 links leave the axle", "short of its front end",
        "110 links run up to", "past its rear end", "the nearest sprockets that close: "})
    EXPECT_NE(what.find(words), std::string::npos) << words << "\n" << what;
  EXPECT_THROW(static_cast<void>(appraise(machine, machine.stock())), Error);
  // The sprockets it names do close.
  const std::size_t name = what.find("close: ") + 7;
  const int front = std::stoi(what.substr(name)), rear = std::stoi(what.substr(what.find('/', name) + 1));
  EXPECT_TRUE(appraise(machine, with(machine.stock(),
                                     [&](SetupParts& of) {
                                       of.front = Teeth(front);
                                       of.rear = Teeth(rear);
                                     }))
                  .chain()
                  .fits);
}

TEST(Appraise, RefusesFewerLinksThanTheSprocketsCanCarry) {
  const Machine machine = layshaft_test::trail_bike();
  const auto appraisal =
      try_appraise(machine, with(machine.stock(), [](SetupParts& parts) { parts.links = 40_links; }));
  ASSERT_FALSE(appraisal);
  EXPECT_EQ(appraisal.error().kind(), ErrorKind::range);
  EXPECT_TRUE(std::string(appraisal.error().what()).starts_with("number of links is 40; expected "))
      << appraisal.error().what();
}

TEST(Appraise, IsSurerWhereTheTyresRolloutWasMeasured) {
  const Machine machine = layshaft_test::trail_bike();
  const auto measured = with(machine.stock(), [](SetupParts& parts) {
    const Length rollout = rolling_circumference(*parts.tyre).nominal;
    parts.circumference = Band<Length>{rollout * 0.998, rollout, rollout * 1.002};
  });
  const Appraisal sure = appraise(machine, measured), rough = appraise(machine, machine.stock());
  for (const int gear : {1, 5}) {
    const Band<Speed> narrow = sure.speed_at(5000_rpm, gear), wide = rough.speed_at(5000_rpm, gear);
    EXPECT_GT(narrow.width(), 0_kmh);
    EXPECT_LT(narrow.width(), 0.25 * wide.width());
    EXPECT_EQ(narrow.nominal, wide.nominal);
    EXPECT_LT(wide.low, narrow.low);
    EXPECT_GT(wide.high, narrow.high);
    EXPECT_LT(sure.engine_speed_at(60_kmh, gear).width(), rough.engine_speed_at(60_kmh, gear).width());
  }
}

// UN R39, paragraph 5.3: at 90 km/h a reading from 90 to 103 km/h. Each rear tooth of 47 is 2.1 % on the layshaft.
TEST(Appraise, HoldsTheSpeedometerAgainstTheRuleAndTheOdometerApart) {
  const auto of = [](const std::optional<Band<double>>& error, int rear) {
    MachineParts parts = layshaft_test::trail_bike_parts();
    parts.speedometer = Speedometer(SpeedometerSensor::layshaft, error);
    return appraise(Machine(parts), with(parts.stock, [&](SetupParts& setup) { setup.rear = Teeth(rear); }))
        .speedometer();
  };
  const auto exact = Band<double>::exactly(0.05);
  EXPECT_EQ(of(exact, 47).verdict(90_kmh), SpeedometerVerdict::lawful);    // 94.5
  EXPECT_EQ(of(exact, 45).verdict(90_kmh), SpeedometerVerdict::lawful);    // 90.5
  EXPECT_EQ(of(exact, 44).verdict(90_kmh), SpeedometerVerdict::too_low);   // 88.5
  EXPECT_EQ(of(exact, 51).verdict(90_kmh), SpeedometerVerdict::lawful);    // 102.5
  EXPECT_EQ(of(exact, 52).verdict(90_kmh), SpeedometerVerdict::too_high);  // 104.6
  EXPECT_EQ(of(Band<double>{0.03, 0.05, 0.07}, 45).verdict(90_kmh), SpeedometerVerdict::uncertain);
  EXPECT_EQ(of(std::nullopt, 45).verdict(90_kmh), SpeedometerVerdict::uncertain);
  EXPECT_GT(of(std::nullopt, 45).indicated(90_kmh).width(), 12_kmh);  // unknown: all that the rule allowed
  EXPECT_EQ(of(exact, 45).indicated(90_kmh).width(), 0_kmh);
  for (const auto& error : {std::optional<Band<double>>(), std::optional<Band<double>>(exact)}) {
    EXPECT_NEAR(of(error, 45).odometer_drift().nominal, 45.0 / 47.0 - 1.0, 1e-15);
    EXPECT_NEAR(of(error, 45).correction_factor().nominal, 47.0 / 45.0, 1e-15);
  }
}

/// The trail bike on a swingarm of the usual geometry, or of another.
MachineParts swung_trail_bike(Length layshaft_ahead = 70_mm, Length arm = 550_mm) {
  MachineParts parts = layshaft_test::trail_bike_parts();
  parts.suspension = Suspension({.layshaft_ahead = layshaft_ahead,
                                 .layshaft_above = 22_mm,
                                 .arm = arm,
                                 .droop = 19_deg,
                                 .rest = 14_deg,
                                 .bump = -8.0_deg});
  return parts;
}

TEST(Appraise, TellsSlackThroughTheTravelWhereItIsStatedAndTheChainFits) {
  MachineParts parts = swung_trail_bike();
  EXPECT_TRUE(appraise(Machine(parts), parts.stock).drive().slack);
  const auto short_of = with(parts.stock, [](SetupParts& of) { of.links = 104_links; });
  const Appraisal misses = appraise(Machine(parts), short_of);
  EXPECT_FALSE(misses.chain().fits);
  EXPECT_FALSE(misses.drive().slack);
  parts.adjuster = Adjuster(602_mm, 640_mm);
  EXPECT_FALSE(appraise(Machine(parts), parts.stock).drive().slack);
}

// The least slack is held against that of the stock chain, which has to close for that.
TEST(Appraise, OfASwingarmNeedsAStockChainThatCloses) {
  MachineParts parts = swung_trail_bike();
  parts.adjuster = Adjuster(619_mm, 627_mm, 40_mm);  // in which 12/47 does not close
  const Machine machine(parts);
  parts.suspension.reset();
  const Machine rigid(parts);
  int closed = 0;
  for (int rear = 43; rear <= 51; ++rear) {
    const auto trial = with(parts.stock, [&](SetupParts& of) { of.rear = Teeth(rear); });
    if (!try_appraise(rigid, trial)) continue;
    ++closed;
    const auto swung = try_appraise(machine, trial);
    ASSERT_FALSE(swung) << rear;
    EXPECT_STREQ(swung.error().what(), try_appraise(machine, machine.stock()).error().what());
  }
  EXPECT_GT(closed, 0);
}

// A pivot that stands further behind the layshaft than the axle may: the axle would have to be ahead of the pivot.
TEST(Appraise, RefusesASwingarmThatTheChainDoesNotReachRound) {
  const MachineParts parts = swung_trail_bike(900_mm, 1_m);
  const auto refused = try_appraise(Machine(parts), parts.stock);
  ASSERT_FALSE(refused);
  EXPECT_STREQ(refused.error().what(), "no arm of this swingarm leaves 40 mm of slack on 108 links");
}

// The most links that can be counted: a tooth more on the stock sprocket, and its loop would take more.
TEST(Appraise, RefusesAChainThatTheStockSprocketsCouldNotCountTheLinksOf) {
  const Machine machine = layshaft_test::trail_bike();
  const auto with_most = [&](int rear) {
    return try_appraise(machine, with(machine.stock(), [&](SetupParts& of) {
                          of.rear = Teeth(rear);
                          of.links = 10000_links;
                        }));
  };
  const auto refused = with_most(46);
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().kind(), ErrorKind::range);
  const std::string what = refused.error().what();
  EXPECT_TRUE(what.starts_with("centre distance is ")) << what;
  EXPECT_NE(what.find("where sprockets of 12 and 47 teeth touch"), std::string::npos) << what;
  EXPECT_TRUE(with_most(47));
}

}  // namespace
