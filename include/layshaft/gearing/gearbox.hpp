// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/checks.hpp>
#include <layshaft/core/fixed_list.hpp>
#include <layshaft/core/watch.hpp>
#include <layshaft/gearing/ratio.hpp>

#include <optional>
#include <string>
#include <utility>

/// @file
/// What turns between the crank and the front sprocket: the primary drive, the gears, and the speeds the engine runs
/// at.
namespace layshaft {

/// A pair of gears by their teeth. Its ratio is driven over driving.
struct GearPair {
  Teeth driving;
  Teeth driven;

  [[nodiscard]] constexpr double ratio() const noexcept { return gear_ratio(driving, driven); }
  friend constexpr bool operator==(const GearPair&, const GearPair&) = default;
};

/// A ratio, stated as a number or as the pair of gears that makes it.
class GearRatio {
 public:
  constexpr GearRatio(double ratio = 1.0) noexcept : ratio_(ratio) {}                 // NOLINT: 2.75 is a ratio
  constexpr GearRatio(GearPair pair) noexcept : ratio_(pair.ratio()), pair_(pair) {}  // NOLINT: so is 33/12

  [[nodiscard]] constexpr double ratio() const noexcept { return ratio_; }
  /// The gears, where they were stated.
  [[nodiscard]] constexpr const std::optional<GearPair>& pair() const noexcept { return pair_; }
  friend constexpr bool operator==(const GearRatio&, const GearRatio&) = default;

 private:
  double ratio_;
  std::optional<GearPair> pair_;
};

namespace detail {
/// A ratio for whoever watches: of its pair of gears, or as stated.
template <class Watch>
[[nodiscard]] constexpr auto ratio_of(Watch watch, ValueName name, const GearRatio& ratio) {
  return watch.known(ratio.ratio(), [&] {
    if (!ratio.pair()) return watch.given(name, ratio.ratio());
    const auto driving = watch.given({"driving", name.index}, ratio.pair()->driving);
    const auto driven = watch.given({"driven", name.index}, ratio.pair()->driven);
    return watch.step(name, formula::gear_ratio{}, driving, driven);
  });
}
}  // namespace detail

/// The most gears a gearbox has; hub gears of cycles come with fourteen.
inline constexpr std::size_t most_gears = 16;

/// What a Gearbox is made of: ratios 0.01 to 100, engine speeds above 0 and up to 100,000 rpm.
struct GearboxParts {
  GearRatio primary = 1.0;                       ///< crank turns per gearbox input turn; 1 for a cycle
  FixedList<GearRatio, most_gears> gears;        ///< from first gear up
  AngularSpeed idle;                             ///< engine speed at idle
  AngularSpeed rev_limit;                        ///< the highest engine speed
  std::optional<AngularSpeed> lowest_pull = {};  ///< lowest engine speed at which it pulls cleanly; idle if absent

  friend bool operator==(const GearboxParts&, const GearboxParts&) = default;
};

/// A gearbox with the speeds its engine turns at. On a cycle the crank is the rider's, and the speeds are cadences.
class Gearbox {
 public:
  using Parts = GearboxParts;

  /// The gearbox, or a RangeError that names the part and its range.
  [[nodiscard]] static Result<Gearbox> make(const Parts& parts) {
    constexpr double least = 0.01, most = 100.0;
    if (auto error = detail::outside("primary", parts.primary.ratio(), least, most)) return *std::move(error);
    if (parts.gears.empty() || parts.gears.overfull())
      return Error::range("number of gears", parts.gears.empty() ? "0" : "more than " + std::to_string(most_gears),
                          "1 to " + std::to_string(most_gears));
    for (std::size_t i = 0; i < parts.gears.size(); ++i)
      if (auto error = detail::outside("ratio of gear " + std::to_string(i + 1), parts.gears[i].ratio(), least, most))
        return *std::move(error);
    const AngularSpeed slowest = 1.0_rpm, fastest = 100000.0_rpm;
    if (auto error = detail::outside("rev_limit", parts.rev_limit, slowest, fastest)) return *std::move(error);
    if (auto error = detail::outside("idle", parts.idle, slowest, parts.rev_limit)) return *std::move(error);
    if (parts.lowest_pull)
      if (auto error = detail::outside("lowest_pull", *parts.lowest_pull, parts.idle, parts.rev_limit))
        return *std::move(error);
    return Gearbox(parts, Unchecked{});
  }
#if LAYSHAFT_EXCEPTIONS
  /// @throws RangeError that names the part and its range.
  explicit Gearbox(const Parts& parts) : Gearbox(make(parts).value()) {}
#endif

  [[nodiscard]] const GearRatio& primary() const noexcept { return parts_.primary; }
  [[nodiscard]] const FixedList<GearRatio, most_gears>& gears() const noexcept { return parts_.gears; }
  [[nodiscard]] AngularSpeed idle() const noexcept { return parts_.idle; }
  [[nodiscard]] AngularSpeed rev_limit() const noexcept { return parts_.rev_limit; }
  /// The lowest engine speed at which it pulls cleanly; idle where none was stated.
  [[nodiscard]] AngularSpeed lowest_pull() const noexcept { return parts_.lowest_pull.value_or(parts_.idle); }
  [[nodiscard]] const Parts& parts() const noexcept { return parts_; }

  friend bool operator==(const Gearbox&, const Gearbox&) = default;

 private:
  struct Unchecked {};
  Gearbox(const Parts& parts, Unchecked) : parts_(parts) {}

  Parts parts_;
};

}  // namespace layshaft
