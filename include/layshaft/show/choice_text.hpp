// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/choose/choose.hpp>
#include <layshaft/show/display.hpp>

#include <cmath>
#include <string>
#include <string_view>

/// @file
/// A choice in words: why a set-up stands where it does, and what would have to give way. Opt-in.
namespace layshaft {

namespace detail {

[[nodiscard]] inline Amount amount_of(Measure measure, double value) {
  Amount amount = Amount::number(value);
  amount.dimension = measure_row(measure).dimension;
  return amount;
}
/// "engine speed at 90.0 km/h in gear 6"
[[nodiscard]] inline std::string name_of(const Measured& measured, UnitSystem units) {
  std::string name(to_string(measured.what));
  if (measured.speed) name += " at " + show(*measured.speed, units);
  if (measured.gear) name += " in gear " + std::to_string(*measured.gear);
  return name;
}
/// A value of a measure with the ends of its band, where they show another number; changes carry their sign, and whole
/// numbers no decimals.
[[nodiscard]] inline std::string show_measure(Measure measure, const Band<double>& value, UnitSystem units) {
  const Dimension dimension = measure_row(measure).dimension;
  if (dimension == Dimension::fraction) {
    if (to_string(measure).ends_with("change")) return show_percent(value);
    const auto percent = [](double share) { return show_number(100.0 * share, 1); };
    return with_ends(percent(value.low), percent(value.nominal), percent(value.high), "%");
  }
  if (dimension == Dimension::number) {
    const auto whole = [](double number) { return number == std::floor(number); };
    return show(value, whole(value.low) && whole(value.nominal) && whole(value.high) ? 0 : 2);
  }
  const auto text = [&](double end) { return show(amount_of(measure, end), units); };
  const auto number = [&](double end) { return text(end).substr(0, text(end).find(' ')); };
  const std::string nominal = text(value.nominal);
  return with_ends(number(value.low), number(value.nominal), number(value.high), nominal.substr(nominal.find(' ') + 1));
}
[[nodiscard]] inline std::string show_measure(Measure measure, double value, UnitSystem units) {
  return show_measure(measure, Band<double>::exactly(value), units);
}
[[nodiscard]] inline double loss_of(const Wish& wish, double value) { return Study::loss(wish, value); }

/// "cost 45.0, the least there is"
[[nodiscard]] inline std::string fares(const WishTold& told, UnitSystem units) {
  const Measure what = told.wish.measured.what;
  const bool at = told.wish.measured.speed || told.wish.measured.gear;
  std::string text = name_of(told.wish.measured, units) + (at ? ": " : " ") + show_measure(what, told.value, units);
  if (told.wish.target) text += " for a wished " + show_measure(what, told.wish.target->value, units);
  if (!told.best) return text;
  if (told.wish.want == Want::less) return text + ", the least of all";
  if (told.wish.want == Want::more) return text + ", the most of all";
  return text + ", the nearest of all";
}
/// The wishes in which one is better than the next, or worse: "cost (45.0 against 60.0)".
[[nodiscard]] inline std::string against_next(const Reason& reason, bool better, UnitSystem units) {
  std::string list;
  for (const WishTold& told : reason.wishes) {
    const double own = loss_of(told.wish, told.value.nominal), other = loss_of(told.wish, *told.next);
    if (better ? !(own < other) : !(other < own)) continue;
    const Measure what = told.wish.measured.what;
    if (!list.empty()) list += ", ";
    list += name_of(told.wish.measured, units) + " (" + show_measure(what, told.value.nominal, units) + " against " +
            show_measure(what, *told.next, units) + ")";
  }
  return list;
}

}  // namespace detail

/// Why a set-up stands where it does: how each wish fares, and what it gains and gives up against the next one.
[[nodiscard]] inline std::string sentence(const Reason& reason, UnitSystem units = UnitSystem::metric) {
  if (reason.wishes.empty()) return {};
  std::string text;
  for (const WishTold& told : reason.wishes) text += (text.empty() ? "" : "; ") + detail::fares(told, units);
  text += ".";
  if (!reason.wishes.front().next) return text;
  const std::string gains = detail::against_next(reason, true, units);
  const std::string loses = detail::against_next(reason, false, units);
  if (!gains.empty()) text += " Against the next it gains in " + gains + (loses.empty() ? "." : "");
  if (!loses.empty()) text += (gains.empty() ? " Against the next it" : ", and") + (" gives up in " + loses) + ".";
  return text;
}

/// What would have to give way: "Let rear teeth be 52 instead of at most 48."
[[nodiscard]] inline std::string sentence(const Relaxation& relaxation, UnitSystem units = UnitSystem::metric) {
  std::string text;
  for (const RelaxedLimit& one : relaxation.limits) {
    const Measure what = one.limit.measured.what;
    const double least = one.limit.least ? one.limit.least->value - one.by : 0.0;
    const double most = one.limit.most ? one.limit.most->value + one.by : 0.0;
    text += (text.empty() ? "Let " : ", and ") + detail::name_of(one.limit.measured, units) + " be ";
    if (one.limit.least)
      text += "down to " + detail::show_measure(what, least, units) + " instead of at least " +
              detail::show_measure(what, one.limit.least->value, units);
    if (one.limit.least && one.limit.most) text += ", or ";
    if (one.limit.most)
      text += "up to " + detail::show_measure(what, most, units) + " instead of at most " +
              detail::show_measure(what, one.limit.most->value, units);
  }
  return text + ".";
}

}  // namespace layshaft
