// SPDX-License-Identifier: MIT
#include <layshaft/core/recorder.hpp>

#include <layshaft/chain/loop.hpp>
#include <layshaft/gearing/ratio.hpp>

#include <gtest/gtest.h>
#include <core/workings.hpp>

#include <array>
#include <string>
#include <vector>

namespace {
using namespace layshaft;
using layshaft_test::names_of;
using layshaft_test::step_named;

constexpr Source remembered{"a table", Certainty::from_memory};

RecordedStep given(ValueName name, double value, const Source& source = sources::stated) {
  StepRun run;
  run.result = Amount::number(value);
  return {StepKind::given, {name, Scope::none}, source, {}, run};
}
/// A step whose value is fed by others; which formula it was does not matter here.
RecordedStep computed(ValueName name, double value, std::vector<int> from, const Source& source = sources::definition) {
  StepRun run;
  run.result = Amount::number(value);
  run.from = std::move(from);
  return {StepKind::computed, {name, Scope::none}, source, {}, run};
}
Recording of(std::vector<RecordedStep> steps) {
  const int last = static_cast<int>(steps.size()) - 1;
  return {std::move(steps), last};
}
/// The names of what fed a step at a corner.
std::vector<std::string> fed(const Working& working, std::string_view name, Corner corner) {
  std::vector<std::string> names;
  for (const int from : step_named(working, name).run(corner)->from)
    names.push_back(working.steps()[static_cast<std::size_t>(from)].name());
  return names;
}
/// Every step follows from steps ahead of it, in each run that has it.
void expect_backwards(const Working& working) {
  for (std::size_t place = 0; place < working.steps().size(); ++place)
    for (const Corner corner : corners)
      if (const auto& run = working.steps()[place].run(corner))
        for (const int from : run->from) {
          EXPECT_GE(from, 0);
          EXPECT_LT(from, static_cast<int>(place)) << working.steps()[place].name();
          EXPECT_TRUE(working.steps()[static_cast<std::size_t>(from)].run(corner));
        }
}
using Names = std::vector<std::string>;

TEST(StepKind, HasAWord) {
  static_assert(to_string(StepKind::given) == "given");
  static_assert(to_string(StepKind::computed) == "computed");
  static_assert(to_string(StepKind::looked_up) == "looked up");
  static_assert(to_string(StepKind::solved) == "solved");
  static_assert(to_string(StepKind::chosen) == "chosen");
}

TEST(Step, IsCalledByItsWordItsNumberAndItsPart) {
  const auto name = [](ValueName value, Scope scope) {
    return Step(StepKind::given, {value, scope}, sources::stated, {}).name();
  };
  EXPECT_EQ(name("front_pitch_diameter", Scope::none), "front pitch diameter");
  EXPECT_EQ(name({"gear", 3}, Scope::none), "gear 3");
  EXPECT_EQ(name("overall_diameter", Scope::base), "base overall diameter");
  EXPECT_EQ(name("overall_diameter", Scope::trial), "trial overall diameter");
  EXPECT_EQ(name("run_angle", Scope::front_end), "run angle at the front end");
  EXPECT_EQ(name("run_angle", Scope::rear_end), "run angle at the rear end");
}

TEST(Working, LaysEqualStepsSideBySide) {
  const auto run = [](double circumference, double speed) {
    return of(
        {given("engine_speed", 600.0), given("circumference", circumference), computed("road_speed", speed, {0, 1})});
  };
  const Working working("road speed", run(1.9, 19.0), run(2.0, 20.0), run(2.1, 21.0));
  EXPECT_EQ(names_of(working), (Names{"engine speed", "circumference", "road speed"}));
  EXPECT_TRUE(working.steps()[0].exact());
  EXPECT_FALSE(working.steps()[1].exact());
  EXPECT_EQ(working.steps()[1].result(Corner::low).value, 1.9);
  EXPECT_EQ(working.steps()[1].result().value, 2.0);
  EXPECT_EQ(working.steps()[1].result(Corner::high).value, 2.1);
  EXPECT_EQ(working.result().name(), "road speed");
  EXPECT_EQ(working.result_place(), 2u);
  EXPECT_EQ(working.result().from_steps(), (std::vector<int>{0, 1}));
  EXPECT_EQ(working.title(), "road speed");
  expect_backwards(working);
}

TEST(Working, PutsAStepThatOneRunAloneHasBehindTheOneBeforeIt) {
  const auto plain = of({given("rim_diameter", 1.0), given("listed_diameter", 2.0),
                         computed("overall_diameter", 3.0, {0, 1}), computed("circumference", 9.0, {2})});
  const auto high = of({given("rim_diameter", 1.0), given("listed_diameter", 2.0),
                        computed("section_height", 0.5, {1, 0}), given("height_factor", 1.12),
                        computed("overall_diameter", 3.2, {0, 2, 3}), computed("circumference", 9.6, {4})});
  const Working working("circumference", plain, plain, high);
  EXPECT_EQ(names_of(working), (Names{"rim diameter", "listed diameter", "section height", "height factor",
                                      "overall diameter", "circumference"}));
  expect_backwards(working);
  EXPECT_EQ(fed(working, "overall diameter", Corner::nominal), (Names{"rim diameter", "listed diameter"}));
  EXPECT_EQ(fed(working, "overall diameter", Corner::low), (Names{"rim diameter", "listed diameter"}));
  EXPECT_EQ(fed(working, "overall diameter", Corner::high), (Names{"rim diameter", "section height", "height factor"}));
  EXPECT_EQ(fed(working, "circumference", Corner::nominal), (Names{"overall diameter"}));
  EXPECT_EQ(fed(working, "circumference", Corner::high), (Names{"overall diameter"}));
  // Where a run did without the step, it is absent; its value and its working are those of the run that has it.
  const Step& height = step_named(working, "section height");
  EXPECT_FALSE(height.run(Corner::low));
  EXPECT_FALSE(height.run(Corner::nominal));
  ASSERT_TRUE(height.run(Corner::high));
  EXPECT_EQ(height.result().value, 0.5);
  EXPECT_EQ(height.result(Corner::low).value, 0.5);
  EXPECT_TRUE(height.exact());
  EXPECT_EQ(height.from_steps(), (std::vector<int>{1, 0}));
  EXPECT_EQ(working.result().name(), "circumference");
  EXPECT_EQ(working.result().result(Corner::high).value, 9.6);
}

TEST(Working, TakesStepsThatOnlyTheLowRunHasAheadOfThoseThatOnlyTheHighRunHas) {
  const auto run = [](ValueName own, double value) {
    return of({given("primary", 3.0), given(own, value), computed("ratio", value, {0, 1})});
  };
  const Working working("ratio", run("gear", 1.0), of({given("primary", 3.0), computed("ratio", 3.0, {0})}),
                        run("final_ratio", 4.0));
  // Each goes in behind the step before it, so the one put in last stands first.
  EXPECT_EQ(names_of(working), (Names{"primary", "final ratio", "gear", "ratio"}));
  expect_backwards(working);
  EXPECT_EQ(fed(working, "ratio", Corner::low), (Names{"primary", "gear"}));
  EXPECT_EQ(fed(working, "ratio", Corner::nominal), (Names{"primary"}));
  EXPECT_EQ(fed(working, "ratio", Corner::high), (Names{"primary", "final ratio"}));
  EXPECT_EQ(step_named(working, "gear").result().value, 1.0);  // the one run it is in answers
  EXPECT_EQ(step_named(working, "final ratio").result().value, 4.0);
}

TEST(Working, PutsAStepThatNoOtherRunBeginsWithFirst) {
  const auto plain = of({given("primary", 3.0), computed("ratio", 3.0, {0})});
  const auto low = of({given("gear", 2.0), given("primary", 3.0), computed("ratio", 1.5, {1, 0})});
  const Working working("ratio", low, plain, plain);
  EXPECT_EQ(names_of(working), (Names{"gear", "primary", "ratio"}));
  EXPECT_EQ(fed(working, "ratio", Corner::low), (Names{"primary", "gear"}));
  EXPECT_EQ(fed(working, "ratio", Corner::nominal), (Names{"primary"}));
  expect_backwards(working);
}

// A solved step's proof lies behind it; what is put in between moves it further back, in every run.
TEST(Working, KeepsHoldOfAProofThatMoves) {
  const auto solved = [](bool with_slack) {
    std::vector<RecordedStep> steps{given("links", 106.0)};
    RecordedStep centre = computed("centre", 0.6, {0});
    centre.kind = StepKind::solved;
    if (with_slack) {
      centre.run.reached = 3;
      steps.push_back(centre);
      steps.push_back(given("slack", 0.03));
      steps.push_back(computed("links_with_slack", 106.0, {1, 2}));
    } else {
      centre.run.reached = 2;
      steps.push_back(centre);
      steps.push_back(computed("links_with_slack", 106.0, {1}));
    }
    return Recording{steps, 1};
  };
  for (const bool high_first : {false, true}) {
    const Working working("centre", solved(high_first), solved(false), solved(true));
    EXPECT_EQ(names_of(working), (Names{"links", "centre", "slack", "links with slack"}));
    EXPECT_EQ(working.result_place(), 1u);
    for (const Corner corner : corners) EXPECT_EQ(working.result().run(corner)->reached, 3);
    EXPECT_EQ(working.steps()[0].run().reached, -1);
    expect_backwards(working);
  }
}

TEST(Working, StaysInOrderWhereRunsAreNot) {
  const auto one = of({given("primary", 3.0), given("gear", 2.0), computed("ratio", 6.0, {0, 1})});
  const auto other = of({given("gear", 2.5), given("primary", 3.0), computed("ratio", 7.5, {1, 0})});
  const Working working("ratio", one, one, other);
  expect_backwards(working);
  EXPECT_EQ(working.result().result(Corner::high).value, 7.5);
  EXPECT_EQ(working.result().name(), "ratio");
  EXPECT_EQ(working.result_place(), working.steps().size() - 1);
}

TEST(Working, IsAsSureAsTheLeastSureOfWhatWentIn) {
  const auto run = of({given("links", 106.0), given("pitch", 2.0, remembered), computed("effective_links", 106.2, {0}),
                       computed("spare_length", 1.0, {1}), computed("ratio", 3.0, {2, 3})});
  const Working working("ratio", run, run, run);
  EXPECT_EQ(working.steps()[0].certainty(), Certainty::stated);
  EXPECT_EQ(working.steps()[1].certainty(), Certainty::from_memory);
  EXPECT_EQ(working.steps()[2].certainty(), Certainty::derived);
  EXPECT_EQ(working.steps()[3].certainty(), Certainty::from_memory);  // what is from memory stays so
  EXPECT_EQ(working.result().certainty(), Certainty::from_memory);
  EXPECT_EQ(working.result().source(), sources::definition);  // and yet its own formula is the definition
}

TEST(Working, IsAsSureAsTheLeastSureRun) {
  const auto plain = of({given("links", 106.0), computed("ratio", 3.0, {0})});
  const auto high =
      of({given("links", 106.0), given("elongation", 0.0015, remembered), computed("ratio", 3.1, {0, 1})});
  const Working working("ratio", plain, plain, high);
  EXPECT_EQ(working.result().certainty(), Certainty::from_memory);
  EXPECT_EQ(step_named(working, "links").certainty(), Certainty::stated);
}

// A centre distance that was solved for depends on the pitch as its links do, though it is fed by the links alone.
TEST(SolvedStep, IsAsSureAsWhatItsEquationHolds) {
  const auto of_pitch = [](const Source& source) {
    return explain_over("centre", std::array{Corner::nominal}, [&](Recorder::Watch watch, Corner) {
      const auto drive = layshaft::detail::watched_drive(watch, watch.looked_up("pitch", 15.875_mm, "520", source),
                                                         watch.given("front", 14_teeth), watch.given("rear", 42_teeth));
      const auto links = watch.given("links", 106.0);
      return watch.solved("centre", chain_centre(15.875_mm, 14_teeth, 42_teeth, 106.0), links,
                          [&](const auto& centre) { return layshaft::detail::taut_links(watch, drive, centre); });
    });
  };
  EXPECT_EQ(to_string(of_pitch(remembered).result().certainty()), "from memory");
  EXPECT_EQ(to_string(of_pitch(sources::iso_606).result().certainty()), "derived");
}

}  // namespace
