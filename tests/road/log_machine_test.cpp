// SPDX-License-Identifier: MIT
#include <layshaft/road/log_machine.hpp>

#include <gtest/gtest.h>

#include <road/invented_ride.hpp>

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

namespace {
using namespace layshaft;
using layshaft_test::invented;
using layshaft_test::InventedRide;

/// The gears told are those ridden, each within 0.5 %.
void expect_gears(const LogMachine& machine, const InventedRide& ride) {
  ASSERT_EQ(machine.gears.size(), ride.overall_ratios.size());
  double shares = 0.0;
  for (std::size_t i = 0; i < machine.gears.size(); ++i) {
    const LogGear& gear = machine.gears[i];
    const double truth = ride.overall_ratios[i] / ride.circumference;
    EXPECT_NEAR(gear.engine_turns_per_metre.nominal / truth, 1.0, 0.005) << i;
    EXPECT_TRUE(well_formed(gear.engine_turns_per_metre));
    EXPECT_TRUE(gear.engine_turns_per_metre.contains(truth)) << i;
    const Band<double> ratio = gear.overall_ratio(ride.circumference * units::m);
    EXPECT_DOUBLE_EQ(ratio.high, gear.engine_turns_per_metre.high * ride.circumference);
    EXPECT_GT(gear.time_share, 0.01);
    shares += gear.time_share;
  }
  EXPECT_GT(shares, 0.6);
  EXPECT_LT(shares, 1.0);
}

TEST(LogMachine, HasTheGearsOfTheInventedRideHoweverOftenItWasSampled) {
  for (const double period : {0.1, 0.2, 0.5, 1.0})
    for (const std::uint64_t seed : {1u, 2u, 3u, 4u}) {
      InventedRide ride;
      ride.period = period;
      ride.seconds = period < 1.0 ? 4000.0 : 6000.0;
      ride.seed = seed;
      SCOPED_TRACE(period);
      SCOPED_TRACE(seed);
      const RideLog log(invented(ride));
      expect_gears(machine_of_log(log), ride);
      EXPECT_EQ(machine_of_log(log, 6), machine_of_log(log));
    }
}

TEST(LogMachine, HasTheExactRatiosOfARideWithoutNoise) {
  InventedRide ride;
  ride.noise = 0.0;
  const LogMachine machine = machine_of_log(RideLog(invented(ride)));
  ASSERT_EQ(machine.gears.size(), 6u);
  for (std::size_t i = 0; i < 6; ++i)
    EXPECT_NEAR(machine.gears[i].engine_turns_per_metre.nominal * ride.circumference / ride.overall_ratios[i], 1.0,
                1e-12);
}

TEST(LogMachine, StandsFiveTimesTheNoise) {
  InventedRide ride;
  ride.noise = 5.0;
  ride.seconds = 12000.0;
  const LogMachine machine = machine_of_log(RideLog(invented(ride)), 6);
  for (std::size_t i = 0; i < 6; ++i)
    EXPECT_NEAR(machine.gears[i].engine_turns_per_metre.nominal * ride.circumference / ride.overall_ratios[i], 1.0,
                0.01);
}

TEST(LogMachine, TellsCloseGearsApartAndOneGearAlone) {
  InventedRide close;
  close.overall_ratios = {20.0, 16.0, 13.8, 12.5, 11.6, 10.8};  // the last two 7 % apart
  expect_gears(machine_of_log(RideLog(invented(close))), close);
  InventedRide one;
  one.overall_ratios = {12.0};
  const LogMachine machine = machine_of_log(RideLog(invented(one)));
  ASSERT_EQ(machine.gears.size(), 1u);
  EXPECT_NEAR(machine.gears[0].engine_turns_per_metre.nominal * one.circumference, 12.0, 0.06);
}

TEST(LogMachine, TakesTheGearsWithTheMostStretchesWhereFewerAreAskedFor) {
  const InventedRide ride;
  const RideLog log(invented(ride));
  const LogMachine all = machine_of_log(log), three = machine_of_log(log, 3);
  ASSERT_EQ(three.gears.size(), 3u);
  std::vector<int> stretches;
  for (const LogGear& gear : all.gears) stretches.push_back(gear.stretches);
  std::sort(stretches.rbegin(), stretches.rend());
  for (const LogGear& gear : three.gears) {
    EXPECT_GE(gear.stretches, stretches[2]);
    EXPECT_NE(std::find(all.gears.begin(), all.gears.end(), gear), all.gears.end());
  }
  for (std::size_t i = 1; i < 3; ++i)
    EXPECT_GT(three.gears[i - 1].engine_turns_per_metre.nominal, three.gears[i].engine_turns_per_metre.nominal);
}

/// So many seconds of one speed and one engine speed.
RideColumns steady(int seconds, double kmh, double rpm) {
  RideColumns columns{{}, {}, {}, {}};
  for (int i = 0; i <= seconds; ++i) {
    columns.times.push_back(i);
    columns.speeds.push_back(kmh / 3.6);
    columns.engine_speeds.push_back(rpm * units::rpm.value());
  }
  return columns;
}

/// Samples at 36 km/h, the engine turning in steps about 4500 rpm that come round again.
RideColumns zigzag(int stretches, double period, const std::vector<double>& steps) {
  RideColumns columns = steady(stretches, 36.0, 4500.0);
  for (std::size_t i = 0; i < columns.times.size(); ++i) {
    columns.times[i] *= period;
    columns.engine_speeds[i] *= steps[i % steps.size()];
  }
  return columns;
}

TEST(LogMachine, CountsStretchesOverWhichTheRatioIsSteady) {
  const auto counted = [](const RideColumns& columns) {
    const auto machine = try_machine_of_log(RideLog(columns));
    return machine ? machine->gears[0].stretches : 0;
  };
  EXPECT_EQ(counted(zigzag(50, 1.0, {1.0, 1.0299})), 50);
  EXPECT_EQ(counted(zigzag(50, 1.0, {1.0, 1.0301})), 25);  // down again it is 2.92 %
  // 2 % from sample to sample, 4 % over two of them. At one a second the second does not count; at two a second it
  // does, and every other stretch begins at 1.02 and has 1.02 again a second later, the last one at its own end.
  const std::vector<double> slow{1.0, 1.02, 1.04, 1.02};
  EXPECT_EQ(counted(zigzag(80, 1.0, slow)), 80);
  EXPECT_EQ(counted(zigzag(80, 0.5, slow)), 40);
  // 9 % from sample to sample and back within the second.
  EXPECT_EQ(counted(zigzag(80, 0.5, {1.0, 1.09})), 0);
}

/// So many stretches at each of these classes' places, counted from one of 7.4 engine turns a metre, and the further
/// ones, all sorted: the gears' ends among them.
using GearEnds = std::vector<std::pair<std::size_t, std::size_t>>;
constexpr double log_class_width = 0.004, first_place = -5.0 + (1750 + 0.5) * log_class_width;
GearEnds gears_of(const std::vector<std::pair<int, int>>& clumps, const std::vector<double>& further = {}) {
  std::vector<double> turns = further;
  for (const auto& [number, stretches] : clumps)
    turns.insert(turns.end(), static_cast<std::size_t>(stretches), -5.0 + (1750 + number + 0.5) * log_class_width);
  std::sort(turns.begin(), turns.end());
  return detail::GearClusters(turns).find();
}
/// 401 values, evenly from the first place over a width.
std::vector<double> even_spread(double width, const std::vector<double>& further = {}) {
  std::vector<double> values = further;
  for (int i = 0; i <= 400; ++i) values.push_back(first_place + width * i / 400.0);
  return values;
}

TEST(LogMachine, TakesAValleyForOneWhereNoChanceMakesIt) {
  // Each class counts for those beside it by exp(-d^2/18), up to ten away. Two gears 13 classes apart have their valley
  // four from the smaller: of 100 and 1700 stretches 100 exp(-16/18) + 1700 exp(-81/18) = 59.9965 high, which is below
  // 100 by four times the root of 100 and 0.0035. One stretch more of the larger fills it by exp(-81/18) = 0.011.
  EXPECT_EQ(gears_of({{0, 100}, {13, 1700}}), (GearEnds{{0, 100}, {100, 1800}}));
  EXPECT_EQ(gears_of({{0, 100}, {13, 1701}}), (GearEnds{{100, 1801}}));
  // Of 400 and 10401 it is 279.9896, less than 0.7 of the 400; one more makes it 280.0007.
  EXPECT_EQ(gears_of({{0, 400}, {13, 10401}}), (GearEnds{{0, 400}, {400, 10801}}));
  EXPECT_EQ(gears_of({{0, 400}, {13, 10402}}), (GearEnds{{400, 10802}}));
}

TEST(LogMachine, TellsGearsApartFromFivePercent) {
  EXPECT_EQ(gears_of({{0, 60}, {13, 60}}), (GearEnds{{0, 60}, {60, 120}}));  // 5.2 %
  EXPECT_EQ(gears_of({{0, 60}, {12, 60}}), (GearEnds{{0, 120}}));            // 4.8 %
}

TEST(LogMachine, PartsGearsAtTheValley) {
  // 25 classes of 40 each, three that are empty, 25 again. In the middle of the three is the valley; of two stretches a
  // 500,000th below and above that place each goes with its own side.
  std::vector<std::pair<int, int>> clumps;
  for (int i = 0; i < 25; ++i) clumps.insert(clumps.end(), {{i, 40}, {i + 28, 40}});
  const double valley = first_place + 26 * log_class_width;
  EXPECT_EQ(gears_of(clumps, {valley - 2e-6, valley + 2e-6}), (GearEnds{{0, 1001}, {1001, 2002}}));
}

TEST(LogMachine, GathersAGearAboutItsMedian) {
  // 20 stretches make a gear, of which the last lies 0.06 from the place where most are, or not quite.
  const double from = first_place, late = from + 0.045;
  const std::vector<double> nine(9, late);
  const auto with = [](std::vector<double> values, double one) {
    values.push_back(one);
    return values;
  };
  EXPECT_EQ(gears_of({{0, 10}}, with(nine, from + 0.0599)), (GearEnds{{0, 20}}));
  EXPECT_EQ(gears_of({{0, 10}}, with(nine, from + 0.06005)), GearEnds());
  // The quartiles of what lies evenly are half its width apart: 0.08 at most.
  EXPECT_EQ(gears_of({}, even_spread(0.1599)), (GearEnds{{0, 401}}));
  EXPECT_EQ(gears_of({}, even_spread(0.1601)), GearEnds());
  // A stray one belongs to it within 2.2 times what lies between the quartiles: here 0.0441 from the median, which is
  // 0.02005 from the first; but not within more than 0.15, here from 0.0727; nor less than 0.008.
  EXPECT_EQ(gears_of({}, even_spread(0.04, {from + 0.02005 + 0.0439})), (GearEnds{{0, 402}}));
  EXPECT_EQ(gears_of({}, even_spread(0.04, {from + 0.02005 + 0.0442})), (GearEnds{{0, 401}}));
  EXPECT_EQ(gears_of({}, even_spread(0.145, {from + 0.0727 + 0.1495})), (GearEnds{{0, 402}}));
  EXPECT_EQ(gears_of({}, even_spread(0.145, {from + 0.0727 + 0.1505})), (GearEnds{{0, 401}}));
  EXPECT_EQ(gears_of({{0, 40}}, {from + 0.0079}), (GearEnds{{0, 41}}));
  EXPECT_EQ(gears_of({{0, 40}}, {from + 0.008005}), (GearEnds{{0, 40}}));
}

TEST(LogMachine, HasNoGearInTheLowestClass) {
  EXPECT_EQ(gears_of({{-1749, 60}}), (GearEnds{{0, 60}}));
  EXPECT_EQ(gears_of({{-1750, 60}}), GearEnds());
  EXPECT_EQ(gears_of({{-1750, 1000}, {-1746, 30}}), GearEnds());  // on the flank of what lies there
}

TEST(LogMachine, SaysWhyItTellsNothing) {
  const auto refusal = [](const RideColumns& columns, std::optional<int> gears = {}) {
    const auto machine = try_machine_of_log(RideLog(columns), gears);
    return machine ? std::string("none") : std::string(machine.error().what());
  };
  EXPECT_EQ(refusal(steady(25, 36.0, 4500.0)), "none");
  EXPECT_TRUE(refusal({{0, 1}, {3, 4}, {}, {}}).starts_with("the ride log has no engine speeds"));
  EXPECT_EQ(refusal(steady(20, 36.0, 4500.0)), "none");
  EXPECT_EQ(refusal(steady(25, 8.005, 4500.0)), "none");
  EXPECT_TRUE(refusal(steady(19, 36.0, 4500.0)).starts_with("the ride log tells no gear: none has 20 stretches"));
  EXPECT_TRUE(refusal(steady(25, 7.9, 4500.0)).starts_with("the ride log tells no gear"));  // too slow
  EXPECT_TRUE(refusal(steady(25, 36.0, 0.0)).starts_with("the ride log tells no gear"));    // the engine off
  EXPECT_EQ(refusal(steady(25, 36.0, 4500.0), 2),
            "number of gears that the log tells apart is 1; expected the 2 that were asked for");
  EXPECT_EQ(refusal(steady(25, 36.0, 4500.0), 0), "gears is 0; expected 1 to 16");
  EXPECT_EQ(refusal(steady(25, 36.0, 4500.0), 17), "gears is 17; expected 1 to 16");
  EXPECT_THROW((void)machine_of_log(RideLog({{0, 1}, {3, 4}, {}, {}})), Error);
  const LogMachine one = machine_of_log(RideLog(steady(25, 36.0, 4500.0)));
  EXPECT_NEAR(one.gears[0].engine_turns_per_metre.nominal, 7.5, 1e-12);
  EXPECT_EQ(one.gears[0].stretches, 25);
  EXPECT_EQ(one.gears[0].time_share, 1.0);
  EXPECT_FALSE(one.gears[0].try_overall_ratio(0_m));
  EXPECT_THROW((void)one.gears[0].overall_ratio(101_m), RangeError);
}

TEST(LogMachine, OfADownhillRideWithTheClutchPulledIsNone) {
  // At idle while the wheels speed up: the ratio is another at every moment.
  RideColumns columns{{}, {}, {}, {}};
  for (int i = 0; i <= 300; ++i) {
    columns.times.push_back(0.2 * i);
    columns.speeds.push_back(5.0 + 0.05 * i);
    columns.engine_speeds.push_back((1450_rpm).value());
  }
  EXPECT_FALSE(try_machine_of_log(RideLog(columns)));
}

TEST(InstrumentError, IsThatOfTheInventedRide) {
  for (const double fast : {-0.03, 0.0, 0.06, 0.11})
    for (const double period : {0.1, 1.0}) {
      InventedRide ride;
      ride.speedometer_error = fast;
      ride.odometer_error = 0.5 * fast;
      ride.period = period;
      const InstrumentError error = instrument_error(RideLog(invented(ride)));
      ASSERT_TRUE(error.speedometer && error.odometer);
      EXPECT_NEAR(error.speedometer->nominal, fast, 0.005);
      EXPECT_TRUE(error.speedometer->contains(fast));
      EXPECT_LT(error.speedometer->width(), 0.02);
      EXPECT_NEAR(*error.odometer, 0.5 * fast, 0.005);
    }
}

TEST(InstrumentError, IsWorkedOutByHandOnFewSamples) {
  RideColumns columns = steady(100, 36.0, 4000.0);  // 1 km
  for (int i = 0; i <= 100; ++i) {
    columns.indicated_speeds.push_back(10.5);
    columns.odometers.push_back(5000.0 + 10.2 * i);
  }
  InstrumentError error = instrument_error(RideLog(columns));
  EXPECT_NEAR(error.speedometer->low, 0.05, 1e-15);
  EXPECT_NEAR(error.speedometer->high, 0.05, 1e-15);
  EXPECT_NEAR(*error.odometer, 0.02, 1e-12);
  // The quartiles of -0.1, 0, ..., as everybody's software takes them: between two values in proportion.
  columns.odometers.clear();
  for (int i = 0; i <= 100; ++i) columns.indicated_speeds[static_cast<std::size_t>(i)] = i <= 50 ? 10.0 : 11.0;
  error = instrument_error(RideLog(columns));
  EXPECT_FALSE(error.odometer);
  EXPECT_NEAR(error.speedometer->low, 0.0, 1e-15);
  EXPECT_NEAR(error.speedometer->nominal, 0.025, 1e-15);  // between 50 of 0.0 and, after one of 0.05, 49 of 0.1
  EXPECT_NEAR(error.speedometer->high, 0.1, 1e-15);
}

TEST(InstrumentError, LeavesOutWhatIsMissingAndSaysWhyNothingIsLeft) {
  RideColumns columns = steady(100, 36.0, 4000.0);
  const auto refusal = [&] {
    const auto error = try_instrument_error(RideLog(columns));
    return error ? std::string("none") : std::string(error.error().what());
  };
  EXPECT_TRUE(refusal().starts_with("the ride log tells nothing of instruments"));
  columns.indicated_speeds.assign(101, 10.5);
  EXPECT_FALSE(instrument_error(RideLog(columns)).odometer);
  columns.indicated_speeds.clear();
  columns.odometers.assign(101, 5000.0);
  EXPECT_EQ(*instrument_error(RideLog(columns)).odometer, -1.0);  // a broken one
  EXPECT_FALSE(instrument_error(RideLog(columns)).speedometer);
  columns.speeds.assign(101, 19.9 / 3.6);
  EXPECT_EQ(refusal(), "too little was ridden to tell of the odometer; expected 1 km");
  columns.indicated_speeds.assign(101, 10.5);
  columns.speeds.assign(101, 20.01 / 3.6);
  EXPECT_EQ(refusal(), "none");
  columns.speeds.assign(101, 19.9 / 3.6);
  EXPECT_TRUE(refusal().starts_with("too little was ridden to tell of the instruments; expected 10 stretches"));
  EXPECT_THROW((void)instrument_error(RideLog(columns)), Error);
}

TEST(InstrumentError, LeavesOutTheRecordersGaps) {
  RideColumns columns = steady(200, 36.0, 4000.0);
  for (int i = 0; i <= 200; ++i) columns.odometers.push_back(10.0 * i + (i > 100 ? 7000.0 : 0.0));
  for (std::size_t i = 101; i <= 200; ++i) columns.times[i] += 700.0;
  EXPECT_NEAR(*instrument_error(RideLog(columns)).odometer, 0.0, 1e-12);
}

TEST(LogMachine, TakesAStretchOnWhichTheEngineStopsForNoGear) {
  // 60 s in third, and then, rolling on, the engine off and on again every second.
  RideColumns columns = steady(120, 36.0, 4500.0);
  for (std::size_t i = 61; i <= 120; i += 2) columns.engine_speeds[i] = 0.0;
  const LogMachine machine = machine_of_log(RideLog(columns));
  ASSERT_EQ(machine.gears.size(), 1u);
  EXPECT_EQ(machine.gears[0].stretches, 60);
  EXPECT_EQ(machine.gears[0].time_share, 0.5);
}

TEST(GearClusters, PassOverWhatIsNoGearOfAnything) {
  // Classes reach from exp(-5) to exp(9) turns a metre.
  std::vector<double> turns(40, 2.0);
  const auto found = detail::GearClusters(turns).find();
  ASSERT_EQ(found.size(), 1u);
  turns.insert(turns.begin(), 30, -5.5);
  turns.insert(turns.end(), 30, 9.5);
  const auto among_others = detail::GearClusters(turns).find();
  ASSERT_EQ(among_others.size(), 1u);
  EXPECT_EQ(among_others[0].first, 30u);
  EXPECT_EQ(among_others[0].second, 70u);
}

TEST(Quantile, EndsAtTheGreatest) {
  const std::vector<double> sorted{1.0, 2.0, 4.0, 8.0};
  EXPECT_EQ(detail::quantile(sorted.begin(), sorted.end(), 0.0), 1.0);
  EXPECT_EQ(detail::quantile(sorted.begin(), sorted.end(), 0.5), 3.0);
  EXPECT_EQ(detail::quantile(sorted.begin(), sorted.end(), 1.0), 8.0);
  EXPECT_EQ(detail::quantile(sorted.begin(), sorted.begin() + 1, 0.25), 1.0);
}

}  // namespace
