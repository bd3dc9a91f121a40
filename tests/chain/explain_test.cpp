// SPDX-License-Identifier: MIT
#include <layshaft/chain/explain.hpp>

#include <gtest/gtest.h>
#include <chain/swingarm.hpp>
#include <core/workings.hpp>
#include <reference/chain_examples.hpp>
#include <setup/plain_numbers.hpp>

#include <array>
#include <cmath>
#include <limits>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace {
using namespace layshaft;
using layshaft_test::expect_no_idle_step;
using layshaft_test::expect_sound;
using layshaft_test::names_of;
using layshaft_test::plain_number;
using layshaft_test::PlainNumber;
using layshaft_test::printed_first;
using layshaft_test::step_named;
using layshaft_test::swingarm;
using Names = std::vector<std::string>;

const ChainSeries of_520("520");

double mm(const Step& step) { return step.result().value / units::mm.value(); }
double value(const Working& working, std::string_view step) { return step_named(working, step).result().value; }

void expect_equal(const Working& working, const PlainNumber& plain) {
  for (const Corner corner : corners)
    EXPECT_EQ(working.result().result(corner), plain.at(corner)) << working.title() << ", " << int(corner);
}

// ---- every name, against the plain function ----

TEST(ChainLoop, ExplainsEachOfItsNumbersToTheBit) {
  for (const std::string_view name : {"520", "08B", "cycle", "72B"})
    for (const auto& [front, rear] :
         {std::pair{13_teeth, 48_teeth}, {4_teeth, 4_teeth}, {43_teeth, 14_teeth}, {4_teeth, 1000_teeth}}) {
      const ChainLoop loop(ChainSeries(name), front, rear);
      for (const double further : {0.0, 0.001, 0.4, 3.0}) {
        const Length centre = loop.smallest_centre() * (1.0 + further);
        for (const LoopQuestion& at :
             {LoopQuestion{.centre = centre, .links = loop.links(centre)},
              LoopQuestion{.centre = centre, .links = std::ceil(loop.links(centre) - whole_link_tolerance)}})
          for (const auto& one : layshaft::detail::explained_of_loop) {
            const Working working = loop.explain(one.what, at);
            expect_sound(working);
            expect_no_idle_step(working);
            expect_equal(working, *plain_number(loop, one.what, at));
            EXPECT_TRUE(working.result().exact());  // nothing of a loop is uncertain but where it is used
          }
      }
    }
}

TEST(Sprocket, ExplainsEachOfItsDiametersToTheBit) {
  for (const std::string_view name : chain_series_names())
    for (const int teeth : {Teeth::least, 13, 42, Teeth::greatest})
      for (const auto& one : layshaft::detail::explained_of_sprocket) {
        const Sprocket sprocket{ChainSeries(name), Teeth(teeth)};
        const Working working = sprocket.explain(one.what);
        expect_sound(working);
        expect_no_idle_step(working);
        expect_equal(working, plain_number(sprocket, one.what));
      }
}

TEST(AnsiToothForm, ExplainsEachOfItsNumbersToTheBit) {
  for (const std::string_view name : {"40", "520", "cycle", "72B"})
    for (const int teeth : {Teeth::least, 13, 42, Teeth::greatest})
      for (const auto& one : layshaft::detail::explained_of_ansi_tooth_form) {
        const AnsiToothForm form{Sprocket(ChainSeries(name), Teeth(teeth))};
        const Working working = form.explain(one.what);
        expect_sound(working);
        expect_no_idle_step(working);
        expect_equal(working, plain_number(form, one.what));
      }
  EXPECT_THROW((void)AnsiToothForm(Sprocket(of_520, 13_teeth)).explain("tooth"), ParseError);
}

TEST(Interchange, ExplainsEachOfItsNumbersToTheBit) {
  for (const ChainSeries chain : all_chain_series())
    for (const std::string_view cut_for : {"520", "08B", "cycle", "72B"})
      for (const auto& one : layshaft::detail::explained_of_interchange) {
        const Interchange pair{chain, ChainSeries(cut_for)};
        const Working working = pair.explain(one.what);
        expect_sound(working);
        expect_no_idle_step(working);
        expect_equal(working, plain_number(pair, one.what));
      }
  const auto unknown = Interchange(of_520, of_520).try_explain("fit");
  ASSERT_FALSE(unknown);
  EXPECT_EQ(unknown.error().expected(), "one of \"tooth width\", \"side play\"");
}

// ---- what the steps are ----

TEST(Sprocket, StartsFromTheChainAndIsAsSureAsWhatItIsMadeOf) {
  EXPECT_EQ(to_string(Sprocket(of_520, 13_teeth).explain("pitch diameter").result().certainty()), "secondary");
  EXPECT_EQ(to_string(Sprocket(ChainSeries("12B"), 13_teeth).explain("flank radius").result().certainty()),
            "published");
  for (const char* what : {"tooth width", "seating angle"})
    EXPECT_EQ(to_string(Sprocket(ChainSeries("12B"), 13_teeth).explain(what).result().certainty()), "from memory");
  EXPECT_EQ(names_of(Sprocket(of_520, 13_teeth).explain("over pins")),
            (Names{"pitch", "teeth", "pitch diameter", "measuring pin", "over pins"}));
  EXPECT_EQ(names_of(Sprocket(of_520, 13_teeth).explain("tooth width")),
            (Names{"inner width", "tooth width greatest", "width tolerance", "tooth width"}));
}

TEST(ChainLoop, ExplainsItsLinksStepByStep) {
  const ChainLoop loop(of_520, 13_teeth, 48_teeth);
  const Working working = loop.explain("links", {.centre = 612_mm});
  EXPECT_EQ(names_of(working), (Names{"centre", "pitch", "front", "rear", "front pitch diameter", "rear pitch diameter",
                                      "run angle", "loop links"}));
  EXPECT_EQ(working.steps()[0].kind(), StepKind::given);
  EXPECT_EQ(working.steps()[0].result(), Amount(612_mm));
  EXPECT_EQ(working.steps()[1].kind(), StepKind::looked_up);
  EXPECT_EQ(working.steps()[1].detail(), "520");
  EXPECT_EQ(working.steps()[1].source(), of_520.source(ChainProperty::pitch));
  EXPECT_EQ(working.steps()[1].result(), Amount(15.875_mm));
  EXPECT_EQ(working.steps()[2].result(), Amount(13_teeth));
  EXPECT_EQ(working.steps()[4].formula(), &formula::pitch_diameter::about);
  EXPECT_EQ(working.steps()[4].from_steps(), (std::vector<int>{1, 2}));
  EXPECT_EQ(working.steps()[5].from_steps(), (std::vector<int>{1, 3}));
  EXPECT_EQ(working.result().formula(), &formula::loop_links::about);
  EXPECT_EQ(working.result().from_steps(), (std::vector<int>{1, 2, 3, 0, 6}));
  EXPECT_EQ(working.result().source(), sources::geometry);
  EXPECT_EQ(working.result().certainty(), Certainty::secondary);  // as the charts that the pitch is from
}

TEST(ChainLoop, ProvesTheCentreThatItSolvedFor) {
  const ChainLoop loop(of_520, 13_teeth, 48_teeth);
  const Working working = loop.explain("centre", {.links = 110.0});
  EXPECT_EQ(names_of(working), (Names{"links", "pitch", "front", "rear", "front pitch diameter", "rear pitch diameter",
                                      "centre", "run angle", "loop links"}));
  const Step& centre = working.result();
  EXPECT_EQ(centre.name(), "centre");
  EXPECT_EQ(centre.kind(), StepKind::solved);
  EXPECT_EQ(centre.from_steps(), (std::vector<int>{0}));
  EXPECT_EQ(centre.run().reached, 8);
  EXPECT_EQ(centre.formula(), &formula::loop_links::about);
  EXPECT_EQ(centre.run().residual, loop.links(loop.centre(110_links)) - 110.0);
  EXPECT_LT(std::fabs(centre.run().residual), 1e-12);
  EXPECT_EQ(to_string(centre.certainty()), "secondary");  // the pitch of a 520 is, and it stands in the equation
}

TEST(Sprocket, ExplainsTheTipDiameterAsTheMeanOfItsEnds) {
  const Working working = Sprocket(of_520, 13_teeth).explain("tip diameter");
  EXPECT_EQ(names_of(working), (Names{"pitch", "teeth", "pitch diameter", "roller diameter", "tip diameter least",
                                      "tip diameter greatest", "tip diameter"}));
  const Step& tip = working.result();
  EXPECT_EQ(tip.run(Corner::low)->formula, &formula::tip_diameter_least::about);
  EXPECT_EQ(tip.run(Corner::nominal)->formula, &formula::tip_diameter::about);
  EXPECT_EQ(tip.run(Corner::high)->formula, &formula::tip_diameter_greatest::about);
  EXPECT_EQ(tip.result(Corner::low), step_named(working, "tip diameter least").result());
  EXPECT_EQ(tip.result(Corner::high), step_named(working, "tip diameter greatest").result());
  EXPECT_FALSE(step_named(working, "tip diameter least").run(Corner::low));  // there it is the result itself
}

// ---- what cannot be explained ----

TEST(ChainLoop, ListsTheNamesItCanExplain) {
  const auto unknown = ChainLoop(of_520, 13_teeth, 48_teeth).try_explain("slack", {.centre = 612_mm});
  ASSERT_FALSE(unknown);
  EXPECT_EQ(unknown.error().kind(), ErrorKind::parse);
  for (const auto& one : layshaft::detail::explained_of_loop)
    EXPECT_NE(unknown.error().expected().find("\"" + std::string(one.what) + "\""), std::string::npos) << one.what;
  EXPECT_THROW((void)ChainLoop(of_520, 13_teeth, 48_teeth).explain("slack", {}), ParseError);
  const auto of_sprocket = Sprocket(of_520, 13_teeth).try_explain("diameter");
  ASSERT_FALSE(of_sprocket);
  EXPECT_EQ(of_sprocket.error().expected(),
            "one of \"pitch diameter\", \"root diameter\", \"tip diameter\", \"ansi outside diameter\", "
            "\"over pins\", \"tooth width\", \"seating radius\", \"seating angle\", \"flank radius\", "
            "\"tooth side relief\"");
  EXPECT_THROW((void)Sprocket(of_520, 13_teeth).explain("diameter"), ParseError);
}

TEST(ChainLoop, SaysWhatTheNumberDependsOn) {
  const ChainLoop loop(of_520, 13_teeth, 48_teeth);
  for (const char* what : {"links", "links approximate", "run length", "wrap front", "wrap rear"}) {
    const auto open = loop.try_explain(what, {.links = 110.0});
    ASSERT_FALSE(open) << what;
    EXPECT_EQ(open.error().kind(), ErrorKind::value);
    EXPECT_EQ(std::string(open.error().what()),
              "to explain the " + std::string(what) + ", say the centre distance as well");
  }
  for (const char* what : {"centre", "centre approximate"}) {
    const auto open = loop.try_explain(what, {.centre = 612_mm});
    ASSERT_FALSE(open) << what;
    EXPECT_EQ(std::string(open.error().what()),
              "to explain the " + std::string(what) + ", say the number of links as well");
  }
  EXPECT_TRUE(loop.try_explain("smallest_centre", {}));
}

TEST(ChainLoop, HandsTheErrorOfTheNumberItselfThrough) {
  const ChainLoop loop(of_520, 13_teeth, 48_teeth);
  using Limits = std::numeric_limits<double>;
  for (const double bad : {0.0, -0.6, 0.1, Limits::quiet_NaN(), Limits::infinity(), 1e300})
    for (const char* what : {"links", "links approximate", "run length", "wrap front", "wrap rear"}) {
      const Length centre = Length::from_value(bad);
      const auto working = loop.try_explain(what, {.centre = centre});
      ASSERT_FALSE(working) << what << " " << bad;
      EXPECT_EQ(working.error().kind(), ErrorKind::range);
      EXPECT_STREQ(working.error().what(), loop.try_links(centre).error().what());
    }
  for (const double bad : {0.0, -110.0, 40.0, Limits::quiet_NaN(), Limits::infinity(), 10001.0})
    for (const char* what : {"centre", "centre approximate"}) {
      const auto working = loop.try_explain(what, {.links = bad});
      ASSERT_FALSE(working) << what << " " << bad;
      EXPECT_STREQ(working.error().what(), loop.try_centre(bad).error().what());
    }
  EXPECT_THROW((void)loop.explain("links", {.centre = 100_mm}), RangeError);
}

// ---- textbooks, step by step ----

// Source: Bhandari, Design of Machine Elements, ch. 14, Ex. 14.3, 14.4 and 14.6 (chain_worked_examples.csv): the links
// by the handbook's formula, the next whole number, and the centre distance that it makes. Printed to six decimals.
TEST(TextbookWorking, OfLinksAndCentreIsBhandaris) {
  struct Case {
    std::string_view links_id, centre_id;
    ChainSeries series;
    Teeth front, rear;
    Length centre;
    double sag;  // the book's factor on the centre distance
  };
  for (const Case& c : {
           Case{"B14.3a", "B14.3b", ChainSeries("08B"), 21_teeth, 63_teeth, 500.0_mm, 1.0},
           Case{"B14.4c", "B14.4d", ChainSeries("12B"), 17_teeth, 34_teeth, 40.0 * 19.05_mm, 1.0 - 0.002},
           Case{"B14.6b", "B14.6c", ChainSeries("12B"), 21_teeth, 80_teeth, 40.0 * 19.05_mm, 1.0},
           Case{"B14.6d", "B14.6e", ChainSeries("08B"), 25_teeth, 96_teeth, 30.0 * 12.7_mm, 1.0},
       }) {
    SCOPED_TRACE(c.links_id);
    const ChainLoop loop(c.series, c.front, c.rear);
    const Working links = loop.explain("links approximate", {.centre = c.centre});
    EXPECT_EQ(step_named(links, "pitch").result(), Amount(c.series.pitch()));
    EXPECT_EQ(step_named(links, "front").result(), Amount(c.front));
    EXPECT_EQ(step_named(links, "rear").result(), Amount(c.rear));
    EXPECT_EQ(step_named(links, "centre").result(), Amount(c.centre));
    EXPECT_NEAR(links.result().result().value, printed_first(c.links_id), 0.5e-6);
    EXPECT_EQ(links.result().source().document, "Bhandari, Design of Machine Elements, ch. 14");
    const Links whole = round_links(links.result().result().value, LinkRounding::nearest_even);
    EXPECT_NE(layshaft_test::chain_example(c.links_id).at("printed").find("-> " + std::to_string(whole.count())),
              std::string::npos);
    const Working centre = loop.explain("centre approximate", {.links = double(whole.count())});
    EXPECT_EQ(value(centre, "links"), whole.count());
    EXPECT_NEAR(c.sag * mm(centre.result()), printed_first(c.centre_id), 0.5e-6);
  }
}

// Source: Bhandari, Ex. 14.4 and 14.6: the pitch diameters of 17, 34 and 80 teeth at 19.05 mm stand in the working of
// the links as well.
TEST(TextbookWorking, OfPitchDiametersIsBhandaris) {
  const Working links = ChainLoop(ChainSeries("12B"), 17_teeth, 34_teeth).explain("links", {.centre = 40.0 * 19.05_mm});
  EXPECT_NEAR(mm(step_named(links, "front pitch diameter")), printed_first("B14.4a"), 0.5e-6);
  EXPECT_NEAR(mm(step_named(links, "rear pitch diameter")), printed_first("B14.4b"), 0.5e-6);
  EXPECT_NEAR(mm(Sprocket(ChainSeries("12B"), 80_teeth).explain("pitch diameter").result()), printed_first("B14.6a"),
              0.5e-6);
}

// Source: Bhandari, Ex. 14.5, 12B of 17 teeth: the standard's two tip diameters, 108.861 and 115.416 mm, and the mean
// that the book takes.
TEST(TextbookWorking, OfATipDiameterIsBhandaris) {
  const Working working = Sprocket(ChainSeries("12B"), 17_teeth).explain("tip diameter");
  EXPECT_EQ(layshaft_test::chain_example("B14.5a").at("note"), "da_max=115.416, da_min=108.861");
  EXPECT_NEAR(mm(step_named(working, "pitch diameter")), printed_first("B14.4a"), 0.5e-6);
  EXPECT_EQ(step_named(working, "roller diameter").result(), Amount(12.07_mm));
  EXPECT_NEAR(mm(step_named(working, "tip diameter least")), 108.861, 0.5e-3);
  EXPECT_NEAR(mm(step_named(working, "tip diameter greatest")), 115.416, 0.5e-3);
  EXPECT_NEAR(mm(working.result()), printed_first("B14.5a"), 0.5e-6);
}

// Source: Wentzell, Machine Design, Ex. 14-4, p. 321: 12 and 24 teeth of half an inch at 10 inches take 29.09 inches.
TEST(TextbookWorking, OfALengthIsWentzells) {
  const Working working =
      ChainLoop(ChainSeries("08A"), 12_teeth, 24_teeth).explain("links approximate", {.centre = 10.0_inch});
  EXPECT_DOUBLE_EQ(mm(step_named(working, "pitch")) / 25.4, 0.5);
  EXPECT_NEAR(working.result().result().value * 0.5, printed_first("W14-4c"), 0.005);
}

// Source: ANSI tooth-form worksheet, pitch 1 inch, 28 teeth (chain_worked_examples.csv, A1).
TEST(TextbookWorking, OfAPitchDiameterIsAnAnsiWorksheets) {
  const Working working = Sprocket(ChainSeries("16A"), 28_teeth).explain("pitch diameter");
  EXPECT_NEAR(mm(step_named(working, "pitch diameter")) / 25.4, printed_first("A1"), 0.5e-4);
}

TEST(ChainLoads, SayWhichFigureIsStatedAndWhichIsAssumed) {
  const ChainLoop loop(of_520, 15_teeth, 45_teeth);
  const ChainDuty duty{.torque = 50_Nm, .shaft_speed = 1000_rpm};
  const auto source = [&](const ChainMade& made, std::string_view step) {
    return step_named(explain_chain_loads(loop, duty, made, "efficiency"), step).source();
  };
  const Source stated{"stated for this chain", Certainty::stated};
  ChainMade made{.pin_diameter = 5.08_mm};
  EXPECT_EQ(source(made, "joint friction"), joint_friction_source);
  EXPECT_EQ(source(made, "seal drag"), seal_drag_source);
  EXPECT_EQ(source(made, "pin diameter"), stated);
  made.joint_friction = Band<double>::exactly(0.1);
  EXPECT_EQ(source(made, "joint friction"), stated);
  EXPECT_EQ(source(made, "seal drag"), seal_drag_source);
  made.joint_friction.reset();
  made.seal_drag = Band<Torque>::exactly(0.01_Nm);
  EXPECT_EQ(source(made, "joint friction"), joint_friction_source);
  EXPECT_EQ(source(made, "seal drag"), stated);
}

// A chain of 110 links with 12 mm of slack at rest is stretched at the tight point
// (tests/chain/slack_through_travel_test).
TEST(SlackThroughTravel, ExplainsNoSlackWhereTheChainIsStretched) {
  const ChainLoop loop(of_520, 16_teeth, 43_teeth);
  const SlackThroughTravel travel = slack_through_travel(swingarm(), loop, 110.0, {.slack = 12_mm});
  const Angle tightest = swingarm().tightest();
  const auto slack = travel.try_explain("slack", tightest);
  ASSERT_FALSE(slack);
  EXPECT_EQ(slack.error().kind(), ErrorKind::value);
  EXPECT_TRUE(std::string(slack.error().what()).starts_with("the chain is stretched at this angle"))
      << slack.error().what();
  EXPECT_EQ(travel.explain("spare length", tightest).result().result(), Amount(travel.tight_point().spare_length));
  EXPECT_EQ(travel.explain("slack", swingarm().rest()).result().result(), Amount(travel.rest().slack));
  const auto outside = travel.try_explain("slack", 19_deg);  // it droops to 18 degrees
  ASSERT_FALSE(outside);
  EXPECT_EQ(outside.error().kind(), ErrorKind::range);
}

TEST(ChainLoads, SayWhatOfTheChainIsNotKnown) {
  const ChainLoop loop(ChainSeries("219"), 15_teeth, 45_teeth);
  ASSERT_FALSE(loop.series().tensile_strength());
  const ChainDuty duty{.torque = 50_Nm, .shaft_speed = 1000_rpm};
  const auto safety = try_explain_chain_loads(loop, duty, {}, "safety");
  ASSERT_FALSE(safety);
  EXPECT_STREQ(safety.error().what(), "to explain the safety, say the chain's tensile strength as well");
  EXPECT_TRUE(try_explain_chain_loads(loop, duty, {.tensile_strength = 8_kN}, "safety"));
  const auto idle = try_explain_chain_loads(loop, {.torque = 0_Nm, .shaft_speed = 1000_rpm}, {}, "pull");
  ASSERT_FALSE(idle);
  EXPECT_EQ(idle.error().kind(), ErrorKind::range);
  EXPECT_TRUE(std::string(idle.error().what()).starts_with("torque")) << idle.error().what();
}

// Links end at 10000, so that only two longer chains are left to tell of where the adjuster would take many.
TEST(ChosenLinks, TellOfNoChainOfMoreLinksThanThereAre) {
  const ChainLoop loop(of_520, 13_teeth, 13_teeth);
  const Adjuster adjuster(loop.centre(9995.0), 100_m);
  EXPECT_EQ(shortest_links(loop, adjuster), 9996_links);
  const Working working = explain_over("links", one_cause, [&](Recorder::Watch watch, Corner) {
    return layshaft::detail::chosen_links(watch, loop, loop.drive(watch), adjuster, 9996_links);
  });
  EXPECT_EQ(working.result().run().others, (std::vector<Amount>{9998_links, 10000_links}));
}

}  // namespace
