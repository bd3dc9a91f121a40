// SPDX-License-Identifier: MIT
#include <layshaft/road/body.hpp>

#include <gtest/gtest.h>
#include <core/formula_range.hpp>

#include <limits>
#include <string>

namespace {
using namespace layshaft;

constexpr Length foot = 12.0 * units::inch;

// Source: a textbook problem, machine of 375 lb at 2.8 ft ahead and 1.7 ft high with a rider of 200 lb at 2.5 and 3.9
// ft.
TEST(Body, TakesARiderAboard) {
  const Body machine({.mass = 375_lb, .centre_ahead = 2.8 * foot, .centre_height = 1.7 * foot});
  const Body both = machine.carrying(200_lb, 2.5 * foot, 3.9 * foot);
  EXPECT_NEAR(in(both.mass(), units::lb), 575.0, 1e-12);
  EXPECT_NEAR(*both.centre_ahead() / foot, (375.0 * 2.8 + 200.0 * 2.5) / 575.0, 1e-14);
  EXPECT_NEAR(*both.centre_height() / foot, (375.0 * 1.7 + 200.0 * 3.9) / 575.0, 1e-14);
}

TEST(Body, NamesThePartThatLiesOutsideItsRange) {
  constexpr double nothing = std::numeric_limits<double>::quiet_NaN();
  const auto refusal = [](const BodyParts& parts) {
    const auto body = Body::make(parts);
    return body ? std::string("none") : std::string(body.error().what());
  };
  EXPECT_EQ(refusal({.mass = 200_kg}), "none");
  EXPECT_TRUE(refusal({.mass = 0_kg}).starts_with("mass is 0 kg"));
  EXPECT_TRUE(refusal({.mass = nothing * units::kg}).starts_with("mass is not a number"));
  EXPECT_TRUE(refusal({.mass = 200_kg, .wheelbase = 0_m}).starts_with("wheelbase is 0 mm"));
  EXPECT_TRUE(refusal({.mass = 200_kg, .wheelbase = 1.4_m, .centre_ahead = 1.41_m}).starts_with("centre_ahead is"));
  EXPECT_EQ(refusal({.mass = 200_kg, .wheelbase = 1.4_m, .centre_ahead = 1.4_m}), "none");
  EXPECT_TRUE(refusal({.mass = 200_kg, .centre_height = 0_m}).starts_with("centre_height is 0 mm"));
  EXPECT_TRUE(refusal({.mass = 200_kg, .wheel_inertia = -1.0 * units::kg_m2}).starts_with("wheel_inertia is -1 kg m2"));
  EXPECT_EQ(refusal({.mass = 200_kg, .wheel_inertia = 0_kg_m2}), "none");
  EXPECT_THROW(Body({.mass = 0_kg}), RangeError);
  const Body unknown({.mass = 200_kg});
  EXPECT_FALSE(unknown.try_carrying(80_kg, 0.5_m, 1_m));
  const Body of_no_height({.mass = 200_kg, .wheelbase = 1.4_m, .centre_ahead = 0.7_m});
  const auto higher = of_no_height.try_carrying(80_kg, 0.5_m, 1_m);
  ASSERT_FALSE(higher);
  EXPECT_EQ(std::string(higher.error().what()), "a mass is added to a body whose centre of mass is not stated");
  const Body known({.mass = 200_kg, .wheelbase = 1.4_m, .centre_ahead = 0.7_m, .centre_height = 0.6_m});
  EXPECT_FALSE(known.try_carrying(0_kg, 0.5_m, 1_m));
  EXPECT_FALSE(known.try_carrying(80_kg, 0.5_m, nothing * units::m));
  const auto far = known.try_carrying(80_kg, 21_m, 1_m);
  ASSERT_FALSE(far);
  EXPECT_TRUE(std::string(far.error().what()).starts_with("ahead is 21000 mm"));
  EXPECT_FALSE(known.try_carrying(2000_kg, -(2_m), 1_m));  // so far behind that the whole lies behind the rear wheel
  EXPECT_TRUE(known.try_carrying(20_kg, -(0.3_m), 0.9_m));
}

TEST(JointCentre, AsksForItsRange) {
  layshaft_test::expect_range<formula::joint_centre>("+f+f", 200_kg, 0.7_m, 80_kg, 0.5_m);
}

}  // namespace
