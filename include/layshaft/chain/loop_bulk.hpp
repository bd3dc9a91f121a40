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
#include <cstring>  // memcpy
#include <limits>
#include <optional>
#include <span>
#include <string>
#include <string_view>

/// @file
/// The closed loop of many drives at once: centre distances for links, and links for centre distances.
///
/// Columns of plain numbers in, a column out, with the unit in the name of each. A number is the same to the bit
/// wherever in whatever column it stands, and whichever processor works it out. Error: as of `chain_centre`, within 2.8
/// ulp, and of `chain_links`, within 2.2 ulp. What is no whole number of teeth, is out of range, or closes no loop,
/// gives NaN. Several threads may each work on a part of a column.
///
/// The equation is that of `chain_centre`. A polynomial is the first guess at the straight run, right to 1e-7 of it for
/// the drives of motorcycles, so that a single step with the second derivative (Chebyshev's), which triples the digits,
/// reaches the last bit. It asks for one arctangent of a small angle, by a polynomial as well. The few drives beyond
/// that, and those whose pitch circles come near to touching, are left to `chain_centre`. Built with -fno-math-errno
/// the roots are wide as well.
namespace layshaft {

namespace detail {

/// So many drives are looked at together: all that is worked out of them stays in the nearest cache, and a column
/// beyond it comes in as it is read, in small portions.
inline constexpr std::size_t loop_block_size = 64;
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
/// By how much more than its teeth over two pi the pitch radii of two sprockets may come to: what is further apart does
/// not touch.
inline constexpr double beyond_teeth = 0.2;

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
/// The longest step, over the run, that is sure to end at the last bit: where the arctangent is told, a step leaves
/// less than an eighth of its cube.
inline constexpr double most_step = 8e-6;

/// A double from here on has no room for a fraction, and a small whole number added to it stands in its last bits.
inline constexpr double no_fraction = 4503599627370496.0;

/// Where teeth stand among the pitch radii: what is no number of teeth finds some radius or none.
/// @return whether each is a whole number that has a place
LAYSHAFT_WIDE inline bool places_of(const double* __restrict teeth, std::uint64_t* __restrict place,
                                    std::size_t n) noexcept {
  constexpr auto zero = std::bit_cast<std::uint64_t>(no_fraction);
  std::uint64_t odd = 0;
  for (std::size_t i = 0; i < n; ++i) {
    const double whole = teeth[i] + no_fraction, rest = (whole - no_fraction) - teeth[i];
    std::uint64_t at, fraction;  // as by bit_cast, which g++ does not make part of this loop at -O2
    std::memcpy(&at, &whole, sizeof at);
    std::memcpy(&fraction, &rest, sizeof fraction);
    at ^= zero;
    odd |= fraction | (at / pitch_radii_size);
    place[i] = at % pitch_radii_size;
  }
  return odd == 0;
}
/// The difference of the pitch radii, D. No processor looks up several at once faster.
inline void look_up(const std::uint64_t* __restrict front, const std::uint64_t* __restrict rear,
                    double* __restrict radii, std::size_t n) noexcept {
  const double* const radius = pitch_radii();
  for (std::size_t i = 0; i < n; ++i) radii[i] = radius[rear[i]] - radius[front[i]];
}

// What is worked out of a block, row by row. S is the straight links, W the difference of the teeth over π. Each loop
// is short, so that a processor can have many numbers on their way at once.

/// S and W; a first guess at the straight runs, in pitches.
LAYSHAFT_WIDE inline void guess_runs(const double* __restrict front, const double* __restrict rear,
                                     const double* __restrict links, const double* __restrict radii,
                                     double* __restrict straight, double* __restrict teeth, double* __restrict guess,
                                     std::size_t n) noexcept {
  for (std::size_t i = 0; i < n; ++i) {
    const double s = links[i] - (front[i] + rear[i]) * 0.5, w = (rear[i] - front[i]) * (1.0 / pi);
    const double p = w * radii[i] / (s * s), p2 = p * p;
    straight[i] = s;
    teeth[i] = w;
    guess[i] =
        s * ((run_of[0] + run_of[1] * p) + (run_of[2] + run_of[3] * p) * p2 + (run_of[4] + run_of[5] * p) * (p2 * p2));
  }
}
/// The slopes of the guessed runs; for a step from them, the first derivative of the run by the links, and half the
/// second over the first. One division serves all.
LAYSHAFT_WIDE inline void slopes_of(const double* __restrict teeth, const double* __restrict radii,
                                    const double* __restrict guess, double* __restrict slope, double* __restrict first,
                                    double* __restrict second, std::size_t n) noexcept {
  for (std::size_t i = 0; i < n; ++i) {
    const double square = guess[i] * guess[i] + radii[i] * radii[i], wd = teeth[i] * radii[i];
    const double rise = 2.0 * square - wd, both = 1.0 / (guess[i] * rise), per_rise = both * guess[i];
    slope[i] = radii[i] * (both * rise);
    first[i] = square * per_rise;
    second[i] = (wd * per_rise) * (guess[i] * per_rise);
  }
}
/// The angles of which the slopes are the tangents.
LAYSHAFT_WIDE inline void angles_of(const double* __restrict slope, double* __restrict angle, std::size_t n) noexcept {
  for (std::size_t i = 0; i < n; ++i) {
    const double t = slope[i] * slope[i], t2 = t * t, t4 = t2 * t2;
    const double low = (arctan_of[0] + arctan_of[1] * t) + (arctan_of[2] + arctan_of[3] * t) * t2;
    const double middle = (arctan_of[4] + arctan_of[5] * t) + (arctan_of[6] + arctan_of[7] * t) * t2;
    const double high = (arctan_of[8] + arctan_of[9] * t) + arctan_of[10] * t2;
    angle[i] = slope[i] + slope[i] * (t * (low + (middle + high * t4) * t4));
  }
}
/// The squares of the centre distances, in pitches; `asked_alone` where a drive is not one of the many.
LAYSHAFT_WIDE inline void squares_of_centres(const double* __restrict front, const double* __restrict rear,
                                             const double* __restrict straight, const double* __restrict teeth,
                                             const double* __restrict radii, const double* __restrict guess,
                                             const double* __restrict first, const double* __restrict second,
                                             const double* __restrict angle, double* __restrict square,
                                             std::size_t n) noexcept {
  for (std::size_t i = 0; i < n; ++i) {
    const double excess = (2.0 * guess[i] - straight[i]) + teeth[i] * angle[i];  // links too many
    const double newton = excess * first[i], step = newton + newton * (excess * second[i]);
    const double run = guess[i] - step, radii_square = radii[i] * radii[i], sum = run * run + radii_square;
    const double touching = (front[i] + rear[i]) * (0.5 / pi) + beyond_teeth, apart = touching * touching;
    const double straight_enough = radii_square * (1.0 + 1.0 / most_arctan_of);
    const double least = apart > straight_enough ? apart : straight_enough;
    const bool told = (sum >= least) & (std::fabs(step) <= most_step * guess[i]);
    square[i] = told ? sum : asked_alone;
  }
}
/// A loop of its own, so that where a compiler keeps errno of a root it keeps it in one place.
LAYSHAFT_WIDE inline void roots_of(const double* __restrict square, double* __restrict root, std::size_t n) noexcept {
  for (std::size_t i = 0; i < n; ++i) root[i] = std::sqrt(square[i]);
}
/// The centre distances in the pitch's unit.
/// @return whether any is to be asked for alone
LAYSHAFT_WIDE inline bool scaled_centres(const double* __restrict centre, const double* __restrict pitch,
                                         double* __restrict out, std::size_t n) noexcept {
  constexpr double greatest = std::numeric_limits<double>::max();
  long long alone = 0;
  for (std::size_t i = 0; i < n; ++i) {
    const double length = centre[i] * pitch[i];
    const bool told = (length > 0.0) & (length <= greatest);
    out[i] = told ? length : asked_alone;
    alone += told ? 0 : 1;
  }
  return alone != 0;
}

/// The squares of the straight runs, in pitches, for a centre distance; `asked_alone` as above.
LAYSHAFT_WIDE inline void squares_of_runs(const double* __restrict front, const double* __restrict rear,
                                          const double* __restrict centre, const double* __restrict pitch,
                                          const double* __restrict radii, double* __restrict square,
                                          std::size_t n) noexcept {
  constexpr double greatest = std::numeric_limits<double>::max();
  for (std::size_t i = 0; i < n; ++i) {
    const double pitches = centre[i] / pitch[i];
    const double product = (pitches - radii[i]) * (pitches + radii[i]);
    const double touching = (front[i] + rear[i]) * (0.5 / pi) + beyond_teeth;
    const double straight_enough = radii[i] * radii[i] * (1.0 / most_arctan_of);
    const bool told = (pitches >= touching) & (product >= straight_enough) & (product <= greatest) & (pitch[i] > 0.0);
    square[i] = told ? product : asked_alone;
  }
}
LAYSHAFT_WIDE inline void slopes_of_runs(const double* __restrict radii, const double* __restrict run,
                                         double* __restrict slope, std::size_t n) noexcept {
  for (std::size_t i = 0; i < n; ++i) slope[i] = radii[i] / run[i];
}
/// The links of the loops.
/// @return whether any is to be asked for alone
LAYSHAFT_WIDE inline bool links_of_runs(const double* __restrict front, const double* __restrict rear,
                                        const double* __restrict run, const double* __restrict angle,
                                        double* __restrict out, std::size_t n) noexcept {
  long long alone = 0;
  for (std::size_t i = 0; i < n; ++i) {
    const double w = (rear[i] - front[i]) * (1.0 / pi);
    const double links = (2.0 * run[i] + (front[i] + rear[i]) * 0.5) + w * angle[i];
    const bool told = run[i] > 0.0;
    out[i] = told ? links : asked_alone;
    alone += told ? 0 : 1;
  }
  return alone != 0;
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
  alignas(64) LoopRow pitch, front, rear, last, radii, straight, teeth, guess, slope, first, second, angle, square,
      root, out;
  alignas(64) std::array<std::uint64_t, loop_block_size> front_place, rear_place;
};

/// @return whether any is to be asked for alone
inline bool solve_centres(LoopBlock& b, const double* pitch_mm, const double* front, const double* rear,
                          const double* links, std::size_t n) noexcept {
  guess_runs(front, rear, links, b.radii.data(), b.straight.data(), b.teeth.data(), b.guess.data(), n);
  slopes_of(b.teeth.data(), b.radii.data(), b.guess.data(), b.slope.data(), b.first.data(), b.second.data(), n);
  angles_of(b.slope.data(), b.angle.data(), n);
  squares_of_centres(front, rear, b.straight.data(), b.teeth.data(), b.radii.data(), b.guess.data(), b.first.data(),
                     b.second.data(), b.angle.data(), b.square.data(), n);
  roots_of(b.square.data(), b.root.data(), n);
  return scaled_centres(b.root.data(), pitch_mm, b.out.data(), n);
}
inline bool solve_links(LoopBlock& b, const double* pitch_mm, const double* front, const double* rear,
                        const double* centre_mm, std::size_t n) noexcept {
  squares_of_runs(front, rear, centre_mm, pitch_mm, b.radii.data(), b.square.data(), n);
  roots_of(b.square.data(), b.root.data(), n);
  slopes_of_runs(b.radii.data(), b.root.data(), b.slope.data(), n);
  angles_of(b.slope.data(), b.angle.data(), n);
  return links_of_runs(front, rear, b.root.data(), b.angle.data(), b.out.data(), n);
}
// A loop knows no scale: millimetres are solved as if they were metres, and no unit's rounding comes in.
[[nodiscard]] inline double centre_alone(double pitch_mm, Teeth front, Teeth rear, double links) noexcept {
  return chain_centre(Length::from_value(pitch_mm), front, rear, links).value();
}
[[nodiscard]] inline double links_alone(double pitch_mm, Teeth front, Teeth rear, double centre_mm) noexcept {
  return chain_links(Length::from_value(pitch_mm), front, rear, Length::from_value(centre_mm));
}

/// The teeth that a number counts, where it counts any.
[[nodiscard]] inline std::optional<Teeth> whole_teeth(double teeth) noexcept {
  if (!(teeth >= Teeth::least && teeth <= Teeth::greatest)) return std::nullopt;
  const int whole = static_cast<int>(teeth);
  return whole == teeth ? std::optional(*Teeth::make(whole)) : std::nullopt;
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
    const bool front_whole = places_of(front, b.front_place.data(), n);
    const bool rear_whole = places_of(rear, b.rear_place.data(), n);
    look_up(b.front_place.data(), b.rear_place.data(), b.radii.data(), n);
    const bool any_alone = solve(b, pitch, front, rear, last, n);
    const bool all_whole = front_whole && rear_whole;
    if (any_alone || !all_whole)
      for (std::size_t i = 0; i < n; ++i) {
        if (all_whole && b.out[i] != asked_alone) continue;
        const auto front_teeth = whole_teeth(front[i]), rear_teeth = whole_teeth(rear[i]);
        if (!front_teeth || !rear_teeth)
          b.out[i] = nothing;
        else if (b.out[i] == asked_alone)
          b.out[i] = alone(pitch[i], *front_teeth, *rear_teeth, last[i]);
      }
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
