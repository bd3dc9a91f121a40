// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/band.hpp>
#include <layshaft/core/checks.hpp>
#include <layshaft/core/fixed_list.hpp>
#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>
#include <layshaft/core/source.hpp>
#include <layshaft/core/units.hpp>
#include <layshaft/core/watch.hpp>
#include <layshaft/tyre/rolling.hpp>
#include <layshaft/tyre/size.hpp>

#include <optional>
#include <string_view>
#include <utility>

/// @file
/// Tread, or the knobs of a tyre made for soft ground: how deep it was, is, and may become; what that does to the
/// rolling circumference, and how far it will last.
namespace layshaft {

/// How the remaining distance is reckoned. That is an assumption: tread wears faster when it is new and tall, when the
/// ground or the season changes, and when the rider does.
inline constexpr Source even_wear_source{"assumption: the tread loses the same depth over every kilometre",
                                         Certainty::common_practice};

/// Height worn off the tread.
LAYSHAFT_FORMULA(constexpr, Length, tread_worn, (Length new_tread_depth, Length tread_depth),
                 is_finite(new_tread_depth) && is_finite(tread_depth) && tread_depth >= 0.0_mm &&
                     new_tread_depth >= tread_depth,
                 sources::definition, new_tread_depth - tread_depth)

/// Share of the usable tread that is left; below zero once it is worn past the minimum.
LAYSHAFT_FORMULA(constexpr, double, tread_left, (Length new_tread_depth, Length tread_depth, Length least_tread_depth),
                 is_finite(new_tread_depth) && is_finite(tread_depth) && is_finite(least_tread_depth) &&
                     tread_depth >= 0.0_mm && least_tread_depth >= 0.0_mm && new_tread_depth >= tread_depth &&
                     new_tread_depth > least_tread_depth,
                 sources::definition, (tread_depth - least_tread_depth) / (new_tread_depth - least_tread_depth))

/// Distance until the tread is down to the minimum, if it goes on wearing as it did; below zero: how far ago it was.
LAYSHAFT_FORMULA(constexpr, Length, distance_left,
                 (Length distance, Length new_tread_depth, Length tread_depth, Length least_tread_depth),
                 positive(distance) && is_finite(new_tread_depth) && is_finite(tread_depth) &&
                     is_finite(least_tread_depth) && tread_depth >= 0.0_mm && least_tread_depth >= 0.0_mm &&
                     new_tread_depth > tread_depth,
                 even_wear_source, (tread_depth - least_tread_depth) / (new_tread_depth - tread_depth) * distance)

/// Rolling circumference at one depth of the tread, of a tyre whose circumference was measured at another.
LAYSHAFT_FORMULA(constexpr, Length, worn_circumference,
                 (Length circumference, double rolling_factor, Length measured_tread_depth, Length tread_depth),
                 positive(circumference) && positive(rolling_factor) && is_finite(measured_tread_depth) &&
                     is_finite(tread_depth) && measured_tread_depth >= 0.0_mm && tread_depth >= 0.0_mm &&
                     circumference > 2.0 * pi * rolling_factor * (measured_tread_depth - tread_depth),
                 sources::geometry, circumference - 2.0 * pi * rolling_factor * (measured_tread_depth - tread_depth))

/// What a Tread is made of, each depth measured at the same place of the pattern.
struct TreadParts {
  Length new_depth;                     ///< when new: 0.1 to 100 mm
  Length depth;                         ///< now: 0 to the new depth
  std::optional<Length> least = {};     ///< down to which it may be used: 0 to less than the new depth
  std::optional<Length> distance = {};  ///< ridden on it so far: above 0, to 1,000,000 km

  friend constexpr bool operator==(const TreadParts&, const TreadParts&) noexcept = default;
};

class Working;  // to explain, include <layshaft/explain.hpp>

/// The tread of one tyre.
class Tread {
 public:
  using Parts = TreadParts;

  /// The tread, or a RangeError where a part lies outside its range.
  [[nodiscard]] static Result<Tread> make(const Parts& parts) {
    if (auto error = detail::outside("new_depth", parts.new_depth, 0.1_mm, 100.0_mm)) return *std::move(error);
    if (auto error = detail::outside("depth", parts.depth, Length(), parts.new_depth)) return *std::move(error);
    if (parts.least) {
      if (auto error = detail::outside("least", *parts.least, Length(), parts.new_depth)) return *std::move(error);
      if (*parts.least == parts.new_depth)
        return Error::range("least", detail::in_words(*parts.least), "less than the new depth");
    }
    if (parts.distance)
      if (auto error = detail::outside("distance", *parts.distance, 1.0_m, 1e6 * units::km)) return *std::move(error);
    return Tread(parts, Unchecked{});
  }
#if LAYSHAFT_EXCEPTIONS
  /// @throws RangeError as `make` says.
  explicit Tread(const Parts& parts) : Tread(make(parts).value()) {}
#endif

  [[nodiscard]] constexpr const Parts& parts() const noexcept { return parts_; }
  [[nodiscard]] constexpr Length new_depth() const noexcept { return parts_.new_depth; }
  [[nodiscard]] constexpr Length depth() const noexcept { return parts_.depth; }

  /// For whoever watches; the last two only where their namesakes below give a value.
  template <class Watch>
  [[nodiscard]] constexpr auto worn(Watch watch) const {
    const auto new_depth = watch.given("new_tread_depth", parts_.new_depth);
    const auto depth = watch.given("tread_depth", parts_.depth);
    return watch.step(formula::tread_worn{}, new_depth, depth);
  }
  template <class Watch>
  [[nodiscard]] constexpr auto left(Watch watch) const {
    const auto new_depth = watch.given("new_tread_depth", parts_.new_depth);
    const auto depth = watch.given("tread_depth", parts_.depth);
    const auto least = watch.given("least_tread_depth", *parts_.least);
    return watch.step(formula::tread_left{}, new_depth, depth, least);
  }
  template <class Watch>
  [[nodiscard]] constexpr auto distance_left(Watch watch) const {
    const auto ridden = watch.given("distance", *parts_.distance);
    const auto new_depth = watch.given("new_tread_depth", parts_.new_depth);
    const auto depth = watch.given("tread_depth", parts_.depth);
    const auto least = watch.given("least_tread_depth", *parts_.least);
    return watch.step(formula::distance_left{}, ridden, new_depth, depth, least);
  }

  /// Height worn off so far: what SetupParts::tread_worn takes.
  [[nodiscard]] constexpr Length worn() const noexcept { return worn(Unwatched()); }
  /// Share of the usable tread that is left; none where no minimum is stated.
  [[nodiscard]] constexpr std::optional<double> left() const noexcept {
    if (!parts_.least) return std::nullopt;
    return left(Unwatched());
  }
  /// Distance until the minimum, if the tread goes on wearing as it did (`even_wear_source`); below zero: how far ago
  /// it was. None where no minimum or no distance is stated, or nothing has worn off yet to reckon from.
  [[nodiscard]] constexpr std::optional<Length> distance_left() const noexcept {
    if (!parts_.least || !parts_.distance || !(parts_.depth < parts_.new_depth)) return std::nullopt;
    return distance_left(Unwatched());
  }

  /// How a number came about: `explain("distance left")`, "left" or "worn". Defined in tyre/explain.hpp, which is
  /// opt-in.
  [[nodiscard]] Result<Working> try_explain(std::string_view what) const;
#if LAYSHAFT_EXCEPTIONS
  /// @throws ParseError that lists the names there are, or Error where the tread does not state what it takes.
  [[nodiscard]] Working explain(std::string_view what) const;
#endif

  friend constexpr bool operator==(const Tread&, const Tread&) noexcept = default;

 private:
  struct Unchecked {};
  constexpr Tread(const Parts& parts, Unchecked) noexcept : parts_(parts) {}

  Parts parts_;
};

/// The corners of a measured circumference and of the rolling factor by which wear changes it.
struct WornRolloutCorners {
  Corner measured = Corner::nominal;
  Corner rolling = Corner::nominal;
};

namespace detail {

inline constexpr FixedList<WornRolloutCorners, 5> worn_rollout_corners{{Corner::nominal, Corner::nominal},
                                                                       {Corner::low, Corner::low},
                                                                       {Corner::low, Corner::high},
                                                                       {Corner::high, Corner::low},
                                                                       {Corner::high, Corner::high}};

/// A marked tyre's rolling circumference at some depth of its tread, for whoever watches.
template <class Watch>
[[nodiscard]] constexpr auto circumference_at_depth(Watch watch, const TyreSize& tyre, const Tread& tread, Length depth,
                                                    Corner size, Corner rolling) {
  const auto diameter = tyre.overall_diameter(watch, size);
  const auto new_depth = watch.given("new_tread_depth", tread.new_depth());
  const auto then = watch.given("tread_depth", depth);
  const auto worn = watch.step(formula::tread_worn{}, new_depth, then);
  const auto worn_down = watch.step(formula::worn_diameter{}, diameter, worn);
  const TyreConstruction construction = tyre.construction();
  const auto factor = watch.looked_up("rolling_factor", rolling_factor(construction).at(rolling),
                                      to_string(construction), rolling_factor_source);
  return watch.step("circumference", formula::rolling_circumference{}, worn_down, factor);
}

/// What a measured rollout becomes at another depth of the tread than the one it was measured at.
template <class Watch>
[[nodiscard]] constexpr auto rollout_at_depth(Watch watch, const Band<Length>& measured, TyreConstruction construction,
                                              Length measured_depth, Length depth, const WornRolloutCorners& at) {
  const auto rolled = watch.given("circumference", measured.at(at.measured));
  const auto factor = watch.looked_up("rolling_factor", rolling_factor(construction).at(at.rolling),
                                      to_string(construction), rolling_factor_source);
  const auto measured_at = watch.given("measured_tread_depth", measured_depth);
  const auto then = watch.given("tread_depth", depth);
  return watch.step(formula::worn_circumference{}, rolled, factor, measured_at, then);
}

}  // namespace detail

/// A marked tyre's rolling circumference when its tread is this deep: its life as a curve. Or a RangeError, where the
/// depth is not 0 to the new depth, or the tread is deeper than half the tyre's section.
[[nodiscard]] inline Result<Band<Length>> try_circumference_at_depth(const TyreSize& tyre, const Tread& tread,
                                                                     Length depth) {
  const Length section = tyre.overall_diameter().low - tyre.rim_diameter();
  if (auto error = detail::outside("new_depth", tread.new_depth(), Length(), 0.25 * section)) return *std::move(error);
  if (auto error = detail::outside("depth", depth, Length(), tread.new_depth())) return *std::move(error);
  return over_runs(one_cause,
                   [&](Corner at) { return detail::circumference_at_depth(Unwatched(), tyre, tread, depth, at, at); });
}
/// The same of a tyre whose rollout was measured at its present depth: the wear since, or until then, changes it by 2π
/// times the rolling factor. Or a RangeError, where the rollout is not 0.2 to 5 m in rising order, the depth is not 0
/// to the new depth, or the tread is deeper than a fifth of the rollout's radius.
[[nodiscard]] inline Result<Band<Length>> try_circumference_at_depth(const Band<Length>& measured,
                                                                     TyreConstruction construction, const Tread& tread,
                                                                     Length depth) {
  if (auto error = detail::outside("measured", measured, 0.2_m, 5.0_m)) return *std::move(error);
  if (auto error = detail::outside("new_depth", tread.new_depth(), Length(), 0.2 / (2.0 * pi) * measured.low))
    return *std::move(error);
  if (auto error = detail::outside("depth", depth, Length(), tread.new_depth())) return *std::move(error);
  return over_runs(detail::worn_rollout_corners, [&](const WornRolloutCorners& at) {
    return detail::rollout_at_depth(Unwatched(), measured, construction, tread.depth(), depth, at);
  });
}
#if LAYSHAFT_EXCEPTIONS
/// @throws RangeError as `try_circumference_at_depth` says.
[[nodiscard]] inline Band<Length> circumference_at_depth(const TyreSize& tyre, const Tread& tread, Length depth) {
  return try_circumference_at_depth(tyre, tread, depth).value();
}
/// @throws RangeError as `try_circumference_at_depth` says.
[[nodiscard]] inline Band<Length> circumference_at_depth(const Band<Length>& measured, TyreConstruction construction,
                                                         const Tread& tread, Length depth) {
  return try_circumference_at_depth(measured, construction, tread, depth).value();
}
#endif

}  // namespace layshaft
