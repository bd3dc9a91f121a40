// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/tyre/designation_reader.hpp>
#include <layshaft/tyre/kinds.hpp>
#include <layshaft/tyre/load_index.hpp>
#include <layshaft/tyre/speed_symbol.hpp>

#include <cstddef>
#include <string_view>

/// @file
/// The marks behind a tyre's size: what carries, how fast, with or without a tube, when made.
namespace layshaft::detail {

/// Reads the marks of a designation; designation.hpp has the grammar.
class MarkReader : public Reader {
 protected:
  using Reader::Reader;

  constexpr bool read_marks() noexcept {
    for (cursor_.skip_spaces(); !cursor_.at_end(); cursor_.skip_spaces())
      if (!read_mark()) return false;
    return true;
  }

  /// Reads a mark that begins with a number, which is read already: a ply rating or a service description.
  constexpr bool read_numbered_mark(std::size_t position, int number) noexcept {
    cursor_.skip_spaces();
    if (at_ply_rating()) return read_ply_rating(position, number);
    if (designation_.load_index >= 0) return twice(position);
    return read_service_description(position, number);
  }

  /// Whether PR stands here: not the speed symbol P with REINF run into it.
  [[nodiscard]] constexpr bool at_ply_rating() const noexcept {
    if (cursor_.character() != 'P' || cursor_.next().character != 'R') return false;
    Cursor behind = cursor_;
    behind.advance();
    return behind.next().character != 'E';
  }

 private:
  static constexpr std::string_view a_mark =
      "M/C, a service description such as 61R, 6PR, TL, TT, REINF, M+S, MST, NHS, DOT with its week, or the end";

  constexpr bool read_mark() noexcept {
    const std::size_t position = cursor_.position();
    switch (cursor_.character()) {
      case '(': return read_bracketed(position);
      case 'M': return read_m(position);
      case 'T': return read_tube(position);
      case 'R': return read_word(position, designation_.reinforced, "REINF", "the rest of REINF");
      case 'N': return read_word(position, designation_.not_for_highway, "NHS", "the rest of NHS");
      case 'D': return read_week(position);
      default: break;
    }
    if (!cursor_.glyph().is_digit()) return unexpected(a_mark);
    int number = 0;
    return read_number(number, "a load index") && read_numbered_mark(position, number);
  }

  constexpr bool read_word(std::size_t position, bool& mark, std::string_view word, std::string_view rest) noexcept {
    if (mark) return twice(position);
    mark = true;
    return read_rest(word, rest);
  }

  constexpr bool read_tube(std::size_t position) noexcept {
    cursor_.advance();
    if (designation_.tube != TyreTube::unmarked) return twice(position);
    if (cursor_.take('L')) return designation_.tube = TyreTube::tubeless, true;
    if (cursor_.take('T')) return designation_.tube = TyreTube::tube, true;
    return unexpected("TL or TT");
  }

  /// M/C, M+S or MST.
  constexpr bool read_m(std::size_t position) noexcept {
    cursor_.advance();
    cursor_.skip_spaces();
    const bool bare = cursor_.glyph().is_letter() || cursor_.at_end();
    const bool stroke = cursor_.take('/');
    if (!bare && !stroke && !cursor_.take('+') && !cursor_.take('&') && !cursor_.take('.') && !cursor_.take('-'))
      return unexpected("the rest of M/C, M+S or MST");
    cursor_.skip_spaces();
    if ((bare || stroke) && cursor_.take('C')) {
      if (designation_.motorcycle) return twice(position);
      return designation_.motorcycle = true;
    }
    if (!cursor_.take('S')) return unexpected("the rest of M/C, M+S or MST");
    const bool multi_service = bare && cursor_.take('T');
    bool& mark = multi_service ? designation_.multi_service : designation_.winter;
    if (mark) return twice(position);
    return mark = true;
  }

  constexpr bool read_ply_rating(std::size_t position, int number) noexcept {
    if (designation_.ply_rating >= 0) return twice(position);
    if (number < 2 || number > 40)
      return no_slip(position, "a ply rating that no tyre has", "a ply rating of 2PR to 40PR");
    designation_.ply_rating = static_cast<short>(number);
    return read_rest("PR", "PR");
  }

  constexpr bool read_week(std::size_t position) noexcept {
    constexpr std::string_view a_week = "two digits of the week, 01 to 53, and two of the year, as in DOT 2319";
    if (designation_.week >= 0) return twice(position);
    if (!read_rest("DOT", "the rest of DOT")) return false;
    cursor_.skip_spaces();
    const std::size_t start = cursor_.position();
    if (!cursor_.glyph().is_digit()) return unexpected(a_week);
    int digits = 0, code = 0;
    for (; cursor_.glyph().is_digit() && digits < 5; cursor_.advance(), ++digits)
      code = code * 10 + (cursor_.character() - '0');
    if (digits == 3)
      return fault(start, "a week code of three digits, from before 2000, which does not tell the decade", a_week);
    if (digits != 4) return fault(start, "a week code that has not four digits", a_week);
    if (code < 100 || code >= 5400) return no_slip(start, "a week that no year has", a_week);
    designation_.week = static_cast<short>(code / 100);
    designation_.year = static_cast<short>(2000 + code % 100);
    return true;
  }

  constexpr bool read_bracketed(std::size_t position) noexcept {
    if (designation_.load_index >= 0) return twice(position);
    cursor_.advance();
    cursor_.skip_spaces();
    const std::size_t start = cursor_.position();
    int number = 0;
    if (!read_number(number, "a service description such as 73W") || !read_service_description(start, number))
      return false;
    const std::string_view symbol = speed_symbols[designation_.speed_symbol].name;
    if (symbol != "V" && symbol != "W" && symbol != "Y")
      return no_slip(position, "brackets round a symbol that leaves no speed above it open",
                     "brackets round V, W or Y only");
    designation_.beyond_symbol = true;
    cursor_.skip_spaces();
    if (!cursor_.take(')')) return unexpected("the closing bracket");
    return true;
  }

  constexpr bool read_load_index(std::size_t position, int index, short& row) noexcept {
    row = static_cast<short>(row_of_load_index(index));
    if (row < 0) return no_slip(position, "a load index that does not exist", "a load index of 0 to 150");
    return true;
  }

  constexpr bool read_service_description(std::size_t position, int index) noexcept {
    if (designation_.notation == TyreNotation::cycle)
      return no_slip(position, "a load index, which cycle tyres have not", "a ply rating such as 4PR, or other marks");
    if (!read_load_index(position, index, designation_.load_index)) return false;
    cursor_.skip_spaces();
    if (cursor_.take('/')) {
      cursor_.skip_spaces();
      const std::size_t second_position = cursor_.position();
      int second = 0;
      if (!read_number(second, "the load index of twin wheels") ||
          !read_load_index(second_position, second, designation_.second_load_index))
        return false;
      cursor_.skip_spaces();
    }
    if (cursor_.at_end())
      return fault(cursor_.position(), "a load index without a speed symbol", speed_symbols_in_words);
    designation_.speed_symbol = static_cast<short>(read_speed_symbol(cursor_));
    if (designation_.speed_symbol < 0)
      return no_slip(cursor_.position(), "a speed symbol that does not exist", speed_symbols_in_words);
    return true;
  }
};

}  // namespace layshaft::detail
