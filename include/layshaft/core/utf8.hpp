// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <string_view>

/// @file
/// Text in UTF-8, as far as the library must know: where a character ends, and whether it is one.
namespace layshaft::detail {

/// How many bytes the character at a place of the text takes, 1 to 4; 0 where no whole, valid one starts there.
[[nodiscard]] constexpr std::size_t utf8_bytes(std::string_view text, std::size_t position) noexcept {
  const auto byte = [&](std::size_t offset) -> unsigned {
    return position + offset < text.size() ? static_cast<unsigned char>(text[position + offset]) : 0;
  };
  const auto continues = [&](std::size_t offset) { return (byte(offset) & 0xc0) == 0x80; };
  if (position >= text.size()) return 0;
  const unsigned first = byte(0), second = byte(1);
  if (first < 0x80) return 1;
  if (first < 0xc2 || first > 0xf4 || !continues(1)) return 0;  // a continuation, an overlong form, beyond U+10FFFF
  if (first < 0xe0) return 2;
  if (first == 0xe0 && second < 0xa0) return 0;  // overlong
  if (first == 0xed && second > 0x9f) return 0;  // half of a surrogate pair
  if (first < 0xf0) return continues(2) ? 3 : 0;
  if ((first == 0xf0 && second < 0x90) || (first == 0xf4 && second > 0x8f)) return 0;
  return continues(2) && continues(3) ? 4 : 0;
}

/// The first byte of a text that is not UTF-8; its size where all of it is.
[[nodiscard]] constexpr std::size_t first_not_utf8(std::string_view text) noexcept {
  std::size_t position = 0;
  while (const std::size_t bytes = utf8_bytes(text, position)) position += bytes;
  return position;
}

/// Whether the character at a place steers the terminal, the line or the direction of writing, instead of standing in
/// it: the controls U+0000 to U+001F and U+007F to U+009F, the ends of lines U+2028 and U+2029, and the characters that
/// turn writing round, U+202A to U+202E and U+2066 to U+2069.
[[nodiscard]] constexpr bool utf8_steers(std::string_view text, std::size_t position) noexcept {
  const auto byte = [&](std::size_t offset) -> unsigned {
    return position + offset < text.size() ? static_cast<unsigned char>(text[position + offset]) : 0;
  };
  const unsigned first = byte(0), second = byte(1), third = byte(2);
  if (first < 0x80) return first < 0x20 || first == 0x7f;
  if (first == 0xc2) return second < 0xa0;
  if (first != 0xe2) return false;
  return (second == 0x80 && third >= 0xa8 && third <= 0xae) || (second == 0x81 && third >= 0xa6 && third <= 0xa9);
}

/// The first byte of such a character; the text's size where there is none.
[[nodiscard]] constexpr std::size_t first_steering(std::string_view text) noexcept {
  std::size_t position = 0;
  while (position < text.size() && !utf8_steers(text, position)) {
    const std::size_t bytes = utf8_bytes(text, position);
    position += bytes > 0 ? bytes : 1;
  }
  return position;
}

/// The start of a text, at most so many bytes of it, that cuts no character in two.
[[nodiscard]] constexpr std::string_view utf8_start(std::string_view text, std::size_t longest) noexcept {
  if (text.size() <= longest) return text;
  std::size_t end = longest;
  for (int back = 0; back < 3 && end > 0 && (static_cast<unsigned char>(text[end]) & 0xc0) == 0x80; ++back) --end;
  return text.substr(0, end);
}

}  // namespace layshaft::detail
