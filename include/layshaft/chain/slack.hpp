// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/checks.hpp>
#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>

#include <string_view>

/// @file
/// Slack of the chain as a hand feels it or as it hangs, and the spare length that makes it. Makers measure it in
/// several ways, so a slack is a length and its method.
namespace layshaft {

/// How much longer the chain is than the taut loop when a hand can move the middle of one run by `slack`, up plus down,
/// while the other run is pulled straight: in neutral, on the stand. Each half of the run is then the long side of a
/// flat triangle; for a slack that is small beside the run.
LAYSHAFT_FORMULA(constexpr, Length, spare_length, (Length slack, Length run_length),
                 is_finite(slack) && positive(run_length), sources::geometry, slack / (2.0 * run_length) * slack)

/// How far a hand can move the middle of one run, up plus down, when the chain is longer than the taut loop by
/// `spare_length`, zero or more, and the other run is pulled straight.
LAYSHAFT_FORMULA(inline, Length, slack_by_hand, (Length spare_length, Length run_length),
                 is_finite(spare_length) && spare_length >= 0.0_mm && positive(run_length), sources::geometry,
                 sqrt(2.0 * run_length * spare_length))

/// How far the middle of one run hangs below the straight line, when it has all the spare length: a flat parabola.
LAYSHAFT_FORMULA(inline, Length, hanging_sag, (Length spare_length, Length run_length),
                 is_finite(spare_length) && spare_length >= 0.0_mm && positive(run_length), sources::geometry,
                 sqrt(3.0 * run_length * spare_length / 8.0))

/// The spare length of one run that hangs by so much.
LAYSHAFT_FORMULA(constexpr, Length, spare_length_of_sag, (Length hanging_sag, Length run_length),
                 is_finite(hanging_sag) && positive(run_length), sources::geometry,
                 8.0 * hanging_sag / (3.0 * run_length) * hanging_sag)

/// How a slack is measured.
enum class SlackMethod {
  by_hand,           ///< the middle of one run moved by hand, up plus down, the other run pulled straight
  sag_of_one_run,    ///< the middle of one run hangs below the straight line, the other run pulled straight
  sag_of_both_runs,  ///< the same, both runs hanging alike
  gap,               ///< a gap from chain to swingarm, slipper or guide, which only the maker's drawing can tell
};

inline constexpr SlackMethod slack_methods[] = {SlackMethod::by_hand, SlackMethod::sag_of_one_run,
                                                SlackMethod::sag_of_both_runs, SlackMethod::gap};

[[nodiscard]] constexpr std::string_view to_string(SlackMethod method) noexcept {
  switch (method) {
    case SlackMethod::by_hand: return "by hand";
    case SlackMethod::sag_of_one_run: return "sag of one run";
    case SlackMethod::sag_of_both_runs: return "sag of both runs";
    case SlackMethod::gap: return "gap";
  }
  return {};
}

/// A slack, and how it is measured.
struct Slack {
  Length movement;
  SlackMethod method = SlackMethod::by_hand;

  friend constexpr bool operator==(const Slack&, const Slack&) noexcept = default;
};

namespace detail {
[[nodiscard]] inline Error gap_tells_nothing() {
  return Error::value(
      "a gap from chain to swingarm or slipper depends on their shape: geometry alone does not tell the slack it "
      "means; "
      "measure how far a hand moves the middle of the run");
}
/// Out of range where the movement is no length of zero to half the run.
[[nodiscard]] inline std::optional<Error> outside_slack(Length movement, Length run_length) {
  if (auto error = outside("run_length", run_length, 1.0_mm, 100.0_m)) return error;
  return outside("slack", movement, Length(), 0.5 * run_length);
}
}  // namespace detail

/// The spare length that a slack means on straight runs of this length; or an Error for a gap, which geometry does not
/// tell, or a RangeError for a slack that is not zero to half the run.
[[nodiscard]] inline Result<Length> try_spare_length(const Slack& slack, Length run_length) {
  if (auto error = detail::outside_slack(slack.movement, run_length)) return *std::move(error);
  switch (slack.method) {
    case SlackMethod::by_hand: return spare_length(slack.movement, run_length);
    case SlackMethod::sag_of_one_run: return spare_length_of_sag(slack.movement, run_length);
    case SlackMethod::sag_of_both_runs: return 2.0 * spare_length_of_sag(slack.movement, run_length);
    case SlackMethod::gap: break;
  }
  return detail::gap_tells_nothing();
}
/// The slack that a spare length, zero or more, makes on straight runs of this length; errors as above.
[[nodiscard]] inline Result<Slack> try_slack_of(Length spare, Length run_length, SlackMethod method) {
  if (auto error = detail::outside("run_length", run_length, 1.0_mm, 100.0_m)) return *std::move(error);
  if (auto error = detail::outside("spare_length", spare, Length(), run_length)) return *std::move(error);
  switch (method) {
    case SlackMethod::by_hand: return Slack{slack_by_hand(spare, run_length), method};
    case SlackMethod::sag_of_one_run: return Slack{hanging_sag(spare, run_length), method};
    case SlackMethod::sag_of_both_runs: return Slack{hanging_sag(0.5 * spare, run_length), method};
    case SlackMethod::gap: break;
  }
  return detail::gap_tells_nothing();
}
/// The same slack measured in another way; errors as above.
[[nodiscard]] inline Result<Slack> try_measured_as(const Slack& slack, SlackMethod method, Length run_length) {
  const auto spare = try_spare_length(slack, run_length);
  if (!spare) return spare.error();
  return try_slack_of(*spare, run_length, method);
}
#if LAYSHAFT_EXCEPTIONS
/// @throws Error or RangeError as the `try_` functions say.
[[nodiscard]] inline Length spare_length(const Slack& slack, Length run_length) {
  return try_spare_length(slack, run_length).value();
}
[[nodiscard]] inline Slack slack_of(Length spare, Length run_length, SlackMethod method) {
  return try_slack_of(spare, run_length, method).value();
}
[[nodiscard]] inline Slack measured_as(const Slack& slack, SlackMethod method, Length run_length) {
  return try_measured_as(slack, method, run_length).value();
}
#endif

}  // namespace layshaft
