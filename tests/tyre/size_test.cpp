// SPDX-License-Identifier: MIT
#include <layshaft/tyre/explain.hpp>
#include <layshaft/tyre/size.hpp>

#include <gtest/gtest.h>

#include <iterator>
#include <optional>
#include <string>
#include <type_traits>

namespace {
using namespace layshaft;

/// All three of a band, in millimetres.
void expect_diameter(const TyreSize& size, double low, double nominal, double high) {
  const Band<Length> diameter = size.overall_diameter();
  EXPECT_NEAR(diameter.low / units::mm, low, 1e-9) << size.designation();
  EXPECT_NEAR(diameter.nominal / units::mm, nominal, 1e-9) << size.designation();
  EXPECT_NEAR(diameter.high / units::mm, high, 1e-9) << size.designation();
}

// Worked by hand: 457 + 2 × 99 × (0.97, 1, 1.07), and 457 + 2 × 108 × (0.97, 1, 1.07 or 1.12).
TEST(TyreSize, HasTheDiameterOfAMetricMarking) {
  expect_diameter("110/90-18"_tyre, 649.06, 655.0, 668.86);
  expect_diameter("120/90-18"_tyre, 666.52, 673.0, 688.12);
  expect_diameter(TyreSize("120/90-18", TyreUse::special), 666.52, 673.0, 698.92);
}

// Data against data: rows of tests/reference/tyre_code_designated.csv.
TEST(TyreSize, HasTheDiameterOfTheTable) {
  expect_diameter("4.10-18"_tyre, 629, 641, 654);
  expect_diameter(TyreSize("4.10-18", TyreUse::special), 629, 641, 663);
  expect_diameter("3.00-21"_tyre, 695, 703, 717);
  expect_diameter("5.4-10"_tyre, 474, 481, 487);
  expect_diameter("MT90-16"_tyre, 642, 650, 672);
  for (const CodeDesignatedTyre& row : code_designated_tyres) {
    const std::string text = std::string(row.section).append("-").append(find_rim_code(row.rim_code)->name);
    EXPECT_EQ(TyreSize(text).overall_diameter(),
              (Band<Length>{row.least_diameter, row.diameter, row.greatest_diameter}))
        << text;
    EXPECT_EQ(TyreSize(text).section_width(), row.section_width) << text;
  }
}

// On a rim of 21 (533 mm) the section 4.10 of the rim 19 (483 mm: 655, 667, 679, special 688) stands 50 mm taller.
TEST(TyreSize, ShiftsTheTableToAnotherRim) {
  expect_diameter("4.10-21"_tyre, 705, 717, 729);
  expect_diameter(TyreSize("4.10-21", TyreUse::special), 705, 717, 738);
}

// The table states no limit for a lettered section in special use: 406 + (650 − 406) × 1.12 = 679.28.
TEST(TyreSize, OfSpecialUseTakesTheMetricLimitWhereTheTableHasNone) {
  expect_diameter(TyreSize("MT90-16", TyreUse::special), 642, 650, 679.28);
}

// 1.01 of the road limit at the most, and else as on the road: 668.86 × 1.01, 654 × 1.01. A cycle's is by its width.
TEST(TyreSize, OfSnowUseMayBeAHundredthTallerThanOfRoadUse) {
  expect_diameter(TyreSize("110/90-18", TyreUse::snow), 649.06, 655.0, 675.5486);
  expect_diameter(TyreSize("4.10-18", TyreUse::snow), 629, 641, 660.54);
  EXPECT_EQ(TyreSize("37-622", TyreUse::snow).overall_diameter(), TyreSize("37-622").overall_diameter());
  const Band<Length> road = TyreSize("31x10.50R15LT").overall_diameter();
  expect_diameter(TyreSize("31x10.50R15LT", TyreUse::snow), road.low / units::mm, road.nominal / units::mm,
                  1.01 * (road.high / units::mm));
}

TEST(TyreSize, OfSpecialUseIsNeverShorterThanOfRoadUse) {
  for (const CodeDesignatedTyre& row : code_designated_tyres) {
    const std::string text = std::string(row.section).append("-").append(find_rim_code(row.rim_code)->name);
    const Band<Length> road = TyreSize(text).overall_diameter();
    const Band<Length> special = TyreSize(text, TyreUse::special).overall_diameter();
    EXPECT_EQ(road.low, special.low);
    EXPECT_EQ(road.nominal, special.nominal);
    EXPECT_GT(special.high, road.high) << text;
    if (row.greatest_diameter_special) {
      EXPECT_EQ(special.high, *row.greatest_diameter_special) << text;
    }
  }
}

TEST(TyreSize, GrowsWithItsWidthItsAspectAndItsRim) {
  const auto nominal = [](int width, int aspect, std::string_view rim) {
    return TyreSize(std::to_string(width) + "/" + std::to_string(aspect) + "-" + std::string(rim))
        .overall_diameter()
        .nominal;
  };
  for (int width = 55; width <= 400; width += 5) EXPECT_GT(nominal(width, 90, "18"), nominal(width - 5, 90, "18"));
  for (int aspect = 26; aspect <= 110; ++aspect) EXPECT_GT(nominal(110, aspect, "18"), nominal(110, aspect - 1, "18"));
  for (std::size_t i = 1; i < std::size(rim_codes); ++i)
    EXPECT_GT(nominal(110, 90, rim_codes[i].name), nominal(110, 90, rim_codes[i - 1].name));
}

// Common practice, no source: the marking of the next size up, and the band that its knobs leave, as changes of thrust.
TEST(TyreSize, OneSizeUpTakesThrustAsTheTradeSays) {
  const Length before = "110/90-18"_tyre.overall_diameter().nominal;
  EXPECT_NEAR(before / "120/90-18"_tyre.overall_diameter().nominal - 1.0, -0.027, 5e-4);
  EXPECT_NEAR(before / "120/90-18"_tyre.overall_diameter().high - 1.0, -0.048, 5e-4);
  EXPECT_NEAR(before / TyreSize("120/90-18", TyreUse::special).overall_diameter().high - 1.0, -0.063, 5e-4);
}

TEST(TyreSize, TellsWhatItsMarkingSays) {
  const TyreSize size("130/80ZR17 M/C 65H TL REINF", TyreUse::special);
  EXPECT_EQ(size.notation(), TyreNotation::metric);
  EXPECT_EQ(size.construction(), TyreConstruction::radial);
  EXPECT_EQ(size.use(), TyreUse::special);
  EXPECT_TRUE(size.zr());
  EXPECT_TRUE(size.motorcycle());
  EXPECT_EQ(size.tube(), TyreTube::tubeless);
  EXPECT_TRUE(size.reinforced());
  EXPECT_NEAR(size.section_width() / units::mm, 130.0, 1e-12);
  EXPECT_EQ(size.aspect_ratio(), 80.0);
  EXPECT_EQ(size.rim_code(), 17.0);
  EXPECT_EQ(size.rim_diameter(), 432_mm);
  EXPECT_EQ(size.load_index(), 65);
  EXPECT_EQ(load_capacity(*size.load_index()), 290_kg);
  EXPECT_EQ(size.speed_symbol()->name, "H");
  EXPECT_EQ(size.speed_symbol()->speed, 210_kmh);
  EXPECT_EQ(size.source().certainty, Certainty::from_memory);
  EXPECT_FALSE(size.winter() || size.multi_service() || size.not_for_highway() || size.beyond_symbol());

  const TyreSize more("LT245/75R16 120/116Q 10PR M+S MST NHS DOT 0124");
  EXPECT_EQ(more.vehicle(), TyreVehicle::light_truck);
  EXPECT_EQ(more.load_index(), 120);
  EXPECT_EQ(more.second_load_index(), 116);
  EXPECT_EQ(more.ply_rating(), 10);
  EXPECT_TRUE(more.winter() && more.multi_service() && more.not_for_highway());
  EXPECT_EQ(more.made(), (TyreWeek{1, 2024}));

  const TyreSize fast("190/50ZR17 M/C (73W)");
  EXPECT_TRUE(fast.beyond_symbol());
  EXPECT_EQ(fast.speed_symbol()->speed, 270_kmh);
}

TEST(TyreSize, TellsWhatItIsMadeFor) {
  EXPECT_EQ(TyreSize("110/90-18").vehicle(), TyreVehicle::unmarked);
  EXPECT_EQ(TyreSize("P205/55R16").vehicle(), TyreVehicle::passenger);
  EXPECT_EQ(TyreSize("31x10.50R15LT").vehicle(), TyreVehicle::light_truck);
  EXPECT_EQ(TyreSize("235/85R16LT"), TyreSize("LT235/85R16"));
  EXPECT_EQ(TyreSize("205/65R16C").vehicle(), TyreVehicle::commercial);
  EXPECT_EQ(TyreSize("AT25x8-12").vehicle(), TyreVehicle::all_terrain);
}

TEST(TyreSize, OfACycleHasABeadSeatAndNoRimCode) {
  const TyreSize size("700x28C");
  EXPECT_EQ(size.notation(), TyreNotation::cycle);
  EXPECT_EQ(size.construction(), TyreConstruction::diagonal);
  EXPECT_EQ(size.section_width(), 28_mm);
  EXPECT_EQ(size.aspect_ratio(), std::nullopt);
  EXPECT_EQ(size.rim_code(), std::nullopt);
  EXPECT_EQ(size.rim_diameter(), 622_mm);
  EXPECT_EQ(size.source(), cycle_height_source);
  EXPECT_EQ(TyreSize("28-622").overall_diameter(), size.overall_diameter());
  EXPECT_NEAR(TyreSize("26x2.125").section_width() / units::mm, 53.975, 1e-12);
  EXPECT_NEAR(TyreSize("24x1 3/8").section_width() / units::mm, 34.925, 1e-12);
  EXPECT_NEAR(TyreSize("28x1 5/8x1 3/8").section_width() / units::mm, 34.925, 1e-12);
  EXPECT_EQ(TyreSize("28x1 5/8x1 3/8").rim_diameter(), 622_mm);
}

// Worked by hand: 622 + 2 × 28 × (0.9, 1, 1.1); 559 + 2 × 50.8 × the same. The use changes nothing.
TEST(TyreSize, HasTheDiameterOfACycleMarking) {
  for (const TyreUse use : tyre_uses) {
    expect_diameter(TyreSize("28-622", use), 672.4, 678.0, 683.6);
    expect_diameter(TyreSize("26x2.00", use), 650.44, 660.6, 670.76);
  }
}

TEST(TyreSize, OfAFlotationMarkingTellsItsNumbers) {
  const TyreSize size("AT25x8.00-12");
  EXPECT_EQ(size.notation(), TyreNotation::flotation);
  EXPECT_EQ(size.designation(), "AT25x8-12");
  EXPECT_EQ(size.rim_code(), 12.0);
  EXPECT_NEAR(size.section_width() / units::mm, 203.2, 1e-12);
  expect_diameter(size, 612.781, 635.0, 658.1);
}

TEST(TyreSize, WithoutItsWeekIsTheSameOfAnyAge) {
  const TyreSize old("110/90-18 61R DOT 2309"), fresh("110/90-18 61R DOT 2319");
  EXPECT_FALSE(old == fresh);
  EXPECT_EQ(old.undated(), fresh.undated());
  EXPECT_EQ(old.undated(), TyreSize("110/90-18 61R"));
  EXPECT_EQ(old.undated().made(), std::nullopt);
}

// Certainties as in tests/reference/cycle_bead_seat.csv: of the bead seat, or of the name where that is less sure.
TEST(TyreSize, OfACycleIsAsSureOfItsRimAsOfTheNameThatMeansIt) {
  const struct {
    std::string_view marking;
    Certainty certainty;
  } table[] = {{"37-622", Certainty::published},
               {"700x28C", Certainty::published},
               {"27x1 1/4", Certainty::secondary},
               {"37-584", Certainty::from_memory},
               {"28x1 5/8x1 3/8", Certainty::from_memory}};
  for (const auto& [marking, certainty] : table) {
    const Working working = TyreSize(marking).explain("overall diameter");
    ASSERT_EQ(working.steps()[0].name(), "rim diameter") << marking;
    EXPECT_EQ(working.steps()[0].source().certainty, certainty) << marking;
  }
}

// The steps of an explanation end in the number itself, and what is from memory is marked in them.
TEST(TyreSize, OfEveryNotationExplainsItsDiameter) {
  for (const std::string_view text : {"110/90-18", "4.10-21", "MT90-16", "31x10.50R15LT", "37-622", "26x2.00"}) {
    const TyreSize size(text, TyreUse::special);
    const Working working = size.explain("overall diameter");
    EXPECT_EQ(working.result().certainty(), Certainty::from_memory) << text;
    EXPECT_EQ(working.result().result(Corner::low), Amount(size.overall_diameter().low)) << text;
    EXPECT_EQ(working.result().result(), Amount(size.overall_diameter().nominal)) << text;
    EXPECT_EQ(working.result().result(Corner::high), Amount(size.overall_diameter().high)) << text;
  }
}

TEST(TyreSize, SaysNothingThatItsMarkingDoesNot) {
  const TyreSize size("4.10-18");
  EXPECT_EQ(size.notation(), TyreNotation::code);
  EXPECT_EQ(size.construction(), TyreConstruction::diagonal);
  EXPECT_EQ(size.use(), TyreUse::road);
  EXPECT_FALSE(size.zr());
  EXPECT_FALSE(size.motorcycle());
  EXPECT_EQ(size.tube(), TyreTube::unmarked);
  EXPECT_FALSE(size.reinforced());
  EXPECT_EQ(size.section_width(), 108_mm);
  EXPECT_EQ(size.aspect_ratio(), std::nullopt);
  EXPECT_EQ(size.load_index(), std::nullopt);
  EXPECT_EQ(size.speed_symbol(), std::nullopt);
  EXPECT_EQ(size.source(), code_designated_source);

  const TyreSize lettered("MT90B16");
  EXPECT_EQ(lettered.notation(), TyreNotation::lettered);
  EXPECT_EQ(lettered.construction(), TyreConstruction::bias_belted);
  EXPECT_EQ(lettered.aspect_ratio(), 90.0);
  EXPECT_EQ(lettered.section_width(), 130_mm);
}

TEST(TyreSize, IsEqualWhenItPrintsTheSameForTheSameUse) {
  EXPECT_EQ(TyreSize("110/90-18 61r"), TyreSize(" 110 / 90-18 61 R"));
  EXPECT_FALSE(TyreSize("110/90-18") == TyreSize("110/90-18", TyreUse::special));
  const char* all[] = {"110/90-18",
                       "110/90-18 M/C",
                       "110/90-18 61R",
                       "110/90-18 61S",
                       "110/90-18 60R",
                       "110/90-18 TL",
                       "110/90-18 TT",
                       "110/90-18 REINF",
                       "110/90R18",
                       "110/90ZR18",
                       "110/90B18",
                       "110/90-19",
                       "110/80-18",
                       "120/90-18",
                       "3-10",
                       "P110/90-18",
                       "LT110/90-18",
                       "110/90-18C",
                       "AT110/90-18",
                       "110/90-18 6PR",
                       "110/90-18 M+S",
                       "110/90-18 MST",
                       "110/90-18 NHS",
                       "110/90-18 DOT 2319",
                       "110/90-18 DOT 2419",
                       "110/90-18 DOT 2320",
                       "110/90-18 61/60R",
                       "110/90-18 61/59R",
                       "110/90-18 61W",
                       "110/90-18 (61W)",
                       "25x8-12",
                       "25x9-12",
                       "26x8-12",
                       "25x8R12",
                       "25x8-11",
                       "37-622",
                       "37-584",
                       "38-622",
                       "700x37C",
                       "26x2.00",
                       "26x1.75",
                       "26x1 3/4",
                       "24x1 3/8",
                       "28x1 3/8",
                       "28x1 5/8x1 3/8",
                       "3.00-10",
                       "4.10-18",
                       "4.10-19",
                       "MT90-16",
                       "MT85-16"};
  for (const char* a : all)
    for (const char* b : all) EXPECT_EQ(TyreSize(a) == TyreSize(b), a == b) << a << ' ' << b;
}

TEST(TyreSize, IsReadByTheCompiler) {
  constexpr TyreSize size = "110/90-18 M/C 61R TL"_tyre;
  static_assert(size.load_index() == 61);
  static_assert(size.speed_symbol()->speed == 170_kmh);
  static_assert(size.rim_diameter() == 457_mm);
  static_assert(size.aspect_ratio() == 90.0);
  static_assert(size.overall_diameter().low < size.overall_diameter().nominal);
  static_assert("4.10-18"_tyre.overall_diameter().nominal == 641_mm);
  static_assert("MT90-16"_tyre.overall_diameter().nominal == 650_mm);
  static_assert("190/50ZR17 M/C (73W)"_tyre.beyond_symbol());
  static_assert("LT245/75R16 120/116Q 10PR"_tyre.second_load_index() == 116);
  static_assert("31x10.50R15LT DOT 2319"_tyre.made()->year == 2019);
  static_assert("25x8-12"_tyre.notation() == TyreNotation::flotation);
  static_assert("37-622"_tyre.rim_diameter() == 622_mm && "700x28C"_tyre.section_width() == 28_mm);
  static_assert("26x2.00"_tyre.rim_diameter() == 559_mm && "28x1 5/8x1 3/8"_tyre.rim_diameter() == 622_mm);
  static_assert("37-622"_tyre.overall_diameter().nominal > 695_mm);
  static_assert(TyreSize("110/90-18") == "110/90-18"_tyre);
  static_assert(detail::DesignationReader("110/90-18").read() && !detail::DesignationReader("110/90-").read());
  EXPECT_EQ(size.designation(), "110/90-18 M/C 61R TL");
}

TEST(TyreSize, IsASmallValueWhoseAccessorsDoNotThrow) {
  static_assert(std::is_trivially_copyable_v<TyreSize> && std::is_trivially_destructible_v<TyreSize>);
  static_assert(sizeof(TyreSize) <= 64);
  static_assert(!std::is_default_constructible_v<TyreSize>);
  constexpr TyreSize size = "110/90-18"_tyre;
  static_assert(noexcept(size.overall_diameter())&& noexcept(size.section_width())&& noexcept(size.speed_symbol()));
  static_assert(noexcept(size.load_index())&& noexcept(size.rim_diameter())&& noexcept(size == size));
  static_assert(noexcept(detail::DesignationReader("110/90-18").read()));
}

}  // namespace
