// SPDX-License-Identifier: MIT
#include <layshaft/core/utf8.hpp>

#include <gtest/gtest.h>

#include <string>
#include <string_view>

namespace {
using namespace layshaft::detail;

TEST(Utf8, KnowsTheLengthOfACharacter) {
  static_assert(utf8_bytes("a", 0) == 1 && utf8_bytes("ü", 0) == 2 && utf8_bytes("山", 0) == 3 &&
                utf8_bytes("🛵", 0) == 4);
  static_assert(utf8_bytes("", 0) == 0 && utf8_bytes("a", 1) == 0 && utf8_bytes("ü", 1) == 0);
  static_assert(utf8_bytes(std::string_view("\0", 1), 0) == 1);
}

// The first and last of each length, and one past them; The Unicode Standard, table of well-formed UTF-8 sequences.
TEST(Utf8, RefusesWhatIsNoCharacter) {
  for (const char* good : {"\x7f", "\xc2\x80", "\xdf\xbf", "\xe0\xa0\x80", "\xed\x9f\xbf", "\xee\x80\x80",
                           "\xef\xbf\xbf", "\xf0\x90\x80\x80", "\xf4\x8f\xbf\xbf"})
    EXPECT_EQ(first_not_utf8(good), std::string_view(good).size());
  for (const char* bad : {"\x80",
                          "\xbf",
                          "\xc0\x80",
                          "\xc1\xbf",
                          "\xc2",
                          "\xc2\x7f",
                          "\xc2\xc0",
                          "\xe0\x9f\xbf",
                          "\xed\xa0\x80",
                          "\xed\xbf\xbf",
                          "\xe2\x80",
                          "\xe2\x80\x7f",
                          "\xf0\x8f\xbf\xbf",
                          "\xf4\x90\x80\x80",
                          "\xf5\x80\x80\x80",
                          "\xf0\x9f\x9b",
                          "\xf0\x9f\x9b\x7f",
                          "\xf0\x9f\x7f\x9b",
                          "\xfe",
                          "\xff"}) {
    EXPECT_EQ(utf8_bytes(bad, 0), 0u);
    EXPECT_EQ(first_not_utf8(std::string("ok ü ").append(bad)), 6u);
  }
}

// The first and last of each range, and one past them.
TEST(Utf8, KnowsWhatSteersInsteadOfStandingInTheText) {
  for (const char* steers : {"\x01", "\x1f", "\x7f", "\xc2\x80", "\xc2\x9b", "\xc2\x9f", "\xe2\x80\xa8", "\xe2\x80\xae",
                             "\xe2\x81\xa6", "\xe2\x81\xa9"}) {
    EXPECT_TRUE(utf8_steers(steers, 0));
    EXPECT_EQ(first_steering(std::string("ok ü ").append(steers).append("x")), 6u);
  }
  static_assert(utf8_steers(std::string_view("\0", 1), 0));
  for (const char* stands : {" ", "~", "\xc2\xa0", "\xe2\x80\xa7", "\xe2\x80\xaf", "\xe2\x81\xa5", "\xe2\x81\xaa",
                             "\xc3\x80", "\xe3\x80\xa8", "山", "🛵", "\xff", "\xe2", "\xe2\x80"}) {
    EXPECT_FALSE(utf8_steers(stands, 0)) << stands;
    EXPECT_EQ(first_steering(stands), std::string_view(stands).size());
  }
}

TEST(Utf8, IsCutBetweenCharacters) {
  static_assert(utf8_start("abc", 3) == "abc" && utf8_start("abc", 2) == "ab" && utf8_start("abc", 0).empty());
  const std::string_view text = "aü山🛵";
  const std::string_view starts[] = {"", "a", "a", "aü", "aü", "aü", "aü山", "aü山", "aü山", "aü山", text, text};
  for (std::size_t longest = 0; longest < std::size(starts); ++longest)
    EXPECT_EQ(utf8_start(text, longest), starts[longest]);
  EXPECT_EQ(utf8_start(std::string(10, '\x80'), 8).size(), 5u);  // no characters at all: it does not search for ever
}

}  // namespace
