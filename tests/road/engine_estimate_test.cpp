// SPDX-License-Identifier: MIT
#include <layshaft/road/engine_estimate.hpp>

#include <gtest/gtest.h>

#include <algorithm>
#include <random>
#include <string>

namespace {
using namespace layshaft;

constexpr EngineRating trail_rating{21_Nm, 6500_rpm, 16.5_kW, 8500_rpm, 1500_rpm, 9800_rpm};

/// What must hold of an estimate whatever the four numbers are.
void expect_sound_estimate(const EngineRating& rating) {
  const auto made = try_estimate_engine(rating);
  ASSERT_TRUE(made) << made.error().what();
  for (const Corner corner : corners) {
    const EngineCurve& curve = made->at(corner);
    EXPECT_EQ(curve.torque(rating.torque_speed), rating.torque);
    EXPECT_NEAR(curve.power(rating.power_speed) / rating.power, 1.0, 1e-14);
    EXPECT_EQ(curve.peak_torque().torque, rating.torque);
    EXPECT_NEAR(curve.peak_power().power / rating.power, 1.0, 1e-13);
    EXPECT_EQ(curve.lowest_speed(), rating.lowest);
    EXPECT_EQ(curve.highest_speed(), rating.highest);
    EXPECT_EQ(curve.source().certainty, Certainty::common_practice);
  }
  for (int i = 0; i <= 500; ++i) {
    const AngularSpeed at = std::min(rating.highest, rating.lowest + (i / 500.0) * (rating.highest - rating.lowest));
    const Torque low = made->low.torque(at), nominal = made->nominal.torque(at), high = made->high.torque(at);
    EXPECT_LE(low, nominal * (1.0 + 1e-14)) << in(at, units::rpm);
    EXPECT_LE(nominal, high * (1.0 + 1e-14)) << in(at, units::rpm);
    EXPECT_LE(high, rating.torque * (1.0 + 1e-14));
    EXPECT_LE(high * at, rating.power * (1.0 + 1e-14));
  }
}

TEST(EngineEstimate, PassesThroughItsFourNumbersAndNeverAboveThem) { expect_sound_estimate(trail_rating); }

TEST(EngineEstimate, HoldsWhateverTheFourNumbersAre) {
  std::mt19937_64 random(4);
  std::uniform_real_distribution<double> share(0.0, 1.0);
  int steep = 0;
  for (int round = 0; round < 400; ++round) {
    const double torque_speed = 2000.0 + 6000.0 * share(random);
    const double power_speed = torque_speed * (1.02 + share(random));
    const double least_torque = torque_speed / power_speed;  // or the power would be less than at the other peak
    const double torque_share = least_torque + (1.0 - least_torque) * (0.01 + 0.98 * share(random));
    const Torque torque = (5.0 + 100.0 * share(random)) * units::Nm;
    const Power power = torque * torque_share * (power_speed * units::rpm);
    steep += (1.0 - torque_share) / torque_share > (power_speed - torque_speed) / power_speed;
    expect_sound_estimate({torque, torque_speed * units::rpm, power, power_speed * units::rpm,
                           torque_speed * (0.1 + 0.9 * share(random)) * units::rpm,
                           power_speed * (1.0 + 0.99 * share(random)) * units::rpm});
  }
  EXPECT_GT(steep, 50);  // that the straight line had to be cut by the power
}

// Once, with the same power at both peaks the straight line between them made more of it.
TEST(EngineEstimate, IsOfOnePowerWhereBothPeaksMakeIt) {
  for (const double torque_speed : {2000.0, 2111.0, 3000.0, 3333.0, 3700.0, 4567.0, 5100.0, 5999.0})
    for (const double torque : {7.0, 13.7, 20.0, 23.9, 31.3, 77.7}) {
      const Torque most = torque * units::Nm;
      const AngularSpeed slow = torque_speed * units::rpm, fast = 6000_rpm;
      for (const AngularSpeed& lowest : {0.5 * slow, slow})
        expect_sound_estimate({most, slow, engine_power(most, slow), fast, lowest, 7000_rpm});
      const EngineEstimate made = estimate_engine({most, slow, engine_power(most, slow), fast, slow, 7000_rpm});
      const AngularSpeed middle = 0.5 * (slow + fast);
      for (const Corner corner : corners)
        EXPECT_NEAR(made.at(corner).torque(middle) / most, torque_speed / (0.5 * (torque_speed + 6000.0)), 1e-14);
    }
}

// An engine whose greatest torque reaches up to its greatest power: the corner of both is there.
TEST(EngineEstimate, IsLevelWhereTheGreatestPowerTakesTheGreatestTorque) {
  const EngineRating rating{16_Nm, 4000_rpm, 16_Nm * 8000_rpm, 8000_rpm, 4000_rpm, 8000_rpm};
  expect_sound_estimate(rating);
  const EngineEstimate made = estimate_engine(rating);
  for (const Corner corner : corners) {
    EXPECT_EQ(made.at(corner).torque(6000_rpm), 16_Nm);
    EXPECT_EQ(made.at(corner).torque(8000_rpm), 16_Nm);
  }
}

// Once some were refused by a last digit: "torque is 20 Nm; expected at least 20 Nm".
TEST(EngineEstimate, TakesTwoNumbersThatSayTheSameUpToRounding) {
  for (double rpm = 6600.0; rpm < 9000.0; rpm += 7.0)
    for (const AngularSpeed& peak : {6500_rpm, rpm * units::rpm}) {
      const Power power = 20_Nm * peak;
      const auto made = try_estimate_engine({20_Nm, 6500_rpm, power, rpm * units::rpm, 1500_rpm, 9800_rpm});
      ASSERT_TRUE(made) << rpm << ": " << made.error().what();
      for (const Corner corner : corners) {
        EXPECT_NEAR(made->at(corner).peak_power().power / power, 1.0, 1e-13);
        EXPECT_EQ(made->at(corner).peak_torque().torque, 20_Nm);
      }
    }
}

TEST(EngineEstimate, SaysWhenTheNumbersContradictEachOther) {
  const auto refusal = [](auto change) {
    EngineRating rating = trail_rating;
    change(rating);
    const auto made = try_estimate_engine(rating);
    return made ? std::string("none") : std::string(made.error().what());
  };
  EXPECT_EQ(refusal([](EngineRating&) {}), "none");
  EXPECT_NE(refusal([](EngineRating& r) { r.power = 10_kW; }).find("which the greatest torque makes at its speed"),
            std::string::npos);
  EXPECT_NE(refusal([](EngineRating& r) { r.power = 25_kW; }).find("which the greatest power takes at its speed"),
            std::string::npos);
  EXPECT_TRUE(refusal([](EngineRating& r) { r.torque_speed = 9000_rpm; }).starts_with("torque_speed is 9000 rpm"));
  EXPECT_TRUE(refusal([](EngineRating& r) { r.lowest = 7000_rpm; }).starts_with("lowest is 7000 rpm"));
  EXPECT_TRUE(refusal([](EngineRating& r) { r.highest = 8000_rpm; }).starts_with("highest is 8000 rpm"));
  EXPECT_TRUE(refusal([](EngineRating& r) { r.highest = 20000_rpm; }).starts_with("highest is 20000 rpm"));
  EXPECT_TRUE(refusal([](EngineRating& r) { r.torque = 0_Nm; }).starts_with("torque is 0 Nm"));
  EXPECT_TRUE(refusal([](EngineRating& r) { r.power = 0_W; }).starts_with("power is 0 "));
  EXPECT_TRUE(refusal([](EngineRating& r) { r.power_speed = 60000_rpm; }).starts_with("power_speed is 60000 rpm"));
  EXPECT_NE(refusal([](EngineRating& r) { r.torque_speed = r.power_speed; }).find("one speed"), std::string::npos);
  EXPECT_THROW((void)estimate_engine({21_Nm, 6500_rpm, 1_kW, 8500_rpm, 1500_rpm, 9800_rpm}), RangeError);
}

}  // namespace
