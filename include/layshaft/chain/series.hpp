// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/chain/series_table.hpp>
#include <layshaft/core/result.hpp>

#include <algorithm>
#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>

/// @file
/// A chain series by its name: 520, 08B, 06C …, single strand.
namespace layshaft {

/// The figures of a series, to ask for the source of one.
enum class ChainProperty {
  pitch,
  roller_diameter,
  inner_width,
  pin_diameter,
  plate_height,
  tensile_strength,
  mass_per_length
};

namespace detail {

inline constexpr auto chain_series_names = [] {
  std::array<std::string_view, chain_series_table.size()> names{};
  for (std::size_t i = 0; i < names.size(); ++i) names[i] = chain_series_table[i].name;
  return names;
}();

/// A name with its look-alikes made one: capitals, no white space, × as x. Each character knows where it was.
struct ChainSeriesKey {
  static constexpr std::size_t longest = 24;
  std::array<char, longest> characters{};
  std::array<std::size_t, longest> positions{};
  std::size_t size = 0;
  bool too_long = false;

  explicit constexpr ChainSeriesKey(std::string_view text) noexcept {
    for (std::size_t i = 0; i < text.size(); ++i) {
      char c = text[i];
      const std::string_view rest = text.substr(i);
      if (c == ' ' || c == '\t') continue;
      if (rest.starts_with("\xC2\xA0")) {  // no-break space
        ++i;
        continue;
      }
      const std::size_t position = i;
      if (rest.starts_with("\xC3\x97")) {  // multiplication sign
        c = 'X';
        ++i;
      } else if (rest.starts_with("\xE2\x80\x90") || rest.starts_with("\xE2\x80\x91") ||
                 rest.starts_with("\xE2\x80\x92") || rest.starts_with("\xE2\x80\x93")) {  // hyphens and dashes
        c = '-';
        i += 2;
      } else if (c >= 'a' && c <= 'z') {
        c = static_cast<char>(c - 'a' + 'A');
      }
      if (size == longest) {
        too_long = true;
        return;
      }
      characters[size] = c;
      positions[size++] = position;
    }
  }

  [[nodiscard]] constexpr std::string_view text() const noexcept { return {characters.data(), size}; }

  /// How many characters lead up to the name itself: "ISO", "ANSI", "#" and the like.
  [[nodiscard]] constexpr std::size_t prefix() const noexcept {
    constexpr std::string_view words[] = {"ISO606", "ISO", "DIN", "ANSI", "ASA", "NO.", "#", "/"};
    std::size_t length = 0;
    for (bool found = true; found;) {
      found = false;
      for (const std::string_view word : words) {
        if (!text().substr(length).starts_with(word)) continue;
        length += word.size();
        found = true;
      }
    }
    return length;
  }
  /// The name itself: without what leads up to it, and without the "-1" that says single strand.
  [[nodiscard]] constexpr std::string_view name() const noexcept {
    std::string_view name = text().substr(prefix());
    if (name.size() > 2 && name.ends_with("-1")) name.remove_suffix(2);
    return name;
  }
};

[[nodiscard]] constexpr bool same_series_name(std::string_view key, std::string_view printed) noexcept {
  const ChainSeriesKey other(printed);
  return !other.text().empty() && key == other.text();
}

/// How many characters must change to make one name of the other.
[[nodiscard]] constexpr std::size_t edit_distance(std::string_view a, std::string_view b) noexcept {
  std::array<std::size_t, ChainSeriesKey::longest + 1> row{};
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

[[nodiscard]] inline Error unknown_chain_series(std::string_view text) {
  const ChainSeriesKey key(text);
  const std::string_view name = key.name();
  std::string expected;
  if (!name.empty() && !key.too_long) {
    std::string_view nearest;
    std::size_t fewest = ChainSeriesKey::longest;
    std::size_t longest_start = 0;
    for (const ChainSeriesRow& row : chain_series_table) {
      for (const std::string_view printed : {row.name, row.alias}) {
        const ChainSeriesKey known(printed);
        const std::size_t changes = edit_distance(name, known.text());
        if (printed.empty() || 2 * changes >= std::max(name.size(), known.size))
          continue;  // half wrong is near nothing
        const std::size_t start = common_start(name, known.text());
        if (changes > fewest || (changes == fewest && start <= longest_start)) continue;
        nearest = printed;
        fewest = changes;
        longest_start = start;
      }
    }
    if (!nearest.empty()) expected.append(nearest).append(" (the nearest), or another ");
  }
  if (expected.empty()) expected.append("one ");
  expected.append("of ");
  for (const ChainSeriesRow& row : chain_series_table) {
    if (&row != &chain_series_table.front()) expected.append(", ");
    expected.append(row.name);
    if (!row.alias.empty()) expected.append(" (").append(row.alias).append(")");
  }
  // The text stops making sense where it parts from the known name that it follows furthest.
  std::size_t common = 0;
  for (const ChainSeriesRow& row : chain_series_table) {
    for (const std::string_view known : {row.name, row.alias}) {
      common = std::max(common, common_start(name, ChainSeriesKey(known).text()));
    }
  }
  const std::size_t at = key.prefix() + common;
  const std::size_t position = at < key.size ? key.positions[at] : text.size();
  return Error::parse(text, position, key.size == 0 ? "no chain series" : "unknown chain series", expected);
}

}  // namespace detail

/// A chain series of the table, single strand.
///
/// LEGAL: `520`, `08B`, `08b`, `08B-1` (one strand), `ISO 08B`, `40`, `ANSI 40`, `#40`, `DIN/ISO 08B`, `No. 40` (the
/// ANSI number of 08A), `cycle`, `1/2 x 3/32`, `1/2×3/32`. ILLEGAL: `08B-2` (two strands), `520H`, `520 O-ring` (a make
/// of it, not a series), `8B` (not a name in use).
class ChainSeries {
 public:
  /// The series of that name; or a ParseError with the nearest name and the list of those known.
  [[nodiscard]] static Result<ChainSeries> make(std::string_view name) {
    const std::size_t index = find(name);
    if (index == nowhere) return detail::unknown_chain_series(name);
    return ChainSeries(index, Unchecked{});
  }
#if LAYSHAFT_EXCEPTIONS
  /// @throws ParseError with the nearest name and the list of those known.
  explicit constexpr ChainSeries(std::string_view name) : index_(find(name)) {
    if (index_ == nowhere) raise(detail::unknown_chain_series(name));
  }
#endif

  /// As the standard or the trade prints it.
  [[nodiscard]] constexpr std::string_view name() const noexcept { return row().name; }
  /// Its ANSI number or other usual name; empty where it has none.
  [[nodiscard]] constexpr std::string_view alias() const noexcept { return row().alias; }
  [[nodiscard]] constexpr Length pitch() const noexcept { return row().pitch; }
  /// The largest a roller may be.
  [[nodiscard]] constexpr Length roller_diameter() const noexcept { return row().roller_diameter; }
  /// The least width between the inner plates.
  [[nodiscard]] constexpr Length inner_width() const noexcept { return row().inner_width; }
  /// The largest a pin may be; absent where no source gives it.
  [[nodiscard]] constexpr std::optional<Length> pin_diameter() const noexcept { return row().pin_diameter; }
  /// The largest the inner plates may be high; absent where no source gives it.
  [[nodiscard]] constexpr std::optional<Length> plate_height() const noexcept { return row().plate_height; }
  /// The least strength of a new chain; absent where no source gives it.
  [[nodiscard]] constexpr std::optional<Force> tensile_strength() const noexcept { return row().tensile_strength; }
  /// Absent where no source gives it.
  [[nodiscard]] constexpr std::optional<LinearDensity> mass_per_length() const noexcept {
    return row().mass_per_length;
  }

  /// Where a figure comes from; a source without a document where there is no figure.
  [[nodiscard]] constexpr Source source(ChainProperty property) const noexcept {
    switch (property) {
      case ChainProperty::pin_diameter: return row().sources.pin;
      case ChainProperty::plate_height: return row().sources.plate;
      case ChainProperty::tensile_strength: return row().sources.strength;
      case ChainProperty::mass_per_length: return row().sources.mass;
      case ChainProperty::pitch:
      case ChainProperty::roller_diameter:
      case ChainProperty::inner_width: break;
    }
    return row().sources.dimensions;
  }

  friend constexpr bool operator==(ChainSeries a, ChainSeries b) noexcept { return a.index_ == b.index_; }

 private:
  struct Unchecked {};
  explicit constexpr ChainSeries(std::size_t index, Unchecked) noexcept : index_(index) {}

  static constexpr std::size_t nowhere = chain_series_table.size();
  /// The place of a name in the table, or `nowhere`. (A place and no pointer: g++ 12 takes a comparison of addresses
  /// for no constant when it is told to look for undefined behaviour.)
  [[nodiscard]] static constexpr std::size_t find(std::string_view text) noexcept {
    const detail::ChainSeriesKey key(text);
    if (key.too_long) return nowhere;
    for (std::size_t i = 0; i < chain_series_table.size(); ++i)
      if (detail::same_series_name(key.name(), chain_series_table[i].name) ||
          detail::same_series_name(key.name(), chain_series_table[i].alias))
        return i;
    return nowhere;
  }
  [[nodiscard]] constexpr const ChainSeriesRow& row() const noexcept { return chain_series_table[index_]; }

  std::size_t index_;
};

/// The names of all series, in the order of the table.
[[nodiscard]] constexpr std::span<const std::string_view> chain_series_names() noexcept {
  return detail::chain_series_names;
}

}  // namespace layshaft
