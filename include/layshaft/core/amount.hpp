// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/counts.hpp>

/// @file
/// A quantity whose kind is known only at run time, for lists that hold quantities of several kinds.
namespace layshaft {

/// What an amount is an amount of.
enum class Dimension { none, number, fraction, teeth, links, length, mass, speed, angular_speed };

/// A value in SI units, or a count or a pure number, with its kind.
struct Amount {
  double value = 0.0;
  Dimension dimension = Dimension::none;

  constexpr Amount() noexcept = default;
  constexpr Amount(Length length) noexcept : value(length.value()), dimension(Dimension::length) {}
  constexpr Amount(Mass mass) noexcept : value(mass.value()), dimension(Dimension::mass) {}
  constexpr Amount(Speed speed) noexcept : value(speed.value()), dimension(Dimension::speed) {}
  constexpr Amount(AngularSpeed speed) noexcept : value(speed.value()), dimension(Dimension::angular_speed) {}
  constexpr Amount(Teeth teeth) noexcept : value(teeth.count()), dimension(Dimension::teeth) {}
  constexpr Amount(Links links) noexcept : value(links.count()), dimension(Dimension::links) {}
  /// A pure number, 3.4.
  [[nodiscard]] static constexpr Amount number(double value) noexcept { return {value, Dimension::number}; }
  /// A part of one, spoken of in per cent: 0.024.
  [[nodiscard]] static constexpr Amount fraction(double value) noexcept { return {value, Dimension::fraction}; }

  friend constexpr bool operator==(const Amount&, const Amount&) = default;

 private:
  constexpr Amount(double amount, Dimension of) noexcept : value(amount), dimension(of) {}
};

}  // namespace layshaft
