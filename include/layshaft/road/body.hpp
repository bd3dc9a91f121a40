// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/checks.hpp>
#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>
#include <layshaft/core/result.hpp>

#include <optional>

/// @file
/// What is moved, and where its centre of mass lies.
namespace layshaft {

/// Where the centre of two masses lies along a line, of where each lies.
LAYSHAFT_FORMULA(constexpr, Length, joint_centre, (Mass mass, Length mass_place, Mass added_mass, Length added_place),
                 positive(mass) && is_finite(mass_place) && positive(added_mass) && is_finite(added_place),
                 sources::definition, (mass * mass_place + added_mass * added_place) / (mass + added_mass))

/// What a Body is made of.
struct BodyParts {
  Mass mass;                                 ///< of machine, rider and luggage: 0.1 kg to 100 t
  std::optional<Length> wheelbase = {};      ///< 0.1 to 20 m
  std::optional<Length> centre_ahead = {};   ///< centre of mass ahead of the rear contact patch: 0 to the wheelbase
  std::optional<Length> centre_height = {};  ///< centre of mass above the ground: above 0, to 10 m
  MomentOfInertia wheel_inertia = {};        ///< of both wheels together: 0 to 10,000 kg m2

  friend constexpr bool operator==(const BodyParts&, const BodyParts&) noexcept = default;
};

/// The mass that is moved, rider aboard, and where its centre lies, for as far as that is stated.
class Body {
 public:
  using Parts = BodyParts;

  /// The body, or a RangeError where a part lies outside its range.
  [[nodiscard]] static Result<Body> make(const Parts& parts) {
    if (auto error = detail::outside("mass", parts.mass, 0.1_kg, 100000.0_kg)) return *std::move(error);
    if (parts.wheelbase)
      if (auto error = detail::outside("wheelbase", *parts.wheelbase, 0.1_m, 20.0_m)) return *std::move(error);
    if (parts.centre_ahead)
      if (auto error = detail::outside("centre_ahead", *parts.centre_ahead, Length(), parts.wheelbase.value_or(20.0_m)))
        return *std::move(error);
    if (parts.centre_height)
      if (auto error = detail::outside("centre_height", *parts.centre_height, 1.0_mm, 10.0_m)) return *std::move(error);
    if (auto error = detail::outside("wheel_inertia", parts.wheel_inertia, MomentOfInertia(), 1e4_kg_m2))
      return *std::move(error);
    return Body(parts, Unchecked{});
  }
#if LAYSHAFT_EXCEPTIONS
  /// @throws RangeError as `make` says.
  explicit Body(const Parts& parts) : Body(make(parts).value()) {}
#endif

  [[nodiscard]] constexpr Mass mass() const noexcept { return parts_.mass; }
  [[nodiscard]] constexpr std::optional<Length> wheelbase() const noexcept { return parts_.wheelbase; }
  [[nodiscard]] constexpr std::optional<Length> centre_ahead() const noexcept { return parts_.centre_ahead; }
  [[nodiscard]] constexpr std::optional<Length> centre_height() const noexcept { return parts_.centre_height; }
  [[nodiscard]] constexpr MomentOfInertia wheel_inertia() const noexcept { return parts_.wheel_inertia; }
  [[nodiscard]] constexpr const Parts& parts() const noexcept { return parts_; }

  /// The same with one more mass, whose centre lies there: a rider, luggage. Or an Error where this body's own centre
  /// is not stated, or a RangeError where the joint one lies outside its range.
  [[nodiscard]] Result<Body> try_carrying(Mass added, Length ahead, Length height) const {
    if (!parts_.centre_ahead || !parts_.centre_height)
      return Error::value("a mass is added to a body whose centre of mass is not stated");
    if (auto error = detail::outside("added mass", added, 0.1_kg, 100000.0_kg)) return *std::move(error);
    if (auto error = detail::outside("ahead", ahead, -20.0_m, 20.0_m)) return *std::move(error);
    if (auto error = detail::outside("height", height, 0.0_m, 10.0_m)) return *std::move(error);
    Parts joint = parts_;
    joint.mass = parts_.mass + added;
    joint.centre_ahead = joint_centre(parts_.mass, *parts_.centre_ahead, added, ahead);
    joint.centre_height = joint_centre(parts_.mass, *parts_.centre_height, added, height);
    return make(joint);
  }
#if LAYSHAFT_EXCEPTIONS
  /// @throws Error or RangeError as `try_carrying` says.
  [[nodiscard]] Body carrying(Mass added, Length ahead, Length height) const {
    return try_carrying(added, ahead, height).value();
  }
#endif

  friend constexpr bool operator==(const Body&, const Body&) noexcept = default;

 private:
  struct Unchecked {};
  constexpr Body(const Parts& parts, Unchecked) noexcept : parts_(parts) {}

  Parts parts_;
};

}  // namespace layshaft
