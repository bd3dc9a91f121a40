// SPDX-License-Identifier: MIT
// Texts that mean harm: each reader ends soon, with a short error of printable words.
#include <layshaft/io/json.hpp>
#include <layshaft/io/question_json.hpp>
#include <layshaft/io/ride_log.hpp>

#include <gtest/gtest.h>

#include <chrono>
#include <string>
#include <string_view>
#include <vector>

namespace {
using namespace layshaft;

constexpr std::size_t much = 100'000;

std::string times_over(std::string_view text, std::size_t count) {
  std::string all;
  all.reserve(text.size() * count);
  for (std::size_t i = 0; i < count; ++i) all.append(text);
  return all;
}

/// The sentence with which a text is refused; that it is short, printable and came soon is checked here.
template <class Read>
std::string harmless_refusal(Read read, std::string_view text) {
  const auto began = std::chrono::steady_clock::now();
  const auto result = read(text);
  EXPECT_LT(std::chrono::steady_clock::now() - began, std::chrono::seconds(10));
  if (result) return "";
  const std::string sentence = result.error().what();
  EXPECT_LT(sentence.size(), 1000u);
  EXPECT_EQ(detail::first_steering(sentence), sentence.size()) << sentence;
  EXPECT_EQ(detail::first_not_utf8(sentence), sentence.size()) << sentence;
  return sentence;
}

/// Each JSON reader's refusal of a text.
std::vector<std::string> json_refusals(std::string_view text) {
  return {harmless_refusal([](std::string_view t) { return try_machine_from_json(t); }, text),
          harmless_refusal([](std::string_view t) { return try_setup_from_json(t); }, text),
          harmless_refusal([](std::string_view t) { return try_question_from_json(t); }, text)};
}

TEST(HostileJson, IsRefusedByEveryReader) {
  const struct {
    const char* name;
    std::string text;
    const char* words;
  } cases[] = {
      {"brackets", times_over("[", much), "too deep"},
      {"closed brackets", times_over("[", much) + times_over("]", much), "too deep"},
      {"braces", times_over("{\"a\":", much) + "1" + times_over("}", much), "too deep"},
      {"brackets within a key that is read", "{\"layshaft\":" + times_over("[", much), "too deep"},
      {"a text of two million bytes", "\"" + std::string(2'000'000, 'x') + "\"",
       "size of the JSON text is 2000002 bytes"},
      {"a million elements", "[" + times_over("1,", 1'000'000) + "1]", "size of the JSON text"},
      {"as many elements as fit", "[" + times_over("1,", 500'000) + "1]", "$: expected"},
      {"a version of a million digits", "{\"layshaft\":" + std::string(1'000'000, '9') + "}", "$.layshaft: expected"},
      {"an exponent of a million digits", "{\"layshaft\":1e" + std::string(1'000'000, '9') + "}",
       "$.layshaft: expected"},
      {"a million zeros", "{\"layshaft\":0." + std::string(1'000'000, '0') + "1}", "$.layshaft: expected"},
      {"a key twice", R"({"layshaft":1,"layshaft":1})", "stands here a second time"},
      {"a key twice, written otherwise", R"({"layshaft":1,"lay\u0073haft":1})", "stands here a second time"},
      {"a NUL", std::string("{\"layshaft\0\":1}", 15), "byte 10"},
      {"a NUL alone", std::string(1, '\0'), "byte 0"},
      {"a NUL behind the end", std::string("{}\0", 3), "byte 2"},
      {"no UTF-8", "{\"lay\xff\":1}", "byte 5"},
      {"half a surrogate pair", R"({"layshaft":"\ud800"})", "byte"},
      {"an overlong slash", "\"\xc0\xaf\"", "byte 1"},
      {"a control character", "{\"layshaft\":\"\x1b[2J\"}", "byte 13"},
      {"one in disguise", R"({"layshaft":"\u001b[2J\u009b31m\u202e"})", "$.layshaft: expected"},
      {"a number that is none", R"({"layshaft":NaN})", "byte 12"},
      {"infinity", R"({"layshaft":-Infinity})", "byte"},
      {"a comment", "{\"layshaft\":1/**/}", "byte"},
  };
  for (const auto& one : cases)
    for (const std::string& sentence : json_refusals(one.text))
      EXPECT_NE(sentence.find(one.words), sentence.npos) << one.name << ": " << sentence;
}

TEST(HostileJson, IsRefusedAtTheKeyThatIsRead) {
  const auto setup = [](const std::string& value) {
    return harmless_refusal([](std::string_view t) { return try_setup_from_json(t); },
                            R"({"layshaft":1,"rear":40,"front":)" + value + "}");
  };
  for (const char* number : {"1e400", "-1e400", "99999999999999999999", "-1", "13.5", "1e-400", "2147483648"})
    EXPECT_TRUE(setup(number).starts_with("$.front: ")) << setup(number);
  EXPECT_TRUE(setup("\"" + std::string(much, 'x') + "\"").starts_with("$.front: expected a whole number of teeth"));
  EXPECT_TRUE(setup("[" + times_over("1,", much) + "1]").starts_with("$.front: expected"));
  EXPECT_TRUE(setup("13,\"" + std::string(much, 'k') + "\":1").starts_with("$: unknown key \"kkk"));
  EXPECT_TRUE(setup("13,\"\\u001b[2J\\u202e\":1").starts_with("$: unknown key \"\\x1b[2J\\xe2\\x80\\xae\""));
  EXPECT_TRUE(setup("13,\"tyre\":\"120/80-18\\u0000\"").starts_with("$.tyre: "))
      << setup("13,\"tyre\":\"120/80-18\\u0000\"");
  EXPECT_TRUE(setup("13,\"tyre\":\"" + std::string(much, '1') + "\"").starts_with("$.tyre: "));
  EXPECT_TRUE(setup("13,\"circumference\":\"" + std::string(much, '1') + " mm\"").starts_with("$.circumference: "));
  EXPECT_TRUE(setup("13,\"circumference\":\"1 " + std::string(much, 'm') + "\"").starts_with("$.circumference: "));
  EXPECT_TRUE(setup("13,\"circumference\":\"1e400 m\"").starts_with("$.circumference: "));
}

TEST(HostileJson, OfManyElementsIsReadInNoMoreThanItsTime) {
  const auto question = [](const std::string& fronts) {
    return harmless_refusal([](std::string_view t) { return try_question_from_json(t); },
                            R"({"layshaft":1,"space":{"fronts":[)" + fronts + R"(14],"rears":[40]},"goals":{}})");
  };
  EXPECT_NE(question(times_over("14,", 300'000)).find("fronts"), std::string::npos);
  EXPECT_NE(question(times_over("{\"teeth\":14},", 70'000)).find("fronts"), std::string::npos);
  std::string keys = "{\"layshaft\":1";
  for (std::size_t i = 0; i < 70'000; ++i) keys.append(",\"").append(std::to_string(i)).append("\":1");
  for (const std::string& sentence : json_refusals(keys + "}")) EXPECT_TRUE(sentence.starts_with("$: ")) << sentence;
}

TEST(HostileRideLog, IsRefusedSoonAndInWords) {
  const auto refusal = [](std::string_view text) {
    return harmless_refusal([](std::string_view t) { return try_read_ride_log(t); }, text);
  };
  constexpr std::size_t very_much = 10'000'000;
  const std::string head = "time_s,speed_kmh\n";
  EXPECT_EQ(refusal(std::string(very_much, 'x')).substr(0, 31), "line 1 names no column time_s; ");
  EXPECT_EQ(refusal(head + std::string(very_much, '1')).substr(0, 27), "line 2, time_s: no number, ");
  EXPECT_EQ(refusal(head + std::string(very_much, '"')).substr(0, 35), "number of samples is 0; expected at");
  EXPECT_EQ(refusal(head + "0,\"" + std::string(very_much, '"') + "x").substr(0, 29), "line 2, speed_kmh: no number,");
  EXPECT_EQ(refusal("time_s,speed_kmh" + times_over(",a", much)), "line 1 names more than 1000 columns");
  EXPECT_EQ(refusal(head + "0,1" + times_over(",1", much)), "line 2 has more cells than the first line; expected 2");
  EXPECT_EQ(refusal(std::string(very_much, '\n')), "the ride log is empty; expected a line that names its columns");
  EXPECT_EQ(refusal(times_over("# x\n", 1'000'000)), "the ride log is empty; expected a line that names its columns");
  EXPECT_NE(refusal(head + "\x1b[2J\xc2\x9b,1\n").find("\"\\x1b[2J\\xc2\\x9b\""), std::string::npos);
  EXPECT_NE(refusal(head + std::string("0\0,1\n", 5)).find("\"0\\x00\""), std::string::npos);
  EXPECT_NE(refusal(head + "=1+1,1\n").find("no number, \"=1+1\""), std::string::npos);
  EXPECT_NE(refusal(head + "0,1e400\n").find("line 2, speed_kmh: no number"), std::string::npos);
}

TEST(HostileRideLog, HasNoMoreSamplesThanAreRead) {
  const std::string_view three = "time_s,speed_kmh\n0,1\n1,1\n2,1\n";
  EXPECT_EQ(detail::LogReader(three, 3).read().value().times.size(), 3u);
  const auto refused = detail::LogReader(three, 2).read();
  ASSERT_FALSE(refused);
  EXPECT_STREQ(refused.error().what(), "number of samples in the ride log is more; expected at most 2");
  EXPECT_EQ(refused.error().kind(), ErrorKind::range);
}

TEST(HostileMarking, IsRefusedWhateverItsLength) {
  for (const char* piece : {"1", " ", "/", "120/80-18 ", "M/C ", "(", "\xe2\x80\xae", "\x1b[2J", "\xff", "x"})
    EXPECT_NE(harmless_refusal([](std::string_view t) { return TyreSize::make(t); }, times_over(piece, much)), "");
  EXPECT_NE(harmless_refusal([](std::string_view t) { return TyreSize::make(t); }, std::string_view("120/80-18\0", 10)),
            "");
  for (const char* piece : {"5", " ", "520 ", "\x1b", "\xff"})
    EXPECT_NE(harmless_refusal([](std::string_view t) { return ChainSeries::make(t); }, times_over(piece, much)), "");
  for (const char* piece : {"1", "1 mm ", "m", ".", "e", "-", "\x1b", "\xff"})
    EXPECT_NE(
        harmless_refusal([](std::string_view t) { return try_parse_quantity<Length>(t); }, times_over(piece, much)),
        "");
}

}  // namespace
