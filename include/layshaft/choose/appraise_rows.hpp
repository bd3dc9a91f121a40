// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/choose/study_block.hpp>
#include <layshaft/choose/threads.hpp>

#include <algorithm>
#include <array>
#include <atomic>
#include <bit>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <thread>  // how many there are
#include <utility>
#include <vector>

#if defined(__SSE2__)
#include <emmintrin.h>  // stores past the cache
#endif

/// @file
/// Many set-ups of one machine that come row by row, as in a table: the measures of all, in columns of plain numbers.
/// Each number is that of an appraisal or a comparison with the stock set-up. What depends on the drive alone, or on
/// the tyre alone, is worked out once for all rows that share it.
namespace layshaft {

/// Sprockets and a chain that rows share.
struct RowDrive {
  SprocketOffer front, rear;
  ChainOffer chain = {};
  std::optional<Links> links = {};  ///< absent: the shortest even count that closes in the adjuster
};

/// Set-ups by their parts: each row names its drive and its tyre by their places in the lists.
struct SetupRows {
  static constexpr std::uint32_t none = std::numeric_limits<std::uint32_t>::max();  ///< the row has no such part

  std::span<const RowDrive> drives;
  std::span<const TyreOffer> tyres;
  std::span<const std::uint32_t> drive, tyre;  ///< one a row
};

/// Where one end of a measure goes: where it begins, null where that end is not wanted, and how many bytes lie from one
/// row to the next.
struct RowEnd {
  double* begin = nullptr;
  std::ptrdiff_t step = sizeof(double);
};

/// Where a measure of all rows goes, as so many of a unit, of which the number in SI units is told:
/// `units::kmh.value()`. NaN: it cannot be told, or the row has no set-up.
struct RowColumn {
  Measured measured;
  double unit = 1.0;
  RowEnd low = {}, nominal = {}, high = {};
};

/// How rows are worked out.
struct RowOptions {
  int threads = 1;                    ///< 1 to 256; 0: as many as there are cores
  std::optional<Setup> present = {};  ///< what is on the machine now, whose parts cost nothing; absent: the stock one
};

/// Which parts cannot be appraised, and why; by their places.
struct RowErrors {
  std::vector<std::optional<Error>> drives, tyres;
};

/// Whether a measure has ends of its own, or is one exact number.
[[nodiscard]] constexpr bool has_ends(Measure measure) noexcept {
  switch (measure) {
    case Measure::wrap:
    case Measure::teeth_in_mesh:
    case Measure::chain_safety:
    case Measure::front_teeth:
    case Measure::rear_teeth:
    case Measure::links:
    case Measure::loss_change:
    case Measure::evenness:
    case Measure::load_margin:
    case Measure::speed_margin:
    case Measure::radius_margin:
    case Measure::width_margin:
    case Measure::parts_changed:
    case Measure::front_changed:
    case Measure::rear_changed:
    case Measure::chain_changed:
    case Measure::tyre_changed:
    case Measure::chain_mass: return false;
    default: return true;
  }
}

namespace detail {

/// Rows of equal numbers in every column, found once each: the place of each row among them, and the row where each
/// comes first. Numbers are equal that have the same bits.
class RowGroups {
 public:
  RowGroups(std::span<const std::span<const double>> columns, std::size_t rows)
      : place(rows), columns_(columns), slots_(64) {
    std::array<std::uint64_t, block_size> hashes;
    for (std::size_t begin = 0; begin < rows; begin += block_size) {
      const std::size_t n = std::min(block_size, rows - begin);
      hash(begin, n, hashes);
      for (std::size_t i = 0; i < n; ++i) place[begin + i] = find(begin + i, hashes[i]);
    }
  }

  std::vector<std::uint32_t> place;
  std::vector<std::size_t> first;

 private:
  struct Slot {
    std::uint64_t hash = 0;
    std::uint32_t place = SetupRows::none;
  };

  [[nodiscard]] std::uint64_t bits(std::size_t column, std::size_t row) const noexcept {
    return std::bit_cast<std::uint64_t>(columns_[column][row]);
  }
  /// Column by column, many rows on their way at once.
  void hash(std::size_t begin, std::size_t n, std::array<std::uint64_t, block_size>& hashes) const noexcept {
    hashes.fill(0);
    for (const std::span<const double> column : columns_)
      for (std::size_t i = 0; i < n; ++i) {
        const std::uint64_t bits = std::bit_cast<std::uint64_t>(column[begin + i]);
        // What tells small whole numbers apart stands in their first bits, and a slot is found by the last.
        const std::uint64_t mixed = (std::rotl(hashes[i], 23) ^ bits ^ (bits >> 32)) * 0x9E3779B97F4A7C15u;
        hashes[i] = mixed ^ (mixed >> 32);
      }
  }
  [[nodiscard]] std::uint32_t find(std::size_t row, std::uint64_t hash) {
    std::size_t at = hash & (slots_.size() - 1);
    while (slots_[at].place != SetupRows::none) {
      if (slots_[at].hash == hash && same(slots_[at].place, row)) return slots_[at].place;
      at = (at + 1) & (slots_.size() - 1);
    }
    const auto found = static_cast<std::uint32_t>(first.size());
    slots_[at] = {hash, found};
    first.push_back(row);
    for (std::size_t c = 0; c < columns_.size(); ++c) keys_.push_back(bits(c, row));
    if (2 * first.size() >= slots_.size()) grow();
    return found;
  }
  [[nodiscard]] bool same(std::uint32_t group, std::size_t row) const noexcept {
    const std::uint64_t* const key = keys_.data() + group * columns_.size();
    for (std::size_t c = 0; c < columns_.size(); ++c)
      if (key[c] != bits(c, row)) return false;
    return true;
  }
  void grow() {
    std::vector<Slot> more(4 * slots_.size());
    for (const Slot& slot : slots_) {
      if (slot.place == SetupRows::none) continue;
      std::size_t at = slot.hash & (more.size() - 1);
      while (more[at].place != SetupRows::none) at = (at + 1) & (more.size() - 1);
      more[at] = slot;
    }
    slots_ = std::move(more);
  }

  std::span<const std::span<const double>> columns_;
  std::vector<Slot> slots_;
  std::vector<std::uint64_t> keys_;  // of each group, one beside the other
};

/// Calls `work(first, size)` with each part of `all`, in so many threads.
template <class Work>
void in_threads(std::size_t all, std::size_t part, std::size_t threads, const Work& work) {
  std::atomic<std::size_t> next{0};
  const auto take = [&] {
    for (std::size_t first = next.fetch_add(part); first < all; first = next.fetch_add(part))
      work(first, std::min(part, all - first));
  };
  run_together(std::min(threads, (all + part - 1) / part), take, [&]() noexcept { next = all; });
}

/// Bands of the drives, the tyres, or the pairs of both that occur.
struct PartColumns {
  std::vector<double> low, nominal, high;

  explicit PartColumns(std::size_t size = 0) : low(size, untold()), nominal(size, untold()), high(size, untold()) {}
  void set(std::size_t i, const std::optional<Band<double>>& band) noexcept {
    if (!band) return;
    low[i] = band->low;
    nominal[i] = band->nominal;
    high[i] = band->high;
  }
  [[nodiscard]] static constexpr double untold() noexcept { return std::numeric_limits<double>::quiet_NaN(); }
};

/// number / unit
LAYSHAFT_WIDE inline void quotients_of(const double* __restrict number, double unit, double* __restrict out,
                                       std::size_t n) noexcept {
  for (std::size_t i = 0; i < n; ++i) out[i] = number[i] / unit;
}
/// From so many rows on, their columns are too large for the cache, and are written past it: a store that goes through
/// it reads first what it then overwrites.
inline constexpr std::size_t rows_past_the_cache = 32768;
/// The same quotients, written past the cache where the processor can. What was written is there for other threads
/// after `settle`.
inline void quotients_past_the_cache(const double* number, double unit, double* out, std::size_t n) noexcept {
  std::size_t i = 0;
#if defined(__SSE2__)
  if (reinterpret_cast<std::uintptr_t>(out) % sizeof(__m128d) == 0)
    for (const __m128d units = _mm_set1_pd(unit); i + 2 <= n; i += 2)
      _mm_stream_pd(out + i, unit == 1.0 ? _mm_loadu_pd(number + i) : _mm_div_pd(_mm_loadu_pd(number + i), units));
#endif
  for (; i < n; ++i) out[i] = number[i] / unit;
}
inline void settle() noexcept {
#if defined(__SSE2__)
  _mm_sfence();
#endif
}

/// All rows of one question.
class RowTable {
 public:
  RowTable(const Study& study, const SetupRows& rows, std::span<const RowColumn> columns, std::size_t threads)
      : study_(study), rows_(rows), columns_(columns), threads_(threads) {
    for (const RowColumn& column : columns) {
      measured_.push_back(as_asked(column.measured));
      const MeasuredList& all = study.measured();
      place_.push_back(static_cast<std::size_t>(std::find(all.begin(), all.end(), measured_.back()) - all.begin()));
    }
  }

  [[nodiscard]] RowErrors run() {
    RowErrors errors{std::vector<std::optional<Error>>(rows_.drives.size()),
                     std::vector<std::optional<Error>>(rows_.tyres.size())};
    prepare_drives(errors.drives);
    prepare_tyres(errors.tyres);
    prepare_pairs(errors);
    constexpr std::size_t part = 16 * block_size;  // so that threads seldom meet
    in_threads(rows_.drive.size(), part, threads_, [&](std::size_t first, std::size_t size) {
      RowBlock block;
      for (std::size_t i = first; i < first + size; i += block_size)
        fill(block, i, std::min(block_size, first + size - i));
      settle();
    });
    return errors;
  }

 private:
  /// A block's rows: their parts, what decides many of their measures, and one measure's values.
  struct RowBlock {
    alignas(64) BandBlock stock_over_tyre, tyre, values;
    alignas(64) BlockRow change, factor, told;
    std::array<std::uint32_t, block_size> drive, of_tyre;
  };
  /// Where the ends of a measure of a block go; null: not wanted.
  struct Ends {
    double *low, *nominal, *high;
  };

  [[nodiscard]] static Measured as_asked(Measured measured) noexcept {
    if (measured.what == Measure::front_contacts_change) measured.what = Measure::thrust_change;
    return measured;
  }
  /// Whether a measure of both is worked out many rows at once, from factors of each.
  [[nodiscard]] bool from_factors(Measure what) const noexcept {
    switch (what) {
      case Measure::thrust_change:
      case Measure::speed_change:
      case Measure::engine_speed:
      case Measure::walking_pace:
      case Measure::chain_pull_change:
      case Measure::cost:
      case Measure::parts_changed: return true;
      case Measure::speedometer_beyond_rule: return study_.sensor() != SpeedometerSensor::front_wheel;
      default: return false;
    }
  }
  [[nodiscard]] bool by_pair(Measure what) const noexcept {
    return measure_row(what).on == MeasuredOn::both && !from_factors(what);
  }

  [[nodiscard]] std::optional<Band<double>> in_unit(std::size_t c, std::optional<Band<double>> band) const noexcept {
    const double unit = columns_[c].unit;
    if (band) band = Band<double>{band->low / unit, band->nominal / unit, band->high / unit};
    return band;
  }
  void prepare_drives(std::vector<std::optional<Error>>& errors) {
    // One place more, of what is no drive.
    const std::size_t size = rows_.drives.size() + 1;
    change_.assign(size, PartColumns::untold());
    diameters_ = first_ratio_ = parts_changed_ = change_;
    cost_ = PartColumns(size);
    of_drive_.assign(columns_.size(), PartColumns());
    for (std::size_t c = 0; c < columns_.size(); ++c)
      if (measured_[c].what == Measure::engine_speed || measure_row(measured_[c].what).on == MeasuredOn::drive)
        of_drive_[c] = PartColumns(size);
    in_threads(rows_.drives.size(), 16, threads_, [&](std::size_t first, std::size_t count) {
      for (std::size_t i = first; i < first + count; ++i) errors[i] = prepare(i);
    });
  }
  [[nodiscard]] std::optional<Error> prepare(std::size_t i) {
    const RowDrive& of_row = rows_.drives[i];
    if (auto error = outside(of_row.chain.made)) return error->in("chain");
    const auto drive = study_.drive(of_row.front, of_row.rear, of_row.chain, of_row.links);
    if (!drive) return drive.error();
    const DriveFactors factors = study_.factors(*drive);
    change_[i] = factors.change;
    diameters_[i] = factors.diameters;
    first_ratio_[i] = drive->overall_ratios[0];
    parts_changed_[i] = factors.parts_changed;
    cost_.set(i, factors.cost);
    for (std::size_t c = 0; c < columns_.size(); ++c) {
      if (measured_[c].what == Measure::engine_speed)
        of_drive_[c].nominal[i] = study_.ratio_of(measured_[c], *drive);
      else if (measure_row(measured_[c].what).on == MeasuredOn::drive)
        of_drive_[c].set(i, in_unit(c, study_.value(measured_[c], *drive)));
    }
    return std::nullopt;
  }

  void prepare_tyres(std::vector<std::optional<Error>>& errors) {
    const std::size_t size = rows_.tyres.size() + 1;
    stock_over_tyre_ = tyre_over_stock_ = circumference_ = tyre_cost_ = PartColumns(size);
    tyre_changed_.assign(size, PartColumns::untold());
    of_tyre_.assign(columns_.size(), PartColumns());
    for (std::size_t c = 0; c < columns_.size(); ++c)
      if (measured_[c].what == Measure::engine_speed || measure_row(measured_[c].what).on == MeasuredOn::tyre)
        of_tyre_[c] = PartColumns(size);
    in_threads(rows_.tyres.size(), block_size, threads_, [&](std::size_t first, std::size_t count) {
      for (std::size_t i = first; i < first + count; ++i) {
        errors[i] = outside(rows_.tyres[i]);
        if (!errors[i]) prepare(i, study_.tyre(rows_.tyres[i]));
      }
    });
  }
  void prepare(std::size_t i, const StudyTyre& tyre) {
    const TyreFactors factors = Study::factors(tyre);
    stock_over_tyre_.set(i, factors.stock_over_tyre);
    tyre_over_stock_.set(i, factors.tyre_over_stock);
    circumference_.set(i, factors.circumference);
    tyre_changed_[i] = tyre.changed ? 1.0 : 0.0;
    tyre_cost_.set(i, study_.cost_of(tyre));
    for (std::size_t c = 0; c < columns_.size(); ++c) {
      if (measured_[c].what == Measure::engine_speed)
        of_tyre_[c].set(i, factors.turning(*measured_[c].speed));
      else if (measure_row(measured_[c].what).on == MeasuredOn::tyre)
        of_tyre_[c].set(i, in_unit(c, tyre.values[place_[c]]));
    }
  }

  /// What takes a solve, once for each pair of a drive and a tyre that occurs.
  void prepare_pairs(const RowErrors& errors) {
    if (std::none_of(measured_.begin(), measured_.end(), [&](const Measured& one) { return by_pair(one.what); }))
      return;
    const std::size_t rows = rows_.drive.size();
    std::vector<double> drive(rows_.drive.begin(), rows_.drive.end()), tyre(rows_.tyre.begin(), rows_.tyre.end());
    const std::span<const double> both[] = {drive, tyre};
    RowGroups pairs(both, rows);
    of_pair_.assign(columns_.size(), PartColumns());
    for (std::size_t c = 0; c < columns_.size(); ++c)
      if (by_pair(measured_[c].what)) of_pair_[c] = PartColumns(pairs.first.size());
    in_threads(pairs.first.size(), 4, threads_, [&](std::size_t first, std::size_t count) {
      for (std::size_t i = first; i < first + count; ++i) {
        const std::uint32_t d = rows_.drive[pairs.first[i]], t = rows_.tyre[pairs.first[i]];
        if (d == SetupRows::none || t == SetupRows::none || errors.drives[d] || errors.tyres[t]) continue;
        const RowDrive& of_row = rows_.drives[d];
        const auto of_drive = study_.drive(of_row.front, of_row.rear, of_row.chain, of_row.links);
        const StudyTyre of_tyre = study_.tyre(rows_.tyres[t]);
        for (std::size_t c = 0; c < columns_.size(); ++c)
          if (by_pair(measured_[c].what))
            of_pair_[c].set(i, in_unit(c, study_.value(measured_[c], *of_drive, of_tyre)));
      }
    });
    pair_ = std::move(pairs.place);
  }

  /// A number of each row's part.
  static void gather(const std::vector<double>& from, const std::uint32_t* __restrict place, double* __restrict to,
                     std::size_t n) noexcept {
    if (to == nullptr) return;
    const double* const begin = from.data();
    for (std::size_t i = 0; i < n; ++i) to[i] = begin[place[i]];
  }
  static void gather(const std::vector<double>& from, const std::array<std::uint32_t, block_size>& place, double* to,
                     std::size_t n) noexcept {
    gather(from, place.data(), to, n);
  }
  static void gather(const PartColumns& from, const std::array<std::uint32_t, block_size>& place, BandBlock& to,
                     std::size_t n) noexcept {
    gather(from.low, place, to.low.data(), n);
    gather(from.nominal, place, to.nominal.data(), n);
    gather(from.high, place, to.high.data(), n);
  }

  void fill(RowBlock& block, std::size_t first, std::size_t n) const {
    const auto place = [&](std::span<const std::uint32_t> of_rows, std::size_t size, auto& to) {
      for (std::size_t i = 0; i < n; ++i)
        to[i] = std::min(of_rows[first + i], static_cast<std::uint32_t>(size));  // the last: no such part
    };
    place(rows_.drive, rows_.drives.size(), block.drive);
    place(rows_.tyre, rows_.tyres.size(), block.of_tyre);
    gather(change_, block.drive, block.change.data(), n);
    gather(stock_over_tyre_, block.of_tyre, block.stock_over_tyre, n);
    bool whole = true;
    for (std::size_t i = 0; i < n; ++i) {
      const bool told = !std::isnan(block.change[i] * block.stock_over_tyre.nominal[i]);
      block.told[i] = told ? 1.0 : PartColumns::untold();
      whole = whole && told;
    }
    for (std::size_t c = 0; c < columns_.size(); ++c) {
      const RowColumn& column = columns_[c];
      const bool scaled = column.unit != 1.0 && !gathered(c);
      // Straight to where they belong, where they stand there one after the other and in SI units.
      const auto place_of = [&](const RowEnd& end, BlockRow& row) -> double* {
        if (end.begin == nullptr) return nullptr;
        const bool straight = !scaled && !past_the_cache() && end.step == static_cast<std::ptrdiff_t>(sizeof(double));
        return straight ? end.begin + first : row.data();
      };
      const Ends to{place_of(column.low, block.values.low), place_of(column.nominal, block.values.nominal),
                    place_of(column.high, block.values.high)};
      fill(block, c, to, first, n);
      for (const auto& [end, values] :
           {std::pair(&column.low, to.low), std::pair(&column.nominal, to.nominal), std::pair(&column.high, to.high)}) {
        if (values == nullptr) continue;
        if (!whole)
          for (std::size_t i = 0; i < n; ++i) values[i] *= block.told[i];
        if (values != end->begin + first) write(values, scaled ? column.unit : 1.0, *end, first, n);
      }
    }
  }
  [[nodiscard]] bool past_the_cache() const noexcept { return rows_.drive.size() >= rows_past_the_cache; }
  /// Whether a column is looked up by part or pair, in its unit already.
  [[nodiscard]] bool gathered(std::size_t c) const noexcept {
    return measure_row(measured_[c].what).on != MeasuredOn::both || by_pair(measured_[c].what);
  }
  void fill(RowBlock& block, std::size_t c, const Ends& to, std::size_t first, std::size_t n) const {
    if (!gathered(c)) return fill(block, measured_[c], c, to, n);
    const bool by_tyre = measure_row(measured_[c].what).on == MeasuredOn::tyre, pair = by_pair(measured_[c].what);
    const PartColumns& from = pair ? of_pair_[c] : by_tyre ? of_tyre_[c] : of_drive_[c];
    const std::uint32_t* const place = pair ? &pair_[first] : by_tyre ? block.of_tyre.data() : block.drive.data();
    gather(from.low, place, to.low, n);
    gather(from.nominal, place, to.nominal, n);
    gather(from.high, place, to.high, n);
  }
  /// What is worked out from factors of both.
  void fill(RowBlock& block, const Measured& measured, std::size_t c, const Ends& to, std::size_t n) const {
    const double *const change = block.change.data(), *const factor = block.factor.data();
    const BandBlock& under = block.stock_over_tyre;
    const auto by_drive = [&](const std::vector<double>& from) { gather(from, block.drive, block.factor.data(), n); };
    const auto each_end = [&](const PartColumns& tyres, const auto& work) {
      const auto end = [&](double* at, const std::vector<double>& from, BlockRow& row, Corner corner) {
        if (at == nullptr) return;
        gather(from, block.of_tyre, row.data(), n);
        work(row.data(), at, corner);
      };
      end(to.low, tyres.low, block.tyre.low, Corner::low);
      end(to.nominal, tyres.nominal, block.tyre.nominal, Corner::nominal);
      end(to.high, tyres.high, block.tyre.high, Corner::high);
    };
    switch (measured.what) {
      case Measure::thrust_change:
        if (to.low) change_of(under.low.data(), change, to.low, n);
        if (to.nominal) change_of(under.nominal.data(), change, to.nominal, n);
        if (to.high) change_of(under.high.data(), change, to.high, n);
        return;
      case Measure::speed_change:  // falls where thrust rises
        if (to.low) inverse_change_of(under.high.data(), change, to.low, n);
        if (to.nominal) inverse_change_of(under.nominal.data(), change, to.nominal, n);
        if (to.high) inverse_change_of(under.low.data(), change, to.high, n);
        return;
      case Measure::chain_pull_change:
        by_drive(diameters_);
        each_end(tyre_over_stock_, [&](const double* tyre, double* at, Corner) { change_of(tyre, factor, at, n); });
        return;
      case Measure::engine_speed:
        by_drive(of_drive_[c].nominal);
        each_end(of_tyre_[c],
                 [&](const double* tyre, double* at, Corner) { product_of(tyre, factor, turn.value(), at, n); });
        return;
      case Measure::walking_pace: {
        by_drive(first_ratio_);
        const Band<double>& slip = surface(SurfaceKind::asphalt).driving_slip;
        const Band<double> grip{1.0 - slip.high, 1.0 - slip.nominal, 1.0 - slip.low};
        each_end(circumference_, [&](const double* tyre, double* at, Corner end) {
          pace_of(tyre, study_.lowest_turning(), factor, grip.at(end), at, n);
        });
        return;
      }
      case Measure::speedometer_beyond_rule: {
        BandBlock& worst = block.tyre;
        for (BlockRow* end : {&worst.low, &worst.nominal, &worst.high}) std::fill_n(end->data(), n, 0.0);
        for (const ReadingRule& rule : study_.reading_rules())
          if (study_.sensor() == SpeedometerSensor::layshaft)
            reads_outside(under.low.data(), under.nominal.data(), under.high.data(), change, rule, worst, n);
          else
            reads_outside(under.low.data(), under.nominal.data(), under.high.data(), OneForAll{1.0}, rule, worst, n);
        if (to.low) std::copy_n(worst.low.data(), n, to.low);
        if (to.nominal) std::copy_n(worst.nominal.data(), n, to.nominal);
        if (to.high) std::copy_n(worst.high.data(), n, to.high);
        return;
      }
      case Measure::cost:
        add(block, cost_.low, tyre_cost_.low, to.low, n);
        add(block, cost_.nominal, tyre_cost_.nominal, to.nominal, n);
        add(block, cost_.high, tyre_cost_.high, to.high, n);
        return;
      default:
        for (double* end : {to.low, to.nominal, to.high}) add(block, parts_changed_, tyre_changed_, end, n);
        return;
    }
  }
  static void add(const RowBlock& block, const std::vector<double>& of_drive, const std::vector<double>& of_tyre,
                  double* to, std::size_t n) noexcept {
    if (to == nullptr) return;
    for (std::size_t i = 0; i < n; ++i) to[i] = of_drive[block.drive[i]] + of_tyre[block.of_tyre[i]];
  }
  /// In the column's unit.
  void write(const double* values, double unit, const RowEnd& end, std::size_t first, std::size_t n) const noexcept {
    char* const to = reinterpret_cast<char*>(end.begin) + static_cast<std::ptrdiff_t>(first) * end.step;
    const bool in_a_row = end.step == static_cast<std::ptrdiff_t>(sizeof(double));
    if (in_a_row && past_the_cache())
      quotients_past_the_cache(values, unit, reinterpret_cast<double*>(to), n);
    else if (in_a_row)
      quotients_of(values, unit, reinterpret_cast<double*>(to), n);
    else
      for (std::size_t i = 0; i < n; ++i)
        *reinterpret_cast<double*>(to + static_cast<std::ptrdiff_t>(i) * end.step) = values[i] / unit;
  }

  const Study& study_;
  const SetupRows& rows_;
  std::span<const RowColumn> columns_;
  std::size_t threads_;
  // By column: what is asked, and its place among all that the study is asked.
  std::vector<Measured> measured_;
  std::vector<std::size_t> place_;
  // By drive.
  std::vector<double> change_, diameters_, first_ratio_, parts_changed_;
  PartColumns cost_;
  std::vector<PartColumns> of_drive_;
  // By tyre.
  PartColumns stock_over_tyre_, tyre_over_stock_, circumference_, tyre_cost_;
  std::vector<double> tyre_changed_;
  std::vector<PartColumns> of_tyre_;
  // By pair, and each row's pair.
  std::vector<PartColumns> of_pair_;
  std::vector<std::uint32_t> pair_;
};
}  // namespace detail

/// Works out the measures of all rows.
/// @return why some drives and tyres cannot be appraised: their rows are NaN in every column, and hinder no other; or
/// the error of what is asked, or that the machine does not state what a measure needs.
[[nodiscard]] inline Result<RowErrors> try_appraise_rows(const Machine& machine, const SetupRows& rows,
                                                         std::span<const RowColumn> columns,
                                                         const RowOptions& options = {}) {
  if (options.threads < 0 || options.threads > 256)
    return Error::range("threads", std::to_string(options.threads), "0 to 256");
  if (rows.drive.size() != rows.tyre.size())
    return Error::value("rows name " + std::to_string(rows.drive.size()) + " drives, but " +
                        std::to_string(rows.tyre.size()) + " tyres; expected one of each a row");
  std::vector<Measured> measured;
  for (const RowColumn& column : columns)
    if (std::find(measured.begin(), measured.end(), column.measured) == measured.end())
      measured.push_back(column.measured);
  const auto study = detail::Study::make(machine, measured, options.present);
  if (!study) return study.error();
  const auto threads = options.threads > 0 ? static_cast<std::size_t>(options.threads)
                                           : std::max(1u, std::thread::hardware_concurrency());
  return detail::RowTable(*study, rows, columns, threads).run();
}

#if LAYSHAFT_EXCEPTIONS
/// As `try_appraise_rows`.
/// @throws Error or RangeError as it says.
[[nodiscard]] inline RowErrors appraise_rows(const Machine& machine, const SetupRows& rows,
                                             std::span<const RowColumn> columns, const RowOptions& options = {}) {
  return try_appraise_rows(machine, rows, columns, options).value();
}
#endif

}  // namespace layshaft
