// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/chain/tooth_form.hpp>
#include <layshaft/chain/tooth_width.hpp>
#include <layshaft/core/fixed_list.hpp>

#include <vector>

/// @file
/// Which chains run on which sprockets: the pitch must be the same, the roller must seat in the gap, and the tooth must
/// go between the inner plates without being lost there.
///
/// The rules. Two rollers count as the same while each seats in the least gap that the standard allows for the other,
/// which takes in what sources print differently (7.92 and 7.95 mm). A tooth is too wide where its greatest width is
/// more than the chain's least inner width. It is sloppy where even its greatest width is below the least that the
/// standard allows for the chain's own sprockets. Whether a chain is strong enough is no part of this.
namespace layshaft {

/// The diameter of the least seat that is cut for a roller.
LAYSHAFT_FORMULA(constexpr, Length, seat_least, (Length roller_diameter), positive(roller_diameter),
                 sources::tooth_form, 2.0 * seating_radius_least(roller_diameter))

/// How far a chain can move to the side on a tooth, both sides together; below zero it does not go on.
LAYSHAFT_FORMULA(constexpr, Length, side_play, (Length chain_inner_width, Length tooth_width),
                 positive(chain_inner_width) && positive(tooth_width), sources::definition,
                 chain_inner_width - tooth_width)

/// Why a chain does not run on a sprocket.
enum class InterchangeReason {
  pitch_differs,
  roller_larger,   ///< it stands up out of the gap
  roller_smaller,  ///< it lies loose in the gap
  tooth_too_wide,  ///< for the chain's inner plates
  sloppy,          ///< the tooth is so narrow that the chain wanders; it goes on, and wears at the side
};

[[nodiscard]] constexpr std::string_view to_string(InterchangeReason reason) noexcept {
  switch (reason) {
    case InterchangeReason::pitch_differs: return "pitch differs";
    case InterchangeReason::roller_larger: return "roller larger";
    case InterchangeReason::roller_smaller: return "roller smaller";
    case InterchangeReason::tooth_too_wide: return "tooth too wide";
    case InterchangeReason::sloppy: return "sloppy";
  }
  return {};
}

class Working;  // to explain, include <layshaft/explain.hpp>

/// A chain on sprockets that were cut for a series, its own or another: whether it runs there, and why not. Any two
/// series can be asked, so there is nothing to refuse.
class Interchange {
 public:
  using Reasons = FixedList<InterchangeReason, 4>;  // a roller is not larger and smaller, nor a tooth wide and sloppy

  [[nodiscard]] static Result<Interchange> make(ChainSeries chain, ChainSeries cut_for) {
    return Interchange(chain, cut_for);
  }
  constexpr Interchange(ChainSeries chain, ChainSeries cut_for) noexcept : chain_(chain), cut_for_(cut_for) {}

  /// The chain that is to run.
  [[nodiscard]] constexpr ChainSeries chain() const noexcept { return chain_; }
  /// The series that the sprockets were cut for.
  [[nodiscard]] constexpr ChainSeries cut_for() const noexcept { return cut_for_; }

  /// Whether the chain runs there as on sprockets of its own: nothing speaks against it.
  [[nodiscard]] constexpr bool fits() const { return reasons().empty(); }
  /// All that speaks against it, none where it fits. Where `sloppy` is the only one the chain goes on and turns, with
  /// more play at the side than the standard has it.
  [[nodiscard]] constexpr Reasons reasons() const {
    Reasons against;
    if (chain_.pitch() != cut_for_.pitch()) against.push_back(InterchangeReason::pitch_differs);
    if (chain_.roller_diameter() > seat_least(cut_for_.roller_diameter()))
      against.push_back(InterchangeReason::roller_larger);
    if (cut_for_.roller_diameter() > seat_least(chain_.roller_diameter()))
      against.push_back(InterchangeReason::roller_smaller);
    if (side_play().low < Length()) against.push_back(InterchangeReason::tooth_too_wide);
    if (tooth_width().high < layshaft::tooth_width(chain_).low) against.push_back(InterchangeReason::sloppy);
    return against;
  }

  /// The width of the sprockets' teeth.
  [[nodiscard]] constexpr Band<Length> tooth_width() const { return layshaft::tooth_width(cut_for_); }
  /// How far the chain can move to the side, for whoever watches. The narrowest tooth leaves the most play.
  template <class Watch>
  [[nodiscard]] constexpr auto side_play(Watch watch, Corner at) const {
    const auto inner = watch.looked_up("chain_inner_width", chain_.inner_width(), chain_.name(),
                                       chain_.source(ChainProperty::inner_width));
    const auto tooth = detail::tooth_width_for(watch, cut_for_, at == Corner::high ? Corner::low : Corner::nominal);
    return watch.step(formula::side_play{}, inner, tooth);
  }

  /// How far the chain can move to the side, both sides together, at the least; a chain may be wider inside. Nominal
  /// is on the widest tooth. Below zero: how much too wide the tooth is.
  [[nodiscard]] constexpr Band<Length> side_play() const {
    return over_runs(one_cause, [&](Corner at) { return side_play(Unwatched(), at); });
  }
  /// How much larger the chain's roller is than the one the gaps were cut for.
  [[nodiscard]] constexpr Length roller_difference() const noexcept {
    return chain_.roller_diameter() - cut_for_.roller_diameter();
  }

  /// How a number came about: `explain("side play")`. Defined in chain/explain.hpp, which is opt-in.
  [[nodiscard]] Result<Working> try_explain(std::string_view what) const;
#if LAYSHAFT_EXCEPTIONS
  /// @throws ParseError that lists the names there are.
  [[nodiscard]] Working explain(std::string_view what) const;
#endif

  friend constexpr bool operator==(Interchange, Interchange) noexcept = default;

 private:
  ChainSeries chain_;
  ChainSeries cut_for_;
};

/// Every series whose chain runs on sprockets that were cut for this one, itself among them, in the order of the table.
[[nodiscard]] inline std::vector<ChainSeries> chains_for_sprockets(ChainSeries cut_for) {
  std::vector<ChainSeries> chains;
  for (const ChainSeries chain : all_chain_series())
    if (Interchange(chain, cut_for).fits()) chains.push_back(chain);
  return chains;
}

/// Every series on whose sprockets this chain runs, its own among them, in the order of the table.
[[nodiscard]] inline std::vector<ChainSeries> sprockets_for_chain(ChainSeries chain) {
  std::vector<ChainSeries> cut_for;
  for (const ChainSeries series : all_chain_series())
    if (Interchange(chain, series).fits()) cut_for.push_back(series);
  return cut_for;
}

}  // namespace layshaft
