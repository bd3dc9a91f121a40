// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/band.hpp>
#include <layshaft/core/checks.hpp>
#include <layshaft/core/result.hpp>
#include <layshaft/gearing/gearbox.hpp>
#include <layshaft/road/ride_log.hpp>
#include <layshaft/road/ride_use.hpp>

#include <algorithm>  // sort, lower_bound, min_element
#include <array>
#include <cmath>  // exp, floor, log, sqrt
#include <cstddef>
#include <iterator>  // ssize
#include <optional>
#include <string>
#include <utility>
#include <vector>

/// @file
/// What a recorded ride tells of the machine: its gears, and how far its speedometer and its odometer are out. Opt-in
/// with the log.
///
/// Speeds by satellite are noisy from sample to sample and true on the mean. So nothing is told from a single stretch:
/// of many, the median counts, which a few wild ones do not move; low and high are the quartiles, between which half of
/// the stretches lie. They tell how much a single stretch strays, and not how sure the median is, which of n stretches
/// that stray by chance alone is some sqrt(n) times better.
namespace layshaft {

/// A gear, as a log tells it.
struct LogGear {
  /// How often the engine turns while the machine goes a metre: the overall ratio over the circumference. The median
  /// and the quartiles of the gear's stretches.
  Band<double> engine_turns_per_metre;
  double time_share;  ///< of the time that was ridden faster than 8 km/h; the rest went into shifts and on the clutch
  int stretches;      ///< of the log that are this gear's

  /// The overall ratio, with a wheel of this circumference, 1 mm to 100 m; or a RangeError.
  [[nodiscard]] Result<Band<double>> try_overall_ratio(Length circumference) const {
    if (auto error = detail::outside("circumference", circumference, 1.0_mm, 100.0_m)) return *std::move(error);
    const double metres = circumference.value();
    return Band<double>{engine_turns_per_metre.low * metres, engine_turns_per_metre.nominal * metres,
                        engine_turns_per_metre.high * metres};
  }
#if LAYSHAFT_EXCEPTIONS
  /// @throws RangeError as `try_overall_ratio` says.
  [[nodiscard]] Band<double> overall_ratio(Length circumference) const {
    return try_overall_ratio(circumference).value();
  }
#endif
  friend bool operator==(const LogGear&, const LogGear&) = default;
};

/// A machine, as a log tells it.
struct LogMachine {
  std::vector<LogGear> gears;  ///< from first, which turns the engine most, up; only those that were ridden in

  friend bool operator==(const LogMachine&, const LogMachine&) = default;
};

/// How far instruments are out, as a log tells it.
struct InstrumentError {
  /// What the speedometer shows over the true speed, less one: 0.04 for 4 % fast, as a Speedometer takes it. The median
  /// and the quartiles of all stretches faster than 20 km/h; none where it was not recorded or fewer than 10 are.
  std::optional<Band<double>> speedometer;
  /// What the odometer counts over the true distance, less one; none where it was not recorded or less than 1 km was
  /// ridden. It counts in steps: a step of 0.1 km in 20 km is 0.5 %.
  std::optional<double> odometer;

  friend bool operator==(const InstrumentError&, const InstrumentError&) = default;
};

namespace detail {

/// The place in sorted values that so large a part of them lies below, between two of them in proportion.
template <class Iterator>
[[nodiscard]] double quantile(Iterator begin, Iterator end, double part) {
  const double place = part * static_cast<double>(end - begin - 1);
  const auto whole = static_cast<std::ptrdiff_t>(place);
  const double low = *(begin + whole);
  if (whole + 1 >= end - begin) return low;
  return low + (place - static_cast<double>(whole)) * (*(begin + whole + 1) - low);
}
/// The median, between the quartiles, of sorted values.
template <class Iterator>
[[nodiscard]] Band<double> quartiles(Iterator begin, Iterator end) {
  return {quantile(begin, end, 0.25), quantile(begin, end, 0.5), quantile(begin, end, 0.75)};
}

/// Tells gears from the logarithms of engine turns a metre, in which the same step is as wide in every gear: counted in
/// classes and smoothed; the places that clearly more stretches have than those between them; then, around each, the
/// median of the stretches that lie as near as chance would have them.
class GearClusters {
 public:
  static constexpr double least = -5.0, width = 0.004;  // of classes, from exp(-5) turns a metre up
  static constexpr int classes = 3500;                  // up to exp(9)
  static constexpr double closest = 0.05;               // two gears: 5 %
  static constexpr double widest = 0.08;                // from quartile to quartile; what is wider is a slipping clutch

  /// Stretches' logarithms, sorted.
  explicit GearClusters(const std::vector<double>& sorted)
      : all_(sorted), fewest_(std::max<std::ptrdiff_t>(20, std::ssize(sorted) / 200)) {}

  /// Where the gears' stretches begin and end in the sorted list, from the least turns a metre up.
  [[nodiscard]] std::vector<std::pair<std::size_t, std::size_t>> find() {
    smooth();
    find_peaks();
    join_peaks();
    std::vector<std::pair<std::size_t, std::size_t>> found;
    for (std::size_t peak = 0; peak < peaks_.size(); ++peak) {
      const double from = peak == 0 ? least : place(valleys_[peak - 1]);
      const double to = peak + 1 == peaks_.size() ? place(classes) : place(valleys_[peak]);
      const auto [begin, end] = gather(place(peaks_[peak]), from, to);
      if (end - begin >= fewest_ && log_spread(begin, end) <= widest)
        found.emplace_back(begin - all_.begin(), end - all_.begin());
    }
    return found;
  }

 private:
  using Iterator = std::vector<double>::const_iterator;

  [[nodiscard]] static constexpr double place(int number) noexcept { return least + (number + 0.5) * width; }
  [[nodiscard]] double height(int number) const { return smooth_[static_cast<std::size_t>(number)]; }

  /// How many stretches each class has near it, those further off counting less: normal, by three classes.
  void smooth() {
    constexpr int reach = 10;
    std::array<double, reach + 1> weight{};
    for (int i = 0; i <= reach; ++i) weight[static_cast<std::size_t>(i)] = std::exp(-0.5 * i * i / 9.0);
    std::vector<double> count(classes);
    for (const double one : all_) {
      const double number = std::floor((one - least) / width);
      if (number >= 0.0 && number < classes) count[static_cast<std::size_t>(number)] += 1.0;
    }
    smooth_.assign(classes, 0.0);
    for (int i = 0; i < classes; ++i)
      if (const double here = count[static_cast<std::size_t>(i)]; here > 0.0)
        for (int j = std::max(0, i - reach); j <= std::min(classes - 1, i + reach); ++j)
          smooth_[static_cast<std::size_t>(j)] += here * weight[static_cast<std::size_t>(j < i ? i - j : j - i)];
  }
  /// Every place that is higher than those beside it, and the lowest between each two.
  void find_peaks() {
    int lowest = 0;
    for (int i = 1; i + 1 < classes; ++i) {
      if (height(i) < height(lowest)) lowest = i;
      if (!(height(i) > height(i - 1) && height(i) >= height(i + 1))) continue;
      if (!peaks_.empty()) valleys_.push_back(lowest);
      peaks_.push_back(i);
      lowest = i;
    }
  }
  /// Takes two neighbours for one, the flattest valley first, until each valley is one and not chance: that a count
  /// strays by its root is the rule of rare events, and four times that is no chance.
  void join_peaks() {
    while (!valleys_.empty()) {
      std::size_t flattest = 0;
      double most = -1.0;
      for (std::size_t i = 0; i < valleys_.size(); ++i) {
        const double lower = std::min(height(peaks_[i]), height(peaks_[i + 1])), floor = height(valleys_[i]);
        const bool close = (peaks_[i + 1] - peaks_[i]) * width < closest;
        const bool chance = floor > 0.7 * lower || lower - floor < 4.0 * std::sqrt(lower);
        const double flat = close ? 2.0 + floor : chance ? 1.0 + floor / lower : 0.0;
        if (flat > most) most = flat, flattest = i;
      }
      if (most <= 0.0) return;
      const std::size_t lower = height(peaks_[flattest]) < height(peaks_[flattest + 1]) ? flattest : flattest + 1;
      peaks_.erase(peaks_.begin() + static_cast<std::ptrdiff_t>(lower));
      valleys_.erase(valleys_.begin() + static_cast<std::ptrdiff_t>(flattest));
    }
  }
  [[nodiscard]] static double log_spread(Iterator begin, Iterator end) {
    const Band<double> middle = quartiles(begin, end);
    return middle.width();
  }
  /// The stretches between two valleys that lie within some three deviations of their median, which is 2.2 times what
  /// lies between the quartiles: shifts and clutches have left theirs further out.
  [[nodiscard]] std::pair<Iterator, Iterator> gather(double centre, double from, double to) const {
    double reach = 0.06;
    std::pair<Iterator, Iterator> members;
    for (int round = 0; round < 8; ++round) {
      members = {std::lower_bound(all_.begin(), all_.end(), std::max(from, centre - reach)),
                 std::upper_bound(all_.begin(), all_.end(), std::min(to, centre + reach))};
      if (members.second - members.first < fewest_) break;
      const Band<double> middle = quartiles(members.first, members.second);
      centre = middle.nominal;
      reach = std::clamp(2.2 * middle.width(), 0.008, 0.15);
    }
    return members;
  }

  const std::vector<double>& all_;
  std::ptrdiff_t fewest_;  // stretches that make a gear
  std::vector<double> smooth_;
  std::vector<int> peaks_, valleys_;
};

}  // namespace detail

/// The gears of the machine that a log was recorded on: its engine speed over its road speed, of the stretches faster
/// than 8 km/h over which that ratio changes by no more than 3 %, nor within a second (others belong to shifts and the
/// clutch), gathered where most of them are. Two gears closer than 5 % are not told apart, and fewer than 20 such
/// stretches, or than one in 200, are no gear. A long even coast with the clutch pulled looks like one: then say how
/// many there are.
///
/// @param log the recorded ride
/// @param gears how many are expected, 1 to 16: of more, those with the most stretches are taken; none: as many as
/// there are, 16 at most.
///
/// Or a RangeError, where fewer are told apart than expected; or an Error, where the log has no engine speeds, or tells
/// of no gear at all.
[[nodiscard]] inline Result<LogMachine> try_machine_of_log(const RideLog& log, std::optional<int> gears = {}) {
  constexpr double slowest = (8.0_kmh).value(), steady = 0.03, second = 1.0 - 1e-6;  // however times are rounded
  if (gears && (*gears < 1 || *gears > static_cast<int>(most_gears)))
    return Error::range("gears", std::to_string(*gears), "1 to " + std::to_string(most_gears));
  if (!log.has_engine_speeds())
    return Error::value("the ride log has no engine speeds, of which gears could be told; expected a column of them");
  const double* const times = log.columns().times.data();
  const double* const speeds = log.columns().speeds.data();
  const double* const engine = log.columns().engine_speeds.data();
  const double gap = log.gap().value();
  // The ratios of two samples, each times both speeds, differ by little.
  const auto alike = [&](std::size_t a, std::size_t b) {
    const double first = engine[a] * speeds[b], last = engine[b] * speeds[a];
    return first > 0.0 && std::fabs(last - first) <= steady * first;  // so that the last is above 0 as well
  };
  struct Stretch {
    double turns, seconds;  // the logarithm of engine turns a metre
  };
  std::vector<Stretch> stretches;
  stretches.reserve(log.samples());
  double ridden = 0.0;
  std::size_t later = 0;
  log.for_each_stretch([&](std::size_t i, double seconds) {
    const double before = speeds[i], after = speeds[i + 1];
    if (before + after < 2.0 * slowest) return;
    ridden += seconds;
    later = std::max(later, i + 1);
    while (times[later] - times[i] < second && later + 1 < log.samples() && times[later + 1] - times[later] <= gap)
      ++later;
    if (!alike(i, i + 1) || !alike(i, later)) return;
    stretches.push_back({std::log((engine[i] + engine[i + 1]) / ((before + after) * turn.value())), seconds});
  });
  std::sort(stretches.begin(), stretches.end(), [](const Stretch& a, const Stretch& b) { return a.turns < b.turns; });
  std::vector<double> turns(stretches.size());
  std::transform(stretches.begin(), stretches.end(), turns.begin(), [](const Stretch& one) { return one.turns; });

  auto found = detail::GearClusters(turns).find();
  if (found.empty())
    return Error::value(
        "the ride log tells no gear: none has 20 stretches, faster than 8 km/h, over which the engine "
        "turns evenly with the wheel; expected a longer log, or one with more samples a second");
  const std::size_t wanted = gears ? static_cast<std::size_t>(*gears) : most_gears;
  if (gears && found.size() < wanted)
    return Error::range("number of gears that the log tells apart", std::to_string(found.size()),
                        "the " + std::to_string(wanted) + " that were asked for");
  while (found.size() > wanted)
    found.erase(std::min_element(found.begin(), found.end(),
                                 [](const auto& a, const auto& b) { return a.second - a.first < b.second - b.first; }));
  LogMachine machine;
  for (auto one = found.rbegin(); one != found.rend(); ++one) {
    const auto begin = static_cast<std::ptrdiff_t>(one->first), end = static_cast<std::ptrdiff_t>(one->second);
    const Band<double> middle = detail::quartiles(turns.begin() + begin, turns.begin() + end);
    double time = 0.0;
    for (auto i = one->first; i < one->second; ++i) time += stretches[i].seconds;
    machine.gears.push_back({{std::exp(middle.low), std::exp(middle.nominal), std::exp(middle.high)},
                             time / ridden,
                             static_cast<int>(end - begin)});
  }
  return machine;
}

/// How far speedometer and odometer are out against the speed over ground: the speedometer on every stretch faster than
/// 20 km/h; the odometer over all that the recorder saw, with a machine that stands going nowhere.
///
/// Or an Error, where neither was recorded, or too little was ridden to tell of either.
[[nodiscard]] inline Result<InstrumentError> try_instrument_error(const RideLog& log) {
  constexpr double slowest = (20.0_kmh).value(), shortest = (1.0_km).value();
  constexpr std::size_t fewest = 10;
  if (!log.has_indicated_speeds() && !log.has_odometers())
    return Error::value(
        "the ride log tells nothing of instruments; expected a column of indicated speeds, of odometer "
        "readings, or both");
  const RideColumns& columns = log.columns();
  const double* const speeds = columns.speeds.data();
  const double* const shown = log.has_indicated_speeds() ? columns.indicated_speeds.data() : nullptr;
  const double* const counted = log.has_odometers() ? columns.odometers.data() : nullptr;
  std::vector<double> errors;
  if (shown) errors.reserve(log.samples());
  double distance = 0.0, count = 0.0;
  log.for_each_stretch([&](std::size_t i, double seconds) {
    const double speed = 0.5 * (speeds[i] + speeds[i + 1]);
    if (speed >= RideUse::standing.value()) distance += speed * seconds;
    if (counted) count += counted[i + 1] - counted[i];
    if (shown && speed >= slowest) errors.push_back(0.5 * (shown[i] + shown[i + 1]) / speed - 1.0);
  });
  InstrumentError found;
  if (errors.size() >= fewest) {
    std::sort(errors.begin(), errors.end());
    found.speedometer = detail::quartiles(errors.begin(), errors.end());
  }
  if (counted && distance >= shortest) found.odometer = count / distance - 1.0;
  if (!found.speedometer && !found.odometer)
    return Error::value(shown
                            ? "too little was ridden to tell of the instruments; expected 10 stretches faster than 20 "
                              "km/h for the speedometer, 1 km for the odometer"
                            : "too little was ridden to tell of the odometer; expected 1 km");
  return found;
}

#if LAYSHAFT_EXCEPTIONS
/// @throws RangeError or Error as `try_machine_of_log` says.
[[nodiscard]] inline LogMachine machine_of_log(const RideLog& log, std::optional<int> gears = {}) {
  return try_machine_of_log(log, gears).value();
}
/// @throws Error as `try_instrument_error` says.
[[nodiscard]] inline InstrumentError instrument_error(const RideLog& log) { return try_instrument_error(log).value(); }
#endif

}  // namespace layshaft
