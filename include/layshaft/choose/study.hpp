// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/choose/goals.hpp>
#include <layshaft/choose/space.hpp>
#include <layshaft/choose/trade_off.hpp>
#include <layshaft/setup/appraisal.hpp>
#include <layshaft/setup/wear_change.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <iterator>  // size
#include <optional>
#include <span>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

/// @file
/// What is worked out to tell the measures of many set-ups: what depends on sprockets and chain alone once for all
/// tyres, what depends on the tyre alone once for all drives. Each number is that of an appraisal or a comparison.
namespace layshaft::detail {

/// The speeds at which the speedometer is held against the rule: those of UN R39 for machines faster than 100 km/h.
inline constexpr Speed speedometer_speeds[] = {40_kmh, 80_kmh, 120_kmh};

/// A reading of the edge itself, computed, is still on the edge.
inline constexpr double reading_rounding = 1e-12;
/// What the rule asks of the speedometer at one speed, in shares of that speed.
struct ReadingRule {
  Band<double> stock;  ///< what it shows with the stock parts
  double most;         ///< the most that is lawful; the least is 1
};
/// How far outside a reading lies, as a share of the true speed; 0 where it is lawful.
[[nodiscard]] constexpr double outside_rule(double share, const ReadingRule& rule) noexcept {
  const double by = std::max(1.0 - share, share - rule.most);
  return by > reading_rounding ? by : 0.0;
}

/// Bands of many, end by end.
struct BandColumns {
  std::vector<double> low, nominal, high;

  void push_back(const Band<double>& at) {
    low.push_back(at.low);
    nominal.push_back(at.nominal);
    high.push_back(at.high);
  }
};
struct BandBlock;

/// Up to all limits and all wishes.
using MeasuredList = FixedList<Measured, most_limits + most_wishes>;
/// What came of each; none where it cannot be told.
using MeasuredValues = std::array<std::optional<Band<double>>, MeasuredList::capacity>;

/// A rear tyre, and what depends on it alone.
struct StudyTyre {
  TyreOffer offer;
  bool changed;  ///< it is not the one on the machine now
  Band<Length> circumference;
  /// Stock and this one's circumference: as they likely are, where this one is least against the other, and where it is
  /// greatest. What follows from both goes with the one over the other, so that its ends lie there.
  std::array<std::pair<Length, Length>, 3> runs;
  std::vector<std::optional<Band<double>>> values;  ///< by place, of the measures of the tyre; none: empty
  bool ruled_out;                                   ///< by a limit of the tyre alone
};

/// Sprockets and a chain, and what depends on them alone.
struct StudyDrive {
  SprocketOffer front, rear;
  ChainOffer chain;
  ChainFit fit;
  Setup setup;  ///< with the tyre that is on the machine now
  bool front_changed, rear_changed, chain_changed;
  FixedList<double, most_gears> overall_ratios;
};

/// What decides the measures of both a drive and a tyre, on the tyre's side; low is where the number itself is least.
struct TyreFactors {
  Band<double> stock_over_tyre, tyre_over_stock, circumference;
  /// Turns a second at the speed that an engine speed is asked at.
  [[nodiscard]] Band<double> turning(Speed speed) const noexcept {
    const auto at = [&](double metres) { return (speed / Length::from_value(metres)).value(); };
    return {at(circumference.high), at(circumference.nominal), at(circumference.low)};
  }
};
/// The same on the drive's side.
struct DriveFactors {
  double change;                     ///< its final ratio over the stock one
  double diameters;                  ///< the stock rear sprocket's pitch diameter over its own
  std::optional<Band<double>> cost;  ///< of its new parts; none: a price is not known
  double parts_changed;
};

/// One question, prepared.
class Study {
 public:
  [[nodiscard]] static Result<Study> make(const Machine& machine, const Space& space, const Goals& goals) {
    if (auto error = outside(space)) return error->in("space");
    if (auto error = outside(goals, static_cast<int>(machine.gearbox().gears().size()))) return error->in("goals");
    const auto stock_chain = fit_chain_of(machine, machine.stock());
    if (!stock_chain) return stock_chain.error().in("stock set-up");
    Study study(machine, space, goals, stock_chain->links);
    if (auto error = study.cannot_tell()) return *std::move(error);
    study.prepare_tyres();
    return study;
  }

  /// Of set-ups that come one by one, from no space: what is asked of each, with what is on the machine now.
  [[nodiscard]] static Result<Study> make(const Machine& machine, std::span<const Measured> measured,
                                          const std::optional<Setup>& present = {}) {
    if (measured.size() > MeasuredList::capacity)
      return Error::range("number of measures", std::to_string(measured.size()),
                          "at most " + std::to_string(MeasuredList::capacity));
    for (const Measured& one : measured)
      if (auto error = outside(one, static_cast<int>(machine.gearbox().gears().size()))) return *std::move(error);
    const auto stock_chain = fit_chain_of(machine, machine.stock());
    if (!stock_chain) return stock_chain.error().in("stock set-up");
    Space none;
    none.present = present;
    Study study(machine, none, Goals(), stock_chain->links);
    for (const Measured& one : measured) study.place_made_for(one);
    if (auto error = study.cannot_tell()) return *std::move(error);
    return study;
  }

  [[nodiscard]] const Goals& goals() const noexcept { return goals_; }
  /// What the rider must be told of a set-up; felt changes are told against what is on the machine now.
  [[nodiscard]] Cautions cautions(const Setup& setup) const {
    const auto appraisal = appraise_against(machine_, present_, setup);
    return appraisal ? appraisal->cautions() : Cautions();
  }
  [[nodiscard]] const std::vector<StudyTyre>& tyres() const noexcept { return tyres_; }
  /// Of sprockets and chains; each has one drive or several, by its links.
  [[nodiscard]] std::size_t combinations() const noexcept {
    return space_.fronts.size() * space_.rears.size() * space_.chains.size();
  }
  [[nodiscard]] const MeasuredList& measured() const noexcept { return measured_; }
  /// Where among the measured a limit or a wish stands.
  [[nodiscard]] std::size_t place_of_limit(std::size_t limit) const noexcept { return limit_places_[limit]; }
  [[nodiscard]] std::size_t place_of_wish(std::size_t wish) const noexcept { return wish_places_[wish]; }

  /// Calls `visit(drive)` with each drive of a combination whose chain closes; the others are no set-ups.
  template <class Visit>
  void each_drive(std::size_t combination, const Visit& visit) const {
    const std::size_t chains = space_.chains.size(), rears = space_.rears.size();
    const ChainOffer& chain = space_.chains[combination % chains];
    const SprocketOffer& rear = space_.rears[combination / chains % rears];
    const SprocketOffer& front = space_.fronts[combination / chains / rears];
    const ChainLoop loop(chain.series.value_or(machine_.chain()), front.teeth, rear.teeth);
    const auto sold = [&](Links links) { return !chain.longest || links <= *chain.longest; };
    for (const Links links : space_.links) {
      if (!sold(links)) continue;
      const auto stand = try_fit_links(loop, links, machine_.adjuster());
      if (stand && stand->fits) visit(drive_of(front, rear, chain, *stand));
    }
    if (!space_.links.empty() || collides(loop, machine_.adjuster())) return;
    const auto shortest = shortest_behind(loop, machine_.adjuster());
    if (!shortest || !sold(*shortest)) return;
    const auto stand = layshaft::detail::fit(loop, *shortest, machine_.adjuster());
    if (stand && stand->fits) visit(drive_of(front, rear, chain, *stand));
  }

  /// A drive that comes alone, its links stated or the shortest that close, whether or not they fit the adjuster; or
  /// the error that an appraisal of it has.
  [[nodiscard]] Result<StudyDrive> drive(const SprocketOffer& front, const SprocketOffer& rear, const ChainOffer& chain,
                                         std::optional<Links> links) const;
  /// A tyre that comes alone, which has no error of its own.
  [[nodiscard]] StudyTyre tyre(const TyreOffer& offer) const;
  /// What decides the measures of a tyre on many drives.
  [[nodiscard]] static TyreFactors factors(const StudyTyre& tyre) noexcept;
  /// What decides those of a drive on many tyres.
  [[nodiscard]] DriveFactors factors(const StudyDrive& drive) const;
  /// The overall ratio that an engine speed is asked at: of its gear, or of the last.
  [[nodiscard]] double ratio_of(const Measured& measured, const StudyDrive& drive) const noexcept {
    const std::size_t gears = drive.overall_ratios.size();
    return drive.overall_ratios[static_cast<std::size_t>(measured.gear.value_or(static_cast<int>(gears))) - 1];
  }
  [[nodiscard]] const std::vector<ReadingRule>& reading_rules() const noexcept { return reading_rules_; }
  [[nodiscard]] SpeedometerSensor sensor() const noexcept { return machine_.speedometer().sensor(); }
  /// The engine's turns in a second at its lowest pull.
  [[nodiscard]] double lowest_turning() const noexcept { return (lowest_pull_ / turn).value(); }

  /// What a measure of the drive alone comes to.
  [[nodiscard]] std::optional<Band<double>> value(const Measured& measured, const StudyDrive& drive) const;
  /// What a measure of the tyre alone comes to.
  [[nodiscard]] std::optional<Band<double>> value(const Measured& measured, const StudyTyre& tyre) const;
  /// What a measure of both comes to.
  [[nodiscard]] std::optional<Band<double>> value(const Measured& measured, const StudyDrive& drive,
                                                  const StudyTyre& tyre) const;

  /// The measures of the drive on `n` tyres from the first on, many at once; false where that is not known how, and
  /// each is to be asked for alone. Defined in choose/study_block.hpp.
  [[nodiscard]] bool fill(const Measured& measured, const StudyDrive& drive, std::size_t first, std::size_t n,
                          BandBlock& out) const;

  /// How far a limit is overstepped, in the measure's SI units; none or nothing where it is kept.
  [[nodiscard]] double overstepped(const Limit& limit, const Band<double>& value) const noexcept {
    const double low = goals_.robust ? value.low : value.nominal, high = goals_.robust ? value.high : value.nominal;
    double by = 0.0;
    if (limit.least) by = std::max(by, limit.least->value - low);
    if (limit.most) by = std::max(by, high - limit.most->value);
    return by > tolerance(limit) ? by : 0.0;
  }
  /// Equal numbers that were computed in two ways are equal: a millionth of a millionth is no overstepping.
  [[nodiscard]] static double tolerance(const Limit& limit) noexcept {
    const double least = limit.least ? std::fabs(limit.least->value) : 0.0;
    const double most = limit.most ? std::fabs(limit.most->value) : 0.0;
    return 1e-12 * (1.0 + std::max(least, most));
  }
  /// How far a set-up is from a wish, at one end of its band.
  [[nodiscard]] static double loss(const Wish& wish, double value) noexcept {
    if (wish.want == Want::target) return std::fabs(value - wish.target->value);
    return wish.want == Want::less ? value : -value;
  }

  /// Why no chain closes over the first pair of all.
  [[nodiscard]] Error nothing_closes() const {
    const ChainOffer& chain = space_.chains.front();
    const std::string pair =
        std::to_string(space_.fronts.front().teeth.count()) + "/" + std::to_string(space_.rears.front().teeth.count());
    const ChainLoop loop(chain.series.value_or(machine_.chain()), space_.fronts.front().teeth,
                         space_.rears.front().teeth);
    std::string sentence = "no chain of the space closes over any of its pairs; over " + pair + ": ";
    const auto links = try_shortest_links(loop, machine_.adjuster());
    if (!links) return Error::value(sentence + links.error().what());
    return Error::value(sentence + std::to_string(links->count()) + " links would, which are not offered");
  }
  /// The drive of a combination with so many links.
  [[nodiscard]] std::optional<StudyDrive> drive(std::size_t combination, Links links) const {
    std::optional<StudyDrive> found;
    each_drive(combination, [&](const StudyDrive& drive) {
      if (drive.fit.links == links) found = drive;
    });
    return found;
  }
  /// The whole set-up.
  [[nodiscard]] Setup setup_of(const StudyDrive& drive, const StudyTyre& tyre) const {
    SetupParts parts = drive.setup.parts();
    put_on(parts, tyre.offer);
    return *Setup::make(parts);
  }

  /// What the drive's new parts cost.
  [[nodiscard]] std::optional<Band<double>> cost_of(const StudyDrive& drive) const noexcept {
    Band<double> sum = Band<double>::exactly(0.0);
    const auto add = [&](bool bought, const Offer& offer) {
      if (!bought) return true;
      if (!offer.price) return false;
      sum = plus(sum, plus(*offer.price, offer.labour));
      return true;
    };
    if (!add(drive.front_changed, drive.front.offer) || !add(drive.rear_changed, drive.rear.offer) ||
        !add(drive.chain_changed, drive.chain.offer))
      return std::nullopt;
    return sum;
  }
  [[nodiscard]] static constexpr Band<double> plus(const Band<double>& a, const Band<double>& b) noexcept {
    return {a.low + b.low, a.nominal + b.nominal, a.high + b.high};
  }
  /// What the tyre costs, where it is a new one.
  [[nodiscard]] static std::optional<Band<double>> cost_of(const StudyTyre& tyre) noexcept {
    if (!tyre.changed) return Band<double>::exactly(0.0);
    if (!tyre.offer.offer.price) return std::nullopt;
    return plus(*tyre.offer.offer.price, tyre.offer.offer.labour);
  }

 private:
  Study(const Machine& machine, const Space& space, const Goals& goals, Links stock_links)
      : machine_(machine),
        stock_(machine.stock()),
        present_(space.present.value_or(stock_)),
        space_(space),
        goals_(goals),
        stock_links_(stock_links) {
    fill_up();
    for (const Limit& limit : goals_.limits) limit_places_.push_back(place_made_for(limit.measured));
    for (const Wish& wish : goals_.wishes) wish_places_.push_back(place_made_for(wish.measured));
    const ChainSeries chain = stock_.chain().value_or(machine_.chain());
    stock_ratio_ = final_ratio(stock_.front(), stock_.rear());
    stock_rear_diameter_ = Sprocket(chain, stock_.rear()).pitch_diameter();
    lowest_pull_ = slowest_pull(machine_);
    const Rollout stock_wheel(stock_);
    for (const Corner size : corners)
      for (const Corner rolling : corners)
        stock_at_[static_cast<std::size_t>(size)][static_cast<std::size_t>(rolling)] = stock_wheel.at(size, rolling);
    if (const auto fitted = fit_chain_of(machine_, present_)) present_links_ = fitted->links;
    set_reading_rules();
  }

  /// Its place among the measured, or the next one.
  [[nodiscard]] std::size_t place_of(const Measured& measured) const noexcept {
    std::size_t place = 0;
    while (place < measured_.size() && !(measured_[place] == measured)) ++place;
    return place;
  }
  std::size_t place_made_for(Measured measured) {
    // A front tooth meets the chain as much oftener as thrust rises: for both the engine turns so much more.
    if (measured.what == Measure::front_contacts_change) measured.what = Measure::thrust_change;
    const std::size_t place = place_of(measured);
    if (place == measured_.size()) measured_.push_back(measured);
    return place;
  }
  /// What was left out is what is on the machine now; and the same lists in another order are the same question.
  void fill_up() {
    if (space_.tyres.empty()) space_.tyres.push_back({present_.tyre(), present_.circumference()});
    if (space_.chains.empty()) space_.chains.push_back({present_.chain(), present_.chain_made()});
    const auto by_sprocket = [](const SprocketOffer& a) {
      return std::tuple(a.teeth.count(), a.material ? static_cast<int>(*a.material) : -1, key(a.offer));
    };
    tidy(space_.fronts, by_sprocket);
    tidy(space_.rears, by_sprocket);
    tidy(space_.tyres, [](const TyreOffer& a) {
      const Band<Length> size = a.circumference.value_or(Band<Length>());
      return std::tuple(a.tyre ? a.tyre->designation() : std::string(), a.tyre ? static_cast<int>(a.tyre->use()) : 0,
                        size.low.value(), size.nominal.value(), size.high.value(), key(a.offer));
    });
    tidy(space_.chains, [](const ChainOffer& a) {
      return std::tuple(a.series ? std::string(a.series->name()) : std::string(), static_cast<int>(a.made.seal),
                        a.longest ? a.longest->count() : 0, a.made.tensile_strength.value_or(Force()).value(),
                        key(a.offer));
    });
    tidy(space_.links, [](Links links) { return links.count(); });
  }
  [[nodiscard]] static std::tuple<double, double, double, double> key(const Offer& offer) {
    const Band<double> price = offer.price.value_or(Band<double>::exactly(-1.0));
    return {price.low, price.nominal, price.high, offer.labour.nominal};
  }
  /// Sorts by a key, of which each is made once, and leaves equals out.
  template <class Item, class Key>
  static void tidy(std::vector<Item>& list, Key key) {
    std::vector<std::pair<decltype(key(list.front())), std::size_t>> order;
    order.reserve(list.size());
    for (std::size_t i = 0; i < list.size(); ++i) order.emplace_back(key(list[i]), i);
    std::sort(order.begin(), order.end());
    std::vector<Item> sorted;
    sorted.reserve(list.size());
    for (const auto& [of, place] : order)
      if (sorted.empty() || !(sorted.back() == list[place])) sorted.push_back(list[place]);
    list = std::move(sorted);
  }

  /// What a measure needs and the machine, or the shop, does not state.
  [[nodiscard]] std::optional<Error> cannot_tell() const;
  void prepare_tyres();
  [[nodiscard]] bool any_of(MeasuredOn on) const noexcept;
  [[nodiscard]] StudyTyre tyre_with(const TyreOffer& offer, bool any_of_tyre) const;
  void set_reading_rules();
  void fill_columns();
  static void put_on(SetupParts& parts, const TyreOffer& offer) {
    parts.tyre = offer.tyre;
    parts.circumference = offer.circumference;
    parts.tread_worn = Length();  // what is worn off shows in a measured circumference
    parts.tread.reset();
  }
  [[nodiscard]] StudyDrive drive_of(const SprocketOffer& front, const SprocketOffer& rear, const ChainOffer& chain,
                                    const ChainFit& fit) const;
  [[nodiscard]] ComparedSetups compared(const StudyDrive& drive) const {
    return {stock_, drive.setup, machine_.chain(), machine_.speedometer().sensor(), stock_links_, drive.fit.links};
  }
  [[nodiscard]] Length rear_diameter(const StudyDrive& drive) const noexcept {
    return Sprocket(drive.chain.series.value_or(machine_.chain()), drive.rear.teeth).pitch_diameter();
  }
  /// A change that goes with ratio and circumference, over what the two wheels do not share.
  template <class Formula>
  [[nodiscard]] Band<double> over_gearing(const StudyDrive& drive, const StudyTyre& tyre) const {
    const double ratio = final_ratio(drive.front.teeth, drive.rear.teeth);
    return over_runs(tyre.runs, [&](const auto& at) { return Formula::of(stock_ratio_, at.first, ratio, at.second); });
  }
  [[nodiscard]] Band<double> indicated_ratio_of(const StudyDrive& drive, const StudyTyre& tyre) const {
    if (sensor() == SpeedometerSensor::front_wheel) return layshaft::indicated_ratio(sensor(), stock_, drive.setup);
    if (sensor() == SpeedometerSensor::rear_wheel)
      return over_runs(tyre.runs, [](const auto& at) { return wheel_indicated_ratio(at.first, at.second); });
    return over_gearing<formula::turns_ratio>(drive, tyre);
  }
  [[nodiscard]] Band<double> speedometer_beyond_rule(const StudyDrive& drive, const StudyTyre& tyre) const;
  [[nodiscard]] std::optional<Band<double>> on_road(const Measured& measured, const StudyDrive& drive,
                                                    const StudyTyre& tyre) const;

  Machine machine_;
  Setup stock_, present_;
  Space space_;
  Goals goals_;
  MeasuredList measured_;
  std::vector<std::size_t> limit_places_, wish_places_;
  std::vector<StudyTyre> tyres_;
  Links stock_links_;
  std::optional<Links> present_links_;  // none: its chain does not fit
  double stock_ratio_ = 0.0;
  Length stock_rear_diameter_{};
  AngularSpeed lowest_pull_{};
  std::array<std::array<Length, std::size(corners)>, std::size(corners)> stock_at_;  // by size, then rolling factor
  std::vector<ReadingRule> reading_rules_;
  // Of the tyres in their order: what goes into the measures of many at once. Low is where the number itself is least.
  BandColumns stock_over_tyre_, tyre_over_stock_, circumference_;
  std::vector<BandColumns> turning_;  // by place: turns a second at the speed that an engine speed is asked at
};

}  // namespace layshaft::detail
