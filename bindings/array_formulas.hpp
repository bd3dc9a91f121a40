// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/core.hpp>
#include <layshaft/core/formula.hpp>
#include <layshaft/core/glossary.hpp>
#include <layshaft/core/unit_names.hpp>

#include <algorithm>  // lower_bound, transform
#include <array>
#include <cstddef>
#include <iterator>  // size
#include <span>
#include <string_view>
#include <type_traits>

/// @file
/// The one list of layshaft.arrays: every formula that takes numbers, as a loop over plain numbers. Which unit an
/// argument has follows from the glossary, which gives each word its display unit. Names, docstrings, stubs and the
/// tests' matrix are all read from this list.
namespace layshaft::python::arrays {

// --- What an argument may be -----------------------------------------------------------------------------------------

/// What a parameter's type is called, the units that it may be written in (none of a number or a count), and, of a
/// count, its ends.
struct Kind {
  std::string_view name;
  const UnitName* units = nullptr;
  std::size_t unit_count = 0;
  int least = 0, greatest = 0;
};

template <class T>
struct KindOf {
  static constexpr Kind kind{QuantityNames<T>::name, QuantityNames<T>::units, std::size(QuantityNames<T>::units)};
};
template <>
struct KindOf<double> {
  static constexpr Kind kind{"number"};
};
template <>
struct KindOf<Teeth> {
  static constexpr Kind kind{"Teeth", nullptr, 0, Teeth::least, Teeth::greatest};
};
template <>
struct KindOf<Links> {
  static constexpr Kind kind{"Links", nullptr, 0, Links::least, Links::greatest};
};

template <class... Types>
struct KindList {
  static constexpr std::array<Kind, sizeof...(Types)> all{KindOf<Types>::kind...};
  template <class T>
  static constexpr bool has = (std::is_same_v<T, Types> || ...);
  template <class T>
  [[nodiscard]] static consteval unsigned char index() {
    unsigned char at = 0;
    static_cast<void>((... || (std::is_same_v<T, Types> ? true : (++at, false))));
    return at;
  }
};
/// Whatever counts as a number. A formula with a parameter of any other type is left out.
using Kinds =
    KindList<double, Teeth, Links, Length, Area, Mass, Duration, Speed, Acceleration, Force, Torque, Power, Energy,
             Pressure, Density, LinearDensity, ForcePerSpeed, Angle, AngularSpeed, MomentOfInertia, Temperature>;
inline constexpr auto& kinds = Kinds::all;

// --- Its unit --------------------------------------------------------------------------------------------------------

/// Where a name or a unit is not what the rule makes of it. An empty word stands for the result, and so for the
/// function's own name.
struct Irregular {
  std::string_view formula, word;
  std::string_view name;  ///< without the unit; empty: as ever
  std::string_view unit;  ///< empty: as ever
};
inline constexpr Irregular irregulars[] = {
    {"engine_speed", "road_speed", "speed", {}},
    {"pitch_diameter", {}, "sprocket_pitch_diameter", {}},
    {"speed_variation", {}, "chain_speed_variation", {}},
    {"chain_power_rating", "pitch", {}, "inch"},
    {"chain_power_rating", {}, {}, "hp"},
};
[[nodiscard]] constexpr const Irregular* find_irregular(std::string_view formula, std::string_view word) {
  for (const Irregular& one : irregulars)
    if (one.formula == formula && one.word == word) return &one;
  return nullptr;
}

/// A word of the glossary, without what is for print alone: the glossary itself is then left out of the module.
struct PlainWord {
  std::string_view word, meaning, unit;
};
inline constexpr auto plain_words = [] {
  std::array<PlainWord, std::size(glossary)> words;
  std::ranges::transform(glossary, words.begin(), [](const Word& of) {
    return PlainWord{of.word, of.meaning, of.unit};
  });
  return words;
}();
/// They are in alphabetical order.
[[nodiscard]] constexpr const PlainWord* look_up(std::string_view word) {
  const auto at = std::ranges::lower_bound(plain_words, word, {}, &PlainWord::word);
  return at != plain_words.end() && at->word == word ? &*at : nullptr;
}

/// The unit of a formula's parameter or, where `word` is empty, of its result: the glossary's display unit of that
/// word; null of a pure number or a count.
[[nodiscard]] constexpr const UnitName* unit_of(const Kind& kind, std::string_view formula, std::string_view word) {
  if (kind.unit_count == 0) return nullptr;
  std::string_view wanted;
  if (const PlainWord* entry = look_up(word.empty() ? formula : word)) wanted = entry->unit;
  if (const Irregular* one = find_irregular(formula, word); one && !one->unit.empty()) wanted = one->unit;
  for (std::size_t i = 0; i < kind.unit_count; ++i)
    if (kind.units[i].name == wanted) return &kind.units[i];
  return &kind.units[0];  // a word that the glossary has not: the unit that the quantity is printed in
}

/// The words of "(AngularSpeed engine_speed, double overall_ratio)", and how many there are.
struct Words {
  static constexpr std::size_t most = 8;
  std::array<std::string_view, most> word;
  std::size_t count = 0;
};
[[nodiscard]] constexpr Words words_of(std::string_view parameters) {
  Words words;
  std::size_t begin = 0;
  for (std::size_t i = 0; i < parameters.size(); ++i) {
    if (parameters[i] == ' ' || parameters[i] == '(') begin = i + 1;
    if (parameters[i] == ',' || parameters[i] == ')') words.word[words.count++] = parameters.substr(begin, i - begin);
  }
  return words;
}

// --- The loop --------------------------------------------------------------------------------------------------------

/// Works out `count` elements, all arrays in a row. The result may take the place of an argument.
using Loop = void (*)(const double* const* arguments, double* result, std::ptrdiff_t count);

/// One function of the list.
struct ArrayFormula {
  Formula about;             ///< without its body, which nobody asks for here
  std::string_view meaning;  ///< what the result is; empty: as the glossary says
  Loop loop;
  Loop wide;  ///< the same for a processor with AVX2, where that is worth while; else the same one
  unsigned char inputs;
  std::array<unsigned char, Words::most + 1> kind;  ///< of the parameters, then of the result: places in `kinds`
  unsigned char error = 0;                          ///< the bound of its error in tenths of an ulp; 0: none is known
};

/// The list.
[[nodiscard]] std::span<const ArrayFormula> array_formulas();
/// The formulas that are left out of it, since they take anything but numbers.
[[nodiscard]] std::span<const std::string_view> left_out();

}  // namespace layshaft::python::arrays
