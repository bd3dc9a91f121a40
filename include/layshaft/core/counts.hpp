// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/result.hpp>
#include <layshaft/core/units.hpp>

#include <compare>
#include <concepts>
#include <numeric>  // gcd
#include <string>
#include <string_view>

/// @file
/// Whole counts of teeth and of links, which are neither lengths nor ratios nor one another.
namespace layshaft {

/// A whole count with a least and a greatest value. It becomes a plain number only in a quotient, a product or a sum
/// inside a formula, never by an implicit conversion.
template <class Kind>
class Count {
 public:
  static constexpr int least = Kind::least;
  static constexpr int greatest = Kind::greatest;

  /// The count, or a RangeError when it lies outside `least` to `greatest`.
  [[nodiscard]] static Result<Count> make(int count) {
    if (count >= least && count <= greatest) return Count(count, Unchecked{});
    return Error::range(Kind::name, std::to_string(count), std::to_string(least) + " to " + std::to_string(greatest));
  }
  // What must not compile says here what to write instead: compilers quote the line of a deleted function.
  Count() = delete;                                              // state every count: there is no default
  static Result<Count> make(std::floating_point auto) = delete;  // a count is whole: round the number first
  explicit Count(std::floating_point auto) = delete;             // a count is whole: round the number first
  friend bool operator==(Count, int) = delete;                   // compare with 14_teeth, or count() with a number
  friend bool operator<=>(Count, int) = delete;                  // compare with 14_teeth, or count() with a number
#if LAYSHAFT_EXCEPTIONS
  /// @throws RangeError outside `least` to `greatest`.
  explicit constexpr Count(int count) : count_(count) {
    if (count < least || count > greatest) raise(make(count).error());
  }
#endif

  [[nodiscard]] constexpr int count() const noexcept { return count_; }

  /// The count of a literal, `14_teeth` or `106_links`; one out of range does not compile.
  [[nodiscard]] static consteval Count literal(unsigned long long count) {
    if (count < least || count > greatest) count_is_out_of_range();
    return Count(static_cast<int>(count), Unchecked{});
  }

  constexpr Count(const Count&) noexcept = default;
  constexpr Count& operator=(const Count&) & noexcept = default;  // of a count that stays, not of a copy of one

  friend constexpr bool operator==(Count, Count) noexcept = default;
  friend constexpr auto operator<=>(Count, Count) noexcept = default;

  friend constexpr double operator/(Count a, Count b) noexcept { return double(a.count_) / b.count_; }
  friend constexpr double operator+(Count a, Count b) noexcept { return a.count_ + b.count_; }
  friend constexpr double operator-(Count a, Count b) noexcept { return a.count_ - b.count_; }
  friend constexpr double operator*(double a, Count b) noexcept { return a * b.count_; }
  friend constexpr double operator/(double a, Count b) noexcept { return a / b.count_; }
  friend constexpr double operator+(double a, Count b) noexcept { return a + b.count_; }
  friend constexpr double operator-(double a, Count b) noexcept { return a - b.count_; }
  friend constexpr double operator*(Count a, double b) noexcept { return a.count_ * b; }
  friend constexpr double operator/(Count a, double b) noexcept { return a.count_ / b; }
  friend constexpr double operator-(Count a, double b) noexcept { return a.count_ - b; }
  friend constexpr double operator+(Count a, double b) noexcept { return a.count_ + b; }
  template <class Unit>
  friend constexpr auto operator*(boost::units::quantity<Unit> a, Count b) noexcept {
    return a * double(b.count_);
  }
  template <class Unit>
  friend constexpr auto operator/(boost::units::quantity<Unit> a, Count b) noexcept {
    return a / double(b.count_);
  }
  template <class Unit>
  friend constexpr auto operator*(Count a, boost::units::quantity<Unit> b) noexcept {
    return double(a.count_) * b;
  }

 private:
  struct Unchecked {};
  constexpr Count(int count, Unchecked) noexcept : count_(count) {}
  static void count_is_out_of_range() {}  // not constexpr: its name is what the compiler's error shows

  int count_;
};

/// The greatest whole number that divides both.
template <class KindA, class KindB>
[[nodiscard]] constexpr double common_factor(Count<KindA> a, Count<KindB> b) noexcept {
  return std::gcd(a.count(), b.count());
}

struct TeethKind {
  static constexpr std::string_view name = "number of teeth";
  static constexpr int least = 4, greatest = 1000;
};
struct LinksKind {
  static constexpr std::string_view name = "number of links";
  static constexpr int least = 4, greatest = 10000;
};

/// Teeth of a gear or a sprocket, 4 to 1000.
using Teeth = Count<TeethKind>;
/// Links of a chain, 4 to 10000: an inner and an outer link count as two.
using Links = Count<LinksKind>;

inline namespace literals {
[[nodiscard]] consteval Teeth operator""_teeth(unsigned long long count) { return Teeth::literal(count); }
[[nodiscard]] consteval Links operator""_links(unsigned long long count) { return Links::literal(count); }
Teeth operator""_teeth(long double) = delete;  // a count is whole: 14_teeth
Links operator""_links(long double) = delete;  // a count is whole: 106_links
}  // namespace literals

}  // namespace layshaft
