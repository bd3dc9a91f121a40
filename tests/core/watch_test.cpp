// SPDX-License-Identifier: MIT
#include <layshaft/core/watch.hpp>

#include <layshaft/gearing/ratio.hpp>
#include <layshaft/gearing/speed.hpp>

#include <gtest/gtest.h>

#include <array>
#include <bit>
#include <cstdint>
#include <limits>
#include <type_traits>

namespace {
using namespace layshaft;

template <class Watch>
constexpr auto top_speed(Watch watch, AngularSpeed limit, double ratio, Length circumference) {
  return watch.step(formula::road_speed{}, watch.given("engine_speed", limit), watch.given("overall_ratio", ratio),
                    watch.given("circumference", circumference));
}

TEST(Unwatched, IsPlainArithmetic) {
  static_assert(top_speed(Unwatched(), 9000_rpm, 12.0, 2.0_m) == road_speed(9000_rpm, 12.0, 2.0_m));
  static_assert(std::is_same_v<decltype(top_speed(Unwatched(), 9000_rpm, 12.0, 2.0_m)), Speed>);
  static_assert(std::is_empty_v<Unwatched> && std::is_trivially_copyable_v<Unwatched>);
  // The same when it is not the compiler that computes.
  double ratio = 12.0;
  EXPECT_EQ(top_speed(Unwatched(), 9000_rpm, ratio, 2.0_m), road_speed(9000_rpm, ratio, 2.0_m));
}

TEST(Unwatched, HandsEveryKindOfStepThroughAsItsValue) {
  constexpr Unwatched watch;
  static_assert(watch.given("front", 14_teeth) == 14_teeth);
  static_assert(watch.given("reading_error", 0.0, sources::un_r39) == 0.0);
  static_assert(watch.looked_up("pitch", 15.875_mm, "520", sources::iso_606) == 15.875_mm);
  static_assert(watch.step(formula::final_ratio{}, 14_teeth, 42_teeth) == 3.0);
  static_assert(watch.step("ratio", formula::final_ratio{}, 14_teeth, 42_teeth) == 3.0);
  static_assert(watch.solved("centre", 612.0_mm, 106.0, [](Length) { return 0.0; }) == 612.0_mm);
  static_assert(watch.chosen(
                    "links", 106_links, "the next even number", [] { return std::array{108_links}; }, 105.2) ==
                106_links);
  static_assert(Unwatched::plain(612.0_mm) == 612.0_mm);
  static_assert(std::is_same_v<decltype(watch.on(Scope::trial)), Unwatched>);
}

// What a solved or chosen value is proved by costs nothing where nobody watches: it is not even called.
TEST(Unwatched, DoesNotWorkOutProofsNorWhatElseWasPossible) {
  int calls = 0;
  const auto counted = [&](auto... values) {
    ++calls;
    return (0.0 + ... + double(values));
  };
  static_cast<void>(Unwatched().solved("links", 3.0, 3.0, counted));
  static_cast<void>(Unwatched().chosen("links", 3.0, "a rule", counted));
  EXPECT_EQ(calls, 0);
}

TEST(ValueName, IsAWordAndWhichOfSeveral) {
  static_assert(ValueName("gear", 3) == ValueName("gear", 3));
  static_assert(ValueName("gear", 3) != ValueName("gear", 2));
  static_assert(ValueName("gear") != ValueName("primary"));
  static_assert(ValueName("gear").index == 0 && ValueName("gear").word == "gear");
  static_assert(ValueName(formula::gear_ratio::about.name) == ValueName("gear_ratio"));
}

// A value that is kept apart is the same value to the last bit, also one that is no number.
TEST(Apart, ChangesNoBit) {
  using Limits = std::numeric_limits<double>;
  for (const double value : {0.0, -0.0, 1.0, -1.0 / 3.0, Limits::denorm_min(), -Limits::min(), Limits::max(),
                             Limits::infinity(), -Limits::infinity(), Limits::quiet_NaN(), -Limits::quiet_NaN(),
                             std::bit_cast<double>(std::uint64_t{0x7ff8000000001234})}) {
    const auto bits = std::bit_cast<std::uint64_t>(value);
    EXPECT_EQ(std::bit_cast<std::uint64_t>(detail::apart(value)), bits);
    EXPECT_EQ(std::bit_cast<std::uint64_t>(detail::apart(Length::from_value(value)).value()), bits);
    EXPECT_EQ(std::bit_cast<std::uint64_t>(Unwatched().given("factor", value)), bits);
  }
  static_assert(detail::apart(612.0_mm) == 612.0_mm && detail::apart(-0.25) == -0.25);
  static_assert(detail::apart(14_teeth) == 14_teeth && detail::apart(106_links) == 106_links);
}

}  // namespace
