// SPDX-License-Identifier: MIT
#include <layshaft/core/glossary.hpp>
#include <layshaft/formulas.hpp>

#include <gtest/gtest.h>
#include <core/formula_range.hpp>

#include <cmath>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <random>
#include <regex>
#include <set>
#include <string>
#include <tuple>
#include <type_traits>

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

/// In its range a formula gives a number: never NaN, and for what can be measured nothing infinite either. Values of
/// either sign over twelve decades, a twentieth of them zero.
template <class One, class Result, class... Parameters>
void expect_numbers(Result (*)(Parameters...)) {
  std::mt19937_64 random(24);
  std::uniform_real_distribution<double> exponent(-6.0, 6.0);
  std::uniform_int_distribution<int> count(Teeth::least, Teeth::greatest), twentieth(0, 19);
  const auto any = [&]<class T>(std::type_identity<T>) {
    if constexpr (std::is_same_v<T, Teeth> || std::is_same_v<T, Links>) {
      return T(count(random));
    } else {
      const int kind = twentieth(random);
      const double size = std::pow(10.0, exponent(random));
      return layshaft_test::from_si<T>(kind == 0 ? 0.0 : kind < 5 ? -size : size);
    }
  };
  int held = 0;
  for (int i = 0; i < 10000; ++i) {
    const std::tuple<Parameters...> all{any(std::type_identity<Parameters>())...};
    if (!std::apply([](const auto&... each) { return One::in_range(each...); }, all)) continue;
    ++held;
    const double result = layshaft_test::in_si(std::apply([](const auto&... each) { return One::of(each...); }, all));
    ASSERT_TRUE(is_finite(result)) << One::about.name << " gives " << result;
  }
  EXPECT_GT(held, 100) << One::about.name;
}
template <class... All>
void expect_numbers_of_all(FormulaList<All...>) {
  (expect_numbers<All>(static_cast<typename All::type*>(nullptr)), ...);
}

TEST(Formulas, GiveNumbersInTheirRange) { expect_numbers_of_all(Formulas()); }

#if !defined(NDEBUG)
TEST(FormulaDeathTest, AssertsItsRangeInDebugBuilds) {
  EXPECT_DEATH(static_cast<void>(road_speed(6000_rpm, 0.0, 2.0_m)), "positive\\(overall_ratio\\)");
}
#endif

}  // namespace
