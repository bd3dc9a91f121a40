// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/counts.hpp>
#include <layshaft/core/math.hpp>

#include <gtest/gtest.h>

#include <limits>
#include <string_view>
#include <tuple>
#include <type_traits>
#include <utility>

/// @file
/// The edge table that every formula's range is held against.
namespace layshaft_test {

template <class T>
[[nodiscard]] T from_si(double value) {
  if constexpr (std::is_same_v<T, double>)
    return value;
  else
    return T::from_value(value);
}
[[nodiscard]] constexpr double in_si(double value) { return value; }
template <class Unit>
[[nodiscard]] constexpr double in_si(boost::units::quantity<Unit> quantity) {
  return quantity.value();
}

/// Tries one parameter at the edges, the others good. What it asks for: `+` above zero, `0` zero or more, `f` any
/// finite value, `.` finite and more, which the caller tries; `#` is a count, which is always good.
template <class Formula, std::size_t Which, class... Parameters>
void expect_edges(char asked, const std::tuple<Parameters...>& good) {
  using T = std::tuple_element_t<Which, std::tuple<Parameters...>>;
  if constexpr (std::is_same_v<T, layshaft::Teeth> || std::is_same_v<T, layshaft::Links>) {
    EXPECT_EQ(asked, '#') << Formula::about.name << ", parameter " << Which;
  } else {
    const auto holds = [&](double value) {
      auto changed = good;
      std::get<Which>(changed) = from_si<T>(value);
      return std::apply([](const auto&... all) { return Formula::in_range(all...); }, changed);
    };
    const auto expect = [&](double value, bool expected) {
      EXPECT_EQ(holds(value), expected) << Formula::about.name << ", parameter " << Which << ": " << value;
    };
    using Limits = std::numeric_limits<double>;
    for (const double bad : {Limits::quiet_NaN(), Limits::infinity(), -Limits::infinity()}) expect(bad, false);
    if (asked == '.') return;
    ASSERT_TRUE(asked == '+' || asked == '0' || asked == 'f') << Formula::about.name;
    for (const double some : {Limits::denorm_min(), 1.0, Limits::max()}) expect(some, true);
    for (const double none : {0.0, -0.0}) expect(none, asked != '+');
    for (const double below : {-Limits::denorm_min(), -1.0, -Limits::max()}) expect(below, asked == 'f');
  }
}

/// Holds a formula's range against what each parameter is to ask for, from arguments with which it holds.
template <class Formula, class Result, class... Parameters>
void expect_range_of(Result (*)(Parameters...), std::string_view asked, const std::tuple<Parameters...>& good) {
  ASSERT_EQ(asked.size(), sizeof...(Parameters)) << Formula::about.name;
  EXPECT_TRUE(std::apply([](const auto&... all) { return Formula::in_range(all...); }, good)) << Formula::about.name;
  [&]<std::size_t... Which>(std::index_sequence<Which...>) { (expect_edges<Formula, Which>(asked[Which], good), ...); }
  (std::index_sequence_for<Parameters...>());
}
/// `expect_range<formula::road_speed>("f++", 6000_rpm, 20.0, 2_m)`.
template <class Formula, class... Arguments>
void expect_range(std::string_view asked, Arguments... good) {
  expect_range_of<Formula>(static_cast<typename Formula::type*>(nullptr), asked, {good...});
}

}  // namespace layshaft_test
