// SPDX-License-Identifier: MIT
#include <layshaft/io/json_reader.hpp>

#include <gtest/gtest.h>

#include <limits>
#include <string>
#include <string_view>

namespace {
using namespace layshaft;
using namespace layshaft::detail;

/// The sentence of the error that a call raises; empty where it raises none.
template <class Call>
std::string raised(Call call) {
  try {
    call();
  } catch (const Error& error) {
    return error.what();
  }
  return {};
}

TEST(ParseJson, TakesOneWholeValueAndNothingBehindIt) {
  EXPECT_EQ(parse_json(" {\"a\": [1, 2.5, \"x\"]}\n ").as_object().size(), 1u);
  EXPECT_TRUE(parse_json("null").is_null());
  for (const char* bad :
       {"", " ", "{} {}", "[1,]", "{\"a\":1,}", "// note\n{}", "NaN", "'a'", "01", "+1", "1.", "[1 2]"})
    EXPECT_NE(raised([&] { static_cast<void>(parse_json(bad)); }), "") << bad;
}

TEST(ParseJson, ShowsWhatStandsAroundTheFault) {
  const std::string text = std::string(500, ' ') + "{\"centre\": 12,, \"x\": 1}" + std::string(500, ' ');
  const std::string what = raised([&] { static_cast<void>(parse_json(text)); });
  EXPECT_TRUE(what.starts_with("byte 514: ")) << what;
  EXPECT_NE(what.find("{\"centre\": 12,, \"x\": 1}"), what.npos) << what;
  EXPECT_LT(what.size(), 250u);
}

// 2026-11-25: the piece that an error shows was cut by bytes, and could begin and end within a character.
TEST(ParseJson, CutsNoCharacterInTwo) {
  for (std::size_t before = 0; before < 8; ++before) {
    std::string text = "[\"" + std::string(before, 'x');
    for (int i = 0; i < 60; ++i) text.append("ü🛵");
    text.append("\",,");
    for (int i = 0; i < 60; ++i) text.append("🛵");
    try {
      static_cast<void>(parse_json(text));
      FAIL();
    } catch (const ParseError& error) {
      EXPECT_EQ(first_not_utf8(error.text()), error.text().size()) << error.what();
      EXPECT_EQ(error.text().substr(error.position()).substr(0, 1), ",") << error.what();
      EXPECT_EQ(std::string(error.what()).find("\\x"), std::string::npos) << error.what();
    }
  }
}

TEST(JsonValue, TellsWhatItExpectedAndWhatItGotAtItsPath) {
  const auto document =
      parse_json(R"({"list": [1, "two", 3.5, 1e400, -7], "long": "üüüüüüüüüüüüüüüüüüüüüüüüüüüüüüüüüüüüüüüü"})");
  JsonObject object(JsonValue(document, "$"), "a thing");
  const auto list = object.at("list").elements("a list");
  ASSERT_EQ(list.size(), 5u);
  EXPECT_EQ(list[1].path(), "$.list[1]");
  EXPECT_EQ(list[1].text("a text"), "two");
  EXPECT_EQ(list[0].whole("a count"), 1);
  EXPECT_EQ(list[4].whole("a count"), -7);
  EXPECT_EQ(list[2].number("a number"), 3.5);
  EXPECT_EQ(list[0].number("a number"), 1.0);
  EXPECT_EQ(list[4].number("a number"), -7.0);
  EXPECT_EQ(raised([&] { static_cast<void>(list[0].text("a text")); }), "$.list[0]: expected a text, got 1");
  EXPECT_EQ(raised([&] { static_cast<void>(list[1].number("a ratio")); }), "$.list[1]: expected a ratio, got \"two\"");
  EXPECT_TRUE(
      raised([&] { static_cast<void>(list[2].whole("a count")); }).starts_with("$.list[2]: expected a count, got 3.5"));
  EXPECT_TRUE(raised([&] { static_cast<void>(list[3].whole("a count")); }).starts_with("$.list[3]: expected a count"));
  EXPECT_EQ(raised([&] { static_cast<void>(list[4].count<TeethKind>()); }),
            "$.list[4]: number of teeth is -7; expected 4 to 1000");
  EXPECT_EQ(raised([&] { static_cast<void>(list[1].elements("a list")); }), "$.list[1]: expected a list, got \"two\"");
  const std::string what = raised([&] { static_cast<void>(object.at("long").number("a ratio")); });
  EXPECT_TRUE(what.ends_with("ü...")) << what;
  EXPECT_EQ(first_not_utf8(what), what.size());
}

TEST(JsonObject, AccountsForEveryKey) {
  const auto document = parse_json(R"({"a": 1, "b": null, "c": 3})");
  JsonObject object(JsonValue(document, "$.x"), "a thing");
  EXPECT_EQ(object.at("a").path(), "$.x.a");
  EXPECT_FALSE(object.find("b"));  // null is as good as absent
  EXPECT_FALSE(object.find("d"));
  EXPECT_EQ(raised([&] { static_cast<void>(object.at("b")); }), "$.x: missing key \"b\"");
  EXPECT_EQ(raised([&] { object.done(); }), "$.x: unknown key \"c\"; expected one of a, b, d");
  static_cast<void>(object.at("c"));
  EXPECT_EQ(raised([&] { object.done(); }), "");
  EXPECT_EQ(raised([&] { JsonObject(JsonValue(document.at("a"), "$.x.a"), "a thing"); }),
            "$.x.a: expected a thing, got 1");
}

TEST(ReadBand, TakesOneValueOrThree) {
  const auto read = [](const char* text) {
    const auto document = parse_json(text);
    return read_band(JsonValue(document, "$"), [](const JsonValue& one) { return one.number("a number"); });
  };
  EXPECT_EQ(read("0.25"), Band<double>::exactly(0.25));
  EXPECT_EQ(read(R"({"low": 1, "nominal": 2, "high": 4})"), (Band<double>{1.0, 2.0, 4.0}));
  EXPECT_EQ(raised([&] { read("[1, 2, 4]"); }), "$: expected a number, got [1,2,4]");
  EXPECT_EQ(raised([&] { read(R"({"low": 1, "high": 4})"); }), "$: missing key \"nominal\"");
  EXPECT_EQ(raised([&] { read(R"({"low": 1, "nominal": 2, "high": 4, "mean": 3})"); }),
            "$: unknown key \"mean\"; expected one of low, nominal, high");
}

enum class Colour { red, green };
std::string_view to_string(Colour colour) { return colour == Colour::red ? "red" : "green"; }

TEST(ReadWord, KnowsTheWordsOfAnEnumeration) {
  constexpr Colour colours[] = {Colour::red, Colour::green};
  const auto green = parse_json("\"green\""), blue = parse_json("\"blue\""), one = parse_json("1");
  EXPECT_EQ(read_word(JsonValue(green, "$"), colours), Colour::green);
  EXPECT_EQ(raised([&] { static_cast<void>(read_word(JsonValue(blue, "$"), colours)); }),
            "$: expected one of \"red\", \"green\", got \"blue\"");
  EXPECT_NE(raised([&] { static_cast<void>(read_word(JsonValue(one, "$"), colours)); }), "");
}

TEST(JsonValue, TakesEveryNumberForADouble) {
  // A whole number beyond 2^53 becomes the nearest double, and one that no double holds is infinite, which no range
  // has.
  const auto document = parse_json("[9007199254740993, 18446744073709551615, -9223372036854775808, 1e400]");
  const auto list = JsonValue(document, "$").elements("numbers");
  EXPECT_EQ(list[0].number("a number"), 9007199254740992.0);
  EXPECT_EQ(list[1].number("a number"), 0x1p64);
  EXPECT_EQ(list[2].number("a number"), -0x1p63);
  EXPECT_EQ(list[3].number("a number"), std::numeric_limits<double>::infinity());
}

}  // namespace
