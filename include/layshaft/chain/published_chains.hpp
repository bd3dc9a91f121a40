// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/source.hpp>
#include <layshaft/core/units.hpp>

#include <array>
#include <optional>  // a figure that the source does not print
#include <string_view>

/// @file
/// Every row of the published tables of roller chains at hand, single strand, as printed: what the standard says, what
/// two makers print of their own, what a national standard adds. Where they differ, chain series (series_table.hpp)
/// holds the standard's figure; this table shows what else is in print.
namespace layshaft {

/// One printed row.
struct PublishedChain {
  std::string_view designation;  ///< as printed; a maker's own code is told in words
  std::string_view series;       ///< the chain series it is; empty where the library has none of its own
  Length pitch;
  Length roller_diameter;  ///< greatest
  Length inner_width;      ///< least
  std::optional<Length> pin_diameter;
  std::optional<Length> plate_height;
  std::optional<Force> tensile_strength;
  std::optional<LinearDensity> mass_per_length;
  Source source;
};

namespace detail {

// clang-format off
[[nodiscard]] constexpr auto make_published_chains() noexcept {
  using namespace literals;
  constexpr std::nullopt_t none = std::nullopt;
  constexpr Source iso{"ISO 606:1994 as adopted in GOST 13568-97, Annex A, Table A.1", Certainty::published};
  constexpr Source catalogue{"a chain maker's 2020 catalogue, pp. 18-19 and 24-25", Certainty::published};
  constexpr Source other_catalogue{"another chain maker's catalogue, pp. 10-11", Certainty::published};
  constexpr Source national{"GOST 13568-97, Table 1", Certainty::published};
  constexpr Source works{"a chain maker's 2020 catalogue, pp. 296-297", Certainty::published};
  constexpr Source footnote{"GOST 13568-97, Table A.1, footnote on chains for motorcycles", Certainty::published};
  constexpr Source charts{"charts of motorcycle chain sizes; inner widths also in a chain engineering guide, p. 127", Certainty::secondary};
  constexpr Source kart{"pitch as quoted from a maker's catalogue; the rest from memory", Certainty::from_memory};
  constexpr Source recalled{"recalled, not seen", Certainty::from_memory};
  return std::to_array<PublishedChain>({
    // designation                  series              pitch      roller     inner     pin       plate     strength   mass            source
    {"05B",                        "05B",              8.00_mm,    5.00_mm,  3.00_mm,  2.31_mm,  7.11_mm,   4.4_kN,    none,           iso},
    {"06B",                        "06B",              9.525_mm,   6.35_mm,  5.72_mm,  3.28_mm,  8.26_mm,   8.9_kN,    none,           iso},
    {"08A",                        "08A",              12.70_mm,   7.95_mm,  7.85_mm,  3.96_mm,  12.07_mm,  13.8_kN,   none,           iso},
    {"08B",                        "08B",              12.70_mm,   8.51_mm,  7.75_mm,  4.45_mm,  11.81_mm,  17.8_kN,   none,           iso},
    {"10A",                        "10A",              15.875_mm,  10.16_mm, 9.40_mm,  5.08_mm,  15.09_mm,  21.8_kN,   none,           iso},
    {"10B",                        "10B",              15.875_mm,  10.16_mm, 9.65_mm,  5.08_mm,  14.73_mm,  22.2_kN,   none,           iso},
    {"12A",                        "12A",              19.05_mm,   11.91_mm, 12.57_mm, 5.94_mm,  18.08_mm,  31.1_kN,   none,           iso},
    {"12B",                        "12B",              19.05_mm,   12.07_mm, 11.68_mm, 5.72_mm,  16.13_mm,  28.9_kN,   none,           iso},
    {"16A",                        "16A",              25.40_mm,   15.88_mm, 15.75_mm, 7.92_mm,  24.13_mm,  55.6_kN,   none,           iso},
    {"16B",                        "16B",              25.40_mm,   15.88_mm, 17.02_mm, 8.28_mm,  21.08_mm,  42.3_kN,   none,           iso},
    {"20A",                        "20A",              31.75_mm,   19.05_mm, 18.90_mm, 9.53_mm,  30.18_mm,  86.7_kN,   none,           iso},
    {"20B",                        "20B",              31.75_mm,   19.05_mm, 19.56_mm, 10.19_mm, 26.42_mm,  64.5_kN,   none,           iso},
    {"24A",                        "24A",              38.10_mm,   22.23_mm, 25.22_mm, 11.10_mm, 36.20_mm,  124.6_kN,  none,           iso},
    {"24B",                        "24B",              38.10_mm,   25.40_mm, 25.40_mm, 14.63_mm, 33.40_mm,  97.9_kN,   none,           iso},
    {"28A",                        "28A",              44.45_mm,   25.40_mm, 25.22_mm, 12.70_mm, 42.24_mm,  169.0_kN,  none,           iso},
    {"28B",                        "28B",              44.45_mm,   27.94_mm, 30.99_mm, 15.90_mm, 37.08_mm,  129.0_kN,  none,           iso},
    {"32A",                        "32A",              50.80_mm,   28.58_mm, 31.55_mm, 14.27_mm, 48.26_mm,  222.4_kN,  none,           iso},
    {"32B",                        "32B",              50.80_mm,   29.21_mm, 30.99_mm, 17.81_mm, 42.29_mm,  169.0_kN,  none,           iso},
    {"40A",                        "40A",              63.50_mm,   39.68_mm, 37.85_mm, 19.84_mm, 60.33_mm,  347.0_kN,  none,           iso},
    {"40B",                        "40B",              63.50_mm,   39.37_mm, 38.10_mm, 22.89_mm, 52.96_mm,  262.4_kN,  none,           iso},
    {"48A",                        "48A",              76.20_mm,   47.63_mm, 47.36_mm, 23.80_mm, 72.39_mm,  500.4_kN,  none,           iso},
    {"48B",                        "48B",              76.20_mm,   48.26_mm, 45.72_mm, 29.24_mm, 63.88_mm,  400.3_kN,  none,           iso},
    {"56B",                        "56B",              88.90_mm,   53.98_mm, 53.34_mm, 34.32_mm, 77.85_mm,  542.7_kN,  none,           iso},
    {"64B",                        "64B",              101.60_mm,  63.50_mm, 60.96_mm, 39.40_mm, 90.17_mm,  711.7_kN,  none,           iso},
    {"72B",                        "72B",              114.30_mm,  72.39_mm, 68.58_mm, 44.48_mm, 103.63_mm, 898.5_kN,  none,           iso},
    {"04B",                        "04B",              6.000_mm,   4.00_mm,  2.80_mm,  1.85_mm,  5.00_mm,   3.0_kN,    0.11_kg_per_m,  catalogue},
    {"05B",                        "05B",              8.000_mm,   5.00_mm,  3.00_mm,  2.31_mm,  7.10_mm,   5.0_kN,    0.20_kg_per_m,  catalogue},
    {"06B",                        "06B",              9.525_mm,   6.35_mm,  5.72_mm,  3.28_mm,  8.20_mm,   9.0_kN,    0.41_kg_per_m,  catalogue},
    {"08B",                        "08B",              12.700_mm,  8.51_mm,  7.75_mm,  4.45_mm,  11.80_mm,  18.0_kN,   0.69_kg_per_m,  catalogue},
    {"10B",                        "10B",              15.875_mm,  10.16_mm, 9.65_mm,  5.08_mm,  14.70_mm,  22.4_kN,   0.93_kg_per_m,  catalogue},
    {"12B",                        "12B",              19.050_mm,  12.07_mm, 11.68_mm, 5.72_mm,  16.00_mm,  29.0_kN,   1.15_kg_per_m,  catalogue},
    {"16B",                        "16B",              25.400_mm,  15.88_mm, 17.02_mm, 8.28_mm,  21.00_mm,  60.0_kN,   2.71_kg_per_m,  catalogue},
    {"20B",                        "20B",              31.750_mm,  19.05_mm, 19.56_mm, 10.19_mm, 26.40_mm,  95.0_kN,   3.70_kg_per_m,  catalogue},
    {"24B",                        "24B",              38.100_mm,  25.40_mm, 25.40_mm, 14.63_mm, 33.20_mm,  160.0_kN,  7.10_kg_per_m,  catalogue},
    {"28B",                        "28B",              44.450_mm,  27.94_mm, 30.99_mm, 15.90_mm, 36.70_mm,  200.0_kN,  8.50_kg_per_m,  catalogue},
    {"32B",                        "32B",              50.800_mm,  29.21_mm, 30.99_mm, 17.81_mm, 42.00_mm,  250.0_kN,  10.25_kg_per_m, catalogue},
    {"40B",                        "40B",              63.500_mm,  39.37_mm, 38.10_mm, 22.89_mm, 52.96_mm,  355.0_kN,  16.35_kg_per_m, catalogue},
    {"48B",                        "48B",              76.200_mm,  48.26_mm, 45.72_mm, 29.24_mm, 63.80_mm,  560.0_kN,  25.00_kg_per_m, catalogue},
    {"56B",                        "56B",              88.900_mm,  53.98_mm, 53.34_mm, 34.32_mm, 77.85_mm,  850.0_kN,  35.78_kg_per_m, catalogue},
    {"64B",                        "64B",              101.600_mm, 63.50_mm, 60.96_mm, 39.40_mm, 90.17_mm,  1120.0_kN, 46.00_kg_per_m, catalogue},
    {"72B",                        "72B",              114.300_mm, 72.39_mm, 68.58_mm, 44.48_mm, 103.60_mm, 1400.0_kN, 60.80_kg_per_m, catalogue},
    {"04C/25",                     "04C",              6.350_mm,   3.30_mm,  3.18_mm,  2.31_mm,  6.00_mm,   3.50_kN,   0.15_kg_per_m,  catalogue},
    {"06C/35",                     "06C",              9.525_mm,   5.08_mm,  4.77_mm,  3.58_mm,  9.00_mm,   7.90_kN,   0.33_kg_per_m,  catalogue},
    {"085/41",                     "085",              12.700_mm,  7.77_mm,  6.25_mm,  3.58_mm,  9.91_mm,   6.67_kN,   0.41_kg_per_m,  catalogue},
    {"08A/40",                     "08A",              12.700_mm,  7.95_mm,  7.85_mm,  3.96_mm,  12.00_mm,  14.10_kN,  0.62_kg_per_m,  catalogue},
    {"10A/50",                     "10A",              15.875_mm,  10.16_mm, 9.40_mm,  5.08_mm,  15.09_mm,  22.20_kN,  1.02_kg_per_m,  catalogue},
    {"12A/60",                     "12A",              19.050_mm,  11.91_mm, 12.57_mm, 5.94_mm,  18.00_mm,  31.80_kN,  1.50_kg_per_m,  catalogue},
    {"16A/80",                     "16A",              25.400_mm,  15.88_mm, 15.75_mm, 7.92_mm,  24.00_mm,  56.70_kN,  2.60_kg_per_m,  catalogue},
    {"20A/100",                    "20A",              31.750_mm,  19.05_mm, 18.90_mm, 9.53_mm,  30.00_mm,  88.50_kN,  3.91_kg_per_m,  catalogue},
    {"24A/120",                    "24A",              38.100_mm,  22.23_mm, 25.22_mm, 11.10_mm, 35.70_mm,  127.00_kN, 5.62_kg_per_m,  catalogue},
    {"28A/140",                    "28A",              44.450_mm,  25.40_mm, 25.22_mm, 12.70_mm, 41.00_mm,  172.40_kN, 7.50_kg_per_m,  catalogue},
    {"32A/160",                    "32A",              50.800_mm,  28.58_mm, 31.55_mm, 14.27_mm, 47.80_mm,  226.80_kN, 10.10_kg_per_m, catalogue},
    {"36A/180",                    "36A",              57.150_mm,  35.71_mm, 35.48_mm, 17.46_mm, 53.60_mm,  280.20_kN, 13.45_kg_per_m, catalogue},
    {"40A/200",                    "40A",              63.500_mm,  39.68_mm, 37.85_mm, 19.85_mm, 60.00_mm,  353.80_kN, 16.15_kg_per_m, catalogue},
    {"48A/240",                    "48A",              76.200_mm,  47.63_mm, 47.35_mm, 23.81_mm, 72.39_mm,  510.30_kN, 23.20_kg_per_m, catalogue},
    {"06B-1",                      "06B",              9.525_mm,   6.35_mm,  5.72_mm,  3.28_mm,  8.20_mm,   8.9_kN,    0.39_kg_per_m,  other_catalogue},
    {"08B-1",                      "08B",              12.700_mm,  8.51_mm,  7.75_mm,  4.45_mm,  11.70_mm,  17.8_kN,   0.70_kg_per_m,  other_catalogue},
    {"081-type",                   "081",              12.700_mm,  7.75_mm,  3.30_mm,  4.09_mm,  9.60_mm,   8.9_kN,    0.30_kg_per_m,  other_catalogue},
    {"083/084-type",               "083",              12.700_mm,  7.75_mm,  4.88_mm,  4.09_mm,  9.60_mm,   8.9_kN,    0.35_kg_per_m,  other_catalogue},
    {"08B-narrow",                 "08B narrow",       12.700_mm,  8.51_mm,  5.21_mm,  4.45_mm,  11.70_mm,  17.8_kN,   0.70_kg_per_m,  other_catalogue},
    {"10B-1",                      "10B",              15.875_mm,  10.16_mm, 9.65_mm,  5.08_mm,  14.60_mm,  22.2_kN,   0.96_kg_per_m,  other_catalogue},
    {"10B-narrow",                 "10B narrow",       15.875_mm,  10.16_mm, 6.48_mm,  5.08_mm,  14.60_mm,  22.2_kN,   0.81_kg_per_m,  other_catalogue},
    {"12B-1",                      "12B",              19.050_mm,  12.07_mm, 11.68_mm, 5.72_mm,  16.00_mm,  28.9_kN,   1.22_kg_per_m,  other_catalogue},
    {"16B-1",                      "16B",              25.400_mm,  15.88_mm, 17.02_mm, 8.28_mm,  21.08_mm,  60.0_kN,   2.80_kg_per_m,  other_catalogue},
    {"20B-1",                      "20B",              31.750_mm,  19.05_mm, 19.56_mm, 10.19_mm, 26.42_mm,  95.0_kN,   3.85_kg_per_m,  other_catalogue},
    {"24B-1",                      "24B",              38.100_mm,  25.40_mm, 25.40_mm, 14.63_mm, 33.40_mm,  160.0_kN,  7.45_kg_per_m,  other_catalogue},
    {"35-1",                       "06C",              9.525_mm,   5.08_mm,  4.68_mm,  3.59_mm,  8.60_mm,   7.9_kN,    0.35_kg_per_m,  other_catalogue},
    {"40-1",                       "08A",              12.700_mm,  7.92_mm,  7.85_mm,  3.97_mm,  11.20_mm,  13.9_kN,   0.60_kg_per_m,  other_catalogue},
    {"50-1",                       "10A",              15.875_mm,  10.16_mm, 9.40_mm,  5.08_mm,  14.60_mm,  21.8_kN,   1.00_kg_per_m,  other_catalogue},
    {"60-1",                       "12A",              19.050_mm,  11.91_mm, 12.57_mm, 5.94_mm,  17.50_mm,  31.3_kN,   1.47_kg_per_m,  other_catalogue},
    {"80-1",                       "16A",              25.400_mm,  15.88_mm, 15.75_mm, 7.94_mm,  24.13_mm,  55.6_kN,   2.80_kg_per_m,  other_catalogue},
    {"100-1",                      "20A",              31.750_mm,  19.05_mm, 18.90_mm, 9.54_mm,  30.17_mm,  87.0_kN,   4.20_kg_per_m,  other_catalogue},
    {"120-1",                      "24A",              38.100_mm,  22.23_mm, 25.23_mm, 11.11_mm, 36.20_mm,  125.0_kN,  5.70_kg_per_m,  other_catalogue},
    {"140-1",                      "28A",              44.450_mm,  25.40_mm, 25.23_mm, 12.71_mm, 42.23_mm,  170.0_kN,  7.80_kg_per_m,  other_catalogue},
    {"160-1",                      "32A",              50.800_mm,  28.58_mm, 31.55_mm, 14.29_mm, 48.26_mm,  223.0_kN,  10.40_kg_per_m, other_catalogue},
    {"PR-8-4.6(=05B-1)",           "05B",              8.0_mm,     5.00_mm,  3.00_mm,  2.31_mm,  7.5_mm,    4.6_kN,    0.20_kg_per_m,  national},
    {"PR-9.525-9.1(=06B-1)",       "06B",              9.525_mm,   6.35_mm,  5.72_mm,  3.28_mm,  8.5_mm,    9.1_kN,    0.45_kg_per_m,  national},
    {"PR-12.7-10-1",               "cycle",            12.7_mm,    7.75_mm,  2.40_mm,  3.66_mm,  10.0_mm,   10.0_kN,   0.30_kg_per_m,  national},
    {"PR-12.7-9(=081-1)",          "081",              12.7_mm,    7.75_mm,  3.30_mm,  3.66_mm,  10.0_mm,   9.0_kN,    0.35_kg_per_m,  national},
    {"PR-12.7-18.2-1",             "",                 12.7_mm,    8.51_mm,  5.40_mm,  4.45_mm,  11.8_mm,   18.2_kN,   0.65_kg_per_m,  national},
    {"PR-12.7-18.2(=08B-1)",       "08B",              12.7_mm,    8.51_mm,  7.75_mm,  4.45_mm,  11.8_mm,   18.2_kN,   0.75_kg_per_m,  national},
    {"PR-15.875-23-1",             "10B narrow",       15.875_mm,  10.16_mm, 6.48_mm,  5.08_mm,  14.8_mm,   23.0_kN,   0.80_kg_per_m,  national},
    {"PR-15.875-23(=10B-1)",       "10B",              15.875_mm,  10.16_mm, 9.65_mm,  5.08_mm,  14.8_mm,   23.0_kN,   1.00_kg_per_m,  national},
    {"PR-19.05-31.8(=12A-1)",      "12A",              19.05_mm,   11.91_mm, 12.70_mm, 5.94_mm,  18.2_mm,   31.8_kN,   1.90_kg_per_m,  national},
    {"PR-25.4-60(=16A-1)",         "16A",              25.4_mm,    15.88_mm, 15.88_mm, 7.92_mm,  24.2_mm,   60.0_kN,   2.60_kg_per_m,  national},
    {"PR-31.75-89(=20A-1)",        "20A",              31.75_mm,   19.05_mm, 19.05_mm, 9.53_mm,  30.2_mm,   89.0_kN,   3.80_kg_per_m,  national},
    {"PR-38.1-127(=24A-1)",        "24A",              38.1_mm,    22.23_mm, 25.40_mm, 11.10_mm, 36.2_mm,   127.0_kN,  5.50_kg_per_m,  national},
    {"PR-44.45-172.4(=28A-1)",     "28A",              44.45_mm,   25.40_mm, 25.40_mm, 12.70_mm, 42.4_mm,   172.4_kN,  7.50_kg_per_m,  national},
    {"PR-50.8-227(=32A-1)",        "32A",              50.8_mm,    28.58_mm, 31.75_mm, 14.27_mm, 48.3_mm,   227.0_kN,  9.7_kg_per_m,   national},
    {"PR-63.5-354(=40A-1)",        "40A",              63.5_mm,    39.68_mm, 38.10_mm, 19.84_mm, 60.4_mm,   354.0_kN,  16.0_kg_per_m,  national},
    {"415B / ISO 083",             "083",              12.7_mm,    7.75_mm,  4.88_mm,  4.09_mm,  10.3_mm,   12.0_kN,   0.45_kg_per_m,  works},
    {"415H",                       "415H",             12.7_mm,    7.77_mm,  4.76_mm,  3.96_mm,  12.0_mm,   14.4_kN,   0.55_kg_per_m,  works},
    {"423",                        "423",              12.7_mm,    8.51_mm,  6.4_mm,   4.45_mm,  12.4_mm,   19.6_kN,   0.71_kg_per_m,  works},
    {"08B motorcycle variant",     "08B narrow",       12.7_mm,    8.51_mm,  5.21_mm,  4.45_mm,  none,      none,      none,           footnote},
    {"10B motorcycle variant",     "10B narrow",       15.875_mm,  10.16_mm, 6.48_mm,  5.08_mm,  none,      none,      none,           footnote},
    {"415",                        "415",              12.7_mm,    7.77_mm,  4.76_mm,  none,     none,      none,      none,           charts},
    {"420",                        "420",              12.7_mm,    7.77_mm,  6.35_mm,  none,     none,      none,      none,           charts},
    {"428",                        "428",              12.7_mm,    8.51_mm,  7.75_mm,  none,     none,      none,      none,           charts},
    {"520",                        "520",              15.875_mm,  10.16_mm, 6.35_mm,  none,     none,      none,      none,           charts},
    {"525",                        "525",              15.875_mm,  10.16_mm, 7.95_mm,  none,     none,      none,      none,           charts},
    {"530",                        "530",              15.875_mm,  10.16_mm, 9.53_mm,  none,     none,      none,      none,           charts},
    {"532",                        "532",              15.875_mm,  11.1_mm,  9.53_mm,  none,     none,      none,      none,           charts},
    {"630",                        "630",              19.05_mm,   11.91_mm, 9.53_mm,  none,     none,      none,      none,           charts},
    {"425",                        "425",              12.7_mm,    7.92_mm,  7.95_mm,  none,     none,      none,      none,           charts},
    {"219 (kart)",                 "219",              7.774_mm,   4.59_mm,  5.0_mm,   none,     none,      none,      none,           kart},
    {"25H",                        "25H",              6.35_mm,    3.3_mm,   3.18_mm,  2.31_mm,  6.0_mm,    none,      none,           recalled},
    {"270H",                       "270H",             8.5_mm,     5.0_mm,   4.75_mm,  3.28_mm,  none,      none,      none,           recalled},
    {"415 wide, works norm",       "",                 12.7_mm,    7.75_mm,  5.1_mm,   4.09_mm,  9.9_mm,    16.0_kN,   0.46_kg_per_m,  works},
    {"415 light, works norm",      "415",              12.7_mm,    7.77_mm,  4.76_mm,  3.6_mm,   9.7_mm,    6.86_kN,   0.32_kg_per_m,  works},
    {"10B of 520 width",           "10B of 520 width", 15.875_mm,  10.16_mm, 6.45_mm,  5.08_mm,  14.7_mm,   22.0_kN,   0.89_kg_per_m,  works},
    {"10B of 520 width, stronger", "10B of 520 width", 15.875_mm,  10.16_mm, 6.45_mm,  5.08_mm,  14.7_mm,   23.6_kN,   0.86_kg_per_m,  works},
  });
}
// clang-format on

}  // namespace detail

/// Every printed row, by source.
inline constexpr auto published_chains = detail::make_published_chains();

}  // namespace layshaft
