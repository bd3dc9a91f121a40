// SPDX-License-Identifier: MIT
#include <layshaft/road/slope.hpp>

#include <gtest/gtest.h>
#include <core/formula_range.hpp>

#include <cmath>
#include <limits>

namespace {
using namespace layshaft;

TEST(Slope, IsOneHillByGradeAndByAngle) {
  EXPECT_NEAR(in(Slope(1.0).angle(), units::deg), 45.0, 1e-13);
  EXPECT_EQ(Slope(0.1).grade(), 0.1);
  EXPECT_NEAR(Slope(Slope(0.37).angle()).grade(), 0.37, 1e-15);
  EXPECT_TRUE(Slope().level());
  EXPECT_TRUE(Slope(0.0).level());
  EXPECT_EQ(Slope().grade(), 0.0);
  EXPECT_LT(Slope(-0.2).angle(), Angle());
  EXPECT_FALSE(Slope(Angle()).stated_grade());
}

TEST(Slope, EndsBeforeTheVertical) {
  constexpr double nothing = std::numeric_limits<double>::quiet_NaN(),
                   endless = std::numeric_limits<double>::infinity();
  for (const double bad : {1000.1, -1000.1, nothing, endless, -endless}) {
    const auto slope = Slope::make(bad);
    ASSERT_FALSE(slope) << bad;
    EXPECT_EQ(slope.error().kind(), ErrorKind::range);
  }
  EXPECT_TRUE(Slope::make(1000.0));
  EXPECT_TRUE(Slope::make(89.99_deg));
  for (const double bad : {90.0, -90.0, 135.0, nothing, endless}) EXPECT_FALSE(Slope::make(bad * units::deg)) << bad;
  EXPECT_NE(std::string(Slope::make(90_deg).error().what()).find("short of the vertical"), std::string::npos);
  EXPECT_THROW(Slope(95_deg), RangeError);
}

}  // namespace
