// SPDX-License-Identifier: MIT
#include <layshaft/choose/choose.hpp>

#include <chain/swingarm.hpp>
#include <setup/machines.hpp>

#include <gtest/gtest.h>

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace {
using namespace layshaft_test;
using layshaft::detail::Study;
using layshaft::detail::StudyDrive;

/// A trail bike that states all that any measure needs.
MachineParts stated_parts() {
  MachineParts parts = trail_bike_parts();
  parts.adjuster = Adjuster(560_mm, 660_mm, 30_mm);
  parts.engine = EngineCurve({1500_rpm, 6500_rpm, 9100_rpm}, {18_Nm, 25_Nm, 20_Nm});
  parts.body = Body({.mass = 210_kg, .wheelbase = 1420_mm, .centre_ahead = 690_mm, .centre_height = 640_mm});
  parts.road_load = RoadLoad::by_mass(210_kg);
  parts.suspension = swingarm();
  parts.tyre_asked = {.axle_load = 180_kg, .top_speed = 130_kmh, .radius_clearance = 20_mm, .width_clearance = 30_mm};
  return parts;
}
const Space one_pair{.fronts = {{12_teeth}}, .rears = {{47_teeth}}};

std::string choosing_fault(const MachineParts& parts, Measure what) {
  const auto told = try_choose(Machine(parts), one_pair, {{}, {{{what}, Want::more}}});
  return told ? std::string() : std::string(told.error().what());
}

TEST(Study, SaysWhatTheMachineDoesNotState) {
  using Change = std::function<void(MachineParts&)>;
  const auto no_engine = [](MachineParts& p) { p.engine.reset(); };
  const auto no_road = [](MachineParts& p) { p.road_load.reset(); };
  const auto no_body = [](MachineParts& p) { p.body.reset(); };
  const auto road_of_no_mass = [](MachineParts& p) {
    p.road_load = RoadLoad({.constant = 90_N, .quadratic = 0.4_kg_per_m});
  };
  const auto no_mass = [=](MachineParts& p) {
    no_body(p);
    road_of_no_mass(p);
  };
  const auto body_without = [](std::optional<Length> BodyParts::*part) {
    return [=](MachineParts& p) {
      BodyParts body = p.body->parts();
      body.*part = std::nullopt;
      p.body = Body(body);
    };
  };
  const auto unasked = [](auto TyreAsked::*part) { return [=](MachineParts& p) { (p.tyre_asked.*part).reset(); }; };
  struct Case {
    Measure what;
    std::string needs;
    std::vector<Change> without, enough;
  };
  const Case cases[] = {
      {Measure::top_speed, "the machine's engine and road load", {no_engine, no_road}, {no_body, no_mass}},
      {Measure::climb,
       "the machine's engine, road load and mass",
       {no_engine, no_road, no_mass},
       {no_body, road_of_no_mass}},
      {Measure::thrust_over_limit,
       "the machine's engine, road load, and a body with its centre of mass and wheelbase",
       {no_engine, no_road, no_body, body_without(&BodyParts::wheelbase), body_without(&BodyParts::centre_ahead),
        body_without(&BodyParts::centre_height)},
       {road_of_no_mass}},
      {Measure::tight_point_slack,
       "the machine's suspension and the adjuster's slack",
       {[](MachineParts& p) { p.suspension.reset(); }, [](MachineParts& p) { p.adjuster = Adjuster(560_mm, 660_mm); }},
       {}},
      {Measure::chain_safety, "the engine's greatest torque at the crank", {no_engine}, {[=](MachineParts& p) {
         no_engine(p);
         p.peak_torque = {25_Nm, 6500_rpm};
       }}},
      {Measure::load_margin, "tyre_asked with an axle_load", {unasked(&TyreAsked::axle_load)}, {}},
      {Measure::speed_margin, "tyre_asked with a top_speed", {unasked(&TyreAsked::top_speed)}, {}},
      {Measure::radius_margin, "tyre_asked with a radius_clearance", {unasked(&TyreAsked::radius_clearance)}, {}},
      {Measure::width_margin, "tyre_asked with a width_clearance", {unasked(&TyreAsked::width_clearance)}, {}},
  };
  for (const Case& one : cases) {
    const std::string name = "\"" + std::string(to_string(one.what)) + "\"";
    EXPECT_EQ(choosing_fault(stated_parts(), one.what), "") << name;
    for (const Change& change : one.without) {
      MachineParts parts = stated_parts();
      change(parts);
      EXPECT_EQ(choosing_fault(parts, one.what), name + " needs " + one.needs);
    }
    for (const Change& change : one.enough) {
      MachineParts parts = stated_parts();
      change(parts);
      EXPECT_EQ(choosing_fault(parts, one.what), "") << name;
    }
  }
}

/// A study of one measure, and its first drive.
struct OneDrive {
  Study study;
  std::optional<StudyDrive> drive;

  explicit OneDrive(const MachineParts& parts, const Space& space = one_pair)
      : study(Study::make(Machine(parts), space, {{}, {{{Measure::thrust_change}, Want::more}}}).value()) {
    study.each_drive(0, [&](const StudyDrive& found) { drive = found; });
  }
  [[nodiscard]] std::optional<Band<double>> of_both(Measure what) const {
    return study.value({what}, *drive, study.tyres().front());
  }
};

TEST(Study, TellsOfAPartOnlyWhatDependsOnItAlone) {
  const OneDrive one(stated_parts());
  for (const MeasureRow& row : measure_rows) {
    if (row.on != MeasuredOn::drive) {
      EXPECT_FALSE(one.study.value({row.kind}, *one.drive)) << row.name;
    }
    if (row.on != MeasuredOn::tyre) {
      EXPECT_FALSE(one.study.value({row.kind}, one.study.tyres().front())) << row.name;
    }
    if (row.on != MeasuredOn::both) {
      EXPECT_FALSE(one.of_both(row.kind)) << row.name;
    }
  }
}

// 25 N m by 66/21 and 33/12 are 216 N m on twelve teeth, whose pitch circle is 15.875 mm / sin 15 deg = 61.34 mm: 7045
// N, and a few newtons more by the chain's own speed. Of a 520 that states no strength the table has none to count on.
TEST(Study, TellsASafetyWhereTheChainsStrengthIsKnown) {
  Space space = one_pair;
  space.chains = {{.made = {.tensile_strength = 34_kN}}};
  const OneDrive strong(stated_parts(), space);
  const auto safety = strong.study.value({Measure::chain_safety}, *strong.drive);
  ASSERT_TRUE(safety);
  EXPECT_NEAR(safety->nominal, 34000.0 / 7045.0, 0.01);
  EXPECT_EQ(*safety, Band<double>::exactly(safety->nominal));
  const OneDrive unknown(stated_parts());
  EXPECT_FALSE(unknown.study.value({Measure::chain_safety}, *unknown.drive));
}

// What a study was not made for may ask of a machine what it does not state.
TEST(Study, TellsNothingOfWhatTheMachineDoesNotState) {
  const OneDrive bare(trail_bike_parts());
  EXPECT_FALSE(bare.of_both(Measure::top_speed));
  EXPECT_FALSE(bare.study.value({Measure::tight_point_slack}, *bare.drive));
  EXPECT_FALSE(bare.study.value({Measure::chain_safety}, *bare.drive));
  MachineParts parts = stated_parts();
  parts.body = Body({.mass = 210_kg});
  const OneDrive short_of_wheelbase(parts);
  EXPECT_TRUE(short_of_wheelbase.of_both(Measure::climb));
  EXPECT_FALSE(short_of_wheelbase.of_both(Measure::thrust_over_limit));
  parts.body.reset();
  parts.road_load = RoadLoad({.constant = 90_N, .quadratic = 0.4_kg_per_m});
  const OneDrive weightless(parts);
  EXPECT_TRUE(weightless.of_both(Measure::top_speed));
  EXPECT_FALSE(weightless.of_both(Measure::climb));
}

// 10,000 N m by 40/4 and 33/11 are 300 kN m on the front sprocket: more than a chain's loads are told for, so that
// nothing is told that an appraisal has beside them.
TEST(Study, TellsNothingWhereTheDriveItselfCannotBeTold) {
  MachineParts parts = stated_parts();
  parts.engine.reset();
  parts.gearbox = Gearbox({.primary = pair(4, 40), .gears = {pair(11, 33)}, .idle = 1500_rpm, .rev_limit = 9100_rpm});
  parts.peak_torque = {10000_Nm, 6500_rpm};
  const OneDrive too_strong(parts);
  EXPECT_FALSE(too_strong.study.value({Measure::chain_safety}, *too_strong.drive));
  EXPECT_FALSE(too_strong.study.value({Measure::tight_point_slack}, *too_strong.drive));
  EXPECT_TRUE(too_strong.study.value({Measure::wrap}, *too_strong.drive));
  // It is chosen all the same, without a caution, since it cannot be appraised.
  ASSERT_FALSE(try_appraise(Machine(parts), Machine(parts).stock()));
  const Choice choice = choose(Machine(parts), one_pair, {{}, {{{Measure::rear_teeth}, Want::less}}});
  ASSERT_EQ(choice.ranked.size(), 1u);
  EXPECT_TRUE(choice.ranked[0].cautions.empty());
}

TEST(Study, RefusesAMachineWhoseOwnChainDoesNotFit) {
  MachineParts parts = trail_bike_parts();
  parts.adjuster = Adjuster(617_mm, 618_mm);
  const Machine machine(parts);
  const auto alone = try_appraise(machine, machine.stock());
  ASSERT_FALSE(alone);
  const std::string expected = "stock set-up: " + std::string(alone.error().what());
  const Goals goals{{}, {{{Measure::rear_teeth}, Want::less}}};
  EXPECT_EQ(std::string(try_choose(machine, one_pair, goals).error().what()), expected);
  EXPECT_EQ(std::string(Study::make(machine, std::vector<Measured>{{Measure::links}}).error().what()), expected);
}

TEST(Study, TakesUpToAsManyMeasuresAsLimitsAndWishesTogether) {
  std::vector<Measured> measured;
  for (int i = 1; i <= 48; ++i) measured.push_back({Measure::engine_speed, 1, double(i) * 1_kmh});
  EXPECT_TRUE(Study::make(trail_bike(), measured));
  measured.push_back({Measure::links});
  const auto more = Study::make(trail_bike(), measured);
  ASSERT_FALSE(more);
  EXPECT_EQ(std::string(more.error().what()), "number of measures is 49; expected at most 48");
}

/// How many pairs of a space have a chain on a machine, each asked for alone.
std::uint64_t pairs_that_close(const Machine& machine, const Space& space) {
  std::uint64_t pairs = 0;
  for (const SprocketOffer& front : space.fronts)
    for (const SprocketOffer& rear : space.rears)
      pairs += bool(try_shortest_links(ChainLoop(machine.chain(), front.teeth, rear.teeth), machine.adjuster()));
  return pairs;
}

TEST(Study, LooksAtPairsThatCloseAndAtNoOthers) {
  const Goals goals{{}, {{{Measure::rear_teeth}, Want::less}}};
  MachineParts parts = trail_bike_parts();
  const Length stands = appraise(trail_bike(), parts.stock).chain().centre.nominal;
  parts.adjuster = Adjuster(stands - 2_mm, stands + 3_mm, 40_mm);
  const Machine machine(parts);
  Space space{.fronts = {}, .rears = {}};
  for (int teeth = 10; teeth <= 15; ++teeth) space.fronts.push_back({Teeth(teeth)});
  for (int teeth = 40; teeth <= 54; ++teeth) space.rears.push_back({Teeth(teeth)});
  space.rears.push_back({260_teeth});  // its teeth touch those of the front sprocket wherever the axle stands
  const std::uint64_t close = pairs_that_close(machine, space);
  ASSERT_GT(close, 5u);
  ASSERT_LT(close, 80u);
  EXPECT_EQ(choose(machine, space, goals).examined, close);
}

TEST(Study, LooksAtTheLinksThatAreStatedSoldAndFit) {
  const Machine machine = roomy_trail_bike();
  const ChainLoop loop(machine.chain(), 12_teeth, 47_teeth);
  Space space = one_pair;
  for (const int count : {20, 60, 90, 100, 102, 103, 104, 106, 108, 200}) space.links.push_back(Links(count));
  const auto expected = [&](int longest) {
    std::vector<int> counts;
    for (const Links links : space.links) {
      const auto stand = try_fit_links(loop, links, machine.adjuster());
      if (links.count() <= longest && stand && stand->fits) counts.push_back(links.count());
    }
    return counts;
  };
  for (const int longest : {103, 1000}) {
    space.chains = {{.longest = Links(longest)}};
    const Study study = Study::make(machine, space, {{}, {{{Measure::links}, Want::less}}}).value();
    std::vector<int> seen;
    study.each_drive(0, [&](const StudyDrive& drive) { seen.push_back(drive.fit.links.count()); });
    EXPECT_EQ(seen, expected(longest));
  }
  EXPECT_GT(expected(1000).size(), expected(103).size());
  EXPECT_GT(expected(103).size(), 0u);
}

// Half of 90 m over a pitch of 19.05 mm are some 9500 links; over 15.875 mm more than 11,000, which nothing counts.
TEST(Study, SaysWhereNoChainIsLongEnough) {
  MachineParts parts = trail_bike_parts();
  parts.adjuster = Adjuster(90_m, 90.5_m);
  parts.stock = with(parts.stock, [](SetupParts& p) { p.chain = ChainSeries("630"); });
  Space space = one_pair;
  space.chains = {{}};
  const auto told = try_choose(Machine(parts), space, {{}, {{{Measure::rear_teeth}, Want::less}}});
  ASSERT_FALSE(told);
  EXPECT_EQ(std::string(told.error().what()),
            "no chain of the space closes over any of its pairs; over 12/47: no even number of links fits an adjuster "
            "of 90000 mm to 90500 mm with 0 mm of slack on sprockets of 12/47 teeth: it takes more than 10000 links");
}

// A chain is another one by its series, by its make, or by its length; the machine's own series may be stated or not.
TEST(Study, TellsWhatWouldBeBought) {
  const Machine machine = roomy_trail_bike();
  const Links own = appraise(machine, machine.stock()).chain().links;
  const ChainMade stronger{.tensile_strength = 36_kN};
  const Space space{.fronts = {{12_teeth}},
                    .rears = {{47_teeth}},
                    .chains = {{}, {.series = ChainSeries("520")}, {.series = ChainSeries("525")}, {.made = stronger}},
                    .links = {own, Links(own.count() + 2)}};
  const Study study = Study::make(machine, space, {{}, {{{Measure::chain_changed}, Want::less}}}).value();
  int changed = 0, kept = 0;
  for (std::size_t i = 0; i < study.combinations(); ++i)
    study.each_drive(i, [&](const StudyDrive& drive) {
      const bool other =
          drive.chain.series == ChainSeries("525") || drive.chain.made == stronger || drive.fit.links != own;
      EXPECT_EQ(drive.chain_changed, other);
      EXPECT_EQ(study.value({Measure::chain_changed}, drive), Band<double>::exactly(other ? 1.0 : 0.0));
      ++(other ? changed : kept);
    });
  EXPECT_EQ(changed, 6);
  EXPECT_EQ(kept, 2);
}

TEST(Study, TakesAMaterialThatNobodyStatesForThatOfTheOtherPart) {
  constexpr SprocketMaterial steel = SprocketMaterial::steel, light = SprocketMaterial::aluminium_7000;
  const Machine machine = roomy_trail_bike();
  struct Case {
    std::optional<SprocketMaterial> present, offered;
    bool changed;
  };
  for (const Case& one : {Case{{}, {}, false}, Case{steel, {}, false}, Case{{}, steel, false},
                          Case{steel, steel, false}, Case{steel, light, true}}) {
    Space space{.fronts = {{12_teeth, one.offered}, {13_teeth, one.offered}}, .rears = {{47_teeth, one.offered}}};
    space.present = with(machine.stock(), [&](SetupParts& p) { p.front_material = p.rear_material = one.present; });
    const Study study = Study::make(machine, space, {{}, {{{Measure::rear_changed}, Want::less}}}).value();
    std::vector<bool> fronts, rears;
    for (std::size_t i = 0; i < study.combinations(); ++i)
      study.each_drive(i, [&](const StudyDrive& drive) {
        fronts.push_back(drive.front_changed);
        rears.push_back(drive.rear_changed);
      });
    EXPECT_EQ(fronts, (std::vector<bool>{one.changed, true}));
    EXPECT_EQ(rears, (std::vector<bool>{one.changed, one.changed}));
  }
}

// By the table of load indices, 64 is 280 kg and 65 is 290 kg (ISO 4000-1 and the European tyre makers' standards).
TEST(Study, HoldsATyreAgainstWhatTheMachineAsksAsFarAsItIsMarked) {
  const Machine machine(stated_parts());
  Space space = one_pair;
  const Study study = Study::make(machine, space, {{}, {{{Measure::load_margin}, Want::more}}}).value();
  const auto margin = [&](const TyreOffer& offer) { return study.value({Measure::load_margin}, study.tyre(offer)); };
  EXPECT_EQ(margin({.tyre = TyreSize("110/100-18 64M")}), Band<double>::exactly(100.0));
  EXPECT_EQ(margin({.tyre = TyreSize("120/90-18 65M")}), Band<double>::exactly(110.0));
  EXPECT_FALSE(margin({.tyre = TyreSize("4.10-18")}));
  EXPECT_FALSE(margin({.circumference = Band<Length>::exactly(2_m)}));
}

}  // namespace
