// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/amount.hpp>
#include <layshaft/core/band.hpp>
#include <layshaft/core/checks.hpp>
#include <layshaft/core/fixed_list.hpp>
#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>
#include <layshaft/core/result.hpp>
#include <layshaft/core/source.hpp>
#include <layshaft/core/units.hpp>
#include <layshaft/core/watch.hpp>
#include <layshaft/tyre/growth.hpp>
#include <layshaft/tyre/legal_tread.hpp>
#include <layshaft/tyre/load_index.hpp>
#include <layshaft/tyre/rolling_radius.hpp>
#include <layshaft/tyre/size.hpp>
#include <layshaft/tyre/two_tyres.hpp>

#include <optional>
#include <string>
#include <string_view>
#include <utility>

/// @file
/// What a machine asks of a tyre, held against what the tyre's marking promises.
///
/// A load index holds up to the speed of the speed symbol; above 210 km/h the tyres made for such speeds carry less
/// (from memory; by how much is in none of the sources at hand), so that a load at a higher top speed is judged unknown
/// where it would else be enough.
namespace layshaft {

/// What the load may be over what the axle bears; below zero: too little.
// clang-format off
LAYSHAFT_FORMULA(constexpr, Mass, load_margin, (Mass load_capacity, double tyres_on_axle, Mass axle_load),
                 positive(load_capacity) && positive(tyres_on_axle) && positive(axle_load), sources::definition,
                 tyres_on_axle * load_capacity - axle_load)
// clang-format on

/// Rated speed over top speed.
LAYSHAFT_FORMULA(constexpr, Speed, speed_margin, (Speed rated_speed, Speed top_speed),
                 positive(rated_speed) && positive(top_speed), sources::definition, rated_speed - top_speed)

/// Room that is left beside the tallest tyre of a marking.
LAYSHAFT_FORMULA(constexpr, Length, radius_margin, (Length radius_clearance, Length radius_growth),
                 is_finite(radius_clearance) && is_finite(radius_growth), sources::definition,
                 radius_clearance - radius_growth)

/// Room that is left beside the widest tyre of a marking, over both sides.
LAYSHAFT_FORMULA(constexpr, Length, width_margin, (Length width_clearance, Length width_growth),
                 is_finite(width_clearance) && is_finite(width_growth), sources::definition,
                 width_clearance - width_growth)

/// Tread depth over the least that is asked for.
LAYSHAFT_FORMULA(constexpr, Length, tread_margin, (Length tread_depth, Length least_tread_depth),
                 is_finite(tread_depth) && is_finite(least_tread_depth), sources::definition,
                 tread_depth - least_tread_depth)

/// How much higher the axle stands: the change of the static radius.
LAYSHAFT_FORMULA(constexpr, Length, ride_height_change, (Length base_static_radius, Length trial_static_radius),
                 positive(base_static_radius) && positive(trial_static_radius), sources::geometry,
                 trial_static_radius - base_static_radius)

/// What a machine asks of a tyre; what is not stated is not looked at.
struct TyreAsked {
  std::optional<Mass> axle_load = {};            ///< fully laden: 0.1 kg to 100 t
  int tyres_on_axle = 1;                         ///< 1; 2; or 4, which are two pairs of twins
  std::optional<Speed> top_speed = {};           ///< 0.1 to 1000 km/h
  std::optional<Length> radius_clearance = {};   ///< room above the stock tyre as marked, without what growth with
                                                 ///< speed needs (growth.hpp): 0 to 1 m
  std::optional<Length> width_clearance = {};    ///< the same beside it, both sides together: 0 to 1 m
  std::optional<Length> least_tread_depth = {};  ///< 0 to 100 mm
  Source tread_rule = sources::stated;           ///< where the least tread depth comes from

  /// Takes the least tread depth from a rule; one that only asks for a visible pattern leaves none to look at.
  constexpr void take(const LegalTread& rule) noexcept {
    least_tread_depth = rule.depth;
    tread_rule = rule.source;
  }

  friend constexpr bool operator==(const TyreAsked&, const TyreAsked&) noexcept = default;
};

/// What was looked at.
enum class FitnessCode { load, speed, radius, width, tread };

[[nodiscard]] constexpr std::string_view to_string(FitnessCode code) noexcept {
  switch (code) {
    case FitnessCode::load: return "load";
    case FitnessCode::speed: return "speed";
    case FitnessCode::radius: return "radius";
    case FitnessCode::width: return "width";
    case FitnessCode::tread: return "tread";
  }
  return {};
}

/// What came of it.
enum class FitnessVerdict {
  enough,
  short_of,  ///< the tyre has less than is asked, or needs more room than there is
  unknown,   ///< the marking does not tell, or no rule at hand does
};

[[nodiscard]] constexpr std::string_view to_string(FitnessVerdict verdict) noexcept {
  switch (verdict) {
    case FitnessVerdict::enough: return "enough";
    case FitnessVerdict::short_of: return "short";
    case FitnessVerdict::unknown: return "unknown";
  }
  return {};
}

/// One thing that was looked at. Amounts that are not known have the dimension none.
struct FitnessCheck {
  FitnessCode what{};
  Amount asked;   ///< axle load, top speed, clearance or least depth
  Amount has;     ///< load capacity of all the axle's tyres, rated speed, growth or depth
  Amount margin;  ///< how much more there is than asked; of a clearance, how much room is left
  FitnessVerdict verdict = FitnessVerdict::unknown;
  Source rule;  ///< whose word stands behind `has`, or of a tread behind `asked`

  friend constexpr bool operator==(const FitnessCheck&, const FitnessCheck&) = default;
};

/// All that was looked at, in the order of FitnessCode, and what the tyre does to the ride height.
struct TyreFitness {
  FixedList<FitnessCheck, 5> checks;
  std::optional<Band<Length>> ride_height_change = {};  ///< against the stock tyre, where one is stated;
                                                        ///< both settling as motorcycle tyres do

  /// What came of one thing; none where it was not asked for.
  [[nodiscard]] constexpr std::optional<FitnessVerdict> verdict(FitnessCode what) const noexcept {
    for (const FitnessCheck& check : checks)
      if (check.what == what) return check.verdict;
    return std::nullopt;
  }

  friend constexpr bool operator==(const TyreFitness&, const TyreFitness&) = default;
};

namespace detail {

/// Speed above which a load index alone does not tell the load any more.
inline constexpr Speed speed_of_full_load = 210_kmh;

inline constexpr std::string_view load_index_rule = "load index series of ISO 4223-1";
inline constexpr Source zr_rule{"ZR in the size: for speeds above 240 km/h", Certainty::published};
inline constexpr Source unmarked_rule{"the tyre's marking does not tell", Certainty::stated};
inline constexpr Source no_stock_tyre{"no stock tyre stated to hold it against", Certainty::stated};
inline constexpr Source no_width_limit{"no limit of this notation's section width at hand", Certainty::stated};

/// The load index that counts on an axle: each tyre of twins carries less, by a second index.
[[nodiscard]] constexpr std::optional<int> load_index_on_axle(const TyreSize& tyre, int tyres_on_axle) noexcept {
  return tyres_on_axle > 2 ? tyre.second_load_index() : tyre.load_index();
}

/// The margins, for whoever watches.
template <class Watch>
[[nodiscard]] constexpr auto load_margin_at(Watch watch, const LoadIndex& row, int tyres_on_axle, Mass axle_load) {
  const auto capacity = watch.looked_up("load_capacity", row.capacity, "", Source{load_index_rule, row.certainty});
  const auto tyres = watch.given("tyres_on_axle", double(tyres_on_axle));
  const auto load = watch.given("axle_load", axle_load);
  return watch.step(formula::load_margin{}, capacity, tyres, load);
}
template <class Watch>
[[nodiscard]] constexpr auto speed_margin_at(Watch watch, const SpeedSymbol& symbol, Speed top_speed) {
  const auto rated = watch.looked_up("rated_speed", symbol.speed, symbol.name, symbol.source());
  const auto top = watch.given("top_speed", top_speed);
  return watch.step(formula::speed_margin{}, rated, top);
}
template <class Watch>
[[nodiscard]] constexpr auto radius_margin_at(Watch watch, const TyreSize& tyre, const TyreSize& stock,
                                              Length clearance) {
  const auto room = watch.given("radius_clearance", clearance);
  const auto growth = radius_growth_at(watch, tyre, stock);
  return watch.step(formula::radius_margin{}, room, growth);
}
template <class Watch>
[[nodiscard]] constexpr auto width_margin_at(Watch watch, const TyreSize& tyre, const TyreSize& stock,
                                             Length clearance) {
  const auto room = watch.given("width_clearance", clearance);
  const auto growth = width_growth_at(watch, tyre, stock);
  return watch.step(formula::width_margin{}, room, growth);
}
template <class Watch>
[[nodiscard]] constexpr auto tread_margin_at(Watch watch, Length depth, Length least, const Source& rule) {
  const auto now = watch.given("tread_depth", depth);
  const auto asked = watch.given("least_tread_depth", least, rule);
  return watch.step(formula::tread_margin{}, now, asked);
}
template <class Watch>
[[nodiscard]] constexpr auto ride_height_change_at(Watch watch, const TyreSize& stock, const TyreSize& tyre,
                                                   const TwoTyreCorners& at) {
  const auto before = static_radius_at(watch.on(Scope::base), stock, Length(), TyreDeflection::motorcycle, at.base_size,
                                       at.base_rolling);
  const auto after = static_radius_at(watch.on(Scope::trial), tyre, Length(), TyreDeflection::motorcycle, at.trial_size,
                                      at.trial_rolling);
  return watch.step(formula::ride_height_change{}, before, after);
}

/// What a margin over what is asked, zero or more, means; a computed one of nothing at all is still enough.
[[nodiscard]] constexpr FitnessVerdict verdict_of(double margin, double asked) noexcept {
  return margin >= -1e-12 * asked ? FitnessVerdict::enough : FitnessVerdict::short_of;
}
template <class Unit>
[[nodiscard]] constexpr FitnessCheck checked(FitnessCode what, boost::units::quantity<Unit> asked,
                                             boost::units::quantity<Unit> has, boost::units::quantity<Unit> margin,
                                             const Source& rule) noexcept {
  return {what, asked, has, margin, verdict_of(margin.value(), asked.value()), rule};
}

[[nodiscard]] constexpr FitnessCheck load_check(const TyreSize& tyre, const TyreAsked& asked) noexcept {
  const std::optional<int> index = load_index_on_axle(tyre, asked.tyres_on_axle);
  const LoadIndex* row = index ? find_load_index(*index) : nullptr;
  if (!row) return {FitnessCode::load, *asked.axle_load, {}, {}, FitnessVerdict::unknown, unmarked_rule};
  const Mass margin = load_margin_at(Unwatched(), *row, asked.tyres_on_axle, *asked.axle_load);
  FitnessCheck check = checked(FitnessCode::load, *asked.axle_load, row->capacity * double(asked.tyres_on_axle), margin,
                               Source{load_index_rule, row->certainty});
  if (asked.top_speed && *asked.top_speed > speed_of_full_load && check.verdict == FitnessVerdict::enough)
    check.verdict = FitnessVerdict::unknown;
  return check;
}
[[nodiscard]] constexpr FitnessCheck speed_check(const TyreSize& tyre, const TyreAsked& asked) noexcept {
  const std::optional<SpeedSymbol> symbol = tyre.speed_symbol();
  if (symbol) {
    FitnessCheck check = checked(FitnessCode::speed, *asked.top_speed, symbol->speed,
                                 speed_margin_at(Unwatched(), *symbol, *asked.top_speed), symbol->source());
    if (check.verdict == FitnessVerdict::short_of && tyre.beyond_symbol()) check.verdict = FitnessVerdict::unknown;
    return check;
  }
  if (!tyre.zr()) return {FitnessCode::speed, *asked.top_speed, {}, {}, FitnessVerdict::unknown, unmarked_rule};
  constexpr Speed at_least = 240_kmh;
  FitnessCheck check = checked(FitnessCode::speed, *asked.top_speed, at_least, at_least - *asked.top_speed, zr_rule);
  if (check.verdict == FitnessVerdict::short_of) check.verdict = FitnessVerdict::unknown;  // it may be rated higher
  return check;
}
[[nodiscard]] constexpr FitnessCheck radius_check(const TyreSize& tyre, const TyreAsked& asked,
                                                  const std::optional<TyreSize>& stock) noexcept {
  if (!stock) return {FitnessCode::radius, *asked.radius_clearance, {}, {}, FitnessVerdict::unknown, no_stock_tyre};
  return checked(FitnessCode::radius, *asked.radius_clearance, greatest_radius_growth(tyre, *stock),
                 radius_margin_at(Unwatched(), tyre, *stock, *asked.radius_clearance),
                 tyre.notation() == TyreNotation::metric ? diameter_limit_source : tyre.source());
}
[[nodiscard]] constexpr FitnessCheck width_check(const TyreSize& tyre, const TyreAsked& asked,
                                                 const std::optional<TyreSize>& stock) noexcept {
  if (!stock) return {FitnessCode::width, *asked.width_clearance, {}, {}, FitnessVerdict::unknown, no_stock_tyre};
  const std::optional<Length> growth = greatest_width_growth(tyre, *stock);
  if (!growth) return {FitnessCode::width, *asked.width_clearance, {}, {}, FitnessVerdict::unknown, no_width_limit};
  return checked(FitnessCode::width, *asked.width_clearance, *growth,
                 width_margin_at(Unwatched(), tyre, *stock, *asked.width_clearance),
                 tyre.notation() == TyreNotation::metric ? width_limit_source : tyre.source());
}
[[nodiscard]] constexpr FitnessCheck tread_check(const TyreAsked& asked, std::optional<Length> depth) noexcept {
  if (!depth) return {FitnessCode::tread, *asked.least_tread_depth, {}, {}, FitnessVerdict::unknown, asked.tread_rule};
  return checked(FitnessCode::tread, *asked.least_tread_depth, *depth,
                 tread_margin_at(Unwatched(), *depth, *asked.least_tread_depth, asked.tread_rule), asked.tread_rule);
}

/// What is out of range in what was asked, if anything is.
[[nodiscard]] inline std::optional<Error> outside(const TyreAsked& asked, std::optional<Length> tread_depth) {
  std::optional<Error> error;
  if (asked.axle_load) error = outside("axle_load", *asked.axle_load, 0.1_kg, 100000_kg);
  if (!error && asked.tyres_on_axle != 1 && asked.tyres_on_axle != 2 && asked.tyres_on_axle != 4)
    error = Error::range("tyres_on_axle", std::to_string(asked.tyres_on_axle), "1, 2 or 4");
  if (!error && asked.top_speed) error = outside("top_speed", *asked.top_speed, 0.1_kmh, 1000_kmh);
  if (!error && asked.radius_clearance) error = outside("radius_clearance", *asked.radius_clearance, Length(), 1.0_m);
  if (!error && asked.width_clearance) error = outside("width_clearance", *asked.width_clearance, Length(), 1.0_m);
  if (!error && asked.least_tread_depth)
    error = outside("least_tread_depth", *asked.least_tread_depth, Length(), 100.0_mm);
  if (!error && tread_depth) error = outside("tread_depth", *tread_depth, Length(), 100.0_mm);
  return error;
}

}  // namespace detail

/// Holds a tyre, with so much tread on it, against what a machine asks and, for room and ride height, against the stock
/// tyre as marked. What is asked for but cannot be told is `unknown`, never `enough`. Or a RangeError, where a number
/// lies outside its range.
[[nodiscard]] inline Result<TyreFitness> try_tyre_fitness(const TyreSize& tyre, const TyreAsked& asked,
                                                          const std::optional<TyreSize>& stock = {},
                                                          std::optional<Length> tread_depth = {}) {
  if (auto error = detail::outside(asked, tread_depth)) return *std::move(error);
  TyreFitness fitness;
  if (asked.axle_load) fitness.checks.push_back(detail::load_check(tyre, asked));
  if (asked.top_speed) fitness.checks.push_back(detail::speed_check(tyre, asked));
  if (asked.radius_clearance) fitness.checks.push_back(detail::radius_check(tyre, asked, stock));
  if (asked.width_clearance) fitness.checks.push_back(detail::width_check(tyre, asked, stock));
  if (asked.least_tread_depth) fitness.checks.push_back(detail::tread_check(asked, tread_depth));
  if (stock)
    fitness.ride_height_change = over_runs(two_tyre_corners(*stock, tyre), [&](const TwoTyreCorners& at) {
      return detail::ride_height_change_at(Unwatched(), *stock, tyre, at);
    });
  return fitness;
}
#if LAYSHAFT_EXCEPTIONS
/// @throws RangeError as `try_tyre_fitness` says.
[[nodiscard]] inline TyreFitness tyre_fitness(const TyreSize& tyre, const TyreAsked& asked,
                                              const std::optional<TyreSize>& stock = {},
                                              std::optional<Length> tread_depth = {}) {
  return try_tyre_fitness(tyre, asked, stock, tread_depth).value();
}
#endif

}  // namespace layshaft
