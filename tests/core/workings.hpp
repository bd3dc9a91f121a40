// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/glossary.hpp>
#include <layshaft/core/working.hpp>
#include <layshaft/formulas.hpp>

#include <gtest/gtest.h>

#include <cmath>
#include <cstddef>
#include <optional>
#include <set>
#include <stdexcept>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <vector>

/// @file
/// What must be true of every working, whatever it explains.
namespace layshaft_test {

using namespace layshaft;

/// The step of that name, "front pitch diameter"; throws where there is none.
[[nodiscard]] inline const Step& step_named(const Working& working, std::string_view name) {
  std::string names;
  for (const Step& step : working.steps()) {
    if (step.name() == name) return step;
    names.append(names.empty() ? "" : ", ").append(step.name());
  }
  throw std::runtime_error("no step \"" + std::string(name) + "\" among " + names);
}
[[nodiscard]] inline std::vector<std::string> names_of(const Working& working) {
  std::vector<std::string> names;
  for (const Step& step : working.steps()) names.push_back(step.name());
  return names;
}

template <class T>
inline constexpr Dimension kind_of = std::is_same_v<T, double>  ? Dimension::number
                                     : std::is_same_v<T, Teeth> ? Dimension::teeth
                                     : std::is_same_v<T, Links> ? Dimension::links
                                                                : layshaft::detail::dimension_of<T>;
template <class T>
[[nodiscard]] T from_amount(Amount amount) {
  if (amount.dimension != kind_of<T>) throw std::runtime_error("a value of another kind than the formula asks for");
  if constexpr (std::is_same_v<T, double>)
    return amount.value;
  else if constexpr (std::is_same_v<T, Teeth> || std::is_same_v<T, Links>)
    return T(static_cast<int>(amount.value));
  else
    return T::from_value(amount.value);
}
template <class One, class Value, class... Parameters>
[[nodiscard]] Amount value_by(Value (*)(Parameters...), const std::vector<Amount>& values) {
  if (values.size() != sizeof...(Parameters)) throw std::runtime_error("not as many values as the formula asks for");
  return [&]<std::size_t... Which>(std::index_sequence<Which...>) {
    const Value value = One::of(from_amount<Parameters>(values[Which])...);
    if constexpr (std::is_same_v<Value, double>)
      return Amount::number(value);
    else
      return Amount(value);
  }
  (std::index_sequence_for<Parameters...>());
}
template <class... All>
[[nodiscard]] Amount value_by_one_of(FormulaList<All...>, const Formula* formula, const std::vector<Amount>& values) {
  std::optional<Amount> value;
  static_cast<void>(
      ((&All::about == formula && (value = value_by<All>(static_cast<typename All::type*>(nullptr), values), true)) ||
       ...));
  if (!value) throw std::runtime_error("a formula that is not in the list");
  return *value;
}
/// What a formula of the list gives for the values; throws where they are not what it asks for.
[[nodiscard]] inline Amount value_by(const Formula* formula, const std::vector<Amount>& values) {
  return value_by_one_of(Formulas(), formula, values);
}

/// Holds one step, at one corner, against the steps that it says fed it.
inline void expect_sound(const Working& working, std::size_t place, Corner corner) {
  const Step& step = working.steps()[place];
  const StepRun& run = *step.run(corner);
  EXPECT_NE(run.result.dimension, Dimension::none);
  EXPECT_TRUE(is_finite(run.result.value));
  std::vector<Amount> values;
  for (const int from : run.from) {
    ASSERT_GE(from, 0);
    ASSERT_LT(from, static_cast<int>(place)) << "fed from ahead";
    const auto& fed = working.steps()[static_cast<std::size_t>(from)].run(corner);
    ASSERT_TRUE(fed) << "fed by a step that this run did without";
    values.push_back(fed->result);
  }
  if (step.kind() != StepKind::solved) {
    EXPECT_EQ(run.reached, -1);
    EXPECT_EQ(run.residual, 0.0);
  }
  if (step.kind() != StepKind::chosen) {
    EXPECT_TRUE(run.others.empty());
  }
  switch (step.kind()) {
    case StepKind::given:
    case StepKind::looked_up:
      EXPECT_TRUE(values.empty());
      EXPECT_EQ(run.formula, nullptr);
      break;
    case StepKind::computed:
      ASSERT_NE(run.formula, nullptr);
      EXPECT_EQ(value_by(run.formula, values), run.result) << run.formula->name;
      break;
    case StepKind::solved: {
      ASSERT_EQ(values.size(), 1u);  // the target
      ASSERT_GT(run.reached, static_cast<int>(place));
      ASSERT_LT(run.reached, static_cast<int>(working.steps().size()));
      const auto& reached = working.steps()[static_cast<std::size_t>(run.reached)].run(corner);
      ASSERT_TRUE(reached);
      ASSERT_NE(run.formula, nullptr);
      EXPECT_EQ(run.formula, reached->formula);
      EXPECT_EQ(run.residual, reached->result.value - values[0].value);
      EXPECT_LE(std::fabs(run.residual), 1e-12 * values[0].value);
      break;
    }
    case StepKind::chosen:
      EXPECT_FALSE(values.empty());
      EXPECT_EQ(run.formula, nullptr);
      for (const Amount& other : run.others) {
        EXPECT_EQ(other.dimension, run.result.dimension);
      }
      break;
  }
}

/// What must be true of every working: its words are words of the glossary; each step follows from steps ahead of it,
/// to the bit, at every corner; it is as sure as the least sure of what went into it; and the result stands last, or
/// ahead of its proof.
inline void expect_sound(const Working& working) {
  SCOPED_TRACE(working.title());
  const std::vector<Step>& steps = working.steps();
  ASSERT_FALSE(steps.empty());
  EXPECT_FALSE(working.title().empty());
  for (std::size_t place = 0; place < steps.size(); ++place) {
    const Step& step = steps[place];
    SCOPED_TRACE(step.name());
    const Word* word = find_word(step.identity().name.word);
    EXPECT_NE(word, nullptr) << "no word of the glossary: " << step.identity().name.word;
    EXPECT_FALSE(step.source().document.empty());
    EXPECT_EQ(step.detail().empty(), step.kind() != StepKind::looked_up && step.kind() != StepKind::chosen);
    for (std::size_t other = 0; other < place; ++other) EXPECT_NE(steps[other].identity(), step.identity());
    Certainty least = step.source().certainty;
    int runs = 0;
    for (const Corner corner : corners) {
      if (!step.run(corner)) continue;
      ++runs;
      expect_sound(working, place, corner);
      for (const int from : step.run(corner)->from)
        least = weaker(least, steps[static_cast<std::size_t>(from)].certainty());
      if (const int reached = step.run(corner)->reached; reached >= 0)  // what was solved rests on its equation too
        least = weaker(least, steps[static_cast<std::size_t>(reached)].certainty());
    }
    EXPECT_GT(runs, 0);
    EXPECT_EQ(to_string(step.certainty()), to_string(least));
  }
  ASSERT_LT(working.result_place(), steps.size());
  const Step& result = working.result();
  if (result.kind() != StepKind::solved) {
    EXPECT_EQ(working.result_place(), steps.size() - 1);
  }
  for (const Corner corner : corners) EXPECT_TRUE(result.run(corner));
  EXPECT_LE(result.result(Corner::low).value, result.result().value);
  EXPECT_LE(result.result().value, result.result(Corner::high).value);
}

/// The places of all steps that a step stands on, or that prove it.
inline void add_reached(const Working& working, std::size_t place, std::set<std::size_t>& reached) {
  if (!reached.insert(place).second) return;
  for (const Corner corner : corners)
    if (const auto& run = working.steps()[place].run(corner)) {
      for (const int from : run->from) add_reached(working, static_cast<std::size_t>(from), reached);
      if (run->reached >= 0) add_reached(working, static_cast<std::size_t>(run->reached), reached);
    }
}
/// A reader asks of each step what it is for: the result must stand on it.
inline void expect_no_idle_step(const Working& working) {
  std::set<std::size_t> reached;
  add_reached(working, working.result_place(), reached);
  std::string idle;
  for (std::size_t place = 0; place < working.steps().size(); ++place)
    if (!reached.contains(place)) idle.append(idle.empty() ? "" : ", ").append(working.steps()[place].name());
  EXPECT_EQ(idle, "") << "steps that " << working.title() << " does not stand on";
}

}  // namespace layshaft_test
