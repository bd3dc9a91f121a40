// SPDX-License-Identifier: MIT
#include <layshaft/road/powertrain.hpp>

#include "invented_powertrain.hpp"

#include <gtest/gtest.h>

namespace {
using namespace layshaft_test;

// A published worked example (NMA380 vehicle dynamics course, propulsion limits, example 1): 174 N m at 3200 rpm, third
// gear 1.46, final drive 3.944, efficiency 0.96, wheel radius 0.2888 m give 3330.5 N at 60.5046 km/h. The final drive
// is here a pair of sprockets of 125 and 493 teeth.
TEST(Powertrain, GivesThePrintedThrust) {
  const EngineCurve curve({1000_rpm, 3200_rpm, 6000_rpm}, {150_Nm, 174_Nm, 120_Nm});
  PowertrainParts parts{.engine = curve,
                        .gearbox = Gearbox({.gears = {3.78, 2.12, 1.46}, .idle = 800_rpm, .rev_limit = 6000_rpm}),
                        .loop = ChainLoop(ChainSeries("520"), 125_teeth, 493_teeth),
                        .circumference = Band<Length>::exactly(2.0 * pi * 0.2888_m),
                        .drive_efficiency = Band<double>::exactly(0.96)};
  const Powertrain train = Powertrain::make(parts).value();
  EXPECT_NEAR(train.overall_ratio(3), 1.46 * 3.944, 1e-12);
  EXPECT_NEAR(in(train.speed(3200_rpm, 3, Corner::nominal), units::kmh), 60.5046, 5e-5);
  const auto thrust = try_thrust(train, 3, train.speed(3200_rpm, 3, Corner::nominal));
  ASSERT_TRUE(thrust);
  EXPECT_NEAR(in(thrust->nominal, units::N), 3330.5, 0.05);
  EXPECT_EQ(thrust->width(), Force());
}

TEST(Powertrain, CountsNoLossTwice) {
  const auto efficiency = [](MeasuredAt place, std::optional<Band<double>> whole, std::optional<Band<double>> chain) {
    const Powertrain train = trail_train([&](PowertrainParts& p) {
      p.engine = trail_curve(place);
      p.drive_efficiency = whole;
      p.chain_efficiency = chain;
      p.chain_made.pin_diameter = 5.1_mm;
    });
    return train.drive_efficiency(Unwatched(), 1, 20_Nm, 6000_rpm, Corner::nominal);
  };
  const auto exactly = [](double value) { return Band<double>::exactly(value); };
  const double gears = usual_gearbox_efficiency.nominal;
  EXPECT_EQ(efficiency(MeasuredAt::rear_wheel, {}, {}), 1.0);
  EXPECT_EQ(efficiency(MeasuredAt::rear_wheel, {}, exactly(0.9)), 1.0);
  EXPECT_EQ(efficiency(MeasuredAt::gearbox_output, {}, exactly(0.97)), 0.97);
  EXPECT_EQ(efficiency(MeasuredAt::crank, {}, exactly(0.97)), gears * 0.97);
  EXPECT_EQ(efficiency(MeasuredAt::crank, exactly(0.92), {}), 0.92);
  EXPECT_EQ(efficiency(MeasuredAt::crank, exactly(0.95), exactly(0.98)), 0.95 * 0.98);
  // and by the chain's own loads: the same as its loads say
  const ChainLoads loads = chain_loads(ChainLoop(ChainSeries("520"), 13_teeth, 48_teeth),
                                       {.torque = 20_Nm * gears * 3.05 * 2.7, .shaft_speed = 6000_rpm / (3.05 * 2.7)},
                                       {.pin_diameter = 5.1_mm});
  EXPECT_NEAR(efficiency(MeasuredAt::crank, {}, {}), gears * loads.efficiency->nominal, 1e-15);
  EXPECT_NEAR(efficiency(MeasuredAt::gearbox_output, {}, {}), loads.efficiency->nominal, 1e-3);
  // and where nobody knows the pins, what a published abstract says of such drives
  const Powertrain unknown = trail_train([](PowertrainParts& p) { p.drive_efficiency.reset(); });
  EXPECT_EQ(unknown.drive_efficiency(Unwatched(), 1, 20_Nm, 6000_rpm, Corner::low),
            usual_gearbox_efficiency.low * usual_chain_efficiency.low);
}

TEST(Powertrain, LosesNoMoreOfASmallTorqueThanOfATwentieth) {
  const Powertrain train = trail_train([](PowertrainParts& p) {
    p.drive_efficiency.reset();
    p.chain_made.pin_diameter = 5.1_mm;
    p.chain_made.mass_per_length = 1.5_kg_per_m;  // its centrifugal tension does not fall with the torque
  });
  const auto at = [&](Torque torque) {
    return train.drive_efficiency(Unwatched(), 6, torque, 6000_rpm, Corner::nominal);
  };
  EXPECT_EQ(at(0_Nm), at(0.05 * 24_Nm));
  EXPECT_LT(at(1.2_Nm), at(12_Nm));
}

TEST(Powertrain, HoldsTheEngineWithinItsCurve) {
  const Powertrain train = trail_train([](PowertrainParts& p) { p.circumference = {1.95_m, 2.02_m, 2.09_m}; });
  EXPECT_EQ(train.slowest(), 2500_rpm);
  EXPECT_EQ(train.slowest_pull(), 2700_rpm);
  EXPECT_EQ(train.fastest(), 9000_rpm);
  const Speed top = train.speed(9000_rpm, 2, Corner::nominal);
  EXPECT_EQ(train.held_engine_speed(top, 2, Corner::low), 9000_rpm);  // a smaller tyre would carry it beyond
  EXPECT_LT(train.held_engine_speed(top, 2, Corner::high), 9000_rpm);
  EXPECT_TRUE(try_thrust(train, 2, top));
  const auto beyond = try_thrust(train, 2, 1.01 * top);
  ASSERT_FALSE(beyond);
  EXPECT_TRUE(std::string(beyond.error().what()).starts_with("speed in gear 2 is ")) << beyond.error().what();
  EXPECT_FALSE(try_thrust(train, 0, top));
  EXPECT_FALSE(try_thrust(train, 7, top));
  EXPECT_FALSE(try_thrust(train, 1, std::numeric_limits<double>::quiet_NaN() * top));
}

TEST(Powertrain, IsWiderWhereMoreIsUnknown) {
  const auto width = [](auto change) {
    const Powertrain train = trail_train(change);
    return try_thrust(train, 3, 45_kmh)->width();
  };
  EXPECT_EQ(width([](PowertrainParts&) {}), Force());
  EXPECT_GT(width([](PowertrainParts& p) { p.circumference = {1.98_m, 2.02_m, 2.06_m}; }), 1_N);
  EXPECT_GT(width([](PowertrainParts& p) { p.drive_efficiency.reset(); }), 1_N);
  EXPECT_GT(width([](PowertrainParts& p) {
              p.engine = estimate_engine({24_Nm, 6000_rpm, 19_kW, 8500_rpm, 2000_rpm, 9200_rpm});
            }),
            10_N);
}

TEST(Powertrain, SaysWhatIsWrong) {
  const auto refusal = [](auto change) {
    PowertrainParts parts = trail_parts();
    change(parts);
    const auto made = Powertrain::make(parts);
    return made ? std::string() : std::string(made.error().what());
  };
  EXPECT_TRUE(refusal([](PowertrainParts& p) { p.circumference = Band<Length>::exactly(0_m); }).starts_with("circum"));
  EXPECT_TRUE(refusal([](PowertrainParts& p) {
                p.drive_efficiency = Band<double>{0.9, 0.95, 1.1};
              }).starts_with("drive_eff"));
  EXPECT_TRUE(
      refusal([](PowertrainParts& p) { p.chain_efficiency = Band<double>::exactly(0.1); }).starts_with("chain_eff"));
  EXPECT_TRUE(refusal([](PowertrainParts& p) { p.chain_made.pin_diameter = 0_mm; }).starts_with("chain_made: "));
  EXPECT_EQ(refusal([](PowertrainParts& p) { p.engine = trail_curve(MeasuredAt::rear_wheel); }),
            "the engine's curve was measured at the rear wheel and has the drive's loss in it already; state no "
            "drive_efficiency beside it");
  EXPECT_EQ(refusal([](PowertrainParts& p) {
              p.engine = EngineCurve({10000_rpm, 12000_rpm}, {9_Nm, 8_Nm});
            }),
            "engine speeds of the curve is 10000 rpm to 12000 rpm; expected some between 2700 rpm and the limit of "
            "9000 rpm");
}

TEST(Powertrain, TellsWhatItIsMadeOf) {
  const PowertrainParts parts = trail_parts();
  const Powertrain train = trail_train();
  EXPECT_EQ(train.parts(), parts);
  EXPECT_EQ(train.loop(), parts.loop);
  ASSERT_EQ(train.overall_ratios().size(), 6u);
  const double gears[] = {2.7, 1.85, 1.42, 1.15, 0.96, 0.83};
  for (std::size_t i = 0; i < 6; ++i)
    EXPECT_NEAR(train.overall_ratios()[i] / (3.05 * gears[i] * 48.0 / 13.0), 1.0, 1e-15) << i;
}

}  // namespace
