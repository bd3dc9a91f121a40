// SPDX-License-Identifier: MIT
#include <layshaft/road/gravity.hpp>

#include <gtest/gtest.h>

namespace {
using namespace layshaft;

// Source: the 3rd General Conference on Weights and Measures, 1901; exact by definition.
TEST(StandardGravity, IsExact) {
  static_assert(standard_gravity.value() == 9.80665);
  EXPECT_EQ(standard_gravity_source.certainty, Certainty::published);
}

}  // namespace
