// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/choose/choice.hpp>
#include <layshaft/choose/study.hpp>
#include <layshaft/choose/study_block.hpp>
#include <layshaft/choose/threads.hpp>
#include <layshaft/choose/trade_off.hpp>

#include <algorithm>
#include <array>
#include <atomic>
#include <cmath>
#include <compare>
#include <cstddef>
#include <cstdint>
#include <limits>
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

/// Looks at every set-up of a combination, many tyres at once.
class Scan {
 public:
  explicit Scan(const Study& study) : study_(study) {
    const auto& limits = study.goals().limits;
    found_.ruled_out.assign(limits.size(), 0);
    // What costs nothing is asked first, so that a limit of the drive spares all its tyres.
    for (const MeasuredOn on : {MeasuredOn::drive, MeasuredOn::tyre, MeasuredOn::both})
      for (std::size_t i = 0; i < limits.size(); ++i)
        if (measure_row(limits[i].measured.what).on == on) order_.push_back(i);
    for (const Measured& measured : study.measured()) on_.push_back(measure_row(measured.what).on);
    // What only limits ask for is held against them at once: all that may share one place in memory.
    slots_.assign(study.measured().size(), 0);
    std::size_t slots = 1;
    for (std::size_t i = 0; i < on_.size(); ++i)
      if (on_[i] == MeasuredOn::drive || wished(i)) slots_[i] = slots++;
    values_.resize(slots);
    filled_.resize(study.measured().size());
    gaps_.resize(study.measured().size());
    losses_.resize(study.goals().wishes.size());
    for (std::size_t first = 0; first < study.tyres().size(); first += block_size) blocks_.push_back(begin(first));
  }

  void look_at(std::size_t combination) {
    study_.each_drive(combination, [&](const StudyDrive& drive) { look_at(combination, drive); });
  }
  [[nodiscard]] const Found& found() const noexcept { return found_; }

 private:
  static constexpr Band<double> untold = Band<double>::exactly(std::numeric_limits<double>::quiet_NaN());

  /// How far from a wish the tyres of a block are: as the goals judge, and at either end.
  struct LossBlock {
    alignas(64) BlockRow as_judged, at_low, at_high;
  };
  /// The tyres of a block that are still in question; `left` of them.
  struct Block {
    std::size_t first, size, left;
    std::array<bool, block_size> out;
  };
  /// The same before any drive, and what the limits of the tyre alone rule out.
  struct Beginning {
    Block block;
    std::vector<std::uint64_t> ruled_out;
  };

  [[nodiscard]] bool wished(std::size_t place) const noexcept {
    for (std::size_t w = 0; w < study_.goals().wishes.size(); ++w)
      if (study_.place_of_wish(w) == place) return true;
    return false;
  }
  [[nodiscard]] Beginning begin(std::size_t first) const {
    const std::size_t size = std::min(block_size, study_.tyres().size() - first);
    Beginning begun{{first, size, size, {}}, std::vector<std::uint64_t>(found_.ruled_out.size(), 0)};
    for (std::size_t i = 0; i < size; ++i) {
      const StudyTyre& tyre = study_.tyres()[first + i];
      if (!tyre.ruled_out) continue;
      take_out(begun.block, i);
      const auto breaks = [&](std::size_t limit) {
        const std::size_t place = study_.place_of_limit(limit);
        if (on_[place] != MeasuredOn::tyre) return false;
        const auto& value = tyre.values[place];
        return !value || study_.overstepped(study_.goals().limits[limit], *value) > 0.0;
      };
      ++begun.ruled_out[*std::find_if(order_.begin(), order_.end(), breaks)];
    }
    return begun;
  }
  void look_at(std::size_t combination, const StudyDrive& drive) {
    const std::size_t tyres = study_.tyres().size();
    found_.examined += tyres;
    if (const auto broken = fill(drive)) {
      found_.ruled_out[*broken] += tyres;
      return;
    }
    for (const Beginning& beginning : blocks_) {
      Block block = beginning.block;
      if (block.left < block.size)
        for (std::size_t i = 0; i < found_.ruled_out.size(); ++i) found_.ruled_out[i] += beginning.ruled_out[i];
      for (std::size_t i = 0; i < on_.size(); ++i)
        if (on_[i] != MeasuredOn::drive) filled_[i] = false;
      for (const std::size_t limit : order_) {
        if (block.left == 0) break;
        if (on_[study_.place_of_limit(limit)] == MeasuredOn::both) hold_against(limit, drive, block);
      }
      if (block.left > 0) judge(drive, block);
      if (block.left > 0) add(combination, drive, block);
    }
  }
  /// Works out what depends on the drive alone; the first limit that it breaks.
  [[nodiscard]] std::optional<std::size_t> fill(const StudyDrive& drive) {
    for (std::size_t i = 0; i < on_.size(); ++i) {
      if (on_[i] != MeasuredOn::drive) continue;
      const auto value = study_.value(study_.measured()[i], drive);
      fill(values_[slots_[i]], value, wished(i) ? std::min(study_.tyres().size(), block_size) : 1);
      filled_[i] = true;
      gaps_[i] = !value;
    }
    for (const std::size_t limit : order_) {
      const std::size_t place = study_.place_of_limit(limit);
      if (on_[place] == MeasuredOn::drive && !kept(limit, lowest(limit)[0], highest(limit)[0])) return limit;
    }
    const auto& wishes = study_.goals().wishes;
    for (std::size_t w = 0; w < wishes.size(); ++w)
      if (on_[study_.place_of_wish(w)] == MeasuredOn::drive) lose(w, std::min(study_.tyres().size(), block_size));
    return std::nullopt;
  }
  static void fill(BandBlock& block, const std::optional<Band<double>>& value, std::size_t n) noexcept {
    const Band<double> told = value.value_or(untold);
    std::fill_n(block.low.begin(), n, told.low);
    std::fill_n(block.nominal.begin(), n, told.nominal);
    std::fill_n(block.high.begin(), n, told.high);
  }
  static void take_out(Block& block, std::size_t i) noexcept {
    block.out[i] = true;
    --block.left;
  }
  /// Works out a measure of the tyres that are still in question.
  void work_out(std::size_t place, const StudyDrive& drive, const Block& block) {
    if (filled_[place]) return;
    filled_[place] = slots_[place] != 0;
    const Measured& measured = study_.measured()[place];
    BandBlock& values = values_[slots_[place]];
    gaps_[place] = false;
    if (on_[place] == MeasuredOn::both && study_.fill(measured, drive, block.first, block.size, values)) return;
    for (std::size_t i = 0; i < block.size; ++i) {
      const StudyTyre& tyre = study_.tyres()[block.first + i];
      std::optional<Band<double>> told;
      if (!block.out[i])
        told = on_[place] == MeasuredOn::tyre ? tyre.values[place] : study_.value(measured, drive, tyre);
      gaps_[place] = gaps_[place] || !told;
      const Band<double> value = told.value_or(untold);
      values.low[i] = value.low;
      values.nominal[i] = value.nominal;
      values.high[i] = value.high;
    }
  }
  /// What a limit is held against: the worse ends where the goals are robust.
  [[nodiscard]] const BlockRow& lowest(std::size_t limit) const noexcept {
    const BandBlock& values = values_[slots_[study_.place_of_limit(limit)]];
    return study_.goals().robust ? values.low : values.nominal;
  }
  [[nodiscard]] const BlockRow& highest(std::size_t limit) const noexcept {
    const BandBlock& values = values_[slots_[study_.place_of_limit(limit)]];
    return study_.goals().robust ? values.high : values.nominal;
  }
  /// Whether a limit is kept by values from the one to the other; not by what cannot be told.
  [[nodiscard]] bool kept(std::size_t limit, double low, double high) const noexcept {
    const Limit& asked = study_.goals().limits[limit];
    const double tolerance = Study::tolerance(asked);
    const bool told = !std::isnan(low);
    return told && (!asked.least || asked.least->value - low <= tolerance) &&
           (!asked.most || high - asked.most->value <= tolerance);
  }
  void hold_against(std::size_t limit, const StudyDrive& drive, Block& block) {
    const std::size_t place = study_.place_of_limit(limit);
    work_out(place, drive, block);
    const BlockRow &low = lowest(limit), &high = highest(limit);
    if (!gaps_[place] && kept(limit, least_of(low.data(), block.size), greatest_of(high.data(), block.size))) return;
    for (std::size_t i = 0; i < block.size; ++i) {
      if (block.out[i] || kept(limit, low[i], high[i])) continue;
      ++found_.ruled_out[limit];
      take_out(block, i);
    }
  }
  /// The losses of one wish.
  void lose(std::size_t wish, std::size_t n) noexcept {
    const Wish& asked = study_.goals().wishes[wish];
    const BandBlock& values = values_[slots_[study_.place_of_wish(wish)]];
    LossBlock& losses = losses_[wish];
    const auto lose = [&](const BlockRow& from, BlockRow& to) {
      if (asked.want == Want::target)
        target_losses(from.data(), asked.target->value, to.data(), n);
      else
        signed_losses(from.data(), asked.want == Want::more ? -1.0 : 1.0, to.data(), n);
    };
    lose(values.low, losses.at_low);
    lose(values.high, losses.at_high);
    lose(values.nominal, losses.as_judged);
    if (study_.goals().robust)
      greatest_of(losses.at_low.data(), losses.as_judged.data(), losses.at_high.data(), losses.as_judged.data(), n);
  }
  /// Works out the wishes of what keeps the limits, and leaves out what cannot be told.
  void judge(const StudyDrive& drive, Block& block) {
    for (std::size_t w = 0; w < losses_.size(); ++w) {
      const std::size_t place = study_.place_of_wish(w);
      work_out(place, drive, block);
      if (on_[place] != MeasuredOn::drive) lose(w, block.size);
      if (!gaps_[place]) continue;
      for (std::size_t i = 0; i < block.size; ++i) {
        if (block.out[i] || !std::isnan(values_[slots_[place]].nominal[i])) continue;
        ++found_.untold;
        take_out(block, i);
      }
    }
    found_.kept += block.left;
  }
  void add(std::size_t combination, const StudyDrive& drive, const Block& block) {
    add(found_.as_judged, &LossBlock::as_judged, combination, drive, block);
    add(found_.at_low, &LossBlock::at_low, combination, drive, block);
    add(found_.at_high, &LossBlock::at_high, combination, drive, block);
  }
  void add(TradeOff<Place>& trade_off, BlockRow LossBlock::*judged, std::size_t combination, const StudyDrive& drive,
           const Block& block) {
    Losses best;
    std::size_t varying = 0;
    const double* only = nullptr;  // that varies
    double least = 0.0;            // of it
    for (std::size_t w = 0; w < losses_.size(); ++w) {
      const double* loss = (losses_[w].*judged).data();
      if (on_[study_.place_of_wish(w)] == MeasuredOn::drive) {
        best.push_back(loss[0]);
      } else {
        ++varying;
        only = loss;
        best.push_back(least = least_in(loss, block));
      }
    }
    // What beats the best that the whole block has of every wish beats all of it.
    if (trade_off.beats(best)) return;
    for (std::size_t i = 0; i < block.size; ++i) {
      // Where one wish alone tells the block's set-ups apart, the nearest to it beat the others.
      if (block.out[i] || (varying == 1 && only[i] != least)) continue;
      Losses losses;
      for (const LossBlock& of_wish : losses_) losses.push_back((of_wish.*judged)[i]);
      trade_off.add(losses, {combination, drive.fit.links, block.first + i});
    }
  }
  [[nodiscard]] static double least_in(const double* loss, const Block& block) noexcept {
    if (block.left == block.size) return least_of(loss, block.size);
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < block.size; ++i)
      if (!block.out[i]) least = std::min(least, loss[i]);
    return least;
  }

  const Study& study_;
  std::vector<std::size_t> order_;  // of the limits
  std::vector<MeasuredOn> on_;      // by place
  std::vector<Beginning> blocks_;
  std::vector<std::size_t> slots_;  // by place, where its values stand
  std::vector<BandBlock> values_;   // by slot
  std::vector<bool> filled_;        // by place: for this block, or for this drive
  std::vector<bool> gaps_;          // by place: some cannot be told, or were not worth it
  std::vector<LossBlock> losses_;   // by wish
  Found found_;
};

/// Everything a study asks of one set-up, whatever limits it breaks.
[[nodiscard]] inline MeasuredValues all_values(const Study& study, const StudyDrive& drive, const StudyTyre& tyre) {
  MeasuredValues values{};
  const MeasuredList& measured = study.measured();
  for (std::size_t i = 0; i < measured.size(); ++i) {
    const MeasuredOn on = measure_row(measured[i].what).on;
    values[i] = on == MeasuredOn::drive  ? study.value(measured[i], drive)
                : on == MeasuredOn::tyre ? tyre.values[i]
                                         : study.value(measured[i], drive, tyre);
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
  run_together(std::min(asked, all), work, [&]() noexcept { going_on = false; });
  return going_on;
}

}  // namespace layshaft::detail
