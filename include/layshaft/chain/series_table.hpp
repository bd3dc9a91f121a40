// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/source.hpp>
#include <layshaft/core/units.hpp>

#include <array>
#include <optional>  // a figure that no source gives
#include <string_view>

/// @file
/// The chain series, single strand: dimensions, least tensile strength and mass per metre, each with its source.
///
/// * `iso`: ISO 606:1994 as adopted in GOST 13568-97, Annex A, Table A.1; published. Rollers and pins at their
///   largest, inner widths at their least, the least tensile strength of a single strand. Today's chains are often
///   stronger; the standard's figure is the one every chain of the series must reach.
/// * `maker`: a chain maker's 2020 catalogue, pp. 18-19 and 24-25; published. The standard gives no mass, and makers
///   differ by some 10 %.
/// * `works`: the same catalogue, pp. 296-297; published.
/// * `gost`: GOST 13568-97, Table 1; published. For 081 another chain maker's catalogue prints the same dimensions
///   but a pin of 4.09 mm, 8.9 kN and 0.30 kg/m, so those three are secondary (`gost_differs`).
/// * `chart`: charts of motorcycle chain sizes; secondary. A chain engineering guide, p. 127, confirms the inner
///   widths. No source at hand gives pin, strength or mass of these series, so the table gives none.
///
/// * `works_differs`, `narrow`: 083, of which two makers print different figures, and 08B and 10B as the standard's
///   footnote makes them for motorcycles, with a maker's plates, strength and mass.
/// * `kart`, `memory`: recalled.
///
/// `cycle` is the 1/2 x 3/32 inch chain of bicycles, which the national standard lists by its inner width of 2.40 mm.
/// The number of a motorcycle series is a name: its digits often tell pitch and width, but not for 423, 428 and 532.
namespace layshaft {

/// Where the figures of a series come from; a source without a document where there is no figure.
struct ChainSeriesSources {
  Source dimensions;  ///< of pitch, roller diameter and inner width
  Source pin;
  Source plate;
  Source strength;
  Source mass;
};

/// One series of the table.
struct ChainSeriesRow {
  std::string_view name;   ///< as the standard or the trade prints it
  std::string_view alias;  ///< its ANSI number or other usual name; empty where it has none
  Length pitch;
  Length roller_diameter;
  Length inner_width;
  std::optional<Length> pin_diameter;
  std::optional<Length> plate_height;
  std::optional<Force> tensile_strength;
  std::optional<LinearDensity> mass_per_length;
  ChainSeriesSources sources;
};

namespace detail {

namespace chain_sources {
inline constexpr std::nullopt_t none = std::nullopt;
inline constexpr Source unknown{"", Certainty::secondary};
inline constexpr Source standard{"ISO 606:1994 as adopted in GOST 13568-97, Annex A, Table A.1", Certainty::published};
inline constexpr Source catalogue{"a chain maker's 2020 catalogue, pp. 18-19 and 24-25", Certainty::published};
inline constexpr Source works_pages{"a chain maker's 2020 catalogue, pp. 296-297", Certainty::published};
inline constexpr Source national{"GOST 13568-97, Table 1", Certainty::published};
inline constexpr Source disputed{"GOST 13568-97, Table 1; a chain maker's catalogue differs", Certainty::secondary};
inline constexpr Source charts{
    "charts of motorcycle chain sizes; inner widths also in a chain engineering guide, p. 127", Certainty::secondary};

inline constexpr ChainSeriesSources iso{standard, standard, standard, standard, catalogue};
inline constexpr ChainSeriesSources maker{catalogue, catalogue, catalogue, catalogue, catalogue};
inline constexpr ChainSeriesSources works{works_pages, works_pages, works_pages, works_pages, works_pages};
inline constexpr ChainSeriesSources gost{national, national, national, national, national};
inline constexpr ChainSeriesSources gost_differs{national, disputed, disputed, disputed, disputed};
inline constexpr ChainSeriesSources chart{charts, unknown, unknown, unknown, unknown};
inline constexpr Source works_disputed{"a chain maker's 2020 catalogue, pp. 296-297; another maker's differs",
                                       Certainty::secondary};
inline constexpr ChainSeriesSources works_differs{works_pages, works_pages, works_disputed, works_disputed,
                                                  works_disputed};
inline constexpr Source footnote{"GOST 13568-97, Table A.1, footnote on chains for motorcycles", Certainty::published};
inline constexpr Source other_catalogue{"another chain maker's catalogue, pp. 10-11", Certainty::published};
inline constexpr ChainSeriesSources narrow{footnote, footnote, other_catalogue, other_catalogue, other_catalogue};
inline constexpr Source kart_talk{"pitch as quoted from a maker's catalogue; the rest from memory",
                                  Certainty::from_memory};
inline constexpr ChainSeriesSources kart{kart_talk, unknown, unknown, unknown, unknown};
inline constexpr Source recalled{"recalled, not seen", Certainty::from_memory};
inline constexpr ChainSeriesSources memory{recalled, recalled, recalled, unknown, unknown};
}  // namespace chain_sources

// clang-format off
[[nodiscard]] constexpr auto make_chain_series_table() noexcept {
  using namespace chain_sources;
  using namespace literals;
  return std::to_array<ChainSeriesRow>({
    // name            alias          pitch, roller, inner, pin, plate, strength, mass, sources
    {"415",              "",           12.7_mm,   7.77_mm,  4.76_mm,  none,     none,      none,      none,           chart},
    {"415H",             "",           12.7_mm,   7.77_mm,  4.76_mm,  3.96_mm,  12.0_mm,   14.4_kN,   0.55_kg_per_m,  works},
    {"420",              "",           12.7_mm,   7.77_mm,  6.35_mm,  none,     none,      none,      none,           chart},
    {"423",              "",           12.7_mm,   8.51_mm,  6.4_mm,   4.45_mm,  12.4_mm,   19.6_kN,   0.71_kg_per_m,  works},
    {"425",              "",           12.7_mm,   7.92_mm,  7.95_mm,  none,     none,      none,      none,           chart},
    {"428",              "",           12.7_mm,   8.51_mm,  7.75_mm,  none,     none,      none,      none,           chart},
    {"08B narrow",       "",           12.7_mm,   8.51_mm,  5.21_mm,  4.45_mm,  11.70_mm,  17.8_kN,   0.70_kg_per_m,  narrow},
    {"520",              "",           15.875_mm, 10.16_mm, 6.35_mm,  none,     none,      none,      none,           chart},
    {"10B of 520 width", "",           15.875_mm, 10.16_mm, 6.45_mm,  5.08_mm,  14.7_mm,   22.0_kN,   0.89_kg_per_m,  works},
    {"10B narrow",       "",           15.875_mm, 10.16_mm, 6.48_mm,  5.08_mm,  14.60_mm,  22.2_kN,   0.81_kg_per_m,  narrow},
    {"525",              "",           15.875_mm, 10.16_mm, 7.95_mm,  none,     none,      none,      none,           chart},
    {"530",              "",           15.875_mm, 10.16_mm, 9.53_mm,  none,     none,      none,      none,           chart},
    {"532",              "",           15.875_mm, 11.1_mm,  9.53_mm,  none,     none,      none,      none,           chart},
    {"630",              "",           19.05_mm,  11.91_mm, 9.53_mm,  none,     none,      none,      none,           chart},
    {"219",              "",           7.774_mm,  4.59_mm,  5.0_mm,   none,     none,      none,      none,           kart},
    {"25H",              "",           6.35_mm,   3.3_mm,   3.18_mm,  2.31_mm,  6.0_mm,    none,      none,           memory},
    {"270H",             "",           8.5_mm,    5.0_mm,   4.75_mm,  3.28_mm,  none,      none,      none,           memory},
    {"cycle",            "1/2 x 3/32", 12.7_mm,   7.75_mm,  2.40_mm,  3.66_mm,  10.0_mm,   10.0_kN,   0.30_kg_per_m,  gost},
    {"081",              "",           12.7_mm,   7.75_mm,  3.30_mm,  3.66_mm,  10.0_mm,   9.0_kN,    0.35_kg_per_m,  gost_differs},
    {"083",              "415B",       12.7_mm,   7.75_mm,  4.88_mm,  4.09_mm,  10.3_mm,   12.0_kN,   0.45_kg_per_m,  works_differs},
    {"04C",              "25",         6.350_mm,  3.30_mm,  3.18_mm,  2.31_mm,  6.00_mm,   3.50_kN,   0.15_kg_per_m,  maker},
    {"06C",              "35",         9.525_mm,  5.08_mm,  4.77_mm,  3.58_mm,  9.00_mm,   7.90_kN,   0.33_kg_per_m,  maker},
    {"085",              "41",         12.700_mm, 7.77_mm,  6.25_mm,  3.58_mm,  9.91_mm,   6.67_kN,   0.41_kg_per_m,  maker},
    {"08A",              "40",         12.70_mm,  7.95_mm,  7.85_mm,  3.96_mm,  12.07_mm,  13.8_kN,   0.62_kg_per_m,  iso},
    {"10A",              "50",         15.875_mm, 10.16_mm, 9.40_mm,  5.08_mm,  15.09_mm,  21.8_kN,   1.02_kg_per_m,  iso},
    {"12A",              "60",         19.05_mm,  11.91_mm, 12.57_mm, 5.94_mm,  18.08_mm,  31.1_kN,   1.50_kg_per_m,  iso},
    {"16A",              "80",         25.40_mm,  15.88_mm, 15.75_mm, 7.92_mm,  24.13_mm,  55.6_kN,   2.60_kg_per_m,  iso},
    {"20A",              "100",        31.75_mm,  19.05_mm, 18.90_mm, 9.53_mm,  30.18_mm,  86.7_kN,   3.91_kg_per_m,  iso},
    {"24A",              "120",        38.10_mm,  22.23_mm, 25.22_mm, 11.10_mm, 36.20_mm,  124.6_kN,  5.62_kg_per_m,  iso},
    {"28A",              "140",        44.45_mm,  25.40_mm, 25.22_mm, 12.70_mm, 42.24_mm,  169.0_kN,  7.50_kg_per_m,  iso},
    {"32A",              "160",        50.80_mm,  28.58_mm, 31.55_mm, 14.27_mm, 48.26_mm,  222.4_kN,  10.10_kg_per_m, iso},
    {"36A",              "180",        57.150_mm, 35.71_mm, 35.48_mm, 17.46_mm, 53.60_mm,  280.20_kN, 13.45_kg_per_m, maker},
    {"40A",              "200",        63.50_mm,  39.68_mm, 37.85_mm, 19.84_mm, 60.33_mm,  347.0_kN,  16.15_kg_per_m, iso},
    {"48A",              "240",        76.20_mm,  47.63_mm, 47.36_mm, 23.80_mm, 72.39_mm,  500.4_kN,  23.20_kg_per_m, iso},
    {"04B",              "",           6.000_mm,  4.00_mm,  2.80_mm,  1.85_mm,  5.00_mm,   3.0_kN,    0.11_kg_per_m,  maker},
    {"05B",              "",           8.00_mm,   5.00_mm,  3.00_mm,  2.31_mm,  7.11_mm,   4.4_kN,    0.20_kg_per_m,  iso},
    {"06B",              "",           9.525_mm,  6.35_mm,  5.72_mm,  3.28_mm,  8.26_mm,   8.9_kN,    0.41_kg_per_m,  iso},
    {"08B",              "",           12.70_mm,  8.51_mm,  7.75_mm,  4.45_mm,  11.81_mm,  17.8_kN,   0.69_kg_per_m,  iso},
    {"10B",              "",           15.875_mm, 10.16_mm, 9.65_mm,  5.08_mm,  14.73_mm,  22.2_kN,   0.93_kg_per_m,  iso},
    {"12B",              "",           19.05_mm,  12.07_mm, 11.68_mm, 5.72_mm,  16.13_mm,  28.9_kN,   1.15_kg_per_m,  iso},
    {"16B",              "",           25.40_mm,  15.88_mm, 17.02_mm, 8.28_mm,  21.08_mm,  42.3_kN,   2.71_kg_per_m,  iso},
    {"20B",              "",           31.75_mm,  19.05_mm, 19.56_mm, 10.19_mm, 26.42_mm,  64.5_kN,   3.70_kg_per_m,  iso},
    {"24B",              "",           38.10_mm,  25.40_mm, 25.40_mm, 14.63_mm, 33.40_mm,  97.9_kN,   7.10_kg_per_m,  iso},
    {"28B",              "",           44.45_mm,  27.94_mm, 30.99_mm, 15.90_mm, 37.08_mm,  129.0_kN,  8.50_kg_per_m,  iso},
    {"32B",              "",           50.80_mm,  29.21_mm, 30.99_mm, 17.81_mm, 42.29_mm,  169.0_kN,  10.25_kg_per_m, iso},
    {"40B",              "",           63.50_mm,  39.37_mm, 38.10_mm, 22.89_mm, 52.96_mm,  262.4_kN,  16.35_kg_per_m, iso},
    {"48B",              "",           76.20_mm,  48.26_mm, 45.72_mm, 29.24_mm, 63.88_mm,  400.3_kN,  25.00_kg_per_m, iso},
    {"56B",              "",           88.90_mm,  53.98_mm, 53.34_mm, 34.32_mm, 77.85_mm,  542.7_kN,  35.78_kg_per_m, iso},
    {"64B",              "",           101.60_mm, 63.50_mm, 60.96_mm, 39.40_mm, 90.17_mm,  711.7_kN,  46.00_kg_per_m, iso},
    {"72B",              "",           114.30_mm, 72.39_mm, 68.58_mm, 44.48_mm, 103.63_mm, 898.5_kN,  60.80_kg_per_m, iso},
  });
}
// clang-format on

}  // namespace detail

/// Every series the library knows: motorcycle, cycle, then the A and the B series by size.
inline constexpr auto chain_series_table = detail::make_chain_series_table();

}  // namespace layshaft
