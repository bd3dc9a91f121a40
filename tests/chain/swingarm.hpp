// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/chain/suspension.hpp>

/// @file
/// An invented rear suspension for the tests of the chain.
namespace layshaft_test {

using namespace layshaft;

inline Suspension swingarm() {
  return Suspension({.layshaft_ahead = 75_mm,
                     .layshaft_above = 10_mm,
                     .arm = 565_mm,
                     .droop = 18_deg,
                     .rest = 12_deg,
                     .bump = -6.0_deg});
}

}  // namespace layshaft_test
