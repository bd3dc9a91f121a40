// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/formula.hpp>
#include <layshaft/core/glossary.hpp>
#include <layshaft/show/expression.hpp>

#include <string>
#include <string_view>

/// @file
/// A formula in the symbols of its subject: as plain text, as TeX, as MathML. Read from the very text of the code that
/// computes it. Opt-in.
namespace layshaft {

namespace detail {

/// How one kind of text sets the parts of an expression. A turn is set as 1 rev, never as 2 pi, so that a pupil can
/// multiply the line out.
struct PlainText {
  static std::string symbol(const Word& word) { return std::string(word.symbol); }
  static std::string name(std::string_view name) { return std::string(name); }
  static std::string number(std::string_view digits, std::string_view unit) {
    return std::string(digits).append(unit.empty() ? "" : " ").append(unit);
  }
  static std::string pi() { return "pi"; }
  static std::string half(std::string_view unit) { return number("0.5", unit); }
  static std::string call(std::string_view function, const std::string& argument) {
    return std::string(function).append("(").append(argument).append(")");
  }
  static std::string root(const std::string& argument) { return call("sqrt", argument); }
  static std::string bracket(const std::string& inner) { return "(" + inner + ")"; }
  static std::string plus() { return " + "; }
  static std::string minus() { return " - "; }
  static std::string times() { return " * "; }
  static std::string equals() { return " = "; }
  static std::string fraction(const std::string& over, const std::string& under, bool over_sum, bool under_many) {
    return (over_sum ? bracket(over) : over) + " / " + (under_many ? bracket(under) : under);
  }
  static std::string whole(const std::string& line) { return line; }
};

struct Tex {
  static std::string symbol(const Word& word) { return std::string(word.tex); }
  static std::string name(std::string_view name) { return "\\mathrm{" + std::string(name) + "}"; }
  static std::string number(std::string_view digits, std::string_view unit) {
    return std::string(digits).append(unit.empty() ? "" : "\\,\\mathrm{" + std::string(unit) + "}");
  }
  static std::string pi() { return "\\pi"; }
  static std::string half(std::string_view unit) { return "\\frac{1}{2}\\,\\mathrm{" + std::string(unit) + "}"; }
  static std::string call(std::string_view function, const std::string& argument) {
    return std::string("\\").append(function).append("\\left(").append(argument).append("\\right)");
  }
  static std::string root(const std::string& argument) { return "\\sqrt{" + argument + "}"; }
  static std::string bracket(const std::string& inner) { return "\\left(" + inner + "\\right)"; }
  static std::string plus() { return " + "; }
  static std::string minus() { return " - "; }
  static std::string times() { return " \\cdot "; }
  static std::string equals() { return " = "; }
  static std::string fraction(const std::string& over, const std::string& under, bool, bool) {
    return "\\frac{" + over + "}{" + under + "}";
  }
  static std::string whole(const std::string& line) { return line; }
};

struct MathMl {
  static std::string escaped(std::string_view text) {
    std::string out;
    for (const char c : text) {
      if (c == '&')
        out.append("&amp;");
      else if (c == '<')
        out.append("&lt;");
      else
        out.push_back(c);
    }
    return out;
  }
  /// A symbol is a letter, or a Greek letter by its name, with an index behind it: V1,0 or d_a,max; a prime comes last.
  static std::string symbol(const Word& word) {
    std::string_view text = word.symbol;
    const bool prime = text.ends_with('\'');
    if (prime) text.remove_suffix(1);
    std::size_t letters = 0;
    while (letters < text.size() &&
           ((text[letters] >= 'a' && text[letters] <= 'z') || (text[letters] >= 'A' && text[letters] <= 'Z')))
      ++letters;
    const std::string base = "<mi>" + greek(text.substr(0, letters)) + "</mi>";
    std::string_view index = text.substr(letters);
    if (index.starts_with('_')) index.remove_prefix(1);
    const std::string below = index.empty() ? "<mrow/>" : "<mi mathvariant=\"normal\">" + escaped(index) + "</mi>";
    if (prime) return "<msubsup>" + base + below + "<mo>\u2032</mo></msubsup>";
    return index.empty() ? base : "<msub>" + base + below + "</msub>";
  }
  static std::string name(std::string_view name) { return "<mi>" + escaped(name) + "</mi>"; }
  static std::string number(std::string_view digits, std::string_view unit) {
    std::string out = "<mn>" + std::string(digits) + "</mn>";
    return unit.empty() ? out
                        : row(out + "<mspace width=\"0.2em\"/><mi mathvariant=\"normal\">" + escaped(unit) + "</mi>");
  }
  static std::string pi() { return "<mi>\u03c0</mi>"; }
  static std::string half(std::string_view unit) {
    return row("<mfrac><mn>1</mn><mn>2</mn></mfrac><mspace width=\"0.2em\"/><mi mathvariant=\"normal\">" +
               escaped(unit) + "</mi>");
  }
  static std::string call(std::string_view function, const std::string& argument) {
    return row("<mi>" + escaped(function) + "</mi><mo>&#x2061;</mo>" + bracket(argument));
  }
  static std::string root(const std::string& argument) { return "<msqrt>" + argument + "</msqrt>"; }
  static std::string bracket(const std::string& inner) { return row("<mo>(</mo>" + inner + "<mo>)</mo>"); }
  static std::string plus() { return "<mo>+</mo>"; }
  static std::string minus() { return "<mo>\u2212</mo>"; }
  static std::string times() { return "<mo>\u00b7</mo>"; }
  static std::string equals() { return "<mo>=</mo>"; }
  static std::string fraction(const std::string& over, const std::string& under, bool, bool) {
    return "<mfrac>" + row(over) + row(under) + "</mfrac>";
  }
  static std::string whole(const std::string& line) {
    return "<math xmlns=\"http://www.w3.org/1998/Math/MathML\">" + row(line) + "</math>";
  }

 private:
  static std::string greek(std::string_view letter) {
    if (letter == "phi") return "\u03c6";
    if (letter == "theta") return "\u03b8";
    if (letter == "delta") return "\u03b4";
    if (letter == "Delta") return "\u0394";
    return std::string(letter);
  }
  static std::string row(const std::string& inner) { return "<mrow>" + inner + "</mrow>"; }
};

/// Sets an expression in one kind of text.
template <class Setting>
class Typesetter {
 public:
  [[nodiscard]] static std::string set(const ExpressionNode& node) {
    switch (node.kind) {
      case ExpressionNode::Kind::number: return number(node.text);
      case ExpressionNode::Kind::name: return name(node.text);
      case ExpressionNode::Kind::call: return call(node);
      case ExpressionNode::Kind::sum: return sum(node);
      case ExpressionNode::Kind::product: return product(node);
    }
    return {};
  }
  [[nodiscard]] static std::string name(std::string_view name) {
    if (name == "pi") return Setting::pi();
    if (name == "turn") return Setting::number("1", "rev");
    if (name == "half_turn") return Setting::half("rev");
    const Word* word = find_word(name);
    return word ? Setting::symbol(*word) : Setting::name(name);
  }

 private:
  /// "2.0" as 2, "4.0_kmh" as 4 km/h.
  static std::string number(std::string_view literal) {
    const std::size_t suffix = literal.find('_');
    std::string_view digits = literal.substr(0, suffix);
    if (digits.ends_with(".0")) digits.remove_suffix(2);
    std::string_view unit = suffix == std::string_view::npos ? "" : literal.substr(suffix + 1);
    if (unit == "kmh") unit = "km/h";
    return Setting::number(digits, unit);
  }
  static std::string call(const ExpressionNode& node) {
    if (node.text == "sqrt") return Setting::root(set(node.terms[0]));
    if (node.text == "logarithmic_mean") {  // (F - 1) / ln F
      const std::string ratio = set(node.terms[0]);
      return Setting::fraction(ratio + Setting::minus() + Setting::number("1", ""), Setting::call("ln", ratio), true,
                               false);
    }
    if (find_word(node.text)) return name(node.text);  // another formula: its result
    return Setting::call(node.text, set(node.terms[0]));
  }
  static std::string sum(const ExpressionNode& node) {
    std::string out;
    for (std::size_t i = 0; i < node.terms.size(); ++i) {
      if (i > 0) out += node.inverse[i] ? Setting::minus() : Setting::plus();
      const bool sum_taken_away = node.inverse[i] && node.terms[i].kind == ExpressionNode::Kind::sum;
      out += sum_taken_away ? Setting::bracket(set(node.terms[i])) : set(node.terms[i]);
    }
    return out;
  }
  /// Everything that is multiplied over everything that is divided by; a product within a product counts with it.
  static std::string product(const ExpressionNode& node) {
    std::vector<const ExpressionNode*> over, under;
    sort(node, false, over, under);
    if (under.empty()) return factors(over, false);
    const bool over_sum = over.size() == 1 && over[0]->kind == ExpressionNode::Kind::sum;
    const bool under_many = under.size() > 1 || under[0]->kind == ExpressionNode::Kind::sum;
    return Setting::fraction(factors(over, true), factors(under, true), over_sum, under_many);
  }
  static void sort(const ExpressionNode& node, bool divided, std::vector<const ExpressionNode*>& over,
                   std::vector<const ExpressionNode*>& under) {
    for (std::size_t i = 0; i < node.terms.size(); ++i) {
      const bool below = divided != node.inverse[i];
      if (node.terms[i].kind == ExpressionNode::Kind::product)
        sort(node.terms[i], below, over, under);
      else
        (below ? under : over).push_back(&node.terms[i]);
    }
  }
  /// Factors side by side; sums in brackets, but for one that stands alone in a fraction.
  static std::string factors(const std::vector<const ExpressionNode*>& list, bool in_fraction) {
    if (list.empty()) return Setting::number("1", "");
    std::string out;
    for (const ExpressionNode* one : list) {
      if (!out.empty()) out += Setting::times();
      const bool bare = one->kind != ExpressionNode::Kind::sum || (in_fraction && list.size() == 1);
      out += bare ? set(*one) : Setting::bracket(set(*one));
    }
    return out;
  }
};

template <class Setting>
[[nodiscard]] std::string formula_line(const Formula& formula) {
  const auto body = try_read_expression(formula.body);
  if (!body) return body.error().what();  // a test reads every body, so that nobody sees this
  return Setting::whole(Typesetter<Setting>::name(formula.name) + Setting::equals() + Typesetter<Setting>::set(*body));
}

}  // namespace detail

/// The formula as a line of plain text: "v = n * U / (1 rev * i)".
[[nodiscard]] inline std::string to_text(const Formula& formula) {
  return detail::formula_line<detail::PlainText>(formula);
}
/// The formula as TeX, for mathematics mode.
[[nodiscard]] inline std::string to_tex(const Formula& formula) { return detail::formula_line<detail::Tex>(formula); }
/// The formula as a MathML element.
[[nodiscard]] inline std::string to_mathml(const Formula& formula) {
  return detail::formula_line<detail::MathMl>(formula);
}

}  // namespace layshaft
