// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/chain/series_table.hpp>

/// @file
/// What each source prints of each chain, single strand, word for word: the figures that chain/series_table.hpp was
/// chosen from. Sources: ISO 606:1994 as adopted in GOST 13568-97, Annex A, Table A.1, and its footnote; GOST 13568-97,
/// Table 1; two chain makers' catalogues; charts; a forum; memory. The standard's further columns stand in the series.
namespace layshaft {

/// What one source prints of one chain.
struct ChainListing {
  std::string_view designation;  ///< as the source prints it
  std::string_view series;       ///< the name of the series that it is a listing of
  Length pitch;
  Length roller_diameter;  ///< the largest
  Length inner_width;      ///< the least
  std::optional<Length> pin_diameter;
  std::optional<Length> inner_plate_height;
  std::optional<Force> tensile_strength;  ///< the least that this source promises
  std::optional<LinearDensity> mass_per_length;
  Source source;

  friend constexpr bool operator==(const ChainListing& a, const ChainListing& b) noexcept {
    return a.designation == b.designation && a.series == b.series && a.source == b.source;
  }
};

namespace detail {

/// A listing as printed: millimetres, kilonewtons, kilograms per metre.
struct PrintedListing {
  std::string_view designation, series;
  double pitch, roller, inner_width, pin, plate, strength, mass;
  Source source;

  [[nodiscard]] constexpr ChainListing listing() const noexcept {
    using namespace units;
    return {designation,
            series,
            pitch * mm,
            roller * mm,
            inner_width * mm,
            printed(pin, mm),
            printed(plate, mm),
            printed(strength, kN),
            printed(mass, kg_per_m),
            source};
  }
};

// clang-format off
[[nodiscard]] constexpr auto make_chain_listings_table() noexcept {
  using namespace chain_sources;
  constexpr auto printed = std::to_array<PrintedListing>({
    // designation             series            pitch    roller inner  pin    plate   kN      kg/m   source
    {"219 (kart)",             "219",            7.774,   4.59,  5.0,   none,  none,   none,   none,  forum},
    {"25H",                    "25H",            6.35,    3.3,   3.18,  2.31,  6.0,    none,   none,  memory},
    {"270H",                   "270H",           8.5,     5.0,   4.75,  3.28,  none,   none,   none,  memory},
    {"415",                    "415",            12.7,    7.77,  4.76,  none,  none,   none,   none,  charts},
    {"415BF5",                 "415BF5",         12.7,    7.75,  5.1,   4.09,  9.9,    16.0,   0.46,  works},
    {"415F19",                 "415F19",         12.7,    7.77,  4.76,  3.6,   9.7,    6.86,   0.32,  works},
    {"415H",                   "415H",           12.7,    7.77,  4.76,  3.96,  12.0,   14.4,   0.55,  works},
    {"420",                    "420",            12.7,    7.77,  6.35,  none,  none,   none,   none,  charts},
    {"423",                    "423",            12.7,    8.51,  6.4,   4.45,  12.4,   19.6,   0.71,  works},
    {"425",                    "425",            12.7,    7.92,  7.95,  none,  none,   none,   none,  charts},
    {"428",                    "428",            12.7,    8.51,  7.75,  none,  none,   none,   none,  charts},
    {"08B motorcycle variant", "08B narrow",     12.7,    8.51,  5.21,  4.45,  none,   none,   none,  footnote},
    {"08B-narrow",             "08B narrow",     12.700,  8.51,  5.21,  4.45,  11.70,  17.8,   0.70,  another},
    {"520",                    "520",            15.875,  10.16, 6.35,  none,  none,   none,   none,  charts},
    {"10BF19 (520-width 10B)", "10BF19",         15.875,  10.16, 6.45,  5.08,  14.7,   22.0,   0.89,  works},
    {"10BF20 (520-width 10B)", "10BF20",         15.875,  10.16, 6.45,  5.08,  14.7,   23.6,   0.86,  works},
    {"10B motorcycle variant", "10B narrow",     15.875,  10.16, 6.48,  5.08,  none,   none,   none,  footnote},
    {"PR-15.875-23-1",         "10B narrow",     15.875,  10.16, 6.48,  5.08,  14.8,   23.0,   0.80,  national},
    {"10B-narrow",             "10B narrow",     15.875,  10.16, 6.48,  5.08,  14.60,  22.2,   0.81,  another},
    {"525",                    "525",            15.875,  10.16, 7.95,  none,  none,   none,   none,  charts},
    {"530",                    "530",            15.875,  10.16, 9.53,  none,  none,   none,   none,  charts},
    {"532",                    "532",            15.875,  11.1,  9.53,  none,  none,   none,   none,  charts},
    {"630",                    "630",            19.05,   11.91, 9.53,  none,  none,   none,   none,  charts},
    {"PR-12.7-10-1",           "cycle",          12.7,    7.75,  2.40,  3.66,  10.0,   10.0,   0.30,  national},
    {"PR-12.7-9(=081-1)",      "081",            12.7,    7.75,  3.30,  3.66,  10.0,   9.0,    0.35,  national},
    {"081-type",               "081",            12.700,  7.75,  3.30,  4.09,  9.60,   8.9,    0.30,  another},
    {"415B / ISO 083",         "083",            12.7,    7.75,  4.88,  4.09,  10.3,   12.0,   0.45,  works},
    {"083/084-type",           "083",            12.700,  7.75,  4.88,  4.09,  9.60,   8.9,    0.35,  another},
    {"04C/25",                 "04C",            6.350,   3.30,  3.18,  2.31,  6.00,   3.50,   0.15,  catalogue},
    {"06C/35",                 "06C",            9.525,   5.08,  4.77,  3.58,  9.00,   7.90,   0.33,  catalogue},
    {"35-1",                   "06C",            9.525,   5.08,  4.68,  3.59,  8.60,   7.9,    0.35,  another},
    {"085/41",                 "085",            12.700,  7.77,  6.25,  3.58,  9.91,   6.67,   0.41,  catalogue},
    {"08A",                    "08A",            12.70,   7.95,  7.85,  3.96,  12.07,  13.8,   none,  iso},
    {"08A/40",                 "08A",            12.700,  7.95,  7.85,  3.96,  12.00,  14.10,  0.62,  catalogue},
    {"40-1",                   "08A",            12.700,  7.92,  7.85,  3.97,  11.20,  13.9,   0.60,  another},
    {"10A",                    "10A",            15.875,  10.16, 9.40,  5.08,  15.09,  21.8,   none,  iso},
    {"10A/50",                 "10A",            15.875,  10.16, 9.40,  5.08,  15.09,  22.20,  1.02,  catalogue},
    {"50-1",                   "10A",            15.875,  10.16, 9.40,  5.08,  14.60,  21.8,   1.00,  another},
    {"12A",                    "12A",            19.05,   11.91, 12.57, 5.94,  18.08,  31.1,   none,  iso},
    {"12A/60",                 "12A",            19.050,  11.91, 12.57, 5.94,  18.00,  31.80,  1.50,  catalogue},
    {"60-1",                   "12A",            19.050,  11.91, 12.57, 5.94,  17.50,  31.3,   1.47,  another},
    {"16A",                    "16A",            25.40,   15.88, 15.75, 7.92,  24.13,  55.6,   none,  iso},
    {"16A/80",                 "16A",            25.400,  15.88, 15.75, 7.92,  24.00,  56.70,  2.60,  catalogue},
    {"80-1",                   "16A",            25.400,  15.88, 15.75, 7.94,  24.13,  55.6,   2.80,  another},
    {"20A",                    "20A",            31.75,   19.05, 18.90, 9.53,  30.18,  86.7,   none,  iso},
    {"20A/100",                "20A",            31.750,  19.05, 18.90, 9.53,  30.00,  88.50,  3.91,  catalogue},
    {"100-1",                  "20A",            31.750,  19.05, 18.90, 9.54,  30.17,  87.0,   4.20,  another},
    {"24A",                    "24A",            38.10,   22.23, 25.22, 11.10, 36.20,  124.6,  none,  iso},
    {"24A/120",                "24A",            38.100,  22.23, 25.22, 11.10, 35.70,  127.00, 5.62,  catalogue},
    {"120-1",                  "24A",            38.100,  22.23, 25.23, 11.11, 36.20,  125.0,  5.70,  another},
    {"28A",                    "28A",            44.45,   25.40, 25.22, 12.70, 42.24,  169.0,  none,  iso},
    {"28A/140",                "28A",            44.450,  25.40, 25.22, 12.70, 41.00,  172.40, 7.50,  catalogue},
    {"140-1",                  "28A",            44.450,  25.40, 25.23, 12.71, 42.23,  170.0,  7.80,  another},
    {"32A",                    "32A",            50.80,   28.58, 31.55, 14.27, 48.26,  222.4,  none,  iso},
    {"32A/160",                "32A",            50.800,  28.58, 31.55, 14.27, 47.80,  226.80, 10.10, catalogue},
    {"160-1",                  "32A",            50.800,  28.58, 31.55, 14.29, 48.26,  223.0,  10.40, another},
    {"36A/180",                "36A",            57.150,  35.71, 35.48, 17.46, 53.60,  280.20, 13.45, catalogue},
    {"40A",                    "40A",            63.50,   39.68, 37.85, 19.84, 60.33,  347.0,  none,  iso},
    {"40A/200",                "40A",            63.500,  39.68, 37.85, 19.85, 60.00,  353.80, 16.15, catalogue},
    {"48A",                    "48A",            76.20,   47.63, 47.36, 23.80, 72.39,  500.4,  none,  iso},
    {"48A/240",                "48A",            76.200,  47.63, 47.35, 23.81, 72.39,  510.30, 23.20, catalogue},
    {"04B",                    "04B",            6.000,   4.00,  2.80,  1.85,  5.00,   3.0,    0.11,  catalogue},
    {"05B",                    "05B",            8.00,    5.00,  3.00,  2.31,  7.11,   4.4,    none,  iso},
    {"PR-8-4.6(=05B-1)",       "05B",            8.0,     5.00,  3.00,  2.31,  7.5,    4.6,    0.20,  national},
    {"05B",                    "05B",            8.000,   5.00,  3.00,  2.31,  7.10,   5.0,    0.20,  catalogue},
    {"06B",                    "06B",            9.525,   6.35,  5.72,  3.28,  8.26,   8.9,    none,  iso},
    {"PR-9.525-9.1(=06B-1)",   "06B",            9.525,   6.35,  5.72,  3.28,  8.5,    9.1,    0.45,  national},
    {"06B",                    "06B",            9.525,   6.35,  5.72,  3.28,  8.20,   9.0,    0.41,  catalogue},
    {"06B-1",                  "06B",            9.525,   6.35,  5.72,  3.28,  8.20,   8.9,    0.39,  another},
    {"08B",                    "08B",            12.70,   8.51,  7.75,  4.45,  11.81,  17.8,   none,  iso},
    {"PR-12.7-18.2(=08B-1)",   "08B",            12.7,    8.51,  7.75,  4.45,  11.8,   18.2,   0.75,  national},
    {"08B",                    "08B",            12.700,  8.51,  7.75,  4.45,  11.80,  18.0,   0.69,  catalogue},
    {"08B-1",                  "08B",            12.700,  8.51,  7.75,  4.45,  11.70,  17.8,   0.70,  another},
    {"10B",                    "10B",            15.875,  10.16, 9.65,  5.08,  14.73,  22.2,   none,  iso},
    {"PR-15.875-23(=10B-1)",   "10B",            15.875,  10.16, 9.65,  5.08,  14.8,   23.0,   1.00,  national},
    {"10B",                    "10B",            15.875,  10.16, 9.65,  5.08,  14.70,  22.4,   0.93,  catalogue},
    {"10B-1",                  "10B",            15.875,  10.16, 9.65,  5.08,  14.60,  22.2,   0.96,  another},
    {"12B",                    "12B",            19.05,   12.07, 11.68, 5.72,  16.13,  28.9,   none,  iso},
    {"12B",                    "12B",            19.050,  12.07, 11.68, 5.72,  16.00,  29.0,   1.15,  catalogue},
    {"12B-1",                  "12B",            19.050,  12.07, 11.68, 5.72,  16.00,  28.9,   1.22,  another},
    {"16B",                    "16B",            25.40,   15.88, 17.02, 8.28,  21.08,  42.3,   none,  iso},
    {"16B",                    "16B",            25.400,  15.88, 17.02, 8.28,  21.00,  60.0,   2.71,  catalogue},
    {"16B-1",                  "16B",            25.400,  15.88, 17.02, 8.28,  21.08,  60.0,   2.80,  another},
    {"20B",                    "20B",            31.75,   19.05, 19.56, 10.19, 26.42,  64.5,   none,  iso},
    {"20B",                    "20B",            31.750,  19.05, 19.56, 10.19, 26.40,  95.0,   3.70,  catalogue},
    {"20B-1",                  "20B",            31.750,  19.05, 19.56, 10.19, 26.42,  95.0,   3.85,  another},
    {"24B",                    "24B",            38.10,   25.40, 25.40, 14.63, 33.40,  97.9,   none,  iso},
    {"24B",                    "24B",            38.100,  25.40, 25.40, 14.63, 33.20,  160.0,  7.10,  catalogue},
    {"24B-1",                  "24B",            38.100,  25.40, 25.40, 14.63, 33.40,  160.0,  7.45,  another},
    {"28B",                    "28B",            44.45,   27.94, 30.99, 15.90, 37.08,  129.0,  none,  iso},
    {"28B",                    "28B",            44.450,  27.94, 30.99, 15.90, 36.70,  200.0,  8.50,  catalogue},
    {"32B",                    "32B",            50.80,   29.21, 30.99, 17.81, 42.29,  169.0,  none,  iso},
    {"32B",                    "32B",            50.800,  29.21, 30.99, 17.81, 42.00,  250.0,  10.25, catalogue},
    {"40B",                    "40B",            63.50,   39.37, 38.10, 22.89, 52.96,  262.4,  none,  iso},
    {"40B",                    "40B",            63.500,  39.37, 38.10, 22.89, 52.96,  355.0,  16.35, catalogue},
    {"48B",                    "48B",            76.20,   48.26, 45.72, 29.24, 63.88,  400.3,  none,  iso},
    {"48B",                    "48B",            76.200,  48.26, 45.72, 29.24, 63.80,  560.0,  25.00, catalogue},
    {"56B",                    "56B",            88.90,   53.98, 53.34, 34.32, 77.85,  542.7,  none,  iso},
    {"56B",                    "56B",            88.900,  53.98, 53.34, 34.32, 77.85,  850.0,  35.78, catalogue},
    {"64B",                    "64B",            101.60,  63.50, 60.96, 39.40, 90.17,  711.7,  none,  iso},
    {"64B",                    "64B",            101.600, 63.50, 60.96, 39.40, 90.17,  1120.0, 46.00, catalogue},
    {"72B",                    "72B",            114.30,  72.39, 68.58, 44.48, 103.63, 898.5,  none,  iso},
    {"72B",                    "72B",            114.300, 72.39, 68.58, 44.48, 103.60, 1400.0, 60.80, catalogue},
    {"PR-12.7-18.2-1",         "PR-12.7-18.2-1", 12.7,    8.51,  5.40,  4.45,  11.8,   18.2,   0.65,  national},
    {"PR-19.05-31.8(=12A-1)",  "PR-19.05-31.8",  19.05,   11.91, 12.70, 5.94,  18.2,   31.8,   1.90,  national},
    {"PR-25.4-60(=16A-1)",     "PR-25.4-60",     25.4,    15.88, 15.88, 7.92,  24.2,   60.0,   2.60,  national},
    {"PR-31.75-89(=20A-1)",    "PR-31.75-89",    31.75,   19.05, 19.05, 9.53,  30.2,   89.0,   3.80,  national},
    {"PR-38.1-127(=24A-1)",    "PR-38.1-127",    38.1,    22.23, 25.40, 11.10, 36.2,   127.0,  5.50,  national},
    {"PR-44.45-172.4(=28A-1)", "PR-44.45-172.4", 44.45,   25.40, 25.40, 12.70, 42.4,   172.4,  7.50,  national},
    {"PR-50.8-227(=32A-1)",    "PR-50.8-227",    50.8,    28.58, 31.75, 14.27, 48.3,   227.0,  9.7,   national},
    {"PR-63.5-354(=40A-1)",    "PR-63.5-354",    63.5,    39.68, 38.10, 19.84, 60.4,   354.0,  16.0,  national},
  });
  std::array<ChainListing, printed.size()> table{};
  for (std::size_t i = 0; i < table.size(); ++i) table[i] = printed[i].listing();
  return table;
}
// clang-format on

}  // namespace detail

/// Every listing, those of one series side by side in the order of the series; the one that counts first stands first.
inline constexpr auto chain_listings_table = detail::make_chain_listings_table();

}  // namespace layshaft
