// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/chain/series.hpp>
#include <layshaft/core/band.hpp>
#include <layshaft/core/checks.hpp>
#include <layshaft/core/counts.hpp>
#include <layshaft/tyre/rolling.hpp>
#include <layshaft/tyre/size.hpp>

#include <optional>
#include <utility>

/// @file
/// What a rider can swap.
namespace layshaft {

/// What a Setup is made of.
struct SetupParts {
  Teeth front;                                     ///< front sprocket
  Teeth rear;                                      ///< rear sprocket
  std::optional<TyreSize> tyre = {};               ///< rear tyre; may be absent where `circumference` is measured
  std::optional<ChainSeries> chain = {};           ///< absent: the machine's
  std::optional<Links> links = {};                 ///< absent: the shortest even chain that closes in the adjuster
  std::optional<Band<Length>> circumference = {};  ///< rear tyre's measured rollout, which overrides its marking
  std::optional<TyreSize> front_tyre = {};         ///< matters where the front wheel drives the speedometer, or ABS

  friend bool operator==(const SetupParts&, const SetupParts&) = default;
};

/// A set-up: tyre, sprockets, chain and links.
class Setup {
 public:
  using Parts = SetupParts;

  /// The set-up, or an error where neither a tyre nor a measured circumference (0.2 to 5 m) is stated.
  [[nodiscard]] static Result<Setup> make(const Parts& parts) {
    if (parts.circumference)
      if (auto error = detail::outside("circumference", *parts.circumference, 0.2_m, 5.0_m)) return *std::move(error);
    if (!parts.tyre && !parts.circumference)
      return Error::value("a set-up needs a tyre, or a measured circumference in its place; neither was stated");
    return Setup(parts, Unchecked{});
  }
#if LAYSHAFT_EXCEPTIONS
  /// @throws Error or RangeError as `make` says.
  explicit Setup(const Parts& parts) : Setup(make(parts).value()) {}
#endif

  [[nodiscard]] constexpr Teeth front() const noexcept { return parts_.front; }
  [[nodiscard]] constexpr Teeth rear() const noexcept { return parts_.rear; }
  [[nodiscard]] constexpr const std::optional<TyreSize>& tyre() const noexcept { return parts_.tyre; }
  [[nodiscard]] constexpr const std::optional<ChainSeries>& chain() const noexcept { return parts_.chain; }
  [[nodiscard]] constexpr const std::optional<Links>& links() const noexcept { return parts_.links; }
  [[nodiscard]] constexpr const std::optional<TyreSize>& front_tyre() const noexcept { return parts_.front_tyre; }
  /// The measured rollout, where one was stated.
  [[nodiscard]] constexpr const std::optional<Band<Length>>& circumference() const noexcept {
    return parts_.circumference;
  }
  [[nodiscard]] constexpr const Parts& parts() const noexcept { return parts_; }

  friend bool operator==(const Setup&, const Setup&) = default;

 private:
  struct Unchecked {};
  constexpr Setup(const Parts& parts, Unchecked) noexcept : parts_(parts) {}

  Parts parts_;
};

}  // namespace layshaft
