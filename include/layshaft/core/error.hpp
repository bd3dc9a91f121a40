// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/utf8.hpp>

#include <cstddef>
#include <exception>
#include <string>
#include <string_view>
#include <utility>

#if defined(__cpp_exceptions)
#define LAYSHAFT_EXCEPTIONS 1
#else
#define LAYSHAFT_EXCEPTIONS 0
#endif

/// @file
/// What went wrong, where, and what was expected: thrown where exceptions are on, returned in a Result anywhere.
namespace layshaft {

namespace detail {

/// How much of a text an error shows, in bytes.
inline constexpr std::size_t longest_shown = 80;

/// A pasted text may hold anything: what steers a terminal (utf8_steers) and bytes that are no UTF-8 show as \xNN, and
/// a long one is cut.
inline void append_printable(std::string& out, std::string_view text) {
  constexpr std::string_view digits = "0123456789abcdef";
  const std::string_view shown = utf8_start(text, longest_shown);
  for (std::size_t i = 0; i < shown.size();) {
    const std::size_t bytes = utf8_bytes(shown, i);
    if (bytes > 0 && !utf8_steers(shown, i)) {
      out.append(shown.substr(i, bytes));
      i += bytes;
      continue;
    }
    for (const std::size_t end = i + (bytes > 0 ? bytes : 1); i < end; ++i) {
      const auto byte = static_cast<unsigned char>(shown[i]);
      out.append("\\x").push_back(digits[byte / 16]);
      out.push_back(digits[byte % 16]);
    }
  }
  if (shown.size() < text.size()) out.append("...");
}

}  // namespace detail

/// Which of the exceptions an error is thrown as.
enum class ErrorKind { value, parse, range };

/// Something the library cannot work with; `what()` is a whole sentence. Thrown as itself when the parts do not go
/// together, as a ParseError when a text cannot be read, as a RangeError when a number lies outside its range.
class Error : public std::exception {
 public:
  /// Parts that do not go together.
  [[nodiscard]] static Error value(std::string sentence) { return Error(ErrorKind::value, std::move(sentence)); }

  /// A text that cannot be read: `problem` says what is wrong at byte `position`, `expected` what would be right.
  [[nodiscard]] static Error parse(std::string_view text, std::size_t position, std::string_view problem,
                                   std::string_view expected) {
    std::string sentence(problem);
    sentence.append(" at position ").append(std::to_string(position)).append(" of \"");
    detail::append_printable(sentence, text);
    sentence.append("\"; expected ").append(expected);
    Error error(ErrorKind::parse, std::move(sentence));
    error.text_ = text;
    error.position_ = position;
    error.expected_ = expected;
    return error;
  }

  /// A value outside its range: `name` is what it stands for, `got` the value, `expected` the range, all in words.
  [[nodiscard]] static Error range(std::string_view name, std::string_view got, std::string_view expected) {
    std::string sentence(name);
    sentence.append(" is ").append(got).append("; expected ").append(expected);
    Error error(ErrorKind::range, std::move(sentence));
    error.expected_ = expected;
    return error;
  }

  /// The same error, told from further out: `place` (an argument, a path in a file) is put before the sentence.
  [[nodiscard]] Error in(std::string_view place) const {
    Error error = *this;
    error.sentence_ = std::string(place).append(": ").append(sentence_);
    return error;
  }

  [[nodiscard]] const char* what() const noexcept override { return sentence_.c_str(); }
  [[nodiscard]] ErrorKind kind() const noexcept { return kind_; }
  /// Of a parse error: the text that could not be read.
  [[nodiscard]] const std::string& text() const noexcept { return text_; }
  /// Of a parse error: the byte of the text at which it stopped making sense, from 0.
  [[nodiscard]] std::size_t position() const noexcept { return position_; }
  /// Of a parse error: the text with a caret under the place, on two lines, to be shown in letters of one width.
  /// Empty of other errors, and where the place lies beyond what of a long text can be shown.
  [[nodiscard]] std::string caret() const {
    if (kind_ != ErrorKind::parse || position_ > detail::utf8_start(text_, detail::longest_shown).size()) return {};
    std::string shown, before;
    detail::append_printable(shown, text_);
    detail::append_printable(before, std::string_view(text_).substr(0, position_));
    shown.push_back('\n');
    for (const char c : before)
      if ((static_cast<unsigned char>(c) & 0xC0) != 0x80) shown.push_back(' ');  // one a character, not a byte
    return shown.append("^");
  }
  /// What would have been right, in words.
  [[nodiscard]] const std::string& expected() const noexcept { return expected_; }

 private:
  Error(ErrorKind kind, std::string sentence) : kind_(kind), sentence_(std::move(sentence)) {}

  ErrorKind kind_;
  std::string sentence_;
  std::string text_;
  std::size_t position_ = 0;
  std::string expected_;
};

/// A text that cannot be read: `.text()`, `.position()`, `.expected()`.
class ParseError final : public Error {
 public:
  explicit ParseError(Error error) : Error(std::move(error)) {}
};

/// A value outside its range.
class RangeError final : public Error {
 public:
  explicit RangeError(Error error) : Error(std::move(error)) {}
};

#if LAYSHAFT_EXCEPTIONS
/// Throws the error as the exception of its kind.
[[noreturn]] inline void raise(Error error) {
  switch (error.kind()) {
    case ErrorKind::parse: throw ParseError(std::move(error));
    case ErrorKind::range: throw RangeError(std::move(error));
    case ErrorKind::value: break;
  }
  throw error;
}
#endif

}  // namespace layshaft
