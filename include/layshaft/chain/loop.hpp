// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/chain/rounding.hpp>
#include <layshaft/chain/sprocket.hpp>
#include <layshaft/core/checks.hpp>

#include <algorithm>  // max
#include <cmath>      // atan, ceil, floor
#include <limits>
#include <optional>
#include <string>

/// @file
/// The closed loop of a chain over two sprockets: links for a centre distance, and centre distance for links.
namespace layshaft {

/// The angle between a straight run and the line through both shafts; negative when the front sprocket is the larger.
LAYSHAFT_FORMULA(inline, Angle, run_angle, (Length front_pitch_diameter, Length rear_pitch_diameter, Length centre),
                 positive(front_pitch_diameter) && positive(rear_pitch_diameter) && is_finite(centre) &&
                     2.0 * centre >= front_pitch_diameter + rear_pitch_diameter,
                 sources::geometry, arcsin((rear_pitch_diameter - front_pitch_diameter) / (2.0 * centre)))

/// The links of the taut loop, a real number: two straight runs, and on each sprocket its share of the teeth. The
/// chain lies on the corners of the pitch polygons; an arc of the pitch circle would be too long.
LAYSHAFT_FORMULA(inline, double, loop_links, (Length pitch, Teeth front, Teeth rear, Length centre, Angle run_angle),
                 positive(pitch) && positive(centre) && is_finite(run_angle), sources::geometry,
                 2.0 * centre / pitch * cos(run_angle) + (front + rear) / 2.0 + run_angle / half_turn * (rear - front))

/// The length of a straight run.
LAYSHAFT_FORMULA(inline, Length, run_length, (Length centre, Angle run_angle), positive(centre) && is_finite(run_angle),
                 sources::geometry, cos(run_angle) * centre)

/// The angle through which the chain lies on the front sprocket.
LAYSHAFT_FORMULA(constexpr, Angle, wrap_front, (Angle run_angle), is_finite(run_angle), sources::geometry,
                 half_turn - 2.0 * run_angle)

/// The angle through which the chain lies on the rear sprocket.
LAYSHAFT_FORMULA(constexpr, Angle, wrap_rear, (Angle run_angle), is_finite(run_angle), sources::geometry,
                 half_turn + 2.0 * run_angle)

namespace sources {
inline constexpr Source bhandari_chain{"Bhandari, Design of Machine Elements, ch. 14", Certainty::published};
}

/// The handbook's links for a centre distance: the first terms of the exact loop's series. Close where the centre
/// distance is many pitches; `chain_links` is exact.
LAYSHAFT_FORMULA(constexpr, double, links_approximate, (Length pitch, Teeth front, Teeth rear, Length centre),
                 positive(pitch) && positive(centre), sources::bhandari_chain,
                 2.0 * centre / pitch + (front + rear) / 2.0 +
                     (rear - front) / (2.0 * pi) * ((rear - front) / (2.0 * pi)) * pitch / centre)

/// The handbook's centre distance for a number of links, the inverse of `links_approximate`.
LAYSHAFT_FORMULA(inline, Length, centre_approximate, (Length pitch, Teeth front, Teeth rear, double links),
                 positive(pitch) && is_finite(links) && 2.0 * links > front + rear &&
                     (links - (front + rear) / 2.0) * (links - (front + rear) / 2.0) >=
                         2.0 * ((rear - front) / pi) * ((rear - front) / pi),
                 sources::bhandari_chain,
                 (pitch * (links - (front + rear) / 2.0) +
                  sqrt(pitch * pitch *
                       ((links - (front + rear) / 2.0) * (links - (front + rear) / 2.0) -
                        2.0 * ((rear - front) / pi) * ((rear - front) / pi)))) /
                     4.0)

/// Where the teeth of two sprockets touch.
LAYSHAFT_FORMULA(constexpr, Length, smallest_centre, (Length front_tip_diameter, Length rear_tip_diameter),
                 positive(front_tip_diameter) && positive(rear_tip_diameter), sources::geometry,
                 (front_tip_diameter + rear_tip_diameter) / 2.0)

namespace detail {

/// A chain drive's pitch, teeth and pitch diameters, as whoever watches knows them.
template <class WatchedLength, class WatchedTeeth>
struct WatchedDrive {
  WatchedLength pitch;
  WatchedTeeth front, rear;
  WatchedLength front_diameter, rear_diameter;
};
template <class Watch, class WatchedLength, class WatchedTeeth>
[[nodiscard]] auto watched_drive(Watch watch, const WatchedLength& pitch, const WatchedTeeth& front,
                                 const WatchedTeeth& rear) {
  return WatchedDrive<WatchedLength, WatchedTeeth>{
      // in this order, which braces keep
      pitch, front, rear, watch.step("front_pitch_diameter", formula::pitch_diameter{}, pitch, front),
      watch.step("rear_pitch_diameter", formula::pitch_diameter{}, pitch, rear)};
}
template <class Watch, class Drive, class Centre>
[[nodiscard]] auto run_angle_of(Watch watch, const Drive& drive, const Centre& centre) {
  return watch.step(formula::run_angle{}, drive.front_diameter, drive.rear_diameter, centre);
}
template <class Watch, class Drive, class Centre, class Angle>
[[nodiscard]] auto taut_links(Watch watch, const Drive& drive, const Centre& centre, const Angle& run_angle) {
  return watch.step(formula::loop_links{}, drive.pitch, drive.front, drive.rear, centre, run_angle);
}
template <class Watch, class Drive, class Centre>
[[nodiscard]] auto taut_links(Watch watch, const Drive& drive, const Centre& centre) {
  return taut_links(watch, drive, centre, run_angle_of(watch, drive, centre));
}
/// Whether the pitch circles stay apart.
template <class Drive>
[[nodiscard]] bool apart_at(const Drive& drive, Length centre) noexcept {
  return 2.0 * centre >= drive.front_diameter + drive.rear_diameter;
}

}  // namespace detail

/// The links of the taut loop for a centre distance, exactly. Error: within 2.3 ulp. Unchecked, for use in bulk.
/// @return a real number; NaN where the pitch is not above zero, or the pitch circles overlap.
[[nodiscard]] inline double chain_links(Length pitch, Teeth front, Teeth rear, Length centre) noexcept {
  constexpr double nothing = std::numeric_limits<double>::quiet_NaN();
  if (!positive(pitch) || !is_finite(centre)) return nothing;
  const auto drive = detail::watched_drive(Unwatched(), pitch, front, rear);
  if (!detail::apart_at(drive, centre)) return nothing;
  const double links = detail::taut_links(Unwatched(), drive, centre);
  return is_finite(links) ? links : nothing;
}

/// The centre distance at which a taut loop has so many links, a real number: the inverse of `chain_links`. Error:
/// within 2.8 ulp of the centre distance or, where one sprocket is much the larger and nearly touches the other, of
/// what the links amount to there. Unchecked, for use in bulk.
///
/// In pitches, with l the straight run, D the difference of the pitch radii and W that of the teeth over π, the loop is
/// 2 l + W atan(D / l), which rises and is convex in l wherever the pitch circles stay apart; so Newton's steps on l,
/// from the closed form of the handbook, come down on the root from the second on and double their digits each time:
/// two or three for a usual drive.
/// @return NaN where the pitch is not above zero, or so few links close only with pitch circles that overlap.
[[nodiscard]] inline Length chain_centre(Length pitch, Teeth front, Teeth rear, double links) noexcept {
  constexpr double epsilon = std::numeric_limits<double>::epsilon();
  constexpr Length nothing = Length::from_value(std::numeric_limits<double>::quiet_NaN());
  if (!positive(pitch) || !is_finite(links)) return nothing;
  const double front_radius = 0.5 / std::sin(pi / front.count());
  const double rear_radius = 0.5 / std::sin(pi / rear.count());
  const double radii = rear_radius - front_radius;  // D
  const double teeth = (rear - front) / pi;         // W
  const double straight = links - (front + rear) / 2.0;
  if (!(straight > 0.0)) return nothing;

  double run = 0.25 * (straight + std::sqrt(std::max(0.0, straight * straight - 8.0 * teeth * radii)));
  constexpr int enough = 40;
  for (int i = 0; i < enough; ++i) {
    const double excess = (2.0 * run - straight) + teeth * std::atan(radii / run);
    const double slope = 2.0 - teeth * radii / (run * run + radii * radii);
    const double step = excess / slope;
    run -= step;
    if (!(run > 0.0 && slope > 0.0)) return nothing;
    if (std::fabs(step) <= 1e-9 * run) break;  // the next step would be below the last bit
  }
  const double centre = std::sqrt(run * run + radii * radii);
  if (!(centre >= (front_radius + rear_radius) * (1.0 - 8.0 * epsilon))) return nothing;
  const Length length = centre * pitch;
  return is_finite(length) ? length : nothing;
}

namespace detail {

/// A limit in millimetres for a message, rounded to 0.01 mm so that the printed value still lies inside.
[[nodiscard]] inline std::string mm_at_least(Length length) {
  return to_text(std::ceil(length / units::mm * 100.0) / 100.0, 10).append(" mm");
}
[[nodiscard]] inline std::string mm_at_most(Length length) {
  return to_text(std::floor(length / units::mm * 100.0) / 100.0, 10).append(" mm");
}

}  // namespace detail

class Working;  // to explain, include <layshaft/explain.hpp>

/// Where a number of a loop is asked for: at a centre distance, or for so many links.
struct LoopQuestion {
  std::optional<Length> centre = {};
  std::optional<double> links = {};
};

/// A chain series over two sprockets. Every series goes with every pair of sprockets; it is the centre distance and
/// the links that can be wrong.
class ChainLoop {
 public:
  [[nodiscard]] static Result<ChainLoop> make(ChainSeries series, Teeth front, Teeth rear) {
    return ChainLoop(series, front, rear);
  }
  constexpr ChainLoop(ChainSeries series, Teeth front, Teeth rear) noexcept
      : series_(series), front_(front), rear_(rear) {}

  [[nodiscard]] constexpr ChainSeries series() const noexcept { return series_; }
  [[nodiscard]] constexpr Teeth front() const noexcept { return front_; }
  [[nodiscard]] constexpr Teeth rear() const noexcept { return rear_; }

  /// Pitch and teeth for whoever watches: `calculation(pitch, front, rear)`.
  template <class Watch, class Calculation>
  [[nodiscard]] auto with_parts(Watch watch, Calculation calculation) const {
    const auto pitch = watch.looked_up("pitch", series_.pitch(), series_.name(), series_.source(ChainProperty::pitch));
    const auto front = watch.given("front", front_);
    const auto rear = watch.given("rear", rear_);
    return calculation(pitch, front, rear);
  }
  /// Pitch, teeth and pitch diameters for whoever watches.
  template <class Watch>
  [[nodiscard]] auto drive(Watch watch) const {
    return with_parts(watch, [&](const auto&... parts) { return detail::watched_drive(watch, parts...); });
  }
  /// Where the teeth touch, for whoever watches; `drive` is `drive(watch)`.
  template <class Watch, class Drive>
  [[nodiscard]] auto smallest_centre(Watch watch, const Drive& drive) const {
    const auto tip = [&](ValueName name, const auto& diameter) {
      return detail::greatest_tip(watch, name, diameter, drive.pitch, series_);
    };
    const auto front_tip = tip("front_tip_diameter", drive.front_diameter);
    return watch.step(formula::smallest_centre{}, front_tip, tip("rear_tip_diameter", drive.rear_diameter));
  }

  /// Where the teeth of the two sprockets touch, at the greatest tip diameters the standard allows.
  [[nodiscard]] Length smallest_centre() const noexcept { return smallest_centre(Unwatched(), drive(Unwatched())); }
  /// Where the loop has the most links a Links can count.
  [[nodiscard]] Length greatest_centre() const noexcept {
    return chain_centre(series_.pitch(), front_, rear_, double(Links::greatest));
  }
  /// The fewest whole links that close before the teeth touch.
  [[nodiscard]] Links fewest_links() const noexcept {
    const double links = chain_links(series_.pitch(), front_, rear_, smallest_centre());
    return *Links::make(static_cast<int>(std::ceil(links - whole_link_tolerance)));
  }

  /// The links of the taut loop, exactly, a real number; or a RangeError for a centre distance that is not finite, at
  /// which the sprockets collide, or that takes more links than can be counted.
  [[nodiscard]] Result<double> try_links(Length centre) const {
    if (auto error = outside(centre)) return *error;
    return chain_links(series_.pitch(), front_, rear_, centre);
  }
  /// The centre distance of the taut loop, exactly, for a real number of links; or a RangeError for fewer links than
  /// the sprockets can carry.
  [[nodiscard]] Result<Length> try_centre(double links) const {
    const Length smallest = smallest_centre();
    if (!is_finite(links) || links > double(Links::greatest) + whole_link_tolerance ||
        links < chain_links(series_.pitch(), front_, rear_, smallest) - whole_link_tolerance)
      return links_out_of_range(links);
    return std::max(chain_centre(series_.pitch(), front_, rear_, links), smallest);
  }
  [[nodiscard]] Result<Length> try_centre(Links links) const { return try_centre(double(links.count())); }
  /// The angle through which the chain lies on the front sprocket; errors as `try_links`.
  [[nodiscard]] Result<Angle> try_wrap_front(Length centre) const {
    if (auto error = outside(centre)) return *error;
    return ::layshaft::wrap_front(angle(centre));
  }
  /// The angle through which the chain lies on the rear sprocket; errors as `try_links`.
  [[nodiscard]] Result<Angle> try_wrap_rear(Length centre) const {
    if (auto error = outside(centre)) return *error;
    return ::layshaft::wrap_rear(angle(centre));
  }
  /// The length of a straight run; errors as `try_links`.
  [[nodiscard]] Result<Length> try_run_length(Length centre) const {
    if (auto error = outside(centre)) return *error;
    return ::layshaft::run_length(centre, angle(centre));
  }
  /// The handbook's links, to hold beside the exact ones; errors as `try_links`.
  [[nodiscard]] Result<double> try_links_approximate(Length centre) const {
    if (auto error = outside(centre)) return *error;
    return ::layshaft::links_approximate(series_.pitch(), front_, rear_, centre);
  }

  /// How a number of the loop came about: `explain("links", {.centre = 612_mm})`; an unknown name is an error that
  /// lists those there are. Defined in chain/explain.hpp, which is opt-in.
  [[nodiscard]] Result<Working> try_explain(std::string_view what, const LoopQuestion& at) const;
#if LAYSHAFT_EXCEPTIONS
  /// @throws ParseError, or RangeError as the number itself.
  [[nodiscard]] Working explain(std::string_view what, const LoopQuestion& at) const;
  /// @throws RangeError for a centre distance outside `smallest_centre()` to `greatest_centre()`.
  [[nodiscard]] double links(Length centre) const { return try_links(centre).value(); }
  /// @throws RangeError for fewer links than `fewest_links()` or more than 10000.
  [[nodiscard]] Length centre(double links) const { return try_centre(links).value(); }
  /// @throws RangeError for fewer links than `fewest_links()`.
  [[nodiscard]] Length centre(Links links) const { return try_centre(links).value(); }
  /// @throws RangeError for a centre distance outside `smallest_centre()` to `greatest_centre()`.
  [[nodiscard]] Angle wrap_front(Length centre) const { return try_wrap_front(centre).value(); }
  /// @throws RangeError for a centre distance outside `smallest_centre()` to `greatest_centre()`.
  [[nodiscard]] Angle wrap_rear(Length centre) const { return try_wrap_rear(centre).value(); }
  /// @throws RangeError for a centre distance outside `smallest_centre()` to `greatest_centre()`.
  [[nodiscard]] Length run_length(Length centre) const { return try_run_length(centre).value(); }
  /// @throws RangeError for a centre distance outside `smallest_centre()` to `greatest_centre()`.
  [[nodiscard]] double links_approximate(Length centre) const { return try_links_approximate(centre).value(); }
#endif

  friend constexpr bool operator==(ChainLoop, ChainLoop) noexcept = default;

 private:
  [[nodiscard]] Angle angle(Length centre) const noexcept {
    return detail::run_angle_of(Unwatched(), drive(Unwatched()), centre);
  }
  [[nodiscard]] std::optional<Error> outside(Length centre) const {
    const Length smallest = smallest_centre();
    if (is_finite(centre) && smallest <= centre &&
        chain_links(series_.pitch(), front_, rear_, centre) <= double(Links::greatest) + whole_link_tolerance)
      return std::nullopt;
    return Error::range("centre distance", detail::in_words(centre),
                        detail::mm_at_least(smallest)
                            .append(", where sprockets of ")
                            .append(teeth())
                            .append(" teeth touch, to ")
                            .append(detail::mm_at_most(greatest_centre())));
  }
  [[nodiscard]] Error links_out_of_range(double links) const {
    return Error::range("number of links", detail::in_words(links),
                        std::to_string(fewest_links().count())
                            .append(", the fewest that sprockets of ")
                            .append(teeth())
                            .append(" teeth can carry, to ")
                            .append(std::to_string(Links::greatest)));
  }
  [[nodiscard]] std::string teeth() const {
    return std::to_string(front_.count()).append(" and ").append(std::to_string(rear_.count()));
  }

  ChainSeries series_;
  Teeth front_;
  Teeth rear_;
};

}  // namespace layshaft
