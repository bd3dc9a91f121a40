// SPDX-License-Identifier: MIT
#include <layshaft/io/json_writer.hpp>

#include <layshaft/io/json_reader.hpp>

#include <gtest/gtest.h>

#include <string>

namespace {
using namespace layshaft;
using namespace layshaft::detail;

std::string written(const boost::json::value& value) {
  std::string out;
  write_json(out, value);
  return out;
}

TEST(WriteJson, KeepsShortPartsOnOneLineAndTheWholeOnMany) {
  EXPECT_EQ(written(parse_json(R"({"a":[1,2],"b":{"c":"d"},"e":[],"f":{}})")), R"({
  "a": [1, 2],
  "b": {"c": "d"},
  "e": [],
  "f": {}
})");
}

TEST(WriteJson, BreaksALongPartIntoLines) {
  const std::string word(30, 'w');
  const auto value = parse_json("{\"a\": [\"" + word + "\", \"" + word + "\", \"" + word + "\"]}");
  EXPECT_EQ(written(value),
            "{\n  \"a\": [\n    \"" + word + "\",\n    \"" + word + "\",\n    \"" + word + "\"\n  ]\n}");
}

TEST(WriteJson, WritesNumbersInTheFewestDigitsAndEscapesTexts) {
  EXPECT_EQ(written(boost::json::value(0.1)), "0.1");
  EXPECT_EQ(written(boost::json::value(1.0 / 3.0)), "0.3333333333333333");
  EXPECT_EQ(written(boost::json::value(2.0)), "2");
  EXPECT_EQ(written(boost::json::value(-12)), "-12");
  EXPECT_EQ(written(boost::json::value("a\"b\\\n")), R"("a\"b\\\n")");
  EXPECT_EQ(written(boost::json::value(nullptr)), "null");
  EXPECT_EQ(written(boost::json::value(true)), "true");
}

TEST(WriteJson, ReadsBackAsTheSameValue) {
  for (const char* text :
       {R"({"a":[1,2.5,"x",null,true,{"b":[]}],"c\"d":{"e":-1e-7}})", "[[[[1],[2]],[[3],[4]]]]", "{}", "[]"})
    EXPECT_EQ(parse_json(written(parse_json(text))), parse_json(text)) << written(parse_json(text));
}

TEST(WriteJson, BreaksWhatHasALongPart) {
  const std::string word(30, 'w');
  const std::string list = "\"" + word + "\", \"" + word + "\", \"" + word + "\"";
  const auto value = parse_json("{\"a\": {\"b\": [" + list + "], \"c\": [1]}}");
  EXPECT_EQ(written(value), "{\n  \"a\": {\n    \"b\": [\n      \"" + word + "\",\n      \"" + word + "\",\n      \"" +
                                word + "\"\n    ],\n    \"c\": [1]\n  }\n}");
}

TEST(WriteJson, WritesABandAsOneValueWhereItIsExact) {
  EXPECT_EQ(written(json_of(Band<double>::exactly(0.25))), "0.25");
  EXPECT_EQ(written(json_of(Band<Length>::exactly(2.5_mm))), "\"2.5 mm\"");
  EXPECT_EQ(json_of(Band<double>{0.1, 0.2, 0.4}), parse_json(R"({"low": 0.1, "nominal": 0.2, "high": 0.4})"));
  EXPECT_EQ(json_of(Band<Length>{1_mm, 2_mm, 4_mm}),
            parse_json(R"({"low": "1 mm", "nominal": "2 mm", "high": "4 mm"})"));
}

}  // namespace
