// SPDX-License-Identifier: MIT
#include <layshaft/show/formula_text.hpp>

#include <layshaft/formulas.hpp>

#include <gtest/gtest.h>

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
