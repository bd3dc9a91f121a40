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
enum class ChainProperty { pitch, roller_diameter, inner_width, pin_diameter, tensile_strength, mass_per_length };

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
    std::size_t length = 0;
    for (const std::string_view word : {"ISO606", "ISO", "ANSI", "NO.", "#"})
      if (text().substr(length).starts_with(word)) length += word.size();
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

[[nodiscard]] constexpr std::size_t common_prefix(std::string_view a, std::string_view b) noexcept {
  std::size_t length = 0;
  while (length < a.size() && length < b.size() && a[length] == b[length]) ++length;
  return length;
}

/// The error for a text that names no series: it stops making sense where it parts from the known name that it follows
/// furthest; the nearest name is the one with the fewest characters to change, and of these the one followed furthest.
[[nodiscard]] inline Error unknown_chain_series(std::string_view text) {
  const ChainSeriesKey key(text);
  const std::string_view name = key.name();
  std::size_t furthest = 0;
  std::size_t distance = name.empty() || key.too_long ? 0 : name.size() / 2 + 1;  // farther off is not near
  std::size_t prefix = 0;
  std::string_view nearest;
  std::string list;
  for (const ChainSeriesRow& row : chain_series_table) {
    if (!list.empty()) list.append(", ");
    list.append(row.name);
    if (!row.alias.empty()) list.append(" (").append(row.alias).append(")");
    for (const std::string_view known : {row.name, row.alias}) {
      if (known.empty()) continue;
      const ChainSeriesKey other(known);
      const std::size_t shared = common_prefix(name, other.text());
      const std::size_t changes = edit_distance(name, other.text());
      furthest = std::max(furthest, shared);
      if (changes < distance || (changes == distance && !nearest.empty() && shared > prefix)) {
        distance = changes;
        prefix = shared;
        nearest = known;
      }
    }
  }
  const std::size_t at = key.prefix() + furthest;
  const std::size_t position = at < key.size ? key.positions[at] : text.size();
  std::string expected(nearest);
  expected.append(nearest.empty() ? "one of " : " (the nearest), or another of ").append(list);
  return Error::parse(text, position, key.size == 0 ? "no chain series" : "unknown chain series", expected);
}

}  // namespace detail

/// A chain series of the table, single strand.
///
/// LEGAL: `520`, `08B`, `08b`, `08B-1` (one strand), `ISO 08B`, `40`, `ANSI 40`, `#40`, `No. 40` (the ANSI number of
/// 08A), `cycle`, `1/2 x 3/32`, `1/2×3/32`.
/// ILLEGAL: `08B-2` (two strands), `520H`, `520 O-ring` (a make of it, not a series), `8B` (not a name in use).
class ChainSeries {
 public:
  /// The series of that name; or a ParseError with the nearest name and the list of those known.
  [[nodiscard]] static Result<ChainSeries> make(std::string_view name) {
    if (const ChainSeriesRow* row = find(name)) return ChainSeries(row);
    return detail::unknown_chain_series(name);
  }
#if LAYSHAFT_EXCEPTIONS
  /// @throws ParseError with the nearest name and the list of those known.
  explicit constexpr ChainSeries(std::string_view name) : row_(find(name)) {
    if (row_ == nullptr) raise(detail::unknown_chain_series(name));
  }
#endif

  /// As the standard or the trade prints it.
  [[nodiscard]] constexpr std::string_view name() const noexcept { return row_->name; }
  /// Its ANSI number or other usual name; empty where it has none.
  [[nodiscard]] constexpr std::string_view alias() const noexcept { return row_->alias; }
  [[nodiscard]] constexpr Length pitch() const noexcept { return row_->pitch; }
  /// The largest a roller may be.
  [[nodiscard]] constexpr Length roller_diameter() const noexcept { return row_->roller_diameter; }
  /// The least width between the inner plates.
  [[nodiscard]] constexpr Length inner_width() const noexcept { return row_->inner_width; }
  /// The largest a pin may be; absent where no source gives it.
  [[nodiscard]] constexpr std::optional<Length> pin_diameter() const noexcept { return row_->pin_diameter; }
  /// The least strength of a new chain; absent where no source gives it.
  [[nodiscard]] constexpr std::optional<Force> tensile_strength() const noexcept { return row_->tensile_strength; }
  /// Absent where no source gives it.
  [[nodiscard]] constexpr std::optional<LinearDensity> mass_per_length() const noexcept {
    return row_->mass_per_length;
  }

  /// Where a figure comes from; a source without a document where there is no figure.
  [[nodiscard]] constexpr Source source(ChainProperty property) const noexcept {
    switch (property) {
      case ChainProperty::pin_diameter: return row_->sources.pin;
      case ChainProperty::tensile_strength: return row_->sources.strength;
      case ChainProperty::mass_per_length: return row_->sources.mass;
      case ChainProperty::pitch:
      case ChainProperty::roller_diameter:
      case ChainProperty::inner_width: break;
    }
    return row_->sources.dimensions;
  }

  friend constexpr bool operator==(ChainSeries a, ChainSeries b) noexcept { return a.row_ == b.row_; }

 private:
  explicit constexpr ChainSeries(const ChainSeriesRow* row) noexcept : row_(row) {}

  [[nodiscard]] static constexpr const ChainSeriesRow* find(std::string_view text) noexcept {
    const detail::ChainSeriesKey key(text);
    if (key.too_long) return nullptr;
    for (const ChainSeriesRow& row : chain_series_table)
      if (detail::same_series_name(key.name(), row.name) || detail::same_series_name(key.name(), row.alias))
        return &row;
    return nullptr;
  }

  const ChainSeriesRow* row_;
};

/// The names of all series, in the order of the table.
[[nodiscard]] constexpr std::span<const std::string_view> chain_series_names() noexcept {
  return detail::chain_series_names;
}

}  // namespace layshaft
