// SPDX-License-Identifier: MIT
#include "setup/machines.hpp"

#include <gtest/gtest.h>

namespace {
using namespace layshaft;
using layshaft_test::with;

constexpr SpeedometerSensor sensors[] = {SpeedometerSensor::layshaft, SpeedometerSensor::rear_wheel,
                                         SpeedometerSensor::front_wheel};

layshaft::Setup of(Teeth front, Teeth rear, const TyreSize& tyre) {
  return layshaft::Setup({.front = front, .rear = rear, .tyre = tyre});
}

TEST(Changes, HaveZeroWidthWithTheSameTyreOnBothSides) {
  for (const Machine& machine :
       {layshaft_test::trail_bike(), layshaft_test::farm_bike(), layshaft_test::cargo_cycle()}) {
    const layshaft::Setup& base = machine.stock();
    const layshaft::Setup trial = with(base, [](SetupParts& parts) {
      parts.front = Teeth(parts.front.count() - 1);
      parts.rear = Teeth(parts.rear.count() + 3);
    });
    EXPECT_EQ(thrust_change(base, trial).width(), 0.0) << machine.name();
    EXPECT_EQ(speed_change(base, trial).width(), 0.0) << machine.name();
    EXPECT_EQ(engine_speed_change(base, trial).width(), 0.0) << machine.name();
    for (const SpeedometerSensor sensor : sensors)
      EXPECT_EQ(indicated_ratio(sensor, base, trial).width(), 0.0) << machine.name();
    const double ratio = trial.rear() / trial.front() / (base.rear() / base.front());
    EXPECT_NEAR(thrust_change(base, trial).nominal, ratio - 1.0, 1e-15) << machine.name();
  }
}

TEST(Changes, AreNothingForTheSameSetup) {
  const layshaft::Setup stock = layshaft_test::trail_bike().stock();
  EXPECT_EQ(thrust_change(stock, stock), Band<double>::exactly(0.0));
  EXPECT_EQ(speed_change(stock, stock), Band<double>::exactly(0.0));
  EXPECT_EQ(engine_speed_change(stock, stock), Band<double>::exactly(0.0));
  for (const SpeedometerSensor sensor : sensors)
    EXPECT_EQ(indicated_ratio(sensor, stock, stock), Band<double>::exactly(1.0));
}

TEST(Changes, OfThrustAndSpeedMultiplyToOneAtEveryCorner) {
  const TyreSize tyres[] = {"110/100-18"_tyre, TyreSize("120/90-18", TyreUse::special), "4.10-18"_tyre,
                            "120/80R18"_tyre};
  for (const TyreSize& from : tyres)
    for (const TyreSize& to : tyres) {
      const layshaft::Setup base = of(12_teeth, 47_teeth, from), trial = of(13_teeth, 52_teeth, to);
      const double base_ratio = base.rear() / base.front(), trial_ratio = trial.rear() / trial.front();
      for (const Corner size : corners)
        for (const Corner rolling : corners) {
          const Length before = Rollout(base).at(size, rolling), after = Rollout(trial).at(size, rolling);
          EXPECT_NEAR((1.0 + thrust_change(base_ratio, before, trial_ratio, after)) *
                          (1.0 + speed_change(base_ratio, before, trial_ratio, after)),
                      1.0, 4e-16);
        }
      const Band<double> thrust = thrust_change(base, trial), speed = speed_change(base, trial);
      const Band<double> engine = engine_speed_change(base, trial);
      EXPECT_NEAR((1.0 + thrust.low) * (1.0 + speed.high), 1.0, 4e-16);
      EXPECT_NEAR((1.0 + thrust.nominal) * (1.0 + speed.nominal), 1.0, 4e-16);
      EXPECT_NEAR((1.0 + thrust.high) * (1.0 + speed.low), 1.0, 4e-16);
      // Thrust grows as the engine's turns do.
      EXPECT_NEAR(engine.low, thrust.low, 4e-16);
      EXPECT_NEAR(engine.nominal, thrust.nominal, 4e-16);
      EXPECT_NEAR(engine.high, thrust.high, 4e-16);
    }
}

// Common practice, no source: a tyre one size up (10 mm) with tall knobs costs about 6 % of thrust. The marking alone
// says 655/673 − 1 = −2.7 %; at its largest, against the old one as marked, a special use tyre says 655/698.92 − 1 =
// −6.3 %, a road tyre 655/688.12 − 1 = −4.8 %.
TEST(Changes, OfATyreOneSizeUpHoldTheTradesSixPercentWhenItHasKnobs) {
  const layshaft::Setup base = of(12_teeth, 47_teeth, "110/90-18"_tyre);
  const layshaft::Setup road = of(12_teeth, 47_teeth, "120/90-18"_tyre);
  const layshaft::Setup special = of(12_teeth, 47_teeth, TyreSize("120/90-18", TyreUse::special));
  EXPECT_NEAR(thrust_change(base, road).nominal, -0.027, 0.0005);
  EXPECT_NEAR(thrust_change(base, special).nominal, -0.027, 0.0005);
  const auto at_its_largest = [&](const layshaft::Setup& trial) {
    return thrust_change(1.0, Rollout(base).at(Corner::nominal, Corner::nominal), 1.0,
                         Rollout(trial).at(Corner::high, Corner::nominal));
  };
  EXPECT_NEAR(at_its_largest(special), -0.063, 0.0005);
  EXPECT_NEAR(at_its_largest(road), -0.048, 0.0005);
  EXPECT_TRUE(thrust_change(base, special).contains(-0.06));
  EXPECT_FALSE(thrust_change(base, road).contains(-0.06));
}

TEST(IndicatedRatio, FollowsWhatTheSensorSees) {
  const Machine machine = layshaft_test::trail_bike();
  const layshaft::Setup& base = machine.stock();
  const layshaft::Setup taller = with(base, [](SetupParts& parts) { parts.tyre = "120/100-18 68M"_tyre; });
  const layshaft::Setup shorter_geared = with(base, [](SetupParts& parts) { parts.rear = 50_teeth; });
  const layshaft::Setup taller_front = with(base, [](SetupParts& parts) { parts.front_tyre = "90/100-21 57M"_tyre; });
  struct Case {
    SpeedometerSensor sensor;
    bool rear_tyre, sprockets, front_tyre;
  };
  for (const auto& [sensor, rear_tyre, sprockets, front_tyre] :
       {Case{SpeedometerSensor::layshaft, true, true, false}, Case{SpeedometerSensor::rear_wheel, true, false, false},
        Case{SpeedometerSensor::front_wheel, false, false, true}}) {
    EXPECT_EQ(indicated_ratio(sensor, base, taller).nominal < 1.0, rear_tyre) << to_string(sensor);
    EXPECT_EQ(indicated_ratio(sensor, base, shorter_geared).nominal > 1.0, sprockets) << to_string(sensor);
    EXPECT_EQ(indicated_ratio(sensor, base, taller_front).nominal < 1.0, front_tyre) << to_string(sensor);
  }
  EXPECT_NEAR(indicated_ratio(SpeedometerSensor::layshaft, base, shorter_geared).nominal, 50.0 / 47.0, 1e-15);
  EXPECT_EQ(indicated_ratio(SpeedometerSensor::rear_wheel, base, shorter_geared), Band<double>::exactly(1.0));
}

// 80/100-21 and 90/100-21 on a rim of 533 mm: sections of 80 and 90 mm, each within 0.97 to 1.07 of itself.
TEST(IndicatedRatio, OfAFrontWheelIsABandOverBothTyresSizes) {
  const layshaft::Setup base = layshaft_test::trail_bike().stock();
  const layshaft::Setup taller = with(base, [](SetupParts& parts) { parts.front_tyre = "90/100-21 57M"_tyre; });
  const Band<double> ratio = indicated_ratio(SpeedometerSensor::front_wheel, base, taller);
  EXPECT_NEAR(ratio.low, (533.0 + 0.97 * 160.0) / (533.0 + 1.07 * 180.0), 1e-14);
  EXPECT_NEAR(ratio.nominal, 693.0 / 713.0, 1e-14);
  EXPECT_NEAR(ratio.high, (533.0 + 1.07 * 160.0) / (533.0 + 0.97 * 180.0), 1e-14);
}

TEST(IndicatedRatio, TakesAFrontTyreThatIsNotStatedForUnchanged) {
  const layshaft::Setup base = layshaft_test::trail_bike().stock();
  const layshaft::Setup unstated = with(base, [](SetupParts& parts) { parts.front_tyre.reset(); });
  EXPECT_EQ(indicated_ratio(SpeedometerSensor::front_wheel, base, unstated), Band<double>::exactly(1.0));
  EXPECT_EQ(indicated_ratio(SpeedometerSensor::front_wheel, unstated, base), Band<double>::exactly(1.0));
  const layshaft::Setup taller = with(base, [](SetupParts& parts) { parts.front_tyre = "90/100-21 57M"_tyre; });
  EXPECT_EQ(indicated_ratio(SpeedometerSensor::front_wheel, taller, unstated), Band<double>::exactly(1.0));
  EXPECT_EQ(indicated_ratio(SpeedometerSensor::front_wheel, unstated, taller), Band<double>::exactly(1.0));
}

TEST(Changes, CountTheDrivesEfficiencyWhereBothStateIt) {
  const layshaft::Setup unstated = layshaft_test::trail_bike().stock();
  const auto stated = [&](const Band<double>& efficiency) {
    return with(unstated, [&](SetupParts& parts) { parts.drive_efficiency = efficiency; });
  };
  const layshaft::Setup old = stated({0.90, 0.92, 0.94}), fresh = stated({0.96, 0.97, 0.98});
  EXPECT_EQ(thrust_change(unstated, fresh), Band<double>::exactly(0.0));
  EXPECT_EQ(thrust_change(old, unstated), Band<double>::exactly(0.0));
  EXPECT_EQ(thrust_change(old, old), Band<double>::exactly(0.0));
  const Band<double> thrust = thrust_change(old, fresh);
  EXPECT_NEAR(thrust.low, 0.96 / 0.94 - 1.0, 1e-15);
  EXPECT_NEAR(thrust.nominal, 0.97 / 0.92 - 1.0, 1e-15);
  EXPECT_NEAR(thrust.high, 0.98 / 0.90 - 1.0, 1e-15);
  EXPECT_EQ(speed_change(old, fresh), Band<double>::exactly(0.0));
  EXPECT_EQ(engine_speed_change(old, fresh), Band<double>::exactly(0.0));
}

TEST(Changes, OfAWornTyreAreThoseOfASmallerOne) {
  const layshaft::Setup fresh = layshaft_test::trail_bike().stock();
  const layshaft::Setup worn = with(fresh, [](SetupParts& parts) { parts.tread_worn = 6_mm; });
  const double diameter = 0.677, less = 0.012;  // 110/100-18: 457 + 2 · 110 mm
  EXPECT_NEAR(thrust_change(fresh, worn).nominal, diameter / (diameter - less) - 1.0, 1e-15);
  EXPECT_NEAR(speed_change(fresh, worn).nominal, -less / diameter, 1e-15);
  EXPECT_EQ(thrust_change(worn, worn), Band<double>::exactly(0.0));
  EXPECT_GT(indicated_ratio(SpeedometerSensor::layshaft, fresh, worn).low, 1.0);  // it reads fast
}

TEST(ThrustCorners, AreEveryCornerOfTheCausesThatCount) {
  const layshaft::Setup one = of(12_teeth, 47_teeth, "110/100-18"_tyre);
  const layshaft::Setup other = of(12_teeth, 47_teeth, "120/80R18"_tyre);  // of another size, and built another way
  const auto stated = [](const layshaft::Setup& setup, double efficiency) {
    return with(setup, [&](SetupParts& parts) { parts.drive_efficiency = Band<double>::exactly(efficiency); });
  };
  EXPECT_EQ(thrust_corners(one, one).size(), 1u + 2u * 2u);
  EXPECT_EQ(thrust_corners(one, other).size(), 1u + 16u);
  EXPECT_EQ(thrust_corners(one, stated(other, 0.9)).size(), 1u + 16u);
  EXPECT_EQ(thrust_corners(stated(one, 0.9), stated(one, 0.9)).size(), 1u + 4u * 2u);
  EXPECT_EQ(thrust_corners(stated(one, 0.9), stated(other, 0.95)).size(), 1u + 16u * 4u);
  EXPECT_FALSE(thrust_corners(stated(one, 0.9), stated(other, 0.95)).overfull());
  EXPECT_FALSE(wheel_corners(Rollout(one), Rollout(other)).overfull());
}

}  // namespace
