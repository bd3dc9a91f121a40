// SPDX-License-Identifier: MIT
#include <layshaft/show/expression.hpp>

#include <layshaft/formulas.hpp>

#include <gtest/gtest.h>

namespace {
using namespace layshaft;
using Kind = ExpressionNode::Kind;

ExpressionNode read(std::string_view body) {
  const auto node = try_read_expression(body);
  EXPECT_TRUE(node) << (node ? "" : node.error().what());
  return node ? *node : ExpressionNode{Kind::number, {}, {}, {}};
}

TEST(Expression, BindsProductsCloserThanSums) {
  const ExpressionNode node = read("a + b * c - d / 2.0");
  ASSERT_EQ(node.kind, Kind::sum);
  ASSERT_EQ(node.terms.size(), 3u);
  EXPECT_EQ(node.inverse, (std::vector<bool>{false, false, true}));
  EXPECT_EQ(node.terms[0].kind, Kind::name);
  EXPECT_EQ(node.terms[1].kind, Kind::product);
  EXPECT_EQ(node.terms[2].inverse, (std::vector<bool>{false, true}));
}

TEST(Expression, ReadsBracketsCallsAndNumbersWithUnits) {
  const ExpressionNode node = read("f(a, (b + 4.0_kmh))");
  ASSERT_EQ(node.kind, Kind::call);
  EXPECT_EQ(node.text, "f");
  ASSERT_EQ(node.terms.size(), 2u);
  EXPECT_EQ(node.terms[1].terms[1].text, "4.0_kmh");
}

TEST(Expression, TakesLettersOfBothSizesAndTheLineBelow) {
  for (const char* name : {"a", "z", "A", "Z", "_", "_aZ_0"}) {
    const ExpressionNode node = read(name);
    EXPECT_EQ(node.kind, Kind::name);
    EXPECT_EQ(node.text, name);
  }
}

TEST(Expression, ReadsEveryFormula) {
  for (const Formula* formula : all_formulas) EXPECT_TRUE(try_read_expression(formula->body)) << formula->name;
}

TEST(Expression, SaysWhereItCannotBeRead) {
  const std::pair<const char*, std::size_t> bad[] = {
      {"", 0},    {"a +", 3}, {"(a", 2},   {"a b", 2}, {"a ? b : c", 2}, {"f(", 2},    {"f(a,)", 4},
      {"* a", 0}, {"a)", 1},  {"a::b", 1}, {"[a]", 0}, {"{a}", 0},       {"a + ~", 4}, {"(a + ) * (", 5}};
  for (const auto& [body, position] : bad) {
    const auto node = try_read_expression(body);
    ASSERT_FALSE(node) << body;
    EXPECT_EQ(node.error().position(), position) << body;
    EXPECT_FALSE(node.error().expected().empty());
  }
  EXPECT_FALSE(try_read_expression(std::string(1000, '(')));  // refused, and not by running out of stack
}

}  // namespace
