// SPDX-License-Identifier: MIT
#include <layshaft/road/ride_use.hpp>

#include <layshaft/io/ride_log.hpp>
#include <layshaft/road/log_use.hpp>
#include <layshaft/road/ride_profile.hpp>

#include <gtest/gtest.h>

#include <road/invented_ride.hpp>

#include <cmath>
#include <random>
#include <string>

namespace {
using namespace layshaft;

const OverallRatios ratios{30.0, 20.0, 15.0};
const RideDrive drive{ratios, 2_m, ShiftRule({20_kmh, 40_kmh}, {12_kmh, 30_kmh})};

TEST(RideUse, OfSharesIsEachInItsGear) {
  const RideProfile profile({{RideKind::technical, 0.25, 8_kmh, Slope(0.1), 2},
                             {RideKind::trail, 0.25, 25_kmh},
                             {RideKind::highway, 0.5, 80_kmh}});
  const RideUse use = ride_use(profile, 4_hour, drive);
  EXPECT_EQ(use.gear(1).time, 0_s);
  EXPECT_NEAR(use.gear(2).time / units::hour, 2.0, 1e-14);  // the rider's habit, and the rule
  EXPECT_NEAR(use.gear(2).distance / units::km, 33.0, 1e-12);
  EXPECT_NEAR(use.gear(3).distance / units::km, 160.0, 1e-12);
  EXPECT_NEAR(use.distance() / (4_hour * profile.mean_speed()), 1.0, 1e-14);
  EXPECT_NEAR(use.climbed() / units::m, 8000.0 * std::sin(std::atan(0.1)), 1e-9);
  const double highway = engine_speed(80_kmh, 15.0, 2_m) / RideUse::class_width;
  EXPECT_NEAR(use.engine_speeds()[static_cast<std::size_t>(highway)] / units::hour, 2.0, 1e-14);
}

/// A ride of an hour and more, sampled ten times a second, of waves of speed with a recorder's noise.
RideColumns invented(std::size_t samples, bool engine) {
  std::mt19937_64 random(5);
  std::normal_distribution<double> noise(0.0, 0.05);
  RideColumns columns;
  for (std::size_t i = 0; i < samples; ++i) {
    const double t = 0.1 * static_cast<double>(i);
    columns.times.push_back(t);
    columns.speeds.push_back(std::max(0.0, 9.0 + 8.0 * std::sin(0.011 * t) + 2.0 * std::sin(0.17 * t) + noise(random)));
    columns.heights.push_back(500.0 + 40.0 * std::sin(0.003 * t));
    if (engine) {
      const int gear = drive.rule.gear_at(Speed::from_value(columns.speeds.back()));
      columns.engine_speeds.push_back(
          std::max(140.0, columns.speeds.back() * turn.value() / 2.0 * drive.ratio_of(gear)));
    }
  }
  return columns;
}

TEST(RideUse, OfALogAddsUpToItsTimeAndDistance) {
  for (const bool engine : {false, true}) {
    const RideColumns columns = invented(40000, engine);
    const RideUse use = ride_use(RideLog(columns), drive);
    EXPECT_NEAR((use.time() + use.standstill()) / units::s, columns.times.back(), 1e-6);
    double way = 0.0;
    for (std::size_t i = 0; i + 1 < columns.times.size(); ++i) {
      const double speed = 0.5 * (columns.speeds[i] + columns.speeds[i + 1]);
      if (speed >= RideUse::standing.value()) way += speed * (columns.times[i + 1] - columns.times[i]);
    }
    EXPECT_NEAR(use.distance() / units::m, way, 1e-9 * way);
    Duration turning;
    for (const Duration& one : use.engine_speeds()) turning += one;
    EXPECT_NEAR(turning / (engine ? use.time() + use.standstill() : use.time()), 1.0, 1e-12);
    for (int gear = 1; gear <= 3; ++gear) EXPECT_GT(use.gear(gear).time, 60_s);
    EXPECT_EQ(use.gaps(), 0_s);
    EXPECT_GT(use.climbed(), 40_m);
  }
}

TEST(RideUse, TakesTheGearFromTheRecordedEngineSpeed) {
  // 36 km/h is 5 turns of the wheel a second: 4500 rpm at an overall ratio of 15, 6000 at 20, which the rule would
  // choose.
  RideColumns columns{{0, 1, 2}, {10, 10, 10}, {}, {}};
  EXPECT_EQ(ride_use(RideLog(columns), drive).gear(2).time, 2_s);
  for (int i = 0; i < 3; ++i) columns.engine_speeds.push_back((4600_rpm).value());
  EXPECT_EQ(ride_use(RideLog(columns), drive).gear(3).time, 2_s);
  columns.engine_speeds.assign(3, 0.0);  // off from the first: it stays in the gear in which every ride begins
  EXPECT_EQ(ride_use(RideLog(columns), drive).gear(1).time, 2_s);
  // 25 is nearer to 30 than to 20, and what lies before the ratios in memory is none of them.
  const struct {
    double before;
    RideDrive drive;
  } placed{25.0, drive};
  EXPECT_EQ(detail::nearest_gear(placed.drive, 25.0), 1);
}

TEST(RideUse, CountsTheMeanEngineSpeedOfAStretch) {
  // 2249.5 rpm on the mean, in the class from 2000 to 2250.
  const RideUse use = ride_use(RideLog({{0, 1}, {10, 10}, {}, {(2000_rpm).value(), (2499_rpm).value()}}), drive);
  EXPECT_EQ(use.engine_speeds()[8], 1_s);
}

TEST(RideUse, TellsTheGapsOfALog) {
  const RideUse use = ride_use(RideLog({{0, 1, 2, 100, 101}, {10, 10, 10, 10, 10}, {}, {}}), drive);
  EXPECT_EQ(use.gaps(), 98_s);
  EXPECT_EQ(use.time(), 3_s);
  EXPECT_EQ(use.distance(), 30_m);
}

TEST(RideUse, CountsAStandingMachineApart) {
  const RideUse use = ride_use(RideLog({{0, 1, 2}, {0, 0, 0}, {}, {150, 150, 150}}), drive);
  EXPECT_EQ(use.standstill(), 2_s);
  EXPECT_EQ(use.time(), 0_s);
  EXPECT_EQ(use.engine_speeds()[static_cast<std::size_t>(150.0 / RideUse::class_width.value())], 2_s);
  const RideUse fast = ride_use(RideLog({{0, 1}, {270, 270}, {}, {}}), drive);
  EXPECT_EQ(fast.engine_speeds().back(), 1_s);  // faster than all classes
}

TEST(RideUse, NamesADriveThatIsNone) {
  const RideLog log({{0, 1}, {3, 4}, {}, {}});
  const auto refusal = [&](const RideDrive& bad) {
    const auto use = try_ride_use(log, bad);
    return use ? std::string("none") : std::string(use.error().what());
  };
  EXPECT_EQ(refusal(drive), "none");
  EXPECT_TRUE(refusal({{30.0, 20.0}, 2_m, drive.rule}).starts_with("number of overall ratios is 2; expected 3"));
  OverallRatios many;
  for (int i = 0; i <= static_cast<int>(most_gears); ++i) many.push_back(40.0 - i);
  EXPECT_TRUE(refusal({many, 2_m, drive.rule}).starts_with("number of overall ratios is more than 16; expected 3"));
  EXPECT_TRUE(refusal({{30.0, 0.0, 10.0}, 2_m, drive.rule}).starts_with("overall ratio 2 is 0"));
  EXPECT_TRUE(refusal({ratios, 0_m, drive.rule}).starts_with("circumference is 0 mm"));
  const RideProfile fourth({{RideKind::trail, 1.0, 20_kmh, Slope(), 4}});
  EXPECT_FALSE(try_ride_use(fourth, 1_hour, drive));
  EXPECT_FALSE(try_ride_use(fourth, -(1_hour), drive));
}

const RoadLoad road({.constant = 40_N, .quadratic = 0.4_kg_per_m, .mass = 230_kg});
RideDrive loaded(Duration spell = 2_s) {
  RideDrive made = drive;
  made.load = RideLoad{road, 230_kg, spell};
  return made;
}

TEST(RideUse, OfSharesWorksAgainstWhatResistsThere) {
  const RideProfile profile({{RideKind::technical, 0.25, 9_kmh, Slope(0.1)},
                             {RideKind::trail, 0.25, 36_kmh},
                             {RideKind::trail, 0.5, 36_kmh, Slope(-0.2)}});
  const RideUse use = ride_use(profile, 4_hour, loaded());
  // 9 km on 10 %: a slope of the angle whose tangent that is; 36 km against 40 N + 0.4 kg/m * (10 m/s)^2.
  const double angle = std::atan(0.1), weight = 230.0 * 9.80665;
  const double climb = 9000.0 * (40.0 * std::cos(angle) + 0.4 * 2.5 * 2.5 + weight * std::sin(angle));
  EXPECT_NEAR(use.gear(1).wheel_work / climb / units::J, 1.0, 1e-12);
  EXPECT_NEAR(use.gear(2).wheel_work / units::J, 36000.0 * 80.0, 1e-6);
  EXPECT_NEAR(*use.wheel_work() / units::J, climb + 36000.0 * 80.0, 1e-6);
  const double down = std::atan(0.2);
  EXPECT_NEAR(*use.held_back() / units::J, 72000.0 * (weight * std::sin(down) - 40.0 * std::cos(down) - 40.0), 1e-5);
  // A share that stands does no work.
  const RideUse still = ride_use(RideProfile({{RideKind::technical, 1.0, 0_kmh, Slope(0.1)}}), 1_hour, loaded());
  EXPECT_EQ(*still.wheel_work(), 0_J);
  EXPECT_EQ(*still.held_back(), 0_J);
}

TEST(RideUse, TellsNoWorkWhereNoLoadIsStated) {
  const RideUse use = ride_use(RideLog({{0, 1}, {3, 4}, {}, {}}), drive);
  EXPECT_FALSE(use.wheel_work() || use.held_back());
  EXPECT_EQ(use.gear(1).wheel_work, 0_J);
}

TEST(RideUse, BalancesTheEnergyOfALog) {
  // Whatever the spells: what drove less what held back is what resisted, lifted and sped up.
  const RideColumns columns = layshaft_test::invented({.seconds = 2000.0, .gap = 0.0});
  for (const Duration& spell : {0_s, 1_s, 2_s, 60_s}) {
    const RideUse use = ride_use(RideLog(columns), loaded(spell));
    double net = 0.0, drove = 0.0;
    for (std::size_t i = 0; i + 1 < columns.times.size(); ++i) {
      const double v = 0.5 * (columns.speeds[i] + columns.speeds[i + 1]);
      if (v < RideUse::standing.value()) continue;
      const double work =
          (40.0 + 0.4 * v * v) * v * (columns.times[i + 1] - columns.times[i]) +
          115.0 * (columns.speeds[i + 1] * columns.speeds[i + 1] - columns.speeds[i] * columns.speeds[i]) +
          230.0 * 9.80665 * (columns.heights[i + 1] - columns.heights[i]);
      net += work;
      drove += std::max(0.0, work);
    }
    EXPECT_NEAR((*use.wheel_work() - *use.held_back()) / units::J, net, 1e-9 * drove);
    if (spell == 0_s) {
      EXPECT_NEAR(*use.wheel_work() / units::J, drove, 1e-9 * drove);
    } else {
      EXPECT_LT(*use.wheel_work() / units::J, drove);
    }
    Energy gears;
    for (int gear = 1; gear <= use.gears(); ++gear) gears += use.gear(gear).wheel_work;
    EXPECT_EQ(gears, *use.wheel_work());
  }
}

TEST(RideUse, SpellsTakeTheNoiseOutOfTheWork) {
  layshaft_test::InventedRide ride{.seconds = 2000.0, .noise = 0.0};
  const auto work = [&](Duration spell) {
    RideColumns columns = layshaft_test::invented(ride);
    columns.heights.clear();
    return ride_use(RideLog(columns), loaded(spell)).wheel_work()->value();
  };
  const double truth = work(0_s);
  EXPECT_NEAR(work(2_s) / truth, 1.0, 0.02);
  ride.noise = 1.0;
  EXPECT_GT(work(0_s) / truth, 1.04);
  EXPECT_NEAR(work(2_s) / truth, 1.0, 0.02);
}

TEST(RideUse, EndsASpellWithTheGearTheGapAndTheStop) {
  // 10 m/s and back between each two samples: a long spell sums to the resistance alone, one that ends does not.
  const auto held = [](const RideColumns& columns) {
    return *ride_use(RideLog(columns), loaded(1_hour)).held_back() / units::J;
  };
  EXPECT_EQ(held({{0, 1, 2}, {5, 10, 5}, {}, {}}), 0.0);
  const double lost = 115.0 * 75.0, resisted = 7.5 * (40.0 + 0.4 * 7.5 * 7.5);
  EXPECT_NEAR(held({{0, 1, 100, 101}, {5, 10, 10, 5}, {}, {}}), lost - resisted, 1e-9);  // a gap
  const double slow = 125.0, fast = 250.0;  // rad/s for third and for first, at 7.5 m/s on a wheel of 2 m
  EXPECT_NEAR(held({{0, 1, 2}, {5, 10, 5}, {}, {slow * 2.83, slow * 2.83, fast * 5.0}}), lost - resisted, 1e-9);
  EXPECT_NEAR(held({{0, 1, 2, 3, 4}, {0, 5, 0, 0, 0}, {}, {}}), 0.0, 1e-9);
}

TEST(RideUse, EndsASpellWhenItIsLongEnough) {
  // Faster, slower, and slower: over the first two seconds the speed comes back, so that they drive, and the third
  // alone holds back: a spell of all three would hold back what the others drove less.
  const auto held = [](double second) {
    return *ride_use(RideLog({{0, 1, second, second + 1.0}, {5, 10, 5, 3}, {}, {}}), loaded(2_s)).held_back() /
           units::J;
  };
  const double slowed = 115.0 * (25.0 - 9.0), resisted = 4.0 * (40.0 + 0.4 * 4.0 * 4.0);
  const double before = 7.5 * (40.0 + 0.4 * 7.5 * 7.5);  // a second at 7.5 m/s on the mean
  EXPECT_NEAR(held(2.0), slowed - resisted, 1e-9);
  EXPECT_NEAR(held(1.999999), slowed - resisted, 1e-9);  // however times are rounded: a millionth is let pass
  EXPECT_NEAR(held(1.99999), slowed - resisted - 1.99999 * before, 1e-9);
}

TEST(RideUse, NamesALoadThatIsNone) {
  const RideLog log({{0, 1}, {3, 4}, {}, {}});
  const auto refusal = [&](const RideLoad& load) {
    RideDrive bad = drive;
    bad.load = load;
    const auto use = try_ride_use(log, bad);
    return use ? std::string("none") : std::string(use.error().what());
  };
  EXPECT_EQ(refusal({road, 230_kg}), "none");
  EXPECT_EQ(refusal({road, 0_kg}), "mass is 0 kg; expected 0.1 kg to 100000 kg");
  EXPECT_TRUE(refusal({road, 230_kg, -(1_s)}).starts_with("spell is -1 s"));
  EXPECT_TRUE(refusal({road, 230_kg, 2_hour}).starts_with("spell is "));
  // A slope needs the mass that climbs it, which this road load has not.
  RideDrive massless = drive;
  massless.load = RideLoad{RoadLoad({.constant = 40_N}), 230_kg};
  EXPECT_TRUE(try_ride_use(log, massless));
  EXPECT_TRUE(try_ride_use(RideProfile({{RideKind::trail, 1.0, 20_kmh}}), 1_hour, massless));
  EXPECT_FALSE(try_ride_use(RideProfile({{RideKind::trail, 1.0, 20_kmh, Slope(0.1)}}), 1_hour, massless));
}

TEST(RideProfile, NamesTheShareThatIsWrong) {
  const auto refusal = [](const RideShares& shares) {
    const auto profile = RideProfile::make(shares);
    return profile ? std::string("none") : std::string(profile.error().what());
  };
  EXPECT_EQ(refusal({{RideKind::trail, 0.5, 20_kmh}, {RideKind::highway, 0.5, 90_kmh}}), "none");
  EXPECT_EQ(refusal({}), "number of shares is 0; expected 1 to 16");
  EXPECT_EQ(refusal({{RideKind::trail, 0.5, 20_kmh}}), "sum of the shares is 0.5; expected 1");
  for (const auto& [rest, told] :
       {std::pair{0.4999992, "none"}, std::pair{0.4999988, "sum of the shares is 0.9999988; expected 1"},
        std::pair{0.5000008, "none"}, std::pair{0.5000012, "sum of the shares is 1.0000012; expected 1"}})
    EXPECT_EQ(refusal({{RideKind::trail, 0.5, 20_kmh}, {RideKind::highway, rest, 90_kmh}}), told);
  EXPECT_TRUE(refusal({{RideKind::trail, 1.5, 20_kmh}}).starts_with("share 1 is 1.5"));
  EXPECT_TRUE(refusal({{RideKind::trail, 1.005, 20_kmh}}).starts_with("share 1 is 1.005"));
  EXPECT_TRUE(refusal({{RideKind::trail, 1.0, -1.0 * units::kmh}}).starts_with("speed 1 is -1 km/h"));
  EXPECT_TRUE(refusal({{RideKind::trail, 1.0, 20_kmh, Slope(), 0}}).starts_with("gear 1 is 0"));
  EXPECT_TRUE(refusal({{RideKind::trail, 1.0, 20_kmh, Slope(), 17}}).starts_with("gear 1 is 17"));
  EXPECT_EQ(refusal({{RideKind::trail, 1.0, 20_kmh, Slope(), 16}}), "none");
  EXPECT_EQ(refusal({{RideKind::trail, 0.75, 20_kmh}, {RideKind::highway, 0.75, 90_kmh}}),
            "sum of the shares is 1.5; expected 1");
  RideShares many;
  for (int i = 0; i < 17; ++i) many.push_back({RideKind::trail, 1.0 / 17.0, 20_kmh});
  EXPECT_EQ(refusal(many), "number of shares is more than 16; expected 1 to 16");
  EXPECT_THROW(RideProfile({}), RangeError);
  EXPECT_EQ(to_string(RideKind::technical), "technical");
  EXPECT_EQ(to_string(RideKind::trail), "trail");
  EXPECT_EQ(to_string(RideKind::gravel_road), "gravel road");
  EXPECT_EQ(to_string(RideKind::highway), "highway");
  EXPECT_EQ(to_string(static_cast<RideKind>(-1)), "");
  EXPECT_EQ(to_string(static_cast<RideKind>(4)), "");
}

TEST(RideUse, TellsTheThrustThatWearsAsMuchAsTheWholeRide) {
  const RideProfile profile({{RideKind::trail, 0.5, 36_kmh}, {RideKind::highway, 0.5, 72_kmh}});
  // 40 N + 0.4 kg/m (10 m/s)^2 over a third of the way, 40 N + 0.4 kg/m (20 m/s)^2 over the rest
  EXPECT_NEAR(*ride_use(profile, 2_hour, loaded()).mean_thrust() / units::N, 80.0 / 3.0 + 200.0 * 2.0 / 3.0, 1e-11);
  EXPECT_EQ(ride_use(profile, 2_hour, drive).mean_thrust(), std::nullopt);     // no load
  EXPECT_EQ(ride_use(profile, 0_hour, loaded()).mean_thrust(), std::nullopt);  // no way
}

TEST(RideUse, KeepsTheGearWhileTheEngineStandsStill) {
  // At 36 km/h on a wheel of 2 m the engine turns 471 rad/s in third; then it is switched off and the machine rolls on.
  const double third = 5.0 * 15.0 * turn.value();
  const RideUse use = ride_use(RideLog({{0, 1, 2, 3}, {10, 10, 10, 10}, {}, {third, third, 0, 0}}), drive);
  EXPECT_EQ(use.gear(3).time, 3_s);
  EXPECT_EQ(use.engine_speeds()[0], 1_s);
}

}  // namespace
