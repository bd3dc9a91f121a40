// SPDX-License-Identifier: MIT
#include <layshaft/io/road_json.hpp>

#include <gtest/gtest.h>

#include <string>

namespace {
using namespace layshaft;

template <class Read>
std::string refusal_of_part(const char* text, Read read) {
  const boost::json::value value = boost::json::parse(text);
  try {
    static_cast<void>(read(detail::JsonValue(value, "$.part")));
  } catch (const Error& error) {
    return error.what();
  }
  return "";
}
std::string of_engine(const char* text) { return refusal_of_part(text, detail::read_engine); }
std::string of_road(const char* text) { return refusal_of_part(text, detail::read_road_load); }

TEST(RoadJson, ReadsWhatPeopleWrite) {
  const auto engine = [](const char* text) {
    const boost::json::value value = boost::json::parse(text);
    return detail::read_engine(detail::JsonValue(value, "$"));
  };
  EXPECT_EQ(engine(R"({"curve": {"speeds": ["2500 rpm", "9000 rpm"], "torques": ["20 Nm", "17 Nm"],
                                 "measured_at": "rear wheel"}})"),
            Engine(EngineCurve({2500_rpm, 9000_rpm}, {20_Nm, 17_Nm}, EngineOrigin{MeasuredAt::rear_wheel})));
  EXPECT_EQ(engine(R"({"curve": {"estimate": {"torque": "24 Nm", "torque_speed": "6000 rpm", "power": "19 kW",
                       "power_speed": "8500 rpm", "lowest": "2000 rpm", "highest": "9100 rpm"}}})"),
            Engine(estimate_engine({24_Nm, 6000_rpm, 19_kW, 8500_rpm, 2000_rpm, 9100_rpm})));
}

TEST(RoadJson, SaysWhereAnEngineIsWrong) {
  EXPECT_EQ(of_engine("{}"), "$.part: missing key \"curve\"");
  EXPECT_TRUE(of_engine(R"({"curve": {"speeds": ["1 rpm"], "torques": ["1 Nm"]}})")
                  .starts_with("$.part.curve: number of points is 1"));
  EXPECT_TRUE(of_engine(R"({"curve": {"speeds": ["1000 rpm", "900 rpm"], "torques": ["1 Nm", "2 Nm"]}})")
                  .starts_with("$.part.curve: speed 2 is 900 rpm"));
  EXPECT_TRUE(of_engine(R"({"curve": {"speeds": ["1000 rpm", "900 rpm"], "torques": ["1 Nm"]}})")
                  .starts_with("$.part.curve.torques: expected 2 torques, one a speed"));
  EXPECT_TRUE(of_engine(R"({"curve": {"speeds": ["1 rpm", "9 rpm"], "torques": ["1 Nm", "2"]}})")
                  .starts_with("$.part.curve.torques[1]: "));
  EXPECT_TRUE(of_engine(R"({"curve": {"speeds": ["1 rpm", "9 rpm"], "torques": ["1 Nm", "2 Nm"],
                                      "constant_power": [true, 1]}})")
                  .starts_with("$.part.curve.constant_power[1]: expected true or false"));
  EXPECT_TRUE(of_engine(R"({"curve": {"speeds": ["1 rpm", "9 rpm"], "torques": ["1 Nm", "2 Nm"]}, "colour": 1})")
                  .starts_with("$.part: unknown key"));
  EXPECT_TRUE(of_engine(R"({"curve": {"estimate": {"torque": "24 Nm", "torque_speed": "6000 rpm", "power": "9 kW",
                            "power_speed": "8500 rpm", "lowest": "2000 rpm", "highest": "9100 rpm"}}})")
                  .starts_with("$.part.curve.estimate: power is 9 kW"));
}

TEST(RoadJson, SaysWhereARoadIsWrong) {
  EXPECT_TRUE(of_road(R"({"by_mass": "400 kg"})").starts_with("$.part.by_mass: mass is 400 kg"));
  EXPECT_TRUE(of_road(R"({"by_mass": "200 kg", "constant": "3 N"})").starts_with("$.part: unknown key"));
  EXPECT_TRUE(of_road(R"({"mass": "200 kg", "surface": "ice", "machine": "scooter"})").starts_with("$.part.surface: "));
  EXPECT_EQ(of_road(R"({"mass": "200 kg", "surface": "sand"})"), "$.part: missing key \"drag_area\"");
  EXPECT_TRUE(of_road(R"({"quadratic": "-1 kg/m"})").starts_with("$.part: quadratic is -1 kg/m"));
  EXPECT_TRUE(of_road("3").starts_with("$.part: expected what resists"));
}

TEST(RoadJson, WritesOneCurveOnlyWhereAllThreeAreTheSame) {
  const EngineCurve weak({2500_rpm, 9000_rpm}, {18_Nm, 15_Nm}), told({2500_rpm, 9000_rpm}, {20_Nm, 17_Nm}),
      strong({2500_rpm, 9000_rpm}, {21_Nm, 18_Nm});
  const auto written = [](const EngineEstimate& curves) {
    const boost::json::value value = detail::json_of(Engine(EngineParts{.curve = curves}));
    EXPECT_EQ(detail::read_engine(detail::JsonValue(value, "$")).parts().curve, curves);
    return value.at("curve").as_object().contains("nominal");
  };
  EXPECT_FALSE(written({told, told, told}));
  EXPECT_TRUE(written({told, told, strong}));
  EXPECT_TRUE(written({weak, told, told}));
  EXPECT_TRUE(written({weak, told, strong}));
}

TEST(RoadJson, WritesOfCoefficientsOnlyWhatIsStated) {
  const auto keys = [](const RoadCoefficients& of) {
    const boost::json::value value = detail::json_of(RoadLoad(of));
    EXPECT_EQ(detail::read_road_load(detail::JsonValue(value, "$")), RoadLoad(of));
    std::string list;
    for (const auto& member : value.as_object()) list.append(member.key()).append(" ");
    return list;
  };
  EXPECT_EQ(keys({.constant = 40_N}), "constant quadratic ");
  EXPECT_EQ(keys({.linear = 1_N_per_mps}), "constant linear quadratic ");
  EXPECT_EQ(keys({.mass = 200_kg}), "constant quadratic mass ");
  EXPECT_EQ(keys({.head_wind = 5_kmh}), "constant quadratic head_wind ");
  EXPECT_EQ(keys({.kind = RoadLoadKind::coast_down}), "constant quadratic kind ");
}

TEST(RoadJson, AsksForAllThreeCurvesWhereOneIsNamed) {
  const std::string curve = R"({"speeds": ["2500 rpm", "9000 rpm"], "torques": ["20 Nm", "17 Nm"]})";
  const auto missing = [&](const char* there) {
    return of_engine(("{\"curve\": {\"" + std::string(there) + "\": " + curve + "}}").c_str());
  };
  EXPECT_EQ(missing("low"), "$.part.curve: missing key \"nominal\"");
  EXPECT_EQ(missing("nominal"), "$.part.curve: missing key \"low\"");
  EXPECT_EQ(missing("high"), "$.part.curve: missing key \"low\"");
}

TEST(RoadJson, ReadsWhatIsSaidOfACurve) {
  EXPECT_TRUE(of_engine(R"({"curve": {"speeds": ["1 rpm", "9 rpm"], "torques": ["1 Nm", "2 Nm"],
                                      "constant_power": [true]}})")
                  .starts_with("$.part.curve.constant_power: expected 2 of true and false"));
  const auto source = [](const char* estimated) {
    const boost::json::value value = boost::json::parse(
        std::string(R"({"curve": {"speeds": ["1 rpm", "9 rpm"], "torques": ["1 Nm", "2 Nm"])") + estimated + "}}");
    return detail::read_engine(detail::JsonValue(value, "$")).curve().source();
  };
  EXPECT_EQ(source(""), sources::stated);
  EXPECT_EQ(source(", \"estimated\": false"), sources::stated);
  EXPECT_EQ(source(", \"estimated\": true"), engine_estimate_source);
}

TEST(RoadJson, TakesEachPartOfARoadForTheFirstOfItsKind) {
  // Each of four keys says by itself that the road is one of parts, which have a mass.
  for (const char* one : {R"("surface": "sand")", R"("rolling_coefficient": 0.02)", R"("machine": "scooter")",
                          R"("drag_area": "0.5 m2")"})
    EXPECT_EQ(of_road(("{" + std::string(one) + "}").c_str()), "$.part: missing key \"mass\"") << one;
  EXPECT_EQ(of_road(R"({"mass": "200 kg", "constant": "40 N"})"), "");
}

}  // namespace
