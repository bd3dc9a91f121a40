// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/tyre/code_designated.hpp>
#include <layshaft/tyre/cycle_rim.hpp>
#include <layshaft/tyre/designation_reader.hpp>
#include <layshaft/tyre/kinds.hpp>
#include <layshaft/tyre/mark_reader.hpp>
#include <layshaft/tyre/rim_code.hpp>

#include <cstddef>
#include <string_view>

/// @file
/// The size at the beginning of a designation, in each of the notations.
namespace layshaft::detail {

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

/// A number of inches as it is written: whole, with decimals or with a fraction.
struct Inches {
  enum Form : unsigned char { bare, decimal, fraction };

  std::size_t position = 0;
  int whole = 0;
  int thousandths = 0;  ///< beyond the whole; of a fraction, too
  Form form = bare;
  bool precise = true;  ///< it has no more decimals than thousandths

  [[nodiscard]] constexpr int in_thousandths() const noexcept { return whole * 1000 + thousandths; }
  [[nodiscard]] constexpr int in_eighths() const noexcept { return whole * 8 + thousandths / 125; }
};

/// Reads the size of a designation; designation.hpp has the grammar.
class SizeReader : public MarkReader {
 protected:
  using MarkReader::MarkReader;

  static constexpr std::string_view a_size = "a tyre size such as 110/90-18, 4.10-18, MT90B16, 25x8-12 or 37-622";

  constexpr bool read_size() noexcept {
    if (cursor_.glyph().is_letter()) {
      if (cursor_.character() == 'M') return read_lettered();
      if (!read_prefix()) return false;
    }
    const std::size_t position = cursor_.position();
    int number = 0;
    if (!read_number_of_size(number, a_size)) return false;
    if (cursor_.take('.')) return read_inches(position, number, Inches::decimal);
    cursor_.skip_spaces();
    return cursor_.character() == '/' ? read_metric(position, number) : read_inches(position, number, Inches::bare);
  }

 private:
  static constexpr std::string_view a_construction = "-, B, R or ZR, then the rim code";
  static constexpr std::string_view a_fraction = "a fraction: 1/4, 1/2, 3/4 or eighths";

  /// P, LT or AT before the number.
  constexpr bool read_prefix() noexcept {
    const char next = cursor_.next().character;
    if (cursor_.take('P')) {
      designation_.vehicle = TyreVehicle::passenger;
    } else if (next == 'T' && cursor_.take('L')) {
      designation_.vehicle = TyreVehicle::light_truck;
      cursor_.advance();
    } else if (next == 'T' && cursor_.take('A')) {
      designation_.vehicle = TyreVehicle::all_terrain;
      cursor_.advance();
    } else {
      return unexpected(a_size);
    }
    cursor_.skip_spaces();
    return true;
  }

  /// C or LT behind the rim code.
  constexpr bool read_suffix() noexcept {
    cursor_.skip_spaces();
    const std::size_t position = cursor_.position();
    TyreVehicle vehicle = TyreVehicle::unmarked;
    if (cursor_.character() == 'C' && designation_.notation != TyreNotation::flotation) {
      vehicle = TyreVehicle::commercial;
    } else if (cursor_.character() == 'L' && cursor_.next().character == 'T') {
      vehicle = TyreVehicle::light_truck;
      cursor_.advance();
    } else {
      return true;
    }
    cursor_.advance();
    if (designation_.vehicle != TyreVehicle::unmarked) return twice(position);
    designation_.vehicle = vehicle;
    return true;
  }

  /// Reads a number of the size, on which no letter may follow that looks like a digit.
  constexpr bool read_number_of_size(int& number, std::string_view expected) noexcept {
    if (!read_number(number, expected)) return false;
    const char next = cursor_.character();
    if (next == 'O' || next == 'I' || (next == 'L' && cursor_.next().character != 'T')) return unexpected("digits");
    return true;
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
    designation_.width = static_cast<short>(width);
    designation_.aspect = static_cast<short>(aspect);
    return read_construction(a_construction) && read_rim() && read_suffix();
  }

  constexpr bool read_lettered() noexcept {
    Section section;
    section.position = cursor_.position();
    designation_.notation = TyreNotation::lettered;
    cursor_.advance();
    section.add('M');
    cursor_.skip_spaces();
    if (!cursor_.glyph().is_letter()) return unexpected("the second letter of a section such as MT90");
    section.add(cursor_.character());
    cursor_.advance();
    cursor_.skip_spaces();
    int aspect = 0;
    if (!read_number_of_size(aspect, "the aspect ratio of a section such as MT90")) return false;
    section.add(aspect);
    designation_.aspect = static_cast<short>(aspect < 1000 ? aspect : 0);
    return read_construction(a_construction) && read_rim() && find_listed(section);
  }

  /// Every size that does not begin with a section width in millimetres and a stroke.
  constexpr bool read_inches(std::size_t position, int whole, Inches::Form form) noexcept {
    Section section;
    section.position = position;
    section.add(whole);
    Inches first;
    first.position = position;
    first.whole = whole;
    if (form == Inches::decimal) {
      section.add('.');
      if (!read_decimals(first, &section)) return false;
    } else if (!read_fraction(first, section)) {
      return false;
    }
    cursor_.skip_spaces();
    if (at_by()) return read_by(first);
    if (designation_.vehicle != TyreVehicle::unmarked)
      return unexpected("/ and the aspect ratio, or x and the section width");
    if (first.form != Inches::bare) {
      designation_.notation = TyreNotation::code;
      return read_construction(a_construction) && read_rim() && find_listed(section) && read_suffix();
    }
    if (is_french_letter() && is_french_diameter(whole)) return read_french(first);
    return read_whole(first, section);
  }

  /// A code section without decimals, or the width of an ISO marking: which one the number behind tells.
  constexpr bool read_whole(const Inches& first, const Section& section) noexcept {
    designation_.notation = TyreNotation::code;
    if (!read_construction("/ and the aspect ratio, x and the width, or -, B, R or ZR and the rim code")) return false;
    cursor_.skip_spaces();
    const std::size_t position = cursor_.position();
    int number = 0;
    if (!read_number_of_size(number, "a rim code such as 18, or a bead seat diameter such as 622")) return false;
    if (number >= 90 && designation_.construction == TyreConstruction::diagonal)
      return read_iso(first, position, number);
    return read_rim(position, number) && find_listed(section) && read_suffix();
  }

  /// Reads the digits behind a decimal point.
  constexpr bool read_decimals(Inches& inches, Section* section = nullptr) noexcept {
    if (!cursor_.glyph().is_digit()) return unexpected("the decimals of the number");
    inches.form = Inches::decimal;
    for (int power = 100; cursor_.glyph().is_digit(); cursor_.advance(), power /= 10) {
      if (section != nullptr) section->add(cursor_.character());
      inches.thousandths += power * (cursor_.character() - '0');
      inches.precise = inches.precise && power > 0;
    }
    return true;
  }

  /// Reads the fraction of a code section, or of the nominal diameter of a cycle rim, if one stands here.
  constexpr bool read_fraction(Inches& inches, Section& section) noexcept {
    int eighths = cursor_.glyph().eighths();
    if (eighths > 0) {
      cursor_.advance();
    } else {
      if (!cursor_.glyph().is_digit()) return true;
      const std::size_t position = cursor_.position();
      int above = 0;
      if (!read_number(above, a_fraction)) return false;
      cursor_.skip_spaces();
      if (!cursor_.take('/')) return unexpected("/, as in 110/90-18 or 2 1/2-8");
      if (!read_below(position, above, eighths)) return false;
    }
    constexpr std::string_view endings[] = {"", " 1/8", " 1/4", " 3/8", " 1/2", " 5/8", " 3/4", " 7/8"};
    section.add(endings[eighths]);
    inches.form = Inches::fraction;
    inches.thousandths = 125 * eighths;
    return true;
  }

  /// Reads what stands below a fraction's stroke, and gives the whole of it in eighths.
  constexpr bool read_below(std::size_t position, int above, int& eighths) noexcept {
    cursor_.skip_spaces();
    int below = 0;
    if (!read_number(below, a_fraction)) return false;
    const bool in_use = (below == 2 || below == 4 || below == 8) && above < below && above % 2 == 1;
    if (!in_use) return fault(position, "a fraction that no size has", a_fraction);
    eighths = above * 8 / below;
    return true;
  }

  constexpr bool read_construction(std::string_view expected) noexcept {
    cursor_.skip_spaces();
    if (cursor_.take('-')) return designation_.construction = TyreConstruction::diagonal, true;
    if (cursor_.take('B')) return designation_.construction = TyreConstruction::bias_belted, true;
    designation_.construction = TyreConstruction::radial;
    designation_.zr = cursor_.take('Z');
    if (!cursor_.take('R')) return unexpected(designation_.zr ? "R after Z" : expected);
    return true;
  }

  constexpr bool read_rim() noexcept {
    cursor_.skip_spaces();
    const std::size_t position = cursor_.position();
    int whole = 0;
    return read_number_of_size(whole, "a rim code such as 18") && read_rim(position, whole);
  }

  /// The rest of a rim code whose whole part is read.
  constexpr bool read_rim(std::size_t position, int whole) noexcept {
    double code = whole;
    if (cursor_.take('.')) {
      if (!cursor_.take('5')) return unexpected("the half of a rim code, .5");
      if (cursor_.glyph().is_digit()) return unexpected("no more than a half, .5, in a rim code");
      code += 0.5;
    }
    designation_.rim = static_cast<short>(row_of_rim_code(code));
    if (designation_.rim < 0)
      return fault(position, "a rim code that does not exist", "a rim code in use", rim_codes_next_to(code));
    return true;
  }

  constexpr bool find_listed(const Section& section) noexcept {
    const double rim_code = rim_codes[designation_.rim].code;
    designation_.listed = static_cast<short>(row_of_code_designated(section.view(), rim_code));
    if (designation_.listed >= 0) return true;
    const bool lettered = designation_.notation == TyreNotation::lettered;
    return fault(section.position, "a section that the table does not have for this rim code", "a section of the table",
                 sections_next_to(section.view(), lettered, rim_code));
  }

  // --- Diameter by width -------------------------------------------------------------------------------------------

  /// The sign between a diameter and a width.
  [[nodiscard]] constexpr bool at_by() const noexcept {
    return cursor_.character() == 'X' || cursor_.character() == '*';
  }

  /// Whether a construction stands here: an R is one, unless it begins REINF.
  [[nodiscard]] constexpr bool at_construction() const noexcept {
    switch (cursor_.character()) {
      case '-':
      case 'B':
      case 'Z': return true;
      case 'R': return cursor_.next().character != 'E';
      default: return false;
    }
  }

  constexpr bool read_by(const Inches& first) noexcept {
    if (designation_.vehicle == TyreVehicle::passenger) return unexpected("/ and the aspect ratio");
    if (first.form == Inches::bare && first.whole >= 100) return read_french(first);
    cursor_.advance();
    cursor_.skip_spaces();
    Inches second;
    second.position = cursor_.position();
    if (!read_number_of_size(second.whole, "the width in inches")) return false;
    if (cursor_.take('.') && !read_decimals(second)) return false;
    cursor_.skip_spaces();
    if (first.form != Inches::fraction && at_construction()) return read_flotation(first, second);
    if (designation_.vehicle != TyreVehicle::unmarked) return unexpected(a_construction);
    if (second.form == Inches::decimal) return finish_cycle(CycleNaming::decimal, first, second);
    return read_fractional_width(first, second);
  }

  // 31x10.50R15LT
  constexpr bool read_flotation(const Inches& first, const Inches& second) noexcept {
    constexpr std::string_view a_diameter = "an overall diameter of 8 to 60 inches, with at most two decimals";
    constexpr std::string_view a_width = "a section width of 2 to 30 inches, with at most two decimals";
    designation_.notation = TyreNotation::flotation;
    if (!read_construction(a_construction)) return false;
    cursor_.skip_spaces();
    const std::size_t position = cursor_.position();
    int number = 0;
    if (!read_number_of_size(number, "a rim code such as 12")) return false;
    if (second.form == Inches::bare && designation_.construction == TyreConstruction::diagonal) {
      Cursor behind = cursor_;
      behind.skip_spaces();
      if (behind.take('/')) {  // 24x1-3/8
        cursor_ = behind;
        return read_dashed_fraction(first, second, position, number);
      }
    }
    if (!hundredths(first, 800, 6000)) return fault(first.position, "an overall diameter that no tyre has", a_diameter);
    if (!hundredths(second, 200, 3000)) return fault(second.position, "a section width that no tyre has", a_width);
    designation_.diameter = static_cast<short>(first.in_thousandths() / 10);
    designation_.width = static_cast<short>(second.in_thousandths() / 10);
    if (!read_rim(position, number)) return false;
    if (rim_codes[designation_.rim].code * 100.0 + 200.0 > designation_.diameter)
      return fault(position, "a rim too great for the tyre's diameter", "a rim code at least 2 below the diameter");
    return read_suffix();
  }

  /// Whether a number has no more than two decimals, and lies between two numbers of hundredths.
  [[nodiscard]] static constexpr bool hundredths(const Inches& inches, int least, int greatest) noexcept {
    const int number = inches.in_thousandths();
    return inches.precise && number % 10 == 0 && least * 10 <= number && number <= greatest * 10;
  }

  // --- Cycles ------------------------------------------------------------------------------------------------------

  constexpr bool set_cycle_width(CycleNaming naming, std::size_t position, int width) noexcept {
    const int millimetres = cycle_width_in_millimetres(naming, width);
    if (millimetres < narrowest_cycle_tyre || millimetres > widest_cycle_tyre)
      return fault(position, "a width that no cycle tyre has", "a width of 15 to 130 mm, 0.6 to 5.1 inches");
    designation_.notation = TyreNotation::cycle;
    designation_.construction = TyreConstruction::diagonal;
    designation_.naming = naming;
    designation_.width = static_cast<short>(width);
    return true;
  }

  // 37-622
  constexpr bool read_iso(const Inches& first, std::size_t position, int bead_seat) noexcept {
    if (!set_cycle_width(CycleNaming::iso, first.position, first.whole)) return false;
    designation_.rim = static_cast<short>(row_of_cycle_bead_seat(bead_seat));
    if (designation_.rim >= 0) return true;
    return fault(position, "a bead seat diameter that does not exist", "a bead seat diameter in use",
                 cycle_bead_seats_next_to(bead_seat));
  }

  [[nodiscard]] constexpr bool is_french_letter() const noexcept {
    const char letter = cursor_.character();
    return letter >= 'A' && letter <= 'D' && (letter != 'D' || cursor_.next().character != 'O');  // DOT
  }
  constexpr char take_french_letter() noexcept {
    cursor_.skip_spaces();
    if (!is_french_letter()) return 0;
    const char letter = cursor_.character();
    cursor_.advance();
    return letter;
  }

  // 700x28C, 650Bx38, 200x50
  constexpr bool read_french(const Inches& first) noexcept {
    constexpr std::string_view a_width = "x and the width in millimetres, as in 650x38B; the diameter depends on it";
    char letter = take_french_letter();
    cursor_.skip_spaces();
    if (!at_by()) return unexpected(a_width);
    if (designation_.vehicle != TyreVehicle::unmarked)
      return fault(first.position, "an overall diameter that no tyre has", "an overall diameter of 8 to 60 inches");
    cursor_.advance();
    cursor_.skip_spaces();
    const std::size_t position = cursor_.position();
    int width = 0;
    if (!read_number_of_size(width, "the width in millimetres")) return false;
    if (cursor_.character() == '.') return unexpected("a width in whole millimetres");
    if (letter == 0) letter = take_french_letter();
    if (!set_cycle_width(CycleNaming::french, position, width)) return false;
    return find_cycle_rim(first.position, CycleNaming::french, first.whole, letter, width);
  }

  /// The rest of a width without decimals: whole, with a fraction, and with a second one behind it.
  constexpr bool read_fractional_width(const Inches& first, Inches& second) noexcept {
    const bool dashed = cursor_.take('-');  // 12 1/2x2-1/4; otherwise a dash has been taken for a construction
    if (dashed) cursor_.skip_spaces();
    int eighths = cursor_.glyph().eighths();
    if (eighths > 0) {
      cursor_.advance();
    } else if (dashed || cursor_.glyph().is_digit()) {
      const std::size_t position = cursor_.position();
      int number = 0;
      if (!read_number(number, a_fraction)) return false;
      cursor_.skip_spaces();
      if (!dashed && at_ply_rating())  // 8x2 4PR
        return finish_cycle(CycleNaming::fractional, first, second) && read_numbered_mark(position, number);
      if (!cursor_.take('/'))
        return fault(
            position, "a number without a sign that tells what it is",
            "-, B, R or ZR before a rim code, as in 25x8-12; / and the rest of a fraction, as in 24x1 3/8; or PR");
      if (!read_below(position, number, eighths)) return false;
    }
    second.thousandths = 125 * eighths;
    return read_second_width(first, second);
  }

  /// The same where a dash stands before the fraction.
  constexpr bool read_dashed_fraction(const Inches& first, Inches second, std::size_t position, int above) noexcept {
    int eighths = 0;
    if (!read_below(position, above, eighths)) return false;
    if (designation_.vehicle != TyreVehicle::unmarked) return fault(position, "a fraction", "a rim code such as 12");
    second.thousandths = 125 * eighths;
    return read_second_width(first, second);
  }

  // 28x1 5/8x1 3/8: the height of the rim, then the width; some write them the other way round
  constexpr bool read_second_width(const Inches& first, const Inches& second) noexcept {
    constexpr int rim_height = 13;  // 1 5/8
    cursor_.skip_spaces();
    if (!at_by() || second.thousandths == 0) return finish_cycle(CycleNaming::fractional, first, second);
    cursor_.advance();
    cursor_.skip_spaces();
    Inches third;
    third.position = cursor_.position();
    if (!read_number_of_size(third.whole, "the width in inches")) return false;
    cursor_.skip_spaces();
    int eighths = cursor_.glyph().eighths();
    if (eighths > 0) {
      cursor_.advance();
    } else {
      const std::size_t position = cursor_.position();
      int above = 0;
      if (cursor_.take('-')) cursor_.skip_spaces();
      if (!read_number(above, a_fraction)) return false;
      cursor_.skip_spaces();
      if (!cursor_.take('/')) return unexpected("/ and the rest of a fraction, as in 28x1 5/8x1 3/8");
      if (!read_below(position, above, eighths)) return false;
    }
    third.thousandths = 125 * eighths;
    if (second.in_eighths() == rim_height) return finish_cycle(CycleNaming::three_part, first, third);
    if (third.in_eighths() == rim_height) return finish_cycle(CycleNaming::three_part, first, second);
    return fault(second.position, "two widths, neither of which tells the rim",
                 "1 5/8 as one of the two, as in 28x1 5/8x1 3/8");
  }

  constexpr bool finish_cycle(CycleNaming naming, const Inches& first, const Inches& width) noexcept {
    const int number = naming == CycleNaming::decimal ? width.in_thousandths() : width.in_eighths();
    if (!width.precise) return fault(width.position, "a width of more than three decimals", "at most three decimals");
    if (width.whole > 99) return fault(width.position, "a width that no cycle tyre has", "0.6 to 5.1 inches");
    if (!set_cycle_width(naming, width.position, number)) return false;
    const bool halves = first.thousandths == 0 || (first.thousandths == 500 && first.precise);
    return find_cycle_rim(first.position, naming, halves ? first.whole * 2 + first.thousandths / 500 : -1, 0, number);
  }

  constexpr bool find_cycle_rim(std::size_t position, CycleNaming naming, int diameter, char letter,
                                int width) noexcept {
    const bool known = diameter >= 0 && diameter < 1000;
    const CycleName name{naming, letter, static_cast<short>(known ? diameter : 0), static_cast<short>(width)};
    const CycleReadings found = cycle_rims_named(name);
    if (found.count == 1 && !found.others) {
      designation_.listed = static_cast<short>(found.row);
      designation_.rim = static_cast<short>(row_of_cycle_bead_seat(found.bead_seats[0]));
      return true;
    }
    constexpr std::string_view iso = "the ISO marking";
    constexpr std::string_view none = "a name that the table of cycle rims does not have";
    if (found.count == 0 && cycle_rims_called(name).count == 0)
      return fault(position, none, "a cycle size such as 37-622, 700x28C, 26x2.00 or 24x1 3/8");
    fault_.name = name;
    fault_.slip = false;
    if (found.count > 1) return fault(position, "a name that several rims go by", iso);
    if (found.count == 1) return fault(position, "a name that more rims go by than the table has", iso);
    if (naming == CycleNaming::french && letter == 0)
      return fault(position, "a rim's name without its letter", "the letter, as in 700x28C, or the ISO marking");
    if (naming == CycleNaming::fractional && width % 8 == 0)
      return fault(position, none, "decimals, as in 26x2.00, or a fraction, as in 24x1 3/8, or the ISO marking");
    return fault(position, none, iso);
  }
};

}  // namespace layshaft::detail
