// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/band.hpp>
#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>
#include <layshaft/core/source.hpp>
#include <layshaft/core/units.hpp>
#include <layshaft/tyre/rim_code.hpp>

#include <iterator>  // std::size of the tables
#include <string_view>

/// @file
/// The rims of cycles: the diameter their tyre's bead sits on, the many names of each, and the tyre's diameter over it.
namespace layshaft {

/// One row: a bead seat diameter, as a number of millimetres and as it is marked, its traditional names as the list
/// gives them, and how sure that is.
struct CycleBeadSeat {
  int millimetres;
  std::string_view name;
  std::string_view traditional_names;
  Certainty certainty;
};

/// How the marking of a cycle tyre names its rim.
enum class CycleNaming : unsigned char {
  iso,         ///< `37-622`: by its bead seat diameter
  french,      ///< `700x28C`: outer diameter and width in millimetres, and a letter
  decimal,     ///< `26x2.00`: outer diameter and width in inches
  fractional,  ///< `24x1 3/8`: the same in fractions, which is another rim
  three_part,  ///< `28x1 5/8x1 3/8`: with a height between
};

/// One row: a name of a rim, the widths under which it goes, and the bead seat it stands for.
struct CycleRimName {
  CycleNaming naming;
  std::string_view diameter_name;
  int diameter;                ///< French: millimetres; inches: half inches
  char letter;                 ///< of a French name, or 0
  int least_width;             ///< French: millimetres; decimal: thousandths of an inch; fractional: eighths
  int greatest_width;          ///< the same
  int bead_seat;               ///< millimetres
  std::string_view listed_as;  ///< in the list of bead seats; empty for what is from memory
  bool alternative;            ///< the list calls it one rim of several that go by this name
  Certainty certainty;
};

/// Where the tables below come from.
inline constexpr std::string_view cycle_rim_document = "bead seat diameters and traditional names, ISO 5775";

namespace detail::cycle_rim_table {
using enum Certainty;

// Source: bead seat diameters of ISO 5775 and the traditional names that go with each; the certainty of each row stands
// in it. By falling diameter.
// clang-format off
inline constexpr CycleBeadSeat seats[] = {
    {787, "787", "36 in (unicycle)", from_memory},
    {686, "686", "32 in", from_memory},
    {642, "642", "700A; 28 x 1 3/8", secondary},
    {635, "635", "700B; 28 x 1 1/2", published},
    {630, "630", "27 x 1, 27 x 1 1/8, 27 x 1 1/4", secondary},
    {622, "622", "700C; 29 in; 28 x (decimal)", published},
    {609, "609", "27 in (Danish/old)", from_memory},
    {599, "599", "26 x 1.25 (old US)", published},
    {597, "597", "26 x 1 1/4 (EA1); S-6", secondary},
    {590, "590", "26 x 1 3/8; 650A", secondary},
    {587, "587", "700D", from_memory},
    {584, "584", "650B; 27.5 in; 26 x 1 1/2", from_memory},
    {571, "571", "650C; 26 x 1; 26 x 1 3/4", secondary},
    {565, "565", "26 x 1 3/8 (NL) / Keirin oddity", from_memory},
    {559, "559", "26 x (decimal) 1.0 to 2.3, MTB", published},
    {547, "547", "24 x 1 1/4; S-5", from_memory},
    {540, "540", "24 x 1 3/8; 600A", secondary},
    {520, "520", "24 x 1; 24 x 1 1/8", from_memory},
    {507, "507", "24 x (decimal) 1.5 to 2.125", published},
    {501, "501", "22 x 1 3/8 alt", from_memory},
    {489, "489", "22 x 1 3/8 (NL)", from_memory},
    {484, "484", "22 x 1 1/2 alt", from_memory},
    {457, "457", "22 x 1.75, 22 x 2.125", published},
    {451, "451", "20 x 1 1/8, 20 x 1 3/8", secondary},
    {440, "440", "20 x 1 1/2; 500A", from_memory},
    {438, "438", "20 x 1 3/8 alt", from_memory},
    {432, "432", "20 x 1 1/4 alt", from_memory},
    {419, "419", "20 x 1 3/4", from_memory},
    {406, "406", "20 x (decimal) 1.5 to 2.125, BMX", published},
    {400, "400", "18 x 1 3/8 alt", from_memory},
    {390, "390", "18 x 1 3/8; 450A", from_memory},
    {369, "369", "17 x 1 1/4", secondary},
    {355, "355", "18 x 1.5 to 2.125", published},
    {349, "349", "16 x 1 3/8; 16 x 1 1/4", secondary},
    {340, "340", "16 x 1 3/8 alt; 400A", from_memory},
    {337, "337", "16 x 1 3/8 alt", from_memory},
    {317, "317", "16 x 1 3/4 alt", from_memory},
    {305, "305", "16 x (decimal) 1.75 to 2.125", published},
    {298, "298", "14 x 1 1/4; 350A", from_memory},
    {288, "288", "14 x 1 3/8 alt", from_memory},
    {254, "254", "14 x 1.75 (decimal)", from_memory},
    {222, "222", "11 x 1 3/4", published},
    {203, "203", "12 1/2 x 1.75 (and 12 x 1.95, 12 x 2.00)", published},
    {194, "194", "10 x 1 5/8", published},
    {152, "152", "10 x 2", published},
    {137, "137", "8 x 1 1/4", published},
    {110, "110", "8 1/2 x 2", published},
    {94, "94", "8 x 2; 200 x 50", published},
    {93, "93", "7 x 1 3/4", published},
};
// clang-format on

using enum CycleNaming;
inline constexpr int no_least = 0;
inline constexpr int any = 1000000;
inline constexpr char no_letter = 0;
inline constexpr bool sole = false;
inline constexpr bool another = true;

// The names of the table above, one by one. A decimal width above those that the list gives names the same rim: common
// practice, from memory. Three things that the list does not have are from memory: a 27 in tyre of 1 to 1 1/4 in is
// sold in decimals as well, which makes that name stand for two rims, and 28 x 1 5/8 goes with a width behind it.
// clang-format off
inline constexpr CycleRimName names[] = {
    // naming, diameter, the same as a number, letter, least and greatest width, bead seat; as listed, whether it is the
    // list's only rim of that name, certainty
    {french, "700", 700, 'A', no_least, any, 642, "700A", sole, secondary},
    {french, "700", 700, 'B', no_least, any, 635, "700B", sole, published},
    {french, "700", 700, 'C', no_least, any, 622, "700C", sole, published},
    {french, "700", 700, 'D', no_least, any, 587, "700D", sole, from_memory},
    {french, "650", 650, 'A', no_least, any, 590, "650A", sole, secondary},
    {french, "650", 650, 'B', no_least, any, 584, "650B", sole, from_memory},
    {french, "650", 650, 'C', no_least, any, 571, "650C", sole, secondary},
    {french, "600", 600, 'A', no_least, any, 540, "600A", sole, secondary},
    {french, "500", 500, 'A', no_least, any, 440, "500A", sole, from_memory},
    {french, "450", 450, 'A', no_least, any, 390, "450A", sole, from_memory},
    {french, "400", 400, 'A', no_least, any, 340, "400A", sole, from_memory},
    {french, "350", 350, 'A', no_least, any, 298, "350A", sole, from_memory},
    {french, "200", 200, no_letter, 50, 50, 94, "200 x 50", sole, published},
    {decimal, "36", 72, no_letter, no_least, any, 787, "36 in (unicycle)", sole, from_memory},
    {decimal, "32", 64, no_letter, no_least, any, 686, "32 in", sole, from_memory},
    {decimal, "29", 58, no_letter, no_least, any, 622, "29 in", sole, published},
    {decimal, "28", 56, no_letter, no_least, any, 622, "28 x (decimal)", sole, published},
    {decimal, "27.5", 55, no_letter, no_least, any, 584, "27.5 in", sole, from_memory},
    {decimal, "27", 54, no_letter, no_least, any, 609, "27 in (Danish/old)", sole, from_memory},
    {decimal, "27", 54, no_letter, 1000, 1250, 630, "", sole, from_memory},
    {decimal, "26", 52, no_letter, 1250, 1250, 599, "26 x 1.25 (old US)", sole, published},
    {decimal, "26", 52, no_letter, 1000, any, 559, "26 x (decimal) 1.0 to 2.3", sole, published},
    {decimal, "24", 48, no_letter, 1500, any, 507, "24 x (decimal) 1.5 to 2.125", sole, published},
    {decimal, "22", 44, no_letter, 1750, any, 457, "22 x 1.75, 22 x 2.125", sole, published},
    {decimal, "20", 40, no_letter, 1500, any, 406, "20 x (decimal) 1.5 to 2.125", sole, published},
    {decimal, "18", 36, no_letter, 1500, any, 355, "18 x 1.5 to 2.125", sole, published},
    {decimal, "16", 32, no_letter, 1750, any, 305, "16 x (decimal) 1.75 to 2.125", sole, published},
    {decimal, "14", 28, no_letter, 1750, any, 254, "14 x 1.75 (decimal)", sole, from_memory},
    {decimal, "12 1/2", 25, no_letter, 1750, any, 203, "12 1/2 x 1.75", sole, published},
    {decimal, "12", 24, no_letter, 1950, any, 203, "12 x 1.95, 12 x 2.00", sole, published},
    {fractional, "28", 56, no_letter, 11, 11, 642, "28 x 1 3/8", sole, secondary},
    {fractional, "28", 56, no_letter, 12, 12, 635, "28 x 1 1/2", sole, published},
    {fractional, "27", 54, no_letter, 8, 8, 630, "27 x 1", sole, secondary},
    {fractional, "27", 54, no_letter, 9, 9, 630, "27 x 1 1/8", sole, secondary},
    {fractional, "27", 54, no_letter, 10, 10, 630, "27 x 1 1/4", sole, secondary},
    {fractional, "26", 52, no_letter, 10, 10, 597, "26 x 1 1/4", sole, secondary},
    {fractional, "26", 52, no_letter, 11, 11, 590, "26 x 1 3/8", sole, secondary},
    {fractional, "26", 52, no_letter, 12, 12, 584, "26 x 1 1/2", sole, from_memory},
    {fractional, "26", 52, no_letter, 8, 8, 571, "26 x 1", sole, secondary},
    {fractional, "26", 52, no_letter, 14, 14, 571, "26 x 1 3/4", sole, secondary},
    {fractional, "26", 52, no_letter, 11, 11, 565, "26 x 1 3/8", sole, from_memory},
    {fractional, "24", 48, no_letter, 10, 10, 547, "24 x 1 1/4", sole, from_memory},
    {fractional, "24", 48, no_letter, 11, 11, 540, "24 x 1 3/8", sole, secondary},
    {fractional, "24", 48, no_letter, 8, 8, 520, "24 x 1", sole, from_memory},
    {fractional, "24", 48, no_letter, 9, 9, 520, "24 x 1 1/8", sole, from_memory},
    {fractional, "22", 44, no_letter, 11, 11, 501, "22 x 1 3/8", another, from_memory},
    {fractional, "22", 44, no_letter, 11, 11, 489, "22 x 1 3/8", sole, from_memory},
    {fractional, "22", 44, no_letter, 12, 12, 484, "22 x 1 1/2", another, from_memory},
    {fractional, "20", 40, no_letter, 9, 9, 451, "20 x 1 1/8", sole, secondary},
    {fractional, "20", 40, no_letter, 11, 11, 451, "20 x 1 3/8", sole, secondary},
    {fractional, "20", 40, no_letter, 12, 12, 440, "20 x 1 1/2", sole, from_memory},
    {fractional, "20", 40, no_letter, 11, 11, 438, "20 x 1 3/8", another, from_memory},
    {fractional, "20", 40, no_letter, 10, 10, 432, "20 x 1 1/4", another, from_memory},
    {fractional, "20", 40, no_letter, 14, 14, 419, "20 x 1 3/4", sole, from_memory},
    {fractional, "18", 36, no_letter, 11, 11, 400, "18 x 1 3/8", another, from_memory},
    {fractional, "18", 36, no_letter, 11, 11, 390, "18 x 1 3/8", sole, from_memory},
    {fractional, "17", 34, no_letter, 10, 10, 369, "17 x 1 1/4", sole, secondary},
    {fractional, "16", 32, no_letter, 11, 11, 349, "16 x 1 3/8", sole, secondary},
    {fractional, "16", 32, no_letter, 10, 10, 349, "16 x 1 1/4", sole, secondary},
    {fractional, "16", 32, no_letter, 11, 11, 340, "16 x 1 3/8", another, from_memory},
    {fractional, "16", 32, no_letter, 11, 11, 337, "16 x 1 3/8", another, from_memory},
    {fractional, "16", 32, no_letter, 14, 14, 317, "16 x 1 3/4", another, from_memory},
    {fractional, "14", 28, no_letter, 10, 10, 298, "14 x 1 1/4", sole, from_memory},
    {fractional, "14", 28, no_letter, 11, 11, 288, "14 x 1 3/8", another, from_memory},
    {fractional, "11", 22, no_letter, 14, 14, 222, "11 x 1 3/4", sole, published},
    {fractional, "10", 20, no_letter, 13, 13, 194, "10 x 1 5/8", sole, published},
    {fractional, "10", 20, no_letter, 16, 16, 152, "10 x 2", sole, published},
    {fractional, "8", 16, no_letter, 10, 10, 137, "8 x 1 1/4", sole, published},
    {fractional, "8 1/2", 17, no_letter, 16, 16, 110, "8 1/2 x 2", sole, published},
    {fractional, "8", 16, no_letter, 16, 16, 94, "8 x 2", sole, published},
    {fractional, "7", 14, no_letter, 14, 14, 93, "7 x 1 3/4", sole, published},
    {three_part, "28", 56, no_letter, no_least, any, 622, "", sole, from_memory},
};
// clang-format on
}  // namespace detail::cycle_rim_table

/// The bead seat diameters known, in falling order.
inline constexpr const auto& cycle_bead_seats = detail::cycle_rim_table::seats;
/// Their names.
inline constexpr const auto& cycle_rim_names = detail::cycle_rim_table::names;

namespace detail {

/// The width of a cycle tyre that is taken for one, in millimetres: those of ISO 5775 begin at 18 and the widest fat
/// tyres have some 125; from memory, and wide enough to refuse no tyre.
inline constexpr int narrowest_cycle_tyre = 15;
inline constexpr int widest_cycle_tyre = 130;

/// The place of a bead seat diameter in its table, -1 where there is none.
[[nodiscard]] constexpr int row_of_cycle_bead_seat(int millimetres) noexcept {
  for (int row = 0; row < static_cast<int>(std::size(cycle_bead_seats)); ++row)
    if (cycle_bead_seats[row].millimetres == millimetres) return row;
  return -1;
}

/// The bead seat diameters next to one that the table does not hold.
[[nodiscard]] constexpr Neighbours cycle_bead_seats_next_to(int millimetres) noexcept {
  Neighbours next;
  for (const CycleBeadSeat& seat : cycle_bead_seats) {
    if (seat.millimetres >= millimetres) next.above = seat.name;
    if (seat.millimetres <= millimetres && next.below.empty()) next.below = seat.name;
  }
  return next;
}

/// A width as marked (see CycleRimName), in whole millimetres, as ISO markings give it.
[[nodiscard]] constexpr int cycle_width_in_millimetres(CycleNaming naming, int width) noexcept {
  switch (naming) {
    case CycleNaming::iso:
    case CycleNaming::french: break;
    case CycleNaming::decimal: return (width * 254 + 5000) / 10000;
    case CycleNaming::fractional:
    case CycleNaming::three_part: return (width * 254 + 40) / 80;
  }
  return width;
}

/// A rim's name as it was read; see CycleRimName for what the numbers count.
struct CycleName {
  CycleNaming naming = CycleNaming::iso;
  char letter = 0;
  short diameter = 0;
  short width = 0;
};

/// The rims that a name may stand for: their number, their bead seats and the first one's place in the table of names.
struct CycleReadings {
  int count = 0;
  int bead_seats[8] = {};
  int row = -1;
  bool others = false;  ///< the list itself says that the name stands for more

  constexpr void add(int place) noexcept {
    const CycleRimName& name = cycle_rim_names[place];
    for (int i = 0; i < count; ++i)
      if (bead_seats[i] == name.bead_seat) return;
    if (count == static_cast<int>(std::size(bead_seats))) return;
    if (count == 0) row = place;
    bead_seats[count++] = name.bead_seat;
    others = others || name.alternative;
  }
};

/// The rims that go by exactly this name.
[[nodiscard]] constexpr CycleReadings cycle_rims_named(const CycleName& read) noexcept {
  CycleReadings found;
  for (int row = 0; row < static_cast<int>(std::size(cycle_rim_names)); ++row) {
    const CycleRimName& name = cycle_rim_names[row];
    if (name.naming == read.naming && name.diameter == read.diameter && name.letter == read.letter &&
        name.least_width <= read.width && read.width <= name.greatest_width)
      found.add(row);
  }
  return found;
}

/// All rims that are called by this diameter, whatever their letter or width.
[[nodiscard]] constexpr CycleReadings cycle_rims_called(const CycleName& read) noexcept {
  const bool french = read.naming == CycleNaming::french;
  CycleReadings found;
  for (int row = 0; row < static_cast<int>(std::size(cycle_rim_names)); ++row) {
    const CycleRimName& name = cycle_rim_names[row];
    if ((name.naming == CycleNaming::french) == french && name.diameter == read.diameter) found.add(row);
  }
  return found;
}

/// Whether a number of millimetres is the outer diameter of a French name: what tells `650B` from a section code.
[[nodiscard]] constexpr bool is_french_diameter(int millimetres) noexcept {
  for (const CycleRimName& name : cycle_rim_names)
    if (name.naming == CycleNaming::french && name.diameter == millimetres) return true;
  return false;
}

}  // namespace detail

/// The row of a bead seat diameter, or null where there is none.
[[nodiscard]] constexpr const CycleBeadSeat* find_cycle_bead_seat(int millimetres) noexcept {
  const int row = detail::row_of_cycle_bead_seat(millimetres);
  return row < 0 ? nullptr : &cycle_bead_seats[row];
}

/// Where the height of a cycle tyre comes from: the trade takes it to be as high as wide. How far a tyre stands from
/// that on rims of other widths no source tells; the band below is from memory, and wide.
inline constexpr Source cycle_height_source{"common practice: a cycle tyre is as high as wide, give or take a tenth",
                                            Certainty::from_memory};

/// Section height of a cycle tyre over its width as marked.
inline constexpr Band<double> cycle_height_factor{0.9, 1.0, 1.1};

/// Overall diameter of a cycle tyre, whose section height is a share of its width as marked.
LAYSHAFT_FORMULA(constexpr, Length, cycle_diameter, (Length rim_diameter, Length section_width, double height_factor),
                 positive(rim_diameter) && positive(section_width) && positive(height_factor), sources::common_practice,
                 rim_diameter + 2.0 * section_width * height_factor)

}  // namespace layshaft
