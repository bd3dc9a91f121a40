// SPDX-License-Identifier: MIT
#include <layshaft/tyre/cycle_rim.hpp>
#include <layshaft/tyre/size.hpp>

#include "../reference/csv.hpp"

#include <gtest/gtest.h>
#include <core/formula_range.hpp>

#include <algorithm>
#include <cstddef>
#include <iterator>
#include <set>
#include <sstream>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace {
using namespace layshaft;
using layshaft_test::expect_range;
using layshaft_test::number;

// Source: tests/reference/cycle_bead_seat.csv (ISO 5775 bead seats and their names; the certainty stands in each row).
TEST(CycleBeadSeat, HasTheDiametersAndNamesOfTheReference) {
  const auto rows = layshaft_test::read_csv("cycle_bead_seat.csv");
  ASSERT_EQ(rows.size(), std::size(cycle_bead_seats));
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const CycleBeadSeat& seat = cycle_bead_seats[i];
    EXPECT_EQ(seat.millimetres, number(rows[i].at("bead_seat_diameter_mm")));
    EXPECT_EQ(seat.name, rows[i].at("bead_seat_diameter_mm"));
    EXPECT_EQ(seat.traditional_names, rows[i].at("traditional_names"));
    EXPECT_EQ(to_string(seat.certainty), rows[i].at("certainty"));
  }
}

TEST(CycleBeadSeat, ComesInFallingOrder) {
  for (std::size_t i = 1; i < std::size(cycle_bead_seats); ++i)
    EXPECT_GT(cycle_bead_seats[i - 1].millimetres, cycle_bead_seats[i].millimetres);
  static_assert(find_cycle_bead_seat(622)->name == "622" && detail::row_of_cycle_bead_seat(623) < 0);
  static_assert(detail::cycle_bead_seats_next_to(623).below == "622");
  static_assert(detail::cycle_bead_seats_next_to(623).above == "630");
  static_assert(detail::cycle_bead_seats_next_to(900).above.empty());
  static_assert(detail::cycle_bead_seats_next_to(90).below.empty());
  static_assert(detail::cycle_bead_seats_next_to(90).above == "93");
}

// Every name is one of the list's, of the same bead seat and as sure, or it is marked as from memory.
TEST(CycleRimName, StandsInTheListUnlessItIsFromMemory) {
  std::set<int> named;
  int from_memory = 0;
  for (const CycleRimName& name : cycle_rim_names) {
    const CycleBeadSeat* seat = find_cycle_bead_seat(name.bead_seat);
    ASSERT_NE(seat, nullptr) << name.bead_seat;
    named.insert(name.bead_seat);
    if (name.listed_as.empty()) {
      EXPECT_EQ(name.certainty, Certainty::from_memory) << name.bead_seat;
      ++from_memory;
      continue;
    }
    EXPECT_NE(seat->traditional_names.find(name.listed_as), std::string_view::npos) << name.listed_as;
    EXPECT_EQ(name.certainty, seat->certainty) << name.listed_as;
    EXPECT_TRUE(name.listed_as.starts_with(name.diameter_name)) << name.listed_as;
    const bool alternative =
        seat->traditional_names.find(std::string(name.listed_as) + " alt") != std::string_view::npos;
    EXPECT_EQ(name.alternative, alternative) << name.listed_as;
  }
  EXPECT_EQ(named.size(), std::size(cycle_bead_seats)) << "every bead seat has a name";
  EXPECT_EQ(from_memory, 2);
}

// The names as the list spells them, those of its rows that were seen in print (published or secondary).
TEST(CycleRimName, NamesTheBeadSeatOfThePublishedRows) {
  const struct {
    std::string_view marking;
    int millimetres;
  } table[] = {
      {"700x28C", 622},  {"29x2.25", 622},     {"28x1.75", 622},  {"26x2.00", 559},  {"26x1.00", 559},
      {"26x2.30", 559},  {"24x1.50", 507},     {"24x2.125", 507}, {"20x1.75", 406},  {"18x1.50", 355},
      {"16x1.75", 305},  {"22x1.75", 457},     {"22x2.125", 457}, {"700x38B", 635},  {"28x1 1/2", 635},
      {"11x1 3/4", 222}, {"12 1/2x1.75", 203}, {"12x1.95", 203},  {"12x2.00", 203},  {"10x1 5/8", 194},
      {"10x2", 152},     {"8x1 1/4", 137},     {"8 1/2x2", 110},  {"8x2", 94},       {"200x50", 94},
      {"7x1 3/4", 93},   {"700x38A", 642},     {"28x1 3/8", 642}, {"27x1", 630},     {"27x1 1/8", 630},
      {"27x1 1/4", 630}, {"26x1 1/4", 597},    {"650x38A", 590},  {"650x28C", 571},  {"26x1", 571},
      {"26x1 3/4", 571}, {"24x1 3/8", 540},    {"600x38A", 540},  {"20x1 1/8", 451}, {"17x1 1/4", 369},
      {"16x1 1/4", 349},
  };
  for (const auto& [marking, millimetres] : table) {
    const TyreSize size(marking);
    EXPECT_EQ(size.rim_diameter(), millimetres * 1.0 * units::mm) << marking;
    EXPECT_EQ(size.designation(), marking);
  }
}

TEST(CycleRimName, OfSeveralRimsIsRefusedWithEachOfThem) {
  const struct {
    std::string_view marking, readings;
  } table[] = {
      {"26x1 3/8", "the ISO marking, 35-590 or 35-565"},
      {"26x1.25", "the ISO marking, 32-599 or 32-559"},
      {"27x1.25", "the ISO marking, 32-609 or 32-630"},
      {"22x1 3/8", "the ISO marking, 35-501 or 35-489"},
      {"20x1 3/8", "the ISO marking, 35-451 or 35-438"},
      {"18x1 3/8", "the ISO marking, 35-400 or 35-390"},
      {"16x1 3/8", "the ISO marking, 35-349, 35-340 or 35-337"},
      {"22x1 1/2", "the ISO marking, 38-484 or another"},
      {"20x1 1/4", "the ISO marking, 32-432 or another"},
      {"16x1 3/4", "the ISO marking, 44-317 or another"},
      {"14x1 3/8", "the ISO marking, 35-288 or another"},
      {"650x38", "the letter, as in 700x28C, or the ISO marking, 38-590, 38-584 or 38-571"},
      {"26x2",
       "decimals, as in 26x2.00, or a fraction, as in 24x1 3/8, or the ISO marking, 51-599, 51-559, 51-597, 51-590, "
       "51-584, 51-571 or 51-565"},
  };
  for (const auto& [marking, readings] : table) {
    const Result<TyreSize> size = TyreSize::make(marking);
    ASSERT_FALSE(size) << marking;
    EXPECT_EQ(size.error().position(), 0u) << marking;
    EXPECT_EQ(size.error().expected(), readings) << marking;
  }
}

// Each reading that an error lists is itself a marking, of the rim it names.
TEST(CycleRimName, OfSeveralRimsListsMarkingsThatCanBeRead) {
  for (const CycleRimName& name : cycle_rim_names)
    for (const int width : {name.least_width, name.naming == CycleNaming::decimal ? 2000 : 11}) {
      const detail::CycleName read{name.naming, name.letter, static_cast<short>(name.diameter),
                                   static_cast<short>(width)};
      const int millimetres = detail::cycle_width_in_millimetres(name.naming, width);
      if (millimetres < 15 || millimetres > 130) continue;
      const detail::CycleReadings readings = detail::cycle_rims_called(read);
      EXPECT_GE(readings.count, 1);
      EXPECT_LT(readings.count, 8) << "one more and the list is cut";
      for (int i = 0; i < readings.count; ++i) {
        const TyreSize size(std::to_string(millimetres) + "-" + std::to_string(readings.bead_seats[i]));
        EXPECT_EQ(size.rim_diameter(), readings.bead_seats[i] * 1.0 * units::mm);
      }
    }
}

TEST(CycleRimName, IsAnotherOneInDecimalsThanInFractions) {
  EXPECT_EQ(TyreSize("26x1.75").rim_diameter(), 559_mm);
  EXPECT_EQ(TyreSize("26x1 3/4").rim_diameter(), 571_mm);
  EXPECT_EQ(TyreSize("26x1.00").rim_diameter(), 559_mm);
  EXPECT_EQ(TyreSize("26x1").rim_diameter(), 571_mm);
  EXPECT_EQ(TyreSize("26x1.75").section_width(), TyreSize("26x1 3/4").section_width());
}

TEST(CycleWidth, IsRoundedToMillimetres) {
  using detail::cycle_width_in_millimetres;
  static_assert(cycle_width_in_millimetres(CycleNaming::iso, 37) == 37);
  static_assert(cycle_width_in_millimetres(CycleNaming::french, 28) == 28);
  static_assert(cycle_width_in_millimetres(CycleNaming::decimal, 2000) == 51);   // 50.8
  static_assert(cycle_width_in_millimetres(CycleNaming::decimal, 2125) == 54);   // 53.975
  static_assert(cycle_width_in_millimetres(CycleNaming::fractional, 11) == 35);  // 34.925
  static_assert(cycle_width_in_millimetres(CycleNaming::three_part, 10) == 32);  // 31.75
}

// Worked by hand: 622 + 2 × 28 × (0.9, 1, 1.1).
TEST(CycleDiameter, IsTheBeadSeatAndTwiceTheWidth) {
  EXPECT_NEAR(cycle_diameter(622_mm, 28_mm, 1.0) / units::mm, 678.0, 1e-9);
  EXPECT_NEAR(cycle_diameter(622_mm, 28_mm, 0.9) / units::mm, 672.4, 1e-9);
  EXPECT_NEAR(cycle_diameter(622_mm, 28_mm, 1.1) / units::mm, 683.6, 1e-9);
  EXPECT_EQ(cycle_height_source.certainty, Certainty::from_memory);
  EXPECT_EQ(formula::cycle_diameter::about.source, sources::common_practice);
  expect_range<formula::cycle_diameter>("+++", 622_mm, 28_mm, 1.0);
}

/// A number of inches as a marking has it: 27.5, 12 1/2, 3/4.
double inches_of_marking(const std::string& text) {
  double inches = 0.0;
  std::istringstream words(text);
  for (std::string word; words >> word;) {
    const std::size_t slash = word.find('/');
    inches += slash == word.npos
                  ? layshaft_test::number(word)
                  : layshaft_test::number(word.substr(0, slash)) / layshaft_test::number(word.substr(slash + 1));
  }
  return inches;
}

TEST(CycleRimNames, SayTheSameInWordsAndInNumbers) {
  for (const CycleRimName& name : cycle_rim_names) {
    SCOPED_TRACE(std::string(name.diameter_name) + ", " + std::string(name.listed_as));
    const bool french = name.naming == CycleNaming::french;
    EXPECT_EQ(inches_of_marking(std::string(name.diameter_name)) * (french ? 1.0 : 2.0), name.diameter);
    const std::size_t width = name.listed_as.find(" x ");
    if (name.naming == CycleNaming::fractional) {
      ASSERT_NE(width, name.listed_as.npos);
      EXPECT_EQ(name.listed_as.substr(0, width), name.diameter_name);
      EXPECT_EQ(8.0 * inches_of_marking(std::string(name.listed_as.substr(width + 3))), name.least_width);
      EXPECT_EQ(name.greatest_width, name.least_width);
    } else {
      EXPECT_TRUE(name.listed_as.starts_with(name.diameter_name) || name.listed_as.empty());
    }
  }
}

// The widths from which a decimal name is listed, and those of the two rims that go by a width of their own: a copy of
// what the list says in words.
TEST(CycleRimNames, OfDecimalWidthStartWhereTheListDoes) {
  const auto widths = [](std::string_view diameter, int seat) {
    for (const CycleRimName& name : cycle_rim_names)
      if (name.naming != CycleNaming::fractional && name.naming != CycleNaming::three_part &&
          name.diameter_name == diameter && name.bead_seat == seat)
        return std::pair{name.least_width, name.greatest_width};
    return std::pair{-1, -1};
  };
  constexpr int any = detail::cycle_rim_table::any;
  static_assert(any == 1000000);
  EXPECT_EQ(widths("27", 630), std::pair(1000, 1250));
  EXPECT_EQ(widths("26", 599), std::pair(1250, 1250));
  EXPECT_EQ(widths("26", 559), std::pair(1000, any));
  EXPECT_EQ(widths("24", 507), std::pair(1500, any));
  EXPECT_EQ(widths("22", 457), std::pair(1750, any));
  EXPECT_EQ(widths("20", 406), std::pair(1500, any));
  EXPECT_EQ(widths("18", 355), std::pair(1500, any));
  EXPECT_EQ(widths("16", 305), std::pair(1750, any));
  EXPECT_EQ(widths("14", 254), std::pair(1750, any));
  EXPECT_EQ(widths("12 1/2", 203), std::pair(1750, any));
  EXPECT_EQ(widths("12", 203), std::pair(1950, any));
  EXPECT_EQ(widths("200", 94), std::pair(50, 50));
  for (const CycleRimName& name : cycle_rim_names)
    if (name.least_width == 0) {
      EXPECT_EQ(name.greatest_width, any);
    }
}

TEST(CycleBeadSeat, IsNotFoundWhereItIsNotInUse) {
  for (const int millimetres : {0, -622, 621, 623, 1000}) EXPECT_EQ(find_cycle_bead_seat(millimetres), nullptr);
  EXPECT_EQ(find_cycle_bead_seat(622)->millimetres, 622);
}

// A number that was cast without a look names no way of marking: its widths are taken for millimetres.
TEST(CycleWidth, OfNoNamingIsInMillimetres) {
  EXPECT_EQ(detail::cycle_width_in_millimetres(static_cast<CycleNaming>(9), 37), 37);
}

// No name stands for so many, or a test above fails; more would be left out, not written behind the end.
TEST(CycleReadings, HoldTheFirstEightRims) {
  detail::CycleReadings found;
  std::vector<int> seats;
  for (int row = 0; row < static_cast<int>(std::size(cycle_rim_names)); ++row) {
    const int seat = cycle_rim_names[row].bead_seat;
    if (std::find(seats.begin(), seats.end(), seat) == seats.end()) seats.push_back(seat);
    found.add(row);
  }
  ASSERT_GT(seats.size(), 8u);
  EXPECT_EQ(found.count, 8);
  EXPECT_EQ(found.row, 0);
  for (std::size_t i = 0; i < 8; ++i) EXPECT_EQ(found.bead_seats[i], seats[i]) << i;
}

}  // namespace
