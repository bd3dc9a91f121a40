// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/result.hpp>
#include <layshaft/core/source.hpp>
#include <layshaft/core/units.hpp>

#include <iterator>  // std::size of the table
#include <string>

/// @file
/// The load index of a service description: the mass one tyre may carry.
namespace layshaft {

/// One row: a load index, the mass it stands for, and how sure that is.
struct LoadIndex {
  int index;
  Mass capacity;
  Certainty certainty;
};

namespace detail::load_index_table {
using enum Certainty;

// Source: the load index series of ISO 4223-1; the certainty of each row stands in it.
// clang-format off
inline constexpr LoadIndex rows[] = {
    {0, 45_kg, from_memory},
    {1, 46.2_kg, from_memory},
    {2, 47.5_kg, from_memory},
    {3, 48.7_kg, from_memory},
    {4, 50_kg, from_memory},
    {5, 51.5_kg, from_memory},
    {6, 53_kg, from_memory},
    {7, 54.5_kg, from_memory},
    {8, 56_kg, from_memory},
    {9, 58_kg, from_memory},
    {10, 60_kg, from_memory},
    {11, 61.5_kg, from_memory},
    {12, 63_kg, from_memory},
    {13, 65_kg, from_memory},
    {14, 67_kg, from_memory},
    {15, 69_kg, from_memory},
    {16, 71_kg, from_memory},
    {17, 73_kg, from_memory},
    {18, 75_kg, from_memory},
    {19, 77.5_kg, from_memory},
    {20, 80_kg, from_memory},
    {21, 82.5_kg, from_memory},
    {22, 85_kg, from_memory},
    {23, 87.5_kg, from_memory},
    {24, 90_kg, from_memory},
    {25, 92.5_kg, from_memory},
    {26, 95_kg, from_memory},
    {27, 97.5_kg, from_memory},
    {28, 100_kg, from_memory},
    {29, 103_kg, from_memory},
    {30, 106_kg, from_memory},
    {31, 109_kg, from_memory},
    {32, 112_kg, from_memory},
    {33, 115_kg, from_memory},
    {34, 118_kg, from_memory},
    {35, 121_kg, from_memory},
    {36, 125_kg, from_memory},
    {37, 128_kg, from_memory},
    {38, 132_kg, from_memory},
    {39, 136_kg, from_memory},
    {40, 140_kg, from_memory},
    {41, 145_kg, from_memory},
    {42, 150_kg, from_memory},
    {43, 155_kg, published},
    {44, 160_kg, published},
    {45, 165_kg, published},
    {46, 170_kg, published},
    {47, 175_kg, published},
    {48, 180_kg, published},
    {49, 185_kg, published},
    {50, 190_kg, published},
    {51, 195_kg, published},
    {52, 200_kg, published},
    {53, 206_kg, published},
    {54, 212_kg, published},
    {55, 218_kg, published},
    {56, 224_kg, published},
    {57, 230_kg, published},
    {58, 236_kg, published},
    {59, 243_kg, published},
    {60, 250_kg, published},
    {61, 257_kg, published},
    {62, 265_kg, published},
    {63, 272_kg, published},
    {64, 280_kg, published},
    {65, 290_kg, published},
    {66, 300_kg, published},
    {67, 307_kg, published},
    {68, 315_kg, published},
    {69, 325_kg, published},
    {70, 335_kg, published},
    {71, 345_kg, published},
    {72, 355_kg, published},
    {73, 365_kg, published},
    {74, 375_kg, published},
    {75, 387_kg, published},
    {76, 400_kg, published},
    {77, 412_kg, published},
    {78, 425_kg, published},
    {79, 437_kg, published},
    {80, 450_kg, published},
    {81, 462_kg, published},
    {82, 475_kg, published},
    {83, 487_kg, published},
    {84, 500_kg, published},
    {85, 515_kg, published},
    {86, 530_kg, published},
    {87, 545_kg, published},
    {88, 560_kg, published},
    {89, 580_kg, published},
    {90, 600_kg, published},
    {91, 615_kg, published},
    {92, 630_kg, published},
    {93, 650_kg, published},
    {94, 670_kg, published},
    {95, 690_kg, published},
    {96, 710_kg, published},
    {97, 730_kg, published},
    {98, 750_kg, published},
    {99, 775_kg, published},
    {100, 800_kg, published},
    {101, 825_kg, published},
    {102, 850_kg, published},
    {103, 875_kg, published},
    {104, 900_kg, published},
    {105, 925_kg, published},
    {106, 950_kg, published},
    {107, 975_kg, published},
    {108, 1000_kg, published},
    {109, 1030_kg, published},
    {110, 1060_kg, published},
    {111, 1090_kg, published},
    {112, 1120_kg, published},
    {113, 1150_kg, published},
    {114, 1180_kg, published},
    {115, 1215_kg, published},
    {116, 1250_kg, published},
    {117, 1285_kg, published},
    {118, 1320_kg, published},
    {119, 1360_kg, published},
    {120, 1400_kg, published},
    {121, 1450_kg, published},
    {122, 1500_kg, published},
    {123, 1550_kg, published},
    {124, 1600_kg, published},
    {125, 1650_kg, published},
    {126, 1700_kg, from_memory},
    {127, 1750_kg, from_memory},
    {128, 1800_kg, from_memory},
    {129, 1850_kg, from_memory},
    {130, 1900_kg, from_memory},
    {131, 1950_kg, from_memory},
    {132, 2000_kg, from_memory},
    {133, 2060_kg, from_memory},
    {134, 2120_kg, from_memory},
    {135, 2180_kg, from_memory},
    {136, 2240_kg, from_memory},
    {137, 2300_kg, from_memory},
    {138, 2360_kg, from_memory},
    {139, 2430_kg, from_memory},
    {140, 2500_kg, from_memory},
    {141, 2575_kg, from_memory},
    {142, 2650_kg, published},
    {143, 2725_kg, from_memory},
    {144, 2800_kg, from_memory},
    {145, 2900_kg, from_memory},
    {146, 3000_kg, from_memory},
    {147, 3075_kg, from_memory},
    {148, 3150_kg, from_memory},
    {149, 3250_kg, from_memory},
    {150, 3350_kg, from_memory},
};
// clang-format on
}  // namespace detail::load_index_table

/// The load indices known, from 0 up without a gap.
inline constexpr const auto& load_indices = detail::load_index_table::rows;
inline constexpr int greatest_load_index = static_cast<int>(std::size(load_indices)) - 1;

namespace detail {
/// The place of a load index in its table, -1 where there is none.
[[nodiscard]] constexpr int row_of_load_index(int index) noexcept {
  return index >= 0 && index <= greatest_load_index ? index : -1;
}
}  // namespace detail

/// The row of a load index, or null where there is none.
[[nodiscard]] constexpr const LoadIndex* find_load_index(int index) noexcept {
  const int row = detail::row_of_load_index(index);
  return row < 0 ? nullptr : &load_indices[row];
}

/// The mass one tyre of this load index may carry at the speed of its speed symbol, or a RangeError outside 0 to 150.
[[nodiscard]] inline Result<Mass> try_load_capacity(int index) {
  if (const int row = detail::row_of_load_index(index); row >= 0) return load_indices[row].capacity;
  return Error::range("load index", std::to_string(index), "0 to " + std::to_string(greatest_load_index));
}

#if LAYSHAFT_EXCEPTIONS
/// The mass one tyre of this load index may carry at the speed of its speed symbol.
/// @throws RangeError outside 0 to 150.
[[nodiscard]] constexpr Mass load_capacity(int index) {
  if (const int row = detail::row_of_load_index(index); row >= 0) return load_indices[row].capacity;
  raise(try_load_capacity(index).error());
}
#endif

}  // namespace layshaft
