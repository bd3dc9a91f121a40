// SPDX-License-Identifier: MIT
#pragma once

#include "convert.hpp"

#include <layshaft/chain/chain.hpp>
#include <layshaft/choose/measure.hpp>
#include <layshaft/gearing/gearbox.hpp>
#include <layshaft/instrument/instrument.hpp>
#include <layshaft/setup/machine.hpp>
#include <layshaft/show/display.hpp>
#include <layshaft/tyre/tyre.hpp>
#include <layshaft/wear/material.hpp>

#include <span>

/// @file
/// Doors for what may also be given in another form: a marking for a tyre, a name for a chain, a number for a ratio, a
/// word for an enumeration.
namespace layshaft::python::detail {

/// One of the values, by the word that `to_string` has for it.
template <class Enum>
[[nodiscard]] Enum want_word(py::handle object, std::string_view argument, std::span<const Enum> values) {
  const auto word_at = [](const void* all, std::size_t place) -> std::string_view {
    return to_string(static_cast<const Enum*>(all)[place]);
  };
  return values[want_place(object, argument, values.data(), values.size(), word_at)];
}

template <class Enum>
struct Words;
template <>
struct Words<TyreUse> {
  static constexpr auto& values = tyre_uses;
};
template <>
struct Words<TyreConstruction> {
  static constexpr TyreConstruction values[] = {TyreConstruction::diagonal, TyreConstruction::bias_belted,
                                                TyreConstruction::radial};
};
template <>
struct Words<SprocketMaterial> {
  static constexpr auto& values = sprocket_materials;
};
template <>
struct Words<SpeedometerSensor> {
  static constexpr SpeedometerSensor values[] = {SpeedometerSensor::layshaft, SpeedometerSensor::rear_wheel,
                                                 SpeedometerSensor::front_wheel};
};
template <>
struct Words<MachineKind> {
  static constexpr MachineKind values[] = {MachineKind::motorcycle, MachineKind::cycle};
};
template <>
struct Words<LinkRounding> {
  static constexpr LinkRounding values[] = {LinkRounding::up_to_even, LinkRounding::nearest_even,
                                            LinkRounding::down_to_even, LinkRounding::up};
};

template <>
struct Words<SlackMethod> {
  static constexpr auto& values = slack_methods;
};
template <>
struct Words<ChainSeal> {
  static constexpr auto& values = chain_seals;
};

template <class Enum>
requires requires { Words<Enum>::values; }
struct Want<Enum> {
  static Enum from(py::handle object, std::string_view argument) {
    return want_word<Enum>(object, argument, Words<Enum>::values);
  }
};
template <>
struct Want<UnitSystem> {
  static UnitSystem from(py::handle object, std::string_view argument) {
    const std::string word = want_text(object, argument, "'metric' or 'us'");
    if (word == "metric") return UnitSystem::metric;
    if (word == "us") return UnitSystem::us;
    raise(Error::range(argument, in_quotes(word), "'metric' or 'us'"));
  }
};

/// An instance of the class, or the text that makes one.
template <class T>
[[nodiscard]] T want_named(py::handle object, std::string_view argument, const char* expected) {
  if (is<T>(object)) return as<T>(object);
  const auto made = T::make(want_text(object, argument, expected));
  if (!made) raise(made.error().in(argument));
  return *made;
}
template <>
struct Want<TyreSize> {
  static TyreSize from(py::handle object, std::string_view argument) {
    return want_named<TyreSize>(object, argument, "a TyreSize or a marking such as '110/90-18'");
  }
};
template <>
struct Want<ChainSeries> {
  static ChainSeries from(py::handle object, std::string_view argument) {
    return want_named<ChainSeries>(object, argument, "a ChainSeries or its name, such as '520'");
  }
};
template <>
struct Want<GearRatio> {
  static GearRatio from(py::handle object, std::string_view argument) {
    if (is<GearPair>(object)) return as<GearPair>(object);
    if (!is_real_number(object)) wrong_type(argument, "a ratio: a number or a GearPair", object);
    return want_number(object, argument);
  }
};

template <>
struct Want<Measure> {
  static Measure from(py::handle object, std::string_view argument) {
    const std::string name = want_text(object, argument, "the name of a measure, such as 'thrust change'");
    std::string list;
    for (const MeasureRow& row : measure_rows) {
      if (row.name == name) return row.kind;
      list += (list.empty() ? "one of '" : ", '") + std::string(row.name) + "'";
    }
    raise(Error::range(argument, in_quotes(name), list));
  }
};

}  // namespace layshaft::python::detail
