// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/formula.hpp>
#include <layshaft/core/symbol.hpp>
#include <layshaft/show/escape.hpp>
#include <layshaft/show/expression.hpp>

#include <string>
#include <string_view>
#include <utility>
#include <vector>

/// @file
/// A formula in the symbols of its subject: as plain text, as TeX, as MathML. Read from the very text of the code that
/// computes it. Opt-in.
namespace layshaft {

namespace detail {

/// How one kind of text sets the parts of an expression. A turn is set as 1 rev and half of one as 180 degrees, never
/// as a number times pi, so that a pupil can multiply the line out.
struct PlainText {
  static std::string symbol(const Symbol& symbol) { return symbol.text; }
  static std::string name(std::string_view name) { return std::string(name); }
  static std::string number(std::string_view digits, std::string_view unit) {
    return std::string(digits).append(unit.empty() ? "" : " ").append(unit);
  }
  static std::string pi() { return "pi"; }
  static std::string call(std::string_view function, const std::string& arguments) {
    return std::string(function).append("(").append(arguments).append(")");
  }
  static std::string root(const std::string& argument) { return call("sqrt", argument); }
  static std::string power(const std::string& base, const std::string& exponent) { return base + "^" + exponent; }
  static std::string cube_root(const std::string& argument) { return call("cbrt", argument); }
  static std::string size(const std::string& argument) { return call("abs", argument); }
  static std::string bracket(const std::string& inner) { return "(" + inner + ")"; }
  static std::string plus() { return " + "; }
  static std::string minus() { return " - "; }
  static std::string times() { return " * "; }
  static std::string comma(char decimal) { return decimal == ',' ? "; " : ", "; }
  static std::string equals() { return " = "; }
  static std::string fraction(const std::string& over, const std::string& under, bool over_sum, bool under_many) {
    return (over_sum ? bracket(over) : over) + " / " + (under_many ? bracket(under) : under);
  }
  static std::string whole(const std::string& line) { return line; }
};

struct Tex {
  static std::string symbol(const Symbol& symbol) { return symbol.tex; }
  static std::string name(std::string_view name) { return "\\mathrm{" + std::string(name) + "}"; }
  static std::string number(std::string_view digits, std::string_view unit) {
    std::string out;
    for (const char c : digits) out.append(c == ',' ? "{,}" : std::string(1, c));
    if (unit == "%") return out.append("\\,\\%");
    if (unit == "deg") return out.append("^{\\circ}");
    if (unit.empty()) return out;
    out.append("\\,\\mathrm{");
    for (const char c : unit) out.append(c == ' ' ? "\\," : std::string(1, c));
    return out.append("}");
  }
  static std::string pi() { return "\\pi"; }
  static std::string call(std::string_view function, const std::string& arguments) {
    return std::string("\\").append(function).append("\\left(").append(arguments).append("\\right)");
  }
  static std::string root(const std::string& argument) { return "\\sqrt{" + argument + "}"; }
  static std::string power(const std::string& base, const std::string& exponent) {
    return "{" + base + "}^{" + exponent + "}";
  }
  static std::string cube_root(const std::string& argument) { return "\\sqrt[3]{" + argument + "}"; }
  static std::string size(const std::string& argument) { return "\\left|" + argument + "\\right|"; }
  static std::string bracket(const std::string& inner) { return "\\left(" + inner + "\\right)"; }
  static std::string plus() { return " + "; }
  static std::string minus() { return " - "; }
  static std::string times() { return " \\cdot "; }
  static std::string comma(char decimal) { return decimal == ',' ? ";\\, " : ",\\, "; }
  static std::string equals() { return " = "; }
  static std::string fraction(const std::string& over, const std::string& under, bool, bool) {
    return "\\frac{" + over + "}{" + under + "}";
  }
  static std::string whole(const std::string& line) { return line; }
};

struct MathMl {
  /// A symbol is a letter, or a Greek letter by its name, with an index behind it: V1,0 or d_a,max; a prime comes last.
  static std::string symbol(const Symbol& symbol) {
    std::string_view text = symbol.text;
    const bool prime = text.ends_with('\'');
    if (prime) text.remove_suffix(1);
    std::size_t letters = 0;
    while (letters < text.size() &&
           ((text[letters] >= 'a' && text[letters] <= 'z') || (text[letters] >= 'A' && text[letters] <= 'Z')))
      ++letters;
    const std::string base = "<mi>" + greek(text.substr(0, letters)) + "</mi>";
    std::string_view index = text.substr(letters);
    if (index.starts_with('_')) index.remove_prefix(1);
    const std::string below = index.empty() ? "<mrow/>" : "<mi mathvariant=\"normal\">" + escape_html(index) + "</mi>";
    if (prime) return "<msubsup>" + base + below + "<mo>\u2032</mo></msubsup>";
    return index.empty() ? base : "<msub>" + base + below + "</msub>";
  }
  static std::string name(std::string_view name) { return "<mi>" + escape_html(name) + "</mi>"; }
  static std::string number(std::string_view digits, std::string_view unit) {
    const bool negative = digits.starts_with('-');
    if (negative) digits.remove_prefix(1);
    std::string out = (negative ? "<mo form=\"prefix\">\u2212</mo><mn>" : "<mn>") + std::string(digits) + "</mn>";
    if (unit == "deg")
      out.append("<mi mathvariant=\"normal\">\u00b0</mi>");
    else if (!unit.empty())
      out.append("<mspace width=\"0.2em\"/><mi mathvariant=\"normal\">" + escape_html(unit) + "</mi>");
    if (unit.empty() && !negative) return out;
    return row(out);
  }
  static std::string pi() { return "<mi>\u03c0</mi>"; }
  static std::string call(std::string_view function, const std::string& arguments) {
    return row("<mi>" + escape_html(function) + "</mi><mo>&#x2061;</mo>" + bracket(arguments));
  }
  static std::string root(const std::string& argument) { return "<msqrt>" + argument + "</msqrt>"; }
  static std::string power(const std::string& base, const std::string& exponent) {
    return "<msup>" + row(base) + row(exponent) + "</msup>";
  }
  static std::string cube_root(const std::string& argument) { return "<mroot>" + row(argument) + "<mn>3</mn></mroot>"; }
  static std::string size(const std::string& argument) { return row("<mo>|</mo>" + argument + "<mo>|</mo>"); }
  static std::string bracket(const std::string& inner) { return row("<mo>(</mo>" + inner + "<mo>)</mo>"); }
  static std::string plus() { return "<mo>+</mo>"; }
  static std::string minus() { return "<mo>\u2212</mo>"; }
  static std::string times() { return "<mo>\u00b7</mo>"; }
  static std::string comma(char decimal) { return decimal == ',' ? "<mo>;</mo>" : "<mo>,</mo>"; }
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
    if (letter == "alpha") return "\u03b1";
    if (letter == "theta") return "\u03b8";
    if (letter == "delta") return "\u03b4";
    if (letter == "Delta") return "\u0394";
    if (letter == "eta") return "\u03b7";
    if (letter == "epsilon") return "\u03b5";
    if (letter == "mu") return "\u03bc";
    if (letter == "rho") return "\u03c1";
    if (letter == "lambda") return "\u03bb";
    return std::string(letter);
  }
  static std::string row(const std::string& inner) { return "<mrow>" + inner + "</mrow>"; }
};

/// The symbol of a word of the glossary; a name that is none stands for itself.
template <class Setting>
[[nodiscard]] std::string set_word(std::string_view name) {
  const Word* word = find_word(name);
  return word ? Setting::symbol({std::string(word->symbol), std::string(word->tex)}) : Setting::name(name);
}

/// Sets an expression in one kind of text. `Names` sets a parameter: its symbol, or the number put in for it.
template <class Setting, class Names>
class Typesetter {
 public:
  explicit Typesetter(Names names, char decimal = '.') : names_(std::move(names)), decimal_(decimal) {}

  [[nodiscard]] std::string set(const ExpressionNode& node) const {
    switch (node.kind) {
      case ExpressionNode::Kind::number: return number(node.text);
      case ExpressionNode::Kind::name: return name(node.text);
      case ExpressionNode::Kind::call: return call(node);
      case ExpressionNode::Kind::sum: return sum(node);
      case ExpressionNode::Kind::product: return product(node);
    }
    return {};
  }

 private:
  std::string name(std::string_view name) const {
    if (name == "pi") return Setting::pi();
    if (name == "turn") return Setting::number("1", "rev");
    if (name == "half_turn") return Setting::number("180", "deg");
    return names_(name);
  }
  /// "2.0" as 2, "4.0_kmh" as 4 km/h.
  std::string number(std::string_view literal) const {
    const std::size_t suffix = literal.find('_');
    std::string digits(literal.substr(0, suffix));
    if (digits.ends_with(".0")) digits.resize(digits.size() - 2);
    for (char& c : digits)
      if (c == '.') c = decimal_;
    std::string_view unit = suffix == std::string_view::npos ? "" : literal.substr(suffix + 1);
    if (unit == "kmh") unit = "km/h";
    return Setting::number(digits, unit);
  }
  std::string call(const ExpressionNode& node) const {
    if (node.text == "to_the") {
      const auto part = [&](const ExpressionNode& term, bool plain) {
        const bool bare = plain && term.kind != ExpressionNode::Kind::sum && term.kind != ExpressionNode::Kind::product;
        return bare ? set(term) : Setting::bracket(set(term));
      };
      return Setting::power(part(node.terms[0], node.terms[0].kind == ExpressionNode::Kind::name),
                            part(node.terms[1], true));
    }
    if (node.text == "cube_root") return Setting::cube_root(set(node.terms[0]));
    if (node.text == "sqrt" || node.text == "square_root") return Setting::root(set(node.terms[0]));
    if (node.text == "magnitude") return Setting::size(set(node.terms[0]));
    if (node.text == "arctan_ratio") {  // arctan(root) / root
      const std::string root = Setting::root(set(node.terms[0]));
      return Setting::fraction(Setting::call("arctan", root), root, false, false);
    }
    if (node.text == "logarithmic_mean") {  // (F - 1) / ln F
      const std::string ratio = set(node.terms[0]);
      return Setting::fraction(ratio + Setting::minus() + Setting::number("1", ""), Setting::call("ln", ratio), true,
                               false);
    }
    if (find_word(node.text)) return set_word<Setting>(node.text);  // another formula: its result
    std::string arguments;
    for (const ExpressionNode& term : node.terms)
      arguments += (arguments.empty() ? "" : Setting::comma(decimal_)) + set(term);
    return Setting::call(node.text == "common_factor" ? "gcd"
                         : node.text == "exponential" ? "exp"
                                                      : node.text,
                         arguments);
  }
  std::string sum(const ExpressionNode& node) const {
    std::string out;
    for (std::size_t i = 0; i < node.terms.size(); ++i) {
      if (i > 0) out += node.inverse[i] ? Setting::minus() : Setting::plus();
      const bool sum_taken_away = node.inverse[i] && node.terms[i].kind == ExpressionNode::Kind::sum;
      out += sum_taken_away ? Setting::bracket(set(node.terms[i])) : set(node.terms[i]);
    }
    return out;
  }
  /// Everything that is multiplied over everything that is divided by; a product within a product counts with it.
  std::string product(const ExpressionNode& node) const {
    std::vector<const ExpressionNode*> over, under;
    sort(node, false, over, under);
    if (under.empty()) return factors(over, false);
    const bool over_sum = over.size() == 1 && over[0]->kind == ExpressionNode::Kind::sum;
    const std::string divisor = factors(under, true);
    // "2 mm" below a line of text needs brackets, a function with its own does not
    const bool has_unit = under[0]->kind != ExpressionNode::Kind::call && divisor.find(' ') != std::string::npos;
    return Setting::fraction(factors(over, true), divisor, over_sum, under.size() > 1 || has_unit);
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
  std::string factors(const std::vector<const ExpressionNode*>& list, bool in_fraction) const {
    std::string out;
    for (const ExpressionNode* one : list) {
      if (!out.empty()) out += Setting::times();
      const bool bare = one->kind != ExpressionNode::Kind::sum || (in_fraction && list.size() == 1);
      out += bare ? set(*one) : Setting::bracket(set(*one));
    }
    return out;
  }

  Names names_;
  char decimal_;
};

template <class Setting>
[[nodiscard]] std::string formula_line(const Formula& formula) {
  const auto body = try_read_expression(formula.body);
  if (!body) return body.error().what();  // a test reads every body, so that nobody sees this
  const Typesetter<Setting, std::string (*)(std::string_view)> typesetter(set_word<Setting>);
  return Setting::whole(set_word<Setting>(formula.name) + Setting::equals() + typesetter.set(*body));
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
