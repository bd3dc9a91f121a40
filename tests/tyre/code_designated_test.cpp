// SPDX-License-Identifier: MIT
#include <layshaft/tyre/code_designated.hpp>

#include "../reference/csv.hpp"

#include <gtest/gtest.h>
#include <core/formula_range.hpp>

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <iterator>
#include <map>
#include <memory>
#include <string>
#include <string_view>
#include <tuple>
#include <vector>

namespace {
using namespace layshaft;
using layshaft_test::expect_range;
using layshaft_test::number;

const std::map<std::string, TyreFamily> families{
    {"normal-section code-designated (rim code 14+)", TyreFamily::normal_section},
    {"low-section code-designated", TyreFamily::low_section},
    {"small rim (code 12 and below)", TyreFamily::small_rim},
    {"low-pressure (Table 6)", TyreFamily::low_pressure},
    {"American (alphanumeric, Table 7)", TyreFamily::lettered},
};

// Data against data: every row of tests/reference/tyre_code_designated.csv is from memory.
TEST(CodeDesignatedTyre, HasTheDimensionsOfTheReference) {
  const auto rows = layshaft_test::read_csv("tyre_code_designated.csv");
  ASSERT_EQ(rows.size(), std::size(code_designated_tyres));
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const auto& row = rows[i];
    const CodeDesignatedTyre& tyre = code_designated_tyres[i];
    std::string designation = std::string(tyre.section).append("-").append(find_rim_code(tyre.rim_code)->name);
    if (row.at("designation").ends_with("M/C")) designation += "M/C";  // a mark, which the table does not need
    EXPECT_EQ(designation, row.at("designation"));
    EXPECT_EQ(tyre.family, families.at(row.at("family"))) << designation;
    EXPECT_EQ(tyre.measuring_rim_width, number(row.at("measuring_rim_width_code"))) << designation;
    EXPECT_EQ(tyre.least_diameter, number(row.at("overall_diameter_min_mm")) * units::mm) << designation;
    EXPECT_EQ(tyre.diameter, number(row.at("overall_diameter_mm")) * units::mm) << designation;
    EXPECT_EQ(tyre.greatest_diameter, number(row.at("overall_diameter_max_mm")) * units::mm) << designation;
    EXPECT_EQ(tyre.section_width, number(row.at("section_width_mm")) * units::mm) << designation;
    EXPECT_EQ(tyre.greatest_section_width, number(row.at("section_width_max_mm")) * units::mm) << designation;
    const std::string& special = row.at("overall_diameter_max_special_use_mm");
    ASSERT_EQ(tyre.greatest_diameter_special.has_value(), !special.empty()) << designation;
    if (!special.empty()) {
      EXPECT_EQ(*tyre.greatest_diameter_special, number(special) * units::mm) << designation;
    }
    EXPECT_EQ(to_string(code_designated_source.certainty), row.at("certainty")) << designation;
  }
}

TEST(CodeDesignatedTyre, HasItsDimensionsInOrder) {
  for (const CodeDesignatedTyre& tyre : code_designated_tyres) {
    EXPECT_LT(find_rim_code(tyre.rim_code)->diameter, tyre.least_diameter) << tyre.section;
    EXPECT_LT(tyre.least_diameter, tyre.diameter) << tyre.section;
    EXPECT_LT(tyre.diameter, tyre.greatest_diameter) << tyre.section;
    if (tyre.greatest_diameter_special) {
      EXPECT_LT(tyre.greatest_diameter, *tyre.greatest_diameter_special);
    }
    EXPECT_LT(tyre.section_width, tyre.greatest_section_width) << tyre.section;
    EXPECT_TRUE(detail::serves(tyre.family, tyre.rim_code)) << tyre.section;
    EXPECT_EQ(rim_codes[detail::section_keys.rims[&tyre - code_designated_tyres]].code, tyre.rim_code) << tyre.section;
  }
}

// What lets a row serve other rims: overall diameter less rim diameter stands within 1 mm of one value. Section 2 1/2
// is narrower on its rim of 12 (62 instead of 70 mm), which makes it another tyre.
TEST(CodeDesignatedTyre, StandsEquallyHighOnEveryRim) {
  std::map<std::tuple<TyreFamily, std::string_view, double>, std::vector<double>> heights;
  for (const CodeDesignatedTyre& tyre : code_designated_tyres)
    heights[{tyre.family, tyre.section, tyre.section_width / units::mm}].push_back(
        (tyre.diameter - find_rim_code(tyre.rim_code)->diameter) / units::mm);
  int compared = 0;
  for (const auto& [key, values] : heights) {
    const auto [least, greatest] = std::minmax_element(values.begin(), values.end());
    EXPECT_LE(*greatest - *least, 2.0 + 1e-9) << std::get<1>(key);
    compared += values.size() > 1;
  }
  EXPECT_EQ(compared, 23);  // the other sections have one rim
}

TEST(CodeDesignatedTyre, IsFoundByItsOwnSectionAndRim) {
  for (const CodeDesignatedTyre& tyre : code_designated_tyres)
    EXPECT_EQ(find_code_designated(tyre.section, tyre.rim_code), &tyre) << tyre.section;
}

TEST(CodeDesignatedTyre, OnAnotherRimIsTheOneOnTheNearest) {
  static_assert(find_code_designated("4.10", 21)->rim_code == 19);
  static_assert(find_code_designated("4.10", 8)->rim_code == 18);
  static_assert(find_code_designated("3.00", 20)->rim_code == 19);  // of two equally near the smaller
  static_assert(find_code_designated("3.00", 10)->family == TyreFamily::small_rim);
  static_assert(find_code_designated("3.00", 14)->family == TyreFamily::normal_section);
  static_assert(find_code_designated("MT90", 18)->rim_code == 17);
}

TEST(CodeDesignatedTyre, IsNotFoundWhereNoFamilyHasTheSection) {
  static_assert(detail::row_of_code_designated("3.00", 13) < 0);  // between the rims of the two families
  static_assert(detail::row_of_code_designated("2.75", 10) < 0);  // on larger rims only
  static_assert(detail::row_of_code_designated("4.20", 18) < 0);
  static_assert(detail::row_of_code_designated("4.1", 18) < 0);  // sections are names, not numbers
  static_assert(detail::row_of_code_designated("", 18) < 0);
  EXPECT_EQ(find_code_designated("4.20", 18), nullptr);
  static_assert(noexcept(find_code_designated("4.10", 18)));
}

TEST(CodeDesignatedTyre, ShiftsByTheDifferenceOfTheRims) {
  EXPECT_NEAR(overall_diameter_on_another_rim(641_mm, 457_mm, 533_mm) / units::mm, 717.0, 1e-9);
  EXPECT_EQ(overall_diameter_on_another_rim(641_mm, 457_mm, 457_mm), 641_mm);
  EXPECT_TRUE(formula::overall_diameter_on_another_rim::in_range(641_mm, 457_mm, 533_mm));
  EXPECT_FALSE(formula::overall_diameter_on_another_rim::in_range(441_mm, 457_mm, 533_mm));
}

TEST(CodeDesignatedTyre, MissingFromTheTableHasNeighbours) {
  const struct {
    std::string_view section;
    bool lettered;
    double rim_code;
    std::string_view below, above;
  } table[] = {
      {"4.20", false, 18.0, "4.10", "4.60"},   {"9.00", false, 18.0, "6.7", ""},
      {"1.75", false, 18.0, "", "2.00"},       {"3.05", false, 18.0, "3.00", "3.25"},
      {"2 3/4", false, 8.0, "2 3/4", "2 3/4"}, {"MT80", true, 16.0, "MS85", "MT85"},
      {"MU88", true, 16.0, "MU85", "MU90"},    {"MA90", true, 16.0, "", "MH90"},
      {"MZ90", true, 16.0, "MV90", ""},
  };
  for (const auto& [section, lettered, rim_code, below, above] : table) {
    const auto next = layshaft::detail::sections_next_to(section, lettered, rim_code);
    EXPECT_EQ(next.below, below) << section;
    EXPECT_EQ(next.above, above) << section;
  }
  static_assert(detail::sections_next_to("4.20", false, 18).below == "4.10");
  static_assert(detail::sections_next_to("4.20", false, 18).above == "4.60");
  static_assert(detail::sections_next_to("9.00", false, 18).above.empty());
  static_assert(detail::sections_next_to("1.75", false, 18).above == "2.00");
  static_assert(detail::sections_next_to("MT80", true, 16).below == "MS85");
  static_assert(detail::sections_next_to("MT80", true, 16).above == "MT85");
}

TEST(CodeDesignatedTyre, ShiftsOnlyWhatIsATyre) {
  expect_range<formula::overall_diameter_on_another_rim>("..+", 641_mm, 457_mm, 533_mm);
  EXPECT_FALSE(formula::overall_diameter_on_another_rim::in_range(457_mm, 457_mm, 533_mm));
  EXPECT_FALSE(formula::overall_diameter_on_another_rim::in_range(641_mm, 0_mm, 533_mm));
}

// What the compiler worked out is what a program does: the bytes of the section, the first the highest, and the place
// of its rim code.
TEST(SectionKeys, AreThoseOfTheTable) {
  const auto made = std::make_unique<detail::SectionKeys>();
  for (std::size_t row = 0; row < std::size(code_designated_tyres); ++row) {
    const CodeDesignatedTyre& tyre = code_designated_tyres[row];
    std::uint64_t key = 0;
    for (const char character : tyre.section) key = key * 256 + static_cast<unsigned char>(character);
    EXPECT_EQ(made->rows[row], key) << tyre.section;
    EXPECT_EQ(detail::section_keys.rows[row], key) << tyre.section;
    EXPECT_EQ(rim_codes[made->rims[row]].code, tyre.rim_code) << tyre.section;
  }
}

TEST(CodeDesignatedTyre, IsNotFoundByASectionOfMoreBytesThanAKeyHas) {
  EXPECT_EQ(find_code_designated("4.10 4.10", 18.0), nullptr);
  EXPECT_EQ(find_code_designated(std::string("x\0\0\0\0"
                                             "4.10",
                                             9),
                                 18.0),
            nullptr);  // of which eight would be 4.10's
}

// Hundredths of an inch, or the second letter and the aspect ratio.
TEST(SectionRank, PutsSectionsInTheOrderInWhichTheyAreLookedFor) {
  const struct {
    std::string_view section;
    int rank;
  } table[] = {{"4.10", 410},  {"2.5", 250}, {"3", 300}, {"2 1/4", 225}, {"2 1/2", 250}, {"2 3/4", 275},
               {"MT90", 1990}, {"MA85", 85}, {"M", 0},   {"", 0},        {"4x", 400},    {"4.", 400}};
  for (const auto& [section, rank] : table) EXPECT_EQ(detail::rank_of_section(section), rank) << section;
}

// A number that was cast without a look names no family, and so excludes no rim.
TEST(TyreFamily, ThatIsNoneServesEveryRim) {
  for (const double rim_code : {8.0, 13.0, 18.0}) EXPECT_TRUE(detail::serves(static_cast<TyreFamily>(9), rim_code));
}

}  // namespace
