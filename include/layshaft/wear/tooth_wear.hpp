// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/band.hpp>
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

/// The contacts over the band of the circumference (a larger tyre meets less often), and who meets whom.
[[nodiscard]] constexpr ToothWear tooth_wear(Teeth front, Teeth rear, Links links,
                                             const Band<Length>& circumference) noexcept {
  return {over(circumference, [&](Length c) { return front_contacts(1.0_km, c, front, rear); }),
          over(circumference, [&](Length c) { return rear_contacts(1.0_km, c); }), hunting(front, links),
          hunting(rear, links)};
}

}  // namespace layshaft
