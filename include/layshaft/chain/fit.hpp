// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/chain/adjuster.hpp>
#include <layshaft/chain/loop.hpp>
#include <layshaft/chain/slack.hpp>
#include <layshaft/core/fixed_list.hpp>
#include <layshaft/core/watch.hpp>

#include <array>
#include <cstdlib>  // abs of an int
#include <optional>
#include <string>
#include <vector>  // only of what else was possible, when somebody watches

/// @file
/// Whole links in an adjuster: where the axle then stands, and the shortest chain that goes in.
namespace layshaft {

/// How long a new chain may be beyond its nominal length; it is never shorter.
inline constexpr double new_chain_elongation = 0.0015;
/// Where that limit stands.
inline constexpr Source new_chain_elongation_source{"ISO 606, length of a new chain", Certainty::published};

/// Whole links over two sprockets, in an adjuster. The band is that of a new chain: low and nominal at its nominal
/// length, high when it is as long as the standard allows.
struct ChainFit {
  Links links;
  Band<Length> centre;             ///< where the axle stands at the stated slack
  bool fits;                       ///< the whole band lies inside the adjuster, to a nanometre
  Band<Length> adjuster_forward;   ///< what is left to move forward; negative where it stands too far forward
  Band<Length> adjuster_rearward;  ///< what is left to move back; negative where it stands too far back
  /// How far the chain can wear longer, as a fraction of its nominal length, until the axle at the stated slack stands
  /// at the rear end of the adjuster. Low: a new chain that is already as long as the standard allows.
  Band<double> wear_room;
  bool offset_link;  ///< an odd number, which closes only with an offset link

  /// How much the chain can still stretch: `wear_room` by its everyday name.
  [[nodiscard]] constexpr const Band<double>& stretch_left() const noexcept { return wear_room; }

  friend constexpr bool operator==(const ChainFit&, const ChainFit&) noexcept = default;
};

/// Two sprockets and the shortest even number of links that closes over them in an adjuster.
struct SprocketPair {
  Teeth front = Teeth::literal(Teeth::least);
  Teeth rear = Teeth::literal(Teeth::least);
  Links links = Links::literal(Links::least);

  friend constexpr bool operator==(const SprocketPair&, const SprocketPair&) noexcept = default;
};

/// The links of nominal length that a longer chain counts as.
// clang-format off
LAYSHAFT_FORMULA(constexpr, double, effective_links, (Links links, double elongation),
                 is_finite(elongation) && elongation > -1.0, sources::definition, links * (1.0 + elongation))
// clang-format on

/// The links, a real number, of a loop that is longer than the taut one by a spare length.
LAYSHAFT_FORMULA(constexpr, double, links_with_slack, (double loop_links, Length spare_length, Length pitch),
                 positive(loop_links) && is_finite(spare_length) && spare_length >= 0.0_mm && positive(pitch),
                 sources::geometry, loop_links + spare_length / pitch)

/// How far the axle can move forward.
LAYSHAFT_FORMULA(constexpr, Length, adjuster_forward, (Length centre, Length centre_min),
                 is_finite(centre) && is_finite(centre_min), sources::definition, centre - centre_min)

/// How far the axle can move back.
LAYSHAFT_FORMULA(constexpr, Length, adjuster_rearward, (Length centre, Length centre_max),
                 is_finite(centre) && is_finite(centre_max), sources::definition, centre_max - centre)

/// How far a chain that is already longer than nominal can wear until the axle stands at the rear end, from the links
/// that a loop of nominal length would have there.
LAYSHAFT_FORMULA(constexpr, double, wear_room, (double links_at_end, Links links, double elongation),
                 positive(links_at_end) && is_finite(elongation), sources::definition,
                 links_at_end / links - 1.0 - elongation)

namespace detail {

/// How far from an end of the adjuster an axle may be computed to stand and still count as at it.
inline constexpr Length end_tolerance = 1e-6 * units::mm;

/// The nominal links, a real number, that leave the slack at a centre distance, for whoever watches.
template <class Watch, class Drive, class Centre, class Slack>
[[nodiscard]] auto links_with_slack(Watch watch, const Drive& drive, const Centre& centre, const Slack& slack) {
  const auto angle = run_angle_of(watch, drive, centre);
  const auto taut = taut_links(watch, drive, centre, angle);
  const auto spare = watch.step(formula::spare_length{}, slack, watch.step(formula::run_length{}, centre, angle));
  return watch.step(formula::links_with_slack{}, taut, spare, drive.pitch);
}
/// The same at a plain centre distance, at which the pitch circles stay apart.
[[nodiscard]] inline double links_with_slack(const ChainLoop& loop, Length centre, Length slack) noexcept {
  return links_with_slack(Unwatched(), loop.drive(Unwatched()), centre, slack);
}

/// The centre distance at which so many nominal links leave the slack; NaN where there is none. The spare length
/// depends only weakly on the centre distance, so putting one into the other settles within a few rounds.
[[nodiscard]] inline Length centre_with_slack(const ChainLoop& loop, double links, Length slack) noexcept {
  constexpr Length nothing = Length::from_value(std::numeric_limits<double>::quiet_NaN());
  const Length pitch = loop.series().pitch();
  const Length front = pitch_diameter(pitch, loop.front());
  const Length rear = pitch_diameter(pitch, loop.rear());
  Length centre = chain_centre(pitch, loop.front(), loop.rear(), links);
  if (slack == Length()) return centre;
  constexpr int enough = 100;
  for (int i = 0; i < enough; ++i) {
    if (!is_finite(centre) || 2.0 * centre < front + rear) return nothing;
    const Length spare = spare_length(slack, run_length(centre, run_angle(front, rear, centre)));
    const Length next = chain_centre(pitch, loop.front(), loop.rear(), links - spare / pitch);
    const bool settled = std::fabs((next - centre) / centre) <= 8.0 * std::numeric_limits<double>::epsilon();
    centre = next;
    if (settled) return centre;
  }
  return nothing;
}

/// How much longer than nominal a new chain is at a corner.
template <class Watch>
[[nodiscard]] constexpr auto elongation_at(Watch watch, Corner length) {
  return watch.looked_up("elongation", length == Corner::high ? new_chain_elongation : 0.0, "new chain",
                         new_chain_elongation_source);
}
/// Where the axle stands with so many links at the adjuster's slack, for whoever watches; NaN where they do not close.
template <class Watch, class Drive, class WatchedLinks>
[[nodiscard]] auto axle_position(Watch watch, const ChainLoop& loop, const Drive& drive, const WatchedLinks& links,
                                 Length slack, Corner length) {
  const auto effective = watch.step(formula::effective_links{}, links, elongation_at(watch, length));
  return watch.solved(
      "centre", centre_with_slack(loop, watch.plain(effective), slack), effective,
      [&](const auto& centre) { return links_with_slack(watch, drive, centre, watch.given("slack", slack)); });
}
/// How far the chain can wear longer until the axle stands at the rear end, for whoever watches.
template <class Watch, class Drive, class WatchedLinks>
[[nodiscard]] auto wear_room_of(Watch watch, const Drive& drive, const WatchedLinks& links, const Adjuster& adjuster,
                                Corner length) {
  const auto slack = watch.given("slack", adjuster.slack());
  const auto rear_end = watch.given("centre_max", adjuster.centre_max());
  const auto at_end = links_with_slack(watch.on(Scope::rear_end), drive, rear_end, slack);
  return watch.step(formula::wear_room{}, at_end, links, elongation_at(watch, length));
}

/// The fit, or nothing where the sprockets would collide.
[[nodiscard]] inline std::optional<ChainFit> fit(const ChainLoop& loop, Links links,
                                                 const Adjuster& adjuster) noexcept {
  const auto drive = loop.drive(Unwatched());
  const Length least = adjuster.centre_min();
  const Length greatest = adjuster.centre_max();
  if (!apart_at(drive, greatest)) return std::nullopt;
  const Length low = axle_position(Unwatched(), loop, drive, links, adjuster.slack(), Corner::low);
  const Length high = axle_position(Unwatched(), loop, drive, links, adjuster.slack(), Corner::high);
  if (!(low >= loop.smallest_centre() - end_tolerance && is_finite(high))) return std::nullopt;
  const Band<Length> centre{low, low, high};
  return ChainFit{
      links,
      centre,
      low >= least - end_tolerance && high <= greatest + end_tolerance,
      over(centre, [&](Length at) { return adjuster_forward(at, least); }),
      over(centre, [&](Length at) { return adjuster_rearward(at, greatest); }),
      over_runs(one_cause, [&](Corner at) { return wear_room_of(Unwatched(), drive, links, adjuster, at); }),
      links.count() % 2 != 0};
}

[[nodiscard]] inline bool fits(const ChainLoop& loop, Links links, const Adjuster& adjuster) noexcept {
  const auto stand = fit(loop, links, adjuster);
  return stand && stand->fits;
}

/// The foremost place of the axle, for whoever watches.
template <class Watch, class Drive>
[[nodiscard]] auto foremost_centre(Watch watch, const ChainLoop& loop, const Drive& drive, const Adjuster& adjuster) {
  const auto front_end = watch.given("centre_min", adjuster.centre_min());
  const auto touching = loop.smallest_centre(watch, drive);
  const Length foremost = std::max(adjuster.centre_min(), watch.plain(touching));
  return watch.chosen(
      "foremost_centre", foremost, "the front end of the adjuster, or where the teeth touch if that lies behind it",
      [&] { return std::array{std::min(adjuster.centre_min(), watch.plain(touching))}; }, front_end, touching);
}
[[nodiscard]] inline Length foremost_centre(const ChainLoop& loop, const Adjuster& adjuster) noexcept {
  return foremost_centre(Unwatched(), loop, loop.drive(Unwatched()), adjuster);
}
/// The links, a real number, that leave the slack with the axle at its foremost place, for whoever watches.
template <class Watch, class Drive>
[[nodiscard]] auto fewest_links(Watch watch, const ChainLoop& loop, const Drive& drive, const Adjuster& adjuster) {
  const auto slack = watch.given("slack", adjuster.slack());
  return links_with_slack(watch.on(Scope::front_end), drive, foremost_centre(watch, loop, drive, adjuster), slack);
}

/// The shortest even number of links with the axle at or behind its foremost place, whether or not it then runs past
/// the rear end; nothing where that is no number of links.
[[nodiscard]] inline std::optional<Links> shortest_behind(const ChainLoop& loop, const Adjuster& adjuster) {
  const double links = fewest_links(Unwatched(), loop, loop.drive(Unwatched()), adjuster);
  if (!(links <= double(Links::greatest))) return std::nullopt;
  const auto whole = try_round_links(links);
  return whole ? std::optional<Links>(*whole) : std::nullopt;
}

/// The rule by which a chain is chosen, for whoever watches: `links` is what it gives. Others that fit are longer.
template <class Watch, class Drive>
[[nodiscard]] auto chosen_links(Watch watch, const ChainLoop& loop, const Drive& drive, const Adjuster& adjuster,
                                Links links) {
  const auto others = [&] {
    std::vector<Links> longer;
    constexpr std::size_t told = 4;
    for (int count = links.count() + 2; longer.size() < told && count <= Links::greatest; count += 2) {
      const Links more = *Links::make(count);
      if (!fits(loop, more, adjuster)) break;
      longer.push_back(more);
    }
    return longer;
  };
  return watch.chosen("links", links, "the next even number, so that the axle stands at or behind its foremost place",
                      others, fewest_links(watch, loop, drive, adjuster));
}

/// The shortest even number of links that fits, if any does.
[[nodiscard]] inline std::optional<Links> shortest_that_fits(const ChainLoop& loop, const Adjuster& adjuster) {
  const auto links = shortest_behind(loop, adjuster);
  if (!links || !fits(loop, *links, adjuster)) return std::nullopt;
  return links;
}

[[nodiscard]] inline std::string teeth_of(Teeth front, Teeth rear) {
  return std::to_string(front.count()).append("/").append(std::to_string(rear.count()));
}
[[nodiscard]] inline std::string links_in_words(int links) { return std::to_string(links).append(" links"); }
/// A length in millimetres as one tells it, to 0.01 mm.
[[nodiscard]] inline std::string mm_in_words(Length length) {
  return to_text(std::round(length / units::mm * 100.0) / 100.0, 10).append(" mm");
}

/// An error where the rear end of the adjuster lies where the teeth touch.
[[nodiscard]] inline std::optional<Error> collides(const ChainLoop& loop, const Adjuster& adjuster) {
  if (adjuster.centre_max() >= loop.smallest_centre()) return std::nullopt;
  return Error::range("centre_max", in_words(adjuster.centre_max()),
                      std::string("at least ")
                          .append(mm_at_least(loop.smallest_centre()))
                          .append(", where sprockets of ")
                          .append(teeth_of(loop.front(), loop.rear()))
                          .append(" teeth touch"));
}

}  // namespace detail

/// How far `nearest_sprockets` looks: teeth more or fewer in front, and behind.
inline constexpr int nearest_front = 1;
inline constexpr int nearest_rear = 3;
/// As many as there are to find.
using SprocketPairs = FixedList<SprocketPair, (2 * nearest_front + 1) * (2 * nearest_rear + 1) - 1>;

/// The sprockets next to those of the loop, within a tooth in front and three behind, over which an even number of
/// links closes in the adjuster. Those that change the fewest teeth come first; of these, those that change the ratio
/// least; then the smaller front sprocket.
[[nodiscard]] inline SprocketPairs nearest_sprockets(const ChainLoop& loop, const Adjuster& adjuster) {
  struct Candidate {
    SprocketPair pair;
    int teeth_changed = 0;
    double ratio_change = 0.0;
  };
  std::array<Candidate, SprocketPairs::capacity> found{};
  std::size_t size = 0;
  const double ratio = loop.rear() / loop.front();
  for (int front_step = -nearest_front; front_step <= nearest_front; ++front_step) {
    for (int rear_step = -nearest_rear; rear_step <= nearest_rear; ++rear_step) {
      if (front_step == 0 && rear_step == 0) continue;
      const int front_count = loop.front().count() + front_step;
      const int rear_count = loop.rear().count() + rear_step;
      if (std::min(front_count, rear_count) < Teeth::least || std::max(front_count, rear_count) > Teeth::greatest)
        continue;
      const Teeth front = *Teeth::make(front_count);
      const Teeth rear = *Teeth::make(rear_count);
      const auto links = detail::shortest_that_fits(ChainLoop(loop.series(), front, rear), adjuster);
      if (!links) continue;
      const double change = rear / front / ratio;
      const Candidate candidate{
          {front, rear, *links}, std::abs(front_step) + std::abs(rear_step), std::max(change, 1.0 / change)};
      const auto before = [](const Candidate& a, const Candidate& b) {
        return a.teeth_changed != b.teeth_changed ? a.teeth_changed < b.teeth_changed : a.ratio_change < b.ratio_change;
      };
      std::size_t place = size++;
      for (; place > 0 && before(candidate, found[place - 1]); --place) found[place] = found[place - 1];
      found[place] = candidate;
    }
  }
  SprocketPairs pairs;
  for (std::size_t i = 0; i < size; ++i) pairs.push_back(found[i].pair);
  return pairs;
}

/// Where the axle stands with so many links, even or odd, at the adjuster's slack. A chain that does not fit the
/// adjuster is no error: `fits` is false, and what is left at one end is negative.
///
/// A worn or long chain counts as more links of nominal pitch; that it also rides a little higher on the teeth is left
/// out.
/// @return the fit; or a RangeError for fewer links than the sprockets can carry with that slack, or an adjuster that
/// ends where the teeth touch.
[[nodiscard]] inline Result<ChainFit> try_fit_links(const ChainLoop& loop, Links links, const Adjuster& adjuster) {
  if (auto error = detail::collides(loop, adjuster)) return *error;
  if (auto centre = loop.try_centre(links); !centre) return centre.error();
  if (const auto stand = detail::fit(loop, links, adjuster)) return *stand;
  const double least = detail::links_with_slack(loop, loop.smallest_centre(), adjuster.slack());
  return Error::range("number of links", std::to_string(links.count()),
                      std::string("at least ")
                          .append(std::to_string(static_cast<long>(std::ceil(least))))
                          .append(" for ")
                          .append(detail::in_words(adjuster.slack()))
                          .append(" of slack on sprockets of ")
                          .append(detail::teeth_of(loop.front(), loop.rear()))
                          .append(" teeth"));
}

/// The shortest even number of links that fits the adjuster at its slack, which leaves the most room to move the axle
/// back as the chain wears.
/// @return the links; or an error that says by how much the two nearest even numbers miss, and which nearest sprockets
/// would close.
[[nodiscard]] inline Result<Links> try_shortest_links(const ChainLoop& loop, const Adjuster& adjuster) {
  if (auto error = detail::collides(loop, adjuster)) return *error;
  if (const auto links = detail::shortest_that_fits(loop, adjuster)) return *links;

  std::string sentence = "no even number of links fits an adjuster of ";
  sentence.append(detail::in_words(adjuster.centre_min()))
      .append(" to ")
      .append(detail::in_words(adjuster.centre_max()))
      .append(" with ")
      .append(detail::in_words(adjuster.slack()))
      .append(" of slack on sprockets of ")
      .append(detail::teeth_of(loop.front(), loop.rear()))
      .append(" teeth");
  const auto behind = detail::shortest_behind(loop, adjuster);
  if (!behind) {
    return Error::value(sentence.append(": it takes more than ").append(detail::links_in_words(Links::greatest)));
  }
  const Length foremost = detail::foremost_centre(loop, adjuster);
  const Length short_centre = detail::centre_with_slack(loop, behind->count() - 2.0, adjuster.slack());
  sentence.append(": ").append(detail::links_in_words(behind->count() - 2));
  if (is_finite(short_centre))
    sentence.append(" leave the axle ")
        .append(detail::mm_in_words(foremost - short_centre))
        .append(foremost > adjuster.centre_min() ? " short of where the teeth touch" : " short of its front end");
  else
    sentence.append(" do not close");
  if (const auto stand = detail::fit(loop, *behind, adjuster)) {
    sentence.append(", ")
        .append(detail::links_in_words(behind->count()))
        .append(" run up to ")
        .append(detail::mm_in_words(stand->centre.high - adjuster.centre_max()))
        .append(" past its rear end");
  }
  const SprocketPairs pairs = nearest_sprockets(loop, adjuster);
  if (pairs.empty())
    return Error::value(sentence.append("; no sprockets within a tooth in front and three behind would close either"));
  sentence.append("; the nearest sprockets that close: ");
  constexpr std::size_t named = 3;
  for (std::size_t i = 0; i < std::min(named, pairs.size()); ++i) {
    if (i > 0) sentence.append(", ");
    sentence.append(detail::teeth_of(pairs[i].front, pairs[i].rear))
        .append(" with ")
        .append(detail::links_in_words(pairs[i].links.count()));
  }
  return Error::value(sentence);
}

#if LAYSHAFT_EXCEPTIONS
/// Where the axle stands with so many links, even or odd, at the adjuster's slack.
/// @throws RangeError as `try_fit_links` returns it.
[[nodiscard]] inline ChainFit fit_links(const ChainLoop& loop, Links links, const Adjuster& adjuster) {
  return try_fit_links(loop, links, adjuster).value();
}
/// The shortest even number of links that fits the adjuster at its slack.
/// @throws Error that says by how much the nearest even numbers miss, and which nearest sprockets would close.
[[nodiscard]] inline Links shortest_links(const ChainLoop& loop, const Adjuster& adjuster) {
  return try_shortest_links(loop, adjuster).value();
}
#endif

}  // namespace layshaft
