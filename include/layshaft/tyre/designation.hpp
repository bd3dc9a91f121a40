// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/tyre/designation_reader.hpp>
#include <layshaft/tyre/size_reader.hpp>

#include <cstddef>
#include <string_view>

/// @file
/// The grammar of a tyre's size designation, and its reader: constexpr, in one pass, without recursion or allocation.
///
///     designation   = size { mark }
///     size          = metric | code | lettered | flotation | cycle
///     metric        = [ "P" | "LT" | "AT" ] width "/" aspect construction rim [ "C" | "LT" ]
///                     width: 50 to 400 mm in steps of 5; aspect: 25 to 110 percent
///     code          = section construction rim [ "C" | "LT" ]
///                     section: inches as written in the table, 4.10, 3, 2 1/2, 5.4
///     lettered      = "M" letter aspect construction rim
///                     as written in the table, MT90
///     flotation     = [ "LT" | "AT" ] inches by inches construction rim [ "LT" ]
///                     overall diameter: 8 to 60; section width: 2 to 30; two decimals at most; the rim at least 2 less
///     cycle         = mm "-" bead-seat               by ISO: a width of 15 to 130 mm, a bead seat of the table
///                   | mm by mm letter                French: A to D; the letter may stand before the sign as well
///                   | mm by mm                       200x50
///                   | inches by decimal              three decimals at most
///                   | inches by fractional           1 3/8, 1-3/8, 2: without decimals, another rim than with them
///                   | inches by fraction by fraction           one of the two is 1 5/8, the height of the rim
///     construction  = "-" | "B" | "R" | "ZR"
///     rim           = a rim code of the table        18, 14.5
///     by            = "x" | "*"
///     mark          = "M/C"                          for motorcycles; MC, too
///                   | service | "(" service ")"      61R, 20A8, 121/118Q; in brackets with V, W or Y: faster still
///                   | number "PR"                    ply rating, 2 to 40
///                   | "TL" | "TT"                    without or with an inner tube
///                   | "REINF"                        reinforced
///                   | "M+S"                          mud and snow; M&S, M.S, M-S, M/S and MS, too
///                   | "MST"                          multi-service
///                   | "NHS"                          not for highway service
///                   | "DOT" week year                the week of manufacture, two digits each, since 2000
///
/// No more than one of P, LT, AT and C may stand in a size. Each mark may stand once; they are printed in the order
/// above, and read in any. A cycle size has no service description. Where PR stands behind a number, it is a ply
/// rating, not the speed symbol P.
///
/// The name of a cycle rim must stand for one bead seat. If it stands for several, or the table itself says that it
/// stands for more, it is refused, and the error lists the ISO markings that it may stand for.
///
/// LEGAL, and what each is printed as:
///
///     110/90-18                    110/90-18                  metric, diagonal
///     110/90B18                    110/90B18                  bias-belted
///     150/70R17                    150/70R17                  radial
///     150/70ZR17 69W               150/70ZR17 69W             ZR is part of the size, W of the service description
///     190/50ZR17 M/C (73W)         190/50ZR17 M/C (73W)       faster than W alone
///     275/40ZR20 ( 106 y )         275/40ZR20 (106Y)
///     110/90-18 M/C 61R TL         110/90-18 M/C 61R TL       every mark in its place
///     110/90-18 TL 61R M/C         110/90-18 M/C 61R TL       marks come in any order
///     130/80-17 65S TT REINF       130/80-17 65S TT REINF
///     120/80-14.5                  120/80-14.5                a half rim code
///     P205/55R16 91V               P205/55R16 91V             passenger car
///     LT245/75R16 120/116Q         LT245/75R16 120/116Q       light truck; the second load index is for twin wheels
///     lt 245/75 R 16               LT245/75R16
///     235/85R16LT 120/116Q         LT235/85R16 120/116Q       LT behind a metric size
///     205/65R16C 107/105T          205/65R16C 107/105T        commercial
///     AT205/80R12                  AT205/80R12                all-terrain vehicle
///     4.10-18 59P                  4.10-18 59P                section in inches
///     4,10-18                      4.10-18                    a decimal comma
///     4.60-18                      4.60-18                    low section
///     5.4-10                       5.4-10                     low pressure: one decimal, another tyre than 5.40
///     3-10                         3-10                       no decimals: another tyre than 3.00-10
///     2 1/2-8                      2 1/2-8                    a fraction
///     2 1/2-9                      2 1/2-9                    the same on another rim
///     2½-8                         2 1/2-8                    its sign
///     4.10-21                      4.10-21                    a rim the table does not list with this section
///     4.00-10C 6PR                 4.00-10C 6PR
///     MT90B16 M/C 74H              MT90B16 M/C 74H            lettered
///     MU85B16                      MU85B16
///     MH90-21                      MH90-21
///     MU90-15M/C                   MU90-15 M/C                no space is needed where none is missed
///     mt90-16                      MT90-16                    either case
///     3.00-10 20A8                 3.00-10 20A8               a speed symbol with a digit
///     31x10.50R15LT                31x10.50R15LT              flotation
///     LT31X10.50-15 109Q           31x10.50-15LT 109Q         LT is printed behind
///     25x8-12                      25x8-12
///     AT25x8.00-12 NHS             AT25x8-12 NHS              the same width
///     18.5×8.5-8 4PR               18.5x8.50-8 4PR
///     35*12.50 R 20 LT 121Q        35x12.50R20LT 121Q         a star for the sign
///     37-622                       37-622                     cycle, by ISO
///     50 – 559 TL                  50-559 TL
///     700x28C                      700x28C                    French
///     700C x 28                    700x28C                    the letter behind its number
///     650b×38 DOT 2319             650x38B DOT 2319
///     200 x 50                     200x50                     no letter is needed where none is missed
///     26x2.00                      26x2.00                    decimal inches
///     26 X 2,1                     26x2.10                    the same width as 2.10
///     29x2.125                     29x2.125
///     27.5x2.35                    27.5x2.35
///     12 1/2 x 1.75                12 1/2x1.75
///     26 x 1 1/4                   26x1 1/4                   fractional inches
///     24x1-3/8                     24x1 3/8                   a dash before the fraction
///     27 × 1¼                      27x1 1/4                   the sign of the fraction
///     26x1                         26x1                       without a fraction: another rim than 26x1.00
///     8 x 2 4PR                    8x2 4PR
///     8 1/2 x 2                    8 1/2x2
///     28 x 1 5/8 x 1 3/8           28x1 5/8x1 3/8             height and width
///     28 x 1 3/8 x 1 5/8           28x1 5/8x1 3/8             width and height
///     4.00-8 71J 6 PR              4.00-8 71J 6PR             ply rating
///     3.00-18 6P                   3.00-18 6P                 a load index of 6, a speed symbol of P
///     120/90-17 M+S 64S            120/90-17 64S M+S          mud and snow
///     120/90-17 m&s                120/90-17 M+S
///     120/90-17 64S MST            120/90-17 64S MST          multi-service
///     80/100-21 NHS                80/100-21 NHS              not for highway service
///     110/90-18 DOT 2319           110/90-18 DOT 2319         made in week 23 of 2019
///     110/90-18 nhs dot5301 mst m.s reinf tt 6pr 61r m/c       110/90-18 M/C 61R 6PR TT REINF M+S MST NHS DOT 5301
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
///     110x90-18                    0     another notation's sign: 110 is no cycle rim
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
///     120/90-81                    7     no such rim code: two digits swapped
///     12/90-18                     0     no tyre is that narrow: a digit left out
///     P4.10-18                     5     P goes with metric sizes
///     P25x8-12                     3     and with no others
///     PLT245/75R16                 1     two letters for what it is made for
///     LT245/75R16LT                11    the same twice
///     P205/55R16C                  10    two of them
///     31x10.50R15C                 11    C goes with metric and code sizes
///     4.20-18                      0     no such section
///     4.1-18                       0     sections are written as in the table: 4.10
///     4 .10-18                     2     a space in a number
///     4.1O-18                      3     the letter O for a nought
///     3.OO-18                      2     the letters O for noughts
///     2.75-10                      0     the table has this section on larger rims only
///     3.00-13                      0     between the rims of the two tables that have this section
///     2 1/3-8                      2     no such fraction
///     2 2/4-8                      2     a fraction that can be reduced
///     dot0100 110/90-18            0     the size comes first
///     2½                           3     half a designation
///     MT80-16                      0     no such section
///     MT90-16C                     7     lettered sizes are for motorcycles
///     XT90-16                      0     lettered sections start with M
///     31x10.50R                    9     half a designation: no rim code
///     31x10.505R15                 3     too many decimals
///     61x10.50R15                  0     no tyre is that high
///     31x1R15                      3     nor that narrow
///     31x10.50R30                  9     the rim is as great as the tyre
///     25x8 12                      5     a space for the construction
///     AT25x8                       6     half a designation
///     37-623                       3     no such bead seat
///     37-62                        3     neither a rim code nor a bead seat
///     14-622                       0     no cycle tyre is that narrow
///     650B                         4     half a designation: without a width there is no diameter
///     700C                         4     the same
///     700x28                       0     which of 700A, B, C and D?
///     700x28E                      0     none of them
///     700x28.5C                    6     millimetres have no decimals
///     700x8C                       4     no cycle tyre is that narrow
///     750x28C                      0     no such rim
///     26x2                         0     no such rim: 26x2.00 has its decimals, 26x1 3/4 a fraction
///     26x1 3/8                     0     two rims go by this name
///     26x1.25                      0     two rims go by this name, too
///     27x1.25                      0     as a decimal this name is not sure
///     20x1 1/4                     0     the table says that more rims go by this name
///     24x1.00                      0     narrower than the table's, and easily another rim: 24x1
///     26x                          3     half a designation
///     26x2.                        5     half a number
///     26x2.1255                    3     too many decimals
///     26x7.00                      3     no cycle tyre is that wide
///     26x1 3                       5     half a fraction
///     26x1 3/7                     5     no such fraction
///     28x1 1/2x1 3/8               3     neither of the two is the height of a rim
///     28x1 5/8x1                   10    half a designation: no fraction
///     28x1x1 5/8                   0     the same: there is no 28x1
///     26x2.00 61R                  8     cycle tyres have no load index
///     110/90-18 61                 12    a load index without a speed symbol
///     110/90-18 151R               10    no such load index
///     110/90-18 61I                12    no such speed symbol
///     110/90-18 61A9               13    nor such a one
///     110/90-18 61R 61R            14    a mark that stands twice
///     110/90-18 61R (61W)          14    the same in brackets
///     110/90-18 (61R)              10    brackets say faster still, which R does not
///     110/90ZR18 (73W              15    a bracket that does not close
///     110/90ZR18 ()                12    nothing in brackets
///     LT245/75R16 120/116          19    a load index without a speed symbol
///     LT245/75R16 120/Q            16    half a load index
///     LT245/75R16 120/151Q         16    no such load index
///     110/90-18 1PR                10    no such ply rating
///     110/90-18 6PR 4PR            14    a mark that stands twice
///     110/90-18 TL TT              13    with a tube or without
///     110/90-18 M+S MS             14    a mark that stands twice
///     110/90-18 TX                 11    no such mark
///     110/90-18 M                  11    half a mark
///     110/90-18 M+                 12    half a mark
///     110/90-18 M+C                12    another mark's sign
///     110/90-18 REIN               14    half a mark
///     110/90-18 NH                 12    half a mark
///     110/90-18 DOT                13    half a mark
///     110/90-18 DOT 231            14    a week of before 2000
///     110/90-18 DOT 23190          14    too many digits
///     110/90-18 DOT 5419           14    no year has 54 weeks
///     110/90-18 DOT 0019           14    nor a week 0
///     110/90-18 what               10    trailing rubbish
///     110/90-18\n                  9     a control character
///     110/90-18 \x00               10    a control character
///     110/90-18 М/С                10    Cyrillic letters
///     more than 256 bytes          256   no marking is that long
namespace layshaft::detail {

/// Reads one designation.
class DesignationReader : public SizeReader {
 public:
  constexpr explicit DesignationReader(std::string_view text) noexcept : SizeReader(text), length_(text.size()) {}

  constexpr bool read() noexcept {
    if (length_ > longest_designation) return fault(longest_designation, "the text is too long", "at most 256 bytes");
    cursor_.skip_spaces();
    if (cursor_.at_end()) return fault(cursor_.position(), "the text is empty", a_size);
    return read_size() && read_marks();
  }

 private:
  std::size_t length_;
};

}  // namespace layshaft::detail
