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
  Teeth front;                                        ///< front sprocket
  Teeth rear;                                         ///< rear sprocket
  std::optional<TyreSize> tyre = {};                  ///< rear tyre; may be absent where `circumference` is measured
  std::optional<ChainSeries> chain = {};              ///< absent: the machine's
  std::optional<Links> links = {};                    ///< absent: the shortest even chain that closes in the adjuster
  std::optional<Band<Length>> circumference = {};     ///< rear tyre's measured rollout, which overrides its marking
  std::optional<TyreSize> front_tyre = {};            ///< matters where the front wheel drives the speedometer, or ABS
  Length tread_worn = {};                             ///< height worn off the rear tyre's tread; a rollout has it in it
  std::optional<Band<double>> drive_efficiency = {};  ///< chain drive's power out over power in, where it was measured

  friend bool operator==(const SetupParts&, const SetupParts&) = default;
};

/// A set-up: tyre, sprockets, chain and links.
class Setup {
 public:
  using Parts = SetupParts;

  /// The set-up, or an error where neither a tyre nor a measured circumference (0.2 to 5 m) is stated, more tread is
  /// worn than half the tyre's section, or the drive's efficiency is not 0.5 to 1.
  [[nodiscard]] static Result<Setup> make(const Parts& parts) {
    if (parts.circumference)
      if (auto error = detail::outside("circumference", *parts.circumference, 0.2_m, 5.0_m)) return *std::move(error);
    if (!parts.tyre && !parts.circumference)
      return Error::value("a set-up needs a tyre, or a measured circumference in its place; neither was stated");
    if (parts.tyre && !parts.circumference) {
      const Length section = parts.tyre->overall_diameter().low - parts.tyre->rim_diameter();
      if (!(is_finite(parts.tread_worn) && parts.tread_worn >= Length() && 4.0 * parts.tread_worn <= section))
        return Error::range("tread_worn", detail::in_words(parts.tread_worn),
                            "0 mm to " + to_text(0.25 * section / units::mm, 4) + " mm, half the section's height");
    } else if (parts.tread_worn != Length()) {
      return Error::value("a measured circumference has the tread's wear in it already: state no tread_worn beside it");
    }
    if (parts.drive_efficiency)
      if (auto error = detail::outside("drive_efficiency", *parts.drive_efficiency, 0.5, 1.0)) return *error;
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
  /// How much of the rear tyre's tread is worn off.
  [[nodiscard]] constexpr Length tread_worn() const noexcept { return parts_.tread_worn; }
  /// The chain drive's efficiency, where it was stated.
  [[nodiscard]] constexpr const std::optional<Band<double>>& drive_efficiency() const noexcept {
    return parts_.drive_efficiency;
  }
  [[nodiscard]] constexpr const Parts& parts() const noexcept { return parts_; }

  friend bool operator==(const Setup&, const Setup&) = default;

 private:
  struct Unchecked {};
  constexpr Setup(const Parts& parts, Unchecked) noexcept : parts_(parts) {}

  Parts parts_;
};

}  // namespace layshaft
