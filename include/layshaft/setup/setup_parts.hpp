// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/chain/loads.hpp>
#include <layshaft/chain/series.hpp>
#include <layshaft/core/band.hpp>
#include <layshaft/core/checks.hpp>
#include <layshaft/core/counts.hpp>
#include <layshaft/tyre/rolling.hpp>
#include <layshaft/tyre/size.hpp>
#include <layshaft/tyre/tread.hpp>
#include <layshaft/wear/material.hpp>

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
  std::optional<Tread> tread = {};                    ///< the rear tyre's tread, which tells the height worn off
  std::optional<Band<double>> drive_efficiency = {};  ///< chain drive's power out over power in, where it was measured

  ChainMade chain_made = {};                            ///< what is known of the chain beyond its series
  std::optional<SprocketMaterial> front_material = {};  ///< counts only where both set-ups of a comparison state it
  std::optional<SprocketMaterial> rear_material = {};

  friend bool operator==(const SetupParts&, const SetupParts&) = default;
};

/// A set-up: tyre, sprockets, chain and links.
class Setup {
 public:
  using Parts = SetupParts;

  /// The set-up, or an error where neither a tyre nor a measured circumference (0.2 to 5 m) is stated, more tread is
  /// worn than half the tyre's section, the wear is stated twice, the drive's efficiency is not 0.5 to 1, or a figure
  /// of the chain is out of range.
  [[nodiscard]] static Result<Setup> make(const Parts& parts) {
    if (parts.circumference)
      if (auto error = detail::outside("circumference", *parts.circumference, 0.2_m, 5.0_m)) return *std::move(error);
    if (!parts.tyre && !parts.circumference)
      return Error::value("a set-up needs a tyre, or a measured circumference in its place; neither was stated");
    if (parts.tread && parts.tread_worn != Length())
      return Error::value("tread tells the height worn off already: state no tread_worn beside it");
    if (parts.tyre && !parts.circumference) {
      const Length section = parts.tyre->overall_diameter().low - parts.tyre->rim_diameter();
      const Length worn = worn_of(parts);
      if (!(is_finite(worn) && worn >= Length() && 4.0 * worn <= section))
        return Error::range(parts.tread ? "height worn off the tread" : "tread_worn", detail::in_words(worn),
                            "0 mm to " + to_text(0.25 * section / units::mm, 4) + " mm, half the section's height");
    } else if (parts.tread_worn != Length()) {
      return Error::value("a measured circumference has the tread's wear in it already: state no tread_worn beside it");
    }
    if (parts.drive_efficiency)
      if (auto error = detail::outside("drive_efficiency", *parts.drive_efficiency, 0.5, 1.0)) return *error;
    if (auto error = detail::outside(parts.chain_made)) return error->in("chain_made");
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
  /// How much of the rear tyre's tread is worn off, beyond what a measured rollout has in it already.
  [[nodiscard]] constexpr Length tread_worn() const noexcept {
    return parts_.circumference ? Length() : worn_of(parts_);
  }
  /// The rear tyre's tread, where it was stated.
  [[nodiscard]] constexpr const std::optional<Tread>& tread() const noexcept { return parts_.tread; }
  /// The chain drive's efficiency, where it was stated.
  [[nodiscard]] constexpr const std::optional<Band<double>>& drive_efficiency() const noexcept {
    return parts_.drive_efficiency;
  }
  /// What is known of the chain beyond its series.
  [[nodiscard]] constexpr const ChainMade& chain_made() const noexcept { return parts_.chain_made; }
  /// What its sprockets are made of, where it was stated.
  [[nodiscard]] constexpr std::optional<SprocketMaterial> front_material() const noexcept {
    return parts_.front_material;
  }
  [[nodiscard]] constexpr std::optional<SprocketMaterial> rear_material() const noexcept {
    return parts_.rear_material;
  }
  [[nodiscard]] constexpr const Parts& parts() const noexcept { return parts_; }

  friend bool operator==(const Setup&, const Setup&) = default;

 private:
  struct Unchecked {};
  [[nodiscard]] static constexpr Length worn_of(const Parts& parts) noexcept {
    return parts.tread ? parts.tread->worn() : parts.tread_worn;
  }
  constexpr Setup(const Parts& parts, Unchecked) noexcept : parts_(parts) {}

  Parts parts_;
};

}  // namespace layshaft
