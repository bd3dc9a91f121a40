// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/chain/series_sources.hpp>
#include <layshaft/core/units.hpp>

#include <array>
#include <cstddef>
#include <optional>  // a figure that no source gives
#include <string_view>

/// @file
/// The chain series, single strand, one row each: dimensions, least tensile strength and mass per metre, each with its
/// source. Where sources differ the row holds one figure; chain/listings_table.hpp has what each of them prints.
///
/// * `iso`: ISO 606:1994 as adopted in GOST 13568-97, Annex A, Table A.1; published. Rollers, pins and plates at their
///   largest, inner widths at their least, the least tensile strength of a single strand. Today's chains are often
///   stronger; the standard's figure is the one every chain of the series must reach. The standard gives no mass: that
///   is of a chain maker's 2020 catalogue, pp. 18-19 and 24-25, and makers differ by some 10 %.
/// * `gost`: GOST 13568-97, Table 1; published. A national chain whose pitch, roller, inner width and pin are those of
///   another series stands there as another name of it; one that differs is a row of its own, though the national
///   standard calls it equal.
/// * `maker`, `works`: the catalogue named above, and its pp. 296-297; published.
/// * `narrow`: the width of a motorcycle's 08B and 10B, from a footnote to the standard's table; the rest from another
///   chain maker's catalogue, pp. 10-11.
/// * `chart`: charts of motorcycle chain sizes; secondary. A chain engineering guide, p. 127, confirms the inner
///   widths. No source at hand gives pin, strength or mass of these series, so the table gives none.
/// * `kart`: the pitch as a kart forum quotes it, secondary; roller and inner width from memory. `recalled`: from
///   memory.
///
/// Where the standard has no figure and two other sources disagree, the row has that of the one named first above and
/// is secondary; but of two strengths the least (`gost_differs`, `maker_differs`, `works_differ`, `narrow_differ`).
///
/// `cycle` is the 1/2 x 3/32 inch chain of bicycles, which the national standard lists by its inner width of 2.40 mm.
/// The number of a motorcycle series is a name: its digits often tell pitch and width, but not for 423, 428 and 532.
namespace layshaft {

/// Where the figures of a series come from; a source without a document where there is no figure.
struct ChainSeriesSources {
  Source pitch;
  Source roller;
  Source inner_width;
  Source pin;
  Source inner_plate;
  Source outline;  ///< of the outer plate's height, the path depth, and the widths of the inner link and over the pin
  Source strength;
  Source mass;
};

/// One series of the table.
struct ChainSeriesRow {
  std::string_view name;                    ///< as the standard or the trade prints it
  std::array<std::string_view, 2> aliases;  ///< its ANSI number and other usual names; empty where it has none
  Length pitch;
  Length roller_diameter;
  Length inner_width;
  std::optional<Length> pin_diameter;
  std::optional<Length> path_depth;
  std::optional<Length> inner_plate_height;
  std::optional<Length> outer_plate_height;
  std::optional<Length> inner_link_width;
  std::optional<Length> width_over_pin;
  std::optional<Force> tensile_strength;
  std::optional<LinearDensity> mass_per_length;
  ChainSeriesSources sources;
};

namespace detail {

namespace chain_sources {
inline constexpr double none = 0.0;  // no figure
}

/// A figure as printed, or none.
template <class Quantity>
[[nodiscard]] constexpr std::optional<Quantity> printed(double figure, Quantity unit) noexcept {
  if (figure == chain_sources::none) return std::nullopt;
  return figure * unit;
}

/// A row as the sources print it: millimetres, kilonewtons, kilograms per metre.
struct PrintedSeries {
  std::string_view name;
  std::array<std::string_view, 2> aliases;
  double pitch, roller, inner_width, pin, path_depth, inner_plate, outer_plate, inner_link, over_pin, strength, mass;
  ChainSeriesSources sources;

  [[nodiscard]] constexpr ChainSeriesRow row() const noexcept {
    using namespace units;
    return {name,
            aliases,
            pitch * mm,
            roller * mm,
            inner_width * mm,
            printed(pin, mm),
            printed(path_depth, mm),
            printed(inner_plate, mm),
            printed(outer_plate, mm),
            printed(inner_link, mm),
            printed(over_pin, mm),
            printed(strength, kN),
            printed(mass, kg_per_m),
            sources};
  }
};

namespace chain_sources {

inline constexpr Source catalogues_differ{
    "a chain maker's 2020 catalogue, pp. 18-19 and 24-25; another maker's catalogue differs", Certainty::secondary};
inline constexpr Source works_and_another{
    "a chain maker's 2020 catalogue, pp. 296-297; another maker's catalogue differs", Certainty::secondary};
inline constexpr Source national_and_another{"GOST 13568-97, Table 1; a chain maker's catalogue differs",
                                             Certainty::secondary};
inline constexpr Source least_of_two{"another chain maker's catalogue, pp. 10-11; the least of two figures",
                                     Certainty::secondary};

// One line each: pitch, roller, inner width, pin, inner plate, outline, strength, mass.
// clang-format off
inline constexpr ChainSeriesSources
    of_iso{iso, iso, iso, iso, iso, iso, iso, catalogue},
    gost{national, national, national, national, national, unknown, national, national},
    gost_differs{national, national, national, national_and_another, national_and_another, unknown, least_of_two,
                 national_and_another},
    maker{catalogue, catalogue, catalogue, catalogue, catalogue, unknown, catalogue, catalogue},
    maker_differs{catalogue, catalogue, catalogues_differ, catalogues_differ, catalogues_differ, unknown, catalogue,
                  catalogues_differ},
    of_works{works, works, works, works, works, unknown, works, works},
    works_differ{works, works, works, works, works_and_another, unknown, least_of_two, works_and_another},
    narrow{footnote, footnote, footnote, footnote, another, unknown, another, another},
    narrow_differ{footnote, footnote, footnote, footnote, national_and_another, unknown, least_of_two,
                  national_and_another},
    chart{charts, charts, charts, unknown, unknown, unknown, unknown, unknown},
    kart{forum, memory, memory, unknown, unknown, unknown, unknown, unknown},
    recalled{memory, memory, memory, memory, unknown, unknown, unknown, unknown},
    recalled_heavy{memory, memory, memory, memory, memory, unknown, unknown, unknown};
// clang-format on

}  // namespace chain_sources

// clang-format off
[[nodiscard]] constexpr auto make_chain_series_table() noexcept {
  using namespace chain_sources;
  constexpr auto printed = std::to_array<PrintedSeries>({
    // name, aliases                                         pitch   roller inner  pin    path    inner   outer   inner   over   kN     kg/m    sources
    //                                                                      width         depth   plate   plate   link    pin
    {"219",            {},                                   7.774,  4.59,  5.0,   none,  none,   none,   none,   none,   none,  none,   none,  kart},
    {"25H",            {},                                   6.35,   3.3,   3.18,  2.31,  none,   6.0,    none,   none,   none,  none,   none,  recalled_heavy},
    {"270H",           {},                                   8.5,    5.0,   4.75,  3.28,  none,   none,   none,   none,   none,  none,   none,  recalled},
    {"415",            {},                                   12.7,   7.77,  4.76,  none,  none,   none,   none,   none,   none,  none,   none,  chart},
    {"415BF5",         {},                                   12.7,   7.75,  5.1,   4.09,  none,   9.9,    none,   none,   none,  16.0,   0.46,  of_works},
    {"415F19",         {},                                   12.7,   7.77,  4.76,  3.6,   none,   9.7,    none,   none,   none,  6.86,   0.32,  of_works},
    {"415H",           {},                                   12.7,   7.77,  4.76,  3.96,  none,   12.0,   none,   none,   none,  14.4,   0.55,  of_works},
    {"420",            {},                                   12.7,   7.77,  6.35,  none,  none,   none,   none,   none,   none,  none,   none,  chart},
    {"423",            {},                                   12.7,   8.51,  6.4,   4.45,  none,   12.4,   none,   none,   none,  19.6,   0.71,  of_works},
    {"425",            {},                                   12.7,   7.92,  7.95,  none,  none,   none,   none,   none,   none,  none,   none,  chart},
    {"428",            {},                                   12.7,   8.51,  7.75,  none,  none,   none,   none,   none,   none,  none,   none,  chart},
    {"08B narrow",     {"08B motorcycle"},                   12.7,   8.51,  5.21,  4.45,  none,   11.70,  none,   none,   none,  17.8,   0.70,  narrow},
    {"520",            {},                                   15.875, 10.16, 6.35,  none,  none,   none,   none,   none,   none,  none,   none,  chart},
    {"10BF19",         {},                                   15.875, 10.16, 6.45,  5.08,  none,   14.7,   none,   none,   none,  22.0,   0.89,  of_works},
    {"10BF20",         {},                                   15.875, 10.16, 6.45,  5.08,  none,   14.7,   none,   none,   none,  23.6,   0.86,  of_works},
    {"10B narrow",     {"10B motorcycle", "PR-15.875-23-1"}, 15.875, 10.16, 6.48,  5.08,  none,   14.8,   none,   none,   none,  22.2,   0.80,  narrow_differ},
    {"525",            {},                                   15.875, 10.16, 7.95,  none,  none,   none,   none,   none,   none,  none,   none,  chart},
    {"530",            {},                                   15.875, 10.16, 9.53,  none,  none,   none,   none,   none,   none,  none,   none,  chart},
    {"532",            {},                                   15.875, 11.1,  9.53,  none,  none,   none,   none,   none,   none,  none,   none,  chart},
    {"630",            {},                                   19.05,  11.91, 9.53,  none,  none,   none,   none,   none,   none,  none,   none,  chart},
    {"cycle",          {"1/2 x 3/32", "PR-12.7-10-1"},       12.7,   7.75,  2.40,  3.66,  none,   10.0,   none,   none,   none,  10.0,   0.30,  gost},
    {"081",            {"1/2 x 1/8", "PR-12.7-9"},           12.7,   7.75,  3.30,  3.66,  none,   10.0,   none,   none,   none,  8.9,    0.35,  gost_differs},
    {"083",            {"415B"},                             12.7,   7.75,  4.88,  4.09,  none,   10.3,   none,   none,   none,  8.9,    0.45,  works_differ},
    {"04C",            {"25"},                               6.350,  3.30,  3.18,  2.31,  none,   6.00,   none,   none,   none,  3.50,   0.15,  maker},
    {"06C",            {"35"},                               9.525,  5.08,  4.77,  3.58,  none,   9.00,   none,   none,   none,  7.90,   0.33,  maker_differs},
    {"085",            {"41"},                               12.700, 7.77,  6.25,  3.58,  none,   9.91,   none,   none,   none,  6.67,   0.41,  maker},
    {"08A",            {"40"},                               12.70,  7.95,  7.85,  3.96,  12.33,  12.07,  10.41,  11.18,  17.8,  13.8,   0.62,  of_iso},
    {"10A",            {"50"},                               15.875, 10.16, 9.40,  5.08,  15.35,  15.09,  13.03,  13.84,  21.8,  21.8,   1.02,  of_iso},
    {"12A",            {"60"},                               19.05,  11.91, 12.57, 5.94,  18.34,  18.08,  15.62,  17.75,  26.9,  31.1,   1.50,  of_iso},
    {"16A",            {"80"},                               25.40,  15.88, 15.75, 7.92,  24.39,  24.13,  20.83,  22.61,  33.5,  55.6,   2.60,  of_iso},
    {"20A",            {"100"},                              31.75,  19.05, 18.90, 9.53,  30.48,  30.18,  26.04,  27.46,  41.1,  86.7,   3.91,  of_iso},
    {"24A",            {"120"},                              38.10,  22.23, 25.22, 11.10, 36.55,  36.20,  31.24,  35.46,  50.8,  124.6,  5.62,  of_iso},
    {"28A",            {"140"},                              44.45,  25.40, 25.22, 12.70, 42.67,  42.24,  36.45,  37.19,  54.9,  169.0,  7.50,  of_iso},
    {"32A",            {"160"},                              50.80,  28.58, 31.55, 14.27, 48.74,  48.26,  41.66,  45.21,  65.5,  222.4,  10.10, of_iso},
    {"36A",            {"180"},                              57.150, 35.71, 35.48, 17.46, none,   53.60,  none,   none,   none,  280.20, 13.45, maker},
    {"40A",            {"200"},                              63.50,  39.68, 37.85, 19.84, 60.93,  60.33,  52.07,  54.89,  80.3,  347.0,  16.15, of_iso},
    {"48A",            {"240"},                              76.20,  47.63, 47.36, 23.80, 73.13,  72.39,  62.48,  67.82,  95.5,  500.4,  23.20, of_iso},
    {"04B",            {},                                   6.000,  4.00,  2.80,  1.85,  none,   5.00,   none,   none,   none,  3.0,    0.11,  maker},
    {"05B",            {"PR-8-4.6"},                         8.00,   5.00,  3.00,  2.31,  7.37,   7.11,   7.11,   4.77,   8.6,   4.4,    0.20,  of_iso},
    {"06B",            {"PR-9.525-9.1"},                     9.525,  6.35,  5.72,  3.28,  8.52,   8.26,   8.26,   8.53,   13.5,  8.9,    0.41,  of_iso},
    {"08B",            {"PR-12.7-18.2"},                     12.70,  8.51,  7.75,  4.45,  12.07,  11.81,  10.92,  11.30,  17.0,  17.8,   0.69,  of_iso},
    {"10B",            {"PR-15.875-23"},                     15.875, 10.16, 9.65,  5.08,  14.99,  14.73,  13.72,  13.28,  19.6,  22.2,   0.93,  of_iso},
    {"12B",            {},                                   19.05,  12.07, 11.68, 5.72,  16.39,  16.13,  16.13,  15.62,  22.7,  28.9,   1.15,  of_iso},
    {"16B",            {},                                   25.40,  15.88, 17.02, 8.28,  21.34,  21.08,  21.08,  25.45,  36.1,  42.3,   2.71,  of_iso},
    {"20B",            {},                                   31.75,  19.05, 19.56, 10.19, 26.68,  26.42,  26.42,  29.01,  43.2,  64.5,   3.70,  of_iso},
    {"24B",            {},                                   38.10,  25.40, 25.40, 14.63, 33.73,  33.40,  33.40,  37.92,  53.4,  97.9,   7.10,  of_iso},
    {"28B",            {},                                   44.45,  27.94, 30.99, 15.90, 37.46,  37.08,  37.08,  46.58,  65.1,  129.0,  8.50,  of_iso},
    {"32B",            {},                                   50.80,  29.21, 30.99, 17.81, 42.72,  42.29,  42.29,  45.57,  67.4,  169.0,  10.25, of_iso},
    {"40B",            {},                                   63.50,  39.37, 38.10, 22.89, 53.49,  52.96,  52.96,  55.75,  82.6,  262.4,  16.35, of_iso},
    {"48B",            {},                                   76.20,  48.26, 45.72, 29.24, 64.52,  63.88,  63.88,  70.56,  99.1,  400.3,  25.00, of_iso},
    {"56B",            {},                                   88.90,  53.98, 53.34, 34.32, 78.64,  77.85,  77.85,  81.33,  114.6, 542.7,  35.78, of_iso},
    {"64B",            {},                                   101.60, 63.50, 60.96, 39.40, 91.08,  90.17,  90.17,  92.02,  130.9, 711.7,  46.00, of_iso},
    {"72B",            {},                                   114.30, 72.39, 68.58, 44.48, 104.67, 103.63, 103.63, 103.81, 147.4, 898.5,  60.80, of_iso},
    {"PR-12.7-18.2-1", {},                                   12.7,   8.51,  5.40,  4.45,  none,   11.8,   none,   none,   none,  18.2,   0.65,  gost},
    {"PR-19.05-31.8",  {},                                   19.05,  11.91, 12.70, 5.94,  none,   18.2,   none,   none,   none,  31.8,   1.90,  gost},
    {"PR-25.4-60",     {},                                   25.4,   15.88, 15.88, 7.92,  none,   24.2,   none,   none,   none,  60.0,   2.60,  gost},
    {"PR-31.75-89",    {},                                   31.75,  19.05, 19.05, 9.53,  none,   30.2,   none,   none,   none,  89.0,   3.80,  gost},
    {"PR-38.1-127",    {},                                   38.1,   22.23, 25.40, 11.10, none,   36.2,   none,   none,   none,  127.0,  5.50,  gost},
    {"PR-44.45-172.4", {},                                   44.45,  25.40, 25.40, 12.70, none,   42.4,   none,   none,   none,  172.4,  7.50,  gost},
    {"PR-50.8-227",    {},                                   50.8,   28.58, 31.75, 14.27, none,   48.3,   none,   none,   none,  227.0,  9.7,   gost},
    {"PR-63.5-354",    {},                                   63.5,   39.68, 38.10, 19.84, none,   60.4,   none,   none,   none,  354.0,  16.0,  gost},
  });
  std::array<ChainSeriesRow, printed.size()> table{};
  for (std::size_t i = 0; i < table.size(); ++i) table[i] = printed[i].row();
  return table;
}
// clang-format on

}  // namespace detail

/// Every series the library knows: kart and motorcycle, cycle, the A and the B series by size, national ones.
inline constexpr auto chain_series_table = detail::make_chain_series_table();

}  // namespace layshaft
