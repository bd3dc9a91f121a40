// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>
#include <layshaft/core/source.hpp>
#include <layshaft/core/units.hpp>
#include <layshaft/tyre/rim_code.hpp>

#include <cstddef>
#include <cstdint>
#include <iterator>  // std::size of the table
#include <optional>
#include <string_view>

/// @file
/// Dimensions of tyres whose marking names them but does not tell them: sections in inches and lettered sections.
///
/// Plain arithmetic (rim plus twice the section) is 1.0 to 3.4 % low for normal sections and 3.6 to 6.4 % high for low
/// sections, so these sizes need a table.
namespace layshaft {

/// The tables that code-designated tyres are grouped by.
enum class TyreFamily {
  normal_section,  ///< `3.00-21`: as high as wide; rim code 14 and above
  low_section,     ///< `4.10-18`
  small_rim,       ///< `3.50-10`, `2 1/2-8`: rim code 12 and below
  low_pressure,    ///< `5.4-10`: sections with one decimal
  lettered,        ///< `MT90-16`: letters for the section, then the aspect ratio
};

[[nodiscard]] constexpr std::string_view to_string(TyreFamily family) noexcept {
  switch (family) {
    case TyreFamily::normal_section: return "normal section";
    case TyreFamily::low_section: return "low section";
    case TyreFamily::small_rim: return "small rim";
    case TyreFamily::low_pressure: return "low pressure";
    case TyreFamily::lettered: return "lettered";
  }
  return {};
}

/// One row: a section on one rim, its design dimensions and their limits.
struct CodeDesignatedTyre {
  TyreFamily family;
  std::string_view section;  ///< as marked: `4.10`, `2 1/2`, `MT90`
  double rim_code;
  double measuring_rim_width;  ///< width code of the rim it is measured on
  Length least_diameter;       ///< overall diameter
  Length diameter;
  Length greatest_diameter;                         ///< of a road tyre
  std::optional<Length> greatest_diameter_special;  ///< of a special use tyre, where the table has one
  Length section_width;
  Length greatest_section_width;
};

/// Where the table below comes from.
inline constexpr Source code_designated_source{"UN Regulation No. 75, Annex 5", Certainty::from_memory};

namespace detail::code_designated_table {
using enum TyreFamily;
inline constexpr std::nullopt_t none = std::nullopt;

// Source: UN Regulation No. 75, Annex 5; every row from memory. By family, section and rim code.
// clang-format off
inline constexpr CodeDesignatedTyre rows[] = {
    // family, section, rim code, measuring rim; overall diameter: least, design, greatest, greatest special;
    // section width: design, greatest
    {normal_section, "2.00", 14.0, 1.20, 460_mm, 466_mm, 478_mm, none, 52_mm, 57_mm},
    {normal_section, "2.00", 16.0, 1.20, 510_mm, 516_mm, 528_mm, none, 52_mm, 57_mm},
    {normal_section, "2.00", 17.0, 1.20, 536_mm, 542_mm, 554_mm, none, 52_mm, 57_mm},
    {normal_section, "2.00", 18.0, 1.20, 561_mm, 567_mm, 579_mm, none, 52_mm, 57_mm},
    {normal_section, "2.00", 19.0, 1.20, 586_mm, 592_mm, 604_mm, none, 52_mm, 57_mm},
    {normal_section, "2.25", 14.0, 1.60, 474_mm, 480_mm, 492_mm, 496_mm, 61_mm, 67_mm},
    {normal_section, "2.25", 15.0, 1.60, 499_mm, 505_mm, 517_mm, 521_mm, 61_mm, 67_mm},
    {normal_section, "2.25", 16.0, 1.60, 524_mm, 530_mm, 542_mm, 546_mm, 61_mm, 67_mm},
    {normal_section, "2.25", 17.0, 1.60, 550_mm, 556_mm, 568_mm, 572_mm, 61_mm, 67_mm},
    {normal_section, "2.25", 18.0, 1.60, 575_mm, 581_mm, 593_mm, 597_mm, 61_mm, 67_mm},
    {normal_section, "2.25", 19.0, 1.60, 600_mm, 606_mm, 618_mm, 622_mm, 61_mm, 67_mm},
    {normal_section, "2.50", 14.0, 1.60, 486_mm, 492_mm, 506_mm, 508_mm, 65_mm, 72_mm},
    {normal_section, "2.50", 15.0, 1.60, 511_mm, 517_mm, 531_mm, 533_mm, 65_mm, 72_mm},
    {normal_section, "2.50", 16.0, 1.60, 536_mm, 542_mm, 556_mm, 558_mm, 65_mm, 72_mm},
    {normal_section, "2.50", 17.0, 1.60, 562_mm, 568_mm, 582_mm, 584_mm, 65_mm, 72_mm},
    {normal_section, "2.50", 18.0, 1.60, 587_mm, 593_mm, 607_mm, 609_mm, 65_mm, 72_mm},
    {normal_section, "2.50", 19.0, 1.60, 612_mm, 618_mm, 632_mm, 634_mm, 65_mm, 72_mm},
    {normal_section, "2.50", 21.0, 1.60, 663_mm, 669_mm, 683_mm, 685_mm, 65_mm, 72_mm},
    {normal_section, "2.75", 14.0, 1.85, 505_mm, 512_mm, 524_mm, 530_mm, 75_mm, 83_mm},
    {normal_section, "2.75", 15.0, 1.85, 530_mm, 537_mm, 549_mm, 555_mm, 75_mm, 83_mm},
    {normal_section, "2.75", 16.0, 1.85, 555_mm, 562_mm, 574_mm, 580_mm, 75_mm, 83_mm},
    {normal_section, "2.75", 17.0, 1.85, 581_mm, 588_mm, 600_mm, 606_mm, 75_mm, 83_mm},
    {normal_section, "2.75", 18.0, 1.85, 606_mm, 613_mm, 625_mm, 631_mm, 75_mm, 83_mm},
    {normal_section, "2.75", 19.0, 1.85, 631_mm, 638_mm, 650_mm, 656_mm, 75_mm, 83_mm},
    {normal_section, "2.75", 21.0, 1.85, 682_mm, 689_mm, 701_mm, 707_mm, 75_mm, 83_mm},
    {normal_section, "3.00", 14.0, 1.85, 519_mm, 526_mm, 540_mm, 546_mm, 80_mm, 88_mm},
    {normal_section, "3.00", 16.0, 1.85, 569_mm, 577_mm, 591_mm, 597_mm, 80_mm, 88_mm},
    {normal_section, "3.00", 17.0, 1.85, 594_mm, 602_mm, 616_mm, 622_mm, 80_mm, 88_mm},
    {normal_section, "3.00", 18.0, 1.85, 619_mm, 627_mm, 641_mm, 647_mm, 80_mm, 88_mm},
    {normal_section, "3.00", 19.0, 1.85, 644_mm, 652_mm, 666_mm, 672_mm, 80_mm, 88_mm},
    {normal_section, "3.00", 21.0, 1.85, 695_mm, 703_mm, 717_mm, 723_mm, 80_mm, 88_mm},
    {normal_section, "3.25", 16.0, 2.15, 581_mm, 589_mm, 605_mm, 613_mm, 89_mm, 98_mm},
    {normal_section, "3.25", 18.0, 2.15, 631_mm, 639_mm, 655_mm, 663_mm, 89_mm, 98_mm},
    {normal_section, "3.25", 19.0, 2.15, 656_mm, 664_mm, 680_mm, 688_mm, 89_mm, 98_mm},
    {normal_section, "3.50", 16.0, 2.15, 591_mm, 600_mm, 616_mm, 624_mm, 93_mm, 102_mm},
    {normal_section, "3.50", 18.0, 2.15, 642_mm, 651_mm, 667_mm, 675_mm, 93_mm, 102_mm},
    {normal_section, "3.50", 19.0, 2.15, 667_mm, 676_mm, 692_mm, 700_mm, 93_mm, 102_mm},
    {normal_section, "4.00", 16.0, 2.50, 611_mm, 620_mm, 638_mm, 646_mm, 108_mm, 119_mm},
    {normal_section, "4.00", 18.0, 2.50, 662_mm, 671_mm, 689_mm, 697_mm, 108_mm, 119_mm},
    {normal_section, "4.00", 19.0, 2.50, 687_mm, 696_mm, 714_mm, 722_mm, 108_mm, 119_mm},
    {normal_section, "5.00", 16.0, 3.00, 657_mm, 667_mm, 687_mm, 700_mm, 129_mm, 142_mm},
    {low_section, "3.60", 18.0, 2.15, 605_mm, 615_mm, 628_mm, 633_mm, 93_mm, 102_mm},
    {low_section, "3.60", 19.0, 2.15, 630_mm, 640_mm, 653_mm, 658_mm, 93_mm, 102_mm},
    {low_section, "4.10", 18.0, 2.50, 629_mm, 641_mm, 654_mm, 663_mm, 108_mm, 119_mm},
    {low_section, "4.10", 19.0, 2.50, 655_mm, 667_mm, 679_mm, 688_mm, 108_mm, 119_mm},
    {low_section, "4.60", 16.0, 2.75, 594_mm, 604_mm, 619_mm, 628_mm, 117_mm, 129_mm},
    {low_section, "4.60", 17.0, 2.75, 619_mm, 630_mm, 642_mm, 654_mm, 117_mm, 129_mm},
    {low_section, "4.60", 18.0, 2.75, 644_mm, 654_mm, 670_mm, 679_mm, 117_mm, 129_mm},
    {low_section, "5.10", 16.0, 3.00, 615_mm, 625_mm, 643_mm, 651_mm, 129_mm, 142_mm},
    {small_rim, "2.50", 8.0, 1.50, 328_mm, 338_mm, 352_mm, none, 65_mm, 70_mm},
    {small_rim, "2.50", 9.0, 1.50, 354_mm, 364_mm, 378_mm, none, 65_mm, 70_mm},
    {small_rim, "3.00", 8.0, 2.10, 359_mm, 369_mm, 379_mm, none, 80_mm, 86_mm},
    {small_rim, "3.00", 10.0, 2.10, 410_mm, 420_mm, 430_mm, none, 80_mm, 86_mm},
    {small_rim, "3.50", 8.0, 2.50, 376_mm, 386_mm, 398_mm, none, 92_mm, 99_mm},
    {small_rim, "3.50", 10.0, 2.50, 427_mm, 437_mm, 449_mm, none, 92_mm, 99_mm},
    {small_rim, "4.00", 8.0, 2.50, 405_mm, 415_mm, 427_mm, none, 105_mm, 113_mm},
    {small_rim, "4.00", 10.0, 2.50, 456_mm, 466_mm, 478_mm, none, 105_mm, 113_mm},
    {small_rim, "4.00", 12.0, 2.50, 507_mm, 517_mm, 529_mm, none, 105_mm, 113_mm},
    {small_rim, "2", 12.0, 1.35, 413_mm, 417_mm, 426_mm, none, 55_mm, 59_mm},
    {small_rim, "2 1/2", 8.0, 1.75, 339_mm, 345_mm, 356_mm, none, 70_mm, 76_mm},
    {small_rim, "2 1/2", 9.0, 1.75, 365_mm, 371_mm, 382_mm, none, 70_mm, 76_mm},
    {small_rim, "2 1/2", 12.0, 1.50, 425_mm, 431_mm, 441_mm, none, 62_mm, 67_mm},
    {small_rim, "2 3/4", 9.0, 1.75, 375_mm, 381_mm, 393_mm, none, 73_mm, 79_mm},
    {small_rim, "3", 10.0, 2.10, 412_mm, 418_mm, 431_mm, none, 84_mm, 91_mm},
    {small_rim, "3", 12.0, 2.10, 463_mm, 469_mm, 482_mm, none, 84_mm, 91_mm},
    {low_pressure, "5.4", 10.0, 4.00, 474_mm, 481_mm, 487_mm, none, 135_mm, 143_mm},
    {low_pressure, "5.4", 12.0, 4.00, 525_mm, 532_mm, 547_mm, none, 135_mm, 143_mm},
    {low_pressure, "5.4", 14.0, 4.00, 575_mm, 582_mm, 598_mm, none, 135_mm, 143_mm},
    {low_pressure, "5.4", 16.0, 4.00, 626_mm, 633_mm, 649_mm, none, 135_mm, 143_mm},
    {low_pressure, "6.7", 10.0, 5.00, 532_mm, 541_mm, 561_mm, none, 170_mm, 180_mm},
    {low_pressure, "6.7", 12.0, 5.00, 583_mm, 592_mm, 612_mm, none, 170_mm, 180_mm},
    {low_pressure, "6.7", 14.0, 5.00, 633_mm, 642_mm, 662_mm, none, 170_mm, 180_mm},
    {lettered, "MH90", 21.0, 1.85, 682_mm, 686_mm, 700_mm, none, 80_mm, 89_mm},
    {lettered, "MJ90", 18.0, 2.15, 620_mm, 625_mm, 640_mm, none, 89_mm, 99_mm},
    {lettered, "MJ90", 19.0, 2.15, 645_mm, 650_mm, 665_mm, none, 89_mm, 99_mm},
    {lettered, "ML90", 18.0, 2.15, 629_mm, 634_mm, 650_mm, none, 93_mm, 103_mm},
    {lettered, "ML90", 19.0, 2.15, 654_mm, 659_mm, 675_mm, none, 93_mm, 103_mm},
    {lettered, "MM90", 19.0, 2.15, 663_mm, 669_mm, 685_mm, none, 95_mm, 106_mm},
    {lettered, "MN90", 18.0, 2.15, 656_mm, 662_mm, 681_mm, none, 104_mm, 116_mm},
    {lettered, "MP90", 18.0, 2.15, 667_mm, 673_mm, 692_mm, none, 108_mm, 120_mm},
    {lettered, "MR90", 18.0, 2.15, 680_mm, 687_mm, 708_mm, none, 114_mm, 127_mm},
    {lettered, "MT90", 16.0, 3.00, 642_mm, 650_mm, 672_mm, none, 130_mm, 144_mm},
    {lettered, "MT90", 17.0, 3.00, 668_mm, 675_mm, 697_mm, none, 130_mm, 144_mm},
    {lettered, "MU90", 15.0, 3.50, 634_mm, 642_mm, 665_mm, none, 142_mm, 158_mm},
    {lettered, "MU90", 16.0, 3.50, 659_mm, 667_mm, 690_mm, none, 142_mm, 158_mm},
    {lettered, "MV90", 15.0, 3.50, 643_mm, 651_mm, 675_mm, none, 150_mm, 172_mm},
    {lettered, "MP85", 18.0, 2.15, 654_mm, 660_mm, 679_mm, none, 108_mm, 120_mm},
    {lettered, "MR85", 16.0, 2.15, 617_mm, 623_mm, 643_mm, none, 114_mm, 127_mm},
    {lettered, "MS85", 18.0, 2.50, 675_mm, 682_mm, 702_mm, none, 121_mm, 134_mm},
    {lettered, "MT85", 18.0, 3.00, 681_mm, 688_mm, 709_mm, none, 130_mm, 144_mm},
    {lettered, "MU85", 16.0, 3.50, 650_mm, 658_mm, 681_mm, none, 142_mm, 158_mm},
    {lettered, "MV85", 15.0, 3.50, 627_mm, 635_mm, 658_mm, none, 150_mm, 172_mm},
};
// clang-format on
}  // namespace detail::code_designated_table

namespace detail {
/// True if tyres of the family are made for rims of this code.
[[nodiscard]] constexpr bool serves(TyreFamily family, double rim_code) noexcept {
  switch (family) {
    case TyreFamily::normal_section: return rim_code >= 14.0;
    case TyreFamily::small_rim: return rim_code <= 12.0;
    case TyreFamily::low_section:
    case TyreFamily::low_pressure:
    case TyreFamily::lettered: break;
  }
  return true;
}
}  // namespace detail

/// The code-designated tyres known.
inline constexpr const auto& code_designated_tyres = detail::code_designated_table::rows;

namespace detail {
/// A section as one number, so that looking for it in the table takes no comparison of texts; 0 for one too long.
[[nodiscard]] constexpr std::uint64_t key_of_section(std::string_view section) noexcept {
  if (section.size() > sizeof(std::uint64_t)) return 0;
  std::uint64_t key = 0;
  for (const char character : section) key = key << 8 | static_cast<unsigned char>(character);
  return key;
}

/// The keys of the table's sections and the places of its rim codes in theirs, row by row.
struct SectionKeys {
  std::uint64_t rows[std::size(code_designated_tyres)] = {};
  unsigned char rims[std::size(code_designated_tyres)] = {};
  constexpr SectionKeys() noexcept {
    for (std::size_t row = 0; row < std::size(rows); ++row) {
      rows[row] = key_of_section(code_designated_tyres[row].section);
      rims[row] = static_cast<unsigned char>(row_of_rim_code(code_designated_tyres[row].rim_code));
    }
  }
};
inline constexpr SectionKeys section_keys;

/// The place in the table of the tyre that find_code_designated finds, -1 where there is none.
[[nodiscard]] constexpr int row_of_code_designated(std::string_view section, double rim_code) noexcept {
  const std::uint64_t key = key_of_section(section);
  int nearest = -1;
  double nearest_distance = 0.0;
  for (int row = 0; row < static_cast<int>(std::size(code_designated_tyres)); ++row) {
    if (section_keys.rows[row] != key) continue;
    const CodeDesignatedTyre& tyre = code_designated_tyres[row];
    if (!serves(tyre.family, rim_code)) continue;
    const double distance = tyre.rim_code < rim_code ? rim_code - tyre.rim_code : tyre.rim_code - rim_code;
    if (nearest < 0 || distance < nearest_distance) {
      nearest = row;
      nearest_distance = distance;
    }
  }
  return nearest;
}
}  // namespace detail

/// The row of the section, written exactly as in the table, on the rim code nearest to this one (of two, the smaller);
/// null where no family that is made for this rim has such a section.
[[nodiscard]] constexpr const CodeDesignatedTyre* find_code_designated(std::string_view section,
                                                                       double rim_code) noexcept {
  const int row = detail::row_of_code_designated(section, rim_code);
  return row < 0 ? nullptr : &code_designated_tyres[row];
}

/// The overall diameter of a listed section on another rim: within a family and section, overall diameter less rim
/// diameter is the same on every rim, to a millimetre of rounding. Valid for a sum above zero.
LAYSHAFT_FORMULA(constexpr, Length, overall_diameter_on_another_rim,
                 (Length listed_diameter, Length listed_rim_diameter, Length rim_diameter),
                 positive(listed_diameter) && positive(listed_rim_diameter) && positive(rim_diameter) &&
                     listed_diameter > listed_rim_diameter,
                 code_designated_source, listed_diameter + (rim_diameter - listed_rim_diameter))

namespace detail {
/// A number that orders sections as a person would look for them: hundredths of an inch, or letter and aspect ratio.
[[nodiscard]] constexpr int rank_of_section(std::string_view section) noexcept {
  if (!section.empty() && section[0] == 'M') {
    int rank = section.size() > 1 ? section[1] - 'A' : 0;
    for (std::size_t i = 2; i < section.size(); ++i) rank = rank * 10 + (section[i] - '0');
    return rank;
  }
  int whole = 0;
  std::size_t i = 0;
  for (; i < section.size() && section[i] >= '0' && section[i] <= '9'; ++i) whole = whole * 10 + (section[i] - '0');
  int hundredths = 0;
  const std::string_view rest = section.substr(i);
  if (rest == " 1/4") hundredths = 25;
  if (rest == " 1/2") hundredths = 50;
  if (rest == " 3/4") hundredths = 75;
  if (rest.size() >= 2 && rest[0] == '.') hundredths = (rest[1] - '0') * 10;
  if (rest.size() >= 3 && rest[0] == '.') hundredths += rest[2] - '0';
  return whole * 100 + hundredths;
}

/// The sections next to one that the table does not hold, among those made for this rim.
[[nodiscard]] constexpr Neighbours sections_next_to(std::string_view section, bool lettered_section,
                                                    double rim_code) noexcept {
  const int rank = rank_of_section(section);
  Neighbours next;
  int below = 0, above = 0;
  for (const CodeDesignatedTyre& row : code_designated_tyres) {
    if ((row.family == TyreFamily::lettered) != lettered_section || !serves(row.family, rim_code)) continue;
    const int here = rank_of_section(row.section);
    if (here <= rank && (next.below.empty() || here > below)) {
      next.below = row.section;
      below = here;
    }
    if (here >= rank && (next.above.empty() || here < above)) {
      next.above = row.section;
      above = here;
    }
  }
  return next;
}
}  // namespace detail

}  // namespace layshaft
