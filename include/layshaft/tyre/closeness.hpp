// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/band.hpp>
#include <layshaft/core/checks.hpp>
#include <layshaft/core/formula.hpp>
#include <layshaft/core/math.hpp>
#include <layshaft/core/result.hpp>
#include <layshaft/core/source.hpp>
#include <layshaft/core/units.hpp>
#include <layshaft/core/watch.hpp>
#include <layshaft/tyre/code_designated.hpp>
#include <layshaft/tyre/rim_code.hpp>
#include <layshaft/tyre/rolling.hpp>
#include <layshaft/tyre/size.hpp>
#include <layshaft/tyre/two_tyres.hpp>

#include <algorithm>
#include <cmath>     // llround, abs
#include <iterator>  // std::size of the rim codes
#include <string>
#include <string_view>
#include <tuple>  // compared in order: nearness, width, height
#include <utility>
#include <vector>

/// @file
/// Which sizes for a rim roll nearly as far as the stock tyre. A size that could be is no tyre that is made: look for
/// it in the shops, and hold what is found against fitness.hpp.
namespace layshaft {

/// The aspect ratios that motorcycle tyres usually have. Common practice, no source.
inline constexpr int usual_aspect_ratios[] = {45, 50, 55, 60, 65, 70, 75, 80, 85, 90, 100};

/// A size, and what it does to the circumference: nominal (both tyres with the same rolling factor), and the ends over
/// the causes that the two tyres do not share.
struct CloseSize {
  TyreSize tyre;
  Band<double> circumference_change;

  friend constexpr bool operator==(const CloseSize&, const CloseSize&) noexcept = default;
};

namespace detail {

/// The change of circumference with the causes at these corners, for whoever watches.
template <class Watch>
[[nodiscard]] constexpr auto circumference_change_at(Watch watch, const TyreSize& base, const TyreSize& trial,
                                                     const TwoTyreCorners& at) {
  const auto before =
      circumference_at(watch.on(Scope::base), "circumference", base, Length(), at.base_size, at.base_rolling);
  const auto after =
      circumference_at(watch.on(Scope::trial), "circumference", trial, Length(), at.trial_size, at.trial_rolling);
  return watch.step(formula::circumference_change{}, before, after);
}

/// Gathers the sizes that lie near enough.
class ClosenessSearch {
 public:
  ClosenessSearch(const TyreSize& stock, std::string_view rim, double within)
      : stock_(stock), behind_(sign_of(stock.construction())), within_(within) {
    behind_.append(rim);
  }

  void try_size(std::string section) {
    const Result<TyreSize> size = TyreSize::make(section.append(behind_), stock_.use());
    if (!size) return;  // not on this rim
    const double change = circumference_change_at(Unwatched(), stock_, *size, TwoTyreCorners());
    if (!(std::abs(change) <= within_ + rounding)) return;
    if (std::any_of(found_.begin(), found_.end(), [&](const CloseSize& one) { return one.tyre == *size; })) return;
    found_.push_back({*size, over_runs(two_tyre_corners(stock_, *size), [&](const TwoTyreCorners& at) {
                        return circumference_change_at(Unwatched(), stock_, *size, at);
                      })});
  }

  /// All that were found, the nearest first, and of equally near ones the narrowest.
  [[nodiscard]] std::vector<CloseSize> sorted() && {
    const auto key = [](const CloseSize& one) {
      const long long nearness = std::llround(std::abs(one.circumference_change.nominal) / rounding);
      return std::tuple(nearness, one.tyre.section_width().value(), static_cast<int>(one.tyre.notation()),
                        one.tyre.designation());
    };
    std::sort(found_.begin(), found_.end(), [&](const CloseSize& a, const CloseSize& b) { return key(a) < key(b); });
    return std::move(found_);
  }

 private:
  static constexpr double rounding = 1e-12;  // 120/60 and 80/90 are both 72 mm high, computed

  [[nodiscard]] static std::string_view sign_of(TyreConstruction construction) noexcept {
    switch (construction) {
      case TyreConstruction::diagonal: return "-";
      case TyreConstruction::bias_belted: return "B";
      case TyreConstruction::radial: break;
    }
    return "R";
  }

  TyreSize stock_;
  std::string behind_;  // what stands behind the section: construction and rim
  double within_;
  std::vector<CloseSize> found_;
};

}  // namespace detail

/// The sizes for a rim of this code, built like the stock tyre and for the same use, whose nominal circumference lies
/// within this fraction of the stock tyre's, both by the same rolling factor: metric widths of 50 to 400 mm at the
/// usual aspect ratios and the stock tyre's own, and the sections of the code-designated tables. The nearest first, of
/// equally near ones the narrowest. Or a RangeError where the code is not in use, or the fraction is not 0 to 0.5.
///
/// Of a size there is only what decides its dimensions: no marks, so that the stock tyre's own size is among them, with
/// no change at all, where it is metric or listed and the rim is its own. This allocates, like any search.
[[nodiscard]] inline Result<std::vector<CloseSize>> try_closest_sizes(const TyreSize& stock, double rim_code,
                                                                      double within) {
  if (auto rim = try_rim_diameter(rim_code); !rim) return rim.error();
  if (auto error = detail::outside("within", within, 0.0, 0.5)) return *std::move(error);
  detail::ClosenessSearch search(stock, find_rim_code(rim_code)->name, within);
  std::vector<int> aspect_ratios(std::begin(usual_aspect_ratios), std::end(usual_aspect_ratios));
  if (stock.notation() == TyreNotation::metric) aspect_ratios.push_back(static_cast<int>(*stock.aspect_ratio()));
  for (int width = 50; width <= 400; width += 5)
    for (const int aspect_ratio : aspect_ratios)
      search.try_size(std::to_string(width).append("/").append(std::to_string(aspect_ratio)));
  for (const CodeDesignatedTyre& row : code_designated_tyres) search.try_size(std::string(row.section));
  return std::move(search).sorted();
}
/// The same for the stock tyre's own rim; or an error where that has no code, which is a cycle's.
[[nodiscard]] inline Result<std::vector<CloseSize>> try_closest_sizes(const TyreSize& stock, double within) {
  const std::optional<double> rim_code = stock.rim_code();
  if (!rim_code) return Error::value("a cycle tyre's rim has no code by which to look for other sizes");
  return try_closest_sizes(stock, *rim_code, within);
}
#if LAYSHAFT_EXCEPTIONS
/// @throws RangeError as `try_closest_sizes` says.
[[nodiscard]] inline std::vector<CloseSize> closest_sizes(const TyreSize& stock, double rim_code, double within) {
  return try_closest_sizes(stock, rim_code, within).value();
}
/// @throws Error or RangeError as `try_closest_sizes` says.
[[nodiscard]] inline std::vector<CloseSize> closest_sizes(const TyreSize& stock, double within) {
  return try_closest_sizes(stock, within).value();
}
#endif

}  // namespace layshaft
