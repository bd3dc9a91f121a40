// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/glyph.hpp>
#include <layshaft/tyre/cycle_rim.hpp>
#include <layshaft/tyre/kinds.hpp>
#include <layshaft/tyre/rim_code.hpp>

#include <cstddef>
#include <string_view>

/// @file
/// What a designation says once it is read, why a text is none, and what the readers of its parts share.
namespace layshaft::detail {

inline constexpr std::size_t longest_designation = 256;

/// What a designation says, as marked numbers and as indices into the tables; -1 where it says nothing.
struct Designation {
  TyreNotation notation = TyreNotation::metric;
  TyreConstruction construction = TyreConstruction::diagonal;
  TyreTube tube = TyreTube::unmarked;
  TyreVehicle vehicle = TyreVehicle::unmarked;
  CycleNaming naming = CycleNaming::iso;  ///< cycle: how the rim is named, and what the width counts
  bool zr = false;                        ///< radial, written ZR
  bool motorcycle = false;                ///< M/C
  bool reinforced = false;                ///< REINF
  bool winter = false;                    ///< M+S
  bool multi_service = false;             ///< MST
  bool not_for_highway = false;           ///< NHS
  bool beyond_symbol = false;             ///< the service description stands in brackets
  short width = -1;                       ///< metric: mm; flotation: 0.01 in; cycle: as its CycleRimName counts
  short aspect = -1;                      ///< metric and lettered: percent
  short diameter = -1;                    ///< flotation: 0.01 in
  short listed = -1;                      ///< row of code_designated_tyres, or of cycle_rim_names
  short rim = -1;                         ///< row of rim_codes, or of cycle_bead_seats
  short load_index = -1;                  ///< row of load_indices
  short second_load_index = -1;           ///< the same, behind the stroke
  short speed_symbol = -1;                ///< row of speed_symbols
  short ply_rating = -1;
  short week = -1;
  short year = -1;

  friend constexpr bool operator==(const Designation&, const Designation&) = default;
};

/// Why a text is no designation: where, what is wrong, what was expected, and what the tables have next to it, and
/// the name of a cycle rim that does not stand for one (ISO where there is none). An empty problem means that nothing
/// is wrong.
struct DesignationFault {
  std::size_t position = 0;
  std::string_view problem;
  std::string_view expected;
  Neighbours nearest;
  CycleName name;
  bool slip = true;  ///< one wrong character may be the cause
};

/// What the readers of the parts share. Each step reads one part of the grammar, and returns false once it has noted a
/// fault.
class Reader {
 public:
  [[nodiscard]] constexpr const Designation& designation() const noexcept { return designation_; }
  [[nodiscard]] constexpr const DesignationFault& fault() const noexcept { return fault_; }
  /// The byte up to which the text was read: the furthest that a fault can have its cause.
  [[nodiscard]] constexpr std::size_t reach() const noexcept { return cursor_.position(); }

 protected:
  constexpr explicit Reader(std::string_view text) noexcept : cursor_(text) {}

  constexpr bool fault(std::size_t position, std::string_view problem, std::string_view expected,
                       Neighbours nearest = {}) noexcept {
    fault_.position = position;
    fault_.problem = problem;
    fault_.expected = expected;
    fault_.nearest = nearest;
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

  /// Steps over the rest of a word, letter by letter.
  constexpr bool read_rest(std::string_view letters, std::string_view expected) noexcept {
    for (const char letter : letters)
      if (!cursor_.take(letter)) return unexpected(expected);
    return true;
  }

  /// Notes a fault for which no other marking is proposed: what it would change is no matter of spelling.
  constexpr bool no_slip(std::size_t position, std::string_view problem, std::string_view expected) noexcept {
    fault_.slip = false;
    return fault(position, problem, expected);
  }

  constexpr bool twice(std::size_t position) noexcept {
    return no_slip(position, "a mark of a kind that was given before", "each mark once");
  }

  Cursor cursor_;
  Designation designation_;
  DesignationFault fault_;
};

}  // namespace layshaft::detail
