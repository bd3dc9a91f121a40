// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/band.hpp>
#include <layshaft/core/watch.hpp>
#include <layshaft/wear/contacts.hpp>
#include <layshaft/wear/hunting.hpp>

/// @file
/// What wears a set-up's teeth: how often each meets the chain, and which links.
namespace layshaft {

/// The wear part of an appraisal.
struct ToothWear {
  Band<double> front_contacts_per_km;  ///< how often each front tooth meets the chain in a kilometre
  Band<double> rear_contacts_per_km;   ///< how often each rear tooth does
  Hunting front_hunting;
  Hunting rear_hunting;

  friend constexpr bool operator==(const ToothWear&, const ToothWear&) = default;
};

namespace detail {
/// The contacts a kilometre at one circumference, for whoever watches.
template <class Watch, class Circumference>
[[nodiscard]] constexpr auto front_contacts_per_km(Watch watch, const Circumference& circumference, Teeth front,
                                                   Teeth rear) {
  const auto distance = watch.given("distance", 1.0_km);
  const auto front_teeth = watch.given("front", front);
  const auto rear_teeth = watch.given("rear", rear);
  return watch.step(formula::front_contacts{}, distance, circumference, front_teeth, rear_teeth);
}
template <class Watch, class Circumference>
[[nodiscard]] constexpr auto rear_contacts_per_km(Watch watch, const Circumference& circumference) {
  return watch.step(formula::rear_contacts{}, watch.given("distance", 1.0_km), circumference);
}
}  // namespace detail

/// The contacts over the band of the circumference (a larger tyre meets less often), and who meets whom.
[[nodiscard]] constexpr ToothWear tooth_wear(Teeth front, Teeth rear, Links links,
                                             const Band<Length>& circumference) noexcept {
  return {over(circumference, [&](Length c) { return detail::front_contacts_per_km(Unwatched(), c, front, rear); }),
          over(circumference, [&](Length c) { return detail::rear_contacts_per_km(Unwatched(), c); }),
          hunting(front, links), hunting(rear, links)};
}

}  // namespace layshaft
