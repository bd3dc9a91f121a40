// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/working.hpp>

#include <algorithm>
#include <cassert>
#include <string>
#include <utility>

/// @file
/// Who watches a calculation and writes down each step. Opt-in.
namespace layshaft {

namespace detail {
[[nodiscard]] inline Amount amount_of(double number) { return Amount::number(number); }
template <class Quantity>
[[nodiscard]] Amount amount_of(Quantity quantity) {
  return Amount(quantity);
}
}  // namespace detail

/// Records one run. It hands out watches, which calculations take by value.
class Recorder {
 public:
  /// A value, and the step that it is the result of.
  template <class Quantity>
  struct Value {
    Quantity value;
    int step;
  };

  /// Has the same functions as `Unwatched` (core/watch.hpp), on values that know their step.
  class Watch {
   public:
    [[nodiscard]] Watch on(Scope scope) const noexcept { return Watch(*recorder_, scope); }

    template <class Quantity>
    [[nodiscard]] Value<Quantity> given(ValueName name, Quantity value, const Source& source = sources::stated) const {
      return put(StepKind::given, name, detail::apart(value), source, {}, {});
    }
    template <class Quantity>
    [[nodiscard]] Value<Quantity> looked_up(ValueName name, Quantity value, std::string_view row,
                                            const Source& source) const {
      return put(StepKind::looked_up, name, detail::apart(value), source, row, {});
    }
    template <class Formula, class... Quantities>
    [[nodiscard]] auto step(Formula formula, const Value<Quantities>&... values) const {
      return step(ValueName(Formula::about.name), formula, values...);
    }
    template <class Formula, class... Quantities>
    [[nodiscard]] auto step(ValueName name, Formula, const Value<Quantities>&... values) const {
      return put(StepKind::computed, name, detail::result_of<Formula>(values.value...), Formula::about.source, {},
                 run_of(&Formula::about, values...));
    }
    template <class Quantity, class Target, class LeftSide>
    [[nodiscard]] Value<Quantity> solved(ValueName name, Quantity value, const Value<Target>& target,
                                         LeftSide left_side) const {
      const auto solution =
          put(StepKind::solved, name, detail::apart(value), sources::definition, {}, run_of(nullptr, target));
      const auto reached = left_side(solution);  // leaves its steps behind the solution, as the proof of it
      recorder_->prove(solution.step, reached.step,
                       detail::amount_of(reached.value).value - detail::amount_of(target.value).value);
      return solution;
    }
    template <class Quantity, class Others, class... Quantities>
    [[nodiscard]] Value<Quantity> chosen(ValueName name, Quantity value, std::string_view rule, Others others,
                                         const Value<Quantities>&... values) const {
      StepRun run = run_of(nullptr, values...);
      for (const auto& other : others()) run.others.push_back(detail::amount_of(other));
      return put(StepKind::chosen, name, value, sources::definition, rule, std::move(run));
    }
    template <class Quantity, class Calculation>
    [[nodiscard]] Value<Quantity> known([[maybe_unused]] Quantity value, const Calculation& calculation) const {
      const Value<Quantity> again = calculation();
      assert(again.value == value);
      return again;
    }
    template <class Quantity>
    [[nodiscard]] static Quantity plain(const Value<Quantity>& value) noexcept {
      return value.value;
    }

   private:
    friend class Recorder;
    Watch(Recorder& recorder, Scope scope) noexcept : recorder_(&recorder), scope_(scope) {}

    template <class... Quantities>
    [[nodiscard]] static StepRun run_of(const Formula* formula, const Value<Quantities>&... values) {
      StepRun run;
      run.formula = formula;
      run.from = {values.step...};
      return run;
    }
    template <class Quantity>
    [[nodiscard]] Value<Quantity> put(StepKind kind, ValueName name, Quantity value, const Source& source,
                                      std::string_view detail, StepRun run) const {
      run.result = detail::amount_of(value);
      return {value, recorder_->put({kind, {name, scope_}, source, detail, std::move(run)})};
    }

    Recorder* recorder_;
    Scope scope_;
  };

  [[nodiscard]] Watch watch() noexcept { return Watch(*this, Scope::none); }
  [[nodiscard]] const std::vector<RecordedStep>& steps() const noexcept { return steps_; }
  /// The steps that fed a result, and what proves those that were solved; all others left out.
  [[nodiscard]] Recording recording(int result) const {
    std::vector<bool> told(steps_.size());
    mark(result, told);
    std::vector<int> places(steps_.size());
    Recording recording;
    for (std::size_t i = 0; i < steps_.size(); ++i) {
      places[i] = static_cast<int>(recording.steps.size());
      if (told[i]) recording.steps.push_back(steps_[i]);
    }
    const auto moved = [&](int place) { return places[static_cast<std::size_t>(place)]; };
    for (RecordedStep& step : recording.steps) {
      for (int& from : step.run.from) from = moved(from);
      if (step.run.reached >= 0) step.run.reached = moved(step.run.reached);
    }
    recording.result = moved(result);
    return recording;
  }

 private:
  /// The place of the step; one that was recorded before, from the same steps, keeps its place.
  [[nodiscard]] int put(RecordedStep step) {
    const auto known = std::find_if(steps_.begin(), steps_.end(), [&](const RecordedStep& one) {
      return one.identity == step.identity && one.kind == step.kind && one.run.result == step.run.result;
    });
    if (known != steps_.end()) return static_cast<int>(known - steps_.begin());
    assert(std::none_of(steps_.begin(), steps_.end(),
                        [&](const RecordedStep& one) { return one.identity == step.identity; }));
    steps_.push_back(std::move(step));
    return static_cast<int>(steps_.size()) - 1;
  }

  void mark(int place, std::vector<bool>& told) const {
    if (told[static_cast<std::size_t>(place)]) return;
    told[static_cast<std::size_t>(place)] = true;
    const StepRun& run = steps_[static_cast<std::size_t>(place)].run;
    for (const int from : run.from) mark(from, told);
    if (run.reached >= 0) mark(run.reached, told);
  }
  /// Puts down what a solved step's equation comes to.
  void prove(int solution, int reached, double residual) {
    StepRun& run = steps_[static_cast<std::size_t>(solution)].run;
    run.reached = reached;
    run.residual = residual;
    run.formula = steps_[static_cast<std::size_t>(reached)].run.formula;
  }

  std::vector<RecordedStep> steps_;
};

/// Which steps a working tells.
enum class Told {
  what_fed_the_result,
  everything,  ///< also what stands beside it for comparison
};

/// The working of a calculation that is run once at each of a list of corners, of which the first is nominal:
/// `calculation(watch, corner)`. The runs that give the least and the greatest result stand beside the nominal one, so
/// that the ends are those of `over_runs` with the same corners.
template <class Runs, class Calculation>
[[nodiscard]] Working explain_over(std::string title, const Runs& runs, Calculation calculation,
                                   Told told = Told::what_fed_the_result) {
  Recording nominal, low, high;
  double least = 0.0, greatest = 0.0;
  for (const auto& run : runs) {
    Recorder recorder;
    const auto value = calculation(recorder.watch(), run);
    const double result = detail::amount_of(value.value).value;
    const bool first = nominal.steps.empty();
    if (!first && result >= least && result <= greatest) continue;
    Recording recording =
        told == Told::everything ? Recording{recorder.steps(), value.step} : recorder.recording(value.step);
    if (first) {
      nominal = low = high = std::move(recording);
      least = greatest = result;
    } else if (result < least) {
      low = std::move(recording);
      least = result;
    } else {
      high = std::move(recording);
      greatest = result;
    }
  }
  return Working(std::move(title), low, nominal, high);
}

}  // namespace layshaft
