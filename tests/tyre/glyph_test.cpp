// SPDX-License-Identifier: MIT
#include <layshaft/tyre/glyph.hpp>

#include <gtest/gtest.h>

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

TEST(Glyph, EndsWhereTheTextEnds) {
  static_assert(glyph_at("", 0).character == Glyph::end && glyph_at("", 0).bytes == 0);
  static_assert(glyph_at("a", 1).character == Glyph::end);
  static_assert(glyph_at({"\0", 1}, 0).character == Glyph::control);
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
  EXPECT_TRUE(cursor.take('X'));
  EXPECT_TRUE(cursor.at_end());
  cursor.advance();
  EXPECT_EQ(cursor.position(), 7u);
}

}  // namespace
