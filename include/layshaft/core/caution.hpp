// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/amount.hpp>
#include <layshaft/core/fixed_list.hpp>

#include <array>
#include <string_view>

/// @file
/// What a rider must be told before acting on a number. A caution is a code and the quantities that raised it; its
/// sentence lives in show/.
namespace layshaft {

// clang-format off
/// Every caution there is, with the quantities it carries, in this order. The name is also its code in Python and JSON.
#define LAYSHAFT_CAUTIONS(CAUTION)                                                                                  \
  CAUTION(chain_ahead_of_adjuster)     /* how far: the chain is too short for the adjuster */                       \
  CAUTION(chain_behind_adjuster)       /* how far: the chain is too long for the adjuster */                        \
  CAUTION(chain_wear_room_small)       /* elongation at which the adjuster ends, elongation at which chains are replaced */ \
  CAUTION(offset_link)                 /* links: an odd count needs an offset link */                               \
  CAUTION(chain_slack_unstated)        /* nothing: the axle position holds for a chain without slack */             \
  CAUTION(check_slack_through_travel)  /* slack asked for on the stand */                                           \
  CAUTION(chain_tight_in_travel)       /* slack set at rest, how much too short the chain then is */                \
  CAUTION(few_teeth_in_mesh)           /* teeth in mesh in front, the least that is asked for */                    \
  CAUTION(chain_weaker_than_stock)     /* strength over greatest pull, the stock set-up's */                        \
  CAUTION(front_sprocket_smaller)      /* teeth, stock teeth: the chain runs nearer the swingarm */                 \
  CAUTION(rear_sprocket_larger)        /* teeth, stock teeth: guard and chain clearance */                          \
  CAUTION(chain_series_differs)        /* pitch, stock pitch: the sprockets must be of the same series */           \
  CAUTION(new_sprockets_worn_chain)    /* nothing: sprockets and chain are changed together */                      \
  CAUTION(chain_joint_as_maker_says)   /* links: rivet or clip link as the chain's maker says */                    \
  CAUTION(tyre_load_below_stock)       /* capacity, stock tyre's capacity */                                        \
  CAUTION(tyre_speed_below_stock)      /* rated speed, stock tyre's rated speed */                                  \
  CAUTION(tyre_service_unstated)       /* nothing: no load index or speed symbol to hold against the stock tyre's */ \
  CAUTION(tyre_load_below_asked)       /* capacity, what the axle bears */                                          \
  CAUTION(tyre_speed_below_asked)      /* rated speed, top speed */                                                 \
  CAUTION(tyre_needs_room)             /* how much taller at the most, room above the stock tyre */                 \
  CAUTION(tyre_needs_width)            /* how much wider at the most, room beside the stock tyre */                 \
  CAUTION(tyre_fitness_unknown)        /* nothing: the marking does not tell whether the tyre does what is asked */ \
  CAUTION(tread_below_least)           /* tread depth, least depth it may be used down to */                        \
  CAUTION(front_tyre_below_stock)      /* nothing: rated below the stock front tyre, or for another rim */          \
  CAUTION(tyre_construction_differs)   /* nothing: another construction than the stock tyre's */                    \
  CAUTION(tyre_rim_differs)            /* rim diameter, stock rim diameter: it does not go on the stock wheel */    \
  CAUTION(tyre_clearance)              /* how much larger the radius, how much wider, at the most */                \
  CAUTION(ride_height_changed)         /* change of the radius at its nominal value */                              \
  CAUTION(wheel_speed_ratio_changed)   /* change of rear over front circumference: ABS, traction control */         \
  CAUTION(over_rev_on_downshift)       /* change of engine speed at equal road speed */                             \
  CAUTION(front_wheel_lifts_sooner)    /* change of thrust */                                                       \
  CAUTION(thrust_lifts_front_wheel)    /* greatest thrust in first gear, thrust that lifts it on the level */       \
  CAUTION(thrust_spins_rear_wheel)     /* greatest thrust in first gear, thrust that asphalt takes on the level */  \
  CAUTION(road_load_by_mass_alone)     /* speed near which the table by mass holds, on a hard and level road */     \
  CAUTION(speedometer_may_read_low)    /* how far below the true speed, at the most */                                 \
  CAUTION(speedometer_may_read_high)   /* greatest change of reading at equal speed */                              \
  CAUTION(speedometer_error_unknown)   /* nothing: the stock instrument's own error was not stated */               \
  CAUTION(approval_and_insurance)      /* nothing: approval, insurance and road law */                              \
  CAUTION(makers_manual_first)         /* nothing: the maker's manual and a qualified technician come first */
// clang-format on

/// The cautions' codes.
enum class CautionCode {
#define LAYSHAFT_CAUTION_CODE(NAME) NAME,
  LAYSHAFT_CAUTIONS(LAYSHAFT_CAUTION_CODE)
#undef LAYSHAFT_CAUTION_CODE
};

/// The code as text: its own name.
[[nodiscard]] constexpr std::string_view to_string(CautionCode code) noexcept {
  constexpr std::string_view names[] = {
#define LAYSHAFT_CAUTION_NAME(NAME) #NAME,
      LAYSHAFT_CAUTIONS(LAYSHAFT_CAUTION_NAME)
#undef LAYSHAFT_CAUTION_NAME
  };
  return names[static_cast<std::size_t>(code)];
}

/// One caution with the quantities that raised it.
struct Caution {
  CautionCode code{};
  std::array<Amount, 2> amounts{};

  friend constexpr bool operator==(const Caution&, const Caution&) = default;
};

/// Cautions in the order they are told in; there is room for each of them once.
#define LAYSHAFT_CAUTION_COUNT(NAME) +1
using Cautions = FixedList<Caution, 0 LAYSHAFT_CAUTIONS(LAYSHAFT_CAUTION_COUNT)>;
#undef LAYSHAFT_CAUTION_COUNT
#undef LAYSHAFT_CAUTIONS

}  // namespace layshaft
