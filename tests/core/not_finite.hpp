// SPDX-License-Identifier: MIT
#pragma once

#include <limits>

/// @file
/// What is no finite number.
namespace layshaft_test {

inline constexpr double nothing = std::numeric_limits<double>::quiet_NaN();
inline constexpr double endless = std::numeric_limits<double>::infinity();

}  // namespace layshaft_test
