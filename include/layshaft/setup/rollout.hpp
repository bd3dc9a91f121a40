// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/setup/setup_parts.hpp>
#include <layshaft/tyre/two_tyres.hpp>

/// @file
/// A wheel's rolling circumference, with the causes that make it uncertain.
///
/// A marked tyre has two: its size within the tolerance of its marking, and its rolling factor. A measured rollout has
/// one, the measurement. Two wheels share a cause where it must act on both alike: the very same tyre (or measurement)
/// has one size, and tyres of one construction on one machine flatten alike. A comparison runs both at the same corner
/// of what they share, so that the same tyre on both sides cancels exactly.
namespace layshaft {

/// Where a measured rollout comes from.
inline constexpr Source measured_rollout{"a measured rollout", Certainty::stated};

namespace detail {
template <class Watch>
[[nodiscard]] constexpr auto rollout_at(Watch watch, const std::optional<TyreSize>& tyre,
                                        const std::optional<Band<Length>>& measured, Length tread_worn, Corner size,
                                        Corner rolling) {
  if (measured) return watch.given("circumference", measured->at(size), measured_rollout);
  return circumference_at(watch, "circumference", *tyre, tread_worn, size, rolling);
}
/// The same of a set-up's rear wheel, without a copy of its parts.
template <class Watch>
[[nodiscard]] constexpr auto rollout_at(Watch watch, const Setup& setup, Corner size, Corner rolling) {
  return rollout_at(watch, setup.tyre(), setup.circumference(), setup.tread_worn(), size, rolling);
}
}  // namespace detail

/// What turns a wheel's turns into distance: a tyre's marking, or a rollout that was measured and overrides it.
class Rollout {
 public:
  constexpr explicit Rollout(const TyreSize& tyre, Length tread_worn = Length()) noexcept
      : tyre_(tyre), tread_worn_(tread_worn) {}
  constexpr explicit Rollout(const Band<Length>& measured) noexcept : measured_(measured) {}
  /// The rear wheel's.
  constexpr explicit Rollout(const Setup& setup) noexcept
      : tyre_(setup.tyre()), measured_(setup.circumference()), tread_worn_(setup.tread_worn()) {}

  /// The rolling circumference with its causes at these corners, for whoever watches; a measured one has only its size.
  template <class Watch>
  [[nodiscard]] constexpr auto at(Watch watch, Corner size, Corner rolling) const {
    return detail::rollout_at(watch, tyre_, measured_, tread_worn_, size, rolling);
  }
  [[nodiscard]] constexpr Length at(Corner size, Corner rolling) const noexcept {
    return at(Unwatched(), size, rolling);
  }
  /// The rolling circumference over the corners of its causes.
  [[nodiscard]] constexpr Band<Length> circumference() const noexcept {
    return over_runs(one_cause, [&](Corner corner) { return at(corner, corner); });
  }

  /// Whether two wheels share the cause of size: one measurement, or tyres of the same dimensions and use.
  [[nodiscard]] friend constexpr bool share_size(const Rollout& a, const Rollout& b) noexcept {
    if (a.measured_ || b.measured_) return a.measured_ == b.measured_;
    return layshaft::share_size(*a.tyre_, *b.tyre_);
  }
  /// Whether two wheels share the rolling factor: both by their marking, of one construction.
  [[nodiscard]] friend constexpr bool share_rolling(const Rollout& a, const Rollout& b) noexcept {
    return !a.measured_ && !b.measured_ && layshaft::share_rolling(*a.tyre_, *b.tyre_);
  }

 private:
  std::optional<TyreSize> tyre_;
  std::optional<Band<Length>> measured_;
  Length tread_worn_;
};

}  // namespace layshaft
