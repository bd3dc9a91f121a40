// SPDX-License-Identifier: MIT
#include <layshaft/io/question_json.hpp>

#include <gtest/gtest.h>

#include <string>

namespace {
using namespace layshaft;

constexpr std::string_view question_text = R"({
  "layshaft": 1,
  "space": {
    "fronts": [12, {"teeth": 13, "material": "steel", "price": 20, "labour": 5}],
    "rears": [48],
    "tyres": ["120/80-18", {"tyre": "120/90-18", "tyre_use": "special", "circumference": "2.05 m"}],
    "chains": [{"chain": "520", "longest": 120, "price": {"low": 60, "nominal": 70, "high": 80}}],
    "links": [108, 110],
    "present": {"front": 13, "rear": 48, "tyre": "120/80-18"}
  },
  "goals": {
    "limits": [{"measure": "engine speed", "speed": "90 km/h", "gear": 6, "most": "6900 rpm"}, {"measure": "wear room", "least": 0.02}],
    "wishes": [{"measure": "thrust change", "target": 0.1, "weight": 2}, {"measure": "cost", "want": "less"}]
  }
})";

TEST(QuestionJson, ReadsASpaceAndGoals) {
  const Question question = question_from_json(question_text);
  const Space& space = question.space;
  ASSERT_EQ(space.fronts.size(), 2u);
  EXPECT_EQ(space.fronts[0], SprocketOffer{12_teeth});
  EXPECT_EQ(
      space.fronts[1],
      (SprocketOffer{13_teeth, SprocketMaterial::steel, {Band<double>::exactly(20.0), Band<double>::exactly(5.0)}}));
  ASSERT_EQ(space.tyres.size(), 2u);
  EXPECT_EQ(space.tyres[1].tyre->use(), TyreUse::special);
  EXPECT_EQ(space.tyres[1].circumference, Band<Length>::exactly(2.05_m));
  EXPECT_EQ(space.chains[0].offer.price, (Band<double>{60.0, 70.0, 80.0}));
  EXPECT_EQ(space.links, (std::vector<Links>{108_links, 110_links}));
  EXPECT_EQ(space.present->rear(), 48_teeth);
  const Goals& goals = question.goals;
  EXPECT_EQ(goals.limits[0], (Limit{{Measure::engine_speed, 6, 90_kmh}, {}, 6900_rpm}));
  EXPECT_EQ(goals.limits[1], (Limit{{Measure::wear_room}, Amount::fraction(0.02), {}}));
  EXPECT_EQ(goals.wishes[0], (Wish{{Measure::thrust_change}, Want::target, Amount::fraction(0.1), 2.0}));
  EXPECT_EQ(goals.wishes[1], (Wish{{Measure::cost}, Want::less}));
  EXPECT_FALSE(goals.robust);
}

TEST(QuestionJson, ReadsEveryKindOfAmountInItsUnit) {
  const auto amount = [](Measure measure, const char* text) {
    const boost::json::value value = boost::json::parse(text);
    return detail::read_amount(detail::JsonValue(value, "$"), measure);
  };
  EXPECT_EQ(amount(Measure::axle_room, "\"3 mm\""), Amount(3_mm));
  EXPECT_EQ(amount(Measure::load_margin, "\"20 kg\""), Amount(20_kg));
  EXPECT_EQ(amount(Measure::walking_pace, "\"5 km/h\""), Amount(5_kmh));
  EXPECT_EQ(amount(Measure::engine_speed, "\"6000 rpm\""), Amount(6000_rpm));
  EXPECT_EQ(amount(Measure::climb, "\"20 deg\""), Amount(20_deg));
  EXPECT_EQ(amount(Measure::wear_room, "0.02"), Amount::fraction(0.02));
  EXPECT_EQ(amount(Measure::chain_safety, "8"), Amount::number(8.0));
  for (const auto& [measure, unit] : {std::pair{Measure::axle_room, "\"3 kg\""},
                                      {Measure::load_margin, "20"},
                                      {Measure::walking_pace, "\"5 mm\""},
                                      {Measure::climb, "20"},
                                      {Measure::wear_room, "\"2 mm\""},
                                      {Measure::chain_safety, "\"8\""}})
    EXPECT_THROW((void)amount(measure, unit), Error) << unit;
}

TEST(QuestionJson, ReadsAChainOfWhichLittleIsSaid) {
  const auto chain = [](const char* text) {
    const boost::json::value value = boost::json::parse(text);
    return detail::read_chain_offer(detail::JsonValue(value, "$"));
  };
  EXPECT_EQ(chain("{}"), ChainOffer());
  ChainOffer longest;
  longest.longest = 118_links;
  EXPECT_EQ(chain(R"({"longest": 118})"), longest);
  ChainOffer series;
  series.series = ChainSeries("428");
  EXPECT_EQ(chain(R"({"chain": "428"})"), series);
}

TEST(QuestionJson, NamesThePathOfWhatIsWrong) {
  const auto spoilt = [](std::string_view from, std::string_view to) {
    std::string text(question_text);
    text.replace(text.find(from), from.size(), to);
    const auto question = try_question_from_json(text);
    return question ? std::string("none") : std::string(question.error().what());
  };
  EXPECT_EQ(spoilt("\"rears\": [48]", "\"rears\": [0]").rfind("$.space.rears[0]: ", 0), 0u);
  EXPECT_EQ(spoilt("\"want\": \"less\"", "\"want\": \"fewer\"").rfind("$.goals.wishes[1].want: ", 0), 0u);
  EXPECT_NE(spoilt("wear room", "ware room").find("one of \"thrust change\""), std::string::npos);
  EXPECT_NE(spoilt("\"6900 rpm\"", "6900").find("$.goals.limits[0].most: expected a text with a unit"),
            std::string::npos);
  EXPECT_NE(spoilt("\"labour\": 5", "\"labor\": 5").find("unknown key \"labor\""), std::string::npos);
  EXPECT_NE(spoilt("\"price\": 20", "\"price\": -20").find("price is -20"), std::string::npos);
}

}  // namespace
