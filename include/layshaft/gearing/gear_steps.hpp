// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/fixed_list.hpp>
#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>
#include <layshaft/gearing/gearbox.hpp>

/// @file
/// How far one gear lies from the next, and how evenly stepped boxes of the same first and last gear would stand.
namespace layshaft {

namespace sources {
inline constexpr Source gear_stepping{"vehicle transmission textbooks, geometric and progressive stepping",
                                      Certainty::from_memory};
}

/// The step from one gear up to the next: by so much the engine's speed falls.
LAYSHAFT_FORMULA(constexpr, double, gear_step, (double lower_gear, double upper_gear),
                 positive(lower_gear) && positive(upper_gear), sources::definition, lower_gear / upper_gear)

/// The step of a box whose gears all stand equally far apart.
LAYSHAFT_FORMULA(inline, double, geometric_step, (double first_gear, double last_gear, double step_count),
                 positive(first_gear) && positive(last_gear) && step_count >= 1.0 && step_count <= 100.0,
                 sources::gear_stepping, to_the(first_gear / last_gear, 1.0 / step_count))

/// The last and least step of a box each of whose steps is `step_progression` times the one above it.
LAYSHAFT_FORMULA(inline, double, progressive_step,
                 (double first_gear, double last_gear, double step_count, double step_progression),
                 positive(first_gear) && positive(last_gear) && step_count >= 1.0 && step_count <= 100.0 &&
                     positive(step_progression),
                 sources::gear_stepping,
                 to_the(first_gear / last_gear, 1.0 / step_count) / to_the(step_progression, 0.5 * (step_count - 1.0)))

/// Gears and their steps.
struct GearSteps {
  FixedList<double, most_gears> ratios;     ///< from first gear up
  FixedList<double, most_gears - 1> steps;  ///< one a shift, lower over upper

  friend constexpr bool operator==(const GearSteps&, const GearSteps&) noexcept = default;
};

/// The gears of a box, and two that would carry the engine from the same first to the same last gear.
struct GearStepping {
  GearSteps own;
  GearSteps geometric;    ///< all steps equal
  GearSteps progressive;  ///< steps that fall evenly towards the top
  double progression;     ///< each step over the one above it, in the progressive box: as own's are on the mean

  friend constexpr bool operator==(const GearStepping&, const GearStepping&) noexcept = default;
};

namespace detail {
[[nodiscard]] inline GearSteps stepped(double last_gear, double least_step, double progression, std::size_t gears) {
  GearSteps made;
  double ratio = last_gear, step = least_step;
  double ratios[most_gears] = {};
  for (std::size_t i = gears; i-- > 0;) {
    ratios[i] = ratio;
    ratio *= step;
    step *= progression;
  }
  for (std::size_t i = 0; i < gears; ++i) made.ratios.push_back(ratios[i]);
  for (std::size_t i = 0; i + 1 < gears; ++i) made.steps.push_back(gear_step(ratios[i], ratios[i + 1]));
  return made;
}
}  // namespace detail

/// The steps of a gearbox beside even ones. A box of one gear has none.
[[nodiscard]] inline GearStepping gear_stepping(const Gearbox& gearbox) {
  const std::size_t gears = gearbox.gears().size();
  GearStepping stepping{{}, {}, {}, 1.0};
  for (const GearRatio& gear : gearbox.gears()) stepping.own.ratios.push_back(gear.ratio());
  const auto& own = stepping.own.ratios;
  for (std::size_t i = 0; i + 1 < gears; ++i) stepping.own.steps.push_back(gear_step(own[i], own[i + 1]));
  if (gears == 1) {
    stepping.geometric = stepping.progressive = stepping.own;
    return stepping;
  }
  const auto& steps = stepping.own.steps;
  const double count = static_cast<double>(steps.size());
  if (gears > 2) stepping.progression = geometric_step(steps[0], steps[steps.size() - 1], count - 1.0);
  stepping.geometric = detail::stepped(own[gears - 1], geometric_step(own[0], own[gears - 1], count), 1.0, gears);
  stepping.progressive =
      detail::stepped(own[gears - 1], progressive_step(own[0], own[gears - 1], count, stepping.progression),
                      stepping.progression, gears);
  return stepping;
}

}  // namespace layshaft
