// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/decimal.hpp>
#include <layshaft/core/symbol.hpp>
#include <layshaft/show/display.hpp>
#include <layshaft/show/evaluation.hpp>
#include <layshaft/show/formula_text.hpp>

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <string_view>

/// @file
/// A step's symbol and its numbers as people read them. Opt-in.
namespace layshaft {

/// How a working is written.
struct WorkingStyle {
  UnitSystem units = UnitSystem::metric;
  char decimal = '.';             ///< or ','
  std::optional<bool> fold = {};  ///< steps behind their headlines, or plainly; absent: as each form usually is
};

namespace detail {

/// A unit that a step's numbers are shown in.
struct StepUnit {
  double size;
  std::string_view name;
};

/// The unit of a word of the glossary, or its counterpart in US units.
[[nodiscard]] inline StepUnit step_unit(std::string_view word, UnitSystem system) {
  const Word* entry = find_word(word);
  const std::string_view metric = entry ? entry->unit : "";
  const bool us = system == UnitSystem::us;
  if (metric == "mm") return us ? StepUnit{units::inch.value(), "in"} : StepUnit{units::mm.value(), "mm"};
  if (metric == "km") return us ? StepUnit{units::mile.value(), "mile"} : StepUnit{units::km.value(), "km"};
  if (metric == "km/h") return us ? StepUnit{units::mph.value(), "mph"} : StepUnit{units::kmh.value(), "km/h"};
  if (metric == "kg") return us ? StepUnit{units::lb.value(), "lb"} : StepUnit{1.0, "kg"};
  if (metric == "N") return us ? StepUnit{units::lbf.value(), "lbf"} : StepUnit{1.0, "N"};
  if (metric == "kN") return us ? StepUnit{units::lbf.value(), "lbf"} : StepUnit{units::kN.value(), "kN"};
  if (metric == "Nm") return us ? StepUnit{units::lbf_ft.value(), "lbf ft"} : StepUnit{1.0, "Nm"};
  if (metric == "kW") return us ? StepUnit{units::hp.value(), "hp"} : StepUnit{units::kW.value(), "kW"};
  if (metric == "rpm") return {units::rpm.value(), "rpm"};
  if (metric == "deg") return {units::deg.value(), "deg"};
  if (metric == "%") return {0.01, "%"};
  if (metric == "MPa") return {units::MPa.value(), "MPa"};
  for (const std::string_view si : {"s", "m", "m/s2", "m2", "J", "Pa", "kg/m3", "kg/m", "N s/m", "kg m2", "K"})
    if (metric == si) return {1.0, si};
  return {1.0, ""};
}

/// The text of a number with the decimal sign asked for.
[[nodiscard]] inline std::string localised(std::string text, char decimal) {
  std::replace(text.begin(), text.end(), '.', decimal);
  return text;
}

/// The whole exponent of ten at or below a number's size.
[[nodiscard]] inline int decade(double number) {
  return number == 0.0 ? 0 : static_cast<int>(std::floor(std::log10(std::fabs(number))));
}

/// How the numbers of one step are shown: as many decimals as its own uncertainty leaves a meaning to (two digits of
/// the half-width), or six digits where it is exact, without the zeros at the end.
class StepNumbers {
 public:
  StepNumbers(const Step& step, UnitSystem system, char decimal)
      : unit_(step_unit(step.identity().name.word, system)), decimal_(decimal), trim_(step.exact()) {
    const double nominal = step.result().value / unit_.size;
    const double half = std::max(std::fabs(step.result(Corner::low).value / unit_.size - nominal),
                                 std::fabs(step.result(Corner::high).value / unit_.size - nominal));
    constexpr int digits = 6, most = 12;
    decimals_ = std::clamp(trim_ ? digits - 1 - decade(nominal) : 1 - decade(half), 0, most);
    const Dimension dimension = step.result().dimension;
    if (dimension == Dimension::teeth || dimension == Dimension::links) decimals_ = 0;
  }

  [[nodiscard]] const StepUnit& unit() const noexcept { return unit_; }
  /// The digits of a value in SI.
  [[nodiscard]] std::string digits(double value) const {
    return localised(plain(value, unit_.size, decimals_), decimal_);
  }
  /// The digits with which it is put into another step's line, some more than it is shown with: a part of one as a
  /// plain number, since nobody multiplies by per cent.
  [[nodiscard]] std::string put_in(double value, int more) const {
    return localised(plain(value, put_in_size(), put_in_decimals(more)), decimal_);
  }
  [[nodiscard]] std::string_view put_in_unit() const noexcept { return unit_.name == "%" ? "" : unit_.name; }
  /// The value in SI that these digits stand for.
  [[nodiscard]] double read_back(double value, int more) const {
    const std::string text = plain(value, put_in_size(), put_in_decimals(more));
    double number = 0.0;
    read_decimal(text.data(), text.data() + text.size(), number);
    return number * put_in_size();
  }

 private:
  [[nodiscard]] double put_in_size() const noexcept { return unit_.name == "%" ? 1.0 : unit_.size; }
  [[nodiscard]] int put_in_decimals(int more) const noexcept { return decimals_ + more + (unit_.name == "%" ? 2 : 0); }
  [[nodiscard]] std::string plain(double value, double size, int decimals) const {
    std::string text = show_number(value / size, decimals);
    if ((trim_ || decimals > decimals_) && text.find('.') != std::string::npos) {
      text.erase(text.find_last_not_of('0') + 1);
      if (text.ends_with('.')) text.pop_back();
    }
    return text;
  }

  StepUnit unit_;
  char decimal_;
  bool trim_;
  int decimals_;
};

}  // namespace detail

/// What a step's result is, in words: "teeth of the front sprocket, before", "ratio of the gear, 3".
[[nodiscard]] inline std::string meaning_of(const Step& step) {
  const Word* word = find_word(step.identity().name.word);
  std::string meaning = word ? std::string(word->meaning) : step.name();
  if (step.identity().name.index > 0) meaning.append(", ").append(std::to_string(step.identity().name.index));
  switch (step.identity().scope) {
    case Scope::none: break;
    case Scope::base: return meaning.append(", before");
    case Scope::trial: return meaning.append(", after");
    case Scope::front_end: return meaning.append(", at the front end");
    case Scope::rear_end: return meaning.append(", at the rear end");
  }
  return meaning;
}

namespace detail {

/// The logarithmic mean of one is one, and so is the arctan ratio of nothing; set as a fraction either would be nothing
/// over nothing.
template <class ValueOf>
void put_in_limits(ExpressionNode& node, const ValueOf& value_of) {
  for (ExpressionNode& term : node.terms) put_in_limits(term, value_of);
  if ((node.text == "logarithmic_mean" && evaluate(node.terms[0], value_of) == 1.0) ||
      (node.text == "arctan_ratio" && evaluate(node.terms[0], value_of) == 0.0))
    node = {ExpressionNode::Kind::number, "1.0", {}, {}};
}

/// The lines of one step in one kind of text: "D", "d_r + 2 * H * b", "457 mm + 2 * 108 mm * 1", "673 mm".
template <class Setting>
class StepLines {
 public:
  StepLines(const Working& working, const Step& step, const WorkingStyle& style)
      : working_(working), step_(step), style_(style), numbers_(step, style.units, style.decimal) {}

  [[nodiscard]] std::string symbol() const { return Setting::symbol(symbol_of(step_)); }
  /// The result at a corner, with its unit.
  [[nodiscard]] std::string result(Corner corner) const {
    return Setting::number(numbers_.digits(step_.result(corner).value), numbers_.unit().name);
  }
  /// The formula in the symbols of what was put in; empty of a step that is not computed.
  [[nodiscard]] std::string formula(Corner corner) const {
    return set(corner, [&](const Step& from, double) { return Setting::symbol(symbol_of(from)); });
  }
  /// The same with the numbers put in, each with as many digits as it takes to give the result as shown.
  [[nodiscard]] std::string numbers(Corner corner) const {
    const auto body = expression(corner);
    if (!body) return {};
    const std::string wanted = numbers_.digits(step_.result(corner).value);
    constexpr int most = 10;
    int more = 0;
    const auto rounded = [&](std::string_view name) {
      return with_parameter(corner, name, [&](const Step& from, double value) {
        return StepNumbers(from, style_.units, style_.decimal).read_back(value, more);
      });
    };
    while (more < most && numbers_.digits(evaluate(*body, rounded)) != wanted) ++more;
    return set(corner, [&](const Step& from, double value) {
      const StepNumbers numbers(from, style_.units, style_.decimal);
      const std::string digits = numbers.put_in(value, more);
      const std::string text = Setting::number(digits, numbers.put_in_unit());
      return digits.starts_with('-') ? Setting::bracket(text) : text;
    });
  }

 private:
  [[nodiscard]] const StepRun& run(Corner corner) const { return step_.run(corner) ? *step_.run(corner) : step_.run(); }
  /// Calls `function(step, value)` with the step behind a parameter of the formula.
  template <class Function>
  [[nodiscard]] auto with_parameter(Corner corner, std::string_view name, const Function& function) const {
    const auto names = parameter_names(run(corner).formula->parameters);
    const auto place = static_cast<std::size_t>(std::find(names.begin(), names.end(), name) - names.begin());
    const Step& from = working_.steps()[static_cast<std::size_t>(run(corner).from[place])];
    return function(from, from.result(corner).value);
  }
  /// The formula with all that it calls written out.
  [[nodiscard]] std::optional<ExpressionNode> expression(Corner corner) const {
    if (step_.kind() != StepKind::computed) return std::nullopt;
    ExpressionNode body = written_out(*try_read_expression(run(corner).formula->body));
    put_in_limits(body, [&](std::string_view name) {
      return with_parameter(corner, name, [](const Step&, double value) { return value; });
    });
    return body;
  }
  template <class SetStep>
  [[nodiscard]] std::string set(Corner corner, const SetStep& set_step) const {
    const auto body = expression(corner);
    if (!body) return {};
    const auto names = [&](std::string_view name) { return with_parameter(corner, name, set_step); };
    return Typesetter<Setting, decltype(names)>(names, style_.decimal).set(*body);
  }

  const Working& working_;
  const Step& step_;
  WorkingStyle style_;
  StepNumbers numbers_;
};

}  // namespace detail

}  // namespace layshaft
