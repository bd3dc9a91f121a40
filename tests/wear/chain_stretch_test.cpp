// SPDX-License-Identifier: MIT
#include <layshaft/wear/chain_stretch.hpp>

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <numbers>

namespace {
using namespace layshaft;

const StretchDuty duty{.thrust = Band<Force>::exactly(150_N), .circumference = Band<Length>::exactly(2.05_m)};
const ChainSeries series("520");

TEST(ChainStretch, IsABandOfDecadesUntilSomebodyMeasured) {
  const Band<double> guessed = chain_stretch(ChainLoop(series, 13_teeth, 48_teeth), 110_links, duty);
  EXPECT_GT(guessed.high / guessed.low, 100.0);
  StretchDuty measured = duty;
  measured.wear_resistance = Band<Pressure>::exactly(1e9 * units::MPa);
  const Band<double> known = chain_stretch(ChainLoop(series, 13_teeth, 48_teeth), 110_links, measured);
  EXPECT_EQ(known.width(), 0.0);
  // by hand: pull 150 x 2.05/(pi d), bends pi (1/13 + 1/48), bush 1.45 x 6.35 mm
  const double diameter = 0.015875 / std::sin(std::numbers::pi / 48.0);
  const double pull = 150.0 * 2.05 / (std::numbers::pi * diameter);
  const double depth = pull * std::numbers::pi * (1.0 / 13.0 + 1.0 / 48.0) / (1.45 * 0.00635 * 1e15);
  EXPECT_NEAR(known.nominal / (1e6 / 2.05 * 48.0 / 110.0 * depth / 0.015875), 1.0, 1e-12);
}

TEST(ChainStretch, GoesWithLoadAndWay) {
  const ChainLoop loop(series, 13_teeth, 48_teeth);
  StretchDuty twice = duty;
  twice.thrust = Band<Force>::exactly(300_N);
  const double once = chain_stretch(loop, 110_links, duty).nominal;
  EXPECT_NEAR(chain_stretch(loop, 110_links, twice).nominal / once, 2.0, 1e-12);
  EXPECT_NEAR(chain_stretch(loop, 110_links, duty, 500.0_km).nominal / once, 0.5, 1e-12);
}

TEST(ChainStretch, OfASealedChainIsAssumedLess) {
  const ChainLoop loop(series, 13_teeth, 48_teeth);
  const Band<double> plain = chain_stretch(loop, 110_links, duty);
  const Band<double> sealed = chain_stretch(loop, 110_links, duty, 1000.0_km, {.seal = ChainSeal::o_ring});
  EXPECT_NEAR(sealed.nominal / plain.nominal, 0.5, 1e-12);
  EXPECT_EQ(sealed.high, plain.high);  // at the worst the seals are torn
}

// At one ratio larger sprockets wear the chain no faster while the centrifugal pull stays below about 0.37 of the
// thrust's: there the gain in lever and bend is eaten by the chain's own speed. The crossing, and both sides of it.
TEST(ChainStretch, ProfitsFromLargerSprocketsOnlyBelowTheCrossing) {
  const ChainMade made{.mass_per_length = 1.5_kg_per_m};
  const auto growth = [&](int step, double centrifugal_share) {
    const ChainLoop loop(series, Teeth(14 + step), Teeth(42 + 3 * step));
    const Length circumference = 2.05_m;
    // links of the exact loop at one centre distance, so that only the sprockets change
    const double links = loop.links(615_mm);
    const Force thrust = 150_N;
    const Force pull = chain_tension(thrust, circumference, Sprocket(series, 42_teeth).pitch_diameter());
    const Speed chain_speed = Speed::from_value(std::sqrt(centrifugal_share * pull.value() / 1.5));
    const Speed speed = chain_speed * (circumference / (42.0 * series.pitch()));
    const Force slack = detail::centrifugal_at(loop, made, speed, circumference);
    const Force tight =
        tight_tension(chain_tension(thrust, circumference, Sprocket(series, loop.rear()).pitch_diameter()), slack);
    const Length depth = joint_wear(tight, slack, loop.front(), loop.rear(), 10_mm, 1e9 * units::MPa);
    return double(loop.rear().count()) / links * (depth / series.pitch());
  };
  for (const double share : {0.0, 0.1, 0.2, 0.3}) EXPECT_LT(growth(1, share), growth(0, share)) << share;
  for (const double share : {0.45, 0.6, 1.0}) EXPECT_GT(growth(1, share), growth(0, share)) << share;
}

TEST(StretchLimit, IsTheLeastOfThree) {
  EXPECT_EQ(stretch_limit(48_teeth, 0.03), (StretchLimit{0.02, StretchLimitKind::maker}));
  EXPECT_EQ(stretch_limit(48_teeth, 0.012), (StretchLimit{0.012, StretchLimitKind::adjuster}));
  EXPECT_EQ(stretch_limit(48_teeth, 0.03, 0.015), (StretchLimit{0.015, StretchLimitKind::maker}));
  EXPECT_EQ(stretch_limit(100_teeth, 0.03).kind, StretchLimitKind::maker);
  EXPECT_EQ(stretch_limit(101_teeth, 0.03).kind, StretchLimitKind::sprocket);  // governs only above a hundred teeth
  EXPECT_NEAR(stretch_limit(120_teeth, 0.03).elongation, 2.0 / 120.0, 1e-15);
  EXPECT_EQ(stretch_limit(48_teeth, -0.01), (StretchLimit{-0.01, StretchLimitKind::adjuster}));
  EXPECT_FALSE(try_stretch_limit(48_teeth, std::numeric_limits<double>::quiet_NaN()));
  EXPECT_FALSE(try_stretch_limit(48_teeth, 0.03, -1.0));
}

TEST(ChainStretch, SaysWhatIsWrong) {
  const ChainLoop loop(series, 13_teeth, 48_teeth);
  StretchDuty bad = duty;
  bad.thrust = Band<Force>::exactly(0_N);
  EXPECT_FALSE(try_chain_stretch(loop, 110_links, bad));
  bad = duty;
  bad.wear_resistance = Band<Pressure>::exactly(1_Pa);
  EXPECT_FALSE(try_chain_stretch(loop, 110_links, bad));
  EXPECT_STREQ(try_chain_stretch(loop, 110_links, duty, 2e6 * units::km).error().what(),
               "distance is 2000000 km; expected 0 km to 1000000 km");
}

// What both bands allow; where they leave nothing, what was measured.
TEST(Tightened, LiesWithinBothBands) {
  const Band<double> assumed{1.0, 3.0, 100.0};
  EXPECT_EQ(tightened(assumed, {5.0, 6.0, 7.0}), (Band<double>{5.0, 6.0, 7.0}));
  EXPECT_EQ(tightened(assumed, {-1.0, 2.0, 5.0}), (Band<double>{1.0, 2.0, 5.0}));  // a scatter wider than zero
  EXPECT_EQ(tightened(assumed, {-3.0, 0.5, 5.0}), (Band<double>{1.0, 1.0, 5.0}));
  EXPECT_EQ(tightened(assumed, {90.0, 110.0, 130.0}), (Band<double>{90.0, 100.0, 100.0}));
  EXPECT_EQ(tightened(assumed, {110.0, 120.0, 130.0}), (Band<double>{110.0, 120.0, 130.0}));
}

// From memory: a copy of the assumptions, against slips.
TEST(ChainStretch, AssumesOfEachSealSoManyTimesTheLife) {
  EXPECT_EQ(seal_life_factor(ChainSeal::none), Band<double>::exactly(1.0));
  EXPECT_EQ(seal_life_factor(ChainSeal::o_ring), (Band<double>{1.0, 2.0, 5.0}));
  EXPECT_EQ(seal_life_factor(ChainSeal::shaped), (Band<double>{1.0, 3.0, 8.0}));
  EXPECT_EQ(road_wear_source_of(ChainSeal::none), road_wear_source);
  for (const ChainSeal sealed : {ChainSeal::o_ring, ChainSeal::shaped})
    EXPECT_EQ(road_wear_source_of(sealed), sealed_wear_source);
}

TEST(ChainStretch, SaysWhetherItsJointsWereMeasured) {
  StretchDuty measured = duty;
  measured.wear_resistance = Band<Pressure>::exactly(1e15_Pa);
  for (const ChainSeal seal : {ChainSeal::none, ChainSeal::o_ring, ChainSeal::shaped}) {
    EXPECT_EQ(detail::resistance_from(duty, {.seal = seal}), road_wear_source_of(seal));
    EXPECT_EQ(detail::resistance_from(measured, {.seal = seal}), sources::stated);
  }
}

TEST(StretchLimit, TakesBothEndsOfEachRange) {
  for (const double room : {-1.0, 1.0}) EXPECT_TRUE(try_stretch_limit(43_teeth, room));
  for (const double room : {-1.001, 1.001}) EXPECT_FALSE(try_stretch_limit(43_teeth, room));
  for (const double makers : {1e-4, 0.1}) EXPECT_TRUE(try_stretch_limit(43_teeth, 0.02, makers));
  for (const double makers : {0.999e-4, 0.1001}) EXPECT_FALSE(try_stretch_limit(43_teeth, 0.02, makers));
}

TEST(ChainStretch, TakesAMeasuredWearResistanceWithinItsRange) {
  const ChainLoop loop(series, 13_teeth, 48_teeth);
  const auto takes = [&](double resistance) {
    StretchDuty measured = duty;
    measured.wear_resistance = Band<Pressure>::exactly(Pressure::from_value(resistance));
    return try_chain_stretch(loop, 110_links, measured).has_value();
  };
  for (const double good : {1e9, 1e20}) EXPECT_TRUE(takes(good)) << good;
  for (const double bad : {0.999e9, 1.001e20}) EXPECT_FALSE(takes(bad)) << bad;
}

TEST(ChainStretch, NamesThePartThatIsOutside) {
  const auto refusal = [](auto change, const ChainMade& made = {}) {
    StretchDuty bad = duty;
    change(bad);
    const auto told = try_chain_stretch(ChainLoop(series, 13_teeth, 48_teeth), 110_links, bad, 1000_km, made);
    return told ? std::string() : std::string(told.error().what());
  };
  EXPECT_EQ(refusal([](StretchDuty& of) { of.circumference = Band<Length>::exactly(50_mm); }),
            "circumference is 50 mm; expected 100 mm to 10000 mm");
  EXPECT_EQ(refusal([](StretchDuty& of) { of.speed = 501_kmh; }), "speed is 501 km/h; expected 0 km/h to 500 km/h");
  EXPECT_EQ(refusal([](StretchDuty&) {}, {.pin_diameter = 0.4_mm}),
            "chain_made: pin_diameter is 0.4 mm; expected 0.5 mm to 100 mm");
  EXPECT_EQ(refusal([](StretchDuty& of) { of.speed = 500_kmh; }, {.pin_diameter = 0.5_mm}), "");
}

// A number that was cast without a look names no seal, and is taken for none.
TEST(ChainStretch, AssumesNothingOfASealThatIsNone) {
  EXPECT_EQ(seal_life_factor(static_cast<ChainSeal>(9)), Band<double>::exactly(1.0));
}

}  // namespace
