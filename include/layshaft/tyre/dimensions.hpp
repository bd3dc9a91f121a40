// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>
#include <layshaft/core/source.hpp>
#include <layshaft/core/units.hpp>
#include <layshaft/tyre/kinds.hpp>

/// @file
/// The dimensions that a metric marking tells, how far a real tyre may stand from them, and what another rim and wear
/// make of them.
namespace layshaft {

/// Where the limits of the overall diameter come from; the least one agrees with a published national rule.
inline constexpr Source diameter_limit_source{"UN Regulation No. 75, limits of the overall diameter",
                                              Certainty::from_memory};

/// Share of the section height that the smallest tyre of a marking still has.
inline constexpr double least_height_factor = 0.97;

/// Share of the section height that the tallest tyre of a marking may have: 1.07 on the road, 1.12 for special use.
[[nodiscard]] constexpr double greatest_height_factor(TyreUse use) noexcept {
  return use == TyreUse::special ? 1.12 : 1.07;
}

/// How much taller than a road tyre the tallest snow tyre of a marking may be: a hundredth of the whole diameter.
inline constexpr double snow_allowance = 0.01;
inline constexpr Source snow_allowance_source{"UN tyre regulations, 1 % over the road tyre's limit for snow tyres",
                                              Certainty::from_memory};

/// Where the limit of the section width comes from; it is that of metric motorcycle tyres.
inline constexpr Source width_limit_source{"UN Regulation No. 75, limit of the section width", Certainty::from_memory};

/// How much wider than nominal the widest tyre of a metric marking may be: 1.08 on rims up to code 12, 1.10 above.
[[nodiscard]] constexpr double greatest_width_factor(double rim_code) noexcept { return rim_code > 12.5 ? 1.10 : 1.08; }

/// Where the change of section width with the rim comes from: ISO 5751-2 prints the 0.4, the rest is from memory.
inline constexpr Source width_on_rim_source{"ISO 5751-2, section width by rim width", Certainty::from_memory};

/// Height of the section from the rim's nominal diameter to the tread; the aspect ratio in percent, as marked.
LAYSHAFT_FORMULA(constexpr, Length, section_height, (Length section_width, double aspect_ratio),
                 positive(section_width) && positive(aspect_ratio), sources::iso_5751,
                 aspect_ratio / 100.0 * section_width)

/// Overall diameter of a new tyre, inflated and free of load.
LAYSHAFT_FORMULA(constexpr, Length, overall_diameter, (Length rim_diameter, Length section_height),
                 positive(rim_diameter) && positive(section_height), sources::iso_5751,
                 rim_diameter + 2.0 * section_height)

/// Limit of the overall diameter, from the share of the section height that the limit allows (0.97, 1.07 or 1.12).
LAYSHAFT_FORMULA(constexpr, Length, overall_diameter_limit,
                 (Length rim_diameter, Length section_height, double height_factor),
                 positive(rim_diameter) && positive(section_height) && positive(height_factor), diameter_limit_source,
                 rim_diameter + 2.0 * section_height * height_factor)

/// Limit of the overall diameter of a snow tyre, from that of a road tyre.
LAYSHAFT_FORMULA(constexpr, Length, snow_diameter_limit, (Length overall_diameter_limit, double snow_allowance),
                 positive(overall_diameter_limit) && is_finite(snow_allowance) && snow_allowance > -1.0,
                 snow_allowance_source, (1.0 + snow_allowance) * overall_diameter_limit)

/// Overall diameter of a tyre whose tread has been worn down.
LAYSHAFT_FORMULA(constexpr, Length, worn_diameter, (Length overall_diameter, Length tread_worn),
                 is_finite(overall_diameter) && is_finite(tread_worn) && tread_worn >= 0.0_mm &&
                     overall_diameter > 2.0 * tread_worn,
                 sources::geometry, overall_diameter - 2.0 * tread_worn)

/// Section height of a tyre whose overall diameter is known.
LAYSHAFT_FORMULA(constexpr, Length, section_height_of_diameter, (Length overall_diameter, Length rim_diameter),
                 positive(rim_diameter) && is_finite(overall_diameter) && overall_diameter > rim_diameter,
                 sources::geometry, (overall_diameter - rim_diameter) / 2.0)

/// Limit of the section width, from how much wider than nominal the limit allows (1.08 or 1.10).
// clang-format off
LAYSHAFT_FORMULA(constexpr, Length, section_width_limit, (Length section_width, double width_factor),
                 positive(section_width) && positive(width_factor), width_limit_source, width_factor * section_width)
// clang-format on

/// Section width on a rim of another width than the one it is measured on.
LAYSHAFT_FORMULA(constexpr, Length, section_width_on_another_rim,
                 (Length section_width, Length rim_width, Length measuring_rim_width),
                 positive(section_width) && positive(rim_width) && positive(measuring_rim_width) &&
                     section_width > 0.4 * measuring_rim_width,
                 width_on_rim_source, section_width + 0.4 * (rim_width - measuring_rim_width))

}  // namespace layshaft
