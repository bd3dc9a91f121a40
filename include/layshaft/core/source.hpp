// SPDX-License-Identifier: MIT
#pragma once

#include <string_view>

/// @file
/// Where a figure or a formula comes from, and how sure that is.
namespace layshaft {

/// How sure a figure is, from seen in print to recalled.
enum class Certainty {
  published,        ///< seen in the named source
  secondary,        ///< seen, but quoted by somebody else, or two sources disagree
  derived,          ///< worked out from other rows
  common_practice,  ///< what the trade does; no source
  from_memory,      ///< recalled, not seen
  stated,           ///< given by the user
};

/// The word for a certainty, as the tables print it.
[[nodiscard]] constexpr std::string_view to_string(Certainty certainty) noexcept {
  switch (certainty) {
    case Certainty::published: return "published";
    case Certainty::secondary: return "secondary";
    case Certainty::derived: return "derived";
    case Certainty::common_practice: return "common practice, no source";
    case Certainty::from_memory: return "from memory";
    case Certainty::stated: return "stated";
  }
  return {};
}

/// A document, with its clause or table, and how sure the figure is that was taken from it.
struct Source {
  std::string_view document;
  Certainty certainty = Certainty::published;

  friend constexpr bool operator==(const Source&, const Source&) = default;
};

/// The sources that formulas name; a table's own source stands at the top of the table.
namespace sources {
inline constexpr Source definition{"definition", Certainty::derived};
inline constexpr Source geometry{"plane geometry", Certainty::derived};
inline constexpr Source common_practice{"common practice", Certainty::common_practice};
inline constexpr Source iso_606{"ISO 606:1994, sprocket dimensions", Certainty::published};
inline constexpr Source iso_5751{"ISO 5751, metric motorcycle tyre dimensions", Certainty::from_memory};
inline constexpr Source un_r39{"UN Regulation No. 39, paragraph 5.3", Certainty::published};
}  // namespace sources

}  // namespace layshaft
