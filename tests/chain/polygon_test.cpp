// SPDX-License-Identifier: MIT
#include <layshaft/chain/mesh.hpp>
#include <layshaft/chain/polygon.hpp>

#include <gtest/gtest.h>
#include <core/formula_range.hpp>
#include <reference/csv.hpp>

#include <cmath>
#include <cstddef>
#include <string>
#include <utility>
#include <vector>

namespace {
using namespace layshaft;
using layshaft_test::expect_range;
using layshaft_test::number;
using layshaft_test::read_csv;

// Source: polygon speed variation 1 - cos(pi/z), seven printed values (chain_chordal.csv), half of the last digit.
TEST(SpeedVariation, AgreesWithThePrintedTable) {
  int printed = 0;
  for (const auto& row : read_csv("chain_chordal.csv")) {
    const double per_cent = 100.0 * speed_variation(Teeth(std::stoi(row.at("teeth"))));
    EXPECT_NEAR(per_cent, number(row.at("speed_variation_percent")), 5.1e-5) << row.at("teeth");
    if (row.at("printed_percent").empty()) continue;
    EXPECT_NEAR(per_cent, number(row.at("printed_percent")), 0.00501) << row.at("teeth");
    ++printed;
  }
  EXPECT_EQ(printed, 7);
}

TEST(SpeedVariation, FallsWithTheTeeth) {
  EXPECT_TRUE(formula::speed_variation::in_range(Teeth(Teeth::least)));
  for (int teeth = 4; teeth < 200; ++teeth) EXPECT_GT(speed_variation(Teeth(teeth)), speed_variation(Teeth(teeth + 1)));
}

// Worked separately, as the convex hull of both polygons with a whole number of pitches in the tight run: at 38.5
// pitches the loop varies by 0.0004 pitch at 13/40 and by 0.0062 at 14/40, an even front sprocket whose two runs are in
// phase.
TEST(PolygonRipple, IsWorseWhereBothRunsAreInPhase) {
  const Length pitch = 15.875_mm;
  const PolygonRipple odd = polygon_ripple(ChainLoop(ChainSeries("520"), 13_teeth, 40_teeth), 38.5 * pitch);
  const PolygonRipple even = polygon_ripple(ChainLoop(ChainSeries("520"), 14_teeth, 40_teeth), 38.5 * pitch);
  EXPECT_NEAR(odd.loop_length / pitch, 0.0004, 5e-5);
  EXPECT_NEAR(even.loop_length / pitch, 0.0062, 5e-5);
}

TEST(PolygonRipple, OfTheChainIsNearlyThatOfASteadyFrontSprocket) {
  for (const int teeth : {11, 14, 17}) {
    const PolygonRipple ripple = polygon_ripple(ChainLoop(ChainSeries("520"), Teeth(teeth), 45_teeth), 620_mm);
    EXPECT_NEAR(1.0 - ripple.least_chain_speed / ripple.greatest_chain_speed, speed_variation(Teeth(teeth)),
                0.02 * speed_variation(Teeth(teeth)));
    EXPECT_LT(ripple.least_ratio, 1.0);
    EXPECT_GT(ripple.greatest_ratio, 1.0);
  }
}

// Equal sprockets a whole number of pitches apart: two parallel cranks of one length, and no ripple at all.
TEST(PolygonRipple, VanishesForEqualSprocketsAWholeNumberOfPitchesApart) {
  const PolygonRipple ripple = polygon_ripple(ChainLoop(ChainSeries("520"), 20_teeth, 20_teeth), 30.0 * 15.875_mm);
  EXPECT_NEAR(ripple.least_ratio, 1.0, 1e-12);
  EXPECT_NEAR(ripple.greatest_ratio, 1.0, 1e-12);
  EXPECT_NEAR(ripple.loop_length / (15.875_mm), 0.0, 1e-12);
  // By hand: with a pin on top the lever is the pitch radius, 0.5 / sin(pi/20), half a tooth on the height of a flat,
  // 0.5 / tan(pi/20); in the mean a radian takes 20 / (2 pi) pitches of chain.
  EXPECT_NEAR(ripple.greatest_chain_speed, pi / 20.0 / std::sin(pi / 20.0), 1e-12);
  EXPECT_NEAR(ripple.least_chain_speed, pi / 20.0 / std::tan(pi / 20.0), 1e-12);
}

/// Two sprockets with every pin, in pitches, as of `PinPolygons`, but by looking at all of them.
class EveryPin {
 public:
  EveryPin(int front, int rear, double centre, double front_phase)
      : rear_(rear), centre_(centre), front_pins_(pins(front, centre, front_phase)) {
    turn_rear(0.0);
  }

  struct Run {
    std::size_t front, rear;  // which pins it goes between
    double length, front_lever, rear_lever;
  };
  /// The straight run above (side +1) or below (-1) all pins: from the two that stand out most from the last guess.
  [[nodiscard]] Run run(double side) const {
    std::size_t a = 0, b = 0;
    double across = 0.0, up = side;
    for (int round = 0; round < 20; ++round) {
      const std::size_t next_a = outermost(front_pins_, across, up), next_b = outermost(rear_pins_, across, up);
      if (round > 0 && next_a == a && next_b == b) break;
      a = next_a;
      b = next_b;
      const double x = front_pins_[a].first - rear_pins_[b].first, y = front_pins_[a].second - rear_pins_[b].second;
      across = -side * y / std::hypot(x, y);
      up = side * x / std::hypot(x, y);
    }
    const auto [x, y] = front_pins_[a];
    const double reach = x * across + y * up;
    return {a, b, std::hypot(x - rear_pins_[b].first, y - rear_pins_[b].second), reach - centre_ * across, reach};
  }
  /// Turns the rear sprocket until the upper run is a whole number of pitches, within the tooth that it stands at.
  void tighten() {
    double phase = 0.0, over = 1.0;
    for (int round = 0; round < 30 && std::fabs(over) > 1e-12; ++round) {
      const Run upper = run(1.0);
      over = upper.length - std::round(upper.length);
      turn_rear(phase -= over / upper.rear_lever);
    }
    ASSERT_LE(std::fabs(over), 1e-12);
  }
  /// Both runs, and the chain's pitches on the sprockets, counted from pin to pin.
  [[nodiscard]] double loop() const {
    const Run upper = run(1.0), lower = run(-1.0);
    const std::size_t ahead = (upper.front + front_pins_.size() - lower.front) % front_pins_.size();
    const std::size_t behind = (lower.rear + rear_pins_.size() - upper.rear) % rear_pins_.size();
    return upper.length + lower.length + double(ahead + behind);
  }

 private:
  using Pins = std::vector<std::pair<double, double>>;
  int rear_;
  double centre_;
  Pins front_pins_, rear_pins_;

  [[nodiscard]] static Pins pins(int teeth, double shaft, double phase) {
    Pins all;
    for (int i = 0; i < teeth; ++i) {
      const double angle = phase + 2.0 * pi * i / teeth, radius = 0.5 / std::sin(pi / teeth);
      all.emplace_back(shaft + radius * std::cos(angle), radius * std::sin(angle));
    }
    return all;
  }
  void turn_rear(double phase) { rear_pins_ = pins(rear_, 0.0, phase); }
  [[nodiscard]] static std::size_t outermost(const Pins& pins, double across, double up) {
    std::size_t best = 0;
    const auto out = [&](std::size_t i) { return pins[i].first * across + pins[i].second * up; };
    for (std::size_t i = 1; i < pins.size(); ++i)
      if (out(i) > out(best)) best = i;
    return best;
  }
};
/// Compares both at so many places over a tooth of the front sprocket.
void expect_as_with_every_pin(int front, int rear, double centre, int places) {
  const detail::PinPolygons polygons{Teeth(front), Teeth(rear), centre};
  for (int i = 0; i < places; ++i) {
    const double phase = polygons.front_step() * i / places;
    EveryPin every(front, rear, centre, phase);
    every.tighten();
    const EveryPin::Run upper = every.run(1.0);
    const auto state = polygons.at(phase);
    ASSERT_NEAR(state.loop, every.loop(), 1e-9) << front << "/" << rear << " " << centre << " " << i;
    ASSERT_NEAR(state.front_lever, upper.front_lever, 1e-8) << front << "/" << rear << " " << centre << " " << i;
    ASSERT_NEAR(state.rear_lever, upper.rear_lever, 1e-8) << front << "/" << rear << " " << centre << " " << i;
  }
}

TEST(PinPolygons, AreAsWithEveryPinForFewTeethAtAnyDistance) {
  for (const auto& [front, rear] : {std::pair{4, 4}, {4, 5}, {5, 4}, {6, 7}, {4, 12}, {13, 47}})
    for (int i = 0; i < 40; ++i)
      expect_as_with_every_pin(front, rear, (front + rear) / (2.0 * pi) + 0.7 + 0.0513 * i, 101);
}

// A step of 1000 teeth is a third of a degree: a run that is sought a degree beside its place is not found.
TEST(PinPolygons, AreAsWithEveryPinForManyTeeth) {
  for (const auto& [front, rear] : {std::pair{1000, 1000}, {400, 1000}, {1000, 400}, {4, 1000}})
    for (const double gap : {3.3, 250.0}) expect_as_with_every_pin(front, rear, (front + rear) / (2.0 * pi) + gap, 11);
}

TEST(PolygonRipple, LeavesTheMeanRatioAlone) {
  for (const double centre : {590.0, 612.3, 641.7}) {
    const ChainLoop loop(ChainSeries("520"), 13_teeth, 47_teeth);
    const detail::PinPolygons pins(loop.front(), loop.rear(), centre / 15.875);
    double sum = 0.0;
    constexpr int places = 4096;
    for (int i = 0; i < places; ++i) {
      const auto state = pins.at(pins.front_step() * (i + 0.5) / places);
      sum += state.front_lever / state.rear_lever;
    }
    EXPECT_NEAR(sum / places, 13.0 / 47.0, 1e-6) << centre;
  }
}

TEST(PolygonRipple, RefusesSprocketsThatCollide) {
  EXPECT_FALSE(try_polygon_ripple(ChainLoop(ChainSeries("520"), 13_teeth, 40_teeth), 100_mm));
  EXPECT_THROW((void)polygon_ripple(ChainLoop(ChainSeries("520"), 13_teeth, 40_teeth), 100_mm), RangeError);
  expect_range<formula::speed_variation>("#", 13_teeth);
}

// By hand: 13/46 on 15.875 mm, 640 mm apart; the wrap is 180 - 2 asin((116.35 - 33.17)/640) = 165.1 degrees, 5.96
// teeth.
TEST(Engagement, TellsTheTeethInMesh) {
  const Engagement at = engagement(ChainLoop(ChainSeries("520"), 13_teeth, 46_teeth), 600_mm);
  EXPECT_NEAR(at.front, 5.9, 0.05);
  EXPECT_GT(at.wrap_front, usual_least_wrap);
  EXPECT_LT(at.front, usual_least_teeth_in_mesh);
  EXPECT_GT(at.front, fewest_teeth_in_mesh);
  EXPECT_NEAR(at.front / 13.0 + at.rear / 46.0, 1.0, 1e-14);  // both wraps make one turn
  EXPECT_FALSE(try_engagement(ChainLoop(ChainSeries("520"), 13_teeth, 46_teeth), 50_mm));
  EXPECT_THROW((void)engagement(ChainLoop(ChainSeries("520"), 13_teeth, 46_teeth), 50_mm), RangeError);
  expect_range<formula::teeth_in_mesh>("#f", 13_teeth, 160_deg);
}

TEST(PolygonRipple, IsEqualWhereAllOfItIs) {
  const ChainLoop loop(ChainSeries("520"), 13_teeth, 48_teeth);
  const PolygonRipple ripple = polygon_ripple(loop, 612_mm);
  EXPECT_EQ(ripple, polygon_ripple(loop, 612_mm));
  PolygonRipple other = ripple;
  other.loop_length += 1.0_mm;
  EXPECT_NE(ripple, other);
  for (double PolygonRipple::*one : {&PolygonRipple::least_ratio, &PolygonRipple::greatest_ratio,
                                     &PolygonRipple::least_chain_speed, &PolygonRipple::greatest_chain_speed}) {
    other = ripple;
    other.*one += 0.1;
    EXPECT_NE(ripple, other);
  }
}

}  // namespace
