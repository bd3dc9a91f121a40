// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/tyre/code_designated.hpp>
#include <layshaft/tyre/glyph.hpp>
#include <layshaft/tyre/kinds.hpp>
#include <layshaft/tyre/load_index.hpp>
#include <layshaft/tyre/rim_code.hpp>
#include <layshaft/tyre/speed_symbol.hpp>

#include <cstddef>
#include <string_view>

/// @file
/// The grammar of a tyre's size designation, and its reader: constexpr, in one pass, without recursion or allocation.
///
///     designation   = size { mark }
///     size          = section construction rim
///     section       = width "/" aspect               metric: 50 to 400 mm in steps of 5; 25 to 110 percent
///                   | inches                         code: 4.10, 3, 2 1/2, 5.4, as written in the table
///                   | "M" letter aspect              lettered: MT90, as written in the table
///     construction  = "-" | "B" | "R" | "ZR"
///     rim           = a rim code of the table        18, 14.5
///     mark          = "M/C"                          for motorcycles
///                   | load-index speed-symbol        the service description: 61R, 20A8
///                   | "TL" | "TT"                    without or with an inner tube
///                   | "REINF"                        reinforced
///
/// Each mark may stand once; they are printed in the order above, and read in any.
///
/// LEGAL, and what each is printed as:
///
///     110/90-18                    110/90-18                  metric, diagonal
///     110/90B18                    110/90B18                  bias-belted
///     150/70R17                    150/70R17                  radial
///     150/70ZR17 69W               150/70ZR17 69W             ZR is part of the size, W of the service description
///     110/90-18 M/C 61R TL         110/90-18 M/C 61R TL       every mark in its place
///     110/90-18 TL 61R M/C         110/90-18 M/C 61R TL       marks come in any order
///     130/80-17 65S TT REINF       130/80-17 65S TT REINF
///     120/80-14.5                  120/80-14.5                a half rim code
///     4.10-18 59P                  4.10-18 59P                section in inches
///     4,10-18                      4.10-18                    a decimal comma
///     5.4-10                       5.4-10                     low pressure: one decimal, another tyre than 5.40
///     3-10                         3-10                       no decimals: another tyre than 3.00-10
///     2 1/2-8                      2 1/2-8                    a fraction
///     2½-8                         2 1/2-8                    its sign
///     4.10-21                      4.10-21                    a rim the table does not list with this section
///     MT90B16 M/C 74H              MT90B16 M/C 74H            lettered
///     MU90-15M/C                   MU90-15 M/C                no space is needed where none is missed
///     mt90-16                      MT90-16                    either case
///     3.00-10 20A8                 3.00-10 20A8               a speed symbol with a digit
///     "  110 / 90 - 18   61 R  "   110/90-18 61R              spaces between the parts
///     110/90–18                    110/90-18                  a dash for a hyphen, also − ‐ ‑ ‒ —
///     １１０／９０－１８           110/90-18                  full-width forms
///     110/90-18 mc 61rtl           110/90-18 M/C 61R TL       M/C without its stroke; marks run together
///
/// ILLEGAL, with the byte at which each is refused, and why:
///
///     ""                           0     empty
///     "   "                        3     nothing but spaces
///     110                          3     half a designation: no aspect ratio
///     110/                         4     half a designation
///     110/90                       6     half a designation: no construction
///     110/90-                      7     half a designation: no rim code
///     11O/90-18                    2     the letter O for a nought
///     l10/90-18                    0     the letter l for a one
///     110/9O-18                    5     the letter O for a nought
///     110/90-1B                    7     no such rim code; the letter B may stand for the digit 8
///     110/90 18                    7     a space for the construction
///     110x90-18                    3     another notation's sign
///     110/90Z18                    7     Z without R
///     9990/90-18                   0     no tyre is that wide
///     113/90-18                    0     widths go in steps of 5 mm
///     0110/90-18                   0     a number that starts with a nought
///     110/900-18                   4     no section is that high
///     110/20-18                    4     nor that low
///     110/90-37                    7     no such rim code
///     110/90-18.2                  10    rim codes have halves only
///     110/90-18.                   10    half a rim code
///     110/90--18                   7     a dash too many
///     4.20-18                      0     no such section
///     4.1-18                       0     sections are written as in the table: 4.10
///     4.1O-18                      3     the letter O for a nought
///     2.75-10                      0     the table has this section on larger rims only
///     3.00-13                      0     between the rims of the two tables that have this section
///     2 1/3-8                      2     no such fraction
///     MT80-16                      0     no such section
///     XT90-16                      0     lettered sections start with M
///     110/90-18 61                 12    a load index without a speed symbol
///     110/90-18 151R               10    no such load index
///     110/90-18 61I                12    no such speed symbol
///     110/90-18 61A9               13    nor such a one
///     110/90-18 61R 61R            14    a mark that stands twice
///     110/90-18 TL TT              13    with a tube or without
///     110/90-18 TX                 11    no such mark
///     110/90-18 M                  11    half a mark
///     110/90-18 REIN               14    half a mark
///     110/90-18 what               10    trailing rubbish
///     110/90-18\n                  9     a control character
///     110/90-18 \x00               10    a control character
///     110/90-18 М/С                10    Cyrillic letters
///     more than 256 bytes          256   no marking is that long
namespace layshaft::detail {

inline constexpr std::size_t longest_designation = 256;

/// What a designation says, as indices into the tables; -1 where it says nothing.
struct Designation {
  TyreNotation notation = TyreNotation::metric;
  TyreConstruction construction = TyreConstruction::diagonal;
  TyreTube tube = TyreTube::unmarked;
  bool zr = false;          ///< radial, written ZR
  bool motorcycle = false;  ///< M/C
  bool reinforced = false;  ///< REINF
  int width = -1;           ///< metric: millimetres
  int aspect = -1;          ///< metric and lettered: percent
  int listed = -1;          ///< code and lettered: row of code_designated_tyres
  int rim = -1;             ///< row of rim_codes
  int load_index = -1;      ///< row of load_indices
  int speed_symbol = -1;    ///< row of speed_symbols

  friend constexpr bool operator==(const Designation&, const Designation&) = default;
};

/// Why a text is no designation: where, what is wrong, what was expected, and what the table has next to it.
/// An empty problem means that nothing is wrong.
struct DesignationFault {
  std::size_t position = 0;
  std::string_view problem;
  std::string_view expected;
  Neighbours nearest;
};

/// Reads one designation. Each step reads one part of the grammar, and returns false once it has noted a fault.
class DesignationReader {
 public:
  constexpr explicit DesignationReader(std::string_view text) noexcept : length_(text.size()), cursor_(text) {}

  constexpr bool read() noexcept {
    if (length_ > longest_designation) return fault(longest_designation, "the text is too long", "at most 256 bytes");
    cursor_.skip_spaces();
    if (cursor_.at_end()) return fault(cursor_.position(), "the text is empty", a_size);
    return read_size() && read_marks();
  }

  [[nodiscard]] constexpr const Designation& designation() const noexcept { return designation_; }
  [[nodiscard]] constexpr const DesignationFault& fault() const noexcept { return fault_; }

 private:
  static constexpr std::string_view a_size = "a tyre size such as 110/90-18, 4.10-18 or MT90B16";
  static constexpr std::string_view a_construction = "-, B, R or ZR, then the rim code";
  static constexpr std::string_view a_mark = "M/C, a service description such as 61R, TL, TT, REINF or the end";

  /// A section that a table has to know, in the table's own writing.
  struct Section {
    std::size_t position = 0;
    char text[8] = {};
    std::size_t length = 0;

    [[nodiscard]] constexpr std::string_view view() const noexcept { return {text, length}; }
    constexpr void add(char character) noexcept {
      if (length < sizeof text) text[length++] = character;  // a longer one is in no table, cut or whole
    }
    constexpr void add(std::string_view characters) noexcept {
      for (const char character : characters) add(character);
    }
    constexpr void add(int number) noexcept {
      int power = 1;
      while (number / power >= 10) power *= 10;
      for (; power > 0; power /= 10) add(static_cast<char>('0' + number / power % 10));
    }
  };

  constexpr bool fault(std::size_t position, std::string_view problem, std::string_view expected,
                       Neighbours nearest = {}) noexcept {
    fault_ = {position, problem, expected, nearest};
    return false;
  }

  /// Notes that what stands at the cursor cannot stand there.
  constexpr bool unexpected(std::string_view expected) noexcept {
    const std::size_t position = cursor_.position();
    if (cursor_.at_end()) return fault(position, "the designation ends too soon", expected);
    switch (cursor_.character()) {
      case Glyph::control: return fault(position, "a control character", expected);
      case Glyph::unknown: return fault(position, "a character that no marking has", expected);
      case 'O': return fault(position, "the letter O, perhaps for the digit 0", expected);
      case 'I': return fault(position, "the letter I, perhaps for the digit 1", expected);
      case 'L': return fault(position, "the letter L, perhaps for the digit 1", expected);
      default: return fault(position, "an unexpected character", expected);
    }
  }

  /// Reads digits; a number too great for any marking comes out as 99999.
  constexpr bool read_number(int& number, std::string_view expected) noexcept {
    if (!cursor_.glyph().is_digit()) return unexpected(expected);
    const std::size_t start = cursor_.position();
    const bool starts_with_nought = cursor_.character() == '0';
    int digits = 0;
    number = 0;
    for (; cursor_.glyph().is_digit(); cursor_.advance(), ++digits)
      number = number > 9999 ? 99999 : number * 10 + (cursor_.character() - '0');
    if (starts_with_nought && digits > 1) return fault(start, "a number that starts with 0", expected);
    return true;
  }

  /// Reads a number of the size, on which no letter may follow that looks like a digit.
  constexpr bool read_number_of_size(int& number, std::string_view expected) noexcept {
    if (!read_number(number, expected)) return false;
    const char next = cursor_.character();
    return (next != 'O' && next != 'I' && next != 'L') || unexpected("digits");
  }

  constexpr bool read_size() noexcept {
    Section section;
    section.position = cursor_.position();
    if (cursor_.glyph().is_letter()) return read_lettered(section);
    int number = 0;
    if (!read_number_of_size(number, a_size)) return false;
    cursor_.skip_spaces();
    if (cursor_.character() == '/') return read_metric(section.position, number);
    return read_code(section, number);
  }

  constexpr bool read_metric(std::size_t position, int width) noexcept {
    constexpr std::string_view a_width = "a section width of 50 to 400 mm in steps of 5";
    constexpr std::string_view an_aspect = "an aspect ratio of 25 to 110 percent";
    if (width < 50 || width > 400 || width % 5 != 0)
      return fault(position, "a section width that no tyre has", a_width);
    cursor_.advance();
    cursor_.skip_spaces();
    const std::size_t aspect_position = cursor_.position();
    int aspect = 0;
    if (!read_number_of_size(aspect, an_aspect)) return false;
    if (aspect < 25 || aspect > 110) return fault(aspect_position, "an aspect ratio that no tyre has", an_aspect);
    designation_.notation = TyreNotation::metric;
    designation_.width = width;
    designation_.aspect = aspect;
    return read_construction(a_construction) && read_rim();
  }

  constexpr bool read_code(Section& section, int whole) noexcept {
    designation_.notation = TyreNotation::code;
    section.add(whole);
    if (cursor_.take('.')) {
      section.add('.');
      if (!cursor_.glyph().is_digit()) return unexpected("the decimals of the section");
      for (; cursor_.glyph().is_digit(); cursor_.advance()) section.add(cursor_.character());
      if (!read_construction(a_construction)) return false;
    } else {
      if (!read_fraction(section)) return false;
      if (!read_construction("/ and the aspect ratio, or -, B, R or ZR and the rim code")) return false;
    }
    return read_rim() && find_listed(section);
  }

  constexpr bool read_fraction(Section& section) noexcept {
    switch (cursor_.character()) {
      case Glyph::quarter: section.add(" 1/4"); return cursor_.advance(), true;
      case Glyph::half: section.add(" 1/2"); return cursor_.advance(), true;
      case Glyph::three_quarters: section.add(" 3/4"); return cursor_.advance(), true;
      default: break;
    }
    if (!cursor_.glyph().is_digit()) return true;
    const std::size_t position = cursor_.position();
    int above = 0, below = 0;
    if (!read_number(above, "a fraction")) return false;
    cursor_.skip_spaces();
    if (!cursor_.take('/')) return unexpected("/, as in 110/90-18 or 2 1/2-8");
    cursor_.skip_spaces();
    if (!read_number(below, "a fraction")) return false;
    if (above == 1 && below == 4) return section.add(" 1/4"), true;
    if (above == 1 && below == 2) return section.add(" 1/2"), true;
    if (above == 3 && below == 4) return section.add(" 3/4"), true;
    return fault(position, "a fraction that no section has", "1/4, 1/2 or 3/4");
  }

  constexpr bool read_lettered(Section& section) noexcept {
    designation_.notation = TyreNotation::lettered;
    if (!cursor_.take('M')) return unexpected(a_size);
    section.add('M');
    cursor_.skip_spaces();
    if (!cursor_.glyph().is_letter()) return unexpected("the second letter of a section such as MT90");
    section.add(cursor_.character());
    cursor_.advance();
    cursor_.skip_spaces();
    int aspect = 0;
    if (!read_number_of_size(aspect, "the aspect ratio of a section such as MT90")) return false;
    section.add(aspect);
    designation_.aspect = aspect;
    return read_construction(a_construction) && read_rim() && find_listed(section);
  }

  constexpr bool read_construction(std::string_view expected) noexcept {
    cursor_.skip_spaces();
    if (cursor_.take('-')) return designation_.construction = TyreConstruction::diagonal, true;
    if (cursor_.take('B')) return designation_.construction = TyreConstruction::bias_belted, true;
    designation_.construction = TyreConstruction::radial;
    designation_.zr = cursor_.take('Z');
    return cursor_.take('R') || unexpected(designation_.zr ? "R after Z" : expected);
  }

  constexpr bool read_rim() noexcept {
    cursor_.skip_spaces();
    const std::size_t position = cursor_.position();
    int whole = 0;
    if (!read_number_of_size(whole, "a rim code such as 18")) return false;
    double code = whole;
    if (cursor_.take('.')) {
      if (!cursor_.take('5')) return unexpected("the half of a rim code, .5");
      if (cursor_.glyph().is_digit()) return unexpected("no more than a half, .5, in a rim code");
      code += 0.5;
    }
    designation_.rim = row_of_rim_code(code);
    if (designation_.rim < 0)
      return fault(position, "a rim code that does not exist", "a rim code in use", rim_codes_next_to(code));
    return true;
  }

  constexpr bool find_listed(const Section& section) noexcept {
    const double rim_code = rim_codes[designation_.rim].code;
    designation_.listed = row_of_code_designated(section.view(), rim_code);
    if (designation_.listed >= 0) return true;
    const bool lettered = designation_.notation == TyreNotation::lettered;
    return fault(section.position, "a section that the table does not have for this rim code", "a section of the table",
                 sections_next_to(section.view(), lettered, rim_code));
  }

  constexpr bool read_marks() noexcept {
    for (cursor_.skip_spaces(); !cursor_.at_end(); cursor_.skip_spaces())
      if (!read_mark()) return false;
    return true;
  }

  constexpr bool read_mark() noexcept {
    const std::size_t position = cursor_.position();
    if (cursor_.glyph().is_digit()) {
      if (designation_.load_index >= 0) return twice(position);
      return read_service_description(position);
    }
    if (cursor_.take('M')) {
      if (designation_.motorcycle) return twice(position);
      cursor_.skip_spaces();
      if (cursor_.take('/')) cursor_.skip_spaces();
      designation_.motorcycle = true;
      return cursor_.take('C') || unexpected("the rest of M/C");
    }
    if (cursor_.take('T')) {
      if (designation_.tube != TyreTube::unmarked) return twice(position);
      if (cursor_.take('L')) return designation_.tube = TyreTube::tubeless, true;
      if (cursor_.take('T')) return designation_.tube = TyreTube::tube, true;
      return unexpected("TL or TT");
    }
    if (cursor_.take('R')) {
      if (designation_.reinforced) return twice(position);
      for (const char letter : std::string_view("EINF"))
        if (!cursor_.take(letter)) return unexpected("the rest of REINF");
      return designation_.reinforced = true;
    }
    return unexpected(a_mark);
  }

  constexpr bool twice(std::size_t position) noexcept {
    return fault(position, "a mark of a kind that was given before", "each mark once");
  }

  constexpr bool read_service_description(std::size_t position) noexcept {
    int index = 0;
    if (!read_number(index, "a load index")) return false;
    designation_.load_index = row_of_load_index(index);
    if (designation_.load_index < 0)
      return fault(position, "a load index that does not exist", "a load index of 0 to 150");
    cursor_.skip_spaces();
    if (cursor_.at_end())
      return fault(cursor_.position(), "a load index without a speed symbol", speed_symbols_in_words);
    designation_.speed_symbol = read_speed_symbol(cursor_);
    return designation_.speed_symbol >= 0 ||
           fault(cursor_.position(), "a speed symbol that does not exist", speed_symbols_in_words);
  }

  std::size_t length_;
  Cursor cursor_;
  Designation designation_;
  DesignationFault fault_;
};

}  // namespace layshaft::detail
