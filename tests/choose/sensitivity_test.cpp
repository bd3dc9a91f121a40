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
  for (const int steps : {0, 1001})
    EXPECT_EQ(std::string(try_sensitivity(machine, space, goals, {.steps = steps}).error().what()),
              "steps is " + std::to_string(steps) + "; expected 1 to 1000");
  for (const double span : {0.9, 4.1})
    EXPECT_EQ(try_sensitivity(machine, space, goals, {.span = span}).error().kind(), ErrorKind::range);
  EXPECT_EQ(std::string(try_sensitivity(machine, space, {}).error().what()),
            "goals: number of wishes is 0; expected 1 to 16");
}

// Worked out by hand: of two measured tyres the smaller gives C/1.9 - 1 and the larger C/2.0 - 1 of thrust, C being
// what the stock tyre rolls. On tyres 2 % larger than measured both are as far from what is wished.
TEST(Sensitivity, TellsTyresWithoutAMarkingApart) {
  const Machine machine = roomy_trail_bike();
  const double stock = Rollout(machine.stock()).circumference().nominal / units::m;
  Space space{.fronts = {{12_teeth}}, .rears = {{47_teeth}}};
  for (const Length& rolls : {1.9_m, 2.0_m}) space.tyres.push_back({.circumference = Band<Length>::exactly(rolls)});
  const double wished = 0.5 * (stock / 1.9 + stock / 2.0) / 1.02 - 1.0;
  const Goals goals{{}, {{{Measure::thrust_change}, Want::target, Amount::fraction(wished)}}};
  const auto all = sensitivity(machine, space, goals);
  const Sensitivity& size = of(all, DecisionInput::tyre_size);
  ASSERT_TRUE(size.above);
  EXPECT_NEAR(size.above->factor, 1.02, 2e-6);
  EXPECT_NEAR(size.above->best->circumference()->nominal / units::m, 1.9 * 1.02, 1e-5);
  EXPECT_FALSE(size.below);
}

// A sprocket of 9e11 cannot cost a ninth more, nor a tyre of 4.5 m roll a ninth farther, nor can an engine of 9000 N m
// pull a ninth harder: beyond that there is nothing to choose.
TEST(Sensitivity, EndsWhereNothingCanBeAsked) {
  MachineParts parts = roomy_trail_bike().parts();
  parts.peak_torque = {9000_Nm, 5000_rpm};
  const Machine machine(parts);
  Space space{.fronts = {{12_teeth}}, .rears = {{47_teeth}}};
  space.rears[0].offer.price = Band<double>::exactly(9e11);
  space.tyres = {{.circumference = Band<Length>::exactly(4.5_m)}};
  const auto all = sensitivity(machine, space, {{}, {{{Measure::rear_teeth}, Want::less}}});
  ASSERT_EQ(all.size(), 3u);
  for (const Sensitivity& one : all) {
    SCOPED_TRACE(std::string(to_string(one.input)));
    ASSERT_TRUE(one.above);
    EXPECT_NEAR(one.above->factor, 1.0 / 0.9, 2e-6);
    EXPECT_FALSE(one.above->best);
    EXPECT_FALSE(one.below);
  }
  // A tyre of 0.22 m cannot be an eleventh smaller.
  space.tyres = {{.circumference = Band<Length>::exactly(0.22_m)}};
  const auto small = sensitivity(machine, space, {{}, {{{Measure::rear_teeth}, Want::less}}});
  ASSERT_TRUE(of(small, DecisionInput::tyre_size).below);
  EXPECT_NEAR(of(small, DecisionInput::tyre_size).below->factor, 0.2 / 0.22, 2e-6);
}

TEST(Sensitivity, VariesNothingButItsInput) {
  MachineParts parts = roomy_trail_bike().parts();
  parts.engine = EngineCurve({2600_rpm, 9100_rpm}, {18_Nm, 17_Nm});
  parts.peak_torque = {24_Nm, 6500_rpm};
  parts.body = Body({.mass = 212_kg});
  parts.road_load = RoadLoad::from_parts({.mass = 212_kg,
                                          .rolling_coefficient = Band<double>::exactly(0.02),
                                          .drag_area = Band<Area>{0.5_m2, 0.6_m2, 0.8_m2}});
  const Machine machine(parts);
  Space space = two_rears(30.0, 40.0);
  space.fronts.push_back({13_teeth, {}, {Band<double>{8.0, 10.0, 12.0}, Band<double>::exactly(5.0)}});
  space.tyres = {{.tyre = TyreSize("120/90-18 65M"), .offer = {Band<double>::exactly(80.0), {}}},
                 {.tyre = TyreSize("120/90-18 65M"), .circumference = Band<Length>{1.9_m, 2.0_m, 2.1_m}}};
  const auto varied_by = [&](DecisionInput input, double factor) {
    const auto told = layshaft::detail::varied(machine, space, input, factor);
    EXPECT_TRUE(told);
    return *told;
  };
  // What each leaves as it is: the machine, the space, or all of it.
  for (const DecisionInput input : decision_inputs) {
    const bool of_machine =
        input == DecisionInput::torque || input == DecisionInput::drag || input == DecisionInput::mass;
    const auto told = varied_by(input, 2.0);
    SCOPED_TRACE(std::string(to_string(input)));
    EXPECT_EQ(told.machine == machine, !of_machine);
    EXPECT_EQ(told.space == space, of_machine || input == DecisionInput::chain_price);  // whose chain costs nothing
  }
  const auto none = varied_by(static_cast<DecisionInput>(99), 2.0);
  EXPECT_TRUE(none.machine == machine && none.space == space);

  const auto torque = varied_by(DecisionInput::torque, 2.0);
  EXPECT_EQ(torque.machine.peak_torque()->torque, 48_Nm);
  EXPECT_EQ(torque.machine.engine()->curve().try_torque(2600_rpm).value(), 36_Nm);
  const auto drag = varied_by(DecisionInput::drag, 2.0);
  EXPECT_EQ(drag.machine.road_load()->parts()->drag_area, (Band<Area>{1.0_m2, 1.2_m2, 1.6_m2}));
  EXPECT_EQ(drag.machine.road_load()->quadratic().high, 2.0 * machine.road_load()->quadratic().high);
  EXPECT_EQ(drag.machine.road_load()->constant(), machine.road_load()->constant());
  EXPECT_EQ(drag.machine.road_load()->mass(), 212_kg);
  const auto fronts = varied_by(DecisionInput::front_price, 2.0).space.fronts;
  EXPECT_FALSE(fronts[0].offer.price);
  EXPECT_EQ(fronts[1].offer.price, (Band<double>{16.0, 20.0, 24.0}));
  EXPECT_EQ(fronts[1].offer.labour, Band<double>::exactly(5.0));
  EXPECT_EQ(varied_by(DecisionInput::rear_price, 2.0).space.rears[1].offer.price, Band<double>::exactly(80.0));
  EXPECT_EQ(varied_by(DecisionInput::tyre_price, 2.0).space.tyres[0].offer.price, Band<double>::exactly(160.0));
  const auto tyres = varied_by(DecisionInput::tyre_size, 2.0).space.tyres;
  EXPECT_EQ(tyres[0].circumference->high, 2.0 * Rollout(TyreSize("120/90-18 65M")).circumference().high);
  EXPECT_EQ(tyres[1].circumference, (Band<Length>{3.8_m, 4.0_m, 4.2_m}));
}

TEST(Sensitivity, VariesOnlyWhatTheMachineStates) {
  const Space space = two_rears(30.0, 40.0);
  const auto with_parts = [](auto change) {
    MachineParts parts = roomy_trail_bike().parts();
    change(parts);
    return Machine(parts);
  };
  const EngineCurve curve({2600_rpm, 9100_rpm}, {18_Nm, 17_Nm});
  const EngineCurve at_the_wheel({2600_rpm, 9100_rpm}, {18_Nm, 17_Nm}, {.measured_at = MeasuredAt::rear_wheel});
  const RoadLoad massless({.constant = 90_N, .quadratic = 0.4_kg_per_m}), whole = RoadLoad::by_mass(212_kg);
  struct Case {
    Machine machine;
    bool torque, drag, mass;
  };
  const Case cases[] = {
      {roomy_trail_bike(), false, false, false},
      {with_parts([](MachineParts& p) {
         p.peak_torque = {24_Nm, 6500_rpm};
       }),
       true, false, false},
      {with_parts([&](MachineParts& p) { p.engine = curve; }), true, false, false},
      {with_parts([&](MachineParts& p) { p.engine = at_the_wheel; }), true, false, false},
      {with_parts([](MachineParts& p) { p.body = Body({.mass = 212_kg}); }), false, false, true},
      {with_parts([&](MachineParts& p) { p.road_load = whole; }), false, true, true},
      {with_parts([&](MachineParts& p) { p.road_load = massless; }), false, true, false},
      {with_parts([&](MachineParts& p) {
         p.road_load = massless;
         p.body = Body({.mass = 212_kg});
       }),
       false, true, true},
  };
  for (const Case& one : cases)
    for (const auto& [input, stated] :
         {std::pair(DecisionInput::torque, one.torque), std::pair(DecisionInput::drag, one.drag),
          std::pair(DecisionInput::mass, one.mass)}) {
      EXPECT_EQ(layshaft::detail::has(one.machine, space, input), stated) << to_string(input);
      const auto told = layshaft::detail::varied(one.machine, space, input, 1.2);
      ASSERT_TRUE(told);
      EXPECT_EQ(told->machine == one.machine, !stated) << to_string(input);
    }
  EXPECT_FALSE(layshaft::detail::has(roomy_trail_bike(), space, static_cast<DecisionInput>(99)));
}

TEST(Sensitivity, SaysWhereAMachineEnds) {
  MachineParts parts = roomy_trail_bike().parts();
  parts.engine = EngineCurve({2600_rpm, 9100_rpm}, {18_Nm, 17_Nm});
  parts.peak_torque = {24_Nm, 6500_rpm};
  parts.body = Body({.mass = 212_kg});
  parts.road_load = RoadLoad::from_parts(
      {.mass = 212_kg, .rolling_coefficient = Band<double>::exactly(0.02), .drag_area = Band<Area>::exactly(0.6_m2)});
  const auto fault = [&](DecisionInput input, double factor) {
    const auto told = layshaft::detail::varied(Machine(parts), {}, input, factor);
    return told ? std::string() : std::string(told.error().what());
  };
  EXPECT_EQ(fault(DecisionInput::torque, 11.0), "torque_factor is 11; expected 0 to 10");
  EXPECT_EQ(fault(DecisionInput::drag, 200.0), "drag_area is 120 m2; expected 0 m2 to 100 m2");
  EXPECT_EQ(fault(DecisionInput::mass, 500.0), "mass is 106000 kg; expected 0.1 kg to 100000 kg");
  parts.body.reset();
  EXPECT_EQ(fault(DecisionInput::mass, 500.0), "mass is 106000 kg; expected 0.1 kg to 100000 kg");
  parts.engine.reset();
  EXPECT_EQ(fault(DecisionInput::torque, 500.0), "peak_torque: torque is 12000 Nm; expected 0.1 Nm to 10000 Nm");
}

TEST(Sensitivity, KnowsWhatARiderWouldBuyApart) {
  using layshaft::detail::same_parts;
  const auto base = roomy_trail_bike().stock();
  EXPECT_TRUE(same_parts({}, {}));
  EXPECT_FALSE(same_parts(base, {}));
  EXPECT_FALSE(same_parts({}, base));
  EXPECT_TRUE(same_parts(base, base));
  using Change = void (*)(SetupParts&);
  const Change changes[] = {[](SetupParts& p) { p.front = 13_teeth; },
                            [](SetupParts& p) { p.rear = 48_teeth; },
                            [](SetupParts& p) { p.links = Links(106); },
                            [](SetupParts& p) { p.tyre = TyreSize("120/90-18 65M"); },
                            [](SetupParts& p) { p.circumference = Band<Length>::exactly(2_m); },
                            [](SetupParts& p) { p.chain = ChainSeries("525"); },
                            [](SetupParts& p) { p.chain_made.tensile_strength = 36_kN; },
                            [](SetupParts& p) { p.front_material = SprocketMaterial::steel; },
                            [](SetupParts& p) { p.rear_material = SprocketMaterial::steel; }};
  for (const Change change : changes) {
    const layshaft::Setup other = with(base, change);
    EXPECT_FALSE(same_parts(base, other)) << &change - changes;
    EXPECT_FALSE(same_parts(other, base)) << &change - changes;
    EXPECT_TRUE(same_parts(other, other)) << &change - changes;
  }
  const auto rolling = [&](Length rolls) {
    return with(base, [&](SetupParts& p) { p.circumference = Band<Length>::exactly(rolls); });
  };
  EXPECT_FALSE(same_parts(rolling(2.1_m), rolling(2_m)));
  EXPECT_TRUE(same_parts(rolling(2.1_m), rolling(2_m), 1.05));
}

TEST(Sensitivity, OfTheSameQuestionIsTheSame) {
  const Machine machine = roomy_trail_bike();
  const Goals goals{{}, {{{Measure::thrust_change}, Want::target, Amount::fraction(50.0 / 47.0 / 1.02 - 1.0)}}};
  const auto all = sensitivity(machine, two_rears(30.0, 30.0), goals);
  EXPECT_EQ(sensitivity(machine, two_rears(30.0, 30.0), goals), all);
  auto other = all;
  other[0].above->factor += 0.01;
  EXPECT_NE(other, all);
}

}  // namespace
