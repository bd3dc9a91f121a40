// SPDX-License-Identifier: MIT
#include <layshaft/core/error.hpp>

#include <gtest/gtest.h>

namespace {
using namespace layshaft;

TEST(Error, OfParsingSaysWhatWhereAndWhatWasExpected) {
  const Error error = Error::parse("12 x", 3, "unknown unit", "a length");
  EXPECT_STREQ(error.what(), "unknown unit at position 3 of \"12 x\"; expected a length");
  EXPECT_EQ(error.text(), "12 x");
  EXPECT_EQ(error.position(), 3u);
  EXPECT_EQ(error.expected(), "a length");
  EXPECT_EQ(error.kind(), ErrorKind::parse);
}

TEST(Error, ShowsControlCharactersAndCutsALongText) {
  EXPECT_STREQ(Error::parse(std::string_view("a\n\0b", 4), 1, "p", "e").what(),
               "p at position 1 of \"a\\x0a\\x00b\"; expected e");
  const std::string what = Error::parse(std::string(500, 'z'), 0, "p", "e").what();
  EXPECT_LT(what.size(), 130u);
  EXPECT_NE(what.find("zzz...\""), std::string::npos);
}

// 2026-11-26: a terminal takes U+009B for the start of a command, and U+202E turns the rest of a line round.
TEST(Error, ShowsWhatWouldSteerATerminalInItsBytes) {
  EXPECT_STREQ(Error::parse("a\xc2\x9b"
                            "31m\xe2\x80\xae"
                            "b",
                            1, "p", "e")
                   .what(),
               "p at position 1 of \"a\\xc2\\x9b31m\\xe2\\x80\\xaeb\"; expected e");
}

// 2026-11-25: a text cut at its eightieth byte could end within a character.
TEST(Error, ShowsOnlyWholeCharacters) {
  EXPECT_STREQ(Error::parse("ü\xff山\xc3", 2, "p", "e").what(), "p at position 2 of \"ü\\xff山\\xc3\"; expected e");
  for (std::size_t before = 0; before < 4; ++before) {
    std::string text(before, 'x');
    for (int i = 0; i < 60; ++i) text.append("🛵");
    const std::string what = Error::parse(text, 0, "p", "e").what();
    EXPECT_EQ(detail::first_not_utf8(what), what.size());
    EXPECT_NE(what.find("🛵...\""), std::string::npos) << what;
    EXPECT_EQ(what.find("\\x"), std::string::npos) << what;
  }
}

TEST(Error, IsToldFromFurtherOutWithoutLosingAnything) {
  const Error error = Error::parse("12 x", 3, "unknown unit", "a length").in("$.centre");
  EXPECT_STREQ(error.what(), "$.centre: unknown unit at position 3 of \"12 x\"; expected a length");
  EXPECT_EQ(error.position(), 3u);
}

TEST(Error, IsThrownAsTheExceptionOfItsKind) {
  EXPECT_THROW(raise(Error::parse("", 0, "p", "e")), ParseError);
  EXPECT_THROW(raise(Error::range("n", "1", "2")), RangeError);
  try {
    raise(Error::value("parts that do not go together"));
    FAIL();
  } catch (const ParseError&) {
    FAIL();
  } catch (const RangeError&) {
    FAIL();
  } catch (const Error& error) {
    EXPECT_STREQ(error.what(), "parts that do not go together");
  }
}

TEST(Error, PointsAtThePlaceWithACaret) {
  EXPECT_EQ(Error::parse("110/90-1B", 8, "", "").caret(), "110/90-1B\n        ^");
  EXPECT_EQ(Error::parse("", 0, "", "").caret(), "\n^");
  EXPECT_EQ(Error::parse("ab", 2, "", "").caret(), "ab\n  ^");                        // behind the end
  EXPECT_EQ(Error::parse("2\xC2\xBD-8x", 5, "", "").caret(), "2\xC2\xBD-8x\n    ^");  // a character, not a byte
  EXPECT_EQ(Error::parse("a\nb", 2, "", "").caret(), "a\\x0ab\n     ^");
  EXPECT_EQ(Error::parse(std::string(300, 'x'), 256, "", "").caret(), "");  // beyond what is shown
  EXPECT_EQ(Error::value("no").caret(), "");
  EXPECT_EQ(Error::range("a", "b", "c").caret(), "");
}

}  // namespace
