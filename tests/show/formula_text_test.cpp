// SPDX-License-Identifier: MIT
#include <layshaft/show/formula_text.hpp>

#include <layshaft/formulas.hpp>

#include <gtest/gtest.h>

#include <string>
#include <string_view>
#include <utility>

namespace {
using namespace layshaft;

TEST(FormulaText, SetsAFormulaInItsSymbols) {
  EXPECT_EQ(to_text(formula::road_speed::about), "v = n * U / (1 rev * i)");
  EXPECT_EQ(to_tex(formula::road_speed::about), "v = \\frac{n \\cdot U}{1\\,\\mathrm{rev} \\cdot i}");
  EXPECT_EQ(to_text(formula::highest_lawful_reading::about), "V1,max = V2 + 0.1 * V2 + 4 km/h");
  EXPECT_EQ(to_text(formula::loop_links::about),
            "x = 2 * C * cos(phi) / p + (z1 + z2) / 2 + phi * (z2 - z1) / (180 deg)");
  EXPECT_EQ(to_text(formula::thrust_change::about), "delta_F = F - 1");
  EXPECT_EQ(to_tex(formula::contribution::about),
            "c = \\frac{F - 1}{\\ln\\left(F\\right)} \\cdot \\ln\\left(f\\right)");
}

TEST(FormulaText, SetsFunctionsOfNumbersAsMathematicsDoes) {
  EXPECT_EQ(to_text(formula::air_drag::about), "F_air = k_2 * v_air * abs(v_air)");
  EXPECT_NE(to_tex(formula::air_drag::about).find("\\left|v_{\\mathrm{air}}\\right|"), std::string::npos);
  EXPECT_EQ(to_text(formula::best_ratio::about), "i_best = i_hold + sqrt(i_hold * i_hold + m_mv / m_e1)");
  EXPECT_NE(to_text(formula::coasting_time::about).find("arctan(sqrt(q_c)) / sqrt(q_c)"), std::string::npos);
  EXPECT_NE(to_text(formula::air_pressure::about).find("exp(ln(T_isa / T_0) * c_p)"), std::string::npos);
}

TEST(FormulaText, KeepsBracketsWhereTheyCount) {
  EXPECT_EQ(to_text({"pitch", "", "", "a - (b - c)", sources::definition}), "p = a - (b - c)");
  EXPECT_EQ(to_text({"pitch", "", "", "a / (b / c)", sources::definition}), "p = a * c / b");
  EXPECT_EQ(to_text({"pitch", "", "", "a / (b * c)", sources::definition}), "p = a / (b * c)");
  EXPECT_EQ(to_text({"pitch", "", "", "(a + b) * c", sources::definition}), "p = (a + b) * c");
  EXPECT_EQ(to_text({"pitch", "", "", "(a + b) / c", sources::definition}), "p = (a + b) / c");
  EXPECT_EQ(to_text({"pitch", "", "", "1.0 / a / b", sources::definition}), "p = 1 / (a * b)");
}

/// Pitch by a body of its own.
Formula pitch_by(const char* body) { return {"pitch", "", "", body, sources::definition}; }

TEST(FormulaText, SetsANameThatIsNoWordOfTheGlossaryAsItself) {
  EXPECT_EQ(to_text(pitch_by("aha * pitch")), "p = aha * p");
  EXPECT_EQ(to_tex(pitch_by("aha * pitch")), "p = \\mathrm{aha} \\cdot p");
  EXPECT_EQ(to_mathml(pitch_by("aha * pitch")),
            "<math xmlns=\"http://www.w3.org/1998/Math/MathML\"><mrow><mi>p</mi><mo>=</mo>"
            "<mi>aha</mi><mo>\u00b7</mo><mi>p</mi></mrow></math>");
}

TEST(FormulaText, PutsBracketsIntoAPowerWhereTheyCount) {
  for (const auto& [body, line] : {std::pair{"to_the(a, b)", "p = a^b"},
                                   {"to_the(a, 2.0)", "p = a^2"},
                                   {"to_the(2.0, a)", "p = (2)^a"},
                                   {"to_the(a + b, c)", "p = (a + b)^c"},
                                   {"to_the(ln(a), c)", "p = (ln(a))^c"},
                                   {"to_the(a, b + c)", "p = a^(b + c)"},
                                   {"to_the(a, b / c)", "p = a^(b / c)"}})
    EXPECT_EQ(to_text(pitch_by(body)), line);
}

TEST(FormulaText, SaysWhyABodyCannotBeRead) {
  for (const std::string& line : {to_text(pitch_by("a ? b")), to_tex(pitch_by("a ? b")), to_mathml(pitch_by("a ? b"))})
    EXPECT_EQ(line, try_read_expression("a ? b").error().what());
}

TEST(FormulaText, SetsNothingForANodeOfNoKind) {
  const detail::Typesetter<detail::PlainText, std::string (*)(std::string_view)> plain(
      detail::set_word<detail::PlainText>);
  EXPECT_EQ(plain.set({ExpressionNode::Kind::name, "pitch", {}, {}}), "p");
  EXPECT_EQ(plain.set({static_cast<ExpressionNode::Kind>(99), "pitch", {}, {}}), "");
}

TEST(MathMlText, KnowsGreekLettersAndWhereALettersIndexBegins) {
  for (const auto& [name, letter] : {std::pair{"phi", "\u03c6"},
                                     {"alpha", "\u03b1"},
                                     {"theta", "\u03b8"},
                                     {"delta", "\u03b4"},
                                     {"Delta", "\u0394"},
                                     {"eta", "\u03b7"},
                                     {"epsilon", "\u03b5"},
                                     {"mu", "\u03bc"},
                                     {"rho", "\u03c1"},
                                     {"lambda", "\u03bb"},
                                     {"z", "z"},
                                     {"Z", "Z"}}) {
    const std::string base = "<mi>" + std::string(letter) + "</mi>";
    EXPECT_EQ(detail::MathMl::symbol({name, ""}), base);
    for (const char* index : {"1", "~", "[", "_1"}) {  // signs from before, between and behind the letters
      const std::string below = index[0] == '_' ? index + 1 : index;
      EXPECT_EQ(detail::MathMl::symbol({name + std::string(index), ""}),
                "<msub>" + base + "<mi mathvariant=\"normal\">" + below + "</mi></msub>");
    }
  }
}

TEST(MathMlText, SetsASignAndAUnitBesideANumberAsOnePiece) {
  EXPECT_EQ(detail::MathMl::number("12", ""), "<mn>12</mn>");
  EXPECT_EQ(detail::MathMl::number("-12", ""), "<mrow><mo form=\"prefix\">\u2212</mo><mn>12</mn></mrow>");
  EXPECT_EQ(detail::MathMl::number("12", "mm"),
            "<mrow><mn>12</mn><mspace width=\"0.2em\"/><mi mathvariant=\"normal\">mm</mi></mrow>");
}

TEST(FormulaText, SetsEveryFormulaWithoutAStrayTwoPi) {
  for (const Formula* formula : all_formulas) {
    for (const std::string& line : {to_text(*formula), to_tex(*formula), to_mathml(*formula)}) {
      EXPECT_EQ(line.find(" at position "), std::string::npos) << line;  // an error in place of a line
      EXPECT_EQ(line.find("turn"), std::string::npos) << line;
    }
  }
}

TEST(FormulaText, SetsAUnitBelowALineInBrackets) {
  EXPECT_EQ(to_text(formula::wrap_front::about), "theta1 = 180 deg - 2 * phi");
  EXPECT_EQ(to_tex(formula::wrap_front::about), "\\theta_1 = 180^{\\circ} - 2 \\cdot \\varphi");
  EXPECT_EQ(to_text(formula::pitch_diameter::about), "d = p / sin(180 deg / z)");
  EXPECT_EQ(to_text(formula::passes::about), "j = z / gcd(z, X)");
}

}  // namespace
