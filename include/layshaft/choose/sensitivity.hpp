// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/choose/choose.hpp>

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

/// @file
/// What a decision hangs on: which input would have to be how much more or less for another set-up to come first.
/// Opt-in, as choose.hpp is.
namespace layshaft {

/// What may be known wrong.
enum class DecisionInput : unsigned char {
  tyre_size,    ///< circumference of every tyre that is offered
  torque,       ///< of the engine, at every speed
  drag,         ///< the part of the road load that goes with the square of speed
  mass,         ///< of machine and rider: what is lifted on a slope, and holds the front wheel down
  front_price,  ///< of every front sprocket
  rear_price,   ///< of every rear sprocket
  chain_price,  ///< of every chain
  tyre_price,   ///< of every tyre
};

/// All of them, in order.
inline constexpr DecisionInput decision_inputs[] = {
    DecisionInput::tyre_size,   DecisionInput::torque,     DecisionInput::drag,        DecisionInput::mass,
    DecisionInput::front_price, DecisionInput::rear_price, DecisionInput::chain_price, DecisionInput::tyre_price};

[[nodiscard]] constexpr std::string_view to_string(DecisionInput input) noexcept {
  switch (input) {
    case DecisionInput::tyre_size: return "tyre size";
    case DecisionInput::torque: return "torque";
    case DecisionInput::drag: return "drag";
    case DecisionInput::mass: return "mass";
    case DecisionInput::front_price: return "front price";
    case DecisionInput::rear_price: return "rear price";
    case DecisionInput::chain_price: return "chain price";
    case DecisionInput::tyre_price: return "tyre price";
  }
  return {};
}

/// Where the decision changes.
struct Flip {
  double factor;              ///< of the input
  std::optional<Setup> best;  ///< what then comes first; none where nothing keeps the limits, or nothing can be asked

  friend bool operator==(const Flip&, const Flip&) = default;
};

/// What one input does to the decision, within the span that was looked at.
struct Sensitivity {
  DecisionInput input{};
  std::optional<Flip> below;  ///< the nearest change with less of it
  std::optional<Flip> above;  ///< with more of it

  friend bool operator==(const Sensitivity&, const Sensitivity&) = default;
};

/// How a sensitivity is worked out.
struct SensitivityOptions {
  double span = 1.25;  ///< inputs are varied from 1/span to span: above 1, to 4
  int steps = 10;      ///< tried each way, then narrowed down: 1 to 1000; a change back between two is missed
};

namespace detail {

/// A road load with so much more or less of what goes with the square of speed: a larger front, or denser air.
[[nodiscard]] inline Result<RoadLoad> with_drag(const RoadLoad& road, double factor) {
  if (!road.parts()) return road.try_in_air(factor * road.other_air().value_or(standard_atmosphere::density));
  RoadParts parts = *road.parts();
  parts.drag_area = over(parts.drag_area, [&](Area area) { return factor * area; });
  const auto made = RoadLoad::try_from_parts(parts);
  if (!made) return made;
  return made->lifting(*road.mass());  // one of parts has a mass
}

/// The machine and the space with so much more or less of one input. Or an Error, where there is no such machine.
struct VariedQuestion {
  Machine machine;
  Space space;
};
[[nodiscard]] inline Result<VariedQuestion> varied(const Machine& machine, const Space& space, DecisionInput input,
                                                   double factor) {
  MachineParts parts = machine.parts();
  Space offered = space;
  const auto scale = [&](auto& offers) {
    for (auto& one : offers)
      if (one.offer.price) one.offer.price = over(*one.offer.price, [&](double price) { return factor * price; });
  };
  switch (input) {
    case DecisionInput::tyre_size: {
      const Setup present = space.present.value_or(machine.stock());
      if (offered.tyres.empty()) offered.tyres.push_back({present.tyre(), present.circumference()});
      for (TyreOffer& tyre : offered.tyres) {
        const Band<Length> rolls = tyre.circumference ? *tyre.circumference : Rollout(*tyre.tyre).circumference();
        tyre.circumference = over(rolls, [&](Length length) { return factor * length; });
      }
    } break;
    case DecisionInput::torque:
      if (parts.peak_torque) parts.peak_torque->torque *= factor;
      if (parts.engine) {
        const auto engine = parts.engine->try_scaled(factor);
        if (!engine) return engine.error();
        parts.engine = *engine;
      }
      break;
    case DecisionInput::drag:
      if (parts.road_load) {
        const auto road = with_drag(*parts.road_load, factor);
        if (!road) return road.error();
        parts.road_load = *road;
      }
      break;
    case DecisionInput::mass:
      if (parts.body) {
        BodyParts body = parts.body->parts();
        body.mass *= factor;
        const auto made = Body::make(body);
        if (!made) return made.error();
        parts.body = *made;
      }
      if (parts.road_load && parts.road_load->mass()) {
        const auto road = parts.road_load->try_carrying(factor * *parts.road_load->mass());
        if (!road) return road.error();
        parts.road_load = *road;
      }
      break;
    case DecisionInput::front_price: scale(offered.fronts); break;
    case DecisionInput::rear_price: scale(offered.rears); break;
    case DecisionInput::chain_price: scale(offered.chains); break;
    case DecisionInput::tyre_price: scale(offered.tyres); break;
  }
  const auto made = Machine::make(std::move(parts));
  if (!made) return made.error();
  return VariedQuestion{*made, std::move(offered)};
}

/// Whether a question has any of the input.
[[nodiscard]] inline bool has(const Machine& machine, const Space& space, DecisionInput input) {
  const auto priced = [](const auto& offers) {
    return std::any_of(offers.begin(), offers.end(), [](const auto& one) { return one.offer.price.has_value(); });
  };
  switch (input) {
    case DecisionInput::tyre_size: return true;
    case DecisionInput::torque: return machine.peak_torque() || machine.engine();
    case DecisionInput::drag: return machine.road_load().has_value();
    case DecisionInput::mass: return machine.body() || (machine.road_load() && machine.road_load()->mass());
    case DecisionInput::front_price: return priced(space.fronts);
    case DecisionInput::rear_price: return priced(space.rears);
    case DecisionInput::chain_price: return priced(space.chains);
    case DecisionInput::tyre_price: return priced(space.tyres);
  }
  return false;
}

/// Whether both are the same, told by what a rider would buy: a tyre without a marking by its circumference. All tyres
/// are so many times larger where the first one comes from.
[[nodiscard]] inline bool same_parts(const std::optional<Setup>& one, const std::optional<Setup>& other,
                                     double larger = 1.0) {
  if (!one || !other) return one.has_value() == other.has_value();
  const auto rolls = [](const Setup& setup) { return setup.circumference().value_or(Band<Length>()).nominal; };
  return one->front() == other->front() && one->rear() == other->rear() && one->links() == other->links() &&
         one->tyre() == other->tyre() && magnitude(rolls(*one) - larger * rolls(*other)) <= 1e-9 * rolls(*one) &&
         one->chain() == other->chain() && one->chain_made() == other->chain_made() &&
         one->front_material() == other->front_material() && one->rear_material() == other->rear_material();
}

}  // namespace detail

/// What the decision of `try_choose` hangs on: for each input that the question has, where it changes within the span.
/// Or an Error as `try_choose` says, or a RangeError for the options. The change is narrowed down to a millionth.
[[nodiscard]] inline Result<std::vector<Sensitivity>> try_sensitivity(const Machine& machine, const Space& space,
                                                                      const Goals& goals,
                                                                      const SensitivityOptions& options = {}) {
  if (!(options.span > 1.0 && options.span <= 4.0))
    return Error::range("span", detail::in_words(options.span), "above 1, to 4");
  if (options.steps < 1 || options.steps > 1000)
    return Error::range("steps", std::to_string(options.steps), "1 to 1000");
  if (const auto study = detail::Study::make(machine, space, goals); !study) return study.error();
  std::vector<Sensitivity> all;
  for (const DecisionInput input : decision_inputs) {
    if (!detail::has(machine, space, input)) continue;
    // None also where there is no machine, or no part to buy, with so much of it: then nothing can be chosen.
    const auto best_at = [&](double factor) -> std::optional<Setup> {
      const auto question = detail::varied(machine, space, input, factor);
      if (!question) return std::nullopt;
      const auto study = detail::Study::make(question->machine, question->space, goals);
      if (!study) return std::nullopt;
      detail::Scan scan(*study);
      for (std::size_t i = 0; i < study->combinations(); ++i) scan.look_at(i);
      const auto ranked = detail::rank(*study, scan.found().as_judged);
      if (ranked.empty()) return std::nullopt;
      const auto drive = study->drive(ranked.front().place.combination, ranked.front().place.links);
      return study->setup_of(*drive, study->tyres()[ranked.front().place.tyre]);
    };
    const auto base = best_at(1.0);
    const auto same_as_base = [&](const std::optional<Setup>& best, double factor) {
      return detail::same_parts(best, base, input == DecisionInput::tyre_size ? factor : 1.0);
    };
    const auto nearest = [&](double end) -> std::optional<Flip> {
      double same = 1.0;
      for (int i = 1; i <= options.steps; ++i) {
        double other = std::pow(end, double(i) / options.steps);
        auto best = best_at(other);
        if (same_as_base(best, other)) {
          same = other;
          continue;
        }
        while (std::fabs(other - same) > 1e-6) {
          const double middle = 0.5 * (same + other);
          const auto there = best_at(middle);
          if (same_as_base(there, middle)) {
            same = middle;
          } else {
            other = middle;
            best = there;
          }
        }
        return Flip{other, best};
      }
      return std::nullopt;
    };
    all.push_back({input, nearest(1.0 / options.span), nearest(options.span)});
  }
  return all;
}
#if LAYSHAFT_EXCEPTIONS
/// @throws Error as `try_sensitivity` says.
[[nodiscard]] inline std::vector<Sensitivity> sensitivity(const Machine& machine, const Space& space,
                                                          const Goals& goals, const SensitivityOptions& options = {}) {
  return try_sensitivity(machine, space, goals, options).value();
}
#endif

}  // namespace layshaft
