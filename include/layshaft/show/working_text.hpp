// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/show/escape.hpp>
#include <layshaft/show/step_text.hpp>

#include <string>
#include <string_view>

/// @file
/// A working as plain text, Markdown, LaTeX and HTML. What came in as text from outside is escaped for each. Opt-in.
namespace layshaft {

namespace detail {

/// "37.5 (36.6 to 39.6) km/h", the result of a step in words.
[[nodiscard]] inline std::string result_in_words(const Step& step, const WorkingStyle& style, bool with_sign = false) {
  const StepNumbers numbers(step, style.units, style.decimal);
  const auto digits = [&](Corner corner) {
    const double value = step.result(corner).value;
    std::string text = numbers.digits(value);
    const bool zero = text.find_first_not_of("-0.,") == std::string::npos;
    if (with_sign && value > 0.0 && !zero) text.insert(0, "+");
    return text;
  };
  return with_ends(digits(Corner::low), digits(Corner::nominal), digits(Corner::high), numbers.unit().name);
}

[[nodiscard]] inline std::string capitalised(std::string text) {
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') text[0] = static_cast<char>(text[0] - 'a' + 'A');
  return text;
}

/// A word of the glossary in its place in a sentence: "The road speed", "The chain's pull".
[[nodiscard]] inline std::string_view subject_of(std::string_view word) {
  if (word == "thrust_change") return "Thrust";
  if (word == "speed_change") return "Road speed at equal engine speed";
  if (word == "engine_speed_change") return "Engine speed at equal road speed";
  if (word == "chain_tension_change") return "The chain's pull at equal thrust";
  if (word == "front_contacts_change") return "How often a front tooth meets the chain";
  if (word == "rear_contacts_change") return "How often a rear tooth meets the chain";
  return {};
}

/// The cause in a word that ends in _contribution.
[[nodiscard]] inline std::string_view cause_of(std::string_view word) {
  if (word == "tyre_contribution") return "the tyre";
  if (word == "front_contribution") return "the front sprocket";
  if (word == "rear_contribution") return "the rear sprocket";
  if (word == "wear_contribution") return "the tread's wear";
  if (word == "loss_contribution") return "the drive's loss";
  return {};
}

/// Points of a hundred, "5.5", in one decimal.
[[nodiscard]] inline std::string points(double fraction, const WorkingStyle& style) {
  return localised(show_number(100.0 * fraction, 1), style.decimal);
}

/// ": the tyre takes 3.7 points, the rear sprocket gives 4.1", nothing where the working has no causes.
[[nodiscard]] inline std::string causes_in_words(const Working& working, const WorkingStyle& style) {
  std::string text;
  for (const Step& step : working.steps()) {
    const std::string_view cause = cause_of(step.identity().name.word);
    if (cause.empty()) continue;
    const double part = step.result().value;
    const std::string size = points(std::fabs(part), style);
    if (size.find_first_not_of("0.,") == std::string::npos) continue;  // gives and takes nothing worth telling
    text.append(text.empty() ? ": " : ", ").append(cause).append(part < 0.0 ? " takes " : " gives ").append(size);
    if (text.find(" points") == std::string::npos) text.append(" points");
  }
  return text;
}

/// "By rule of thumb it would be +2.0 %, off by 0.4 points."
[[nodiscard]] inline std::string thumb_in_words(const Working& working, const WorkingStyle& style) {
  for (const Step& step : working.steps()) {
    if (step.identity().name.word != "thrust_change_by_thumb") continue;
    const double by_thumb = step.result().value;
    return std::string(" By rule of thumb it would be ")
        .append(by_thumb > 0.0 ? "+" : "")
        .append(points(by_thumb, style))
        .append(" %, off by ")
        .append(points(by_thumb - working.result().result().value, style))
        .append(" points.");
  }
  return {};
}

}  // namespace detail

/// The answer in a sentence. That of a change says who takes and gives how much of it, and how far the rule of thumb
/// is off.
[[nodiscard]] inline std::string sentence(const Working& working, const WorkingStyle& style = {}) {
  const Step& result = working.result();
  const std::string_view subject = detail::subject_of(result.identity().name.word);
  if (subject.empty())
    return detail::capitalised(meaning_of(result)) + ": " + detail::result_in_words(result, style) + ".";
  return std::string(subject)
      .append(" changes by ")
      .append(detail::result_in_words(result, style, true))
      .append(detail::causes_in_words(working, style))
      .append(".")
      .append(detail::thumb_in_words(working, style));
}

namespace detail {

/// What stands beside every working that somebody might ride on.
inline constexpr std::string_view estimate_caution =
    "An estimate until measured on the machine; the maker's manual and a qualified technician come first.";

[[nodiscard]] inline std::string how_sure(const Working& working) {
  return std::string("How sure: ")
      .append(to_string(working.result().certainty()))
      .append(" (as the least sure of all it rests on).");
}

/// "steps 2, 3 and 5", counted from 1.
[[nodiscard]] inline std::string steps_in_words(const std::vector<int>& places) {
  std::string text(places.size() == 1 ? "step " : "steps ");
  for (std::size_t i = 0; i < places.size(); ++i) {
    if (i > 0) text.append(i + 1 == places.size() ? " and " : ", ");
    text.append(std::to_string(places[i] + 1));
  }
  return text;
}

/// "UN Regulation No. 39, paragraph 5.3 (published)"; what is worked out, or stated, needs no grade.
[[nodiscard]] inline std::string source_in_words(const Source& source) {
  std::string text(source.document);
  const std::string_view grade = to_string(source.certainty);
  const bool told = source.certainty == Certainty::stated || source.certainty == Certainty::derived;
  if (!told && !grade.starts_with(source.document)) text.append(" (").append(grade).append(")");
  return text;
}

/// " so that step 9, worked out from it, comes to the 110 of step 1; it misses by 1.4e-14", of a solved step.
[[nodiscard]] inline std::string proof_in_words(const Working& working, const StepRun& run, const WorkingStyle& style) {
  const Step& target = working.steps()[static_cast<std::size_t>(run.from[0])];
  return std::string(" so that step ")
      .append(std::to_string(run.reached + 1))
      .append(", worked out from it, comes to the ")
      .append(StepLines<PlainText>(working, target, style).result(Corner::nominal))
      .append(" of ")
      .append(steps_in_words(run.from))
      .append("; it misses by ")
      .append(localised(to_text(run.residual, 2), style.decimal))
      .append(target.run().result.dimension == Dimension::number ? "" : " in SI units");
}

/// Where a step is from, and what else there is to say of it.
[[nodiscard]] inline std::string note_of(const Working& working, const Step& step, const WorkingStyle& style) {
  const StepRun& run = step.run();
  std::string note(to_string(step.kind()));
  switch (step.kind()) {
    case StepKind::given:
      if (step.source() != sources::stated) note.append(": ").append(source_in_words(step.source()));
      return note;
    case StepKind::looked_up:
      return note.append(": ").append(source_in_words(step.source())).append(", row ").append(step.detail());
    case StepKind::computed:
      return note.append(": ")
          .append(source_in_words(step.source()))
          .append("; from ")
          .append(steps_in_words(run.from));
    case StepKind::solved: return note.append(proof_in_words(working, run, style));
    case StepKind::chosen: break;
  }
  note.append(": ").append(step.detail());
  const StepNumbers numbers(step, style.units, style.decimal);
  for (std::size_t i = 0; i < run.others.size(); ++i)
    note.append(i == 0 ? "; also possible: " : "; ")
        .append(PlainText::number(numbers.digits(run.others[i].value), numbers.unit().name));
  return note.append("; from ").append(steps_in_words(run.from));
}

/// The corners whose line must be written out: nominal, and others that another formula gave.
[[nodiscard]] inline std::vector<Corner> corners_told(const Step& step) {
  std::vector<Corner> told;
  const Formula* nominal = step.run(Corner::nominal) ? step.run(Corner::nominal)->formula : nullptr;
  if (step.run(Corner::nominal)) told.push_back(Corner::nominal);
  for (const Corner corner : {Corner::low, Corner::high})
    if (step.run(corner) && step.run(corner)->formula && step.run(corner)->formula != nominal) told.push_back(corner);
  return told.empty() ? std::vector<Corner>{Corner::nominal} : told;
}

/// One working in one kind of text, but for its mathematics.
template <class Setting>
[[nodiscard]] std::string line_of(const StepLines<Setting>& lines, Corner corner) {
  std::string line = lines.symbol();
  const std::string formula = lines.formula(corner);
  if (!formula.empty())
    line.append(Setting::equals()).append(formula).append(Setting::equals()).append(lines.numbers(corner));
  return line.append(Setting::equals()).append(lines.result(corner));
}

/// The values side by side, "low 36.6 km/h; nominal 37.5 km/h; high 39.6 km/h", where they differ.
[[nodiscard]] inline std::string sides_of(const Step& step, const WorkingStyle& style) {
  if (step.exact()) return {};
  const StepNumbers numbers(step, style.units, style.decimal);
  const std::string_view unit = numbers.unit().name;
  const auto value = [&](Corner corner) {
    if (!step.run(corner)) return std::string("without this step");
    return PlainText::number(numbers.digits(step.result(corner).value), unit);
  };
  return "low " + value(Corner::low) + "; nominal " + value(Corner::nominal) + "; high " + value(Corner::high);
}

}  // namespace detail

/// The working as plain text, a line no wider than it must be. Folded, each step is one line.
[[nodiscard]] inline std::string to_text(const Working& working, const WorkingStyle& style = {}) {
  using namespace detail;
  std::string out = escape_text(working.title()) + "\n" + sentence(working, style) + "\n" + how_sure(working) + "\n" +
                    std::string(estimate_caution) + "\n\n";
  const std::string indent(5, ' ');
  int number = 0;
  for (const Step& step : working.steps()) {
    const StepLines<PlainText> lines(working, step, style);
    const std::string place = std::to_string(++number);
    out.append(std::string(place.size() < 3 ? 3 - place.size() : 0, ' ') + place + ". " + meaning_of(step));
    const std::string first = lines.symbol();
    if (style.fold.value_or(false) || step.kind() != StepKind::computed) {
      out.append(": " + first + " = " + lines.result(Corner::nominal) + "\n");
    } else {
      out.append("\n");
      for (const Corner corner : corners_told(step)) {
        const std::string margin = indent + std::string(first.size(), ' ') + " = ";
        out.append(indent + first + " = " + lines.formula(corner) + "\n");
        out.append(margin + lines.numbers(corner) + "\n");
        out.append(margin + lines.result(corner));
        if (corner != Corner::nominal) out.append(corner == Corner::low ? "  (low)" : "  (high)");
        out.append("\n");
      }
    }
    if (style.fold.value_or(false)) continue;
    if (const std::string sides = sides_of(step, style); !sides.empty()) out.append(indent + sides + "\n");
    out.append(indent + escape_text(note_of(working, step, style)) + "\n");
  }
  const StepLines<PlainText> lines(working, working.result(), style);
  return out.append("\n" + line_of(lines, Corner::nominal) + "\n");
}

/// The working as Markdown with TeX between dollar signs. Folded, which is usual, the steps stand behind a headline
/// that opens them.
[[nodiscard]] inline std::string to_markdown(const Working& working, const WorkingStyle& style = {}) {
  using namespace detail;
  const bool fold = style.fold.value_or(true);
  std::string out = "### " + escape_markdown(working.title()) + "\n\n" + escape_markdown(sentence(working, style)) +
                    "\n\n*" + escape_markdown(how_sure(working)) + " " + escape_markdown(estimate_caution) + "*\n\n";
  if (fold)
    out.append("<details>\n<summary>The working, " + std::to_string(working.steps().size()) + " steps</summary>\n\n");
  int number = 0;
  for (const Step& step : working.steps()) {
    const StepLines<Tex> lines(working, step, style);
    const std::string margin(4, ' ');
    out.append(std::to_string(++number) + ". **" + escape_markdown(meaning_of(step)) + "**");
    if (step.kind() != StepKind::computed)
      out.append(" $" + line_of(lines, Corner::nominal) + "$");
    else
      for (const Corner corner : corners_told(step)) out.append("\n\n" + margin + "$$" + line_of(lines, corner) + "$$");
    if (const std::string sides = sides_of(step, style); !sides.empty())
      out.append("\n\n" + margin + escape_markdown(sides));
    out.append("\n\n" + margin + "*" + escape_markdown(note_of(working, step, style)) + "*\n\n");
  }
  if (fold) out.append("</details>\n\n");
  const StepLines<Tex> lines(working, working.result(), style);
  return out.append("$$" + line_of(lines, Corner::nominal) + "$$\n");
}

/// The lines of all steps as one piece of TeX for mathematics mode (amsmath's `aligned`).
[[nodiscard]] inline std::string to_tex(const Working& working, const WorkingStyle& style = {}) {
  using namespace detail;
  std::string out = "\\begin{aligned}\n";
  for (const Step& step : working.steps()) {
    const StepLines<Tex> lines(working, step, style);
    for (const Corner corner : corners_told(step)) {
      const std::string formula = lines.formula(corner);
      out.append(lines.symbol() + " &= ");
      if (!formula.empty()) out.append(formula + " = " + lines.numbers(corner) + " = ");
      out.append(lines.result(corner) + " \\\\\n");
    }
  }
  const StepLines<Tex> lines(working, working.result(), style);
  return out.append(lines.symbol() + " &= " + lines.result(Corner::nominal) + "\n\\end{aligned}");
}

/// The working as LaTeX for a document's body, with amsmath. Folded, each step is one line.
[[nodiscard]] inline std::string to_latex(const Working& working, const WorkingStyle& style = {}) {
  using namespace detail;
  std::string out = "\\subsection*{" + escape_latex(working.title()) + "}\n" + escape_latex(sentence(working, style)) +
                    "\n\n\\emph{" + escape_latex(how_sure(working)) + " " + escape_latex(estimate_caution) +
                    "}\n\\begin{enumerate}\n";
  for (const Step& step : working.steps()) {
    const StepLines<Tex> lines(working, step, style);
    out.append("\\item " + escape_latex(meaning_of(step)));
    if (style.fold.value_or(false) || step.kind() != StepKind::computed) {
      out.append(" $" + lines.symbol() + " = " + lines.result(Corner::nominal) + "$");
    } else {
      for (const Corner corner : corners_told(step))
        out.append("\n\\begin{align*}\n" + lines.symbol() + " &= " + lines.formula(corner) +
                   " \\\\\n &= " + lines.numbers(corner) + " \\\\\n &= " + lines.result(corner) + "\n\\end{align*}");
    }
    if (!style.fold.value_or(false)) {
      if (const std::string sides = sides_of(step, style); !sides.empty()) out.append("\n\n" + escape_latex(sides));
      out.append("\n\n{\\small " + escape_latex(note_of(working, step, style)) + "}");
    }
    out.append("\n");
  }
  const StepLines<Tex> lines(working, working.result(), style);
  return out.append("\\end{enumerate}\n\\[ " + line_of(lines, Corner::nominal) + " \\]\n");
}

namespace detail {

[[nodiscard]] inline std::string element(std::string_view name, const std::string& attributes,
                                         const std::string& inner) {
  std::string out("<");
  out.append(name).append(attributes.empty() ? "" : " ").append(attributes).append(">").append(inner);
  return out.append("</").append(name).append(">");
}
[[nodiscard]] inline std::string math(const std::string& inner, bool block) {
  return element("math",
                 std::string("xmlns=\"http://www.w3.org/1998/Math/MathML\"").append(block ? " display=\"block\"" : ""),
                 element("mrow", "", inner));
}
/// Formula, numbers and result under one another, set at their signs of equality.
[[nodiscard]] inline std::string rows_of(const StepLines<MathMl>& lines, Corner corner) {
  const auto row = [](const std::string& left, const std::string& right) {
    return element("mtr", "",
                   element("mtd", "style=\"text-align:right\"", left) + element("mtd", "", "<mo>=</mo>") +
                       element("mtd", "style=\"text-align:left\"", "<mrow>" + right + "</mrow>"));
  };
  return math(element("mtable", "displaystyle=\"true\"",
                      row(lines.symbol(), lines.formula(corner)) + row("", lines.numbers(corner)) +
                          row("", lines.result(corner))),
              true);
}

}  // namespace detail

/// The steps alone as a list in HTML with MathML. Folded, which is usual, each stands behind its headline.
[[nodiscard]] inline std::string steps_to_html(const Working& working, const WorkingStyle& style = {}) {
  using namespace detail;
  const std::string open = style.fold.value_or(true) ? "" : "open";
  std::string items("\n");
  for (const Step& step : working.steps()) {
    const StepLines<MathMl> lines(working, step, style);
    const std::string headline = element("span", "class=\"step-name\"", escape_html(meaning_of(step))) + " " +
                                 math(lines.symbol() + "<mo>=</mo>" + lines.result(Corner::nominal), false);
    std::string inside;
    if (step.kind() == StepKind::computed)
      for (const Corner corner : corners_told(step))
        inside.append(element("div", "class=\"step-lines\"", rows_of(lines, corner)));
    if (const std::string sides = sides_of(step, style); !sides.empty())
      inside.append(element("p", "class=\"step-sides\"", escape_html(sides)));
    inside.append(element("p", "class=\"step-note\"", escape_html(note_of(working, step, style))));
    items.append(element("li", "", element("details", open, element("summary", "", headline) + inside)) + "\n");
  }
  const StepLines<MathMl> lines(working, working.result(), style);
  return element("ol", "class=\"steps\"", items) + "\n" +
         element("div", "class=\"last-line\"", math(line_of(lines, Corner::nominal), true)) + "\n";
}

/// The working as a piece of HTML with MathML, which needs no script. Folded, which is usual, each step stands behind
/// its headline, and all of them behind one.
[[nodiscard]] inline std::string to_html(const Working& working, const WorkingStyle& style = {}) {
  using namespace detail;
  const std::string open = style.fold.value_or(true) ? "" : "open";
  const std::string headline = "The working, " + std::to_string(working.steps().size()) + " steps";
  const std::string inner =
      element("h3", "", escape_html(working.title())) + "\n" +
      element("p", "class=\"answer\"", escape_html(sentence(working, style))) + "\n" +
      element("p", "class=\"how-sure\"", escape_html(how_sure(working)) + " " + escape_html(estimate_caution)) + "\n" +
      element("details", open, element("summary", "", headline) + "\n" + steps_to_html(working, style));
  return element("section", "class=\"layshaft-working\"", "\n" + inner + "\n") + "\n";
}

}  // namespace layshaft
