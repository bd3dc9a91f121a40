// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/math.hpp>

#include <array>

/// @file
/// The low, nominal and high value of one quantity or number.
namespace layshaft {

/// Where in its range a cause stands: at its low end, its nominal value or its high end.
enum class Corner : unsigned char { low, nominal, high };

/// The three places a cause is tried at, in order.
inline constexpr Corner corners[] = {Corner::low, Corner::nominal, Corner::high};
/// The runs of a calculation of which one cause, or several that move together, is tried at its corners.
inline constexpr std::array one_cause = {Corner::nominal, Corner::low, Corner::high};

/// What is known of a value: where it is expected, and the least and the most it can be.
///
/// A band is the result of a calculation at the corners of its causes (a tyre's tolerance, its rolling factor, a new
/// chain's length). There is no arithmetic on bands: add two and the shared causes would be counted twice. Rerun the
/// calculation at each corner instead and gather the results with `including`.
template <class Quantity>
struct Band {
  Quantity low{};
  Quantity nominal{};
  Quantity high{};

  /// A value known exactly: all three are the same.
  [[nodiscard]] static constexpr Band exactly(Quantity value) noexcept { return {value, value, value}; }

  /// The value at a corner.
  [[nodiscard]] constexpr Quantity at(Corner corner) const noexcept {
    return corner == Corner::low ? low : corner == Corner::high ? high : nominal;
  }
  /// How far apart the ends stand; zero when the value is exact.
  [[nodiscard]] constexpr Quantity width() const noexcept { return high - low; }
  [[nodiscard]] constexpr bool contains(Quantity value) const noexcept { return low <= value && value <= high; }

  /// Widens the band, where need be, to take in the result at one more corner.
  constexpr void include(Quantity value) noexcept {
    if (value < low) low = value;
    if (value > high) high = value;
  }

  friend constexpr bool operator==(const Band& a, const Band& b) noexcept {
    return a.low == b.low && a.nominal == b.nominal && a.high == b.high;
  }

  // What must not compile says here what to write instead: compilers quote the line of a deleted function.
  friend Band operator+(const Band&, const Band&) = delete;        // no arithmetic on bands: rerun it with `over`
  friend Band operator-(const Band&, const Band&) = delete;        // no arithmetic on bands: rerun it with `over`
  friend Band operator*(const Band&, const Band&) = delete;        // no arithmetic on bands: rerun it with `over`
  friend Band operator/(const Band&, const Band&) = delete;        // no arithmetic on bands: rerun it with `over`
  friend Band operator*(double, const Band&) = delete;             // no arithmetic on bands: rerun it with `over`
  friend Band operator*(const Band&, double) = delete;             // no arithmetic on bands: rerun it with `over`
  friend Band operator/(const Band&, double) = delete;             // no arithmetic on bands: rerun it with `over`
  friend bool operator<=>(const Band&, const Band&) = delete;      // compare corners: `a.high < b.low`
  friend bool operator<=>(const Band&, const Quantity&) = delete;  // compare a corner: `band.high < limit`
};

/// True of a band of finite values in rising order, which is what every constructor asks of one.
template <class Quantity>
[[nodiscard]] constexpr bool well_formed(const Band<Quantity>& band) noexcept {
  return is_finite(band.low) && is_finite(band.high) && band.low <= band.nominal && band.nominal <= band.high;
}

/// The results of a calculation run at each of a list of corners, of which the first is nominal.
template <class Runs, class Calculation>
[[nodiscard]] constexpr auto over_runs(const Runs& runs, const Calculation& calculation) {
  auto run = runs.begin();
  auto band = Band<decltype(calculation(*run))>::exactly(calculation(*run));
  for (++run; run != runs.end(); ++run) band.include(calculation(*run));
  return band;
}

/// The results of a calculation of one cause, at each of its corners.
template <class Quantity, class Calculation>
[[nodiscard]] constexpr auto over(const Band<Quantity>& cause, Calculation calculation) {
  auto band = Band<decltype(calculation(cause.nominal))>::exactly(calculation(cause.nominal));
  band.include(calculation(cause.low));
  band.include(calculation(cause.high));
  return band;
}

}  // namespace layshaft
