// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/choose/choice.hpp>
#include <layshaft/choose/study.hpp>
#include <layshaft/choose/study_values.hpp>
#include <layshaft/choose/trade_off.hpp>

#include <algorithm>
#include <atomic>
#include <compare>
#include <cstddef>
#include <cstdint>
#include <mutex>
#include <optional>
#include <thread>
#include <vector>

/// @file
/// Goes through a study: every set-up is looked at, or ruled out with all that share the parts which break a limit.
namespace layshaft::detail {

/// A set-up of a study by its places in the lists.
struct Place {
  std::size_t combination;
  Links links;
  std::size_t tyre;

  friend constexpr auto operator<=>(const Place&, const Place&) = default;
};

/// What one thread finds.
struct Found {
  std::uint64_t examined = 0, kept = 0, untold = 0;
  std::vector<std::uint64_t> ruled_out;
  TradeOff<Place> as_judged, at_low, at_high;
};

/// The losses of values at one end, or as judged.
template <class Loss>
[[nodiscard]] Losses losses_of(const Study& study, const MeasuredValues& values, const Loss& loss) {
  Losses losses;
  const auto& wishes = study.goals().wishes;
  for (std::size_t i = 0; i < wishes.size(); ++i) losses.push_back(loss(wishes[i], *values[study.place_of_wish(i)]));
  return losses;
}

/// Looks at every set-up of a combination.
class Scan {
 public:
  explicit Scan(const Study& study) : study_(study) {
    found_.ruled_out.assign(study.goals().limits.size(), 0);
    const auto& limits = study.goals().limits;
    // What costs nothing is asked first, so that a limit of the drive spares all its tyres.
    for (const MeasuredOn on : {MeasuredOn::drive, MeasuredOn::tyre, MeasuredOn::both})
      for (std::size_t i = 0; i < limits.size(); ++i)
        if (measure_row(limits[i].measured.what).on == on) order_.push_back(i);
    for (std::size_t i = 0; i < study.measured().size(); ++i)
      if (measure_row(study.measured()[i].what).on != MeasuredOn::drive) of_tyre_.push_back(i);
  }

  void look_at(std::size_t combination) {
    study_.each_drive(combination, [&](const StudyDrive& drive) { look_at(combination, drive); });
  }
  [[nodiscard]] const Found& found() const noexcept { return found_; }

 private:
  void look_at(std::size_t combination, const StudyDrive& drive) {
    const auto& tyres = study_.tyres();
    found_.examined += tyres.size();
    tell(values_, drive);
    if (const auto broken = first_broken(values_, MeasuredOn::drive)) {
      found_.ruled_out[*broken] += tyres.size();
      return;
    }
    for (std::size_t t = 0; t < tyres.size(); ++t) {
      const StudyTyre& tyre = tyres[t];
      if (tyre.ruled_out) {
        ++found_.ruled_out[*first_broken(tyre.values, MeasuredOn::tyre)];
        continue;
      }
      for (const std::size_t place : of_tyre_) values_[place].reset();
      if (const auto broken = first_broken_of_both(values_, drive, tyre)) {
        ++found_.ruled_out[*broken];
      } else if (!wishes_told(values_, drive, tyre)) {
        ++found_.untold;
      } else {
        ++found_.kept;
        add(values_, {combination, drive.fit.links, t});
      }
    }
  }
  void tell(MeasuredValues& values, const StudyDrive& drive) const {
    const MeasuredList& measured = study_.measured();
    for (std::size_t i = 0; i < measured.size(); ++i)
      if (measure_row(measured[i].what).on == MeasuredOn::drive) values[i] = study_.value(measured[i], drive);
  }
  [[nodiscard]] bool broken(std::size_t limit, const MeasuredValues& values) const {
    const auto& value = values[study_.place_of_limit(limit)];
    return !value || study_.overstepped(study_.goals().limits[limit], *value) > 0.0;
  }
  [[nodiscard]] std::optional<std::size_t> first_broken(const MeasuredValues& values, MeasuredOn on) const {
    for (const std::size_t limit : order_)
      if (measure_row(study_.goals().limits[limit].measured.what).on == on && broken(limit, values)) return limit;
    return std::nullopt;
  }
  /// Works out what depends on both only as far as the limits are kept.
  [[nodiscard]] std::optional<std::size_t> first_broken_of_both(MeasuredValues& values, const StudyDrive& drive,
                                                                const StudyTyre& tyre) const {
    for (const std::size_t limit : order_) {
      const Measured& measured = study_.goals().limits[limit].measured;
      if (measure_row(measured.what).on != MeasuredOn::both) continue;
      auto& value = values[study_.place_of_limit(limit)];
      if (!value) value = study_.value(measured, drive, tyre);
      if (broken(limit, values)) return limit;
    }
    return std::nullopt;
  }
  [[nodiscard]] bool wishes_told(MeasuredValues& values, const StudyDrive& drive, const StudyTyre& tyre) const {
    const auto& wishes = study_.goals().wishes;
    for (std::size_t i = 0; i < wishes.size(); ++i) {
      const std::size_t place = study_.place_of_wish(i);
      if (values[place]) continue;
      const Measured& measured = wishes[i].measured;
      values[place] =
          measure_row(measured.what).on == MeasuredOn::tyre ? tyre.values[place] : study_.value(measured, drive, tyre);
      if (!values[place]) return false;
    }
    return true;
  }
  void add(const MeasuredValues& values, const Place& place) {
    const auto at = [&](Corner corner) {
      return losses_of(study_, values, [&](const Wish& wish, const Band<double>& value) {
        return Study::loss(wish, value.at(corner));
      });
    };
    found_.as_judged.add(
        losses_of(study_, values,
                  [&](const Wish& wish, const Band<double>& value) { return study_.loss(wish, value); }),
        place);
    found_.at_low.add(at(Corner::low), place);
    found_.at_high.add(at(Corner::high), place);
  }

  const Study& study_;
  std::vector<std::size_t> order_;    // of the limits
  std::vector<std::size_t> of_tyre_;  // places of what another tyre changes
  MeasuredValues values_{};           // of the set-up that is looked at
  Found found_;
};

/// Everything a study asks of one set-up, whatever limits it breaks.
[[nodiscard]] inline MeasuredValues all_values(const Study& study, const StudyDrive& drive, const StudyTyre& tyre) {
  MeasuredValues values{};
  const MeasuredList& measured = study.measured();
  for (std::size_t i = 0; i < measured.size(); ++i) switch (measure_row(measured[i].what).on) {
      case MeasuredOn::drive: values[i] = study.value(measured[i], drive); break;
      case MeasuredOn::tyre: values[i] = tyre.values[i]; break;
      case MeasuredOn::both: values[i] = study.value(measured[i], drive, tyre); break;
    }
  return values;
}

/// Runs the scans of a study in threads, and lets `merge` have what each found.
template <class Merge>
[[nodiscard]] inline bool scan_all(const Study& study, const ChooseOptions& options, const Merge& merge) {
  const std::size_t all = study.combinations();
  const std::size_t asked = options.threads > 0 ? static_cast<std::size_t>(options.threads)
                                                : std::max(1u, std::thread::hardware_concurrency());
  std::atomic<std::size_t> next{0};
  std::atomic<bool> going_on{true};
  std::mutex one_at_a_time;
  std::uint64_t done = 0;
  const auto work = [&] {
    Scan scan(study);
    for (std::size_t i = next++; i < all && going_on; i = next++) {
      scan.look_at(i);
      if (!options.progress) continue;
      const std::lock_guard lock(one_at_a_time);
      ++done;
      const auto tyres = static_cast<std::uint64_t>(study.tyres().size());
      if (going_on && !options.progress(done * tyres, all * tyres)) going_on = false;
    }
    const std::lock_guard lock(one_at_a_time);
    merge(scan.found());
  };
  std::vector<std::jthread> others;
  for (std::size_t i = 1; i < std::min(asked, all); ++i) others.emplace_back(work);
  work();
  others.clear();  // waits for them
  return going_on;
}

}  // namespace layshaft::detail
