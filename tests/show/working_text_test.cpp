// SPDX-License-Identifier: MIT
#include <layshaft/show/working_text.hpp>

#include <layshaft/explain.hpp>
#include <setup/machines.hpp>

#include <gtest/gtest.h>

#include <map>
#include <regex>
#include <string>
#include <utility>
#include <vector>

namespace {
using namespace layshaft;
using namespace layshaft_test;

Machine hostile_machine() {
  MachineParts parts = trail_bike_parts();
  parts.name = "<script>alert('x')</script> \\input{a} $x_1$ *b* [c](d) `e` & \"q\"";
  return Machine(parts);
}
Setup on_knobs(const Machine& machine) {
  return with(machine.stock(), [](SetupParts& parts) {
    parts.rear = 49_teeth;
    parts.tyre = TyreSize("120/90-18", TyreUse::special);
    parts.links.reset();
  });
}

/// The workings of every name, of every example machine, on its stock tyre and on a worn one.
std::vector<Working> all_workings() {
  std::vector<Working> all;
  for (const Machine& machine : {trail_bike(), farm_bike(), cargo_cycle()}) {
    const Setup& stock = machine.stock();
    const Setup other = with(stock, [](SetupParts& parts) {
      parts.front = Teeth(parts.front.count() + 1);
      if (!parts.circumference) parts.tread_worn = 4_mm;
      parts.drive_efficiency = Band<double>{0.96, 0.97, 0.98};
      parts.links.reset();
    });
    const Setup base = with(stock, [](SetupParts& parts) { parts.drive_efficiency = Band<double>::exactly(0.98); });
    MachineParts parts = machine.parts();
    const AngularSpeed limit = machine.gearbox().rev_limit();
    parts.engine = EngineCurve({1_rpm, 0.7 * limit, limit}, {16_Nm, 22_Nm, 15_Nm});
    parts.road_load = RoadLoad::by_mass(180_kg);
    const Machine driven(parts);
    const Speed speed = 0.8 * appraise(machine, stock).speed_range(2).highest.nominal;
    for (const auto& one : detail::explained_of_setup)
      all.push_back(explain(driven, stock, one.what, {.gear = 2, .engine_speed = 60_rpm, .speed = speed}));
    const Comparison comparison = compare(machine, base, other);
    for (const auto& one : detail::explained_of_comparison)
      if (const auto working = comparison.try_explain(one.what)) all.push_back(*working);  // not all tyres are worn
  }
  const ChainLoop loop(ChainSeries("08B"), 21_teeth, 63_teeth);
  for (const auto& one : detail::explained_of_loop)
    all.push_back(loop.explain(one.what, {.centre = 500_mm, .links = 122.0}));
  for (const auto& one : detail::explained_of_sprocket)
    all.push_back(Sprocket(ChainSeries("12B"), 17_teeth).explain(one.what));
  for (const char* marking : {"110/90-18", "3.50-10", "MT90-16"})
    for (const auto& one : detail::explained_of_tyre)
      all.push_back(TyreSize(marking, TyreUse::special).explain(one.what));
  return all;
}

TEST(WorkingText, ReadsAsALessonDoes) {
  const Working working =
      ChainLoop(ChainSeries("08B"), 21_teeth, 63_teeth).explain("links approximate", {.centre = 500_mm});
  EXPECT_EQ(to_text(working),
            "links approximate\n"
            "Links by the handbook's formula, a real number: 121.875.\n"
            "How sure: published (as the least sure of all it rests on).\n"
            "An estimate until measured on the machine; the maker's manual and a qualified technician come first.\n"
            "\n"
            "  1. centre distance of the two sprockets: C = 500 mm\n"
            "     given\n"
            "  2. pitch of the chain: p = 12.7 mm\n"
            "     looked up: ISO 606:1994 as adopted in GOST 13568-97, Annex A, Table A.1 (published), row 08B\n"
            "  3. teeth of the front sprocket: z1 = 21\n"
            "     given\n"
            "  4. teeth of the rear sprocket: z2 = 63\n"
            "     given\n"
            "  5. links by the handbook's formula, a real number\n"
            "     x_approx = 2 * C / p + (z1 + z2) / 2 + (z2 - z1) * (z2 - z1) * p / (2 * pi * 2 * pi * C)\n"
            "              = 2 * 500 mm / (12.7 mm) + (21 + 63) / 2 + (63 - 21) * (63 - 21) * 12.7 mm / "
            "(2 * pi * 2 * pi * 500 mm)\n"
            "              = 121.875\n"
            "     computed: Bhandari, Design of Machine Elements, ch. 14 (published); from steps 2, 3, 4 and 1\n"
            "\n"
            "x_approx = 2 * C / p + (z1 + z2) / 2 + (z2 - z1) * (z2 - z1) * p / (2 * pi * 2 * pi * C) = "
            "2 * 500 mm / (12.7 mm) + (21 + 63) / 2 + (63 - 21) * (63 - 21) * 12.7 mm / (2 * pi * 2 * pi * 500 mm) = "
            "121.875\n");
}

TEST(WorkingText, SaysAChangeInASentence) {
  const Machine machine = trail_bike();
  const Comparison comparison = compare(machine, machine.stock(), on_knobs(machine));
  const std::string said = sentence(comparison.explain("thrust"));
  EXPECT_TRUE(std::regex_match(
      said,
      std::regex(R"(Thrust changes by [+-]\d+\.\d \([+-]?\d+\.\d to [+-]\d+\.\d\) %: the tyre gives \d+\.\d points, )"
                 R"(the rear sprocket gives \d+\.\d\. By rule of thumb it would be [+-]?\d+\.\d %, )"
                 R"(off by -?\d+\.\d points\.)")))
      << said;
  EXPECT_TRUE(sentence(comparison.explain("speed")).starts_with("Road speed at equal engine speed changes by "));
}

TEST(WorkingText, PutsInNumbersThatMultiplyOut) {
  // Each line is worked out again from its own digits; sympy and pint do the same from outside in test_working.py.
  int lines_seen = 0;
  for (const Working& working : all_workings())
    for (const Step& step : working.steps()) {
      if (step.kind() != StepKind::computed) continue;
      ++lines_seen;
      const detail::StepLines<detail::PlainText> lines(working, step, {});
      const std::string numbers = lines.numbers(Corner::nominal);
      EXPECT_FALSE(numbers.empty());
      EXPECT_EQ(numbers.find("pi / 30"), std::string::npos);
      EXPECT_EQ(numbers.find("6.28"), std::string::npos) << numbers;  // a turn is 1 rev
      EXPECT_EQ(numbers.find("nan"), std::string::npos) << numbers;
    }
  EXPECT_GT(lines_seen, 500);
}

TEST(WorkingText, GivesEveryStepOfAWorkingASymbolOfItsOwn) {
  for (const Working& working : all_workings()) {
    std::map<std::string, std::string> meanings;
    for (const Step& step : working.steps()) {
      const auto [known, fresh] = meanings.insert({symbol_text(step), step.name()});
      EXPECT_TRUE(fresh) << working.title() << ": " << symbol_text(step) << " is both " << known->second << " and "
                         << step.name();
    }
  }
}

TEST(WorkingText, WritesEveryWorkingInEveryForm) {
  for (const Working& working : all_workings())
    for (const UnitSystem system : {UnitSystem::metric, UnitSystem::us})
      for (const char decimal : {'.', ','}) {
        const WorkingStyle style{.units = system, .decimal = decimal};
        for (const std::string& text : {to_text(working, style), to_markdown(working, style), to_latex(working, style),
                                        to_html(working, style), to_tex(working, style)}) {
          EXPECT_EQ(text.find("nan"), std::string::npos) << text;
          EXPECT_EQ(text.find(" at position "), std::string::npos) << text;  // an error in place of a formula
        }
        if (decimal == ',') {
          const std::string text = to_text(working, style);
          const std::string last = text.substr(text.rfind('\n', text.size() - 2));
          EXPECT_FALSE(std::regex_search(last, std::regex(R"(\d\.\d)"))) << last;
        }
      }
}

TEST(WorkingText, FoldsItsSteps) {
  const Machine machine = trail_bike();
  const Working working = explain(machine, machine.stock(), "circumference");
  EXPECT_NE(to_html(working).find("<details>"), std::string::npos);
  EXPECT_EQ(to_html(working, {.fold = false}).find("<details>"), std::string::npos);
  EXPECT_NE(to_html(working, {.fold = false}).find("<details open>"), std::string::npos);
  EXPECT_NE(to_markdown(working).find("<details>"), std::string::npos);
  EXPECT_EQ(to_markdown(working, {.fold = false}).find("<details"), std::string::npos);
  EXPECT_LT(to_text(working, {.fold = true}).size(), to_text(working).size());
  EXPECT_LT(to_latex(working, {.fold = true}).size(), to_latex(working).size());
}

TEST(WorkingText, LetsNoTextFromOutsideActInIt) {
  const Machine machine = hostile_machine();
  const Working working = explain(machine, machine.stock(), "circumference");
  EXPECT_EQ(to_text(working).find('\x1B'), std::string::npos);
  EXPECT_EQ(to_html(working).find("<script"), std::string::npos);
  EXPECT_EQ(to_markdown(working).find("<script"), std::string::npos);
  EXPECT_FALSE(std::regex_search(to_markdown(working), std::regex(R"([^\\]\$x_1)")));
  EXPECT_EQ(to_markdown(working).find("[c]("), std::string::npos);
  EXPECT_EQ(to_latex(working).find("\\input"), std::string::npos);
  EXPECT_NE(to_html(working).find("&lt;script&gt;"), std::string::npos);
}

TEST(WorkingText, KeepsWhatIsFromMemoryMarked) {
  const Machine machine = trail_bike();
  const Working working = explain(machine, machine.stock(), "highest speed", {.gear = 5});
  for (const std::string& text : {to_text(working), to_markdown(working), to_latex(working), to_html(working)}) {
    EXPECT_NE(text.find("How sure: from memory"), std::string::npos);
    EXPECT_NE(text.find("maker"), std::string::npos);  // and the manual that comes first
  }
}

TEST(WorkingText, TellsHowASolvedStepIsProvedAndWhatElseCouldBeChosen) {
  const Machine machine = trail_bike();
  const std::string text = to_text(explain(machine, on_knobs(machine), "centre"));
  EXPECT_TRUE(std::regex_search(text, std::regex(R"(solved so that step \d+, worked out from it, comes to the )"
                                                 R"([\d.]+ of step \d+; it misses by )")))
      << text;
  EXPECT_TRUE(std::regex_search(text, std::regex(R"(chosen: the next even number.*; from step \d+)"))) << text;
}

// Each link more than the shortest even chain's two moves the axle back by half a pitch; 100 mm of adjuster hold five.
TEST(WorkingText, ListsAllThatElseCouldBeChosen) {
  const Machine machine = roomy_trail_bike();
  const layshaft::Setup& stock = machine.stock();
  const int links = shortest_links(ChainLoop(machine.chain(), stock.front(), stock.rear()), machine.adjuster()).count();
  const auto more = [&](int by) { return std::to_string(links + by); };
  const std::string text = to_text(explain(machine, stock, "centre"));
  EXPECT_NE(text.find("; also possible: " + more(2) + "; " + more(4) + "; " + more(6) + "; " + more(8) + "; from step"),
            std::string::npos)
      << text;
}

TEST(WorkingText, SaysInWhichUnitsASolutionOfAQuantityMisses) {
  const Working working = explain_over("centre", one_cause, [](Recorder::Watch watch, Corner) {
    return watch.solved("centre", 750_mm, watch.given("adjuster_way", 250_mm), [&](const auto& centre) {
      return watch.step(formula::adjuster_forward{}, centre, watch.given("centre_min", 500_mm));
    });
  });
  const std::string text = to_text(working);
  EXPECT_NE(text.find("solved so that step 4, worked out from it, comes to the 250 mm of step 1; it misses by 0 in SI "
                      "units\n"),
            std::string::npos)
      << text;
}

TEST(WorkingText, GivesAChangeItsSignUnlessItShowsZero) {
  const auto said = [](double low, double nominal, double high) {
    const Band<double> change{low, nominal, high};
    return sentence(explain_over("change", one_cause, [&](Recorder::Watch watch, Corner at) {
      return watch.given("thrust_change", change.at(at));
    }));
  };
  EXPECT_EQ(said(-0.02, 1e-9, 0.02), "Thrust changes by 0.0 (-2.0 to +2.0) %.");
  EXPECT_EQ(said(-0.02, 0.01, 0.02), "Thrust changes by +1.0 (-2.0 to +2.0) %.");
  EXPECT_EQ(said(-0.02, -0.01, 0.0), "Thrust changes by -1.0 (-2.0 to 0.0) %.");
}

TEST(WorkingText, BeginsASentenceWithACapitalWhereThereIsALetter) {
  for (const auto& [text, capital] :
       {std::pair{"", ""}, {"a b", "A b"}, {"z", "Z"}, {"A b", "A b"}, {"1 a", "1 a"}, {"{a}", "{a}"}})
    EXPECT_EQ(detail::capitalised(text), capital);
}

TEST(WorkingText, SetsTheNumbersOfManyStepsUnderOneAnother) {
  const Working working = explain_over(
      "many", one_cause,
      [](Recorder::Watch watch, Corner) {
        for (int i = 1; i < 1000; ++i) (void)watch.given({"gear_ratio", i}, double(i));
        return watch.given("overall_ratio", 1000.0);
      },
      Told::everything);
  const std::string text = to_text(working, {.fold = true});
  for (const char* line : {"\n  9. ", "\n 10. ", "\n 99. ", "\n100. ", "\n999. ", "\n1000. "})
    EXPECT_NE(text.find(line), std::string::npos) << line;
}

}  // namespace
