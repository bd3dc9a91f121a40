// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/checks.hpp>
#include <layshaft/core/counts.hpp>

#include <cmath>
#include <string>
#include <string_view>

/// @file
/// From a real number of links to a whole one. Textbooks do it in different ways, so it is a choice.
namespace layshaft {

/// How to make a real number of links whole. An even number needs no offset link; inner and outer links alternate.
enum class LinkRounding {
  up_to_even,    ///< the next even number, so that the axle stands at or behind where it was asked for
  nearest_even,  ///< the nearest even number; of two as near, the larger
  down_to_even,  ///< the even number below
  up,            ///< the next whole number, even or odd
};

[[nodiscard]] constexpr std::string_view to_string(LinkRounding rounding) noexcept {
  switch (rounding) {
    case LinkRounding::up_to_even: return "up to even";
    case LinkRounding::nearest_even: return "nearest even";
    case LinkRounding::down_to_even: return "down to even";
    case LinkRounding::up: return "up";
  }
  return {};
}

/// How far a number of links may stand from a whole one and still count as it: a billionth of a link, which is far
/// less than can be measured and far more than the rounding of the loop's arithmetic.
inline constexpr double whole_link_tolerance = 1e-9;

/// The whole number of links; or a RangeError when it is not 4 to 10000.
[[nodiscard]] inline Result<Links> try_round_links(double links, LinkRounding rounding = LinkRounding::up_to_even) {
  double whole = 0.0;
  switch (rounding) {
    case LinkRounding::up_to_even: whole = 2.0 * std::ceil((links - whole_link_tolerance) / 2.0); break;
    case LinkRounding::nearest_even: whole = 2.0 * std::floor((links + 1.0 + whole_link_tolerance) / 2.0); break;
    case LinkRounding::down_to_even: whole = 2.0 * std::floor((links + whole_link_tolerance) / 2.0); break;
    case LinkRounding::up: whole = std::ceil(links - whole_link_tolerance); break;
  }
  if (whole >= Links::least && whole <= Links::greatest) return Links::make(static_cast<int>(whole));
  return Error::range("number of links", detail::in_words(links),
                      std::to_string(Links::least) + " to " + std::to_string(Links::greatest));
}
#if LAYSHAFT_EXCEPTIONS
/// The whole number of links.
/// @throws RangeError when it is not 4 to 10000.
[[nodiscard]] inline Links round_links(double links, LinkRounding rounding = LinkRounding::up_to_even) {
  return try_round_links(links, rounding).value();
}
#endif

/// How many links to cut from a longer chain bought, 0 when it is right as it is; or a RangeError that says how many
/// are missing when it is too short.
[[nodiscard]] inline Result<int> try_links_to_cut(Links bought, Links needed) {
  const int spare = bought.count() - needed.count();
  if (spare >= 0) return spare;
  return Error::range("number of links bought", std::to_string(bought.count()),
                      "at least " + std::to_string(needed.count()) + " (" + std::to_string(-spare) +
                          (spare == -1 ? " is missing)" : " are missing)"));
}
#if LAYSHAFT_EXCEPTIONS
/// How many links to cut from a longer chain bought.
/// @throws RangeError that says how many are missing when it is too short.
[[nodiscard]] inline int links_to_cut(Links bought, Links needed) { return try_links_to_cut(bought, needed).value(); }
#endif

}  // namespace layshaft
