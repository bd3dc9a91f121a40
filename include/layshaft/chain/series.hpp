// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/chain/series_name.hpp>
#include <layshaft/chain/series_table.hpp>
#include <layshaft/core/result.hpp>

#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <string_view>
#include <utility>  // index_sequence

/// @file
/// A chain series by its name: 520, 08B, 06C …, single strand.
namespace layshaft {

/// The figures of a series, to ask for the source of one.
enum class ChainProperty {
  pitch,
  roller_diameter,
  inner_width,
  pin_diameter,
  path_depth,
  inner_plate_height,
  outer_plate_height,
  inner_link_width,
  width_over_pin,
  tensile_strength,
  mass_per_length
};

/// All of them.
inline constexpr std::array chain_properties = {ChainProperty::pitch,
                                                ChainProperty::roller_diameter,
                                                ChainProperty::inner_width,
                                                ChainProperty::pin_diameter,
                                                ChainProperty::path_depth,
                                                ChainProperty::inner_plate_height,
                                                ChainProperty::outer_plate_height,
                                                ChainProperty::inner_link_width,
                                                ChainProperty::width_over_pin,
                                                ChainProperty::tensile_strength,
                                                ChainProperty::mass_per_length};

[[nodiscard]] constexpr std::string_view to_string(ChainProperty property) noexcept {
  switch (property) {
    case ChainProperty::pitch: return "pitch";
    case ChainProperty::roller_diameter: return "roller_diameter";
    case ChainProperty::inner_width: return "inner_width";
    case ChainProperty::pin_diameter: return "pin_diameter";
    case ChainProperty::path_depth: return "path_depth";
    case ChainProperty::inner_plate_height: return "inner_plate_height";
    case ChainProperty::outer_plate_height: return "outer_plate_height";
    case ChainProperty::inner_link_width: return "inner_link_width";
    case ChainProperty::width_over_pin: return "width_over_pin";
    case ChainProperty::tensile_strength: return "tensile_strength";
    case ChainProperty::mass_per_length: return "mass_per_length";
  }
  return {};
}

namespace detail {
inline constexpr auto chain_series_names = [] {
  std::array<std::string_view, chain_series_table.size()> names{};
  for (std::size_t i = 0; i < names.size(); ++i) names[i] = chain_series_table[i].name;
  return names;
}();
}  // namespace detail

/// A chain series of the table, single strand.
///
/// LEGAL: `520`, `#520`, `08B`, `08b`, `08-B`, `08B-1` and `08B1` (one strand), `ISO 08B`, `DIN/ISO 08B`,
/// `ISO 606-08B`, `DIN 8187-08B-1`, `BS 08B`, `40`, `40-1`, `ANSI 40`, `#40`, `No. 40` (the ANSI number of 08A), `083`
/// and `415B`, `415H`, `10BF19`, `08B narrow`, `08B-narrow` and `08B motorcycle`, `cycle`, `1/2 x 3/32`, `1/2×3/32`,
/// `PR-12.7-18.2`, `ПР-12,7-18,2`.
/// ILLEGAL: `08B-2` (two strands), `520H`, `520 O-ring` (a make of it, not a series), `8B` (not a name in use),
/// `ISO 40`, `DIN 8188 08B`, `ANSI 520` (no name of that standard), `1/2 x 5/16` (names several).
class ChainSeries {
 public:
  /// The series of that name; or a ParseError with the names nearest to it, or with all where none is near.
  [[nodiscard]] static Result<ChainSeries> make(std::string_view name) {
    const std::size_t index = detail::ChainNameAsked(name).find();
    if (index == nowhere) return detail::unknown_chain_series(name);
    return ChainSeries(index, Unchecked{});
  }
#if LAYSHAFT_EXCEPTIONS
  /// @throws ParseError with the names nearest to it, or with all where none is near.
  explicit constexpr ChainSeries(std::string_view name) : index_(detail::ChainNameAsked(name).find()) {
    if (index_ == nowhere) raise(detail::unknown_chain_series(name));
  }
#endif

  /// As the standard or the trade prints it.
  [[nodiscard]] constexpr std::string_view name() const noexcept { return row().name; }
  /// Its other names, an ANSI number first; it may have none.
  [[nodiscard]] constexpr std::span<const std::string_view> aliases() const noexcept {
    const auto& all = row().aliases;
    return std::span(all).first(all[0].empty() ? 0u : all[1].empty() ? 1u : 2u);
  }
  [[nodiscard]] constexpr Length pitch() const noexcept { return row().pitch; }
  /// The largest a roller may be.
  [[nodiscard]] constexpr Length roller_diameter() const noexcept { return row().roller_diameter; }
  /// The least width between the inner plates.
  [[nodiscard]] constexpr Length inner_width() const noexcept { return row().inner_width; }

  // Each of these is absent where no source gives it.

  /// The largest a pin may be.
  [[nodiscard]] constexpr std::optional<Length> pin_diameter() const noexcept { return row().pin_diameter; }
  /// The least height of a channel that the chain runs through.
  [[nodiscard]] constexpr std::optional<Length> path_depth() const noexcept { return row().path_depth; }
  /// The largest height of the inner plates.
  [[nodiscard]] constexpr std::optional<Length> inner_plate_height() const noexcept { return row().inner_plate_height; }
  /// The largest height of the outer plates.
  [[nodiscard]] constexpr std::optional<Length> outer_plate_height() const noexcept { return row().outer_plate_height; }
  /// The largest width of an inner link over its plates.
  [[nodiscard]] constexpr std::optional<Length> inner_link_width() const noexcept { return row().inner_link_width; }
  /// The largest width over a riveted pin; a joint with a clip is wider.
  [[nodiscard]] constexpr std::optional<Length> width_over_pin() const noexcept { return row().width_over_pin; }
  /// The least strength of a new chain.
  [[nodiscard]] constexpr std::optional<Force> tensile_strength() const noexcept { return row().tensile_strength; }
  [[nodiscard]] constexpr std::optional<LinearDensity> mass_per_length() const noexcept {
    return row().mass_per_length;
  }

  /// Where a figure comes from; a source without a document where there is no figure.
  [[nodiscard]] constexpr Source source(ChainProperty property) const noexcept {
    const ChainSeriesSources& sources = row().sources;
    switch (property) {
      case ChainProperty::pitch: return sources.pitch;
      case ChainProperty::roller_diameter: return sources.roller;
      case ChainProperty::inner_width: return sources.inner_width;
      case ChainProperty::pin_diameter: return sources.pin;
      case ChainProperty::inner_plate_height: return sources.inner_plate;
      case ChainProperty::path_depth:
      case ChainProperty::outer_plate_height:
      case ChainProperty::inner_link_width:
      case ChainProperty::width_over_pin: return sources.outline;
      case ChainProperty::tensile_strength: return sources.strength;
      case ChainProperty::mass_per_length: return sources.mass;
    }
    return {};
  }

  friend constexpr bool operator==(ChainSeries a, ChainSeries b) noexcept { return a.index_ == b.index_; }

 private:
  friend constexpr std::array<ChainSeries, chain_series_table.size()> all_chain_series() noexcept;
  struct Unchecked {};
  explicit constexpr ChainSeries(std::size_t index, Unchecked) noexcept : index_(index) {}

  static constexpr std::size_t nowhere = detail::ChainNameAsked::nowhere;
  [[nodiscard]] constexpr const ChainSeriesRow& row() const noexcept { return chain_series_table[index_]; }

  std::size_t index_;
};

/// All series, in the order of the table.
[[nodiscard]] constexpr std::array<ChainSeries, chain_series_table.size()> all_chain_series() noexcept {
  return []<std::size_t... Index>(std::index_sequence<Index...>) {
    return std::array{ChainSeries(Index, ChainSeries::Unchecked{})...};
  }
  (std::make_index_sequence<chain_series_table.size()>());
}

/// The names of all series, in the order of the table.
[[nodiscard]] constexpr std::span<const std::string_view> chain_series_names() noexcept {
  return detail::chain_series_names;
}

}  // namespace layshaft
