// SPDX-License-Identifier: MIT
#include <layshaft/road/engine.hpp>

#include "invented_powertrain.hpp"

#include <gtest/gtest.h>

namespace {
using namespace layshaft_test;

TEST(Engine, IsMadeOfACurveAlone) {
  const Engine engine = trail_curve();
  for (const Corner corner : corners) EXPECT_EQ(engine.curve(corner), trail_curve());
  EXPECT_EQ(engine.inertia(), MomentOfInertia());
  EXPECT_EQ(engine.clutch_torque(), std::nullopt);
  EXPECT_EQ(engine.braking().low, 0.05 * 24_Nm);
  EXPECT_EQ(engine.braking().high, 0.30 * 24_Nm);
  EXPECT_EQ(engine.braking_from().certainty, Certainty::from_memory);
  EXPECT_EQ(trail_engine().braking().nominal, 3_Nm);
  EXPECT_EQ(trail_engine().braking_from(), sources::stated);
}

TEST(Engine, OfAnEstimateHasItsBand) {
  const Engine engine = estimate_engine({24_Nm, 6000_rpm, 19_kW, 8500_rpm, 2000_rpm, 9200_rpm});
  EXPECT_LT(engine.curve(Corner::low).torque(4000_rpm), engine.curve(Corner::nominal).torque(4000_rpm));
  EXPECT_GT(engine.curve(Corner::high).torque(4000_rpm), engine.curve(Corner::nominal).torque(4000_rpm));
}

TEST(Engine, InThinAirPullsLessAndDragsAsBefore) {
  const Engine high = trail_engine().scaled(0.75);
  EXPECT_EQ(high.curve().torque(6000_rpm), 18_Nm);
  EXPECT_EQ(high.braking(), trail_engine().braking());
  EXPECT_EQ(Engine(trail_curve()).scaled(0.75).braking(), Engine(trail_curve()).braking());
  EXPECT_FALSE(trail_engine().try_scaled(-0.1));
}

TEST(Engine, SaysWhatIsWrong) {
  const auto refusal = [](auto change) {
    EngineParts parts = trail_engine().parts();
    change(parts);
    const auto made = Engine::make(parts);
    return made ? std::string() : std::string(made.error().what());
  };
  EXPECT_TRUE(refusal([](EngineParts& p) { p.inertia = -1_kg_m2; }).starts_with("inertia is -1 kg m2"));
  EXPECT_TRUE(refusal([](EngineParts& p) { p.braking = Band<Torque>{5_Nm, 3_Nm, 6_Nm}; }).starts_with("braking is "));
  EXPECT_TRUE(refusal([](EngineParts& p) { p.clutch_torque = 0_Nm; }).starts_with("clutch_torque is 0 Nm"));
  EXPECT_EQ(refusal([](EngineParts& p) { p.start_speed = 2000_rpm; }),
            "start_speed is 2000 rpm; expected 2500 rpm to 9200 rpm");
}

}  // namespace
