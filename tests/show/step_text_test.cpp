// SPDX-License-Identifier: MIT
#include <layshaft/show/step_text.hpp>

#include <layshaft/explain.hpp>
#include <setup/machines.hpp>

#include <gtest/gtest.h>

namespace {
using namespace layshaft;

TEST(WithIndex, PutsAnIndexBehindEverySymbol) {
  const auto index = [](const char* text, const char* tex, const char* behind) {
    const Symbol symbol = detail::with_index({text, tex}, behind);
    return symbol.text + " " + symbol.tex;
  };
  EXPECT_EQ(index("U", "U", "0"), "U0 U_{0}");
  EXPECT_EQ(index("z1", "z_1", "0"), "z1,0 z_{1,0}");
  EXPECT_EQ(index("D_w", "D_{\\mathrm{w}}", "1"), "D_w,1 D_{\\mathrm{w},1}");
  EXPECT_EQ(index("phi", "\\varphi", "aft"), "phi_aft \\varphi_{\\mathrm{aft}}");
  EXPECT_EQ(index("i_g", "i_g", "3"), "i_g,3 i_{g,3}");
}

/// A single given value as a working.
template <class Quantity>
Working working_of(const char* word, Quantity low, Quantity nominal, Quantity high) {
  const Band<Quantity> band{low, nominal, high};
  return explain_over("one", one_cause,
                      [&](Recorder::Watch watch, Corner at) { return watch.given(word, band.at(at)); });
}
template <class Quantity>
std::string shown(const char* word, Quantity low, Quantity nominal, Quantity high, WorkingStyle style = {}) {
  const Working working = working_of(word, low, nominal, high);
  const detail::StepLines<detail::PlainText> lines(working, working.result(), style);
  return lines.result(Corner::low) + "|" + lines.result(Corner::nominal) + "|" + lines.result(Corner::high);
}

TEST(StepNumbers, HaveAsManyDigitsAsTheirUncertaintyLeavesAMeaningTo) {
  EXPECT_EQ(shown("circumference", 1998.3_mm, 2053.5_mm, 2166.0_mm), "1998 mm|2054 mm|2166 mm");
  EXPECT_EQ(shown("road_speed", 36.62_kmh, 37.512_kmh, 39.566_kmh), "36.6 km/h|37.5 km/h|39.6 km/h");
  EXPECT_EQ(shown("rolling_factor", 0.965, 0.98, 0.995), "0.965|0.980|0.995");
  EXPECT_EQ(shown("thrust_change", -0.033, 0.014, 0.047), "-3.3 %|1.4 %|4.7 %");
}

TEST(StepNumbers, OfExactValuesHaveSixDigitsWithoutZerosAtTheEnd) {
  const auto exact = [](const char* word, auto value, WorkingStyle style = {}) {
    const std::string all = shown(word, value, value, value, style);
    return all.substr(0, all.find('|'));
  };
  EXPECT_EQ(exact("pitch", 15.875_mm), "15.875 mm");
  EXPECT_EQ(exact("pitch", 15.875_mm, {.units = UnitSystem::us}), "0.625 in");
  EXPECT_EQ(exact("pitch", 15.875_mm, {.decimal = ','}), "15,875 mm");
  EXPECT_EQ(exact("front", 13_teeth), "13");
  EXPECT_EQ(exact("final_ratio", 50.0 / 13.0), "3.84615");
  EXPECT_EQ(exact("true_speed", 80_kmh), "80 km/h");
  EXPECT_EQ(exact("true_speed", 0_kmh), "0 km/h");
  EXPECT_EQ(exact("engine_speed", 12345.678_rpm), "12345.7 rpm");
}

TEST(StepUnit, IsThatOfTheGlossary) {
  for (const Word& word : glossary) {
    const detail::StepUnit unit = detail::step_unit(word.word, UnitSystem::metric);
    EXPECT_EQ(unit.name, word.unit) << word.word;
    EXPECT_GT(unit.size, 0.0);
  }
  EXPECT_EQ(detail::step_unit("no_such_word", UnitSystem::us).name, "");
  EXPECT_EQ(detail::step_unit("no_such_word", UnitSystem::us).size, 1.0);
}

TEST(StepMeaning, IsTheGlossarysOrTheNameOfAStepThatHasNone) {
  const Scope outside = static_cast<Scope>(99);
  const auto meaning = [](const char* word, int index, Scope scope) {
    return meaning_of(Step(StepKind::given, {{word, index}, scope}, sources::stated, ""));
  };
  EXPECT_EQ(meaning("front", 0, Scope::none), "teeth of the front sprocket");
  EXPECT_EQ(meaning("front", 0, Scope::base), "teeth of the front sprocket, before");
  EXPECT_EQ(meaning("no_such_word", 0, Scope::none), "no such word");
  EXPECT_EQ(meaning("no_such_word", 3, Scope::none), "no such word 3, 3");
  EXPECT_EQ(meaning("front", 0, outside), "teeth of the front sprocket");
}

TEST(StepLines, HaveNoNumbersToPutInForWhatIsGiven) {
  const Working working = working_of("pitch", 15.875_mm, 15.875_mm, 15.875_mm);
  const detail::StepLines<detail::PlainText> lines(working, working.result(), {});
  EXPECT_EQ(lines.symbol(), "p");
  EXPECT_EQ(lines.formula(Corner::nominal), "");
  EXPECT_EQ(lines.numbers(Corner::nominal), "");
  EXPECT_EQ(lines.result(Corner::nominal), "15.875 mm");
}

// One millimetre over 1.2345678901234567e-17 mm is 8.1e16, all of whose digits are shown. A number put in has at most
// ten digits behind the twelve it is shown with, which are six of this one: the line says what it can.
TEST(StepLines, PutInNoMoreThanTenDigitsBeyondThoseShown) {
  const Working working = explain_over("turns", one_cause, [](Recorder::Watch watch, Corner) {
    const auto way = watch.given("adjuster_way", 1_mm);
    return watch.step(formula::adjuster_turns{}, way, watch.given("thread_pitch", 1.2345678901234567e-17 * units::mm));
  });
  const detail::StepLines<detail::PlainText> lines(working, working.result(), {});
  EXPECT_EQ(lines.numbers(Corner::nominal), "1 mm / (0.0000000000000000123457 mm)");
}

TEST(PutInLimits, MakesOneOfWhatWouldBeNothingOverNothing) {
  const auto put_in = [](const char* body, double value) {
    ExpressionNode node = *try_read_expression(body);
    detail::put_in_limits(node, [&](std::string_view) { return value; });
    return node.kind == ExpressionNode::Kind::number ? std::string(node.text) : std::string();
  };
  EXPECT_EQ(put_in("arctan_ratio(x)", 0.0), "1.0");
  EXPECT_EQ(put_in("arctan_ratio(x)", 1.0), "");
  EXPECT_EQ(put_in("logarithmic_mean(x)", 1.0), "1.0");
  EXPECT_EQ(put_in("logarithmic_mean(x)", 0.0), "");
  EXPECT_EQ(put_in("cos(x)", 0.0), "");
}

TEST(StepLines, PutInNumbersThatGiveTheResultAsShown) {
  for (const UnitSystem system : {UnitSystem::metric, UnitSystem::us}) {
    const Working working = ChainLoop(ChainSeries("520"), 13_teeth, 48_teeth).explain("links", {.centre = 610_mm});
    const detail::StepLines<detail::PlainText> lines(working, working.result(), {.units = system});
    EXPECT_EQ(lines.symbol(), "x");
    EXPECT_EQ(lines.formula(Corner::nominal), "2 * C * cos(phi) / p + (z1 + z2) / 2 + phi * (z2 - z1) / (180 deg)");
    EXPECT_EQ(lines.result(Corner::nominal), "108.159");
  }
}

TEST(StepLines, NeverDivideNothingByNothing) {
  const Machine machine = layshaft_test::trail_bike();
  const Working working = compare(machine, machine.stock(), machine.stock()).explain("thrust");
  int seen = 0;
  for (const Step& step : working.steps()) {
    if (step.formula() != &formula::contribution::about) continue;
    ++seen;
    const detail::StepLines<detail::PlainText> lines(working, step, {});
    EXPECT_EQ(lines.numbers(Corner::nominal), "1 * ln(1)");
  }
  EXPECT_EQ(seen, 3);
}

}  // namespace
