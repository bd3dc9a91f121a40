// SPDX-License-Identifier: MIT
#include <layshaft/core/quantity_text.hpp>

#include <gtest/gtest.h>

#include <bit>
#include <clocale>
#include <cstdint>
#include <locale>
#include <random>
#include <string>

namespace {
using namespace layshaft;

TEST(ParseQuantity, ReadsANumberAndAUnit) {
  EXPECT_EQ(parse_quantity<Length>("612 mm"), 612_mm);
  EXPECT_EQ(parse_quantity<Length>("  612mm\t"), 612_mm);
  EXPECT_EQ(parse_quantity<Length>("+1.5 in"), 1.5_inch);
  EXPECT_EQ(parse_quantity<Length>("-6.12e2 mm"), -612_mm);
  EXPECT_EQ(parse_quantity<AngularSpeed>("9500 rpm"), 9500_rpm);
  EXPECT_EQ(parse_quantity<Speed>("90 km/h"), 90_kmh);
  EXPECT_EQ(parse_quantity<Torque>("15 lbf ft"), 15_lbf_ft);
  EXPECT_EQ(parse_quantity<Angle>("12°"), 12_deg);
  EXPECT_EQ(parse_quantity<Length>("612\u00a0mm"), 612_mm);  // spaces that typeset texts have there
  EXPECT_EQ(parse_quantity<Length>("612\u202f\u2009mm"), 612_mm);
  EXPECT_FALSE(try_parse_quantity<Length>("612\u00a0"));
}

struct Bad {
  const char* text;
  std::size_t position;
  const char* problem;
};

TEST(ParseQuantity, RefusesAnythingElseAndSaysWhere) {
  for (const auto& [text, position, problem] : {Bad{"", 0, "nothing to read"},
                                                {"   ", 3, "nothing to read"},
                                                {"mm", 0, "no number"},
                                                {"612", 3, "no unit"},
                                                {"612 ", 3, "no unit"},
                                                {"612 kg", 4, "unknown unit"},
                                                {"612 MM", 4, "unknown unit"},
                                                {"612 mm mm", 4, "unknown unit"},
                                                {"1,5 mm", 1, "unknown unit"},
                                                {"nan mm", 0, "not finite"},
                                                {"inf mm", 0, "not finite"},
                                                {"1e999 mm", 0, "too large"},
                                                {"--1 mm", 0, "no number"},
                                                {"+-1 mm", 0, "two signs"},
                                                {"+", 0, "no number"},
                                                {"0x10 mm", 1, "unknown unit"},
                                                {"1e308 mile", 0, "too large"}}) {
    const auto result = try_parse_quantity<Length>(text);
    ASSERT_FALSE(result) << text;
    EXPECT_EQ(result.error().kind(), ErrorKind::parse) << text;
    EXPECT_EQ(result.error().position(), position) << text;
    EXPECT_NE(std::string_view(result.error().what()).find(problem), std::string_view::npos) << result.error().what();
    EXPECT_NE(result.error().expected().find("units mm, cm, m, km, inch, mile"), std::string::npos);
    EXPECT_THROW(static_cast<void>(parse_quantity<Length>(text)), ParseError);
  }
}

TEST(ToText, WritesWhatSomebodyWouldWrite) {
  EXPECT_EQ(to_text(612_mm), "612 mm");
  EXPECT_EQ(to_text(1.5_inch), "1.5 inch");
  EXPECT_EQ(to_text(9500_rpm), "9500 rpm");
  EXPECT_EQ(to_text(90_kmh), "90 km/h");
  EXPECT_EQ(to_text(0.0_mm), "0 mm");
  EXPECT_EQ(to_text(-2.5_mm), "-2.5 mm");
}

template <class Quantity>
void round_trip(double value) {
  const Quantity quantity = Quantity::from_value(value);
  const auto back = try_parse_quantity<Quantity>(to_text(quantity));
  ASSERT_TRUE(back) << to_text(quantity);
  EXPECT_EQ(std::bit_cast<std::uint64_t>(back->value()), std::bit_cast<std::uint64_t>(value)) << to_text(quantity);
}

TEST(ToText, ReadsBackAsTheVerySameValue) {
  std::mt19937_64 random(20);
  std::uniform_real_distribution<double> exponent(-12.0, 12.0);
  for (int i = 0; i < 20000; ++i) {
    const double value = std::pow(10.0, exponent(random)) * (i % 2 == 0 ? 1.0 : -1.0);
    round_trip<Length>(value);
    round_trip<AngularSpeed>(value);
    round_trip<Speed>(value);
    round_trip<Power>(value);
  }
  for (const double value : {0.0, 5e-324, 1.7976931348623157e308, 2.2250738585072014e-308}) round_trip<Length>(value);
}

template <class... Quantities>
void round_trips_of_any_bits(int rounds) {
  std::mt19937_64 random(25);
  for (int i = 0; i < rounds; ++i) {
    const double value = std::bit_cast<double>(random());
    if (is_finite(value)) (round_trip<Quantities>(value), ...);
  }
  for (const double value : {0.0, -0.0, 5e-324, -5e-324, 2.2250738585072014e-308, 1.7976931348623157e308})
    (round_trip<Quantities>(value), ...);
}

TEST(ToText, ReadsBackWhateverTheBits) {
  round_trips_of_any_bits<Length, Area, Mass, Duration, Speed, Acceleration, Force, Torque, Power, Energy, Pressure,
                          Density, LinearDensity, ForcePerSpeed, Angle, AngularSpeed, MomentOfInertia, Temperature>(
      2000);
}

// Every spelling that is read, with a number that somebody would write.
template <class Quantity>
void reads_every_unit() {
  for (const UnitName& unit : QuantityNames<Quantity>::units) {
    const auto read = try_parse_quantity<Quantity>(std::string("2.5 ").append(unit.name));
    ASSERT_TRUE(read) << unit.name;
    EXPECT_EQ(read->value(), 2.5 * unit.unit) << unit.name;
    round_trip<Quantity>(read->value());
  }
}

TEST(ParseQuantity, ReadsEverySpellingOfEveryUnit) {
  reads_every_unit<Length>();
  reads_every_unit<Area>();
  reads_every_unit<Mass>();
  reads_every_unit<Duration>();
  reads_every_unit<Speed>();
  reads_every_unit<Acceleration>();
  reads_every_unit<Force>();
  reads_every_unit<Torque>();
  reads_every_unit<Power>();
  reads_every_unit<Energy>();
  reads_every_unit<Pressure>();
  reads_every_unit<Density>();
  reads_every_unit<LinearDensity>();
  reads_every_unit<ForcePerSpeed>();
  reads_every_unit<Angle>();
  reads_every_unit<AngularSpeed>();
  reads_every_unit<MomentOfInertia>();
  reads_every_unit<Temperature>();
}

/// Numbers as some countries write them, whether or not the system has a locale for it.
struct CommaForPoint : std::numpunct<char> {
  char do_decimal_point() const override { return ','; }
  char do_thousands_sep() const override { return '.'; }
  std::string do_grouping() const override { return "\3"; }
};

TEST(ToText, DoesNotMindTheLocale) {
  const std::string before = std::setlocale(LC_ALL, nullptr);
  const std::locale global = std::locale::global(std::locale(std::locale::classic(), new CommaForPoint));
  for (const char* name : {"de_DE.UTF-8", "de_DE", "fr_FR.UTF-8"})
    if (std::setlocale(LC_NUMERIC, name)) break;  // the C library's, where there is one
  EXPECT_EQ(to_text(1.5_mm), "1.5 mm");
  EXPECT_EQ(to_text(12500_rpm), "12500 rpm");
  EXPECT_EQ(parse_quantity<Length>("1.5 mm"), 1.5_mm);
  EXPECT_FALSE(try_parse_quantity<Length>("1,5 mm"));
  std::locale::global(global);
  std::setlocale(LC_ALL, before.c_str());
}

}  // namespace
