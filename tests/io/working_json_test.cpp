// SPDX-License-Identifier: MIT
#include "setup/machines.hpp"

#include <layshaft/core/recorder.hpp>
#include <layshaft/explain.hpp>
#include <layshaft/io/working_json.hpp>

#include <gtest/gtest.h>

#include <set>
#include <string>

namespace {
using namespace layshaft;
using layshaft_test::with;

boost::json::object read(const Working& working) { return detail::parse_json(to_json(working)).get_object(); }
double number(const boost::json::value& value) { return value.to_number<double>(); }
std::string text(const boost::json::value& value) { return std::string(value.as_string()); }

/// Every number that can be explained of a machine and of a comparison.
std::vector<Working> workings() {
  std::vector<Working> list;
  const Machine machine = layshaft_test::trail_bike();
  const auto worn = with(machine.stock(), [](SetupParts& parts) {
    parts.rear = 49_teeth;
    parts.tyre = TyreSize("120/90-18", TyreUse::special);
    parts.tread_worn = 3_mm;
    parts.drive_efficiency = Band<double>{0.93, 0.95, 0.97};
  });
  const auto base =
      with(machine.stock(), [](SetupParts& parts) { parts.drive_efficiency = Band<double>::exactly(0.96); });
  MachineParts parts = machine.parts();
  parts.engine = EngineCurve({2500_rpm, 6500_rpm, 9100_rpm}, {16_Nm, 22_Nm, 15_Nm});
  parts.road_load = RoadLoad::by_mass(215_kg);
  const Machine driven(parts);
  for (const auto& one : detail::explained_of_setup)
    list.push_back(explain(driven, worn, one.what, {.gear = 5, .engine_speed = 5000_rpm, .speed = 80_kmh}));
  const Comparison comparison = compare(machine, base, worn);
  for (const auto& one : detail::explained_of_comparison) list.push_back(comparison.explain(one.what));
  const ChainLoop loop(ChainSeries("520"), 13_teeth, 49_teeth);
  for (const auto& one : detail::explained_of_loop) list.push_back(loop.explain(one.what, {610_mm, 108.0}));
  for (const auto& one : detail::explained_of_sprocket)
    list.push_back(Sprocket(ChainSeries("520"), 13_teeth).explain(one.what));
  for (const auto& one : detail::explained_of_tyre) list.push_back("110/90-18"_tyre.explain(one.what));
  return list;
}

TEST(WorkingJson, IsWrittenForPeopleToo) {
  const std::string start = R"({
  "layshaft": 1,
  "title": "overall diameter of 110/90-18",
  "result": 5,
  "steps": [
    {
      "name": "rim diameter",
      "word": "rim_diameter",
      "symbol": "d_r",
      "kind": "looked up",
      "unit": "m",
      "result": {"low": 0.457, "nominal": 0.457, "high": 0.457},
      "source": {
        "document": "nominal rim diameters of ISO 5751 and its sister standards",
        "certainty": "from memory"
      })";
  EXPECT_EQ(to_json("110/90-18"_tyre.explain("overall diameter")).substr(0, start.size()), start);
}

TEST(WorkingJson, SaysOfEveryStepWhatTheStepSays) {
  std::set<std::string> kinds;
  for (const Working& working : workings()) {
    const auto object = read(working);
    EXPECT_EQ(object.at("layshaft").as_int64(), 1);
    EXPECT_EQ(text(object.at("title")), working.title());
    EXPECT_EQ(object.at("result").to_number<std::size_t>(), working.result_place());
    const auto& steps = object.at("steps").as_array();
    ASSERT_EQ(steps.size(), working.steps().size());
    for (std::size_t i = 0; i < steps.size(); ++i) {
      const auto& one = steps[i].as_object();
      const Step& step = working.steps()[i];
      SCOPED_TRACE(working.title() + ": " + step.name());
      kinds.insert(text(one.at("kind")));
      EXPECT_EQ(text(one.at("name")), step.name());
      EXPECT_EQ(text(one.at("word")), step.identity().name.word);
      EXPECT_EQ(text(one.at("symbol")), symbol_of(step).text);
      EXPECT_EQ(text(one.at("kind")), to_string(step.kind()));
      EXPECT_EQ(text(one.at("certainty")), to_string(step.certainty()));
      EXPECT_EQ(text(one.at("source").at("document")), step.source().document);
      for (const auto& [name, corner] :
           {std::pair{"low", Corner::low}, {"nominal", Corner::nominal}, {"high", Corner::high}}) {
        const auto& there = one.at("result").at(name);
        EXPECT_EQ(there.is_null(), !step.run(corner));
        if (!there.is_null()) {
          EXPECT_EQ(number(there), step.run(corner)->result.value);  // to the bit
        }
      }
      EXPECT_EQ(one.contains("formula"), step.formula() != nullptr);
      if (step.formula()) {
        EXPECT_EQ(text(one.at("formula").at("name")), step.formula()->name);
        EXPECT_EQ(text(one.at("formula").at("parameters")), step.formula()->parameters);
        EXPECT_EQ(text(one.at("formula").at("body")), step.formula()->body);
      }
      ASSERT_EQ(one.at("from_steps").as_array().size(), step.from_steps().size());
      for (std::size_t k = 0; k < step.from_steps().size(); ++k) {
        EXPECT_EQ(one.at("from_steps").at(k).as_int64(), step.from_steps()[k]);
        EXPECT_LT(step.from_steps()[k], static_cast<int>(i));  // what fed it stands before it
      }
      EXPECT_EQ(one.contains("detail"), !step.detail().empty());
      EXPECT_EQ(one.contains("others"), step.kind() == StepKind::chosen);
      EXPECT_EQ(one.contains("residual"), step.kind() == StepKind::solved);
      if (step.kind() == StepKind::chosen) {
        ASSERT_EQ(one.at("others").as_array().size(), step.run().others.size());
        for (std::size_t k = 0; k < step.run().others.size(); ++k)
          EXPECT_EQ(number(one.at("others").at(k)), step.run().others[k].value);
      }
      if (step.kind() == StepKind::solved) {
        EXPECT_EQ(number(one.at("residual")), step.run().residual);
        EXPECT_EQ(one.at("reached").as_int64(), step.run().reached);
        EXPECT_GT(step.run().reached, static_cast<int>(i));  // the proof stands behind
      }
    }
  }
  EXPECT_EQ(kinds, (std::set<std::string>{"given", "computed", "looked up", "solved", "chosen"}));
}

TEST(WorkingJson, HasAScopeAndAnIndexOnlyWhereThereAreSeveral) {
  const Machine machine = layshaft_test::trail_bike();
  const auto in_gear = read(explain(machine, machine.stock(), "overall ratio", {.gear = 3})).at("steps");
  int indexed = 0;
  for (const auto& one : in_gear.as_array()) {
    EXPECT_FALSE(one.as_object().contains("scope"));
    if (one.as_object().contains("index")) ++indexed;
    if (text(one.at("word")) == "gear") {
      EXPECT_EQ(one.at("index").as_int64(), 3);
    }
  }
  EXPECT_EQ(indexed, 3);  // the pair of gears, and their ratio
  std::set<std::string> scopes;
  for (const Working& working : {compare(machine, machine.stock(), machine.stock()).explain("speed"),
                                 explain(machine, machine.stock(), "wear room")}) {
    const auto object = read(working);  // bound, for its steps to outlive the loop
    for (const auto& one : object.at("steps").as_array())
      if (one.as_object().contains("scope")) scopes.insert(text(one.at("scope")));
  }
  EXPECT_EQ(scopes, (std::set<std::string>{"base", "trial", "front end", "rear end"}));
}

TEST(WorkingJson, NamesTheSiUnitOfEveryKind) {
  const auto unit = [](auto value) { return detail::si_unit(Amount(value).dimension); };
  EXPECT_EQ(unit(1.0_m), "m");
  EXPECT_EQ(unit(1.0_m * 1.0_m), "m2");
  EXPECT_EQ(unit(1.0_kg), "kg");
  EXPECT_EQ(unit(1.0_s), "s");
  EXPECT_EQ(unit(1.0_kmh), "m/s");
  EXPECT_EQ(unit(Acceleration()), "m/s2");
  EXPECT_EQ(unit(Force()), "N");
  EXPECT_EQ(unit(Torque()), "Nm");
  EXPECT_EQ(unit(Power()), "W");
  EXPECT_EQ(unit(Energy()), "J");
  EXPECT_EQ(unit(Pressure()), "Pa");
  EXPECT_EQ(unit(Density()), "kg/m3");
  EXPECT_EQ(unit(LinearDensity()), "kg/m");
  EXPECT_EQ(unit(ForcePerSpeed()), "N s/m");
  EXPECT_EQ(unit(Angle()), "rad");
  EXPECT_EQ(unit(AngularSpeed()), "rad/s");
  EXPECT_EQ(unit(MomentOfInertia()), "kg m2");
  EXPECT_EQ(unit(Temperature()), "K");
  EXPECT_EQ(unit(14_teeth), "teeth");
  EXPECT_EQ(unit(108_links), "links");
  EXPECT_EQ(unit(Amount::number(2.0)), "1");
  EXPECT_EQ(unit(Amount::fraction(0.1)), "1");
  EXPECT_EQ(detail::si_unit(Dimension::none), "1");
  EXPECT_EQ(detail::si_unit(static_cast<Dimension>(99)), "1");  // of no dimension that there is
}

TEST(WorkingJson, HasNoWordForNoScope) {
  EXPECT_EQ(detail::word_of(Scope::none), "");
  EXPECT_EQ(detail::word_of(static_cast<Scope>(99)), "");
  EXPECT_EQ(detail::word_of(Scope::trial), "trial");
}

TEST(WorkingJson, TellsARunThatDidWithoutAStep) {
  const auto object = read(Sprocket(ChainSeries("520"), 13_teeth).explain("tip diameter"));
  bool without = false;
  for (const auto& one : object.at("steps").as_array()) {
    if (text(one.at("word")) != "tip_diameter_least") continue;
    without = true;
    EXPECT_TRUE(one.at("result").at("low").is_null());
    EXPECT_FALSE(one.at("result").at("nominal").is_null());
    EXPECT_TRUE(one.at("result").at("high").is_null());
  }
  EXPECT_TRUE(without);
}

TEST(WorkingJson, KeepsATitleThatATextFromOutsideIsPartOf) {
  MachineParts parts = layshaft_test::trail_bike_parts();
  parts.name = "\"</script>\\ Wühlmaus 🛵";
  const Machine machine(parts);
  EXPECT_EQ(text(read(explain(machine, machine.stock(), "links")).at("title")), "links, " + parts.name);
}

TEST(WorkingJson, NamesAValueInPlaceOfTheSymbolThatNoGlossaryHas) {
  Recorder recorder;
  static_cast<void>(recorder.watch().given("word_of_nobody", 2.0));
  const Recording recording{recorder.steps(), 0};
  const auto object = read(Working("", recording, recording, recording));
  EXPECT_EQ(text(object.at("steps").at(0).at("symbol")), "word of nobody");
  EXPECT_EQ(text(object.at("steps").at(0).at("name")), "word of nobody");
}

}  // namespace
