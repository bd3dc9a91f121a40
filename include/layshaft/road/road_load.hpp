// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/band.hpp>
#include <layshaft/core/checks.hpp>
#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>
#include <layshaft/core/result.hpp>
#include <layshaft/core/watch.hpp>
#include <layshaft/road/air.hpp>
#include <layshaft/road/gravity.hpp>
#include <layshaft/road/mass_table.hpp>
#include <layshaft/road/slope.hpp>
#include <layshaft/road/surface.hpp>

#include <optional>
#include <string_view>
#include <utility>

/// @file
/// What holds a machine back: tyres that roll, air that is moved, and the hill.
namespace layshaft {

/// Rolling resistance on the level, of the whole mass.
// clang-format off
LAYSHAFT_FORMULA(constexpr, Force, constant_resistance, (double rolling_coefficient, Mass mass, Acceleration gravity),
                 is_finite(rolling_coefficient) && is_finite(mass) && is_finite(gravity), sources::definition,
                 rolling_coefficient * mass * gravity)
// clang-format on

/// What air resists with over the square of the speed through it.
LAYSHAFT_FORMULA(constexpr, LinearDensity, quadratic_resistance, (Density air_density, Area drag_area),
                 is_finite(air_density) && is_finite(drag_area), sources::definition, 0.5 * air_density * drag_area)

/// Rolling resistance on a slope, where the tyres bear less.
// clang-format off
LAYSHAFT_FORMULA(inline, Force, rolling_on_slope, (Force constant_resistance, Angle slope_angle),
                 is_finite(constant_resistance) && is_finite(slope_angle), sources::geometry,
                 constant_resistance * cos(slope_angle))
// clang-format on

/// The weight's part along a slope; below zero downhill.
// clang-format off
LAYSHAFT_FORMULA(inline, Force, climb_resistance, (Mass mass, Acceleration gravity, Angle slope_angle),
                 is_finite(mass) && is_finite(gravity) && is_finite(slope_angle), sources::geometry,
                 mass * gravity * sin(slope_angle))
// clang-format on

/// Speed through the air, of a speed over ground against a head wind.
LAYSHAFT_FORMULA(constexpr, Speed, air_speed, (Speed road_speed, Speed head_wind),
                 is_finite(road_speed) && is_finite(head_wind), sources::definition, road_speed + head_wind)

/// What the air resists with; below zero where a tail wind overtakes the machine.
// clang-format off
LAYSHAFT_FORMULA(constexpr, Force, air_drag, (LinearDensity quadratic_resistance, Speed air_speed),
                 is_finite(quadratic_resistance) && is_finite(air_speed), sources::definition,
                 quadratic_resistance * air_speed * magnitude(air_speed))
// clang-format on

/// What grows evenly with speed.
// clang-format off
LAYSHAFT_FORMULA(constexpr, Force, linear_part, (ForcePerSpeed linear_resistance, Speed road_speed),
                 is_finite(linear_resistance) && is_finite(road_speed), sources::definition,
                 linear_resistance * road_speed)
// clang-format on

/// All that resists.
LAYSHAFT_FORMULA(constexpr, Force, resistance, (Force rolling_resistance, Force air_drag, Force climb_resistance),
                 is_finite(rolling_resistance) && is_finite(air_drag) && is_finite(climb_resistance),
                 sources::definition, rolling_resistance + air_drag + climb_resistance)

/// The same on the level.
LAYSHAFT_FORMULA(constexpr, Force, level_resistance, (Force rolling_resistance, Force air_drag),
                 is_finite(rolling_resistance) && is_finite(air_drag), sources::definition,
                 rolling_resistance + air_drag)

/// Two parts of the resistance that the wheels meet.
LAYSHAFT_FORMULA(constexpr, Force, rolling_resistance, (Force constant_resistance, Force linear_part),
                 is_finite(constant_resistance) && is_finite(linear_part), sources::definition,
                 constant_resistance + linear_part)

/// What of the resistance comes with speed alone.
LAYSHAFT_FORMULA(constexpr, Force, speed_resistance, (Force air_drag, Force linear_part),
                 is_finite(air_drag) && is_finite(linear_part), sources::definition, air_drag + linear_part)

/// Where a road load comes from, and so where it holds.
enum class RoadLoadKind {
  stated,      ///< coefficients as somebody stated them
  mass_table,  ///< by mass alone: hard road near 65 km/h only; never for walking pace, hills or soft ground
  parts,       ///< of rolling coefficient, drag area and air
  coast_down,  ///< measured by coasting down: near the speeds of the log, on its ground
};

inline constexpr RoadLoadKind road_load_kinds[] = {RoadLoadKind::stated, RoadLoadKind::mass_table, RoadLoadKind::parts,
                                                   RoadLoadKind::coast_down};
/// Those that coefficients can be of.
inline constexpr RoadLoadKind kinds_of_coefficients[] = {RoadLoadKind::stated, RoadLoadKind::coast_down};

[[nodiscard]] constexpr std::string_view to_string(RoadLoadKind kind) noexcept {
  switch (kind) {
    case RoadLoadKind::stated: return "stated";
    case RoadLoadKind::mass_table: return "mass table";
    case RoadLoadKind::parts: return "parts";
    case RoadLoadKind::coast_down: return "coast-down";
  }
  return {};
}

/// The speed that the mass table is made for.
inline constexpr Speed mass_table_speed = 65.0_kmh;

inline constexpr Source fitted_source{"fitted to a coast-down log", Certainty::derived};

/// What a RoadLoad is made of when its coefficients are known: F = constant + linear v + quadratic v^2 on the level, in
/// still air.
struct RoadCoefficients {
  Force constant{};            ///< -10 to 100 kN; on a slope it is taken as the tyres' and goes with the load on them
  ForcePerSpeed linear{};      ///< -10,000 to 10,000 N/(m/s)
  LinearDensity quadratic{};   ///< 0 to 1000 N/(m/s)^2, of the speed through the air
  std::optional<Mass> mass{};  ///< with rider, 0.1 kg to 100 t; without it a slope cannot be told
  Speed head_wind{};           ///< along the road, -300 to 300 km/h; below zero from behind
  RoadLoadKind kind = RoadLoadKind::stated;  ///< or coast_down, of coefficients fitted elsewhere

  friend constexpr bool operator==(const RoadCoefficients&, const RoadCoefficients&) noexcept = default;
};

/// What a RoadLoad is made of when its causes are known.
struct RoadParts {
  Mass mass;                         ///< with rider, 0.1 kg to 100 t
  Band<double> rolling_coefficient;  ///< 0 to 2: `surface(SurfaceKind::gravel).rolling_coefficient`
  Band<Area> drag_area;              ///< 0 to 100 m2: `drag_area(DragKind::motorcycle).area`
  Band<Density> air_density = Band<Density>::exactly(standard_atmosphere::density);  ///< 0 to 10 kg/m3
  Speed head_wind{};                                                                 ///< -300 to 300 km/h
  Source rolling_source = sources::stated;
  Source drag_source = sources::stated;

  friend constexpr bool operator==(const RoadParts&, const RoadParts&) noexcept = default;
};

namespace detail {

/// The constant and the quadratic part that the causes make, for whoever watches.
template <class Watch>
[[nodiscard]] constexpr auto constant_of(Watch watch, const RoadParts& parts, Corner at) {
  const auto coefficient = watch.given("rolling_coefficient", parts.rolling_coefficient.at(at), parts.rolling_source);
  const auto weighed = watch.given("mass", parts.mass);
  const auto gravity = detail::gravity(watch);
  return watch.step(formula::constant_resistance{}, coefficient, weighed, gravity);
}
template <class Watch>
[[nodiscard]] constexpr auto quadratic_of(Watch watch, const RoadParts& parts, Corner at) {
  const auto density = watch.given("air_density", parts.air_density.at(at));
  const auto area = watch.given("drag_area", parts.drag_area.at(at), parts.drag_source);
  return watch.step(formula::quadratic_resistance{}, density, area);
}

}  // namespace detail

struct CoastDownLog;
class Working;  // to explain, include <layshaft/explain.hpp>

/// Where the resistance of a road load is asked for.
struct RoadQuestion {
  std::optional<Speed> speed = {};
  Slope slope = {};
  std::optional<Mass> mass = {};    ///< of a coast-down: what is to be slowed
  std::optional<Speed> start = {};  ///< of a coast-down
  std::optional<Speed> end = {};    ///< of a coast-down
};

/// What holds a machine back over its speed. Its three coefficients are bands, which are exact unless it was made of
/// parts that are not; low is where all of them are low.
class RoadLoad {
 public:
  /// The road load of coefficients; or a RangeError that names the one that lies outside its range.
  [[nodiscard]] static Result<RoadLoad> make(const RoadCoefficients& of) {
    if (auto error = refused(of)) return *std::move(error);
    return RoadLoad(Band<Force>::exactly(of.constant), of.linear, Band<LinearDensity>::exactly(of.quadratic), of.mass,
                    of.head_wind, of.kind, of.kind == RoadLoadKind::stated ? sources::stated : fitted_source);
  }
  /// The road load of a motorcycle of this mass, with rider, by the US road-load table: 94.5 to 345.5 kg. A test
  /// bench's figure for hard road near 65 km/h, which `kind()` tells; or a RangeError.
  [[nodiscard]] static Result<RoadLoad> try_by_mass(Mass mass) {
    const MassRow* row = is_finite(mass) ? find_mass_row(mass) : nullptr;
    if (!row) return Error::range("mass", detail::in_words(mass), "95 kg to 345 kg, of which the table has rows");
    return RoadLoad(Band<Force>::exactly(row->constant), ForcePerSpeed(), Band<LinearDensity>::exactly(row->quadratic),
                    mass, Speed(), RoadLoadKind::mass_table, mass_table_source);
  }
  /// The road load of a mass that rolls on a surface through air; or a RangeError that names the part.
  [[nodiscard]] static Result<RoadLoad> try_from_parts(const RoadParts& parts) {
    if (auto error = detail::outside("mass", parts.mass, least_mass, most_mass)) return *std::move(error);
    if (auto error = detail::outside("rolling_coefficient", parts.rolling_coefficient, 0.0, 2.0))
      return *std::move(error);
    if (auto error = detail::outside("drag_area", parts.drag_area, Area(), 100.0_m2)) return *std::move(error);
    if (auto error = detail::outside("air_density", parts.air_density, Density(), 10.0_kg_per_m3))
      return *std::move(error);
    if (auto error = detail::outside("head_wind", parts.head_wind, -strongest_wind, strongest_wind))
      return *std::move(error);
    const auto constant = over_runs(one_cause, [&](Corner at) { return detail::constant_of(Unwatched(), parts, at); });
    const auto quadratic =
        over_runs(one_cause, [&](Corner at) { return detail::quadratic_of(Unwatched(), parts, at); });
    RoadLoad road(constant, ForcePerSpeed(), quadratic, parts.mass, parts.head_wind, RoadLoadKind::parts,
                  Source{"rolling coefficient, drag area and air density",
                         weaker(parts.rolling_source.certainty, parts.drag_source.certainty)});
    road.parts_ = parts;
    return road;
  }
  /// The road load that a coast-down log tells; road/coast_down_fit.hpp, which also tells how sure it is.
  [[nodiscard]] static Result<RoadLoad> try_from_coast_down(const CoastDownLog& log);
#if LAYSHAFT_EXCEPTIONS
  /// @throws RangeError as `make` says.
  explicit RoadLoad(const RoadCoefficients& coefficients) : RoadLoad(make(coefficients).value()) {}
  /// @throws RangeError as `try_by_mass` says.
  [[nodiscard]] static RoadLoad by_mass(Mass mass) { return try_by_mass(mass).value(); }
  /// @throws RangeError as `try_from_parts` says.
  [[nodiscard]] static RoadLoad from_parts(const RoadParts& parts) { return try_from_parts(parts).value(); }
  /// @throws Error as `try_from_coast_down` says.
  [[nodiscard]] static RoadLoad from_coast_down(const CoastDownLog& log);
#endif

  [[nodiscard]] constexpr const Band<Force>& constant() const noexcept { return constant_; }
  [[nodiscard]] constexpr ForcePerSpeed linear() const noexcept { return linear_; }
  [[nodiscard]] constexpr const Band<LinearDensity>& quadratic() const noexcept { return quadratic_; }
  [[nodiscard]] constexpr std::optional<Mass> mass() const noexcept { return mass_; }
  [[nodiscard]] constexpr Speed head_wind() const noexcept { return head_wind_; }
  [[nodiscard]] constexpr RoadLoadKind kind() const noexcept { return kind_; }
  [[nodiscard]] constexpr const Source& source() const noexcept { return source_; }
  /// The air that a figure of the mass table was moved to; none where it stands as printed.
  [[nodiscard]] constexpr const std::optional<Density>& other_air() const noexcept { return other_air_; }
  /// The parts it was made of; none unless it was made of parts.
  [[nodiscard]] constexpr const std::optional<RoadParts>& parts() const noexcept { return parts_; }

  /// The same at another head wind, -300 to 300 km/h.
  [[nodiscard]] Result<RoadLoad> try_in_wind(Speed head_wind) const {
    if (auto error = detail::outside("head_wind", head_wind, -strongest_wind, strongest_wind)) return *std::move(error);
    RoadLoad road = *this;
    road.head_wind_ = head_wind;
    if (road.parts_) road.parts_->head_wind = head_wind;
    return road;
  }
  /// The same with another mass to be lifted on a slope, 0.1 kg to 100 t; what the tyres resist with stays.
  [[nodiscard]] Result<RoadLoad> try_carrying(Mass mass) const {
    if (auto error = detail::outside("mass", mass, least_mass, most_mass)) return *std::move(error);
    return lifting(mass);
  }
  /// The same, unchecked: of a mass that is known to be one, as a Body's is.
  [[nodiscard]] RoadLoad lifting(Mass mass) const noexcept {
    RoadLoad road = *this;
    road.mass_ = mass;
    return road;
  }
  /// The same in air of another density, above 0, to 10 kg/m3. What is made of parts is made of it anew; of any other
  /// the quadratic part is taken as that of the standard atmosphere at sea level.
  [[nodiscard]] Result<RoadLoad> try_in_air(Density density) const {
    if (auto error = detail::outside("density", density, 1e-3_kg_per_m3, 10.0_kg_per_m3)) return *std::move(error);
    RoadLoad road = *this;
    if (road.parts_) {
      road.parts_->air_density = Band<Density>::exactly(density);
      road.quadratic_ =
          over_runs(one_cause, [&](Corner at) { return detail::quadratic_of(Unwatched(), *road.parts_, at); });
    } else {
      const Density of_figure = other_air_.value_or(standard_atmosphere::density);
      const double factor = density_ratio(density, of_figure);
      road.quadratic_ = over(quadratic_, [&](LinearDensity part) { return factor * part; });
      if (kind_ == RoadLoadKind::mass_table) road.other_air_ = density;
    }
    return road;
  }

 private:
  template <class Watch, class Value>
  [[nodiscard]] constexpr auto from_source(Watch watch, ValueName name, Value value) const {
    return kind_ == RoadLoadKind::mass_table ? watch.looked_up(name, value, "row of the mass", source_)
                                             : watch.given(name, value, source_);
  }

 public:
  /// The constant part for whoever watches, on the level.
  template <class Watch>
  [[nodiscard]] constexpr auto constant(Watch watch, Corner at) const {
    return watch.known(constant_.at(at), [&] {
      if (parts_) return detail::constant_of(watch, *parts_, at);
      return from_source(watch, "constant_resistance", constant_.at(at));
    });
  }
  /// What goes with the square of the speed through the air, for whoever watches.
  template <class Watch>
  [[nodiscard]] constexpr auto quadratic(Watch watch, Corner at) const {
    return watch.known(quadratic_.at(at), [&] {
      if (parts_) return detail::quadratic_of(watch, *parts_, at);
      return from_source(watch, "quadratic_resistance", quadratic_.at(at));
    });
  }
  /// What goes with speed, for whoever watches.
  template <class Watch>
  [[nodiscard]] constexpr auto linear(Watch watch) const {
    return from_source(watch, "linear_resistance", linear_);
  }
  /// The constant part on a slope, the tyres' alone, for whoever watches.
  template <class Watch>
  [[nodiscard]] auto rolling(Watch watch, const Slope& slope, Corner at) const {
    const auto level = constant(watch, at);
    if (slope.level()) return level;
    const auto angle = slope.angle(watch);
    return watch.step(formula::rolling_on_slope{}, level, angle);
  }
  /// The mass that a slope lifts, for whoever watches: another than the tyres bear where somebody said so.
  template <class Watch>
  [[nodiscard]] constexpr auto lifted(Watch watch) const {
    return watch.given({"mass", parts_ && parts_->mass != *mass_ ? 2 : 0}, *mass_);
  }
  /// The weight's part along a slope, for whoever watches; only where a mass is stated.
  template <class Watch>
  [[nodiscard]] auto climb(Watch watch, const Slope& slope) const {
    const auto weighed = lifted(watch);
    const auto gravity = detail::gravity(watch);
    const auto angle = slope.angle(watch);
    return watch.step(formula::climb_resistance{}, weighed, gravity, angle);
  }
  /// What the tyres resist with at a speed, for whoever watches.
  template <class Watch, class WatchedSpeed>
  [[nodiscard]] auto rolling_at(Watch watch, const WatchedSpeed& road_speed, const Slope& slope, Corner at) const {
    const auto still = rolling(watch, slope, at);
    if (linear_ == ForcePerSpeed()) return still;
    const auto growing = watch.step(formula::linear_part{}, linear(watch), road_speed);
    return watch.step(formula::rolling_resistance{}, still, growing);
  }
  /// What the air resists with, for whoever watches.
  template <class Watch, class WatchedSpeed>
  [[nodiscard]] auto drag_at(Watch watch, const WatchedSpeed& road_speed, Corner at) const {
    const auto square = quadratic(watch, at);
    if (head_wind_ == Speed()) return watch.step(formula::air_drag{}, square, road_speed);
    const auto through_air = watch.step(formula::air_speed{}, road_speed, watch.given("head_wind", head_wind_));
    return watch.step(formula::air_drag{}, square, through_air);
  }
  /// What comes with speed alone, on a slope as on the level, for whoever watches.
  template <class Watch, class WatchedSpeed>
  [[nodiscard]] auto speed_part(Watch watch, const WatchedSpeed& road_speed, Corner at) const {
    const auto drag = drag_at(watch, road_speed, at);
    if (linear_ == ForcePerSpeed()) return drag;
    const auto growing = watch.step(formula::linear_part{}, linear(watch), road_speed);
    return watch.step(formula::speed_resistance{}, drag, growing);
  }
  /// The resistance for whoever watches; `road_speed` is a value of the watch. On a slope only where a mass is stated.
  template <class Watch, class WatchedSpeed>
  [[nodiscard]] auto resistance(Watch watch, const WatchedSpeed& road_speed, const Slope& slope, Corner at) const {
    const auto rolled = rolling_at(watch, road_speed, slope, at);
    const auto drag = drag_at(watch, road_speed, at);
    if (slope.level()) return watch.step("resistance", formula::level_resistance{}, rolled, drag);
    const auto climbed = climb(watch, slope);
    return watch.step(formula::resistance{}, rolled, drag, climbed);
  }

  /// The resistance at a speed, 0 to 1000 km/h, on a slope; below zero where the hill or the wind drives. Or a
  /// RangeError, or an Error on a slope where no mass is stated.
  [[nodiscard]] Result<Force> try_resistance(Speed speed, const Slope& slope = Slope(),
                                             Corner at = Corner::nominal) const {
    if (auto error = unasked(speed, slope)) return *std::move(error);
    return resistance(Unwatched(), speed, slope, at);
  }
  /// The same as a band, as wide as the parts are uncertain.
  [[nodiscard]] Result<Band<Force>> try_resistance_band(Speed speed, const Slope& slope = Slope()) const {
    if (auto error = unasked(speed, slope)) return *std::move(error);
    return over_runs(one_cause, [&](Corner at) { return resistance(Unwatched(), speed, slope, at); });
  }
  /// What speaks against asking for the resistance there.
  [[nodiscard]] std::optional<Error> unasked(Speed speed, const Slope& slope) const {
    if (auto error = detail::outside("speed", speed, Speed(), 1000.0_kmh)) return error;
    return unsloped(slope);
  }
  [[nodiscard]] std::optional<Error> unsloped(const Slope& slope) const {
    if (slope.level() || mass_) return std::nullopt;
    return Error::value("a slope needs the mass that climbs it; state the mass of the road load");
  }
  /// How a number of the road load came about: "resistance" at a speed, "coast down time" of a mass from start to end.
  /// Defined in road/explain.hpp, which is opt-in.
  [[nodiscard]] Result<Working> try_explain(std::string_view what, const RoadQuestion& at) const;
#if LAYSHAFT_EXCEPTIONS
  /// @throws RangeError or Error as `try_resistance` says.
  [[nodiscard]] Force resistance(Speed speed, const Slope& slope = Slope(), Corner at = Corner::nominal) const {
    return try_resistance(speed, slope, at).value();
  }
  /// @throws RangeError or Error as `try_resistance` says.
  [[nodiscard]] Band<Force> resistance_band(Speed speed, const Slope& slope = Slope()) const {
    return try_resistance_band(speed, slope).value();
  }
  /// @throws RangeError as `try_in_wind` says.
  [[nodiscard]] RoadLoad in_wind(Speed head_wind) const { return try_in_wind(head_wind).value(); }
  /// @throws RangeError as `try_carrying` says.
  [[nodiscard]] RoadLoad carrying(Mass mass) const { return try_carrying(mass).value(); }
  /// @throws RangeError as `try_in_air` says.
  [[nodiscard]] RoadLoad in_air(Density density) const { return try_in_air(density).value(); }
  /// @throws ParseError, or as the number itself.
  [[nodiscard]] Working explain(std::string_view what, const RoadQuestion& at) const;
#endif

  friend constexpr bool operator==(const RoadLoad&, const RoadLoad&) noexcept = default;

 private:
  friend struct CoastDownFit;

  static constexpr Mass least_mass = 0.1_kg, most_mass = 100000.0_kg;
  static constexpr Speed strongest_wind = 300.0_kmh;

  constexpr RoadLoad(const Band<Force>& constant, ForcePerSpeed linear, const Band<LinearDensity>& quadratic,
                     std::optional<Mass> mass, Speed head_wind, RoadLoadKind kind, const Source& source) noexcept
      : constant_(constant),
        linear_(linear),
        quadratic_(quadratic),
        mass_(mass),
        head_wind_(head_wind),
        kind_(kind),
        source_(source) {}

  [[nodiscard]] static std::optional<Error> refused(const RoadCoefficients& of) {
    if (auto error = detail::outside("constant", of.constant, -10000.0_N, 100000.0_N)) return error;
    if (auto error = detail::outside("linear", of.linear, -10000.0_N_per_mps, 10000.0_N_per_mps)) return error;
    if (auto error = detail::outside("quadratic", of.quadratic, LinearDensity(), 1000.0_kg_per_m)) return error;
    if (of.mass)
      if (auto error = detail::outside("mass", *of.mass, least_mass, most_mass)) return error;
    if (of.kind != RoadLoadKind::stated && of.kind != RoadLoadKind::coast_down)
      return Error::value("a road load of coefficients is either stated or of a coast-down");
    return detail::outside("head_wind", of.head_wind, -strongest_wind, strongest_wind);
  }

  Band<Force> constant_;
  ForcePerSpeed linear_;
  Band<LinearDensity> quadratic_;
  std::optional<Mass> mass_;
  Speed head_wind_;
  RoadLoadKind kind_;
  Source source_;
  std::optional<RoadParts> parts_{};
  std::optional<Density> other_air_{};
};

}  // namespace layshaft
