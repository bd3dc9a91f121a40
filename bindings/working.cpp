// SPDX-License-Identifier: MIT
#include "working.hpp"

#include <layshaft/explain.hpp>
#include <layshaft/io/working_json.hpp>
#include <layshaft/show/working_text.hpp>

#include "amount.hpp"
#include "wants.hpp"

#include <algorithm>

namespace layshaft::python {
namespace {

/// One step, which keeps the working that it is a part of.
struct PyStep {
  PyWorking of;
  std::size_t place;

  [[nodiscard]] const Step& step() const { return of.working->steps()[place]; }
  [[nodiscard]] bool is_result() const { return of.working->result_place() == place; }
};

bool same(const std::optional<StepRun>& a, const std::optional<StepRun>& b) {
  if (!a || !b) return a.has_value() == b.has_value();
  return a->result == b->result && a->formula == b->formula && a->from == b->from && a->reached == b->reached &&
         a->residual == b->residual && a->others == b->others;
}
bool same(const Step& a, const Step& b) {
  return a.kind() == b.kind() && a.identity() == b.identity() && a.source() == b.source() && a.detail() == b.detail() &&
         a.certainty() == b.certainty() &&
         std::ranges::all_of(corners, [&](Corner corner) { return same(a.run(corner), b.run(corner)); });
}
bool same(const Working& a, const Working& b) {
  return a.title() == b.title() && a.result_place() == b.result_place() &&
         std::ranges::equal(a.steps(), b.steps(), [](const Step& one, const Step& other) { return same(one, other); });
}

/// The nominal result; of the step that was asked for the band, where its runs differ.
py::object result_of(const PyStep& self) {
  const Step& step = self.step();
  if (!self.is_result() || step.exact()) return give_amount(step.result());
  const auto at = [&](Corner corner) { return step.result(corner).value; };
  return py::cast(PyBand{kind_of(step.result().dimension), {at(Corner::low), at(Corner::nominal), at(Corner::high)}});
}
py::dict runs_of(const Step& step) {
  py::dict runs;
  const auto put = [&](const char* name, Corner corner) {
    const auto& run = step.run(corner);
    runs[name] = run ? give_amount(run->result) : py::none();
  };
  put("low", Corner::low);
  put("nominal", Corner::nominal);
  put("high", Corner::high);
  return runs;
}

void register_step(py::module_& module) {
  Class<PyStep> type(module, "Step",
                     "One step of a Working: what it is called, how its result came about, and which steps fed "
                     "it.");
  const auto part = [&](const char* name, const char* doc, auto get) {
    def_property(type, name, doc, [get](const PyStep& s) { return get(s.step()); });
  };
  part("name", "What its result is called: 'base overall diameter', 'gear 3'.", [](const Step& s) { return s.name(); });
  part("symbol", "The symbol of its result in plain text: 'D0', 'i_g,3'.",
       [](const Step& s) { return symbol_text(s); });
  part("kind", "'given', 'computed', 'looked up', 'solved' or 'chosen'.", [](const Step& s) { return s.kind(); });
  part("formula", "The Formula that computed it; of a solved step that of the equation's left side; else None.",
       [](const Step& s) { return s.formula() ? py::cast(*s.formula()) : py::object(py::none()); });
  def_property(type, "result",
               "Its result: a quantity, a float, or an int for a count. Of the step that was asked for it is a Band "
               "where the runs differ.",
               result_of);
  part("runs",
       "What the runs behind the 'low', 'nominal' and 'high' value of the working's result made of it: a dict, None "
       "where a run did without the step. A step's low may lie above its high.",
       [](const Step& s) { return py::object(runs_of(s)); });
  part("source", "Where the step is from: the formula's Source, the table's, or that of the value given.",
       [](const Step& s) { return s.source(); });
  part("certainty", "How sure its result is: as the least sure of all that went into it.",
       [](const Step& s) { return s.certainty(); });
  part("from_steps", "Places, from 0, of the steps that fed it, in the order of the formula's parameters.",
       [](const Step& s) { return py::object(give_list(s.from_steps())); });
  part("detail", "Of a step looked up the row, of one chosen the rule, else ''.",
       [](const Step& s) { return s.detail(); });
  part("others", "Of a step chosen, what else was possible: a tuple.", [](const Step& s) {
    py::list others;
    for (const Amount& other : s.run().others) others.append(give_amount(other));
    return py::object(py::tuple(others));
  });
  const auto of_solved = [&](const char* name, const char* doc, auto get) {
    part(name, doc,
         [get](const Step& s) { return s.kind() == StepKind::solved ? give(get(s.run())) : py::object(py::none()); });
  };
  of_solved("reached", "Of a step solved, the place of the step that must come to the one it is from; else None.",
            [](const StepRun& run) { return run.reached; });
  of_solved("residual", "Of a step solved, by how much that misses, in SI; else None.",
            [](const StepRun& run) { return run.residual; });
  def_special(type, "__eq__", [](const PyStep& a, const py::object& other) {
    return is<PyStep>(other) && same(a.step(), as<PyStep>(other).step());
  });
  def_special(type, "__hash__", [](const PyStep& s) {
    return py::hash(tuple_of(s.step().name(), give(s.step().kind()), s.step().result().value));
  });
  def_special(type, "__repr__", [](const PyStep& s) {
    return "<Step: " + s.step().name() + " = " + py::repr(result_of(s)).cast<std::string>() + ">";
  });
  def(module, "_step_of(working, place)", "For pickles.", [](const Arguments& given) {
    const PyWorking& working = given.want<PyWorking>("working");
    const int place = given.want<int>("place");
    if (place < 0 || static_cast<std::size_t>(place) >= working.working->steps().size())
      throw py::index_error("no such step");
    return PyStep{working, static_cast<std::size_t>(place)};
  });
  def_special(type, "__reduce__", [](const PyStep& s) {
    return tuple_of(py::module_::import("layshaft._core").attr("_step_of"), tuple_of(s.of, s.place));
  });
}

WorkingStyle want_style(const Arguments& given) {
  WorkingStyle style;
  style.units = given.want<UnitSystem>("units", UnitSystem::metric);
  if (given.has("decimal")) {
    const std::string mark = want_text(given.object("decimal"), "decimal", "'.' or ','");
    if (mark != "." && mark != ",") raise(Error::range("decimal", in_quotes(mark), "'.' or ','"));
    style.decimal = mark[0];
  }
  return style;
}
WorkingStyle want_text_style(const Arguments& given) {
  WorkingStyle style = want_style(given);
  style.fold = given.want<std::optional<bool>>("fold");
  return style;
}

void register_working_class(py::module_& module) {
  Class<PyWorking> type(
      module, "Working",
      "How a number came about: the .steps of its calculation, each behind those that feed it, and .result, the step "
      "that was asked for. Made by explain(), and by the explain() of a comparison, a loop, a sprocket or a tyre.");
  def_property(type, "title", "What was asked, in words.", [](const PyWorking& w) { return w.working->title(); });
  def_property(type, "steps", "Every step in order, a tuple of Step.", [](const PyWorking& w) {
    py::tuple steps(w.working->steps().size());
    for (std::size_t i = 0; i < steps.size(); ++i) steps[i] = py::cast(PyStep{w, i});
    return py::object(steps);
  });
  def_property(type, "result", "The Step that was asked for.", [](const PyWorking& w) {
    return PyStep{w, w.working->result_place()};
  });
  def(type, "sentence(*, units='metric', decimal='.')",
      "The answer in a sentence, in 'metric' or 'us' units, with '.' or ',' for a decimal mark.",
      [](const PyWorking& w, const Arguments& given) { return sentence(*w.working, want_style(given)); });
  const auto rendering = [&](const char* name, const char* doc,
                             std::string (*render)(const Working&, const WorkingStyle&)) {
    def(type, std::string(name) + "(*, units='metric', decimal='.', fold=None)",
        std::string(doc) +
            ", in 'metric' or 'us' units, with '.' or ',' for a decimal mark. fold puts the steps behind headlines or "
            "(False) not; None is as this form usually is.",
        [render](const PyWorking& w, const Arguments& given) { return render(*w.working, want_text_style(given)); });
  };
  rendering("to_text", "The working as plain text", to_text);
  rendering("to_markdown", "The working as Markdown with TeX", to_markdown);
  rendering("to_latex", "The working as LaTeX, for a document's body with amsmath", to_latex);
  rendering("to_html", "The working as a piece of HTML with MathML, which needs no script", to_html);
  rendering("steps_to_html", "The steps alone as a list in HTML with MathML, for a page of one's own", steps_to_html);
  def(type, "steps_to_html(*, units='metric', decimal='.', fold=None)",
      "The steps alone as a piece of HTML, for a page that says the rest itself.",
      [](const PyWorking& w, const Arguments& given) { return steps_to_html(*w.working, want_text_style(given)); });
  def(type, "to_json()", "The steps as JSON text, in SI units, for a program to draw its own way.",
      [](const PyWorking& w, const Arguments&) { return to_json(*w.working); });
  def(type, "_repr_markdown_()", "For notebooks.",
      [](const PyWorking& w, const Arguments&) { return to_markdown(*w.working); });
  def(type, "_repr_latex_()", "For notebooks.",
      [](const PyWorking& w, const Arguments&) { return "$$" + to_tex(*w.working) + "$$"; });
  def(type, "_repr_html_()", "For notebooks.",
      [](const PyWorking& w, const Arguments&) { return to_html(*w.working); });
  def_special(type, "__str__", [](const PyWorking& w) { return to_text(*w.working); });
  def_special(type, "__repr__", [](const PyWorking& w) { return "<Working: " + w.working->title() + ">"; });
  def_special(type, "__eq__", [](const PyWorking& a, const py::object& other) {
    return is<PyWorking>(other) && same(*a.working, *as<PyWorking>(other).working);
  });
  def_special(type, "__hash__", [](const PyWorking& w) {
    return py::hash(tuple_of(w.working->title(), w.working->steps().size(), w.working->result().result().value));
  });
  def_special(type, "__reduce__", [](const PyWorking& w) { return pickled(w.asked, w.positional, w.named); });
}

}  // namespace

void register_working(py::module_& module) {
  register_step(module);
  register_working_class(module);
  def(module, "explain(machine, setup, what, *, gear=None, engine_speed=None, speed=None)",
      "How a number of a set-up came about: a Working. what is its name, such as 'road speed', 'centre' or 'wear "
      "room'; "
      "an unknown one is a ParseError that lists those there are. A number asks for what it depends on: a gear "
      "(from 1), an engine_speed, a road speed.\n\n"
      ">>> working = ls.explain(machine, trial, \"road speed\", gear=3, engine_speed=\"5000 rpm\")\n"
      ">>> working.sentence()\n"
      "'Road speed: 38.5 (37.5 to 39.9) km/h.'\n"
      ">>> working.result.formula.to_text()\n"
      "'v = n * U / (1 rev * i)'",
      [](const Arguments& given) {
        const Machine& machine = given.want<Machine>("machine");
        const Setup& setup = given.want<Setup>("setup");
        const std::string what = want_what(given);
        const SetupQuestion at{.gear = given.want<std::optional<int>>("gear"),
                               .engine_speed = given.want<std::optional<AngularSpeed>>("engine_speed"),
                               .speed = given.want<std::optional<Speed>>("speed")};
        py::dict named;
        name_if(named, "gear", at.gear);
        name_if(named, "engine_speed", at.engine_speed);
        name_if(named, "speed", at.speed);
        return PyWorking(explain(machine, setup, what, at), py::module_::import("layshaft").attr("explain"),
                         tuple_of(machine, setup, what), named);
      });
}

}  // namespace layshaft::python
