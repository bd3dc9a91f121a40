// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/chain/fit.hpp>
#include <layshaft/chain/loop.hpp>
#include <layshaft/chain/slack.hpp>
#include <layshaft/chain/suspension.hpp>

#include <optional>
#include <string>

/// @file
/// The chain's slack at every point of the suspension's travel, and what to set at rest so that enough is left where it
/// is tightest.
///
/// A chain of some length goes round both sprockets; as the wheel moves, the centre distance and with it the taut
/// loop's length changes, and the chain's own does not. What it has more is spare length, which a hand feels as slack.
/// Where layshaft, pivot and axle stand in line there is least of it. A chain too tight there breaks the gearbox's
/// bearing or itself, so less than none at any point is refused.
namespace layshaft {

/// How much longer a chain is than the taut loop, below zero where it is too short.
LAYSHAFT_FORMULA(constexpr, Length, spare_length_of_links, (double links, double loop_links, Length pitch),
                 positive(links) && positive(loop_links) && positive(pitch), sources::definition,
                 (links - loop_links) * pitch)

/// The chain at one point of the travel.
struct SlackPoint {
  Angle angle;          ///< of the arm, below the horizontal
  Length centre;        ///< between the shafts
  Length spare_length;  ///< beyond the taut loop; below zero: the chain would be stretched
  Length slack;         ///< moved by hand at mid-span, up plus down, the other run straight; none where it is stretched
  Length sag;           ///< of the lower run that hangs, the upper straight; none where it is stretched

  friend constexpr bool operator==(const SlackPoint&, const SlackPoint&) noexcept = default;
};

namespace detail {

/// The spare length and the slack by hand of so many links at an angle, for whoever watches.
template <class Watch, class Drive, class WatchedLength, class WatchedLinks>
[[nodiscard]] auto spare_length_at(Watch watch, const Suspension& suspension, const Drive& drive,
                                   const WatchedLength& arm, const WatchedLinks& links, Angle angle) {
  const auto centre = suspension.centre(watch, arm, angle);
  const auto taut = taut_links(watch, drive, centre);
  return watch.step("spare_length", formula::spare_length_of_links{}, links, taut, drive.pitch);
}
template <class Watch, class Drive, class WatchedLength, class WatchedLinks>
[[nodiscard]] auto slack_at(Watch watch, const Suspension& suspension, const Drive& drive, const WatchedLength& arm,
                            const WatchedLinks& links, Angle angle) {
  const auto centre = suspension.centre(watch, arm, angle);
  const auto run_angle = run_angle_of(watch, drive, centre);
  const auto taut = taut_links(watch, drive, centre, run_angle);
  const auto spare = watch.step("spare_length", formula::spare_length_of_links{}, links, taut, drive.pitch);
  return watch.step("slack_by_hand", formula::slack_by_hand{}, spare,
                    watch.step(formula::run_length{}, centre, run_angle));
}

/// An error where the sprockets would touch or the chain could not go round at an end of the travel.
[[nodiscard]] inline std::optional<Error> collides_in_travel(const Suspension& suspension, const ChainLoop& loop,
                                                             Length arm) {
  for (const Angle& end : {suspension.droop(), suspension.bump()}) {
    const Length centre = suspension.centre(Unwatched(), arm, end);
    if (!(centre >= loop.smallest_centre()))
      return Error::range("centre distance within the travel", in_words(centre),
                          std::string("at least ")
                              .append(mm_at_least(loop.smallest_centre()))
                              .append(", where sprockets of ")
                              .append(teeth_of(loop.front(), loop.rear()))
                              .append(" teeth touch"));
  }
  return std::nullopt;
}

}  // namespace detail

/// A chain over two sprockets on a swingarm, the axle where it stands: slack as a function of the arm's angle.
class SlackThroughTravel {
 public:
  /// With the arm of a stated length: pivot to axle, as the adjuster holds it. Or a RangeError for links that cannot
  /// go round, an arm that does not reach, or sprockets that would touch within the travel.
  [[nodiscard]] static Result<SlackThroughTravel> with_arm(const Suspension& suspension, const ChainLoop& loop,
                                                           double links, Length arm) {
    if (const auto centre = loop.try_centre(links); !centre) return centre.error();
    if (const auto tight = suspension.try_tight_point(arm); !tight) return tight.error();
    if (auto error = detail::collides_in_travel(suspension, loop, arm)) return *std::move(error);
    return SlackThroughTravel(suspension, loop, links, arm);
  }
  /// With so much slack set at rest, moved by hand; the axle then stands where that leaves it. Errors as `with_arm`.
  [[nodiscard]] static Result<SlackThroughTravel> with_slack(const Suspension& suspension, const ChainLoop& loop,
                                                             double links, Length slack) {
    const auto arm = arm_with_slack(suspension, loop, links, slack, suspension.rest());
    if (!arm) return arm.error();
    return with_arm(suspension, loop, links, *arm);
  }
  /// With so much slack left at the tight point, moved by hand. Errors as `with_arm`.
  [[nodiscard]] static Result<SlackThroughTravel> with_least_slack(const Suspension& suspension, const ChainLoop& loop,
                                                                   double links, Length least) {
    const auto arm = arm_with_slack(suspension, loop, links, least, suspension.tightest());
    if (!arm) return arm.error();
    return with_arm(suspension, loop, links, *arm);
  }

  [[nodiscard]] constexpr const Suspension& suspension() const noexcept { return suspension_; }
  [[nodiscard]] constexpr const ChainLoop& loop() const noexcept { return loop_; }
  /// The chain's length in nominal pitches, a real number.
  [[nodiscard]] constexpr double links() const noexcept { return links_; }
  /// Pivot to axle.
  [[nodiscard]] constexpr Length arm() const noexcept { return arm_; }

  /// The chain at an angle within the travel; or a RangeError. Error: of the spare length within 8.9e-16 m; of the
  /// slack within 7.6e-15 m or, on a chain that is nearly taut, within 6.7e-11 m.
  [[nodiscard]] Result<SlackPoint> try_at(Angle angle) const {
    if (auto error = detail::outside("angle", angle, suspension_.bump(), suspension_.droop())) return *std::move(error);
    return at_angle(angle);
  }
#if LAYSHAFT_EXCEPTIONS
  /// @throws RangeError for an angle outside the travel.
  [[nodiscard]] SlackPoint at(Angle angle) const { return try_at(angle).value(); }
#endif
  /// Where it is tightest.
  [[nodiscard]] SlackPoint tight_point() const noexcept { return at_angle(suspension_.tightest()); }
  /// On the stand, where slack is set.
  [[nodiscard]] SlackPoint rest() const noexcept { return at_angle(suspension_.rest()); }
  /// Whether the chain would be stretched somewhere within the travel: never ride so.
  [[nodiscard]] bool too_tight() const noexcept { return tight_point().spare_length < -detail::end_tolerance; }

  /// The spare length at an angle within the travel, for whoever watches.
  template <class Watch>
  [[nodiscard]] auto spare_length(Watch watch, Angle angle) const {
    const auto drive = loop_.drive(watch);
    const auto arm = watch.given("arm", arm_);
    const auto links = watch.given("links", links_);
    return detail::spare_length_at(watch, suspension_, drive, arm, links, angle);
  }
  /// The slack by hand at an angle where the chain is not stretched, for whoever watches.
  template <class Watch>
  [[nodiscard]] auto slack(Watch watch, Angle angle) const {
    const auto drive = loop_.drive(watch);
    const auto arm = watch.given("arm", arm_);
    const auto links = watch.given("links", links_);
    return detail::slack_at(watch, suspension_, drive, arm, links, angle);
  }

  /// How a number came about: `explain("slack", angle)` or "spare length". Defined in chain/explain.hpp, which is
  /// opt-in.
  [[nodiscard]] Result<Working> try_explain(std::string_view what, Angle angle) const;
#if LAYSHAFT_EXCEPTIONS
  /// @throws ParseError that lists the names there are; RangeError for an angle outside the travel.
  [[nodiscard]] Working explain(std::string_view what, Angle angle) const;
#endif

  friend constexpr bool operator==(const SlackThroughTravel&, const SlackThroughTravel&) noexcept = default;

 private:
  SlackThroughTravel(const Suspension& suspension, const ChainLoop& loop, double links, Length arm) noexcept
      : suspension_(suspension), loop_(loop), links_(links), arm_(arm) {}

  /// The arm with which the chain has so much slack at an angle.
  [[nodiscard]] static Result<Length> arm_with_slack(const Suspension& suspension, const ChainLoop& loop, double links,
                                                     Length slack, Angle angle) {
    const auto taut = loop.try_centre(links);
    if (!taut) return taut.error();
    if (auto error = detail::outside("slack", slack, Length(), 0.25 * *taut)) return *std::move(error);
    const Length centre = detail::centre_with_slack(loop, links, slack);
    const SuspensionParts& parts = suspension.parts();
    if (!formula::arm_of_centre::in_range(parts.layshaft_ahead, parts.layshaft_above, centre, angle))
      return Error::value(std::string("no arm of this swingarm leaves ")
                              .append(detail::in_words(slack))
                              .append(" of slack on ")
                              .append(detail::in_words(links))
                              .append(" links"));
    return suspension.arm_of(Unwatched(), centre, angle);
  }
  [[nodiscard]] SlackPoint at_angle(Angle angle) const noexcept {
    const auto drive = loop_.drive(Unwatched());
    const Length centre = suspension_.centre(Unwatched(), arm_, angle);
    const Angle run_angle = detail::run_angle_of(Unwatched(), drive, centre);
    const Length run = run_length(centre, run_angle);
    const Length spare = detail::spare_length_at(Unwatched(), suspension_, drive, arm_, links_, angle);
    const Length loose = std::max(spare, Length());
    return {angle, centre, spare, slack_by_hand(loose, run), hanging_sag(loose, run)};
  }

  Suspension suspension_;
  ChainLoop loop_;
  double links_;
  Length arm_;
};

/// What the slack through the travel is worked out from besides suspension, loop and links: either.
struct SlackAsked {
  std::optional<Length> slack = {};  ///< set at rest, moved by hand
  std::optional<Length> arm = {};    ///< pivot to axle; absent both: the suspension's own
};

/// Slack at every point of the travel; `links` is a real number, so that a worn or long chain counts as more links.
/// Errors as SlackThroughTravel::with_arm.
[[nodiscard]] inline Result<SlackThroughTravel> try_slack_through_travel(const Suspension& suspension,
                                                                         const ChainLoop& loop, double links,
                                                                         const SlackAsked& asked = {}) {
  if (asked.slack && asked.arm) return Error::value("state the slack set at rest, or the arm, not both");
  if (asked.slack) return SlackThroughTravel::with_slack(suspension, loop, links, *asked.slack);
  return SlackThroughTravel::with_arm(suspension, loop, links, asked.arm.value_or(suspension.arm()));
}

/// The slack to set at rest, moved by hand, so that at the tight point there is left so much: what a hand should feel
/// on the stand. Errors as above.
[[nodiscard]] inline Result<Length> try_slack_to_set(const Suspension& suspension, const ChainLoop& loop, double links,
                                                     Length least) {
  const auto travel = SlackThroughTravel::with_least_slack(suspension, loop, links, least);
  if (!travel) return travel.error();
  return travel->rest().slack;
}

/// The manual's slack for the stock sprockets, carried over: what to set at rest on other sprockets so that the same
/// slack is left at the tight point. Errors as above; an Error where the stock chain itself would be too tight.
[[nodiscard]] inline Result<Length> try_carried_slack(const Suspension& suspension, const ChainLoop& stock_loop,
                                                      double stock_links, Length manual_slack, const ChainLoop& loop,
                                                      double links) {
  const auto stock = SlackThroughTravel::with_slack(suspension, stock_loop, stock_links, manual_slack);
  if (!stock) return stock.error();
  if (stock->too_tight())
    return Error::value(std::string("the stock chain with ")
                            .append(detail::in_words(manual_slack))
                            .append(" of slack at rest would be too tight at its tight point: check the suspension's "
                                    "geometry, or how the manual measures slack"));
  return try_slack_to_set(suspension, loop, links, stock->tight_point().slack);
}
#if LAYSHAFT_EXCEPTIONS
/// @throws Error or RangeError as the `try_` functions say.
[[nodiscard]] inline SlackThroughTravel slack_through_travel(const Suspension& suspension, const ChainLoop& loop,
                                                             double links, const SlackAsked& asked = {}) {
  return try_slack_through_travel(suspension, loop, links, asked).value();
}
[[nodiscard]] inline Length slack_to_set(const Suspension& suspension, const ChainLoop& loop, double links,
                                         Length least) {
  return try_slack_to_set(suspension, loop, links, least).value();
}
[[nodiscard]] inline Length carried_slack(const Suspension& suspension, const ChainLoop& stock_loop, double stock_links,
                                          Length manual_slack, const ChainLoop& loop, double links) {
  return try_carried_slack(suspension, stock_loop, stock_links, manual_slack, loop, links).value();
}
#endif

}  // namespace layshaft
