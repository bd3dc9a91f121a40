// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/chain/series_table.hpp>
#include <layshaft/core/glyph.hpp>
#include <layshaft/core/result.hpp>

#include <algorithm>
#include <array>
#include <cstddef>
#include <string>
#include <string_view>

/// @file
/// Reading the name of a chain series, and what is near where there is none of that name.
namespace layshaft::detail {

/// Whose name a name is, to tell it when the text says "ISO" or "ANSI" before it. Bits, since a text may allow several.
namespace chain_names {
inline constexpr unsigned trade = 1, iso_a = 2, iso_b = 4, iso_other = 8, ansi = 16, national = 32;
inline constexpr unsigned iso = iso_a | iso_b | iso_other, any = 63;

/// What may stand before the name, longer words first, and which names it leaves possible.
struct Prefix {
  std::string_view word;
  unsigned allows;
};
inline constexpr Prefix prefixes[] = {
    {"ISO606", iso},
    {"ISO", iso},
    {"DIN8187", iso_b | iso_other},
    {"DIN8188", iso_a},
    {"DIN", iso},
    {"BS228", iso_b | iso_other},
    {"BS", iso_b},
    {"ANSI", ansi},
    {"ASA", ansi},
    {"B29.1", ansi},
    {"GOST13568", iso | national},
    {"GOST", iso | national},
    {"NO.", any},
    {"NO", any},
    {"NR.", any},
    {"NR", any},
    {"#", any},
};

[[nodiscard]] constexpr bool is_digit(char c) noexcept { return c >= '0' && c <= '9'; }

/// Whose name this is; an ANSI number stands in the table as another name of an ISO one.
[[nodiscard]] constexpr unsigned kind_of(std::string_view printed, bool other_name) noexcept {
  if (printed.starts_with("PR-")) return national;
  if (printed.size() == 3 && is_digit(printed[0]) && is_digit(printed[1])) {
    if (printed[2] == 'A') return iso_a;
    if (printed[2] == 'B') return iso_b;
    if (printed[2] == 'C' || printed.starts_with("08")) return iso_other;
  }
  return other_name && std::all_of(printed.begin(), printed.end(), is_digit) ? ansi : trade;
}
}  // namespace chain_names

/// A name made plain: capitals, look-alikes as what they look like, no spaces, and no dashes but between two digits.
/// Each character knows where it was. A text that is too long keeps its start.
struct PlainChainName {
  static constexpr std::size_t longest = 32;
  std::array<char, longest> characters{};
  std::array<std::size_t, longest> positions{};
  std::size_t size = 0;
  bool too_long = false;
  bool last_dashed = false;  ///< whether a dash stands before the last character

  explicit constexpr PlainChainName(std::string_view text) noexcept {
    bool dashed = false;
    std::size_t dash = 0;
    for (std::size_t at = 0; at < text.size();) {
      Glyph glyph = glyph_at(text, at);
      for (const auto& [letter, read] : other_letters)
        if (text.substr(at).starts_with(letter)) glyph = {read, letter.size()};
      const char c = glyph.character;
      const bool space = c == ' ' || (c == Glyph::control && text[at] == '\t');
      if (c == '-') {
        dashed = size > 0;
        dash = at;
      } else if (!space) {
        if (dashed && chain_names::is_digit(c) && chain_names::is_digit(characters[size - 1])) add('-', dash);
        last_dashed = dashed;
        dashed = false;
        add(c, at);
      }
      if (too_long) return;
      at += glyph.bytes;
    }
  }

  [[nodiscard]] constexpr std::string_view text() const noexcept { return {characters.data(), size}; }

 private:
  struct OtherLetter {
    std::string_view letter;
    char read;
  };
  /// The number sign, and the Cyrillic letters of a national chain's PR.
  static constexpr OtherLetter other_letters[] = {
      {"\xE2\x84\x96", '#'}, {"\xD0\x9F", 'P'}, {"\xD0\xBF", 'P'}, {"\xD0\xA0", 'R'}, {"\xD1\x80", 'R'}};
  constexpr void add(char c, std::size_t position) noexcept {
    too_long = size == longest;
    if (too_long) return;
    characters[size] = c;
    positions[size++] = position;
  }
};

/// A name that the table knows.
struct KnownChainName {
  std::string_view printed;
  std::array<char, PlainChainName::longest> characters{};
  std::size_t size = 0;
  std::size_t row = 0;
  unsigned kind = 0;

  [[nodiscard]] constexpr std::string_view text() const noexcept { return {characters.data(), size}; }
};

[[nodiscard]] constexpr std::size_t count_chain_names() noexcept {
  std::size_t names = chain_series_table.size();
  for (const ChainSeriesRow& row : chain_series_table)
    names += static_cast<std::size_t>(!row.aliases[0].empty()) + static_cast<std::size_t>(!row.aliases[1].empty());
  return names;
}
[[nodiscard]] constexpr auto make_known_chain_names() noexcept {
  std::array<KnownChainName, count_chain_names()> known{};
  std::size_t at = 0;
  for (std::size_t i = 0; i < chain_series_table.size(); ++i) {
    const ChainSeriesRow& row = chain_series_table[i];
    for (const std::string_view* printed : {&row.name, &row.aliases[0], &row.aliases[1]}) {
      if (printed->empty()) continue;
      const PlainChainName plain(*printed);
      known[at++] = {*printed, plain.characters, plain.size, i, chain_names::kind_of(*printed, printed != &row.name)};
    }
  }
  return known;
}
/// All names of the table, in its order, the other names of a series behind its own.
inline constexpr auto known_chain_names = make_known_chain_names();

/// A text that may name a series: what stands before the name is taken off, and says which names are possible.
struct ChainNameAsked {
  PlainChainName plain;
  std::size_t prefix = 0;
  unsigned allowed = chain_names::any;

  explicit constexpr ChainNameAsked(std::string_view text) noexcept : plain(text) {
    while (take_prefix()) {
    }
  }
  [[nodiscard]] constexpr std::string_view name() const noexcept { return plain.text().substr(prefix); }

  static constexpr std::size_t nowhere = chain_series_table.size();
  /// The place of the series in the table, or `nowhere`. (A place and no pointer: g++ 12 takes a comparison of
  /// addresses for no constant when it is told to look for undefined behaviour.)
  [[nodiscard]] constexpr std::size_t find() const noexcept { return find_strand(allowed); }
  /// The same, whatever stands before the name.
  [[nodiscard]] constexpr std::size_t find_any() const noexcept { return find_strand(chain_names::any); }

 private:
  [[nodiscard]] constexpr std::size_t find_strand(unsigned kinds) const noexcept {
    if (plain.too_long) return nowhere;
    const std::string_view whole = name();
    if (const std::size_t row = find(whole, kinds); row != nowhere) return row;
    // One strand, which every series of the table has: 40-1, 08B-1. A national chain's -1 is part of its name.
    using namespace chain_names;
    if (whole.ends_with("-1")) return find(whole.substr(0, whole.size() - 2), kinds & ~national);
    if (!whole.ends_with("1")) return nowhere;
    const unsigned dashed = plain.last_dashed ? kinds & ~national : kinds & iso & ends_in_letter(whole);
    return find(whole.substr(0, whole.size() - 1), dashed);
  }

  constexpr bool take_prefix() noexcept {
    for (const auto& [word, allows] : chain_names::prefixes) {
      if (!name().starts_with(word)) continue;
      prefix += word.size();
      allowed &= allows;
      while (!name().empty() && std::string_view("-:/").find(name().front()) != std::string_view::npos) ++prefix;
      return true;
    }
    return false;
  }
  [[nodiscard]] static constexpr unsigned ends_in_letter(std::string_view with_strand) noexcept {
    return with_strand.size() > 1 && !chain_names::is_digit(with_strand[with_strand.size() - 2]) ? chain_names::any : 0;
  }
  [[nodiscard]] static constexpr std::size_t find(std::string_view name, unsigned allowed) noexcept {
    for (const KnownChainName& known : known_chain_names)
      if ((known.kind & allowed) != 0 && known.text() == name) return known.row;
    return nowhere;
  }
};

/// How many characters must change to make one name of the other.
[[nodiscard]] constexpr std::size_t edit_distance(std::string_view a, std::string_view b) noexcept {
  std::array<std::size_t, PlainChainName::longest + 1> row{};
  for (std::size_t j = 0; j <= b.size(); ++j) row[j] = j;
  for (std::size_t i = 0; i < a.size(); ++i) {
    std::size_t diagonal = row[0];
    row[0] = i + 1;
    for (std::size_t j = 0; j < b.size(); ++j) {
      const std::size_t changed = diagonal + (a[i] == b[j] ? 0u : 1u);
      diagonal = row[j + 1];
      row[j + 1] = std::min({changed, row[j] + 1, diagonal + 1});
    }
  }
  return row[b.size()];
}

/// How many characters two names have in common from the start.
[[nodiscard]] constexpr std::size_t common_start(std::string_view a, std::string_view b) noexcept {
  std::size_t length = 0;
  while (length < a.size() && length < b.size() && a[length] == b[length]) ++length;
  return length;
}

/// The known names that fewest characters make of what was asked, of those the ones that follow it furthest; none where
/// half of every name would have to change.
[[nodiscard]] inline std::string nearest_chain_names(const ChainNameAsked& asked) {
  std::string_view name = asked.name();  // a number of strands is no part of it
  if (name.size() > 2 && name[name.size() - 2] == '-' && !name.starts_with("PR")) name.remove_suffix(2);
  std::array<std::string_view, known_chain_names.size()> nearest;
  std::size_t count = 0, fewest = PlainChainName::longest, longest_start = 0;
  for (const KnownChainName& known : known_chain_names) {
    const std::size_t changes = edit_distance(name, known.text());
    if ((known.kind & asked.allowed) == 0 || 2 * changes >= std::max(name.size(), known.size)) continue;
    const std::size_t start = common_start(name, known.text());
    if (changes > fewest || (changes == fewest && start < longest_start)) continue;
    if (changes < fewest || start > longest_start) count = 0;
    fewest = changes;
    longest_start = start;
    nearest[count++] = known.printed;
  }
  std::string list;
  for (std::size_t i = 0; i < count; ++i) list.append(i == 0 ? "" : i + 1 < count ? ", " : " or ").append(nearest[i]);
  return list;
}

[[nodiscard]] inline Error unknown_chain_series(std::string_view text) {
  const ChainNameAsked asked(text);
  const bool nameless = asked.name().empty();
  std::string expected;
  if (!nameless && !asked.plain.too_long) expected = nearest_chain_names(asked);
  if (asked.find_any() != ChainNameAsked::nowhere) {
    std::string other(asked.name());
    other.append(" without what stands before it, for it is no name of that standard");
    expected = expected.empty() ? other : other.append("; or ").append(expected).append(" (the nearest)");
  } else if (!expected.empty()) {
    expected.append(" (the nearest), or another that chain_series_names() lists");
  } else {
    expected = "one of ";
    for (const ChainSeriesRow& row : chain_series_table) {
      if (&row != &chain_series_table.front()) expected.append(", ");
      expected.append(row.name);
      if (!row.aliases[0].empty()) expected.append(" (").append(row.aliases[0]).append(")");
    }
  }
  // The text stops making sense where it parts from the known name that it follows furthest.
  std::size_t common = 0;
  for (const KnownChainName& known : known_chain_names)
    if ((known.kind & asked.allowed) != 0) common = std::max(common, common_start(asked.name(), known.text()));
  const std::size_t at = asked.prefix + common;
  const std::size_t position = at < asked.plain.size ? asked.plain.positions[at] : text.size();
  return Error::parse(text, position, nameless ? "no chain series" : "unknown chain series", expected);
}

}  // namespace layshaft::detail
