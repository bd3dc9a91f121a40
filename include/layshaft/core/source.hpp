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

/// The less sure of two: a result is as sure as the least sure of what went into it. What was stated or published, and
/// what is worked out from that, does not weaken what stands on it.
[[nodiscard]] constexpr Certainty weaker(Certainty a, Certainty b) noexcept {
  constexpr auto doubt = [](Certainty certainty) {
    switch (certainty) {
      case Certainty::stated: return 0;
      case Certainty::published: return 1;
      case Certainty::derived: return 2;
      case Certainty::secondary: return 3;
      case Certainty::common_practice: return 4;
      case Certainty::from_memory: return 5;
    }
    return 5;
  };
  return doubt(a) < doubt(b) ? b : a;
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
inline constexpr Source arithmetic{"arithmetic", Certainty::derived};
inline constexpr Source geometry{"plane geometry", Certainty::derived};
inline constexpr Source common_practice{"common practice", Certainty::common_practice};
inline constexpr Source marking{"the tyre's marking", Certainty::stated};
inline constexpr Source stated{"stated", Certainty::stated};
inline constexpr Source iso_606{"ISO 606:1994, sprocket dimensions", Certainty::published};
inline constexpr Source iso_5751{"ISO 5751, metric motorcycle tyre dimensions", Certainty::from_memory};
inline constexpr Source un_r39{"UN Regulation No. 39, paragraph 5.3", Certainty::published};
}  // namespace sources

}  // namespace layshaft
