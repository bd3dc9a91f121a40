// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/tyre/code_designated.hpp>
#include <layshaft/tyre/cycle_rim.hpp>
#include <layshaft/tyre/designation_reader.hpp>
#include <layshaft/tyre/kinds.hpp>
#include <layshaft/tyre/rim_code.hpp>
#include <layshaft/tyre/speed_symbol.hpp>

#include <string>
#include <string_view>

/// @file
/// Writing a designation: one order of its marks, one spelling of its numbers.
namespace layshaft::detail {

/// A number of hundredths or thousandths: without decimals where it is whole, else with two, or three where two do not
/// tell it. `always` has two in any case.
inline void append_decimal(std::string& text, int number, int unit, bool always = false) {
  text.append(std::to_string(number / unit));
  if (number % unit == 0 && !always) return;
  std::string decimals = std::to_string(unit + number % unit).substr(1);
  if (decimals.size() == 3 && decimals.back() == '0') decimals.pop_back();
  text.append(".").append(decimals);
}

/// A number of eighths, as `2`, `1/2` or `1 3/8`.
inline void append_eighths(std::string& text, int eighths) {
  text.append(std::to_string(eighths / 8));
  constexpr std::string_view fractions[] = {"", " 1/8", " 1/4", " 3/8", " 1/2", " 5/8", " 3/4", " 7/8"};
  text.append(fractions[eighths % 8]);
}

inline void append_cycle(std::string& text, const Designation& size) {
  if (size.naming != CycleNaming::iso) text.append(cycle_rim_names[size.listed].diameter_name).append("x");
  switch (size.naming) {
    case CycleNaming::iso:
      text.append(std::to_string(size.width)).append("-").append(cycle_bead_seats[size.rim].name);
      break;
    case CycleNaming::french:
      text.append(std::to_string(size.width));
      if (const char letter = cycle_rim_names[size.listed].letter; letter != 0) text.push_back(letter);
      break;
    case CycleNaming::decimal: append_decimal(text, size.width, 1000, true); break;
    case CycleNaming::three_part: text.append("1 5/8x"); [[fallthrough]];
    case CycleNaming::fractional: append_eighths(text, size.width); break;
  }
}

[[nodiscard]] inline std::string_view construction_sign(const Designation& size) {
  switch (size.construction) {
    case TyreConstruction::diagonal: return "-";
    case TyreConstruction::bias_belted: return "B";
    case TyreConstruction::radial: break;
  }
  return size.zr ? "ZR" : "R";
}

inline void append_size(std::string& text, const Designation& size) {
  const bool before = size.notation == TyreNotation::metric && size.vehicle == TyreVehicle::light_truck;
  if (before) text.append("LT");
  if (size.vehicle == TyreVehicle::passenger) text.append("P");
  if (size.vehicle == TyreVehicle::all_terrain) text.append("AT");
  switch (size.notation) {
    case TyreNotation::metric:
      text.append(std::to_string(size.width)).append("/").append(std::to_string(size.aspect));
      break;
    case TyreNotation::code:
    case TyreNotation::lettered: text.append(code_designated_tyres[size.listed].section); break;
    case TyreNotation::flotation:
      append_decimal(text, size.diameter, 100);
      if (text.ends_with("0") && size.diameter % 100 != 0) text.pop_back();  // 18.5, not 18.50
      text.append("x");
      append_decimal(text, size.width, 100);
      break;
    case TyreNotation::cycle: return append_cycle(text, size);
  }
  text.append(construction_sign(size)).append(rim_codes[size.rim].name);
  if (size.vehicle == TyreVehicle::commercial) text.append("C");
  if (size.vehicle == TyreVehicle::light_truck && !before) text.append("LT");
}

inline void append_service_description(std::string& text, const Designation& size) {
  if (size.load_index < 0) return;
  text.append(size.beyond_symbol ? " (" : " ").append(std::to_string(size.load_index));
  if (size.second_load_index >= 0) text.append("/").append(std::to_string(size.second_load_index));
  text.append(speed_symbols[size.speed_symbol].name);
  if (size.beyond_symbol) text.append(")");
}

/// The designation in its canonical spelling, which reads back as the same one.
[[nodiscard]] inline std::string canonical(const Designation& size) {
  std::string text;
  append_size(text, size);
  if (size.motorcycle) text.append(" M/C");
  append_service_description(text, size);
  if (size.ply_rating >= 0) text.append(" ").append(std::to_string(size.ply_rating)).append("PR");
  if (size.tube == TyreTube::tubeless) text.append(" TL");
  if (size.tube == TyreTube::tube) text.append(" TT");
  if (size.reinforced) text.append(" REINF");
  if (size.winter) text.append(" M+S");
  if (size.multi_service) text.append(" MST");
  if (size.not_for_highway) text.append(" NHS");
  if (size.week >= 0) text.append(" DOT ").append(std::to_string(10000 + size.week * 100 + size.year % 100).substr(1));
  return text;
}

}  // namespace layshaft::detail
