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

TEST(Amount, KeepsItsKind) {
  EXPECT_EQ(Amount(612_mm).dimension, Dimension::length);
  EXPECT_EQ(Amount(612_mm).value, (612_mm).value());
  EXPECT_EQ(Amount(14_teeth).value, 14.0);
  EXPECT_EQ(Amount(106_links).dimension, Dimension::links);
  EXPECT_EQ(Amount::fraction(0.5).dimension, Dimension::fraction);
  EXPECT_NE(Amount::fraction(0.5), Amount::number(0.5));
  EXPECT_EQ(Amount().dimension, Dimension::none);
}

}  // namespace
