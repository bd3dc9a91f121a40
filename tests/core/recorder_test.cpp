// SPDX-License-Identifier: MIT
#include <layshaft/core/recorder.hpp>

#include <layshaft/gearing/ratio.hpp>
#include <layshaft/gearing/speed.hpp>

#include <gtest/gtest.h>

#include <array>
#include <string>
#include <vector>

namespace {
using namespace layshaft;

constexpr Source table{"a table, page 7", Certainty::from_memory};

TEST(Recorder, WritesDownEachKindOfStep) {
  Recorder recorder;
  const auto watch = recorder.watch();
  const auto front = watch.given("front", 14_teeth);
  const auto rear = watch.given("rear", 42_teeth, sources::marking);
  const auto ratio = watch.step(formula::final_ratio{}, front, rear);
  const auto factor = watch.looked_up("rolling_factor", 0.98, "radial", table);
  EXPECT_EQ(ratio.value, 3.0);
  EXPECT_EQ(Recorder::Watch::plain(ratio), 3.0);

  const std::vector<RecordedStep>& steps = recorder.steps();
  ASSERT_EQ(steps.size(), 4u);
  EXPECT_EQ(front.step, 0);
  EXPECT_EQ(rear.step, 1);
  EXPECT_EQ(ratio.step, 2);
  EXPECT_EQ(factor.step, 3);
  EXPECT_EQ(steps[0].kind, StepKind::given);
  EXPECT_EQ(steps[0].source, sources::stated);
  EXPECT_EQ(steps[0].run.result, Amount(14_teeth));
  EXPECT_TRUE(steps[0].run.from.empty());
  EXPECT_EQ(steps[1].source, sources::marking);
  EXPECT_EQ(steps[2].kind, StepKind::computed);
  EXPECT_EQ(steps[2].identity, (StepIdentity{"final_ratio", Scope::none}));
  EXPECT_EQ(steps[2].source, formula::final_ratio::about.source);
  EXPECT_EQ(steps[2].run.formula, &formula::final_ratio::about);
  EXPECT_EQ(steps[2].run.from, (std::vector<int>{0, 1}));
  EXPECT_EQ(steps[2].run.result, Amount::number(3.0));
  EXPECT_EQ(steps[3].kind, StepKind::looked_up);
  EXPECT_EQ(steps[3].detail, "radial");
  EXPECT_EQ(steps[3].source, table);
}

TEST(Recorder, NamesWhatFedAStepInTheOrderOfTheFormula) {
  Recorder recorder;
  const auto watch = recorder.watch();
  const auto rear = watch.given("rear", 42_teeth);  // first on the paper, second in the formula
  const auto front = watch.given("front", 14_teeth);
  static_cast<void>(watch.step("ratio", formula::final_ratio{}, front, rear));
  EXPECT_EQ(recorder.steps().back().run.from, (std::vector<int>{1, 0}));
  EXPECT_EQ(recorder.steps().back().identity.name, ValueName("ratio"));
  EXPECT_EQ(recorder.steps().back().run.formula, &formula::final_ratio::about);
}

TEST(Recorder, WritesTheSameStepDownOnce) {
  Recorder recorder;
  const auto watch = recorder.watch();
  for (int again = 0; again < 3; ++again) {
    const auto ratio =
        watch.step(formula::final_ratio{}, watch.given("front", 14_teeth), watch.given("rear", 42_teeth));
    EXPECT_EQ(ratio.step, 2);
    EXPECT_EQ(ratio.value, 3.0);
  }
  ASSERT_EQ(recorder.steps().size(), 3u);
}

TEST(Recorder, TellsPartsAndOneOfSeveralApart) {
  Recorder recorder;
  const auto watch = recorder.watch();
  EXPECT_EQ(watch.on(Scope::base).given("front", 14_teeth).step, 0);
  EXPECT_EQ(watch.on(Scope::trial).given("front", 14_teeth).step, 1);  // of another part, though of the same value
  EXPECT_EQ(watch.given("front", 14_teeth).step, 2);
  EXPECT_EQ(watch.given({"gear", 1}, 2.75).step, 3);
  EXPECT_EQ(watch.given({"gear", 2}, 1.9).step, 4);
  EXPECT_EQ(watch.on(Scope::base).on(Scope::trial).given("front", 14_teeth).step, 1);  // the part named last
  EXPECT_EQ(recorder.steps()[1].identity, (StepIdentity{"front", Scope::trial}));
}

#if !defined(NDEBUG)
// A name and a part stand for one value in a run; a calculation that gives it two is wrong.
TEST(RecorderDeathTest, RefusesTwoValuesUnderOneName) {
  const auto twice = [] {
    Recorder recorder;
    static_cast<void>(recorder.watch().given("front", 14_teeth));
    static_cast<void>(recorder.watch().given("front", 15_teeth));
  };
  EXPECT_DEATH(twice(), "none_of");
}
#else
// Where nothing is asserted, no value hides behind another's name: each has a step of its own.
TEST(Recorder, WritesDownEachOfTwoValuesUnderOneName) {
  Recorder recorder;
  const auto watch = recorder.watch();
  EXPECT_EQ(watch.given("front", 14_teeth).step, 0);
  EXPECT_EQ(watch.given("front", 15_teeth).step, 1);
  EXPECT_EQ(watch.looked_up("front", 14_teeth, "a row", table).step, 2);
  EXPECT_EQ(watch.given("front", 14_teeth).step, 0);
  EXPECT_EQ(recorder.steps()[1].run.result, Amount(15_teeth));
  EXPECT_EQ(recorder.steps()[2].kind, StepKind::looked_up);
}
#endif

TEST(Recorder, PutsTheProofBehindWhatItProves) {
  Recorder recorder;
  const auto watch = recorder.watch();
  const auto target = watch.given("ratio", 3.0);
  const auto front = watch.given("front", 14_teeth);
  const auto rear = watch.solved("rear", 42_teeth, target, [&](const auto& solution) {
    return watch.step(formula::final_ratio{}, front, solution);
  });
  EXPECT_EQ(rear.value, 42_teeth);
  const std::vector<RecordedStep>& steps = recorder.steps();
  ASSERT_EQ(steps.size(), 4u);
  EXPECT_EQ(rear.step, 2);
  EXPECT_EQ(steps[2].kind, StepKind::solved);
  EXPECT_EQ(steps[2].run.from, (std::vector<int>{0}));
  EXPECT_EQ(steps[2].run.reached, 3);
  EXPECT_EQ(steps[2].run.residual, 0.0);
  EXPECT_EQ(steps[2].run.formula, &formula::final_ratio::about);  // the left side of the equation
  EXPECT_EQ(steps[3].run.from, (std::vector<int>{1, 2}));         // the proof is fed by the solution
}

TEST(Recorder, SaysByHowMuchASolutionMisses) {
  Recorder recorder;
  const auto watch = recorder.watch();
  const auto front = watch.given("front", 14_teeth);
  static_cast<void>(watch.solved("rear", 41_teeth, watch.given("ratio", 3.0), [&](const auto& solution) {
    return watch.step(formula::final_ratio{}, front, solution);
  }));
  EXPECT_EQ(recorder.steps()[2].run.residual, 41.0 / 14.0 - 3.0);
}

TEST(Recorder, ListsWhatElseCouldHaveBeenChosen) {
  Recorder recorder;
  const auto watch = recorder.watch();
  const auto exact = watch.given("links_with_slack", 105.2);
  const auto links = watch.chosen(
      "links", 106_links, "the next even number",
      [] {
        return std::array{108_links, 110_links};
      },
      exact);
  EXPECT_EQ(links.value, 106_links);
  const RecordedStep& step = recorder.steps().back();
  EXPECT_EQ(step.kind, StepKind::chosen);
  EXPECT_EQ(step.detail, "the next even number");
  EXPECT_EQ(step.run.result, Amount(106_links));
  EXPECT_EQ(step.run.from, (std::vector<int>{0}));
  EXPECT_EQ(step.run.others, (std::vector<Amount>{Amount(108_links), Amount(110_links)}));
  static_cast<void>(watch.chosen("rear", 43_teeth, "a rule", [] { return std::vector<Teeth>(); }));
  EXPECT_TRUE(recorder.steps().back().run.others.empty());  // nothing else was
}

TEST(Recorder, TellsTheStepsThatFedAResultAndWhatProvesThem) {
  Recorder recorder;
  const auto watch = recorder.watch();
  static_cast<void>(watch.given("slack", 30_mm));  // nothing asks for it
  const auto front = watch.given("front", 14_teeth);
  const auto target = watch.given("ratio", 3.0);
  static_cast<void>(watch.step(formula::final_ratio{}, front, watch.given("teeth", 40_teeth)));
  const auto rear = watch.solved("rear", 42_teeth, target, [&](const auto& solution) {
    return watch.step("turns_ratio", formula::final_ratio{}, front, solution);
  });
  static_cast<void>(watch.given("distance", 1_km));
  const Recording all{recorder.steps(), rear.step}, told = recorder.recording(rear.step);
  ASSERT_EQ(all.steps.size(), 8u);
  ASSERT_EQ(told.steps.size(), 4u);
  EXPECT_EQ(told.result, 2);
  EXPECT_EQ(told.steps[0].identity.name, ValueName("front"));
  EXPECT_EQ(told.steps[1].identity.name, ValueName("ratio"));
  EXPECT_EQ(told.steps[2].identity.name, ValueName("rear"));
  EXPECT_EQ(told.steps[2].run.from, (std::vector<int>{1}));
  EXPECT_EQ(told.steps[2].run.reached, 3);
  EXPECT_EQ(told.steps[3].identity.name, ValueName("turns_ratio"));
  EXPECT_EQ(told.steps[3].run.from, (std::vector<int>{0, 2}));
}

// ---- runs at corners ----

template <class Watch>
auto speed_in(Watch watch, const Band<double>& ratio, Corner at) {
  return watch.step(formula::road_speed{}, watch.given("engine_speed", 6000_rpm),
                    watch.given("overall_ratio", ratio.at(at)), watch.given("circumference", 2.0_m));
}

TEST(ExplainOver, HasTheEndsOfThePlainCalculation) {
  for (const Band<double>& ratio : {Band<double>{10.0, 12.0, 15.0}, Band<double>{12.0, 12.0, 15.0},
                                    Band<double>{10.0, 12.0, 12.0}, Band<double>::exactly(12.0)}) {
    const Working working =
        explain_over("speed", one_cause, [&](Recorder::Watch watch, Corner at) { return speed_in(watch, ratio, at); });
    const Band<Speed> plain = over_runs(one_cause, [&](Corner at) { return speed_in(Unwatched(), ratio, at); });
    for (const Corner corner : corners) EXPECT_EQ(working.result().result(corner), Amount(plain.at(corner)));
    EXPECT_EQ(working.title(), "speed");
    EXPECT_EQ(working.result().exact(), ratio.width() == 0.0);
    // What the low result stands on is the high ratio: the speed falls as the ratio rises.
    EXPECT_EQ(working.steps()[1].result(Corner::low).value, ratio.high);
    EXPECT_EQ(working.steps()[1].result(Corner::high).value, ratio.low);
  }
}

TEST(ExplainOver, OfOneRunHasItAtEveryCorner) {
  const Working working = explain_over("a ratio", std::array{Corner::nominal}, [](Recorder::Watch watch, Corner) {
    return watch.step(formula::final_ratio{}, watch.given("front", 14_teeth), watch.given("rear", 42_teeth));
  });
  ASSERT_EQ(working.steps().size(), 3u);
  for (const Step& step : working.steps()) {
    EXPECT_TRUE(step.exact());
    for (const Corner corner : corners) EXPECT_TRUE(step.run(corner));
  }
}

TEST(ExplainOver, LeavesOutWhatTheResultDoesNotStandOnUnlessAllIsTold) {
  const auto calculation = [](Recorder::Watch watch, Corner at) {
    static_cast<void>(watch.given("slack", 30_mm));
    return speed_in(watch, Band<double>{10.0, 12.0, 15.0}, at);
  };
  EXPECT_EQ(explain_over("speed", one_cause, calculation).steps().size(), 4u);
  const Working all = explain_over("speed", one_cause, calculation, Told::everything);
  EXPECT_EQ(all.steps().size(), 5u);
  EXPECT_EQ(all.steps()[0].name(), "slack");
  EXPECT_EQ(all.result().name(), "road speed");
}

TEST(ExplainOver, TakesTheEndsFromWhicheverOfManyRunsHasThem) {
  const std::vector<double> ratios{12.0, 13.0, 9.0, 11.0, 20.0, 9.5};
  const Working working = explain_over("speed", ratios, [](Recorder::Watch watch, double ratio) {
    return watch.step(formula::road_speed{}, watch.given("engine_speed", 6000_rpm), watch.given("overall_ratio", ratio),
                      watch.given("circumference", 2.0_m));
  });
  EXPECT_EQ(working.steps()[1].result().value, 12.0);
  EXPECT_EQ(working.steps()[1].result(Corner::low).value, 20.0);
  EXPECT_EQ(working.steps()[1].result(Corner::high).value, 9.0);
}

}  // namespace
