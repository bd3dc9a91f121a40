// SPDX-License-Identifier: MIT
#include <layshaft/show/evaluation.hpp>

#include <gtest/gtest.h>

#include <core/formula_range.hpp>

#include <cmath>
#include <random>
#include <string>
#include <tuple>
#include <type_traits>

namespace {
using namespace layshaft;

/// Works out a formula's text with all that it calls written out, and holds it against the function.
template <class One, class Result, class... Parameters>
void expect_text_is_function(Result (*)(Parameters...)) {
  const ExpressionNode body = detail::written_out(*try_read_expression(One::about.body));
  const auto names = detail::parameter_names(One::about.parameters);
  ASSERT_EQ(names.size(), sizeof...(Parameters)) << One::about.name;
  std::mt19937_64 random(7);
  std::uniform_real_distribution<double> size(0.2, 3.0);
  std::uniform_int_distribution<int> count(9, 70);
  int held = 0;
  for (int i = 0; i < 2000; ++i) {
    std::size_t place = 0;
    const auto any = [&]<class T>(std::type_identity<T>) {
      const double scale = names[place++] == "links" ? 60.0 : 1.0;  // a chain is longer than its sprockets
      if constexpr (requires { T::make(0); })
        return *T::make(count(random));
      else
        return layshaft_test::from_si<T>(scale * size(random));
    };
    const std::tuple<Parameters...> all{any(std::type_identity<Parameters>())...};
    if (!std::apply([](const auto&... each) { return One::in_range(each...); }, all)) continue;
    ++held;
    std::vector<double> values;
    const auto add = [&](const auto& one) {
      if constexpr (requires { one.count(); })
        values.push_back(one.count());
      else
        values.push_back(layshaft_test::in_si(one));
    };
    std::apply([&](const auto&... each) { (add(each), ...); }, all);
    const double text = detail::evaluate(body, [&](std::string_view name) {
      return values[static_cast<std::size_t>(std::find(names.begin(), names.end(), name) - names.begin())];
    });
    const double function = layshaft_test::in_si(std::apply([](const auto&... each) { return One::of(each...); }, all));
    ASSERT_NEAR(text, function, 1e-13 * std::max(1.0, std::abs(function))) << One::about.name;
  }
  EXPECT_GT(held, 20) << One::about.name;
}
template <class... All>
void expect_texts_are_functions(FormulaList<All...>) {
  (expect_text_is_function<All>(static_cast<typename All::type*>(nullptr)), ...);
}

TEST(Evaluation, WorksOutEveryFormulasTextToItsFunction) { expect_texts_are_functions(Formulas()); }

TEST(Evaluation, WritesOutWhatAFormulaCalls) {
  const ExpressionNode node = detail::written_out(*try_read_expression(formula::thrust_change::about.body));
  ASSERT_EQ(node.kind, ExpressionNode::Kind::sum);
  EXPECT_EQ(node.terms[0].kind, ExpressionNode::Kind::product);
  EXPECT_EQ(node.terms[0].terms[0].text, "trial_ratio");
}

// v = n U / (1 rev i): what a call leaves out keeps its own name.
TEST(Evaluation, LeavesTheNamesOfWhatACallDoesNotState) {
  const ExpressionNode node = detail::written_out(*try_read_expression("road_speed(n)"));
  const double speed = detail::evaluate(node, [](std::string_view name) {
    return name == "n" ? 6.0 : name == "circumference" ? 7.0 : name == "overall_ratio" ? 4.0 : std::nan("");
  });
  EXPECT_NEAR(speed, 6.0 * 7.0 / (2.0 * 3.14159265358979323846 * 4.0), 1e-15);
}

TEST(Evaluation, IsNotANumberForWhatItDoesNotKnow) {
  const auto two = [](std::string_view) { return 2.0; };
  EXPECT_EQ(detail::evaluate(*try_read_expression("magnitude(x)"), two), 2.0);
  EXPECT_TRUE(std::isnan(detail::evaluate(*try_read_expression("unheard_of(x)"), two)));
  EXPECT_TRUE(std::isnan(detail::evaluate({static_cast<ExpressionNode::Kind>(99), "x", {}, {}}, two)));
}

TEST(Evaluation, TakesALiteralsUnitIntoAccount) {
  const auto none = [](std::string_view) { return 0.0; };
  EXPECT_EQ(detail::evaluate(*try_read_expression("4.0_kmh"), none), (4.0_kmh).value());
  EXPECT_EQ(detail::evaluate(*try_read_expression("2.0_mm"), none), (2.0_mm).value());
  EXPECT_EQ(detail::evaluate(*try_read_expression("half_turn / turn"), none), 0.5);
}

}  // namespace
