// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/chain/loop.hpp>
#include <layshaft/core/wide.hpp>

#include <algorithm>  // copy_n, min
#include <array>
#include <bit>  // of a double
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <optional>
#include <span>
#include <string>
#include <string_view>

/// @file
/// The closed loop of many drives at once: centre distances for links, and links for centre distances.
///
/// Columns of plain numbers in, a column out, with the unit in the name of each. A number is the same to the bit
/// wherever in whatever column it stands, and whichever processor works it out. In pitches it is within 2 ulp of
/// `chain_centre` and `chain_links`, and of 40 digits. What is no whole number of teeth, is out of range, or closes no
/// loop, gives NaN. Several threads may each work on a part of a column.
///
/// The equation is that of `chain_centre`. A polynomial is the first guess at the straight run, right to 1e-7 of it for
/// the drives of motorcycles, so that a single step of Halley's, which triples the digits, reaches the last bit. It
/// asks for one arctangent of a small angle, by a polynomial as well. The few drives beyond that, and those whose pitch
/// circles all but touch, are left to `chain_centre`.
namespace layshaft {

namespace detail {

/// So many drives are looked at together: all that is worked out of them stays in the nearest cache.
inline constexpr std::size_t loop_block_size = 256;
using LoopRow = std::array<double, loop_block_size>;
inline constexpr double nothing = std::numeric_limits<double>::quiet_NaN();

/// Pitch radii by the number of teeth, in pitches; NaN where that is none. A power of two, so that any number finds a
/// place.
inline constexpr std::size_t pitch_radii_size = 1024;
static_assert(pitch_radii_size > Teeth::greatest);
/// Worked out once.
[[nodiscard]] inline const double* pitch_radii() noexcept {
  static const auto radii = [] {
    std::array<double, pitch_radii_size> all;
    all.fill(nothing);
    for (int teeth = Teeth::least; teeth <= Teeth::greatest; ++teeth)
      all[static_cast<std::size_t>(teeth)] = 0.5 / std::sin(pi / teeth);
    return all;
  }();
  return radii.data();
}

/// Stands where a drive is to be asked for alone; no centre distance and no loop is nothing.
inline constexpr double asked_alone = 0.0;
/// How near to touching pitch circles a drive is asked for alone.
inline constexpr double loop_near = 1e-9;

/// (arctan(root) / root - 1) / square of the root of a square, to 2e-16 of the arctangent; by interpolation at
/// Chebyshev's points in 40 digits.
inline constexpr double arctan_of[] = {-0.3333333333333332, 0.19999999999981738,  -0.142857142820476,
                                       0.111111108230445,   -0.09090897437992802, 0.0769203124779683,
                                       -0.0666254711078944, 0.05842456638489231,  -0.050097855331949444,
                                       0.0372135462817762,  -0.016890557731072064};
inline constexpr double most_arctan_of = 0.2;  ///< of the square
/// The straight run over the straight links by p = W D / S², where W is twice D, to 1e-7; made the same way.
inline constexpr double run_of[] = {0.5000000262301902,  -1.0000263063734054, -1.3291309644609142,
                                    -3.7066839673017054, -5.166309626801362,  -101.64741247486629};
inline constexpr double most_run_of = 0.0715;  ///< of p
/// The longest step, over the run, that is sure to end at the last bit: a step leaves less than a tenth of its cube.
inline constexpr double most_step = 8e-6;

/// A double from here on has no room for a fraction, and a small whole number added to it stands in its last bits.
inline constexpr double no_fraction = 4503599627370496.0;

/// Looks the teeth up; what is no number of teeth finds some radius or none. No processor looks up several at once
/// faster.
inline void look_up(const double* __restrict front, const double* __restrict rear, double* __restrict radii,
                    double* __restrict touching, std::size_t n) noexcept {
  const double* const radius = pitch_radii();
  const auto place = [](double teeth) { return std::bit_cast<std::uint64_t>(teeth + no_fraction) % pitch_radii_size; };
  for (std::size_t i = 0; i < n; ++i) {
    const double of_front = radius[place(front[i])], of_rear = radius[place(rear[i])];
    radii[i] = of_rear - of_front;
    touching[i] = of_rear + of_front;
  }
}

// What is worked out of a block, row by row. W is the difference of the teeth over π, D that of the pitch radii. Each
// loop is short, so that a processor can have many numbers on their way at once.

/// The straight links and W; a first guess at the straight runs, in pitches, and whether it is one.
LAYSHAFT_WIDE inline void guess_runs(const double* __restrict front, const double* __restrict rear,
                                     const double* __restrict links, const double* __restrict radii,
                                     double* __restrict straight, double* __restrict teeth, double* __restrict guess,
                                     double* __restrict sure, std::size_t n) noexcept {
  for (std::size_t i = 0; i < n; ++i) {
    const double s = links[i] - (front[i] + rear[i]) * 0.5, w = (rear[i] - front[i]) * (1.0 / pi);
    const double p = w * radii[i] / (s * s), p2 = p * p;
    const double share =
        (run_of[0] + run_of[1] * p) + (run_of[2] + run_of[3] * p) * p2 + (run_of[4] + run_of[5] * p) * (p2 * p2);
    straight[i] = s;
    teeth[i] = w;
    guess[i] = s * share;
    sure[i] = p <= most_run_of ? 1.0 : asked_alone;
  }
}
/// How many links too many the guesses take.
LAYSHAFT_WIDE inline void links_too_many(const double* __restrict straight, const double* __restrict teeth,
                                         const double* __restrict radii, const double* __restrict guess,
                                         double* __restrict excess, double* __restrict sure, std::size_t n) noexcept {
  for (std::size_t i = 0; i < n; ++i) {
    const double slope = radii[i] / guess[i], t = slope * slope, t2 = t * t, t4 = t2 * t2;
    const double low = (arctan_of[0] + arctan_of[1] * t) + (arctan_of[2] + arctan_of[3] * t) * t2;
    const double middle = (arctan_of[4] + arctan_of[5] * t) + (arctan_of[6] + arctan_of[7] * t) * t2;
    const double high = (arctan_of[8] + arctan_of[9] * t) + arctan_of[10] * t2;
    const double angle = slope + slope * (t * (low + (middle + high * t4) * t4));
    excess[i] = (2.0 * guess[i] - straight[i]) + teeth[i] * angle;
    sure[i] = t <= most_arctan_of ? sure[i] : asked_alone;
  }
}
/// The squares of the centre distances, in pitches, after a step of Halley's.
LAYSHAFT_WIDE inline void squares_of_centres(const double* __restrict straight, const double* __restrict teeth,
                                             const double* __restrict radii, const double* __restrict guess,
                                             const double* __restrict excess, double* __restrict square,
                                             double* __restrict sure, std::size_t n) noexcept {
  for (std::size_t i = 0; i < n; ++i) {
    const double wd = teeth[i] * radii[i], radii_square = radii[i] * radii[i];
    const double g = guess[i] * guess[i] + radii_square, rise = 2.0 * g - wd;
    const double step = excess[i] * g * rise / (rise * rise - excess[i] * wd * guess[i]);
    const double run = guess[i] - step;
    square[i] = run * run + radii_square;
    const double told = std::fabs(step) <= most_step * guess[i] ? sure[i] : asked_alone;
    sure[i] = straight[i] > 0.0 ? told : nothing;
  }
}
/// A loop of its own, so that where a compiler keeps errno of a root it keeps it in one place.
LAYSHAFT_WIDE inline void roots_of(const double* __restrict square, double* __restrict root, std::size_t n) noexcept {
  for (std::size_t i = 0; i < n; ++i) root[i] = std::sqrt(square[i]);
}
/// The centre distances in the pitch's unit, where they are told.
LAYSHAFT_WIDE inline void scaled_centres(const double* __restrict centre, const double* __restrict sure,
                                         const double* __restrict touching, const double* __restrict pitch,
                                         double* __restrict out, std::size_t n) noexcept {
  constexpr double greatest = std::numeric_limits<double>::max();
  for (std::size_t i = 0; i < n; ++i) {
    const double length = centre[i] * pitch[i];
    double told = length > 0.0 ? length : nothing;
    told = length <= greatest ? told : nothing;
    told = centre[i] >= touching[i] * (1.0 + loop_near) ? told : asked_alone;
    told = centre[i] >= touching[i] * (1.0 - loop_near) ? told : nothing;
    out[i] = sure[i] == 1.0 ? told : sure[i];
  }
}
/// Nothing, where the teeth are none.
LAYSHAFT_WIDE inline void keep_whole_teeth(const double* __restrict front, const double* __restrict rear,
                                           double* __restrict out, std::size_t n) noexcept {
  constexpr double middle = 0.5 * (Teeth::least + Teeth::greatest), half = 0.5 * (Teeth::greatest - Teeth::least);
  for (std::size_t i = 0; i < n; ++i) {
    const double front_rest = (front[i] + no_fraction) - no_fraction - front[i];
    const double rear_rest = (rear[i] + no_fraction) - no_fraction - rear[i];
    double told = std::fabs(front_rest) + std::fabs(rear_rest) == 0.0 ? out[i] : nothing;
    told = std::fabs(front[i] - middle) <= half ? told : nothing;
    out[i] = std::fabs(rear[i] - middle) <= half ? told : nothing;
  }
}
/// Whether any is to be asked for alone.
LAYSHAFT_WIDE inline bool any_alone(const double* __restrict out, std::size_t n) noexcept {
  long long alone = 0;
  for (std::size_t i = 0; i < n; ++i) alone += out[i] == asked_alone ? 1 : 0;
  return alone != 0;
}

/// The squares of the straight runs, in pitches, for a centre distance.
LAYSHAFT_WIDE inline void squares_of_runs(const double* __restrict centre, const double* __restrict pitch,
                                          const double* __restrict radii, const double* __restrict touching,
                                          double* __restrict square, double* __restrict sure, std::size_t n) noexcept {
  constexpr double greatest = std::numeric_limits<double>::max();
  for (std::size_t i = 0; i < n; ++i) {
    const double pitches = centre[i] / pitch[i];
    square[i] = (pitches - radii[i]) * (pitches + radii[i]);
    double told = pitches >= touching[i] * (1.0 + loop_near) ? 1.0 : asked_alone;
    told = pitches >= touching[i] * (1.0 - loop_near) ? told : nothing;
    told = pitches <= greatest ? told : nothing;
    sure[i] = pitch[i] > 0.0 ? told : nothing;
  }
}
/// The links of the loops.
LAYSHAFT_WIDE inline void links_of_runs(const double* __restrict front, const double* __restrict rear,
                                        const double* __restrict radii, const double* __restrict run,
                                        const double* __restrict sure, double* __restrict out, std::size_t n) noexcept {
  for (std::size_t i = 0; i < n; ++i) {
    const double teeth = (rear[i] - front[i]) * (1.0 / pi);
    const double slope = radii[i] / run[i], t = slope * slope, t2 = t * t, t4 = t2 * t2;
    const double low = (arctan_of[0] + arctan_of[1] * t) + (arctan_of[2] + arctan_of[3] * t) * t2;
    const double middle = (arctan_of[4] + arctan_of[5] * t) + (arctan_of[6] + arctan_of[7] * t) * t2;
    const double high = (arctan_of[8] + arctan_of[9] * t) + arctan_of[10] * t2;
    const double angle = slope + slope * (t * (low + (middle + high * t4) * t4));
    const double links = (2.0 * run[i] + (front[i] + rear[i]) * 0.5) + teeth * angle;
    const double told = t <= most_arctan_of ? links : asked_alone;
    out[i] = sure[i] == 1.0 ? told : sure[i];
  }
}

/// A column of doubles: where it begins, and how many bytes lie from one to the next. No bytes: one stands for all.
struct Column {
  const void* begin;
  std::ptrdiff_t step;
};

/// One after the other, without a copy where they stand so.
[[nodiscard]] inline const double* in_a_row(const Column& column, std::size_t first, std::size_t n,
                                            LoopRow& row) noexcept {
  const char* const begin = static_cast<const char*>(column.begin) + static_cast<std::ptrdiff_t>(first) * column.step;
  if (column.step == static_cast<std::ptrdiff_t>(sizeof(double))) return reinterpret_cast<const double*>(begin);
  if (column.step == 0 && first > 0) return row.data();  // as of the first block
  const std::size_t size = column.step == 0 ? loop_block_size : n;
  for (std::size_t i = 0; i < size; ++i)
    row[i] = *reinterpret_cast<const double*>(begin + static_cast<std::ptrdiff_t>(i) * column.step);
  return row.data();
}

/// A block's rows; what comes in, what is worked out, what goes out.
struct LoopBlock {
  alignas(64) LoopRow pitch, front, rear, last, radii, touching, straight, teeth, run, excess, square, root, sure, out;
};

inline void solve_centres(LoopBlock& block, const double* pitch_mm, const double* front, const double* rear,
                          const double* links, std::size_t n) noexcept {
  LoopBlock& b = block;
  guess_runs(front, rear, links, b.radii.data(), b.straight.data(), b.teeth.data(), b.run.data(), b.sure.data(), n);
  links_too_many(b.straight.data(), b.teeth.data(), b.radii.data(), b.run.data(), b.excess.data(), b.sure.data(), n);
  squares_of_centres(b.straight.data(), b.teeth.data(), b.radii.data(), b.run.data(), b.excess.data(), b.square.data(),
                     b.sure.data(), n);
  roots_of(b.square.data(), b.root.data(), n);
  scaled_centres(b.root.data(), b.sure.data(), b.touching.data(), pitch_mm, b.out.data(), n);
}
inline void solve_links(LoopBlock& block, const double* pitch_mm, const double* front, const double* rear,
                        const double* centre_mm, std::size_t n) noexcept {
  LoopBlock& b = block;
  squares_of_runs(centre_mm, pitch_mm, b.radii.data(), b.touching.data(), b.square.data(), b.sure.data(), n);
  roots_of(b.square.data(), b.root.data(), n);
  links_of_runs(front, rear, b.radii.data(), b.root.data(), b.sure.data(), b.out.data(), n);
}
// A loop knows no scale: millimetres are solved as if they were metres, and no unit's rounding comes in.
[[nodiscard]] inline double centre_alone(double pitch_mm, Teeth front, Teeth rear, double links) noexcept {
  return chain_centre(Length::from_value(pitch_mm), front, rear, links).value();
}
[[nodiscard]] inline double links_alone(double pitch_mm, Teeth front, Teeth rear, double centre_mm) noexcept {
  return chain_links(Length::from_value(pitch_mm), front, rear, Length::from_value(centre_mm));
}

/// Goes through the columns block by block. `in` are pitch in millimetres, front and rear teeth, and what is solved
/// for; `out` may stand where one of them does.
template <class Solve, class Alone>
void each_loop(const std::array<Column, 4>& in, void* out, std::ptrdiff_t out_step, std::size_t size, Solve solve,
               Alone alone) noexcept {
  LoopBlock b;
  for (std::size_t first = 0; first < size; first += loop_block_size) {
    const std::size_t n = std::min(loop_block_size, size - first);
    const double* const pitch = in_a_row(in[0], first, n, b.pitch);
    const double* const front = in_a_row(in[1], first, n, b.front);
    const double* const rear = in_a_row(in[2], first, n, b.rear);
    const double* const last = in_a_row(in[3], first, n, b.last);
    look_up(front, rear, b.radii.data(), b.touching.data(), n);
    solve(b, pitch, front, rear, last, n);
    keep_whole_teeth(front, rear, b.out.data(), n);
    if (any_alone(b.out.data(), n))
      for (std::size_t i = 0; i < n; ++i)
        if (b.out[i] == asked_alone)
          b.out[i] = alone(pitch[i], *Teeth::make(static_cast<int>(front[i])), *Teeth::make(static_cast<int>(rear[i])),
                           last[i]);
    char* const to = static_cast<char*>(out) + static_cast<std::ptrdiff_t>(first) * out_step;
    if (out_step == static_cast<std::ptrdiff_t>(sizeof(double)))
      std::copy_n(b.out.data(), n, reinterpret_cast<double*>(to));
    else
      for (std::size_t i = 0; i < n; ++i)
        *reinterpret_cast<double*>(to + static_cast<std::ptrdiff_t>(i) * out_step) = b.out[i];
  }
}

/// Centre distances in millimetres for links, of columns wherever they lie.
inline void centres_mm(const std::array<Column, 4>& pitch_front_rear_links, void* out, std::ptrdiff_t out_step,
                       std::size_t size) noexcept {
  each_loop(pitch_front_rear_links, out, out_step, size, solve_centres, centre_alone);
}
/// Links for centre distances in millimetres.
inline void links_of_mm(const std::array<Column, 4>& pitch_front_rear_centre, void* out, std::ptrdiff_t out_step,
                        std::size_t size) noexcept {
  each_loop(pitch_front_rear_centre, out, out_step, size, solve_links, links_alone);
}

}  // namespace detail

namespace detail {

/// The error of a column that is neither as long as the results nor one number for all of them.
[[nodiscard]] inline std::optional<Error> wrong_length(std::string_view name, std::size_t size, std::size_t results) {
  if (size == results || size == 1) return std::nullopt;
  return Error::range("length of " + std::string(name), std::to_string(size),
                      results == 1 ? "1" : "1 or " + std::to_string(results) + ", as many as there are results");
}
[[nodiscard]] inline Column column_of(std::span<const double> numbers) noexcept {
  return {numbers.data(), numbers.size() == 1 ? 0 : static_cast<std::ptrdiff_t>(sizeof(double))};
}
template <class Work>
[[nodiscard]] std::optional<Error> each_loop_of(std::span<const double> pitch_mm, std::span<const double> front,
                                                std::span<const double> rear, std::span<const double> last,
                                                std::string_view name, std::span<double> out, Work work) {
  if (auto error = wrong_length("pitch_mm", pitch_mm.size(), out.size())) return error;
  if (auto error = wrong_length("front", front.size(), out.size())) return error;
  if (auto error = wrong_length("rear", rear.size(), out.size())) return error;
  if (auto error = wrong_length(name, last.size(), out.size())) return error;
  work({column_of(pitch_mm), column_of(front), column_of(rear), column_of(last)}, out.data(), sizeof(double),
       out.size());
  return std::nullopt;
}

}  // namespace detail

/// The centre distances in millimetres of many drives, of pitches in millimetres, numbers of teeth, and links, whole or
/// real. Each column is as long as `centre_mm`, which may be one of them, or one number that stands for all. NaN where
/// no loop closes, or a number is out of range.
/// @return none; or a RangeError that names the column of another length.
[[nodiscard]] inline std::optional<Error> try_chain_centres_mm(std::span<const double> pitch_mm,
                                                               std::span<const double> front,
                                                               std::span<const double> rear,
                                                               std::span<const double> links,
                                                               std::span<double> centre_mm) {
  return detail::each_loop_of(pitch_mm, front, rear, links, "links", centre_mm, detail::centres_mm);
}
/// The links, real numbers, of many drives, of pitches and centre distances in millimetres: the inverse.
/// @return as `try_chain_centres_mm`.
[[nodiscard]] inline std::optional<Error> try_chain_links_of_mm(std::span<const double> pitch_mm,
                                                                std::span<const double> front,
                                                                std::span<const double> rear,
                                                                std::span<const double> centre_mm,
                                                                std::span<double> links) {
  return detail::each_loop_of(pitch_mm, front, rear, centre_mm, "centre_mm", links, detail::links_of_mm);
}
/// The centre distances of many drives of one pitch; NaN where no loop closes.
/// @return as `try_chain_centres_mm`.
[[nodiscard]] inline std::optional<Error> try_chain_centres(Length pitch, std::span<const Teeth> front,
                                                            std::span<const Teeth> rear, std::span<const Links> links,
                                                            std::span<Length> centre) {
  if (auto error = detail::wrong_length("front", front.size(), centre.size())) return error;
  if (auto error = detail::wrong_length("rear", rear.size(), centre.size())) return error;
  if (auto error = detail::wrong_length("links", links.size(), centre.size())) return error;
  const double pitch_mm = pitch / units::mm;
  detail::LoopRow of_front, of_rear, of_links, result;
  for (std::size_t first = 0; first < centre.size(); first += detail::loop_block_size) {
    const std::size_t n = std::min(detail::loop_block_size, centre.size() - first);
    const auto copy = [&](const auto& counts, detail::LoopRow& row) {
      for (std::size_t i = 0; i < n; ++i) row[i] = counts[counts.size() == 1 ? 0 : first + i].count();
    };
    copy(front, of_front);
    copy(rear, of_rear);
    copy(links, of_links);
    detail::centres_mm({detail::column_of({&pitch_mm, 1}), detail::column_of({of_front.data(), n}),
                        detail::column_of({of_rear.data(), n}), detail::column_of({of_links.data(), n})},
                       result.data(), sizeof(double), n);
    for (std::size_t i = 0; i < n; ++i) centre[first + i] = result[i] * units::mm;
  }
  return std::nullopt;
}

#if LAYSHAFT_EXCEPTIONS
/// As `try_chain_centres_mm`.
/// @throws RangeError for a column of another length.
inline void chain_centres_mm(std::span<const double> pitch_mm, std::span<const double> front,
                             std::span<const double> rear, std::span<const double> links, std::span<double> centre_mm) {
  if (auto error = try_chain_centres_mm(pitch_mm, front, rear, links, centre_mm)) raise(*std::move(error));
}
/// As `try_chain_links_of_mm`.
/// @throws RangeError for a column of another length.
inline void chain_links_of_mm(std::span<const double> pitch_mm, std::span<const double> front,
                              std::span<const double> rear, std::span<const double> centre_mm,
                              std::span<double> links) {
  if (auto error = try_chain_links_of_mm(pitch_mm, front, rear, centre_mm, links)) raise(*std::move(error));
}
/// As `try_chain_centres`.
/// @throws RangeError for a column of another length.
inline void chain_centres(Length pitch, std::span<const Teeth> front, std::span<const Teeth> rear,
                          std::span<const Links> links, std::span<Length> centre) {
  if (auto error = try_chain_centres(pitch, front, rear, links, centre)) raise(*std::move(error));
}
#endif

}  // namespace layshaft
