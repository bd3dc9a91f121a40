// SPDX-License-Identifier: MIT
#include <layshaft/setup/on_road.hpp>

#include "machines.hpp"

#include <layshaft/setup/comparison.hpp>

#include <gtest/gtest.h>
#include <core/not_finite.hpp>

#include <string>

namespace {
using namespace layshaft_test;

const EngineCurve curve({2600_rpm, 4500_rpm, 6500_rpm, 9100_rpm}, {18_Nm, 21_Nm, 23_Nm, 17_Nm});
MachineParts parts_with_engine() {
  MachineParts parts = trail_bike_parts();
  parts.engine = curve;
  parts.body = Body({.mass = 212_kg, .wheelbase = 1.41_m, .centre_ahead = 0.64_m, .centre_height = 0.83_m});
  parts.road_load = RoadLoad::by_mass(212_kg);
  return parts;
}

TEST(OnRoad, IsPartOfAnAppraisalWhereTheMachineTellsEnough) {
  const Machine machine(parts_with_engine());
  const Appraisal appraisal = appraise(machine, machine.stock());
  ASSERT_TRUE(appraisal.road());
  EXPECT_EQ(*appraisal.road(), on_road(machine, machine.stock()));
  const auto absent = [](auto leave_out) {
    MachineParts parts = parts_with_engine();
    leave_out(parts);
    const Machine bare(parts);
    return !appraise(bare, bare.stock()).road();
  };
  EXPECT_TRUE(absent([](MachineParts& p) { p.engine.reset(); }));
  EXPECT_TRUE(absent([](MachineParts& p) { p.road_load.reset(); }));
  EXPECT_TRUE(absent([](MachineParts& p) {
    p.body.reset();
    p.road_load = RoadLoad(RoadCoefficients{.constant = 40_N, .quadratic = 0.3_kg_per_m});
  }));
  EXPECT_FALSE(absent([](MachineParts& p) { p.body.reset(); }));  // the table's mass will do
}

TEST(OnRoad, AnswersAsItsPartsDo) {
  const Machine machine(parts_with_engine());
  const layshaft::Setup& stock = machine.stock();
  const RoadLoad& road = *machine.road_load();
  const OnRoad all = on_road(machine, stock);
  EXPECT_EQ(all.top_speed, top_speed(machine, stock, road));
  EXPECT_EQ(all.start, standing_start(machine, stock, road));
  EXPECT_EQ(all.shifts, shift_points(machine, stock));
  EXPECT_EQ(all.walking_pace, walking_pace(machine, stock));
  EXPECT_EQ(all.limit, thrust_limit(*machine.body(), surface(SurfaceKind::asphalt)));
  EXPECT_EQ(all.road_load, RoadLoadKind::mass_table);
  ASSERT_EQ(all.gears.size(), machine.gearbox().gears().size());
  for (int gear = 1; gear <= 5; ++gear) {
    const GearOnRoad& one = all.gears[static_cast<std::size_t>(gear - 1)];
    EXPECT_EQ(one.climb, best_climb(machine, stock, road, gear));
    const Speed slowest = appraise(machine, stock).speed_range(gear).lowest.nominal;
    EXPECT_EQ(one.held_back, steepest_descent(machine, stock, road, gear, slowest));
    EXPECT_EQ(one.engine_turns.nominal,
              engine_turns(appraise(machine, stock).overall_ratios()[static_cast<std::size_t>(gear - 1)],
                           appraise(machine, stock).circumference().nominal));
  }
}

TEST(OnRoad, ComesOfTheSetUpsOwnChainDrive) {
  const Machine machine(parts_with_engine());
  SetupParts parts = machine.stock().parts();
  parts.drive_efficiency = Band<double>::exactly(0.9);
  const layshaft::Setup lossy(parts);
  parts.drive_efficiency = Band<double>::exactly(0.98);
  const layshaft::Setup good(parts);
  const double ratio = thrust(machine, lossy, 2, 30_kmh).nominal / thrust(machine, good, 2, 30_kmh).nominal;
  EXPECT_NEAR(ratio, 0.9 / 0.98, 1e-14);
  MachineParts whole = parts_with_engine();
  whole.drive_efficiency = Band<double>::exactly(0.9);
  const Machine stated(whole);
  EXPECT_NEAR(in(thrust(stated, stated.stock(), 2, 30_kmh).nominal, units::N),
              0.9 * in(drive_thrust(curve.torque(appraise(stated, stated.stock()).engine_speed_at(30_kmh, 2).nominal),
                                    appraise(stated, stated.stock()).overall_ratios()[1], 1.0,
                                    appraise(stated, stated.stock()).circumference().nominal),
                       units::N),
              1e-9);
}

TEST(OnRoad, PeakTorqueIsThatOfTheCurveUnlessStated) {
  const Machine machine(parts_with_engine());
  EXPECT_EQ(machine.peak_torque(), (PeakTorque{23_Nm, 6500_rpm}));
  EXPECT_TRUE(appraise(machine, machine.stock()).drive().loads);
  MachineParts parts = parts_with_engine();
  parts.peak_torque = PeakTorque{25_Nm, 6000_rpm};
  EXPECT_EQ(Machine(parts).peak_torque(), (PeakTorque{25_Nm, 6000_rpm}));
  parts.peak_torque.reset();
  parts.engine = EngineCurve({2600_rpm, 9100_rpm}, {18_Nm, 17_Nm}, EngineOrigin{MeasuredAt::rear_wheel});
  EXPECT_EQ(Machine(parts).peak_torque(), std::nullopt);
}

TEST(OnRoad, WalksSlowerOnLooseGround) {
  const Machine machine(parts_with_engine());
  const Band<Speed> asphalt = walking_pace(machine, machine.stock());
  const Band<Speed> sand = walking_pace(machine, machine.stock(), SurfaceKind::sand);
  EXPECT_NEAR(sand.nominal / asphalt.nominal, 0.8 / 0.98, 1e-12);
  EXPECT_EQ(asphalt.high, appraise(machine, machine.stock()).speed_range(1).lowest.high);
}

// At 2800 rpm, the lowest that pulls cleanly, unless the engine's curve begins above it.
TEST(OnRoad, WalksAtTheLowestSpeedThatPulls) {
  const Machine bare = trail_bike();
  const Band<Speed> without = walking_pace(bare, bare.stock());
  const auto from = [](AngularSpeed lowest) {
    MachineParts parts = parts_with_engine();
    parts.engine = EngineCurve({lowest, 9100_rpm}, {18_Nm, 17_Nm});
    const Machine machine(parts);
    return walking_pace(machine, machine.stock());
  };
  EXPECT_EQ(from(2600_rpm), without);
  EXPECT_NEAR(from(3500_rpm).nominal / without.nominal, 3500.0 / 2800.0, 1e-14);
  const double ratio = 66.0 / 21.0 * (33.0 / 12.0) * (47.0 / 12.0);
  EXPECT_NEAR(without.nominal.value(),
              0.98 * 2800.0 / 60.0 / ratio * in(Rollout(bare.stock()).circumference().nominal, units::m), 1e-12);
}

TEST(OnRoad, InThinAirPullsAndResistsLess) {
  const Machine machine(parts_with_engine());
  const Air thin = air_at(2500_m);
  const Machine high = in_air(machine, thin);
  const double share = thin.density / standard_atmosphere::density;
  EXPECT_NEAR(high.engine()->curve().torque(5000_rpm) / curve.torque(5000_rpm), share, 1e-15);
  EXPECT_NEAR(high.road_load()->quadratic().nominal / machine.road_load()->quadratic().nominal, share, 1e-15);
  EXPECT_EQ(high.road_load()->constant(), machine.road_load()->constant());
  MachineParts electric = parts_with_engine();
  electric.engine = EngineCurve::electric(30_Nm, 9_kW, 9100_rpm);
  EXPECT_EQ(in_air(Machine(electric), thin).engine()->curve().torque_factor(), 1.0);
}

TEST(OnRoad, TakesTheSameMachineIntoOtherAirWhateverItStates) {
  const Air thin = air_at(2500_m);
  const double share = thin.density / standard_atmosphere::density;
  const Machine bare = trail_bike();
  EXPECT_EQ(in_air(bare, thin), bare);
  MachineParts parts = parts_with_engine();
  parts.road_load.reset();
  EXPECT_NEAR(in_air(Machine(parts), thin).engine()->curve().torque(5000_rpm) / curve.torque(5000_rpm), share, 1e-15);
  parts = parts_with_engine();
  parts.engine.reset();
  EXPECT_EQ(in_air(Machine(parts), thin).road_load(), in_air(Machine(parts_with_engine()), thin).road_load());
}

// 2026-11-26: where no road load was stated, air of no density was asked of the engine alone, which took it.
TEST(OnRoad, RefusesAirOfNoDensityWhateverTheMachineStates) {
  MachineParts engine_alone = parts_with_engine(), road_alone = parts_with_engine();
  engine_alone.road_load.reset();
  road_alone.engine.reset();
  for (const Machine& machine :
       {trail_bike(), Machine(engine_alone), Machine(road_alone), Machine(parts_with_engine())}) {
    const auto text = [&](double density) {
      Air air;
      air.density = Density::from_value(density);
      const auto told = try_in_air(machine, air);
      return told ? std::string() : std::string(told.error().what());
    };
    EXPECT_EQ(text(0.0), "density is 0 kg/m3; expected 0.001 kg/m3 to 10 kg/m3");
    for (const double bad : {-1.2, 0.0009, 10.1, nothing, endless}) EXPECT_NE(text(bad), "") << bad;
    for (const double good : {0.001, 10.0}) EXPECT_EQ(text(good), "") << good;
  }
}

TEST(OnRoad, WarnsOfThrustThatIsOfNoUse) {
  const auto told = [](CautionCode code, auto change) {
    MachineParts parts = parts_with_engine();
    change(parts);
    const Machine machine(parts);
    const Cautions cautions = appraise(machine, machine.stock()).cautions();
    return std::ranges::any_of(cautions, [&](const Caution& one) { return one.code == code; });
  };
  const auto as_is = [](MachineParts&) {};
  EXPECT_TRUE(told(CautionCode::thrust_lifts_front_wheel, as_is));
  EXPECT_FALSE(told(CautionCode::thrust_spins_rear_wheel, as_is));
  EXPECT_TRUE(told(CautionCode::road_load_by_mass_alone, as_is));
  const auto low_and_long = [](MachineParts& p) {
    p.body = Body({.mass = 212_kg, .wheelbase = 1.9_m, .centre_ahead = 1.0_m, .centre_height = 0.5_m});
  };
  EXPECT_FALSE(told(CautionCode::thrust_lifts_front_wheel, low_and_long));
  EXPECT_TRUE(told(CautionCode::thrust_spins_rear_wheel, low_and_long));
  const auto weak = [](MachineParts& p) {
    p.engine = EngineCurve({2600_rpm, 9100_rpm}, {9_Nm, 8_Nm});
    p.road_load = RoadLoad(RoadCoefficients{.constant = 40_N, .quadratic = 0.3_kg_per_m});
  };
  for (const CautionCode code : {CautionCode::thrust_lifts_front_wheel, CautionCode::thrust_spins_rear_wheel,
                                 CautionCode::road_load_by_mass_alone})
    EXPECT_FALSE(told(code, weak));
}

TEST(OnRoad, SaysWhatIsMissing) {
  const Machine bare = trail_bike();
  const auto engine = try_thrust(bare, bare.stock(), 1, 20_kmh);
  ASSERT_FALSE(engine);
  EXPECT_TRUE(std::string(engine.error().what()).starts_with("the machine states no engine"));
  MachineParts parts = parts_with_engine();
  parts.road_load.reset();
  const Machine machine(parts);
  EXPECT_TRUE(
      std::string(try_on_road(machine, machine.stock()).error().what()).starts_with("the machine states no road load"));
  parts = parts_with_engine();
  parts.engine.reset();
  const Machine unpowered(parts);
  EXPECT_STREQ(try_on_road(unpowered, unpowered.stock()).error().what(), engine.error().what());
  parts = parts_with_engine();
  parts.body.reset();
  parts.road_load = RoadLoad(RoadCoefficients{.constant = 40_N, .quadratic = 0.3_kg_per_m});
  const Machine massless(parts);  // has a top speed on the level, and nothing to start with
  EXPECT_TRUE(try_top_speed(massless, massless.stock(), *massless.road_load()));
  EXPECT_STREQ(try_on_road(massless, massless.stock()).error().what(),
               try_standing_start(massless, massless.stock(), *massless.road_load()).error().what());
  parts = parts_with_engine();
  parts.engine = EngineCurve({10000_rpm, 11000_rpm}, {18_Nm, 17_Nm});
  EXPECT_TRUE(std::string(Machine::make(parts).error().what()).starts_with("engine: engine speeds of the curve"));
  parts = parts_with_engine();
  parts.drive_efficiency = Band<double>::exactly(1.2);
  EXPECT_TRUE(std::string(Machine::make(parts).error().what()).starts_with("drive_efficiency is 1.2"));
}

}  // namespace
