// SPDX-License-Identifier: MIT
#include <layshaft/choose/sensitivity.hpp>

#include <setup/machines.hpp>

#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace {
using namespace layshaft_test;

Space two_rears(double first, double second) {
  return {.fronts = {{12_teeth}},
          .rears = {{49_teeth, {}, {Band<double>::exactly(first), {}}},
                    {51_teeth, {}, {Band<double>::exactly(second), {}}}},
          .chains = {{.offer = {Band<double>::exactly(0.0), {}}}}};
}
const Sensitivity& of(const std::vector<Sensitivity>& all, DecisionInput input) {
  for (const Sensitivity& one : all)
    if (one.input == input) return one;
  throw std::runtime_error("no such input");
}

// Worked out by hand: 49 and 51 behind are as near to a wished change t of thrust where 50/47 over the tyre's growth
// stands for it.
TEST(Sensitivity, FindsTheTyreAtWhichTheOtherSprocketIsNearer) {
  const Machine machine = roomy_trail_bike();
  const double wished = 50.0 / 47.0 / 1.02 - 1.0;  // exactly between the two on a tyre 2 % taller
  const Goals goals{{}, {{{Measure::thrust_change}, Want::target, Amount::fraction(wished)}}};
  const auto all = sensitivity(machine, two_rears(30.0, 30.0), goals);
  const Sensitivity& size = of(all, DecisionInput::tyre_size);
  ASSERT_TRUE(size.above);
  EXPECT_NEAR(size.above->factor, 1.02, 2e-6);
  EXPECT_EQ(size.above->best->rear(), 51_teeth);
  EXPECT_FALSE(size.below);
  EXPECT_FALSE(of(all, DecisionInput::rear_price).above);  // nobody asked for the price
}

TEST(Sensitivity, FindsThePriceAtWhichTheOtherIsChosen) {
  const Machine machine = roomy_trail_bike();
  // A limit of 60 on what is bought, of which 49 teeth cost 50 and 51 teeth 40: a fifth more, and only 51 is left.
  const Goals goals{{{{Measure::cost}, {}, Amount::number(60.0)}}, {{{Measure::rear_teeth}, Want::less}}};
  const auto all = sensitivity(machine, two_rears(50.0, 40.0), goals, {.span = 2.0});
  const Sensitivity& price = of(all, DecisionInput::rear_price);
  ASSERT_TRUE(price.above);
  EXPECT_NEAR(price.above->factor, 1.2, 2e-6);
  EXPECT_EQ(price.above->best->rear(), 51_teeth);
  EXPECT_FALSE(price.below);
  const auto dearer = sensitivity(machine, two_rears(50.0, 50.0), goals, {.span = 2.0});
  ASSERT_TRUE(of(dearer, DecisionInput::rear_price).above);
  EXPECT_FALSE(of(dearer, DecisionInput::rear_price).above->best);  // then nothing keeps the limit
}

TEST(Sensitivity, AsksOnlyForWhatThereIs) {
  const Machine machine = roomy_trail_bike();
  const Goals goals{{}, {{{Measure::thrust_change}, Want::more}}};
  const auto all = sensitivity(machine, {.fronts = {{12_teeth}}, .rears = {{49_teeth}}}, goals);
  ASSERT_EQ(all.size(), 1u);
  EXPECT_EQ(all[0].input, DecisionInput::tyre_size);
  EXPECT_FALSE(all[0].below || all[0].above);
}

TEST(Sensitivity, VariesEngineDragAndMass) {
  MachineParts parts = roomy_trail_bike().parts();
  parts.engine = EngineCurve({2600_rpm, 4500_rpm, 6500_rpm, 9100_rpm}, {18_Nm, 21_Nm, 23_Nm, 17_Nm});
  parts.body = Body({.mass = 212_kg, .wheelbase = 1.41_m, .centre_ahead = 0.64_m, .centre_height = 0.83_m});
  parts.road_load = RoadLoad::by_mass(212_kg);
  const Machine machine(parts);
  const Space space = two_rears(30.0, 30.0);
  const auto top = [&](double torque, double drag) {
    const auto question = layshaft::detail::varied(machine, space, DecisionInput::torque, torque);
    const auto both = layshaft::detail::varied(question->machine, space, DecisionInput::drag, drag);
    return try_top_speed(both->machine, machine.stock(), *both->machine.road_load())->speed.nominal;
  };
  EXPECT_GE(top(1.1, 1.0), top(1.0, 1.0));
  EXPECT_LT(top(0.2, 1.0), top(1.0, 1.0));
  EXPECT_LT(top(0.2, 1.2), top(0.2, 1.0));
  const auto heavy = layshaft::detail::varied(machine, space, DecisionInput::mass, 1.1);
  EXPECT_NEAR(heavy->machine.body()->mass() / machine.body()->mass(), 1.1, 1e-12);
  EXPECT_NEAR(*heavy->machine.road_load()->mass() / *machine.road_load()->mass(), 1.1, 1e-12);
  const auto all = sensitivity(machine, space, {{}, {{{Measure::climb}, Want::more}}});
  EXPECT_EQ(all.size(), 6u);  // tyre, torque, drag, mass, prices of rear sprocket and chain
}

TEST(Sensitivity, RefusesOptionsOutOfRange) {
  const Machine machine = roomy_trail_bike();
  const Goals goals{{}, {{{Measure::thrust_change}, Want::more}}};
  const Space space = two_rears(30.0, 30.0);
  EXPECT_EQ(std::string(try_sensitivity(machine, space, goals, {.span = 1.0}).error().what()),
            "span is 1; expected above 1, to 4");
  EXPECT_FALSE(try_sensitivity(machine, space, goals, {.steps = 0}));
  EXPECT_FALSE(try_sensitivity(machine, space, {}));
}

}  // namespace
