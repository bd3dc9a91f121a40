// SPDX-License-Identifier: MIT
#include <layshaft/wear/replace_by.hpp>

#include <gtest/gtest.h>

#include <chrono>
#include <string>

namespace {
using namespace layshaft;
using namespace std::chrono_literals;
using std::chrono::days;
using std::chrono::sys_days;

constexpr sys_days measured(2026y / 11 / 26);

TEST(ReplaceBy, CountsTheDaysThatTheDistanceTakes) {
  const ReplaceBy by = replace_by({1000_km, 1500_km, 3000_km}, measured, 25_km);
  EXPECT_EQ(by.earliest, sys_days(2027y / 1 / 5));  // 40 days on
  EXPECT_EQ(by.expected, measured + days(60));
  EXPECT_EQ(by.latest, measured + days(120));
  EXPECT_EQ(replace_by({Length(), 24_km}, measured, 25_km),
            (ReplaceBy{measured, measured, {}}));  // a day begun is ridden
}

TEST(DistanceLeft, HasNothingLeftOfWhatIsPast) {
  EXPECT_EQ(DistanceLeft(Band<Length>{-5_km, -1_km, 3_km}), (DistanceLeft{Length(), Length(), 3_km}));
  EXPECT_EQ(DistanceLeft(Band<Length>{-5_km, -3_km, -1_km}), (DistanceLeft{Length(), Length(), Length()}));
  EXPECT_EQ(DistanceLeft(Band<Length>{1_km, 2_km, 3_km}), (DistanceLeft{1_km, 2_km, 3_km}));
}

TEST(ReplaceBy, LeavesOutWhatLiesMoreThanACenturyAhead) {
  const ReplaceBy by = replace_by({36525_km, 36526_km, 1e7 * units::km}, measured, 1_km);
  EXPECT_EQ(by.earliest, measured + days(36525));
  EXPECT_FALSE(by.expected);
  EXPECT_FALSE(by.latest);
  EXPECT_FALSE(replace_by({1_km, 2_km}, measured, 1_km).latest);  // it may last for ever
}

TEST(ReplaceBy, RefusesWhatIsNoDistance) {
  const auto text = [](const DistanceLeft& left, Length per_day) {
    const auto told = try_replace_by(left, measured, per_day);
    return told ? std::string("none") : std::string(told.error().what());
  };
  EXPECT_EQ(text({-1_km, 2_km}, 1_km), "left.low is -1 km; expected 0 km to 10000000 km");
  EXPECT_EQ(text({1_km, 2_km, 2e7 * units::km}, 1_km), "left.high is 20000000 km; expected 0 km to 10000000 km");
  EXPECT_NE(text({1_km, 2_km}, Length()), "none");
  EXPECT_NE(text({1_km, 2_km}, 5001_km), "none");
}

}  // namespace
