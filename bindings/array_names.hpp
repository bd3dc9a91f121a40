// SPDX-License-Identifier: MIT
#pragma once

#include "array_formulas.hpp"

#include <string>

/// @file
/// What the functions of layshaft.arrays and their arguments are called, and what they say of themselves.
namespace layshaft::python::arrays {

/// A parameter of a formula, or its result.
struct Role {
  std::string name;       ///< with its unit: "circumference_mm"
  std::string_view word;  ///< the formula's own: "circumference"; empty of the result
  const Kind* kind;
  std::string_view unit;  ///< as layshaft reads it, "km/h"; empty of a pure number and of a count
  std::string_view meaning;
};

[[nodiscard]] inline Role role(const ArrayFormula& formula, std::size_t place) {
  const Words words = words_of(formula.about.parameters);
  Role role{{}, place < formula.inputs ? words.word[place] : std::string_view(), &kinds[formula.kind[place]], {}, {}};
  const std::string_view of = formula.about.name;
  if (const UnitName* unit = unit_of(*role.kind, of, role.word)) role.unit = unit->name;
  if (const PlainWord* entry = look_up(role.word.empty() ? of : role.word)) role.meaning = entry->meaning;
  if (role.word.empty() && !formula.meaning.empty()) role.meaning = formula.meaning;

  role.name = role.word.empty() ? of : role.word;
  if (const Irregular* one = find_irregular(of, role.word); one && !one->name.empty()) role.name = one->name;
  // Whoever has an engine speed in rpm calls it that.
  constexpr std::string_view speed = "_speed";
  if (role.unit == "rpm" && role.name.ends_with(speed)) role.name.erase(role.name.size() - speed.size());
  struct Suffix {
    std::string_view unit, suffix;
  };
  constexpr Suffix suffixes[] = {{"km/h", "kmh"},      {"m/s2", "mps2"},       {"kg/m3", "kg_per_m3"},
                                 {"kg/m", "kg_per_m"}, {"N s/m", "N_per_mps"}, {"kg m2", "kg_m2"},
                                 {"inch", "in"}};
  std::string_view suffix = role.unit;
  for (const Suffix& one : suffixes)
    if (one.unit == role.unit) suffix = one.suffix;
  if (!suffix.empty()) role.name.append("_").append(suffix);
  return role;
}

/// The range as the code has it, on one line, with the arguments' names for the formula's words.
[[nodiscard]] inline std::string range_of(const ArrayFormula& formula) {
  std::string range, token;
  const auto end_token = [&] {
    for (std::size_t i = 0; i < formula.inputs; ++i)
      if (const Role one = role(formula, i); one.word == token) token = one.name;
    range += token;
    token.clear();
  };
  for (const char c : formula.about.range) {
    if (c == '_' || (c >= 'a' && c <= 'z')) {
      token += c;
      continue;
    }
    end_token();
    const bool blank = c == ' ' || c == '\n';
    if (!blank)
      range += c;
    else if (!range.ends_with(' '))
      range += ' ';
  }
  end_token();
  return range;
}

[[nodiscard]] inline std::string docstring(const ArrayFormula& formula) {
  const Role result = role(formula, formula.inputs);
  std::string arguments, rows;
  for (std::size_t i = 0; i < formula.inputs; ++i) {
    const Role one = role(formula, i);
    arguments.append(i == 0 ? "" : ", ").append(one.name);
    rows.append("    ").append(one.name).append(": ").append(one.meaning);
    if (!one.unit.empty())
      rows.append(", in ").append(one.unit);
    else if (one.kind->greatest > 0)
      rows.append(", a whole number from ")
          .append(std::to_string(one.kind->least))
          .append(" to ")
          .append(std::to_string(one.kind->greatest));
    rows.append("\n");
  }
  std::string doc(result.name);
  doc.append("(").append(arguments).append("): ").append(result.meaning);
  if (!result.unit.empty()) doc.append(", in ").append(result.unit);
  doc.append(".\n\nArguments\n").append(rows);
  if (formula.about.range != "true") {
    doc.append("\nHolds where ");
    doc.append(range_of(formula));
    doc.append("; NaN elsewhere.");
  }
  if (formula.error > 0) {
    doc.append("\nError: within ").append(std::to_string(formula.error / 10)).append(".");
    doc.append(std::to_string(formula.error % 10)).append(" ulp, and what rounding in these units adds.");
  }
  doc.append("\nSource: ").append(formula.about.source.document);
  return doc.append(" (").append(to_string(formula.about.source.certainty)).append(").");
}

}  // namespace layshaft::python::arrays
