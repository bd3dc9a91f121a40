// SPDX-License-Identifier: MIT
#include <layshaft/wear/road_distance.hpp>

#include <gtest/gtest.h>

#include <limits>
#include <string>

namespace {
using namespace layshaft;
using layshaft::detail::outside_km;

std::string refused(const Band<Length>& band) {
  const auto error = outside_km("life", band, 100_km, 500_km);
  return error ? error->what() : "";
}

TEST(RoadDistance, IsRefusedInKilometres) {
  EXPECT_EQ(outside_km("way", 100_km, 100_km, 500_km), std::nullopt);
  EXPECT_EQ(outside_km("way", 500_km, 100_km, 500_km), std::nullopt);
  EXPECT_STREQ(outside_km("way", 99.5_km, 100_km, 500_km)->what(), "way is 99.5 km; expected 100 km to 500 km");
  EXPECT_EQ(refused({100_km, 200_km, 500_km}), "");
  EXPECT_EQ(refused({100_km, 200_km, 501_km}), "life is 501 km; expected 100 km to 500 km");
  EXPECT_EQ(refused({300_km, 200_km, 400_km}),
            "life is 300 km, 200 km, 400 km; expected low, nominal and high in rising order");
}

TEST(RoadDistance, IsNeverWithoutASize) {
  using Limits = std::numeric_limits<double>;
  EXPECT_EQ(refused({100_km, Limits::quiet_NaN() * units::m, 500_km}),
            "life is not a number; expected 100 km to 500 km");
  EXPECT_EQ(refused({100_km, 200_km, Limits::infinity() * units::m}), "life is infinite; expected 100 km to 500 km");
  EXPECT_NE(refused({-Limits::infinity() * units::m, 200_km, 300_km}), "");
}

}  // namespace
