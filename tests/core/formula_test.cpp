// SPDX-License-Identifier: MIT
#include <layshaft/core/glossary.hpp>
#include <layshaft/formulas.hpp>

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <regex>
#include <set>
#include <string>

namespace {
using namespace layshaft;

// A formula is its function, and knows its own text.
static_assert(formula::road_speed::of(6000_rpm, 20.0, 2.0_m) == road_speed(6000_rpm, 20.0, 2.0_m));
static_assert(formula::road_speed::about.name == "road_speed");
static_assert(formula::road_speed::about.body == "engine_speed / turn * circumference / overall_ratio");
static_assert(formula::road_speed::about.parameters ==
              "(AngularSpeed engine_speed, double overall_ratio, Length circumference)");
static_assert(formula::road_speed::in_range(6000_rpm, 20.0, 2.0_m));
static_assert(!formula::road_speed::in_range(6000_rpm, 0.0, 2.0_m));

TEST(Formulas, AreAllInTheListOnceEach) {
  std::multiset<std::string> written, listed;
  const std::regex use(R"(LAYSHAFT_FORMULA\(\s*(?:constexpr|inline)\s*,[^,]+,\s*(\w+)\s*,)");
  for (const auto& entry : std::filesystem::recursive_directory_iterator(LAYSHAFT_INCLUDE_DIR)) {
    if (entry.path().extension() != ".hpp") continue;
    std::ifstream file(entry.path());
    const std::string text(std::istreambuf_iterator<char>(file), {});
    for (std::sregex_iterator at(text.begin(), text.end(), use), end; at != end; ++at) written.insert((*at)[1]);
  }
  for (const Formula* one : all_formulas) listed.insert(std::string(one->name));
  EXPECT_GT(written.size(), 30u);
  EXPECT_EQ(written, listed);
}

TEST(Formulas, SayTheirRangeAndTheirSource) {
  for (const Formula* one : all_formulas) {
    EXPECT_FALSE(one->range.empty()) << one->name;
    EXPECT_FALSE(one->source.document.empty()) << one->name;
    EXPECT_EQ(one->body.find("::"), std::string_view::npos) << one->name;
    EXPECT_EQ(one->body.find('?'), std::string_view::npos) << one->name;
  }
}

TEST(Formulas, AreWrittenInWordsOfTheGlossary) {
  for (const Formula* one : all_formulas) {
    EXPECT_NE(find_word(one->name), nullptr) << one->name;
    const std::string parameters(one->parameters);
    const std::regex name(R"((\w+)\s*[,)])");
    for (std::sregex_iterator at(parameters.begin(), parameters.end(), name), end; at != end; ++at)
      EXPECT_NE(find_word((*at)[1].str()), nullptr) << one->name << ": " << (*at)[1];
  }
}

TEST(Glossary, IsInOrderAndHasEachWordOnce) {
  EXPECT_TRUE(std::ranges::is_sorted(glossary, {}, &Word::word));
  EXPECT_EQ(std::ranges::adjacent_find(glossary, {}, &Word::word), std::end(glossary));
  for (const Word& word : glossary) {
    EXPECT_FALSE(word.symbol.empty() || word.tex.empty() || word.meaning.empty()) << word.word;
  }
  EXPECT_EQ(find_word("no such word"), nullptr);
}

#if !defined(NDEBUG)
TEST(FormulaDeathTest, AssertsItsRangeInDebugBuilds) {
  EXPECT_DEATH(static_cast<void>(road_speed(6000_rpm, 0.0, 2.0_m)), "positive\\(overall_ratio\\)");
}
#endif

}  // namespace
