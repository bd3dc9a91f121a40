// SPDX-License-Identifier: MIT
#include <layshaft/chain/loads.hpp>

#include "../reference/chain_examples.hpp"

#include <gtest/gtest.h>
#include <core/formula_range.hpp>

#include <string>

namespace {
using namespace layshaft;
using layshaft_test::expect_range;

ChainMade with_pin(double friction) {
  return {.pin_diameter = 5.08_mm, .joint_friction = Band<double>::exactly(friction)};
}

// Worked by hand: pi 0.1 5.08/15.875 (1/15 + 1/45) = 0.008936.
TEST(ChainLoads, LoseWhatTheJointsFrictionTakes) {
  const ChainLoop loop(ChainSeries("520"), 15_teeth, 45_teeth);
  const ChainLoads loads = chain_loads(loop, {.torque = 50_Nm, .shaft_speed = 1000_rpm}, with_pin(0.1));
  ASSERT_TRUE(loads.efficiency);
  EXPECT_NEAR(loads.efficiency->nominal, 0.991064, 5e-7);
  EXPECT_NEAR(chain_efficiency_approximate(0.1, 5.08_mm, 15.875_mm, 15_teeth, 45_teeth), loads.efficiency->nominal,
              1e-15);
}

/// The same summed over the joints of a chain, bend by bend: four a pass, two of them under the tight run's pull.
double by_articulation(double friction, double drag, double pin, double pitch, int front, int rear, double tight,
                       double slack) {
  constexpr double pi = 3.14159265358979323846;
  const int links = 110;
  double work = 0.0;
  for (int joint = 0; joint < links; ++joint)
    for (const int teeth : {front, rear})
      for (const double pull : {tight, slack}) work += (friction * pull * pin / 2.0 + drag) * 2.0 * pi / teeth;
  return 1.0 - work / ((tight - slack) * links * pitch);
}
TEST(ChainLoads, AgreeWithASumOverEveryBendOfEveryJoint) {
  const ChainLoop loop(ChainSeries("520"), 13_teeth, 48_teeth);
  ChainMade made = with_pin(0.12);
  made.seal_drag = Band<Torque>::exactly(0.03_Nm);
  made.mass_per_length = 1.5_kg_per_m;
  const ChainLoads loads = chain_loads(loop, {.torque = 80_Nm, .shaft_speed = 1500_rpm, .slack_tension = 20_N}, made);
  const double slack = 20.0 + loads.centrifugal_tension->value();
  EXPECT_NEAR(loads.efficiency->nominal,
              by_articulation(0.12, 0.03, 5.08e-3, 15.875e-3, 13, 48, loads.tight_tension.value(), slack), 1e-13);
  EXPECT_NEAR(loads.tight_tension.value(), loads.pull.value() + slack, 1e-9);
  EXPECT_NEAR(loads.loss->nominal / (loads.pull * loads.chain_speed), 1.0 - loads.efficiency->nominal, 1e-13);
}

// Burgess and Lodge, Sports Engineering 7 (2004), abstract: 96 to 99 % below 120 km/h. The band of a plain chain on a
// trail bike overlaps that; a sealed chain loses more, by an assumption.
TEST(ChainLoads, LieWhereMeasuredMotorcycleChainsDo) {
  const ChainLoop loop(ChainSeries("520"), 13_teeth, 48_teeth);
  ChainMade made{.pin_diameter = 5.08_mm, .mass_per_length = 1.0_kg_per_m};
  const Band<double> plain = *chain_loads(loop, {.torque = 60_Nm, .shaft_speed = 2000_rpm}, made).efficiency;
  EXPECT_LT(plain.low, 0.99);
  EXPECT_GT(plain.high, 0.96);
  made.seal = ChainSeal::shaped;
  const Band<double> shaped = *chain_loads(loop, {.torque = 60_Nm, .shaft_speed = 2000_rpm}, made).efficiency;
  made.seal = ChainSeal::o_ring;
  const Band<double> round = *chain_loads(loop, {.torque = 60_Nm, .shaft_speed = 2000_rpm}, made).efficiency;
  EXPECT_LT(shaped.nominal, plain.nominal);
  EXPECT_LT(round.nominal, shaped.nominal);
  EXPECT_GT(round.high, 0.96);
}

TEST(ChainLoads, FallInEfficiencyAsTheChainsMassPulls) {
  const ChainLoop loop(ChainSeries("520"), 15_teeth, 45_teeth);
  ChainMade made = with_pin(0.1);
  made.mass_per_length = 1.5_kg_per_m;
  double before = 1.0;
  for (const double speed : {0.0, 1000.0, 3000.0, 6000.0}) {
    const double now =
        chain_loads(loop, {.torque = 50_Nm, .shaft_speed = speed * units::rpm}, made).efficiency->nominal;
    EXPECT_LT(now, before);
    before = now;
  }
}

TEST(ChainLoads, AreAsSafeAsTheStruckPullLeavesThem) {
  const ChainLoop loop(ChainSeries("08B"), 15_teeth, 45_teeth);
  const ChainLoads calm = chain_loads(loop, {.torque = 50_Nm, .shaft_speed = 0_rpm});
  const ChainLoads struck = chain_loads(loop, {.torque = 50_Nm, .shaft_speed = 0_rpm, .spike = 2.0});
  ASSERT_TRUE(calm.safety && struck.safety);
  EXPECT_NEAR(*calm.safety / *struck.safety, 2.0, 1e-12);
  EXPECT_NEAR(*calm.safety, 17800.0 / calm.tight_tension.value(), 1e-12);  // 17.8 kN: ISO 606
  EXPECT_EQ(struck.greatest_tension, 2.0 * calm.greatest_tension);
}

TEST(ChainLoads, LeaveOutWhatNoSourceTells) {
  const ChainLoads loads =
      chain_loads(ChainLoop(ChainSeries("520"), 15_teeth, 45_teeth), {.torque = 50_Nm, .shaft_speed = 100_rpm});
  EXPECT_FALSE(loads.safety || loads.efficiency || loads.loss || loads.centrifugal_tension);
}

// Bhandari, Design of Machine Elements, ch. 14 (B14.1, B14.7); Jindal, Machine Design, ch. 30 (J30-3); Wentzell,
// Machine Design, example 14-4. The books divide power by chain speed, taken from teeth and pitch.
TEST(ChainLoads, AgreeWithTextbookExamples) {
  const Speed v1 = chain_speed(19.05_mm, 17_teeth, 1000_rpm);
  EXPECT_NEAR(31100.0 / (14320.0 / v1.value()), 11.722224, 5e-6);
  EXPECT_NEAR(chain_safety(31.1_kN, 14.32 * units::kW / v1), 11.722224, 5e-6);
  const Speed v7 = chain_speed(15.875_mm, 19_teeth, 1400_rpm);
  EXPECT_NEAR((12.9537 * units::kW / v7).value(), 1840.558878, 5e-5);
  EXPECT_NEAR(chain_safety(22.2_kN, 12.9537 * units::kW / v7), 12.061554, 5e-6);
  const Speed v3 = chain_speed(9.52_mm, 21_teeth, 1000_rpm);
  EXPECT_NEAR(v3.value(), 3.332, 5e-4);
  EXPECT_NEAR((2.5578 * units::kW / v3).value(), 767.6, 0.1);
  EXPECT_NEAR(in(chain_speed(0.5 * units::inch, 12_teeth, 1800_rpm), units::mps) / 0.3048 * 60.0, 900.0, 5e-3);
  EXPECT_NEAR(in(chain_power(194.62 * units::lbf, chain_speed(0.5 * units::inch, 12_teeth, 1800_rpm)), units::hp), 5.31,
              5e-3);
}

TEST(ChainLoads, AreTheSameByTorqueAndByThrust) {
  // 50 N m on the front sprocket turn the wheel with 150 N m, and on 0.3 m of radius push with 500 N.
  const Length front = pitch_diameter(15.875_mm, 15_teeth), rear = pitch_diameter(15.875_mm, 45_teeth);
  const Force pull = chain_pull(50_Nm, front);
  EXPECT_NEAR(in(pull, units::N), 2.0 * 50.0 / front.value(), 1e-9);
  const Force thrust = pull * rear / (0.6 * units::m);
  EXPECT_NEAR(in(chain_tension(thrust, pi * 0.6 * units::m, rear), units::N), in(pull, units::N), 1e-9);
}

TEST(ChainLoads, RefuseWhatIsOutOfRange) {
  const ChainLoop loop(ChainSeries("08B"), 15_teeth, 45_teeth);
  const ChainDuty good{.torque = 50_Nm, .shaft_speed = 100_rpm};
  const auto refused = [&](auto change, const char* name) {
    ChainDuty duty = good;
    ChainMade made;
    change(duty, made);
    const auto loads = try_chain_loads(loop, duty, made);
    ASSERT_FALSE(loads) << name;
    EXPECT_TRUE(std::string(loads.error().what()).starts_with(name)) << loads.error().what();
  };
  refused([](ChainDuty& d, ChainMade&) { d.torque = 0_Nm; }, "torque");
  refused([](ChainDuty& d, ChainMade&) { d.shaft_speed = 30001_rpm; }, "shaft_speed");
  refused([](ChainDuty& d, ChainMade&) { d.spike = 0.9; }, "spike");
  refused([](ChainDuty& d, ChainMade&) { d.slack_tension = -1.0_N; }, "slack_tension");
  refused([](ChainDuty&, ChainMade& m) { m.pin_diameter = 0_mm; }, "pin_diameter");
  refused([](ChainDuty&, ChainMade& m) { m.tensile_strength = 1_N; }, "tensile_strength");
  refused([](ChainDuty&, ChainMade& m) { m.mass_per_length = 0_kg_per_m; }, "mass_per_length");
  refused([](ChainDuty&, ChainMade& m) { m.plate_height = 0_mm; }, "plate_height");
  refused([](ChainDuty&, ChainMade& m) { m.joint_friction = Band<double>{0.0, 0.5, 1.5}; }, "joint_friction");
  refused([](ChainDuty&, ChainMade& m) { m.seal_drag = Band<Torque>::exactly(-1.0_Nm); }, "seal_drag");
  EXPECT_THROW((void)chain_loads(loop, {.torque = 0_Nm, .shaft_speed = 100_rpm}), RangeError);
}

TEST(ChainLoads, FormulasKnowTheirRange) {
  expect_range<formula::chain_pull>("f+", 50_Nm, 80_mm);
  expect_range<formula::chain_speed>("+#f", 15.875_mm, 15_teeth, 1000_rpm);
  expect_range<formula::centrifugal_tension>("+f", 1_kg_per_m, 10_mps);
  expect_range<formula::slack_tension>("ff", 10_N, 10_N);
  expect_range<formula::tight_tension>("ff", 10_N, 10_N);
  expect_range<formula::chain_power>("ff", 10_N, 10_mps);
  expect_range<formula::chain_safety>("++", 10_N, 10_N);
  expect_range<formula::joint_friction_pull>("0++##ff", 0.1, 5_mm, 15.875_mm, 15_teeth, 45_teeth, 100_N, 10_N);
  expect_range<formula::seal_drag_pull>("f+##", 0.1_Nm, 15.875_mm, 15_teeth, 45_teeth);
  expect_range<formula::chain_efficiency>("+ff", 100_N, 1_N, 1_N);
  expect_range<formula::chain_efficiency_approximate>("0++##", 0.1, 5_mm, 15.875_mm, 15_teeth, 45_teeth);
}

TEST(ChainSeal, HasItsName) {
  EXPECT_EQ(to_string(ChainSeal::none), "none");
  EXPECT_EQ(to_string(ChainSeal::o_ring), "O-ring");
  EXPECT_EQ(to_string(ChainSeal::shaped), "shaped");
}

TEST(ChainLoads, TakeBothEndsOfEachRange) {
  const ChainLoop loop(ChainSeries("08B"), 15_teeth, 45_teeth);
  const auto takes = [&](const ChainDuty& duty, const ChainMade& made) {
    return try_chain_loads(loop, duty, made).has_value();
  };
  const ChainDuty good{.torque = 50_Nm, .shaft_speed = 100_rpm};
  EXPECT_TRUE(takes({.torque = 1e-6_Nm, .shaft_speed = 100_rpm}, {}));
  EXPECT_FALSE(takes({.torque = 0.999e-6_Nm, .shaft_speed = 100_rpm}, {}));
  EXPECT_TRUE(takes({.torque = 50_Nm, .shaft_speed = 100_rpm, .spike = 20.0}, {}));
  EXPECT_FALSE(takes({.torque = 50_Nm, .shaft_speed = 100_rpm, .spike = 20.01}, {}));
  EXPECT_TRUE(takes(good, {.joint_friction = Band<double>{0.0, 0.5, 1.0}}));
  EXPECT_FALSE(takes(good, {.joint_friction = Band<double>{0.0, 0.5, 1.001}}));
}

}  // namespace
