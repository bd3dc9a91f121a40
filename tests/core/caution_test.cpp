// SPDX-License-Identifier: MIT
#include <layshaft/core/caution.hpp>

#include <gtest/gtest.h>

namespace {
using namespace layshaft;

TEST(Caution, HasItsNameForACode) {
  static_assert(to_string(CautionCode::offset_link) == "offset_link");
  static_assert(to_string(CautionCode::makers_manual_first) == "makers_manual_first");
  EXPECT_EQ(to_string(CautionCode{}), "chain_ahead_of_adjuster");
}

TEST(Cautions, HaveRoomForEachCautionOnce) {
  static_assert(Cautions::capacity == static_cast<std::size_t>(CautionCode::makers_manual_first) + 1);
}

}  // namespace
