// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/result.hpp>

#include <string_view>
#include <vector>

/// @file
/// Reads the body of a formula as an expression. Opt-in.
///
///     sum     = product { ("+" | "-") product }
///     product = factor { ("*" | "/") factor }
///     factor  = number | name | name "(" sum { "," sum } ")" | "(" sum ")"
///     number  = digits "." digits [ "_" unit ]
namespace layshaft {

/// A node of an expression. Sums and products hold all their terms in one node, each with its own sign, so that a
/// quotient can be set as one fraction.
struct ExpressionNode {
  enum class Kind {
    number,   ///< `text` is the literal, 2.0 or 4.0_kmh
    name,     ///< `text` is a word or a constant
    call,     ///< `text` is the function, `terms` its arguments
    sum,      ///< `terms` added, or taken away where `inverse` says so
    product,  ///< `terms` multiplied, or divided by where `inverse` says so
  };
  Kind kind;
  std::string_view text;
  std::vector<ExpressionNode> terms;
  std::vector<bool> inverse;  ///< of each term: whether it is taken away, or divided by
};

namespace detail {

class ExpressionReader {
 public:
  explicit ExpressionReader(std::string_view body) : body_(body) {}

  [[nodiscard]] Result<ExpressionNode> read() {
    ExpressionNode node = sum(0);
    skip_spaces();
    if (problem_.empty() && at_ < body_.size()) fail("something left over", "the end, or an operator");
    if (!problem_.empty()) return Error::parse(body_, problem_at_, problem_, expected_);
    return node;
  }

 private:
  static constexpr int deepest = 32;  // of brackets within brackets; formulas have three

  ExpressionNode sum(int depth) {
    return chain(ExpressionNode::Kind::sum, '+', '-', [&] { return product(depth); });
  }
  ExpressionNode product(int depth) {
    return chain(ExpressionNode::Kind::product, '*', '/', [&] { return factor(depth); });
  }
  template <class Part>
  ExpressionNode chain(ExpressionNode::Kind kind, char straight, char inverse, Part part) {
    ExpressionNode node{kind, {}, {part()}, {false}};
    while (problem_.empty() && (next() == straight || next() == inverse)) {
      node.inverse.push_back(body_[at_++] == inverse);
      node.terms.push_back(part());
    }
    if (node.terms.size() > 1) return node;
    ExpressionNode only = std::move(node.terms.front());
    return only;
  }
  ExpressionNode factor(int depth) {
    if (depth > deepest) return fail("too many brackets", "at most 32, one within the other");
    const char first = next();
    if (first == '(') {
      ++at_;
      ExpressionNode inner = sum(depth + 1);
      close();
      return inner;
    }
    if (is_digit(first)) return {ExpressionNode::Kind::number, word(), {}, {}};
    if (!is_letter(first)) return fail("no factor", "a number, a name or a bracket");
    const std::string_view name = word();
    if (next() != '(') return {ExpressionNode::Kind::name, name, {}, {}};
    ExpressionNode call{ExpressionNode::Kind::call, name, {}, {}};
    do {
      ++at_;
      call.terms.push_back(sum(depth + 1));
    } while (problem_.empty() && next() == ',');
    close();
    return call;
  }

  void close() {
    if (!problem_.empty()) return;
    if (next() == ')')
      ++at_;
    else
      fail("an open bracket", "a closing bracket");
  }
  /// Notes the first problem, behind which nothing is read.
  ExpressionNode fail(std::string_view problem, std::string_view expected) {
    problem_ = problem, expected_ = expected, problem_at_ = at_;
    return {ExpressionNode::Kind::number, {}, {}, {}};
  }
  std::string_view word() {
    const std::size_t begin = at_;
    while (at_ < body_.size() && (is_letter(body_[at_]) || is_digit(body_[at_]) || body_[at_] == '.')) ++at_;
    return body_.substr(begin, at_ - begin);
  }
  void skip_spaces() {
    while (at_ < body_.size() && body_[at_] == ' ') ++at_;
  }
  char next() {
    skip_spaces();
    return at_ < body_.size() ? body_[at_] : '\0';
  }
  static bool is_digit(char c) { return c >= '0' && c <= '9'; }
  static bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '_'; }

  std::string_view body_;
  std::size_t at_ = 0;
  std::string_view problem_;
  std::string_view expected_;
  std::size_t problem_at_ = 0;
};

}  // namespace detail

/// Reads the body of a formula; its views point into `body`, which must outlive the expression.
/// @return the expression; or a parse error with the position, and what was expected there.
[[nodiscard]] inline Result<ExpressionNode> try_read_expression(std::string_view body) {
  return detail::ExpressionReader(body).read();
}

}  // namespace layshaft
