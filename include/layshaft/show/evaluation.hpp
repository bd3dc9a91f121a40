// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/decimal.hpp>
#include <layshaft/formulas.hpp>
#include <layshaft/show/expression.hpp>

#include <algorithm>  // min
#include <cmath>
#include <limits>
#include <numeric>  // gcd
#include <string_view>
#include <utility>
#include <vector>

/// @file
/// A formula's text worked out: other formulas that it calls written out, and its value for given numbers. Opt-in.
namespace layshaft::detail {

/// The names in "(AngularSpeed engine_speed, double overall_ratio)".
[[nodiscard]] inline std::vector<std::string_view> parameter_names(std::string_view parameters) {
  std::vector<std::string_view> names;
  std::size_t begin = 0;
  for (std::size_t i = 0; i < parameters.size(); ++i) {
    if (parameters[i] == ' ' || parameters[i] == '(') begin = i + 1;
    if (parameters[i] == ',' || parameters[i] == ')') names.push_back(parameters.substr(begin, i - begin));
  }
  return names;
}

[[nodiscard]] inline const Formula* find_formula(std::string_view name) noexcept {
  for (const Formula* formula : all_formulas)
    if (formula->name == name) return formula;
  return nullptr;
}

/// What a name stands for within a formula that was called.
using Meaning = std::pair<std::string_view, ExpressionNode>;

/// The expression with every formula it calls written out, down to parameters of the outermost one.
[[nodiscard]] inline ExpressionNode written_out(const ExpressionNode& node, const std::vector<Meaning>& meanings = {}) {
  if (node.kind == ExpressionNode::Kind::name) {
    for (const auto& [name, meaning] : meanings)
      if (name == node.text) return meaning;
    return node;
  }
  ExpressionNode out = node;
  for (ExpressionNode& term : out.terms) term = written_out(term, meanings);
  const Formula* called = node.kind == ExpressionNode::Kind::call ? find_formula(node.text) : nullptr;
  if (!called) return out;
  std::vector<Meaning> inner;
  const auto names = parameter_names(called->parameters);
  for (std::size_t i = 0; i < names.size() && i < out.terms.size(); ++i) inner.push_back({names[i], out.terms[i]});
  return written_out(*try_read_expression(called->body), inner);
}

/// The size in SI of the unit behind a literal's underscore, 4.0_kmh.
[[nodiscard]] inline double literal_unit(std::string_view unit) noexcept {
  struct Unit {
    std::string_view name;
    double size;
  };
  constexpr Unit units_in_bodies[] = {{"kmh", units::kmh.value()}, {"mm", units::mm.value()},
                                      {"deg", units::deg.value()}, {"inch", units::inch.value()},
                                      {"rpm", units::rpm.value()}, {"hp", units::hp.value()},
                                      {"kW", units::kW.value()}};
  for (const Unit& one : units_in_bodies)
    if (one.name == unit) return one.size;
  return 1.0;  // an SI unit
}

/// The value in SI of a literal, 2.0 or 4.0_kmh.
[[nodiscard]] inline double literal_value(std::string_view literal) noexcept {
  const std::size_t suffix = std::min(literal.find('_'), literal.size());
  double number = 0.0;
  read_decimal(literal.data(), literal.data() + suffix, number);
  return suffix == literal.size() ? number : number * literal_unit(literal.substr(suffix + 1));
}

/// The value of an expression in SI; `value_of(name)` gives that of a parameter.
template <class ValueOf>
[[nodiscard]] double evaluate(const ExpressionNode& node, const ValueOf& value_of) {
  const auto term = [&](std::size_t i) { return evaluate(node.terms[i], value_of); };
  switch (node.kind) {
    case ExpressionNode::Kind::number: return literal_value(node.text);
    case ExpressionNode::Kind::name:
      if (node.text == "pi") return pi;
      if (node.text == "turn") return turn.value();
      if (node.text == "half_turn") return half_turn.value();
      return value_of(node.text);
    case ExpressionNode::Kind::call:
      if (node.text == "sin") return std::sin(term(0));
      if (node.text == "cos") return std::cos(term(0));
      if (node.text == "arcsin") return std::asin(term(0));
      if (node.text == "arctan") return std::atan(term(0));
      if (node.text == "to_the") return std::pow(term(0), term(1));
      if (node.text == "sqrt") return std::sqrt(term(0));
      if (node.text == "cube_root") return std::cbrt(term(0));
      if (node.text == "square_root") return std::sqrt(term(0));
      if (node.text == "arctan_ratio") return arctan_ratio(term(0));
      if (node.text == "exponential") return std::exp(term(0));
      if (node.text == "magnitude") return std::fabs(term(0));
      if (node.text == "ln") return std::log(term(0));
      if (node.text == "logarithmic_mean") return logarithmic_mean(term(0));
      if (node.text == "common_factor") return double(std::gcd(std::lround(term(0)), std::lround(term(1))));
      return std::numeric_limits<double>::quiet_NaN();  // a test evaluates every formula
    case ExpressionNode::Kind::sum: {
      double sum = term(0);
      for (std::size_t i = 1; i < node.terms.size(); ++i) sum = node.inverse[i] ? sum - term(i) : sum + term(i);
      return sum;
    }
    case ExpressionNode::Kind::product: {
      double product = term(0);
      for (std::size_t i = 1; i < node.terms.size(); ++i)
        product = node.inverse[i] ? product / term(i) : product * term(i);
      return product;
    }
  }
  return std::numeric_limits<double>::quiet_NaN();
}

}  // namespace layshaft::detail
