// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/band.hpp>
#include <layshaft/core/checks.hpp>
#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>
#include <layshaft/core/source.hpp>
#include <layshaft/core/units.hpp>
#include <layshaft/core/watch.hpp>
#include <layshaft/tyre/dimensions.hpp>
#include <layshaft/tyre/kinds.hpp>
#include <layshaft/tyre/rolling.hpp>
#include <layshaft/tyre/size.hpp>

#include <string_view>
#include <utility>  // std::move of an error

/// @file
/// A tyre's three radii: free (inflated, off the ground), static (axle to ground under load, at rest), and effective
/// (distance rolled in one turn, over 2π). The effective one lies between the other two, nearer to the free one:
/// the tread's length, not the axle's height, is what is laid down on the road.
///
/// How far a tyre settles depends on its load and its pressure. No relation for either is published in the sources at
/// hand, so there is no correction for them: the bands hold for the load and pressure that the tyre is made for, and
/// whoever needs more measures a rollout (measured_rollout.hpp).
namespace layshaft {

/// Where the effective radius comes from.
inline constexpr Source effective_radius_source{"rolling radius (2 free + static)/3, a published derivation",
                                                Certainty::published};

/// Where the static radius of light-truck tyres comes from; the nominal value is the middle of what was seen.
inline constexpr Source light_truck_share_source{"static over free radius of eight published light-truck tyres",
                                                 Certainty::published};

/// Radius of the inflated tyre, free of load.
LAYSHAFT_FORMULA(constexpr, Length, free_radius, (Length overall_diameter), positive(overall_diameter),
                 sources::geometry, overall_diameter / 2.0)

/// Height of the axle above the ground, from the share of the free radius that is left under load.
// clang-format off
LAYSHAFT_FORMULA(constexpr, Length, static_radius, (Length free_radius, double static_share),
                 positive(free_radius) && positive(static_share), sources::definition, static_share * free_radius)
// clang-format on

/// Radius of the circle that rolls as far as the tyre does.
LAYSHAFT_FORMULA(constexpr, Length, effective_radius, (Length free_radius, Length static_radius),
                 positive(free_radius) && positive(static_radius), effective_radius_source,
                 (2.0 * free_radius + static_radius) / 3.0)

/// Distance rolled in one turn of a wheel of this effective radius.
LAYSHAFT_FORMULA(constexpr, Length, circumference_of_radius, (Length effective_radius), positive(effective_radius),
                 sources::definition, 2.0 * pi * effective_radius)

/// The effective radius that a circumference means.
LAYSHAFT_FORMULA(constexpr, Length, radius_of_circumference, (Length circumference), positive(circumference),
                 sources::definition, circumference / (2.0 * pi))

/// The static radius of a tyre whose effective and free radius are known. Small errors of both come out three and two
/// times as large.
LAYSHAFT_FORMULA(constexpr, Length, static_radius_of_effective, (Length effective_radius, Length free_radius),
                 positive(effective_radius) && positive(free_radius) && 3.0 * effective_radius > 2.0 * free_radius,
                 effective_radius_source, 3.0 * effective_radius - 2.0 * free_radius)

/// The rolling factor of a tyre, from static over free radius.
LAYSHAFT_FORMULA(constexpr, double, factor_of_share, (double static_share), positive(static_share),
                 effective_radius_source, (2.0 + static_share) / 3.0)

/// Static over free radius of a tyre, from its rolling factor.
LAYSHAFT_FORMULA(constexpr, double, share_of_factor, (double rolling_factor),
                 is_finite(rolling_factor) && 3.0 * rolling_factor > 2.0, effective_radius_source,
                 3.0 * rolling_factor - 2.0)

/// Whose tyres a deflection is taken from.
enum class TyreDeflection {
  motorcycle,   ///< rolling.hpp's rolling factor: from memory
  light_truck,  ///< eight light-truck tyres: published, and more than a motorcycle tyre settles
};

[[nodiscard]] constexpr std::string_view to_string(TyreDeflection deflection) noexcept {
  switch (deflection) {
    case TyreDeflection::motorcycle: return "motorcycle";
    case TyreDeflection::light_truck: return "light truck";
  }
  return {};
}

namespace detail {

/// The light-truck ratios: 0.909 to 0.940 radial, 0.937 to 0.947 bias. None of the eight is bias-belted, so that one
/// has everything that was seen.
[[nodiscard]] constexpr Band<double> light_truck_share(TyreConstruction construction) noexcept {
  switch (construction) {
    case TyreConstruction::radial: return {0.909, 0.9245, 0.940};
    case TyreConstruction::diagonal: return {0.937, 0.942, 0.947};
    case TyreConstruction::bias_belted: break;
  }
  return {0.909, 0.928, 0.947};
}

/// Static over free radius, for whoever watches.
template <class Watch>
[[nodiscard]] constexpr auto static_share_at(Watch watch, TyreConstruction construction, TyreDeflection deflection,
                                             Corner rolling) {
  if (deflection == TyreDeflection::light_truck)
    return watch.looked_up("static_share", light_truck_share(construction).at(rolling), to_string(construction),
                           light_truck_share_source);
  const auto factor = watch.looked_up("rolling_factor", rolling_factor(construction).at(rolling),
                                      to_string(construction), rolling_factor_source);
  return watch.step("static_share", formula::share_of_factor{}, factor);
}

/// The radii for whoever watches, with so much of the tread's height worn off.
template <class Watch>
[[nodiscard]] constexpr auto free_radius_at(Watch watch, const TyreSize& tyre, Length tread_worn, Corner size) {
  const auto diameter = tyre.overall_diameter(watch, size);
  if (tread_worn == Length()) return watch.step(formula::free_radius{}, diameter);
  const auto worn = watch.step(formula::worn_diameter{}, diameter, watch.given("tread_worn", tread_worn));
  return watch.step(formula::free_radius{}, worn);
}
template <class Watch>
[[nodiscard]] constexpr auto static_radius_at(Watch watch, const TyreSize& tyre, Length tread_worn,
                                              TyreDeflection deflection, Corner size, Corner rolling) {
  const auto free = free_radius_at(watch, tyre, tread_worn, size);
  const auto share = static_share_at(watch, tyre.construction(), deflection, rolling);
  return watch.step(formula::static_radius{}, free, share);
}
template <class Watch>
[[nodiscard]] constexpr auto effective_radius_at(Watch watch, const TyreSize& tyre, Length tread_worn,
                                                 TyreDeflection deflection, Corner size, Corner rolling) {
  const auto free = free_radius_at(watch, tyre, tread_worn, size);
  const auto share = static_share_at(watch, tyre.construction(), deflection, rolling);
  const auto at_rest = watch.step(formula::static_radius{}, free, share);
  return watch.step(formula::effective_radius{}, free, at_rest);
}
/// The rolling circumference by way of the radii: the only way where the deflection is no motorcycle tyre's.
template <class Watch>
[[nodiscard]] constexpr auto circumference_by_radii_at(Watch watch, const TyreSize& tyre, Length tread_worn,
                                                       TyreDeflection deflection, Corner size, Corner rolling) {
  const auto effective = effective_radius_at(watch, tyre, tread_worn, deflection, size, rolling);
  return watch.step("circumference", formula::circumference_of_radius{}, effective);
}
/// The static radius that a circumference means, for whoever watches.
template <class Watch>
[[nodiscard]] constexpr auto static_radius_from(Watch watch, Length circumference, Length free_radius) {
  const auto rolled = watch.given("circumference", circumference);
  const auto effective = watch.step("effective_radius", formula::radius_of_circumference{}, rolled);
  const auto free = watch.given("free_radius", free_radius);
  return watch.step("static_radius", formula::static_radius_of_effective{}, effective, free);
}

}  // namespace detail

/// Static over free radius as a band; that of motorcycle tyres is from memory, like the rolling factor it goes with.
[[nodiscard]] constexpr Band<double> static_share(TyreConstruction construction,
                                                  TyreDeflection deflection = TyreDeflection::motorcycle) noexcept {
  return over_runs(one_cause, [&](Corner rolling) {
    return detail::static_share_at(Unwatched(), construction, deflection, rolling);
  });
}
/// The rolling factor that goes with it; the motorcycle's is rolling_factor(construction) to the last bits.
[[nodiscard]] constexpr Band<double> rolling_factor(TyreConstruction construction, TyreDeflection deflection) noexcept {
  if (deflection == TyreDeflection::motorcycle) return rolling_factor(construction);
  return over(static_share(construction, deflection), [](double share) { return factor_of_share(share); });
}

/// The free radius of a new tyre over the tolerance of its marking.
[[nodiscard]] constexpr Band<Length> free_radius(const TyreSize& tyre) noexcept {
  return over_runs(one_cause, [&](Corner size) { return detail::free_radius_at(Unwatched(), tyre, Length(), size); });
}
/// The static radius of a new tyre: nominal, and at the ends of both causes together.
[[nodiscard]] constexpr Band<Length> static_radius(const TyreSize& tyre,
                                                   TyreDeflection deflection = TyreDeflection::motorcycle) noexcept {
  return over_runs(
      one_cause, [&](Corner at) { return detail::static_radius_at(Unwatched(), tyre, Length(), deflection, at, at); });
}
/// The effective radius of a new tyre: nominal, and at the ends of both causes together.
[[nodiscard]] constexpr Band<Length> effective_radius(const TyreSize& tyre,
                                                      TyreDeflection deflection = TyreDeflection::motorcycle) noexcept {
  return over_runs(one_cause, [&](Corner at) {
    return detail::effective_radius_at(Unwatched(), tyre, Length(), deflection, at, at);
  });
}
/// Distance rolled in one turn of a new tyre that settles like these.
[[nodiscard]] constexpr Band<Length> rolling_circumference(const TyreSize& tyre, TyreDeflection deflection) noexcept {
  return over_runs(one_cause, [&](Corner at) {
    return detail::circumference_by_radii_at(Unwatched(), tyre, Length(), deflection, at, at);
  });
}

/// The static radius of a tyre that rolls this far and, off the ground, has this free radius; or a RangeError, where
/// the free radius is not 30 mm to 1 m, or where the circumference is more than that of the free tyre or less than two
/// thirds of it, at which the axle would stand on the ground.
[[nodiscard]] inline Result<Length> try_static_radius_from(Length circumference, Length free_radius) {
  if (auto error = detail::outside("free_radius", free_radius, 30.0_mm, 1.0_m)) return *std::move(error);
  const Length longest = circumference_of_radius(free_radius);
  constexpr double rounding = 1.0 + 1e-12;  // the free tyre's own circumference, computed, is still its own
  if (!(circumference * 3.0 > longest * 2.0 * rounding && circumference <= longest * rounding))
    return Error::range("circumference", detail::in_words(circumference),
                        "more than two thirds of the free tyre's, and at most all of its " +
                            to_text(in(longest, units::mm), 6) + " mm");
  return detail::static_radius_from(Unwatched(), circumference, free_radius);
}
#if LAYSHAFT_EXCEPTIONS
/// @throws RangeError as `try_static_radius_from` says.
[[nodiscard]] inline Length static_radius_from(Length circumference, Length free_radius) {
  return try_static_radius_from(circumference, free_radius).value();
}
#endif

}  // namespace layshaft
