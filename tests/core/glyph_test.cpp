// SPDX-License-Identifier: MIT
#include <layshaft/core/glyph.hpp>

#include <gtest/gtest.h>

#include <memory>
#include <string>

namespace {
using layshaft::detail::Cursor;
using layshaft::detail::Glyph;
using layshaft::detail::glyph_at;

/// The UTF-8 form of a code point below U+10000.
std::string utf8(unsigned code) {
  std::string text;
  const auto add = [&](unsigned byte) { text.push_back(static_cast<char>(byte)); };
  if (code < 0x80) {
    add(code);
  } else if (code < 0x800) {
    add(0xc0 | code >> 6);
    add(0x80 | (code & 0x3f));
  } else {
    add(0xe0 | code >> 12);
    add(0x80 | (code >> 6 & 0x3f));
    add(0x80 | (code & 0x3f));
  }
  return text;
}

char expected_of(unsigned code) {
  if (code >= 0xff01 && code <= 0xff5e) code -= 0xff01 - 0x21;
  if (code < 0x20 || (code >= 0x7f && code < 0xa0)) return Glyph::control;
  if (code >= 'a' && code <= 'z') return static_cast<char>(code - 'a' + 'A');
  if (code == ',') return '.';
  if (code < 0x7f) return static_cast<char>(code);
  switch (code) {
    case 0xa0:
    case 0x202f:
    case 0x205f:
    case 0x3000: return ' ';
    case 0x2010:
    case 0x2011:
    case 0x2012:
    case 0x2013:
    case 0x2014:
    case 0x2212: return '-';
    case 0x2044:
    case 0x2215: return '/';
    case 0xd7:
    case 0x2715:
    case 0x2716: return 'X';
    case 0x215b: return Glyph::eighth;
    case 0x215c: return Glyph::three_eighths;
    case 0x215d: return Glyph::five_eighths;
    case 0x215e: return Glyph::seven_eighths;
    case 0xbc: return Glyph::quarter;
    case 0xbd: return Glyph::half;
    case 0xbe: return Glyph::three_quarters;
    default: return code >= 0x2000 && code <= 0x200a ? ' ' : Glyph::unknown;
  }
}

TEST(Glyph, IsWhatEveryCodePointLooksLike) {
  for (unsigned code = 0; code < 0x10000; ++code) {
    const std::string text = utf8(code);
    const Glyph glyph = glyph_at(text, 0);
    ASSERT_EQ(glyph.character, expected_of(code)) << std::hex << code;
    if (glyph.character != Glyph::unknown) {
      ASSERT_EQ(glyph.bytes, text.size()) << std::hex << code;
    }
  }
}

// The table that the compiler fills is the one that a program would.
TEST(AsciiGlyphs, AreThoseOfEachByte) {
  const auto made = std::make_unique<layshaft::detail::AsciiGlyphs>();
  for (unsigned byte = 0; byte < 0x80; ++byte) {
    EXPECT_EQ(made->characters[byte], expected_of(byte)) << byte;
    EXPECT_EQ(layshaft::detail::ascii_glyphs.characters[byte], expected_of(byte)) << byte;
  }
}

TEST(Glyph, EndsWhereTheTextEnds) {
  static_assert(glyph_at("", 0).character == Glyph::end && glyph_at("", 0).bytes == 0);
  static_assert(glyph_at("a", 1).character == Glyph::end);
  static_assert(glyph_at({"\0", 1}, 0).character == Glyph::control);
}

TEST(Glyph, OfAFractionIsANumberOfEighths) {
  static_assert(glyph_at("\u215b", 0).eighths() == 1 && glyph_at("\u00bc", 0).eighths() == 2);
  static_assert(glyph_at("\u215c", 0).eighths() == 3 && glyph_at("\u00bd", 0).eighths() == 4);
  static_assert(glyph_at("\u215d", 0).eighths() == 5 && glyph_at("\u00be", 0).eighths() == 6);
  static_assert(glyph_at("\u215e", 0).eighths() == 7);
  for (const std::string text : {"", "8", "x", "\n", "\x03", "\xff"}) EXPECT_EQ(glyph_at(text, 0).eighths(), 0) << text;
}

TEST(Glyph, CutInHalfIsUnknown) {
  for (const unsigned code : {0xa0u, 0x2013u, 0xff11u, 0x3000u}) {
    const std::string whole = utf8(code);
    for (std::size_t bytes = 1; bytes < whole.size(); ++bytes)
      EXPECT_EQ(glyph_at(std::string_view(whole).substr(0, bytes), 0).character, Glyph::unknown);
  }
}

TEST(Cursor, CountsBytes) {
  Cursor cursor("\xEF\xBC\x91\xC2\xA0 x");
  EXPECT_EQ(cursor.character(), '1');
  EXPECT_TRUE(cursor.take('1'));
  EXPECT_EQ(cursor.position(), 3u);
  cursor.skip_spaces();
  EXPECT_EQ(cursor.position(), 6u);
  EXPECT_FALSE(cursor.take('Y'));
  EXPECT_EQ(cursor.next().character, Glyph::end);
  EXPECT_TRUE(cursor.take('X'));
  EXPECT_TRUE(cursor.at_end());
  cursor.advance();
  EXPECT_EQ(cursor.position(), 7u);
}

// A NUL within a text is a control character; the end is none that could be taken.
TEST(Cursor, TakesNothingBehindTheEnd) {
  Cursor cursor("1");
  EXPECT_TRUE(cursor.take('1'));
  EXPECT_EQ(cursor.character(), Glyph::end);
  EXPECT_FALSE(cursor.take(Glyph::end));
  EXPECT_EQ(cursor.position(), 1u);
}

}  // namespace
