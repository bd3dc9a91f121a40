// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/amount.hpp>
#include <layshaft/core/band.hpp>
#include <layshaft/core/watch.hpp>

#include <array>
#include <cassert>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

/// @file
/// How a number came about, as data: the steps of its calculation, each with what fed it. Opt-in.
namespace layshaft {

/// What kind of step it was.
enum class StepKind {
  given,      ///< came in from outside
  computed,   ///< by a formula
  looked_up,  ///< in a table
  solved,     ///< an equation, for an unknown
  chosen,     ///< by a rule, among others
};

[[nodiscard]] constexpr std::string_view to_string(StepKind kind) noexcept {
  switch (kind) {
    case StepKind::given: return "given";
    case StepKind::computed: return "computed";
    case StepKind::looked_up: return "looked up";
    case StepKind::solved: return "solved";
    case StepKind::chosen: return "chosen";
  }
  return {};
}

/// What tells a step from all others of its calculation, in every run.
struct StepIdentity {
  ValueName name;
  Scope scope = Scope::none;

  friend constexpr bool operator==(const StepIdentity&, const StepIdentity&) = default;
};

/// What one run of a calculation made of a step.
struct StepRun {
  Amount result;
  const Formula* formula = nullptr;  ///< that computed it; of a solved step the equation's left side; else null
  std::vector<int> from;             ///< places of the steps that fed it, in the order of the formula's parameters
  int reached = -1;                  ///< of a solved step: the place of the step that must come to the one it is from
  double residual = 0.0;             ///< of a solved step: by how much it misses, in SI
  std::vector<Amount> others;        ///< of a chosen step: what else was possible
};

/// One step of a working, the runs laid side by side. A step that a run did without, as where a table has a limit of
/// its own, is absent there.
class Step {
 public:
  Step(StepKind kind, const StepIdentity& identity, Source source, std::string_view detail)
      : kind_(kind), identity_(identity), source_(source), detail_(detail) {}

  [[nodiscard]] StepKind kind() const noexcept { return kind_; }
  /// What tells it from the others: the word of the glossary for its result, which of several, and of which part.
  [[nodiscard]] const StepIdentity& identity() const noexcept { return identity_; }
  /// What it is called: "base overall diameter", "gear 3", "run angle at the front end".
  [[nodiscard]] std::string name() const {
    std::string name;
    if (identity_.scope == Scope::base) name.append("base ");
    if (identity_.scope == Scope::trial) name.append("trial ");
    for (const char c : identity_.name.word) name.push_back(c == '_' ? ' ' : c);
    if (identity_.name.index > 0) name.append(" ").append(std::to_string(identity_.name.index));
    if (identity_.scope == Scope::front_end) name.append(" at the front end");
    if (identity_.scope == Scope::rear_end) name.append(" at the rear end");
    return name;
  }
  /// Where the step itself is from: the formula's source, the table's, or that of the value given.
  [[nodiscard]] Source source() const noexcept { return source_; }
  /// Of a step looked up, the row; of one chosen, the rule; else empty.
  [[nodiscard]] const std::string& detail() const noexcept { return detail_; }
  /// How sure its result is: as the least sure of all that went into it.
  [[nodiscard]] Certainty certainty() const noexcept { return certainty_; }

  /// What the run behind the result's low, nominal or high value made of it.
  [[nodiscard]] const std::optional<StepRun>& run(Corner corner) const noexcept {
    return runs_[static_cast<std::size_t>(corner)];
  }
  /// The nominal run, or where that did without the step, the first that did not.
  [[nodiscard]] const StepRun& run() const noexcept {
    for (const Corner corner : {Corner::nominal, Corner::high})
      if (run(corner)) return *run(corner);
    return *run(Corner::low);  // no step is in no run
  }
  /// The result at a corner; where that run did without the step, the nominal one's.
  [[nodiscard]] Amount result(Corner corner) const noexcept { return run(corner) ? run(corner)->result : run().result; }
  [[nodiscard]] Amount result() const noexcept { return run().result; }
  /// Whether all runs have the same result.
  [[nodiscard]] bool exact() const noexcept {
    return result(Corner::low) == result() && result(Corner::high) == result();
  }
  [[nodiscard]] const Formula* formula() const noexcept { return run().formula; }
  [[nodiscard]] const std::vector<int>& from_steps() const noexcept { return run().from; }

 private:
  friend class Working;

  StepKind kind_;
  StepIdentity identity_;
  Source source_;
  std::string detail_;
  Certainty certainty_ = Certainty::stated;
  std::array<std::optional<StepRun>, 3> runs_;
};

/// One step as one run recorded it.
struct RecordedStep {
  StepKind kind;
  StepIdentity identity;
  Source source;
  std::string_view detail;
  StepRun run;
};
/// All steps of one run, in order, and the place of its result.
struct Recording {
  std::vector<RecordedStep> steps;
  int result = 0;
};

/// The working of a number: its steps in order, each behind those that feed it. The result is the last step, unless it
/// was solved for; then the steps that prove it come behind.
class Working {
 public:
  /// @param title what was asked, in words
  /// @param low, nominal, high the runs that gave the result's low, nominal and high value
  Working(std::string title, const Recording& low, const Recording& nominal, const Recording& high)
      : title_(std::move(title)), result_(nominal.steps[static_cast<std::size_t>(nominal.result)].identity) {
    lay_out(nominal.steps, Corner::nominal);
    lay_out(low.steps, Corner::low);
    lay_out(high.steps, Corner::high);
    grade();
  }

  /// What was asked: "road speed in gear 3". Text from outside stands in it as it came.
  [[nodiscard]] const std::string& title() const noexcept { return title_; }
  [[nodiscard]] const std::vector<Step>& steps() const noexcept { return steps_; }
  /// The step whose result is what was asked for.
  [[nodiscard]] const Step& result() const noexcept { return steps_[result_place()]; }
  [[nodiscard]] std::size_t result_place() const noexcept { return find(result_); }

 private:
  /// Puts the steps of one more run beside those that are there; a step that only this run has goes in behind the one
  /// before it.
  void lay_out(const std::vector<RecordedStep>& recording, Corner corner) {
    std::vector<std::size_t> places;
    std::size_t last = 0;  // one behind the step put last: places only rise, so that none moves by what comes later
    for (const RecordedStep& one : recording) {
      std::size_t place = find(one.identity);
      if (place == steps_.size() || place < last) {
        place = last;
        insert(place, one);
      }
      places.push_back(place);
      last = place + 1;
    }
    for (std::size_t i = 0; i < recording.size(); ++i) {
      StepRun run = recording[i].run;
      for (int& from : run.from) from = static_cast<int>(places[static_cast<std::size_t>(from)]);
      if (run.reached >= 0) run.reached = static_cast<int>(places[static_cast<std::size_t>(run.reached)]);
      steps_[places[i]].runs_[static_cast<std::size_t>(corner)] = std::move(run);
    }
  }
  [[nodiscard]] std::size_t find(const StepIdentity& one) const {
    std::size_t place = 0;
    while (place < steps_.size() && steps_[place].identity_ != one) ++place;
    return place;
  }
  void insert(std::size_t place, const RecordedStep& one) {
    steps_.insert(steps_.begin() + static_cast<std::ptrdiff_t>(place),
                  Step(one.kind, one.identity, one.source, one.detail));
    const auto moved = [&](int from) { return from >= static_cast<int>(place) ? from + 1 : from; };
    for (Step& step : steps_)
      for (auto& run : step.runs_)
        if (run) {
          for (int& from : run->from) from = moved(from);
          run->reached = moved(run->reached);
        }
  }
  /// How sure each step is. A solved one rests on its proof, whose steps come behind it, so there are two rounds.
  void grade() {
    for (Step& step : steps_) step.certainty_ = step.source_.certainty;
    const auto rests_on = [&](Step& step, int place) {
      step.certainty_ = weaker(step.certainty_, steps_[static_cast<std::size_t>(place)].certainty_);
    };
    for (int round = 0; round < 2; ++round)
      for (Step& step : steps_)
        for (const auto& run : step.runs_) {
          if (!run) continue;
          for (const int from : run->from) rests_on(step, from);
          if (run->reached >= 0) rests_on(step, run->reached);
        }
  }

  std::string title_;
  StepIdentity result_;
  std::vector<Step> steps_;
};

}  // namespace layshaft
