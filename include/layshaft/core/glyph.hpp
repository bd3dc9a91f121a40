// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <string_view>

/// @file
/// Reading a marking one character at a time, with the look-alikes that people paste taken for what they look like.
namespace layshaft::detail {

/// What stands at one place of a text, as the ASCII character it is read as, and how many bytes it takes.
///
/// Letters come in upper case. Taken for what they look like, in UTF-8: the full-width forms of ASCII (U+FF01 to
/// U+FF5E); spaces U+00A0, U+2000 to U+200A, U+202F, U+205F, U+3000; dashes U+2010 to U+2014 and minus U+2212 as `-`;
/// slashes U+2044 and U+2215 as `/`; the signs U+00D7, U+2715 and U+2716 as `X`; and the comma as the decimal point.
/// The signs for quarters, halves and eighths have constants of their own. Letters of other alphabets are not taken for
/// Latin ones.
struct Glyph {
  static constexpr char end = '\0';
  static constexpr char control = '\1';
  static constexpr char unknown = '\2';
  static constexpr char eighth = '\3';  // the others follow in rising order, each an eighth more
  static constexpr char quarter = '\4';
  static constexpr char three_eighths = '\5';
  static constexpr char half = '\6';
  static constexpr char five_eighths = '\7';
  static constexpr char three_quarters = '\10';
  static constexpr char seven_eighths = '\11';

  char character = end;
  std::size_t bytes = 0;

  [[nodiscard]] constexpr bool is_digit() const noexcept { return character >= '0' && character <= '9'; }
  [[nodiscard]] constexpr bool is_letter() const noexcept { return character >= 'A' && character <= 'Z'; }
  /// How many eighths the sign of a fraction stands for; 0 for everything else.
  [[nodiscard]] constexpr int eighths() const noexcept {
    return character >= eighth && character <= seven_eighths ? character - eighth + 1 : 0;
  }
};

[[nodiscard]] constexpr Glyph ascii_glyph(unsigned byte, std::size_t bytes) noexcept {
  if (byte < 0x20 || byte == 0x7f) return {Glyph::control, bytes};
  if (byte >= 'a' && byte <= 'z') byte -= 'a' - 'A';
  if (byte == ',') byte = '.';
  return {static_cast<char>(byte), bytes};
}

/// What each ASCII character is read as.
struct AsciiGlyphs {
  char characters[0x80] = {};
  constexpr AsciiGlyphs() noexcept {
    for (unsigned byte = 0; byte < 0x80; ++byte) characters[byte] = ascii_glyph(byte, 1).character;
  }
};
inline constexpr AsciiGlyphs ascii_glyphs;

/// The glyph at a byte of a text that is none of ASCII.
[[nodiscard]] constexpr Glyph long_glyph_at(std::string_view text, std::size_t position) noexcept {
  const auto byte = [&](std::size_t offset) -> unsigned {
    return position + offset < text.size() ? static_cast<unsigned char>(text[position + offset]) : 0;
  };
  const unsigned first = byte(0), second = byte(1), third = byte(2);
  if (first == 0xc2) {  // U+0080 to U+00BF
    if (second >= 0x80 && second < 0xa0) return {Glyph::control, 2};
    if (second == 0xa0) return {' ', 2};
    if (second == 0xbc) return {Glyph::quarter, 2};
    if (second == 0xbd) return {Glyph::half, 2};
    if (second == 0xbe) return {Glyph::three_quarters, 2};
  } else if (first == 0xc3) {  // U+00C0 to U+00FF
    if (second == 0x97) return {'X', 2};
  } else if (first == 0xe2 && second == 0x80) {  // U+2000 to U+203F
    if (third >= 0x80 && third <= 0x8a) return {' ', 3};
    if (third >= 0x90 && third <= 0x94) return {'-', 3};
    if (third == 0xaf) return {' ', 3};
  } else if (first == 0xe2 && second == 0x81) {  // U+2040 to U+207F
    if (third == 0x84) return {'/', 3};
    if (third == 0x9f) return {' ', 3};
  } else if (first == 0xe2 && second == 0x88) {  // U+2200 to U+223F
    if (third == 0x92) return {'-', 3};
    if (third == 0x95) return {'/', 3};
  } else if (first == 0xe2 && second == 0x85) {  // U+2140 to U+217F
    if (third == 0x9b) return {Glyph::eighth, 3};
    if (third == 0x9c) return {Glyph::three_eighths, 3};
    if (third == 0x9d) return {Glyph::five_eighths, 3};
    if (third == 0x9e) return {Glyph::seven_eighths, 3};
  } else if (first == 0xe2 && second == 0x9c) {  // U+2700 to U+273F
    if (third == 0x95 || third == 0x96) return {'X', 3};
  } else if (first == 0xe3 && second == 0x80 && third == 0x80) {  // U+3000
    return {' ', 3};
  } else if (first == 0xef && second == 0xbc && third >= 0x81 && third <= 0xbf) {  // U+FF01 to U+FF3F
    return ascii_glyph(third - 0x60, 3);
  } else if (first == 0xef && second == 0xbd && third >= 0x80 && third <= 0x9e) {  // U+FF40 to U+FF5E
    return ascii_glyph(third - 0x20, 3);
  }
  return {Glyph::unknown, 1};
}

/// The glyph at a byte of a text; `Glyph::end` behind its last byte.
[[nodiscard]] constexpr Glyph glyph_at(std::string_view text, std::size_t position) noexcept {
  if (position >= text.size()) return {};
  const auto first = static_cast<unsigned char>(text[position]);
  if (first < 0x80) return {ascii_glyphs.characters[first], 1};
  return long_glyph_at(text, position);
}

/// A place in a text that only moves forward.
class Cursor {
 public:
  constexpr explicit Cursor(std::string_view text) noexcept : text_(text), glyph_(glyph_at(text, 0)) {}

  [[nodiscard]] constexpr Glyph glyph() const noexcept { return glyph_; }
  [[nodiscard]] constexpr char character() const noexcept { return glyph_.character; }
  /// The byte the glyph starts at.
  [[nodiscard]] constexpr std::size_t position() const noexcept { return position_; }
  [[nodiscard]] constexpr bool at_end() const noexcept { return position_ >= text_.size(); }

  constexpr void advance() noexcept {
    position_ += glyph_.bytes;
    glyph_ = glyph_at(text_, position_);
  }
  /// The glyph behind this one.
  [[nodiscard]] constexpr Glyph next() const noexcept { return glyph_at(text_, position_ + glyph_.bytes); }
  /// Steps over the character if it stands here.
  constexpr bool take(char character) noexcept {
    if (glyph_.character != character || at_end()) return false;
    advance();
    return true;
  }
  constexpr void skip_spaces() noexcept {
    while (take(' ')) {
    }
  }

 private:
  std::string_view text_;
  std::size_t position_ = 0;
  Glyph glyph_;
};

}  // namespace layshaft::detail
