// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/checks.hpp>
#include <layshaft/core/fixed_list.hpp>
#include <layshaft/core/result.hpp>
#include <layshaft/gearing/speed.hpp>
#include <layshaft/road/ride_use.hpp>
#include <layshaft/road/shift_rule.hpp>
#include <layshaft/road/slope.hpp>

#include <optional>
#include <string>
#include <string_view>
#include <utility>

/// @file
/// What a rider really rides, told in shares.
namespace layshaft {

enum class RideKind { technical, trail, gravel_road, highway };

[[nodiscard]] constexpr std::string_view to_string(RideKind kind) noexcept {
  switch (kind) {
    case RideKind::technical: return "technical";
    case RideKind::trail: return "trail";
    case RideKind::gravel_road: return "gravel road";
    case RideKind::highway: return "highway";
  }
  return {};
}

/// One share of a ride.
struct RideShare {
  RideKind kind;
  double share;                  ///< of the riding time, 0 to 1
  Speed speed;                   ///< at which it is ridden, 0 to 1000 km/h
  Slope slope{};                 ///< on the mean
  std::optional<int> gear = {};  ///< the rider's habit, from 1; none: as the shift rule says

  friend constexpr bool operator==(const RideShare&, const RideShare&) noexcept = default;
};
/// As many as a profile holds.
using RideShares = FixedList<RideShare, 16>;

/// What a rider rides, as shares of the riding time that make one whole.
class RideProfile {
 public:
  /// The profile; or a RangeError that names the share: 1 to 16 of them, each within its range, gears 1 to 16, together
  /// one to a millionth.
  [[nodiscard]] static Result<RideProfile> make(const RideShares& shares) {
    if (shares.empty() || shares.overfull())
      return Error::range("number of shares",
                          shares.empty() ? "0" : "more than " + std::to_string(RideShares::capacity),
                          "1 to " + std::to_string(RideShares::capacity));
    double whole = 0.0;
    for (std::size_t i = 0; i < shares.size(); ++i) {
      const std::string number = std::to_string(i + 1);
      if (auto error = detail::outside("share " + number, shares[i].share, 0.0, 1.0)) return *std::move(error);
      if (auto error = detail::outside("speed " + number, shares[i].speed, Speed(), 1000.0_kmh))
        return *std::move(error);
      if (const auto gear = shares[i].gear; gear && (*gear < 1 || *gear > static_cast<int>(most_gears)))
        return Error::range("gear " + number, std::to_string(*gear), "1 to " + std::to_string(most_gears));
      whole += shares[i].share;
    }
    if (!(whole >= 1.0 - 1e-6 && whole <= 1.0 + 1e-6))
      return Error::range("sum of the shares", detail::in_words(whole), "1");
    return RideProfile(shares, Unchecked{});
  }
#if LAYSHAFT_EXCEPTIONS
  /// @throws RangeError as `make` says.
  explicit RideProfile(const RideShares& shares) : RideProfile(make(shares).value()) {}
#endif

  [[nodiscard]] constexpr const RideShares& shares() const noexcept { return shares_; }
  /// The mean speed over the riding time.
  [[nodiscard]] constexpr Speed mean_speed() const noexcept {
    Speed mean;
    for (const RideShare& share : shares_) mean += share.share * share.speed;
    return mean;
  }

  friend constexpr bool operator==(const RideProfile&, const RideProfile&) noexcept = default;

 private:
  struct Unchecked {};
  constexpr RideProfile(const RideShares& shares, Unchecked) noexcept : shares_(shares) {}

  RideShares shares_;
};

/// What a ride of this profile does to a drive in so much time, up to 1,000,000 h. Or a RangeError, where a gear that
/// the rider holds to is none of the drive's; or an Error, where a share's slope needs a mass that the drive's road
/// load has not.
[[nodiscard]] inline Result<RideUse> try_ride_use(const RideProfile& profile, Duration ridden, const RideDrive& drive) {
  if (auto error = detail::outside("ridden", ridden, Duration(), 1e6_hour)) return *std::move(error);
  if (auto error = detail::refused(drive)) return *std::move(error);
  RideUse use(drive);
  for (const RideShare& share : profile.shares()) {
    if (share.gear && *share.gear > use.gears())
      return Error::range("gear", std::to_string(*share.gear), "1 to " + std::to_string(use.gears()));
    const int gear = share.gear ? *share.gear : drive.rule.gear_at(share.speed);
    use.add(gear, share.share * ridden, share.speed,
            engine_speed(share.speed, drive.ratio_of(gear), drive.circumference));
    const Length rise = share.share * ridden * share.speed * sin(share.slope.angle());
    use.add_rise(rise);
    if (!drive.load || share.speed < RideUse::standing) continue;
    const auto resistance = drive.load->road.try_resistance(share.speed, share.slope);
    if (!resistance) return resistance.error();
    use.add_work(gear, *resistance * (share.share * ridden * share.speed));
  }
  return use;
}
#if LAYSHAFT_EXCEPTIONS
/// @throws RangeError or Error as `try_ride_use` says.
[[nodiscard]] inline RideUse ride_use(const RideProfile& profile, Duration ridden, const RideDrive& drive) {
  return try_ride_use(profile, ridden, drive).value();
}
#endif

}  // namespace layshaft
