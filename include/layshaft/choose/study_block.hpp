// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/choose/study_values.hpp>
#include <layshaft/core/wide.hpp>

#include <algorithm>
#include <array>
#include <cstddef>
#include <limits>
#include <optional>

/// @file
/// The measures of one drive on many tyres at once. Each number is what `Study::value` tells of the same set-up: what
/// depends on the tyre alone was worked out once, and the ends of a band come from those ends of the tyre's that lead
/// there, since every formula here rises or falls throughout.
namespace layshaft::detail {

/// So many tyres are looked at together: what is worked out of them stays in the processor's nearest cache.
inline constexpr std::size_t block_size = 512;
inline constexpr std::size_t block_lanes = 32;

/// A number of each tyre of a block.
using BlockRow = std::array<double, block_size>;
/// Bands of a block, end by end. NaN: cannot be told.
struct BandBlock {
  alignas(64) BlockRow low, nominal, high;
};

/// One number for all of a block, where a row of numbers could stand.
struct OneForAll {
  double number;
  constexpr double operator[](std::size_t) const noexcept { return number; }
};

// The loops. `n` is at most block_size. What comes from the drive is one number for all, or a row.

/// tyre × factor − 1
template <class Factor>
LAYSHAFT_WIDE inline void change_of(const double* __restrict tyre, Factor factor, double* __restrict out,
                                    std::size_t n) noexcept {
  for (std::size_t i = 0; i < n; ++i) out[i] = tyre[i] * factor[i] - 1.0;
}
/// 1 / (tyre × factor) − 1
template <class Factor>
LAYSHAFT_WIDE inline void inverse_change_of(const double* __restrict tyre, Factor factor, double* __restrict out,
                                            std::size_t n) noexcept {
  for (std::size_t i = 0; i < n; ++i) out[i] = 1.0 / (tyre[i] * factor[i]) - 1.0;
}
/// tyre × factor × unit
template <class Factor>
LAYSHAFT_WIDE inline void product_of(const double* __restrict tyre, Factor factor, double unit, double* __restrict out,
                                     std::size_t n) noexcept {
  for (std::size_t i = 0; i < n; ++i) out[i] = tyre[i] * factor[i] * unit;
}
/// first × tyre / ratio × last
template <class Factor>
LAYSHAFT_WIDE inline void pace_of(const double* __restrict tyre, double first, Factor ratio, double last,
                                  double* __restrict out, std::size_t n) noexcept {
  for (std::size_t i = 0; i < n; ++i) out[i] = first * tyre[i] / ratio[i] * last;
}
/// Widens the bands by how far a speedometer reads outside one rule.
template <class Factor>
LAYSHAFT_WIDE inline void reads_outside(const double* __restrict low, const double* __restrict nominal,
                                        const double* __restrict high, Factor change, const ReadingRule& rule,
                                        BandBlock& __restrict out, std::size_t n) noexcept {
  const double at_low = rule.stock.low, at_nominal = rule.stock.nominal, at_high = rule.stock.high, most = rule.most;
  const auto outside = [&](double share) {
    const double below = 1.0 - share, above = share - most;
    const double by = below > above ? below : above;
    return by > reading_rounding ? by : 0.0;
  };
  for (std::size_t i = 0; i < n; ++i) {
    const double a = outside(at_low * (low[i] * change[i])), b = outside(at_nominal * (nominal[i] * change[i])),
                 c = outside(at_high * (high[i] * change[i]));
    const double least = a < c ? a : c, greatest = a < c ? c : a;  // farthest outside is one of the ends
    const double least_of_all = least < b ? least : b;
    out.low[i] = out.low[i] < least_of_all ? least_of_all : out.low[i];
    out.nominal[i] = out.nominal[i] < b ? b : out.nominal[i];
    out.high[i] = out.high[i] < greatest ? greatest : out.high[i];
  }
}
/// How far each is from a wish: sign × value, or from its target.
LAYSHAFT_WIDE inline void signed_losses(const double* __restrict value, double sign, double* __restrict out,
                                        std::size_t n) noexcept {
  for (std::size_t i = 0; i < n; ++i) out[i] = sign * value[i];
}
LAYSHAFT_WIDE inline void target_losses(const double* __restrict value, double target, double* __restrict out,
                                        std::size_t n) noexcept {
  for (std::size_t i = 0; i < n; ++i) out[i] = std::fabs(value[i] - target);
}
LAYSHAFT_WIDE inline void greatest_of(const double* a, const double* b, const double* c, double* out,
                                      std::size_t n) noexcept {
  for (std::size_t i = 0; i < n; ++i) {
    const double greater = a[i] < b[i] ? b[i] : a[i];
    out[i] = greater < c[i] ? c[i] : greater;
  }
}
/// The least of a block, in lanes: one after the other they would wait for each other.
LAYSHAFT_WIDE inline double least_of(const double* __restrict value, std::size_t n) noexcept {
  double least[block_lanes];
  for (double& lane : least) lane = std::numeric_limits<double>::infinity();
  std::size_t i = 0;
  for (; i + block_lanes <= n; i += block_lanes)
    for (std::size_t lane = 0; lane < block_lanes; ++lane)
      least[lane] = value[i + lane] < least[lane] ? value[i + lane] : least[lane];
  for (; i < n; ++i) least[0] = value[i] < least[0] ? value[i] : least[0];
  return *std::min_element(std::begin(least), std::end(least));
}
/// The greatest of a block.
LAYSHAFT_WIDE inline double greatest_of(const double* __restrict value, std::size_t n) noexcept {
  double greatest[block_lanes];
  for (double& lane : greatest) lane = -std::numeric_limits<double>::infinity();
  std::size_t i = 0;
  for (; i + block_lanes <= n; i += block_lanes)
    for (std::size_t lane = 0; lane < block_lanes; ++lane)
      greatest[lane] = greatest[lane] < value[i + lane] ? value[i + lane] : greatest[lane];
  for (; i < n; ++i) greatest[0] = greatest[0] < value[i] ? value[i] : greatest[0];
  return *std::max_element(std::begin(greatest), std::end(greatest));
}

/// The measures of a block, and what is known of its set-ups.
inline bool Study::fill(const Measured& measured, const StudyDrive& drive, std::size_t first, std::size_t n,
                        BandBlock& out) const {
  const OneForAll change{final_ratio(drive.front.teeth, drive.rear.teeth) / stock_ratio_};
  const auto each_end = [&](const BandColumns& tyres, const auto& work) {
    work(&tyres.low[first], out.low.data());
    work(&tyres.nominal[first], out.nominal.data());
    work(&tyres.high[first], out.high.data());
  };
  switch (measured.what) {
    case Measure::thrust_change:
      each_end(stock_over_tyre_, [&](const double* tyre, double* to) { change_of(tyre, change, to, n); });
      return true;
    case Measure::speed_change:
      inverse_change_of(&stock_over_tyre_.high[first], change, out.low.data(), n);
      inverse_change_of(&stock_over_tyre_.nominal[first], change, out.nominal.data(), n);
      inverse_change_of(&stock_over_tyre_.low[first], change, out.high.data(), n);
      return true;
    case Measure::chain_pull_change: {
      const OneForAll diameters{stock_rear_diameter_ / rear_diameter(drive)};
      each_end(tyre_over_stock_, [&](const double* tyre, double* to) { change_of(tyre, diameters, to, n); });
      return true;
    }
    case Measure::engine_speed: {
      const OneForAll ratio{ratio_of(measured, drive)};
      each_end(turning_[place_of(measured)],
               [&](const double* tyre, double* to) { product_of(tyre, ratio, turn.value(), to, n); });
      return true;
    }
    case Measure::walking_pace: {
      const double turning = lowest_turning();
      const OneForAll ratio{drive.overall_ratios[0]};
      const Band<double>& slip = surface(SurfaceKind::asphalt).driving_slip;
      pace_of(&circumference_.low[first], turning, ratio, 1.0 - slip.high, out.low.data(), n);
      pace_of(&circumference_.nominal[first], turning, ratio, 1.0 - slip.nominal, out.nominal.data(), n);
      pace_of(&circumference_.high[first], turning, ratio, 1.0 - slip.low, out.high.data(), n);
      return true;
    }
    case Measure::speedometer_beyond_rule: {
      const SpeedometerSensor sensor = machine_.speedometer().sensor();
      if (sensor == SpeedometerSensor::front_wheel) return false;
      each_end(stock_over_tyre_, [&](const double*, double* to) { std::fill_n(to, n, 0.0); });
      for (const ReadingRule& rule : reading_rules_)
        reads_outside(&stock_over_tyre_.low[first], &stock_over_tyre_.nominal[first], &stock_over_tyre_.high[first],
                      sensor == SpeedometerSensor::layshaft ? change : OneForAll{1.0}, rule, out, n);
      return true;
    }
    default: return false;
  }
}

}  // namespace layshaft::detail
